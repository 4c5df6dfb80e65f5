package mesh

// Plates: two faces and the walls between them.

import (
	"slices"

	"lugwright/geometry/fold"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// plate is a plate in the shape that it is folded to; remark says why where it stands flat.
func plate(p *part.Plate, facetMM float64) (m Mesh, remark string, err error) {
	pattern, bad := fold.Take(p, facetMM)
	if bad != nil {
		pattern, remark = fold.Flat(p, facetMM), "stands flat: "+bad.Error()
	}
	if p.RolledMM > 0 {
		remark = "stands flat: how a rolled plate lies is not known"
	}
	m, err = thicken(pattern, p.ThicknessMM)
	return m, remark, err
}

// thicken closes a pattern's faces to a shell: over are the points on the +W side, numbered as the pattern's, then as many under.
func thicken(s *fold.Pattern, thickness float64) (Mesh, error) {
	n := len(s.Points)
	m := Mesh{Points: make([]part.Vec, 2*n)}
	nodes := grid(s.Points)
	m.Triangles = make([]Triangle, 0, 4*n+4*len(s.Openings)) // both sides and the walls; a pattern has little more than one triangle for each corner
	for i := range s.Faces {
		f := &s.Faces[i]
		rings := [][]int{f.Outer}
		for _, k := range f.Openings {
			rings = append(rings, s.Openings[k])
		}
		over, err := divide(nodes, rings)
		if err != nil {
			return m, err
		}
		m.Triangles = append(m.Triangles, over...)
		for _, r := range rings {
			for _, v := range r {
				m.Points[v], m.Points[v+n] = s.Place(i, v, thickness/2), s.Place(i, v, -thickness/2)
			}
		}
	}
	m.close(n)
	return m, m.closed()
}

// close adds the other side of a sheet, whose points are n further on, and the walls along its free edges.
func (m *Mesh) close(n int) {
	sheet := m.Triangles
	used := edgesOf(sheet, len(m.Points))
	m.Triangles = slices.Grow(sheet, len(sheet)+len(m.Points)) // a free edge, of which there is one for each corner, has two
	for _, t := range sheet {
		m.Triangles = append(m.Triangles, Triangle{t[0] + n, t[2] + n, t[1] + n})
		for i, a := range t {
			if b := t[(i+1)%3]; !used.has(b, int32(a)) {
				m.Triangles = append(m.Triangles, Triangle{b, a, a + n}, Triangle{b, a + n, b + n})
			}
		}
	}
}

func grid(points []shape.Point) []node {
	nodes := make([]node, len(points))
	for i, p := range points {
		nodes[i] = onGrid(p)
	}
	return nodes
}
