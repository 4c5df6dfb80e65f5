package saddle

// Cap bolts, base plate with its bolts, supports.

import (
	"fmt"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func (d *design) addBase(b *part.Bracket) {
	outer, _ := d.base() // check has drawn it
	base := part.Plate{
		ID: "base", Name: "base plate", ThicknessMM: d.baseT, Material: d.v.Word("material"), Outer: outer,
		Pose: part.Pose{Origin: part.Vec{Z: d.baseT / 2}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}},
	}
	for i, at := range fab.Grid(d.xs, d.rows) {
		base.Holes = append(base.Holes, fab.BoltHole(fmt.Sprintf("bolt-%d", i+1), at, d.hole, part.AsCut))
	}
	b.Plates = append(b.Plates, base)
}

func (d *design) addBolts(b *part.Bracket) {
	v, threads := d.v, d.v.Word("threads") == "in"
	points, wall := fab.Grid(d.xs, d.rows), d.v.MM("support_thickness")
	outer, pitch := b.Plate("base").Outer, fab.LeastPitch(points)
	b.Bolts = append(b.Bolts, part.BoltGroup{
		ID: "bolts", Pose: part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, Points: points, Size: v.Word("bolt_size"), DiaMM: d.bolt,
		Grade: v.Word("bolt_grade"), HoleMM: d.hole, GripMM: d.baseT + wall, ThreadsIn: threads, Patch: fab.Bearing(outer, d.baseR), Across: d.basePry(),
		Plies: [2]part.Ply{
			{Thing: "base", ThicknessMM: d.baseT, Material: v.Word("material"), EdgeMM: fab.LeastEdge(outer, points), PitchMM: pitch},
			{Thing: "support", ThicknessMM: wall, Material: v.Word("support_material"), PitchMM: pitch},
		},
	})
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
	outer := d.ear("", sense, 0).Outer
	ply := part.Ply{ThicknessMM: d.earT, Material: d.v.Word("material"), EdgeMM: fab.LeastEdge(outer, points), PitchMM: fab.LeastPitch(points)}
	g := part.BoltGroup{
		ID: "cap-bolts-" + id, Points: points, Size: d.v.Word("cap_bolt_size"), DiaMM: d.capBolt, Grade: d.v.Word("cap_bolt_grade"), HoleMM: d.capHole,
		Pose:   part.Pose{Origin: part.Vec{X: sense * d.earMid(), Z: d.height + d.gap/2}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}},
		GripMM: 2*d.earT + d.gap, ThreadsIn: d.v.Word("threads") == "in",
		Patch: shape.Box{Min: shape.Point{X: -d.earW / 2, Y: -d.boltY()}, Max: shape.Point{X: d.earW / 2, Y: d.boltY()}},
		Plies: [2]part.Ply{ply, ply},
	}
	g.Plies[0].Thing, g.Plies[1].Thing = "cap-ear-"+id, "ear-"+id
	g.Across[1] = part.Pry{BMM: d.capOut, AMM: d.capEdge, PMM: tributary(len(d.capXs), d.v.MM("cap_bolt_pitch"), d.earW/2-d.capXs[len(d.capXs)-1])}
	return g
}

// basePry is the base plate bending between the side plates and the outermost bolts; none in a direction in which no bolt stands out. One that does so by less
// than half its size stands far out the other way, or no socket would pass.
func (d *design) basePry() (across [2]part.Pry) {
	x, y := d.xs[len(d.xs)-1], d.rows[len(d.rows)-1]
	endX, endY := d.baseL/2-x, d.baseW/2-y
	if b := x - d.foot/2; b > d.bolt/2 {
		across[0] = part.Pry{BMM: b, AMM: endX, PMM: tributary(len(d.rows), d.v.MM("bolt_gauge"), endY)}
	}
	if b := y - d.outer(); b > d.bolt/2 {
		across[1] = part.Pry{BMM: b, AMM: endY, PMM: tributary(len(d.xs), d.v.MM("bolt_pitch"), endX)}
	}
	return across
}

// tributary is the least length of plate that serves one bolt of a line: half a pitch and the rest to the end, or a pitch.
func tributary(count int, pitch, end float64) float64 {
	if count == 1 {
		return 2 * end
	}
	return min(pitch, pitch/2+end)
}
