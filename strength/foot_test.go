package strength_test

// A foot on the rail's web: its legs, bolts and lap by statics.

import (
	"math"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/strength"
)

// weakAt is the weak-axis bending of a sweep.
func weakAt(t *testing.T, r *strength.Report, place string) strength.Check {
	t.Helper()
	for _, c := range r.Checks {
		if c.Limit == "weak-axis-bending" && strings.HasPrefix(c.Place, place+" ") {
			return c
		}
	}
	t.Fatalf("no section %q", place)
	return strength.Check{}
}

// plainFoot has no stiffeners, and the subframe welded along the whole leg.
func plainFoot(more ...part.Param) []part.Param {
	return append([]part.Param{mm("stiffener_count", 0), mm("seat_bolts", 0), mm("seat_length", 240)}, more...)
}

// cracked is two rows of three M12 bolts (84.27 mm2 each) at heights y1 over y2 above the end of a contact face of a width: statics of a cracked section,
// as for reinforced concrete. The face presses up to c: 3 A (y1 + y2 - 2c) = w c^2/2; tensions grow from there, and the push is c/3 up.
func cracked(moment, width, y1, y2 float64) (tension, push, height float64) {
	rows := 3 * 84.267
	p := 4 * rows / width
	c := -p/2 + math.Sqrt(p*p/4+2*rows*(y1+y2)/width)
	k := moment / (3 * ((y1-c)*(y1-c/3) + (y2-c)*(y2-c/3)))
	return k * (y1 - c), 3 * k * (y1 + y2 - 2*c), c / 3
}

// 10 kN down, 60 off the web, on a 100 x 150 x 10 angle with a root radius of 12, 240 long: leg A is bent at its root by 10 kN x (60 - 22). Six bolts
// at 60 and 120 down, 90 and 30 over the leg's end, hold 10 kN x 60. Leg B is bent by 10 kN x (60 - 5) at the corner; at the upper row the shear of
// that row, on the web's face, 5 off the leg's middle, bends it by 5 kN x 5 more.
func TestFootByHand(t *testing.T) {
	r := run(t, kindOf(t, "foot", plainFoot()...), strength.Options{}, service("down", part.Vec{Z: -10000}))
	tension, _, _ := cracked(600e3, 240, 90, 30)
	within(t, "leg A", weakAt(t, r, "leg").Demand, 10000*(60-22), 1e-4)
	within(t, "leg A, capacity", weakAt(t, r, "leg").Capacity, 355*240*10*10/4/1.67, 1e-4)
	within(t, "leg B", weakAt(t, r, "down leg").Demand, 10000*(60-5)+5000*5, 1e-3)
	within(t, "tension", find(t, r, "bolt-tension", "bolts").Demand, tension, 1e-4)
	within(t, "shear", find(t, r, "bolt-shear", "bolts").Demand, 10000.0/6, 1e-6)
}

// Bent of plate with the same inside radius it has the same legs: sections, bolts and edge distances as of the angle.
func TestBentFootIsAnAngle(t *testing.T) {
	load := service("load", part.Vec{X: 2000, Y: 3000, Z: -10000})
	angle := run(t, kindOf(t, "foot", plainFoot()...), strength.Options{}, load)
	bent := run(t, kindOf(t, "foot", plainFoot(word("form", "bent plate"))...), strength.Options{}, load)
	for _, limit := range []string{"bolt-shear", "bolt-combined"} {
		within(t, limit, find(t, bent, limit, "bolts").Demand, find(t, angle, limit, "bolts").Demand, 0.02) // it touches the web from 22 down, not 12
	}
	within(t, "leg A", weakAt(t, bent, "leg").Demand, weakAt(t, angle, "leg").Demand, 1e-6)
	if a, b := weakAt(t, angle, "down leg"), weakAt(t, bent, "down leg"); b.Demand < a.Demand || b.Demand > 1.1*a.Demand {
		t.Errorf("leg B: bent %g, angle %g; the bent one is cut from the middle of the corner on", b.Demand, a.Demand)
	}
}

// On a rail of 300 a lap 200 wide reaches to 288 down, where the flat of a web of 288 + 2 x 6 with edges of 12 ends; the bolts stand 228 and 168 over
// that. The push bends the lap under the leg's end at 191 and the leg at the lower row. The lap's weld of 50 + 200 + 50 round its upper end has its
// centroid (100 x 25 + 200 x 0)/300 = 8.33 under the top at 141, and about it 2 (50^3/12 + 50 x 16.67^2) + 200 x 8.33^2 = 62500 mm3; its lower ends
// take the most.
func TestFootLapByHand(t *testing.T) {
	r := run(t, kindOf(t, "foot", plainFoot(word("lap", "fitted"), mm("web_clear_height", 288), mm("angle_down", 191))...), strength.Options{}, service("down", part.Vec{Z: -10000}))
	tension, push, height := cracked(600e3, 200, 228, 168)
	within(t, "tension", find(t, r, "bolt-tension", "bolts").Demand, tension, 1e-4)
	within(t, "lap under the leg", weakAt(t, r, "lap").Demand, push*(97-height), 1e-3)
	within(t, "lap, capacity", weakAt(t, r, "lap").Capacity, 355*200*10*10/4/1.67, 1e-4)
	within(t, "leg at the lower row", weakAt(t, r, "leg over the lap").Demand, push*(168-height), 1e-3)
	arm := 288 - height - (141 + 25.0/3)
	within(t, "lap's weld", find(t, r, "fillet-strength", "w-lap").Demand, push/300+push*arm*(50-25.0/3)/62500, 1e-3)
}

// Over the subframe, 10 kN up at 60 inboard of the web: leg A's root lies 12 inboard of it, so 48 from the load; the bolts hold 10 kN x 60 at 150 and
// 210 down, 80 and 20 over the leg's end.
func TestFootOverByHand(t *testing.T) {
	r := run(t, kindOf(t, "foot", plainFoot(word("leg", "over the subframe"), mm("angle_down", 230), mm("bolt_first", 150))...), strength.Options{}, service("up", part.Vec{Z: 10000}))
	tension, _, _ := cracked(600e3, 240, 80, 20)
	within(t, "leg A", weakAt(t, r, "leg").Demand, 10000*(60-12), 1e-4)
	within(t, "tension", find(t, r, "bolt-tension", "bolts").Demand, tension, 1e-4)
}

// Two bolts hold the subframe down on the leg, 60 off the web and 40 from the tip: 9 kN up is 4.5 kN each, 9 kN down only presses.
func TestSubframePullsItsBolts(t *testing.T) {
	for force, want := range map[float64]float64{9000: 4500, -9000: 0} {
		r := run(t, kindOf(t, "foot"), strength.Options{}, service("z", part.Vec{Z: force}))
		if got := find(t, r, "bolt-tension", "seat").Demand; math.Abs(got-want) > 1e-6*want+1e-9 {
			t.Errorf("%g N: tension %g, want %g", force, got, want)
		}
	}
}

// With the leg over the subframe and no seat bolts the load comes to the bolted leg at the heel, however high it stands: the moment at the bolts is the same,
// in an angle as in a bent plate. Up to the
// first row the leg's middle, 5 mm off the web's face, is bent by 10 kN x (60 + 5).
func TestLoadComesToALegAtItsHeel(t *testing.T) {
	for form, leg := range map[string]string{"angle": "base.b", "bent plate": "base.1"} {
		moment := func(high float64) float64 {
			b := kindOf(t, "foot", plainFoot(word("form", form), word("leg", "over the subframe"), mm("angle_down", 230), mm("bolt_first", 150), mm("load_height", high))...)
			return find(t, run(t, b, strength.Options{Method: strength.ASD}, service("up", part.Vec{Z: 10000})), "weak-axis-bending", leg).Demand
		}
		for _, high := range []float64{60, 100, 160, 200, 300} {
			within(t, form+": moment", moment(high), 10000*65, 1e-6)
		}
	}
}
