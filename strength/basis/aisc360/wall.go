package aisc360

// Free edges of gussets, and a support's wall under the couple of a bracket.

import (
	"math"

	"lugwright/strength"
)

type freeEdgeGivens struct {
	B  float64 `sym:"b" unit:"mm" min:"0.1" max:"5000" is:"greatest width that stands out from its support"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// freeEdge keeps a gusset's free edge from buckling before it yields, in either sense of the load: AISC 360-22 Table B4.1a case 3,
// "all other unstiffened elements", b/t <= 0.45 sqrt(E/F_y); case 1 with its 0.56 speaks of flanges and of plates on rolled
// I-shapes. A wider plate is outside the rule.
var freeEdge = strength.Define(strength.Identity{
	ID: "free-edge", Title: "buckling of a free edge",
	Clause: clause("Table B4.1a, case 3", ""),
	Demand: "lambda", Capacity: "lambda_r", Unit: "",
	Detail: true,
}, func(c *strength.Calc, g freeEdgeGivens) {
	e := c.Let("E", "29000*ksi", "MPa", E)
	lam := c.Let("lambda", "b/t", "", g.B/g.T)
	lim := c.Let("lambda_r", "0.45*sqrt(E/F_y)", "", 0.45*math.Sqrt(e/g.Fy))
	c.Need(lam <= lim, "lambda <= lambda_r", "an edge that yields before it buckles")
	c.Compare(lam, lim)
})

type wallGivens struct {
	M   float64 `sym:"M_r" unit:"N*mm" min:"0" max:"1e12" is:"couple of the bolt group on the wall"`
	Mv  float64 `sym:"M_v" unit:"N*mm" min:"0" max:"1e12" default:"0" is:"its couple the other way, along the flanges"`
	N   float64 `sym:"N_r" unit:"N" min:"0" max:"1e9" is:"pull or push square to the wall"`
	T   float64 `sym:"t" unit:"mm" min:"0.1" max:"200" is:"wall thickness"`
	W   float64 `sym:"w" unit:"mm" min:"1" max:"5000" is:"width of wall that works"`
	L   float64 `sym:"h" unit:"mm" min:"1" max:"5000" is:"clear height between the flanges"`
	Arm float64 `sym:"s" unit:"mm" min:"0.1" max:"5000" is:"distance over which the couple acts"`
	A   float64 `sym:"a" unit:"mm" min:"0" max:"5000" default:"0" is:"the nearer of the couple's two forces to its flange; 0 is the worst place"`
	Fy  float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the wall"`
}

// wallBending is the wall as a one-way strip, pinned at the flanges, under the bracket's couple (two forces s apart), its couple along the
// flanges (a force at mid-height on each half of the width, half of it apart) and its pull or push (spread over s): a lower bound by statics, no clause;
// strength by AISC 360-22 F11.1.
var wallBending = strength.Define(strength.Identity{
	ID: "wall-bending", Title: "bending of the support's wall out of its plane",
	Clause: clause("F11.1, Eq. F11-1", "one-way strip, lower bound by statics, no clause"),
	Demand: "M_s", Capacity: "M_c", Unit: "N*mm",
}, func(c *strength.Calc, g wallGivens) {
	c.Need(g.L > 0 && g.Arm < g.L, "s < h", "a bracket lower than the clear web")
	c.Need(2*g.A+g.Arm <= g.L+1e-9*g.L, "2*a + s <= h", "a couple between the flanges, a to the nearer of them")
	Ms := c.Let("M_s", "M_r*(h - s - a)/h + M_v*h/w + N_r*(2*h - s)/8", "N*mm",
		g.M*(g.L-g.Arm-g.A)/g.L+g.Mv*g.L/g.W+g.N*(2*g.L-g.Arm)/8)
	Mn := c.Let("M_n", "F_y*w*pow(t, 2)/4", "N*mm", g.Fy*g.W*g.T*g.T/4)
	c.Compare(Ms, c.Available("M_c", "M_n", "N*mm", Mn, 0.90, 1.67))
})

var outstandRules = []strength.Rule[strength.Outstand]{
	{Of: freeEdge, Check: func(c *strength.Calc, f *strength.Outstand) {
		freeEdge.Check(c, freeEdgeGivens{B: f.B, T: f.T, Fy: f.Fy})
	}},
}

var wallRules = []strength.Rule[strength.Wall]{
	{Of: wallBending, Check: func(c *strength.Calc, f *strength.Wall) {
		wallBending.Check(c, wallGivens{M: f.M, Mv: f.Mv, N: f.N, T: f.T, W: f.Width, L: f.Clear, Arm: f.Arm, Fy: f.Fy})
	}},
}
