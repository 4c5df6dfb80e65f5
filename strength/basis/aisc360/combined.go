package aisc360

// Tubes in torsion, and tubes and bars under bending about both axes with axial force, shear and torsion, from the
// utilisations that other limit states give.

import (
	"math"

	"lugwright/strength"
)

var combinedLimits = []strength.Evaluator{roundTubeTorsion, rectTubeTorsion, memberInteraction, openTwist}

type roundTorsionGivens struct {
	T  float64 `sym:"T_r" unit:"N*mm" min:"0" max:"1e12" is:"torque"`
	D  float64 `sym:"D" unit:"mm" min:"5" max:"2000" is:"outside diameter"`
	W  float64 `sym:"t" unit:"mm" min:"0.2" max:"200" is:"design wall"`
	L  float64 `sym:"L" unit:"mm" min:"1" max:"1e6" is:"length of the tube"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	C  float64 `sym:"C_0" unit:"mm^3" min:"0" max:"1e10" default:"0" is:"torsional constant C as a table prints it; 0 to have it worked out"`
}

// roundTubeTorsion is AISC 360-22 H3.1(a), Eq. H3-1, H3-2a and H3-2b; from memory. The torsional constant is the circle's, 2 J/D: as the Manual's tables have it, and
// always less than pi (D - t)^2 t/2, which a user note allows for it.
var roundTubeTorsion = strength.Define(strength.Identity{
	ID: "round-tube-torsion", Title: "torsion of a round tube",
	Clause: clause("H3.1(a), Eq. H3-1, H3-2a and H3-2b", "from memory"),
	Demand: "T_r", Capacity: "T_c", Unit: "N*mm",
}, func(c *strength.Calc, g roundTorsionGivens) {
	c.Need(2*g.W < g.D, "2*t < D", "a hollow tube")
	e := c.Let("E", "29000*ksi", "MPa", E)
	C := torsionConstant(c, g.C, "pi*(pow(D, 4) - pow(D - 2*t, 4))/(16*D)", math.Pi*(math.Pow(g.D, 4)-math.Pow(g.D-2*g.W, 4))/(16*g.D))
	Dt := c.Let("D_t", "D/t", "", g.D/g.W)
	F1 := c.Let("F_cr1", "1.23*E/(sqrt(L/D)*pow(D_t, 1.25))", "MPa", 1.23*e/(math.Sqrt(g.L/g.D)*math.Pow(Dt, 1.25)))
	F2 := c.Let("F_cr2", "0.60*E/pow(D_t, 1.5)", "MPa", 0.60*e/math.Pow(Dt, 1.5))
	F := c.Let("F_cr", "min(max(F_cr1, F_cr2), 0.6*F_y)", "MPa", min(max(F1, F2), 0.6*g.Fy))
	Tn := c.Let("T_n", "F_cr*C", "N*mm", F*C)
	c.Compare(g.T, c.Available("T_c", "T_n", "N*mm", Tn, 0.90, 1.67))
})

// torsionConstant is a tube's C: as given, or worked out.
func torsionConstant(c *strength.Calc, given float64, formula string, worked float64) float64 {
	if given > 0 {
		return c.Let("C", "C_0", "mm^3", given)
	}
	return c.Let("C", formula, "mm^3", worked)
}

type rectTorsionGivens struct {
	T  float64 `sym:"T_r" unit:"N*mm" min:"0" max:"1e12" is:"torque"`
	H  float64 `sym:"H" unit:"mm" min:"5" max:"2000" is:"longer outside side"`
	B  float64 `sym:"B" unit:"mm" min:"5" max:"2000" is:"shorter outside side"`
	W  float64 `sym:"t" unit:"mm" min:"0.2" max:"100" is:"design wall"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	C  float64 `sym:"C_0" unit:"mm^3" min:"0" max:"1e10" default:"0" is:"torsional constant C as a table prints it; 0 to have it worked out"`
}

// rectTubeTorsion is AISC 360-22 H3.1(b), Eq. H3-1 and H3-3 to H3-5, with the user note's C; from memory. The flat is the longer side less 3 t.
var rectTubeTorsion = strength.Define(strength.Identity{
	ID: "rect-tube-torsion", Title: "torsion of a rectangular tube",
	Clause: clause("H3.1(b), Eq. H3-1 and H3-3 to H3-5", "from memory"),
	Demand: "T_r", Capacity: "T_c", Unit: "N*mm",
}, func(c *strength.Calc, g rectTorsionGivens) {
	c.Need(g.H >= g.B, "H >= B", "a longer side no shorter than the other")
	c.Need(g.B > 4*g.W, "B > 4*t", "sides that are flat between their corners")
	e := c.Let("E", "29000*ksi", "MPa", E)
	C := torsionConstant(c, g.C, "2*(B - t)*(H - t)*t - 4.5*(4 - pi)*pow(t, 3)", 2*(g.B-g.W)*(g.H-g.W)*g.W-4.5*(4-math.Pi)*g.W*g.W*g.W)
	ht := c.Let("h_t", "(H - 3*t)/t", "", (g.H-3*g.W)/g.W)
	c.Need(ht <= 260, "h_t <= 260", "a wall within the rule")
	var F float64
	switch root := math.Sqrt(e / g.Fy); {
	case ht <= 2.45*root:
		F = c.Let("F_cr", "0.6*F_y", "MPa", 0.6*g.Fy)
	case ht <= 3.07*root:
		F = c.Let("F_cr", "0.6*F_y*2.45*sqrt(E/F_y)/h_t", "MPa", 0.6*g.Fy*2.45*root/ht)
	default:
		F = c.Let("F_cr", "0.458*pow(pi, 2)*E/pow(h_t, 2)", "MPa", 0.458*math.Pi*math.Pi*e/(ht*ht))
	}
	Tn := c.Let("T_n", "F_cr*C", "N*mm", F*C)
	c.Compare(g.T, c.Available("T_c", "T_n", "N*mm", Tn, 0.90, 1.67))
})

type memberGivens struct {
	P  float64 `sym:"u_P" unit:"" min:"0" max:"100" default:"0" is:"axial force over its available strength, tension or compression, buckling in it: P_r/P_c"`
	Mx float64 `sym:"u_x" unit:"" min:"0" max:"100" default:"0" is:"moment about the strong axis over its strength, second-order effects in it: M_rx/M_cx"`
	My float64 `sym:"u_y" unit:"" min:"0" max:"100" default:"0" is:"moment about the weak axis over its strength: M_ry/M_cy"`
	V  float64 `sym:"u_V" unit:"" min:"0" max:"100" default:"0" is:"shear over its strength: V_r/V_c"`
	T  float64 `sym:"u_T" unit:"" min:"0" max:"100" default:"0" is:"torque on a tube over its strength: T_r/T_c"`
}

// memberInteraction is a doubly symmetric member under all forces at once: AISC 360-22 H1.1 and H1.2, Eq. H1-1a and H1-1b, shear beside
// it; with more torque than a fifth of its strength a tube follows H3.2, Eq. H3-6. The parts are the
// utilisations of the other limit states, by one method. For a round tube the resultant moment stands for both.
var memberInteraction = strength.Define(strength.Identity{
	ID: "member-interaction", Title: "tube or bar: bending about both axes with axial force, shear and torsion",
	Clause: clause("H1.1, H1.2, Eq. H1-1a and H1-1b; H3.2, Eq. H3-6", "H3.2 from memory"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g memberGivens) {
	m := c.Let("u_M", "u_x + u_y", "", g.Mx+g.My)
	if g.T > 0.2 {
		c.Compare(c.Let("U", "u_P + u_M + pow(u_V + u_T, 2)", "", g.P+m+(g.V+g.T)*(g.V+g.T)), 1)
		return
	}
	u := g.P/2 + m
	if g.P >= 0.2 {
		u = g.P + 8.0/9*m
	}
	c.Compare(c.Let("U", "max(when(u_P >= 0.2, u_P + 8/9*u_M, u_P/2 + u_M), u_V)", "", max(u, g.V)), 1)
})
