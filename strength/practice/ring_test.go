package practice

import "lugwright/strength"

type ringGivens struct {
	P       float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force"`
	D       float64 `sym:"D" unit:"mm" min:"5" max:"2000" is:"outside diameter"`
	T       float64 `sym:"t" unit:"mm" min:"0.2" max:"200" is:"wall"`
	B       float64 `sym:"b" unit:"mm" min:"0" max:"5000" is:"length of the contact"`
	Beta    float64 `sym:"beta" unit:"rad" min:"0.01" max:"1.57" is:"half angle of the contact"`
	Carried float64 `sym:"carried" choices:"opposite|along" default:"0" is:"where the force goes"`
}

// ring lets the suite meet the lines that the bases' limit states share.
var ring = strength.Define(strength.Identity{
	ID: "ring", Title: "ring for the suite", Clause: strength.Clause{Words: "test"}, Demand: "m", Capacity: "P", Unit: "N",
}, func(c *strength.Calc, g ringGivens) {
	R, be := RingWidth(c, g.D, g.T, g.B)
	k := RingUnderSaddle(c, g.Beta, g.Carried)
	c.Compare(c.Let("m", "k_M*P*R/b_e", "N", k*g.P*R/be), g.P)
})
