// Package backingplate is a plate on the far side of a wall or a body's floor, under the bolts that hold the wall to a foot. It never knows strength.
//
// Axes: the origin is where foot and wall meet, under the middle of the bolts; z goes from the foot through the wall to the plate, x along the columns of
// bolts, y along the rows. A force along z pulls the wall off the foot.
//
//	kind.go   the kind: sentence, parameters, order of work
//	design.go sizes, and what does not fit
//	path.go   plate, bolts, supports, load path, sections
package backingplate

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the backing plate.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "backing-plate",
		Sentence: "a plate on the far side of a wall or floor under a bolt pattern, so that the bolts do not pull through what they hold to a foot",
		Params:   params(),
		Build:    build,
	}
}

func build(v geometry.Values) (*part.Bracket, error) {
	d := read(v)
	if err := d.check(); err != nil {
		return nil, err
	}
	b := &part.Bracket{}
	d.addPlate(b)
	d.addPaths(b)
	d.addSweeps(b)
	b.Notes = append(b.Notes, "round the plate's edges off on the wall's side, put hardened washers under heads and nuts, seal the faying faces")
	b.Unchecked = append(b.Unchecked,
		"the wall: its bending and shear about the plate, beyond bearing at the bolts",
		"the foot, beyond the pressure on it: what it is bolted through and what holds it",
		"heads or nuts pulled through the plate, where the basis has no rule for it",
	)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func params() []geometry.Param {
	return append([]geometry.Param{
		fab.Length("length", 30, 1500, 130, "length of the plate along the columns of bolts"),
		fab.Length("width", 20, 1000, 90, "width of the plate"),
		fab.Length("thickness", 2, 60, 8, "plate thickness"),
		fab.Length("corner_radius", 0, 200, 15, "radius of the corners, 0 for sharp"),
		fab.Named("material", "S355", "grade of the plate"),
		fab.Count("bolt_columns", 1, 8, 2, "bolts along the length"),
		fab.Length("bolt_pitch", 10, 800, 80, "distance between them"),
		fab.Count("bolt_rows", 1, 8, 2, "bolts across"),
		fab.Length("bolt_gauge", 10, 800, 45, "distance between them"),
		fab.Length("wall_thickness", 0.8, 60, 3, "thickness of the wall or floor"),
		fab.Named("wall_material", "S235", "its grade"),
		fab.Length("foot_length", 20, 1500, 120, "length of the foot's face on the wall, middled on the bolts"),
		fab.Length("foot_width", 20, 1000, 80, "its width"),
		fab.Length("foot_thickness", 1, 60, 8, "thickness of the foot at the bolts"),
		fab.Named("foot_material", "S355", "its grade"),
	}, fab.BoltParams("M10", "8.8")...)
}
