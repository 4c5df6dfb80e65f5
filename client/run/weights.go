package run

// This file weighs what brackets are made of.

import (
	"context"
	"fmt"
	"slices"

	"lugwright/part"
	"lugwright/services/dial"
)

// Densities is kg/mm3 by grade.
type Densities map[string]float64

// ReadDensities asks for those of all grades.
func ReadDensities(ctx context.Context, c *dial.Client) (Densities, error) {
	all, err := c.Materials(ctx)
	if err != nil {
		return nil, err
	}
	d := Densities{}
	for i := range all.Grades {
		g := &all.Grades[i]
		for _, name := range append(slices.Clone(g.Aliases), g.Name) {
			d[name] = g.KgPerMM3()
		}
	}
	return d, nil
}

// KG is the mass of some volumes. A grade without a density is refused.
func (d Densities) KG(volumes []part.Volume) (float64, error) {
	kg := 0.0
	for _, v := range volumes {
		if !(d[v.Material] > 0) {
			return 0, &part.FieldError{Field: "material", Found: fmt.Sprintf("%q, of which no density is listed", v.Material), Accept: "a grade that `lugwright materials` lists"}
		}
		kg += v.MM3 * d[v.Material]
	}
	return kg, nil
}
