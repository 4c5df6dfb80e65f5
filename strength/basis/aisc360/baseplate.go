package aisc360

// Plates on a bed, and a concentrated force on a web or flange: AISC 360-22 J8 and J10, AISC Manual Part 14.

import (
	"math"

	"lugwright/strength"
)

type bearingBedGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"compression on the plate"`
	N  float64 `sym:"N_p" unit:"mm" min:"0" max:"5000" default:"0" is:"plate length"`
	B  float64 `sym:"B" unit:"mm" min:"0" max:"5000" default:"0" is:"plate width"`
	A1 float64 `sym:"A_1_0" unit:"mm^2" min:"0" max:"1e8" default:"0" is:"area of the plate where it is known; 0 works it out from its sides"`
	A2 float64 `sym:"A_2" unit:"mm^2" min:"0" max:"1e8" default:"0" is:"area of the bed that is geometrically like the plate; 0 for a bed no larger than the plate"`
	Fc float64 `sym:"f_c" unit:"MPa" min:"1" max:"200" is:"strength of the concrete bed"`
}

type bedGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"compression on the plate"`
	N  float64 `sym:"N_p" unit:"mm" min:"1" max:"5000" is:"plate length, along the depth of what stands on it"`
	B  float64 `sym:"B" unit:"mm" min:"1" max:"5000" is:"plate width"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"5000" is:"depth of what stands on it"`
	Bf float64 `sym:"b_f" unit:"mm" min:"1" max:"5000" is:"width of what stands on it"`
	T  float64 `sym:"t" unit:"mm" min:"0" max:"500" default:"0" is:"plate thickness; 0 when only the least is wanted"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
	Fc float64 `sym:"f_c" unit:"MPa" min:"1" max:"200" is:"strength of the concrete bed"`
	On float64 `sym:"stands" choices:"wide flange|rectangular tube|round tube" default:"0" is:"what stands on the plate, for its thickness"`
	A2 float64 `sym:"A_2" unit:"mm^2" min:"0" max:"1e8" default:"0" is:"area of the bed that is geometrically like the plate; 0 for a bed no larger than the plate"`
}

// bedBearing is bearing of a plate on concrete: AISC 360-22 J8, Eq. J8-1 and J8-2.
var bedBearing = strength.Define(strength.Identity{
	ID: "bearing-on-concrete", Title: "bearing of a plate on concrete",
	Clause: clause("J8, Eq. J8-1 and J8-2", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g bearingBedGivens) {
	a1 := g.A1
	if a1 == 0 {
		a1 = g.N * g.B
	}
	c.Let("A_1", "when(A_1_0 > 0*mm*mm, A_1_0, N_p*B)", "mm^2", a1)
	c.Need(a1 > 0, "A_1 > 0*mm*mm", "a plate: its sides, or its area")
	Pc := bedStrength(c, a1, g.A2, g.Fc)
	if c.Method == strength.LRFD {
		c.Let("A_1req", "P_r/(phi*0.85*f_c)", "mm^2", g.P/(0.65*0.85*g.Fc))
	} else {
		c.Let("A_1req", "Omega*P_r/(0.85*f_c)", "mm^2", 2.31*g.P/(0.85*g.Fc))
	}
	c.Compare(g.P, Pc)
})

// bedStrength is A_1 sqrt(A_2/A_1) as the root of their product, which stands for no area as well.
func bedStrength(c *strength.Calc, a1, a2, fc float64) float64 {
	if a2 == 0 {
		a2 = a1
	}
	c.Let("A_2b", "when(A_2 > 0*mm*mm, A_2, A_1)", "mm^2", a2)
	Pp := c.Let("P_p", "min(0.85*f_c*sqrt(A_1*A_2b), 1.7*f_c*A_1)", "N", min(0.85*fc*math.Sqrt(a1*a2), 1.7*fc*a1))
	return c.Available("P_c", "P_p", "N", Pp, 0.65, 2.31)
}

// bedThickness is the thickness of a plate on a uniform bed from its cantilevers: AISC Manual Part 14. The same strip serves any flat pad.
var bedThickness = strength.Define(strength.Identity{
	ID: "base-plate-thickness", Title: "thickness of a plate on a uniform bed",
	Clause: strength.Clause{Document: "AISC Manual", Edition: "16th ed.", Section: "Part 14, base plates"},
	Demand: "t_min", Capacity: "t", Unit: "mm",
}, func(c *strength.Calc, g bedGivens) {
	Pc := bedStrength(c, c.Let("A_1", "N_p*B", "mm^2", g.N*g.B), g.A2, g.Fc)
	c.Need(g.P <= Pc, "P_r <= P_c", "a bed that carries the load")
	km, kn := 0.95, 0.80
	switch g.On {
	case 1:
		kn = 0.95
	case 2:
		km = 0.80
	}
	m := c.Let("m", "(N_p - when(stands > 1.5, 0.80, 0.95)*d)/2", "mm", (g.N-km*g.D)/2)
	n := c.Let("n", "(B - when(stands < 0.5, 0.80, when(stands < 1.5, 0.95, 0.80))*b_f)/2", "mm", (g.B-kn*g.Bf)/2)
	var l float64
	if g.On > 0 {
		l = c.Let("l", "max(m, n, 0*mm)", "mm", max(m, n, 0))
	} else {
		l = flangeCantilever(c, g, Pc, m, n)
	}
	f := c.Let("f_p", "P_r/(N_p*B)", "MPa", g.P/(g.N*g.B))
	var t float64
	if c.Method == strength.LRFD {
		t = c.Let("t_min", "l*sqrt(2*f_p/(0.90*F_y))", "mm", l*math.Sqrt(2*f/(0.90*g.Fy)))
	} else {
		t = c.Let("t_min", "l*sqrt(1.67*2*f_p/F_y)", "mm", l*math.Sqrt(1.67*2*f/g.Fy))
	}
	c.Least(t, g.T)
})

// flangeCantilever takes the bed between the flanges of a wide flange in too: lambda n' of the Manual. Tubes have none (from memory of its Part 14).
func flangeCantilever(c *strength.Calc, g bedGivens, Pc, m, n float64) float64 {
	n2 := c.Let("n_p", "sqrt(d*b_f)/4", "mm", math.Sqrt(g.D*g.Bf)/4)
	X := c.Let("X", "4*d*b_f/pow(d + b_f, 2)*P_r/P_c", "", 4*g.D*g.Bf/((g.D+g.Bf)*(g.D+g.Bf))*g.P/Pc)
	lam := c.Let("lambda", "min(2*sqrt(X)/(1 + sqrt(max(1 - X, 0))), 1)", "", min(2*math.Sqrt(X)/(1+math.Sqrt(max(1-X, 0))), 1))
	return c.Let("l", "max(m, n, lambda*n_p)", "mm", max(m, n, lam*n2))
}

type webYieldGivens struct {
	R   float64 `sym:"R_r" unit:"N" min:"0" max:"1e9" is:"force on the flange, in the plane of the web"`
	Tw  float64 `sym:"t_w" unit:"mm" min:"0.1" max:"200" is:"web thickness"`
	K   float64 `sym:"k" unit:"mm" min:"0.1" max:"500" is:"outer face of the flange to the toe of the fillet"`
	Lb  float64 `sym:"l_b" unit:"mm" min:"0" max:"5000" is:"length of bearing"`
	End float64 `sym:"at_end" choices:"away from the end|at the member's end" default:"0" is:"where the force acts: at the end is within d"`
	Fy  float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the web"`
}

// webYield is local yielding of a web under a concentrated force: AISC 360-22 J10.2, Eq. J10-2 and J10-3.
var webYield = strength.Define(strength.Identity{
	ID: "web-local-yield", Title: "local yielding of a web",
	Clause: clause("J10.2, Eq. J10-2 and J10-3", ""),
	Demand: "R_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g webYieldGivens) {
	spread := 5.0
	if g.End > 0 {
		spread = 2.5
	}
	Rn := c.Let("R_n", "F_y*t_w*(when(at_end > 0, 2.5, 5)*k + l_b)", "N", g.Fy*g.Tw*(spread*g.K+g.Lb))
	c.Compare(g.R, c.Available("R_c", "R_n", "N", Rn, 1.00, 1.50))
})

type webCrippleGivens struct {
	R   float64 `sym:"R_r" unit:"N" min:"0" max:"1e9" is:"force on the flange, in the plane of the web"`
	Tw  float64 `sym:"t_w" unit:"mm" min:"0.1" max:"200" is:"web thickness"`
	Tf  float64 `sym:"t_f" unit:"mm" min:"0.1" max:"200" is:"flange thickness"`
	Lb  float64 `sym:"l_b" unit:"mm" min:"0" max:"5000" is:"length of bearing"`
	D   float64 `sym:"d" unit:"mm" min:"1" max:"5000" is:"depth of the section"`
	End float64 `sym:"at_end" choices:"away from the end|at the member's end" default:"0" is:"where the force acts: at the end is within d/2"`
	Fy  float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the web"`
}

// webCripple is local crippling of a web: AISC 360-22 J10.3, Eq. J10-4, and Eq. J10-5a and J10-5b at a member's end, Q_f = 1.
var webCripple = strength.Define(strength.Identity{
	ID: "web-local-crippling", Title: "local crippling of a web",
	Clause: clause("J10.3, Eq. J10-4, J10-5a and J10-5b", "Q_f = 1"),
	Demand: "R_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g webCrippleGivens) {
	e := c.Let("E", "29000*ksi", "MPa", E)
	root := c.Let("s_0", "sqrt(E*F_y*t_f/t_w)", "MPa", math.Sqrt(e*g.Fy*g.Tf/g.Tw))
	thin := c.Let("r_t", "pow(t_w/t_f, 1.5)", "", math.Pow(g.Tw/g.Tf, 1.5))
	var Rn float64
	switch {
	case g.End == 0:
		Rn = c.Let("R_n", "0.80*pow(t_w, 2)*(1 + 3*l_b/d*r_t)*s_0", "N", 0.80*g.Tw*g.Tw*(1+3*g.Lb/g.D*thin)*root)
	case g.Lb/g.D <= 0.2:
		Rn = c.Let("R_n", "0.40*pow(t_w, 2)*(1 + 3*l_b/d*r_t)*s_0", "N", 0.40*g.Tw*g.Tw*(1+3*g.Lb/g.D*thin)*root)
	default:
		Rn = c.Let("R_n", "0.40*pow(t_w, 2)*(1 + (4*l_b/d - 0.2)*r_t)*s_0", "N", 0.40*g.Tw*g.Tw*(1+(4*g.Lb/g.D-0.2)*thin)*root)
	}
	c.Compare(g.R, c.Available("R_c", "R_n", "N", Rn, 0.75, 2.00))
})

type flangeGivens struct {
	R   float64 `sym:"R_r" unit:"N" min:"0" max:"1e9" is:"pull on the flange"`
	Tf  float64 `sym:"t_f" unit:"mm" min:"0.1" max:"200" is:"flange thickness"`
	End float64 `sym:"at_end" choices:"away from the end|at the member's end" default:"0" is:"where the force acts: at the end is within 10 t_f"`
	Fy  float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the flange"`
}

// flangeBending is local bending of a flange under a pull: AISC 360-22 J10.1, Eq. J10-1, half of it at a member's end.
var flangeBending = strength.Define(strength.Identity{
	ID: "flange-local-bending", Title: "local bending of a flange",
	Clause: clause("J10.1, Eq. J10-1", ""),
	Demand: "R_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g flangeGivens) {
	part := 1.0
	if g.End > 0 {
		part = 0.5
	}
	Rn := c.Let("R_n", "when(at_end > 0, 0.5, 1)*6.25*F_y*pow(t_f, 2)", "N", part*6.25*g.Fy*g.Tf*g.Tf)
	c.Compare(g.R, c.Available("R_c", "R_n", "N", Rn, 0.90, 1.67))
})

type webCompressionGivens struct {
	R   float64 `sym:"R_r" unit:"N" min:"0" max:"1e9" is:"pair of forces that press both flanges together"`
	Tw  float64 `sym:"t_w" unit:"mm" min:"0.1" max:"200" is:"web thickness"`
	H   float64 `sym:"h" unit:"mm" min:"1" max:"5000" is:"clear web between the flanges, less the fillets or corner radii"`
	End float64 `sym:"at_end" choices:"away from the end|at the member's end" default:"0" is:"where the forces act: at the end is within d/2"`
	Fy  float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the web"`
}

// webCompression is buckling of a web pressed from both flanges: AISC 360-22 J10.5, Eq. J10-8, Q_f = 1, half of it at a member's end.
var webCompression = strength.Define(strength.Identity{
	ID: "web-compression-buckling", Title: "buckling of a web pressed from both flanges",
	Clause: clause("J10.5, Eq. J10-8", "Q_f = 1"),
	Demand: "R_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g webCompressionGivens) {
	e := c.Let("E", "29000*ksi", "MPa", E)
	part := 1.0
	if g.End > 0 {
		part = 0.5
	}
	Rn := c.Let("R_n", "when(at_end > 0, 0.5, 1)*24*pow(t_w, 3)*sqrt(E*F_y)/h", "N", part*24*g.Tw*g.Tw*g.Tw*math.Sqrt(e*g.Fy)/g.H)
	c.Compare(g.R, c.Available("R_c", "R_n", "N", Rn, 0.90, 1.67))
})
