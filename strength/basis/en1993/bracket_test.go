package en1993_test

// The basis on whole brackets: which limit states serve the features of each kind, and weld runs too short to carry load.

import (
	"math"
	"slices"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/en1993"
)

// check loads a bracket in every direction that it has a path for.
func check(t *testing.T, b *part.Bracket, trace bool) *strength.Report {
	t.Helper()
	c := part.Case{Name: "pull", Level: part.Service, Source: "builder's choice"}
	for _, p := range b.Paths {
		switch p.Component {
		case part.FxMinus:
			c.Force.X = -4000
		case part.FyPlus:
			c.Force.Y = 2000
		case part.FzMinus:
			c.Force.Z = -6000
		}
	}
	r, err := strength.Run(en1993.Basis(), b, []part.Case{c}, strength.Options{Method: strength.PartialFactors, Trace: trace})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func build(t *testing.T, kind string, params ...part.Param) *part.Bracket {
	t.Helper()
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: kind, Name: "b", Hand: part.LeftHand, Params: params})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestKinds: every limit state that the kinds' features want is there, and each given within a bracket lies in its range.
func TestKinds(t *testing.T) {
	seen := map[string]bool{}
	for _, kind := range []string{"clevis", "gusset", "lap-plate"} {
		for _, k := range check(t, build(t, kind), true).Checks {
			seen[k.Limit] = true
			if k.Verdict != strength.NotApplied && !(k.Utilisation >= 0 && !math.IsInf(k.Utilisation, 0)) {
				t.Errorf("%s: %s at %s: %s at %g", kind, k.Limit, k.Place, k.Verdict, k.Utilisation)
			}
			inRange(t, kind, k)
		}
	}
	for _, id := range []string{
		"pin-shear", "pin-bending", "pin-bending-service", "pin-combined", "pin-bearing", "pin-bearing-service", "pin-contact",
		"pin-plate-end-distance", "pin-plate-side-distance", "bolt-shear", "bolt-tension", "bolt-combined", "bolt-bearing", "bolt-punching",
		"bolt-spacing", "bolt-prying", "block-shear", "fillet-strength", "fillet-minimum-leg", "fillet-minimum-length", "fillet-filler",
		"fillet-shear-flow", "weak-axis-bending", "edgewise-bending", "axial-force", "section-shear", "section-interaction", "free-edge", "bracket-plate",
	} {
		if !seen[id] {
			t.Errorf("%s is met on none of the kinds", id)
		}
	}
}

func inRange(t *testing.T, kind string, k strength.Check) {
	t.Helper()
	for _, g := range en1993.Basis().Limit(k.Limit).Info().Givens {
		i := slices.IndexFunc(k.Lines, func(l strength.Line) bool { return l.Kind == strength.GivenLine && l.Symbol == g.Symbol })
		if i >= 0 && k.Verdict != strength.NotApplied && !(k.Lines[i].Value >= g.Min && k.Lines[i].Value <= g.Max) {
			t.Errorf("%s: %s at %s: %s = %g, range %g to %g", kind, k.Limit, k.Place, g.Symbol, k.Lines[i].Value, g.Min, g.Max)
		}
	}
}

// TestShortRuns: a weld with no run of max(30 mm, 6 a) fails where nothing beside it carries its load. Source: EN 1993-1-8, 4.5.1(2).
func TestShortRuns(t *testing.T) {
	b := build(t, "clevis", part.Param{Name: "gussets", Text: "none"})
	if k := lengthOf(t, check(t, b, false), b.Welds[0].ID); k.Verdict != strength.Pass {
		t.Errorf("a whole weld: %s", k.Verdict)
	}
	for i, s := range b.Welds[0].Segments {
		b.Welds[0].Segments[i].B = s.A.AddScaled(25/s.B.Sub(s.A).Norm(), s.B.Sub(s.A))
	}
	r := check(t, b, false)
	if k := lengthOf(t, r, b.Welds[0].ID); k.Verdict != strength.Fail || k.Capacity != 25 {
		t.Errorf("runs of 25 mm: %s, %g mm", k.Verdict, k.Capacity)
	}
	if slices.ContainsFunc(r.Checks, func(k strength.Check) bool { return k.Limit == "fillet-strength" && k.Thing == b.Welds[0].ID }) {
		t.Error("runs of 25 mm carry load")
	}
}

func lengthOf(t *testing.T, r *strength.Report, weld string) strength.Check {
	t.Helper()
	for _, k := range r.Checks {
		if k.Limit == "fillet-minimum-length" && k.Thing == weld {
			return k
		}
	}
	t.Fatalf("no check of the length of %s", weld)
	return strength.Check{}
}
