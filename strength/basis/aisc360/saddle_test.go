package aisc360

// Tubes pressed on their walls: limits of the ring and of the frame, worked apart.

import (
	"math"
	"testing"

	"lugwright/strength"
)

// A line of contact: P R/pi opposed, 3 P R/(4 pi) carried along. Contact all round opposed leaves no bending under it. A wider contact never bends
// the wall more where it bears, and a longer saddle, a thicker wall always help.
func TestSaddleRing(t *testing.T) {
	v := values{"P_r": 10000, "D": 88.9, "t": 4, "b": 60, "beta": 0.01, "F_y": 300}
	for carried, want := range []float64{1 / math.Pi, 3 / (4 * math.Pi)} {
		c := check(t, "saddle-ring", strength.ASD, v.with("carried", float64(carried)))
		if got := line(t, c, "k_M"); math.Abs(got/want-1) > 0.02 {
			t.Errorf("line contact, carried %d: %g, want %g", carried, got, want)
		}
		last := math.Inf(1)
		for _, beta := range []float64{0.01, 0.3, 0.6, 0.9, 1.2, 1.57} {
			c := check(t, "saddle-ring", strength.ASD, v.with("carried", float64(carried)).with("beta", beta))
			if k := line(t, c, "k_0"); k > last {
				t.Errorf("half angle %g bends more: %g after %g", beta, k, last)
			} else {
				last = k
			}
		}
	}
	if k := line(t, check(t, "saddle-ring", strength.ASD, v.with("beta", 1.57)), "k_M"); math.Abs(k) > 1e-3 {
		t.Errorf("even pressure all round: %g", k)
	}
	base := check(t, "saddle-ring", strength.ASD, v).Demand
	for symbol, more := range map[string]float64{"b": 120, "t": 6, "F_y": 400} {
		if got := check(t, "saddle-ring", strength.ASD, v.with(symbol, more)).Demand; got >= base {
			t.Errorf("%s %g: %g, not under %g", symbol, more, got, base)
		}
	}
}

// The opposed ring integrated again: moments of point pairs over the contact.
func TestRingByParts(t *testing.T) {
	const n = 20000
	for _, beta := range []float64{0.2, 0.7, 1.3} {
		var top, side, force float64
		for i := range n {
			a := beta * (2*(float64(i)+0.5)/n - 1)
			top += 1/math.Pi - math.Abs(math.Sin(a))/2
			side += math.Cos(a)/2 - 1/math.Pi
			force += math.Cos(a)
		}
		c := check(t, "saddle-ring", strength.ASD, values{"P_r": 1, "D": 100, "t": 4, "b": 50, "beta": beta, "F_y": 300})
		if a, b := line(t, c, "k_0"), line(t, c, "k_90"); math.Abs(a-top/force) > 1e-6 || math.Abs(b-side/force) > 1e-6 {
			t.Errorf("beta %g: %g and %g, by parts %g and %g", beta, a, b, top/force, side/force)
		}
	}
}

// Carried along the tube: the point solution (1 + cos/2 - (pi - a) sin)/(2 pi) summed under and away from the saddle.
func TestCarriedRingByParts(t *testing.T) {
	point := func(a float64) float64 {
		a = math.Abs(a)
		if a > math.Pi {
			a = 2*math.Pi - a
		}
		return (1 + math.Cos(a)/2 - (math.Pi-a)*math.Sin(a)) / (2 * math.Pi)
	}
	for _, beta := range []float64{0.1, 0.7, 1.3} {
		c := check(t, "saddle-ring", strength.ASD, values{"P_r": 1, "D": 100, "t": 4, "b": 50, "beta": beta, "carried": 1, "F_y": 300})
		worst := 0.0
		for theta := 0.0; theta <= math.Pi; theta += 0.02 {
			const n = 2000
			var m, force float64
			for i := range n {
				a := beta * (2*(float64(i)+0.5)/n - 1)
				m += point(theta - a)
				force += math.Cos(a)
			}
			worst = max(worst, math.Abs(m/force))
			if theta == 0 && math.Abs(m/force-line(t, c, "k_0")) > 1e-5 {
				t.Errorf("beta %g: %g under the saddle, by parts %g", beta, line(t, c, "k_0"), m/force)
			}
		}
		if k := line(t, c, "k_M"); worst > k*1.01 {
			t.Errorf("beta %g: %g round the ring, ours %g", beta, worst, k)
		}
	}
}

// A square frame has 3 P b/16 in the middle of its clamped walls; a sleeve is its area times its strength whatever the tube's wall.
func TestTubeClamp(t *testing.T) {
	v := values{"P_r": 8000, "H": 54, "B": 54, "t": 4, "w": 40, "F_y": 300}
	if got := line(t, check(t, "tube-clamp", strength.ASD, v), "M_w"); !same(got, 8000*50*3/16.0) {
		t.Errorf("square frame: %g", got)
	}
	with := v.with("d_o", 20).with("d_i", 12)
	a, b := check(t, "tube-clamp", strength.LRFD, with), check(t, "tube-clamp", strength.LRFD, with.with("t", 2))
	if !same(a.Demand, b.Demand) || !same(a.Demand, 8000/(0.9*235*math.Pi/4*(400-144))) {
		t.Errorf("sleeve: %g and %g", a.Demand, b.Demand)
	}
	if bare := check(t, "tube-clamp", strength.LRFD, v.with("t", 2)); bare.Demand <= b.Demand {
		t.Errorf("a sleeve does not help: %g, %g without", b.Demand, bare.Demand)
	}
	round := v.with("shape", 1).with("t", 3)
	if got := line(t, check(t, "tube-clamp", strength.ASD, round), "M_w"); !same(got, 8000*25.5/math.Pi) {
		t.Errorf("ring: %g", got)
	}
}

// Plates on tubes: the square of the wall; a plate across is at its weakest when narrow, and a longer plate along is stronger.
func TestTubePlates(t *testing.T) {
	round := values{"P_r": 0, "D": 100, "t": 4, "B_p": 50, "F_y": 300}
	rect := values{"P_r": 0, "B": 100, "t": 4, "t_p": 10, "l_b": 50, "F_y": 300}
	for _, run := range []struct {
		id     string
		v      values
		symbol string
		more   float64
	}{
		{"round-tube-plate", round, "B_p", 80}, {"round-tube-plate", round.with("way", 1), "B_p", 80}, {"rect-tube-plate", rect, "l_b", 100},
	} {
		for _, m := range methods {
			a := check(t, run.id, m, run.v).Capacity
			if b := check(t, run.id, m, run.v.with("t", 8)).Capacity; !same(b, 4*a) {
				t.Errorf("%s: twice the wall gives %g of %g", run.id, b, a)
			}
			if b := check(t, run.id, m, run.v.with(run.symbol, run.more)).Capacity; b <= a {
				t.Errorf("%s: longer plate %g, shorter %g", run.id, b, a)
			}
		}
	}
	if c := check(t, "round-tube-plate", strength.ASD, round.with("t", 1.9)); c.Verdict != strength.Outside {
		t.Errorf("thin wall: %s", c.Verdict)
	}
}
