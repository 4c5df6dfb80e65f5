package allowable

// A section cut from the true outline: elastic stresses at its worst corner, and buckling of what stands free beyond it.

import (
	"math"

	"lugwright/strength"
)

var sectionLimits = []strength.Evaluator{weakAxis, edgewise, axial, sectionShear, sectionStress, sectionBuckling}

type bendingGivens struct {
	M  float64 `sym:"M_r" unit:"N*mm" min:"0" max:"1e12" is:"bending moment"`
	S  float64 `sym:"S" unit:"mm^3" min:"1e-3" max:"1e10" is:"elastic modulus at the worst corner"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

func bending(id, title string) *strength.Limit[bendingGivens] {
	return strength.Define(strength.Identity{
		ID: id, Title: title, Clause: common("elastic bending"), Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
	}, func(c *strength.Calc, g bendingGivens) {
		sigma := c.Let("sigma", "M_r/S", "MPa", g.M/g.S)
		c.Compare(sigma, allowed(c, g.Fy, g.Fu))
	})
}

// weakAxis and edgewise are the elastic bending stresses out of and in the plane of the plate.
var (
	weakAxis = bending("weak-axis-bending", "weak-axis bending")
	edgewise = bending("edgewise-bending", "bending in the plane of the plate")
)

type axialGivens struct {
	N  float64 `sym:"P_r" unit:"N" min:"-1e9" max:"1e9" is:"axial force, tension positive"`
	A  float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"area of the section"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// axial is the mean axial stress; section-buckling looks at compression.
var axial = strength.Define(strength.Identity{
	ID: "axial-force", Title: "axial force at a section", Clause: common("mean stress"),
	Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g axialGivens) {
	sigma := c.Let("sigma", "abs(P_r)/A", "MPa", math.Abs(g.N)/g.A)
	c.Compare(sigma, allowed(c, g.Fy, g.Fu))
})

type sectionShearGivens struct {
	Va float64 `sym:"V_rx" unit:"N" min:"0" max:"1e9" is:"shear force out of the plate's plane"`
	Vb float64 `sym:"V_ry" unit:"N" min:"0" max:"1e9" is:"shear force in the plate's plane"`
	T  float64 `sym:"T_r" unit:"N*mm" min:"0" max:"1e12" is:"torsion about the shear centre"`
	Aa float64 `sym:"A_x" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_rx"`
	Ab float64 `sym:"A_y" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_ry"`
	J  float64 `sym:"J" unit:"mm^4" min:"1e-3" max:"1e12" is:"torsion constant for stress, the largest shear stress being T t/J: of a solid rectangle by St Venant's series"`
	Tm float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickest part"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// sectionShear is the peak of elastic shear in a rectangle, 1.5 of the mean, with St Venant torsion of thin rectangles added.
var sectionShear = strength.Define(strength.Identity{
	ID: "section-shear", Title: "shear and torsion at a section", Clause: common("peak shear of a rectangle, torsion of thin rectangles"),
	Demand: "tau", Capacity: "tau_all", Unit: "MPa",
}, func(c *strength.Calc, g sectionShearGivens) {
	c.Compare(peakShear(c, &g), allowedShear(c, allowed(c, g.Fy, g.Fu)))
})

func peakShear(c *strength.Calc, g *sectionShearGivens) float64 {
	mean := c.Let("tau_V", "sqrt(pow(V_rx/A_x, 2) + pow(V_ry/A_y, 2))", "MPa", root(g.Va/g.Aa, g.Vb/g.Ab))
	twist := c.Let("tau_T", "T_r*t/J", "MPa", g.T*g.Tm/g.J)
	return c.Let("tau", "1.5*tau_V + tau_T", "MPa", 1.5*mean+twist)
}

func root(a, b float64) float64 { return math.Sqrt(a*a + b*b) }

type sectionStressGivens struct {
	N  float64 `sym:"P_r" unit:"N" min:"-1e9" max:"1e9" is:"axial force, tension positive"`
	Mx float64 `sym:"M_rx" unit:"N*mm" min:"0" max:"1e12" is:"weak-axis moment"`
	My float64 `sym:"M_ry" unit:"N*mm" min:"0" max:"1e12" is:"moment in the plane of the plate"`
	Va float64 `sym:"V_rx" unit:"N" min:"0" max:"1e9" is:"shear force out of the plate's plane"`
	Vb float64 `sym:"V_ry" unit:"N" min:"0" max:"1e9" is:"shear force in the plate's plane"`
	T  float64 `sym:"T_r" unit:"N*mm" min:"0" max:"1e12" is:"torsion about the shear centre"`
	A  float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"area of the section"`
	Sx float64 `sym:"S_x" unit:"mm^3" min:"1e-3" max:"1e10" is:"elastic modulus at the worst corner, weak axis"`
	Sy float64 `sym:"S_y" unit:"mm^3" min:"1e-3" max:"1e10" is:"elastic modulus at the worst corner, in the plane"`
	Aa float64 `sym:"A_x" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_rx"`
	Ab float64 `sym:"A_y" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_ry"`
	J  float64 `sym:"J" unit:"mm^4" min:"1e-3" max:"1e12" is:"torsion constant for stress, the largest shear stress being T t/J: of a solid rectangle by St Venant's series"`
	Tm float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickest part"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// sectionStress is the von Mises stress of the worst corner's normal stress with the mean shear and the torsion, as if they met in one
// point; where shear is greatest bending is least, and section-shear looks there.
var sectionStress = strength.Define(strength.Identity{
	ID: "section-interaction", Title: "bending, axial force and shear together", Clause: common("von Mises stress at the worst corner"),
	Demand: "sigma_v", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g sectionStressGivens) {
	c.Compare(sectionCorner(c, &g), allowed(c, g.Fy, g.Fu))
})

func sectionCorner(c *strength.Calc, g *sectionStressGivens) float64 {
	sigma := c.Let("sigma", "abs(P_r)/A + M_rx/S_x + M_ry/S_y", "MPa", math.Abs(g.N)/g.A+g.Mx/g.Sx+g.My/g.Sy)
	tau := c.Let("tau", "sqrt(pow(V_rx/A_x, 2) + pow(V_ry/A_y, 2)) + T_r*t/J", "MPa", root(g.Va/g.Aa, g.Vb/g.Ab)+g.T*g.Tm/g.J)
	return vonMises(c, sigma, tau)
}

type bucklingGivens struct {
	N  float64 `sym:"P_r" unit:"N" min:"-1e9" max:"1e9" is:"axial force, tension positive"`
	M  float64 `sym:"M_ry" unit:"N*mm" min:"0" max:"1e12" is:"moment in the plane of the plate"`
	A  float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"area of the section"`
	R  float64 `sym:"r" unit:"mm" min:"0.01" max:"1e4" is:"least radius of gyration"`
	L  float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length from the cut to the load"`
	D  float64 `sym:"h" unit:"mm" min:"0" max:"1e4" default:"0" is:"depth of a single plate in bending; 0 for a section whose plates brace each other"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	E  float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity: 200000 steel, 70000 aluminium"`
}

// sectionBuckling is a plate that stands free at its loaded end, in compression and bent in its plane: Euler's column of effective length
// 2 L, Johnson's parabola where it is stocky, and the elastic lateral buckling moment of a narrow rectangle, of the same length 2 L, since the
// moment may be as large at the free end: pi/(2 L) sqrt(E I G J) (Timoshenko and Gere, Theory of Elastic Stability, 6.2, from memory); the two
// loads are added as parts of their critical values. Elementary stability.
var sectionBuckling = strength.Define(strength.Identity{
	ID: "section-buckling", Title: "buckling of a plate that stands free",
	Clause: common("elementary stability: Euler and Johnson columns, lateral buckling of a narrow rectangle"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g bucklingGivens) {
	nu := c.Factor("n_u")
	u := 0.0
	if g.N < 0 {
		u = c.Let("u_P", "-P_r/P_cr", "", -g.N/column(c, &g))
	} else {
		c.Let("u_P", "0", "", 0)
	}
	v := 0.0
	if g.D > 0 && g.L > 0 {
		v = c.Let("u_M", "M_ry/M_cr", "", g.M/lateral(c, &g))
	} else {
		c.Let("u_M", "0", "", 0)
	}
	c.Compare(c.Let("U", "n_u*(u_P + u_M)", "", nu*(u+v)), 1)
})

// column is the load at which a column fixed at one end gives way.
func column(c *strength.Calc, g *bucklingGivens) float64 {
	s := c.Let("s", "2*L/r", "", 2*g.L/g.R)
	s1 := c.Let("s_1", "sqrt(2*pow(pi, 2)*E/F_y)", "", math.Sqrt(2*math.Pi*math.Pi*g.E/g.Fy))
	if s > s1 {
		return c.Let("P_cr", "pow(pi, 2)*E*A/pow(s, 2)", "N", math.Pi*math.Pi*g.E*g.A/(s*s))
	}
	return c.Let("P_cr", "F_y*A*(1 - pow(s, 2)*F_y/(4*pow(pi, 2)*E))", "N", g.Fy*g.A*(1-s*s*g.Fy/(4*math.Pi*math.Pi*g.E)))
}

// lateral is the moment in its plane at which a narrow rectangle turns sideways, at most its yield moment.
func lateral(c *strength.Calc, g *bucklingGivens) float64 {
	G := c.Let("G", "E/(2*(1 + 0.3))", "MPa", g.E/(2*(1+poisson)))
	I := c.Let("I_w", "h*pow(t, 3)/12", "mm^4", g.D*g.T*g.T*g.T/12)
	wide, thin := max(g.D, g.T), min(g.D, g.T)
	J := c.Let("J_w", "max(h, t)*pow(min(h, t), 3)/3*(1 - 0.63*min(h, t)/max(h, t))", "mm^4", wide*thin*thin*thin/3*(1-0.63*thin/wide))
	return c.Let("M_cr", "min(pi/(2*L)*sqrt(E*I_w*G*J_w), F_y*t*pow(h, 2)/6)", "N*mm", min(math.Pi/(2*g.L)*math.Sqrt(g.E*I*G*J), g.Fy*g.T*g.D*g.D/6))
}

// depth is the depth of a single rectangle; sections of several plates brace each other.
func depth(f *strength.Cut) float64 {
	if f.Rect {
		return f.Depth
	}
	return 0
}

func shearGivens(f *strength.Cut) sectionShearGivens {
	return sectionShearGivens{Va: f.Va, Vb: f.Vb, T: f.T, Aa: f.AreaVa, Ab: f.AreaVb, J: f.J, Tm: f.TMax, Fy: f.Fy, Fu: f.Fu}
}

func stressGivens(f *strength.Cut) sectionStressGivens {
	return sectionStressGivens{
		N: f.N, Mx: f.Ma, My: f.Mb, Va: f.Va, Vb: f.Vb, T: f.T, A: f.Area, Sx: f.Sa, Sy: f.Sb, Aa: f.AreaVa, Ab: f.AreaVb,
		J: f.J, Tm: f.TMax, Fy: f.Fy, Fu: f.Fu,
	}
}

var cutRules = []strength.Rule[strength.Cut]{
	{Of: weakAxis, Check: func(c *strength.Calc, f *strength.Cut) {
		weakAxis.Check(c, bendingGivens{M: f.Ma, S: f.Sa, Fy: f.Fy, Fu: f.Fu})
	}, Demand: func(_ *strength.Calc, f *strength.Cut) (float64, strength.Sense) {
		return f.Ma / f.Sa, strength.EitherWay
	}},
	{Of: edgewise, Check: func(c *strength.Calc, f *strength.Cut) {
		edgewise.Check(c, bendingGivens{M: f.Mb, S: f.Sb, Fy: f.Fy, Fu: f.Fu})
	}, Demand: func(_ *strength.Calc, f *strength.Cut) (float64, strength.Sense) {
		return f.Mb / f.Sb, strength.EitherWay
	}},
	{Of: axial, Check: func(c *strength.Calc, f *strength.Cut) {
		axial.Check(c, axialGivens{N: f.N, A: f.Area, Fy: f.Fy, Fu: f.Fu})
	}, Demand: func(_ *strength.Calc, f *strength.Cut) (float64, strength.Sense) {
		return math.Abs(f.N) / f.Area, strength.EitherWay
	}},
	{Of: sectionShear, Check: func(c *strength.Calc, f *strength.Cut) {
		sectionShear.Check(c, shearGivens(f))
	}, Demand: func(c *strength.Calc, f *strength.Cut) (float64, strength.Sense) {
		g := shearGivens(f)
		return peakShear(c, &g), strength.EitherWay
	}},
	{Of: sectionStress, Check: func(c *strength.Calc, f *strength.Cut) {
		sectionStress.Check(c, stressGivens(f))
	}, Demand: func(c *strength.Calc, f *strength.Cut) (float64, strength.Sense) {
		g := stressGivens(f)
		return sectionCorner(c, &g), strength.EitherWay
	}},
	{Of: sectionBuckling, Check: func(c *strength.Calc, f *strength.Cut) {
		sectionBuckling.Check(c, bucklingGivens{N: f.N, M: f.Mb, A: f.Area, R: f.R, L: f.FreeLength, D: depth(f), T: f.TMax, Fy: f.Fy, E: f.E})
	}},
}
