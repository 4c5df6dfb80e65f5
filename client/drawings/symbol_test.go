package drawings

import (
	"math"
	"slices"
	"testing"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/part/parttest"
	"lugwright/units"
)

// plateWeld is a bracket whose ear has fillets of such lengths on its two faces.
func plateWeld(one, other []float64) *part.Bracket {
	b := parttest.Bracket()
	w := part.WeldGroup{ID: "w1", Joins: [2]string{"ear-1", "base.a"}, Kind: part.Fillet, LegMM: 6, BothSides: true, Electrode: "E70"}
	for k, runs := range [2][]float64{one, other} {
		x, y := []float64{-11, -23}[k], 20.0
		for _, l := range runs {
			w.Segments = append(w.Segments, part.WeldSegment{A: part.Vec{X: x, Y: y, Z: 10}, B: part.Vec{X: x, Y: y + l, Z: 10}})
			y += l + 5
		}
	}
	b.Welds = []part.WeldGroup{w}
	return b
}

// dashes are the broken level lines of a drawing's items.
func dashes(list []draw.Item) (out []*draw.Path) {
	for _, i := range list {
		switch i := i.(type) {
		case *draw.Group:
			out = append(out, dashes(i.Items)...)
		case *draw.Path:
			if i.Pen.Dash != nil && len(i.Segments) == 1 && i.Start.Y == i.Segments[0].To.Y {
				out = append(out, i)
			}
		}
	}
	return out
}

// ISO 2553 system A, from memory: the dashed identification line is left out of symmetrical welds alone. AWS A2.4 has none.
func TestIdentificationLine(t *testing.T) {
	for _, c := range []struct {
		one, other []float64
		system     units.System
		want       bool
	}{
		{[]float64{66}, []float64{66}, units.Metric, false},
		{[]float64{45, 20}, []float64{20, 45}, units.Metric, false},
		{[]float64{116}, []float64{45, 45}, units.Metric, true},
		{[]float64{90}, []float64{45, 45}, units.Metric, true},
		{[]float64{45, 45, 45}, []float64{45, 45}, units.Metric, true},
		{[]float64{10, 20, 10, 20}, []float64{20, 5, 5, 30}, units.Metric, true}, // written as equal totals
		{[]float64{66}, nil, units.Metric, true},
		{[]float64{116}, []float64{45, 45}, units.Inch, false},
	} {
		b := plateWeld(c.one, c.other)
		s := newSymbol(b, &b.Welds[0], &Options{Units: c.system}, part.Vec{X: 1})
		var g page
		s.draw(&g, shape.Point{X: 100, Y: 50}, 1)
		found := dashes(g.items)
		if got := len(found) == 1; got != c.want || len(found) > 1 {
			t.Errorf("%v and %v: %d broken lines", c.one, c.other, len(found))
		}
		if c.want && len(c.other) > 0 {
			// What is on the other side stands on the broken line, its words clear of it.
			y := found[0].Start.Y
			under := slices.ContainsFunc(g.items, func(i draw.Item) bool {
				p, ok := i.(*draw.Path)
				return ok && p.Pen.WidthMM == 0.3 && p.Start.Y == y && p.Segments[0].To.Y < y
			})
			if !under {
				t.Errorf("%v and %v: no sign hangs from the broken line", c.one, c.other)
			}
		}
		if list := clashes(&draw.Drawing{WidthMM: 200, HeightMM: 100, Items: g.items}); list != nil {
			t.Errorf("%v and %v: %v", c.one, c.other, list)
		}
	}
}

// A welding symbol's leader ends in an arrowhead at its joint, after both standards from memory; balloons keep their dots.
func TestWeldArrows(t *testing.T) {
	b := plateWeld([]float64{66}, []float64{66})
	symbols := 0
	for _, d := range Of(b, nil).All(Options{}) {
		walkGroups(d.Items, "", func(id string, list []draw.Item) {
			if id != GroupID("w1") {
				return
			}
			symbol := slices.ContainsFunc(list, func(i draw.Item) bool { _, ok := i.(*draw.Text); return ok })
			if symbol {
				symbols++
			}
			heads, dots := 0, 0
			var tip draw.Point
			for _, i := range list {
				p, ok := i.(*draw.Path)
				switch {
				case !ok || !p.Closed || !p.Fill.On:
				case len(p.Segments) == 2:
					heads, tip = heads+1, p.Start
				default:
					dots++
				}
			}
			if symbol && (heads != 1 || dots != 0) {
				t.Errorf("%s: %d arrowheads, %d dots", d.Name, heads, dots)
			}
			if leader, ok := list[0].(*draw.Path); symbol && (!ok || math.Hypot(leader.Start.X-tip.X, leader.Start.Y-tip.Y) > 1e-9) {
				t.Error(d.Name + ": the head is not at the leader's end")
			}
		})
	}
	if symbols != 2 {
		t.Errorf("%d symbols, need one beside the views and one in the drawing of welds", symbols)
	}
}

func walkGroups(list []draw.Item, id string, each func(id string, list []draw.Item)) {
	each(id, list)
	for _, i := range list {
		if g, ok := i.(*draw.Group); ok {
			walkGroups(g.Items, g.ID, each)
		}
	}
}
