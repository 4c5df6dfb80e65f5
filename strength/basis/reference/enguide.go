package reference

// Rules that the European guide to joints in multi-storey steel buildings adds to EN 1993-1-8. Its worked examples follow them; no
// bracket is checked on them.

import (
	"math"

	"lugwright/strength"
)

// enGuide takes its partial factors as givens, since it mixes those of strength with those of tying.
var enGuide = &strength.Basis{
	Card: strength.Card{
		Name: "EU joint guide", Document: "Steel Buildings in Europe, Multi-Storey Steel Buildings, Part 5 Joint Design", Edition: "EU project guide",
		Methods: []strength.Method{strength.PartialFactors}, ServiceFactor: map[strength.Method]float64{strength.PartialFactors: 1.5},
		FactorSource: "as EN 1993-1-8:2005 here", ReferenceOnly: true,
	},
	Limits: []strength.Evaluator{finPlateBolts, simpleJointBolts, finPlateShear, tyingPlateMoment, tyingStub, guideDistances},
}

func guideClause(section, words string) strength.Clause {
	return strength.Clause{Document: "EU multi-storey guide", Edition: "Part 5", Section: section, Words: words}
}

type finPlateGivens struct {
	V     float64 `sym:"V_Ed" unit:"N" min:"0" max:"1e9" is:"vertical force of the joint"`
	N     float64 `sym:"n" unit:"" min:"1" max:"100" step:"1" is:"bolts"`
	Alpha float64 `sym:"alpha" unit:"" min:"0" max:"10" is:"vertical part of the eccentricity's force on the worst bolt; 0 for one line"`
	Beta  float64 `sym:"beta" unit:"" min:"0" max:"10" is:"its horizontal part"`
	Ver   float64 `sym:"F_ver" unit:"N" min:"1" max:"1e9" is:"vertical resistance of one bolt: shear, or bearing"`
	Hor   float64 `sym:"F_hor" unit:"N" min:"1" max:"1e9" is:"horizontal resistance of one bolt: shear, or bearing"`
}

// finPlateBolts is an eccentric group of bolts by the elastic method, on the worst bolt.
var finPlateBolts = strength.Define(strength.Identity{
	ID: "fin-plate-bolts", Title: "eccentric bolt group of a fin plate",
	Clause: guideClause("fin plates, bolts in shear and in bearing", ""),
	Demand: "V_Ed", Capacity: "V_Rd", Unit: "N",
}, func(c *strength.Calc, g finPlateGivens) {
	v, h := (1+g.Alpha*g.N)/g.Ver, g.Beta*g.N/g.Hor
	c.Compare(g.V, c.Let("V_Rd", "n/sqrt(pow((1 + alpha*n)/F_ver, 2) + pow(beta*n/F_hor, 2))", "N", g.N/math.Sqrt(v*v+h*h)))
})

type simpleJointGivens struct {
	V  float64 `sym:"V_Ed" unit:"N" min:"0" max:"1e9" is:"vertical force of the joint"`
	N  float64 `sym:"n" unit:"" min:"1" max:"100" step:"1" is:"bolts"`
	Fv float64 `sym:"F_v_Rd" unit:"N" min:"1" max:"1e9" is:"shear resistance of one bolt"`
}

// simpleJointBolts lowers the bolts of an end plate or a cleat, which also carry some tension.
var simpleJointBolts = strength.Define(strength.Identity{
	ID: "simple-joint-bolts", Title: "bolts of a simple end plate or cleat in shear",
	Clause: guideClause("end plates and angle cleats, bolts in shear", ""),
	Demand: "V_Ed", Capacity: "V_Rd", Unit: "N",
}, func(c *strength.Calc, g simpleJointGivens) {
	c.Compare(g.V, c.Let("V_Rd", "0.8*n*F_v_Rd", "N", 0.8*g.N*g.Fv))
})

type finPlateShearGivens struct {
	V  float64 `sym:"V_Ed" unit:"N" min:"0" max:"1e9" is:"vertical force of the joint"`
	H  float64 `sym:"h_p" unit:"mm" min:"0.1" max:"5000" is:"height of the plate"`
	T  float64 `sym:"t_p" unit:"mm" min:"0.1" max:"500" is:"thickness"`
	N  float64 `sym:"n_p" unit:"" min:"1" max:"2" default:"1" is:"plates"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	G  float64 `sym:"gamma_M0" unit:"" min:"1" max:"2" default:"1" is:"partial factor"`
}

// finPlateShear lowers the gross section of a plate in shear for the bending in its plane.
var finPlateShear = strength.Define(strength.Identity{
	ID: "fin-plate-shear", Title: "shear of a fin plate, gross section",
	Clause: guideClause("fin plates, gross section", "1.27 for bending in the plane"),
	Demand: "V_Ed", Capacity: "V_Rd_g", Unit: "N",
}, func(c *strength.Calc, g finPlateShearGivens) {
	c.Compare(g.V, c.Let("V_Rd_g", "n_p*h_p*t_p/1.27*f_y/(sqrt(3)*gamma_M0)", "N", g.N*g.H*g.T/1.27*g.Fy/(math.Sqrt(3)*g.G)))
})

type tyingMomentGivens struct {
	M float64 `sym:"M_Ed" unit:"N*mm" min:"0" max:"1e12" is:"moment on the length"`
	L float64 `sym:"l_eff" unit:"mm" min:"0.1" max:"1e4" is:"effective length of the yield line"`
	T float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness"`
	F float64 `sym:"f" unit:"MPa" min:"50" max:"3000" is:"strength: f_u for tying, f_y otherwise"`
	G float64 `sym:"gamma" unit:"" min:"1" max:"2" is:"partial factor: 1.1 for tying, gamma_M0 otherwise"`
}

// tyingPlateMoment is the plastic moment of a plate's yield line; for tying the guide goes up to f_u.
var tyingPlateMoment = strength.Define(strength.Identity{
	ID: "yield-line-moment", Title: "plastic moment of a bent plate",
	Clause: guideClause("structural integrity, plate in bending", "EN 1993-1-8 Table 6.2 with f_u and 1.1 for tying"),
	Demand: "M_Ed", Capacity: "M_pl_Rd", Unit: "N*mm",
}, func(c *strength.Calc, g tyingMomentGivens) {
	c.Compare(g.M, c.Let("M_pl_Rd", "0.25*l_eff*pow(t, 2)*f/gamma", "N*mm", 0.25*g.L*g.T*g.T*g.F/g.G))
})

type tyingStubGivens struct {
	F  float64 `sym:"F_Ed" unit:"N" min:"0" max:"1e9" is:"tension on the plate, or tying force"`
	M1 float64 `sym:"M_pl_1" unit:"N*mm" min:"1" max:"1e12" is:"plastic moment of one yield line in mode 1 (yield-line-moment)"`
	M2 float64 `sym:"M_pl_2" unit:"N*mm" min:"0" max:"1e12" default:"0" is:"that of mode 2; 0 where it is the same"`
	M  float64 `sym:"m_p" unit:"mm" min:"0.1" max:"1000" is:"bolt line to the yield line at the web, m"`
	N  float64 `sym:"n_p" unit:"mm" min:"0.1" max:"1000" is:"bolt line to the prying force, n: the distance to the edge, at most 1.25 m"`
	E  float64 `sym:"e_w" unit:"mm" min:"0" max:"100" default:"0" is:"quarter of the washer's or head's diameter; 0 takes the bolt's force in a point"`
	Ft float64 `sym:"F_t" unit:"N" min:"1" max:"1e9" is:"tension resistance of all bolts together"`
}

// tyingStub is the T-stub of EN 1993-1-8, Table 6.2, on given yield moments, as the guide uses it for end plates and cleats in tying: mode 1 by
// the table's second method, from memory.
var tyingStub = strength.Define(strength.Identity{
	ID: "t-stub-tension", Title: "end plate or cleat in tension, modes 1 to 3",
	Clause: guideClause("structural integrity, tying resistance", "EN 1993-1-8 Table 6.2, mode 1 by method 2; from memory"),
	Demand: "F_Ed", Capacity: "F_Rd", Unit: "N",
}, func(c *strength.Calc, g tyingStubGivens) {
	c.Need(g.E < g.M, "e_w < m_p", "a head smaller than the plate's arms")
	c.Need(g.E < g.N, "e_w < n_p", "a head smaller than the plate's arms")
	n := c.Let("n", "min(n_p, 1.25*m_p)", "mm", min(g.N, 1.25*g.M))
	m2 := g.M2
	if m2 == 0 {
		m2 = g.M1
	}
	F1 := c.Let("F_Rd_1", "(8*n - 2*e_w)*M_pl_1/(2*m_p*n - e_w*(m_p + n))", "N", (8*n-2*g.E)*g.M1/(2*g.M*n-g.E*(g.M+n)))
	F2 := c.Let("F_Rd_2", "(2*when(M_pl_2 > 0*N*mm, M_pl_2, M_pl_1) + n*F_t)/(m_p + n)", "N", (2*m2+n*g.Ft)/(g.M+n))
	F3 := c.Let("F_Rd_3", "F_t", "N", g.Ft)
	c.Compare(g.F, c.Let("F_Rd", "min(F_Rd_1, F_Rd_2, F_Rd_3)", "N", min(F1, F2, F3)))
})

type guideDistanceGivens struct {
	D float64 `sym:"d" unit:"mm" min:"5" max:"100" is:"nominal diameter"`
	E float64 `sym:"e" unit:"mm" min:"0" max:"1e4" default:"0" is:"least end or edge distance; 0 when only what is wanted is asked"`
}

// guideDistances are the holes and the edge distances of the guide's recommended details.
var guideDistances = strength.Define(strength.Identity{
	ID: "guide-distances", Title: "hole and least edge distance of the recommended details",
	Clause: guideClause("recommended details", ""),
	Demand: "e_min", Capacity: "e", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g guideDistanceGivens) {
	d0 := g.D + 2
	if g.D > 24 {
		d0 = g.D + 3
	}
	c.Let("d_0", "when(d <= 24*mm, d + 2*mm, d + 3*mm)", "mm", d0)
	c.Least(c.Let("e_min", "2*d", "mm", 2*g.D), g.E)
})
