package job

// This file turns a file into a job: read, held against the table, checked as a whole.

import (
	"slices"

	"lugwright/client/table"
	"lugwright/geometry"
	"lugwright/geometry/access"
	"lugwright/geometry/shop"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

// Read reads a job. File is the name for messages. The error is an Errors that lists everything that is wrong.
func Read(file string, src []byte, k Known) (*Job, error) {
	r, err := table.Read(file, src, instead, jobRule(k))
	if r == nil {
		return nil, err
	}
	j := decode(file, r.Root, k)
	j.reading = r
	bad := errorsIn(err)
	j.explain(bad, r.Root, k)
	if bad := append(bad, j.agree(r.Root, k)...); len(bad) > 0 {
		return nil, bad.Sorted()
	}
	j.canonical = j.Canonical()
	return j, nil
}

func decode(file string, v *table.Value, k Known) *Job {
	j := &Job{
		File:       file,
		Title:      v.Field("job").Words(),
		Revision:   v.Field("revision").Words(),
		Basis:      v.Field("basis").Words(),
		Method:     strength.Method(v.Field("method").Words()),
		LoadFactor: v.Field("load_factor").Number(),
		PinJoint:   v.Field("pin_joint").Words(),
		ShopName:   v.Field("shop").Words(),
		Shop:       shop.Plain(),
		Room:       decodeRoom(v.Field("room")),
		FactorSet:  v.Field("factor_set").Words(),
	}
	if v.Field("units").Words() == "inch" {
		j.Units = units.Inch
	}
	for _, id := range v.Field("leave_out").List() {
		j.LeaveOut = append(j.LeaveOut, id.Words())
	}
	factors := v.Field("factors")
	for _, symbol := range factors.Keys() {
		if j.Factors == nil {
			j.Factors = map[string]float64{}
		}
		j.Factors[symbol] = factors.Field(symbol).Number()
	}
	for _, s := range v.Field("sheets").List() {
		turns := Turns(s.Field("turns").Words())
		if turns == "" {
			turns = AnyTurn
		}
		j.Sheets = append(j.Sheets, Sheet{
			ThicknessMM: s.Field("thickness").Number(), Material: s.Field("material").Words(), WidthMM: s.Field("width").Number(),
			HeightMM: s.Field("height").Number(), Quantity: max(1, int(s.Field("quantity").Number())), Turns: turns,
		})
	}
	j.Rack = decodeRack(v.Field("rack"))
	j.Vehicle = decodeVehicle(j.Title, v.Field("vehicle"))
	cases := v.Field("cases")
	for _, name := range cases.Keys() {
		c := cases.Field(name)
		j.Cases = append(j.Cases, Case{
			Name: name, Level: part.Level(c.Field("level").Words()), Source: c.Field("source").Words(), Words: c.Field("words").Words(), AtRest: c.Field("motion").Words() == AtRest,
		})
	}
	for _, b := range v.Field("brackets").List() {
		j.Brackets = append(j.Brackets, decodeBracket(b, k.Kinds))
	}
	return j
}

func decodeRack(v *table.Value) *Rack {
	if v == nil {
		return nil
	}
	lengths := func(name string) []float64 {
		var out []float64
		for _, one := range v.Field(name).List() {
			out = append(out, one.Number())
		}
		return out
	}
	r := &Rack{PlatesMM: lengths("plates"), PinsMM: lengths("pins"), WeldsMM: lengths("welds")}
	for _, one := range v.Field("bolts").List() {
		r.Bolts = append(r.Bolts, one.Words())
	}
	return r
}

func decodeRoom(v *table.Value) access.Room {
	r := access.Usual()
	for _, m := range access.Measures() {
		if f := v.Field(m.Name); f != nil {
			*m.Of(&r) = f.Number()
		}
	}
	return r
}

func decodeBracket(v *table.Value, kinds []geometry.Kind) Bracket {
	b := Bracket{
		Name:     v.Field("name").Words(),
		Kind:     v.Field("kind").Words(),
		Hand:     part.Hand(v.Field("hand").Words()),
		Mark:     v.Field("mark").Words(),
		Quantity: max(1, int(v.Field("quantity").Number())),
		Mount:    v.Field("mount").Words(), Tray: v.Field("tray").Words(), LoadPoint: v.Field("load_point").Words(), BodySide: v.Field("side").Words() == "body",
	}
	if i := slices.IndexFunc(kinds, func(k geometry.Kind) bool { return k.Name == b.Kind }); i >= 0 {
		b.Params = decodeParams(v.Field("parameters"), kinds[i].Params)
	}
	for _, l := range v.Field("loads").List() {
		b.Loads = append(b.Loads, Load{
			Case: l.Field("case").Words(), State: l.Field("state").Words(), LoadPoint: l.Field("load_point").Words(),
			Force: decodeVec(l.Field("force")), Moment: decodeVec(l.Field("moment")),
		})
	}
	for _, c := range v.Field("spectrum").List() {
		b.Spectrum = append(b.Spectrum, strength.StressCycle{From: c.Field("from").Words(), To: c.Field("to").Words(), Cycles: c.Field("cycles").Number()})
	}
	return b
}

// decodeParams gives the parameters that are given, in the order of their declaration.
func decodeParams(v *table.Value, declared []geometry.Param) []part.Param {
	var out []part.Param
	for _, d := range declared {
		p := v.Field(d.Name)
		if p != nil {
			out = append(out, d.Given(p.Number(), p.Words()))
		}
	}
	return out
}

func decodeVec(v *table.Value) part.Vec {
	return part.Vec{X: v.Field("x").Number(), Y: v.Field("y").Number(), Z: v.Field("z").Number()}
}
