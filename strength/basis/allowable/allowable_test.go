package allowable

// The rules are common practice without published examples: they are held against numbers reckoned apart from the program, from elementary stress formulas,
// against properties, and against the tables of materials.

import (
	"math"
	"testing"

	"lugwright/strength"
	"lugwright/strength/material"
)

type values map[string]float64

func (v values) with(symbol string, x float64) values {
	out := values{}
	for k, y := range v {
		out[k] = y
	}
	out[symbol] = x
	return out
}

func evaluate(t *testing.T, id string, own, v values) *strength.Calc {
	t.Helper()
	l := Basis().Limit(id)
	if l == nil {
		t.Fatalf("no limit state %s", id)
	}
	factors, err := Basis().Card.FactorValues("", own)
	if err != nil {
		t.Fatal(err)
	}
	c := &strength.Calc{Method: strength.Allowable, Trace: true, Factors: factors}
	var in [][]float64
	for _, g := range l.Info().Givens {
		x, ok := v[g.Symbol]
		if !ok {
			x = g.Default
		}
		in = append(in, []float64{x})
	}
	if err := l.FromNumbers(c, in); err != nil {
		t.Fatal(err)
	}
	return c
}

func near(a, b, rel float64) bool { return math.Abs(a-b) <= rel*max(math.Abs(a), math.Abs(b)) }

var (
	pin     = values{"V_r": 10e3, "M_r": 100e3, "P_r": 20e3, "d": 25, "t": 12, "b": 30, "a": 30, "d_h": 25.5, "F_y": 300, "F_u": 500}
	section = values{
		"P_r": 10e3, "M_rx": 100e3, "M_ry": 400e3, "V_rx": 2e3, "V_ry": 5e3, "T_r": 50e3, "A": 1200, "A_x": 1200, "A_y": 1200,
		"S_x": 2400, "S_y": 20e3, "J": 57.6e3, "t": 12, "h": 100, "r": 3.4641, "L": 200, "F_y": 250, "F_u": 400,
	}
	bolt  = values{"V_r": 5e3, "T_r": 8e3, "d": 16, "A_s": 157, "threads": 1, "F_y": 640, "F_u": 800}
	hole  = values{"V_r": 5e3, "d": 16, "d_h": 18, "t": 10, "l_e": 30, "s": 60, "F_u": 400, "F_y": 250}
	ply   = values{"T_r": 5e3, "b": 40, "p": 80, "t": 15, "F_u": 400, "F_y": 250}
	weld  = values{"q_r": 100, "w": 6, "F_EXX": 480, "t": 10, "n": 2, "F_y": 250, "F_u": 400}
	block = values{"V_r": 5e3, "t": 10, "n_v": 2, "L_gv": 90, "n_hv": 1.5, "L_gt": 60, "n_ht": 1, "d_h": 18, "U_bs": 0.5, "F_y": 250, "F_u": 400}
	wall  = values{"M_r": 1e6, "N_r": 2e3, "t": 8, "w": 120, "h": 200, "s": 80, "F_y": 250}
	plate = values{"P_r": 10e3, "e": 60, "a": 150, "b": 100, "t": 10, "F_y": 250, "F_u": 400}
)

// TestByHand: with the factors 4 on tensile strength and 1.5 on yield, reckoned apart from the program, from elementary formulas. Allowed stress of F_y 250,
// F_u 400: 100 MPa; of 300, 500: 125; of 640, 800: 200.
func TestByHand(t *testing.T) {
	for _, c := range []struct {
		id               string
		v                values
		demand, capacity float64
	}{
		{"pin-shear", pin, 27.162, 72.169},          // 4/3*10000/490.87
		{"pin-bending", pin, 65.190, 125},           // 100000/1533.98
		{"pin-combined", pin, 74.127, 125},          // sqrt(65.190^2 + 3*20.372^2)
		{"pin-bearing", pin, 66.667, 125},           // 20000/300
		{"pin-plate-tension", pin, 32.680, 125},     // 20000/(24*25.5)
		{"pin-plate-tear-out", pin, 27.778, 72.169}, // 20000/720
		{"weak-axis-bending", section.with("M_r", 100e3).with("S", 2400), 41.667, 100},
		{"axial-force", section, 8.3333, 100},
		{"section-shear", section, 17.148, 57.735},    // 1.5*sqrt(1.6667^2+4.1667^2) + 10.417
		{"section-interaction", section, 74.608, 100}, // 8.3333+41.667+20 = 70; tau 14.905: sqrt(4900 + 666.4)
		{"bolt-shear", bolt, 31.847, 115.470},
		{"bolt-tension", bolt, 50.955, 200},
		{"bolt-combined", bolt, 75.094, 200},                // sqrt(50.955^2 + 3*31.847^2)
		{"bolt-bearing", hole, 5000, 16000},                 // 100*160; tear-out 2*21*10*57.735 = 24249
		{"bolt-bearing", hole.with("l_e", 20), 5000, 12702}, // 2*11*10*57.735
		{"bolt-prying", ply, 12.247, 15},                    // sqrt(6*5000*40/(80*100)) = sqrt(150)
		{"fillet-strength", weld, 23.574, 69.282},           // 100/4.242; 480/(4*1.73205)
		{"fillet-base-metal", weld, 100, 288.68},            // 57.735*min(6, 5)
		{"fillet-shear-flow", weld, 100, 577.35},            // 57.735*min(12, 10); weld 2*4.242*69.282 = 587.8
		{"block-shear", block, 5000, 93746},                 // A_nv 1260, A_nt 420: 72746 + 21000
		// Openings of 13 and 5 mm, V_x 4 kN: A_nv 1130, A_nt 370: 65241 + 18500; across 370*57.735 + 0.5*100*565 = 49612;
		// sqrt(5000^2 + (4000*83741/49612)^2)
		{"block-shear", block.with("L_ov", 13).with("L_ot", 5).with("V_x", 4e3), 8402.1, 83741},
		{"wall-bending", wall, 531.25, 62.5},         // M_s 600000 + 80000 = 680000; 6*680000/(120*64) = 531.25
		{"bracket-plate-shear", plate, 10.0, 57.735}, // V = 5547, b_p = 83.205: 1.5*5547/832.05
	} {
		k := evaluate(t, c.id, nil, c.v)
		if !near(k.Demand, c.demand, 1e-4) || !near(k.Capacity, c.capacity, 1e-4) {
			t.Errorf("%s: %.6g against %.6g, by hand %v against %v (%s)", c.id, k.Demand, k.Capacity, c.demand, c.capacity, k.Why)
		}
	}
}

// TestFactors: what governs follows the factors; bearing follows its own too.
func TestFactors(t *testing.T) {
	for _, c := range []struct {
		id   string
		own  values
		v    values
		want float64
	}{
		{"weak-axis-bending", values{"n_u": 1.5}, section.with("M_r", 1).with("S", 1), 250 / 1.5},
		{"weak-axis-bending", values{"n_y": 5}, section.with("M_r", 1).with("S", 1), 50},
		{"weak-axis-bending", values{"n_u": 2}, section.with("M_r", 1).with("S", 1).with("F_u", 260), 130},
		{"pin-bearing", values{"k_p": 1.5}, pin, 187.5},
		{"wall-bending", nil, wall.with("F_u", 400), 100},
	} {
		if got := evaluate(t, c.id, c.own, c.v).Capacity; !near(got, c.want, 1e-12) {
			t.Errorf("%s with %v: %v, want %v", c.id, c.own, got, c.want)
		}
	}
}

// TestYieldNotKnown: without a yield strength the rule speaks only where tensile strength governs for every carbon steel of the tables.
func TestYieldNotKnown(t *testing.T) {
	for _, name := range material.GradeNames() {
		g, err := material.LookupGrade(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range g.Bands {
			if g.Family == material.CarbonSteel && b.FuMPa > 2*b.FyMPa {
				t.Errorf("%s: F_u/F_y is %v", name, b.FuMPa/b.FyMPa)
			}
		}
	}
	bare := hole.with("F_y", 0)
	if c := evaluate(t, "bolt-bearing", nil, bare); c.Verdict != strength.Pass || !near(c.Capacity, 16000, 1e-12) {
		t.Errorf("factor 4: %s at %v (%s)", c.Verdict, c.Capacity, c.Why)
	}
	if c := evaluate(t, "bolt-bearing", values{"n_u": 2}, bare); c.Verdict != strength.Outside {
		t.Errorf("factor 2: %s", c.Verdict)
	}
	if c := evaluate(t, "fillet-strength", values{"n_u": 2, "n_y": 2}, weld); c.Verdict != strength.Outside {
		t.Errorf("filler at a factor of 2: %s", c.Verdict)
	}
}

// TestLinear: stresses grow with the load, all components alike; section stress does not know which way a force turns.
func TestLinear(t *testing.T) {
	loads := []string{"P_r", "M_r", "M_rx", "M_ry", "V_r", "V_rx", "V_ry", "T_r", "N_r", "q_r"}
	for id, v := range map[string]values{
		"pin-shear": pin, "pin-bending": pin, "pin-combined": pin, "pin-bearing": pin, "pin-plate-tension": pin, "pin-plate-tear-out": pin,
		"section-shear": section, "section-interaction": section, "section-buckling": section.with("P_r", -1e4), "axial-force": section,
		"bolt-combined": bolt, "fillet-strength": weld, "wall-bending": wall, "bracket-plate": plate,
	} {
		twice := v
		for _, l := range loads {
			if x, ok := v[l]; ok {
				twice = twice.with(l, 2*x)
			}
		}
		if a, b := evaluate(t, id, nil, v).Demand, evaluate(t, id, nil, twice).Demand; !near(2*a, b, 1e-12) {
			t.Errorf("%s: %v, twice the load %v", id, a, b)
		}
	}
	for _, id := range []string{"section-interaction", "axial-force"} {
		if a, b := evaluate(t, id, nil, section).Demand, evaluate(t, id, nil, section.with("P_r", -1e4)).Demand; a != b {
			t.Errorf("%s: %v, reversed %v", id, a, b)
		}
	}
	if c := evaluate(t, "bolt-prying", nil, ply.with("T_r", 2e4)); !near(c.Demand, 2*math.Sqrt(150), 1e-12) {
		t.Errorf("four times the tension wants %v, not twice the thickness", c.Demand)
	}
}

// TestVonMises: one stress alone gives as much use as its own limit state, and the worst of the parts is never above the whole.
func TestVonMises(t *testing.T) {
	zero := section
	for _, l := range []string{"P_r", "M_rx", "M_ry", "V_rx", "V_ry", "T_r"} {
		zero = zero.with(l, 0)
	}
	one := func(id string, v values) float64 { return evaluate(t, id, nil, v).Utilisation() }
	bend := zero.with("M_rx", 1e5)
	if a, b := one("section-interaction", bend), one("weak-axis-bending", section.with("M_r", 1e5).with("S", 2400)); !near(a, b, 1e-12) {
		t.Errorf("bending alone: %v and %v", a, b)
	}
	if a, b := one("section-interaction", zero.with("T_r", 5e4)), one("section-shear", zero.with("T_r", 5e4)); !near(a, b, 1e-12) {
		t.Errorf("torsion alone: %v and %v", a, b)
	}
	if a, b := one("bolt-combined", bolt.with("T_r", 0)), one("bolt-shear", bolt); !near(a, b, 1e-12) {
		t.Errorf("shear of a bolt alone: %v and %v", a, b)
	}
}

// TestBuckling: Euler and Johnson meet at half the yield stress, tension and short plates do not buckle before they yield, and a slender ear
// bent edgewise does: M_cr of a 2 x 100 plate, 500 free, is pi/(2 x 500)*E*t^3*h/(6 sqrt(2.6)) by hand for a thin one, 0.9937 of it with J less by 0.63 t/h.
func TestBuckling(t *testing.T) {
	push := section.with("P_r", -1e4).with("M_ry", 0)
	s1 := math.Sqrt(2 * math.Pi * math.Pi * E / 250)
	for _, k := range []float64{1 - 1e-9, 1 + 1e-9} {
		U := evaluate(t, "section-buckling", nil, push.with("L", k*s1*3.4641/2)).Demand
		if want := 4 * 1e4 / (1200 * 125); !near(U, want, 1e-6) {
			t.Errorf("at the joint of the two curves U = %v, want %v", U, want)
		}
	}
	if U := evaluate(t, "section-buckling", nil, push.with("L", 0)).Demand; !near(U, 4*1e4/(1200*250.0), 1e-12) {
		t.Errorf("a plate of no length: %v", U)
	}
	if U := evaluate(t, "section-buckling", nil, push.with("P_r", 1e4)).Demand; U != 0 {
		t.Errorf("tension: %v", U)
	}
	slender := push.with("P_r", 0).with("M_ry", 1e5).with("t", 2).with("h", 100).with("L", 500)
	Mcr := math.Pi / 1000 * E * 8 * 100 / (6 * math.Sqrt(2.6)) * math.Sqrt(1-0.63*2/100)
	if U := evaluate(t, "section-buckling", nil, slender).Demand; !near(U, 4*1e5/Mcr, 1e-9) {
		t.Errorf("lateral buckling: %v, by hand %v", U, 4*1e5/Mcr)
	}
	before := 0.0
	for L := 0.0; L <= 3000; L += 10 {
		U := evaluate(t, "section-buckling", nil, section.with("P_r", -1e4).with("L", L)).Demand
		if U < before*(1-1e-12) {
			t.Fatalf("a longer plate buckles later: %v at L = %v", U, L)
		}
		before = U
	}
}

// TestFreeEdge: the widest edge is 0.44 sqrt(E/F_y) of its thickness.
func TestFreeEdge(t *testing.T) {
	wide := 10 * math.Sqrt(0.425*math.Pi*math.Pi/(12*0.91)/2) * math.Sqrt(E/250.0)
	if !near(wide/10/math.Sqrt(E/250.0), 0.4383, 1e-3) {
		t.Errorf("coefficient %v", wide/10/math.Sqrt(E/250.0))
	}
	for k, want := range map[float64]strength.Verdict{0.999: strength.Pass, 1.001: strength.Outside} {
		if c := evaluate(t, "free-edge", nil, values{"b": k * wide, "t": 10, "F_y": 250}); c.Verdict != want {
			t.Errorf("%v of the widest edge: %s (%s)", k, c.Verdict, c.Why)
		}
	}
}

// TestBoltYield: the rules find the yield strength of a grade at its diameter.
func TestBoltYield(t *testing.T) {
	for _, c := range []struct {
		grade string
		d     float64
		want  float64
	}{{"8.8", 16, 640}, {"8.8", 20, 660}, {"10.9", 20, 940}, {"no such", 20, 0}, {"8.8", 100, 0}} {
		if got := yieldOf(&strength.Bolt{Grade: c.grade, D: c.d}); got != c.want {
			t.Errorf("%s at %v: %v, want %v", c.grade, c.d, got, c.want)
		}
	}
	factors, _ := Basis().Card.FactorValues("", nil)
	for _, r := range boltRules {
		c := strength.Calc{Method: strength.Allowable, Factors: factors}
		r.Check(&c, &strength.Bolt{V: 1, T: 1, D: 20, As: 245, Fub: 800, Grade: "no such"})
		if c.Verdict == strength.Pass {
			t.Errorf("%s passes a bolt of unknown grade", r.Of.Info().ID)
		}
	}
}

// TestThickerHelps: more material never raises the use.
func TestThickerHelps(t *testing.T) {
	for _, c := range []struct {
		id, symbol string
		v          values
		from, to   float64
	}{
		{"pin-plate-tension", "b", pin, 1, 100}, {"pin-plate-tension", "t", pin, 1, 60}, {"pin-plate-tear-out", "a", pin, 1, 100},
		{"bolt-bearing", "l_e", hole, 10, 100}, {"bolt-bearing", "s", hole, 19, 200}, {"bolt-bearing", "t", hole, 1, 60},
		{"bolt-prying", "t", ply, 1, 60}, {"bolt-prying", "p", ply, 10, 300}, {"fillet-base-metal", "t", weld, 1, 60}, {"fillet-strength", "w", weld, 1, 20},
		{"fillet-shear-flow", "t", weld, 1, 60}, {"block-shear", "L_gv", block, 30, 300}, {"wall-bending", "t", wall, 1, 60}, {"bracket-plate", "t", plate, 1, 60},
	} {
		before := math.Inf(1)
		for k := range 200 {
			x := c.from + (c.to-c.from)*float64(k)/199
			now := evaluate(t, c.id, nil, c.v.with(c.symbol, x)).Utilisation()
			if now > before*(1+1e-12) {
				t.Errorf("%s: use rises from %v to %v at %s = %v", c.id, before, now, c.symbol, x)
				break
			}
			before = now
		}
	}
}
