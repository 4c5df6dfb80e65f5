package clevis

// Spacer tubes on the pin, one on each side of the lug: they take up the gap, so that the lug travels less. The side load presses the one it meets
// between lug and ear; nothing else loads them.

import (
	"fmt"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func spacerParams() []geometry.Param {
	return []geometry.Param{
		fab.Length("spacer_length", 0, 100, 0, "length of a spacer tube on the pin on each side of the lug, within the gap; 0 for none"),
		fab.Length("spacer_wall", 2, 30, 5, "wall of the spacer tubes"),
		fab.Named("spacer_material", "S355", "grade of the spacer tubes"),
	}
}

// spacerDia is the outside diameter of a spacer: bored as the pin holes are.
func (d *design) spacerDia() float64 { return d.hole + 2*d.v.MM("spacer_wall") }

func (d *design) checkSpacers(n *fab.Needs) {
	long, gap := d.v.MM("spacer_length"), d.v.MM("gap")
	if long == 0 {
		return
	}
	n.That(long >= 2, "spacer_length", fab.MM(long), "at least 2 mm; 0 for none")
	n.That(long <= gap, "spacer_length", fab.MM(long), "at most the gap, %.4g mm", gap)
	outer, _ := d.earOutline() // checkEars has drawn it
	room := min(outer.DistTo(shape.Point{Y: d.height}), d.height-d.earWeld, d.v.MM("lug_radius"))
	n.That(d.spacerDia() <= 2*room, "spacer_wall", fab.MM(d.v.MM("spacer_wall"))+", which makes the spacer "+fab.MM(d.spacerDia())+" across",
		"at most %.4g mm across, so that it bears on ear and lug and clears the foot's weld", 2*room)
}

func (d *design) addSpacers(b *part.Bracket) {
	long := d.v.MM("spacer_length")
	if long == 0 {
		return
	}
	for i, e := range ears {
		pose := part.Pose{Origin: part.Vec{Y: d.face(e, d.inner), Z: d.height}, U: part.Vec{Y: -e.side}, V: part.Vec{X: 1}}
		b.Members = append(b.Members, fab.Ring(fmt.Sprintf("spacer-%d", i+1), "spacer", d.v.Word("spacer_material"), d.spacerDia(), d.hole, long, pose))
	}
	b.Notes = append(b.Notes, fmt.Sprintf("spacers only take up the gap: %s of play is left on each side of the lug", fab.MM(d.v.MM("gap")-long)))
}
