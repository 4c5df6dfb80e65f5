package standoff

// Bolts, support, load path, sections.

import (
	"lugwright/geometry/fab"
	"lugwright/part"
)

func (d *design) addBolts(b *part.Bracket) {
	web := part.Support{
		ID: "support", Kind: part.RailWeb, ThicknessMM: d.v.MM("support_thickness"), Material: d.v.Word("support_material"),
		ClearMM: d.v.MM("web_clear_height"), Couple: part.CouplePath(d.v.Word("couple")),
	}
	b.Supports = []part.Support{web}
	b.Bolts = []part.BoltGroup{d.base.Bolts("bolts", "base", web, upright(0))}
}

func (d *design) addPath(b *part.Bracket) {
	at := part.Vec{Y: d.out, Z: d.up}
	b.LoadPoints = []part.LoadPoint{{ID: "mount", At: at}}
	fab.Through(b, "mount", at, part.Components(), "tube", "w-tube", "base", "bolts", "support")
	b.Sweeps = []part.Sweep{{ID: "tube", Things: []string{"tube"}, From: part.Vec{Y: d.out}, To: part.Vec{Y: d.base.ThicknessMM}, Name: "tube"}}
	b.Sweeps = append(b.Sweeps, d.base.Sweeps("base", "bolts", b.Plates[0].Pose)...)
}
