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

// One bolt M24 through a single lap of 5 mm flats of S355: with one row 3.6.1(10) holds bearing to 1.5 d t f_u/gamma_M2 = 67.7 kN.
func TestSingleLapWithOneRow(t *testing.T) {
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "lap-plate", Name: "lap", Hand: part.LeftHand, Params: []part.Param{
		{Name: "fixing", Text: "bolted"}, {Name: "ends", Text: "rectangular"}, {Name: "faces", Text: "one"}, {Name: "lap_width", Number: 160}, {Name: "member_width", Number: 160},
		{Name: "lap_thickness", Number: 30}, {Name: "member_thickness", Number: 5}, {Name: "overlap", Number: 170}, {Name: "bolt_first", Number: 85}, {Name: "bolt_rows", Number: 1},
		{Name: "bolts_per_row", Number: 1}, {Name: "bolt_size", Text: "M24"}, {Name: "bolt_grade", Text: "8.8"},
		{Name: "lap_material", Text: "S355"}, {Name: "member_material", Text: "S355"},
	}})
	if err != nil {
		t.Fatal(err)
	}
	r, err := strength.Run(en1993.Basis(), b, []part.Case{{Name: "pull", Level: part.Service, Source: "builder's choice", Force: part.Vec{X: -54000}}}, strength.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range r.Checks {
		if c.Limit == "bolt-bearing" && c.Thing != "lap-1" {
			if c.Verdict != strength.Fail || math.Abs(c.Capacity/67680-1) > 1e-3 {
				t.Errorf("%s: %s, capacity %.0f N", c.Place, c.Verdict, c.Capacity)
			}
			return
		}
	}
	t.Error("no bearing of the flat")
}

// Plate and weld go one way at the root. An ear of 10 x 120 under 12 kN at 120 cannot carry 1.5 x 12 x 120 = 2.16 kN m alone (f_y W_pl =
// 1.07 kN m), and its gussets' feet have not the runs for the rest: the weld may not take one way and the plate the other.
func TestOneWayAtTheRoot(t *testing.T) {
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "clevis", Name: "c", Hand: part.LeftHand, Params: []part.Param{
		{Name: "foot", Text: "base plate"}, {Name: "plate_length", Number: 300}, {Name: "plate_width", Number: 300}, {Name: "plate_thickness", Number: 25}, {Name: "bolt_gauge", Number: 240},
		{Name: "bolt_pitch", Number: 240}, {Name: "bolts_per_row", Number: 2}, {Name: "web_clear_height", Number: 400}, {Name: "bolt_size", Text: "M20"},
		{Name: "couple", Text: "cross member at this station"}, {Name: "support_thickness", Number: 12}, {Name: "foot_material", Text: "S355"},
		{Name: "ear_thickness", Number: 10}, {Name: "ear_width", Number: 120}, {Name: "ear_weld", Number: 12}, {Name: "pin_height", Number: 120}, {Name: "end_distance", Number: 60},
		{Name: "ear_material", Text: "S355"}, {Name: "gusset_material", Text: "S355"}, {Name: "gussets", Text: "outer"}, {Name: "outer_gusset_count", Number: 2},
		{Name: "outer_gusset_thickness", Number: 12}, {Name: "outer_gusset_height", Number: 90}, {Name: "outer_gusset_length", Number: 43}, {Name: "outer_gusset_nose", Number: 16},
		{Name: "outer_gusset_spacing", Number: 70}, {Name: "gusset_weld", Number: 8}, {Name: "snipe_clearance", Number: 2}, {Name: "electrode", Text: "EN 42"},
		{Name: "lug_thickness", Number: 30}, {Name: "gap", Number: 4},
	}})
	if err != nil {
		t.Fatal(err)
	}
	r, err := strength.Run(en1993.Basis(), b, []part.Case{{Name: "side", Level: part.Service, Source: "builder's choice", Force: part.Vec{Y: 12000}}}, strength.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if r.Verdict() != strength.Fail {
		t.Errorf("%s, governed by %+v", r.Verdict(), r.Governing())
	}
}
