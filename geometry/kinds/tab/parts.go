package tab

// Plate, weld, bolts, load path.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// outline has its two upper corners rounded.
func (d *design) outline() (shape.Loop, error) {
	l := shape.Rect(shape.Point{X: -d.width / 2}, shape.Point{X: d.width / 2, Y: d.height})
	if d.radius == 0 {
		return l, nil
	}
	return shape.FilletAll(l, func(i int) float64 {
		if l[i].Y > 0 {
			return d.radius
		}
		return 0
	})
}

func (d *design) plate() part.Plate {
	outer, _ := d.outline() // check has drawn it
	return part.Plate{
		ID: "tab", Name: "tab", ThicknessMM: d.t, Material: d.v.Word("material"), Outer: outer, Holes: fab.BoltHoles(d.points, d.bolts.HoleMM),
		Pose: fab.Standing(part.Vec{}, part.Vec{X: 1}),
	}
}

func (d *design) join(b *part.Bracket) {
	half := d.width / 2
	outer := b.Plates[0].Outer
	b.Welds = []part.WeldGroup{fab.Weld("w-tab", "tab", "support", d.leg, d.v.Word("electrode"), fab.AtFaces(part.Vec{X: -half}, part.Vec{X: half}, part.Vec{Y: 1}, d.t)...)}
	edge := fab.LeastEdge(outer, d.points)
	box := shape.Box{Min: d.points[0], Max: d.points[len(d.points)-1]}.Grow(min(edge, 1.5*d.bolts.DiaMM))
	b.Bolts = []part.BoltGroup{d.bolts.Group("bolts", part.Pose{Origin: part.Vec{Y: d.t / 2}, U: part.Vec{X: 1}, V: part.Vec{Z: 1}}, d.points,
		d.t+d.v.MM("equipment_thickness"), box, [2]part.Ply{
			{Thing: "tab", ThicknessMM: d.t, Material: d.v.Word("material"), EdgeMM: edge},
			{Thing: "equipment", ThicknessMM: d.v.MM("equipment_thickness"), Material: d.v.Word("equipment_material")},
		})}
	b.Supports = []part.Support{
		{ID: "support", Kind: part.SupportKind(d.v.Word("support_kind")), ThicknessMM: d.v.MM("support_thickness"), Material: d.v.Word("support_material"), Couple: part.CoupleByWall},
		// The equipment brings the load; it is a support only in that it is not part of this bracket.
		{ID: "equipment", Kind: part.BodyFrame, ThicknessMM: d.v.MM("equipment_thickness"), Material: d.v.Word("equipment_material")},
	}
	at := part.Vec{Y: d.t / 2, Z: d.at}
	b.LoadPoints = []part.LoadPoint{{ID: "bolts load", At: at}}
	wide := 2 * d.bolts.DiaMM
	if n := len(d.points); n > 1 {
		wide += d.points[n-1].X - d.points[0].X
	}
	b.Sweeps = []part.Sweep{{ID: "tab", Things: []string{"tab"}, From: part.Vec{Z: d.at}, Name: "tab", EntryMM: min(wide, d.width), EntryFlat: true}}
	fab.Through(b, "bolts load", at, fab.Forces(), "bolts", "tab", "w-tab", "support")
}
