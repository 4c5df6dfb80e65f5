package aisc360

// Hanger rods: a demo of our own, and what follows from the clauses.

import (
	"math"
	"testing"

	"lugwright/strength"
)

// A tray of 210 kg on four rods 140 mm long under 1 g to the side: elastic bending at the thread's root, by our own arithmetic.
func TestRodBendingOfTray(t *testing.T) {
	for _, rod := range []struct{ d, p, stress float64 }{{8, 1.25, 1360}, {10, 1.5, 676}, {12, 1.75, 384}, {16, 2, 148}} {
		v := values{"V_r": 210 * 9.80665 / 4, "L": 140, "d": rod.d, "p": rod.p, "F_y": 240}
		c := check(t, "rod-bending", strength.ASD, v)
		got := line(t, c, "M_r") / line(t, c, "S")
		if math.Abs(got/rod.stress-1) > 0.005 {
			t.Errorf("M%g: %.0f MPa, want %.0f", rod.d, got, rod.stress)
		}
		if bad := rod.d < 16; bad != (c.Verdict == strength.Fail) {
			t.Errorf("M%g of 240 MPa: %s", rod.d, c.Verdict)
		}
		held := check(t, "rod-bending", strength.ASD, v.with("ends", 1))
		if !same(held.Demand, 2*c.Demand) {
			t.Errorf("M%g: one end held %g, both %g", rod.d, held.Demand, c.Demand)
		}
	}
}

// Two rods of four bear twice the even share; rod and bolt of one size and grade are one.
func TestRodShare(t *testing.T) {
	v := values{"P_r": 3 * 210 * 9.80665, "n": 4, "k_s": 2, "d": 12, "F_u": 400}
	for _, m := range methods {
		c := check(t, "rod-tension", m, v)
		if math.Abs(c.Demand-3090) > 1 {
			t.Errorf("two rods of four: %.0f N", c.Demand)
		}
		bolt := check(t, "bolt-tension", m, values{"T_r": 0, "V_r": 0, "d": 12, "F_u": 400, "threads": 1})
		if !same(c.Capacity, bolt.Capacity) {
			t.Errorf("rod %g, bolt %g", c.Capacity, bolt.Capacity)
		}
		if c := check(t, "rod-tension", m, v.with("k_s", 5)); c.Verdict != strength.Outside {
			t.Errorf("five times the share of four rods: %s", c.Verdict)
		}
	}
}

// With bending alone or tension alone the combination is the half or the whole of its parts; a longer rod pressed is never better.
func TestRodCombined(t *testing.T) {
	v := values{"P_r": 0, "V_r": 100, "L": 200, "d": 16, "p": 2, "F_y": 240, "F_u": 400}
	for _, m := range methods {
		bent, alone := check(t, "rod-combined", m, v), check(t, "rod-bending", m, values{"V_r": 100, "L": 200, "d": 16, "p": 2, "F_y": 240})
		if !same(bent.Demand, alone.Utilisation()) {
			t.Errorf("bending alone: %g, %g", bent.Demand, alone.Utilisation())
		}
		pulled := check(t, "rod-combined", m, v.with("V_r", 0).with("P_r", 20000))
		if want := check(t, "rod-tension", m, values{"P_r": 20000, "d": 16, "F_u": 400}).Utilisation(); !same(pulled.Demand, want) {
			t.Errorf("tension alone: %g, %g", pulled.Demand, want)
		}
		last := 0.0
		for _, L := range []float64{50, 200, 400, 600} {
			c := check(t, "rod-combined", m, v.with("P_r", -1500).with("L", L))
			if c.Verdict == strength.Outside || c.Demand < last {
				t.Errorf("pressed rod of %g mm: %s, %g after %g", L, c.Verdict, c.Demand, last)
			}
			last = c.Demand
		}
		if c := check(t, "rod-combined", m, v.with("P_r", -50000).with("L", 1000)); c.Verdict != strength.Outside {
			t.Errorf("over its buckling load: %s", c.Verdict)
		}
	}
}
