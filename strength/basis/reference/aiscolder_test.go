package reference

import (
	"math"
	"testing"

	"lugwright/strength"
	"lugwright/strength/strengthtest"
)

// TestFormulas runs over all cards at once: every formula written in this folder must be reached.
func TestFormulas(t *testing.T) {
	all := strength.Basis{Card: strength.Card{Name: "all", Methods: []strength.Method{strength.Allowable}}}
	for _, b := range All() {
		all.Limits = append(all.Limits, b.Limits...)
	}
	strengthtest.Formulas(t, &all)
}

func TestLimits(t *testing.T) {
	for _, b := range All() {
		strengthtest.Limits(t, b)
	}
}

// lineOf evaluates a limit state and gives one of its lines.
func lineOf(t *testing.T, l strength.Evaluator, m strength.Method, symbol string, v map[string][]float64) float64 {
	t.Helper()
	c := strength.Calc{Trace: true, Method: m}
	var in [][]float64
	for _, g := range l.Info().Givens {
		x, ok := v[g.Symbol]
		if !ok {
			x = []float64{g.Default}
		}
		in = append(in, x)
	}
	if err := l.FromNumbers(&c, in); err != nil {
		t.Fatal(err)
	}
	for _, line := range c.Lines {
		if line.Symbol == symbol {
			return line.Value
		}
	}
	t.Fatalf("no line %s: %s", symbol, c.Why)
	return 0
}

// TestPatterns: the table of patterns against the lines summed. Source: elementary statics.
func TestPatterns(t *testing.T) {
	const b, d = 60.0, 100.0
	for kind, segs := range [][][4]float64{
		{{0, 0, 0, d}},
		{{0, 0, 0, d}, {b, 0, b, d}},
		{{0, 0, b, 0}, {0, d, b, d}},
		{{0, 0, 0, d}, {0, 0, b, 0}, {0, d, b, d}},
		{{0, 0, 0, d}, {b, 0, b, d}, {0, 0, b, 0}, {0, d, b, d}},
	} {
		lists := map[string][]float64{"w": {6}, "tau_all": {100}}
		for _, s := range segs {
			for i, name := range []string{"x1", "y1", "x2", "y2"} {
				lists[name] = append(lists[name], s[i])
			}
		}
		table := map[string][]float64{"pattern": {float64(kind)}, "b": {b}, "d": {d}, "w": {6}, "tau_all": {100}}
		for mine, summed := range map[string]string{"A_w": "L_w", "I_u": "I_x", "J_w": "I_p"} {
			got := lineOf(t, weldPattern, strength.Allowable, mine, table)
			want := lineOf(t, olderWeldGroup, strength.Allowable, summed, lists)
			if math.Abs(got/want-1) > 1e-12 {
				t.Errorf("pattern %d: %s = %v, summed %v", kind, mine, got, want)
			}
		}
	}
}

// TestLRFD2: the second Manual's C of a line under its own axis is phi times that of 1 in of E70 for each sixteenth: 0.75 x 1.856 kip/in. Source: AISC
// Manual, 1.392 kip/in for each sixteenth.
func TestLRFD2(t *testing.T) {
	C := lineOf(t, lrfd2WeldGroup, strength.LRFD, "C", map[string][]float64{
		"x1": {0}, "y1": {0}, "x2": {0}, "y2": {254}, "e_x": {0}, "w": {6}, "l": {254}, "F_EXX": {70 * usKsi},
	})
	if got := C / (usKsi * usInch); math.Abs(got-1.392) > 0.0005 {
		t.Errorf("C = %.4f, want 1.392", got)
	}
}
