package mesh

import (
	"errors"

	"lugwright/part"
)

// Mesh is a closed shell of triangles in bracket axes, in mm.
type Mesh struct {
	Points    []part.Vec
	Triangles []Triangle
}

// Volume is what the shell encloses, in mm3.
func (m *Mesh) Volume() float64 {
	sum := 0.0
	for _, t := range m.Triangles {
		// From a point of the shell: far from the origin nothing is lost.
		o := m.Points[0]
		a, b, c := m.Points[t[0]].Sub(o), m.Points[t[1]].Sub(o), m.Points[t[2]].Sub(o)
		sum += a.Dot(b.Cross(c)) / 6
	}
	return sum
}

var errOpen = errors.New("the shell is not closed")

// closed says whether each edge is used exactly twice, once in each direction.
func (m *Mesh) closed() error {
	used := edges(m.Triangles)
	if len(used) != 3*len(m.Triangles) {
		return errOpen
	}
	for e := range used {
		if _, back := used[e.back()]; !back {
			return errOpen
		}
	}
	return nil
}

// edge is two corners' numbers in one word, which a map finds quickly.
type edge uint64

func edgeOf(a, b int) edge { return edge(a)<<32 | edge(b) }

func (e edge) back() edge { return e<<32 | e>>32 }

// edges are the edges of triangles, each in its direction.
func edges(triangles []Triangle) map[edge]struct{} {
	used := make(map[edge]struct{}, 3*len(triangles))
	for _, t := range triangles {
		for i, a := range t {
			used[edgeOf(a, t[(i+1)%3])] = struct{}{}
		}
	}
	return used
}
