package saddle

// Cap bolts, base plate with its bolts, supports.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func (d *design) addBase(b *part.Bracket) {
	outer, _ := d.base() // check has drawn it
	b.Plates = append(b.Plates, part.Plate{
		ID: "base", Name: "base plate", ThicknessMM: d.baseT, Material: d.v.Word("material"), Outer: outer,
		Holes: fab.BoltHoles(fab.Grid(d.xs, d.rows), d.bolts.HoleMM),
		Pose:  part.Pose{Origin: part.Vec{Z: d.baseT / 2}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}},
	})
}

func (d *design) addBolts(b *part.Bracket) {
	v, points, wall := d.v, fab.Grid(d.xs, d.rows), d.v.MM("support_thickness")
	outer := b.Plate("base").Outer
	g := d.bolts.Group("bolts", part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, points, d.baseT+wall, fab.Bearing(outer, d.baseR), [2]part.Ply{
		{Thing: "base", ThicknessMM: d.baseT, Material: v.Word("material"), EdgeMM: fab.LeastEdge(outer, points)},
		{Thing: "support", ThicknessMM: wall, Material: v.Word("support_material")},
	})
	g.Across = d.basePry()
	b.Bolts = append(b.Bolts, g)
	for _, e := range ends {
		b.Bolts = append(b.Bolts, d.capGroup(e.id, e.sense))
	}
	b.Supports = []part.Support{
		{ID: "tube", Kind: part.TubeWall, ThicknessMM: d.wall, Material: v.Word("tube_material"), ClearMM: d.tube},
		{ID: "support", Kind: part.SupportKind(v.Word("support")), ThicknessMM: wall, Material: v.Word("support_material"),
			ClearMM: v.MM("wall_clear_width"), Couple: part.CouplePath(v.Word("couple"))},
	}
}

// capGroup is the bolts of one pair of ears. The ears do not touch, so that nothing presses beyond the bolts.
func (d *design) capGroup(id string, sense float64) part.BoltGroup {
	points := d.capPoints()
	pose := part.Pose{Origin: part.Vec{X: sense * d.earMid(), Z: d.height + d.gap/2}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
	patch := shape.Box{Min: shape.Point{X: -d.earW / 2, Y: -d.boltY()}, Max: shape.Point{X: d.earW / 2, Y: d.boltY()}}
	ply := part.Ply{Thing: "cap-ear-" + id, ThicknessMM: d.earT, Material: d.v.Word("material"), EdgeMM: fab.LeastEdge(d.ear("", sense, 0).Outer, points)}
	lower := ply
	lower.Thing = "ear-" + id
	g := d.capBolts.Group("cap-bolts-"+id, pose, points, 2*d.earT+d.gap, patch, [2]part.Ply{ply, lower})
	g.Across[1] = part.Pry{BMM: d.capOut, AMM: d.capEdge, PMM: fab.TributaryMM(len(d.capXs), d.v.MM("cap_bolt_pitch"), d.earW/2-d.capXs[len(d.capXs)-1])}
	return g
}

// basePry is the base plate bending between the side plates and the outermost bolts; none in a direction in which no bolt stands out. One that does so by less
// than half its size stands far out the other way, or no socket would pass.
func (d *design) basePry() (across [2]part.Pry) {
	x, y := d.xs[len(d.xs)-1], d.rows[len(d.rows)-1]
	endX, endY := d.baseL/2-x, d.baseW/2-y
	if b := x - d.foot/2; b > d.bolts.DiaMM/2 {
		across[0] = part.Pry{BMM: b, AMM: endX, PMM: fab.TributaryMM(len(d.rows), d.v.MM("bolt_gauge"), endY)}
	}
	if b := y - d.outer(); b > d.bolts.DiaMM/2 {
		across[1] = part.Pry{BMM: b, AMM: endY, PMM: fab.TributaryMM(len(d.xs), d.v.MM("bolt_pitch"), endX)}
	}
	return across
}
