package aisc360

// Plates in bending and triangular bracket plates: AISC 360-22 J4.5 and AISC Manual Part 15.

import (
	"math"

	"lugwright/strength"
)

type plateFlexureGivens struct {
	M    float64 `sym:"M_r" unit:"N*mm" min:"0" max:"1e12" is:"bending moment"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	L    float64 `sym:"h" unit:"mm" min:"0.1" max:"5000" is:"depth of the plate in bending"`
	Znet float64 `sym:"Z_net" unit:"mm^3" min:"0" max:"1e10" default:"0" is:"plastic modulus of the net section; 0 for a plate without holes"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// plateFlexure is flexural yielding and rupture of a connecting plate: AISC 360-22 J4.5 with Manual Part 9, M_n = F_y Z and F_u Z_net.
var plateFlexure = strength.Define(strength.Identity{
	ID: "plate-flexure", Title: "bending of a connecting plate at its bolts",
	Clause: clause("J4.5", "with Manual Part 9, F_y Z and F_u Z_net"),
	Demand: "M_r", Capacity: "M_c", Unit: "N*mm",
}, func(c *strength.Calc, g plateFlexureGivens) {
	Z := c.Let("Z", "t*pow(h, 2)/4", "mm^3", g.T*g.L*g.L/4)
	My := c.Let("M_ny", "F_y*Z", "N*mm", g.Fy*Z)
	Mc := c.Available("M_cy", "M_ny", "N*mm", My, 0.90, 1.67)
	if g.Znet > 0 {
		Mr := c.Let("M_nr", "F_u*Z_net", "N*mm", g.Fu*g.Znet)
		Mc = c.Let("M_c", "min(M_cy, M_cr)", "N*mm", min(Mc, c.Available("M_cr", "M_nr", "N*mm", Mr, 0.75, 2.00)))
	} else {
		c.Let("M_c", "M_cy", "N*mm", Mc)
	}
	c.Compare(g.M, Mc)
})

type plateShearGivens struct {
	V  float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force along the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	L  float64 `sym:"h" unit:"mm" min:"0.1" max:"5000" is:"length of the shear plane"`
	N  float64 `sym:"n_h" unit:"" min:"0" max:"100" default:"0" step:"0.5" is:"holes on the plane"`
	Dn float64 `sym:"d_net" unit:"mm" min:"0" max:"500" default:"0" is:"width deducted for each: hole plus 1/16 in"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// plateShear is shear yielding and rupture of a connecting plate: AISC 360-22 J4.2, Eq. J4-3 and J4-4.
var plateShear = strength.Define(strength.Identity{
	ID: "plate-shear", Title: "shear of a connecting plate",
	Clause: clause("J4.2, Eq. J4-3 and J4-4", ""),
	Demand: "V_r", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g plateShearGivens) {
	Agv := c.Let("A_gv", "h*t", "mm^2", g.L*g.T)
	Anv := c.Let("A_nv", "(h - n_h*d_net)*t", "mm^2", (g.L-g.N*g.Dn)*g.T)
	c.Need(Anv > 0, "A_nv > 0*mm*mm", "material left between the holes")
	Vy := c.Let("R_ny", "0.60*F_y*A_gv", "N", 0.60*g.Fy*Agv)
	Vu := c.Let("R_nu", "0.60*F_u*A_nv", "N", 0.60*g.Fu*Anv)
	cy := c.Available("R_cy", "R_ny", "N", Vy, 1.00, 1.50)
	cu := c.Available("R_cu", "R_nu", "N", Vu, 0.75, 2.00)
	c.Compare(g.V, c.Let("V_c", "min(R_cy, R_cu)", "N", min(cy, cu)))
})

type bracketPlateGivens struct {
	P    float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"load along the support line, on all plates together"`
	E    float64 `sym:"e" unit:"mm" min:"0" max:"5000" is:"load to the support line"`
	A    float64 `sym:"a" unit:"mm" min:"1" max:"5000" is:"height along the support"`
	B    float64 `sym:"b" unit:"mm" min:"1" max:"5000" is:"projection from the support"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of one plate"`
	N    float64 `sym:"n" unit:"" min:"1" max:"10" default:"1" is:"plates"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Hole float64 `sym:"hole" choices:"none|in the plate" default:"0" is:"an opening: the section through it is checked by itself, and its edge must yield before it buckles"`
}

// bracketPlate is axial force with bending on the section square to the free edge of a triangular plate, with buckling of that edge:
// AISC Manual 16th ed. Part 15, Eq. 15-1 to 15-14. F_cr is at most F_y.
var bracketPlate = strength.Define(strength.Identity{
	ID: "bracket-plate", Title: "free edge of a triangular bracket plate",
	Clause: strength.Clause{Document: "AISC Manual", Edition: "16th ed.", Section: "Part 15, bracket plates"},
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g bracketPlateGivens) {
	theta, ap, bp := bracketSection(c, g.A, g.B)
	N := c.Let("N_r", "P_r*cos(theta)", "N", g.P*math.Cos(theta))
	M := c.Let("M", "P_r*e - N_r*b_p/2", "N*mm", g.P*g.E-N*bp/2)
	lam := c.Let("lambda", "b_p/t*sqrt(F_y/ksi)/(5*sqrt(475 + 1120*pow(b_p/a_p, 2)))", "",
		bp/g.T*math.Sqrt(g.Fy/ksi)/(5*math.Sqrt(475+1120*(bp/ap)*(bp/ap))))
	if g.Hole > 0 {
		c.Need(lam <= 0.70, "lambda <= 0.70", "an edge that yields before it buckles, since there is an opening")
	}
	Q := c.Let("Q", "when(lambda <= 0.70, 1, when(lambda <= 1.41, 1.34 - 0.486*lambda, 1.30/pow(lambda, 2)))", "", edgeFactor(lam))
	Fcr := c.Let("F_cr", "Q*F_y", "MPa", Q*g.Fy)
	Nn := c.Let("N_n", "F_cr*n*t*b_p", "N", Fcr*g.N*g.T*bp)
	Mn := c.Let("M_n", "F_cr*n*t*pow(b_p, 2)/4", "N*mm", Fcr*g.N*g.T*bp*bp/4)
	Nc := c.Available("N_c", "N_n", "N", Nn, 0.90, 1.67)
	Mc := c.Available("M_c", "M_n", "N*mm", Mn, 0.90, 1.67)
	c.Compare(c.Let("U", "N_r/N_c + abs(M)/M_c", "", N/Nc+math.Abs(M)/Mc), 1)
})

func bracketSection(c *strength.Calc, a, b float64) (theta, ap, bp float64) {
	theta = c.Let("theta", "atan(b/a)", "rad", math.Atan(b/a))
	ap = c.Let("a_p", "a/cos(theta)", "mm", a/math.Cos(theta))
	bp = c.Let("b_p", "a*sin(theta)", "mm", a*math.Sin(theta))
	return theta, ap, bp
}

func edgeFactor(lambda float64) float64 {
	switch {
	case lambda <= 0.70:
		return 1
	case lambda <= 1.41:
		return 1.34 - 0.486*lambda
	}
	return 1.30 / (lambda * lambda)
}

type bracketShearGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"load along the support line, on all plates together"`
	A  float64 `sym:"a" unit:"mm" min:"1" max:"5000" is:"height along the support"`
	B  float64 `sym:"b" unit:"mm" min:"1" max:"5000" is:"projection from the support"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of one plate"`
	N  float64 `sym:"n" unit:"" min:"1" max:"10" default:"1" is:"plates"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// bracketPlateShear is shear on the same section: AISC Manual 16th ed. Part 15.
var bracketPlateShear = strength.Define(strength.Identity{
	ID: "bracket-plate-shear", Title: "shear of a triangular bracket plate",
	Clause: strength.Clause{Document: "AISC Manual", Edition: "16th ed.", Section: "Part 15, bracket plates"},
	Demand: "V", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g bracketShearGivens) {
	theta, _, bp := bracketSection(c, g.A, g.B)
	V := c.Let("V", "P_r*sin(theta)", "N", g.P*math.Sin(theta))
	Vn := c.Let("V_n", "0.6*F_y*n*t*b_p", "N", 0.6*g.Fy*g.N*g.T*bp)
	c.Compare(V, c.Available("V_c", "V_n", "N", Vn, 1.00, 1.50))
})

var cornerPlateRules = []strength.Rule[strength.CornerPlate]{
	{Of: bracketPlate, Check: func(c *strength.Calc, f *strength.CornerPlate) { bracketPlate.Check(c, bracketGivens(f)) }},
	{Of: bracketPlateShear, Check: func(c *strength.Calc, f *strength.CornerPlate) {
		bracketPlateShear.Check(c, bracketShearGivens{P: f.P, A: f.A, B: f.B, T: f.T, N: 1, Fy: f.Fy})
	}},
}

func bracketGivens(f *strength.CornerPlate) bracketPlateGivens {
	return bracketPlateGivens{P: f.P, E: f.E, A: f.A, B: f.B, T: f.T, N: 1, Fy: f.Fy, Hole: strength.Flag(f.Holed)}
}
