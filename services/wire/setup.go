package wire

import (
	"slices"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
)

// Setup is everything about a check but the bracket. Basis is the name of one.
type Setup struct {
	Basis   string
	Cases   []part.Case
	Options strength.Options
}

// Equal says whether two setups ask for the same.
func (s *Setup) Equal(t *Setup) bool {
	return s.Basis == t.Basis && s.Options == t.Options && slices.Equal(s.Cases, t.Cases)
}

// EncodeSetup writes a setup.
func EncodeSetup(s *Setup) *pb.CheckSetup {
	return &pb.CheckSetup{
		Cases: all(s.Cases, loadCase), Basis: s.Basis, Method: methods.encode(s.Options.Method),
		LoadFactor: s.Options.LoadFactor, Trace: s.Options.Trace,
	}
}

// DecodeSetup reads a setup; paths of refused fields begin within it: "cases[3].force_n.x".
func DecodeSetup(m *pb.CheckSetup) (*Setup, error) {
	var r reader
	if m == nil {
		r.refuse("setup", "missing", "a value")
		return nil, r.err()
	}
	s := &Setup{
		Basis: r.text("basis", m.Basis),
		Cases: many(&r, "cases", strength.MaxCases, m.Cases, readLoadCase),
		Options: strength.Options{
			Method:     methods.decodeOptional(&r, "method", m.Method),
			LoadFactor: r.number("load_factor", m.LoadFactor),
			Trace:      m.Trace,
		},
	}
	return s, r.err()
}
