package clevis

// Cheek plates round the pin hole, on the ears' outer faces.

import (
	"fmt"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func (d *design) checkCheeks(n *fab.Needs) {
	fab.ReadCheek(d.v).Check(n, d.ear(), d.hole, d.pin, d.earWeld, "ear")
}

func (d *design) addCheeks(b *part.Bracket) {
	if d.cheekT == 0 {
		return
	}
	for i, e := range ears {
		pose := fab.Standing(part.Vec{Y: d.face(e, d.outer+d.cheekT/2), Z: d.height}, part.Vec{X: -e.side})
		fab.ReadCheek(d.v).Add(b, fmt.Sprintf("cheek-%d", i+1), e.id, d.v.Word("gusset_material"), d.v.Word("electrode"), d.pinHole(shape.Point{}), pose)
	}
}
