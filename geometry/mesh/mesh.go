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
	used := make(map[[2]int]bool, 3*len(m.Triangles))
	for _, t := range m.Triangles {
		for i, a := range t {
			edge := [2]int{a, t[(i+1)%3]}
			if used[edge] {
				return errOpen
			}
			used[edge] = true
		}
	}
	for edge := range used {
		if !used[[2]int{edge[1], edge[0]}] {
			return errOpen
		}
	}
	return nil
}
