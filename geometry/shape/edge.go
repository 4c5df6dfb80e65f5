package shape

// One edge: a line or an arc between two points.

import "math"

// Edge is a line (Bulge 0) or an arc from A to B. Bulge is the tangent of a quarter of the sweep, counter-clockwise
// positive; methods hold for any finite bulge, also above 1.
type Edge struct {
	A, B  Point
	Bulge float64
}

// IsArc reports whether the edge is curved.
func (e Edge) IsArc() bool { return e.Bulge != 0 }

// Sweep returns the angle through which the edge turns, in radians, counter-clockwise positive; 0 for a line.
func (e Edge) Sweep() float64 { return 4 * math.Atan(e.Bulge) }

// Chord returns the straight distance from A to B.
func (e Edge) Chord() float64 { return e.A.Dist(e.B) }

// Radius returns the arc's radius, and 0 for a line.
func (e Edge) Radius() float64 {
	if e.Bulge == 0 {
		return 0
	}
	b := math.Abs(e.Bulge)
	return e.Chord() * (1 + b*b) / (4 * b)
}

// Center returns the arc's centre, and the middle of a line.
func (e Edge) Center() Point {
	m := e.A.Lerp(e.B, 0.5)
	if e.Bulge == 0 {
		return m
	}
	k := (1 - e.Bulge*e.Bulge) / (4 * e.Bulge)
	return m.Add(e.B.Sub(e.A).Perp().Scale(k))
}

// Sagitta returns the rise of the arc over its chord, never negative; 0 for a line.
func (e Edge) Sagitta() float64 { return math.Abs(e.Bulge) * e.Chord() / 2 }

// Length returns the length along the edge.
func (e Edge) Length() float64 {
	c := e.Chord()
	t := 2 * math.Atan(math.Abs(e.Bulge))
	if t < 1e-4 {
		return c * (1 + t*t/6)
	}
	b := math.Abs(e.Bulge)
	return c * t * (1 + b*b) / (2 * b)
}

// Mid returns the point half-way along the edge.
func (e Edge) Mid() Point {
	return e.A.Lerp(e.B, 0.5).Sub(e.B.Sub(e.A).Perp().Scale(e.Bulge / 2))
}

// At returns the point at fraction t of the edge's length, 0 at A and 1 at B. It is built on the chord, so that it stays
// exact for the flattest arcs, whose centre is far away.
func (e Edge) At(t float64) Point {
	if e.Bulge == 0 {
		return e.A.Lerp(e.B, t)
	}
	h := 2 * math.Atan(e.Bulge)
	k := math.Sin(t*h) / math.Sin(h)
	s, c := math.Sincos((t - 1) * h)
	return e.A.Add(e.B.Sub(e.A).turn(c*k, s*k))
}

// TangentAt returns the unit direction of travel at fraction t of the length; the zero vector for an edge of no length.
func (e Edge) TangentAt(t float64) Point {
	u := e.B.Sub(e.A).Unit()
	if e.Bulge == 0 {
		return u
	}
	return u.Rotate((2*t - 1) * 2 * math.Atan(e.Bulge))
}

// Reverse returns the same edge travelled from B to A.
func (e Edge) Reverse() Edge { return Edge{e.B, e.A, -e.Bulge} }

// BBox returns the smallest box around the edge, the arc's quadrant points included.
func (e Edge) BBox() Box {
	box := Box{e.A, e.A}.Extend(e.B)
	if e.Bulge == 0 {
		return box
	}
	c, r := e.Center(), e.Radius()
	for _, q := range [4]Point{{c.X + r, c.Y}, {c.X, c.Y + r}, {c.X - r, c.Y}, {c.X, c.Y - r}} {
		if e.onArcSide(q) {
			box = box.Extend(q)
		}
	}
	return box
}

// onArcSide tells for a point of the arc's circle whether it is on the arc: whether it is on the belly side of the chord.
func (e Edge) onArcSide(p Point) bool {
	k := e.B.Sub(e.A).Cross(p.Sub(e.A))
	return k <= 0 && e.Bulge > 0 || k >= 0 && e.Bulge < 0
}

// endTangents returns the directions of travel at A and B without trigonometry, not of unit length.
// With half sweep h, (cos h, sin h) = (1-b^2, 2b)/(1+b^2).
func (e Edge) endTangents() (atA, atB Point) {
	ch, b := e.B.Sub(e.A), e.Bulge
	if b == 0 {
		return ch, ch
	}
	k := 1 / (1 + b*b)
	c, s := (1-b*b)*k, 2*b*k
	return ch.turn(c, -s), ch.turn(c, s)
}

// faces reports whether the foot of p lies on the edge rather than past an end: for an arc, whether p is in its sector.
func (e Edge) faces(p Point) bool {
	ta, tb := e.endTangents()
	afterA := ta.Dot(p.Sub(e.A)) >= 0
	beforeB := tb.Dot(e.B.Sub(p)) >= 0
	if math.Abs(e.Bulge) > 1 {
		return afterA || beforeB
	}
	return afterA && beforeB
}

// offCurve returns the signed distance of p from the edge's infinite line or full circle: positive on the right of the
// line, or outside the circle.
func (e Edge) offCurve(p Point) float64 {
	ch, q := e.B.Sub(e.A), p.Sub(e.A)
	if e.Bulge == 0 {
		c := ch.Norm()
		if c == 0 {
			return q.Norm()
		}
		return q.Cross(ch) / c
	}
	// The power of the point over (distance + radius) keeps its digits where distance - radius does not.
	k := (1 - e.Bulge*e.Bulge) / (2 * e.Bulge)
	power := q.Dot(q.Sub(ch)) - k*ch.Cross(q)
	return power / (p.Dist(e.Center()) + e.Radius())
}

// DistTo returns the least distance from p to the edge.
func (e Edge) DistTo(p Point) float64 {
	d := min(p.Dist(e.A), p.Dist(e.B))
	if e.A != e.B && e.faces(p) {
		d = min(d, math.Abs(e.offCurve(p)))
	}
	return d
}

// Within reports whether the edge is as near to p as d, or nearer.
func (e Edge) Within(p Point, d float64) bool { return !(e.atLeast(p) > d+far) && e.DistTo(p) <= d }

// atLeast is a lower bound of the distance from p, found without roots: that of a box round the chord, grown by the arc's rise. It may be negative.
func (e Edge) atLeast(p Point) float64 {
	dx, dy := math.Abs(e.B.X-e.A.X), math.Abs(e.B.Y-e.A.Y)
	b := math.Abs(e.Bulge)
	if b > 1 {
		return 0
	}
	rise := b * (dx + dy)
	x := math.Abs(2*p.X-e.A.X-e.B.X) - dx
	y := math.Abs(2*p.Y-e.A.Y-e.B.Y) - dy
	if x < y {
		x = y
	}
	return (x - rise) / 2
}

// Closest returns the point of the edge that is nearest to p, one of them where several are.
func (e Edge) Closest(p Point) Point {
	best := e.A
	if p.Dist(e.B) < p.Dist(best) {
		best = e.B
	}
	if e.A == e.B || !e.faces(p) {
		return best
	}
	foot := e.foot(p)
	if p.Dist(foot) < p.Dist(best) {
		return foot
	}
	return best
}

// foot is the nearest point of the edge's infinite line or full circle.
func (e Edge) foot(p Point) Point {
	if e.IsArc() {
		c := e.Center()
		return c.Add(p.Sub(c).Unit().Scale(e.Radius()))
	}
	ch := e.B.Sub(e.A)
	return e.A.Add(ch.Scale(p.Sub(e.A).Dot(ch) / ch.Dot(ch)))
}
