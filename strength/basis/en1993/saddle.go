package en1993

// A tube's wall under a saddle, a tube clamped by a bolt.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

type saddleGivens struct {
	F       float64 `sym:"F_Ed" unit:"N" min:"0" max:"1e9" is:"force of the saddle on the tube"`
	D       float64 `sym:"D" unit:"mm" min:"5" max:"2000" is:"outside diameter of the tube"`
	T       float64 `sym:"t" unit:"mm" min:"0.2" max:"200" is:"wall"`
	B       float64 `sym:"b" unit:"mm" min:"0" max:"5000" is:"length of the saddle along the tube"`
	Beta    float64 `sym:"beta" unit:"rad" min:"0.01" max:"1.57" is:"half of the angle over which the saddle bears; 0.01 for a line of contact"`
	Carried float64 `sym:"carried" choices:"to a support opposite|along the tube" default:"0" is:"where the force goes on from the saddle"`
	Fy      float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the tube"`
}

// saddleRing is the tube's wall as a plastic strip bent round as a ring, with half of the force as thrust (6.2.9.1(3)). Ring moments are
// elementary; the tube's bending as a beam is another limit state, and so is what its axial stress takes from the wall.
var saddleRing = strength.Define(strength.Identity{
	ID: "saddle-ring", Title: "bending of a tube's wall under a saddle",
	Clause: member("6.2.5, Eq. 6.13; 6.2.9.1(3), Eq. 6.32", "moments of thin rings, textbook; working length by Zick 1951, from memory"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g saddleGivens) {
	R, be := practice.RingWidth(c, g.D, g.T, g.B)
	k := practice.RingUnderSaddle(c, g.Beta, g.Carried)
	g0 := c.Factor("gamma_M0")
	M := c.Let("M_Ed", "k_M*F_Ed*R", "N*mm", k*g.F*R)
	N := c.Let("N_Ed", "F_Ed/2", "N", g.F/2)
	m := c.Let("M_Rd", "b_e*pow(t, 2)/4*f_y/gamma_M0", "N*mm", be*g.T*g.T/4*g.Fy/g0)
	n := c.Let("N_Rd", "b_e*t*f_y/gamma_M0", "N", be*g.T*g.Fy/g0)
	c.Compare(c.Let("U", "M_Ed/M_Rd + pow(N_Ed/N_Rd, 2)", "", M/m+(N/n)*(N/n)), 1)
})

type clampGivens struct {
	P     float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"clamping force of the bolts that stand side by side across the tube"`
	Shape float64 `sym:"shape" choices:"rectangular|round" default:"0" is:"of the tube"`
	H     float64 `sym:"H" unit:"mm" min:"5" max:"2000" is:"outside size along the bolt; the diameter of a round tube"`
	B     float64 `sym:"B" unit:"mm" min:"5" max:"2000" is:"outside size across the bolt; the diameter of a round tube"`
	T     float64 `sym:"t" unit:"mm" min:"0.2" max:"100" is:"wall"`
	W     float64 `sym:"w" unit:"mm" min:"0" max:"2000" is:"length of the washer or spreader along the tube"`
	Do    float64 `sym:"d_o" unit:"mm" min:"0" max:"500" default:"0" is:"outside diameter of a crush sleeve round the bolt; 0 without one"`
	Di    float64 `sym:"d_i" unit:"mm" min:"0" max:"500" default:"0" is:"its inside diameter"`
	Fy    float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the tube, or of the sleeve where there is one"`
}

// tubeClamp is a tube clamped by a bolt through it: its walls as plastic strips of a closed frame or a ring (6.2.9.1(3)), or a sleeve that is too
// short to buckle (6.3.1.2(4), lambda up to 0.2, from memory) and carries all (6.2.4).
var tubeClamp = strength.Define(strength.Identity{
	ID: "tube-clamp", Title: "crushing of a tube by a bolt through it",
	Clause: member("6.2.4, Eq. 6.10; 6.2.5, Eq. 6.13; 6.2.9.1(3), Eq. 6.32", "moments of closed frames and rings, textbook; spread by common practice"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g clampGivens) {
	g0 := c.Factor("gamma_M0")
	if g.Do > 0 {
		c.Need(g.Di < g.Do, "d_i < d_o", "a sleeve of some wall")
		A := c.Let("A_s", "pi/4*(pow(d_o, 2) - pow(d_i, 2))", "mm^2", math.Pi/4*(g.Do*g.Do-g.Di*g.Di))
		i := c.Let("i", "sqrt(pow(d_o, 2) + pow(d_i, 2))/4", "mm", math.Sqrt(g.Do*g.Do+g.Di*g.Di)/4)
		l := c.Let("lambda", "(H - 2*t)/(i*pi*sqrt(210000*MPa/f_y))", "", (g.H-2*g.T)/(i*math.Pi*math.Sqrt(e210/g.Fy)))
		c.Need(l <= 0.2, "lambda <= 0.2", "a sleeve too short to buckle")
		N := c.Let("N_Rd", "A_s*f_y/gamma_M0", "N", A*g.Fy/g0)
		c.Compare(c.Let("U", "P_r/N_Rd", "", g.P/N), 1)
		return
	}
	wall := practice.Clamp{Round: g.Shape > 0, P: g.P, H: g.H, B: g.B, T: g.T, W: g.W}
	M, N, be := wall.Of(c)
	m := c.Let("M_Rd", "b_e*pow(t, 2)/4*f_y/gamma_M0", "N*mm", be*g.T*g.T/4*g.Fy/g0)
	n := c.Let("N_Rd", "b_e*t*f_y/gamma_M0", "N", be*g.T*g.Fy/g0)
	c.Compare(c.Let("U", "M_w/M_Rd + pow(N_w/N_Rd, 2)", "", M/m+(N/n)*(N/n)), 1)
})

type contactGivens struct {
	F  float64 `sym:"F_Ed" unit:"N" min:"0" max:"1e9" is:"force that presses the faces together"`
	A  float64 `sym:"A_c" unit:"mm^2" min:"0" max:"1e8" is:"area that presses, projected where it is curved"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the weaker"`
}

// contactBearing is compression on the area that presses (6.2.4, Eq. 6.10); no clause speaks of seats.
var contactBearing = strength.Define(strength.Identity{
	ID: "contact-bearing", Title: "bearing of faces pressed together",
	Clause: member("6.2.4, Eq. 6.10", "on the area that presses; faces that fit"),
	Demand: "F_Ed", Capacity: "N_c_Rd", Unit: "N",
}, func(c *strength.Calc, g contactGivens) {
	c.Need(g.A > 0, "A_c > 0*mm*mm", "a force that passes through the faces")
	g0 := c.Factor("gamma_M0")
	c.Compare(g.F, c.Let("N_c_Rd", "A_c*f_y/gamma_M0", "N", g.A*g.Fy/g0))
})

var seatRules = []strength.Rule[strength.Seat]{
	{Of: contactBearing, Check: func(c *strength.Calc, f *strength.Seat) {
		contactBearing.Check(c, contactGivens{F: f.F, A: f.Area, Fy: f.Fy})
	}},
	{Of: saddleRing, Check: func(c *strength.Calc, f *strength.Seat) {
		saddleRing.Check(c, saddleGivens{F: f.Wall, D: f.D, T: f.T, B: f.Along, Beta: f.Beta, Carried: 1, Fy: f.TubeFy})
		c.SkipUnless(f.Tube, "no tube's wall lies under it")
	}},
}
