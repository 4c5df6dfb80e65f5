package en1993

// Free edges, plates in a corner, a support's wall, plates on a bed.

import (
	"math"

	"lugwright/strength"
)

var plateLimits = []strength.Evaluator{freeEdge, cornerPlate, wallBending, basePlate, baseBearing}

type freeEdgeGivens struct {
	B  float64 `sym:"c" unit:"mm" min:"0.1" max:"5000" is:"greatest width that stands out from its support"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// freeEdge keeps a gusset's free edge from buckling before it yields, in either sense of the load: an outstand in even compression, class 3.
// A wider plate is outside the rule.
var freeEdge = strength.Define(strength.Identity{
	ID: "free-edge", Title: "buckling of a free edge",
	Clause: member("5.5, Table 5.2, outstands in compression, class 3", ""),
	Demand: "slenderness", Capacity: "limit", Unit: "",
	Detail: true,
}, func(c *strength.Calc, g freeEdgeGivens) {
	lam, lim := outstand(c, g.B, "c", g.T, g.Fy)
	c.Compare(lam, lim)
})

// outstand lists the slenderness of an outstand, its class, and the limit of class 3, beyond which the rules here do not speak.
func outstand(c *strength.Calc, width float64, symbol string, t, fy float64) (slenderness, limit float64) {
	eps := c.Let("epsilon", "sqrt(235*MPa/f_y)", "", math.Sqrt(235/fy))
	lam := width / t
	if c.Trace {
		c.Let("slenderness", symbol+"/t", "", lam)
	}
	class := 3.0
	switch {
	case lam <= 9*eps:
		class = 1
	case lam <= 10*eps:
		class = 2
	}
	c.Let("class", "when(slenderness <= 9*epsilon, 1, when(slenderness <= 10*epsilon, 2, 3))", "", class)
	lim := c.Let("limit", "14*epsilon", "", 14*eps)
	c.Need(lam <= lim, "slenderness <= limit", "an edge that yields before it buckles")
	return lam, lim
}

type cornerGivens struct {
	P  float64 `sym:"F_Ed" unit:"N" min:"0" max:"1e9" is:"load along the support line"`
	E  float64 `sym:"e" unit:"mm" min:"0" max:"5000" is:"load to the support line"`
	A  float64 `sym:"a" unit:"mm" min:"1" max:"5000" is:"height along the support"`
	B  float64 `sym:"b" unit:"mm" min:"1" max:"5000" is:"projection from the support"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// cornerPlate is axial force with bending, to first yield, on the section of a triangular plate square to its free edge. The standard has
// no rule of its own for it: elementary statics, with the plate held to an outstand of class 3.
var cornerPlate = strength.Define(strength.Identity{
	ID: "bracket-plate", Title: "free edge of a triangular bracket plate",
	Clause: member("6.2.1(5), Table 5.2, outstands in compression, class 3", "section square to the free edge by elementary statics, no clause"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g cornerGivens) {
	g0 := c.Factor("gamma_M0")
	theta := c.Let("theta", "atan(b/a)", "rad", math.Atan(g.B/g.A))
	bp := c.Let("b_p", "a*sin(theta)", "mm", g.A*math.Sin(theta))
	outstand(c, bp, "b_p", g.T, g.Fy)
	N := c.Let("N_Ed", "F_Ed*cos(theta)", "N", g.P*math.Cos(theta))
	M := c.Let("M_Ed", "F_Ed*e - N_Ed*b_p/2", "N*mm", g.P*g.E-N*bp/2)
	Nr := c.Let("N_Rd", "b_p*t*f_y/gamma_M0", "N", bp*g.T*g.Fy/g0)
	Mr := c.Let("M_Rd", "t*pow(b_p, 2)/6*f_y/gamma_M0", "N*mm", g.T*bp*bp/6*g.Fy/g0)
	c.Compare(c.Let("U", "N_Ed/N_Rd + abs(M_Ed)/M_Rd", "", N/Nr+math.Abs(M)/Mr), 1)
})

type wallGivens struct {
	M   float64 `sym:"M_Ed" unit:"N*mm" min:"0" max:"1e12" is:"couple of the bolt group on the wall"`
	Mv  float64 `sym:"M_v_Ed" unit:"N*mm" min:"0" max:"1e12" default:"0" is:"its couple the other way, along the flanges"`
	N   float64 `sym:"N_Ed" unit:"N" min:"0" max:"1e9" is:"pull or push square to the wall"`
	T   float64 `sym:"t" unit:"mm" min:"0.1" max:"200" is:"wall thickness"`
	W   float64 `sym:"b" unit:"mm" min:"1" max:"5000" is:"width of wall that works"`
	L   float64 `sym:"h" unit:"mm" min:"1" max:"5000" is:"clear height between the flanges"`
	Arm float64 `sym:"s" unit:"mm" min:"0.1" max:"5000" is:"distance over which the couple acts"`
	A   float64 `sym:"a" unit:"mm" min:"0" max:"5000" default:"0" is:"the nearer of the couple's two forces to its flange; 0 is the worst place"`
	Fy  float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the wall"`
}

// wallBending is the wall as a one-way strip, pinned at the flanges, under the bracket's couple (two forces s apart), its couple along the
// flanges (a force at mid-height on each half of the width, half of it apart) and its pull or push
// (spread over s), with the width of the bracket alone: a lower bound by statics, no clause; plastic strength.
var wallBending = strength.Define(strength.Identity{
	ID: "wall-bending", Title: "bending of the support's wall out of its plane",
	Clause: member("6.2.5, Eq. 6.13", "one-way strip, lower bound by statics, no clause"),
	Demand: "M_s", Capacity: "M_Rd", Unit: "N*mm",
}, func(c *strength.Calc, g wallGivens) {
	g0 := c.Factor("gamma_M0")
	c.Need(g.Arm < g.L, "s < h", "a bracket lower than the clear web")
	c.Need(2*g.A+g.Arm <= g.L+1e-9*g.L, "2*a + s <= h", "a couple between the flanges, a to the nearer of them")
	Ms := c.Let("M_s", "M_Ed*(h - s - a)/h + M_v_Ed*h/b + N_Ed*(2*h - s)/8", "N*mm",
		g.M*(g.L-g.Arm-g.A)/g.L+g.Mv*g.L/g.W+g.N*(2*g.L-g.Arm)/8)
	c.Compare(Ms, c.Let("M_Rd", "f_y*b*pow(t, 2)/(4*gamma_M0)", "N*mm", g.Fy*g.W*g.T*g.T/(4*g0)))
})

type basePlateGivens struct {
	N  float64 `sym:"N_Ed" unit:"N" min:"0" max:"1e9" is:"compression on the plate"`
	Fj float64 `sym:"f_jd" unit:"MPa" min:"0.1" max:"500" is:"bearing strength of the bed"`
	A  float64 `sym:"A_0" unit:"mm^2" min:"1" max:"1e7" is:"area of the section that stands on the plate"`
	P  float64 `sym:"P_0" unit:"mm" min:"1" max:"1e5" is:"perimeter of that section"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0" max:"500" default:"0" is:"thickness of the plate; 0 when only the least is wanted"`
}

// basePlate is the plate whose bearing area, c all round the section on it, is just enough: 4 c^2 + P_0 c + A_0. Plates so large that the
// strips between flanges meet are outside that area's formula.
var basePlate = strength.Define(strength.Identity{
	ID: "base-plate-thickness", Title: "thickness of a plate on a bed",
	Clause: joint("6.2.5, Eq. 6.5", "equal areas of bearing"),
	Demand: "t_min", Capacity: "t", Unit: "mm",
}, func(c *strength.Calc, g basePlateGivens) {
	g0 := c.Factor("gamma_M0")
	A := c.Let("A_req", "N_Ed/f_jd", "mm^2", g.N/g.Fj)
	out := max(A-g.A, 0)
	w := c.Let("c", "(sqrt(pow(P_0, 2) + 16*max(A_req - A_0, 0*mm*mm)) - P_0)/8", "mm", (math.Sqrt(g.P*g.P+16*out)-g.P)/8)
	c.Least(c.Let("t_min", "c*sqrt(3*f_jd*gamma_M0/f_y)", "mm", w*math.Sqrt(3*g.Fj*g0/g.Fy)), g.T)
})

type baseBearingGivens struct {
	N  float64 `sym:"N_Ed" unit:"N" min:"0" max:"1e9" is:"compression on the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate"`
	Fj float64 `sym:"f_jd" unit:"MPa" min:"0.1" max:"500" is:"bearing strength of the bed"`
	A  float64 `sym:"A_0" unit:"mm^2" min:"1" max:"1e7" is:"area of the section that stands on the plate"`
	P  float64 `sym:"P_0" unit:"mm" min:"1" max:"1e5" is:"perimeter of that section"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
}

// baseBearing is what a plate of given thickness spreads to its bed.
var baseBearing = strength.Define(strength.Identity{
	ID: "base-plate-bearing", Title: "bearing of a plate on a bed",
	Clause: joint("6.2.5, Eq. 6.4 and 6.5", "the plate reaches c beyond the section all round"),
	Demand: "N_Ed", Capacity: "N_Rd", Unit: "N",
}, func(c *strength.Calc, g baseBearingGivens) {
	g0 := c.Factor("gamma_M0")
	w := c.Let("c", "t*sqrt(f_y/(3*f_jd*gamma_M0))", "mm", g.T*math.Sqrt(g.Fy/(3*g.Fj*g0)))
	A := c.Let("A_eff", "4*pow(c, 2) + P_0*c + A_0", "mm^2", 4*w*w+g.P*w+g.A)
	c.Compare(g.N, c.Let("N_Rd", "f_jd*A_eff", "N", g.Fj*A))
})

var outstandRules = []strength.Rule[strength.Outstand]{
	{Of: freeEdge, Check: func(c *strength.Calc, f *strength.Outstand) {
		freeEdge.Check(c, freeEdgeGivens{B: f.B, T: f.T, Fy: f.Fy})
	}},
}

var cornerPlateRules = []strength.Rule[strength.CornerPlate]{
	{Of: cornerPlate, Check: func(c *strength.Calc, f *strength.CornerPlate) {
		cornerPlate.Check(c, cornerGivens{P: f.P, E: f.E, A: f.A, B: f.B, T: f.T, Fy: f.Fy})
	}},
}

var wallRules = []strength.Rule[strength.Wall]{
	{Of: wallBending, Check: func(c *strength.Calc, f *strength.Wall) {
		wallBending.Check(c, wallGivens{M: f.M, Mv: f.Mv, N: f.N, T: f.T, W: f.Width, L: f.Clear, Arm: f.Arm, Fy: f.Fy})
	}},
}
