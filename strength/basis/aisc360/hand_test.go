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

// Appendix 3: 1000 (4.4/500000)^0.333, 1000 (1.1/1e6)^0.333, 1000 (0.39/500000)^0.333; in the older form (44e8/500000)^0.333; 100 (1.5/1e6)^0.167 and 100 (1.5/20000)^0.167 for category F, which
// ends at 8 ksi. Miner's sum has the same curve.
func TestFatigueRange(t *testing.T) {
	at := func(category, n float64) values { return values{"f_SR": 0, "n_SR": n, "category": category} }
	byHand(t, []hand{
		{"fatigue-range", strength.ASD, at(categoryC, 500000), "F_SR", 20.73, ksi, 0.005},
		{"fatigue-range", strength.ASD, at(categoryC, 500000).with("form", 1), "F_SR", 20.58, ksi, 0.005},
		{"fatigue-range", strength.ASD, at(categoryF, 1e6).with("form", 1), "F_SR", 10.75, ksi, 0.005},
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

// A 7/8 in bolt in 3/8 in of 58 ksi, 1 1/2 in from the edge in a hole of 15/16 in, l_c = 1.031 in: 3.0 d t F_u = 57.1 and 1.5 l_c t F_u = 33.6 kip; of a long
// slot 2.0 d t F_u = 38.1 and 1.0 l_c t F_u = 22.4 kip.
func TestBearingRules(t *testing.T) {
	v := values{"V_r": 0, "d": 0.875 * inch, "d_h": 0.9375 * inch, "t": 0.375 * inch, "l_e": 1.5 * inch, "s": 0, "F_u": 58 * ksi}
	kip := ksi * inch * inch
	byHand(t, []hand{
		{"bolt-bearing", strength.ASD, v.with("rule", 1), "R_nb", 57.1, kip, 0.05},
		{"bolt-bearing", strength.ASD, v.with("rule", 1), "R_nte", 33.6, kip, 0.05},
		{"bolt-bearing", strength.ASD, v.with("rule", 2), "R_nb", 38.1, kip, 0.05},
		{"bolt-bearing", strength.ASD, v.with("rule", 2), "R_nte", 22.4, kip, 0.05},
	})
}

// Holes of 22 + 2 mm in 10 mm of 250 and 400 MPa: A_gv = 3100, A_nv = 2 (155 - 60) 10 = 1900, A_nt = (75 - 24) 10 = 510 mm2; 0.6 x 400 x 1900 = 456 kN is
// less than 0.6 x 250 x 3100 = 465 kN, and 204 kN of tension: 660 kN.
func TestMetricHoles(t *testing.T) {
	v := values{"V_r": 0, "t": 10, "n_v": 2, "L_gv": 155, "n_hv": 2.5, "L_gt": 75, "n_ht": 1, "d_h": 22, "F_y": 250, "F_u": 400, "a_h": 2}
	byHand(t, []hand{{"block-shear", strength.LRFD, v, "R_n", 660, 1000, 1e-9}})
}

// Areas as printed, whatever the layout: A_gv = 10, A_nv = 7, A_nt = 2 in2 of 36 and 58 ksi: 0.6 x 58 x 7 = 243.6 is more than 0.6 x 36 x 10 = 216 kip, and 116 kip
// of tension: 332 kip. Lengths without a thickness, and holes without a diameter, are outside the rule.
func TestBlockOfKnownAreas(t *testing.T) {
	in2, kip := inch*inch, ksi*inch*inch
	v := values{"V_r": 0, "A_gv_0": 10 * in2, "A_nv_0": 7 * in2, "A_nt_0": 2 * in2, "F_y": 36 * ksi, "F_u": 58 * ksi}
	byHand(t, []hand{{"block-shear", strength.LRFD, v, "R_n", 332, kip, 1e-9}, {"block-shear", strength.ASD, v, "V_c", 166, kip, 1e-9}})
	for _, bad := range []values{
		{"V_r": 0, "L_gv": 155, "L_gt": 75, "F_y": 250, "F_u": 400},
		{"V_r": 0, "t": 10, "L_gv": 155, "n_hv": 2.5, "L_gt": 75, "n_ht": 1, "F_y": 250, "F_u": 400},
	} {
		if k := check(t, "block-shear", strength.LRFD, bad); k.Verdict != strength.Outside {
			t.Errorf("%v: %s", bad, k.Verdict)
		}
	}
}

// J8 asks for areas alone: 0.85 x 3 x sqrt(100 x 225) = 382.5 kip on 100 in2 of a bed of 225, 255 on one no larger, 510 at most. A yielding web asks for no
// flange: 50 x 0.4 (5 x 1 + 4) = 180 kip; a crippling one for no k.
func TestOnlyWhatTheClauseAsks(t *testing.T) {
	in2, kip := inch*inch, ksi*inch*inch
	bed := values{"P_r": 0, "A_1_0": 100 * in2, "f_c": 3 * ksi}
	byHand(t, []hand{
		{"bearing-on-concrete", strength.LRFD, bed.with("A_2", 225*in2), "P_p", 382.5, kip, 1e-9},
		{"bearing-on-concrete", strength.LRFD, bed, "P_p", 255, kip, 1e-9},
		{"bearing-on-concrete", strength.LRFD, bed.with("A_2", 1000*in2), "P_p", 510, kip, 1e-9},
		{"web-local-yield", strength.LRFD, values{"R_r": 0, "t_w": 0.4 * inch, "k": inch, "l_b": 4 * inch, "F_y": 50 * ksi}, "R_n", 180, kip, 1e-9},
		// 0.80 x 0.16 (1 + 3 x 4/20 x (0.4/0.6)^1.5) sqrt(29000 x 50 x 0.6/0.4)
		{"web-local-crippling", strength.LRFD, values{"R_r": 0, "t_w": 0.4 * inch, "t_f": 0.6 * inch, "l_b": 4 * inch, "d": 20 * inch, "F_y": 50 * ksi}, "R_n", 250.4, kip, 0.05},
	})
	if k := check(t, "bearing-on-concrete", strength.LRFD, values{"P_r": 0, "N_p": 300, "f_c": 20}); k.Verdict != strength.Outside {
		t.Errorf("half a plate: %s", k.Verdict)
	}
}

// Roots at 2e6 cycles: 1000 (4.4/2e6)^0.333 = 13.06 ksi. Groove welds that leave 1/2 in of 1 in: 0.65 - 0.59/2 = 0.355 of it, 4.64 ksi, with fillets of 1/4 in 0.18 more,
// 6.99 ksi; fillets of 1/4 in on 1/2 in: (0.06 + 0.36)/0.5^0.167 = 0.4715, 6.16 ksi.
func TestFatigueOfRoots(t *testing.T) {
	v := values{"f_SR": 0, "n_SR": 2e6, "joint": 1, "a_2": 0.5 * inch, "t_p": inch}
	byHand(t, []hand{
		{"fatigue-root-range", strength.ASD, v, "F_SR", 4.64, ksi, 0.005},
		{"fatigue-root-range", strength.ASD, v.with("w", 0.25*inch), "F_SR", 6.99, ksi, 0.005},
		{"fatigue-root-range", strength.ASD, values{"f_SR": 0, "n_SR": 2e6, "joint": 0, "w": 0.25 * inch, "t_p": 0.5 * inch}, "F_SR", 6.16, ksi, 0.005},
	})
}

// J10: 6.25 x 50 x 0.56^2 = 98 kip, half of it at an end; 24 x 0.345^3 sqrt(29000 x 50)/15.5 = 76.6 kip.
func TestForcesOnFlanges(t *testing.T) {
	kip := ksi * inch * inch
	flange := values{"R_r": 0, "t_f": 0.56 * inch, "F_y": 50 * ksi, "at_end": 1}
	web := values{"R_r": 0, "t_w": 0.345 * inch, "h": 15.5 * inch, "F_y": 50 * ksi}
	byHand(t, []hand{
		{"flange-local-bending", strength.LRFD, flange, "R_n", 49, kip, 1e-9},
		{"web-compression-buckling", strength.LRFD, web, "R_n", 76.6, kip, 0.05},
		{"web-compression-buckling", strength.LRFD, web, "R_c", 68.9, kip, 0.05},
		{"web-compression-buckling", strength.ASD, web.with("at_end", 1), "R_n", 38.3, kip, 0.05},
	})
}

// A bar of 1/2 x 6 in of 36 ksi with C_b = 1.3. At 60 in lambda = 1440, 1.3 (1.52 - 0.274 x 1440 x 36/29000) 108 = 144.6 kip in; at 120 in
// F_cr = 1.3 x 1.9 x 29000/2880 = 24.9 ksi and 74.6 kip in.
func TestMomentShape(t *testing.T) {
	in3, kipIn := inch*inch*inch, ksi*inch*inch*inch
	v := values{"M_ry": 0, "t": inch / 2, "h": 6 * inch, "Z_y": 4.5 * in3, "S_y": 3 * in3, "F_y": 36 * ksi, "L_b": 60 * inch, "C_b": 1.3}
	byHand(t, []hand{
		{"edgewise-bending", strength.LRFD, v, "M_ny", 144.6, kipIn, 0.05},
		{"edgewise-bending", strength.LRFD, v.with("L_b", 120*inch), "M_ny", 74.6, kipIn, 0.05},
	})
}

// Partial penetration of 3/8 in, 10 in long, E70: 0.90 x 70 x 3.75 = 236 kip, 0.80 of it, or over 1.88.
func TestPressedGroove(t *testing.T) {
	v := values{"P_r": 0, "E": 0.375 * inch, "l": 10 * inch, "F_EXX": 70 * ksi}
	byHand(t, []hand{
		{"pjp-compression", strength.LRFD, v, "P_c", 189.0, ksi * inch * inch, 0.05},
		{"pjp-compression", strength.ASD, v, "P_c", 125.7, ksi * inch * inch, 0.05},
	})
}

// A plate of 14 x 14 in under a tube of 8 x 6 in has cantilevers of (14 - 7.6)/2 and (14 - 5.7)/2 in, under a pipe of 8 5/8 in of (14 - 6.9)/2 in.
func TestPlateUnderTube(t *testing.T) {
	v := values{"P_r": 4e5, "N_p": 14 * inch, "B": 14 * inch, "d": 8 * inch, "b_f": 6 * inch, "t": 30, "F_y": 36 * ksi, "f_c": 3 * ksi, "A_2": 400 * inch * inch}
	pipe := v.with("stands", 2).with("d", 8.625*inch).with("b_f", 8.625*inch)
	byHand(t, []hand{
		{"base-plate-thickness", strength.LRFD, v.with("stands", 1), "m", 3.2, inch, 1e-9},
		{"base-plate-thickness", strength.LRFD, v.with("stands", 1), "l", 4.15, inch, 1e-9},
		{"base-plate-thickness", strength.LRFD, pipe, "l", 3.55, inch, 1e-9},
	})
}

// F7: a web of h/t = 70 with M_p = 1000 and F_y S = 800 kip in: 1000 - 200 (0.305 x 70/24.08 - 0.738) = 970.3 kip in. A tube of 8 x 8 x 0.174 in with b/t = 43.0
// and S = 13.6 in3: b_e = 1.92 x 0.174 x 24.08 (1 - 0.38 x 24.08/43) = 6.33 in, 1.149 in taken off both flanges, S_e = 12.07 in3, 603 kip in.
func TestTubeWalls(t *testing.T) {
	in3, kipIn := inch*inch*inch, ksi*inch*inch*inch
	web := values{"M_r": 0, "Z": 20 * in3, "S": 16 * in3, "b_t": 20, "h_t": 70, "F_y": 50 * ksi}
	flange := values{"M_r": 0, "Z": 15.7 * in3, "S": 13.6 * in3, "b_t": 43, "h_t": 43, "F_y": 50 * ksi, "H": 8 * inch, "t": 0.174 * inch}
	byHand(t, []hand{
		{"rect-tube-bending", strength.LRFD, web, "M_n", 970.3, kipIn, 0.05},
		{"rect-tube-bending", strength.LRFD, flange, "b_e", 6.33, inch, 0.005},
		{"rect-tube-bending", strength.LRFD, flange, "S_e", 12.07, in3, 0.005},
		{"rect-tube-bending", strength.LRFD, flange, "M_n", 603, kipIn, 0.6},
	})
	for _, v := range []values{flange.with("t", 0), web.with("h_t", 138)} {
		if got := check(t, "rect-tube-bending", strength.LRFD, v).Verdict; got != strength.Outside {
			t.Errorf("%v: %q", v, got)
		}
	}
}
