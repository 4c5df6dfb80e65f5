// Package crosstube is a tube across the frame, round or rectangular, welded all round to a plate at each end; each plate is bolted to the web of its rail,
// and a mount stands somewhere along the tube. It never knows strength.
//
// Axes: the origin is midway between the rails' webs, at the tube's middle; x along the rails, y across, z up. The near rail is the one from which the
// load is measured: the left one of a left-hand bracket.
//
//	kind.go    the kind: sentence, parameters, order of work
//	design.go  sizes, and what does not fit
//	parts.go   end plates, tube, welds
//	path.go    bolts, supports, load path, sections
package crosstube

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the cross tube.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "crosstube",
		Sentence: "a cross tube between the frame rails: round or rectangular, an end plate welded on at each end and bolted to the rail's web",
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
	d.addPaths(b)
	b.Notes = append(b.Notes,
		"measure between the webs at this station before the tube is sawn; shims fill what is left, bolts do not pull the rails together",
		"weld the second end plate with the tube in place or in a jig, so that both plates lie flat on their webs",
		"vent the closed tube before hot-dip; drill the vent where water runs out, away from the load and the ends",
	)
	b.Unchecked = append(b.Unchecked,
		"the tube's wall under what the mount brings, and the mount's own weld or seat on it",
		"what the frame puts into the tube and its ends when it twists or racks, or when its rails sink unequally or spread",
		"the rails themselves: bending, and twist by what they hold of the tube's ends",
	)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func params() []geometry.Param {
	return slices.Concat(
		[]geometry.Param{
			fab.Length("span", 200, 2500, 800, "clear distance between the webs' inner faces"),
			fab.Choice("section", "section of the tube", "round", "rectangular"),
			fab.Length("tube_diameter", 30, 300, 88.9, "outside diameter of a round tube"),
			fab.Length("tube_width", 30, 300, 100, "outside width of a rectangular tube, along the rails"),
			fab.Length("tube_height", 30, 300, 100, "outside height of a rectangular tube"),
			fab.Length("tube_corner", 2, 60, 16, "outside corner radius of a rectangular tube"),
			fab.Length("tube_wall", 2, 20, 8, "nominal wall of the tube"),
			fab.Named("tube_material", "S355", "grade of the tube"),
			fab.Length("tube_weld", 3, 20, 8, "leg of the fillets round the tube on the end plates"),
		},
		fab.TubePlateParams("end", "end plate", fab.TubePlate{ThicknessMM: 20, LengthMM: 220, HeightMM: 150, RadiusMM: 10, PitchMM: 165, GaugeMM: 90}),
		[]geometry.Param{
			fab.Length("load_at", 10, 2490, 400, "load from the near rail's web, along the tube"),
			fab.Length("load_height", 0, 600, 80, "load over the tube's middle"),
			fab.Named("electrode", "E70", "filler grade"),
			fab.Length("support_thickness", 1, 60, 6, "thickness of the rails' webs"),
			fab.Named("support_material", "S355", "grade of the webs"),
			fab.Length("web_clear_height", 30, 1500, 188, "clear height of the webs between their flanges"),
			fab.Choice("couple", "what takes the couple that bends a web where the tube's end is held against turning",
				string(part.CoupleByTurning), string(part.CoupleByWall)),
		},
	)
}
