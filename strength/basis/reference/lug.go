package reference

// Lugs and pins by the aerospace method: NASA TM X-73305 section B2, and the Air Force stress manual AFFDL-TR-69-42 chapter 9. Its efficiency
// factors are charts; they are givens here. The formulas are from memory.

import (
	"math"

	"lugwright/strength"
)

// aerospaceLug is the card of the method.
var aerospaceLug = bookCard("Aerospace lug method", "NASA TM X-73305", "1975", lugAxial, lugTransverse, lugOblique, pinDoubleShear, pinUltimateBending)

func lugClause(words string) strength.Clause {
	if words != "" {
		words = "; " + words
	}
	return strength.Clause{Document: "NASA TM X-73305", Edition: "1975", Section: "B2, lugs and shear pins", Words: "from memory" + words}
}

type lugAxialGivens struct {
	P    float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"axial force, ultimate"`
	D    float64 `sym:"D" unit:"mm" min:"0.1" max:"1000" is:"hole diameter"`
	W    float64 `sym:"w" unit:"mm" min:"0.1" max:"5000" is:"width of the lug"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the lug"`
	Kbr  float64 `sym:"K_br" unit:"" min:"0.01" max:"5" is:"shear-bearing efficiency factor, from the chart on e/D and D/t"`
	Kt   float64 `sym:"K_t" unit:"" min:"0.01" max:"1.5" is:"net tension efficiency factor, from the chart on w/D and the material"`
	Ftux float64 `sym:"F_tux" unit:"MPa" min:"1" max:"3000" is:"tensile strength across the grain"`
	Ftu  float64 `sym:"F_tu" unit:"MPa" min:"1" max:"3000" is:"tensile strength along the grain"`
	Ff   float64 `sym:"FF" unit:"" min:"1" max:"2" default:"1" is:"fitting factor on the load; 1.15 in aircraft practice"`
}

// lugAxial is a lug pulled along its axis: shear and bearing together, and net tension.
var lugAxial = strength.Define(strength.Identity{
	ID: "lug-axial", Title: "lug under axial load", Clause: lugClause("efficiency factors are givens"),
	Demand: "P_d", Capacity: "P_u", Unit: "N",
}, func(c *strength.Calc, g lugAxialGivens) {
	c.Need(g.W > g.D, "w > D", "a lug wider than its hole")
	Abr := c.Let("A_br", "D*t", "mm^2", g.D*g.T)
	At := c.Let("A_t", "(w - D)*t", "mm^2", (g.W-g.D)*g.T)
	Pb := c.Let("P_bru", "K_br*A_br*F_tux", "N", g.Kbr*Abr*g.Ftux)
	Pt := c.Let("P_tu", "K_t*A_t*F_tu", "N", g.Kt*At*g.Ftu)
	Pd := c.Let("P_d", "FF*P", "N", g.Ff*g.P)
	c.Compare(Pd, c.Let("P_u", "min(P_bru, P_tu)", "N", min(Pb, Pt)))
})

type lugTransverseGivens struct {
	P    float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"transverse force, ultimate"`
	A1   float64 `sym:"A_1" unit:"mm^2" min:"0.001" max:"1e6" is:"section at 45 degrees on the loaded side"`
	A2   float64 `sym:"A_2" unit:"mm^2" min:"0.001" max:"1e6" is:"second section round the hole"`
	A3   float64 `sym:"A_3" unit:"mm^2" min:"0.001" max:"1e6" is:"third section"`
	A4   float64 `sym:"A_4" unit:"mm^2" min:"0.001" max:"1e6" is:"fourth section"`
	D    float64 `sym:"D" unit:"mm" min:"0.1" max:"1000" default:"1" is:"hole diameter"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" default:"1" is:"thickness of the lug"`
	K    float64 `sym:"K_tru" unit:"" min:"0.001" max:"5" default:"1" is:"transverse efficiency factor, from the chart on A_av/A_br"`
	Ftux float64 `sym:"F_tux" unit:"MPa" min:"1" max:"3000" default:"1" is:"tensile strength across the grain"`
}

// lugTransverse is a lug pulled across its axis; the average of its four sections round the hole leads to the chart.
var lugTransverse = strength.Define(strength.Identity{
	ID: "lug-transverse", Title: "lug under transverse load", Clause: lugClause("efficiency factor is a given"),
	Demand: "P", Capacity: "P_tru", Unit: "N",
}, func(c *strength.Calc, g lugTransverseGivens) {
	Aav := c.Let("A_av", "6/(3/A_1 + 1/A_2 + 1/A_3 + 1/A_4)", "mm^2", 6/(3/g.A1+1/g.A2+1/g.A3+1/g.A4))
	Abr := c.Let("A_br", "D*t", "mm^2", g.D*g.T)
	c.Let("k_A", "A_av/A_br", "", Aav/Abr)
	c.Compare(g.P, c.Let("P_tru", "K_tru*A_br*F_tux", "N", g.K*Abr*g.Ftux))
})

type lugObliqueGivens struct {
	Pa float64 `sym:"P_a" unit:"N" min:"0" max:"1e9" is:"axial part of the force"`
	Pt float64 `sym:"P_tr" unit:"N" min:"0" max:"1e9" is:"transverse part of the force"`
	Ua float64 `sym:"P_u" unit:"N" min:"0.001" max:"1e9" is:"axial strength"`
	Ut float64 `sym:"P_tru" unit:"N" min:"0.001" max:"1e9" is:"transverse strength"`
}

// lugOblique joins both directions.
var lugOblique = strength.Define(strength.Identity{
	ID: "lug-oblique", Title: "lug under oblique load", Clause: lugClause(""),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g lugObliqueGivens) {
	Ra := c.Let("R_a", "P_a/P_u", "", g.Pa/g.Ua)
	Rt := c.Let("R_tr", "P_tr/P_tru", "", g.Pt/g.Ut)
	U := c.Let("U", "pow(pow(R_a, 1.6) + pow(R_tr, 1.6), 0.625)", "", math.Pow(math.Pow(Ra, 1.6)+math.Pow(Rt, 1.6), 0.625))
	if U > 0 {
		c.Let("MS", "1/U - 1", "", 1/U-1)
	}
	c.Compare(U, 1)
})

type pinShearGivens struct {
	P   float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force on the pin"`
	D   float64 `sym:"D" unit:"mm" min:"0.1" max:"1000" is:"pin diameter"`
	Fsu float64 `sym:"F_su" unit:"MPa" min:"0.1" max:"3000" is:"ultimate shear strength"`
}

// pinDoubleShear is a pin cut on two planes: 1.571 D^2 F_su.
var pinDoubleShear = strength.Define(strength.Identity{
	ID: "pin-double-shear", Title: "pin in double shear", Clause: lugClause(""),
	Demand: "P", Capacity: "P_us", Unit: "N",
}, func(c *strength.Calc, g pinShearGivens) {
	c.Compare(g.P, c.Let("P_us", "2*pi/4*pow(D, 2)*F_su", "N", 2*math.Pi/4*g.D*g.D*g.Fsu))
})

type pinUltimateGivens struct {
	P   float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force on the pin"`
	D   float64 `sym:"D" unit:"mm" min:"0.1" max:"1000" is:"pin diameter"`
	T1  float64 `sym:"t_1" unit:"mm" min:"0.1" max:"500" is:"thickness of each outer lug"`
	T2  float64 `sym:"t_2" unit:"mm" min:"0.1" max:"500" is:"thickness of the middle lug"`
	Gap float64 `sym:"g" unit:"mm" min:"0" max:"500" default:"0" is:"gap on each side"`
	K   float64 `sym:"k_b" unit:"" min:"1" max:"1.7" default:"1.56" is:"plastic bending coefficient, 1.56 for ductile round pins"`
	Ftu float64 `sym:"F_tu" unit:"MPa" min:"1" max:"3000" is:"tensile strength of the pin"`
	P1  float64 `sym:"P_1" unit:"N" min:"0" max:"1e9" default:"0" is:"strength of one outer lug; 0 leaves the peaking of load at the gaps out"`
	P2  float64 `sym:"P_2" unit:"N" min:"0" max:"1e9" default:"0" is:"strength of the middle lug; 0 leaves the peaking of load at the gaps out"`
}

// pinUltimateBending is the bending of a pin with loads spread evenly over the lugs; a weak pin in strong lugs lets the load peak at the gaps,
// each lug working over no more than the width that makes its bearing full.
var pinUltimateBending = strength.Define(strength.Identity{
	ID: "pin-bending", Title: "bending of the pin, with peaking of the load", Clause: lugClause("the peaking formula is derived here"),
	Demand: "P", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g pinUltimateGivens) {
	arm := c.Let("b", "t_1/2 + t_2/4 + g", "mm", g.T1/2+g.T2/4+g.Gap)
	c.Let("M", "P/2*b", "N*mm", g.P/2*arm)
	Pub := c.Let("P_ub", "pi*pow(D, 3)*k_b*F_tu/(16*b)", "N", math.Pi*g.D*g.D*g.D*g.K*g.Ftu/(16*arm))
	if g.P1 == 0 || g.P2 == 0 {
		c.Compare(g.P, c.Let("P_c", "P_ub", "N", Pub))
		return
	}
	C := c.Let("C", "P_1*P_2/(P_1*t_2 + P_2*t_1)", "N/mm", g.P1*g.P2/(g.P1*g.T2+g.P2*g.T1))
	peaked := c.Let("P_p", "2*C*(sqrt(P_ub*b/C + pow(g, 2)) - g)", "N", 2*C*(math.Sqrt(Pub*arm/C+g.Gap*g.Gap)-g.Gap))
	lugs := c.Let("P_lugs", "min(2*P_1, P_2)", "N", min(2*g.P1, g.P2))
	c.Compare(g.P, c.Let("P_c", "max(P_ub, min(P_p, P_lugs))", "N", max(Pub, min(peaked, lugs))))
})
