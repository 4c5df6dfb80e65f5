package vehicle

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"lugwright/part"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.9g, want %.9g within %g", what, got, want, tol)
	}
}

// lorry is a small vehicle of round numbers: 1000 kg on each axle.
func lorry(items ...Item) *Vehicle {
	return &Vehicle{WheelbaseMM: 4000, RearTrackMM: 1600, FrontTrackMM: 1700, Cab: ChassisCab{FrontKG: 1000, RearKG: 1000, CGZMM: 800, Doubt: Doubt{Confidence: Weighed}}, Items: items}
}

func item(name string, kg, x, y, z float64) Item {
	return Item{Name: name, MassKG: kg, At: part.Vec{X: x, Y: y, Z: z}, Doubt: Doubt{Confidence: Weighed}}
}

func rollUp(t *testing.T, v *Vehicle, s State) Weights {
	t.Helper()
	w, err := RollUp(v, []State{s})
	if err != nil {
		t.Fatal(err)
	}
	return w[0]
}

// A truck maker's body-builder manual, weight distribution appendix: wheelbase 214 in, payload 14 500 lb with its centre 156 in behind the front axle, printed
// 10 570 lb rear and 3929.9 lb front; and 100 lb at 133 in, printed 62.14 rear, which is cut off, not rounded (its 38.86 front is a slip: 100 - 62.14).
func TestAxleShares(t *testing.T) {
	const in, lb = 25.4, 0.45359237
	v := lorry(item("payload", 14500*lb, 156*in, 0, 1000))
	v.WheelbaseMM = 214 * in
	w := rollUp(t, v, v.Empty())
	near(t, "rear", (w.Rear.KG.Value-1000)/lb, 10570, 0.5)
	near(t, "front", (w.Front.KG.Value-1000)/lb, 3929.9, 0.05)
	v = lorry(item("load", 100*lb, 133*in, 0, 1000))
	v.WheelbaseMM = 214 * in
	w = rollUp(t, v, v.Empty())
	near(t, "rear", (w.Rear.KG.Value-1000)/lb, 62.14, 0.01)
}

// By hand: 1000 + 1000 kg and 1000 kg at x 3000, y 160, z 2000. Rear 1000 + 750, front 1000 + 250; y 160/3 = 53.3; z (2000*800 + 1000*2000)/3000 = 1200;
// left 50 + 100 * 53.33/1600 = 53.33 %; factor (800 - 53.33)/1200 = 0.6222, angle 31.89 degrees.
func TestRollUpByHand(t *testing.T) {
	v := lorry(item("box", 1000, 3000, 160, 2000))
	v.Ratings = Ratings{GrossKG: 2990, FrontKG: 1300}
	w := rollUp(t, v, v.Empty())
	near(t, "front", w.Front.KG.Value, 1250, 1e-9)
	near(t, "rear", w.Rear.KG.Value, 1750, 1e-9)
	near(t, "z", w.Vehicle.ZMM.Value, 1200, 1e-9)
	near(t, "left", w.Stability.LeftPercent.Value, 50+100.0/30, 1e-9)
	near(t, "factor", w.Stability.Factor.Value, (800-160.0/3)/1200, 1e-12)
	near(t, "angle", w.Stability.TipAngleRad.Value*180/math.Pi, 31.89, 0.005)
	if w.Stability.TrackMM != 1600 || w.Stability.TipsFirstTo != "left" {
		t.Errorf("%+v", w.Stability)
	}
	if w.Gross.Standing != Over || w.Front.Standing != Within || w.Rear.Standing != NotRated {
		t.Errorf("%v %v %v", w.Gross.Standing, w.Front.Standing, w.Rear.Standing)
	}
	near(t, "gross high", w.Gross.KG.High, 3030, 1e-9) // 1 % of 3000
	near(t, "front high", w.Front.KG.High, 1250+10+2.5, 1e-9)
	v.Ratings.FrontKG = 1255
	if got := rollUp(t, v, v.Empty()).Front.Standing; got != MayExceed {
		t.Error(got)
	}
	if want := "rear axle: not checked, no rating stated"; !strings.Contains(strings.Join(w.Notes, "\n"), want) {
		t.Errorf("%q is not in %q", want, w.Notes)
	}
}

// A mass behind the rear axle takes weight off the front one: a heavier one means a lighter front axle, and the ranges know.
func TestOverhangRange(t *testing.T) {
	m := item("loader", 400, 6000, 0, 1000)
	m.Doubt = Doubt{PlusMinusKG: 40}
	v := lorry(m)
	v.Cab.Doubt = Doubt{PlusMinusPercent: 0, PlusMinusKG: 1e-9}
	w := rollUp(t, v, v.Empty())
	near(t, "front", w.Front.KG.Value, 1000-200, 1e-6)
	near(t, "front low", w.Front.KG.Low, 1000-220, 1e-6)
	near(t, "front high", w.Front.KG.High, 1000-180, 1e-6)
	near(t, "rear high", w.Rear.KG.High, 1000+660, 1e-6)
}

// The range of a centre against every corner of the masses' ranges.
func TestMeanAgainstCorners(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for range 300 {
		all := make([]term, 1+rng.IntN(9))
		for i := range all {
			kg := 1 + 99*rng.Float64()
			all[i] = term{kg, kg * rng.Float64(), math.Round(10*rng.NormFloat64()) * 100}
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for set := range 1 << len(all) {
			m, mx := 0.0, 0.0
			for i, t := range all {
				kg := t.kg - t.pm
				if set>>i&1 == 1 {
					kg = t.kg + t.pm
				}
				m, mx = m+kg, mx+kg*t.x
			}
			lo, hi = min(lo, mx/m), max(hi, mx/m)
		}
		got := mean(all)
		near(t, "low", got.Low, lo, 1e-9*(1+math.Abs(lo)))
		near(t, "high", got.High, hi, 1e-9*(1+math.Abs(hi)))
	}
}

func TestCombinations(t *testing.T) {
	v := lorry(item("box", 100, 1000, 0, 1000))
	for i := range 3 {
		v.Tanks = append(v.Tanks, Tank{Name: string(rune('a' + i)), CapacityL: 100, Fluid: Fluid{"water", 1}, At: part.Vec{X: 2000}})
	}
	crew := item("crew", 80, 500, 0, 1000)
	crew.Optional = true
	v.Items = append(v.Items, crew)
	all, err := v.Combinations()
	if err != nil || len(all) != 16 || all[0].Name != "empty" || all[15].Name != "full" || all[9].Name != "with a, crew" {
		t.Fatalf("%v, %+v", err, all)
	}
	near(t, "full", rollUp(t, v, all[15]).Vehicle.KG.Value, 2000+100+300+80, 1e-9)
	near(t, "a and crew", rollUp(t, v, all[9]).Vehicle.KG.Value, 2000+100+100+80, 1e-9)
	v.Tanks[0].Name = strings.Repeat("a", 60)
	v.Items[1].Name = strings.Repeat("c", 60)
	if all, err = v.Combinations(); err != nil || all[9].Name != "mix 9 of 16" {
		t.Errorf("a name too long for a state: %v, %+v", err, all[9])
	} else if _, err := RollUp(v, all); err != nil {
		t.Error(err)
	}
	for i := range 6 {
		v.Tanks = append(v.Tanks, Tank{Name: string(rune('p' + i)), CapacityL: 100, Fluid: Fluid{"water", 1}})
	}
	if _, err := v.Combinations(); len(part.Fields(err)) != 1 || !strings.Contains(err.Error(), "2^10") {
		t.Errorf("too many: %v", err)
	}
}

// Textbook wedge: 1.3 m wide, 0.4 m deep, 0.5 g: 1300^2 * 0.5 / (12 * 400) = 176 mm, and lifted by half of 0.5 of that, 44 mm. The surface rises 325 mm at
// the wall: within the 400 mm of depth and of air.
func TestSlosh(t *testing.T) {
	tank := Tank{Name: "water", CapacityL: 1040, Box: Box{1000, 1300, 800}, At: part.Vec{X: 10, Y: 20, Z: 1000}}
	at, note := tank.contentsAt(0.5, part.Vec{Y: -0.5, Z: -1})
	near(t, "y", at.Y, 20-176.04, 0.005)
	near(t, "z", at.Z, 1000-200+44.01, 0.005)
	if at.X != 10 || !strings.Contains(note, "176 mm") {
		t.Errorf("%v %q", at, note)
	}
	if at, _ := tank.contentsAt(0.5, part.Vec{Z: 1}); at.Z != 1200 {
		t.Errorf("thrown to the roof: %v", at)
	}
	if at, note := tank.contentsAt(1, part.Vec{Y: 5, Z: -1}); at != tank.At || note != "" {
		t.Errorf("full: %v %q", at, note)
	}
	if _, note := tank.contentsAt(0.5, part.Vec{Y: 1, Z: -1}); !strings.Contains(note, "does not speak") {
		t.Errorf("steep: %q", note)
	}
}

// The wedge against sums over columns of liquid under a plane at the tilt, and what is taken beyond its validity against the same: never less.
func TestSloshAgainstColumns(t *testing.T) {
	const b, tall = 1200.0, 700.0
	rng := rand.New(rand.NewPCG(2, 2))
	spoken := 0
	for range 200 {
		level, tilt := 0.05+0.9*rng.Float64(), 2*rng.Float64()
		tank := Tank{Name: "t", CapacityL: b * b * tall / 1e6, Box: Box{b, b, tall}}
		got, note := tank.contentsAt(level, part.Vec{X: tilt, Z: -1})
		// The surface z0 + tilt x is as high as keeps the volume.
		column := func(x, z0 float64) float64 { return min(max(z0+tilt*x, 0), tall) }
		const n = 2000
		lo, hi := -tilt*b, tall+tilt*b
		for range 60 {
			mid, v := (lo+hi)/2, 0.0
			for i := range n {
				v += column((float64(i)+0.5)/n*b-b/2, mid) / n
			}
			if v > level*tall {
				hi = mid
			} else {
				lo = mid
			}
		}
		mx, mz, m := 0.0, 0.0, 0.0
		for i := range n {
			x := (float64(i)+0.5)/n*b - b/2
			h := column(x, lo)
			m, mx, mz = m+h, mx+h*x, mz+h*h/2
		}
		if !strings.Contains(note, "does not speak") {
			spoken++
			near(t, "shift", got.X, mx/m, 0.01)
			near(t, "height", got.Z, mz/m-tall/2, 0.01)
		} else if got.X < mx/m-1e-6 || got.Z < mz/m-tall/2-1e-6 {
			t.Errorf("level %g, tilt %g: %v, but the liquid lies at %g, %g", level, tilt, got, mx/m, mz/m-tall/2)
		}
	}
	if spoken < 30 {
		t.Errorf("the wedge spoke %d times", spoken)
	}
}

// Full, as in the main demo: the scale reads 40 kg more in front. The roll-up of 2531 front and 2919 rear has weighed masses, 1 %.
func TestReconcile(t *testing.T) {
	v := scenarios(t)["S1"].vehicle()
	v.Cab.Doubt.Confidence = Weighed
	for i := range v.Items {
		v.Items[i].Doubt.Confidence = Weighed
	}
	full := v.Full()
	r, err := Reconcile(v, full, Reading{FrontKG: 2591, RearKG: 2919, PlusMinusKG: 10})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "difference", r.Front.DifferenceKG, 2591-2531.2, 0.05)
	if r.Front.Within || !r.Rear.Within || r.State != "full" {
		t.Errorf("%+v", r)
	}
	near(t, "x", r.CGXMM, 2919.0/5510*3800, 1e-9)
	near(t, "riding", r.RidingKG, 5510-3050, 1e-9)
	near(t, "riding x", r.RidingXMM, (2919.0-1150)/2460*3800, 1e-9)
	near(t, "rolled-up riding x", r.RolledUpRiding.XMM.Value, 2800.6, 0.05)
	if want := "front axle: 2591 kg, 60 kg more than the 2531 kg rolled up, outside 2505 to 2557 kg"; !strings.HasPrefix(r.Words[0], want) {
		t.Errorf("%q", r.Words)
	}
	for _, bad := range []Reading{{FrontKG: math.NaN(), RearKG: 1}, {FrontKG: -1, RearKG: 1}, {FrontKG: 1, RearKG: math.Inf(1)}, {}} {
		if _, err := Reconcile(v, full, bad); len(part.Fields(err)) == 0 {
			t.Errorf("%+v: %v", bad, err)
		}
	}
}

// 49 CFR 393.102(a)(1), (a)(2), (b), as printed there.
func TestCargoSets(t *testing.T) {
	for id, want := range map[string][]part.Vec{
		"cargo-breaking": {{X: -0.8, Z: -1}, {X: 0.5, Z: -1}, {Y: -0.5, Z: -1}, {Y: 0.5, Z: -1}, {Z: 0.2}},
		"cargo-working":  {{X: -0.435, Z: -1}, {X: 0.5, Z: -1}, {Y: -0.25, Z: -1}, {Y: 0.25, Z: -1}, {Z: 0.2}},
	} {
		s, err := ShippedSet(id)
		if err != nil {
			t.Fatal(err)
		}
		cases, err := Cases(s)
		if err != nil || len(cases) != len(want) {
			t.Fatalf("%s: %v %+v", id, err, cases)
		}
		for i, c := range cases {
			if c.AccelG != want[i] || !strings.HasPrefix(c.Source, "49 CFR 393.102") || c.Level != part.Service {
				t.Errorf("%s: %+v, want %v", id, c, want[i])
			}
		}
	}
}

// Every shipped set passes the checks of a user's own, says where it comes from, and has both sides.
func TestShippedSets(t *testing.T) {
	sets := ShippedSets()
	cases, err := Cases(sets...)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sets {
		if s.Source == "" || s.Says == "" || s.Turned == "" || s.BuildersChoice != strings.HasPrefix(s.Source, "builder's choice") {
			t.Errorf("%+v", s)
		}
	}
	for _, c := range cases {
		found := false
		for _, d := range cases {
			found = found || d.Set == c.Set && d.AccelG == (part.Vec{X: c.AccelG.X, Y: -c.AccelG.Y, Z: c.AccelG.Z})
		}
		if !found {
			t.Errorf("%s of %s has no mirror image", c.ID, c.Set)
		}
	}
	own := LoadSet{ID: "own", Source: "mine", Lines: []LoadLine{service("L", "left", 0, 0.3, -1), service("R", "right", 0, -0.3, -1)}}
	if got := own.Cases(); len(got) != 2 || got[0].ID != "L" {
		t.Errorf("both sides stated: %+v", got)
	}
	if _, err := ShippedSet("none"); len(part.Fields(err)) != 1 {
		t.Error(err)
	}
}
