package aisc360

// Properties of the members' limit states where no published example was found.

import (
	"math"
	"testing"

	"lugwright/strength"
)

// Short plates yield on the spread width whatever K; long ones follow Euler: F_n falls with the square of the length.
func TestSpreadBuckling(t *testing.T) {
	v := values{"P_r": 0, "w_0": 100, "L": 0, "L_b": 10, "K": 0.65, "t": 10, "F_y": 300}
	short := check(t, "spread-width-buckling", strength.LRFD, v)
	if !same(line(t, short, "P_n"), 300*100*10) {
		t.Errorf("short plate: P_n %g, want F_y A", line(t, short, "P_n"))
	}
	long := v.with("L_b", 1000)
	one, two := check(t, "spread-width-buckling", strength.LRFD, long), check(t, "spread-width-buckling", strength.LRFD, long.with("L_b", 2000))
	if !same(line(t, one, "P_n"), 4*line(t, two, "P_n")) {
		t.Errorf("Euler: %g at 1 m, %g at 2 m", line(t, one, "P_n"), line(t, two, "P_n"))
	}
}

// A thick short tube yields in shear; the strength never grows with the length or falls with the wall.
func TestRoundTubeShear(t *testing.T) {
	v := values{"V_r": 0, "D": 100, "t": 8, "L_v": 500, "F_y": 300}
	if got := line(t, check(t, "round-tube-shear", strength.LRFD, v), "F_cr"); !same(got, 180) {
		t.Errorf("stocky tube: F_cr %g, want 0.6 F_y", got)
	}
	last := math.Inf(1)
	for _, wall := range []float64{8, 4, 2, 1, 0.5} {
		c := check(t, "round-tube-shear", strength.LRFD, v.with("t", wall))
		if c.Capacity > last {
			t.Errorf("thinner wall %g mm is stronger", wall)
		}
		last = c.Capacity
	}
}

// Flange bending is a plate: the square of the thickness.
func TestFlangeBending(t *testing.T) {
	v := values{"R_r": 0, "t_f": 10, "F_y": 300}
	a, b := check(t, "flange-local-bending", strength.LRFD, v), check(t, "flange-local-bending", strength.LRFD, v.with("t_f", 20))
	if !same(b.Capacity, 4*a.Capacity) {
		t.Errorf("%g and %g", a.Capacity, b.Capacity)
	}
}

// damage evaluates Miner's sum for lists.
func damage(t *testing.T, category float64, ranges, cycles []float64) float64 {
	t.Helper()
	c := &strength.Calc{Method: strength.ASD}
	if err := fatigueDamage.FromNumbers(c, [][]float64{ranges, cycles, {category}}); err != nil {
		t.Fatal(err)
	}
	return c.Demand
}

// Ranges and cycles that do not fit each other are outside the rule.
func TestMinerWantsCyclesForEachRange(t *testing.T) {
	c := &strength.Calc{Method: strength.ASD}
	if err := fatigueDamage.FromNumbers(c, [][]float64{{80, 70}, {1e6}, {3}}); err != nil || c.Verdict != strength.Outside {
		t.Errorf("damage: %s, %v", c.Verdict, err)
	}
	c = &strength.Calc{Method: strength.ASD}
	if err := fatigueRoot.FromNumbers(c, [][]float64{{80}, {1e6, 1e5}, {6}, {8}}); err != nil || c.Verdict != strength.Outside {
		t.Errorf("root: %s, %v", c.Verdict, err)
	}
}

// One range alone gives cycles over life of the same curve; below the threshold none; and once one range exceeds it the small ones
// count too. Order does not matter.
func TestMiner(t *testing.T) {
	const c = 3 // category C: C_f 44e8, F_TH 10 ksi
	above := 20 * ksi
	life := 44e8 / math.Pow(20, 3)
	if got := damage(t, c, []float64{above}, []float64{life}); math.Abs(got-1) > 1e-9 {
		t.Errorf("a whole life: damage %g", got)
	}
	if got := damage(t, c, []float64{9 * ksi}, []float64{1e9}); got != 0 {
		t.Errorf("below the threshold: damage %g", got)
	}
	small := damage(t, c, []float64{above, 9 * ksi}, []float64{1, 1e6}) - damage(t, c, []float64{above}, []float64{1})
	if want := 1e6 * 729 / 44e8; math.Abs(small-want) > 1e-9 {
		t.Errorf("no cut-off: the small range adds %g, want %g", small, want)
	}
	if a, b := damage(t, c, []float64{above, 9 * ksi}, []float64{1, 1e6}), damage(t, c, []float64{9 * ksi, above}, []float64{1e6, 1}); !same(a, b) {
		t.Errorf("order matters: %g, %g", a, b)
	}
}
