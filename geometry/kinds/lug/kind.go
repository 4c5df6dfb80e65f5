// Package lug is a single eye that stands on a flat face: a plate, a rail's flange, the end plate of a tube. It never knows strength.
//
// Axes: the origin is on the face, under the pin; x along the lug, y along the pin, z up. The fork that the pin holds is the other side's.
//
//	kind.go    the kind: sentence, parameters, order of work
//	design.go  sizes, and what does not fit
//	parts.go   lug, cheek plates, gussets, welds
package lug

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the lug.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "lug",
		Sentence: "a single eye welded to a plate, a flange or the end plate of a tube, with cheek plates and gussets where wanted",
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
	at := part.Vec{Z: d.height}
	d.fork.Hold(b, "lug", v.Word("material"), d.t+2*d.cheek.ThicknessMM, v.MM("bush_length"), at)
	fab.LugPaths(b, at, "lug", "w-lug", "support")
	d.remarks(b)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func (d *design) remarks(b *part.Bracket) {
	if d.allowance > 0 {
		b.Notes = append(b.Notes, "ream the pin hole after welding")
	}
	if d.gussetH > 0 {
		b.Notes = append(b.Notes, "weld the lug first, then its gussets, alternate sides")
	}
	b.Unchecked = append(b.Unchecked,
		"the face that the lug stands on, beyond its metal beside the weld: bending, and what carries it",
		"the fork on the pin, its strength and its room beside lug, gusset and face: it is the other side's",
	)
}

func params() []geometry.Param {
	return slices.Concat(fab.ForkParams(), standParams(), fab.CheekParams("each side"), gussetParams())
}

func standParams() []geometry.Param {
	return []geometry.Param{
		fab.Length("pin_height", 15, 500, 60, "pin centre above the face"),
		fab.Length("thickness", 4, 100, 20, "thickness of the lug"),
		fab.Length("width", 20, 600, 100, "width of the lug at the face"),
		fab.Length("end_distance", 8, 300, 45, "pin centre to the top of the head"),
		fab.Choice("head", "shape of the lug's top", "tapered", "round"),
		fab.Length("head_radius", 8, 300, 40, "radius of a tapered head"),
		fab.Named("material", "A572-50", "grade of the lug"),
		fab.Length("weld", 3, 25, 8, "leg of the fillets between lug and face, both sides, full width"),
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
		fab.Named("electrode", "E70", "filler grade of all welds"),
		fab.Choice("support_kind", "what the face is", string(part.BodyFrame), string(part.RailFlange), string(part.CrossMember), string(part.TubeWall)),
		fab.Length("support_thickness", 2, 100, 12, "thickness of the face"),
		fab.Named("support_material", "S355", "grade of the face"),
	}
}
