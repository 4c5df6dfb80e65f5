package strength_test

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/aisc360"
	"lugwright/strength/basis/allowable"
	"lugwright/strength/basis/en1993"
)

// hung is a plate on four rods 600 x 540 apart and 140 free, loaded at its middle at a height over it.
func hung(size string, dia, height float64) *part.Bracket {
	at := part.Vec{Z: height}
	b := &part.Bracket{
		Name: "tray", Kind: "test", Hand: part.LeftHand,
		Plates: []part.Plate{{ID: "bottom", Name: "bottom", ThicknessMM: 4, Material: "S355", Outer: shape.Rect(shape.Point{X: -350, Y: -300}, shape.Point{X: 350, Y: 300}),
			Pose: part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}}},
		Rods: []part.Rods{{
			ID: "rods", Pose: part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, Points: []shape.Point{{X: -300, Y: -270}, {X: 300, Y: -270}, {X: 300, Y: 270}, {X: -300, Y: 270}},
			Size: size, DiaMM: dia, Grade: "S235", FreeMM: 140, FixedTop: true, FixedFoot: true,
		}},
		Supports:   []part.Support{{ID: "beam", Kind: part.BodyFrame, ThicknessMM: 4, Material: "S355"}},
		LoadPoints: []part.LoadPoint{{ID: "mass", At: at}},
	}
	for _, c := range part.Components() {
		b.Paths = append(b.Paths, part.Path{LoadPoint: "mass", Component: c, Branches: []part.Branch{{At: at, Through: []string{"bottom", "rods", "beam"}}}})
	}
	return b
}

// A tray of 210 kg on four rods: 3 g down is 6178 N, 1545 N each by the even share and 3089 N on each of two diagonal rods. 1 g to the side is
// 2059 N, 515 N a rod, bending it by F L/2 = 36.0 N m; over the root of the thread that is 1360, 676, 384 and 148 MPa for M8, M10, M12 and M16.
func TestHangerRods(t *testing.T) {
	const W = 210 * 9.80665
	for _, c := range []struct {
		size        string
		dia, stress float64
	}{{"M8", 8, 1360}, {"M10", 10, 676}, {"M12", 12, 384}, {"M16", 16, 148}} {
		b := hung(c.size, c.dia, 140)
		r, err := strength.Run(allowable.Basis(), b, []part.Case{service("bump", part.Vec{Z: -3 * W})}, strength.Options{})
		if err != nil {
			t.Fatal(err)
		}
		k := find(t, r, "rod-tension", "rods")
		pitch := map[string]float64{"M8": 1.25, "M10": 1.5, "M12": 1.75, "M16": 2}[c.size]
		within(t, c.size+" tension", k.Demand, 2*3*W/4/(math.Pi/4*math.Pow(c.dia-0.9743*pitch, 2)), 1e-6)

		r, err = strength.Run(aisc360.Basis(), b, []part.Case{service("side", part.Vec{Y: W})}, strength.Options{})
		if err != nil {
			t.Fatal(err)
		}
		k = find(t, r, "rod-bending", "rods")
		within(t, c.size+" moment", k.Demand, W/4*140/2, 1e-6)
		root := c.dia - 1.2269*pitch
		within(t, c.size+" stress", k.Demand/(math.Pi*root*root*root/32), c.stress, 0.01)
		if want := c.size != "M16"; (k.Verdict == strength.Fail) != want {
			t.Errorf("%s: %s", c.size, k.Verdict)
		}
	}
}

// The couple of a side force 160 below the rods' feet, on lines 540 apart: rods of 140 held at both ends have no moment midway, 230 over the force, and there
// their pulls are F h/(2 s) on each rod of two lines, doubled for a diagonal pair; with the weight one line is pulled and the other pressed. With the end not
// told it is 160 or 300; with one held, the other. Stops at the mass leave no couple and no bending. One rod holds no couple.
func TestRodsUnderSideForce(t *testing.T) {
	const W, F = 2000.0, 4000.0
	side := service("side", part.Vec{Y: F, Z: -W})
	b := hung("M16", 16, -160) // upper ends at 140
	r, err := strength.Run(en1993.Basis(), b, []part.Case{side}, strength.Options{Method: strength.PartialFactors, LoadFactor: 1})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "pull", find(t, r, "rod-tension", "rods").Demand, 2*(W/4+F*230/(2*540)), 1e-6)

	for _, c := range []struct {
		top, foot bool
		h         float64
	}{{false, false, 300}, {true, false, 160}, {false, true, 300}} {
		b.Rods[0].FixedTop, b.Rods[0].FixedFoot = c.top, c.foot
		r, err = strength.Run(en1993.Basis(), b, []part.Case{side}, strength.Options{Method: strength.PartialFactors, LoadFactor: 1})
		if err != nil {
			t.Fatal(err)
		}
		within(t, "one end held", find(t, r, "rod-tension", "rods").Demand, 2*(W/4+F*c.h/(2*540)), 1e-6)
	}
	b.Rods[0].FixedTop, b.Rods[0].FixedFoot = true, true

	b.Rods[0].Stopped, b.Rods[0].StopMM = true, -160
	r, err = strength.Run(en1993.Basis(), b, []part.Case{side}, strength.Options{Method: strength.PartialFactors, LoadFactor: 1})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "pull with stops", find(t, r, "rod-tension", "rods").Demand, 2*W/4, 1e-6)
	within(t, "bending with stops", find(t, r, "rod-bending", "rods").Demand, 0, 1e-9)

	// Two rods 540 apart on the line of the force hold the couple along it: W/2 + F h/s.
	b = hung("M16", 16, -160)
	b.Rods[0].Points = []shape.Point{{Y: -270}, {Y: 270}}
	r, err = strength.Run(en1993.Basis(), b, []part.Case{side}, strength.Options{Method: strength.PartialFactors, LoadFactor: 1})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "two rods", find(t, r, "rod-tension", "rods").Demand, W/2+F*230/540, 1e-6)

	b = hung("M16", 16, 0)
	b.Rods[0].Points = b.Rods[0].Points[:1]
	if _, err := strength.Run(en1993.Basis(), b, []part.Case{side}, strength.Options{Method: strength.PartialFactors}); err == nil || !strings.Contains(err.Error(), "couple") {
		t.Errorf("one rod: %v", err)
	}
}

// A rod whose thread is not engaged a diameter deep fails; nuts on plates need none.
func TestRodEngagement(t *testing.T) {
	for deep, want := range map[float64]strength.Verdict{0: strength.NotApplied, 11: strength.Fail, 13: strength.Pass} {
		b := hung("M12", 12, 140)
		b.Rods[0].EngagementMM = deep
		r := run(t, b, strength.Options{}, service("down", part.Vec{Z: -2000}))
		if k := find(t, r, "rod-engagement", "rods"); k.Verdict != want {
			t.Errorf("%g mm: %s, want %s", deep, k.Verdict, want)
		}
		// d_2 = 10.863 mm: 0.577 F_u pi d_2 (L_e - 1.75 mm)/2 over a factor of 2, the nut no weaker than the rod.
		if strip := find(t, r, "thread-stripping", "rods"); deep > 0 {
			fu := find(t, r, "rod-tension", "rods").Capacity * 2 / (0.75 * math.Pi * 36)
			within(t, "stripping", strip.Capacity, 0.577*fu*math.Pi*10.863*(deep-1.75)/4, 1e-4)
		} else if strip.Verdict != strength.NotApplied {
			t.Errorf("nuts on plates: stripping %s", strip.Verdict)
		}
	}
}

// A tray of 2 mm S355 that is to hold M16 rods of 140 mm upright, each bent by a quarter of 5.6 kN: 1.5 x 1.4 kN x 70 mm = 147 N m at its foot. Strips as wide as the
// washer of 60 on both sides yield at 2 x 355 x 60 x 2^2/6 = 28.4 N m; AISC allows that over 1.67 for 98 N m, stress with factors of 1.5 and 4 the lesser of 355/1.5
// and 510/4 MPa (EN 10025-2, under 3 mm). A tray that is not to hold them has no such moment, and the check may be left out.
func TestTrayHoldsRodsUpright(t *testing.T) {
	tray := func(ends string) *part.Bracket {
		return bracketOf(t, "tray", mm("length", 700), mm("width", 640), mm("side_height", 150), mm("thickness", 2), mm("rod_gauge", 560), mm("load_height", 70), word("rod_ends", ends))
	}
	side := service("side", part.Vec{Y: 5600, Z: -700})
	foot := func(b *strength.Basis, ends string) strength.Check {
		r, err := strength.Run(b, tray(ends), []part.Case{side}, strength.Options{})
		if err != nil {
			t.Fatal(err)
		}
		return find(t, r, "held-rod-foot", "rods")
	}
	for _, c := range []struct {
		basis          *strength.Basis
		factor, stress float64
	}{{aisc360.Basis(), 1, 355 / 1.67}, {en1993.Basis(), 1.5, 355}, {allowable.Basis(), 1, min(355/1.5, 510/4.)}} {
		k := foot(c.basis, "both held")
		within(t, c.basis.Card.Name+": moment", k.Demand, c.factor*98e3, 1e-3)
		within(t, c.basis.Card.Name+": strength", k.Capacity, 2*c.stress*60*4/6, 1e-3)
		if k.Verdict != strength.Fail {
			t.Errorf("%s: %s", c.basis.Card.Name, k.Verdict)
		}
	}
	if k := foot(aisc360.Basis(), "one held"); k.Verdict != strength.NotApplied {
		t.Errorf("not held: %s", k.Verdict)
	}
	if _, err := strength.Run(aisc360.Basis(), tray("both held"), []part.Case{side}, strength.Options{LeaveOut: []string{"held-rod-foot"}}); err != nil {
		t.Error(err)
	}
}

// The couple of a side force on a tray's bottom, by statics: pressure that falls evenly from p to -p makes a moment whose greatest value is
// sought here on a fine grid.
func TestTrayCarriesOverturning(t *testing.T) {
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "tray", Name: "tray", Hand: part.LeftHand})
	if err != nil {
		t.Fatal(err)
	}
	const W, F = 2000.0, 1000.0
	down, side := service("down", part.Vec{Z: -W}), service("side", part.Vec{Y: F, Z: -W})
	at := func(c part.Case, limit, place string) float64 {
		for _, k := range run(t, b, strength.Options{Method: strength.ASD}, c).Checks {
			if k.Limit == limit && strings.Contains(k.Place, place) {
				return k.Demand
			}
		}
		t.Fatalf("no %s of %q", limit, place)
		return 0
	}
	bottom := b.Plates[0]
	over := F * (b.LoadPoints[0].At.Z - bottom.Pose.Origin.Z)
	most := 0.0
	for i := range 10001 {
		x := float64(i) / 10000
		most = max(most, 6*over*(x/6-x*x/2+x*x*x/3))
	}
	within(t, "bottom", at(side, "weak-axis-bending", "bottom")-at(down, "weak-axis-bending", "bottom"), most, 1e-3)

	// Along the tray: the strip at its end has the greatest pressure, 6 F h/(span wide^2). A side has half of the couple, as pressure q0 to -q0 over its length on
	// rods that stand within it; the greatest moment is sought from one end to the other. Ours leaves out that overhangs relieve it.
	along := service("along", part.Vec{X: F, Z: -W})
	span, wide, rods := foldsApart(t, &bottom)
	wide, span = max(span, wide), min(span, wide)
	within(t, "strip at the end", at(along, "weak-axis-bending", "bottom")-at(down, "weak-axis-bending", "bottom"), 6*over/(span*wide*wide)*span*span/8*wide, 1e-3)
	q0 := 6 * (over / 2) / (wide * wide)
	greatest := func(rods float64) float64 {
		push, most := over/2/rods, 0.0
		for i := range 10001 {
			x := wide * float64(i) / 10000
			m := -q0*x*x/2 + q0*x*x*x/(3*wide) + push*max(x-(wide-rods)/2, 0) - push*max(x-(wide+rods)/2, 0)
			most = max(most, math.Abs(m))
		}
		return most
	}
	got := at(along, "edgewise-bending", "side") - at(down, "edgewise-bending", "side")
	within(t, "side, rods at its ends", got, greatest(wide), 1e-3)
	if m := greatest(rods); m > got {
		t.Errorf("side: %.4g N mm, with its overhangs %.4g", got, m)
	}
}

// foldsApart measures a tray with four folds: between both pairs of them, and between its rods along the longer way.
func foldsApart(t *testing.T, p *part.Plate) (x, y, rods float64) {
	t.Helper()
	lo, hi := p.Bends[0].A, p.Bends[0].A
	for _, b := range p.Bends {
		q := b.A.Lerp(b.B, 0.5)
		lo, hi = shape.Point{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}, shape.Point{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
	}
	left, right := math.Inf(1), math.Inf(-1)
	for _, h := range p.Holes {
		if h.Purpose == part.ForRod {
			at := h.Center.X
			if hi.Y-lo.Y > hi.X-lo.X {
				at = h.Center.Y
			}
			left, right = min(left, at), max(right, at)
		}
	}
	return hi.X - lo.X, hi.Y - lo.Y, right - left
}

// Rods well inside the folds bend the sheet between: 5 kN on four rods, two of them carrying all, is 2.5 kN on the worst one, at its distance from the fold.
func TestSheetBetweenRodsAndFolds(t *testing.T) {
	for _, gauge := range []float64{480, 60} {
		b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "tray", Name: "tray", Hand: part.LeftHand, Params: []part.Param{{Name: "rod_gauge", Number: gauge, Unit: "mm"}}})
		if err != nil {
			t.Fatal(err)
		}
		p := &b.Plates[0]
		off := math.Inf(1)
		for _, fold := range p.Bends {
			if math.Abs(fold.A.Y-fold.B.Y) < 1 {
				off = min(off, math.Abs(fold.A.Y)-gauge/2)
			}
		}
		r := run(t, b, strength.Options{Method: strength.ASD}, service("down", part.Vec{Z: -5000}))
		for _, k := range r.Checks {
			if k.Limit == "weak-axis-bending" && strings.Contains(k.Place, "rods and folds") {
				within(t, "moment", k.Demand, 2500*off, 1e-6)
			}
		}
	}
}
