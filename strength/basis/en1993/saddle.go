package en1993

// A tube's wall under a saddle.

import (
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
