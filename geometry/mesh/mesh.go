package mesh

import (
	"errors"
	"slices"

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
	used := edgesOf(m.Triangles, len(m.Points))
	for a := range m.Points {
		ends := used.from(a)
		for i, b := range ends {
			if slices.Contains(ends[:i], b) || !used.has(int(b), int32(a)) {
				return errOpen
			}
		}
	}
	return nil
}

// edges are the edges of triangles, each in its direction: their far ends, by the corner that they leave.
type edges struct{ ends, first []int32 }

func edgesOf(triangles []Triangle, corners int) edges {
	e := edges{ends: make([]int32, 3*len(triangles)), first: make([]int32, corners+1)}
	for _, t := range triangles {
		for _, a := range t {
			e.first[a+1]++
		}
	}
	for a := range corners {
		e.first[a+1] += e.first[a]
	}
	for _, t := range triangles {
		for i, a := range t {
			e.ends[e.first[a]] = int32(t[(i+1)%3])
			e.first[a]++
		}
	}
	// Each corner's place has moved on to the next one's.
	copy(e.first[1:], e.first)
	e.first[0] = 0
	return e
}

func (e edges) from(a int) []int32 { return e.ends[e.first[a]:e.first[a+1]] }

// has looks along the line: few edges leave a corner.
func (e edges) has(a int, b int32) bool { return slices.Contains(e.from(a), b) }
