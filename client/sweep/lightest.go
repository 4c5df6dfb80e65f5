package sweep

// This file finds the lightest that passes, and what stops it from being lighter.

import (
	"cmp"
	"slices"
)

// Compare orders by mass, then cut length, then weld metal.
func (t *Takes) Compare(o *Takes) int {
	return cmp.Or(cmp.Compare(t.KG, o.KG), cmp.Compare(t.CutMM, o.CutMM), cmp.Compare(t.WeldMM3, o.WeldMM3))
}

// LightestFirst is the passing rows by mass, then cut length, weld metal and the order of the grid.
func LightestFirst(rows []Row) []*Row {
	var out []*Row
	for i := range rows {
		if rows[i].Outcome == Passes {
			out = append(out, &rows[i])
		}
	}
	slices.SortStableFunc(out, func(a, b *Row) int { return a.Takes.Compare(&b.Takes) })
	return out
}

// Nearest is the row that comes nearest to passing, over all its checks. Nil when there are no rows.
func Nearest(rows []Row) *Row {
	var best *Row
	for i := range rows {
		if r := &rows[i]; best == nil || r.Excess < best.Excess {
			best = r
		}
	}
	return best
}

// Step is what one step down of one axis brings, the others as they are.
type Step struct {
	Axis *Axis
	Row  *Row // nil: there is no smaller value in the sweep, or it was not reached
}

// Thinner gives, for each axis that has an order, the variant one step down from a row of the grid. The rows are the grid's, in order, from the first on.
func Thinner(g *Grid, rows []Row, from *Row) []Step {
	var out []Step
	for k := range g.Axes {
		a := &g.Axes[k]
		if !Ordered(a.Param) || len(a.Values) == 1 {
			continue
		}
		s := Step{Axis: a}
		if i := g.Below(from.Index, k); i >= 0 && i < len(rows) {
			s.Row = &rows[i]
		}
		out = append(out, s)
	}
	return out
}
