// Package arch carries a mount over a cross member beside a rail: two plates whose arched openings pass over the cross member, their feet on angles
// that are bolted to the rail's web, and a bar through both that seats on the cross member. It never knows strength.
//
// Axes: the origin is on the web's face, on the upper face of the feet, over the cross member's middle; x along the rail, y away from the web on the
// cross member's side, z up. Plate 1 is the one farther from the web.
//
//	kind.go    the kind: sentence, parameters, order of work
//	design.go  sizes read into names, and what does not fit
//	outline.go the arch: opening, notch for the bar, shoulders, head
//	parts.go   plates, bar, welds, contacts
//	feet.go    angles and their bolts
//	path.go    shares, load paths, sections
//	frame.go   what the legs of the arch do to each other, by statics
//	tied.go    what the bar does between the plates under a side force
package arch

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the arch bracket.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "arch",
		Sentence: "two plates arched over a cross member, their feet on angles bolted to the rail, a bar between them on the cross member, a pin through both",
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
	d.addPlates(b)
	d.addBar(b)
	d.addFeet(b)
	d.lug.Hold(b, [2]string{"plate-2", "plate-1"}, d.t, v.Word("material"), part.Vec{Y: d.middle, Z: d.pinZ})
	d.addPaths(b)
	d.addSweeps(b)
	d.remarks(b)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func (d *design) remarks(b *part.Bracket) {
	if d.lug.AllowanceMM > 0 {
		b.Notes = append(b.Notes, "ream the pin holes after welding, both plates in one pass")
	}
	b.Notes = append(b.Notes,
		"weld both plates on their angles with a dummy pin and the bar through them; the bar is welded last, on the outer faces",
		"shim the bar on its seat before the bolts are drawn; where a gap may stay, the stiffness ratio begins at 0",
		"the cross member's own ends and its bolts keep clear of the angles",
	)
	b.Unchecked = append(b.Unchecked,
		"the cross member under the bar: bending of its wall, crippling of its sides, and the cross member as a beam",
		"the arch's inner corners and the notch: stress raised there, and the crown as a deep curved beam; bending is by the theory of straight beams",
		"how far the legs spread and sway: forces are carried at the bounds of what the feet hold, give is not reckoned",
		"the angles as beams along the rail: bending and twist between a leg and its bolts",
		"the web between the two feet, where what each of them bends overlaps",
		"the body's lug beyond the pin", "head, nut, keeper or retaining bolt of the pin",
	)
	if d.inflection() > d.openZ {
		b.Unchecked = append(b.Unchecked, "the sense in which a load down bends the feet of legs this low beside their opening: its size is bounded, the sense may be the other")
	}
	if d.round {
		b.Unchecked = append(b.Unchecked, "pressure of the round bar on the cross member: a line of contact, no rule here")
	}
}

func params() []geometry.Param {
	return slices.Concat(fab.BodyLugParams(), []geometry.Param{
		fab.Length("cross_width", 20, 400, 80, "width of the cross member, along the rail"),
		fab.Length("cross_height", 5, 300, 50, "top of the cross member above the feet's upper face"),
		fab.Length("cross_wall", 2, 40, 6, "wall of the cross member under the bar"),
		fab.Named("cross_material", "S355", "grade of the cross member"),
		fab.Length("clearance", 2, 50, 8, "least clearance between the cross member and plates or angles"),

		fab.Length("opening_width", 30, 600, 160, "width of the arched opening"),
		fab.Length("opening_height", 15, 500, 64, "height of the arched opening above the feet"),
		fab.Length("arch_radius", 6, 300, 45, "radius of the opening's upper corners, half its width for a round arch"),
		fab.Length("leg_width", 20, 300, 65, "width of a leg beside the opening"),
		fab.Length("shoulder_height", 15, 600, 110, "height of the legs' outer corners, where the sides turn to the head"),
		fab.Length("shoulder_radius", 0, 100, 10, "radius of the outer corners, 0 for sharp"),
		fab.Length("pin_height", 30, 700, 125, "pin centre above the feet"),
		fab.Length("end_distance", 8, 300, 80, "pin centre to the top of the head"),
		fab.Length("head_radius", 8, 300, 75, "radius of the head"),
		fab.Length("plate_thickness", 4, 60, 16, "thickness of each plate"),
		fab.Named("material", "S355", "grade of the plates"),
		fab.Length("foot_weld", 3, 25, 6, "leg of the fillets between a leg and its angle, both faces, full width"),

		fab.Choice("bar_shape", "section of the bar on the cross member", "flat", "round"),
		fab.Length("bar_width", 10, 200, 40, "width of a flat bar, along the rail; diameter of a round one"),
		fab.Length("bar_height", 10, 200, 40, "height of a flat bar"),
		fab.Named("bar_material", "S355", "grade of the bar"),
		fab.Length("bar_past", 0, 100, 10, "how far the bar stands out past each plate"),
		fab.Length("notch_clearance", 0, 3, 0.5, "gap between bar and notch, sides and top"),
		fab.Length("bar_weld", 3, 20, 6, "leg of the fillet round the bar on each plate's outer face"),

		fab.Ratio("stiffness_ratio_low", 0, 1000, 0.25, "stiffness of the cross member under the bar over that of the rail under the feet, the least it may be; 0 where the bar may lift off"),
		fab.Ratio("stiffness_ratio_high", 0, 1000, 4, "the most it may be"),
		fab.Ratio("feet_hold_low", 0, 1, 0, "how far the feet hold the legs against spreading and turning, at least: 0 not at all, 1 fixed under a limp crown"),
		fab.Ratio("feet_hold_high", 0, 1, 1, "and at most"),

		fab.Length("foot_offset", 15, 280, 52, "web face to the middle between the plates"),
		fab.Length("angle_out", 30, 300, 100, "each foot's angle: leg that reaches out from the web, over its back"),
		fab.Length("angle_down", 30, 300, 130, "each angle: leg that is bolted to the web, over its back"),
		fab.Length("angle_thickness", 3, 35, 12, "each angle: leg thickness"),
		fab.Length("angle_root_radius", 0, 30, 12, "each angle: root radius, from the section table"),
		fab.Length("angle_length", 40, 600, 120, "each angle: length along the rail, middled under its legs"),
		fab.Named("foot_material", "S355", "grade of angles and stiffeners"),
		fab.Count("stiffener_count", 0, 4, 1, "plates in the corner under each angle's leg"),
		fab.Length("stiffener_spacing", 10, 500, 44, "distance between stiffeners, middle to middle"),
		fab.Length("stiffener_thickness", 3, 40, 16, "thickness of a stiffener"),
		fab.Length("stiffener_reach", 10, 280, 80, "stiffener's length along the leg that reaches out, from the inner corner"),
		fab.Length("stiffener_depth", 10, 280, 110, "stiffener's length down the bolted leg, from the inner corner"),
		fab.Length("stiffener_nose", 2, 100, 15, "blunt ends of a stiffener"),
		fab.Length("stiffener_weld", 3, 20, 6, "leg of the fillets along a stiffener, both faces"),
		fab.Length("snipe_clearance", 2, 15, 3, "snipe at a stiffener's inner corner beyond the root radius"),

		fab.Count("bolts_per_row", 1, 8, 2, "bolts in a row of each foot, along the rail"),
		fab.Length("bolt_pitch", 8, 500, 76, "distance between bolts of a row"),
		fab.Count("bolt_rows", 1, 4, 2, "rows of bolts, down the angle's leg"),
		fab.Length("bolt_first", 10, 250, 50, "first row below the feet's upper face"),
		fab.Length("bolt_row_pitch", 8, 250, 55, "distance between rows"),

		fab.Length("support_thickness", 1, 60, 6, "thickness of the rail's web"),
		fab.Named("support_material", "S355", "grade of the web"),
		fab.Length("web_clear_height", 30, 1500, 188, "clear height of the web between its flanges"),
		fab.Choice("couple", "what takes the couple that bends the web", string(part.CoupleByCrossMember), string(part.CoupleByWall)),
		fab.Named("electrode", "E70", "filler grade of all welds"),
	}, fab.BoltParams("M16", "10.9"))
}
