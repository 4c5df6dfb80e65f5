package reference

// Properties and limits of the textbook cards, where no published case was at hand, and a fact of the trade.

import (
	"math"
	"testing"

	"lugwright/strength"
	"lugwright/strength/material"
)

type given = map[string][]float64

// with is a given set with some values over it.
func with(base given, more given) given {
	out := given{}
	for k, v := range base {
		out[k] = v
	}
	for k, v := range more {
		out[k] = v
	}
	return out
}

func allowableLine(t *testing.T, l strength.Evaluator, symbol string, v given) float64 {
	t.Helper()
	return lineOf(t, l, strength.Allowable, symbol, v)
}

func near(a, b, rel float64) bool { return math.Abs(a-b) <= rel*max(math.Abs(a), math.Abs(b)) }

func near0(a, b, abs float64) bool { return math.Abs(a-b) <= abs }

// TestGradeChoices: the choices of bolt-set are the grades of the materials list, all of them.
func TestGradeChoices(t *testing.T) {
	var choices []string
	for _, g := range boltSet.Info().Givens {
		if g.Symbol == "grade" {
			choices = g.Choices
		}
	}
	if len(choices) != len(boltGrades) || len(choices)-1 != len(material.BoltGradeNames()) {
		t.Fatalf("%d choices, %d grades, %d in the list", len(choices), len(boltGrades), len(material.BoltGradeNames()))
	}
	for i, name := range material.BoltGradeNames() {
		if choices[i+1] != name || boltGrades[i+1] != name {
			t.Errorf("choice %d is %s and %s, the list has %s", i+1, choices[i+1], boltGrades[i+1], name)
		}
	}
}

// TestTradeFact: a set of 3/4 in grade 8 bolts is said to hold about 90,000 lb (common practice, no source). For two bolts in tension that lies
// between proof and tensile strength of SAE J429, and far above any allowable load: grade 8 has 120 and 150 ksi, 3/4-10 has 0.334 in2.
func TestTradeFact(t *testing.T) {
	const lbf = 0.45359237 * 9.80665
	set := given{"F": {90000 * lbf}, "n": {2}, "d": {0.75 * usInch}, "P": {usInch / 10}, "thread": {1}, "grade": {3}}
	load := func(symbol string) float64 { return allowableLine(t, boltSet, symbol, set) / lbf }
	for symbol, want := range map[string]float64{"P_proof": 2 * 0.334 * 120e3, "P_yield": 2 * 0.334 * 130e3, "P_tensile": 2 * 0.334 * 150e3, "P_all": 2 * 0.334 * 150e3 / 4} {
		if got := load(symbol); !near(got, want, 0.003) {
			t.Errorf("%s = %.0f lb, from the tables %.0f", symbol, got, want)
		}
	}
	if !(load("P_proof") < 90000 && load("P_yield") < 90000 && 90000 < load("P_tensile") && load("P_all") < 90000/3) {
		t.Errorf("90,000 lb against proof %.0f, yield %.0f, tensile %.0f, allowable %.0f", load("P_proof"), load("P_yield"), load("P_tensile"), load("P_all"))
	}
}

// TestSeparation: 1800 lbf in on 5/8 in, K 0.2, uncertainty 35 %, loss 5 % (inputs of a US national laboratory's example): 14400 lb; by hand
// 0.65 x 14400 = 9360, less 5 % 8892; 1.35 x 14400 = 19440.
func TestSeparation(t *testing.T) {
	// inches and pounds throughout: the formulas do not know units
	v := given{"T_max": {1800}, "d": {0.625}, "K": {0.2}, "G": {0.35}, "k_loss": {0.05}, "P_t": {1000}}
	for symbol, want := range map[string]float64{"P_imax": 19440, "P_imin": 9360, "P_pmin": 8892, "P_sep": 1000} {
		if got := allowableLine(t, jointSeparation, symbol, v); !near(got, want, 1e-12) {
			t.Errorf("%s = %v, by hand %v", symbol, got, want)
		}
	}
}

// TestOblique: along either axis alone the strength is that axis's own; the two together are never stronger.
func TestOblique(t *testing.T) {
	u := func(a, b float64) float64 {
		return allowableLine(t, lugOblique, "U", given{"P_a": {a}, "P_tr": {b}, "P_u": {1000}, "P_tru": {500}})
	}
	if !near(u(1000, 0), 1, 1e-12) || !near(u(0, 500), 1, 1e-12) || !near(u(2000, 0), 2, 1e-12) {
		t.Errorf("alone: %v, %v, %v", u(1000, 0), u(0, 500), u(2000, 0))
	}
	for a := 0.0; a <= 1000; a += 50 {
		if both := u(a, 250); both < max(a/1000, 0.5) || both > a/1000+0.5+1e-12 {
			t.Errorf("both at %v: %v", a, both)
		}
	}
}

// TestPeaking derives the peaked load again: each lug works over the width that makes its bearing full, which moves the middle of each force
// towards the gap; the moment is that of the even spread at P_ub. Bisection on the load.
func TestPeaking(t *testing.T) {
	for _, gap := range []float64{0, 3} {
		v := given{"D": {20}, "t_1": {20}, "t_2": {40}, "g": {gap}, "F_tu": {600}, "P_1": {120e3}, "P_2": {240e3}}
		arm := 20.0/2 + 40.0/4 + gap
		Mu := math.Pi * 8000 / 32 * 1.56 * 600 // ultimate moment of the pin
		if got := allowableLine(t, pinUltimateBending, "P_ub", v); !near(got/2*arm, Mu, 1e-12) {
			t.Errorf("P_ub: moment %v, want %v", got/2*arm, Mu)
		}
		moment := func(P float64) float64 {
			outer, half := P/2/(120e3/20), P/2/(240e3/40) // widths in full bearing, on one side
			return P / 2 * (outer/2 + half/2 + gap)
		}
		low, high := 0.0, 1e6
		for range 200 {
			if mid := (low + high) / 2; moment(mid) < Mu {
				low = mid
			} else {
				high = mid
			}
		}
		if got := allowableLine(t, pinUltimateBending, "P_p", v); !near(got, low, 1e-9) {
			t.Errorf("gap %v: P_p = %v, bisection %v", gap, got, low)
		}
		if got, even := allowableLine(t, pinUltimateBending, "P_c", v), allowableLine(t, pinUltimateBending, "P_ub", v); got < even {
			t.Errorf("peaking lowers the strength: %v under %v", got, even)
		}
	}
}

// TestWideHole: the hole's edge is free of traction, equal pull both ways gives 2, pure shear 4, and far away the plate does not know the hole.
func TestWideHole(t *testing.T) {
	at := func(symbol string, v given) float64 { return allowableLine(t, wideHole, symbol, v) }
	edge := given{"a": {10}, "r": {10}, "S_x": {70}, "S_y": {-30}, "S_xy": {40}}
	for theta := -3.0; theta <= 3; theta += 0.25 {
		v := with(edge, given{"theta": {theta}})
		if rr, rt := at("s_rr", v), at("s_rt", v); !near0(rr, 0, 1e-9) || !near0(rt, 0, 1e-9) {
			t.Errorf("traction at the edge: %v, %v", rr, rt)
		}
		far := with(v, given{"r": {1e6}})
		s, k := math.Sincos(theta)
		if got, want := at("s_tt", far), 70*s*s-30*k*k-2*40*s*k; !near0(got, want, 1e-6) {
			t.Errorf("far away at %v: %v, want %v", theta, got, want)
		}
	}
	if got := at("s_tt", given{"a": {10}, "r": {10}, "S_x": {1}, "S_y": {1}, "theta": {0.7}}); !near(got, 2, 1e-12) {
		t.Errorf("equal pull: %v", got)
	}
	if got := at("s_tt", given{"a": {10}, "r": {10}, "S_xy": {1}, "theta": {-math.Pi / 4}}); !near(got, 4, 1e-12) {
		t.Errorf("pure shear: %v", got)
	}
}

// TestEngagement: at the length found for equal materials the shear area of the bolt's thread is twice its stress area, as shear strength is taken as
// half the tensile strength; a nut of half the strength wants J times as much.
func TestEngagement(t *testing.T) {
	v := given{"d": {16}, "P": {2}, "L_e": {16}, "D_1max": {14.21}, "d_2min": {14.503}, "d_min": {15.682}, "D_2max": {14.913}}
	L, As := allowableLine(t, engagement, "L_req", v), allowableLine(t, engagement, "A_s", v)
	if got := allowableLine(t, shearAreas, "A_ext", with(v, given{"L_e": {L}})); !near(got, 2*As, 1e-12) {
		t.Errorf("A_ext at L_req is %v, want twice %v", got, As)
	}
	weak := allowableLine(t, engagement, "L_req", with(v, given{"S_ui": {400}}))
	J := 2 * allowableLine(t, engagement, "A_ext", v) / allowableLine(t, engagement, "A_int", v)
	if !near(weak, L*max(J, 1), 1e-12) || weak <= L {
		t.Errorf("weaker nut: %v, want %v", weak, L*J)
	}
}

// TestStripping: the strength is a shear area times a strength, and grows with the engagement alone.
func TestStripping(t *testing.T) {
	v := given{"P": {2}, "L_e": {16}, "D_1max": {14.21}, "d_2min": {14.503}, "d_min": {15.682}, "D_2max": {14.913}, "S_ue": {800}, "S_ui": {400}}
	if got := allowableLine(t, strippingLoad, "F_c", v); !near(got, 0.577*400*569.12, 1e-3) { // internal area as printed in the table
		t.Errorf("F_c = %v", got)
	}
	once, twice := allowableLine(t, strippingLoad, "F_c", v), allowableLine(t, strippingLoad, "F_c", with(v, given{"L_e": {32}}))
	if !near(twice, 2*once, 1e-12) {
		t.Errorf("twice the engagement gives %v times", twice/once)
	}
}

// TestCouplingNut: a nut of 3 d with the rods in its middle gives each 1.5 d (trade practice).
func TestCouplingNut(t *testing.T) {
	if got := allowableLine(t, couplingNut, "L_half", given{"L_n": {36}, "d": {12}}); got != 18 {
		t.Errorf("L_half = %v", got)
	}
	if got := allowableLine(t, couplingNut, "L_half", given{"L_n": {36}, "d": {12}, "g": {4}, "e": {3}}); got != 13 {
		t.Errorf("off the middle: %v", got)
	}
}

// TestFastenerGroup: what a group turned round, mirrored, or loaded through its centroid does.
func TestFastenerGroup(t *testing.T) {
	base := given{"x": {-100, 0, 100, 40}, "y": {-75, 20, 75, -60}, "A_i": {1, 2, 1, 1.5}, "P_x": {3000}, "P_y": {-10000}, "x_P": {400}, "y_P": {30}, "tau_all": {80}}
	want := allowableLine(t, fastenerGroup, "F_max", base)
	turned, mirrored := given{"A_i": base["A_i"], "tau_all": {80}}, given{"A_i": base["A_i"], "tau_all": {80}}
	s, k := math.Sincos(0.7)
	for i, x := range base["x"] {
		y := base["y"][i]
		turned["x"], turned["y"] = append(turned["x"], k*x-s*y), append(turned["y"], s*x+k*y)
		mirrored["x"], mirrored["y"] = append(mirrored["x"], -x), append(mirrored["y"], y)
	}
	turned = with(turned, given{"P_x": {k*3000 + s*10000}, "P_y": {s*3000 - k*10000}, "x_P": {k*400 - s*30}, "y_P": {s*400 + k*30}})
	mirrored = with(mirrored, given{"P_x": {-3000}, "P_y": {-10000}, "x_P": {-400}, "y_P": {30}})
	for name, v := range map[string]given{"turned": turned, "mirrored": mirrored} {
		if got := allowableLine(t, fastenerGroup, "F_max", v); !near(got, want, 1e-9) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	if got := allowableLine(t, fastenerGroup, "F_max", given{"x": {0, 60, 60, 0}, "y": {0, 0, 60, 60}, "P_y": {-8000}, "x_P": {30}, "tau_all": {80}}); !near(got, 2000, 1e-12) {
		t.Errorf("through the centroid: %v", got)
	}
}

// TestHolesVanish: a small hole in a wide strip has the factor 3.
func TestHolesVanish(t *testing.T) {
	for _, curve := range []float64{0, 1} {
		if got := allowableLine(t, openHole, "K_gross", given{"d": {0.01}, "W": {1e4}, "curve": {curve}}); !near(got, 3, 1e-5) {
			t.Errorf("curve %v: %v", curve, got)
		}
	}
}

// TestAssembly: without friction the thread's pitch alone twists the bolt, and the torque is its work: F P/(2 pi), 0.16 P in the guide.
func TestAssembly(t *testing.T) {
	v := given{"d": {12}, "P": {1.75}, "d_w": {16.63}, "d_h": {13.5}, "mu_G": {0.02}, "R_p": {640}}
	F := allowableLine(t, assemblyPreload, "F_M", v)
	if top := allowableLine(t, assemblyPreload, "A_0", v) * 0.9 * 640; F >= top || F < 0.9*top {
		t.Errorf("F_M = %v of %v at almost no friction", F, top)
	}
	before := math.Inf(1)
	for mu := 0.02; mu < 0.4; mu += 0.02 {
		F := allowableLine(t, assemblyPreload, "F_M", with(v, given{"mu_G": {mu}}))
		if F >= before {
			t.Errorf("preload does not fall with friction at %v", mu)
		}
		before = F
	}
}
