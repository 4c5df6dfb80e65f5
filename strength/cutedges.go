package strength

// Fatigue of plates away from welds and holes: along cut edges, and where an outline turns inwards.

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
)

// leastReentrantMM is the radius under which the code has no category for an inward corner: 10 mm (3/8 in), AISC 360-22 Table, row 1.3 (from memory).
const leastReentrantMM = 10

// layEdges makes places for the edges of swept plates, then for where their outlines turn inwards.
func (r *run) layEdges() {
	for i := range r.b.Sweeps {
		if r.thing(r.b.Sweeps[i].Things[0]) != nil {
			all := r.cutsWhere(i, func(int) bool { return true })
			r.addStretch(Fatigue{Detail: CutEdge}, i, all, 1).notes = []string{"edges cut to a roughness of 25 um (1000 uin) or better, free of nicks; weathering steel is taken as coated"}
		}
	}
	for i := range r.b.Sweeps {
		if r.thing(r.b.Sweeps[i].Things[0]) == nil {
			continue
		}
		if turning := r.turning(i); turning != nil {
			r.addStretch(Fatigue{Detail: InwardCorner}, i, turning, 1)
		}
	}
}

// turning lists the cuts of a sweep beside places where its plate's outline turns inwards with a radius that the code knows; sharper ones it names as not checked.
func (r *run) turning(sweep int) []int {
	s := &r.b.Sweeps[sweep]
	along := s.To.Sub(s.From)
	n, step := along.Unit(), along.Norm()/scanSteps
	t := r.thing(s.Things[0])
	at := func(p shape.Point) float64 { return t.plate.Pose.At(p.X, p.Y, 0).Sub(s.From).Dot(n) }
	type stretch struct{ lo, hi float64 }
	var known []stretch
	for _, in := range inward(t.plate.Outer, t.plate.Cutouts) {
		a, b, c := at(in.A), at(in.Mid()), at(in.B)
		lo, hi := min(a, b, c), max(a, b, c)
		switch {
		case hi < -besideMM || lo > along.Norm()+besideMM:
		case in.Radius() < leastReentrantMM-shape.TouchMM:
			r.skip("fatigue where an outline turns inwards", s.Things[0], "a radius under 10 mm, for which the code has no category")
		default:
			known = append(known, stretch{lo, hi})
		}
	}
	return r.cutsWhere(sweep, func(k int) bool {
		place := r.cuts[k].at.Sub(s.From).Dot(n)
		return slices.ContainsFunc(known, func(k stretch) bool { return place > k.lo-step && place < k.hi+step })
	})
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
