package practice

import (
	"math"
	"testing"

	"lugwright/strength"
)

// The limit of little play with equal metals is 0.591 sqrt(E F (d_0 - d)/(d^2 t)) of EN 1993-1-8, Eq. 3.15. A 1-1/2 in pin, common in the trade,
// in a hole 1/32 in larger; more play, more force always press harder, and a close fit presses as a contact of 30 degrees on either side does.
func TestPinContact(t *testing.T) {
	c := &strength.Calc{Method: strength.ASD}
	g := contactGivens{P: 20000, D: 38.1, Dh: 38.9, T: 20, E1: 210000, E2: 210000, K: 2.5, Fy: 250}
	PinContact.Check(c, g)
	if want := 0.591 * math.Sqrt(210000*20000*0.8/(38.1*38.1*20)); math.Abs(c.Demand/want-1) > 0.015 || c.Verdict != strength.Pass {
		t.Errorf("%g MPa, %s, want %g", c.Demand, c.Verdict, want)
	}
	before := c.Demand
	for _, worse := range []contactGivens{{P: 30000, Dh: 38.9}, {P: 20000, Dh: 39.5}} {
		h := g
		h.P, h.Dh = worse.P, worse.Dh
		if PinContact.Check(c, h); c.Demand <= before {
			t.Errorf("%+v: %g MPa, not over %g", worse, c.Demand, before)
		}
	}
	// A close fit: 30 degrees of contact on either side are 19.05 mm wide, and 20000 N on 19.05 x 20 mm with Hertz's half ellipse peak at
	// 4/pi of the mean, 66.8 MPa.
	h := g
	h.Dh = 38.11
	if PinContact.Check(c, h); math.Abs(c.Demand-66.84) > 0.05 {
		t.Errorf("close fit: %g MPa", c.Demand)
	}
	h = g
	h.E2 = 70000
	if PinContact.Check(c, h); c.Demand >= before {
		t.Errorf("softer plate: %g MPa, not under %g", c.Demand, before)
	}
}

// A stocky lug crushes at F_y d t; a thin one follows Euler, the cube of its thickness; where the two curves meet the stress is half of yield.
func TestLugDishing(t *testing.T) {
	c := &strength.Calc{Method: strength.ASD}
	g := dishingGivens{P: 1000, D: 38.1, A: 0.1, T: 20, N: 2, E: 200000, Fy: 250}
	LugDishing.Check(c, g)
	if math.Abs(c.Capacity/(250*38.1*20)-1) > 1e-4 || c.Demand != 2000 {
		t.Errorf("stocky: %g of %g", c.Demand, c.Capacity)
	}
	g.A, g.T = 60, 2
	LugDishing.Check(c, g)
	thin := c.Capacity
	g.T = 1
	if LugDishing.Check(c, g); math.Abs(c.Capacity/thin*8-1) > 1e-9 {
		t.Errorf("half the thickness: %g of %g", c.Capacity, thin)
	}
	g.T = 10
	g.A = math.Sqrt(2*math.Pi*math.Pi*200000/250) * 10 / (2 * math.Sqrt(12))
	if LugDishing.Check(c, g); math.Abs(c.Capacity/(125*38.1*10)-1) > 1e-6 {
		t.Errorf("where the curves meet: %g", c.Capacity)
	}
}
