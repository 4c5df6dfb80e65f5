package aisc360

import (
	"math"
	"testing"

	"lugwright/strength"
	"lugwright/strength/material"
)

var slip = values{"V_r": 1e4, "n_b": 4, "size": 3}

// TestPretensionTable: the tables' pretensions are 0.70 of the tensile strength on the stress area, to their rounding: 1 kip, and 1 kN of a
// tensile load that is rounded itself.
func TestPretensionTable(t *testing.T) {
	l := Basis().Limit("bolt-slip").Info()
	var sizes []string
	for _, g := range l.Givens {
		if g.Symbol == "size" {
			sizes = g.Choices
		}
	}
	if len(sizes) != len(slipBolts)+1 {
		t.Fatalf("%d sizes for %d rows", len(sizes), len(slipBolts))
	}
	for i, name := range sizes[1:] {
		size, err := material.ParseBolt(name)
		if err != nil {
			t.Fatal(err)
		}
		unit, fu := 1000.0, [2]float64{830, 1040}
		if i < inchBolts {
			unit, fu = ksi*inch*inch, [2]float64{120 * ksi, 150 * ksi}
		}
		for group, fu := range fu {
			table, want := pretension(float64(i+1), float64(group)), 0.70*fu*size.StressArea()
			if math.Abs(table-want) > unit {
				t.Errorf("%s, group %d: %v, 0.70 F_u A_s is %v", name, group, table, want)
			}
		}
	}
}

// TestSlip: strength is in proportion to bolts, planes and friction, falls with tension to nothing at D_u T_b, and falls with wider holes.
func TestSlip(t *testing.T) {
	for _, m := range methods {
		at := func(v values) float64 { return check(t, "bolt-slip", m, v).Capacity }
		once := at(slip)
		for symbol, v := range map[string]values{"n_b": slip.with("n_b", 8), "n_s": slip.with("n_s", 2), "mu": slip.with("mu", 0.6)} {
			if !same(at(v), 2*once) {
				t.Errorf("%s, twice %s: %v of the strength", m, symbol, at(v)/once)
			}
		}
		if !same(at(slip.with("hole", 1)), once) || !(at(slip.with("hole", 2)) < once && at(slip.with("hole", 4)) < at(slip.with("hole", 3))) || !same(at(slip.with("fillers", 1)), 0.85*once) {
			t.Errorf("%s: wider holes or fillers do not lower the strength", m)
		}
		all := 1.13 * 4 * pretension(3, 0)
		if m == strength.ASD {
			all /= 1.5
		}
		if got := at(slip.with("T_r", all/2)); !same(got, once/2) {
			t.Errorf("%s: half the clamping leaves %v of the strength", m, got/once)
		}
		before := math.Inf(1)
		for k := 0.0; k < 1; k += 0.1 {
			if now := at(slip.with("T_r", k*all)); now >= before {
				t.Errorf("%s: %v with more tension, %v before", m, now, before)
			} else {
				before = now
			}
		}
		for _, v := range []values{slip.with("T_r", all), slip.with("T_r", 1e9), slip.with("size", 0)} {
			if got := check(t, "bolt-slip", m, v); got.Verdict != strength.Outside || got.Why == "" {
				t.Errorf("%s, %v: %q", m, v, got.Verdict)
			}
		}
	}
	refusedGiven(t, "bolt-slip", "n_b", lists{"n_b": {0}})
	refusedGiven(t, "bolt-slip", "V_r", lists{"n_b": {1}, "V_r": {math.NaN()}})
}
