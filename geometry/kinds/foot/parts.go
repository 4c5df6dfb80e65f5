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

// addLap stands under leg B's end, its back on the web's plane as well, and reaches down to where the web's flat side ends.
func (d *design) addLap(b *part.Bracket) {
	a := &d.angle
	if !d.lapped {
		return
	}
	long := a.To - a.Down
	b.Plates = append(b.Plates, part.Plate{
		ID: "lap", Name: "lap plate", ThicknessMM: a.T, Material: d.v.Word("gusset_material"),
		Outer: shape.Rect(shape.Point{X: -a.HalfMM}, shape.Point{X: a.HalfMM, Y: long}),
		Pose:  fab.Standing(part.Vec{Y: a.T / 2, Z: -a.To}, part.Vec{X: 1}),
	})
	at := func(x float64) part.Vec { return part.Vec{X: x, Y: a.T, Z: -a.Down} }
	w := fab.EdgeWeld("w-lap", "lap", a.Bolted(), a.T, d.v.Word("electrode"), part.WeldSegment{A: at(-a.HalfMM), B: at(a.HalfMM)})
	w.Kind, w.AlongEdge = part.CJP, false
	b.Welds = append(b.Welds, w)
	wide := b.BoltGroup("bolts").Patch.Width()
	b.Sweeps = append(b.Sweeps,
		part.Sweep{
			ID: "lap", Things: []string{"lap"}, Name: "lap plate", Bolts: "bolts", EntryMM: wide,
			From: part.Vec{Y: a.T / 2, Z: -a.To}, To: part.Vec{Y: a.T / 2, Z: -a.Down},
		},
		part.Sweep{
			ID: "leg over the lap", Things: []string{a.Bolted()}, Name: "bolted leg over the lap", Bolts: "bolts", EntryMM: wide,
			From: part.Vec{Y: a.T / 2, Z: -a.Down}, To: part.Vec{Y: a.T / 2, Z: -a.Last()},
		},
	)
}
