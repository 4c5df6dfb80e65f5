package strength_test

// Small plates: stiffener, doubler, backing plate, spreader washer, keeper plate, each under a load by hand. Elementary statics; capacities are AISC
// 360-22's, ASD, with S355 at 355 MPa.

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/aisc360"
)

func small(t *testing.T, kind string, ps ...part.Param) *part.Bracket {
	t.Helper()
	b, err := geometry.Build(reckoned(), geometry.Request{Kind: kind, Name: "small", Hand: part.LeftHand, Params: ps})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// place finds a check of a limit state by the beginning of its place.
func place(t *testing.T, r *strength.Report, limit, at string) strength.Check {
	t.Helper()
	for _, c := range r.Checks {
		if c.Limit == limit && strings.HasPrefix(c.Place, at) {
			return c
		}
	}
	t.Fatalf("no %s at %q", limit, at)
	return strength.Check{}
}

// 20 kN on the flange, 30 from the web, on 55 x 188 x 8 open by 13 at two corners. The web's two welds are 162 long and take 61.7 N/mm along them and, at
// their ends, 20000 x 30/(162^2/3) = 68.6 square to them; the flange's are 42 long, their middle at 34: 238 + 20000 x 4/(42^2/3) = 374. Half way down the plate
// is a strut of 2.1 x 94 mm (r = 8/sqrt12) by E3, on its whole 440 mm2.
func TestStiffenerByHand(t *testing.T) {
	r := run(t, small(t, "stiffener"), strength.Options{Method: strength.ASD}, service("down", part.Vec{Z: -20000}))
	within(t, "web's weld", place(t, r, "fillet-strength", "weld w-web").Demand, math.Hypot(20000/324., 20000*30/(162*162/3.)), 1e-6)
	within(t, "flange's weld", place(t, r, "fillet-strength", "weld w-flange").Demand, 20000/84.+20000*4/(42*42/3.), 1e-6)
	fe := math.Pow(math.Pi/(2.1*94/(8/math.Sqrt(12))), 2) * 29000 * 6.894757
	within(t, "strut", place(t, r, "axial-force", "stiffener, down").Capacity, math.Pow(0.658, 355/fe)*355*440/1.67, 1e-3)
	within(t, "its force", place(t, r, "axial-force", "stiffener, down").Demand, 20000, 1e-9)
}

// Half of 40 kN in a doubler of 100 x 6 with a hole of 40 on a wall of 6: 20 kN on 60 x 6, 6 mm off its middle. First yield counts beside a hole: 355 x 60 x
// 36/6. Where the wall takes the couple no bending is left.
func TestDoublerByHand(t *testing.T) {
	for couple, moment := range map[string]float64{"doubler": 20000 * 6, "wall": 0} {
		r := run(t, small(t, "doubler", word("couple", couple)), strength.Options{Method: strength.ASD}, service("pull", part.Vec{X: 40000}))
		within(t, couple+": force", place(t, r, "axial-force", "doubler").Demand, 20000, 1e-9)
		within(t, couple+": moment", place(t, r, "weak-axis-bending", "doubler").Demand, moment, 1e-9)
		if moment > 0 {
			within(t, "capacity", place(t, r, "weak-axis-bending", "doubler").Capacity, 355*60*36/6/1.67, 1e-3)
		}
	}
}

// 8 kN off the foot: 2 kN on each of four bolts. Half of it at each edge of 130 x 90, 25 and 22.5 beyond the bolts' lines, which have two holes of 11 each.
// Pushed on the foot of 120 x 80 the bolts have nothing.
func TestBackingPlateByHand(t *testing.T) {
	b := small(t, "backing-plate")
	r := run(t, b, strength.Options{Method: strength.ASD}, service("up", part.Vec{Z: 8000}))
	within(t, "bolt", find(t, r, "bolt-tension", "bolts").Demand, 2000, 1e-9)
	for where, c := range map[string]struct{ arm, width float64 }{"plate, +x": {25, 90 - 22}, "plate, -y": {22.5, 130 - 22}} {
		k := place(t, r, "weak-axis-bending", where)
		within(t, where, k.Demand, 4000*c.arm, 1e-3)
		within(t, where+", capacity", k.Capacity, 355*c.width*64/6/1.67, 1e-3)
	}
	r = run(t, b, strength.Options{Method: strength.ASD}, service("down", part.Vec{Z: -8000}))
	within(t, "bolt under a push", find(t, r, "bolt-tension", "bolts").Demand, 0, 1e-9)
	within(t, "foot", place(t, r, "contact-bearing", "wall on foot").Demand, 8000, 1e-9)
}

// 0.4 kN m about x on a plate of 300 over a foot of 80, bolts at 22.5. With tension in four bolts and pressure at the foot's edge alone they pull 6579 and 869 N, so
// that edges lifted 150 off the middle hold 4152 and 3296 N: 529 N m at the bolts' line. The bound is 400000/39.32 x (1 + 12.66/150)/2 = 5516 N there. The
// foot still has all of the couple and no force.
func TestBackingPlateTurned(t *testing.T) {
	b := small(t, "backing-plate", mm("width", 300), mm("corner_radius", 0))
	turn := service("turn", part.Vec{})
	turn.Moment.X = 400e3
	r := run(t, b, strength.Options{Method: strength.ASD}, turn)
	s := 22.5 * 22.5 / 40
	at := 400e3 / (s + 80/3.) / 2 * (1 + s/150) * 127.5
	k := place(t, r, "weak-axis-bending", "plate, +y")
	if k.Demand < 529e3 || k.Demand < at*(1-1e-3) || k.Demand > 1.05*at {
		t.Errorf("plate bent by %g, want about %g", k.Demand, at)
	}
	got, err := strength.Carry(b, turn, true, "bolts")
	if err != nil {
		t.Fatal(err)
	}
	near(t, "bolts' pull", got[0].Force.Norm(), 0)
	within(t, "bolts' couple", about(got[0], part.Vec{}).X, 400e3, 1e-9)
}

// 9 kN on an M12, whose nut is 18 across flats, over 60 square: a cantilever of 21 under 9000/60 N per mm of side; F_y Z of 60 x 6. The sheet of 6 is
// sheared on pi (18 + 2 x 6) x 6. A washer with no load path through it is no washer of the rod.
func TestSpreaderWasherByHand(t *testing.T) {
	b := small(t, "spreader-washer", mm("sheet_thickness", 6))
	r := run(t, b, strength.Options{Method: strength.ASD}, service("pull", part.Vec{Z: -9000}))
	k := place(t, r, "weak-axis-bending", "washer")
	within(t, "washer", k.Demand, 9000/60.*21*21/2, 1e-9)
	within(t, "capacity", k.Capacity, 355*60*36/4/1.67, 1e-3)
	within(t, "sheet", place(t, r, "bolt-pull-through", "sheet").Capacity, min(0.6*235/1.5, 0.6*360/2)*math.Pi*30*6, 1e-3)

	b.Paths[0].Branches[0].Through = []string{"rod", "sheet"}
	r = run(t, b, strength.Options{Method: strength.ASD}, service("pull", part.Vec{Z: -9000}))
	for _, c := range r.Checks {
		if c.Thing != "rod" {
			t.Errorf("%s at %s", c.Limit, c.Place)
		}
	}
}

// 2 kN along a pin of 30 with its slot 5 deep. Outwards it acts 12 under the pin's middle, 14 over the bolts' line, and bends the plate there by 28 N m. Over the
// pin's end, bolts 50 apart, the plate is a beam: F l/4 = 25 N m and 1 kN a bolt. A pin that would turn shears bolts 40 apart.
func TestKeeperPlateByHand(t *testing.T) {
	slot, over := small(t, "keeper-plate"), small(t, "keeper-plate", word("form", "over"), mm("bolt_pitch", 50), mm("width", 75))
	along := service("along", part.Vec{Y: 2000})
	r := run(t, slot, strength.Options{Method: strength.ASD}, along)
	within(t, "under the slot", place(t, r, "weak-axis-bending", "plate, down").Demand, 2000*14, 1e-3)
	within(t, "in the slot", place(t, r, "contact-bearing", "pin on plate, inner face").Demand, 2000, 1e-9)

	r = run(t, over, strength.Options{Method: strength.ASD}, along)
	within(t, "over the end", place(t, r, "weak-axis-bending", "plate, +x").Demand, 2000*50/4, 1e-3)
	within(t, "bolt", find(t, r, "bolt-tension", "bolts").Demand, 1000, 1e-9)

	for b, f := range map[*part.Bracket]part.Vec{over: {Y: -2000}, slot: {Z: 100}} {
		if _, err := strength.Run(aisc360.Basis(), b, []part.Case{service("no path", f)}, strength.Options{}); part.Fields(err) == nil {
			t.Errorf("%v: %v, want a refusal", f, err)
		}
	}
}

// A path that leaves out plate and welds leaves the welds' sizes to check, which say nothing of the load: no pass.
func TestDimensionsAloneAreNoPass(t *testing.T) {
	b := small(t, "stiffener")
	for i := range b.Paths {
		b.Paths[i].Branches[0].Through = []string{"web"}
	}
	r := run(t, b, strength.Options{}, service("down", part.Vec{Z: -1000}))
	if len(r.Checks) == 0 || r.Governing() != nil || r.Verdict() != strength.Outside {
		t.Errorf("%d checks, governed by %v: %s", len(r.Checks), r.Governing(), r.Verdict())
	}
}
