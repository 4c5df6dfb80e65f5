package wire

import (
	"lugwright/geometry"
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

// EncodeKinds writes what a user sees of the kinds; their Build stays behind.
func EncodeKinds(kinds []geometry.Kind) []*pb.Kind { return all(kinds, kind) }

// DecodeKinds reads kinds; their Build is nil.
func DecodeKinds(in []*pb.Kind) ([]geometry.Kind, error) {
	var r reader
	kinds := many(&r, "kinds", maxListed, in, readKind)
	return kinds, r.err()
}

func kind(k *geometry.Kind) *pb.Kind {
	return &pb.Kind{Name: k.Name, Sentence: k.Sentence, Parameters: all(k.Params, declaration)}
}

func readKind(r *reader, m *pb.Kind) geometry.Kind {
	return geometry.Kind{
		Name: r.text("name", m.Name), Sentence: r.words("sentence", m.Sentence),
		Params: many(r, "parameters", maxParams, m.Parameters, readDeclaration),
	}
}

func declaration(p *geometry.Param) *pb.ParameterDeclaration {
	return &pb.ParameterDeclaration{
		Name: p.Name, Unit: paramUnits.encode(p.Unit), Min: p.Min, Max: p.Max, DefaultNumber: p.Default,
		Choices: p.Choices, DefaultText: p.Text, Sentence: p.Sentence,
	}
}

func readDeclaration(r *reader, m *pb.ParameterDeclaration) geometry.Param {
	return geometry.Param{
		Name: r.text("name", m.Name), Unit: paramUnits.decode(r, "unit", m.Unit),
		Min: r.number("min", m.Min), Max: r.number("max", m.Max), Default: r.number("default_number", m.DefaultNumber),
		Choices: r.texts("choices", maxThings, m.Choices),
		Text:    r.text("default_text", m.DefaultText), Sentence: r.words("sentence", m.Sentence),
	}
}

// EncodeOrder writes the order for one bracket.
func EncodeOrder(q geometry.Request) *pb.BracketOrder {
	return &pb.BracketOrder{
		Kind: q.Kind, Name: q.Name, Mark: q.Mark, Hand: hands.encode(q.Hand), Parameters: all(q.Params, param),
	}
}

// DecodeOrder reads the order for one bracket. Its field errors have paths as the domain's: "hand", "parameters.bore".
func DecodeOrder(m *pb.BracketOrder) (geometry.Request, error) {
	var r reader
	if m == nil {
		r.refuse("order", "missing", "a value")
		return geometry.Request{}, r.err()
	}
	q := geometry.Request{
		Kind: r.text("kind", m.Kind), Name: r.text("name", m.Name), Mark: r.text("mark", m.Mark),
		Hand:   hands.decode(&r, "hand", m.Hand),
		Params: byName(&r, "parameters", "name", maxParams, m.Parameters, (*partpb.Parameter).GetName, readOrderParam),
	}
	return q, r.err()
}

func readOrderParam(r *reader, m *partpb.Parameter) part.Param {
	return part.Param{Name: m.GetName(), Number: r.number("", m.GetNumber()), Unit: r.text("", m.GetUnit()), Text: r.text("", m.GetText())}
}
