package gusset

// Welds, supports and the load path: shelf, weld along the shelf, plate, weld down the standing face.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
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
	fab.Through(b, "shelf load", at, []part.Component{part.FyPlus, part.FyMinus, part.FzPlus, part.FzMinus}, "w-foot", "gusset", "w-stand", "support")
	b.Sweeps = []part.Sweep{
		{ID: "gusset", Things: []string{"gusset"}, From: at, To: part.Vec{}, Name: "gusset", HeightMM: c.AlongV, ReachMM: c.AlongU},
		d.acrossCorner(),
	}
}

// acrossCorner cuts the plate from the corner square to its free edge: all of the load passes there.
func (d *design) acrossCorner() part.Sweep {
	c, p := d.corner, d.pose()
	edge := shape.Point{X: c.NoseV - c.AlongU, Y: c.AlongV - c.NoseU}.Unit() // from the shelf down to the standing face
	out := edge.Perp()                                                       // from the free edge to the corner
	reach := -out.Dot(shape.Point{X: c.AlongU, Y: c.NoseU})
	mid := out.Scale(-reach / 2)
	const half = 0.5 // mm to either side of the one section
	from, to := mid.Add(edge.Scale(-half)), mid.Add(edge.Scale(half))
	return part.Sweep{ID: "gusset, corner", Things: []string{"gusset"}, From: p.At(from.X, from.Y, 0), To: p.At(to.X, to.Y, 0), Name: "square to its free edge"}
}
