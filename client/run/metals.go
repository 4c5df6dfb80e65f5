package run

// This file says where aluminium lies bare on another metal, which eats it where water gets in.

import (
	"fmt"

	"lugwright/client/job"
	"lugwright/part"
	"lugwright/strength/material"
)

// bareAluminium tells of a bracket's plates that touch what it is fixed to, aluminium on another metal, without anything between. That it needs isolating is
// common practice, no source.
func bareAluminium(b *job.Bracket, built *part.Bracket) []string {
	for _, p := range b.Params {
		if p.Name == "isolate" && p.Text == "yes" {
			return nil
		}
	}
	for i := range built.Plates {
		plate := &built.Plates[i]
		for k := range built.Supports {
			s := &built.Supports[k]
			if aluminium(plate.Material) && s.Material != "" && !aluminium(s.Material) {
				return []string{fmt.Sprintf("mind: %s is of %s, aluminium, on %s of %s with nothing between: it needs isolators, primer on both faces and a layer with closed edges, at rods and bolts too (common practice, no source)",
					plate.ID, plate.Material, s.ID, s.Material)}
			}
		}
	}
	return nil
}

func aluminium(name string) bool {
	g, err := material.LookupGrade(name)
	return err == nil && g.Family == material.Aluminium
}
