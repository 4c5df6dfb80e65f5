package strength_test

// Fatigue away from welds and holes, by hand; and a basis without rules for it.

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/aisc360"
	"lugwright/strength/basis/en1993"
)

// fatigueOf is the damage at a place whose name ends in a detail.
func fatigueOf(t *testing.T, r *strength.Report, thing string, detail strength.FatigueDetail) strength.Check {
	t.Helper()
	for _, c := range r.Checks {
		if c.Limit == "fatigue-damage" && c.Thing == thing && strings.HasSuffix(c.Place, string(detail)) {
			return c
		}
	}
	t.Fatalf("no fatigue of %s, %s", thing, detail)
	return strength.Check{}
}

// An ear of 8 x 100, its pin 90 mm up, 4 kN on it sideways and nothing in turn: 360000/1066.7 = 337.5 MPa at its root, category A of AISC 360-22 Table,
// row 1.1 (from memory): n f^3/250e8 in ksi. With half rounds of 12 mm cut into both sides at 40 mm its outline turns inwards there: category E', 3.9e8, row
// 1.3 (from memory). The cuts 50.625 and 56.25 mm under the pin have 100 - 2 sqrt(144 - 0.625^2) = 76.03 and 79.51 mm left; the second bends more: 225000 N mm
// on 848.1 mm^3. Half rounds of 6 mm are sharper than any category.
func TestFatigueOfCutEdges(t *testing.T) {
	there, back := service("there", part.Vec{Y: 4000}), service("back", part.Vec{Y: -4000})
	o := strength.Options{Spectrum: []strength.StressCycle{{From: "there", To: "back", Cycles: 1e6}}}
	run := func(notch float64) *strength.Report {
		b := clevisOf(t, part.LeftHand, bare)
		for i := range b.Plates {
			if p := &b.Plates[i]; notch > 0 && p.ID == "ear-1" {
				p.Outer = notched(t, notch)
			}
		}
		r, err := strength.Run(aisc360.Basis(), b, []part.Case{there, back}, o)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	plain := run(0)
	within(t, "cut edge", fatigueOf(t, plain, "ear-1", strength.CutEdge).Demand, 1e6*math.Pow(337.5/6.894757, 3)/250e8, 1e-3)
	if notChecked(plain, "fatigue of the pin", "") != 1 || notChecked(plain, "fatigue at thermally cut holes", "") != 1 {
		t.Error("the pin and cut holes are not named")
	}
	within(t, "inward corner", fatigueOf(t, run(12), "ear-1", strength.InwardCorner).Demand, 1e6*math.Pow(225000/848.13/6.894757, 3)/3.9e8, 1e-3)
	if notChecked(run(6), "where an outline turns inwards", "under 10 mm") != 1 {
		t.Error("a sharp notch is not named")
	}
}

// notched is the ear with half rounds cut into its sides at 40 mm.
func notched(t *testing.T, r float64) shape.Loop {
	t.Helper()
	l := shape.Loop{
		{Point: shape.Point{X: -50}}, {Point: shape.Point{X: 50}}, {Point: shape.Point{X: 50, Y: 40 - r}, Bulge: -1}, {Point: shape.Point{X: 50, Y: 40 + r}},
		{Point: shape.Point{X: 50, Y: 146}}, {Point: shape.Point{X: -50, Y: 146}}, {Point: shape.Point{X: -50, Y: 40 + r}, Bulge: -1}, {Point: shape.Point{X: -50, Y: 40 - r}},
	}
	if bad := (shape.Outline{Outer: l}).Validate(); bad != nil {
		t.Fatal(bad)
	}
	return l
}

// A base plate is bent the same way whichever bolts pull: those above under a load down, those below under one up. From one to the other it passes rest, so
// that the change is no less than from rest to either (elementary statics), for the plate between the bolts and for the bolts.
func TestFatigueThroughRest(t *testing.T) {
	const F = 60000.0
	down, rest, up := service("down", part.Vec{Z: -F}), service("rest", part.Vec{}), service("up", part.Vec{Z: F})
	of := func(from string) *strength.Report {
		r, err := strength.Run(aisc360.Basis(), pairOf(t, 0), []part.Case{down, rest, up},
			strength.Options{Spectrum: []strength.StressCycle{{From: from, To: "up", Cycles: 1e6}}})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	half, whole := of("rest"), of("down")
	for _, c := range half.Checks {
		if c.Limit != "fatigue-damage" && c.Limit != "fatigue-root" {
			continue
		}
		if got := place(t, whole, c.Limit, c.Place).Demand; got < c.Demand*(1-1e-9) {
			t.Errorf("%s: %.4g from down to up, %.4g from rest", c.Place, got, c.Demand)
		}
	}
	if k := place(t, whole, "fatigue-damage", "base, between (base plate between the plates), cut edge"); k.Verdict != strength.Fail {
		t.Errorf("base plate: %s", k.Verdict)
	}
}

// A basis without any rule for fatigue says so once.
func TestFatigueWithoutRules(t *testing.T) {
	there, back := service("there", part.Vec{Y: 4000}), service("back", part.Vec{Y: -4000})
	r, err := strength.Run(en1993.Basis(), clevisOf(t, part.LeftHand, bare), []part.Case{there, back},
		strength.Options{Spectrum: []strength.StressCycle{{From: "there", To: "back", Cycles: 1e6}}})
	if err != nil {
		t.Fatal(err)
	}
	if n := notChecked(r, "fatigue", ""); n != 1 || notChecked(r, "fatigue", "no rule for it") != 1 {
		t.Errorf("%d lines of fatigue", n)
	}
}
