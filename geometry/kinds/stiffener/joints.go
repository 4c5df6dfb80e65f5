package stiffener

// Welds, supports and the load path: flange, weld along the flange, plate, weld down the web.

import (
	"lugwright/geometry/fab"
	"lugwright/part"
)

func (d *design) addJoints(b *part.Bracket) {
	p, filler := d.pose(), d.v.Word("electrode")
	along := func(id, on string, u0, v0, u1, v1 float64) {
		b.Welds = append(b.Welds, fab.Weld(id, "stiffener", on, d.weld, filler, fab.AtFaces(p.At(u0, v0, 0), p.At(u1, v1, 0), p.W(), d.t)...))
	}
	along("w-flange", "flange", d.cut, 0, d.width, 0)
	along("w-web", "web", 0, d.webFrom, 0, d.webTo)
	flange := part.Support{ID: "flange", Kind: part.RailFlange, ThicknessMM: d.v.MM("flange_thickness"), Material: d.v.Word("flange_material")}
	b.Supports = []part.Support{
		{ID: "web", Kind: part.RailWeb, ThicknessMM: d.v.MM("web_thickness"), Material: d.v.Word("web_material"), ClearMM: d.high, Couple: part.CoupleByWall},
		flange, // it brings the load; a support only in that it is not part of this bracket
	}
	if d.three {
		along("w-far", "far flange", d.cut, d.high, d.width, d.high)
		flange.ID = "far flange"
		b.Supports = append(b.Supports, flange)
	}
}

// addPaths cuts the plate square to the web for what the load's distance does, and square to the force under the flange. Down there the web's
// weld takes the force off the plate; half way down half of it is left when the weld is evenly stressed, and all of it is taken to be there.
func (d *design) addPaths(b *part.Bracket) {
	at := part.Vec{Y: d.arm}
	middle := (d.cut + d.width) / 2
	b.LoadPoints = []part.LoadPoint{{ID: "flange load", At: at}}
	fab.Through(b, "flange load", at, []part.Component{part.FzPlus, part.FzMinus}, "w-flange", "stiffener", "w-web", "web")
	b.Sweeps = []part.Sweep{
		{ID: "stiffener", Things: []string{"stiffener"}, From: at, To: part.Vec{}, Name: "towards the web"},
		{ID: "stiffener, down", Things: []string{"stiffener"}, From: part.Vec{Y: middle}, To: part.Vec{Y: middle, Z: -d.high / 2}, Name: "under the flange"},
	}
}
