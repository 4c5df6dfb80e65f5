package en1993

// Bending, axial force and shear at a section cut from the true outline, and their interaction: EN 1993-1-1, 6.2 and 6.3.

import (
	"math"

	"lugwright/strength"
)

var sectionLimits = []strength.Evaluator{weakAxis, edgewise, axial, sectionShear, interaction, bendingWithAxial, columnBuckling}

type weakAxisGivens struct {
	M  float64 `sym:"M_x_Ed" unit:"N*mm" min:"0" max:"1e12" is:"bending moment about the weak axis"`
	Z  float64 `sym:"W_pl_x" unit:"mm^3" min:"0" max:"1e9" default:"0" is:"plastic modulus; 0 where the section is held to first yield"`
	S  float64 `sym:"W_el_x" unit:"mm^3" min:"0" max:"1e9" default:"0" is:"elastic modulus at the worst corner; needed where no plastic one is given"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// weakAxis is bending of a plate out of its plane: plastic for a solid rectangle, which is class 1 about this axis. A section of several
// plates, or one with holes, is held to first yield (class 3): our cautious choice.
var weakAxis = strength.Define(strength.Identity{
	ID: "weak-axis-bending", Title: "weak-axis bending",
	Clause: member("6.2.5, Eq. 6.13 and 6.14", "first yield for built-up sections"),
	Demand: "M_x_Ed", Capacity: "M_x_Rd", Unit: "N*mm",
}, func(c *strength.Calc, g weakAxisGivens) {
	c.Need(g.Z > 0 || g.S > 0, "W_pl_x + W_el_x > 0*mm*mm*mm", "a plastic or an elastic modulus")
	c.Compare(g.M, weakMoment(c, g.Z, g.S, g.Fy))
})

// What no load changes at a section: resistances to bending about each axis, and to axial force of either sense.
const (
	weakResistance = iota
	edgeResistance
	tensionResistance
	compressionResistance
	shearResisted
)

func weakMoment(c *strength.Calc, z, s, fy float64) float64 {
	if known, ok := c.Known(weakResistance); ok {
		return known
	}
	g0 := c.Factor("gamma_M0")
	if z > 0 {
		return c.Keep(weakResistance, c.Let("M_x_Rd", "W_pl_x*f_y/gamma_M0", "N*mm", z*fy/g0))
	}
	return c.Keep(weakResistance, c.Let("M_x_Rd", "W_el_x*f_y/gamma_M0", "N*mm", s*fy/g0))
}

type edgewiseGivens struct {
	M  float64 `sym:"M_y_Ed" unit:"N*mm" min:"0" max:"1e12" is:"bending moment in the plane of the plate"`
	Z  float64 `sym:"W_pl_y" unit:"mm^3" min:"0" max:"1e10" default:"0" is:"plastic modulus; 0 where the section is held to first yield"`
	S  float64 `sym:"W_el_y" unit:"mm^3" min:"0" max:"1e10" default:"0" is:"elastic modulus at the worst corner; needed where no plastic one is given"`
	L  float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length from the cut to the load"`
	D  float64 `sym:"h" unit:"mm" min:"0.1" max:"1e4" is:"depth of the plate in bending"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// edgewise is bending of a plate in its plane with lateral-torsional buckling by the general case, curve d. The critical moment is that of
// a narrow rectangle under an even moment over the free length, pi/L sqrt(E I_z G I_t): less than the 4.01/L of a cantilever with its
// load at the end. Sections of several plates are held to first yield and brace each other.
var edgewise = strength.Define(strength.Identity{
	ID: "edgewise-bending", Title: "bending in the plane of the plate",
	Clause: member("6.2.5; 6.3.2.2, Eq. 6.55 and 6.56, Tables 6.3 and 6.4", "curve d; critical moment of a narrow rectangle, elastic theory"),
	Demand: "M_y_Ed", Capacity: "M_y_Rd", Unit: "N*mm",
}, func(c *strength.Calc, g edgewiseGivens) {
	g0 := c.Factor("gamma_M0")
	c.Need(g.Z > 0 || g.S > 0, "W_pl_y + W_el_y > 0*mm*mm*mm", "a plastic or an elastic modulus")
	c.Compare(g.M, edgeMoment(c, &g, g0))
})

func edgeMoment(c *strength.Calc, g *edgewiseGivens, g0 float64) float64 {
	if known, ok := c.Known(edgeResistance); ok {
		return known
	}
	return c.Keep(edgeResistance, edgeLines(c, g, g0))
}

func edgeLines(c *strength.Calc, g *edgewiseGivens, g0 float64) float64 {
	if g.Z == 0 {
		return c.Let("M_y_Rd", "W_el_y*f_y/gamma_M0", "N*mm", g.S*g.Fy/g0)
	}
	g1 := c.Factor("gamma_M1")
	ML := c.Let("M_cr_L", "pi*h*pow(t, 3)/6*sqrt(210000*MPa*81000*MPa)", "N*mm^2", math.Pi*g.D*math.Pow(g.T, 3)/6*math.Sqrt(e210*g81))
	lam := c.Let("lambda_LT", "sqrt(W_pl_y*f_y*L/M_cr_L)", "", math.Sqrt(g.Z*g.Fy*g.L/ML))
	phi := c.Let("Phi_LT", "0.5*(1 + 0.76*(lambda_LT - 0.2) + pow(lambda_LT, 2))", "", 0.5*(1+0.76*(lam-0.2)+lam*lam))
	chi := c.Let("chi_LT", "min(1/(Phi_LT + sqrt(pow(Phi_LT, 2) - pow(lambda_LT, 2))), 1)", "", reduction(phi, lam))
	pl := g.Z * g.Fy
	return c.Let("M_y_Rd", "min(chi_LT*W_pl_y*f_y/gamma_M1, W_pl_y*f_y/gamma_M0)", "N*mm", min(chi*g.Z*g.Fy/g1, pl/g0))
}

func reduction(phi, lam float64) float64 { return min(1/(phi+math.Sqrt(phi*phi-lam*lam)), 1) }

type axialGivens struct {
	N   float64 `sym:"N_Ed" unit:"N" min:"-1e9" max:"1e9" is:"axial force, tension positive"`
	A   float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"area of the section, less its holes"`
	Net float64 `sym:"net" choices:"no hole|through a hole" default:"0" is:"what the cut meets"`
	R   float64 `sym:"i" unit:"mm" min:"0.01" max:"1e4" is:"least radius of gyration"`
	L   float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length from the cut to the load"`
	Fy  float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu  float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// axial is tension, with rupture where the cut goes through a hole, or compression of a plate that stands free at its loaded end: flexural
// buckling on curve c with twice the free length.
var axial = strength.Define(strength.Identity{
	ID: "axial-force", Title: "axial force at a section",
	Clause: member("6.2.3, Eq. 6.6 and 6.7; 6.2.4, Eq. 6.10; 6.3.1, Eq. 6.47 to 6.50, Tables 6.1 and 6.2", "curve c, L_cr = 2 L"),
	Demand: "abs(N_Ed)", Capacity: "N_Rd", Unit: "N",
}, func(c *strength.Calc, g axialGivens) {
	g0 := c.Factor("gamma_M0")
	c.Compare(math.Abs(g.N), axialStrength(c, &g, g0))
})

func axialStrength(c *strength.Calc, g *axialGivens, g0 float64) float64 {
	sense := tensionResistance
	if g.N < 0 {
		sense = compressionResistance
	}
	if known, ok := c.Known(sense); ok {
		return known
	}
	return c.Keep(sense, axialLines(c, g, g0))
}

func axialLines(c *strength.Calc, g *axialGivens, g0 float64) float64 {
	switch {
	case g.N < 0:
		chi := flexural(c, 2*g.L, "2*L", g.R, g.Fy)
		g1 := c.Factor("gamma_M1")
		return c.Let("N_Rd", "min(chi*A*f_y/gamma_M1, A*f_y/gamma_M0)", "N", min(chi*g.A*g.Fy/g1, g.A*g.Fy/g0))
	case g.Net > 0:
		g2 := c.Factor("gamma_M2_net")
		return c.Let("N_Rd", "min(A*f_y/gamma_M0, 0.9*A*f_u/gamma_M2_net)", "N", min(g.A*g.Fy/g0, 0.9*g.A*g.Fu/g2))
	}
	return c.Let("N_Rd", "A*f_y/gamma_M0", "N", g.A*g.Fy/g0)
}

// flexural is chi of a solid section: curve c.
func flexural(c *strength.Calc, length float64, formula string, r, fy float64) float64 {
	lcr := c.Let("L_cr", formula, "mm", length)
	l1 := c.Let("lambda_1", "pi*sqrt(210000*MPa/f_y)", "", math.Pi*math.Sqrt(e210/fy))
	lam := c.Let("lambda", "L_cr/(i*lambda_1)", "", lcr/(r*l1))
	phi := c.Let("Phi", "0.5*(1 + 0.49*(lambda - 0.2) + pow(lambda, 2))", "", 0.5*(1+0.49*(lam-0.2)+lam*lam))
	return c.Let("chi", "min(1/(Phi + sqrt(pow(Phi, 2) - pow(lambda, 2))), 1)", "", reduction(phi, lam))
}

type sectionShearGivens struct {
	Va float64 `sym:"V_x_Ed" unit:"N" min:"0" max:"1e9" is:"shear force out of the plate's plane"`
	Vb float64 `sym:"V_y_Ed" unit:"N" min:"0" max:"1e9" is:"shear force in the plate's plane"`
	T  float64 `sym:"T_Ed" unit:"N*mm" min:"0" max:"1e12" is:"torsion about the shear centre"`
	Aa float64 `sym:"A_vx" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_x_Ed"`
	Ab float64 `sym:"A_vy" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_y_Ed"`
	J  float64 `sym:"I_t" unit:"mm^4" min:"1e-3" max:"1e12" is:"torsion constant for stress, the largest shear stress being T t/J: of a solid rectangle by St Venant's series"`
	Tm float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickest part"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// sectionShear is plastic shear on the areas that run along each force, by the root of squares, with St Venant torsion of the thin
// rectangles added to it. Adding is cautious beside 6.2.7(9).
var sectionShear = strength.Define(strength.Identity{
	ID: "section-shear", Title: "shear and torsion at a section",
	Clause: member("6.2.6, Eq. 6.18; 6.2.7", "torsion added by elementary theory"),
	Demand: "tau_Ed", Capacity: "tau_Rd", Unit: "MPa",
}, func(c *strength.Calc, g sectionShearGivens) {
	g0 := c.Factor("gamma_M0")
	c.Compare(shearStress(c, &g), shearResistance(c, g.Fy, g0))
})

func shearStress(c *strength.Calc, g *sectionShearGivens) float64 {
	v := c.Let("tau_V", "sqrt(pow(V_x_Ed/A_vx, 2) + pow(V_y_Ed/A_vy, 2))", "MPa", math.Sqrt((g.Va/g.Aa)*(g.Va/g.Aa)+(g.Vb/g.Ab)*(g.Vb/g.Ab)))
	t := c.Let("tau_T", "T_Ed*t/I_t", "MPa", g.T*g.Tm/g.J)
	return c.Let("tau_Ed", "tau_V + tau_T", "MPa", v+t)
}

func shearResistance(c *strength.Calc, fy, g0 float64) float64 {
	if known, ok := c.Known(shearResisted); ok {
		return known
	}
	return c.Keep(shearResisted, c.Let("tau_Rd", "f_y/(sqrt(3)*gamma_M0)", "MPa", fy/(math.Sqrt(3)*g0)))
}

type interactionGivens struct {
	Mx  float64 `sym:"M_x_Ed" unit:"N*mm" min:"0" max:"1e12" is:"weak-axis moment"`
	My  float64 `sym:"M_y_Ed" unit:"N*mm" min:"0" max:"1e12" is:"moment in the plane of the plate"`
	N   float64 `sym:"N_Ed" unit:"N" min:"-1e9" max:"1e9" is:"axial force, tension positive"`
	Va  float64 `sym:"V_x_Ed" unit:"N" min:"0" max:"1e9" is:"shear force out of the plate's plane"`
	Vb  float64 `sym:"V_y_Ed" unit:"N" min:"0" max:"1e9" is:"shear force in the plate's plane"`
	T   float64 `sym:"T_Ed" unit:"N*mm" min:"0" max:"1e12" is:"torsion about the shear centre"`
	Zx  float64 `sym:"W_pl_x" unit:"mm^3" min:"0" max:"1e9" is:"plastic modulus, weak axis; 0 for first yield"`
	Sx  float64 `sym:"W_el_x" unit:"mm^3" min:"1e-3" max:"1e9" is:"elastic modulus, weak axis"`
	Zy  float64 `sym:"W_pl_y" unit:"mm^3" min:"0" max:"1e10" is:"plastic modulus in the plane; 0 for first yield"`
	Sy  float64 `sym:"W_el_y" unit:"mm^3" min:"1e-3" max:"1e10" is:"elastic modulus in the plane"`
	A   float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"area of the section, less its holes"`
	Net float64 `sym:"net" choices:"no hole|through a hole" default:"0" is:"what the cut meets"`
	Aa  float64 `sym:"A_vx" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_x_Ed"`
	Ab  float64 `sym:"A_vy" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_y_Ed"`
	J   float64 `sym:"I_t" unit:"mm^4" min:"1e-3" max:"1e12" is:"torsion constant"`
	R   float64 `sym:"i" unit:"mm" min:"0.01" max:"1e4" is:"least radius of gyration"`
	L   float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length from the cut to the load"`
	D   float64 `sym:"h" unit:"mm" min:"0.1" max:"1e4" is:"depth of the plate in bending"`
	Tm  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Fy  float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu  float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// interaction is bending about both axes with axial force and shear. Parts are added (6.2.1(7)), the axial one squared for a solid
// rectangle in tension (Eq. 6.32). Shear above half its resistance lowers the yield strength of all by rho (6.2.8, 6.2.10). In
// compression the moments grow by k of Annex B (sway, C_m = 0.9; its greatest value for the axial force).
var interaction = strength.Define(strength.Identity{
	ID: "section-interaction", Title: "bending, axial force and shear together",
	Clause: member("6.2.1(7), Eq. 6.2; 6.2.8; 6.2.9.1(3), Eq. 6.32; 6.2.10; 6.3.3, Eq. 6.61 with Annex B", "k from memory, bounded; torsion within the shear"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g interactionGivens) { c.Compare(together(c, &g), 1) })

func together(c *strength.Calc, g *interactionGivens) float64 {
	Mx := weakMoment(c, g.Zx, g.Sx, g.Fy)
	g0 := c.Factor("gamma_M0")
	My := edgeMoment(c, &edgewiseGivens{Z: g.Zy, S: g.Sy, L: g.L, D: g.D, T: g.Tm, Fy: g.Fy}, g0)
	N := axialStrength(c, &axialGivens{N: g.N, A: g.A, Net: g.Net, R: g.R, L: g.L, Fy: g.Fy, Fu: g.Fu}, g0)
	t := shearStress(c, &sectionShearGivens{Va: g.Va, Vb: g.Vb, T: g.T, Aa: g.Aa, Ab: g.Ab, J: g.J, Tm: g.Tm, Fy: g.Fy})
	r := shearResistance(c, g.Fy, g0)
	c.Need(t < r, "tau_Ed < tau_Rd", "the section carries its shear alone")
	left := c.Let("left", "when(tau_Ed <= tau_Rd/2, 1, 1 - pow(2*tau_Ed/tau_Rd - 1, 2))", "", 1-shearLoss(t, r))
	m := c.Let("u_M", "M_x_Ed/M_x_Rd + M_y_Ed/M_y_Rd", "", g.Mx/Mx+g.My/My)
	n := c.Let("u_N", "abs(N_Ed)/N_Rd", "", math.Abs(g.N)/N)
	if g.N >= 0 && g.Zx > 0 && g.Zy > 0 {
		return c.Let("U", "u_M/left + pow(u_N/left, 2)", "", m/left+(n/left)*(n/left))
	}
	k := 1.0
	if g.N < 0 {
		k = max(1, 0.9*(1+0.8*min(n, 1)))
	}
	k = c.Let("k", "when(N_Ed < 0*N, max(1, 0.9*(1 + 0.8*min(u_N, 1))), 1)", "", k)
	return c.Let("U", "(u_N + k*u_M)/left", "", (n+k*m)/left)
}

func togetherGivens(f *strength.Cut) interactionGivens {
	return interactionGivens{
		Mx: f.Ma, My: f.Mb, N: f.N, Va: f.Va, Vb: f.Vb, T: f.T, Zx: f.Za, Sx: f.Sa, Zy: f.Zb, Sy: f.Sb, A: f.Area, Net: strength.Flag(f.Net),
		Aa: f.AreaVa, Ab: f.AreaVb, J: f.J, R: f.R, L: f.FreeLength, D: f.Depth, Tm: f.TMax, Fy: f.Fy, Fu: f.Fu,
	}
}

func shearGivens(f *strength.Cut) sectionShearGivens {
	return sectionShearGivens{Va: f.Va, Vb: f.Vb, T: f.T, Aa: f.AreaVa, Ab: f.AreaVb, J: f.J, Tm: f.TMax, Fy: f.Fy}
}

// shearLoss is rho of 6.2.8(3).
func shearLoss(t, r float64) float64 {
	if t <= r/2 {
		return 0
	}
	return (2*t/r - 1) * (2*t/r - 1)
}

type bendingAxialGivens struct {
	M  float64 `sym:"M_Ed" unit:"N*mm" min:"0" max:"1e12" is:"bending moment"`
	N  float64 `sym:"N_Ed" unit:"N" min:"0" max:"1e9" is:"axial force, either way"`
	B  float64 `sym:"b" unit:"mm" min:"0.1" max:"5000" is:"width, along the axis of bending"`
	H  float64 `sym:"h" unit:"mm" min:"0.1" max:"5000" is:"depth, square to the axis of bending"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// bendingWithAxial is the moment that an axial force leaves a solid rectangle, no buckling.
var bendingWithAxial = strength.Define(strength.Identity{
	ID: "rectangle-bending-axial", Title: "bending of a solid rectangle with axial force",
	Clause: member("6.2.9.1(3), Eq. 6.32", ""),
	Demand: "M_Ed", Capacity: "M_N_Rd", Unit: "N*mm",
}, func(c *strength.Calc, g bendingAxialGivens) {
	g0 := c.Factor("gamma_M0")
	N := c.Let("N_pl_Rd", "b*h*f_y/gamma_M0", "N", g.B*g.H*g.Fy/g0)
	M := c.Let("M_pl_Rd", "b*pow(h, 2)/4*f_y/gamma_M0", "N*mm", g.B*g.H*g.H/4*g.Fy/g0)
	c.Need(g.N < N, "N_Ed < N_pl_Rd", "the section carries its axial force alone")
	c.Compare(g.M, c.Let("M_N_Rd", "M_pl_Rd*(1 - pow(N_Ed/N_pl_Rd, 2))", "N*mm", M*(1-(g.N/N)*(g.N/N))))
})

type columnGivens struct {
	N  float64 `sym:"N_Ed" unit:"N" min:"0" max:"1e9" is:"compression"`
	A  float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"area of the section, class 1 to 3"`
	R  float64 `sym:"i" unit:"mm" min:"0.01" max:"1e4" is:"radius of gyration"`
	L  float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"buckling length"`
	Al float64 `sym:"alpha" unit:"" min:"0.1" max:"1" default:"0.49" is:"imperfection: 0.13, 0.21, 0.34, 0.49, 0.76 for curves a0 to d; solid sections have c"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// columnBuckling is flexural buckling of a bar.
var columnBuckling = strength.Define(strength.Identity{
	ID: "column-buckling", Title: "flexural buckling of a bar in compression",
	Clause: member("6.3.1, Eq. 6.47 to 6.50, Tables 6.1 and 6.2", ""),
	Demand: "N_Ed", Capacity: "N_b_Rd", Unit: "N",
}, func(c *strength.Calc, g columnGivens) {
	g1 := c.Factor("gamma_M1")
	l1 := c.Let("lambda_1", "pi*sqrt(210000*MPa/f_y)", "", math.Pi*math.Sqrt(e210/g.Fy))
	lam := c.Let("lambda", "L/(i*lambda_1)", "", g.L/(g.R*l1))
	phi := c.Let("Phi", "0.5*(1 + alpha*(lambda - 0.2) + pow(lambda, 2))", "", 0.5*(1+g.Al*(lam-0.2)+lam*lam))
	chi := c.Let("chi", "min(1/(Phi + sqrt(pow(Phi, 2) - pow(lambda, 2))), 1)", "", reduction(phi, lam))
	c.Compare(g.N, c.Let("N_b_Rd", "chi*A*f_y/gamma_M1", "N", chi*g.A*g.Fy/g1))
})

var cutRules = []strength.Rule[strength.Cut]{
	{Of: weakAxis, Check: func(c *strength.Calc, f *strength.Cut) {
		weakAxis.Check(c, weakAxisGivens{M: f.Ma, Z: f.Za, S: f.Sa, Fy: f.Fy})
	}, Demand: func(_ *strength.Calc, f *strength.Cut) (float64, strength.Sense) { return f.Ma, strength.EitherWay }},
	{Of: edgewise, Check: func(c *strength.Calc, f *strength.Cut) {
		edgewise.Check(c, edgewiseGivens{M: f.Mb, Z: f.Zb, S: f.Sb, L: f.FreeLength, D: f.Depth, T: f.TMax, Fy: f.Fy})
	}, Demand: func(_ *strength.Calc, f *strength.Cut) (float64, strength.Sense) { return f.Mb, strength.EitherWay }},
	{Of: axial, Check: func(c *strength.Calc, f *strength.Cut) {
		axial.Check(c, axialGivens{N: f.N, A: f.Area, Net: strength.Flag(f.Net), R: f.R, L: f.FreeLength, Fy: f.Fy, Fu: f.Fu})
	}, Demand: func(_ *strength.Calc, f *strength.Cut) (float64, strength.Sense) { return f.Axial() }},
	{Of: sectionShear, Check: func(c *strength.Calc, f *strength.Cut) {
		sectionShear.Check(c, shearGivens(f))
	}, Demand: func(c *strength.Calc, f *strength.Cut) (float64, strength.Sense) {
		g := shearGivens(f)
		return shearStress(c, &g), strength.EitherWay
	}},
	{Of: interaction, Check: func(c *strength.Calc, f *strength.Cut) {
		interaction.Check(c, togetherGivens(f))
	}, Demand: func(c *strength.Calc, f *strength.Cut) (float64, strength.Sense) {
		g := togetherGivens(f)
		_, sense := f.Axial()
		return together(c, &g), sense
	}},
}
