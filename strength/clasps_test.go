package strength_test

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/aisc360"
)

// capped is the seat of contacts_test.go, loaded at the tube's axis, with a cap of the same 120 degrees below the tube that holds it down.
func capped() *part.Bracket {
	b := seated(0)
	b.Plates = append(b.Plates, part.Plate{ID: "cap", Name: "cap", ThicknessMM: 16, Material: "S355", Outer: shape.Rect(shape.Point{X: -60, Y: -120}, shape.Point{X: 60, Y: -44.45}),
		Pose: part.Pose{U: part.Vec{X: 1}, V: part.Vec{Z: 1}}})
	b.Contacts = append(b.Contacts, part.Contact{ID: "cap-seat", Things: [2]string{"cap", "tube"}, WrapRad: 2 * math.Pi / 3,
		Pose:  part.Pose{Origin: part.Vec{Z: -44.45}, U: part.Vec{Y: 1}, V: part.Vec{X: 1}},
		Patch: shape.Box{Min: shape.Point{X: -40, Y: -60}, Max: shape.Point{X: 40, Y: 60}}})
	for i := range b.Paths {
		if b.Paths[i].Component == part.FzPlus {
			b.Paths[i].Branches[0].Through = []string{"side", "cap", "cap-seat", "tube"}
		}
	}
	return b
}

// The seat ends 60 degrees off the vertical, so that a force across alone points to 45 degrees: as much down as across, which the cap gives back. What
// presses down already counts; what lifts adds to the cap.
func TestForceAcrossAClaspedTube(t *testing.T) {
	for _, c := range []struct {
		load      part.Vec
		seat, cap part.Vec
	}{
		{part.Vec{X: 1000}, part.Vec{X: 1000, Z: -1000}, part.Vec{Z: 1000}},
		{part.Vec{X: -1000, Z: -400}, part.Vec{X: -1000, Z: -1000}, part.Vec{Z: 600}},
		{part.Vec{X: 1000, Z: -2000}, part.Vec{X: 1000, Z: -2000}, part.Vec{}},
		{part.Vec{X: 1000, Z: 500}, part.Vec{X: 1000, Z: -1000}, part.Vec{Z: 1500}},
		{part.Vec{Z: 500}, part.Vec{}, part.Vec{Z: 500}},
	} {
		got := carry(t, capped(), c.load, false, "seat", "cap-seat", "tube")
		for i, want := range []part.Vec{c.seat, c.cap, c.load} {
			if off := got[i].Force.Sub(want).Norm(); off > 1e-6 {
				t.Errorf("%v: %s has %v, want %v", c.load, got[i].Thing, got[i].Force, want)
			}
		}
	}
}

// 10 kN across: the seat bears 14.14 kN over 15 degrees on either side of its line, 88.9 sin 15 deg by 80 mm, the cap 10 kN over its whole arc; the
// wall under either has both. AISC 360-22 J7(a), ASD: 1.8 F_y A/2.
func TestSeatAskew(t *testing.T) {
	b := capped()
	r := run(t, b, strength.Options{}, service("across", part.Vec{X: 10e3}))
	for _, c := range []struct {
		place       string
		force, half float64
	}{{"side on tube", 10e3 * math.Sqrt2, 15}, {"cap on tube", 10e3, 60}} {
		k := placedAt(t, r, "contact-bearing", c.place)
		within(t, c.place, k.Demand, c.force, 1e-9)
		within(t, c.place, k.Capacity, 1.8*355*88.9*math.Sin(c.half*math.Pi/180)*80/2, 1e-9)
		alone := strength.Calc{Method: strength.ASD}
		both := 10e3 * (1 + math.Sqrt2) // P_r, D, t, b, beta, carried along the tube, F_y
		if err := aisc360.Basis().Limit("saddle-ring").FromNumbers(&alone, [][]float64{{both}, {88.9}, {8}, {80}, {c.half * math.Pi / 180}, {1}, {355}}); err != nil {
			t.Fatal(err)
		}
		within(t, c.place+", ring", placedAt(t, r, "saddle-ring", c.place).Demand, alone.Demand, 1e-9)
	}
	// Pressed down as well, 25 kN: atan(10/25) off the vertical, the rest of 60 degrees on either side; the cap rests.
	r = run(t, b, strength.Options{}, service("both", part.Vec{X: 10e3, Z: -25e3}))
	k := placedAt(t, r, "contact-bearing", "side on tube")
	within(t, "both", k.Demand, math.Hypot(10e3, 25e3), 1e-9)
	within(t, "both", k.Capacity, 1.8*355*88.9*math.Sin(math.Pi/3-math.Atan(10./25))*80/2, 1e-9)
}

// Without a cap nothing keeps the tube from climbing over the lip; and a force that passes beside the axis turns the tube.
func TestSeatCannotHold(t *testing.T) {
	for want, c := range map[string]struct {
		b    *part.Bracket
		load part.Vec
	}{"past the seat's lip": {seated(0), part.Vec{X: 25e3, Z: -10e3}}, "a turn of 5e+04 N*mm": {seated(10), part.Vec{X: 5e3, Z: -10e3}}} {
		_, err := strength.Run(aisc360.Basis(), c.b, []part.Case{service("load", c.load)}, strength.Options{})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want %s, got %v", want, err)
		}
	}
}
