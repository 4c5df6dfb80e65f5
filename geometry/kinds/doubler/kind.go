// Package doubler is a plate with rounded corners that lies on a wall and takes a stated share of the force in it: over a hole, or where a load
// wants spreading. It never knows strength.
//
// Axes: the origin is in the middle plane of the wall under the plate's middle; x along the force, y across, z out of the wall through the plate.
// Names that end in -b are on the half towards negative x.
//
//	kind.go   the kind: sentence, parameters, order of work
//	design.go sizes, and what does not fit
//	plate.go  plate, welds or bolts
//	path.go   load path from one half of the wall through the plate to the other
package doubler

import (
	"fmt"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the doubler.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "doubler",
		Sentence: "a plate on a web, rail or tube wall, welded all round or bolted, that takes a stated share of the force in the wall under it",
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
	d.fix(b)
	d.addPath(b)
	d.remarks(b)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func (d *design) remarks(b *part.Bracket) {
	b.Notes = append(b.Notes, fmt.Sprintf("the doubler is stated to take %.3g %% of the force in the strip of wall under it; by thickness it would take %.3g %%",
		100*d.share, 100*d.byThickness()))
	b.Unchecked = append(b.Unchecked,
		"the wall: its own section, at a hole too, and the share of the force that it keeps",
		"force across the doubler or square to it, and moments: it has no path for them",
	)
	if !d.bends {
		b.Unchecked = append(b.Unchecked, "the wall under the couple of the force off the doubler's middle plane, which the job says it takes")
	}
	if d.hole > 0 {
		b.Notes = append(b.Notes, "finish the hole through wall and doubler together, after the doubler is on")
	}
	if len(d.plugs) > 0 {
		b.Notes = append(b.Notes, "fill the plug holes after the fillet all round, to the plate's face")
	}
	if !d.bolted {
		b.Notes = append(b.Notes, "seal the faying faces: a welded pocket rusts from within; vent it before hot-dip")
	}
}

func params() []geometry.Param {
	return append([]geometry.Param{
		fab.Length("length", 30, 2000, 160, "length of the plate along the force"),
		fab.Length("width", 20, 1000, 100, "width of the plate"),
		fab.Length("thickness", 2, 60, 6, "plate thickness"),
		fab.Length("corner_radius", 0, 300, 20, "radius of the corners, 0 for sharp"),
		fab.Named("material", "S355", "grade of the plate"),
		fab.Choice("wall_kind", "what the wall is", string(part.RailWeb), string(part.RailFlange), string(part.TubeWall), string(part.CrossMember), string(part.BodyFrame)),
		fab.Length("wall_thickness", 1, 60, 6, "thickness of the wall"),
		fab.Length("wall_width", 20, 2000, 188, "flat width of the wall across the force"),
		fab.Named("wall_material", "S355", "grade of the wall"),
		fab.Length("hole_diameter", 0, 500, 40, "hole through wall and plate in the plate's middle, 0 for none"),
		fab.Ratio("share", 0.05, 1, 0.5, "part of the force in the strip of wall under the plate that the plate takes; a welded plate is tried with its part by thickness too"),
		fab.Choice("couple", "what takes the couple of the force off the plate's middle plane: the plate alone, or the wall where flanges or edges hold it", "doubler", "wall"),
		fab.Choice("fixing", "how the plate is held", "welded", "bolted"),
		fab.Length("weld", 2, 25, 5, "leg of the fillet all round"),
		fab.Named("electrode", "E70", "filler grade"),
		fab.Count("plugs", 0, 10, 0, "plug welds on each side of the hole, along the middle, 0 for none"),
		fab.Length("plug_diameter", 8, 60, 16, "diameter of a plug hole"),
		fab.Length("plug_first", 5, 900, 45, "first plug from the plate's middle"),
		fab.Length("plug_pitch", 20, 500, 80, "distance between plugs of a side"),
		fab.Length("bolt_first", 5, 900, 40, "first row of bolts from the plate's middle"),
		fab.Count("bolt_rows", 1, 8, 1, "rows of bolts on each side of the middle, one behind the other"),
		fab.Length("bolt_row_pitch", 8, 500, 40, "distance between rows"),
		fab.Count("bolts_per_row", 1, 8, 2, "bolts in a row, across the plate"),
		fab.Length("bolt_gauge", 8, 900, 50, "distance between bolts of a row"),
	}, fab.BoltParams("M12", "8.8")...)
}
