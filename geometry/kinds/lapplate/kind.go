// Package lapplate is one or two plates lapped over the butt joint of two flats. It never knows strength, and it does not
// count on the butt itself.
//
// Axes: the joint's gap is middled on x = 0 and square to x; the flats run along x, their width along y, their middle plane is
// z = 0. Lap 1 lies on the upper face, lap 2 on the lower. Names that end in -b are on the half towards negative x.
//
//	kind.go    the kind: sentence, parameters, order of work
//	design.go  parameters read into names, what does not fit
//	plates.go  lap outlines
//	fixing.go  welds or bolts of each half
//	path.go    load path from one flat through the laps to the other
package lapplate

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the lap plate.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "lap-plate",
		Sentence: "one or two plates over the butt joint of two flats, welded round or bolted, for pull and push along them",
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
	for _, l := range d.laps {
		b.Plates = append(b.Plates, d.plate(l))
		if d.bolted {
			d.addBolts(b, l)
		} else {
			d.addWelds(b, l)
		}
	}
	d.addPath(b)
	d.addRemarks(b)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func (d *design) addRemarks(b *part.Bracket) {
	b.Notes = append(b.Notes, "dress the butt flush before the lap goes on; no weld across the flats at the joint")
	if d.bolted && len(d.laps) == 2 {
		b.Notes = append(b.Notes, "the same bolts hold lap 1 and lap 2: two shear planes each")
	}
	ends := ""
	if !d.bolted {
		ends = " and what tapers beside the laps' welds"
	}
	b.Unchecked = append(b.Unchecked,
		"the flats themselves, their net section included"+ends, "what the butt joint itself carries",
		"side load, up and down load, and moments: the lap has no path for them",
	)
}

func params() []geometry.Param {
	return append([]geometry.Param{
		fab.Length("member_thickness", 3, 60, 8, "thickness of the flats"),
		fab.Length("member_width", 20, 1000, 100, "width of the flats"),
		fab.Named("member_material", "S355", "grade of the flats"),
		fab.Length("joint_gap", 0, 20, 2, "gap between the flats' ends"),
		fab.Choice("faces", "laps on one face or on two", "one", "two"),
		fab.Choice("ends", "shape of the lap's ends", "tapered", "rectangular", "diamond"),
		fab.Length("lap_thickness", 3, 60, 8, "thickness of a lap"),
		fab.Length("lap_width", 10, 1000, 80, "width of a lap at the joint"),
		fab.Length("overlap", 20, 1500, 100, "reach of lap 1 over each flat, from the flat's end"),
		fab.Length("stagger", 0, 500, 0, "how much farther lap 2 reaches on each side, so that the ends do not meet"),
		fab.Length("taper", 5, 1000, 40, "length of a tapered end"),
		fab.Length("nose", 5, 500, 30, "width of the blunt tip of a tapered or diamond end"),
		fab.Named("lap_material", "S355", "grade of the laps"),
		fab.Choice("fixing", "how a lap is held", "welded", "bolted"),
		fab.Length("weld", 3, 25, 5, "leg of the fillets round a lap"),
		fab.Length("weld_stop", 5, 200, 10, "unwelded length from the flat's end on each side of the joint"),
		fab.Named("electrode", "E70", "filler grade"),
		fab.Length("bolt_first", 5, 500, 25, "first row of bolts from the flat's end"),
		fab.Count("bolt_rows", 1, 8, 2, "rows of bolts on each side of the joint, one behind the other"),
		fab.Length("bolt_row_pitch", 8, 500, 35, "distance between rows"),
		fab.Count("bolts_per_row", 1, 8, 1, "bolts in a row, across the lap"),
		fab.Length("bolt_gauge", 8, 500, 40, "distance between bolts of a row"),
	}, fab.BoltParams("M12", "10.9")...)
}
