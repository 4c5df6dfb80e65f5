package clevis

// Cheek plates or bosses round the pin hole, on the ears' outer faces.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func (d *design) checkCheeks(n *fab.Needs) {
	d.cheek.Check(n, d.ear(), d.hole, d.pin, d.earWeld, "ear")
}

func (d *design) addCheeks(b *part.Bracket) {
	if d.cheek.ThicknessMM == 0 {
		return
	}
	for i, e := range ears {
		pose := fab.Standing(part.Vec{Y: d.face(e, d.outer+d.cheek.ThicknessMM/2), Z: d.height}, part.Vec{X: -e.side})
		d.cheek.Add(b, i+1, e.id, d.v.Word("gusset_material"), d.v.Word("electrode"), d.pinHole(shape.Point{}), pose)
	}
}
