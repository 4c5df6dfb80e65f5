package aisc360

// Welds of stated length: fillets with load angle and length factor, lines along and across, base metal, partial penetration, plugs and
// slots, and the rules about their dimensions.

import (
	"math"

	"lugwright/strength"
)

type filletLinesGivens struct {
	P     float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force on all lines"`
	W     float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	L     float64 `sym:"l" unit:"mm" min:"0.1" max:"1e5" is:"length of each line"`
	N     float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" step:"1" is:"lines alike"`
	FEXX  float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
	Theta float64 `sym:"theta" unit:"rad" min:"0" max:"1.5707963267948966" default:"0" is:"angle between the force and the lines"`
	Lines float64 `sym:"lines" choices:"all at one angle|at several angles, or at the end of a rectangular tube in tension" default:"0" is:"whether all lines deform alike"`
	End   float64 `sym:"end_loaded" choices:"no|yes" default:"0" is:"the force enters at the end of the lines"`
	Lost  float64 `sym:"l_x" unit:"mm" min:"0" max:"1000" default:"0" is:"length lost to craters at the ends of each line; AISC counts the whole length"`
}

// filletLines is the strength of equal fillets of stated length: AISC 360-22 J2.4(a), Eq. J2-4 and J2-5, and J2.2b(d), Eq. J2-1. The
// increase for load angle needs lines that deform alike; over 300 legs an end-loaded line counts for 180.
var filletLines = strength.Define(strength.Identity{
	ID: "fillet-lines", Title: "strength of fillet welds of stated length",
	Clause: clause("J2.4(a), Eq. J2-4 and J2-5; J2.2b(d), Eq. J2-1", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g filletLinesGivens) {
	c.Need(c.Let("theta_x", "when(lines > 0, theta, 0)", "", g.Lines*g.Theta) <= 0, "theta_x <= 0", "strain compatibility: k_ds above 1 only where all lines lie at one angle")
	ln := c.Let("l_n", "l - l_x", "mm", g.L-g.Lost)
	c.Need(ln > 0, "l - l_x > 0*mm", "length left between the craters")
	lw := c.Let("l_w", "l_n/w", "", ln/g.W)
	beta := c.Let("beta", "when(end_loaded > 0, when(l_w > 300, 180/l_w, min(1.2 - 0.002*l_w, 1)), 1)", "", longWeld(g.End > 0, lw))
	kds := c.Let("k_ds", "1 + 0.50*pow(sin(theta), 1.5)", "", 1+0.50*math.Pow(math.Sin(g.Theta), 1.5))
	aw := c.Let("a_w", "0.707*w", "mm", 0.707*g.W)
	qn := c.Let("q_n", "0.60*F_EXX*k_ds*a_w", "N/mm", 0.60*g.FEXX*kds*aw)
	Rn := c.Let("R_n", "n*q_n*beta*l_n", "N", g.N*qn*beta*ln)
	qc := c.Available("q_c", "n*q_n", "N/mm", g.N*qn, 0.75, 2.00)
	if beta == 1 && g.P > 0 {
		c.Let("l_req", "P_r/q_c + l_x", "mm", g.P/qc+g.Lost)
	}
	c.Compare(g.P, c.Available("P_c", "R_n", "N", Rn, 0.75, 2.00))
})

func longWeld(endLoaded bool, lw float64) float64 {
	switch {
	case !endLoaded:
		return 1
	case lw > 300:
		return 180 / lw
	}
	return min(1.2-0.002*lw, 1)
}

type filletPairGivens struct {
	P    float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force on the group, through its centroid and along the longitudinal lines"`
	W    float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	Ll   float64 `sym:"l_l" unit:"mm" min:"0.1" max:"1e5" is:"length of all lines along the force"`
	Lt   float64 `sym:"l_t" unit:"mm" min:"0.1" max:"1e5" is:"length of all lines across the force"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
}

// filletPair is a concentric group of lines along and across the force: AISC 360-22 J2.4(b)(2), Eq. J2-6a and J2-6b (J2-10a and b before
// 2022; the new letters are from memory).
var filletPair = strength.Define(strength.Identity{
	ID: "fillet-longitudinal-transverse", Title: "fillet welds along and across the force",
	Clause: clause("J2.4(b)(2)", "the greater of two sums"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g filletPairGivens) {
	aw := c.Let("a_w", "0.707*w", "mm", 0.707*g.W)
	qn := c.Let("q_n", "0.60*F_EXX*a_w", "N/mm", 0.60*g.FEXX*aw)
	l := c.Let("R_nwl", "q_n*l_l", "N", qn*g.Ll)
	t := c.Let("R_nwt", "q_n*l_t", "N", qn*g.Lt)
	Rn := c.Let("R_n", "max(R_nwl + R_nwt, 0.85*R_nwl + 1.5*R_nwt)", "N", max(l+t, 0.85*l+1.5*t))
	c.Compare(g.P, c.Available("P_c", "R_n", "N", Rn, 0.75, 2.00))
})

type baseLinesGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force on the welds"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate beside each line"`
	L  float64 `sym:"l" unit:"mm" min:"0.1" max:"1e5" is:"length of each line"`
	N  float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" step:"1" is:"sections of the plate that shear, one beside each line or pair of lines"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
}

// baseLines is shear rupture of the plate along welds of stated length: AISC 360-22 J2.4 with J4.2(b), Eq. J4-4.
var baseLines = strength.Define(strength.Identity{
	ID: "base-metal-lines", Title: "plate along welds of stated length",
	Clause: clause("J2.4 and J4.2(b), Eq. J4-4", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g baseLinesGivens) {
	Anv := c.Let("A_nv", "n*t*l", "mm^2", g.N*g.T*g.L)
	Rn := c.Let("R_n", "0.60*F_u*A_nv", "N", 0.60*g.Fu*Anv)
	c.Compare(g.P, c.Available("P_c", "R_n", "N", Rn, 0.75, 2.00))
})

type matchingGivens struct {
	W     float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	T     float64 `sym:"t" unit:"mm" min:"0" max:"500" default:"0" is:"thickness of the plate; 0 when only the least is wanted"`
	Sides float64 `sym:"sides" choices:"one|both" is:"sides of the plate that are welded"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
	FEXX  float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" default:"482.63301051" is:"filler metal strength, E70 when left out"`
}

// matching is the plate whose shear rupture is that of its fillets: AISC Manual Part 9, Eq. 9-6 and 9-7 (Eq. 9-2 and 9-3 in older editions),
// which are for E70.
var matching = strength.Define(strength.Identity{
	ID: "weld-matching-thickness", Title: "plate thickness that matches the fillet weld",
	Clause: strength.Clause{Document: "AISC Manual", Edition: "16th ed.", Section: "Part 9, Eq. 9-6 and 9-7", Words: "in proportion to F_EXX for other electrodes"},
	Demand: "t_min", Capacity: "t", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g matchingGivens) {
	D := c.Let("D", "16*w/in", "", 16*g.W/inch)
	k := 3.09
	if g.Sides > 0 {
		k = 6.19
	}
	c.Least(c.Let("t_min", "when(sides > 0, 6.19, 3.09)*(kip/in)*D/F_u*(F_EXX/(70*ksi))", "mm", k*(ksi*inch)*D/g.Fu*(g.FEXX/(70*ksi))), g.T)
})

type pjpGivens struct {
	P    float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force on the weld"`
	E    float64 `sym:"E" unit:"mm" min:"0.5" max:"200" is:"effective throat"`
	L    float64 `sym:"l" unit:"mm" min:"0.1" max:"1e5" is:"length of each line"`
	N    float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" step:"1" is:"lines alike"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
}

// pjpShear is a partial-penetration groove weld in shear: AISC 360-22 J2.4(a), Table J2.5.
var pjpShear = strength.Define(strength.Identity{
	ID: "pjp-shear", Title: "partial-penetration weld in shear",
	Clause: clause("J2.4(a), Table J2.5", "partial penetration, shear"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g pjpGivens) {
	c.Compare(g.P, pjp(c, g, 0.75, 2.00))
})

// pjpTension is a partial-penetration groove weld in tension across its axis: AISC 360-22 J2.4(a), Table J2.5.
var pjpTension = strength.Define(strength.Identity{
	ID: "pjp-tension", Title: "partial-penetration weld in tension",
	Clause: clause("J2.4(a), Table J2.5", "partial penetration, tension normal to the weld axis"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g pjpGivens) {
	c.Compare(g.P, pjp(c, g, 0.80, 1.88))
})

// pjpCompression is a partial-penetration groove weld pressed across its axis in a joint that is not made to bear: AISC 360-22 J2.4(a), Table J2.5.
var pjpCompression = strength.Define(strength.Identity{
	ID: "pjp-compression", Title: "partial-penetration weld in compression",
	Clause: clause("J2.4(a), Table J2.5", "partial penetration, compression in joints not made to bear"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g pjpGivens) {
	c.Compare(g.P, pjpLines(c, g, c.Let("q_n", "0.90*F_EXX*E", "N/mm", 0.90*g.FEXX*g.E), 0.80, 1.88))
})

func pjp(c *strength.Calc, g pjpGivens, phi, omega float64) float64 {
	return pjpLines(c, g, c.Let("q_n", "0.60*F_EXX*E", "N/mm", 0.60*g.FEXX*g.E), phi, omega)
}

func pjpLines(c *strength.Calc, g pjpGivens, qn, phi, omega float64) float64 {
	qc := c.Available("q_c", "n*q_n", "N/mm", g.N*qn, phi, omega)
	if g.P > 0 {
		c.Let("l_req", "P_r/q_c", "mm", g.P/qc)
	}
	return c.Let("P_c", "q_c*l", "N", qc*g.L)
}

type pjpBothGivens struct {
	P     float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force on the weld"`
	Theta float64 `sym:"theta" unit:"rad" min:"0" max:"1.5707963267948966" is:"angle between the force and the lines"`
	E     float64 `sym:"E" unit:"mm" min:"0.5" max:"200" is:"effective throat"`
	L     float64 `sym:"l" unit:"mm" min:"0.1" max:"1e5" is:"length of each line"`
	N     float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" step:"1" is:"lines alike"`
	FEXX  float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
}

// pjpBoth is a partial-penetration groove weld under a slanting force: the strengths of Table J2.5, and the lengths that shear and tension want
// added as squares, as the AISC Design Examples do. The Specification has no rule for both.
var pjpBoth = strength.Define(strength.Identity{
	ID: "pjp-combined", Title: "partial-penetration weld in shear and tension",
	Clause: clause("J2.4(a), Table J2.5", "shear and tension added as squares, after the AISC Design Examples"),
	Demand: "l_req", Capacity: "l", Unit: "mm",
}, func(c *strength.Calc, g pjpBothGivens) {
	qn := c.Let("q_n", "0.60*F_EXX*E", "N/mm", 0.60*g.FEXX*g.E)
	V := c.Let("V_r", "P_r*cos(theta)", "N", g.P*math.Cos(g.Theta))
	T := c.Let("T_r", "P_r*sin(theta)", "N", g.P*math.Sin(g.Theta))
	qv := c.Available("q_cv", "n*q_n", "N/mm", g.N*qn, 0.75, 2.00)
	qt := c.Available("q_ct", "n*q_n", "N/mm", g.N*qn, 0.80, 1.88)
	lv := c.Let("l_v", "V_r/q_cv", "mm", V/qv)
	lt := c.Let("l_t", "T_r/q_ct", "mm", T/qt)
	c.Compare(c.Let("l_req", "sqrt(pow(l_v, 2) + pow(l_t, 2))", "mm", math.Sqrt(lv*lv+lt*lt)), g.L)
})

type pjpLineGivens struct {
	Q    float64 `sym:"q_r" unit:"N/mm" min:"0" max:"1e6" is:"force per length at the worst point of the weld, whichever way"`
	E    float64 `sym:"E" unit:"mm" min:"0.1" max:"200" is:"effective throat"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part"`
}

// pjpLine is a partial-penetration groove weld in a weld group: the resultant as shear on filler and on base metal over the throat, which is the least of Table J2.5's
// strengths: AISC 360-22 J2.4(a), Table J2.5; J4.2(b), Eq. J4-4.
var pjpLine = strength.Define(strength.Identity{
	ID: "pjp-line", Title: "strength of the partial-penetration weld",
	Clause: clause("J2.4(a), Table J2.5; J4.2(b), Eq. J4-4", "the resultant as shear"),
	Demand: "q_r", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g pjpLineGivens) {
	qn := c.Let("q_n", "0.60*min(F_EXX, F_u)*E", "N/mm", 0.60*min(g.FEXX, g.Fu)*g.E)
	c.Compare(g.Q, c.Available("q_c", "q_n", "N/mm", qn, 0.75, 2.00))
})

type throatGivens struct {
	E float64 `sym:"E" unit:"mm" min:"0.5" max:"200" is:"effective throat"`
	T float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the thinner part"`
}

// pjpThroat is the least effective throat: AISC 360-22 J2.1b, Table J2.3, inch column, from memory.
var pjpThroat = strength.Define(strength.Identity{
	ID: "pjp-minimum-throat", Title: "least throat of the partial-penetration weld",
	Clause: clause("J2.1b, Table J2.3", "from memory"),
	Demand: "E_min", Capacity: "E", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g throatGivens) {
	c.Compare(c.Let("E_min", "when(t <= 1/4*in, 2, when(t <= 1/2*in, 3, when(t <= 3/4*in, 4, when(t <= 1.5*in, 5, when(t <= 2.25*in, 6, when(t <= 6*in, 8, 10))))))/16*in", "mm",
		leastThroat(g.T)), g.E)
})

func leastThroat(t float64) float64 {
	for _, row := range [...]struct{ upTo, sixteenths float64 }{{0.25, 2}, {0.5, 3}, {0.75, 4}, {1.5, 5}, {2.25, 6}, {6, 8}} {
		if t <= row.upTo*inch {
			return row.sixteenths / 16 * inch
		}
	}
	return 10.0 / 16 * inch
}

type plugGivens struct {
	P     float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"shear force on all welds, in the faying surface"`
	D     float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"diameter of the hole, or width of the slot"`
	L     float64 `sym:"l" unit:"mm" min:"0" max:"2000" default:"0" is:"length of the slot over its round ends; 0 for a plug"`
	N     float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" is:"welds alike"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"100" is:"thickness of the part with the hole"`
	Depth float64 `sym:"t_w" unit:"mm" min:"0.1" max:"100" is:"depth of weld in the hole"`
	S     float64 `sym:"s" unit:"mm" min:"0" max:"1e4" default:"0" is:"distance between centres, of slots across their length; 0 for one alone"`
	Line  float64 `sym:"s_l" unit:"mm" min:"0" max:"1e4" default:"0" is:"distance between centres of slots that lie on one line; 0 for none"`
	Pull  float64 `sym:"T_r" unit:"N" min:"0" max:"1e9" default:"0" is:"force square to the faying surface"`
	FEXX  float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
}

// plug is a plug or slot weld in shear on its area in the faying surface: AISC 360-22 J2.3 and J2.4(a), Table J2.5; the limits of size are from
// memory.
var plug = strength.Define(strength.Identity{
	ID: "plug-weld", Title: "plug or slot weld in shear",
	Clause: clause("J2.3a, J2.3b and J2.4(a), Table J2.5", "limits of size from memory"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g plugGivens) {
	ls := c.Let("l_s", "when(l > 0*mm, l, d)", "mm", slotLength(g.D, g.L))
	c.Need(ls >= g.D, "l_s >= d", "a slot is no shorter than wide")
	c.Need(g.D >= g.T+5.0/16*inch, "d >= t + 5/16*in", "room for the electrode")
	widest := c.Let("d_max", "when(l > d, 2.25*t_w, max(t + 7/16*in, 2.25*t_w))", "mm", widestPlug(g))
	c.Need(g.D <= widest, "d <= d_max", "not too wide for its depth")
	c.Need(g.L <= 10*g.Depth, "l <= 10*t_w", "not too long for its depth")
	least := c.Let("t_min", "when(t > 5/8*in, max(t/2, 5/8*in), t)", "mm", plugDepth(g.T))
	c.Need(g.Depth >= least, "t_w >= t_min", "filled to the thickness, or over 5/8 in to half of it")
	c.Need(g.Depth <= g.T, "t_w <= t", "no deeper than the part is thick")
	c.Need(g.S == 0 || g.S >= 4*g.D, "s*(s - 4*d) >= 0*mm*mm", "four widths apart")
	c.Need(g.Line == 0 || g.Line >= 2*ls, "s_l*(s_l - 2*l_s) >= 0*mm*mm", "on one line two lengths apart")
	c.Need(g.Pull <= 0, "T_r <= 0*N", "a plug holds in the faying surface alone")
	Aw := c.Let("A_w", "d*(l_s - d) + pi*pow(d, 2)/4", "mm^2", g.D*(ls-g.D)+math.Pi*(g.D*g.D)/4)
	Rn := c.Let("R_n", "0.60*F_EXX*n*A_w", "N", 0.60*g.FEXX*g.N*Aw)
	c.Compare(g.P, c.Available("P_c", "R_n", "N", Rn, 0.75, 2.00))
})

func slotLength(d, l float64) float64 {
	if l > 0 {
		return l
	}
	return d
}

func widestPlug(g plugGivens) float64 {
	if g.L > g.D {
		return 2.25 * g.Depth
	}
	return max(g.T+7.0/16*inch, 2.25*g.Depth)
}

func plugDepth(t float64) float64 {
	if t > 5.0/8*inch {
		return max(t/2, 5.0/8*inch)
	}
	return t
}

type lapGivens struct {
	Lap float64 `sym:"l_lap" unit:"mm" min:"0.1" max:"1e4" is:"overlap of the parts"`
	T   float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the thinner part"`
}

// lap is the least overlap of a lap joint: AISC 360-22 J2.2b, from memory: five thicknesses and 1 in.
var lap = strength.Define(strength.Identity{
	ID: "lap-minimum", Title: "least overlap of a lap joint",
	Clause: clause("J2.2b", "from memory"),
	Demand: "l_min", Capacity: "l_lap", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g lapGivens) {
	c.Compare(c.Let("l_min", "max(5*t, 1*in)", "mm", max(5*g.T, inch)), g.Lap)
})

type barEndGivens struct {
	L float64 `sym:"l" unit:"mm" min:"0.1" max:"1e5" is:"length of the fillet along each side of the bar"`
	B float64 `sym:"b" unit:"mm" min:"0.1" max:"1e4" is:"distance between the two fillets"`
}

// barEnd is the least length of side fillets that alone hold the end of a flat bar: AISC 360-22 J2.2b, from memory.
var barEnd = strength.Define(strength.Identity{
	ID: "bar-end-fillet-length", Title: "least length of the side welds of a flat bar's end",
	Clause: clause("J2.2b", "from memory"),
	Demand: "l_min", Capacity: "l", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g barEndGivens) {
	c.Compare(c.Let("l_min", "b", "mm", g.B), g.L)
})

type returnGivens struct {
	L float64 `sym:"l_ret" unit:"mm" min:"0" max:"1e4" is:"length of the return round the corner"`
	W float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	B float64 `sym:"b" unit:"mm" min:"0.1" max:"1e4" is:"width of the leg or part that must stay flexible"`
}

// filletReturn is the greatest end return where an outstanding leg must stay flexible: AISC 360-22 J2.2b, from memory: four legs and half the
// part's width. Elsewhere no return is called for.
var filletReturn = strength.Define(strength.Identity{
	ID: "fillet-return", Title: "greatest end return of a fillet on a flexible part",
	Clause: clause("J2.2b", "from memory"),
	Demand: "l_ret", Capacity: "l_max", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g returnGivens) {
	c.Compare(g.L, c.Let("l_max", "min(4*w, b/2)", "mm", min(4*g.W, g.B/2)))
})
