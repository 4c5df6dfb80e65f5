package clevis

// The pin: what it passes, what keeps it in, how long it is.

import (
	"math"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

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
func (d *design) tied() bool { return d.v.Word("pin_ends") == "head and nut" }

// pinEnds gives the inboard end first, as seats run outboard. The head is outboard, so that the pin draws away from the rail.
// A keeper sits on the outboard ear and holds the pin both ways.
func (d *design) pinEnds() [2]part.PinEnd {
	play := d.v.MM("end_play")
	head := part.PinEnd{Kind: part.EndHead, BearsOn: "ear-1"}
	switch d.v.Word("pin_ends") {
	case "head and nut":
		return [2]part.PinEnd{{Kind: part.EndNut, BearsOn: "ear-2", PlayMM: play}, head}
	case "head and retaining bolt":
		return [2]part.PinEnd{{Kind: part.EndRetainer, BearsOn: "ear-2", PlayMM: play}, head}
	}
	keeper := part.PinEnd{Kind: part.EndKeeper, BearsOn: "ear-1", PlayMM: play}
	return [2]part.PinEnd{keeper, keeper}
}

// pinLength is the length under the head, or over all with a keeper, up to a whole mm: the stack, the play and what the end
// needs. What an end needs is common practice, no source.
func (d *design) pinLength() float64 {
	stack := 2*(d.outer+d.cheekT) + d.v.MM("end_play")
	switch d.v.Word("pin_ends") {
	case "head and nut":
		return math.Ceil(stack + 1.15*d.pin) // washer 0.15 d, nut 0.8 d, thread showing 0.2 d
	case "head and retaining bolt":
		return math.Ceil(stack + d.pin) // bolt of about d/4 with its edges
	}
	return math.Ceil(stack + 0.5*d.pin) // land beyond the keeper's slot
}

func (d *design) addPin(b *part.Bracket) {
	// A cheek plate shares its ear's seat: the two bear together, as the load path has it.
	seatT := d.earT + d.cheekT
	seat := func(e ear) part.Seat {
		return part.Seat{
			Thing: e.id, AtMM: e.side * (d.inner + seatT/2), ThicknessMM: seatT, HoleMM: d.hole, Material: d.v.Word("ear_material"),
		}
	}
	lug := part.Seat{
		Loads: true, ThicknessMM: d.v.MM("lug_thickness"), HoleMM: d.hole, BushMM: d.v.MM("bush_length"), Material: d.v.Word("lug_material"),
	}
	b.Pins = append(b.Pins, part.Pin{
		ID: "pin", DiaMM: d.pin, Material: d.v.Word("pin_material"), LengthMM: d.pinLength(),
		Axis: part.Vec{Y: 1}, Center: part.Vec{Y: d.middle, Z: d.height},
		Seats: []part.Seat{seat(ears[1]), lug, seat(ears[0])}, Ends: d.pinEnds(),
		TravelMM: d.v.MM("gap"), Turns: d.v.Word("turns") == "yes",
	})
}
