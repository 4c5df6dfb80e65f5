package clevis

// Cheek plates round the pin hole, on the ears' outer faces.

import (
	"fmt"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

const cheekWeldSides = 16 // runs of the polygon that stands for the round fillet

func (d *design) checkCheeks(n *fab.Needs) {
	if d.cheekT == 0 {
		return
	}
	leg := d.v.MM("cheek_weld")
	n.That(d.cheekT >= 3, "cheek_thickness", fab.MM(d.cheekT), "at least 3 mm; 0 for none")
	least := d.hole + 2*fab.Ligament(d.pin)
	n.That(d.cheekD >= least, "cheek_diameter", fab.MM(d.cheekD), "at least %.4g mm round this hole", least)
	outer, _ := d.earOutline()
	room := outer.DistTo(shape.Point{Y: d.height})
	room = 2 * (min(room, d.height-d.earWeld) - leg)
	n.That(d.cheekD <= room, "cheek_diameter", fab.MM(d.cheekD), "at most %.4g mm, so that its fillet stays on the ear and off the foot's weld", room)
}

func (d *design) addCheeks(b *part.Bracket) {
	if d.cheekT == 0 {
		return
	}
	for i, e := range ears {
		id := fmt.Sprintf("cheek-%d", i+1)
		pose := fab.Standing(part.Vec{Y: d.face(e, d.outer+d.cheekT/2), Z: d.height}, part.Vec{X: -e.side})
		b.Plates = append(b.Plates, part.Plate{
			ID: id, Name: "cheek plate", ThicknessMM: d.cheekT, Material: d.v.Word("gusset_material"),
			Outer: shape.Circle(shape.Point{}, d.cheekD), Holes: []part.Hole{d.pinHole(shape.Point{})}, Pose: pose,
		})
		b.Welds = append(b.Welds, fab.EdgeWeld("w-"+id, id, e.id, d.v.MM("cheek_weld"), d.v.Word("electrode"), fab.Round(pose, -d.cheekT/2, d.cheekD, cheekWeldSides)...))
	}
}
