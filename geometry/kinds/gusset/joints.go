package gusset

// Welds, supports and the load path: shelf, weld along the shelf, plate, weld down the standing face.

import (
	"lugwright/geometry/fab"
	"lugwright/part"
)

func (d *design) addJoints(b *part.Bracket) {
	c, p, filler := d.corner, d.pose(), d.v.Word("electrode")
	b.Welds = []part.WeldGroup{
		fab.Weld("w-foot", "gusset", "shelf", d.weld, filler, fab.AtFaces(p.At(c.Snipe, 0, 0), p.At(c.AlongU, 0, 0), p.W(), d.t)...),
		fab.Weld("w-stand", "gusset", "support", d.weld, filler, fab.AtFaces(p.At(0, c.Snipe, 0), p.At(0, c.AlongV, 0), p.W(), d.t)...),
	}
	b.Supports = []part.Support{
		{
			ID: "support", Kind: part.SupportKind(d.v.Word("support_kind")), ThicknessMM: d.v.MM("support_thickness"),
			Material: d.v.Word("support_material"), ClearMM: d.v.MM("clear_height"), Couple: part.CouplePath(d.v.Word("couple")),
		},
		// The shelf brings the load; it is a support only in that it is not part of this bracket.
		{ID: "shelf", Kind: part.BodyFrame, ThicknessMM: d.v.MM("shelf_thickness"), Material: d.v.Word("shelf_material")},
	}
}

func (d *design) addPaths(b *part.Bracket) {
	at, c := part.Vec{Y: d.arm}, d.corner
	b.LoadPoints = []part.LoadPoint{{ID: "shelf load", At: at}}
	for _, k := range []part.Component{part.FyPlus, part.FyMinus, part.FzPlus, part.FzMinus} {
		b.Paths = append(b.Paths, part.Path{LoadPoint: "shelf load", Component: k, Branches: []part.Branch{
			{At: at, Through: []string{"w-foot", "gusset", "w-stand", "support"}},
		}})
	}
	b.Sweeps = []part.Sweep{{ID: "gusset", Things: []string{"gusset"}, From: at, To: part.Vec{}, Name: "gusset", HeightMM: c.AlongV, ReachMM: c.AlongU}}
}
