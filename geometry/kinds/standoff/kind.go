// Package standoff carries a mount away from the rail's web on a rectangular tube, welded to a base plate that is bolted to the web. It never knows
// strength.
//
// Axes: the origin is on the web's outer face, at the tube's middle; x along the rail, y away from it, z up.
//
//	kind.go    the kind: sentence, parameters, order of work
//	design.go  sizes, and what does not fit
//	parts.go   base plate, tube, end plate, welds
//	path.go    bolts, support, load path, sections
package standoff

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the stand-off.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "standoff",
		Sentence: "a box that carries a mount away from the rail: a rectangular tube on a base plate bolted to the web, its outer end closed",
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
	d.addParts(b)
	d.addBolts(b)
	d.addPath(b)
	b.Notes = append(b.Notes,
		"vent the closed tube before hot-dip; drill the vent where water runs out",
		"the mount goes on the outer end; weld it before the stand-off is bolted on",
	)
	b.Unchecked = append(b.Unchecked,
		"the tube's wall under what the mount brings, and the mount's own weld to it",
		"the end plate and its weld: they carry no load path here",
		"twist of the rail by the load's distance, and the cross member behind it",
	)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func params() []geometry.Param {
	return slices.Concat(
		[]geometry.Param{
			fab.Length("reach", 30, 1000, 120, "web face to the outer end of the tube"),
			fab.Length("tube_width", 30, 300, 100, "outside width of the tube, along the rail"),
			fab.Length("tube_height", 30, 300, 100, "outside height of the tube"),
			fab.Length("tube_wall", 2, 20, 6, "nominal wall of the tube"),
			fab.Length("tube_corner", 2, 60, 12, "outside corner radius of the tube"),
			fab.Named("tube_material", "S355", "grade of the tube"),
			fab.Length("tube_weld", 3, 20, 5, "leg of the fillet round the tube on the base plate"),
			fab.Length("end_thickness", 3, 30, 6, "thickness of the plate that closes the outer end"),
		},
		fab.TubePlateParams("base", "base plate", fab.TubePlate{ThicknessMM: 16, LengthMM: 260, HeightMM: 150, RadiusMM: 10, PitchMM: 190, GaugeMM: 90}),
		[]geometry.Param{
			fab.Length("load_out", 10, 1000, 90, "load from the web face"),
			fab.Length("load_height", 0, 600, 50, "load over the tube's middle"),
			fab.Named("electrode", "E70", "filler grade"),
			fab.Length("support_thickness", 1, 60, 6, "thickness of the rail's web"),
			fab.Named("support_material", "S355", "grade of the web"),
			fab.Length("web_clear_height", 30, 1500, 188, "clear height of the web between its flanges"),
			fab.Choice("couple", "what takes the couple that bends the web", string(part.CoupleByCrossMember), string(part.CoupleByWall)),
		},
	)
}
