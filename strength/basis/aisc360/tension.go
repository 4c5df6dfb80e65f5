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
	P    float64   `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"tension"`
	A    float64   `sym:"A_g" unit:"mm^2" min:"0.1" max:"1e7" is:"gross area"`
	N    float64   `sym:"n_h" unit:"" min:"0" max:"100" default:"0" step:"0.5" is:"holes or slots across the section"`
	Dn   float64   `sym:"d_net" unit:"mm" min:"0" max:"500" default:"0" is:"width deducted for each: hole plus 1/16 in"`
	T    float64   `sym:"t" unit:"mm" min:"0" max:"500" default:"0" is:"thickness at the holes"`
	S    []float64 `sym:"s" unit:"mm" min:"0" max:"5000" default:"0" is:"stagger along the force of each slanting step from hole to hole of the section; one value for all when alike"`
	G    []float64 `sym:"g" unit:"mm" min:"0" max:"5000" default:"0" is:"gage across the force of each slanting step; one value for all when alike"`
	Fu   float64   `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
	Case float64   `sym:"U_case" choices:"given|2: bolts or welds to some parts|4: plates and shapes with longitudinal welds|5: slotted round tube|6: slotted rectangular tube|7: flange at least 2/3 of the depth wide|7: narrower flange|7: web|8: angle with 4 bolts or more|8: angle with 3 bolts" default:"0" is:"case of Table D3.1"`
	U    float64   `sym:"U_given" unit:"" min:"0" max:"1" default:"1" is:"shear lag factor where the case is given: 1 for case 1, and for case 3 with the area of the connected parts as A_g"`
	X    float64   `sym:"x_bar" unit:"mm" min:"0" max:"1e4" default:"0" is:"eccentricity of the joint"`
	L    float64   `sym:"l" unit:"mm" min:"0" max:"1e5" default:"0" is:"length of the joint, the mean where its welds differ; in cases 7 and 8 it adds case 2"`
	W    float64   `sym:"w" unit:"mm" min:"0" max:"1e4" default:"0" is:"width of the plate or of the connected part, case 4"`
	Ac   float64   `sym:"A_con" unit:"mm^2" min:"0" max:"1e7" default:"0" is:"gross area of the connected parts of an open section, for the least U of D3; 0 leaves it out"`
}

// tensionRupture is rupture on the effective net section with the shear lag factor of Table D3.1: AISC 360-22 D2(b), Eq. D2-2, and D3,
// Eq. D3-1, with the net width of staggered holes of B4.3b. Case 4 is new in 360-16, case 5 for round tubes in 360-22.
var tensionRupture = strength.Define(strength.Identity{
	ID: "tension-rupture", Title: "rupture of the net section in tension",
	Clause: clause("D2(b), Eq. D2-2; D3, Eq. D3-1 and Table D3.1; J4.1(b); B4.3b", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g tensionRuptureGivens) {
	gain, ok := stagger(c, g.S, g.G)
	if !ok {
		refused(c)
		return
	}
	An := c.Let("A_n", "A_g - n_h*d_net*t + w_s*t", "mm^2", g.A-g.N*g.Dn*g.T+gain*g.T)
	c.Need(An > 0, "A_n > 0*mm*mm", "material left beside the holes")
	c.Need(An <= g.A, "A_n <= A_g", "a stagger that gives back no more than the holes take")
	if g.Case > 0 && g.Case < 5 {
		c.Need(g.L > 0, "l > 0*mm", "a joint of some length")
	}
	Ae := c.Let("A_e", "A_n*U", "mm^2", An*shearLag(c, g))
	Pn := c.Let("P_n", "F_u*A_e", "N", g.Fu*Ae)
	c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.75, 2.00))
})

// stagger is the width that the slanting steps of a chain of holes give back: B4.3b(b), the sum of s^2/(4 g).
func stagger(c *strength.Calc, s, g []float64) (float64, bool) {
	steps, odd := max(len(s), len(g)), 0
	for _, list := range [2][]float64{s, g} {
		if len(list) != 1 {
			odd += steps - len(list)
		}
	}
	c.Solved("n_odd", "staggers or gages too few", "", float64(odd))
	if !c.Need(odd == 0, "n_odd == 0", "one s and one g for each slanting step, or one for all") {
		return 0, false
	}
	gain, flat := 0.0, 0
	for i := range steps {
		switch step, gage := height(s, i), height(g, i); {
		case gage > 0:
			gain += step * step / (4 * gage)
		case step > 0:
			flat++
		}
	}
	c.Solved("n_flat", "steps without a gage", "", float64(flat))
	ok := c.Need(flat == 0, "n_flat == 0", "a gage g for each stagger s")
	return c.Solved("w_s", "sum of s^2/(4 g) over the slanting steps", "mm", gain), ok
}

// shearLag is U of Table D3.1, and not less than the part of the area that is connected.
func shearLag(c *strength.Calc, g tensionRuptureGivens) float64 {
	if g.Ac == 0 {
		return tableShearLag(c, g, "U")
	}
	c.Need(g.Ac <= g.A, "A_con <= A_g", "connected parts that are part of the section")
	return c.Let("U", "max(U_t, A_con/A_g)", "", max(tableShearLag(c, g, "U_t"), g.Ac/g.A))
}

// flatLag are the cases 7 and 8 of Table D3.1, in the order of the choices.
var flatLag = [...]float64{0.90, 0.85, 0.70, 0.80, 0.60}

func tableShearLag(c *strength.Calc, g tensionRuptureGivens, symbol string) float64 {
	ratio := g.X / g.L
	switch g.Case {
	case 0:
		return c.Let(symbol, "U_given", "", g.U)
	case 1, 4:
		return c.Let(symbol, "1 - x_bar/l", "", 1-ratio)
	case 2:
		return c.Let(symbol, "3*pow(l, 2)/(3*pow(l, 2) + pow(w, 2))*(1 - x_bar/l)", "", 3*g.L*g.L/(3*g.L*g.L+g.W*g.W)*(1-ratio))
	case 3:
		return c.Let(symbol, "pow(1 + pow(x_bar/l, 3.2), -10)", "", math.Pow(1+math.Pow(ratio, 3.2), -10))
	}
	flat := flatLag[int(g.Case)-5]
	u := c.Let("U_78", "when(U_case < 5.5, 0.90, when(U_case < 6.5, 0.85, when(U_case < 7.5, 0.70, when(U_case < 8.5, 0.80, 0.60))))", "", flat)
	if g.L > 0 {
		return c.Let(symbol, "max(U_78, 1 - x_bar/l)", "", max(u, 1-ratio))
	}
	return c.Let(symbol, "U_78", "", u)
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
