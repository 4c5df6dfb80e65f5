package formula

// This file evaluates published worked examples line by line. All are from AISC, Companion to the Steel Construction Manual,
// Vol. 1: Design Examples, v16.0 (2023). The author rounds each step to three figures and carries the rounded one on, hence the
// tolerance of 0.5 %, and 0.8 % where several rounded steps chain (Example D.7).

import "testing"

type line struct {
	symbol, text string
	printed      float64
	unit         string
}

type worked struct {
	example   string
	tolerance float64
	givens    []line // text empty
	lines     []line
}

var published = []worked{
	{"D.7 pin-connected plate", 0.008,
		[]line{
			{"t", "", 0.5, "in"}, {"a", "", 2.25, "in"}, {"d", "", 1, "in"}, {"d_h", "", 1.03, "in"}, {"w", "", 4.25, "in"},
			{"F_y", "", 50, "ksi"}, {"F_u", "", 65, "ksi"},
		},
		[]line{
			{"b_e", "min(2*t + 0.63*in, (w - d_h)/2)", 1.61, "in"},
			{"P_t", "F_u*(2*t*b_e)", 105, "kip"},
			{"phiP_t", "0.75*P_t", 78.8, "kip"},
			{"A_sf", "2*t*(a + d/2)", 2.75, "in2"},
			{"P_s", "0.6*F_u*A_sf", 107, "kip"},
			{"R_n", "1.8*F_y*(d*t)", 45, "kip"},
			{"ASD", "R_n/2.00", 22.5, "kip"},
			{"P_y", "F_y*w*t", 107, "kip"},
		}},
	{"F.13 round bar in bending", 0.005,
		[]line{{"d", "", 1, "in"}, {"F_y", "", 50, "ksi"}},
		[]line{
			{"S", "pi*pow(d, 3)/32", 0.0982, "in3"},
			{"Z", "pow(d, 3)/6", 0.167, "in3"},
			{"M_n", "min(F_y*Z, 1.6*F_y*S)", 7.86, "kip*in"},
		}},
	{"D.5 slotted round tube", 0.005,
		[]line{
			{"x", "", 1.76, "in"}, {"l", "", 16, "in"}, {"F_u", "", 62, "ksi"}, {"t_p", "", 0.5, "in"}, {"t", "", 0.465, "in"}, {"A_g", "", 8.09, "in2"},
		},
		[]line{
			{"U", "pow(1 + pow(x/l, 3.2), -10)", 0.991, ""},
			{"A_n", "A_g - 2*(t_p + 0.0625*in)*t", 7.57, "in2"},
			{"A_e", "A_n*U", 7.5, "in2"},
			{"P_n", "F_u*A_e", 465, "kip"},
		}},
	{"J.1 long end-loaded fillet weld", 0.005,
		[]line{{"w", "", 0.1875, "in"}, {"l", "", 27, "in"}, {"F_EXX", "", 70, "ksi"}},
		[]line{
			{"lw", "l/w", 144, ""},
			{"beta", "when(lw <= 100, 1, max(1.2 - 0.002*lw, 0.6))", 0.912, ""},
			{"r_n", "0.6*F_EXX*w/sqrt(2)", 5.57, "kip/in"},
			{"R_n", "2*beta*l*r_n", 274, "kip"},
		}},
	{"J.2A fillet weld at 60 degrees", 0.005,
		[]line{{"w", "", 0.3125, "in"}, {"theta", "", 60, "deg"}, {"F_EXX", "", 70, "ksi"}},
		[]line{
			{"k_ds", "1.0 + 0.50*pow(sin(theta), 1.5)", 1.4, ""},
			{"r_n", "k_ds*0.6*F_EXX*w/sqrt(2)", 13, "kip/in"},
		}},
	{"II.C-1 spread width of a gusset", 0.005,
		[]line{{"w_0", "", 4, "in"}, {"L", "", 8, "in"}, {"t", "", 0.5, "in"}, {"F_y", "", 50, "ksi"}},
		[]line{
			{"l_w", "w_0 + 2*L*tan(30*deg)", 13.2, "in"},
			{"R_n", "F_y*l_w*t", 330, "kip"},
		}},
	{"II.C-2 block shear", 0.005,
		[]line{{"A_gv", "", 8.6, "in2"}, {"A_nv", "", 8.6, "in2"}, {"A_nt", "", 1.72, "in2"}, {"F_y", "", 50, "ksi"}, {"F_u", "", 65, "ksi"}},
		[]line{
			{"rupture", "0.60*F_u*A_nv + 1.0*F_u*A_nt", 447, "kip"},
			{"R_n", "min(rupture, 0.60*F_y*A_gv + 1.0*F_u*A_nt)", 370, "kip"},
		}},
	{"J.3 bolt in tension and shear", 0.005,
		[]line{{"d", "", 0.75, "in"}, {"F_nt", "", 90, "ksi"}, {"F_nv", "", 54, "ksi"}, {"V_u", "", 8, "kip"}},
		[]line{
			{"A_b", "pi/4*pow(d, 2)", 0.442, "in2"},
			{"f_rv", "V_u/A_b", 18.1, "ksi"},
			{"F_nt1", "min(1.3*F_nt - F_nt/(0.75*F_nv)*f_rv, F_nt)", 76.8, "ksi"},
			{"phiR_n", "0.75*F_nt1*A_b", 25.5, "kip"},
		}},
}

func TestPublished(t *testing.T) {
	for _, w := range published {
		t.Run(w.example, func(t *testing.T) {
			env := map[string]Value{}
			for _, g := range w.givens {
				env[g.symbol] = given(t, g.printed, g.unit)
			}
			for _, l := range w.lines {
				got, err := mustParse(t, l.text).Eval(env)
				want := given(t, l.printed, l.unit)
				if err != nil || got.Dim != want.Dim || !near(got.V/want.V, 1, w.tolerance) {
					t.Errorf("%s = %s: got %v %v %v, printed %v %s = %v", l.symbol, l.text, got.V, got.Dim, err, l.printed, l.unit, want.V)
				}
				env[l.symbol] = got
			}
		})
	}
}
