package job

// This file reads a family: what many brackets of one kind have in common, and how they differ.

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/table"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/units"
)

// MostVariants is the most variants of a grid.
const MostVariants = 100_000_000

// Family is many brackets of one kind. Its Job has one bracket: what all have in common.
type Family struct {
	*Job
	Kind geometry.Kind
	Axes []Axis // of a grid, the last one varying fastest; empty: rows
	Rows string // CSV file with one row a variant, beside the family's own; empty: a grid, or a file named elsewhere
}

// Axis is a parameter and the values it takes.
type Axis struct {
	Param  geometry.Param
	Values []part.Param
}

// ReadFamily reads a family file. Variants have to come from it, unless rows come from elsewhere.
func ReadFamily(file string, src []byte, k Known, rowsElsewhere bool) (*Family, error) {
	r, err := table.Read(file, src, "docs/family-file.md shows the form of a family", familyRule(k))
	if r == nil || r.Root == nil { // no file, or one without fields
		return nil, err
	}
	f := &Family{Job: decode(file, r.Root, k), Rows: r.Root.Field("rows").Words()}
	f.reading = r
	f.Title = r.Root.Field("family").Words()
	b := decodeBracket(r.Root, k.Kinds)
	b.Name = "variant"
	f.Brackets = []Bracket{b}
	bad := errorsIn(err)
	f.explain(bad, r.Root, k)
	bad = append(bad, f.agree(r.Root, k)...)
	bad = append(bad, f.agreeLoads(r.Root)...)
	if i := slices.IndexFunc(k.Kinds, func(k geometry.Kind) bool { return k.Name == b.Kind }); i >= 0 {
		f.Kind = k.Kinds[i]
		bad = append(bad, f.axes(r.Root)...)
		bad = append(bad, f.oneSource(r.Root, rowsElsewhere)...)
	}
	if len(bad) > 0 {
		return nil, bad.Sorted()
	}
	f.canonical = f.Job.Canonical()
	return f, nil
}

// Canonical is the family without its file's name and layout.
func (f *Family) Canonical() []byte {
	axes, err := json.Marshal(f.Axes)
	if err != nil {
		panic("job: a family that was read has only finite numbers: " + err.Error())
	}
	return append(f.Job.Canonical(), axes...)
}

// Variant is one of the family as a job of its own.
func (f *Family) Variant(id int64, params []part.Param) *Job {
	j := *f.Job
	j.canonical = nil
	j.Title = fmt.Sprintf("%s, variant %d", f.Title, id)
	b := f.Brackets[0]
	b.Name, b.Params = fmt.Sprintf("variant-%d", id), slices.Clone(params)
	j.Brackets = []Bracket{b}
	return &j
}

// agreeLoads holds the loads against the cases as those of a bracket are.
func (f *Family) agreeLoads(v *table.Value) Errors {
	a := &agreement{j: f.Job}
	a.loads("", &f.Brackets[0], v)
	a.spectrum("", &f.Brackets[0], v)
	for _, e := range a.errs {
		e.Field = strings.TrimPrefix(e.Field, ".")
	}
	return a.errs
}

func familyRule(k Known) *table.Rule {
	r := table.Mapping("A lugwright family: many brackets of one kind that differ in some parameters.",
		table.Must("family", table.Text(120, "What it is, in a few words.")),
		table.May("revision", table.Text(20, "Revision of the family.")),
	)
	r.Add(basisFields(k)...)
	r.Add(factorFields(checking(k.Bases))...)
	r.Add(
		leaveOutField(),
		table.Must("cases", table.Named("The load cases, named once.", caseRule())),
		table.Must("kind", table.Choice("The kind of bracket.", kindNames(k.Kinds)...)),
		table.Must("hand", table.Choice("Side of the vehicle.", string(part.LeftHand), string(part.RightHand))),
		table.Must("loads", table.List("Forces on every bracket at its load point, one a load case and state.", loadRule())),
		table.May("spectrum", table.List("Changes of load that repeat, for fatigue; left out, fatigue is not checked.", cycleRule())),
		table.May("rows", table.Text(200, "A CSV file beside this one with a row for every variant.")),
	)
	for _, kind := range k.Kinds {
		r.Pick("kind", kind.Name, "parameters", func() *table.Rule { return paramsRule(kind) })
		r.Pick("kind", kind.Name, "grid", func() *table.Rule { return gridRule(kind) })
	}
	r.With("family", "basis", "method")
	return r
}

func gridRule(k geometry.Kind) *table.Rule {
	r := table.Mapping("Parameters and the values that each takes: every combination is a variant.").ListedBy("lugwright kinds " + k.Name)
	for _, p := range k.Params {
		values := table.List("Values of "+p.Name+", or from, to and step.", paramRule(p))
		if dim := dimOf(p.Unit); dim != 0 {
			values.Or(table.Mapping("From a value to another in steps.",
				table.Must("from", paramRule(p)), table.Must("to", paramRule(p)), table.Must("step", table.Quantity(dim, leastStep[p.Unit], p.Max-p.Min, "The step from one value to the next."))))
		}
		r.Add(table.May(p.Name, values))
	}
	return r
}

// leastStep keeps steps above zero: a micrometre, a thousandth of a degree, a ten-thousandth, one.
var leastStep = map[geometry.Unit]float64{geometry.MM: 0.001, geometry.Rad: math.Pi / 180000, geometry.Ratio: 0.0001, geometry.Count: 1}

// dimOf is what a parameter's number is; 0 for words.
func dimOf(u geometry.Unit) units.Dim {
	return map[geometry.Unit]units.Dim{geometry.MM: units.Length, geometry.Rad: units.Angle, geometry.Ratio: units.Ratio, geometry.Count: units.Count}[u]
}

// oneSource refuses a family without variants, and one whose variants come from two places.
func (f *Family) oneSource(v *table.Value, rowsElsewhere bool) Errors {
	rows, grid := v.Field("rows"), v.Field("grid")
	at := func(v *table.Value, field, found, accept string) Errors {
		return Errors{{File: f.File, At: v.At(), Field: field, Found: found, Accept: accept}}
	}
	switch {
	case grid != nil && (rows != nil || rowsElsewhere):
		return at(grid, "grid", "a grid and rows", "one of them says what the variants are")
	case rows != nil && rowsElsewhere:
		return at(rows, "rows", "rows here and on the command line", "one file of rows")
	case slices.Contains(v.Keys(), "grid") || rows != nil || rowsElsewhere:
		return nil
	}
	return at(v, "grid", "missing", "grid, with the values that parameters take, or rows, a CSV file with a row for every variant")
}

// axes reads the grid.
func (f *Family) axes(v *table.Value) Errors {
	var bad Errors
	grid := v.Field("grid")
	refuse := func(at *table.Value, name, found, accept string) {
		bad = append(bad, &Error{File: f.File, At: at.At(), Field: "grid." + name, Found: found, Accept: accept})
	}
	count := 1.0
	for _, name := range grid.Keys() {
		g := grid.Field(name)
		i := slices.IndexFunc(f.Kind.Params, func(p geometry.Param) bool { return p.Name == name })
		if g == nil || i < 0 {
			continue
		}
		axis := Axis{Param: f.Kind.Params[i]}
		if slices.ContainsFunc(f.Brackets[0].Params, func(p part.Param) bool { return p.Name == name }) {
			refuse(g, name, "stands under parameters too", "one value there, or several here")
		}
		for _, one := range g.List() {
			if one == nil {
				continue
			}
			p := axis.Param.Given(one.Number(), one.Words())
			if slices.Contains(axis.Values, p) {
				refuse(one, name, one.Words()+" stands there twice", "each value once")
				continue
			}
			axis.Values = append(axis.Values, p)
		}
		if from, to, step := g.Field("from"), g.Field("to"), g.Field("step"); from != nil && to != nil && step != nil {
			if !(from.Number() < to.Number()) {
				refuse(from, name+".from", from.Words()+" to "+to.Words(), "the smaller one first")
				continue
			}
			values, found := stepped(from.Number(), to.Number(), step.Number())
			if found != "" {
				refuse(step, name+".step", step.Words()+found, fmt.Sprintf("a step that leads from %s to %s in whole numbers, at most %d of them", from.Words(), to.Words(), mostSteps))
			}
			for _, n := range values {
				axis.Values = append(axis.Values, axis.Param.Given(n, ""))
			}
		}
		count *= float64(len(axis.Values))
		f.Axes = append(f.Axes, axis)
	}
	if count > MostVariants {
		refuse(grid, "", fmt.Sprintf("%.3g variants", count), fmt.Sprintf("at most %d", MostVariants))
	}
	for _, e := range bad {
		e.Field = strings.TrimSuffix(e.Field, ".")
	}
	return bad
}

// mostSteps is the most values of one parameter.
const mostSteps = 10_000

// stepped gives the values from one to another; found says why there are none.
func stepped(from, to, step float64) (values []float64, found string) {
	n := (to - from) / step
	whole := math.Round(n)
	switch {
	case math.Abs(n-whole) > 1e-6:
		return nil, fmt.Sprintf(" misses the end after %.4g steps", n)
	case whole >= mostSteps:
		return nil, fmt.Sprintf(" gives %.0f values", whole+1)
	}
	for i := range int(whole) {
		values = append(values, from+float64(i)*step)
	}
	return append(values, to), ""
}
