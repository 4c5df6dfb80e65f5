package en1993

import (
	"math"
	"testing"

	"lugwright/strength"
)

// Hanger rods: two rods of four bear twice the even share; a rod with bolt's threads is a bolt, a shop's thread 0.85 of it; parts add.
func TestRods(t *testing.T) {
	v := given{"F_Ed": 6178, "n": 4, "k_s": 2, "d": 12, "p": 1.75, "thread": 0, "f_ub": 400}
	rod := at(t, rodTension, v)
	if !(math.Abs(rod.Demand-3089) < 1) {
		t.Errorf("two rods of four: %g", rod.Demand)
	}
	if want := 0.9 * 400 * line(t, rod, "A_s") / 1.25; math.Abs(rod.Capacity-want) > 1e-9 {
		t.Errorf("rod with a bolt's thread: %g, want %g", rod.Capacity, want)
	}
	v["thread"] = 1
	if c := at(t, rodTension, v); math.Abs(c.Capacity/rod.Capacity-0.85) > 1e-12 {
		t.Errorf("cut thread: %g of %g", c.Capacity, rod.Capacity)
	}
	v["k_s"] = 5
	if c := at(t, rodTension, v); c.Verdict != strength.Outside {
		t.Errorf("five times the share of four rods: %s", c.Verdict)
	}
	one := given{"N_Ed": 2000, "V_Ed": 60, "L": 140, "d": 12, "p": 1.75, "f_y": 240, "f_ub": 400}
	bent := at(t, rodBending, given{"V_Ed": 60, "L": 140, "d": 12, "p": 1.75, "f_y": 240}).Utilisation()
	pulled := at(t, rodTension, given{"F_Ed": 2000, "n": 1, "k_s": 1, "d": 12, "p": 1.75, "thread": 0, "f_ub": 400}).Utilisation()
	if c := at(t, rodCombined, one); math.Abs(c.Demand-bent-pulled) > 1e-12 && math.Abs(c.Demand-bent-pulled/0.85) > 1e-12 {
		t.Errorf("parts do not add: %g, %g, %g", c.Demand, bent, pulled)
	}
	last := 0.0
	for _, L := range []float64{50, 140, 300, 600} {
		one["N_Ed"], one["L"] = -1000, L
		c := at(t, rodCombined, one)
		if c.Demand <= last {
			t.Errorf("pressed rod of %g mm: %g after %g", L, c.Demand, last)
		}
		last = c.Demand
	}
}

// A line of contact on a tube carried by a support opposite: P R/pi against the plastic strip, the square of the wall.
func TestSaddleRing(t *testing.T) {
	v := given{"F_Ed": 10000, "D": 104, "t": 4, "b": 60, "beta": 0.01, "f_y": 300}
	c := at(t, saddleRing, v)
	be := 60 + 1.56*math.Sqrt(50*4)
	m, n := 10000*50/math.Pi/(be*16/4*300), 5000/(be*4*300)
	if want := m + n*n; math.Abs(c.Demand/want-1) > 0.01 {
		t.Errorf("%g, want %g", c.Demand, want)
	}
	v["carried"] = 1
	if got := at(t, saddleRing, v); got.Demand >= c.Demand {
		t.Errorf("carried along %g, opposed %g", got.Demand, c.Demand)
	}
}

// Parts of a member's resistance: in tension they add; shear up to half takes nothing, and close to all of it takes all; the twist of a
// channel is the same stress as von Mises of its parts.
func TestMemberInteraction(t *testing.T) {
	if c := at(t, memberInteraction, given{"u_N": 0.3, "sense": 0, "u_y": 0.2, "u_z": 0.1, "u_V": 0.5, "C_m": 0.9}); math.Abs(c.Demand-0.6) > 1e-12 {
		t.Errorf("tension: %g", c.Demand)
	}
	pressed := at(t, memberInteraction, given{"u_N": 0.3, "sense": 1, "u_y": 0.2, "u_z": 0.1, "u_V": 0, "C_m": 1}).Demand
	if want := 0.3 + 1.24*0.3; math.Abs(pressed-want) > 1e-12 {
		t.Errorf("compression: %g, want %g", pressed, want)
	}
	last := 0.0
	for _, v := range []float64{0.5, 0.7, 0.9, 0.99} {
		c := at(t, memberInteraction, given{"u_N": 0.1, "sense": 1, "u_y": 0.2, "u_V": v, "C_m": 0.9})
		if c.Demand <= last {
			t.Errorf("shear %g: %g after %g", v, c.Demand, last)
		}
		last = c.Demand
	}
	if c := at(t, memberInteraction, given{"u_V": 1, "C_m": 0.9, "sense": 1}); c.Verdict != strength.Outside {
		t.Errorf("all shear: %s", c.Verdict)
	}
	c := at(t, openTwist, given{"V": 1000, "x": 20, "L": 400, "b": 65, "h": 200, "t_f": 6, "t_w": 6, "f_y": 345, "sigma_o": 50})
	s, tau := line(t, c, "sigma"), line(t, c, "tau")
	if math.Abs(c.Demand-math.Sqrt(s*s+3*tau*tau)) > 1e-9 || s <= 50 {
		t.Errorf("twist: %g of %g and %g", c.Demand, s, tau)
	}
}

// A square frame has 3 P b/16 under the bolt; a sleeve is its area times its strength.
func TestTubeClamp(t *testing.T) {
	v := given{"P_r": 8000, "H": 54, "B": 54, "t": 4, "w": 40, "f_y": 300}
	if c := at(t, tubeClamp, v); math.Abs(c.Demand-8000*50*3/16.0/(50*16/4*300)) > 1e-9 {
		t.Errorf("square frame: %g", c.Demand)
	}
	v["d_o"], v["d_i"] = 20, 12
	if c := at(t, tubeClamp, v); math.Abs(c.Demand-8000/(300*math.Pi/4*(400-144))) > 1e-9 {
		t.Errorf("sleeve: %g", c.Demand)
	}
}
