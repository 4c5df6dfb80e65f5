package en1993

// Limit states without a published example: numbers reckoned apart, limits, and agreement with each other.

import (
	"math"
	"testing"

	"lugwright/strength"
	"lugwright/strength/statics"
)

type given map[string]float64

// at evaluates a limit state with the recommended factors; what is left out takes its default, or nought for a load.
func at(t *testing.T, l strength.Evaluator, g given) *strength.Calc {
	t.Helper()
	return atSet(t, l, "", g)
}

func atSet(t *testing.T, l strength.Evaluator, set string, g given) *strength.Calc {
	t.Helper()
	factors, err := Basis().Card.FactorValues(set, nil)
	if err != nil {
		t.Fatal(err)
	}
	c := strength.Calc{Trace: true, Method: strength.PartialFactors, Factors: factors}
	var in [][]float64
	known := 0
	for _, d := range l.Info().Givens {
		v, ok := g[d.Symbol]
		if ok {
			known++
		} else {
			v = d.Default
		}
		in = append(in, []float64{v})
	}
	if known != len(g) {
		t.Fatalf("%s has no such givens: %v", l.Info().ID, g)
	}
	if err := l.FromNumbers(&c, in); err != nil {
		t.Fatal(err)
	}
	return &c
}

func line(t *testing.T, c *strength.Calc, symbol string) float64 {
	t.Helper()
	for i := len(c.Lines) - 1; i >= 0; i-- {
		if c.Lines[i].Symbol == symbol {
			return c.Lines[i].Value
		}
	}
	t.Fatalf("no line %s: %s", symbol, c.Why)
	return 0
}

func alike(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: %.8g, want %.8g", what, got, want)
	}
}

// TestPinNumbers: Table 3.9 and Eq. 3.15 reckoned apart from this program; no published example found.
func TestPinNumbers(t *testing.T) {
	g := given{"F_Ed": 200e3, "t": 20, "f_y": 355, "d_0": 41}
	alike(t, "a_min", line(t, at(t, pinEndDistance, g), "a_min"), 41.418, 1e-5)
	alike(t, "c_min", line(t, at(t, pinSideDistance, g), "c_min"), 27.751, 1e-5)
	c := at(t, pinContact, given{"F_Ed_ser": 100e3, "d": 40, "d_0": 41, "t": 20, "f_y": 355})
	alike(t, "sigma_h_Ed", c.Demand, 478.78, 1e-4) // within the 0.05 MPa that the number was given with
	alike(t, "f_h_Rd", c.Capacity, 887.5, 1e-9)
}

// TestPinSpan: the figure's moment is that of the span as it is solved within a bracket, with even bearing. Source: elementary statics.
func TestPinSpan(t *testing.T) {
	const a, b, gap = 12.0, 20.0, 2.0
	c := at(t, pinSpanBending, given{"F_Ed": 1, "a": a, "b": b, "c": gap, "d": 25, "f_yp": 355})
	arm := b/2 + gap + a/2
	f, err := statics.SolvePin(make([]float64, 2), []statics.Seat{
		{X: -arm, T: a}, {X: 0, T: b, Role: statics.Load, ForceN: 1}, {X: arm, T: a},
	})
	if err != nil {
		t.Fatal(err)
	}
	alike(t, "M_Ed", c.Demand, f.MaxMoment, 1e-12)
}

// TestPinResistances: bending 1.5 W_el and service 0.8 W_el stand as 1.5 to 0.8, bearing as 1.5 to 0.6 (Table 3.10), with all factors 1.
func TestPinResistances(t *testing.T) {
	g := given{"d": 25, "f_yp": 355}
	alike(t, "bending", at(t, pinBending, g).Capacity/at(t, pinBendingService, g).Capacity, 1.5/0.8, 1e-12)
	g = given{"d": 25, "t": 12, "f_y": 355}
	alike(t, "bearing", at(t, pinBearing, g).Capacity/at(t, pinBearingService, g).Capacity, 1.5/0.6, 1e-12)
	full := given{"M_Ed": at(t, pinBending, given{"d": 25, "f_yp": 355}).Capacity, "d": 25, "f_yp": 355, "f_up": 470}
	alike(t, "combined, moment alone", at(t, pinCombined, full).Demand, 1, 1e-12)
	full = given{"F_v_Ed": at(t, pinShear, given{"d": 25, "f_up": 470}).Capacity, "d": 25, "f_yp": 355, "f_up": 470}
	alike(t, "combined, shear alone", at(t, pinCombined, full).Demand, 1, 1e-12)
	alike(t, "thickness of type B", at(t, pinTypeB, given{"F_Ed": 1e5, "f_y": 355, "d_0": 26, "t": 15}).Demand, 0.7*math.Sqrt(1e5/355), 1e-12)
}

// TestBuckling: chi at a slenderness of 1 for curves a, b, c and d. Source: EN 1993-1-1 Figure 6.4 as tabulated in design handbooks, from
// memory, three figures.
func TestBuckling(t *testing.T) {
	for alpha, want := range map[float64]float64{0.13: 0.725, 0.21: 0.666, 0.34: 0.597, 0.49: 0.540, 0.76: 0.467} {
		length := 10 * math.Pi * math.Sqrt(e210/355.0)
		chi := line(t, at(t, columnBuckling, given{"A": 100, "i": 10, "L": length, "alpha": alpha, "f_y": 355}), "chi")
		if math.Abs(chi-want) > 0.00051 {
			t.Errorf("alpha %g: chi = %.4f, want %.3f", alpha, chi, want)
		}
	}
}

// TestTransversePair: the solved form is the directional method at sigma = tau = F/(a sqrt2); a force along the weld gives the simplified
// method.
func TestTransversePair(t *testing.T) {
	m := given{"a": 5.6, "f_u": 470, "beta_w": 0.9}
	F := at(t, filletTransverse, m).Capacity
	d := given{"n_t": F / math.Sqrt2, "v_t": -F / math.Sqrt2, "a": 5.6, "f_u": 470, "beta_w": 0.9}
	alike(t, "transverse", at(t, filletDirectional, d).Demand, 1, 1e-9)
	d = given{"v_l": at(t, filletStrength, m).Capacity, "a": 5.6, "f_u": 470, "beta_w": 0.9}
	alike(t, "longitudinal", at(t, filletDirectional, d).Demand, 1, 1e-12)
	d = given{"n_t": 0.9 * 470 / 1.25 * 5.6, "a": 5.6, "f_u": 470, "beta_w": 0.9}
	if c := at(t, filletDirectional, d); c.Verdict != strength.Pass {
		t.Errorf("at 0.9 f_u/gamma_M2 alone: %s, %g", c.Verdict, c.Demand)
	}
}

// TestLines: craters take two throats off; a lap of 150 throats is whole and one of 400 has 0.667; too short a run is outside.
func TestLines(t *testing.T) {
	g := given{"a": 4, "L": 608, "f_u": 470, "beta_w": 0.9, "joint": 1}
	alike(t, "150 throats", line(t, at(t, filletLines, g), "beta_Lw"), 1, 1e-12)
	g["L"] = 1608
	alike(t, "400 throats", line(t, at(t, filletLines, g), "beta_Lw"), 2.0/3, 1e-12)
	g["L"] = 37
	if c := at(t, filletLines, g); c.Verdict != strength.Outside {
		t.Errorf("29 mm of effective length: %s", c.Verdict)
	}
	g["ends"] = 1
	if c := at(t, filletLines, g); c.Verdict != strength.Pass {
		t.Errorf("37 mm of full size: %s", c.Verdict)
	}
}

// TestCorrelation: Table 4.1 by the tensile strengths of either list (EN 10025-2; EN 1993-1-1 Table 3.1).
func TestCorrelation(t *testing.T) {
	for fu, want := range map[float64]float64{360: 0.8, 410: 0.85, 430: 0.85, 470: 0.9, 490: 0.9, 510: 0.9, 520: 1, 540: 1} {
		if got := correlation(fu); got != want {
			t.Errorf("f_u %g: %g, want %g", fu, got, want)
		}
	}
}

// TestGroup: 3.7(1) on both sides.
func TestGroup(t *testing.T) {
	c := strength.Calc{Method: strength.PartialFactors}
	for shear, want := range map[float64]float64{60: 140, 50: 140, 49: 120, 20: 60} {
		if err := boltGroupResistance.FromNumbers(&c, [][]float64{{0}, {40, 50, 50}, {shear}}); err != nil || c.Capacity != want {
			t.Errorf("F_v %g: %g, want %g (%v)", shear, c.Capacity, want, err)
		}
	}
}

// TestPackingAndLength: beta_p is 1 to d/3 (within 1 %: the clause steps there), 9/11 at t_p = d; beta_Lf is 1 at 15 d and 0.75 from 65 d.
func TestPackingAndLength(t *testing.T) {
	for tp, want := range map[float64]float64{0: 1, 20.0 / 3: 1, 20: 9.0 / 11} {
		g := given{"A": 245, "f_ub": 800, "class": 2, "d": 20, "t_p": tp}
		alike(t, "beta_p", line(t, at(t, boltShear, g), "beta_p"), want, 1e-12)
	}
	for lj, want := range map[float64]float64{300: 1, 800: 0.875, 1300: 0.75, 5000: 0.75} {
		g := given{"A": 245, "f_ub": 800, "class": 2, "d": 20, "L_j": lj}
		alike(t, "beta_Lf", line(t, at(t, boltShear, g), "beta_Lf"), want, 1e-12)
	}
}

// TestCombined: tension alone, shear alone, and the corner at 1.4.
func TestCombined(t *testing.T) {
	g := given{"A": 245, "A_s": 245, "f_ub": 800, "class": 2}
	V, T := 0.6*800*245/1.25, 0.9*800*245/1.25
	for _, k := range [][3]float64{{1, 0, 1}, {0, 1, 1}, {1 - 1/1.4, 1, 1}, {0.5, 0.7, 1}} {
		g["F_v_Ed"], g["F_t_Ed"] = k[0]*V, k[1]*T
		alike(t, "U", at(t, boltCombined, g).Demand, k[2], 1e-12)
	}
}

// TestPrying: a thick ply leaves the bolt its whole tension, a thin one bends as mode 1, and more ply is never weaker.
func TestPrying(t *testing.T) {
	g := given{"m": 30, "e": 30, "p": 60, "t_f": 100, "f_y": 355, "A": 157, "A_s": 157, "f_ub": 800, "class": 2}
	alike(t, "thick", at(t, prying, g).Capacity, 0.9*800*157/1.25, 1e-12)
	g["t_f"] = 1
	alike(t, "thin", at(t, prying, g).Capacity, 2*0.25*60*355/30, 1e-12)
	before := 0.0
	for thick := 1.0; thick < 60; thick++ {
		g["t_f"] = thick
		F := at(t, prying, g).Capacity
		if F < before {
			t.Errorf("t_f %g: %g after %g", thick, F, before)
		}
		before = F
	}
	g["F_v_Ed"] = 0.6 * 800 * 157 / 1.25
	alike(t, "no tension left", at(t, prying, g).Capacity+1, 1, 1e-9)
}

// TestPunching: the thickness that the bolt's full tension wants is the one whose punching resistance it is.
func TestPunching(t *testing.T) {
	least := at(t, boltPunchingThickness, given{"A_s": 157, "f_ub": 800, "d_m": 24, "f_u": 470, "t_p": 6}).Demand
	alike(t, "B_p_Rd", at(t, boltPunching, given{"d_m": 24, "t_p": least, "f_u": 470}).Capacity, 0.9*800*157/1.25, 1e-12)
}

// TestBed: the plate that is just thick enough carries just the force.
func TestBed(t *testing.T) {
	g := given{"N_Ed": 1035e3, "f_jd": 14.167, "A_0": 7640, "P_0": 1206.4, "f_y": 275}
	g["t"] = line(t, at(t, basePlate, g), "t_min")
	alike(t, "N_Rd", at(t, baseBearing, g).Capacity, 1035e3, 1e-12)
}

// plate is a cut of 12 x 100 in S355 for the checks of a section.
func plate() given {
	return given{
		"W_pl_x": 3600, "W_el_x": 2400, "W_pl_y": 30000, "W_el_y": 20000, "A": 1200, "A_vx": 1200, "A_vy": 1200, "I_t": 57600,
		"i": 3.4641, "L": 0, "h": 100, "t": 12, "f_y": 355, "f_u": 470,
	}
}

// TestInteraction: each force alone at its own resistance is a utilisation of 1, and half the shear resistance costs nothing.
func TestInteraction(t *testing.T) {
	for symbol, full := range map[string]float64{"M_x_Ed": 3600 * 355, "M_y_Ed": 30000 * 355, "N_Ed": 1200 * 355} {
		g := plate()
		g[symbol] = full
		alike(t, symbol, at(t, interaction, g).Demand, 1, 1e-9)
		g["V_y_Ed"] = 0.5 * 1200 * 355 / math.Sqrt(3)
		alike(t, symbol+" with half the shear", at(t, interaction, g).Demand, 1, 1e-9)
	}
	g := plate()
	g["M_x_Ed"], g["V_y_Ed"] = 3600*355, 0.75*1200*355/math.Sqrt(3)
	alike(t, "with three quarters of the shear", at(t, interaction, g).Demand, 1/0.75, 1e-9)
	g["V_y_Ed"] = 1200 * 355 / math.Sqrt(3) * 1.01
	if c := at(t, interaction, g); c.Verdict != strength.Outside {
		t.Errorf("sheared through: %s", c.Verdict)
	}
	g = plate()
	g["N_Ed"] = -1200 * 355
	alike(t, "short and pressed", at(t, interaction, g).Demand, 1, 1e-9)
	m := at(t, bendingWithAxial, given{"N_Ed": 0.5 * 1200 * 355, "b": 100, "h": 12, "f_y": 355}).Capacity
	alike(t, "Eq. 6.32", m, 0.75*3600*355, 1e-12)
}

// TestSlender: buckling never helps, and a cut through a hole has its rupture.
func TestSlender(t *testing.T) {
	before := math.Inf(1)
	for length := 0.0; length < 3000; length += 50 {
		c := at(t, edgewise, given{"W_pl_y": 30000, "W_el_y": 20000, "L": length, "h": 100, "t": 12, "f_y": 355})
		if c.Capacity > before {
			t.Errorf("L %g: %g after %g", length, c.Capacity, before)
		}
		before = c.Capacity
	}
	g := given{"N_Ed": 1, "A": 1200, "i": 3.4641, "L": 100, "f_y": 355, "f_u": 470, "net": 1}
	alike(t, "net, recommended", at(t, axial, g).Capacity, 0.9*1200*470/1.25, 1e-12)
	alike(t, "net, UK", atSet(t, axial, "UK", g).Capacity, 1200*355, 1e-12)
}

// TestTearing: an eccentric block has half the tension part, and the net plate of the rows is that of the widths.
func TestTearing(t *testing.T) {
	g := given{"A_nt_0": 1000, "A_nv_0": 2000, "f_y": 275, "f_u": 430}
	whole := at(t, blockTearing, g).Capacity
	g["load"] = 1
	alike(t, "half the tension", whole-at(t, blockTearing, g).Capacity, 0.5*430*1000/1.25, 1e-9)
	// The fin plate of testdata/handbook with openings of 21 and 7 mm: A_nv = (320 - 99 - 21) 10 = 2000, A_nt = (110 - 33 - 7) 10 = 700 mm^2.
	// Along 0.5*430*700/1.25 + 275*2000/sqrt(3) = 437943 N, across 0.5*430*2000/1.25 + 275*700/sqrt(3) = 455140 N.
	g = given{"t": 10, "d_0": 22, "L_v": 320, "n_hv": 4.5, "L_t": 110, "n_ht": 1.5, "load": 1, "f_y": 275, "f_u": 430, "L_ov": 21, "L_ot": 7}
	g["V_Ed"], g["V_x_Ed"] = 200e3, 100e3
	c := at(t, blockTearing, g)
	alike(t, "along", c.Capacity, 437943, 1e-5)
	alike(t, "both ways", c.Utilisation(), math.Hypot(200/437.943, 100/455.140), 1e-5)
}

// TestZigzag: 200 x 10 mm, three holes of 22 mm in a zigzag of two steps, 40 along and 60 across: 66 - 2 x 40^2/240 = 52.67 mm, 1473.3 mm^2,
// 0.9 x 1473.3 x 430/1.25 = 456.1 kN. A steep zigzag takes nothing.
func TestZigzag(t *testing.T) {
	g := given{"b": 200, "t": 10, "n": 3, "d_0": 22, "n_z": 2, "s": 40, "p": 60, "f_y": 275, "f_u": 430}
	c := at(t, netTension, g)
	alike(t, "A_net", line(t, c, "A_net"), 1473.3, 1e-4)
	alike(t, "N_u", line(t, c, "N_u_Rd"), 456.1e3, 2e-4)
	g["s"] = 90
	alike(t, "steep", line(t, at(t, netTension, g), "A_net"), 2000, 1e-12)
}

// TestAngle: 80 x 80 x 8 of 1227 mm^2, holes of 22 mm: one bolt at 40 mm 2 x 29 x 8 x 430/1.25 = 159.6 kN; at 60 mm = 2.727 d_0 two have
// 0.4273 x 1051 x 430/1.25 = 154.5 kN, three 0.5182 x 1051 x 430/1.25 = 187.3 kN; from 5 d_0 on 0.7 x 1051 x 430/1.25 = 253.1 kN.
func TestAngle(t *testing.T) {
	g := given{"bolts": 0, "e_2": 40, "p_1": 60, "d_0": 22, "t": 8, "A": 1227, "f_y": 275, "f_u": 430}
	alike(t, "one", line(t, at(t, angleTension, g), "N_u_Rd"), 159.6e3, 3e-4)
	g["bolts"] = 1
	alike(t, "two", line(t, at(t, angleTension, g), "N_u_Rd"), 154.5e3, 3e-4)
	g["bolts"] = 2
	alike(t, "three", line(t, at(t, angleTension, g), "N_u_Rd"), 187.3e3, 3e-4)
	g["p_1"] = 130
	alike(t, "far", line(t, at(t, angleTension, g), "N_u_Rd"), 253.1e3, 3e-4)
}

// TestEdges: nearer an edge a bolt is never stronger, and a bolt without edges or neighbours has the greatest there is.
func TestEdges(t *testing.T) {
	g := given{"d": 20, "d_0": 22, "t": 10, "f_u": 470, "f_ub": 800}
	most := at(t, boltBearing, g).Capacity
	alike(t, "alone", most, 2.5*470*20*10/1.25, 1e-12)
	before := 0.0
	for e := 16.0; e < 120; e += 2 {
		g["e_1"], g["e_2"] = e, e
		c := at(t, boltBearing, g)
		if c.Capacity < before || c.Capacity > most*(1+1e-12) {
			t.Errorf("e %g: %g after %g", e, c.Capacity, before)
		}
		before = c.Capacity
	}
	if c := at(t, boltSpacing, given{"d_0": 22}); c.Verdict != strength.NotApplied {
		t.Errorf("no edge: %s", c.Verdict)
	}
}

// TestGrades: what is not in Table 3.1 of EN 1993-1-8 is taken as the least ductile class, with its own strength.
func TestGrades(t *testing.T) {
	b := strength.Bolt{D: 16, Grade: "SAE 8", Fub: 1034, As: 157, ThreadsIn: true, Dh: 18}
	if classOf(b.Grade) != 7 || tensile(&b) != 1034 || alphaV(1, classOf(b.Grade)) != 0.5 {
		t.Errorf("SAE 8: class %g, %g MPa", classOf(b.Grade), tensile(&b))
	}
	b = strength.Bolt{D: 20, Grade: "8.8", Fub: 830, FuNominal: 800}
	if tensile(&b) != 800 {
		t.Errorf("8.8 over M16: %g MPa, want the nominal 800", tensile(&b))
	}
}
