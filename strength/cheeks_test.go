package strength_test

// Cheek plates: each plate at the pin hole for itself, and the weld that brings a cheek's part to its ear.

import (
	"math"
	"testing"

	"lugwright/part"
	"lugwright/strength"
)

// Ears of 8 mm with cheeks of 5 mm and 50 mm across on a pin of 25 mm in holes of 25.5 mm, pulled up by 20 kN with the lug midway: each ear
// has 10 kN, its cheek 5/13 of that. A cheek tears past its own end, 12.25 mm: 0.6 F_u 2 x 5 (12.25 + 25/2), D5-2 with C_r = 1; counting it
// over the ear's end would give it three times as much. Its weld, 16 runs round 50 mm, has P/L, and P x 2.5 mm about its plane:
// with I = L r^2/2, 2 x 2.5/25 of P/L square to it.
func TestCheeksEachForItself(t *testing.T) {
	t.Run("plates", func(t *testing.T) { cheeksEachForItself(t, "plate", "cheek-1") })
	t.Run("bosses", func(t *testing.T) { cheeksEachForItself(t, "boss", "boss-1") })
}

func cheeksEachForItself(t *testing.T, form, id string) {
	b := clevisOf(t, part.LeftHand, with(bare, mm("cheek_thickness", 5), mm("cheek_diameter", 50), mm("pin_clearance", 0.5), word("cheek_form", form), word("pin_material", "C45+QT")))
	b.Pins[0].TravelMM = 0
	r := run(t, b, strength.Options{}, service("up", part.Vec{Z: 20000}))
	P := 10000 * 5 / 13.0
	within(t, "ear's part", find(t, r, "pin-bearing", "ear-1").Demand, 10000*8/13.0, 1e-9)
	cheek := find(t, r, "pin-plate-tear-out", id)
	within(t, "cheek's part", cheek.Demand, P, 1e-9)
	within(t, "tear-out of the cheek", cheek.Capacity, 0.6*65*6.894757*2*5*(12.25+12.5)/2, 1e-6)
	within(t, "bearing of the cheek", find(t, r, "pin-bearing", id).Capacity, 1.8*50*6.894757*25*5/2, 1e-6)
	L := 16 * 50 * math.Sin(math.Pi/16)
	within(t, "weld round the cheek", find(t, r, "fillet-strength", "w-"+id).Demand, P/L*math.Hypot(1, 0.2), 0.01)
	// A seat of 13 mm has its middle 2.5 mm off the ear's: 10 kN bend the ear by that.
	within(t, "eccentricity of the seat", find(t, r, "weak-axis-bending", "ear-1").Demand, 10000*2.5, 1e-6)
	if c := find(t, r, "pin-plate-dimensions", id); c.Verdict != strength.NotApplied || c.Why == "" {
		t.Errorf("dimensions of the cheek: %s, %q", c.Verdict, c.Why)
	}
}

// A force that presses a plate towards its root, a little askew, tears it with the part across alone; one straight towards the root not
// at all. There is no jump where it turns to pull.
func TestAskewTowardsTheRoot(t *testing.T) {
	f := strength.Bore{P: 1000, Pull: -800, A: 30, B: 40, Least: 25}
	if p, a, b, ok := f.Tears(); !ok || math.Abs(p-600) > 1e-9 || a != 25 || b != 25 {
		t.Errorf("3:4 towards the root: %v over %v and %v, %v", p, a, b, ok)
	}
	f.Pull = -1000
	if _, _, _, ok := f.Tears(); ok {
		t.Error("straight towards the root")
	}
	f.Pull = 1000
	if p, a, b, ok := f.Tears(); !ok || p != 1000 || a != 30 || b != 40 {
		t.Errorf("straight pull: %v over %v and %v, %v", p, a, b, ok)
	}
}
