package aisc360

// Bending, axial force and shear at a section cut from the true outline, and their interaction.

import (
	"math"

	"lugwright/strength"
)

type weakAxisGivens struct {
	M  float64 `sym:"M_rx" unit:"N*mm" min:"0" max:"1e12" is:"bending moment about the weak axis"`
	Z  float64 `sym:"Z_x" unit:"mm^3" min:"0" max:"1e9" is:"plastic modulus; 0 where the section is held to first yield"`
	S  float64 `sym:"S_x" unit:"mm^3" min:"1e-3" max:"1e9" is:"elastic modulus at the worst corner"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// weakAxis is bending of a plate out of its plane: AISC 360-22 F11.1, Eq. F11-1 (F_y Z, at most 1.5 F_y S). A section of several
// plates, or one with holes, is held to first yield, F_y S: our conservative choice.
var weakAxis = strength.Define(strength.Identity{
	ID: "weak-axis-bending", Title: "weak-axis bending",
	Clause: clause("F11.1, Eq. F11-1", "first yield for built-up sections"),
	Demand: "M_rx", Capacity: "M_cx", Unit: "N*mm",
}, func(c *strength.Calc, g weakAxisGivens) {
	c.Compare(g.M, weakMoment(c, g.Z, g.S, g.Fy))
})

// What no load changes at a section: capacities for bending about each axis, for axial force of either sense, and for shear.
const (
	weakCapacity = iota
	edgeCapacity
	tensionCapacity
	compressionCapacity
	shearCapacity
)

func weakMoment(c *strength.Calc, z, s, fy float64) float64 {
	if known, ok := c.Known(weakCapacity); ok {
		return known
	}
	var Mn float64
	if z > 0 {
		Mn = c.Let("M_nx", "min(F_y*Z_x, 1.5*F_y*S_x)", "N*mm", min(fy*z, 1.5*fy*s))
	} else {
		Mn = c.Let("M_nx", "F_y*S_x", "N*mm", fy*s)
	}
	return c.Keep(weakCapacity, c.Available("M_cx", "M_nx", "N*mm", Mn, 0.90, 1.67))
}

type edgewiseGivens struct {
	M  float64 `sym:"M_ry" unit:"N*mm" min:"0" max:"1e12" is:"bending moment in the plane of the plate"`
	Z  float64 `sym:"Z_y" unit:"mm^3" min:"0" max:"1e10" is:"plastic modulus; 0 where the section is held to first yield"`
	S  float64 `sym:"S_y" unit:"mm^3" min:"1e-3" max:"1e10" is:"elastic modulus at the worst corner"`
	L  float64 `sym:"L_b" unit:"mm" min:"0" max:"1e5" is:"free length from the cut to the load"`
	D  float64 `sym:"h" unit:"mm" min:"0.1" max:"1e4" is:"depth of the plate in bending"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Cb float64 `sym:"C_b" unit:"" min:"1" max:"3" default:"1" is:"factor for the shape of the moment; 1 in a bracket"`
}

// edgewise is bending of a plate in its plane with lateral-torsional buckling: AISC 360-22 F11.1 and F11.2, within a bracket with C_b = 1. For
// sections of several plates first yield is taken and the plates brace each other.
var edgewise = strength.Define(strength.Identity{
	ID: "edgewise-bending", Title: "bending in the plane of the plate",
	Clause: clause("F11.1 and F11.2, Eq. F11-1, F11-3 to F11-5", "C_b = 1 in a bracket; plates of a built-up section are taken to brace each other"),
	Demand: "M_ry", Capacity: "M_cy", Unit: "N*mm",
}, func(c *strength.Calc, g edgewiseGivens) {
	c.Compare(g.M, edgeMoment(c, g.Z, g.S, g.L, g.D, g.T, g.Fy, g.Cb))
})

func edgeMoment(c *strength.Calc, z, s, l, d, t, fy, cb float64) float64 {
	if known, ok := c.Known(edgeCapacity); ok {
		return known
	}
	if z == 0 {
		Mn := c.Let("M_ny", "F_y*S_y", "N*mm", fy*s)
		return c.Keep(edgeCapacity, c.Available("M_cy", "M_ny", "N*mm", Mn, 0.90, 1.67))
	}
	e := c.Let("E", "29000*ksi", "MPa", E)
	Mp := c.Let("M_p", "min(F_y*Z_y, 1.5*F_y*S_y)", "N*mm", min(fy*z, 1.5*fy*s))
	lam := c.Let("lambda", "L_b*h/pow(t, 2)", "", l*d/(t*t))
	inelastic, elastic := "min((1.52 - 0.274*lambda*F_y/E)*F_y*S_y, M_p)", "1.9*E/lambda"
	if cb != 1 {
		inelastic, elastic = "min(C_b*(1.52 - 0.274*lambda*F_y/E)*F_y*S_y, M_p)", "C_b*1.9*E/lambda"
	}
	var Mn float64
	switch {
	case lam <= c.Let("lambda_1", "0.08*E/F_y", "", 0.08*e/fy):
		Mn = c.Let("M_ny", "M_p", "N*mm", Mp)
	case lam <= 1.9*e/fy:
		Mn = c.Let("M_ny", inelastic, "N*mm", min(cb*(1.52-0.274*lam*fy/e)*fy*s, Mp))
	default:
		Fcr := c.Let("F_cr", elastic, "MPa", cb*1.9*e/lam)
		Mn = c.Let("M_ny", "min(F_cr*S_y, M_p)", "N*mm", min(Fcr*s, Mp))
	}
	return c.Keep(edgeCapacity, c.Available("M_cy", "M_ny", "N*mm", Mn, 0.90, 1.67))
}

type axialGivens struct {
	N  float64 `sym:"P_r" unit:"N" min:"-1e9" max:"1e9" is:"axial force, tension positive"`
	A  float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"area of the section"`
	R  float64 `sym:"r" unit:"mm" min:"0.01" max:"1e4" is:"least radius of gyration"`
	L  float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length from the cut to the load"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"0" max:"3000" default:"0" is:"tensile strength; 0 leaves rupture out"`
	H  float64 `sym:"t_h" unit:"mm" min:"0" max:"1e4" default:"0" is:"thickness that holes on the section go through, all together; 0 for none"`
}

// axial is yielding in tension, J4.1(a) Eq. J4-1 on the area less its holes, and rupture beside them, J4.1(b) Eq. J4-2 with 1/16 in more
// off each hole, B4.3b; or compression, J4.4 Eq. J4-6 and E3, of a plate that stands free at its
// loaded end (effective length 2.1 L): AISC 360-22.
var axial = strength.Define(strength.Identity{
	ID: "axial-force", Title: "axial force at a section",
	Clause: clause("J4.1 Eq. J4-1 and J4-2, B4.3b; J4.4 Eq. J4-6, E3 Eq. E3-1 to E3-4", "K = 2.1"),
	Demand: "abs(P_r)", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g axialGivens) {
	c.Compare(math.Abs(g.N), axialStrength(c, &g))
})

func axialStrength(c *strength.Calc, g *axialGivens) float64 {
	sense := tensionCapacity
	if g.N < 0 {
		sense = compressionCapacity
	}
	if known, ok := c.Known(sense); ok {
		return known
	}
	return c.Keep(sense, axialLines(c, g))
}

func axialLines(c *strength.Calc, g *axialGivens) float64 {
	n, a, r, l, fy := g.N, g.A, g.R, g.L, g.Fy
	slender := 2.1 * l / r
	if n >= 0 && g.H > 0 && g.Fu > 0 {
		Py := c.Let("P_ny", "F_y*A", "N", fy*a)
		Ae := c.Let("A_e", "A - t_h/16*in", "mm^2", a-g.H*inch/16)
		c.Need(Ae > 0, "A_e > 0*mm*mm", "material left beside the holes")
		Pu := c.Let("P_nu", "F_u*A_e", "N", g.Fu*Ae)
		return c.Let("P_c", "min(P_cy, P_cu)", "N", min(c.Available("P_cy", "P_ny", "N", Py, 0.90, 1.67), c.Available("P_cu", "P_nu", "N", Pu, 0.75, 2.00)))
	}
	if n >= 0 || slender <= 25 {
		Pn := c.Let("P_n", "F_y*A", "N", fy*a)
		return c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67)
	}
	e := c.Let("E", "29000*ksi", "MPa", E)
	c.Let("Lc_r", "2.1*L/r", "", slender)
	Fe := c.Let("F_e", "pow(pi, 2)*E/pow(Lc_r, 2)", "MPa", math.Pi*math.Pi*e/(slender*slender))
	var Fn float64
	if slender <= 4.71*math.Sqrt(e/fy) {
		Fn = c.Let("F_n", "pow(0.658, F_y/F_e)*F_y", "MPa", math.Pow(0.658, fy/Fe)*fy)
	} else {
		Fn = c.Let("F_n", "0.877*F_e", "MPa", 0.877*Fe)
	}
	Pn := c.Let("P_n", "F_n*A", "N", Fn*a)
	return c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67)
}

type sectionShearGivens struct {
	Va float64 `sym:"V_rx" unit:"N" min:"0" max:"1e9" is:"shear force out of the plate's plane"`
	Vb float64 `sym:"V_ry" unit:"N" min:"0" max:"1e9" is:"shear force in the plate's plane"`
	T  float64 `sym:"T_r" unit:"N*mm" min:"0" max:"1e12" is:"torsion about the shear centre"`
	Aa float64 `sym:"A_x" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_rx"`
	Ab float64 `sym:"A_y" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_ry"`
	J  float64 `sym:"J" unit:"mm^4" min:"1e-3" max:"1e12" is:"torsion constant for stress, the largest shear stress being T t/J: of a solid rectangle by St Venant's series"`
	Tm float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickest part"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// sectionShear is shear yielding, J4.2(a) Eq. J4-3, of both shear forces by the root of squares, with St Venant torsion of the
// thin rectangles added to it (elementary, no clause).
var sectionShear = strength.Define(strength.Identity{
	ID: "section-shear", Title: "shear and torsion at a section",
	Clause: clause("J4.2(a), Eq. J4-3", "torsion added by elementary theory"),
	Demand: "f_v", Capacity: "F_v", Unit: "MPa",
}, func(c *strength.Calc, g sectionShearGivens) {
	fv := shearStress(c, g.Va, g.Vb, g.T, g.Aa, g.Ab, g.J, g.Tm)
	c.Compare(fv, shearAvailable(c, g.Fy))
})

func shearStress(c *strength.Calc, va, vb, torsion, aa, ab, j, t float64) float64 {
	f := c.Let("f_V", "sqrt(pow(V_rx/A_x, 2) + pow(V_ry/A_y, 2))", "MPa", math.Sqrt((va/aa)*(va/aa)+(vb/ab)*(vb/ab)))
	ft := c.Let("f_T", "T_r*t/J", "MPa", torsion*t/j)
	return c.Let("f_v", "f_V + f_T", "MPa", f+ft)
}

func shearAvailable(c *strength.Calc, fy float64) float64 {
	if known, ok := c.Known(shearCapacity); ok {
		return known
	}
	Fn := c.Let("F_nv", "0.60*F_y", "MPa", 0.60*fy)
	return c.Keep(shearCapacity, c.Available("F_v", "F_nv", "MPa", Fn, 1.00, 1.50))
}

type interactionGivens struct {
	Mx float64 `sym:"M_rx" unit:"N*mm" min:"0" max:"1e12" is:"weak-axis moment"`
	My float64 `sym:"M_ry" unit:"N*mm" min:"0" max:"1e12" is:"moment in the plane of the plate"`
	N  float64 `sym:"P_r" unit:"N" min:"-1e9" max:"1e9" is:"axial force, tension positive"`
	Va float64 `sym:"V_rx" unit:"N" min:"0" max:"1e9" is:"shear force out of the plate's plane"`
	Vb float64 `sym:"V_ry" unit:"N" min:"0" max:"1e9" is:"shear force in the plate's plane"`
	T  float64 `sym:"T_r" unit:"N*mm" min:"0" max:"1e12" is:"torsion about the shear centre"`
	Zx float64 `sym:"Z_x" unit:"mm^3" min:"0" max:"1e9" is:"plastic modulus, weak axis; 0 for first yield"`
	Sx float64 `sym:"S_x" unit:"mm^3" min:"1e-3" max:"1e9" is:"elastic modulus, weak axis"`
	Zy float64 `sym:"Z_y" unit:"mm^3" min:"0" max:"1e10" is:"plastic modulus in the plane; 0 for first yield"`
	Sy float64 `sym:"S_y" unit:"mm^3" min:"1e-3" max:"1e10" is:"elastic modulus in the plane"`
	A  float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"area of the section"`
	Aa float64 `sym:"A_x" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_rx"`
	Ab float64 `sym:"A_y" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists V_ry"`
	J  float64 `sym:"J" unit:"mm^4" min:"1e-3" max:"1e12" is:"torsion constant"`
	R  float64 `sym:"r" unit:"mm" min:"0.01" max:"1e4" is:"least radius of gyration"`
	L  float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length from the cut to the load"`
	D  float64 `sym:"h" unit:"mm" min:"0.1" max:"1e4" is:"depth of the plate in bending"`
	Tm float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"0" max:"3000" default:"0" is:"tensile strength; 0 leaves rupture out"`
	H  float64 `sym:"t_h" unit:"mm" min:"0" max:"1e4" default:"0" is:"thickness that holes on the section go through, all together; 0 for none"`
}

// interaction is bending about both axes with axial force and shear: AISC Steel Construction Manual Part 9, Eq. 9-1,
// M/M_c + (P/P_c)^2 + (V/V_c)^4 <= 1; the second moment term and torsion within V are our extension. The square holds for a rectangle that
// goes plastic; a section held to first yield, and one that buckles, takes P/P_c as it is (as H1 does).
var interaction = strength.Define(strength.Identity{
	ID: "section-interaction", Title: "bending, axial force and shear together",
	Clause: strength.Clause{Document: "AISC Manual", Edition: "15th ed.", Section: "Part 9, Eq. 9-1", Words: "biaxial form, torsion, and P/P_c not squared at first yield or in buckling are our extension"},
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g interactionGivens) {
	Mcx := weakMoment(c, g.Zx, g.Sx, g.Fy)
	c.Let("L_b", "L", "mm", g.L)
	Mcy := edgeMoment(c, g.Zy, g.Sy, g.L, g.D, g.Tm, g.Fy, 1)
	Pc := axialStrength(c, &axialGivens{N: g.N, A: g.A, R: g.R, L: g.L, Fy: g.Fy, Fu: g.Fu, H: g.H})
	fv := shearStress(c, g.Va, g.Vb, g.T, g.Aa, g.Ab, g.J, g.Tm)
	Fv := shearAvailable(c, g.Fy)
	e := c.Let("e_P", "when(Z_x > 0, when(Z_y > 0, when(P_r >= 0*N, 2, when(2.1*L/r <= 25, 2, 1)), 1), 1)", "", axialPower(g.Zx, g.Zy, g.N, g.L, g.R))
	axial := c.Let("U_P", "pow(abs(P_r)/P_c, e_P)", "", axialPart(math.Abs(g.N)/Pc, e))
	c.Compare(c.Let("U", "M_rx/M_cx + M_ry/M_cy + U_P + pow(f_v/F_v, 4)", "", unity(g.Mx/Mcx, g.My/Mcy, axial, fv/Fv)), 1)
})

// axialPower is 2 for a rectangle that goes plastic and does not buckle, else 1.
func axialPower(zx, zy, n, l, r float64) float64 {
	if zx > 0 && zy > 0 && (n >= 0 || 2.1*l/r <= 25) {
		return 2
	}
	return 1
}

func axialPart(ratio, power float64) float64 {
	if power == 2 {
		return float64(ratio * ratio)
	}
	return ratio
}

// unity is the sum of the parts, shear to the fourth power.
func unity(weak, edge, axial, shear float64) float64 {
	sheared := shear * shear
	return weak + edge + axial + float64(sheared*sheared)
}

// capacities are those that are known at a section, for axial force of one sense.
func capacities(c *strength.Calc, sense strength.Sense) (weak, edge, axial, shear float64, ok bool) {
	way := tensionCapacity
	if sense == strength.Pressing {
		way = compressionCapacity
	}
	weak, ok1 := c.Known(weakCapacity)
	edge, ok2 := c.Known(edgeCapacity)
	axial, ok3 := c.Known(way)
	shear, ok4 := c.Known(shearCapacity)
	return weak, edge, axial, shear, ok1 && ok2 && ok3 && ok4
}

var cutRules = []strength.Rule[strength.Cut]{
	{Of: weakAxis, Check: func(c *strength.Calc, f *strength.Cut) {
		weakAxis.Check(c, weakAxisGivens{M: f.Ma, Z: f.Za, S: f.Sa, Fy: f.Fy})
	}, Demand: func(_ *strength.Calc, f *strength.Cut) (float64, strength.Sense) { return f.Ma, strength.EitherWay }},
	{Of: edgewise, Check: func(c *strength.Calc, f *strength.Cut) {
		edgewise.Check(c, edgewiseGivens{M: f.Mb, Z: f.Zb, S: f.Sb, L: f.FreeLength, D: f.Depth, T: f.TMax, Fy: f.Fy, Cb: 1})
	}, Demand: func(_ *strength.Calc, f *strength.Cut) (float64, strength.Sense) { return f.Mb, strength.EitherWay }},
	{Of: axial, Check: func(c *strength.Calc, f *strength.Cut) {
		axial.Check(c, axialGivens{N: f.N, A: f.Area, R: f.R, L: f.FreeLength, Fy: f.Fy, Fu: f.Fu, H: f.HoleT})
	}, Demand: func(_ *strength.Calc, f *strength.Cut) (float64, strength.Sense) { return f.Axial() }},
	{Of: sectionShear, Check: func(c *strength.Calc, f *strength.Cut) {
		sectionShear.Check(c, sectionShearGivens{Va: f.Va, Vb: f.Vb, T: f.T, Aa: f.AreaVa, Ab: f.AreaVb, J: f.J, Tm: f.TMax, Fy: f.Fy})
	}, Demand: func(c *strength.Calc, f *strength.Cut) (float64, strength.Sense) {
		return shearStress(c, f.Va, f.Vb, f.T, f.AreaVa, f.AreaVb, f.J, f.TMax), strength.EitherWay
	}},
	{Of: interaction, Check: func(c *strength.Calc, f *strength.Cut) {
		interaction.Check(c, interactionGivens{
			Mx: f.Ma, My: f.Mb, N: f.N, Va: f.Va, Vb: f.Vb, T: f.T, Zx: f.Za, Sx: f.Sa, Zy: f.Zb, Sy: f.Sb, A: f.Area,
			Aa: f.AreaVa, Ab: f.AreaVb, J: f.J, R: f.R, L: f.FreeLength, D: f.Depth, Tm: f.TMax, Fy: f.Fy, Fu: f.Fu, H: f.HoleT,
		})
	}, Demand: func(c *strength.Calc, f *strength.Cut) (float64, strength.Sense) {
		n, sense := f.Axial()
		mcx, mcy, pc, fv, ok := capacities(c, sense)
		if !ok {
			return math.NaN(), sense
		}
		stress := shearStress(c, f.Va, f.Vb, f.T, f.AreaVa, f.AreaVb, f.J, f.TMax)
		return unity(f.Ma/mcx, f.Mb/mcy, axialPart(n/pc, axialPower(f.Za, f.Zb, f.N, f.FreeLength, f.R)), stress/fv), sense
	}},
}
