package job

// This file turns a file into a job: read, held against the table, checked as a whole.

import (
	"slices"

	"lugwright/client/yamlfile"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

// Read reads a job. File is the name for messages. The error is an Errors that lists everything that is wrong.
func Read(file string, src []byte, k Known) (*Job, error) {
	root, err := yamlfile.Tree(file, src, instead)
	if err != nil {
		return nil, err
	}
	w := &walker{file: file, places: map[string]Place{}, keys: map[string]Place{}}
	v := w.walk("", root, table(k))
	j := decode(file, v, k)
	j.places, j.keys = w.places, w.keys
	w.errs = append(w.errs, j.agree(v, k)...)
	if len(w.errs) > 0 {
		return nil, w.errs.Sorted()
	}
	return j, nil
}

func decode(file string, v *value, k Known) *Job {
	j := &Job{
		File:       file,
		Title:      v.field("job").words(),
		Revision:   v.field("revision").words(),
		Basis:      v.field("basis").words(),
		Method:     strength.Method(v.field("method").words()),
		LoadFactor: v.field("load_factor").num(),
		PinJoint:   v.field("pin_joint").words(),
		FactorSet:  v.field("factor_set").words(),
	}
	if v.field("units").words() == "inch" {
		j.Units = units.Inch
	}
	for _, id := range v.field("leave_out").list() {
		j.LeaveOut = append(j.LeaveOut, id.words())
	}
	factors := v.field("factors")
	for _, symbol := range factors.keys() {
		if j.Factors == nil {
			j.Factors = map[string]float64{}
		}
		j.Factors[symbol] = factors.field(symbol).num()
	}
	cases := v.field("cases")
	for _, name := range cases.keys() {
		c := cases.field(name)
		j.Cases = append(j.Cases, Case{name, part.Level(c.field("level").words()), c.field("source").words(), c.field("words").words()})
	}
	for _, b := range v.field("brackets").list() {
		j.Brackets = append(j.Brackets, decodeBracket(b, k.Kinds))
	}
	return j
}

func decodeBracket(v *value, kinds []geometry.Kind) Bracket {
	b := Bracket{
		Name:     v.field("name").words(),
		Kind:     v.field("kind").words(),
		Hand:     part.Hand(v.field("hand").words()),
		Mark:     v.field("mark").words(),
		Quantity: max(1, int(v.field("quantity").num())),
	}
	if i := slices.IndexFunc(kinds, func(k geometry.Kind) bool { return k.Name == b.Kind }); i >= 0 {
		b.Params = decodeParams(v.field("parameters"), kinds[i].Params)
	}
	for _, l := range v.field("loads").list() {
		b.Loads = append(b.Loads, Load{
			Case: l.field("case").words(), State: l.field("state").words(), LoadPoint: l.field("load_point").words(),
			Force: decodeVec(l.field("force")), Moment: decodeVec(l.field("moment")),
		})
	}
	for _, c := range v.field("spectrum").list() {
		b.Spectrum = append(b.Spectrum, strength.StressCycle{From: c.field("from").words(), To: c.field("to").words(), Cycles: c.field("cycles").num()})
	}
	return b
}

// decodeParams gives the parameters that are given, in the order of their declaration.
func decodeParams(v *value, declared []geometry.Param) []part.Param {
	var out []part.Param
	for _, d := range declared {
		p := v.field(d.Name)
		switch {
		case p == nil:
		case d.Unit == geometry.Word || d.Unit == geometry.Size:
			out = append(out, part.Param{Name: d.Name, Unit: string(d.Unit), Text: p.text})
		default:
			out = append(out, part.Param{Name: d.Name, Unit: string(d.Unit), Number: p.number})
		}
	}
	return out
}

func decodeVec(v *value) part.Vec {
	return part.Vec{X: v.field("x").num(), Y: v.field("y").num(), Z: v.field("z").num()}
}
