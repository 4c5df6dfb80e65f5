// Package clevis is the forked bracket: two ears on a foot take a pin through a body's lug. It never knows strength.
//
// Axes before the bracket is turned or mirrored: the origin is on the upper face of the foot; x runs rearward along the ears,
// y outboard along the pin, z up. On an angle foot y = 0 is the face of the rail's web; on a base plate it is the middle of the
// fork. Ear 1 is outboard.
//
//	kind.go        the kind: sentence, parameters, order of work
//	design.go      parameters read into names
//	ears.go        ears and their heads
//	cheeks.go      cheek plates or bosses round the pin hole
//	gussets.go     plates that stiffen the ears
//	pin.go         pin, seats, its card
//	ending.go      what keeps the pin in: nut, retaining bolt, keeper
//	spacers.go     tubes between lug and ears
//	foot.go        what a foot is
//	foot_angle.go  angle bolted to a web, with stiffeners
//	foot_plate.go  base plate bolted down
//	loadpath.go    load point, shares, paths, sweeps of the ears
//	remarks.go     notes to the maker, what is not checked
package clevis

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the clevis.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "clevis",
		Sentence: "two ears on an angle beside a rail, or on a base plate, with a pin through the body's lug",
		Params:   params(),
		Build:    build,
	}
}

func build(v geometry.Values) (*part.Bracket, error) {
	d := read(v)
	if err := d.check(); err != nil {
		return nil, err
	}
	b := fab.Room(2+2*len(d.outside.at)+len(d.between.at)+v.Count("stiffener_count")+3, 5)
	d.addEars(b)
	d.addCheeks(b)
	d.addOuter(b)
	d.addBetween(b)
	d.foot.add(d, b)
	d.addPin(b)
	d.addPaths(b)
	d.addRemarks(b)
	fab.MarkAll(b, v.Mark)
	if d.turned {
		fab.QuarterTurn(b)
	}
	return b, nil
}

// check goes from the whole to the detail: a later step builds on what an earlier one has accepted.
func (d *design) check() error {
	for _, step := range []func(*fab.Needs){d.checkPin, d.checkEars, d.checkCheeks, d.checkEnding, d.checkSpacers, d.checkGussets, func(n *fab.Needs) { d.foot.check(d, n) }} {
		var n fab.Needs
		step(&n)
		if err := n.Err(); err != nil {
			return err
		}
	}
	return nil
}

func params() []geometry.Param {
	return slices.Concat(formParams(), pinParams(), endingParams(), lugParams(), spacerParams(), earParams(),
		fab.CheekParams("each ear's outer face"), gussetParams(), footParams())
}

func formParams() []geometry.Param {
	return []geometry.Param{
		fab.Choice("foot", "what the ears stand on", "angle", "base plate"),
		fab.Choice("pin_axis", "direction of the pin in the vehicle; along needs the base plate", "across", "along"),
	}
}

func lugParams() []geometry.Param {
	return []geometry.Param{
		fab.Length("lug_thickness", 4, 200, 52, "thickness of the body's lug, with its boss or tube: between the ears a torch needs about 50 mm to reach inside"),
		fab.Named("lug_material", "S355", "grade of the body's lug"),
		fab.Length("gap", 0.2, 100, 2, "gap between lug and ear on each side"),
		fab.Length("lug_radius", 8, 300, 30, "clear radius below the pin that the lug needs to swing"),
		fab.Length("bush_length", 0, 200, 0, "bearing length of a bush in the lug, 0 for none"),
	}
}

func earParams() []geometry.Param {
	return []geometry.Param{
		fab.Length("ear_thickness", 3, 60, 8, "thickness of each ear"),
		fab.Length("ear_width", 20, 600, 100, "width of each ear at the foot"),
		fab.Length("end_distance", 8, 300, 56, "pin centre to the top of the head"),
		fab.Choice("head", "shape of the ear's top", "round", "tapered"),
		fab.Length("head_radius", 8, 300, 45, "radius of a tapered head"),
		fab.Named("ear_material", "S355", "grade of ears"),
		fab.Length("ear_weld", 3, 25, 6, "leg of the fillets between ear and foot, both faces"),
		fab.Length("inner_run", 0, 300, 0, "length of the fillet on each ear's inner face from either end, as far as a torch reaches between the ears; 0, or half the width, for all of it"),
	}
}

func gussetParams() []geometry.Param {
	return []geometry.Param{
		fab.Choice("gussets", "which plates stiffen the ears sideways", "both", "none", "outer", "between"),
		fab.Length("outer_gusset_thickness", 3, 40, 10, "thickness of the gussets on the ears' outer faces"),
		fab.Length("outer_gusset_height", 15, 500, 85, "height of an outer gusset above the foot"),
		fab.Length("outer_gusset_length", 8, 400, 17, "length of an outer gusset along the foot"),
		fab.Length("outer_gusset_nose", 2, 200, 16, "width of an outer gusset's blunt top"),
		fab.Count("outer_gusset_count", 1, 3, 2, "outer gussets on each ear"),
		fab.Length("outer_gusset_spacing", 10, 400, 70, "distance between outer gussets of one ear, middle to middle"),
		fab.Length("between_thickness", 3, 40, 8, "thickness of the plates from ear to ear under the lug"),
		fab.Length("between_height", 10, 500, 60, "height of the plates between the ears"),
		fab.Count("between_count", 1, 3, 1, "plates between the ears"),
		fab.Length("between_spacing", 10, 400, 40, "distance between the plates between the ears, middle to middle"),
		fab.Named("gusset_material", "S355", "grade of gussets, cheek plates and stiffeners"),
		fab.Length("gusset_weld", 3, 20, 5, "leg of the fillets along gussets, both faces"),
		fab.Length("snipe_clearance", 2, 15, 3, "snipe at an inner corner beyond the weld leg or root radius that passes there"),
	}
}

func footParams() []geometry.Param {
	return slices.Concat([]geometry.Param{
		fab.Length("angle_out", 30, 300, 120, "angle foot: leg that reaches out from the web, over its back"),
		fab.Length("angle_down", 30, 300, 120, "angle foot: leg that is bolted to the web, over its back"),
		fab.Length("angle_thickness", 3, 35, 10, "angle foot: leg thickness"),
		fab.Length("angle_root_radius", 0, 30, 11, "angle foot: root radius, from the section table"),
		fab.Length("angle_length", 40, 1500, 300, "angle foot: length along the rail"),
		fab.Length("clevis_offset", 15, 280, 60, "angle foot: web face to the middle of the fork"),
		fab.Count("stiffener_count", 0, 6, 4, "angle foot: plates in the corner under the leg"),
		fab.Length("stiffener_spacing", 10, 600, 80, "angle foot: distance between stiffeners, middle to middle"),
		fab.Length("stiffener_thickness", 3, 40, 10, "angle foot: thickness of a stiffener"),
		fab.Length("stiffener_reach", 10, 280, 70, "angle foot: stiffener's length along the leg that reaches out, from the inner corner"),
		fab.Length("stiffener_depth", 10, 280, 105, "angle foot: stiffener's length down the bolted leg, from the inner corner"),
		fab.Length("stiffener_nose", 2, 100, 10, "angle foot: blunt ends of a stiffener"),
		fab.Length("stiffener_weld", 3, 20, 6, "angle foot: leg of the fillets along a stiffener, both faces"),

		fab.Length("plate_thickness", 3, 80, 16, "base plate foot: thickness"),
		fab.Length("plate_length", 40, 1500, 260, "base plate foot: size along the ears, square to the pin"),
		fab.Length("plate_width", 40, 1000, 160, "base plate foot: size along the pin"),
		fab.Length("plate_corner_radius", 0, 100, 10, "base plate foot: corner radius, 0 for sharp"),
		fab.Named("foot_material", "S355", "grade of the angle or base plate"),
	}, fab.BoltParams("M12", "10.9"), []geometry.Param{
		fab.Count("bolt_rows", 1, 6, 2, "rows of bolts: down the leg of an angle, across a base plate"),
		fab.Count("bolts_per_row", 1, 12, 3, "bolts in a row, along the rail or along the ears"),
		fab.Length("bolt_pitch", 8, 500, 80, "distance between bolts of a row"),
		fab.Length("bolt_first", 10, 250, 45, "angle foot: first row below the leg's upper face"),
		fab.Length("bolt_row_pitch", 8, 250, 45, "angle foot: distance between rows"),
		fab.Length("bolt_gauge", 8, 800, 120, "base plate foot: distance between rows"),

		fab.Length("support_thickness", 1, 60, 6, "thickness of the web or wall that the foot is bolted to"),
		fab.Named("support_material", "S355", "grade of the web or wall"),
		fab.Length("web_clear_height", 30, 1500, 188, "clear height of the web between flanges, or width of the wall between its edges"),
		fab.Choice("couple", "what takes the couple that bends the web or wall out of its plane", string(part.CoupleByWall), string(part.CoupleByCrossMember)),
		fab.Named("electrode", "E70", "filler grade of all welds"),
	})
}
