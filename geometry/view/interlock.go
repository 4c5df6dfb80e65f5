package view

// Plates that pass through or beside one another so that no plane parts them, and things that cover one another in a ring: one is cut at another's faces, and the
// pieces are painted each in its turn.

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// What cutting may come to; beyond it things stay whole. No bracket of ours comes near, and a drawing of anything else must end too.
const (
	maxPieces  = 400
	maxCorners = 5000              // of all things together
	maxTries   = 200 * 1000 * 1000 // the cube of the number of things, added up over the cuts that are tried
)

// apart cuts plates until planes part them, as far as cuts at faces that stand square to a plate can.
func apart(list []solid, d *Direction) []solid {
	hulls := hullsOf(list, d)
	if corners(hulls) > maxCorners {
		return list
	}
	for i := 0; i < len(list) && len(list) < maxPieces; {
		cut := false
		for j := range list {
			if i == j || !meetSquare(&hulls[i], &hulls[j]) {
				continue
			}
			if pieces := cutAtFaces(&list[i], &list[j]); len(pieces) > 1 {
				list, hulls, cut = slices.Replace(list, i, i+1, pieces...), slices.Replace(hulls, i, i+1, hullsOf(pieces, d)...), true
				break
			}
		}
		if !cut {
			i++
		}
	}
	return list
}

// meetSquare says whether two things stand square to each other and no plane parts them.
func meetSquare(a, b *hull) bool {
	if math.Abs(b.axis.Dot(a.axis)) > 1e-6 || !meetOnPaper(a, b) {
		return false
	}
	for n := range partings(a, b) {
		if gap, _ := parting(a, b, n); gap >= -overlapMM {
			return false
		}
	}
	return true
}

// cutAtFaces cuts a where it passes the faces of b, which stands square to it.
func cutAtFaces(a, b *solid) []solid {
	n := b.pose.W()
	lo, hi := a.span(n)
	at := b.pose.Origin.Dot(n)
	pieces := []solid{*a}
	for _, face := range [2]float64{at + b.lo, at + b.hi} {
		if face < lo+overlapMM || face > hi-overlapMM {
			continue
		}
		last := pieces[len(pieces)-1]
		near, far := last.beside(n, face), last.beside(n.Scale(-1), -face)
		if len(near.loops) > 0 && len(far.loops) > 0 {
			pieces = append(pieces[:len(pieces)-1], near, far)
		}
	}
	largest, most := 0, 0.0
	for i := range pieces {
		pieces[i].label = ""
		if box := pieces[i].box(); box.Width()*box.Height() > most {
			largest, most = i, box.Width()*box.Height()
		}
	}
	pieces[largest].label = a.label
	return pieces
}

// span is how far a solid reaches along a direction.
func (s *solid) span(n part.Vec) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range s.loops[0].Points {
		for _, w := range [2]float64{s.lo, s.hi} {
			t := s.pose.At(p.X, p.Y, w).Dot(n)
			lo, hi = min(lo, t), max(hi, t)
		}
	}
	return lo, hi
}

// ringed lists the rings: things that cover one another in turn.
func ringed(behind [][]bool) [][]int {
	done := make([]bool, len(behind))
	all := make([][]int, len(behind))
	for i := range behind {
		all[i] = under(i, behind, done)
	}
	var rings [][]int
	seen := make([]bool, len(behind))
	for i, below := range all {
		if seen[i] || !slices.Contains(below, i) {
			continue
		}
		var ring []int
		for j := range all {
			if slices.Contains(below, j) && slices.Contains(all[j], i) {
				seen[j] = true
				ring = append(ring, j)
			}
		}
		rings = append(rings, ring)
	}
	return rings
}

// unringed cuts things until none cover one another in a ring, as far as cuts at faces can.
func (s *scene) unringed() *scene {
	tries := maxTries
	if corners(s.hulls) > maxCorners {
		return s
	}
	for len(s.list) < maxPieces {
		better := s.cutRing(&tries)
		if better == nil {
			break
		}
		s = better
	}
	return s
}

func corners(list []hull) int {
	n := 0
	for i := range list {
		n += len(list[i].corners)
	}
	return n
}

// cutRing is the scene with one thing cut so that fewer are in rings; nil where no cut does that, or none may be tried any more.
func (s *scene) cutRing(tries *int) *scene {
	for _, ring := range ringed(s.behind) {
		for _, i := range ring {
			others := slices.DeleteFunc(slices.Clone(ring), func(k int) bool { return k == i })
			for _, j := range others {
				if math.Abs(s.list[i].pose.W().Dot(s.list[j].pose.W())) > 1e-6 {
					continue
				}
				pieces := cutAtFaces(&s.list[i], &s.list[j])
				if len(pieces) < 2 {
					continue
				}
				if *tries -= len(s.list) * len(s.list) * len(s.list); *tries < 0 {
					return nil
				}
				left := 0
				for _, r := range ringed(s.with(others, pieces).behind) {
					left += len(r)
				}
				if left < len(ring) {
					return s.with(s.except(i), pieces)
				}
			}
		}
	}
	return nil
}

// except lists the places of all solids but one.
func (s *scene) except(i int) []int {
	var out []int
	for k := range s.list {
		if k != i {
			out = append(out, k)
		}
	}
	return out
}

// beside is what of a solid lies behind a plane square to its own. The cut itself is no edge.
func (s solid) beside(n part.Vec, level float64) solid {
	way := shape.Point{X: n.Dot(s.pose.U), Y: n.Dot(s.pose.V)}
	off := func(p shape.Point) float64 { return p.Dot(way) - (level - s.pose.Origin.Dot(n)) }
	out := s
	out.outline, out.loops, out.seams = nil, nil, slices.Clone(s.seams)
	lo, hi := math.Inf(1), math.Inf(-1)
	for i, r := range s.loops {
		kept := r.behind(off, func(p shape.Point) {
			t := p.Dot(way.Perp())
			lo, hi = min(lo, t), max(hi, t)
			out.seams = append(out.seams, [2]part.Vec{s.pose.At(p.X, p.Y, s.lo), s.pose.At(p.X, p.Y, s.hi)})
		})
		if len(kept.Points) > 2 {
			out.loops = append(out.loops, kept)
		} else if i == 0 {
			return solid{}
		}
	}
	foot := way.Scale(level - s.pose.Origin.Dot(n))
	for _, w := range [2]float64{s.lo, s.hi} {
		a, b := foot.Add(way.Perp().Scale(lo)), foot.Add(way.Perp().Scale(hi))
		out.seams = append(out.seams, [2]part.Vec{s.pose.At(a.X, a.Y, w), s.pose.At(b.X, b.Y, w)})
	}
	return out
}

// behind clips a ring to where off is not positive, and tells each point at which it is cut.
func (r Ring) behind(off func(shape.Point) float64, cut func(shape.Point)) Ring {
	var out Ring
	for i, p := range r.Points {
		q := r.After(i)
		dp, dq := off(p), off(q)
		if dp <= 0 {
			out.Points, out.sharp = append(out.Points, p), append(out.sharp, r.sharp[i])
		}
		if dp <= 0 != (dq <= 0) {
			x := p.Lerp(q, dp/(dp-dq))
			out.Points, out.sharp = append(out.Points, x), append(out.sharp, false)
			cut(x)
		}
	}
	return out
}
