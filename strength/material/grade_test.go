package material

import (
	"errors"
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, abs float64) {
	t.Helper()
	if !(math.Abs(got-want) <= abs) {
		t.Errorf("%s: got %g, want %g within %g", what, got, want, abs)
	}
}

func grade(t *testing.T, name string) *Grade {
	t.Helper()
	g, err := LookupGrade(name)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func TestSteelByThickness(t *testing.T) {
	thickness := []float64{10, 25, 50, 70, 90}
	for _, c := range []struct {
		source, name string
		reh          []float64
		fu, fuUnder3 float64
	}{
		{"EN 10025-2 Table 7, S235", "S235", []float64{235, 225, 215, 215, 215}, 360, 360},
		{"EN 10025-2 Table 7, S355", "S355", []float64{355, 345, 335, 325, 315}, 470, 510},
	} {
		g := grade(t, c.name)
		for i, th := range thickness {
			fy, fu, err := g.Strength(th)
			if err != nil || fy != c.reh[i] || fu != c.fu {
				t.Errorf("%s at %g mm: got %g/%g, %v, want %g/%g (%s)", c.name, th, fy, fu, err, c.reh[i], c.fu, c.source)
			}
		}
		if _, fu, _ := g.Strength(2.5); fu != c.fuUnder3 {
			t.Errorf("%s under 3 mm: got f_u %g, want %g (%s)", c.name, fu, c.fuUnder3, c.source)
		}
		if _, fu, _ := g.Strength(3); fu != c.fu {
			t.Errorf("%s at 3 mm: got f_u %g, want %g (%s)", c.name, fu, c.fu, c.source)
		}
	}
}

func TestGradesInKsi(t *testing.T) {
	for _, c := range []struct {
		source, name string
		inches       float64
		fy, fu       float64
	}{
		{"ASTM structural steel table (civil engineering materials text, Table 3.2)", "A36", 0.5, 36, 58},
		{"ASTM structural steel table (civil engineering materials text, Table 3.2)", "A500B", 0.25, 42, 58},
		{"ASTM structural steel table (civil engineering materials text, Table 3.2)", "A500C", 0.25, 46, 62},
		{"ASTM A516 grade 70 (70-90 ksi tensile, 38 ksi yield; 485-620/260 MPa)", "A516-70", 0.5, 38, 70},
		{"ASTM A514 t>2.5in, from memory", "A514", 3, 90, 100},
		{"ASTM A240-316, from memory", "A240-316", 0.25, 30, 75},
		{"ASTM A240-316L, from memory", "A240-316L", 0.25, 25, 70},
		{"49 CFR 178.46 Table 2 (minimum ultimate and yield)", "6061-T6", 0.25, 35, 38},
		{"Aluminum design manual (2010/2015) Tables A.3.4 and A.3.5, from memory", "5083-H116", 0.25, 31, 44},
	} {
		fy, fu, err := grade(t, c.name).Strength(c.inches * inch)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		near(t, c.name+" F_y, "+c.source, fy/ksi, c.fy, 0.01)
		near(t, c.name+" F_u, "+c.source, fu/ksi, c.fu, 0.01)
	}
}

func TestWelded(t *testing.T) {
	for _, c := range []struct {
		source, name string
		fy, fu, abs  float64
		unit         float64
	}{
		{"Aluminum design manual (2010/2015) Tables A.3.4 and A.3.5, from memory", "6061-T6", 15, 24, 0.01, ksi},
		{"Aluminum design manual (2010/2015) Tables A.3.4 and A.3.5, from memory", "5083-H116", 18, 40, 0.01, ksi},
		{"EN 1999-1-1 Table 3.2b, 6061-T6 extrusion t<=20", "EN AW-6061-T6", 115, 175, 0, 1},
	} {
		fy, fu, err := grade(t, c.name).WeldedStrength(5)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		near(t, c.name+" welded yield, "+c.source, fy/c.unit, c.fy, c.abs)
		near(t, c.name+" welded tensile, "+c.source, fu/c.unit, c.fu, c.abs)
	}
	// The printed factors rho = f_haz/f of EN 1999-1-1 Table 3.2b.
	for _, c := range []struct {
		name       string
		fo, fu     float64
		rhoo, rhou float64
	}{{"EN AW-6061-T6", 240, 260, 0.48, 0.67}, {"EN AW-6005A-T6", 225, 270, 0.51, 0.61}, {"EN AW-6060-T6", 140, 170, 0.43, 0.59}} {
		g := grade(t, c.name)
		fo, fu, _ := g.Strength(5)
		wo, wu, _ := g.WeldedStrength(5)
		if fo != c.fo || fu != c.fu {
			t.Errorf("%s: got %g/%g, want %g/%g", c.name, fo, fu, c.fo, c.fu)
		}
		near(t, c.name+" rho_o", wo/fo, c.rhoo, 0.0051)
		near(t, c.name+" rho_u", wu/fu, c.rhou, 0.0051)
	}
	if fy, _, err := grade(t, "S355").WeldedStrength(10); err != nil || fy != 355 {
		t.Errorf("steel keeps its strength beside a weld: %g, %v", fy, err)
	}
}

// Source: handbook densities (7850 and 2700 standard in EN 1991/1993/1999; others from memory).
func TestDensity(t *testing.T) {
	for name, want := range map[string]float64{"A36": 7850, "S355": 7850, "304": 8000, "316": 8000, "6061-T6": 2700, "5052-H32": 2680, "5083-H116": 2660} {
		near(t, name, grade(t, name).Density, want, 1)
	}
	near(t, "kg/mm3", grade(t, "S235").KgPerMM3(), 7.85e-6, 1e-15)
}

// Bands touch, rise, and say something at every thickness; names and aliases are single.
func TestTablesAreSound(t *testing.T) {
	seen := map[string]bool{}
	unique := func(kind string, names ...string) {
		for _, n := range names {
			if seen[kind+n] {
				t.Errorf("%s %q stands twice", kind, n)
			}
			seen[kind+n] = true
		}
	}
	for i := range grades {
		g := &grades[i]
		unique("grade", append(g.Aliases, g.Name)...)
		if g.Source == "" || !(g.EMPa > 6e4) || !(g.Density > 2e3) || len(g.Bands) == 0 || (g.Welded != nil) != (g.WeldedFrom != "") {
			t.Errorf("%s is incomplete", g.Name)
		}
		for k, b := range g.Bands {
			if !(b.ToMM > b.OverMM) || !(b.FuMPa > b.FyMPa) || k > 0 && b.OverMM != g.Bands[k-1].ToMM {
				t.Errorf("%s band %d: %+v", g.Name, k, b)
			}
		}
	}
	for _, g := range boltGrades {
		unique("bolt", append(g.Aliases, g.Name)...)
		for k, b := range g.Bands {
			if !(b.ToMM > b.OverMM) || !(b.TensileMPa > b.YieldMPa) || !(b.YieldMPa > b.ProofMPa) || k > 0 && b.OverMM != g.Bands[k-1].ToMM {
				t.Errorf("%s band %d: %+v", g.Name, k, b)
			}
		}
	}
	for _, e := range electrodes {
		unique("electrode", append(e.Aliases, e.Name)...)
		if e.Source == "" || !(e.FexxMPa > e.YieldMPa) {
			t.Errorf("%s is incomplete", e.Name)
		}
	}
}

func TestUnknownAndOutside(t *testing.T) {
	var unknown *UnknownError
	if _, err := LookupGrade("s355"); !errors.As(err, &unknown) || unknown.Nearest != "S355" {
		t.Errorf("got %v, want S355 offered", err)
	}
	if _, err := LookupBoltGrade("8,8"); !errors.As(err, &unknown) || unknown.Nearest != "8.8" {
		t.Errorf("got %v, want 8.8 offered", err)
	}
	if _, err := LookupElectrode("E71"); !errors.As(err, &unknown) || unknown.Nearest != "E70" {
		t.Errorf("got %v, want E70 offered", err)
	}
	var outside *RangeError
	for _, th := range []float64{0, -1, 101, math.NaN(), math.Inf(1)} {
		if _, _, err := grade(t, "S355").Strength(th); !errors.As(err, &outside) {
			t.Errorf("%g mm: got %v, want a RangeError", th, err)
		}
	}
}

func TestListed(t *testing.T) {
	if !grade(t, "A36").Listed("AISC 360-22 A3.1a") || grade(t, "S355").Listed("AISC 360-22 A3.1a") {
		t.Error("A36 is in the AISC list, S355 is not")
	}
	b, _ := LookupBoltGrade("12.9")
	if b.Listed("EN 1993-1-8 Table 3.1") {
		t.Error("12.9 is not in EN 1993-1-8 Table 3.1")
	}
}

// E70 is 70 ksi by its name (AWS classification).
func TestElectrode(t *testing.T) {
	e, err := LookupElectrode("E70XX")
	if err != nil {
		t.Fatal(err)
	}
	near(t, "F_EXX", e.FexxMPa, 482.6, 0.05)
}
