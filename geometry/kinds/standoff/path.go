package standoff

// Bolts, support, load path, sections.

import (
	"lugwright/geometry/fab"
	"lugwright/part"
)

func (d *design) addBolts(b *part.Bracket) {
	foot := d.foot()
	points := foot.Points()
	outer := b.Plates[0].Outer
	pitch := fab.LeastPitch(points)
	web := d.v.MM("support_thickness")
	b.Bolts = []part.BoltGroup{{
		ID: "bolts", Pose: upright(0), Points: points, Size: d.v.Word("bolt_size"), DiaMM: d.bolt, Grade: d.v.Word("bolt_grade"), HoleMM: d.hole,
		GripMM: d.baseT + web, ThreadsIn: d.v.Word("threads") == "in", Patch: outer.BBox(), Across: foot.Pry(),
		Plies: [2]part.Ply{
			{Thing: "base", ThicknessMM: d.baseT, Material: d.v.Word("material"), EdgeMM: fab.LeastEdge(outer, points), PitchMM: pitch},
			{Thing: "support", ThicknessMM: web, Material: d.v.Word("support_material"), PitchMM: pitch},
		},
	}}
	b.Supports = []part.Support{{
		ID: "support", Kind: part.RailWeb, ThicknessMM: web, Material: d.v.Word("support_material"), ClearMM: d.v.MM("web_clear_height"),
		Couple: part.CouplePath(d.v.Word("couple")),
	}}
}

func (d *design) addPath(b *part.Bracket) {
	at := part.Vec{Y: d.out, Z: d.up}
	b.LoadPoints = []part.LoadPoint{{ID: "mount", At: at}}
	fab.Through(b, "mount", at, part.Components(), "tube", "w-tube", "base", "bolts", "support")
	b.Sweeps = []part.Sweep{{ID: "tube", Things: []string{"tube"}, From: part.Vec{Y: d.out}, To: part.Vec{Y: d.baseT}, Name: "tube"}}
	b.Sweeps = append(b.Sweeps, d.foot().Sweeps(&b.Plates[0], "bolts", "tube", [4]string{"under", "over", "rear", "front"})...)
}
