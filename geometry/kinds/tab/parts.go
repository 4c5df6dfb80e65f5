package tab

// Plate, the upright's bolts, supports, load path.

import (
	"fmt"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// outline is the flat pattern: the upright, its two upper corners rounded, and below the fold the foot.
func (d *design) outline() (shape.Loop, error) {
	low := 0.0
	if d.bent() {
		low = d.flat(d.tip())
	}
	l := shape.Rect(shape.Point{X: -d.width / 2, Y: low}, shape.Point{X: d.width / 2, Y: d.height})
	if d.radius == 0 {
		return l, nil
	}
	return shape.FilletAll(l, func(i int) float64 {
		if l[i].Y > low {
			return d.radius
		}
		return 0
	})
}

func (d *design) plate() part.Plate {
	outer, _ := d.outline() // check has drawn it
	p := part.Plate{
		ID: "tab", Name: "tab", ThicknessMM: d.t, Material: d.v.Word("material"), Outer: outer, Holes: fab.BoltHoles(d.points, d.bolts.HoleMM),
		Pose: fab.Standing(part.Vec{}, part.Vec{X: 1}),
	}
	if d.bent() {
		p.Bends = []part.Bend{d.bend()}
	}
	if d.foot == bentBolted {
		for i, x := range d.footXs {
			p.Holes = append(p.Holes, fab.BoltHole(fmt.Sprintf("foot-%d", i+1), shape.Point{X: x, Y: d.flat(d.row())}, d.footBolts.HoleMM, part.AsCut))
		}
	}
	return p
}

// addBolts are those of what is bolted on.
func (d *design) addBolts(b *part.Bracket) {
	edge := fab.LeastEdge(b.Plates[0].Outer, d.points)
	box := shape.Box{Min: d.points[0], Max: d.points[len(d.points)-1]}.Grow(min(edge, 1.5*d.bolts.DiaMM))
	b.Bolts = append(b.Bolts, d.bolts.Group("bolts", part.Pose{Origin: part.Vec{Y: d.t / 2}, U: part.Vec{X: 1}, V: part.Vec{Z: 1}}, d.points,
		d.t+d.v.MM("equipment_thickness"), box, [2]part.Ply{
			{Thing: "tab", ThicknessMM: d.t, Material: d.v.Word("material"), EdgeMM: edge},
			{Thing: "equipment", ThicknessMM: d.v.MM("equipment_thickness"), Material: d.v.Word("equipment_material")},
		}))
	b.Supports = append(b.Supports,
		part.Support{
			ID: "support", Kind: part.SupportKind(d.v.Word("support_kind")), ThicknessMM: d.v.MM("support_thickness"), Material: d.v.Word("support_material"),
			ClearMM: d.v.MM("support_clear"), Couple: part.CoupleByWall,
		},
		// The equipment brings the load; it is a support only in that it is not part of this bracket.
		part.Support{ID: "equipment", Kind: part.BodyFrame, ThicknessMM: d.v.MM("equipment_thickness"), Material: d.v.Word("equipment_material")})
}

// entry is the width over which the bolts bring their load into the upright.
func (d *design) entry() float64 {
	wide := 2 * d.bolts.DiaMM
	if n := len(d.points); n > 1 {
		wide += d.points[n-1].X - d.points[0].X
	}
	return min(wide, d.width)
}

func (d *design) addPath(b *part.Bracket) {
	at := part.Vec{Y: d.t / 2, Z: d.at}
	b.LoadPoints = []part.LoadPoint{{ID: "bolts load", At: at}}
	b.Sweeps = append([]part.Sweep{{
		ID: "tab", Things: []string{"tab"}, From: part.Vec{Z: d.at}, To: part.Vec{Z: d.root()}, Name: "tab", EntryMM: d.entry(), EntryFlat: true,
	}}, b.Sweeps...)
	fab.Through(b, "bolts load", at, fab.Forces(), append([]string{"bolts", "tab"}, d.chain()...)...)
}
