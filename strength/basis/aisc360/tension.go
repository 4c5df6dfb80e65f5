package aisc360

// Tension members and connecting plates: yielding, rupture with shear lag, the 30 degree spread width.

import (
	"math"

	"lugwright/strength"
)

type tensionYieldGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"tension"`
	A  float64 `sym:"A_g" unit:"mm^2" min:"0.1" max:"1e7" is:"gross area"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// tensionYield is yielding on the gross section: AISC 360-22 D2(a), Eq. D2-1, and J4.1(a), Eq. J4-1.
var tensionYield = strength.Define(strength.Identity{
	ID: "tension-yield", Title: "yielding of the gross section in tension",
	Clause: clause("D2(a), Eq. D2-1; J4.1(a), Eq. J4-1", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g tensionYieldGivens) {
	Pn := c.Let("P_n", "F_y*A_g", "N", g.Fy*g.A)
	c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67))
})

type tensionRuptureGivens struct {
	P    float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"tension"`
	A    float64 `sym:"A_g" unit:"mm^2" min:"0.1" max:"1e7" is:"gross area"`
	N    float64 `sym:"n_h" unit:"" min:"0" max:"100" default:"0" is:"holes or slots across the section"`
	Dn   float64 `sym:"d_net" unit:"mm" min:"0" max:"500" default:"0" is:"width deducted for each: hole plus 1/16 in"`
	T    float64 `sym:"t" unit:"mm" min:"0" max:"500" default:"0" is:"thickness at the holes"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
	Case float64 `sym:"U_case" choices:"given|2: bolts or welds to some parts|4: plates and shapes with longitudinal welds|5: slotted round tube" default:"0" is:"case of Table D3.1"`
	U    float64 `sym:"U_given" unit:"" min:"0" max:"1" default:"1" is:"shear lag factor where the case is given"`
	X    float64 `sym:"x_bar" unit:"mm" min:"0" max:"1e4" default:"0" is:"eccentricity of the joint"`
	L    float64 `sym:"l" unit:"mm" min:"0" max:"1e5" default:"0" is:"length of the joint; the mean where its welds differ"`
	W    float64 `sym:"w" unit:"mm" min:"0" max:"1e4" default:"0" is:"width of the plate or of the connected part, case 4"`
	S    float64 `sym:"s" unit:"mm" min:"0" max:"1e4" default:"0" is:"distance along the force between holes of a staggered chain"`

	Gages []float64 `sym:"g_i" unit:"mm" min:"0" max:"1e4" default:"0" is:"distance across the force of each slanting step of the chain; 0 for none"`
}

// tensionRupture is rupture on the effective net section with the shear lag factor of Table D3.1: AISC 360-22 D2(b), Eq. D2-2, and D3,
// Eq. D3-1. Case 4 is new in 360-16, case 5 for round tubes in 360-22. Each slanting step of a chain of staggered holes gives s^2/(4 g) of width
// back, B4.3b.
var tensionRupture = strength.Define(strength.Identity{
	ID: "tension-rupture", Title: "rupture of the net section in tension",
	Clause: clause("D2(b), Eq. D2-2; D3, Eq. D3-1 and Table D3.1; J4.1(b); B4.3b", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g tensionRuptureGivens) {
	back := 0.0
	for _, gage := range g.Gages {
		if gage > 0 {
			back += g.S * g.S / (4 * gage)
		}
	}
	back = c.Solved("w_s", "sum of s^2/(4 g_i) over the slanting steps of the chain", "mm", back)
	An := c.Let("A_n", "A_g - n_h*d_net*t + w_s*t", "mm^2", g.A-g.N*g.Dn*g.T+back*g.T)
	c.Need(An <= g.A, "A_n <= A_g", "a net area no greater than the gross one")
	c.Need(An > 0, "A_n > 0*mm*mm", "material left beside the holes")
	if g.Case > 0 {
		c.Need(g.L > 0, "l > 0*mm", "a joint of some length")
	}
	U := shearLag(c, g)
	Ae := c.Let("A_e", "A_n*U", "mm^2", An*U)
	Pn := c.Let("P_n", "F_u*A_e", "N", g.Fu*Ae)
	c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.75, 2.00))
})

func shearLag(c *strength.Calc, g tensionRuptureGivens) float64 {
	ratio := g.X / g.L
	switch g.Case {
	case 1:
		return c.Let("U", "1 - x_bar/l", "", 1-ratio)
	case 2:
		return c.Let("U", "3*pow(l, 2)/(3*pow(l, 2) + pow(w, 2))*(1 - x_bar/l)", "", 3*g.L*g.L/(3*g.L*g.L+g.W*g.W)*(1-ratio))
	case 3:
		return c.Let("U", "pow(1 + pow(x_bar/l, 3.2), -10)", "", math.Pow(1+math.Pow(ratio, 3.2), -10))
	}
	return c.Let("U", "U_given", "", g.U)
}

type spreadGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force along the plate; tension or compression"`
	W0 float64 `sym:"w_0" unit:"mm" min:"0" max:"5000" is:"width of the joint where the spread begins"`
	L  float64 `sym:"L" unit:"mm" min:"0" max:"5000" is:"length over which the force spreads"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// spreadYield is yielding on the 30 degree spread width of a gusset: AISC Manual Part 9 (Whitmore section) with AISC 360-22 J4.1(a).
var spreadYield = strength.Define(strength.Identity{
	ID: "spread-width-yield", Title: "yielding on the spread width of a gusset",
	Clause: clause("J4.1(a), Eq. J4-1", "on the 30 degree spread width of Manual Part 9"),
	Demand: "P_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g spreadGivens) {
	lw := c.Let("l_w", "w_0 + 2*L*tan(30*deg)", "mm", g.W0+2*g.L*math.Tan(math.Pi/6))
	Ag := c.Let("A_g", "l_w*t", "mm^2", lw*g.T)
	Rn := c.Let("R_n", "F_y*A_g", "N", g.Fy*Ag)
	c.Compare(g.P, c.Available("R_c", "R_n", "N", Rn, 0.90, 1.67))
})

type spreadBucklingGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"compression along the plate"`
	W0 float64 `sym:"w_0" unit:"mm" min:"0" max:"5000" is:"width of the joint where the spread begins"`
	L  float64 `sym:"L" unit:"mm" min:"0" max:"5000" is:"length over which the force spreads"`
	Lb float64 `sym:"L_b" unit:"mm" min:"0" max:"5000" is:"free length of the plate"`
	K  float64 `sym:"K" unit:"" min:"0.3" max:"2.5" default:"0.65" is:"effective length factor: 0.5 corner gussets, 0.65 others (practice, from memory)"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// spreadBuckling is compression of a gusset on its 30 degree spread width: AISC 360-22 J4.4, Eq. J4-6, and E3.
var spreadBuckling = strength.Define(strength.Identity{
	ID: "spread-width-buckling", Title: "compression on the spread width of a gusset",
	Clause: clause("J4.4, Eq. J4-6; E3, Eq. E3-1 to E3-4", "on the 30 degree spread width of Manual Part 9; K is practice"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g spreadBucklingGivens) {
	lw := c.Let("l_w", "w_0 + 2*L*tan(30*deg)", "mm", g.W0+2*g.L*math.Tan(math.Pi/6))
	A := c.Let("A", "l_w*t", "mm^2", lw*g.T)
	r := c.Let("r", "t/sqrt(12)", "mm", g.T/math.Sqrt(12))
	Lcr := c.Let("Lc_r", "K*L_b/r", "", g.K*g.Lb/r)
	Fn := g.Fy
	if Lcr > 25 {
		Fn = bucklingStress(c, Lcr, g.Fy)
	} else {
		c.Let("F_n", "F_y", "MPa", Fn)
	}
	Pn := c.Let("P_n", "F_n*A", "N", Fn*A)
	c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67))
})

// bucklingStress is F_n of E3, Eq. E3-2 to E3-4, in its lines; Lc_r has been given before.
func bucklingStress(c *strength.Calc, lcr, fy float64) float64 {
	e := c.Let("E", "29000*ksi", "MPa", E)
	Fe := c.Let("F_e", "pow(pi, 2)*E/pow(Lc_r, 2)", "MPa", math.Pi*math.Pi*e/(lcr*lcr))
	if lcr <= c.Let("Lc_r1", "4.71*sqrt(E/F_y)", "", 4.71*math.Sqrt(e/fy)) {
		return c.Let("F_n", "pow(0.658, F_y/F_e)*F_y", "MPa", math.Pow(0.658, fy/Fe)*fy)
	}
	return c.Let("F_n", "0.877*F_e", "MPa", 0.877*Fe)
}
