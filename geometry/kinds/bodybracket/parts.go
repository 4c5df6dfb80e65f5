package bodybracket

// Plates, gussets, welds.

import (
	"fmt"

	"lugwright/geometry/fab"
	"lugwright/part"
)

func (d *design) addPlate(b *part.Bracket, p plate) {
	outer, _ := d.outline() // check has drawn it
	b.Plates = append(b.Plates, part.Plate{
		ID: p.id, Name: "body bracket plate", ThicknessMM: d.t, Material: d.v.Word("material"), Outer: outer,
		Holes: []part.Hole{fab.PinHole(d.eye(), d.hole, d.v.MM("finish_allowance"))},
		Pose:  fab.Standing(part.Vec{Y: p.y}, part.Vec{X: 1}),
	})
	from, to := d.seam()
	for _, t := range tubes {
		a, z := part.Vec{X: t.side * d.gap, Y: p.y, Z: from}, part.Vec{X: t.side * d.gap, Y: p.y, Z: to}
		if d.under {
			a, z = part.Vec{X: t.side * from, Y: p.y}, part.Vec{X: t.side * to, Y: p.y}
		}
		b.Welds = append(b.Welds, fab.Weld(p.weld(t), p.id, t.id, d.leg, d.v.Word("electrode"), fab.AtFaces(a, z, part.Vec{Y: 1}, d.t)...))
	}
}

// addGussets stands plates in the corners of a plate's faces and the tubes: level ones beside the tubes, upright ones under them. Each acts with the plate
// from the tube to its own tip.
func (d *design) addGussets(b *part.Bracket, p plate) {
	if !d.gusseted {
		return
	}
	c, filler := d.corners(), d.v.Word("electrode")
	for _, t := range tubes {
		root, into := part.Vec{X: t.side * d.gap, Y: p.y, Z: d.v.MM("gusset_level")}, part.Vec{X: -t.side}
		if d.under {
			root, into = part.Vec{X: t.side * d.spacing / 2, Y: p.y}, part.Vec{Z: -1}
		}
		composite := part.Composite{
			ID: "c-" + p.id + "-" + t.word, Things: []string{p.id}, Rule: part.LagCantilever, SpanMM: d.reach(),
			From: root, To: root.AddScaled(d.gussetL, into),
		}
		for i, side := range p.sides {
			id := fmt.Sprintf("gusset-%s-%s", p.id, t.word)
			if len(p.sides) > 1 {
				id = fmt.Sprintf("%s-%d", id, i+1)
			}
			pose := part.Pose{Origin: root.Add(part.Vec{Y: side * d.t / 2}), U: part.Vec{Y: side}, V: into}
			b.Plates = append(b.Plates, part.Plate{ID: id, Name: "gusset", ThicknessMM: d.gussetT, Material: d.v.Word("material"), Outer: c.Outline(), Pose: pose})
			b.Welds = append(b.Welds,
				fab.Weld("w-"+id+"-tube", id, t.id, d.gussetLeg, filler, fab.AtFaces(pose.At(c.Snipe, 0, 0), pose.At(c.AlongU, 0, 0), pose.W(), d.gussetT)...),
				fab.Weld("w-"+id, id, p.id, d.gussetLeg, filler, fab.AtFaces(pose.At(0, c.Snipe, 0), pose.At(0, c.AlongV, 0), pose.W(), d.gussetT)...),
			)
			composite.Things, composite.Welds = append(composite.Things, id), append(composite.Welds, "w-"+id)
		}
		b.Composites = append(b.Composites, composite)
	}
}

func (d *design) addPin(b *part.Bracket) {
	at := part.Vec{Z: -d.below}
	if d.forked {
		d.lug.Hold(b, [2]string{d.plates[1].id, d.plates[0].id}, d.t, d.v.Word("material"), at)
		return
	}
	d.fork.Hold(b, d.plates[0].id, d.v.Word("material"), d.t, d.v.MM("bush_length"), at)
	b.LoadPoints = append(b.LoadPoints, part.LoadPoint{
		ID: "pin", At: at, Axis: part.Vec{Y: 1},
		Released: []part.Component{part.MxPlus, part.MxMinus, part.MyPlus, part.MyMinus, part.MzPlus, part.MzMinus},
	})
}
