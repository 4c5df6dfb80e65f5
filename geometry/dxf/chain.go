package dxf

import "lugwright/geometry/shape"

// joinMM is the distance within which two ends are one point. Write shares them exactly; an arc's ends are worked out from
// its centre, radius and angles.
const joinMM = 1e-6

// chain joins lines and arcs, in order of the file, to a contour. Only arcs may be turned round: an ARC has no direction.
type chain struct{ edges []shape.Edge }

// add joins the edge to the end of the chain and reports whether it fits there.
func (c *chain) add(e shape.Edge) bool {
	if len(c.edges) == 0 {
		c.edges = append(c.edges, e)
		return true
	}
	last := &c.edges[len(c.edges)-1]
	for _, turned := range []bool{false, true} {
		if turned && (len(c.edges) > 1 || !last.IsArc()) {
			return false
		}
		from := *last
		if turned {
			from = last.Reverse()
		}
		if next, ok := follows(from, e); ok {
			*last = from
			c.edges = append(c.edges, next)
			return true
		}
	}
	return false
}

func follows(from, e shape.Edge) (shape.Edge, bool) {
	switch {
	case from.B.Dist(e.A) < joinMM:
		return e, true
	case e.IsArc() && from.B.Dist(e.B) < joinMM:
		return e.Reverse(), true
	}
	return e, false
}

func (c *chain) closed() bool {
	n := len(c.edges)
	return n > 1 && c.edges[n-1].B.Dist(c.edges[0].A) < joinMM
}

func (c *chain) hasLine() bool {
	for _, e := range c.edges {
		if !e.IsArc() {
			return true
		}
	}
	return false
}

func (c *chain) points() []shape.Point {
	out := []shape.Point{c.edges[0].A}
	for _, e := range c.edges {
		out = append(out, e.B)
	}
	return out
}

// loop takes each corner from a line where one meets it: a line's ends are written, an arc's worked out.
func (c *chain) loop() shape.Loop {
	n := len(c.edges)
	out := make(shape.Loop, n)
	for i, e := range c.edges {
		out[i] = shape.Vertex{Point: e.A, Bulge: e.Bulge}
		if before := c.edges[(i+n-1)%n]; e.IsArc() && !before.IsArc() {
			out[i].Point = before.B
		}
	}
	return out
}
