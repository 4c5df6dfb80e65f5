package strength_test

// The arch bracket against statics by hand: a portal frame over a cross member, its load down shared with a bar.

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry/fab/fabtest"
	archkind "lugwright/geometry/kinds/arch"
	"lugwright/part"
	"lugwright/strength"
)

// Sizes of the arch by default: a leg's axis from the middle, the opening's height, the pin's, the plate's; and what plate 1 has of a force square to
// the pin with the lug of 40 over against it: seats of 16 at 30 either side, 2 mm of travel.
const (
	legAt, openingAt, pinAt, topAt = 112.5, 64.0, 125.0, 205.0
	plateHas                       = 0.5 + 2.0/60
)

// archHolding is the arch with both shares stated: how far the feet hold, and what part of a load down the bar takes over that of the feet.
func archHolding(t *testing.T, hold, ratio float64) *part.Bracket {
	return fabtest.Made(t, fabtest.Sized(archkind.Kind(), fabtest.Given{"material": "A572-50", "lug_material": "A572-50"}), fabtest.Given{
		"feet_hold_low": hold, "feet_hold_high": hold, "stiffness_ratio_low": ratio, "stiffness_ratio_high": ratio, "pin_ends": "keeper",
	})
}

func findAt(t *testing.T, r *strength.Report, limit, place string) strength.Check {
	t.Helper()
	for _, c := range r.Checks {
		if c.Limit == limit && strings.HasPrefix(c.Place, place) {
			return c
		}
	}
	t.Fatalf("no check %s at %s", limit, place)
	return strength.Check{}
}

// about moves what is carried to another point.
func about(c strength.Carried, at part.Vec) part.Vec {
	return c.Moment.Add(c.At.Sub(at).Cross(c.Force))
}

// Feet that hold nothing: the crown is a simple beam with P L/4, the legs are posts with P/2.
func TestArchOnFreeFeet(t *testing.T) {
	b := archHolding(t, 0, 0)
	down := service("down", part.Vec{Z: -20e3})
	r := run(t, b, strength.Options{}, down)
	have := plateHas * 20e3
	within(t, "crown", findAt(t, r, "edgewise-bending", "plate-1 crown, front").Demand, have*2*legAt/4, 1e-4)
	within(t, "leg", findAt(t, r, "axial-force", "plate-1 leg, rear").Demand, have/2, 1e-9)
	foot := carry(t, b, down.Force, true, "w-plate-1-front", "bar", "support")
	within(t, "foot", foot[0].Force.Z, -have/2, 1e-9)
	near(t, "thrust", foot[0].Force.X, 0)
	near(t, "moment at the foot", about(foot[0], part.Vec{X: -legAt, Y: foot[0].At.Y}).Y, 0)
	near(t, "bar", foot[1].Force.Norm(), 0)
	near(t, "all", foot[2].Force.Z, -20e3)
}

// Held feet: the thrust is the one for which bending of the leg does no work on it, by Simpson's rule; moments of the leg are what it leaves of
// P/2 (a - u/2). Over both legs the thrusts cancel.
func TestArchSpreadsItsFeet(t *testing.T) {
	b := archHolding(t, 1, 0)
	down := service("down", part.Vec{Z: -20e3})
	got := carry(t, b, down.Force, true, "w-plate-1-front", "w-plate-1-rear", "support")
	half, axis := plateHas*20e3/2, (openingAt+topAt)/2
	thrust := -got[0].Force.X
	if !(thrust > 0) {
		t.Fatalf("front foot pushed by %v, want outwards", got[0].Force)
	}
	moment := func(z float64) float64 { return thrust*(axis-z) - half*(legAt-80./2) } // tension inside
	work := 0.0
	const n = 100
	for i := 0; i <= n; i++ {
		z := openingAt * float64(i) / n
		w := [2]float64{2, 4}[i%2]
		if i == 0 || i == n {
			w = 1
		}
		work += w * moment(z) * (axis - z)
	}
	if math.Abs(work) > 1e-6*half*legAt*axis {
		t.Errorf("a thrust of %g leaves work of %g", thrust, work)
	}
	foot := about(got[0], part.Vec{X: -legAt, Y: got[0].At.Y}).Y
	within(t, "moment at the foot", math.Abs(foot), math.Abs(moment(0)), 1e-9)
	near(t, "thrusts", got[0].Force.X+got[1].Force.X, 0)
	near(t, "all", got[2].Force.X, 0)
	near(t, "moment of all", got[2].Moment.Y, 0)
	r := run(t, b, strength.Options{}, down)
	within(t, "shear of the leg", findAt(t, r, "section-shear", "plate-1 leg, front").Demand, thrust/(65*16), 0.05)
	k := findAt(t, r, "edgewise-bending", "plate-1 leg, front")
	if most := math.Max(math.Abs(moment(0)), math.Abs(moment(openingAt))); k.Demand < math.Abs(moment(0))*(1-1e-4) || k.Demand > most*1.001 {
		t.Errorf("leg bent by %g, want from %g to %g", k.Demand, moment(0), most)
	}
}

// A push along the rail at 125 lifts one foot and presses the other by F 125/225; each leg is bent by F/2 z from its foot, nothing at the foot itself.
// Held, the legs bend as posts up to the opening's height: F/2 x 64 at each foot, and F (125 - 64)/225 on them.
func TestArchPushedAlongTheRail(t *testing.T) {
	push := part.Vec{X: 10e3}
	for hold, want := range map[float64]struct{ lift, foot float64 }{
		0: {10e3 * pinAt / (2 * legAt), 0}, 1: {10e3 * (pinAt - openingAt) / (2 * legAt), 5e3 * openingAt},
	} {
		got := carry(t, archHolding(t, hold, 0), push, true, "front-bolts", "rear-bolts")
		for i, side := range []float64{1, -1} {
			within(t, "lift", got[i].Force.Z, side*want.lift, 1e-9)
			within(t, "push", got[i].Force.X, 5e3, 1e-9)
			within(t, "foot", about(got[i], part.Vec{X: -side * legAt, Y: got[i].At.Y}).Y+1, want.foot+1, 1e-9)
		}
	}
	r := run(t, archHolding(t, 0, 0), strength.Options{}, service("push", push))
	// Up to 19, where the arch begins, the leg is 65 wide; higher up it is bent more and is wider.
	if k := findAt(t, r, "edgewise-bending", "plate-1 leg, front"); k.Demand < plateHas*5e3*19 {
		t.Errorf("leg bent by %g", k.Demand)
	}
}

// A side force on plate 1 that the bar does not hand on: F/2 x 125 bends each leg flat at its foot; between free legs the crown is a simple beam, F L/4, and held ones are twisted by
// F L/8.
func TestArchPushedSideways(t *testing.T) {
	side := part.Vec{Y: 6e3}
	r := run(t, archHolding(t, 0, 0), strength.Options{}, service("side", side))
	within(t, "leg", findAt(t, r, "weak-axis-bending", "plate-1 leg, front").Demand, 3e3*pinAt, 1e-4)
	within(t, "crown", findAt(t, r, "weak-axis-bending", "plate-1 crown, front").Demand, 6e3*2*legAt/4, 1e-4)
	for hold, want := range map[float64]float64{0: 0, 1: 6e3 * 2 * legAt / 8} {
		got := carry(t, archHolding(t, hold, 0), side, false, "w-plate-1-front", "w-plate-2-front")
		near(t, "twist", about(got[0], part.Vec{X: -legAt, Y: got[0].At.Y}).Z, want)
		near(t, "the far plate", got[1].Force.Norm(), 0)
	}
}

// A side force F on plate 1 that the bar's welds tie to plate 2, both 60 apart, pin at 125, bar of 40 x 40 at 70. By slope deflection across the rail on fixed
// feet, I = 2 x 65 x 16^3/12, k = I/70 = 634 and 40^4/12/60 = 3556 of the bar: it hands on F (1/2 + 3 x 634 x 55/(70 (4 x 634 + 2 x 3556))) = 0.655 F. On
// feet that turn plate 1 is pressed and plate 2 lifted by 125/60 F; at the plates' middles the bar is bent by (125 - 35) F and 35 F, fixed by 64 F and 23 F.
func TestArchTiedByItsBar(t *testing.T) {
	const f = 6e3
	b := archHolding(t, 0, 0)
	got := carry(t, b, part.Vec{Y: f}, true, "w-bar-1", "w-bar-2", "w-plate-1-front", "w-plate-2-rear", "support")
	k, bar := 2*65*16*16*16/12./70, 40*40*40*40/12./60
	on := f * (0.5 + 3*k*55/(70*(4*k+2*bar)))
	lift := f * 125 / 60
	within(t, "along the bar", got[0].Force.Y, on, 1e-9)
	within(t, "0.655 F", on, 0.655*f, 1e-3)
	within(t, "across it", got[0].Force.Z, lift, 1e-9)
	within(t, "near end", about(got[0], part.Vec{Y: 82, Z: 70}).X, -90*f, 1e-9)
	within(t, "far end", about(got[1], part.Vec{Y: 22, Z: 70}).X, 35*f, 1e-9)
	within(t, "near foot", got[2].Force.Z, -lift/2, 1e-9)
	within(t, "near foot's shear", got[2].Force.Y, (f-on)/2, 1e-9)
	within(t, "near foot's turn", about(got[2], part.Vec{X: -112.5, Y: 82}).X, -(125*f-70*on-90*f)/2, 1e-9)
	within(t, "far foot", got[3].Force.Z, lift/2, 1e-9)
	near(t, "far foot's sway", about(got[3], part.Vec{X: 112.5, Y: 22}).Y, 0)
	within(t, "all", about(got[4], part.Vec{Y: 82}).X, -125*f, 1e-9)
	// U of 26.5 + 41 + 26.5 on the outer face at 90, 19 over its lower ends: bent by 90 F + 8 x 2.083 F less 0.655 F x 13, which presses
	// where the thrust pulls.
	at := (41*26.5 + 26.5*26.5) / 94
	inertia := 41*(26.5-at)*(26.5-at) + 2*(26.5*26.5*26.5/12+26.5*(at-13.25)*(at-13.25))
	bent := 90*f + 8*lift - on*(64+at-70)
	r := run(t, b, strength.Options{}, service("side", part.Vec{Y: f}))
	w := findAt(t, r, "fillet-strength", "weld w-bar-1")
	within(t, "weld", w.Demand, math.Hypot(bent*at/inertia-on/94, lift/94), 1e-6)
	if w.Demand < 1070 || w.Verdict != strength.Fail {
		t.Errorf("%s at %g N/mm", w.Verdict, w.Demand)
	}
}

// The bar takes r/(1 + r) of a load down, here half, and nothing of a pull. Plate 1's part bends it from the plate's middle to its own, 30 mm, as if the
// cross member touched it there alone.
func TestArchBar(t *testing.T) {
	b := archHolding(t, 0, 1)
	r := run(t, b, strength.Options{}, service("down", part.Vec{Z: -20e3}))
	within(t, "seat", findAt(t, r, "contact-bearing", "bar on cross member").Demand, 10e3, 1e-9)
	within(t, "notch", findAt(t, r, "contact-bearing", "plate-1 on bar").Demand, plateHas*10e3, 1e-9)
	within(t, "notch", findAt(t, r, "contact-bearing", "plate-1 on bar").Capacity, 1.8*50*6.894757*40*16/2, 1e-6)
	within(t, "bar", findAt(t, r, "weak-axis-bending", "bar-plate-1").Demand, plateHas*10e3*30, 1e-4)
	within(t, "crown", findAt(t, r, "edgewise-bending", "plate-1 crown, rear").Demand, plateHas*10e3*2*legAt/4, 1e-4)
	up := carry(t, b, part.Vec{Z: 20e3}, true, "bar", "support")
	near(t, "bar under a pull", up[0].Force.Norm(), 0)
	near(t, "feet", up[1].Force.Z, 20e3)
}
