package en1993

// Bolts in shear, tension and both; punching; slip: EN 1993-1-8, 3.6.1, 3.8 and 3.9.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

var boltLimits = []strength.Evaluator{boltShear, boltTension, boltCombined, boltPunching, boltPunchingThickness, boltSlip}

type boltShearGivens struct {
	F       float64 `sym:"F_v_Ed" unit:"N" min:"0" max:"1e9" is:"shear force on one bolt, on all its planes"`
	A       float64 `sym:"A" unit:"mm^2" min:"1" max:"20000" is:"area of the bolt in the plane: stress area where threads are in it, else that of the shank"`
	Fub     float64 `sym:"f_ub" unit:"MPa" min:"200" max:"2000" is:"nominal tensile strength of the bolt"`
	Class   float64 `sym:"class" choices:"4.6|5.6|8.8|4.8|5.8|6.8|10.9|other" is:"property class; other is taken as 10.9"`
	D       float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Threads float64 `sym:"threads" choices:"out of the plane|in the plane" default:"1" is:"threads in the shear plane"`
	Wide    float64 `sym:"clearance" choices:"as Table 11 of EN 1090-2|2 mm at M12 or M14" default:"0" is:"clearance of the hole"`
	N       float64 `sym:"n" unit:"" min:"1" max:"2" default:"1" step:"1" is:"shear planes"`
	Tp      float64 `sym:"t_p" unit:"mm" min:"0" max:"200" default:"0" is:"thickness of packing"`
	Lj      float64 `sym:"L_j" unit:"mm" min:"0" max:"1e5" default:"0" is:"length of the joint between the outermost bolts along the force"`
}

// boltShear is shear of one bolt, with packing and in a long joint.
var boltShear = strength.Define(strength.Identity{
	ID: "bolt-shear", Title: "shear of the bolt",
	Clause: joint("3.6.1, Table 3.4; 3.6.1(5); 3.6.1(12), Eq. 3.3; 3.8, Eq. 3.5", "classes in 3.6.1(5) and Eq. 3.5 from memory"),
	Demand: "F_v_Ed", Capacity: "V_Rd", Unit: "N",
}, func(c *strength.Calc, g boltShearGivens) {
	F := shearStrength(c, g.Threads, g.Class, g.Wide, g.Fub, g.A)
	bp := c.Let("beta_p", "when(t_p <= d/3, 1, 9*d/(8*d + 3*t_p))", "", packing(g.Tp, g.D))
	bl := c.Let("beta_Lf", "min(max(1 - (L_j - 15*d)/(200*d), 0.75), 1)", "", min(max(1-(g.Lj-15*g.D)/(200*g.D), 0.75), 1))
	c.Compare(g.F, c.Let("V_Rd", "n*beta_p*beta_Lf*F_v_Rd", "N", g.N*bp*bl*F))
})

// shearStrength is that of one plane.
func shearStrength(c *strength.Calc, threads, class, wide, fub, a float64) float64 {
	g2 := c.Factor("gamma_M2")
	av := c.Let("alpha_v", "when(threads <= 0, 0.6, when(class <= 2, 0.6, 0.5))", "", alphaV(threads, class))
	kc := c.Let("k_c", "when(clearance <= 0, 1, when(class <= 1, 1, 0.85))", "", clearanceFactor(wide, class))
	return c.Let("F_v_Rd", "k_c*alpha_v*f_ub*A/gamma_M2", "N", kc*av*fub*a/g2)
}

func alphaV(threads, class float64) float64 {
	if threads <= 0 || class <= 2 {
		return 0.6
	}
	return 0.5
}

func clearanceFactor(wide, class float64) float64 {
	if wide <= 0 || class <= 1 {
		return 1
	}
	return 0.85
}

func packing(tp, d float64) float64 {
	if tp <= d/3 {
		return 1
	}
	return 9 * d / (8*d + 3*tp)
}

type boltTensionGivens struct {
	F    float64 `sym:"F_t_Ed" unit:"N" min:"0" max:"1e9" is:"tension in one bolt, prying in it"`
	As   float64 `sym:"A_s" unit:"mm^2" min:"1" max:"20000" is:"tensile stress area"`
	Fub  float64 `sym:"f_ub" unit:"MPa" min:"200" max:"2000" is:"nominal tensile strength of the bolt"`
	Head float64 `sym:"head" choices:"hexagon|countersunk" default:"0" is:"head of the bolt"`
}

// boltTension is tension of one bolt.
var boltTension = strength.Define(strength.Identity{
	ID: "bolt-tension", Title: "tension of the bolt",
	Clause: joint("3.6.1, Table 3.4", ""),
	Demand: "F_t_Ed", Capacity: "F_t_Rd", Unit: "N",
}, func(c *strength.Calc, g boltTensionGivens) {
	c.Compare(g.F, tensionStrength(c, g.Head, g.Fub, g.As))
})

func tensionStrength(c *strength.Calc, head, fub, as float64) float64 {
	g2 := c.Factor("gamma_M2")
	k := 0.9
	if head > 0 {
		k = 0.63
	}
	k2 := c.Let("k_2", "when(head > 0, 0.63, 0.9)", "", k)
	return c.Let("F_t_Rd", "k_2*f_ub*A_s/gamma_M2", "N", k2*fub*as/g2)
}

type boltCombinedGivens struct {
	V       float64 `sym:"F_v_Ed" unit:"N" min:"0" max:"1e9" is:"shear force on one plane of the bolt"`
	T       float64 `sym:"F_t_Ed" unit:"N" min:"0" max:"1e9" is:"tension in the same bolt, prying in it"`
	A       float64 `sym:"A" unit:"mm^2" min:"1" max:"20000" is:"area of the bolt in the shear plane"`
	As      float64 `sym:"A_s" unit:"mm^2" min:"1" max:"20000" is:"tensile stress area"`
	Fub     float64 `sym:"f_ub" unit:"MPa" min:"200" max:"2000" is:"nominal tensile strength of the bolt"`
	Class   float64 `sym:"class" choices:"4.6|5.6|8.8|4.8|5.8|6.8|10.9|other" is:"property class; other is taken as 10.9"`
	Threads float64 `sym:"threads" choices:"out of the plane|in the plane" default:"1" is:"threads in the shear plane"`
	Wide    float64 `sym:"clearance" choices:"as Table 11 of EN 1090-2|2 mm at M12 or M14" default:"0" is:"clearance of the hole"`
	Head    float64 `sym:"head" choices:"hexagon|countersunk" default:"0" is:"head of the bolt"`
}

// boltCombined is shear with tension; tension alone must hold too.
var boltCombined = strength.Define(strength.Identity{
	ID: "bolt-combined", Title: "tension of the bolt with its shear",
	Clause: joint("3.6.1, Table 3.4", ""),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g boltCombinedGivens) {
	V := shearStrength(c, g.Threads, g.Class, g.Wide, g.Fub, g.A)
	T := tensionStrength(c, g.Head, g.Fub, g.As)
	U := c.Let("U", "max(F_v_Ed/F_v_Rd + F_t_Ed/(1.4*F_t_Rd), F_t_Ed/F_t_Rd)", "", max(g.V/V+g.T/(1.4*T), g.T/T))
	c.Compare(U, 1)
})

type boltPunchingGivens struct {
	F  float64 `sym:"F_t_Ed" unit:"N" min:"0" max:"1e9" is:"tension in one bolt, prying in it"`
	Dm float64 `sym:"d_m" unit:"mm" min:"1" max:"300" is:"head or nut, the smaller: mean of its width across flats and across points"`
	T  float64 `sym:"t_p" unit:"mm" min:"0.1" max:"500" is:"thickness of the ply under it"`
	Fu float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
}

// boltPunching is shear of the ply round the head or the nut.
var boltPunching = strength.Define(strength.Identity{
	ID: "bolt-punching", Title: "punching of the ply under the bolt's head",
	Clause: joint("3.6.1, Table 3.4", ""),
	Demand: "F_t_Ed", Capacity: "B_p_Rd", Unit: "N",
}, func(c *strength.Calc, g boltPunchingGivens) {
	g2 := c.Factor("gamma_M2")
	c.Compare(g.F, c.Let("B_p_Rd", "0.6*pi*d_m*t_p*f_u/gamma_M2", "N", 0.6*math.Pi*g.Dm*g.T*g.Fu/g2))
})

type boltPunchingThicknessGivens struct {
	As   float64 `sym:"A_s" unit:"mm^2" min:"1" max:"20000" is:"tensile stress area"`
	Fub  float64 `sym:"f_ub" unit:"MPa" min:"200" max:"2000" is:"nominal tensile strength of the bolt"`
	Head float64 `sym:"head" choices:"hexagon|countersunk" default:"0" is:"head of the bolt"`
	Dm   float64 `sym:"d_m" unit:"mm" min:"1" max:"300" is:"head or nut, the smaller: mean of its width across flats and across points"`
	Fu   float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
	T    float64 `sym:"t_p" unit:"mm" min:"0" max:"500" default:"0" is:"thickness of the ply; 0 when only the least is wanted"`
}

// boltPunchingThickness is the ply that the bolt's full tension does not punch.
var boltPunchingThickness = strength.Define(strength.Identity{
	ID: "bolt-punching-thickness", Title: "ply that holds the bolt's full tension against punching",
	Clause: joint("3.6.1, Table 3.4", "B_p,Rd = F_t,Rd solved for the thickness"),
	Demand: "t_min", Capacity: "t_p", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g boltPunchingThicknessGivens) {
	F := tensionStrength(c, g.Head, g.Fub, g.As)
	g2 := c.Factor("gamma_M2")
	c.Least(c.Let("t_min", "F_t_Rd*gamma_M2/(0.6*pi*d_m*f_u)", "mm", F*g2/(0.6*math.Pi*g.Dm*g.Fu)), g.T)
})

type boltSlipGivens struct {
	V     float64 `sym:"F_v_Ed" unit:"N" min:"0" max:"1e9" is:"shear force on one bolt, at the level of the state"`
	T     float64 `sym:"F_t_Ed" unit:"N" min:"0" max:"1e9" default:"0" is:"tension in the same bolt, at the same level"`
	As    float64 `sym:"A_s" unit:"mm^2" min:"1" max:"20000" is:"tensile stress area"`
	Fub   float64 `sym:"f_ub" unit:"MPa" min:"200" max:"2000" is:"nominal tensile strength of the bolt, class 8.8 or 10.9"`
	Ks    float64 `sym:"k_s" unit:"" min:"0.3" max:"1" default:"1" is:"factor of the hole, Table 3.6: 1 for a normal one"`
	N     float64 `sym:"n" unit:"" min:"1" max:"2" default:"1" is:"friction faces"`
	Mu    float64 `sym:"mu" unit:"" min:"0.05" max:"0.6" is:"slip factor, Table 3.7"`
	State float64 `sym:"state" choices:"ultimate|serviceability" is:"state at which it must not slip (category C or B)"`
}

// boltSlip is slip of a bolt preloaded to 0.7 f_ub A_s, with tension.
var boltSlip = strength.Define(strength.Identity{
	ID: "bolt-slip", Title: "slip of a preloaded bolt",
	Clause: joint("3.9.1, Eq. 3.6 and 3.7; 3.9.2, Eq. 3.8", ""),
	Demand: "F_v_Ed", Capacity: "F_s_Rd", Unit: "N",
}, func(c *strength.Calc, g boltSlipGivens) {
	c.Need(g.Fub >= 800 && g.Fub <= 1000, "(f_ub - 800*MPa)*(1000*MPa - f_ub) >= 0*MPa*MPa", "a bolt of class 8.8 or 10.9")
	P := c.Let("F_p_C", "0.7*f_ub*A_s", "N", 0.7*g.Fub*g.As)
	left := c.Let("F_C", "F_p_C - 0.8*F_t_Ed", "N", P-0.8*g.T)
	c.Need(left > 0, "F_C > 0*N", "the faces stay pressed together")
	c.Compare(g.V, slipStrength(c, g, left))
})

func slipStrength(c *strength.Calc, g boltSlipGivens, left float64) float64 {
	if g.State > 0 {
		g3 := c.Factor("gamma_M3_ser")
		return c.Let("F_s_Rd", "k_s*n*mu*F_C/gamma_M3_ser", "N", g.Ks*g.N*g.Mu*left/g3)
	}
	g3 := c.Factor("gamma_M3")
	return c.Let("F_s_Rd", "k_s*n*mu*F_C/gamma_M3", "N", g.Ks*g.N*g.Mu*left/g3)
}

// classOf is the place of a grade in the choices of class.
func classOf(grade string) float64 {
	switch grade {
	case "4.6":
		return 0
	case "5.6":
		return 1
	case "8.8":
		return 2
	case "4.8":
		return 3
	case "5.8":
		return 4
	case "6.8":
		return 5
	case "10.9":
		return 6
	}
	return 7
}

// tensile is the strength that the standard reckons with: the class's nominal one where there is one.
func tensile(b *strength.Bolt) float64 {
	if b.FuNominal > 0 {
		return b.FuNominal
	}
	return b.Fub
}

// sheared is the area in the shear plane.
func sheared(b *strength.Bolt) float64 {
	if b.ThreadsIn {
		return b.As
	}
	return math.Pi * b.D * b.D / 4
}

// wide says whether a small bolt stands in a hole with more than the 1 mm of its kind.
func wide(b *strength.Bolt) float64 { return strength.Flag(b.D < 14.5 && b.Dh-b.D > 1+1e-6) }

var boltRules = []strength.Rule[strength.Bolt]{
	{Of: boltShear, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltShear.Check(c, boltShearGivens{
			F: f.V, A: sheared(f), Fub: tensile(f), Class: classOf(f.Grade), D: f.D, Threads: strength.Flag(f.ThreadsIn), Wide: wide(f), N: 1, Lj: f.Joint,
		})
	}},
	{Of: boltTension, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltTension.Check(c, boltTensionGivens{F: f.T, As: f.As, Fub: tensile(f)})
	}},
	{Of: boltCombined, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltCombined.Check(c, boltCombinedGivens{
			V: f.V, T: f.T, A: sheared(f), As: f.As, Fub: tensile(f), Class: classOf(f.Grade), Threads: strength.Flag(f.ThreadsIn), Wide: wide(f),
		})
	}},
}

// slipRules ask for no slip at the ultimate state, category C.
var slipRules = []strength.Rule[strength.Bolt]{
	{Of: boltSlip, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltSlip.Check(c, boltSlipGivens{V: f.V, T: f.T, As: f.As, Fub: tensile(f), Ks: slipHole(f.D, f.Dh), N: 1, Mu: f.SlipC})
		practice.FullPreload(c, f)
	}},
}

// slipHole is k_s of Table 3.6: 1, or 0.85 in a hole over the normal one of EN 1090-2, Table 11 (1, 2, 3 mm over the bolt to M14, to M24, above; from memory).
func slipHole(d, dh float64) float64 {
	over := 3.0
	switch {
	case d < 14.5:
		over = 1
	case d < 24.5:
		over = 2
	}
	if dh-d > over+1e-6 {
		return 0.85
	}
	return 1
}

// A sheet on a rod's nut is punched round the nut, or as far out as its force spreads at 45 degrees through a washer.
var pullThroughRules = []strength.Rule[strength.PullThrough]{
	{Of: boltPunching, Check: func(c *strength.Calc, f *strength.PullThrough) {
		boltPunching.Check(c, boltPunchingGivens{F: f.T, Dm: max(f.Flats, min(f.Side, f.Flats+2*f.Washer)), T: f.Sheet, Fu: f.Fu})
	}},
}
