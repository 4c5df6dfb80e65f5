package aisc360

// Round and rectangular tubes: properties, bending, shear. Walls are the design wall, 0.93 of nominal for A500 and A53.

import (
	"math"

	"lugwright/strength"
)

type rectTubeGivens struct {
	S0 float64 `sym:"S_req" unit:"mm^3" min:"0" max:"1e9" default:"0" is:"section modulus needed about x"`
	H  float64 `sym:"H" unit:"mm" min:"5" max:"2000" is:"outside size across x"`
	B  float64 `sym:"B" unit:"mm" min:"5" max:"2000" is:"outside size along x"`
	T  float64 `sym:"t" unit:"mm" min:"0.2" max:"100" is:"design wall"`
}

// rectTubeProperties are the section properties with the corner radii of the Manual's tables, 2 t outside and t inside: AISC Manual
// Part 1, Tables 1-11 and 1-12. Elementary, no clause.
var rectTubeProperties = strength.Define(strength.Identity{
	ID: "rect-tube-properties", Title: "section properties of a rectangular tube",
	Clause: strength.Clause{Document: "AISC Manual", Edition: "16th ed.", Section: "Part 1, Tables 1-11 and 1-12", Words: "corner radii 2 t and t"},
	Demand: "S_req", Capacity: "S", Unit: "mm^3",
	Detail: true,
}, func(c *strength.Calc, g rectTubeGivens) {
	c.Need(g.H > 4*g.T, "H > 4*t", "a side that is flat between its corners")
	c.Need(g.B > 4*g.T, "B > 4*t", "a side that is flat between its corners")
	h := c.Let("h_i", "H - 2*t", "mm", g.H-2*g.T)
	b := c.Let("b_i", "B - 2*t", "mm", g.B-2*g.T)
	ro, ri := c.Let("r_o", "2*t", "mm", 2*g.T), c.Let("r_i", "t", "mm", g.T)
	A := c.Let("A", "H*B - h_i*b_i - (4 - pi)*(pow(r_o, 2) - pow(r_i, 2))", "mm^2", g.H*g.B-h*b-(4-math.Pi)*(ro*ro-ri*ri))
	// A corner spandrel of radius r: area (1 - pi/4) r^2, centroid 0.22338 r from the sides, own inertia 0.0075451 r^4.
	Io := c.Let("I_o", "B*pow(H, 3)/12 - 4*(0.0075451*pow(r_o, 4) + (1 - pi/4)*pow(r_o, 2)*pow(H/2 - 0.22338*r_o, 2))", "mm^4", roundedInertia(g.B, g.H, ro))
	Ii := c.Let("I_i", "b_i*pow(h_i, 3)/12 - 4*(0.0075451*pow(r_i, 4) + (1 - pi/4)*pow(r_i, 2)*pow(h_i/2 - 0.22338*r_i, 2))", "mm^4", roundedInertia(b, h, ri))
	I := c.Let("I", "I_o - I_i", "mm^4", Io-Ii)
	S := c.Let("S", "2*I/H", "mm^3", 2*I/g.H)
	Zo := c.Let("Z_o", "B*pow(H, 2)/4 - 4*(1 - pi/4)*pow(r_o, 2)*(H/2 - 0.22338*r_o)", "mm^3", roundedPlastic(g.B, g.H, ro))
	Zi := c.Let("Z_i", "b_i*pow(h_i, 2)/4 - 4*(1 - pi/4)*pow(r_i, 2)*(h_i/2 - 0.22338*r_i)", "mm^3", roundedPlastic(b, h, ri))
	c.Let("Z", "Z_o - Z_i", "mm^3", Zo-Zi)
	c.Let("r", "sqrt(I/A)", "mm", math.Sqrt(I/A))
	c.Let("b_t", "(B - 3*t)/t", "", (g.B-3*g.T)/g.T)
	c.Let("h_t", "(H - 3*t)/t", "", (g.H-3*g.T)/g.T)
	rectTubeTorsionConstants(c, g)
	c.Compare(g.S0, S)
})

// rectTubeTorsionConstants are J by the thin closed section on the wall's middle line, with its corners of 1.5 t, as EN 10219-2, Annex B, has it (from
// memory), and C by the user note of AISC 360-22 H3.1.
func rectTubeTorsionConstants(c *strength.Calc, g rectTubeGivens) {
	rc := c.Let("R_c", "1.5*t", "mm", 1.5*g.T)
	p := c.Let("h_m", "2*(B - t + H - t) - 2*R_c*(4 - pi)", "mm", 2*(g.B-g.T+g.H-g.T)-2*rc*(4-math.Pi))
	Am := c.Let("A_m", "(B - t)*(H - t) - pow(R_c, 2)*(4 - pi)", "mm^2", (g.B-g.T)*(g.H-g.T)-rc*rc*(4-math.Pi))
	c.Let("J", "pow(t, 3)*h_m/3 + 4*pow(A_m, 2)*t/h_m", "mm^4", g.T*g.T*g.T*p/3+4*Am*Am*g.T/p)
	c.Let("C", "2*(B - t)*(H - t)*t - 4.5*(4 - pi)*pow(t, 3)", "mm^3", 2*(g.B-g.T)*(g.H-g.T)*g.T-4.5*(4-math.Pi)*g.T*g.T*g.T)
}

// roundedInertia and roundedPlastic are the second moment and the plastic modulus of a rectangle b wide and h deep with corners of radius r.
func roundedInertia(b, h, r float64) float64 {
	return b*h*h*h/12 - 4*(0.0075451*r*r*r*r+(1-math.Pi/4)*r*r*sq(h/2-0.22338*r))
}

func roundedPlastic(b, h, r float64) float64 {
	return b*h*h/4 - 4*(1-math.Pi/4)*r*r*(h/2-0.22338*r)
}

func sq(x float64) float64 { return x * x }

type roundTubeGivens struct {
	S0 float64 `sym:"S_req" unit:"mm^3" min:"0" max:"1e9" default:"0" is:"section modulus needed"`
	D  float64 `sym:"D" unit:"mm" min:"5" max:"2000" is:"outside diameter"`
	T  float64 `sym:"t" unit:"mm" min:"0.2" max:"200" is:"design wall"`
}

// roundTubeProperties are the section properties of a round tube: elementary, as AISC Manual Tables 1-13 and 1-14.
var roundTubeProperties = strength.Define(strength.Identity{
	ID: "round-tube-properties", Title: "section properties of a round tube",
	Clause: strength.Clause{Document: "AISC Manual", Edition: "16th ed.", Section: "Part 1, Tables 1-13 and 1-14"},
	Demand: "S_req", Capacity: "S", Unit: "mm^3",
	Detail: true,
}, func(c *strength.Calc, g roundTubeGivens) {
	c.Need(2*g.T < g.D, "2*t < D", "a hollow tube")
	d := c.Let("d", "D - 2*t", "mm", g.D-2*g.T)
	A := c.Let("A", "pi/4*(pow(D, 2) - pow(d, 2))", "mm^2", math.Pi/4*(g.D*g.D-d*d))
	I := c.Let("I", "pi/64*(pow(D, 4) - pow(d, 4))", "mm^4", math.Pi/64*(math.Pow(g.D, 4)-math.Pow(d, 4)))
	S := c.Let("S", "2*I/D", "mm^3", 2*I/g.D)
	c.Let("Z", "(pow(D, 3) - pow(d, 3))/6", "mm^3", (g.D*g.D*g.D-d*d*d)/6)
	c.Let("r", "sqrt(I/A)", "mm", math.Sqrt(I/A))
	c.Let("D_t", "D/t", "", g.D/g.T)
	J := c.Let("J", "2*I", "mm^4", 2*I)
	c.Let("C", "2*J/D", "mm^3", 2*J/g.D)
	c.Compare(g.S0, S)
})

type rectTubeBendingGivens struct {
	M  float64 `sym:"M_r" unit:"N*mm" min:"0" max:"1e12" is:"bending moment about the strong axis"`
	Z  float64 `sym:"Z" unit:"mm^3" min:"1" max:"1e9" is:"plastic modulus"`
	S  float64 `sym:"S" unit:"mm^3" min:"0" max:"1e9" default:"0" is:"elastic modulus; 0 where the walls are compact and the tube is braced throughout"`
	Bt float64 `sym:"b_t" unit:"" min:"1" max:"300" is:"flat width of the flange over the wall"`
	Ht float64 `sym:"h_t" unit:"" min:"0" max:"300" default:"0" is:"flat depth of the web over the wall; 0 where it is compact"`
	J  float64 `sym:"J" unit:"mm^4" min:"0" max:"1e12" default:"0" is:"torsion constant; 0 where the length between braces is nought"`
	A  float64 `sym:"A" unit:"mm^2" min:"0" max:"1e7" default:"0" is:"area"`
	Ry float64 `sym:"r_y" unit:"mm" min:"0" max:"1e4" default:"0" is:"radius of gyration about the weak axis"`
	Lb float64 `sym:"L_b" unit:"mm" min:"0" max:"1e6" default:"0" is:"length between braces"`
	Cb float64 `sym:"C_b" unit:"" min:"1" max:"3" default:"1" is:"factor for the shape of the moment"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	H  float64 `sym:"H" unit:"mm" min:"0" max:"2000" default:"0" is:"outside depth, for a slender flange"`
	T  float64 `sym:"t" unit:"mm" min:"0" max:"100" default:"0" is:"design wall, for a slender flange"`
}

// rectTubeBending is bending of a rectangular tube: AISC 360-22 F7.1 to F7.4. Of a slender flange what is not effective is taken off both flanges, so
// that the neutral axis stays where it is, as the AISC Design Examples do: a lower bound. A slender web is outside the lines given here.
var rectTubeBending = strength.Define(strength.Identity{
	ID: "rect-tube-bending", Title: "bending of a rectangular tube",
	Clause: clause("F7, Eq. F7-1 to F7-4, F7-6 and F7-10 to F7-13; Table B4.1b", ""),
	Demand: "M_r", Capacity: "M_c", Unit: "N*mm",
}, func(c *strength.Calc, g rectTubeBendingGivens) {
	e := c.Let("E", "29000*ksi", "MPa", E)
	lp := c.Let("lambda_p", "1.12*sqrt(E/F_y)", "", 1.12*math.Sqrt(e/g.Fy))
	lr := c.Let("lambda_r", "1.40*sqrt(E/F_y)", "", 1.40*math.Sqrt(e/g.Fy))
	wp := c.Let("lambda_w", "2.42*sqrt(E/F_y)", "", 2.42*math.Sqrt(e/g.Fy))
	wr := c.Let("lambda_rw", "5.70*sqrt(E/F_y)", "", 5.70*math.Sqrt(e/g.Fy))
	c.Need(g.Ht <= wr, "h_t <= lambda_rw", "a web that is not slender")
	c.Need(g.S <= g.Z, "S <= Z", "an elastic modulus no greater than the plastic")
	Mp := c.Let("M_p", "F_y*Z", "N*mm", g.Fy*g.Z)
	Mf := rectTubeFlange(c, g, e, Mp, lp, lr)
	Mw := Mp
	if g.Ht > wp {
		c.Need(g.S > 0, "S > 0*mm*mm*mm", "the elastic modulus of a tube whose web is not compact")
		Mw = c.Let("M_wlb", "min(M_p - (M_p - F_y*S)*(0.305*h_t*sqrt(F_y/E) - 0.738), M_p)", "N*mm",
			min(Mp-(Mp-g.Fy*g.S)*(0.305*g.Ht*math.Sqrt(g.Fy/e)-0.738), Mp))
	} else {
		c.Let("M_wlb", "M_p", "N*mm", Mw)
	}
	Ml := rectTubeTwist(c, g, e, Mp)
	Mn := c.Let("M_n", "min(M_flb, M_wlb, M_ltb)", "N*mm", min(Mf, Mw, Ml))
	c.Compare(g.M, c.Available("M_c", "M_n", "N*mm", Mn, 0.90, 1.67))
})

// rectTubeFlange is local buckling of the flange, F7.2, in its lines.
func rectTubeFlange(c *strength.Calc, g rectTubeBendingGivens, e, mp, lp, lr float64) float64 {
	if g.Bt <= lp {
		return c.Let("M_flb", "M_p", "N*mm", mp)
	}
	c.Need(g.S > 0, "S > 0*mm*mm*mm", "the elastic modulus of a tube whose flange is not compact")
	if g.Bt <= lr {
		return c.Let("M_flb", "min(M_p - (M_p - F_y*S)*(3.57*b_t*sqrt(F_y/E) - 4.0), M_p)", "N*mm",
			min(mp-(mp-g.Fy*g.S)*(3.57*g.Bt*math.Sqrt(g.Fy/e)-4.0), mp))
	}
	c.Need(g.T > 0, "t > 0*mm", "the wall of a tube with a slender flange")
	c.Need(g.H > 2*g.T, "H > 2*t", "the depth of a tube with a slender flange")
	root := math.Sqrt(e / g.Fy)
	// Above lambda_r b_e is less than the flat width by itself.
	be := c.Let("b_e", "1.92*t*sqrt(E/F_y)*(1 - 0.38/b_t*sqrt(E/F_y))", "mm", 1.92*g.T*root*(1-0.38/g.Bt*root))
	lost := c.Let("b_x", "b_t*t - b_e", "mm", g.Bt*g.T-be)
	Ie := c.Let("I_e", "S*H/2 - 2*(b_x*t*pow((H - t)/2, 2) + b_x*pow(t, 3)/12)", "mm^4",
		g.S*g.H/2-2*(lost*g.T*sq((g.H-g.T)/2)+lost*g.T*g.T*g.T/12))
	c.Need(Ie > 0, "I_e > 0*mm*mm*mm*mm", "S, b_t, H and t of one tube")
	Se := c.Let("S_e", "2*I_e/H", "mm^3", 2*Ie/g.H)
	return c.Let("M_flb", "F_y*S_e", "N*mm", g.Fy*Se)
}

// rectTubeTwist is lateral-torsional buckling, F7.4, in its lines; new in 360-16.
func rectTubeTwist(c *strength.Calc, g rectTubeBendingGivens, e, mp float64) float64 {
	if g.Lb == 0 || g.J == 0 || g.A == 0 || g.Ry == 0 {
		c.Need(g.Lb == 0, "L_b == 0*mm", "J, A and r_y of a tube that is not braced throughout")
		return c.Let("M_ltb", "M_p", "N*mm", mp)
	}
	c.Need(g.S > 0, "S > 0*mm*mm*mm", "the elastic modulus of a tube whose braces stand apart")
	root := c.Let("s_JA", "sqrt(J*A)", "mm^3", math.Sqrt(g.J*g.A))
	Lp := c.Let("L_p", "0.13*E*r_y*s_JA/M_p", "mm", 0.13*e*g.Ry*root/mp)
	Lr := c.Let("L_r", "2*E*r_y*s_JA/(0.7*F_y*S)", "mm", 2*e*g.Ry*root/(0.7*g.Fy*g.S))
	switch {
	case g.Lb <= Lp:
		return c.Let("M_ltb", "M_p", "N*mm", mp)
	case g.Lb <= Lr:
		return c.Let("M_ltb", "min(C_b*(M_p - (M_p - 0.7*F_y*S)*(L_b - L_p)/(L_r - L_p)), M_p)", "N*mm",
			min(g.Cb*(mp-(mp-0.7*g.Fy*g.S)*(g.Lb-Lp)/(Lr-Lp)), mp))
	}
	return c.Let("M_ltb", "min(2*E*C_b*s_JA/(L_b/r_y), M_p)", "N*mm", min(2*e*g.Cb*root/(g.Lb/g.Ry), mp))
}

type roundTubeBendingGivens struct {
	M  float64 `sym:"M_r" unit:"N*mm" min:"0" max:"1e12" is:"bending moment"`
	Z  float64 `sym:"Z" unit:"mm^3" min:"1" max:"1e9" is:"plastic modulus"`
	S  float64 `sym:"S" unit:"mm^3" min:"0" max:"1e9" default:"0" is:"elastic modulus; 0 where the wall is compact"`
	Dt float64 `sym:"D_t" unit:"" min:"2" max:"500" is:"diameter over design wall"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// roundTubeBending is bending of a round tube: AISC 360-22 F8, Eq. F8-1 to F8-4; D/t below 0.45 E/F_y.
var roundTubeBending = strength.Define(strength.Identity{
	ID: "round-tube-bending", Title: "bending of a round tube",
	Clause: clause("F8, Eq. F8-1 to F8-4; Table B4.1b", ""),
	Demand: "M_r", Capacity: "M_c", Unit: "N*mm",
}, func(c *strength.Calc, g roundTubeBendingGivens) {
	e := c.Let("E", "29000*ksi", "MPa", E)
	lp := c.Let("lambda_p", "0.07*E/F_y", "", 0.07*e/g.Fy)
	lr := c.Let("lambda_r", "0.31*E/F_y", "", 0.31*e/g.Fy)
	c.Need(g.Dt < 0.45*e/g.Fy, "D_t < 0.45*E/F_y", "a wall within the rule")
	c.Need(g.S <= g.Z, "S <= Z", "an elastic modulus no greater than the plastic")
	Mp := c.Let("M_p", "F_y*Z", "N*mm", g.Fy*g.Z)
	if g.Dt > lp {
		c.Need(g.S > 0, "S > 0*mm*mm*mm", "the elastic modulus of a tube whose wall is not compact")
	}
	var Mn float64
	switch {
	case g.Dt <= lp:
		Mn = c.Let("M_n", "M_p", "N*mm", Mp)
	case g.Dt <= lr:
		Mn = c.Let("M_n", "min((0.021*E/D_t + F_y)*S, M_p)", "N*mm", min((0.021*e/g.Dt+g.Fy)*g.S, Mp))
	default:
		Mn = c.Let("M_n", "min(0.33*E/D_t*S, M_p)", "N*mm", min(0.33*e/g.Dt*g.S, Mp))
	}
	c.Compare(g.M, c.Available("M_c", "M_n", "N*mm", Mn, 0.90, 1.67))
})

type rectTubeShearGivens struct {
	V  float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force"`
	H  float64 `sym:"H" unit:"mm" min:"5" max:"2000" is:"outside size along the shear"`
	T  float64 `sym:"t" unit:"mm" min:"0.2" max:"100" is:"design wall"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// rectTubeShear is shear of a rectangular tube: AISC 360-22 G4, Eq. G4-1, with C_v2 of G2.2 for k_v = 5.
var rectTubeShear = strength.Define(strength.Identity{
	ID: "rect-tube-shear", Title: "shear of a rectangular tube",
	Clause: clause("G4, Eq. G4-1; G2.2, Eq. G2-9 to G2-11", "k_v = 5"),
	Demand: "V_r", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g rectTubeShearGivens) {
	e := c.Let("E", "29000*ksi", "MPa", E)
	h := c.Let("h", "H - 3*t", "mm", g.H-3*g.T)
	c.Need(h > 0, "h > 0*mm", "a side with a flat part")
	Aw := c.Let("A_w", "2*h*t", "mm^2", 2*h*g.T)
	root := c.Let("s_v", "sqrt(5*E/F_y)", "", math.Sqrt(5*e/g.Fy))
	ht := c.Let("h_t", "h/t", "", h/g.T)
	var Cv float64
	switch {
	case ht <= 1.10*root:
		Cv = c.Let("C_v2", "1", "", 1)
	case ht <= 1.37*root:
		Cv = c.Let("C_v2", "1.10*s_v/h_t", "", 1.10*root/ht)
	default:
		Cv = c.Let("C_v2", "1.51*5*E/(pow(h_t, 2)*F_y)", "", 1.51*5*e/(ht*ht*g.Fy))
	}
	Vn := c.Let("V_n", "0.6*F_y*A_w*C_v2", "N", 0.6*g.Fy*Aw*Cv)
	c.Compare(g.V, c.Available("V_c", "V_n", "N", Vn, 0.90, 1.67))
})

type roundTubeShearGivens struct {
	V  float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force"`
	D  float64 `sym:"D" unit:"mm" min:"5" max:"2000" is:"outside diameter"`
	T  float64 `sym:"t" unit:"mm" min:"0.2" max:"200" is:"design wall"`
	Lv float64 `sym:"L_v" unit:"mm" min:"1" max:"1e6" is:"length from greatest to no shear"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// roundTubeShear is shear of a round tube: AISC 360-22 G5, Eq. G5-1, G5-2a and G5-2b.
var roundTubeShear = strength.Define(strength.Identity{
	ID: "round-tube-shear", Title: "shear of a round tube",
	Clause: clause("G5, Eq. G5-1 to G5-2b", ""),
	Demand: "V_r", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g roundTubeShearGivens) {
	c.Need(2*g.T < g.D, "2*t < D", "a hollow tube")
	e := c.Let("E", "29000*ksi", "MPa", E)
	A := c.Let("A_g", "pi*(D - t)*t", "mm^2", math.Pi*(g.D-g.T)*g.T)
	Dt := c.Let("D_t", "D/t", "", g.D/g.T)
	F1 := c.Let("F_cr1", "1.60*E/(sqrt(L_v/D)*pow(D_t, 1.25))", "MPa", 1.60*e/(math.Sqrt(g.Lv/g.D)*math.Pow(Dt, 1.25)))
	F2 := c.Let("F_cr2", "0.78*E/pow(D_t, 1.5)", "MPa", 0.78*e/math.Pow(Dt, 1.5))
	Fcr := c.Let("F_cr", "min(max(F_cr1, F_cr2), 0.6*F_y)", "MPa", min(max(F1, F2), 0.6*g.Fy))
	Vn := c.Let("V_n", "F_cr*A_g/2", "N", Fcr*A/2)
	c.Compare(g.V, c.Available("V_c", "V_n", "N", Vn, 0.90, 1.67))
})
