package aisc360

// Numbers worked by hand from the printed formulas, where no published example was found.

import (
	"math"
	"testing"

	"lugwright/strength"
)

// A hand is one result worked by hand; ours is to lie within half a unit of its last digit.
type hand struct {
	limit  string
	method strength.Method
	v      values
	symbol string
	want   float64
	unit   float64
	half   float64
}

func byHand(t *testing.T, list []hand) {
	t.Helper()
	for _, h := range list {
		if got := line(t, check(t, h.limit, h.method, h.v), h.symbol) / h.unit; math.Abs(got-h.want) > h.half {
			t.Errorf("%s %v: %s is %.5g, by hand %g", h.limit, h.v, h.symbol, got, h.want)
		}
	}
}

// Appendix 3: 1000 (4.4/500000)^0.333, 1000 (1.1/1e6)^0.333, 1000 (0.39/500000)^0.333; 100 (1.5/1e6)^0.167 and 100 (1.5/20000)^0.167 for category F, which
// ends at 8 ksi. Miner's sum has the same curve.
func TestFatigueRange(t *testing.T) {
	at := func(category, n float64) values { return values{"f_SR": 0, "n_SR": n, "category": category} }
	byHand(t, []hand{
		{"fatigue-range", strength.ASD, at(categoryC, 500000), "F_SR", 20.73, ksi, 0.005},
		{"fatigue-range", strength.ASD, at(categoryE, 1e6), "F_SR", 10.37, ksi, 0.005},
		{"fatigue-range", strength.ASD, at(categoryThreads, 500000), "F_SR", 9.248, ksi, 0.0005},
		{"fatigue-range", strength.ASD, at(categoryF, 1e6), "F_SR", 10.65, ksi, 0.005},
		{"fatigue-range", strength.ASD, at(categoryF, 20000), "F_SR", 20.47, ksi, 0.005},
		{"fatigue-range", strength.ASD, at(categoryF, 1e8), "F_SR", 8, ksi, 1e-9},
	})
	if got := damage(t, categoryF, []float64{10.651413 * ksi}, []float64{1e6}); math.Abs(got-1) > 1e-4 {
		t.Errorf("category F: a whole life is damage %g", got)
	}
}

// Table J3.2 prints whole ksi: Group 120 has 90, 54 and 68, Group 150 has 113, 68 and 84. On 3/4 in, 0.4418 in2: 0.75 x 68 = 22.5 and 0.75 x 84 = 27.8
// kip in shear, 0.75 x 113 = 37.4 kip in tension.
func TestWholeStresses(t *testing.T) {
	at := func(fu, threads float64) values {
		return values{"V_r": 0, "T_r": 0, "d": 0.75 * inch, "F_u": fu * ksi, "threads": threads, "stress": 1}
	}
	kip := ksi * inch * inch
	byHand(t, []hand{
		{"bolt-shear", strength.LRFD, at(120, 1), "F_nv", 54, ksi, 1e-9},
		{"bolt-shear", strength.LRFD, at(120, 0), "V_c", 22.5, kip, 0.05},
		{"bolt-shear", strength.LRFD, at(144, 1), "F_nv", 65, ksi, 1e-9},
		{"bolt-shear", strength.LRFD, at(144, 0), "F_nv", 81, ksi, 1e-9},
		{"bolt-shear", strength.LRFD, at(150, 1), "F_nv", 68, ksi, 1e-9},
		{"bolt-shear-joint", strength.LRFD, at(150, 0), "V_c", 27.8, kip, 0.05},
		{"bolt-shear", strength.LRFD, at(200, 0), "F_nv", 113, ksi, 1e-9},
		{"bolt-tension", strength.LRFD, at(120, 1), "F_nt", 90, ksi, 1e-9},
		{"bolt-tension", strength.LRFD, at(150, 1), "T_c", 37.4, kip, 0.05},
		{"bolt-combined", strength.LRFD, at(150, 1), "F_nt", 113, ksi, 1e-9},
		{"bolt-combined", strength.LRFD, at(150, 1), "F_nv", 68, ksi, 1e-9},
	})
}

// Rupture of a 6 x 4 x 1/2 angle of 4.75 in2 with two holes of 7/8 + 1/8 in and one step of s = 2 in over g = 3 in: 4.75 - 1.0 + 1/2 x 4/12 = 3.917 in2. Three
// bolts a line have 0.60; with x_bar = 0.98 in over 4 in case 2 gives 0.755; with 2.75 in2 connected no case gives less than 0.579.
// A W shape's wide flange has 0.90, its web 0.70.
func TestShearLagCases(t *testing.T) {
	base := values{"P_r": 0, "A_g": 4.75 * inch * inch, "n_h": 2, "d_net": inch, "t": inch / 2, "F_u": 58 * ksi}
	zigzag := base.with("s", 2*inch).with("g", 3*inch)
	angle, web := zigzag.with("U_case", 9), base.with("U_case", 7)
	slotted := base.with("U_case", 4).with("x_bar", 2*inch).with("l", 8*inch)
	sq, kip := inch*inch, ksi*inch*inch
	byHand(t, []hand{
		{"tension-rupture", strength.LRFD, zigzag, "A_n", 3.917, sq, 0.0005},
		{"tension-rupture", strength.LRFD, zigzag, "P_c", 170.4, kip, 0.05},
		{"tension-rupture", strength.LRFD, angle, "U", 0.60, 1, 1e-9},
		{"tension-rupture", strength.LRFD, angle.with("x_bar", 0.98*inch).with("l", 4*inch), "U", 0.755, 1, 1e-9},
		{"tension-rupture", strength.LRFD, base.with("U_given", 0.5).with("A_con", 2.75*sq), "U", 0.579, 1, 0.0005},
		{"tension-rupture", strength.ASD, base.with("U_case", 5), "U", 0.90, 1, 1e-9},
		{"tension-rupture", strength.ASD, base.with("U_case", 6), "U", 0.85, 1, 1e-9},
		{"tension-rupture", strength.ASD, web, "U", 0.70, 1, 1e-9},
		{"tension-rupture", strength.ASD, web.with("x_bar", inch).with("l", 9*inch), "U", 0.889, 1, 0.0005},
		{"tension-rupture", strength.ASD, base.with("U_case", 8), "U", 0.80, 1, 1e-9},
		{"tension-rupture", strength.ASD, slotted, "U", 0.75, 1, 1e-9},
	})
	for _, v := range []values{base.with("s", 2*inch), zigzag.with("s", 8*inch), base.with("A_con", 5*sq)} {
		if got := check(t, "tension-rupture", strength.LRFD, v).Verdict; got != strength.Outside {
			t.Errorf("%v: %q", v, got)
		}
	}
}
