package bth1

// No published example was found for ASME BTH-1. The limit states are held against the printed formulas (suite), against properties and
// limits, and against a second derivation: shear planes measured on the drawn plate, and numbers reckoned by hand.

import (
	"math"
	"testing"

	"lugwright/strength"
	"lugwright/strength/practice"
	"lugwright/strength/strengthtest"
)

// TestFormulas: R is a + D_h/2 in the whole plate, so that its need always holds there.
func TestFormulas(t *testing.T) {
	strengthtest.Formulas(t, Basis(),
		"pin-plate-weakest: R > D_h/2: fails",
	)
}

func TestLimits(t *testing.T) { strengthtest.Limits(t, Basis()) }

type values map[string]float64

func (v values) with(symbol string, x float64) values {
	out := values{}
	for k, y := range v {
		out[k] = y
	}
	out[symbol] = x
	return out
}

// evaluate gives a limit state at a category of the design factor.
func evaluate(t *testing.T, id, category string, v values) *strength.Calc {
	t.Helper()
	l := Basis().Limit(id)
	if l == nil {
		t.Fatalf("no limit state %s", id)
	}
	factors, err := Basis().Card.FactorValues(category, nil)
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

func line(t *testing.T, c *strength.Calc, symbol string) float64 {
	t.Helper()
	for _, l := range c.Lines {
		if l.Symbol == symbol {
			return l.Value
		}
	}
	t.Fatalf("no line %s (%s)", symbol, c.Why)
	return 0
}

func near(a, b, rel float64) bool { return math.Abs(a-b) <= rel*max(math.Abs(a), math.Abs(b)) }

var plate = values{"P_r": 1e4, "t": 20, "b_e": 50, "a": 45, "R": 70.5, "D_p": 50, "D_h": 51, "F_y": 250, "F_u": 400}

// TestByHand: a plate of 20 mm, F_y 250, F_u 400, hole 51, pin 50, 50 mm at the sides, 45 mm at a straight end; category B. Reckoned by
// hand: b_n = 50*0.96*sqrt(1.02) = 48.478; P_t = 400/3.6*2*20*48.478 = 215.46 kN; P_b = 400/3.6*(50.85 + 46/1.98039)*20 = 164.62 kN;
// phi = 53.9216 deg, cos 0.588880, A_v = 2*(45 + 25*0.411120)*20 = 2211.1, P_v = 0.7*400/3.6*2211.1 = 171.98 kN; P_p = 312.5/3*1000 = 104.17 kN.
func TestByHand(t *testing.T) {
	c := evaluate(t, "pin-plate-weakest", "category B", plate)
	for symbol, want := range map[string]float64{"b_n": 48.478, "P_t": 215460, "P_b": 164620, "A_v": 2211.1, "P_v": 171980, "P_p": 104170, "P_c": 104170} {
		if got := line(t, c, symbol); !near(got, want, 1e-4) {
			t.Errorf("%s = %v, by hand %v", symbol, got, want)
		}
	}
}

// TestShearPlanes measures the two planes on the drawn plate: each starts where the pin, pressed against the far side of its hole, is
// touched at phi off the axis, runs along the axis, and ends at the plate's end, found by bisection.
func TestShearPlanes(t *testing.T) {
	for _, g := range []values{
		plate, plate.with("r", 70.5), plate.with("D_p", 35), plate.with("D_p", 35).with("r", 70.5), plate.with("a", 8).with("r", 33.5), plate.with("r", 200),
	} {
		d, dh, a, r := g["D_p"], g["D_h"], g["a"], g["r"]
		phi := 55 * d / dh * math.Pi / 180
		x, y := (dh-d)/2+d/2*math.Cos(phi), d/2*math.Sin(phi)
		end := a + dh/2
		inside := func(x float64) bool { return x <= end }
		if r > 0 { // an arc that passes the end point on the axis
			inside = func(x float64) bool { return math.Hypot(x-(end-r), y) <= r }
		}
		low, high := x, end
		for range 200 {
			if mid := (low + high) / 2; inside(mid) {
				low = mid
			} else {
				high = mid
			}
		}
		got := line(t, evaluate(t, "pin-plate-tear-out", "category B", g), "A_v")
		if want := 2 * (low - x) * g["t"]; !near(got, want, 1e-9) {
			t.Errorf("A_v = %v, measured %v for %v", got, want, g)
		}
	}
}

// TestProportional: what a factor does to a capacity.
func TestProportional(t *testing.T) {
	for _, c := range []struct {
		limit, symbol string
		v             values
		factor        float64
	}{
		{"pin-plate-tension", "F_u", plate.with("dishing", 1).with("b_e", 20), 2},
		{"pin-plate-fracture", "t", plate, 2},
		{"pin-plate-fracture", "F_u", plate, 2},
		{"pin-plate-tear-out", "t", plate, 2},
		{"pin-plate-tear-out", "F_u", plate, 2},
		{"pin-bearing", "t", plate, 2},
		{"pin-bearing", "D_p", plate, 2},
		{"pin-bearing", "F_y", plate, 2},
	} {
		once := evaluate(t, c.limit, "category B", c.v).Capacity
		twice := evaluate(t, c.limit, "category B", c.v.with(c.symbol, 2*c.v[c.symbol])).Capacity
		if !near(twice, c.factor*once, 1e-12) {
			t.Errorf("%s: doubling %s gives %v times, want %v", c.limit, c.symbol, twice/once, c.factor)
		}
	}
}

// TestCategories: every strength of category A is 3/2 of category B; contact pressure is a service limit without N_d.
func TestCategories(t *testing.T) {
	for _, l := range Basis().Limits {
		if l == practice.PinContact {
			continue
		}
		a, b := evaluate(t, l.Info().ID, "category A", plate).Capacity, evaluate(t, l.Info().ID, "category B", plate).Capacity
		if !near(a, 1.5*b, 1e-12) {
			t.Errorf("%s: category A %v, B %v", l.Info().ID, a, b)
		}
	}
}

// TestNeverFalls: more plate, or a closer pin, never lowers a capacity.
func TestNeverFalls(t *testing.T) {
	for _, c := range []struct {
		limit, symbol string
		from, to      float64
	}{
		{"pin-plate-tension", "b_e", 1, 300},
		{"pin-plate-tension", "t", 1, 60},
		{"pin-plate-tension", "D_p", 5, 51},
		{"pin-plate-fracture", "b_e", 1, 300},
		{"pin-plate-fracture", "R", 26, 300},
		{"pin-plate-fracture", "D_p", 5, 51},
		{"pin-plate-tear-out", "a", 1, 300},
		{"pin-plate-tear-out", "D_p", 5, 51},
		{"pin-plate-weakest", "t", 1, 60},
		{"pin-plate-weakest", "b_e", 1, 300},
	} {
		before := 0.0
		for k := range 300 {
			x := c.from + (c.to-c.from)*float64(k)/299
			now := evaluate(t, c.limit, "category B", plate.with(c.symbol, x)).Capacity
			if now < before*(1-1e-12) {
				t.Errorf("%s: capacity falls from %v to %v at %s = %v", c.limit, before, now, c.symbol, x)
				break
			}
			before = now
		}
	}
}

// TestClearance: C_r is 1 for a tight pin and 0.725 for one that is small in its hole; the permitted 1 holds above 0.90 alone.
func TestClearance(t *testing.T) {
	Cr := func(v values) float64 { return line(t, evaluate(t, "pin-plate-fracture", "category A", v), "C_r") }
	for _, c := range []struct {
		v    values
		want float64
	}{
		{plate.with("D_p", 51).with("clearance", 1), 1},
		{plate.with("D_p", 1).with("D_h", 1000).with("R", 2000), 0.725},
		{plate.with("D_p", 46), 1},
		{plate.with("D_p", 46).with("clearance", 1), 1 - 0.275*math.Sqrt(1-46.0*46/51/51)},
		{plate.with("D_p", 45.9), 1 - 0.275*math.Sqrt(0.19)},
	} {
		if got := Cr(c.v); !near(got, c.want, 1e-6) {
			t.Errorf("C_r = %v, want %v", got, c.want)
		}
	}
}

// TestBesideHole: a narrow side acts whole, a plate that may dish with four times its thickness at most; the width that acts meets the
// actual one where b_e/D_h = (0.6 F_u/F_y)^2.
func TestBesideHole(t *testing.T) {
	beff := func(v values) float64 { return line(t, evaluate(t, "pin-plate-tension", "", v), "b_eff") }
	if got := beff(plate.with("b_e", 10)); got != 10 {
		t.Errorf("narrow: %v", got)
	}
	if got := beff(plate.with("t", 3)); got != 12 {
		t.Errorf("dishing: %v", got)
	}
	if got := beff(plate.with("t", 3).with("dishing", 1)); !near(got, 48.478, 1e-4) {
		t.Errorf("held flat: %v", got)
	}
	if b := 0.96 * 0.96 * 51.0; !near(beff(plate.with("b_e", b*0.999)), b*0.999, 1e-12) || beff(plate.with("b_e", b*1.001)) >= b*1.001 {
		t.Errorf("the width that acts does not part from the actual one at %v", b)
	}
}

// TestBore: what the rules make of a pull, a push and a force askew.
func TestBore(t *testing.T) {
	factors, _ := Basis().Card.FactorValues("", nil)
	f := strength.Bore{P: 1e4, Pull: 1e4, D: 50, Dh: 51, T: 20, A: 45, B: 50, W: 151, Least: 40, Fy: 250, Fu: 400, FyPin: 350, E: 2e5, EPin: 2e5, Service: 1}
	for _, load := range []struct {
		pull float64
		want strength.Verdict
	}{{1e4, strength.Pass}, {-1e4, strength.NotApplied}, {0, strength.Pass}} {
		f.Pull = load.pull
		for _, r := range Basis().Rules.Bore {
			c := strength.Calc{Method: strength.Allowable, Factors: factors}
			r.Check(&c, &f)
			want := load.want
			if id := r.Of.Info().ID; id == "pin-bearing" || id == "pin-contact-pressure" {
				want = strength.Pass
			}
			if c.Verdict != want {
				t.Errorf("%s at a pull of %v: %s (%s), want %s", r.Of.Info().ID, load.pull, c.Verdict, c.Why, want)
			}
		}
	}
}
