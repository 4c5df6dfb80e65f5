package handbook

import (
	"math"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/strength"
)

type groupGivens struct {
	V    float64   `sym:"V" unit:"N" min:"0" max:"1e9" is:"shear of the group"`
	X    []float64 `sym:"x" unit:"mm" min:"-2000" max:"2000" is:"positions of the bolts"`
	Hole float64   `sym:"hole" choices:"standard|oversize" is:"kind of hole"`
	R    float64   `sym:"R_1" unit:"N" min:"1" max:"1e9" default:"1000" is:"strength of one bolt"`
}

// bench is a basis with one limit state that has every kind of given: n bolts, each with R_1/gamma, 0.85 of it in oversize holes.
func bench() Bench {
	group := strength.Define(strength.Identity{
		ID: "group", Title: "group", Clause: strength.Clause{Words: "made up"}, Demand: "V", Capacity: "R", Unit: "N",
	}, func(c *strength.Calc, g groupGivens) {
		n := c.Solved("n", "bolts, counted", "", float64(len(g.X)))
		k := c.Let("k", "when(hole <= 0, 1, 0.85)", "", 1-0.15*g.Hole)
		c.Compare(g.V, c.Let("R", "k*n*R_1/gamma_M2", "N", k*n*g.R/c.Factor("gamma_M2")))
	})
	return BenchOf(&strength.Basis{
		Card: strength.Card{
			Name: "made up", Methods: []strength.Method{strength.PartialFactors},
			Factors: []strength.Factor{{Symbol: "gamma_M2", Words: "partial factor", Default: 1.25, Min: 1, Max: 1.5, Sets: []strength.FactorSet{{Name: "UK", Value: 1.1}}}},
		},
		Limits: []strength.Evaluator{group},
	})
}

func example(run Run) *Example {
	run.Limit, run.Method = "group", strength.PartialFactors
	return &Example{Source: "nowhere", Provenance: ByHand, Basis: "made up", Givens: map[string]Values{"x": {"0 in", "3 in"}, "hole": {"standard"}}, Runs: []Run{run}}
}

func TestKindsOfGivens(t *testing.T) {
	for name, c := range map[string]struct {
		run  Run
		want string // the result R as printed
	}{
		"a list, and a default":     {Run{}, "1.600 kN"},
		"a list in one text":        {Run{Givens: map[string]Values{"x": {"0 in, 3 in, 6 in"}}}, "2.400 kN"},
		"a choice":                  {Run{Givens: map[string]Values{"hole": {"oversize"}}}, "1.360 kN"},
		"a factor":                  {Run{Factors: map[string]string{"gamma_M2": "1.0"}}, "2.000 kN"},
		"a factor set":              {Run{FactorSet: "UK"}, "1.818 kN"},
		"a factor over the set":     {Run{FactorSet: "UK", Factors: map[string]string{"gamma_M2": "1.25"}}, "1.600 kN"},
		"a force in another system": {Run{Givens: map[string]Values{"R_1": {"1 kip"}}}, "1.600 kip"},
	} {
		t.Run(name, func(t *testing.T) {
			c.run.Expect = map[string]string{"R": c.want, Capacity: c.want, Demand: "0 N", Utilisation: "0.00", Verdict: "pass"}
			rows, err := example(c.run).Check(bench())
			if err != nil || len(rows) != 5 {
				t.Fatalf("%d rows, %v", len(rows), err)
			}
			for _, r := range rows {
				if !r.Agrees() {
					t.Errorf("%+v", r)
				}
			}
		})
	}
}

func TestRefusals(t *testing.T) {
	for want, run := range map[string]Run{
		`runs[0].givens.hole: "loose"; one of: standard, oversize (kind of hole)`: {Givens: map[string]Values{"hole": {"loose"}}},
		`runs[0].givens.x: 3 has no unit; write a length`:                         {Givens: map[string]Values{"x": {"0 in, 3"}}},
		`runs[0].givens.x: 10000 mm; `:                                            {Givens: map[string]Values{"x": {"10 m"}}},
		`runs[0].givens.V: a list; one value (shear of the group)`:                {Givens: map[string]Values{"V": {"1 N", "2 N"}}},
		`runs[0].factors.gamma_M2: 9; 1 to 1.5 (partial factor)`:                  {Factors: map[string]string{"gamma_M2": "9"}},
		`runs[0].factors.gamma_M9: made up has no such factor; one of: gamma_M2`:  {Factors: map[string]string{"gamma_M9": "1"}},
		`runs[0].factor_set: made up has no set "Mars"; one of: UK`:               {FactorSet: "Mars"},
	} {
		run.Expect = map[string]string{"R": "1 N"}
		if rows, err := example(run).Check(bench()); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("got %v %v\nwant %s", rows, err, want)
		}
	}
	two := example(Run{Givens: map[string]Values{"B": {"1 mm"}, "A": {"1 mm"}}, Expect: map[string]string{"R": "1 N"}})
	two.Runs = append(two.Runs, two.Runs[0])
	two.Runs[1].Givens = map[string]Values{"hole": {"loose"}}
	if _, err := two.Check(bench()); len(part.Fields(err)) != 3 {
		t.Errorf("three slips in two runs: %v", err)
	}
	if _, err := example(Run{Expect: map[string]string{"x": "3 in"}}).Check(bench()); err == nil || !strings.Contains(err.Error(), "expect.x: a list") {
		t.Errorf("a list expected: %v", err)
	}
}

// Verdicts are words: the printed one must be ours.
func TestVerdictDisagrees(t *testing.T) {
	rows, err := example(Run{Givens: map[string]Values{"V": {"2 kN"}}, Expect: map[string]string{Verdict: "pass"}}).Check(bench())
	if err != nil || len(rows) != 1 || rows[0].Agrees() || rows[0].OurText != "fail" {
		t.Errorf("%+v, %v", rows, err)
	}
}

// Inch, pound and gravity are exact by definition (NIST SP 811, appendix B).
func TestQuantity(t *testing.T) {
	const inch, kip = 25.4, 4448.2216152605
	for _, c := range []struct {
		text, unit string
		want, half float64
	}{
		{"0.75 in", "mm", 0.75 * inch, 0.005 * inch},
		{"1 3/8 in", "mm", 1.375 * inch, exact},
		{"3/16 in", "mm", 0.1875 * inch, exact},
		{"1-3/8 in", "mm", 1.375 * inch, exact},
		{"938 kip in", "N*mm", 938 * kip * inch, 0.5 * kip * inch},
		{"938 kip-in", "N*mm", 938 * kip * inch, 0.5 * kip * inch},
		{"-1.50 kip/in", "N/mm", -1.5 * kip / inch, 0.005 * kip / inch},
		{"23.6 in3", "mm^3", 23.6 * inch * inch * inch, 0.05 * inch * inch * inch},
		{"0.0982 in^4", "mm^4", 0.0982 * math.Pow(inch, 4), 0.00005 * math.Pow(inch, 4)},
		{"12.5 in6", "mm^6", 12.5 * math.Pow(inch, 6), 0.05 * math.Pow(inch, 6)},
		{"0.25 1/in", "1/mm", 0.25 / inch, 0.005 / inch},
		{"4.5 kip-in/in", "N", 4.5 * kip, 0.05 * kip},
		{"105 k", "N", 105 * kip, 0.5 * kip},
		{"46.8 k-ft", "N*mm", 46.8 * kip * 12 * inch, 0.05 * kip * 12 * inch},
		{"46.8 ft-k", "N*mm", 46.8 * kip * 12 * inch, 0.05 * kip * 12 * inch},
		{"1.5 k/in.", "N/mm", 1.5 * kip / inch, 0.05 * kip / inch},
		{"4.5 k-in/in", "N", 4.5 * kip, 0.05 * kip},
		{"1.25 MN", "N", 1.25e6, 5e3},
		{"0.500 MN m", "N*mm", 5e8, 5e5},
		{"12000 lb", "N", 12 * kip, 0.5e-3 * kip},
		{"500 lbs", "N", 0.5 * kip, 0.5e-3 * kip},
		{"50 lb-ft", "N*mm", 0.05 * kip * 12 * inch, 0.5e-3 * kip * 12 * inch},
		{"3000 in-lb", "N*mm", 3 * kip * inch, 0.5e-3 * kip * inch},
		{"957 lb/in.", "N/mm", 0.957 * kip / inch, 0.5e-3 * kip / inch},
		{"957 lb/in.2", "MPa", 0.957 * kip / (inch * inch), 0.5e-3 * kip / (inch * inch)},
		{"100 kgf", "N", 980.665, 0.5 * 9.80665},
		{"30 deg", "rad", math.Pi / 6, 0.5 * math.Pi / 180},
		{"85 %", "", 0.85, 0.005},
		{"1.2e6", "", 1.2e6, 5e4},
		{"250", "", 250, 0.5},
		{"0.90", "1", 0.9, 0.005},
	} {
		got, err := quantity(c.text, c.unit)
		half, errHalf := halfDigit(c.text, c.unit)
		if err != nil || errHalf != nil || math.Abs(got-c.want) > 1e-12*math.Abs(c.want) || math.Abs(half-c.half) > 1e-12*c.half {
			t.Errorf("%s in %s: %v +/- %v (%v, %v), want %v +/- %v", c.text, c.unit, got, half, err, errHalf, c.want, c.half)
		}
	}
	for _, bad := range [][2]string{{"12", "mm"}, {"12 ksi", "mm"}, {"12 lb", "mm"}, {"in", "mm"}, {"", ""}, {"1,000 N", "N"}, {"NaN", ""}, {"Inf in", "mm"}, {"nan 1/in", "1/mm"}, {"1", "rad"}, {"60", "rad"}, {"12 kk", "N"}} {
		if v, err := quantity(bad[0], bad[1]); err == nil {
			t.Errorf("%q in %q is %v", bad[0], bad[1], v)
		}
	}
}
