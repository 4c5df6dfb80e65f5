package foot

// What is on the subframe's leg, and the lap under the bolted one.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// face is the plane between leg A and the subframe, its normal into the leg: v from the web's face towards the leg's tip.
func (d *design) face() part.Pose {
	if d.angle.Over {
		return part.Pose{Origin: part.Vec{Z: -d.angle.T}, U: part.Vec{X: -1}, V: part.Vec{Y: -1}}
	}
	return part.Pose{U: part.Vec{X: -1}, V: part.Vec{Y: 1}}
}

// addSeat bolts the subframe on leg A. They touch where the leg is flat, as far to either side of the bolts as to the nearer end of that.
func (d *design) addSeat(b *part.Bracket) {
	v, a := d.v, &d.angle
	if len(d.seatXs) == 0 {
		return
	}
	points := fab.Grid(d.seatXs, []float64{d.seat.Mid})
	for i := range points {
		points[i].X = 0 - points[i].X
	}
	end, tip := a.Length/2-d.seatXs[len(d.seatXs)-1], a.Out-d.seatOut()
	patch := shape.Box{Min: points[len(points)-1], Max: points[0]}.Grow(min(tip, d.seatOut()-a.T-a.Root))
	wall := v.MM("subframe_thickness")
	g := d.seatBolts.Group("seat", d.face(), points, a.T+wall, patch, [2]part.Ply{
		{Thing: a.Carries(), ThicknessMM: a.T, Material: a.Material, EdgeMM: min(end, tip)},
		{Thing: "subframe", ThicknessMM: wall, Material: v.Word("subframe_material")},
	})
	g.Patch.Min.X, g.Patch.Max.X = max(g.Patch.Min.X, -a.Length/2), min(g.Patch.Max.X, a.Length/2)
	g.Across[1] = part.Pry{BMM: d.seatOut() - a.T/2, AMM: tip, PMM: fab.TributaryMM(len(d.seatXs), v.MM("seat_pitch"), end)}
	if len(a.Stiff.Xs) > 0 {
		g.Across[0] = part.Pry{BMM: a.FromStiffeners(d.seatXs), AMM: end, PMM: a.Out - a.T}
	}
	b.Bolts = append(b.Bolts, g)
	// The subframe brings the load; it is a support only in that it is not part of this bracket.
	b.Supports = append(b.Supports, part.Support{ID: "subframe", Kind: part.BodyFrame, ThicknessMM: wall, Material: v.Word("subframe_material")})
}

// addLap lies on the outer face of leg B's lower end and reaches down to where the web's flat side ends; behind its end a packer as thick as the leg
// bears on the flange's side.
func (d *design) addLap(b *part.Bracket) {
	v, a := d.v, &d.angle
	if !d.lapped {
		return
	}
	t, over, packer := v.MM("lap_thickness"), v.MM("lap_overlap"), v.MM("packer_height")
	half, top := a.HalfMM, a.Down-over
	strip := func(id, name string, tMM, y, high float64) {
		b.Plates = append(b.Plates, part.Plate{
			ID: id, Name: name, ThicknessMM: tMM, Material: v.Word("gusset_material"), Outer: shape.Rect(shape.Point{X: -half}, shape.Point{X: half, Y: high}),
			Pose: fab.Standing(part.Vec{Y: y, Z: -a.To}, part.Vec{X: 1}),
		})
	}
	strip("lap", "lap plate", t, a.T+t/2, a.To-top)
	strip("packer", "packer", a.T, a.T/2, packer)
	at := func(x, down float64) part.Vec { return part.Vec{X: x, Y: a.T, Z: -down} }
	up := func(x, from, to float64) part.WeldSegment { return part.WeldSegment{A: at(x, from), B: at(x, to)} }
	b.Welds = append(b.Welds,
		fab.EdgeWeld("w-lap", "lap", a.Bolted(), v.MM("lap_weld"), v.Word("electrode"), up(-half, a.Down, top), part.WeldSegment{A: at(-half, top), B: at(half, top)}, up(half, top, a.Down)),
		fab.EdgeWeld("w-packer", "packer", "lap", min(v.MM("lap_weld"), t), v.Word("electrode"), up(-half, a.To, a.To-packer), up(half, a.To-packer, a.To)),
	)
	wide := b.BoltGroup("bolts").Patch.Width()
	b.Sweeps = append(b.Sweeps,
		part.Sweep{
			ID: "lap", Things: []string{"lap"}, Name: "lap plate", Bolts: "bolts", EntryMM: wide,
			From: part.Vec{Y: a.T + t/2, Z: -a.To}, To: part.Vec{Y: a.T + t/2, Z: -a.Down},
		},
		part.Sweep{
			ID: "leg over the lap", Things: []string{a.Bolted()}, Name: "bolted leg over the lap", Bolts: "bolts", EntryMM: wide,
			From: part.Vec{Y: a.T / 2, Z: -a.Down}, To: part.Vec{Y: a.T / 2, Z: -a.Last()},
		},
	)
}
