package fold

// One cut across a ring of corners.

import (
	"slices"

	"lugwright/geometry/shape"
)

// onLineMM is the distance within which a corner counts as on a cut.
const onLineMM = 1e-5

// cutter holds rings of corners that share their corners by number.
type cutter struct {
	points []shape.Point
	whole  []int   // the ring that everything was at first, counter-clockwise
	rings  [][]int // what it is cut into
}

// hit is where a line meets a ring: at the corner of a place, or between it and the next.
type hit struct {
	x      float64
	place  int
	corner bool
}

// cut splits the ring that holds a point along the line through it. The ring stays in its place with what lies to the right of the direction; the new
// last ring is what lies to the left. It gives the corners at both ends; not ok when the point is in no ring.
func (c *cutter) cut(at, dir shape.Point) (from, to int, ok bool) {
	i := slices.IndexFunc(c.rings, func(r []int) bool { return c.holds(r, at) })
	if i < 0 {
		return 0, 0, false
	}
	before, after, ok := c.meet(c.rings[i], at, dir)
	if !ok {
		return 0, 0, false
	}
	// The later one first: putting a corner in moves the places behind it.
	if before.place > after.place {
		from = c.corner(i, before, at, dir)
		to = c.corner(i, after, at, dir)
	} else {
		to = c.corner(i, after, at, dir)
		from = c.corner(i, before, at, dir)
	}
	left, right := stretch(c.rings[i], to, from), stretch(c.rings[i], from, to)
	if len(left) < 3 || len(right) < 3 {
		return 0, 0, false
	}
	c.rings[i] = right
	c.rings = append(c.rings, left)
	return from, to, true
}

// meet finds where the line through a point first meets the ring, backward and forward.
func (c *cutter) meet(ring []int, at, dir shape.Point) (before, after hit, ok bool) {
	var hits []hit
	out := dir.Perp()
	off := func(k int) float64 {
		s := c.points[ring[k%len(ring)]].Sub(at).Dot(out)
		if s > -onLineMM && s < onLineMM {
			return 0
		}
		return s
	}
	for k := range ring {
		p, q := c.points[ring[k]].Sub(at), c.points[ring[(k+1)%len(ring)]].Sub(at)
		s, r := off(k), off(k+1)
		switch {
		case s == 0:
			hits = append(hits, hit{p.Dot(dir), k, true})
		case s < 0 && r > 0 || s > 0 && r < 0:
			hits = append(hits, hit{p.Lerp(q, s/(s-r)).Dot(dir), k, false})
		}
	}
	some := [2]bool{}
	for _, h := range hits {
		switch {
		case h.x < 0 && (!some[0] || h.x > before.x):
			before, some[0] = h, true
		case h.x >= 0 && (!some[1] || h.x < after.x):
			after, some[1] = h, true
		}
	}
	return before, after, some[0] && some[1]
}

// corner gives the number of the corner at a hit of ring i; between two corners it puts one into every ring that has their edge.
func (c *cutter) corner(i int, h hit, at, dir shape.Point) int {
	ring := c.rings[i]
	a, b := ring[h.place], ring[(h.place+1)%len(ring)]
	if h.corner {
		return a
	}
	n := len(c.points)
	c.points = append(c.points, at.Add(dir.Scale(h.x)))
	for k, r := range c.rings {
		c.rings[k] = between(r, a, b, n)
	}
	c.whole = between(c.whole, a, b, n)
	return n
}

// between puts a corner between two that are neighbours in the ring.
func between(ring []int, a, b, n int) []int {
	for j, v := range ring {
		if w := ring[(j+1)%len(ring)]; v == a && w == b || v == b && w == a {
			return slices.Insert(slices.Clone(ring), j+1, n)
		}
	}
	return ring
}

// stretch is the part of a ring from one corner forward to another; nil when it lacks one of them.
func stretch(ring []int, from, to int) []int {
	i, k := slices.Index(ring, from), slices.Index(ring, to)
	switch {
	case i < 0 || k < 0:
		return nil
	case i <= k:
		return slices.Clone(ring[i : k+1])
	}
	return slices.Concat(ring[i:], ring[:k+1])
}

// holds says whether a point lies within a ring.
func (c *cutter) holds(ring []int, at shape.Point) bool {
	in := false
	for k, v := range ring {
		a, b := c.points[v], c.points[ring[(k+1)%len(ring)]]
		if (a.Y > at.Y) != (b.Y > at.Y) && at.X < a.X+(at.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}
