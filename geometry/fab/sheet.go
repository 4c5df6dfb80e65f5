package fab

// Whether a text has steel all round it.

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// sheet is a plate on which a place is looked for. What bounds it is kept by what is quickest to ask: most plates are straight or convex, with round holes.
type sheet struct {
	outer  shape.Loop
	box    shape.Box
	disc   *round // the plate itself
	sides  []side
	curves []curve // edges of outer that no side stands for
	rounds []round
	cuts   []shape.Loop // openings that are not round
	points []round      // some places on curves and cuts
	bends  []part.Bend
	taken  []shape.Box
}

// side is the line of a straight edge that has all the plate on its left: what is further along n than off.
type side struct {
	n   shape.Point
	off float64
}

// curve is an edge, with the circle of an arc.
type curve struct {
	shape.Edge
	round
}

// round is a hole.
type round struct {
	center shape.Point
	radius float64
}

func newSheet(p *part.Plate, taken []shape.Box) *sheet {
	s := &sheet{outer: p.Outer.CCW(), box: p.Outer.BBox(), bends: p.Bends, taken: taken}
	if center, dia, ok := s.outer.IsCircle(); ok {
		s.disc = &round{center, dia / 2}
	}
	for i := range s.outer {
		if s.disc != nil {
			break
		}
		if e := s.outer.Edge(i); !s.bounded(e) {
			s.curves = append(s.curves, curve{e, round{e.Center(), e.Radius()}})
			s.mark(e)
		}
	}
	for _, l := range p.Cutouts {
		if center, dia, ok := l.IsCircle(); ok {
			s.rounds = append(s.rounds, round{center, dia / 2})
			continue
		}
		s.cuts = append(s.cuts, l)
		for i := range l {
			s.mark(l.Edge(i))
		}
	}
	for i := range p.Holes {
		s.rounds = append(s.rounds, round{p.Holes[i].Center, p.Holes[i].DiaMM / 2})
	}
	return s
}

// mark keeps places on an edge.
func (s *sheet) mark(e shape.Edge) {
	s.points = append(s.points, round{center: e.A}, round{center: e.Mid()})
}

// bounded makes a side of an edge that is one.
func (s *sheet) bounded(e shape.Edge) bool {
	if e.IsArc() || e.A == e.B {
		return false
	}
	n := e.B.Sub(e.A).Unit().Perp()
	b := side{n, n.Dot(e.A)}
	for i := range s.outer {
		o := s.outer.Edge(i)
		if b.left(shape.Box{Min: o.A, Max: o.A}) < -shape.TouchMM || o.IsArc() && b.left(o.BBox()) < -shape.TouchMM {
			return false
		}
	}
	s.sides = append(s.sides, b)
	return true
}

// left is how far left of the line the nearest corner of a box lies.
func (b side) left(box shape.Box) float64 {
	at := box.Min
	if b.n.X < 0 {
		at.X = box.Max.X
	}
	if b.n.Y < 0 {
		at.Y = box.Max.Y
	}
	return b.n.Dot(at) - b.off
}

// within is how far inside the round a box lies.
func (r round) within(box shape.Box) float64 {
	x := max(box.Max.X-r.center.X, r.center.X-box.Min.X)
	y := max(box.Max.Y-r.center.Y, r.center.Y-box.Min.Y)
	return r.radius - math.Sqrt(x*x+y*y)
}

// from is how far the hole is from a box; 0 and less when it meets it.
func (r round) from(box shape.Box) float64 {
	x := max(box.Min.X-r.center.X, r.center.X-box.Max.X, 0)
	y := max(box.Min.Y-r.center.Y, r.center.Y-box.Max.Y, 0)
	return math.Sqrt(x*x+y*y) - r.radius
}

func near(rounds []round, box shape.Box, margin float64) bool {
	return slices.ContainsFunc(rounds, func(r round) bool { return r.from(box) < margin })
}

// covered says whether something that is welded on lies on a box.
func (s *sheet) covered(box shape.Box) bool {
	return slices.ContainsFunc(s.taken, func(b shape.Box) bool { return b.Overlaps(box) })
}

// clear says whether a box lies in the steel with the margin all round: of what is costly to ask the middle and the corners first.
func (s *sheet) clear(box shape.Box) bool {
	const margin = markMarginMM - shape.TouchMM
	if s.disc != nil && s.disc.within(box) < margin {
		return false
	}
	for i := range s.sides {
		if s.sides[i].left(box) < margin {
			return false
		}
	}
	if near(s.rounds, box, margin) || near(s.points, box, margin) {
		return false
	}
	if len(s.curves) == 0 && len(s.cuts) == 0 {
		return true
	}
	a, b := box.Min, box.Max
	text := [4]shape.Point{a, {X: b.X, Y: a.Y}, b, {X: a.X, Y: b.Y}}
	middle := box.Center()
	if s.nearCurve(middle, min(box.Width(), box.Height())/2+margin) || slices.ContainsFunc(text[:], func(p shape.Point) bool { return s.nearCurve(p, margin) }) {
		return false
	}
	if !(shape.Outline{Outer: s.outer, Holes: s.cuts}).Contains(middle) {
		return false
	}
	around := shape.Loop{{Point: text[0]}, {Point: text[1]}, {Point: text[2]}, {Point: text[3]}}
	if len(s.curves) > 0 && shape.LoopDistance(around, s.outer) < margin {
		return false
	}
	return !slices.ContainsFunc(s.cuts, func(l shape.Loop) bool { return box.Contains(l[0].Point) || shape.LoopDistance(around, l) < margin })
}

// nearCurve says whether the costly part of the boundary comes nearer to a point than d.
func (s *sheet) nearCurve(p shape.Point, d float64) bool {
	for i := range s.curves {
		c := &s.curves[i]
		if c.IsArc() && math.Abs(p.Dist(c.center)-c.radius) > d+shape.TouchMM {
			continue
		}
		if c.Within(p, d) {
			return true
		}
	}
	return slices.ContainsFunc(s.cuts, func(l shape.Loop) bool { return l.Within(p, d) })
}

// offFolds says whether a box lies beside every fold and what it takes.
func (s *sheet) offFolds(box shape.Box) bool {
	for i := range s.bends {
		b := &s.bends[i]
		across := b.B.Sub(b.A).Unit().Perp()
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, c := range [4]shape.Point{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}} {
			off := c.Sub(b.A).Dot(across)
			lo, hi = min(lo, off), max(hi, off)
		}
		if room := b.AllowanceMM/2 + markMarginMM; lo < room && hi > -room {
			return false
		}
	}
	return true
}
