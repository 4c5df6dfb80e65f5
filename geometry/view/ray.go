package view

import (
	"lugwright/geometry/shape"
	"lugwright/part"
)

// nearMM is how far from a point on a surface its view begins.
const nearMM = 0.3

// Sees says whether nothing stands between the viewer and a point of space, which may be on a surface.
func (s *Scene) Sees(p part.Vec) bool {
	for i := range s.solids {
		if s.solids[i].stops(p, s.Eye) {
			return false
		}
	}
	return true
}

// stops says whether the ray from a point meets the solid.
func (s *solid) stops(p, along part.Vec) bool {
	u, v, w := s.pose.Local(p)
	from, to := nearMM, 1e5
	rise := along.Dot(s.pose.W())
	switch {
	case rise > 1e-9 || rise < -1e-9:
		a, b := (s.lo-w)/rise, (s.hi-w)/rise
		from, to = max(from, min(a, b)), min(to, max(a, b))
	case w < s.lo+1e-6 || w > s.hi-1e-6:
		return false
	}
	if to <= from {
		return false
	}
	way := shape.Point{X: along.Dot(s.pose.U), Y: along.Dot(s.pose.V)}
	a, b := shape.Point{X: u, Y: v}.Add(way.Scale(from)), shape.Point{X: u, Y: v}.Add(way.Scale(to))
	if Within(a.Lerp(b, 1e-3), s.loops) || Within(b.Lerp(a, 1e-3), s.loops) {
		return true
	}
	for _, r := range s.loops {
		for i, c := range r.Points {
			if across(a, b, c, r.After(i)) {
				return true
			}
		}
	}
	return false
}

// across says whether two stretches cross.
func across(a, b, c, d shape.Point) bool {
	side := func(p, q, r shape.Point) bool { return q.Sub(p).Cross(r.Sub(p)) > 0 }
	return side(a, b, c) != side(a, b, d) && side(c, d, a) != side(c, d, b)
}
