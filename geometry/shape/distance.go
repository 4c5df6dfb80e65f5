package shape

// Exact least distance between edges and between loops.

import "math"

// EdgeDistance returns the least distance between two edges, 0 where they cross or touch. The least distance of two
// edges that do not meet is at an end of one of them or where both have a common normal, and each such place is tried.
func EdgeDistance(a, b Edge) float64 { return edgeDistance(a, b, a.BBox(), b.BBox()) }

func edgeDistance(a, b Edge, boxA, boxB Box) float64 {
	if _, n := shared(a, b, boxA, boxB); n > 0 {
		return 0
	}
	return apart(a, b)
}

// apart is the distance of two edges that do not meet.
func apart(a, b Edge) float64 {
	d := min(min(b.DistTo(a.A), b.DistTo(a.B)), min(a.DistTo(b.A), a.DistTo(b.B)))
	switch {
	case a.IsArc() && b.IsArc():
		return min(d, lineOfCentres(a, b))
	case a.IsArc():
		return min(d, a.nearestNormal(b, b.B.Sub(b.A).Perp()))
	case b.IsArc():
		return min(d, b.nearestNormal(a, a.B.Sub(a.A).Perp()))
	}
	return d
}

// lineOfCentres tries the points of each arc on the line through both centres.
func lineOfCentres(a, b Edge) float64 {
	dir := b.Center().Sub(a.Center())
	return min(a.nearestNormal(b, dir), b.nearestNormal(a, dir))
}

// nearestNormal tries the points of arc e whose radius is along dir, either sense, against the other edge; +Inf when e
// has none.
func (e Edge) nearestNormal(other Edge, dir Point) float64 {
	d := math.Inf(1)
	for _, n := range [2]Point{dir, dir.Scale(-1)} {
		if t := e.paramToward(n); t > 0 && t < 1 {
			d = min(d, other.DistTo(e.At(t)))
		}
	}
	return d
}

// paramToward returns the fraction of the arc's length at which its outward radius points along dir; outside 0..1 when
// the arc has no such point. Angles from the chord keep it exact for flat arcs.
func (e Edge) paramToward(dir Point) float64 {
	tangent := dir.Perp().Scale(math.Copysign(1, e.Bulge))
	ch := e.B.Sub(e.A)
	turn := math.Atan2(ch.Cross(tangent), ch.Dot(tangent))
	return 0.5 + turn/e.Sweep()
}

// LoopDistance returns the least distance between the edges of two loops, 0 where they cross or touch and +Inf when one
// is empty. A loop wholly inside another is as far from it as its edges are.
func LoopDistance(a, b Loop) float64 {
	if d, ok := fromCircle(a, b); ok {
		return d
	}
	if d, ok := fromCircle(b, a); ok {
		return d
	}
	best := math.Inf(1)
	var buf [24]Box
	boxes := edgeBoxes(buf[:0], b)
	for i := range a {
		e := a.Edge(i)
		box := e.BBox()
		for j := range b {
			if box.gap(boxes[j]) < best {
				best = min(best, edgeDistance(e, b.Edge(j), box, boxes[j]))
			}
		}
	}
	return best
}

func edgeBoxes(dst []Box, l Loop) []Box {
	for i := range l {
		dst = append(dst, l.Edge(i).BBox())
	}
	return dst
}

// fromCircle is the short way for a drilled hole: from its centre, less its radius, as long as nothing is in it.
func fromCircle(circle, other Loop) (float64, bool) {
	center, r, ok := circle.asCircle()
	if !ok {
		return 0, false
	}
	d := other.DistTo(center) - r
	return d, d > TouchMM
}

// asCircle is the loop as Circle makes one.
func (l Loop) asCircle() (center Point, r float64, ok bool) {
	if len(l) != 2 || l[0].Bulge != l[1].Bulge || math.Abs(l[0].Bulge) != 1 {
		return Point{}, 0, false
	}
	return l[0].Lerp(l[1].Point, 0.5), l[0].Dist(l[1].Point) / 2, true
}
