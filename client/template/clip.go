package template

import (
	"math"

	"lugwright/geometry/shape"
)

// clipped are the parts of an edge within a box, in its order. Pieces of arcs stay arcs, but for the last degree at the box's edge, which is straight.
func clipped(e shape.Edge, box shape.Box) []shape.Edge {
	if !e.IsArc() {
		if a, b, ok := within(e.A, e.B, box); ok {
			return []shape.Edge{{A: a, B: b}}
		}
		return nil
	}
	if inside(e.BBox(), box) {
		return []shape.Edge{e}
	}
	n := max(1, int(math.Ceil(math.Abs(e.Sweep())/(math.Pi/180))))
	bulge := math.Tan(e.Sweep() / float64(n) / 4)
	var out []shape.Edge
	for i := range n {
		piece := shape.Edge{A: e.At(float64(i) / float64(n)), B: e.At(float64(i+1) / float64(n)), Bulge: bulge}
		if inside(piece.BBox(), box) {
			out = append(out, piece)
		} else if a, b, ok := within(piece.A, piece.B, box); ok {
			out = append(out, shape.Edge{A: a, B: b})
		}
	}
	return out
}

func inside(b, in shape.Box) bool {
	return b.Min.X >= in.Min.X && b.Min.Y >= in.Min.Y && b.Max.X <= in.Max.X && b.Max.Y <= in.Max.Y
}

// within is the part of a straight line in a box, by the method of Liang and Barsky.
func within(a, b shape.Point, box shape.Box) (from, to shape.Point, ok bool) {
	lo, hi := 0.0, 1.0
	d := b.Sub(a)
	for _, k := range [4][2]float64{{-d.X, a.X - box.Min.X}, {d.X, box.Max.X - a.X}, {-d.Y, a.Y - box.Min.Y}, {d.Y, box.Max.Y - a.Y}} {
		switch p, q := k[0], k[1]; {
		case p == 0 && q < 0:
			return a, b, false
		case p < 0:
			lo = max(lo, q/p)
		case p > 0:
			hi = min(hi, q/p)
		}
	}
	if lo >= hi {
		return a, b, false
	}
	return a.Add(d.Scale(lo)), a.Add(d.Scale(hi)), true
}
