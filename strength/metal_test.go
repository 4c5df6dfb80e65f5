package strength_test

import (
	"math"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis"
	"lugwright/strength/basis/aisc360"
	"lugwright/strength/basis/allowable"
	"lugwright/strength/basis/en1993"
	"lugwright/strength/material"
)

// metalRun checks a clevis whose ears are of a grade; the case pulls and leans.
func metalRun(t *testing.T, basisName, grade string) *strength.Report {
	t.Helper()
	b := clevisOf(t, part.LeftHand, with(bare, word("ear_material", grade)))
	on, err := basis.Find(basisName)
	if err != nil {
		t.Fatal(err)
	}
	r, err := strength.Run(on, b, []part.Case{service("up", part.Vec{X: 500, Y: 300, Z: 4000})}, strength.Options{Trace: true})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestStrangeMetal: a basis for steel says of ears of another metal that they are outside the rule, and why; none of their checks passes or fails.
// The pin, the bolts and the stiffeners of the angle, which are of steel, are judged as before.
func TestStrangeMetal(t *testing.T) {
	for name, document := range map[string]string{"AISC 360-22": "AISC 360", "EN 1993-1-8:2005": "EN 1993-1-8 with EN 1993-1-1"} {
		for grade, family := range map[string]string{"6061-T6": "aluminium", "6082-T6": "aluminium", "316L": "stainless steel"} {
			r := metalRun(t, name, grade)
			ears, others := 0, 0
			for _, c := range r.Checks {
				if !strings.HasPrefix(c.Thing, "ear") && !strings.HasPrefix(c.Place, "weld w-ear") {
					if c.Verdict == strength.Pass || c.Verdict == strength.Fail {
						others++
					}
					continue
				}
				ears++
				if c.Verdict != strength.Outside && c.Verdict != strength.NotApplied {
					t.Errorf("%s, %s: %s of %s: %s", name, grade, c.Limit, c.Place, c.Verdict)
				}
				if c.Verdict == strength.Outside && c.Capacity != 0 {
					t.Errorf("%s, %s: %s has a capacity, %g", name, grade, c.Limit, c.Capacity)
				}
				if c.Verdict == strength.Outside && (!strings.Contains(c.Why, family) || !strings.Contains(c.Why, document+" gives no rule")) {
					t.Errorf("%s, %s: %q does not say why", name, grade, c.Why)
				}
			}
			if ears == 0 || others == 0 {
				t.Errorf("%s, %s: %d checks of ears and welds, %d others", name, grade, ears, others)
			}
		}
	}
}

// TestAluminiumBesideWelds: on allowable stress an ear of 6061-T6, which is welded to its angle, bends at the strength beside a weld, while its pin
// hole, 90 mm up, has the parent metal's. Its weld is outside the rule: the list has no aluminium filler.
func TestAluminiumBesideWelds(t *testing.T) {
	g, err := material.LookupGrade("6061-T6")
	if err != nil {
		t.Fatal(err)
	}
	r := metalRun(t, "Allowable stress", "6061-T6")
	given := func(c *strength.Check, symbol string) float64 {
		for _, l := range c.Lines {
			if l.Kind == strength.GivenLine && l.Symbol == symbol {
				return l.Value
			}
		}
		return 0
	}
	seen := map[string]bool{}
	for i := range r.Checks {
		c := &r.Checks[i]
		if !strings.HasPrefix(c.Thing, "ear") && !strings.HasPrefix(c.Place, "weld w-ear") {
			continue
		}
		switch {
		case c.Limit == "weak-axis-bending":
			seen["bending"] = true
			if given(c, "F_y") != g.Welded.FyMPa || c.Verdict == strength.Outside {
				t.Errorf("bending at %g MPa, %s %s", given(c, "F_y"), c.Verdict, c.Why)
			}
		case c.Limit == "pin-plate-tension":
			seen["hole"] = true
			if given(c, "F_y") != g.Bands[0].FyMPa {
				t.Errorf("pin hole at %g MPa", given(c, "F_y"))
			}
		case c.Limit == "section-buckling" && given(c, "E") != g.EMPa:
			t.Errorf("buckles with E %g", given(c, "E"))
		case strings.HasPrefix(c.Limit, "fillet"):
			seen["weld"] = true
			if c.Verdict != strength.Outside || !strings.Contains(c.Why, "filler") {
				t.Errorf("%s of an aluminium weld: %s %s", c.Limit, c.Verdict, c.Why)
			}
		}
	}
	if len(seen) != 3 {
		t.Errorf("seen only %v", seen)
	}
	noted := false
	for _, n := range r.Notes {
		noted = noted || strings.Contains(n, "strength beside a weld")
	}
	if !noted {
		t.Errorf("notes do not say what strength was taken: %q", r.Notes)
	}
}

// TestPinJointOfAluminium: a pin-plate standard for steel joined to allowable stress does not speak for an aluminium ear either.
func TestPinJointOfAluminium(t *testing.T) {
	b := clevisOf(t, part.LeftHand, with(bare, word("ear_material", "5083-H116")))
	on, _ := basis.Find("Allowable stress")
	pin, _ := basis.Find("ASME BTH-1")
	mixed, err := on.WithPinJoint(pin, strength.Allowable)
	if err != nil {
		t.Fatal(err)
	}
	r, err := strength.Run(mixed, b, []part.Case{service("up", part.Vec{Z: 4000})}, strength.Options{})
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, c := range r.Checks {
		if strings.HasPrefix(c.Place, "ear") && strings.Contains(c.Place, "pin hole") {
			found = true
			if c.Verdict != strength.Outside && c.Verdict != strength.NotApplied {
				t.Errorf("%s: %s", c.Limit, c.Verdict)
			}
		}
	}
	if !found {
		t.Error("no pin hole was checked")
	}
}

// TestMixedMetals: steel gussets on an aluminium ear make a section of two stiffnesses, which no rule here speaks for.
func TestMixedMetals(t *testing.T) {
	b := clevisOf(t, part.LeftHand, with(bare, word("gussets", "outer"), word("ear_material", "6061-T6"), word("gusset_material", "A36")))
	on, _ := basis.Find("Allowable stress")
	r, err := strength.Run(on, b, []part.Case{service("up", part.Vec{Y: 300, Z: 4000})}, strength.Options{})
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, c := range r.Checks {
		if c.Limit == "weak-axis-bending" && strings.HasPrefix(c.Thing, "ear") {
			found = true
			if c.Verdict != strength.Outside || !strings.Contains(c.Why, "stiffness") {
				t.Errorf("%s: %s %s", c.Place, c.Verdict, c.Why)
			}
		}
	}
	if !found {
		t.Error("no ear was checked")
	}
}

// Rods of aluminium are outside the rules for steel rods.
func TestAluminiumRods(t *testing.T) {
	b := hung("M12", 12, 0)
	b.Rods[0].Grade = "6061-T6"
	for _, on := range []*strength.Basis{aisc360.Basis(), en1993.Basis(), allowable.Basis()} {
		r, err := strength.Run(on, b, []part.Case{service("down", part.Vec{Z: -1000})}, strength.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if k := find(t, r, "rod-tension", "rods"); k.Verdict != strength.Outside && !on.Covers(material.Aluminium) {
			t.Errorf("%s: %s", on.Card.Name, k.Verdict)
		}
	}
}

// A groove weld of partial penetration, drawn at the faces of its plate, bends on the lever between the middles of its throats: an ear of 8 x 100 on throats of 3
// at 90 mm has 4000 x 90/(100 x (8 - 3)) and half of the shear, against 0.60 F_u E/2.00 (AISC 360-22 Table J2.5: A572-50, 65 ksi, is the weaker). On EN 1993-1-8 it
// is a fillet of that throat (4.7.2(1), from memory).
func TestPartialPenetrationInABracket(t *testing.T) {
	b := clevisOf(t, part.LeftHand, bare)
	b.Pins[0].TravelMM = 0
	for i := range b.Welds {
		b.Welds[i].Kind, b.Welds[i].LegMM = part.PJP, 3
	}
	side := service("side", part.Vec{Y: 4000})
	k := find(t, run(t, b, strength.Options{Method: strength.ASD}, side), "pjp-line", "w-ear-1")
	within(t, "force", k.Demand, math.Hypot(360000/500., 4000/200.), 1e-3)
	within(t, "capacity", k.Capacity, 0.6*65*6.894757*3/2, 1e-6)
	r, err := strength.Run(en1993.Basis(), b, []part.Case{side}, strength.Options{})
	if err != nil {
		t.Fatal(err)
	}
	k = find(t, r, "fillet-strength", "w-ear-1")
	b.Welds[0].Kind, b.Welds[1].Kind = part.Fillet, part.Fillet
	b.Welds[0].LegMM, b.Welds[1].LegMM = 3*math.Sqrt2, 3*math.Sqrt2
	if r, err = strength.Run(en1993.Basis(), b, []part.Case{side}, strength.Options{}); err != nil {
		t.Fatal(err)
	}
	within(t, "as a fillet", k.Capacity, find(t, r, "fillet-strength", "w-ear-1").Capacity, 1e-9)
}

// A stand-off's tube of 100 x 100 on groove welds with throats of 8 all round: their middles run on a square of 92, whose lines have 4/3 x 92^2 mm2 about an axis along a
// side; on a round tube of 100 on a circle of 92, pi 46^2. 2 kN m at the tube's end.
func TestPartialPenetrationRoundAMember(t *testing.T) {
	ring := func(n int, turn, r float64) (runs []part.WeldSegment) {
		at := func(k int) part.Vec {
			s, c := math.Sincos(2*math.Pi*float64(k)/float64(n) + turn)
			return part.Vec{X: r * c, Y: 10, Z: r * s}
		}
		for k := range n {
			runs = append(runs, part.WeldSegment{A: at(k), B: at(k + 1)})
		}
		return runs
	}
	for kind, c := range map[part.ProfileKind]struct {
		runs    []part.WeldSegment
		modulus float64
	}{
		part.RectTube:  {ring(4, math.Pi/4, 50*math.Sqrt2), 4. / 3 * 92 * 92},
		part.RoundTube: {ring(128, 0, 50), math.Pi * 46 * 46},
	} {
		b := bracketOf(t, "standoff", mm("load_height", 0))
		b.Member("tube").Profile.Kind = kind
		b.Welds[0].Kind, b.Welds[0].LegMM, b.Welds[0].Segments = part.PJP, 8, c.runs
		r := run(t, b, strength.Options{Method: strength.ASD}, part.Case{Name: "couple", Level: part.Service, Moment: part.Vec{X: 2e6}})
		within(t, string(kind), find(t, r, "pjp-line", "w-tube").Demand, 2e6/c.modulus, 2e-3)
	}
}

// On a leg of an angle a groove weld goes to the leg's middle, on a folded side to that side's; an angle as a whole has none, and the weld is outside the rule.
func TestPartialPenetrationOnALeg(t *testing.T) {
	for standing, want := range map[string]strength.Verdict{"base.a": strength.Pass, "base": strength.Outside} {
		b := clevisOf(t, part.LeftHand, bare)
		leg, _ := b.Member("base").Legs()
		at := func(x, out float64) part.Vec { return leg.Pose.At(x, 10, out*leg.ThicknessMM/2) }
		b.Supports = append(b.Supports, part.Support{ID: "wall", Kind: part.BodyFrame, ThicknessMM: 10, Material: "S355"})
		b.Welds = append(b.Welds, part.WeldGroup{
			ID: "w-leg", Joins: [2]string{standing, "wall"}, Kind: part.PJP, LegMM: 3, Electrode: "E70", BothSides: true,
			Segments: []part.WeldSegment{{A: at(10, -1), B: at(90, -1)}, {A: at(10, 1), B: at(90, 1)}},
		})
		for i := range b.Paths {
			for k := range b.Paths[i].Branches {
				b.Paths[i].Branches[k].Through = append(b.Paths[i].Branches[k].Through, "w-leg", "wall")
			}
		}
		k := find(t, run(t, b, strength.Options{Method: strength.ASD}, service("up", part.Vec{Z: 100})), "pjp-line", "w-leg")
		if k.Verdict != want {
			t.Errorf("%s: %s (%s)", standing, k.Verdict, k.Why)
		}
	}
}

// Both legs of an aluminium angle are soft where either is welded: the bolted leg has no more strength than the leg that the ears stand on.
func TestBothLegsOfAWeldedAngleAreSoft(t *testing.T) {
	b := clevisOf(t, part.LeftHand, with(bare, word("foot_material", "6061-T6"), mm("stiffener_count", 0)))
	r, err := strength.Run(allowable.Basis(), b, []part.Case{service("down", part.Vec{Z: -2000})}, strength.Options{})
	if err != nil {
		t.Fatal(err)
	}
	a, d := find(t, r, "weak-axis-bending", "base.a"), find(t, r, "weak-axis-bending", "base.b")
	if a.Capacity != d.Capacity {
		t.Errorf("%g MPa beside %g MPa", d.Capacity, a.Capacity)
	}
}
