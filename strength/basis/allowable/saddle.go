package allowable

// A tube's wall under a saddle.

import (
	"lugwright/strength"
	"lugwright/strength/practice"
)

type saddleGivens struct {
	P       float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the saddle on the tube"`
	D       float64 `sym:"D" unit:"mm" min:"5" max:"2000" is:"outside diameter of the tube"`
	T       float64 `sym:"t" unit:"mm" min:"0.2" max:"200" is:"wall"`
	B       float64 `sym:"b" unit:"mm" min:"0" max:"5000" is:"length of the saddle along the tube"`
	Beta    float64 `sym:"beta" unit:"rad" min:"0.01" max:"1.57" is:"half of the angle over which the saddle bears; 0.01 for a line of contact"`
	Carried float64 `sym:"carried" choices:"to a support opposite|along the tube" default:"0" is:"where the force goes on from the saddle"`
	Beam    float64 `sym:"sigma_b" unit:"MPa" min:"0" max:"2500" default:"0" is:"stress along the tube at the same place, from its bending as a beam"`
	Fy      float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the tube"`
	Fu      float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the tube"`
}

// saddleRing is the elastic stress round the tube's wall, with half of the force as thrust; the stress along the tube is added as if of the
// other sign (greatest shear), which is cautious beside von Mises.
var saddleRing = strength.Define(strength.Identity{
	ID: "saddle-ring", Title: "bending of a tube's wall under a saddle",
	Clause: common("elastic moments of thin rings, textbook; working length by Zick 1951, from memory"),
	Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g saddleGivens) {
	R, be := practice.RingWidth(c, g.D, g.T, g.B)
	k := practice.RingUnderSaddle(c, g.Beta, g.Carried)
	M := c.Let("M_r", "k_M*P_r*R", "N*mm", k*g.P*R)
	ring := c.Let("sigma_r", "6*M_r/(b_e*pow(t, 2)) + P_r/(2*b_e*t)", "MPa", 6*M/(be*g.T*g.T)+g.P/(2*be*g.T))
	c.Compare(c.Let("sigma", "sigma_r + sigma_b", "MPa", ring+g.Beam), allowed(c, g.Fy, g.Fu))
})
