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

type clampGivens struct {
	P     float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force"`
	Shape float64 `sym:"shape" choices:"rectangular|round" default:"0" is:"shape"`
	H     float64 `sym:"H" unit:"mm" min:"5" max:"2000" is:"size"`
	B     float64 `sym:"B" unit:"mm" min:"5" max:"2000" is:"size across"`
	T     float64 `sym:"t" unit:"mm" min:"0.2" max:"100" is:"wall"`
	W     float64 `sym:"w" unit:"mm" min:"0" max:"2000" is:"washer"`
}

// clamped does the same for a tube under a bolt.
var clamped = strength.Define(strength.Identity{
	ID: "clamp", Title: "clamp for the suite", Clause: strength.Clause{Words: "test"}, Demand: "q", Capacity: "P_r", Unit: "N",
}, func(c *strength.Calc, g clampGivens) {
	wall := Clamp{Round: g.Shape > 0, P: g.P, H: g.H, B: g.B, T: g.T, W: g.W}
	m, n, be := wall.Of(c)
	c.Compare(c.Let("q", "max(M_w/b_e, 0*N) + N_w", "N", max(m/be, 0)+n), g.P)
})
