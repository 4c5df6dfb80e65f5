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
