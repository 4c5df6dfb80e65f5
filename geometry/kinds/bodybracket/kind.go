// Package bodybracket is the body's half of a mount between two parallel tubes of its frame: one plate with the eye for a pin below, or two that fork
// round the mount's lug. It never knows strength.
//
// Axes before the bracket is turned or mirrored: the tubes run along y, one before the other along x, their lower faces at z = 0; the plates stand across
// them in planes square to y, and the pin runs along y, below the middle between the tubes.
//
//	kind.go     the kind: sentence, parameters, order of work
//	design.go   sizes, and what does not fit
//	outline.go  the plates' outline
//	parts.go    plates, gussets, welds
//	path.go     shares, load paths, sections
package bodybracket

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the body-side bracket.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "bodybracket",
		Sentence: "one plate or two between two parallel tubes of the body's frame, or under them, with the pin of the mount below",
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
	for _, p := range d.plates {
		d.addPlate(b, p)
		d.addGussets(b, p)
	}
	for _, t := range tubes {
		b.Supports = append(b.Supports, part.Support{
			ID: t.id, Kind: part.BodyFrame, ThicknessMM: v.MM("tube_wall"), Material: v.Word("tube_material"), Couple: part.CoupleByWall,
		})
	}
	d.addPin(b)
	d.addPaths(b)
	d.addSweeps(b)
	d.addRemarks(b)
	fab.MarkAll(b, v.Mark)
	if v.Word("pin_axis") == "along" {
		fab.QuarterTurn(b)
	}
	return b, nil
}

func (d *design) addRemarks(b *part.Bracket) {
	if d.v.MM("finish_allowance") > 0 {
		b.Notes = append(b.Notes, "ream the pin hole after welding, both plates of a fork in one pass")
	}
	b.Notes = append(b.Notes, "weld the plates first, alternate tubes, with a dummy pin through a fork; gussets after them")
	b.Unchecked = append(b.Unchecked,
		"tubes that are not alike: what statics does not settle is shared evenly between the two",
		"the tubes' walls under the plates' edges and gussets, the tubes as beams and in twist, and their own joints",
	)
	if d.forked {
		b.Unchecked = append(b.Unchecked, "the mount's lug beyond the pin, and its way up between the plates", "head, nut, keeper or retaining bolt of the pin")
		return
	}
	b.Unchecked = append(b.Unchecked, "the fork on the pin: it is the mount's")
}

func params() []geometry.Param {
	return append([]geometry.Param{
		fab.Choice("form", "one plate that a fork of the mount takes, or two that take the mount's lug between them", "lug", "fork"),
		fab.Choice("fit", "plates between the tubes, welded to their sides, or under them, welded to their lower faces", "between", "under"),
		fab.Choice("pin_axis", "direction of tubes and pin in the vehicle", "across", "along"),
		fab.Length("tube_spacing", 40, 1500, 200, "distance between the tubes, middle to middle"),
		fab.Length("tube_width", 20, 300, 60, "width of each tube, towards the other"),
		fab.Length("tube_height", 20, 500, 100, "height of each tube"),
		fab.Length("tube_corner", 0, 60, 10, "outside corner radius of the tubes"),
		fab.Length("tube_wall", 1.5, 30, 5, "wall of the tubes"),
		fab.Named("tube_material", "S355", "grade of the tubes"),

		fab.Length("pin_below", 10, 600, 60, "pin centre below the tubes' lower faces"),
		fab.Length("shoulder", 2, 400, 15, "how far the plate's sides run straight down from the tubes, before they turn to the head"),
		fab.Length("thickness", 4, 100, 20, "thickness of each plate"),
		fab.Length("end_distance", 8, 300, 72, "pin centre to the plate's lower end"),
		fab.Length("head_radius", 8, 300, 45, "radius of the plate's lower end"),
		fab.Length("rise", 10, 500, 85, "plates between the tubes: how far they stand up beside them"),
		fab.Length("relief", 10, 300, 30, "plates under the tubes: depth of the notch in their upper edge, from tube to tube"),
		fab.Named("material", "S355", "grade of plates and gussets"),
		fab.Length("weld", 3, 25, 8, "leg of the fillets on the tubes, both faces of a plate"),
		fab.Choice("gussets", "plates in the corners of plate and tube, on both faces of one plate, on the outer faces of two", "none", "outer"),
		fab.Length("gusset_width", 10, 400, 50, "a gusset's length along the tube"),
		fab.Length("gusset_length", 10, 400, 45, "a gusset's length along the plate"),
		fab.Length("gusset_nose", 2, 200, 12, "width of a gusset's blunt ends"),
		fab.Length("gusset_thickness", 3, 40, 8, "thickness of a gusset"),
		fab.Length("gusset_level", 5, 480, 45, "plates between the tubes: gussets over the tubes' lower faces"),
		fab.Length("gusset_weld", 3, 20, 5, "leg of the fillets along a gusset, both faces"),
		fab.Length("snipe_clearance", 2, 15, 3, "snipe at a gusset's inner corner beyond the weld that passes there"),
		fab.Named("electrode", "E70", "filler grade of all welds"),
		fab.Ratio("hold_low", 0, 1, 0, "least part of a full hold that the tubes give the plates against turning; without any they pull and push alone"),
		fab.Ratio("hold_high", 0, 1, 1, "greatest part of it"),

		fab.Choice("pin_ends", "fork: what keeps the pin in; only head and nut tie the plates together", "head and nut", "head and retaining bolt", "keeper"),
		fab.Length("end_play", 0, 5, 0.5, "fork: play of the pin along its axis"),
		fab.Length("lug_thickness", 4, 200, 30, "fork: thickness of the mount's lug"),
		fab.Named("lug_material", "S355", "fork: grade of the mount's lug"),
		fab.Length("lug_radius", 8, 300, 40, "fork: clear radius round the pin that the mount's lug needs to swing"),
	}, fab.ForkParams()...)
}
