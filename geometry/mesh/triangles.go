package mesh

// Triangles of a face with holes, by one sweep from the top down.

import (
	"errors"
	"slices"
)

// Triangle is three corners by their numbers, counter-clockwise seen from outside.
type Triangle [3]int

var errNoTriangles = errors.New("its outline touches or crosses itself, or another loop of it, within a facet's error")

// divide gives the triangles between an outer ring and the rings within it, whatever their windings; rings hold numbers of nodes, each node once.
// No triangle is without area. The error says that the rings touch or cross.
//
// It sweeps downwards. Between the edges that it crosses lie stretches of the face; each keeps the chain of corners above it that still lack
// triangles, and a new corner takes off what it sees of the chain. Source: S. Hertel and K. Mehlhorn, Fast triangulation of simple polygons (1983),
// from memory.
func divide(nodes []node, rings [][]int) ([]Triangle, error) {
	s := newSweep(nodes, rings)
	for _, v := range s.order {
		if !s.pass(v) {
			return nil, errNoTriangles
		}
	}
	if len(s.open) > 0 || !s.fills(rings) {
		return nil, errNoTriangles
	}
	return s.out, nil
}

// sweep is the state of the way down.
type sweep struct {
	nodes      []node
	prev, next []int // along rings that have the face on their left
	order      []int
	open       []*stretch
	out        []Triangle
}

// stretch is a part of the face that the sweep line crosses: from a left edge to a right edge, below a chain of corners from the upper end of the one to
// the upper end of the other. No three of them in a row make a triangle within the face.
type stretch struct {
	left, right int // lower ends of the edges
	chain       []int
	latest      int // place in the chain of the corner that came last
}

func newSweep(nodes []node, rings [][]int) *sweep {
	ways := make([]int, 2*len(nodes))
	s := &sweep{nodes: nodes, prev: ways[:len(nodes)], next: ways[len(nodes):]}
	for i, ring := range rings {
		back := (twiceArea(nodes, ring).sign() < 0) == (i == 0)
		for k, v := range ring {
			w := ring[(k+1)%len(ring)]
			if back {
				v, w = w, v
			}
			s.next[v], s.prev[w] = w, v
		}
		s.order = append(s.order, ring...)
	}
	s.out = make([]Triangle, 0, len(s.order)+2*len(rings))
	slices.SortFunc(s.order, func(a, b int) int {
		if nodes[a].above(nodes[b]) {
			return -1
		}
		return 1
	})
	return s
}

// pass takes the sweep over a corner; false when the rings cannot be sound.
func (s *sweep) pass(v int) bool {
	p, n := s.prev[v], s.next[v]
	fromAbove, toAbove := s.nodes[p].above(s.nodes[v]), s.nodes[n].above(s.nodes[v])
	turnsLeft := side(s.nodes[p], s.nodes[v], s.nodes[n]) > 0
	switch {
	case !fromAbove && !toAbove && turnsLeft:
		s.open = append(s.open, &stretch{left: n, right: p, chain: []int{v}})
		return true
	case !fromAbove && !toAbove:
		return s.part(v, n, p)
	case fromAbove && !toAbove:
		r := s.ending(v, true)
		if r != nil {
			r.left = n
			s.addLeft(r, v)
		}
		return r != nil
	case !fromAbove:
		r := s.ending(v, false)
		if r != nil {
			r.right = p
			s.addRight(r, v)
		}
		return r != nil
	}
	return s.join(v, turnsLeft)
}

// ending is the stretch whose left or right edge ends at a corner.
func (s *sweep) ending(v int, left bool) *stretch {
	for _, r := range s.open {
		if left && r.left == v || !left && r.right == v {
			return r
		}
	}
	return nil
}

// part splits the stretch that a corner hangs into.
func (s *sweep) part(v, left, right int) bool {
	at := slices.IndexFunc(s.open, func(r *stretch) bool {
		first, last := r.chain[0], r.chain[len(r.chain)-1]
		return side(s.nodes[first], s.nodes[r.left], s.nodes[v]) > 0 && side(s.nodes[r.right], s.nodes[last], s.nodes[v]) > 0
	})
	if at < 0 {
		return false
	}
	r := s.open[at]
	east := &stretch{left: left, right: r.right, chain: slices.Clone(r.chain[r.latest:])}
	west := &stretch{left: r.left, right: right, chain: r.chain[:r.latest+1]}
	s.open[at] = west
	s.open = append(s.open, east)
	s.addRight(west, v)
	s.addLeft(east, v)
	return true
}

// join ends two stretches side by side, or the only one that a corner closes from below.
func (s *sweep) join(v int, closes bool) bool {
	west, east := s.ending(v, false), s.ending(v, true)
	if west == nil || east == nil || closes != (west == east) {
		return false
	}
	s.open = slices.DeleteFunc(s.open, func(r *stretch) bool { return r == east })
	if closes {
		for i := range len(west.chain) - 1 {
			s.out = append(s.out, Triangle{v, west.chain[i+1], west.chain[i]})
		}
		return true
	}
	s.addRight(west, v)
	s.addLeft(east, v)
	west.chain, west.right = append(west.chain, east.chain[1:]...), east.right
	return true
}

// addLeft puts a corner at the left end of a chain and takes off what it sees.
func (s *sweep) addLeft(r *stretch, v int) {
	n := 0
	for n+1 < len(r.chain) && side(s.nodes[v], s.nodes[r.chain[n]], s.nodes[r.chain[n+1]]) < 0 {
		s.out = append(s.out, Triangle{v, r.chain[n+1], r.chain[n]})
		n++
	}
	if n == 0 {
		r.chain = slices.Insert(r.chain, 0, v)
	} else {
		r.chain = r.chain[n-1:]
		r.chain[0] = v
	}
	r.latest = 0
}

// addRight puts a corner at the right end.
func (s *sweep) addRight(r *stretch, v int) {
	n := len(r.chain)
	for n > 1 && side(s.nodes[r.chain[n-2]], s.nodes[r.chain[n-1]], s.nodes[v]) < 0 {
		s.out = append(s.out, Triangle{v, r.chain[n-1], r.chain[n-2]})
		n--
	}
	r.chain = append(r.chain[:n], v)
	r.latest = n
}

// fills says whether the triangles fill the face: each has area, and the sum is the rings'.
func (s *sweep) fills(rings [][]int) bool {
	var left wide
	for i, ring := range rings {
		area := twiceArea(s.nodes, ring)
		if (area.sign() > 0) == (i == 0) {
			left = left.add(area)
		} else {
			left = left.sub(area)
		}
	}
	for _, t := range s.out {
		area := twice(s.nodes[t[0]], s.nodes[t[1]], s.nodes[t[2]])
		if area.sign() <= 0 {
			return false
		}
		left = left.sub(area)
	}
	return left == wide{}
}

// twiceArea is twice a ring's area, positive when it is wound counter-clockwise.
func twiceArea(nodes []node, ring []int) wide {
	var sum wide
	for i := 1; i+1 < len(ring); i++ {
		sum = sum.add(twice(nodes[ring[0]], nodes[ring[i]], nodes[ring[i+1]]))
	}
	return sum
}
