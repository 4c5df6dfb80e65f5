// Package spreaderwasher is a square or round plate between a thin sheet and the nut of a rod or bolt that pulls on it. It never knows strength.
//
// Axes: the origin is in the middle plane of the sheet, on the rod; z up. The washer lies on the sheet, its nut on the washer; the rod goes down through both
// and is pulled down.
package spreaderwasher

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// Kind describes the spreader washer.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "spreader-washer",
		Sentence: "a square or round plate under the nut of a rod or bolt, so that it does not pull through a thin sheet",
		Params:   params(),
		Build:    build,
	}
}

func params() []geometry.Param {
	return []geometry.Param{
		fab.Choice("shape", "outline of the washer", "square", "round"),
		fab.Length("side", 10, 400, 60, "side of a square one, diameter of a round one"),
		fab.Length("thickness", 2, 40, 6, "its thickness"),
		fab.Length("corner_radius", 0, 100, 5, "radius of a square one's corners, 0 for sharp"),
		fab.Named("material", "S355", "its grade"),
		fab.Thread("rod_size", "M12", "size of the rod or bolt"),
		fab.Named("rod_grade", "8.8", "its grade"),
		fab.Choice("rod_fit", "clearance of its hole", "normal", "close", "loose"),
		fab.Length("rod_free", 5, 2000, 140, "free length of the rod under the sheet"),
		fab.Length("engagement", 0, 200, 0, "thread engaged in a coupling nut, 0 where nuts on plates hold the rod"),
		fab.Length("sheet_thickness", 0.5, 30, 5, "thickness of the sheet, or of the tube's wall"),
		fab.Named("sheet_material", "S235", "its grade"),
		fab.Choice("support_kind", "what the sheet is of", string(part.BodyFrame), string(part.CrossMember), string(part.TubeWall), string(part.RailFlange)),
	}
}

func build(v geometry.Values) (*part.Bracket, error) {
	side, t, sheet := v.MM("side"), v.MM("thickness"), v.MM("sheet_thickness")
	dia, hole := fab.Clearance(v.Word("rod_size"), part.Fit(v.Word("rod_fit")))
	var n fab.Needs
	n.ThatHole(hole, "rod_size", v.Word("rod_size"))
	n.ThatWasher("side", side, "thickness", t, dia)
	n.ThatEngaged("engagement", v.MM("engagement"), dia)
	outer, err := outline(v)
	n.That(err == nil, "corner_radius", fab.MM(v.MM("corner_radius")), "at most half the side, %.4g mm", side/2)
	if n.Err() != nil {
		return nil, n.Err()
	}
	at := part.Vec{Z: -sheet/2 - v.MM("rod_free")}
	b := &part.Bracket{
		Plates: []part.Plate{{
			ID: "washer", Name: "spreader washer", ThicknessMM: t, Material: v.Word("material"), Outer: outer, Pose: level((sheet + t) / 2),
			Holes: []part.Hole{{ID: "rod", DiaMM: hole, CutMM: hole, Purpose: part.ForRod, Finish: part.AsCut}},
		}},
		Rods: []part.Rods{{
			ID: "rod", Pose: level(at.Z), Points: []shape.Point{{}}, Size: v.Word("rod_size"), DiaMM: dia, Grade: v.Word("rod_grade"),
			FreeMM: v.MM("rod_free"), EngagementMM: v.MM("engagement"),
		}},
		Supports:   []part.Support{{ID: "sheet", Kind: part.SupportKind(v.Word("support_kind")), ThicknessMM: sheet, Material: v.Word("sheet_material")}},
		LoadPoints: []part.LoadPoint{{ID: "pull", At: at}},
		Notes:      []string{"on a thin-walled tube: a washer on each side, and a crush sleeve between them"},
		Unchecked: []string{
			"the sheet's own bending beyond the washer, and what holds the sheet",
			"a push of the rod and side force on it: the washer has no path for them",
		},
	}
	fab.Through(b, "pull", at, []part.Component{part.FzMinus}, "rod", "washer", "sheet")
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func outline(v geometry.Values) (shape.Loop, error) {
	side := v.MM("side")
	if v.Word("shape") == "round" {
		return shape.Circle(shape.Point{}, side), nil
	}
	return shape.RoundedRect(shape.Point{X: -side / 2, Y: -side / 2}, shape.Point{X: side / 2, Y: side / 2}, v.MM("corner_radius"))
}

// level is a plane at a height over the sheet's middle.
func level(z float64) part.Pose {
	return part.Pose{Origin: part.Vec{Z: z}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
}
