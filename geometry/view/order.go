package view

import (
	"iter"
	"math"

	"lugwright/part"
)

// overlapMM is how far two things may reach into each other and still count as parted by a plane.
const overlapMM = 0.6

// hull is a solid as the ordering sees it: its outer corners and the directions that may part it from others.
type hull struct {
	corners []part.Vec
	normals []part.Vec
	sides   []part.Vec // square to the edges on paper
	axis    part.Vec
	eye     part.Vec
	depth   float64 // of its middle, towards the viewer
	lo, hi  [2]float64
}

func newHull(s *solid, d *Direction) hull {
	outer := s.loops[0]
	n := len(outer.Points)
	h := hull{axis: s.pose.W(), eye: d.Eye, normals: make([]part.Vec, 1, n+1), sides: make([]part.Vec, 0, n+1)}
	h.normals[0] = h.axis
	h.lo, h.hi = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	h.corners = make([]part.Vec, 0, 2*n)
	for i, p := range outer.Points {
		for _, w := range []float64{s.lo, s.hi} {
			h.add(s.pose.At(p.X, p.Y, w), 2*n, d)
		}
		if q := outer.After(i).Sub(p).Unit(); n <= 12 || outer.sharp[i] || i%4 == 0 {
			h.normals = append(h.normals, s.pose.U.Scale(q.Y).AddScaled(-q.X, s.pose.V))
			h.addSide(s.pose.U.Scale(q.X).AddScaled(q.Y, s.pose.V))
		}
	}
	h.addSide(h.axis)
	return h
}

func hullsOf(list []solid, d *Direction) []hull {
	out := make([]hull, len(list))
	for i := range list {
		out[i] = newHull(&list[i], d)
	}
	return out
}

func (h *hull) add(p part.Vec, of int, d *Direction) {
	h.corners = append(h.corners, p)
	h.depth += p.Dot(h.eye) / float64(of)
	flat := d.Project(p)
	for k, x := range [2]float64{flat.X, flat.Y} {
		h.lo[k], h.hi[k] = min(h.lo[k], x), max(h.hi[k], x)
	}
}

func (h *hull) addSide(edge part.Vec) {
	if n := edge.Cross(h.eye); n.Norm() > 1e-6 {
		h.sides = append(h.sides, n.Unit())
	}
}

func (h *hull) span(n part.Vec) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range h.corners {
		d := c.Dot(n)
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}

// meetOnPaper says whether the pictures of two hulls can overlap.
func meetOnPaper(a, b *hull) bool {
	for k := range 2 {
		if a.hi[k] <= b.lo[k] || b.hi[k] <= a.lo[k] {
			return false
		}
	}
	return true
}

// inFront is positive when b covers a, negative when a covers b, 0 when neither can. Two planes that part a pair and
// disagree prove that no line of sight meets both.
func inFront(a, b *hull) float64 {
	if !meetOnPaper(a, b) {
		return 0
	}
	best, verdict := -overlapMM, 0.0
	clean := [2]bool{} // b in front, a in front, by a plane that touches neither
	for n := range partings(a, b) {
		gap, towards := parting(a, b, n)
		if gap >= -1e-6 {
			if math.Abs(towards) < 1e-6 {
				return 0
			}
			clean[0], clean[1] = clean[0] || towards > 0, clean[1] || towards < 0
			if clean[0] && clean[1] {
				return 0
			}
		}
		if gap > best && math.Abs(towards) > 1e-6 {
			best, verdict = gap, towards
		}
	}
	if verdict != 0 {
		return verdict
	}
	return b.depth - a.depth
}

// parting is the gap between two hulls along n, and how much the way across it, from a to b, leads to the viewer.
func parting(a, b *hull, n part.Vec) (gap, towards float64) {
	alo, ahi := a.span(n)
	blo, bhi := b.span(n)
	if blo-ahi >= alo-bhi {
		return blo - ahi, n.Dot(a.eye)
	}
	return alo - bhi, -n.Dot(a.eye)
}

// partings are the directions tried: faces of either, the sides of either on paper, square to both axes, and the bracket's own.
func partings(a, b *hull) iter.Seq[part.Vec] {
	more := []part.Vec{{X: 1}, {Y: 1}, {Z: 1}}
	if n := a.axis.Cross(b.axis); n.Norm() > 1e-6 {
		more = []part.Vec{n.Unit(), more[0], more[1], more[2]}
	}
	return func(yield func(part.Vec) bool) {
		for _, list := range [][]part.Vec{a.normals, b.normals, a.sides, b.sides, more} {
			for _, n := range list {
				if !yield(n) {
					return
				}
			}
		}
	}
}

// scene is what is painted: solids, and what covers what.
type scene struct {
	from   *Direction
	list   []solid
	hulls  []hull
	behind [][]bool // behind[i][j]: j must be painted before i
}

func newScene(list []solid, d *Direction) *scene { return (&scene{from: d}).with(nil, list) }

// with is a scene of some solids of this one, by place, and of new ones after them.
func (s *scene) with(kept []int, more []solid) *scene {
	out := &scene{from: s.from}
	for _, k := range kept {
		out.list, out.hulls = append(out.list, s.list[k]), append(out.hulls, s.hulls[k])
	}
	out.list, out.hulls = append(out.list, more...), append(out.hulls, hullsOf(more, s.from)...)
	out.behind = make([][]bool, len(out.list))
	for i := range out.behind {
		out.behind[i] = make([]bool, len(out.list))
		for j := range i {
			if i < len(kept) {
				out.behind[i][j], out.behind[j][i] = s.behind[kept[i]][kept[j]], s.behind[kept[j]][kept[i]]
				continue
			}
			v := inFront(&out.hulls[i], &out.hulls[j])
			out.behind[i][j], out.behind[j][i] = v < 0, v > 0
		}
	}
	return out
}

// backToFront gives the order in which to paint. Where things cover each other in a ring the farthest of the ring comes first.
func (s *scene) backToFront() []int {
	var order []int
	done := make([]bool, len(s.list))
	for range s.list {
		i := next(s.hulls, s.behind, done)
		done[i] = true
		order = append(order, i)
	}
	return order
}

// maxRinged bounds the things among which the ends of rings are looked for; of more, the farthest is taken.
const maxRinged = 150

// next is the farthest solid that covers nothing unpainted but what covers it in turn, round a ring.
func next(hulls []hull, behind [][]bool, done []bool) int {
	best, bestFree := -1, false
	for i := range hulls {
		if done[i] {
			continue
		}
		free := uncovering(i, behind, done)
		if best < 0 || free && !bestFree || free == bestFree && hulls[i].depth < hulls[best].depth {
			best, bestFree = i, free
		}
	}
	if bestFree || len(hulls) > maxRinged {
		return best
	}
	// Down from any solid, what covers the fewest is in a ring that covers nothing else.
	ring := under(best, behind, done)
	for _, i := range ring {
		if u := under(i, behind, done); len(u) < len(ring) {
			ring = u
		}
	}
	for k, i := range ring {
		if k == 0 || hulls[i].depth < hulls[best].depth {
			best = i
		}
	}
	return best
}

// uncovering says whether one covers nothing that is unpainted.
func uncovering(i int, behind [][]bool, done []bool) bool {
	for j, must := range behind[i] {
		if must && !done[j] {
			return false
		}
	}
	return true
}

// under lists the unpainted solids that one covers, and those that they cover in turn; itself only where it is in a ring.
func under(i int, behind [][]bool, done []bool) []int {
	seen := make([]bool, len(behind))
	var list []int
	for at, k := i, 0; ; k++ {
		for j, must := range behind[at] {
			if must && !done[j] && !seen[j] {
				seen[j] = true
				list = append(list, j)
			}
		}
		if k >= len(list) {
			return list
		}
		at = list[k]
	}
}
