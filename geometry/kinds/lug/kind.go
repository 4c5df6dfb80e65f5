// Package lug is a single eye that stands on a flat face, on a base plate of its own that is bolted down, or on the end of a tube: on a cap, or in a slot.
// It never knows strength.
//
// Axes: the origin is on the face, the base plate's upper face or the tube's end, under the pin; x along the lug, y along the pin, z up. The fork that the
// pin holds is the other side's.
//
//	kind.go        the kind: sentence, parameters, order of work
//	design.go      sizes of lug and gussets, and what does not fit
//	parts.go       lug, cheeks, gussets, welds
//	stand.go       what a lug stands on, and a plain face
//	stand_plate.go base plate bolted down
//	stand_tube.go  tube's end, capped or slotted
package lug

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// Kind describes the lug.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "lug",
		Sentence: "a single eye on a plate or flange, on a base plate bolted down, or on a tube's end, with cheeks and gussets where wanted",
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
	d.addLug(b)
	d.addCheeks(b)
	d.addGussets(b)
	d.stand.add(d, b)
	at := part.Vec{Z: d.height}
	d.fork.Hold(b, "lug", v.Word("material"), d.eye(), v.MM("bush_length"), at)
	fab.LugPaths(b, at, append([]string{"lug", "w-lug"}, d.stand.chain()...)...)
	d.remarks(b)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func (d *design) remarks(b *part.Bracket) {
	if d.through {
		b.Notes = append(b.Notes, "bevel the lug's foot from both faces; gouge the root clean before the second side")
	}
	if d.allowance > 0 {
		b.Notes = append(b.Notes, "ream the pin hole after welding")
	}
	if d.gussetH > 0 {
		b.Notes = append(b.Notes, "weld the lug first, then its gussets, alternate sides")
	}
	if note := d.cheek.Note(d.pinHole(shape.Point{})); note != "" {
		b.Notes = append(b.Notes, note)
	}
	b.Unchecked = append(b.Unchecked, d.stand.unchecked()...)
	b.Unchecked = append(b.Unchecked, "the fork on the pin: it is the other side's")
}

func params() []geometry.Param {
	return slices.Concat(fab.ForkParams(), lugParams(), fab.CheekParams("each side"), gussetParams(), plateParams(), fab.BoltParams("M12", "10.9"), tubeParams(), supportParams())
}

func lugParams() []geometry.Param {
	return []geometry.Param{
		fab.Choice("foot", "what the lug stands on", onFace, onPlate, onCap, inSlot),
		fab.Length("pin_height", 15, 500, 60, "pin centre above the face, the base plate, the cap or the slotted tube's end"),
		fab.Length("thickness", 4, 100, 12, "thickness of the lug"),
		fab.Length("width", 20, 600, 120, "width of the lug at its foot"),
		fab.Length("end_distance", 8, 300, 70, "pin centre to the top of the head"),
		fab.Choice("head", "shape of the lug's top", "tapered", "round"),
		fab.Length("head_radius", 8, 300, 56, "radius of a tapered head"),
		fab.Named("material", "S355", "grade of lug, cheeks, gussets and cap"),
		fab.Choice("weld_kind", "weld at the lug's foot, both sides", fillet, through),
		fab.Length("weld", 3, 25, 6, "leg of the fillets at the lug's foot, full width, or along a tube's slots; how far a weld of complete penetration stands out"),
		fab.Named("electrode", "E70", "filler grade of all welds"),
	}
}

func gussetParams() []geometry.Param {
	return []geometry.Param{
		fab.Length("gusset_height", 0, 500, 0, "height of a gusset on each side of the lug, square to it, 0 for none"),
		fab.Length("gusset_length", 8, 400, 50, "length of a gusset along the face"),
		fab.Length("gusset_nose", 2, 200, 12, "width of a gusset's blunt ends"),
		fab.Length("gusset_thickness", 3, 40, 8, "thickness of a gusset"),
		fab.Length("gusset_weld", 3, 20, 5, "leg of the fillets along a gusset, both faces"),
		fab.Length("snipe_clearance", 2, 15, 3, "snipe at the inner corner beyond the weld that passes there"),
	}
}

func plateParams() []geometry.Param {
	return []geometry.Param{
		fab.Length("plate_thickness", 3, 80, 16, "base plate: thickness"),
		fab.Length("plate_length", 40, 1500, 220, "base plate: size along the lug"),
		fab.Length("plate_width", 40, 1000, 140, "base plate: size along the pin"),
		fab.Length("plate_corner_radius", 0, 100, 10, "base plate: corner radius, 0 for sharp"),
		fab.Named("plate_material", "S355", "base plate: its grade"),
		fab.Count("bolts_per_row", 1, 8, 2, "base plate: bolts in a row, along the lug"),
		fab.Length("bolt_pitch", 8, 1000, 170, "base plate: distance between bolts of a row"),
		fab.Count("bolt_rows", 1, 4, 2, "base plate: rows of bolts, side by side along the pin"),
		fab.Length("bolt_gauge", 8, 800, 90, "base plate: distance between rows"),
	}
}

func tubeParams() []geometry.Param {
	return []geometry.Param{
		fab.Choice("tube_form", "tube: its shape", "rectangular", "round"),
		fab.Length("tube_width", 20, 400, 70, "tube: outside size along the lug, or the diameter of a round one"),
		fab.Length("tube_depth", 20, 400, 70, "tube: outside size along the pin, of a rectangular one"),
		fab.Length("tube_wall", 2, 30, 6, "tube: wall"),
		fab.Length("tube_corner", 2, 60, 12, "tube: outside corner radius of a rectangular one"),
		fab.Named("tube_material", "S355", "tube: its grade"),
		fab.Length("tube_length", 30, 3000, 250, "tube: length from its end to where it is held"),
		fab.Length("slot_length", 20, 1000, 90, "slotted tube: length of the slots, which is that of the welds along them"),
		fab.Length("cap_thickness", 4, 80, 16, "capped tube: thickness of the cap"),
		fab.Length("cap_margin", 4, 60, 32, "capped tube: how far the cap stands out round the tube"),
		fab.Length("cap_weld", 3, 25, 5, "capped tube: leg of the fillet round the tube under the cap"),
	}
}

func supportParams() []geometry.Param {
	return []geometry.Param{
		fab.Choice("support_kind", "what the face is, or what holds the base plate or the tube", string(part.BodyFrame), string(part.RailFlange), string(part.CrossMember), string(part.TubeWall)),
		fab.Length("support_thickness", 2, 100, 12, "thickness of the face, or of the wall under the base plate"),
		fab.Length("support_clear", 0, 1500, 0, "base plate: clear width, along the pin, of the wall under it between its stiff edges, 0 where it is not known"),
		fab.Named("support_material", "S355", "grade of the face or wall"),
	}
}
