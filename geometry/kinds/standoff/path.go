package standoff

// Bolts, support, load path, sections.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func (d *design) addBolts(b *part.Bracket) {
	points := d.points()
	outer := b.Plates[0].Outer
	pitch := fab.LeastPitch(points)
	web := d.v.MM("support_thickness")
	b.Bolts = []part.BoltGroup{{
		ID: "bolts", Pose: upright(0), Points: points, Size: d.v.Word("bolt_size"), DiaMM: d.bolt, Grade: d.v.Word("bolt_grade"), HoleMM: d.hole,
		GripMM: d.baseT + web, ThreadsIn: d.v.Word("threads") == "in", Patch: fab.Bearing(outer, d.baseR), Across: d.pry(),
		Plies: [2]part.Ply{
			{Thing: "base", ThicknessMM: d.baseT, Material: d.v.Word("material"), EdgeMM: fab.LeastEdge(outer, points), PitchMM: pitch},
			{Thing: "support", ThicknessMM: web, Material: d.v.Word("support_material"), PitchMM: pitch},
		},
	}}
	b.Supports = []part.Support{{
		ID: "support", Kind: part.RailWeb, ThicknessMM: web, Material: d.v.Word("support_material"), ClearMM: d.v.MM("web_clear_height"),
		Couple: part.CouplePath(d.v.Word("couple")),
	}}
}

// pry is the base plate bending between the tube and the outermost bolts, up and along the rail; none where no bolt stands out.
func (d *design) pry() (across [2]part.Pry) {
	z, x := d.zs[len(d.zs)-1], d.xs[len(d.xs)-1]
	endZ, endX := d.baseH/2-z, d.baseL/2-x
	if b := z - d.high/2; b > 0 {
		across[0] = part.Pry{BMM: b, AMM: endZ, PMM: tributary(len(d.xs), d.v.MM("bolt_pitch"), endX)}
	}
	if b := x - d.width/2; b > 0 {
		across[1] = part.Pry{BMM: b, AMM: endX, PMM: tributary(len(d.zs), d.v.MM("bolt_gauge"), endZ)}
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

func (d *design) addPath(b *part.Bracket) {
	at := part.Vec{Y: d.out, Z: d.up}
	b.LoadPoints = []part.LoadPoint{{ID: "mount", At: at}}
	fab.Through(b, "mount", at, part.Components(), "tube", "w-tube", "base", "bolts", "support")
	b.Sweeps = []part.Sweep{{ID: "tube", Things: []string{"tube"}, From: part.Vec{Y: d.out}, To: part.Vec{Y: d.baseT}, Name: "tube"}}
	d.addBaseSweeps(b)
}

// addBaseSweeps cuts the base plate where it reaches past the tube, from each edge and each corner inwards: bolts and contact out there bend it.
func (d *design) addBaseSweeps(b *part.Bracket) {
	edge := shape.Point{X: d.high / 2, Y: d.width / 2}
	far := (d.baseH/2 - edge.X + d.baseL/2 - edge.Y) / 2 // across a corner at 45 degrees
	pose := b.Plates[0].Pose
	for _, s := range []struct {
		id       string
		from, to shape.Point
	}{
		{"base, over", shape.Point{X: d.baseH / 2}, shape.Point{X: edge.X}}, {"base, under", shape.Point{X: -d.baseH / 2}, shape.Point{X: -edge.X}},
		{"base, rear", shape.Point{Y: d.baseL / 2}, shape.Point{Y: edge.Y}}, {"base, front", shape.Point{Y: -d.baseL / 2}, shape.Point{Y: -edge.Y}},
		{"base, rear over", shape.Point{X: edge.X + far, Y: edge.Y + far}, edge}, {"base, front over", shape.Point{X: edge.X + far, Y: -edge.Y - far}, shape.Point{X: edge.X, Y: -edge.Y}},
		{"base, rear under", shape.Point{X: -edge.X - far, Y: edge.Y + far}, shape.Point{X: -edge.X, Y: edge.Y}},
		{"base, front under", shape.Point{X: -edge.X - far, Y: -edge.Y - far}, shape.Point{X: -edge.X, Y: -edge.Y}},
	} {
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: s.id, Things: []string{"base"}, Bolts: "bolts", Name: "base plate past the tube", From: pose.At(s.from.X, s.from.Y, 0), To: pose.At(s.to.X, s.to.Y, 0),
		})
	}
}
