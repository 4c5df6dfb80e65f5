package aisc360

// Bolts in shear, tension and both; bearing and tear-out of the plies; prying.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

type boltShearGivens struct {
	V       float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on one bolt"`
	D       float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Fu      float64 `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
	Threads float64 `sym:"threads" unit:"" min:"0" max:"1" default:"1" is:"1 when threads are in the shear plane, else 0"`
	Lj      float64 `sym:"L_j" unit:"mm" min:"0" max:"1e5" default:"0" is:"length of an end-loaded joint between its outermost bolts along the force"`
	Whole   float64 `sym:"stress" choices:"parts of F_u|whole ksi of Table J3.2" default:"0" is:"nominal stresses: 0.450 or 0.563 and 0.75 F_u, or these as the table prints them for bolts of a group"`
}

// boltShear is shear of one bolt on its nominal area: AISC 360-22 J3.7, Eq. J3-1, with F_nv of Table J3.2 as 0.450 or 0.563 F_u, or in the
// whole ksi that the table prints for bolts of a group and the Manual's tables follow; 0.833 of it where the joint is longer than 38 in, footnote b
// of the table.
var boltShear = strength.Define(strength.Identity{
	ID: "bolt-shear", Title: "shear of the bolt",
	Clause: clause("J3.7, Eq. J3-1 and Table J3.2", ""),
	Demand: "V_r", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g boltShearGivens) {
	Ab := c.Let("A_b", "pi*pow(d, 2)/4", "mm^2", math.Pi*g.D*g.D/4)
	Fnv := shearStrength(c, g.Fu, g.Threads, g.Whole)
	long := 1.0
	if g.Lj > 38*inch {
		long = 0.833
	}
	Rn := c.Let("R_n", "when(L_j > 38*in, 0.833, 1)*F_nv*A_b", "N", long*Fnv*Ab)
	c.Compare(g.V, c.Available("V_c", "R_n", "N", Rn, 0.75, 2.00))
})

func shearStrength(c *strength.Calc, fu, threads, whole float64) float64 {
	k := 0.563
	if threads > 0 {
		k = 0.450
	}
	if whole > 0 {
		return c.Solved("F_nv", "0.450 or 0.563 F_u to the whole ksi, as Table J3.2 prints it", "MPa", wholeKsi(k*fu))
	}
	return c.Let("F_nv", "when(threads > 0, 0.450, 0.563)*F_u", "MPa", k*fu)
}

// tensileStress is F_nt of Table J3.2.
func tensileStress(c *strength.Calc, fu, whole float64) float64 {
	if whole > 0 {
		return c.Solved("F_nt", "0.75 F_u to the whole ksi, as Table J3.2 prints it", "MPa", wholeKsi(0.75*fu))
	}
	return c.Let("F_nt", "0.75*F_u", "MPa", 0.75*fu)
}

// wholeKsi rounds a half up, as the table does: 0.450 x 150 ksi is 68, 0.75 x 150 is 113.
func wholeKsi(f float64) float64 { return math.Floor(f/ksi+0.5+1e-9) * ksi }

type boltTensionGivens struct {
	T     float64 `sym:"T_r" unit:"N" min:"0" max:"1e9" is:"tension in one bolt"`
	D     float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
	Whole float64 `sym:"stress" choices:"parts of F_u|whole ksi of Table J3.2" default:"0" is:"nominal stresses: 0.450 or 0.563 and 0.75 F_u, or these as the table prints them for bolts of a group"`
}

// boltTension is tension of one bolt on its nominal area; 0.75 F_u already holds the thread: AISC 360-22 J3.7, Eq. J3-1.
var boltTension = strength.Define(strength.Identity{
	ID: "bolt-tension", Title: "tension of the bolt",
	Clause: clause("J3.7, Eq. J3-1 and Table J3.2", ""),
	Demand: "T_r", Capacity: "T_c", Unit: "N",
}, func(c *strength.Calc, g boltTensionGivens) {
	Ab := c.Let("A_b", "pi*pow(d, 2)/4", "mm^2", math.Pi*g.D*g.D/4)
	Rn := c.Let("R_n", "F_nt*A_b", "N", tensileStress(c, g.Fu, g.Whole)*Ab)
	c.Compare(g.T, c.Available("T_c", "R_n", "N", Rn, 0.75, 2.00))
})

type boltCombinedGivens struct {
	T       float64 `sym:"T_r" unit:"N" min:"0" max:"1e9" is:"tension in one bolt"`
	V       float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on the same bolt"`
	D       float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Fu      float64 `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
	Threads float64 `sym:"threads" unit:"" min:"0" max:"1" default:"1" is:"1 when threads are in the shear plane, else 0"`
	Whole   float64 `sym:"stress" choices:"parts of F_u|whole ksi of Table J3.2" default:"0" is:"nominal stresses: 0.450 or 0.563 and 0.75 F_u, or these as the table prints them for bolts of a group"`
}

// boltCombined is tension with shear in a bearing-type joint: AISC 360-22 J3.8, Eq. J3-2, J3-3a (LRFD) and
// J3-3b (ASD).
var boltCombined = strength.Define(strength.Identity{
	ID: "bolt-combined", Title: "tension of the bolt with its shear",
	Clause: clause("J3.8, Eq. J3-2, J3-3a and J3-3b", ""),
	Demand: "T_r", Capacity: "T_c", Unit: "N",
}, func(c *strength.Calc, g boltCombinedGivens) {
	c.Compare(g.T, tensionWithShear(c, g.V, g.D, g.Fu, g.Threads, g.Whole))
})

// tensionWithShear is the tension left in a bolt that also carries shear.
func tensionWithShear(c *strength.Calc, v, d, fu, threads, whole float64) float64 {
	Ab := c.Let("A_b", "pi*pow(d, 2)/4", "mm^2", math.Pi*d*d/4)
	Fnt := tensileStress(c, fu, whole)
	Fnv := shearStrength(c, fu, threads, whole)
	frv := c.Let("f_rv", "V_r/A_b", "MPa", v/Ab)
	Fcv := c.Available("F_cv", "F_nv", "MPa", Fnv, 0.75, 2.00)
	c.Need(frv <= Fcv, "f_rv <= F_cv", "the bolt carries its shear alone")
	// Omega F_nt/F_nv and F_nt/(phi F_nv) are both F_nt over the available shear strength.
	Fn := c.Let("F_nt2", "max(min(1.3*F_nt - F_nt/F_cv*f_rv, F_nt), 0)", "MPa", max(min(1.3*Fnt-Fnt/Fcv*frv, Fnt), 0))
	Rn := c.Let("R_n", "F_nt2*A_b", "N", Fn*Ab)
	return c.Available("T_c", "R_n", "N", Rn, 0.75, 2.00)
}

type boltBearingGivens struct {
	V     float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on one bolt"`
	D     float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Dh    float64 `sym:"d_h" unit:"mm" min:"1" max:"200" is:"hole diameter"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the ply"`
	Edge  float64 `sym:"l_e" unit:"mm" min:"0" max:"1e5" default:"0" is:"hole centre to the nearest edge; 0 when none is near"`
	Pitch float64 `sym:"s" unit:"mm" min:"0" max:"1e5" default:"0" is:"hole centre to the nearest hole; 0 when none is near"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
	Rule  float64 `sym:"rule" choices:"deformation counts|deformation does not count|long slot across the force" default:"0" is:"deformation of the hole at service load counts or not; of a long slot across the force d_h is the width"`
}

// bearingForms are Eq. J3-6a and c, b and d, e and f.
var bearingForms = [...]struct {
	bear, tear                    float64
	bearText, edgeText, pitchText string
}{
	{2.4, 1.2, "2.4*d*t*F_u", "1.2*l_ce*t*F_u", "1.2*l_cs*t*F_u"},
	{3.0, 1.5, "3.0*d*t*F_u", "1.5*l_ce*t*F_u", "1.5*l_cs*t*F_u"},
	{2.0, 1.0, "2.0*d*t*F_u", "1.0*l_ce*t*F_u", "1.0*l_cs*t*F_u"},
}

// boltBearing is bearing and tear-out of one ply: AISC 360-22 J3.11a, Eq. J3-6a and J3-6c where deformation at service load is a concern, J3-6b and J3-6d
// where it is not, J3-6e and J3-6f for long slots across the force. The nearest edge or hole is taken whichever way the force points.
var boltBearing = strength.Define(strength.Identity{
	ID: "bolt-bearing", Title: "bearing and tear-out at the bolt hole",
	Clause: clause("J3.11a, Eq. J3-6a to J3-6f", ""),
	Demand: "V_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g boltBearingGivens) {
	k := bearingForms[int(g.Rule)]
	Rb := c.Let("R_nb", k.bearText, "N", k.bear*g.D*g.T*g.Fu)
	Rn := Rb
	if g.Edge > 0 {
		lc := c.Let("l_ce", "l_e - d_h/2", "mm", g.Edge-g.Dh/2)
		c.Need(lc > 0, "l_e - d_h/2 > 0*mm", "material between the hole and the edge")
		Rt := c.Let("R_nte", k.edgeText, "N", k.tear*lc*g.T*g.Fu)
		Rn = min(Rn, Rt)
	}
	if g.Pitch > 0 {
		lc := c.Let("l_cs", "s - d_h", "mm", g.Pitch-g.Dh)
		c.Need(lc > 0, "s - d_h > 0*mm", "material between the holes")
		Rt := c.Let("R_nts", k.pitchText, "N", k.tear*lc*g.T*g.Fu)
		Rn = min(Rn, Rt)
	}
	Rn = c.Let("R_n", leastOf(g.Edge > 0, g.Pitch > 0), "N", Rn)
	c.Compare(g.V, c.Available("R_c", "R_n", "N", Rn, 0.75, 2.00))
})

func leastOf(edge, pitch bool) string {
	switch {
	case edge && pitch:
		return "min(R_nb, R_nte, R_nts)"
	case edge:
		return "min(R_nb, R_nte)"
	case pitch:
		return "min(R_nb, R_nts)"
	}
	return "R_nb"
}

type boltSpacingGivens struct {
	D float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	S float64 `sym:"s" unit:"mm" min:"0.1" max:"1e5" is:"distance between hole centres"`
}

// boltSpacing is the least distance between holes: AISC 360-22 J3.4, 2 2/3 d.
var boltSpacing = strength.Define(strength.Identity{
	ID: "bolt-spacing", Title: "least distance between bolt holes",
	Clause: clause("J3.4", ""),
	Demand: "s_min", Capacity: "s", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g boltSpacingGivens) {
	c.Compare(c.Let("s_min", "8/3*d", "mm", 8.0/3*g.D), g.S)
})

type pryingGivens struct {
	T       float64 `sym:"T_r" unit:"N" min:"0" max:"1e9" is:"tension on one bolt, prying not in it"`
	V       float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on the same bolt"`
	B       float64 `sym:"b" unit:"mm" min:"0.1" max:"1000" is:"bolt line to the face of the part that stands on the ply; of an angle to the middle of its other leg"`
	A       float64 `sym:"a" unit:"mm" min:"0.1" max:"1000" is:"bolt line to the ply's free edge"`
	P       float64 `sym:"p" unit:"mm" min:"1" max:"2000" is:"length of ply that serves one bolt"`
	D       float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Dh      float64 `sym:"d_h" unit:"mm" min:"1" max:"200" is:"hole diameter"`
	Tp      float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the ply"`
	Fu      float64 `sym:"F_up" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
	Fub     float64 `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
	Threads float64 `sym:"threads" unit:"" min:"0" max:"1" default:"1" is:"1 when threads are in the shear plane, else 0"`
	Whole   float64 `sym:"stress" choices:"parts of F_u|whole ksi of Table J3.2" default:"0" is:"nominal stresses: 0.450 or 0.563 and 0.75 F_u, or these as the table prints them for bolts of a group"`
}

// prying is the tension a bolt can take from a ply that bends, prying included: AISC Steel Construction Manual 15th ed., Part 9,
// Eq. 9-20 to 9-29 (F_u form), with the tension that J3.8 leaves beside shear as T_c. Of the ply at most 2 b serves one bolt (from memory:
// the Manual's preferred limit).
var prying = strength.Define(strength.Identity{
	ID: "bolt-prying", Title: "tension of the bolt with prying of the ply",
	Clause: strength.Clause{Document: "AISC Manual", Edition: "15th ed.", Section: "Part 9, prying action", Words: "F_u form"},
	Demand: "T_r", Capacity: "T_avail", Unit: "N",
}, func(c *strength.Calc, g pryingGivens) {
	Tc := tensionWithShear(c, g.V, g.D, g.Fub, g.Threads, g.Whole)
	c.Need(g.B > g.D/2, "b > d/2", "the bolt clears the standing part")
	p := c.Let("p_e", "min(p, 2*b)", "mm", min(g.P, 2*g.B))
	c.Need(p > g.Dh, "p_e > d_h", "ply left beside the hole")
	b2 := c.Let("b_2", "b - d/2", "mm", g.B-g.D/2)
	a2 := c.Let("a_2", "min(a, 1.25*b) + d/2", "mm", min(g.A, 1.25*g.B)+g.D/2)
	rho := c.Let("rho", "b_2/a_2", "", b2/a2)
	delta := c.Let("delta", "1 - d_h/p_e", "", 1-g.Dh/p)
	var tc float64
	if c.Method == strength.LRFD {
		tc = c.Let("t_c", "sqrt(4*T_c*b_2/(0.90*p_e*F_up))", "mm", math.Sqrt(4*Tc*b2/(0.90*p*g.Fu)))
	} else {
		tc = c.Let("t_c", "sqrt(1.67*4*T_c*b_2/(p_e*F_up))", "mm", math.Sqrt(1.67*4*Tc*b2/(p*g.Fu)))
	}
	alpha := c.Let("alpha", "(pow(t_c/t, 2) - 1)/(delta*(1 + rho))", "", ((tc/g.Tp)*(tc/g.Tp)-1)/(delta*(1+rho)))
	ratio := (g.Tp / tc) * (g.Tp / tc)
	q := 1.0
	switch {
	case alpha > 1:
		q = ratio * (1 + delta)
	case alpha >= 0:
		q = ratio * (1 + delta*alpha)
	}
	Q := c.Let("Q", "when(alpha < 0, 1, pow(t/t_c, 2)*(1 + delta*min(alpha, 1)))", "", q)
	c.Compare(g.T, c.Let("T_avail", "T_c*Q", "N", Tc*Q))
})

var boltRules = []strength.Rule[strength.Bolt]{
	{Of: boltShear, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltShear.Check(c, boltShearGivens{V: f.V, D: f.D, Fu: f.Fub, Threads: strength.Flag(f.ThreadsIn), Lj: f.Joint})
	}},
	{Of: boltTension, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltTension.Check(c, boltTensionGivens{T: f.T, D: f.D, Fu: f.Fub})
	}},
	{Of: boltCombined, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltCombined.Check(c, boltCombinedGivens{T: f.T, V: f.V, D: f.D, Fu: f.Fub, Threads: strength.Flag(f.ThreadsIn)})
	}},
}

// slipRules hold a bolt tightened as the code has it, in the hole that its group has; one tightened less the code does not know.
var slipRules = []strength.Rule[strength.Bolt]{
	{Of: boltSlip, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltSlip.Check(c, slipGivens{V: f.V, T: f.T, N: 1, Tb: 0.70 * f.Fub * f.As, Mu: f.SlipC, Ns: 1, Hole: looseHole(f.D, f.Dh), Du: 1.13})
		practice.FullPreload(c, f)
		if f.Fub < leastPretensioned {
			c.RuleOut("the code pretensions high-strength bolts alone, and these are milder")
		}
	}},
}

// leastPretensioned is under the tensile strength of the mildest bolts that are pretensioned, 105 ksi of A325 over 1 in before F3125. AISC 360-22 J3.2, from
// memory.
const leastPretensioned = 720

// looseHole is the place of an oversize hole in boltSlip's choice for one over the standard: 1/16 in over the bolt, 1/8 in from 1 in up; 2 and 3 mm for the
// metric bolts of Table J3.3M.
func looseHole(d, dh float64) float64 {
	over := inch / 16
	if d >= inch {
		over = inch / 8
	}
	for _, row := range j34m {
		if d == row.d {
			if over = 2; d >= 24 {
				over = 3
			}
		}
	}
	return 2 * strength.Flag(dh-d > over+1e-6)
}

var bearingRules = []strength.Rule[strength.BoltBearing]{
	{Of: boltBearing, Check: func(c *strength.Calc, f *strength.BoltBearing) {
		boltBearing.Check(c, boltBearingGivens{V: f.V, D: f.D, Dh: f.Dh, T: f.T, Edge: f.Edge, Pitch: f.Pitch, Fu: f.Fu})
	}},
	{Of: boltSpacing, Check: func(c *strength.Calc, f *strength.BoltBearing) {
		boltSpacing.Check(c, boltSpacingGivens{D: f.D, S: f.Pitch})
		if f.Pitch == 0 {
			c.Skip("no other hole is near")
		}
	}},
	{Of: boltHole, Check: func(c *strength.Calc, f *strength.BoltBearing) {
		size := holeSize(f.D)
		boltHole.Check(c, boltHoleGivens{Dh: f.Dh, Size: float64(max(size, 0))})
		c.SkipUnless(size >= 0, "the tables have no bolt of this size")
	}},
}

var pryingRules = []strength.Rule[strength.Prying]{
	{Of: prying, Check: func(c *strength.Calc, f *strength.Prying) {
		prying.Check(c, pryingGivens{
			T: f.T, V: f.V, B: f.B, A: f.A, P: f.P, D: f.D, Dh: f.Dh, Tp: f.Tply, Fu: f.Fu, Fub: f.Fub, Threads: strength.Flag(f.ThreadsIn),
		})
	}},
}
