package wire

import (
	"maps"
	"slices"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
)

// Setup is everything about a check but the bracket. Basis is the name of one, and so is PinJoint, whose rules serve pin holes; empty
// is the basis itself.
type Setup struct {
	Basis    string
	PinJoint string
	Cases    []part.Case
	Options  strength.Options
}

// Equal says whether two setups ask for the same.
func (s *Setup) Equal(t *Setup) bool {
	return s.Basis == t.Basis && s.PinJoint == t.PinJoint && slices.Equal(s.Cases, t.Cases) && equalOptions(&s.Options, &t.Options)
}

func equalOptions(o, p *strength.Options) bool {
	return o.Method == p.Method && o.LoadFactor == p.LoadFactor && o.Trace == p.Trace && o.FactorSet == p.FactorSet && maps.Equal(o.Factors, p.Factors) &&
		slices.Equal(o.Spectrum, p.Spectrum) && slices.Equal(o.LeaveOut, p.LeaveOut)
}

// EncodeSetup writes a setup.
func EncodeSetup(s *Setup) *pb.CheckSetup {
	return &pb.CheckSetup{
		Cases: all(s.Cases, loadCase), Basis: s.Basis, Method: methods.encode(s.Options.Method),
		LoadFactor: s.Options.LoadFactor, Trace: s.Options.Trace,
		FactorSet: s.Options.FactorSet, Factors: ownFactors(s.Options.Factors), PinJoint: s.PinJoint,
		Spectrum: all(s.Options.Spectrum, stressCycle), LeaveOut: s.Options.LeaveOut,
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
		Basis: r.text("basis", m.Basis), PinJoint: r.text("pin_joint", m.PinJoint),
		Cases: many(&r, "cases", strength.MaxCases, m.Cases, readLoadCase),
		Options: strength.Options{
			Method:     methods.decodeOptional(&r, "method", m.Method),
			LoadFactor: r.number("load_factor", m.LoadFactor),
			Trace:      m.Trace,
			FactorSet:  r.text("factor_set", m.FactorSet),
			Factors:    readOwnFactors(&r, m.Factors),
			Spectrum:   many(&r, "spectrum", strength.MaxSpectrum, m.Spectrum, readStressCycle),
			LeaveOut:   r.texts("leave_out", maxThings, m.LeaveOut),
		},
	}
	return s, r.err()
}

func stressCycle(c *strength.StressCycle) *pb.StressCycle {
	return &pb.StressCycle{FromCase: c.From, ToCase: c.To, Cycles: c.Cycles}
}

func readStressCycle(r *reader, m *pb.StressCycle) strength.StressCycle {
	return strength.StressCycle{From: r.words("from_case", m.FromCase), To: r.words("to_case", m.ToCase), Cycles: r.number("cycles", m.Cycles)}
}
