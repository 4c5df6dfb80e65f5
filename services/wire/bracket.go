package wire

import (
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

// EncodeBracket writes a bracket; nil stays nil, which decoding refuses.
func EncodeBracket(b *part.Bracket) *pb.Bracket {
	if b == nil {
		return nil
	}
	return &pb.Bracket{
		Name: b.Name, Kind: b.Kind, Hand: hands.encode(b.Hand), Parameters: all(b.Params, param),
		Plates: all(b.Plates, plate), Members: all(b.Members, member),
		Pins: all(b.Pins, pin), Bolts: all(b.Bolts, boltGroup), Rods: all(b.Rods, rods), Welds: all(b.Welds, weldGroup),
		Contacts: all(b.Contacts, contact), Composites: all(b.Composites, composite), Splices: all(b.Splices, splice),
		Supports: all(b.Supports, support), LoadPoints: all(b.LoadPoints, loadPoint),
		Shares: all(b.Shares, share), Paths: all(b.Paths, path), Sweeps: all(b.Sweeps, sweep),
		Notes: b.Notes, Unchecked: b.Unchecked,
	}
}

// DecodeBracket reads a bracket. Paths of refused fields begin within it, as the domain's: "plates[2].thickness_mm". Whether
// its names resolve and its shapes can be cut is for the domain to say.
func DecodeBracket(m *pb.Bracket) (*part.Bracket, error) {
	var r reader
	if m == nil {
		r.refuse("bracket", "missing", "a value")
		return nil, r.err()
	}
	b := readBracket(&r, m)
	if err := r.err(); err != nil {
		return nil, err
	}
	return b, nil
}

func readBracket(r *reader, m *pb.Bracket) *part.Bracket {
	return &part.Bracket{
		Name: r.text("name", m.Name), Kind: r.text("kind", m.Kind), Hand: hands.decode(r, "hand", m.Hand),
		Params:     many(r, "parameters", maxParams, m.Parameters, readParam),
		Plates:     many(r, "plates", MaxPlates, m.Plates, readPlate),
		Members:    many(r, "members", maxThings, m.Members, readMember),
		Pins:       many(r, "pins", maxThings, m.Pins, readPin),
		Bolts:      many(r, "bolts", maxThings, m.Bolts, readBoltGroup),
		Rods:       many(r, "rods", maxThings, m.Rods, readRods),
		Welds:      many(r, "welds", maxThings, m.Welds, readWeldGroup),
		Contacts:   many(r, "contacts", maxThings, m.Contacts, readContact),
		Composites: many(r, "composites", maxThings, m.Composites, readComposite),
		Splices:    many(r, "splices", maxThings, m.Splices, readSplice),
		Supports:   many(r, "supports", maxThings, m.Supports, readSupport),
		LoadPoints: many(r, "load_points", maxThings, m.LoadPoints, readLoadPoint),
		Shares:     many(r, "shares", maxThings, m.Shares, readShare),
		Paths:      many(r, "paths", maxThings, m.Paths, readPath),
		Sweeps:     many(r, "sweeps", maxThings, m.Sweeps, readSweep),
		Notes:      r.texts("notes", maxThings, m.Notes),
		Unchecked:  r.texts("unchecked", maxThings, m.Unchecked),
	}
}

func param(p *part.Param) *pb.Parameter {
	return &pb.Parameter{Name: p.Name, Number: p.Number, Unit: p.Unit, Text: p.Text}
}

func readParam(r *reader, m *pb.Parameter) part.Param {
	return part.Param{
		Name:   r.text("name", m.Name),
		Number: r.number("number", m.Number),
		Unit:   r.text("unit", m.Unit),
		Text:   r.text("text", m.Text),
	}
}
