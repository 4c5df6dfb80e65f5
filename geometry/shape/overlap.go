package shape

// Whether two loops cover common ground.

import (
	"math"
	"slices"
)

// Overlap reports whether two loops have more of their insides in common than a seam of the given depth along their edges: loops that touch do not
// overlap.
func Overlap(a, b Loop, depthMM float64) bool {
	if !a.BBox().Overlaps(b.BBox()) {
		return false
	}
	return reaches(a, b, depthMM) || reaches(b, a, depthMM)
}

// reaches reports whether an edge of a, or the steel right behind it, lies inside b deeper than allowed. Between two crossings an edge is all inside
// or all outside, so that its middle there tells; where it runs along an edge of b, what lies behind it does.
func reaches(a, b Loop, depthMM float64) bool {
	turn := math.Copysign(1, a.Area())
	var boxBuf [24]Box
	boxes, around := edgeBoxes(boxBuf[:0], b), b.BBox()
	var cutBuf [16]float64
	for i := range a {
		e := a.Edge(i)
		box := e.BBox()
		if !box.Overlaps(around) {
			continue
		}
		cuts := append(cutBuf[:0], 0, 1)
		for k := range b {
			points, n := shared(e, b.Edge(k), box, boxes[k])
			for _, p := range points[:n] {
				cuts = append(cuts, e.paramAt(p))
			}
		}
		slices.Sort(cuts)
		for k := range len(cuts) - 1 {
			t := (cuts[k] + cuts[k+1]) / 2
			p := e.At(t)
			behind := p.Add(e.TangentAt(t).Perp().Scale(turn * 3 * depthMM))
			if b.deep(p, depthMM) || a.deep(behind, depthMM) && b.deep(behind, depthMM) {
				return true
			}
		}
	}
	return false
}

// deep reports whether a point lies inside, further than so much from the edge.
func (l Loop) deep(p Point, depthMM float64) bool { return l.Contains(p) && l.DistTo(p) > depthMM }
