package tray

// Rods, supports, load paths: sheet, rods, beams.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func (d *design) hang(b *part.Bracket) {
	held := d.v.Word("rod_ends") == "both held"
	b.Rods = []part.Rods{{
		ID: "rods", Pose: level(0), Points: d.rods, Size: d.v.Word("rod_size"), DiaMM: d.rodDia, Grade: d.v.Word("rod_grade"), FreeMM: d.v.MM("rod_free"),
		FixedTop: held, FixedFoot: held, EngagementMM: d.v.MM("engagement"), Stopped: d.v.Word("stops") == "yes", StopMM: d.v.MM("stop_height"),
	}}
	b.Supports = []part.Support{{ID: "beams", Kind: part.BodyFrame, ThicknessMM: d.v.MM("beam_thickness"), Material: d.v.Word("beam_material")}}
	x, y := d.flat()
	at := part.Vec{Z: d.v.MM("load_height")}
	b.LoadPoints = []part.LoadPoint{{
		ID: "mass", At: at, Patch: &part.Patch{Pose: level(d.t / 2), Box: shape.Box{Min: shape.Point{X: -x, Y: -y}, Max: shape.Point{X: x, Y: y}}},
	}}
	fab.Through(b, "mass", at, part.Components(), "tray", "rods", "beams")
}
