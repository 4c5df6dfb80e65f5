// Package saddle holds a round tube: side plates with an arc bore on a base plate, and over them a bolted cap of arced plates. It never knows strength.
//
// Axes: the origin is on the support's face under the middle of the saddle; x runs across the tube, y along it, z up from the support to the tube. The
// load is what the tube does to the saddle, at the tube's axis.
//
//	kind.go    the kind: sentence, parameters, order of work
//	design.go  sizes, and what does not fit
//	fits.go    what does not fit of bolts and base plate
//	plates.go  side plates, cap, ears, collars and their welds
//	bolts.go   cap bolts, base plate with its bolts, supports
//	path.go    seats, load paths
//	sweeps.go  sections
package saddle

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the saddle.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "saddle",
		Sentence: "a saddle with a bolted cap over a round tube: side plates with an arc bore on a base plate, the cap of arced plates with ears",
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
	d.addBase(b)
	d.addPlates(b)
	d.addCollars(b)
	d.addBolts(b)
	d.addPaths(b)
	d.addSweeps(b)
	d.addRemarks(b)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func (d *design) addRemarks(b *part.Bracket) {
	b.Notes = append(b.Notes,
		"clamp cap and saddle on a dummy tube with liner, paint and gap in place while the ears are welded; the gap stays open when the bolts are tight",
		"hung from a body over a tube of the frame the saddle stands on its head: give the body's force on it as the load, x and z as they are, y turned round",
	)
	hold := "friction of the clamp, along the tube and against its turning: nothing here relies on it"
	if d.v.Word("turns") == "yes" {
		b.Notes = append(b.Notes, "the tube turns in its bore: tighten the cap on shims that leave it free, with locking nuts, and grease or line the bore")
		hold = "wear of bore, liner and tube as the tube turns, and what turns it by friction"
	}
	if d.collarT > 0 {
		b.Notes = append(b.Notes, "a collar on a tube that is in place is cut in two halves and butt-welded; weld collars before the saddle is put on")
	} else {
		b.Notes = append(b.Notes, "nothing holds the tube along its axis: give collar_thickness, or let another mount hold it")
	}
	b.Unchecked = append(b.Unchecked,
		"tightening of the cap bolts: what it squeezes of tube, liner and paint, and what pull it leaves in the bolts",
		"the tube as a beam, and its stress along the wall beside what the saddle adds round it",
		"a couple that the tube brings by its slope or stiffness, and a load off the tube's axis: only forces at the axis have a path",
		"side plates and base plate as one beam over the bolts; the side plates are checked without the base plate's help",
		hold,
	)
	if len(d.ys) == 1 && d.offset > 0 {
		b.Unchecked = append(b.Unchecked, "bending of the one side plate out of its plane, and of its weld, by a load "+fab.MM(d.offset)+" off its middle along the tube")
	}
	if d.liner > 0 {
		b.Unchecked = append(b.Unchecked, "the liner, its pressure and creep: the bearing on the tube is checked as steel on steel, evenly on the whole arc; a liner too hard to give by its play leaves less of it, at worst a line")
	} else {
		b.Notes = append(b.Notes, "bore saddle and cap to the tube's measured diameter, paint and all: what is wider bears along a line")
		b.Unchecked = append(b.Unchecked, "the tube in a bore wider than it is, by tolerance or paint worn off: the whole arc is taken to bear, evenly; in a bore that fits, pressure by the cosine is 4/pi of that at its middle")
	}
	if d.collarT > 0 {
		b.Unchecked = append(b.Unchecked, "the couple of a force along the tube, whose collar presses beside the tube's axis, and bending of collar and side plate between tube and contact")
	}
}

func params() []geometry.Param {
	return append([]geometry.Param{
		fab.Length("tube_diameter", 20, 400, 88.9, "outside diameter of the tube"),
		fab.Length("tube_wall", 1, 50, 8, "wall of the tube"),
		fab.Named("tube_material", "S355", "grade of the tube"),
		fab.Length("liner", 0, 20, 2, "thickness of a liner between tube and bore, 0 for none"),
		fab.Length("bore_allowance", 0, 5, 0.5, "play of the bore all round for paint, on the radius; at most a quarter of liner, 0 without one"),
		fab.Length("clamp_gap", 0.5, 30, 4, "gap between the ears of saddle and cap, still open when tight"),
		fab.Choice("turns", "whether the tube may turn in the saddle", "no", "yes"),

		fab.Count("side_plates", 1, 2, 2, "side plates, one beside the other along the tube"),
		fab.Length("side_spacing", 20, 500, 90, "distance between two side plates, middle to middle"),
		fab.Length("load_offset", 0, 200, 5, "how far the load may stand off the middle, along the tube; with one side plate within its thickness"),
		fab.Length("side_thickness", 4, 60, 12, "thickness of side plates and cap plates"),
		fab.Length("axis_height", 30, 600, 145, "tube's axis over the support"),
		fab.Length("foot_width", 30, 1000, 213, "width of the side plates on the base plate"),
		fab.Named("material", "S355", "grade of all plates"),
		fab.Length("side_weld", 3, 25, 6, "leg of the fillets between side plates and base plate, both faces"),

		fab.Length("ear_thickness", 5, 60, 16, "thickness of the ears of saddle and cap"),
		fab.Length("ear_width", 15, 200, 42, "width of the ears across the tube"),
		fab.Length("ear_weld", 3, 25, 6, "leg of the fillets between ears and side plates or cap plates, both faces"),
		fab.Length("cap_depth", 8, 200, 40, "cap plates over the bore"),
		fab.Length("cap_corner", 0, 200, 35, "45 degree cut at the cap plates' upper corners, 0 for none"),
		fab.Thread("cap_bolt_size", "M12", "size of the cap bolts"),
		fab.Named("cap_bolt_grade", "10.9", "grade of the cap bolts"),
		fab.Count("cap_bolts", 1, 3, 1, "cap bolts at each corner, side by side across the tube"),
		fab.Length("cap_bolt_pitch", 10, 120, 35, "distance between them"),
		fab.Length("cap_bolt_out", 10, 120, 26, "cap bolts from the outer face of the side plates"),
		fab.Length("cap_bolt_edge", 8, 120, 22, "cap bolts to the ears' ends"),

		fab.Length("collar_thickness", 0, 60, 10, "thickness of a collar on the tube at either side, which holds it along its axis; 0 for none"),
		fab.Length("collar_diameter", 30, 600, 125, "outside diameter of the collars"),
		fab.Length("collar_gap", 0, 20, 1, "gap between collar and side plate"),
		fab.Length("collar_weld", 3, 25, 5, "leg of the fillet round the tube on the collar's far face"),

		fab.Length("base_thickness", 5, 80, 20, "thickness of the base plate"),
		fab.Length("base_length", 60, 1500, 340, "base plate across the tube"),
		fab.Length("base_width", 40, 1000, 170, "base plate along the tube"),
		fab.Length("base_corner_radius", 0, 100, 10, "corner radius of the base plate, 0 for sharp"),
		fab.Count("bolt_columns", 2, 8, 2, "columns of bolts across the tube"),
		fab.Length("bolt_pitch", 20, 1400, 280, "distance between columns"),
		fab.Count("bolt_rows", 1, 6, 2, "rows of bolts along the tube"),
		fab.Length("bolt_gauge", 20, 900, 120, "distance between rows"),

		fab.Named("electrode", "E70", "filler grade"),
		fab.Choice("support", "what the base plate is bolted to", string(part.CrossMember), string(part.BodyFrame)),
		fab.Length("support_thickness", 1, 60, 8, "thickness of the wall that the base plate is bolted to"),
		fab.Named("support_material", "S355", "grade of that wall"),
		fab.Length("wall_clear_width", 30, 1500, 240, "clear width of that wall along the tube, between its stiff edges"),
		fab.Choice("couple", "what takes the couple that bends that wall", string(part.CoupleByCrossMember), string(part.CoupleByWall)),
	}, fab.BoltParams("M16", "10.9")...)
}
