package reference

import (
	"math"
	"testing"
)

// TestDoublerShare: a stiff joint on a long doubler shares by stiffness, a loose or short one gives the doubler nothing; what both bear is the
// whole, and a softer metal bears less.
func TestDoublerShare(t *testing.T) {
	v := given{"N_r": {1e5}, "A_1": {1000}, "A_2": {500}, "E_1": {2e5}, "E_2": {2e5}, "L_d": {2000}, "k": {5000}, "sigma_lim": {200}}
	if s := allowableLine(t, axialShare, "s", v); !near(s, 1.0/3, 1e-3) {
		t.Errorf("long and stiff: %g", s)
	}
	if n1, n2 := allowableLine(t, axialShare, "N_1", v), allowableLine(t, axialShare, "N_2", v); !near(n1+n2, 1e5, 1e-12) {
		t.Errorf("shares %g and %g", n1, n2)
	}
	if s := allowableLine(t, axialShare, "s", with(v, given{"L_d": {1}})); s > 1e-3 {
		t.Errorf("1 mm long: %g", s)
	}
	if s := allowableLine(t, axialShare, "s_full", with(v, given{"E_2": {7e4}})); !near(s, 0.35*500/(1000+0.35*500), 1e-12) {
		t.Errorf("aluminium doubler: %g", s)
	}
	last := 0.0
	for _, L := range []float64{50, 100, 300, 1000} {
		s := allowableLine(t, axialShare, "s", with(v, given{"L_d": {L}, "k": {10}}))
		if s <= last {
			t.Errorf("%g mm: %g after %g", L, s, last)
		}
		last = s
	}
}

// TestDoublerBending: equal bars share alike; moments sum; the stiffer bears more.
func TestDoublerBending(t *testing.T) {
	v := given{"M": {1e6}, "I_1": {1e6}, "S_1": {2e4}, "I_2": {1e6}, "S_2": {2e4}, "E_1": {2e5}, "E_2": {2e5}, "sigma_lim": {200}}
	if got := evaluated(t, bendingShare, v).Demand; !near(got, 25, 1e-12) {
		t.Errorf("equal bars: %g MPa", got)
	}
	w := with(v, given{"I_2": {3e6}, "S_2": {5e4}})
	if a, b := allowableLine(t, bendingShare, "M_1", w), allowableLine(t, bendingShare, "M_2", w); !near(a+b, 1e6, 1e-12) || !near(b, 3*a, 1e-12) {
		t.Errorf("%g and %g", a, b)
	}
}

// TestLapPlate: two plates alike bear half the stress of one, and no plate less than its even share.
func TestLapPlate(t *testing.T) {
	v := given{"M": {1e6}, "V": {1e4}, "n": {1}, "t": {8}, "h": {150}, "k_s": {1}, "sigma_lim": {200}}
	one, two := evaluated(t, lapBreak, v).Demand, evaluated(t, lapBreak, with(v, given{"n": {2}, "k_s": {0.5}})).Demand
	if !near(one, 2*two, 1e-12) {
		t.Errorf("one %g, two %g", one, two)
	}
	if c := evaluated(t, lapBreak, with(v, given{"k_s": {0.5}})); c.Verdict != "outside the rule" {
		t.Errorf("one plate with half: %s", c.Verdict)
	}
}

// TestTubeBeam sums moments and shears along the beam again, loads inside and beyond the supports, and turns it round.
func TestTubeBeam(t *testing.T) {
	const L = 800.0
	for _, load := range [][4]float64{{1000, 400, 0, 0}, {1000, 200, 500, 600}, {1000, -150, 800, 950}, {1000, 100, -700, 500}, {400, 900, -300, -50}} {
		p, x := [2]float64{load[0], load[2]}, [2]float64{load[1], load[3]}
		v := given{"P_1": {p[0]}, "x_1": {x[0]}, "P_2": {p[1]}, "x_2": {x[1]}, "L": {L}, "S": {1e4}, "A_v": {500}, "sigma_lim": {200}}
		var M, V float64
		RB := (p[0]*x[0] + p[1]*x[1]) / L
		RA := p[0] + p[1] - RB
		for s := -200.5; s < 1000; s++ {
			shear, moment := 0.0, 0.0
			for _, f := range [][2]float64{{RA, 0}, {RB, L}, {-p[0], x[0]}, {-p[1], x[1]}} {
				if s > f[1] {
					shear += f[0]
					moment += f[0] * (s - f[1])
				}
			}
			M, V = max(M, math.Abs(moment)), max(V, math.Abs(shear))
		}
		if got := allowableLine(t, tubeBeam, "M_max", v); math.Abs(got-M) > 2000 {
			t.Errorf("%v: M %g, by steps %g", load, got, M)
		}
		if got := allowableLine(t, tubeBeam, "V_max", v); !near(got, V, 1e-9) {
			t.Errorf("%v: V %g, by steps %g", load, got, V)
		}
		turned := with(v, given{"x_1": {L - x[0]}, "x_2": {L - x[1]}})
		if a, b := evaluated(t, tubeBeam, v).Demand, evaluated(t, tubeBeam, turned).Demand; !near(a, b, 1e-9) {
			t.Errorf("%v: %g, turned round %g", load, a, b)
		}
	}
}
