package reference

import (
	"math"
	"testing"

	"lugwright/strength"
)

func evaluated(t *testing.T, l strength.Evaluator, v given) *strength.Calc {
	t.Helper()
	c := &strength.Calc{Method: strength.Allowable, Trace: true}
	var in [][]float64
	for _, g := range l.Info().Givens {
		x, ok := v[g.Symbol]
		if !ok {
			x = []float64{g.Default}
		}
		in = append(in, x)
	}
	if err := l.FromNumbers(c, in); err != nil {
		t.Fatal(err)
	}
	return c
}

// TestWaterTanks: common practice, no source: two water tanks are said to weigh 400 to 450 lb when full, and to hang on 1/8 in sheet with threaded
// rods about 16 in apart under spreader washers. The results are ours: at rest a strip of A36 sheet (24 ksi allowed) carries them with a tenth
// to spare and sags 5/16 in; at 3 g it is bent for good; a flat sheet on four rods sags by more than plate theory covers, so its edges
// want flanges.
func TestWaterTanks(t *testing.T) {
	const lbf, in, ksi = 4.4482216152605, 25.4, 6.894757293168
	tanks := given{"W": {450 * lbf}, "L": {16 * in}, "a": {16 * in}, "b": {16 * in}, "s": {16 * in}, "t": {in / 8}, "E": {29000 * ksi}, "sigma_lim": {24 * ksi}, "y_lim": {in / 4}, "T_all": {1100 * lbf}, "n_s": {2}, "g_v": {1}, "k_s": {1}}
	for _, want := range []struct {
		l       strength.Evaluator
		g       float64
		verdict strength.Verdict
		demand  float64
	}{
		{trayStrip, 1, strength.Pass, 21.6 * ksi},
		{trayStrip, 3, strength.Fail, 64.8 * ksi},
		{traySag, 1, strength.Fail, 0.3178 * in},
		{trayOnRods, 1, strength.Outside, 0},
		{hangerShare, 3, strength.Pass, 675 * lbf},
	} {
		v := with(tanks, given{"W": {450 * lbf * want.g}})
		c := evaluated(t, want.l, v)
		if c.Verdict != want.verdict || want.demand > 0 && !near(c.Demand, want.demand, 1e-3) {
			t.Errorf("%s at %g g: %s, %g, want %s, %g", want.l.Info().ID, want.g, c.Verdict, c.Demand, want.verdict, want.demand)
		}
	}
}

// TestHangers: a demo of our own, 210 kg on four rods 540 mm apart: 3090 N on two diagonal rods at 3 g, 1545 N when shared alike. The couple of
// a side force pulls one line as much as it pushes the other, and both ways of numbering the lines give one answer.
func TestHangers(t *testing.T) {
	v := given{"W": {210 * 9.80665}, "g_v": {3}, "s": {540}, "n_s": {2}, "k_s": {1}, "T_all": {1e4}}
	if got := evaluated(t, hangerShare, v).Demand; !near(got, 3090, 1e-3) {
		t.Errorf("two diagonal rods: %g N", got)
	}
	if got := evaluated(t, hangerShare, with(v, given{"k_s": {0.5}})).Demand; !near(got, 1545, 1e-3) {
		t.Errorf("shared alike: %g N", got)
	}
	if c := evaluated(t, hangerShare, with(v, given{"k_s": {0.3}})); c.Verdict != strength.Outside {
		t.Errorf("less than the even share: %s", c.Verdict)
	}
	side := with(v, given{"g_v": {1}, "g_h": {1}, "h": {400}})
	high, low := allowableLine(t, hangerShare, "F_max", side), allowableLine(t, hangerShare, "F_min", side)
	if !near(high+low, 210*9.80665, 1e-12) || !near(high-low, 2*210*9.80665*400/540, 1e-12) || low >= 0 {
		t.Errorf("lines bear %g and %g", high, low)
	}
	if got := allowableLine(t, hangerShare, "T_min", side); got >= 0 {
		t.Errorf("the pushed line is not seen: %g", got)
	}
}

// TestStripTable integrates each row again: end moments by three moments, the deflection's greatest value by steps.
func TestStripTable(t *testing.T) {
	for i, row := range stripTable {
		n := i + 1
		m := make([]float64, n+1)
		for range 200 {
			for k := 1; k < n; k++ {
				m[k] = (0.5 - m[k-1] - m[k+1]) / 4
			}
		}
		var moment, reaction, sag, before float64
		for k := range n {
			a, b := m[k], m[k+1]
			left := 0.5 + a - b
			for j := range 2001 {
				x := float64(j) / 2000
				moment = max(moment, math.Abs(-a+left*x-x*x/2))
				sag = max(sag, (x-2*x*x*x+x*x*x*x)/24-a*(2*x-3*x*x+x*x*x)/6-b*(x-x*x*x)/6)
			}
			reaction, before = max(reaction, before+left), 1-left
		}
		for j, want := range []float64{moment, max(reaction, before), sag, 0.5 - m[1]} {
			if math.Abs(row[j]/want-1) > 1e-4 {
				t.Errorf("%d spans, column %d: %g, integrated %g", n, j, row[j], want)
			}
		}
	}
}

// TestSheetOnRods: across the middle of a sheet on four corners the moments sum to W a/8; the free edge has more than the mean, 1/8. A rectangle is no
// worse than its square under the same pressure, and a thicker sheet is always better.
func TestSheetOnRods(t *testing.T) {
	v := given{"W": {500}, "a": {300}, "b": {300}, "t": {3}, "E": {2e5}, "sigma_lim": {200}}
	if k := allowableLine(t, trayOnRods, "m_edge", v) / (500.0 / 8); k < 1 || k > 1.3 {
		t.Errorf("edge moment %g of the mean", k)
	}
	if a, b := evaluated(t, trayOnRods, v).Demand, evaluated(t, trayOnRods, with(v, given{"W": {250}, "b": {150}})).Demand; !near(a, b, 1e-12) {
		t.Errorf("rectangle %g, square %g", b, a)
	}
	for _, l := range []strength.Evaluator{trayOnRods, trayPlate, trayStrip} {
		last := math.Inf(1)
		for _, thick := range []float64{2, 3, 4, 6} {
			c := evaluated(t, l, with(v, given{"W": {50}, "t": {thick}, "L": {300}}))
			if c.Demand >= last {
				t.Errorf("%s: %g MPa at %g mm after %g", l.Info().ID, c.Demand, thick, last)
			}
			last = c.Demand
		}
	}
	if held, free := evaluated(t, trayPlate, with(v, given{"edges": {1}})), evaluated(t, trayPlate, v); held.Demand <= free.Demand {
		t.Errorf("square: held edges %g, free to turn %g; the printed table has more at held edges", held.Demand, free.Demand)
	}
}

// TestTrayFoot: a smaller foot stresses more; a point's stress is finite, that of the source's r'; a thicker sheet is better.
func TestTrayFoot(t *testing.T) {
	v := given{"W": {100}, "a": {300}, "b": {200}, "t": {3}, "E": {2e5}, "sigma_lim": {200}}
	last := 0.0
	for _, r := range []float64{50, 30, 10, 3, 1, 0} {
		c := evaluated(t, trayFoot, with(v, given{"r_0": {r}}))
		if c.Demand <= last || math.IsInf(c.Demand, 0) {
			t.Errorf("foot of %g mm: %g MPa after %g", r, c.Demand, last)
		}
		last = c.Demand
	}
	if a, b := evaluated(t, trayFoot, with(v, given{"r_0": {20}})).Demand, evaluated(t, trayFoot, with(v, given{"r_0": {20}, "t": {6}})).Demand; !near(a, 4*b, 1e-12) {
		t.Errorf("twice the thickness: %g and %g", a, b)
	}
}
