package strength

// Fatigue of plates away from welds and holes: along cut edges, and where an outline turns inwards.

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
)

// leastReentrantMM is the radius under which the code has no category for an inward corner: 10 mm (3/8 in), AISC 360-22 Table, row 1.3 (from memory).
const leastReentrantMM = 10

// edged lists the sweeps through plates, whose edges are cut.
func (r *run) edged() []int {
	var out []int
	for i := range r.b.Sweeps {
		if r.thing(r.b.Sweeps[i].Things[0]) != nil {
			out = append(out, i)
		}
	}
	return out
}

// turning is a sweep with the cuts that are beside an inward corner of its plate.
type turning struct {
	sweep int
	cuts  []int
}

// reentrant finds where the outlines of swept plates turn inwards with a radius that the code knows; sharper ones it names as not checked.
func (r *run) reentrant() []turning {
	var out []turning
	for _, i := range r.edged() {
		s := &r.b.Sweeps[i]
		along := s.To.Sub(s.From)
		n, step := along.Unit(), along.Norm()/scanSteps
		t := r.thing(s.Things[0])
		at := func(p shape.Point) float64 { return t.plate.Pose.At(p.X, p.Y, 0).Sub(s.From).Dot(n) }
		found := turning{sweep: i}
		for _, in := range inward(t.plate.Outer, t.plate.Cutouts) {
			a, b, c := at(in.A), at(in.Mid()), at(in.B)
			lo, hi := min(a, b, c), max(a, b, c)
			if hi < -besideMM || lo > along.Norm()+besideMM {
				continue
			}
			if in.Radius() < leastReentrantMM-shape.TouchMM {
				r.skip("fatigue where an outline turns inwards", s.Things[0], "a radius under 10 mm, for which the code has no category")
				continue
			}
			for k := range r.cuts {
				place := r.cuts[k].at.Sub(s.From).Dot(n)
				if r.cuts[k].slot == i && place > lo-step && place < hi+step && !slices.Contains(found.cuts, k) {
					found.cuts = append(found.cuts, k)
				}
			}
		}
		if found.cuts != nil {
			out = append(out, found)
		}
	}
	return out
}

// inward lists the arcs of a plate's outline and openings that have the material outside them, and sharp corners as edges of no length. Round openings are
// holes.
func inward(outer shape.Loop, openings []shape.Loop) []shape.Edge {
	const degree = math.Pi / 180
	loops := []shape.Loop{outer.CCW()}
	for _, o := range openings {
		if _, _, round := o.IsCircle(); !round {
			loops = append(loops, o.CW())
		}
	}
	var out []shape.Edge
	for _, l := range loops { // the material is to the left of every edge
		for i, e := range l.Edges() {
			if e.Bulge < 0 {
				out = append(out, e)
			}
			a, b := l.Edge(i-1).TangentAt(1), e.TangentAt(0)
			if a.X*b.Y-a.Y*b.X < -math.Sin(degree) {
				out = append(out, shape.Edge{A: e.A, B: e.A})
			}
		}
	}
	return out
}
