package clevis

// The pin: what it passes, how long it is, and the card by which it is turned.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func pinParams() []geometry.Param {
	return []geometry.Param{
		fab.Length("pin_diameter", 6, 120, 25, "diameter of the pin"),
		fab.Length("pin_clearance", 0.05, 5, 0.5, "finished pin hole less pin"),
		fab.Length("finish_allowance", 0, 5, 1, "pin hole cut this much smaller, then reamed; 0 leaves it as cut"),
		fab.Length("pin_height", 15, 500, 90, "pin centre above the foot's upper face"),
		fab.Named("pin_material", "C45+N", "grade of the pin"),
		fab.Choice("turns", "whether the lug turns on the pin under full load, as in a mount that lets the frame twist", "yes", "no"),
		fab.Choice("pin_ends", "what keeps the pin in; only head and nut tie the ears together", headAndNut, headAndBolt, keeperEnd),
		fab.Length("end_play", 0, 5, 0.5, "play of the pin along its axis"),
	}
}

func (d *design) checkPin(n *fab.Needs) {
	v := d.v
	n.That(!d.turned || v.Word("foot") == "base plate", "pin_axis", `"along" on an angle`, "across, or a base plate foot")
	n.That(v.MM("finish_allowance") < d.hole, "finish_allowance", fab.MM(v.MM("finish_allowance")), "less than the finished hole, %.4g mm", d.hole)
	n.That(v.MM("bush_length") <= v.MM("lug_thickness"), "bush_length", fab.MM(v.MM("bush_length")), "at most lug_thickness, %.4g mm", v.MM("lug_thickness"))
	lug := v.MM("lug_radius")
	n.That(lug >= d.hole/2+fab.Ligament(d.pin), "lug_radius", fab.MM(lug), "at least %.4g mm round this pin", d.hole/2+fab.Ligament(d.pin))
	n.That(lug <= d.height, "pin_height", fab.MM(d.height), "at least the lug's clear radius, %.4g mm", lug)
}

func (d *design) pinHole(at shape.Point) part.Hole {
	return fab.PinHole(at, d.hole, d.v.MM("finish_allowance"))
}

// tied says whether both ends of the pin bear on the ears, so that the far ear is pulled along.
func (d *design) tied() bool { return d.v.Word("pin_ends") == headAndNut }

// stack is from the outer face of one ear, cheeks included, to that of the other.
func (d *design) stack() float64 { return 2 * (d.outer + d.cheek.ThicknessMM) }

// outermost is what stands outermost round the pin hole of an ear.
func (d *design) outermost(i int) string {
	if d.cheek.ThicknessMM > 0 {
		return d.cheek.ID(i + 1)
	}
	return ears[i].id
}

// seatThickness: a cheek shares its ear's seat: the two bear together, as the load path has it.
func (d *design) seatThickness() float64 { return d.earT + d.cheek.ThicknessMM }

func (d *design) addPin(b *part.Bracket) {
	seatT := d.seatThickness()
	seat := func(e ear) part.Seat {
		return part.Seat{
			Thing: e.id, AtMM: e.side * (d.inner + seatT/2), ThicknessMM: seatT, HoleMM: d.hole, Material: d.v.Word("ear_material"),
		}
	}
	lug := part.Seat{
		Loads: true, ThicknessMM: d.v.MM("lug_thickness"), HoleMM: d.hole, BushMM: d.v.MM("bush_length"), Material: d.v.Word("lug_material"),
	}
	end := d.ending()
	b.Pins = append(b.Pins, part.Pin{
		ID: "pin", DiaMM: d.pin, Material: d.v.Word("pin_material"), LengthMM: end.length(),
		Axis: part.Vec{Y: 1}, Center: part.Vec{Y: d.middle, Z: d.height},
		Seats: []part.Seat{seat(ears[1]), lug, seat(ears[0])}, Ends: end.ends(),
		TravelMM: d.v.MM("gap") - d.v.MM("spacer_length"), Turns: d.v.Word("turns") == "yes",
	})
	end.add(b)
	d.addSpacers(b)
	b.Notes = append(b.Notes, fab.PinNote(d.pin, d.v.Word("pin_material"), end.card()))
}
