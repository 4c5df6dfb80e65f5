package sweep

// This file plots each bracket of a job over the thicknesses of plate that the job has.

import (
	"context"
	"fmt"
	"math"

	"lugwright/client/job"
	"lugwright/client/paper"
	"lugwright/client/plots"
	"lugwright/client/run"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/units"
)

// Thicknesses plots mass against what is used for each bracket of a job, over its stock, the job as its run gives it; nil for a job that names no plates. Varied is
// the thickness of which most depends in a bracket, the others as they are.
func Thicknesses(ctx context.Context, c *dial.Client, j *job.Job) (*plots.Group, error) {
	if len(j.Sheets) == 0 && (j.Rack == nil || len(j.Rack.PlatesMM) == 0) || len(j.Brackets) == 0 {
		return nil, nil
	}
	kinds, err := c.Kinds(ctx)
	if err != nil {
		return nil, err
	}
	densities, err := run.ReadDensities(ctx, c)
	if err != nil {
		return nil, err
	}
	bench := &Bench{Client: c, Job: j, Densities: densities, Margin: 1}
	out := &plots.Group{
		Head: "Thickness of plate",
		Note: "one thickness of each bracket is varied over the plates that the job names, the others as they are; masses of one piece with welds and bolts",
		Table: &paper.Table{Caption: "What is tried", Heads: []paper.Head{
			{Text: "bracket"}, {Text: "thickness of"}, {Text: "plate", Numbers: true}, {Text: "mass", Numbers: true}, {Text: "used", Numbers: true}, {Text: "outcome"},
		}},
	}
	for i := range j.Brackets {
		s, err := bench.thickness(ctx, &j.Brackets[i], kinds)
		if err != nil {
			return nil, err
		}
		if s != nil {
			out.Charts = append(out.Charts, bench.thicknessChart(s))
			out.Table.Rows = append(out.Table.Rows, bench.tried(s)...)
		}
	}
	if out.Charts == nil {
		return nil, nil
	}
	return out, nil
}

// thickness tries every thickness of plate in a bracket alone and gives the one that most depends on; nil where the bracket has none to choose.
func (b *Bench) thickness(ctx context.Context, spec *job.Bracket, kinds []geometry.Kind) (*Swept, error) {
	kind, err := geometry.Find(kinds, spec.Kind)
	if err != nil {
		return nil, err
	}
	sizes, err := Roles(ctx, b.Client, spec, kind)
	if err != nil {
		return nil, err
	}
	var best *Swept
	most := 0.0
	for _, p := range kind.Params {
		values, _ := Stocked(b.Job, spec, p, Plate)
		if sizes.Roles[p.Name] != Plate || len(values) == 0 {
			continue
		}
		g := &Grid{Spec: spec, Axes: []Axis{Of(p, append(values, Current(spec, &p))...)}}
		variants := make([][]part.Param, g.Count())
		for i := range variants {
			variants[i] = g.Values(i)
		}
		rows, err := b.Try(ctx, spec, variants)
		if err != nil {
			return nil, err
		}
		for i := range rows {
			rows[i].Index = i
		}
		if d := depends(rows); best == nil || d > most {
			best, most = Settle(g, rows), d
		}
	}
	return best, nil
}

// depends is how much what is used changes over rows, as far as it is shown.
func depends(rows []Row) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for i := range rows {
		if k := rows[i].Governs; k != nil {
			u := min(k.Utilisation, mostShown)
			lo, hi = min(lo, u), max(hi, u)
		}
	}
	return max(hi-lo, 0)
}

// thicknessChart has a line with its thickness for each row.
func (b *Bench) thicknessChart(s *Swept) *plots.Chart {
	unit, dim := "kg", units.Mass
	if b.Job.Units == units.Inch {
		unit = "lb"
	}
	factor, _, _ := units.Factor(unit)
	p := s.Grid.Axes[0].Param
	c := s.Picture(b.Job, fmt.Sprintf("%s: %s over the plates of the job", s.Grid.Spec.Name, p.Name), "mass, "+unit, b.Margin, func(t *Takes) float64 { return t.KG / factor }).Chart()
	c.Name = "thickness-" + s.Grid.Spec.Name
	now := Current(s.Grid.Spec, &p)
	for i := range s.Rows {
		r := &s.Rows[i]
		if r.Governs == nil {
			continue
		}
		words := Say(r.Values[0], b.Job.Units)
		if r.Values[0].Number == now.Number {
			words += ", as it is"
		}
		c.Uprights = append(c.Uprights, plots.Upright{At: r.Takes.KG / factor, Words: words})
		c.Desc += fmt.Sprintf(" %s: %s, %s.", Say(r.Values[0], b.Job.Units), units.Format(r.Takes.KG, dim, b.Job.Units), units.Utilisation(r.Governs.Utilisation))
	}
	return c
}

// tried are rows of the table, what is refused with them.
func (b *Bench) tried(s *Swept) []paper.Row {
	var out []paper.Row
	for i := range s.Rows {
		r := &s.Rows[i]
		mass, used := "-", "-"
		if r.Outcome != Refused {
			mass = units.Format(r.Takes.KG, units.Mass, b.Job.Units)
		}
		if r.Governs != nil && !math.IsInf(r.Governs.Utilisation, 0) {
			used = units.Utilisation(r.Governs.Utilisation)
		}
		outcome := string(r.Outcome)
		switch {
		case r.Outcome == Refused:
			outcome = "cannot be made: " + units.Words(r.Why(), b.Job.Units)
		case r == s.Lightest:
			outcome += ", the lightest"
		}
		out = append(out, paper.Row{Cells: []string{s.Grid.Spec.Name, s.Grid.Axes[0].Param.Name, Say(r.Values[0], b.Job.Units), mass, used, outcome}})
	}
	return out
}
