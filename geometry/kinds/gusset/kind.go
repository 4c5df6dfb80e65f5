// Package gusset is a single plate in the corner between a standing face and the shelf above it. It never knows strength.
//
// Axes: the origin is in the corner; y runs along the shelf away from the standing face (y = 0), z up; the shelf's underside is
// z = 0 and the plate hangs below it, its middle plane at x = 0. The load comes down through the shelf.
//
//	kind.go    the kind: sentence, parameters, order of work
//	plate.go   outline, lightening hole, what does not fit
//	joints.go  welds, supports, load path
package gusset

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the gusset.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "gusset",
		Sentence: "a plate in the corner under a shelf, welded to the shelf and to the standing face that carries it",
		Params:   params(),
		Build:    build,
	}
}

func build(v geometry.Values) (*part.Bracket, error) {
	d := read(v)
	if err := d.check(); err != nil {
		return nil, err
	}
	b := &part.Bracket{Plates: []part.Plate{d.plate()}}
	d.addJoints(b)
	d.addPaths(b)
	b.Notes = append(b.Notes, "weld the corner that the snipe clears first, then the gusset, alternate sides")
	b.Unchecked = append(b.Unchecked,
		"the shelf itself, and the shelf's own weld to the standing face",
		"load square to the gusset's plane, and moments: the gusset has no path for them",
	)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func params() []geometry.Param {
	return []geometry.Param{
		fab.Choice("shape", "triangle has sharp ends, trapezoid blunt ones", "trapezoid", "triangle"),
		fab.Length("along", 20, 1500, 150, "leg along the shelf, from the standing face"),
		fab.Length("down", 20, 1500, 150, "leg down the standing face, from the shelf"),
		fab.Length("nose", 2, 500, 20, "width of a trapezoid's blunt ends"),
		fab.Length("thickness", 3, 60, 10, "plate thickness"),
		fab.Named("material", "S355", "grade of the gusset"),
		fab.Length("corner_weld", 0, 25, 6, "leg of the fillet that runs through the corner, 0 for none"),
		fab.Length("snipe_clearance", 2, 15, 4, "snipe at the corner beyond that fillet's leg"),
		fab.Length("weld", 3, 25, 5, "leg of the gusset's fillets, both faces"),
		fab.Named("electrode", "E70", "filler grade"),
		fab.Length("hole_diameter", 0, 800, 0, "lightening hole at the plate's centroid, 0 for none"),
		fab.Length("load_distance", 5, 1500, 100, "load on the shelf, from the standing face"),
		fab.Length("shelf_thickness", 1, 60, 10, "thickness of the shelf"),
		fab.Named("shelf_material", "S355", "grade of the shelf"),
		fab.Choice("support_kind", "what the standing face is", string(part.RailWeb), string(part.CrossMember), string(part.TubeWall), string(part.BodyFrame)),
		fab.Length("support_thickness", 1, 60, 6, "thickness of the standing face"),
		fab.Named("support_material", "S355", "grade of the standing face"),
		fab.Length("clear_height", 20, 2000, 188, "clear height of the standing face between its flanges or edges"),
		fab.Choice("couple", "what takes the couple that bends the standing face", string(part.CoupleByWall), string(part.CoupleByCrossMember)),
	}
}
