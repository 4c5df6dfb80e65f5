package tab

// What the upright stands by: its own edge, or a bent foot that lies on the face.

import (
	"math"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// flange is the foot by the name that a bent plate's face bears.
const flange = "tab.1"

// chain is what a load passes from the upright down.
func (d *design) chain() []string {
	switch d.foot {
	case bentWelded:
		return []string{flange, "w-tab", "support"}
	case bentBolted:
		return []string{flange, "foot bolts", "support"}
	}
	return []string{"w-tab", "support"}
}

// bend turns up the foot, which lies to the left of its line.
func (d *design) bend() part.Bend {
	half := d.width / 2
	return part.Bend{
		A: shape.Point{X: half, Y: d.line()}, B: shape.Point{X: -half, Y: d.line()}, AngleRad: math.Pi / 2, RadiusMM: d.fold.RadiusMM, AllowanceMM: d.fold.Allowance(),
	}
}

func (d *design) addFoot(b *part.Bracket) {
	if !d.bent() {
		half := d.width / 2
		b.Welds = []part.WeldGroup{fab.Weld("w-tab", "tab", "support", d.leg, d.v.Word("electrode"), fab.AtFaces(part.Vec{X: -half}, part.Vec{X: half}, part.Vec{Y: 1}, d.t)...)}
		b.Unchecked = append(b.Unchecked, "the face that the tab stands on, beyond its metal beside the weld")
		return
	}
	b.Notes = append(b.Notes, d.fold.Note(1, "the foot"))
	b.Unchecked = append(b.Unchecked, "the fold: thinned and cold-worked steel, and bending that opens it")
	if d.foot == bentWelded {
		d.weldFoot(b)
		return
	}
	d.boltFoot(b)
}

// weldFoot runs a fillet along the foot's sides and its tip; the fold has none.
func (d *design) weldFoot(b *part.Bracket) {
	half, heel, tip := d.width/2, -d.heel(), -d.tip()
	at := func(x, y float64) part.Vec { return part.Vec{X: x, Y: y} }
	b.Welds = []part.WeldGroup{fab.EdgeWeld("w-tab", flange, "support", d.leg, d.v.Word("electrode"),
		part.WeldSegment{A: at(half, heel), B: at(half, tip)}, part.WeldSegment{A: at(half, tip), B: at(-half, tip)}, part.WeldSegment{A: at(-half, tip), B: at(-half, heel)})}
	d.addFootSweep(b, d.heel()+1, "")
	b.Notes = append(b.Notes, "weld the foot's sides and tip; no weld into the open fold")
	b.Unchecked = append(b.Unchecked, "the face that the tab stands on, beyond its metal beside the weld")
}

// boltFoot holds the foot by one row of bolts; it presses on the face from the fold to its tip.
func (d *design) boltFoot(b *part.Bracket) {
	half, edge := d.width/2, d.tip()-d.row()
	points := make([]shape.Point, len(d.footXs))
	for i, x := range d.footXs {
		points[i] = shape.Point{X: x, Y: -d.row()}
	}
	wall := d.v.MM("support_thickness")
	side := half - d.footXs[len(d.footXs)-1]
	fold := d.row() - d.heel() + d.fold.Allowance()/2
	patch := shape.Box{Min: shape.Point{X: -half, Y: -d.tip()}, Max: shape.Point{X: half, Y: -d.heel()}}
	g := d.footBolts.Group("foot bolts", part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, points, d.t+wall, patch, [2]part.Ply{
		{Thing: flange, ThicknessMM: d.t, Material: d.v.Word("material"), EdgeMM: min(edge, side, fold)},
		{Thing: "support", ThicknessMM: wall, Material: d.v.Word("support_material")},
	})
	// Between the upright and the bolts, reckoned from the upright's middle plane as in an angle (AISC Manual Part 9, from memory).
	g.Across[1] = part.Pry{BMM: d.row(), AMM: edge, PMM: fab.TributaryMM(len(points), fab.LeastPitch(points), side)}
	b.Bolts = append(b.Bolts, g)
	d.addFootSweep(b, d.row(), "foot bolts")
	b.Notes = append(b.Notes, "bolt the foot down before anything is bolted to the upright")
	b.Unchecked = append(b.Unchecked, "what the foot is bolted to, beyond its wall: what carries that")
}

// addFootSweep cuts the foot from under the upright to a distance from its middle plane, as wide as the load has spread to in the upright.
func (d *design) addFootSweep(b *part.Bracket, to float64, bolts string) {
	b.Sweeps = append(b.Sweeps, part.Sweep{
		ID: "foot", Things: []string{flange}, Name: "tab's foot", From: part.Vec{Z: d.t / 2}, To: part.Vec{Y: -to, Z: d.t / 2}, Bolts: bolts,
		EntryMM: fab.Spread30(d.entry(), d.at-d.root(), d.width),
	})
}
