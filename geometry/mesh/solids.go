package mesh

import (
	"fmt"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Solid is one part of a bracket where it stands.
type Solid struct {
	ID       string // name within the bracket
	Name     string // trade word
	Mark     string
	Material string
	Mesh     Mesh
	Remark   string // how the solid differs from the part, empty when only the facets do
}

// mostCorners is the most corners of one part; more would be a slip of the facet error.
const mostCorners = 100000

// Of gives the solids of a bracket's plates, members and pins, holes at their finished size. No facet is further than facetMM from its arc. Bolts, nuts, washers,
// rods, welds, threads and engraved marks are not among them. It fails for a part that it cannot close, or that would need too many facets.
func Of(b *part.Bracket, facetMM float64) ([]Solid, error) {
	if !(facetMM >= 1e-3 && facetMM <= 10) {
		return nil, fmt.Errorf("facet error: %g mm; 0.001 to 10 mm is accepted", facetMM)
	}
	var out []Solid
	add := func(s Solid, make func(facetMM float64) (Mesh, string, error)) error {
		var err error
		// A narrow place may need finer facets than the whole.
		for e := facetMM; e > facetMM/1000; e /= 10 {
			if s.Mesh, s.Remark, err = make(e); err == nil {
				break
			}
		}
		switch {
		case err != nil:
			return fmt.Errorf("%s cannot be made a solid: %w", s.ID, err)
		case len(s.Mesh.Points) > mostCorners:
			return fmt.Errorf("%s would need %d corners with a facet error of %g mm; at most %d are accepted", s.ID, len(s.Mesh.Points), facetMM, mostCorners)
		}
		out = append(out, s)
		return nil
	}
	for i := range b.Plates {
		p := &b.Plates[i]
		err := add(Solid{ID: p.ID, Name: p.Name, Mark: p.Mark, Material: p.Material}, func(e float64) (Mesh, string, error) { return plate(p, e) })
		if err != nil {
			return nil, err
		}
	}
	for i := range b.Members {
		m := &b.Members[i]
		err := add(Solid{ID: m.ID, Name: m.Name, Mark: m.Mark, Material: m.Material}, func(e float64) (Mesh, string, error) { return member(m, e) })
		if err != nil {
			return nil, err
		}
	}
	for i := range b.Pins {
		p := &b.Pins[i]
		err := add(Solid{ID: p.ID, Name: "pin", Mark: p.Mark, Material: p.Material}, func(e float64) (Mesh, string, error) {
			pose := p.Pose()
			pose.Origin = pose.At(0, 0, -p.LengthMM/2)
			m, err := prism(shape.Outline{Outer: shape.Circle(shape.Point{}, p.DiaMM)}, pose, p.LengthMM, e)
			return m, "", err
		})
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}
