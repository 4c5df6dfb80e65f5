package strength_test

// The saddle by hand: what the cap, its bolts and ears, the side plates and the welds have of an uplift, a force across the tube and one along it.

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/en1993"
)

func saddleOf(t *testing.T, ps ...part.Param) *part.Bracket {
	t.Helper()
	b, err := geometry.Build(reckoned(), geometry.Request{Kind: "saddle", Name: "s", Hand: part.LeftHand, Params: ps})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// placedAt finds a limit state at a place whose words begin so.
func placedAt(t *testing.T, r *strength.Report, limit, place string) *strength.Check {
	t.Helper()
	for i := range r.Checks {
		if k := &r.Checks[i]; k.Limit == limit && strings.HasPrefix(k.Place, place) {
			return k
		}
	}
	t.Fatalf("no %s at %s", limit, place)
	return nil
}

// 10 kN up, the load up to 5 mm off the middle of side plates 90 mm apart, each ear's two bolts 77 mm off it: a bolt has 2500 (1 + 5/77) N and bends its ear
// over 26 mm to the plate. The side plate with more has 5/9 of all, half of that at either ear, 85.5 mm from the middle of cap and side plate; an ear's weld
// is 2 x 42 mm.
func TestSaddleLifted(t *testing.T) {
	r := run(t, saddleOf(t), strength.Options{}, service("up", part.Vec{Z: 10e3}))
	bolt, end := 2500*(1+5/77.), 10e3*5/9/2
	within(t, "bolt", placedAt(t, r, "bolt-prying", "cap-ear-front at cap-bolts-front").Demand, bolt, 1e-9)
	within(t, "ear", placedAt(t, r, "weak-axis-bending", "cap-ear-rear, outboard").Demand, bolt*26, 1e-4)
	within(t, "lower ear", placedAt(t, r, "weak-axis-bending", "ear-rear, inboard").Demand, bolt*26, 1e-4)
	within(t, "cap", placedAt(t, r, "edgewise-bending", "cap-1, front").Demand, end*85.5, 1e-4)
	within(t, "side", placedAt(t, r, "edgewise-bending", "side-2, rear (").Demand, end*85.5, 1e-4)
	within(t, "weld of the cap", placedAt(t, r, "fillet-strength", "weld w-cap-2-front").Demand, end/84, 1e-9)
	within(t, "weld of the ear", placedAt(t, r, "fillet-strength", "weld w-side-1-rear").Demand, end/84, 1e-9)
	within(t, "cap on the tube", placedAt(t, r, "contact-bearing", "tube on cap-1").Demand, 2*end, 1e-9)
}

// 10 kN across: the seats end acos(18/46.95) off the vertical and bear up to 15 degrees short of that, so that cap and seat press the tube by
// cot(52.46 deg) of it. The pair stays above the base plate: the foot's weld, two lines of 210 mm, has 5/9 of the force and its couple over 145 - 20 mm.
func TestSaddleAcross(t *testing.T) {
	r := run(t, saddleOf(t), strength.Options{}, service("across", part.Vec{X: 10e3}))
	half := math.Acos(18 / 46.95)
	held := 10e3 / math.Tan(half-math.Pi/12)
	within(t, "bolt", placedAt(t, r, "bolt-prying", "cap-ear-rear at cap-bolts-rear").Demand, held/4*(1+5/77.), 1e-9)
	within(t, "seat", placedAt(t, r, "contact-bearing", "tube on side-1").Demand, math.Hypot(10e3, held)*5/9, 1e-9)
	within(t, "cap", placedAt(t, r, "contact-bearing", "tube on cap-1").Demand, held*5/9, 1e-9)
	v := 10e3 * 5 / 9
	inertia := 2 * 210 * 210 * 210 / 12.
	within(t, "foot", placedAt(t, r, "fillet-strength", "weld w-side-1").Demand, math.Hypot(v/420, v*125*105/inertia), 1e-9)
	// 2.5 kN on each of four bolts at 140 and 60 mm, whatever cap and seat press, and 10 kN x 5 mm of twist: sum r^2 = 92800.
	e, err := strength.Run(en1993.Basis(), saddleOf(t), []part.Case{service("across", part.Vec{X: 10e3})}, strength.Options{Method: strength.PartialFactors, LoadFactor: 1})
	if err != nil {
		t.Fatal(err)
	}
	within(t, "base bolts", placedAt(t, e, "bolt-shear", "bolts").Demand, math.Hypot(2500+50e3*60/92800, 50e3*140/92800), 1e-9)
}

// 8 kN along: the first collar's fillet of sixteen chords round 89.4 mm, and one side plate bent the weak way over 145 - 20 mm.
func TestSaddleAlong(t *testing.T) {
	r := run(t, saddleOf(t), strength.Options{}, service("along", part.Vec{Y: 8e3}))
	within(t, "collar", placedAt(t, r, "fillet-strength", "weld w-collar-1").Demand, 8e3/(16*89.4*math.Sin(math.Pi/16)), 1e-9)
	within(t, "side plate", placedAt(t, r, "weak-axis-bending", "side-1 (").Demand, 8e3*125, 1e-4)
	within(t, "contact", placedAt(t, r, "contact-bearing", "collar-1 on side-1").Demand, 8e3, 1e-9)
}

// What no part holds is refused: along the tube without collars, a turn about it, a couple across it.
func TestSaddleRefuses(t *testing.T) {
	bare := saddleOf(t, part.Param{Name: "collar_thickness", Unit: "mm"})
	for name, c := range map[string]struct {
		b    *part.Bracket
		c    part.Case
		want string
	}{
		"along": {bare, part.Case{Force: part.Vec{Y: 1e3}}, "no load path"}, "turn": {saddleOf(t), part.Case{Moment: part.Vec{Y: 1e5}}, "the joint lets My+"},
		"couple": {saddleOf(t), part.Case{Moment: part.Vec{X: 1e5}}, "no load path"},
	} {
		c.c.Name, c.c.Level = name, part.Service
		if _, err := strength.Carry(c.b, c.c, false, "support"); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
