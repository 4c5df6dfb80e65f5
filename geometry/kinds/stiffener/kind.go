// Package stiffener is a rectangular plate fitted between the flanges of a rail, or across the two legs of an angle. It never knows strength.
//
// Axes: the origin is in the corner of the web and the loaded flange; x along the rail, y away from the web, z up to the loaded flange, whose inner
// face is z = 0. The plate hangs below it, its middle plane at x = 0.
//
//	kind.go   the kind: sentence, parameters, order of work
//	plate.go  outline, and what does not fit
//	joints.go welds, supports, load path
package stiffener

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the stiffener.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "stiffener",
		Sentence: "a plate fitted between the flanges of a rail or across an angle, that brings a force from a flange into the web",
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
	b.Unchecked = append(b.Unchecked,
		"the flange between the load and the stiffener, and the web beyond its metal beside the weld",
		"local buckling of the stiffener's free edge away from the web",
		"load square to the stiffener's plane, and moments: it has no path for them",
	)
	if d.three {
		b.Notes = append(b.Notes, "cut it to the height measured between the flanges at its place: they are seldom parallel")
		b.Unchecked = append(b.Unchecked, "what the weld to the far flange carries: the load path counts on the web alone")
	}
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func params() []geometry.Param {
	return []geometry.Param{
		fab.Choice("sides", "welded on three sides, to both flanges and the web, or on two, to one flange and the web or to the legs of an angle", "three", "two"),
		fab.Length("height", 20, 2000, 188, "height of the plate; between two flanges their clear distance"),
		fab.Length("width", 15, 800, 55, "width of the plate from the web"),
		fab.Length("thickness", 3, 60, 8, "plate thickness"),
		fab.Named("material", "S355", "grade of the plate"),
		fab.Length("root", 0, 60, 9, "root radius, or leg of the fillet, in the corner of web and flange"),
		fab.Length("snipe_clearance", 2, 15, 4, "opening at the corner beyond that"),
		fab.Choice("corner", "a 45 degree snipe, or a round root hole", "snipe", "root hole"),
		fab.Length("weld", 3, 25, 5, "leg of the fillets, both faces"),
		fab.Named("electrode", "E70", "filler grade"),
		fab.Length("load_distance", 2, 800, 30, "load on the flange, from the web"),
		fab.Length("flange_thickness", 1, 60, 8, "thickness of the loaded flange"),
		fab.Named("flange_material", "S355", "its grade"),
		fab.Length("web_thickness", 1, 60, 6, "thickness of the web"),
		fab.Named("web_material", "S355", "its grade"),
	}
}
