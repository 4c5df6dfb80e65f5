package strength_test

// Pins in their holes by hand: contact of a loose pin, dishing of the plate beyond it, bow of the pin, the body's own lug, wear of a bush.

import (
	"math"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/allowable"
	"lugwright/strength/basis/bth1"
	"lugwright/strength/basis/en1993"
)

// notChecked finds a line of what is not checked by words in it and in its reason.
func notChecked(r *strength.Report, what, why string) int {
	n := 0
	for _, u := range r.NotChecked {
		if strings.Contains(u.What, what) && strings.Contains(u.Why, why) {
			n++
		}
	}
	return n
}

// Ears of 8 mm on a pin of 25 mm in holes of 25.5 mm, 10 kN up on each. Hertz: E* = 1/(0.91 (1/210000 + 1/199948)) = 112556 MPa, relative curvature
// 2 x 0.5/(25.5 x 25) = 1.56863e-3/mm, p_0 = sqrt(10000 x 112556 x 1.56863e-3/(8 pi)) = 265.05 MPa. Nothing of it hangs on the load factor. The strip
// of 25 mm beyond the hole, to the end 56 - 12.75 mm away: s = 2 x 43.25 x sqrt(12)/8 = 37.456, F_cr = 344.74 (1 - 37.456^2 x 344.74/(4 pi^2 x 199948)) =
// 323.62 MPa, 64.72 kN against twice the pull.
func TestLoosePin(t *testing.T) {
	b := clevisOf(t, part.LeftHand, with(bare, mm("pin_clearance", 0.5), word("pin_material", "C45+QT")))
	b.Pins[0].TravelMM = 0
	up := service("up", part.Vec{Z: 20000})
	r := run(t, b, strength.Options{Method: strength.ASD}, up)
	within(t, "peak of the contact", find(t, r, "pin-contact-pressure", "ear-1").Demand, 265.05, 1e-4)
	within(t, "its limit", find(t, r, "pin-contact-pressure", "ear-1").Capacity, 2.5*50*6.894757, 1e-6)
	within(t, "twice the pull", find(t, r, "lug-dishing", "ear-1").Demand, 20000, 1e-6)
	within(t, "strip beyond the hole", find(t, r, "lug-dishing", "ear-1").Capacity, 64723, 1e-4)
	factored := run(t, b, strength.Options{Method: strength.LRFD}, up)
	within(t, "contact by LRFD", find(t, factored, "pin-contact-pressure", "ear-1").Demand, 265.05, 1e-4)
	down := run(t, b, strength.Options{}, service("down", part.Vec{Z: -20000}))
	if c := find(t, down, "lug-dishing", "ear-1"); c.Verdict != strength.NotApplied || c.Why != strength.Pressed {
		t.Errorf("an ear that is pressed: %s, %q", c.Verdict, c.Why)
	}
	// Its middles are 20 + 2 x 2 + 8 mm apart: 20000 x 32^3/(48 x 210000 x pi 25^4/64) mm, against half of 0.5 mm.
	span := b.Pins[0].Seats[2].AtMM - b.Pins[0].Seats[0].AtMM
	bow := find(t, r, "pin-deflection", "pin")
	within(t, "bow of the pin", bow.Demand, 20000*math.Pow(span, 3)/(48*210000*math.Pi*math.Pow(25, 4)/64), 1e-6)
	within(t, "half the play", bow.Capacity, 0.25, 1e-6)
	// The body's lug has it all: bearing 1.8 F_y d t/2.
	lug := find(t, r, "pin-bearing", "the body's lug")
	within(t, "force on the body's lug", lug.Demand, 20000, 1e-6)
	within(t, "bearing of the body's lug", lug.Capacity, 1.8*50*6.894757*25*b.Pins[0].Seats[1].ThicknessMM/2, 1e-6)
	if notChecked(r, "tear-out and net section at the pin", "it is not a plate") != 1 {
		t.Error("the lug's tear-out is not said to be unchecked")
	}
}

// What the lug's data do not tell is named with its reason.
func TestLugOfUnknownData(t *testing.T) {
	for why, spoil := range map[string]func(*part.Seat){
		"no hole of it for the pin is stated": func(s *part.Seat) { s.HoleMM = 0 },
		"its material is not known":           func(s *part.Seat) { s.Material = "unheard of" },
		"it has a bush":                       func(s *part.Seat) { s.BushMM = 15 },
	} {
		b := clevisOf(t, part.LeftHand, bare)
		spoil(&b.Pins[0].Seats[1])
		if r := run(t, b, strength.Options{}, side); notChecked(r, "bearing and contact of the pin", why) != 1 {
			t.Errorf("nothing says that %s", why)
		}
	}
}

// Each may be left out, and is then named; EN and BTH-1 have what is theirs.
func TestPinRulesOfEachBasis(t *testing.T) {
	b := clevisOf(t, part.LeftHand, bare)
	up := []part.Case{service("up", part.Vec{Z: 20000})}
	less := run(t, b, strength.Options{LeaveOut: []string{"pin-contact-pressure", "lug-dishing", "pin-deflection"}}, up...)
	if notChecked(less, "", "left out by the job") != 3 {
		t.Errorf("left out: %+v", less.NotChecked)
	}
	has := func(b *strength.Basis, id string) bool {
		r, err := strength.Run(b, clevisOf(t, part.LeftHand, bare), up, strength.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range r.Checks {
			if c.Limit == id && c.Thing == "ear-1" {
				return true
			}
		}
		return false
	}
	if !has(en1993.Basis(), "pin-contact") || has(en1993.Basis(), "pin-contact-pressure") || !has(en1993.Basis(), "lug-dishing") {
		t.Error("EN 1993: its own contact, and dishing")
	}
	mixed, err := allowable.Basis().WithPinJoint(bth1.Basis(), strength.Allowable)
	if err != nil {
		t.Fatal(err)
	}
	if !has(allowable.Basis(), "lug-dishing") || !has(mixed, "pin-contact-pressure") || has(mixed, "lug-dishing") {
		t.Error("BTH-1 holds dishing off by its 4 t")
	}
	if _, err := strength.Run(bth1.Basis(), b, up, strength.Options{}); err == nil || part.Fields(err)[0].Field != "basis" {
		t.Errorf("pin holes alone: %v", err)
	}
}

// A bush of 15 mm on a pin of 25 mm: 10 kN at rest is 10000/375 MPa, over the 25 MPa of turned bronze; without a load at rest the wear is not judged.
func TestBushWear(t *testing.T) {
	b := clevisOf(t, part.LeftHand, with(bare, mm("bush_length", 15)))
	rest, bump := service("rest", part.Vec{Z: -10000}), service("bump", part.Vec{Z: -30000})
	r := run(t, b, strength.Options{}, rest, bump)
	if c := find(t, r, "bush-wear", "pin"); c.Verdict != strength.NotApplied || !strings.Contains(c.Why, "at rest") || notChecked(r, "wear of the bush", "at rest") != 1 {
		t.Errorf("no load at rest: %s, %q", c.Verdict, c.Why)
	}
	rest.AtRest = true
	r = run(t, b, strength.Options{}, rest, bump)
	if notChecked(r, "wear of the bush", "") != 0 {
		t.Error("wear is checked and named as not checked")
	}
	within(t, "pressure at rest", find(t, r, "bush-wear", "pin").Demand, 10000/375.0, 1e-6)
	within(t, "peak pressure", find(t, r, "bush-pressure", "pin").Demand, 30000/375.0, 1e-6)
	if c := find(t, r, "bush-wear", "pin"); c.Verdict != strength.Fail || c.Case != "rest" {
		t.Errorf("wear: %s by %s", c.Verdict, c.Case)
	}
}
