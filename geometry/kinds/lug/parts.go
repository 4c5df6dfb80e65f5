package lug

// Lug, cheeks, gussets, welds.

import (
	"fmt"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func (d *design) pinHole(at shape.Point) part.Hole {
	return fab.PinHole(at, d.fork.HoleMM, d.allowance)
}

func (d *design) addLug(b *part.Bracket) {
	outer, _ := d.ear.Outline() // check has drawn it
	b.Plates = append(b.Plates, part.Plate{
		ID: "lug", Name: "lug", ThicknessMM: d.t, Material: d.v.Word("material"), Outer: outer, Holes: []part.Hole{d.pinHole(shape.Point{Y: d.ear.Pin})},
		Pose: fab.Standing(part.Vec{Z: -d.stand.depth()}, part.Vec{X: 1}),
	})
	w := fab.Weld("w-lug", "lug", d.stand.top(), d.weld, d.v.Word("electrode"), d.stand.runs(d)...)
	if d.through {
		w = fab.ThroughWeld(w.ID, w.Joins[0], w.Joins[1], d.t, w.Electrode, w.Segments...)
	}
	b.Welds = append(b.Welds, w)
	b.Sweeps = append(b.Sweeps, part.Sweep{ID: "lug", Things: []string{"lug"}, From: part.Vec{Z: d.height}, Name: "lug", EntryMM: min(2*d.fork.PinMM, d.ear.Width), EntryFlat: true})
}

func (d *design) addCheeks(b *part.Bracket) {
	if d.cheek.ThicknessMM == 0 {
		return
	}
	for i, side := range []float64{1, -1} {
		pose := fab.Standing(part.Vec{Y: side * (d.t + d.cheek.ThicknessMM) / 2, Z: d.height}, part.Vec{X: -side})
		d.cheek.Add(b, i+1, "lug", d.v.Word("material"), d.v.Word("electrode"), d.pinHole(shape.Point{}), pose)
	}
}

// addGussets stands one on each face of the lug, in the plane of the pin. They act with it from their top to the snipe.
func (d *design) addGussets(b *part.Bracket) {
	if d.gussetH == 0 {
		return
	}
	c := d.corner()
	leg, filler := d.v.MM("gusset_weld"), d.v.Word("electrode")
	for i, side := range []float64{1, -1} {
		id := fmt.Sprintf("gusset-%d", i+1)
		p := fab.Standing(part.Vec{Y: side * d.t / 2}, part.Vec{Y: side})
		b.Plates = append(b.Plates, part.Plate{ID: id, Name: "gusset", ThicknessMM: d.gussetT, Material: d.v.Word("material"), Outer: c.Outline(), Pose: p})
		foot, stand := "w-"+id+"-foot", "w-"+id
		b.Welds = append(b.Welds,
			fab.Weld(foot, id, d.stand.top(), leg, filler, fab.AtFaces(p.At(c.Snipe, 0, 0), p.At(c.AlongU, 0, 0), p.W(), d.gussetT)...),
			fab.Weld(stand, id, "lug", leg, filler, fab.AtFaces(p.At(0, c.Snipe, 0), p.At(0, c.AlongV, 0), p.W(), d.gussetT)...),
		)
		b.Composites = append(b.Composites, part.Composite{
			ID: id, Things: []string{"lug", id}, From: part.Vec{Z: d.gussetH}, To: part.Vec{}, Welds: []string{stand}, Rule: part.LagCantilever, SpanMM: d.height,
		})
	}
}
