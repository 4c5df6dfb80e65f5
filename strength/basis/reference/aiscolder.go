package reference

// Welds after older US practice: allowable stress on the throat, textbook combinations, and the tables of the second LRFD Manual. Published cases
// follow these; no bracket is checked on them.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/statics"
)

const (
	usInch = 25.4                                            // mm
	usKsi  = 1000 * 0.45359237 * 9.80665 / (usInch * usInch) // MPa, exact
)

// olderWelds is the card of allowable stress on the throat, as US textbooks and codes before 1990 have it.
var olderWelds = &strength.Basis{
	Card: strength.Card{
		Name: "US weld stress, older", Document: "US textbooks and codes before 1990", Edition: "various",
		Methods: []strength.Method{strength.Allowable}, ServiceFactor: map[strength.Method]float64{strength.Allowable: 1},
		FactorSource: "service loads as they are", ReferenceOnly: true,
	},
	Limits: []strength.Evaluator{
		olderFillet, olderBaseMetal, olderWeldGroup, weldBending, weldBendingThroat, weldTorsion, weldPattern,
	},
}

// lrfd2 is the card of the second LRFD Manual: its C holds phi = 0.75.
var lrfd2 = &strength.Basis{
	Card: strength.Card{
		Name: "AISC LRFD Manual 2nd ed.", Document: "AISC LRFD Manual", Edition: "2nd ed., 1994",
		Methods: []strength.Method{strength.LRFD}, ServiceFactor: map[strength.Method]float64{strength.LRFD: 1.6},
		FactorSource: "as AISC 360-22 here", ReferenceOnly: true,
	},
	Limits: []strength.Evaluator{lrfd2WeldGroup},
}

func olderClause(section, words string) strength.Clause {
	return strength.Clause{Document: "US weld practice", Edition: "before 1990", Section: section, Words: words}
}

type olderFilletGivens struct {
	P    float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force on all lines"`
	W    float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	L    float64 `sym:"l" unit:"mm" min:"0.1" max:"1e5" is:"length of each line"`
	N    float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" step:"1" is:"lines alike"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" default:"482.63301051" is:"filler metal strength, E70 when left out"`
	Tau  float64 `sym:"tau_given" unit:"MPa" min:"0" max:"1000" default:"0" is:"allowable shear stress on the throat; 0 takes 0.30 F_EXX"`
}

// olderFillet is a fillet at an allowable stress on its throat, 0.30 F_EXX (21 ksi for E70) unless another is given, whatever the load's angle.
var olderFillet = strength.Define(strength.Identity{
	ID: "fillet-lines", Title: "fillet welds at an allowable stress on the throat",
	Clause: olderClause("fillet welds", "0.30 F_EXX on the throat"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g olderFilletGivens) {
	tau := g.Tau
	if tau == 0 {
		tau = 0.30 * g.FEXX
	}
	tau = c.Let("tau_all", "when(tau_given > 0*MPa, tau_given, 0.30*F_EXX)", "MPa", tau)
	f := c.Let("f", "0.707*w*tau_all", "N/mm", 0.707*g.W*tau)
	c.Let("l_req", "P_r/(n*f)", "mm", g.P/(g.N*f))
	c.Let("w_req", "P_r/(0.707*n*l*tau_all)", "mm", g.P/(0.707*g.N*g.L*tau))
	c.Let("tau_r", "P_r/(0.707*w*n*l)", "MPa", g.P/(0.707*g.W*g.N*g.L))
	c.Compare(g.P, c.Let("P_c", "n*f*l", "N", g.N*f*g.L))
})

type olderBaseGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force on all lines"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate, or leg of the weld where it is taken on the leg"`
	L  float64 `sym:"l" unit:"mm" min:"0.1" max:"1e5" is:"length of each line"`
	N  float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" step:"1" is:"lines alike"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
}

// olderBaseMetal is the plate beside a weld at 0.40 F_y in shear.
var olderBaseMetal = strength.Define(strength.Identity{
	ID: "base-metal-lines", Title: "plate along the weld at an allowable shear stress",
	Clause: olderClause("base metal", "0.40 F_y in shear"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g olderBaseGivens) {
	tau := c.Let("tau_all", "0.40*F_y", "MPa", 0.40*g.Fy)
	c.Let("tau_r", "P_r/(t*l*n)", "MPa", g.P/(g.T*g.L*g.N))
	c.Compare(g.P, c.Let("P_c", "tau_all*t*l*n", "N", tau*g.T*g.L*g.N))
})

type olderGroupGivens struct {
	X1  []float64 `sym:"x1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	Y1  []float64 `sym:"y1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	X2  []float64 `sym:"x2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	Y2  []float64 `sym:"y2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	Px  float64   `sym:"P_x" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along x"`
	Py  float64   `sym:"P_y" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along y"`
	Pz  float64   `sym:"P_z" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force out of the plane"`
	Mx  float64   `sym:"M_x" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment about x through the centroid"`
	My  float64   `sym:"M_y" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment about y through the centroid"`
	Mz  float64   `sym:"M_z" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"torsion about z through the centroid"`
	W   float64   `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	Tau float64   `sym:"tau_all" unit:"MPa" min:"1" max:"1000" is:"allowable shear stress on the throat"`
}

// olderWeldGroup is a flat group as lines of unit throat, components added as vectors, against an allowable stress on the throat.
var olderWeldGroup = strength.Define(strength.Identity{
	ID: "weld-group-elastic", Title: "weld group as lines at an allowable stress",
	Clause: olderClause("weld treated as a line", "components added as vectors"),
	Demand: "q_r", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g olderGroupGivens) {
	segs, ok := weldSegments(c, g.X1, g.Y1, g.X2, g.Y2)
	if !ok {
		return
	}
	lines := make([]statics.WeldSegment, len(segs))
	for i, s := range segs {
		lines[i] = statics.WeldSegment{A: statics.Vec3{X: s.A.X, Y: s.A.Y}, B: statics.Vec3{X: s.B.X, Y: s.B.Y}, Weight: 1}
	}
	group, err := statics.NewWeldGroup(lines)
	if !taken(c, err) {
		return
	}
	peak, err := group.Peak(statics.Vec3{X: g.Px, Y: g.Py, Z: g.Pz}, statics.Vec3{X: g.Mx, Y: g.My, Z: g.Mz})
	if !taken(c, err) {
		return
	}
	Jx, Jy, Jz := group.Inertia()
	aw := c.Let("a_w", "0.707*w", "mm", 0.707*g.W)
	L := c.Solved("L_w", "length of the welds, summed", "mm", group.LengthMM)
	c.Solved("x_bar", "centroid of the welds", "mm", group.Centroid.X)
	c.Solved("y_bar", "centroid of the welds", "mm", group.Centroid.Y)
	c.Solved("I_x", "moment of inertia of the lines about x, summed", "mm^3", Jx)
	c.Solved("I_y", "moment of inertia of the lines about y, summed", "mm^3", Jy)
	c.Solved("I_p", "moment of inertia of the lines about z, summed", "mm^3", Jz)
	c.Let("A_t", "a_w*L_w", "mm^2", aw*L)
	c.Let("I_xt", "a_w*I_x", "mm^4", aw*Jx)
	c.Let("I_yt", "a_w*I_y", "mm^4", aw*Jy)
	c.Let("I_pt", "a_w*I_p", "mm^4", aw*Jz)
	q := c.Solved("q_r", "greatest force per length", "N/mm", peak.Q.Norm())
	c.Let("tau_r", "q_r/a_w", "MPa", q/aw)
	c.Let("w_req", "q_r/(0.707*tau_all)", "mm", q/(0.707*g.Tau))
	qc := c.Let("q_c", "a_w*tau_all", "N/mm", aw*g.Tau)
	if q > 0 {
		c.Let("k_P", "q_c/q_r", "", qc/q)
	}
	c.Compare(q, qc)
})

// weldSegments makes segments of lists that fit; else the verdict is outside the rule.
func weldSegments(c *strength.Calc, x1, y1, x2, y2 []float64) ([]statics.ICWeldSegment, bool) {
	if len(y1) != len(x1) || len(x2) != len(x1) || len(y2) != len(x1) {
		c.Verdict, c.Why = strength.Outside, "each weld has x1, y1, x2 and y2; the lists have different lengths"
		c.Compare(math.Inf(1), 0)
		return nil, false
	}
	out := make([]statics.ICWeldSegment, len(x1))
	for i := range out {
		out[i] = statics.ICWeldSegment{A: statics.Vec2{X: x1[i], Y: y1[i]}, B: statics.Vec2{X: x2[i], Y: y2[i]}}
	}
	return out, true
}

// taken turns a refusal of statics into a verdict outside the rule, in its own words.
func taken(c *strength.Calc, err error) bool {
	if err != nil {
		c.Verdict, c.Why = strength.Outside, err.Error()
		c.Compare(math.Inf(1), 0)
	}
	return err == nil
}

type weldBendingGivens struct {
	V    float64 `sym:"V" unit:"N" min:"0" max:"1e9" is:"shear force"`
	M    float64 `sym:"M" unit:"N*mm" min:"0" max:"1e12" is:"bending moment"`
	A    float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"throat area"`
	I    float64 `sym:"I" unit:"mm^4" min:"0.1" max:"1e12" is:"moment of inertia of the throats"`
	C    float64 `sym:"c" unit:"mm" min:"0" max:"1e5" is:"distance of the furthest point from the centroid"`
	Rule float64 `sym:"rule" choices:"vectors|maximum shear" default:"0" is:"how the two are combined: at right angles in full, or bending halved as a normal stress"`
	Ssy  float64 `sym:"S_sy" unit:"MPa" min:"1" max:"2000" is:"shear strength or allowable shear stress"`
}

// weldBending is a weld in shear and bending: textbooks add M c/I to V/A as vectors, or take the maximum shear, which halves it.
var weldBending = strength.Define(strength.Identity{
	ID: "weld-bending-stress", Title: "weld in shear and bending",
	Clause: olderClause("textbook, weld in bending", "vectors, or maximum shear stress"),
	Demand: "tau", Capacity: "S_sy", Unit: "MPa",
}, func(c *strength.Calc, g weldBendingGivens) {
	tau1 := c.Let("tau_1", "V/A", "MPa", g.V/g.A)
	tau2 := c.Let("tau_2", "M*c/I", "MPa", g.M*g.C/g.I)
	part := c.Let("k_b", "when(rule > 0, 1/2, 1)", "", halved(g.Rule))
	tau := c.Let("tau", "sqrt(pow(tau_1, 2) + pow(k_b*tau_2, 2))", "MPa", math.Sqrt(tau1*tau1+(part*tau2)*(part*tau2)))
	if tau > 0 {
		c.Let("n", "S_sy/tau", "", g.Ssy/tau)
	}
	c.Compare(tau, g.Ssy)
})

func halved(rule float64) float64 {
	if rule > 0 {
		return 0.5
	}
	return 1
}

type weldThroatGivens struct {
	P    float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force"`
	E    float64 `sym:"e" unit:"mm" min:"0" max:"1e5" is:"distance of the force from the plane of the welds"`
	A    float64 `sym:"A_1" unit:"mm" min:"0.1" max:"1e6" is:"area of the welds for a throat of 1"`
	I    float64 `sym:"I_1" unit:"mm^3" min:"0.1" max:"1e12" is:"moment of inertia of the welds for a throat of 1"`
	C    float64 `sym:"c" unit:"mm" min:"0" max:"1e5" is:"distance of the furthest point from the centroid"`
	Rule float64 `sym:"rule" choices:"vectors|maximum shear" default:"0" is:"how the two are combined: at right angles in full, or bending halved as a normal stress"`
	Tau  float64 `sym:"tau_all" unit:"MPa" min:"1" max:"2000" is:"allowable shear stress on the throat"`
	W    float64 `sym:"w" unit:"mm" min:"0.1" max:"200" default:"10" is:"leg of the weld"`
}

// weldBendingThroat is the throat that a weld in shear and bending wants, by either combination.
var weldBendingThroat = strength.Define(strength.Identity{
	ID: "weld-bending-throat", Title: "throat for shear and bending",
	Clause: olderClause("textbook, weld in bending", "vectors, or maximum shear stress"),
	Demand: "leg", Capacity: "w", Unit: "mm",
}, func(c *strength.Calc, g weldThroatGivens) {
	q1 := c.Let("q_1", "P/A_1", "N/mm", g.P/g.A)
	q2 := c.Let("q_2", "P*e*c/I_1", "N/mm", g.P*g.E*g.C/g.I)
	part := c.Let("k_b", "when(rule > 0, 1/2, 1)", "", halved(g.Rule))
	q := c.Let("q", "sqrt(pow(q_1, 2) + pow(k_b*q_2, 2))", "N/mm", math.Sqrt(q1*q1+(part*q2)*(part*q2)))
	throat := c.Let("throat", "q/tau_all", "mm", q/g.Tau)
	c.Compare(c.Let("leg", "throat/0.707", "mm", throat/0.707), g.W)
})

type weldTorsionGivens struct {
	V   float64 `sym:"V" unit:"N" min:"0" max:"1e9" is:"shear force along y"`
	M   float64 `sym:"M" unit:"N*mm" min:"0" max:"1e12" is:"torsion in the plane of the welds"`
	A   float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"throat area"`
	J   float64 `sym:"J" unit:"mm^4" min:"0.1" max:"1e12" is:"polar moment of inertia of the throats"`
	X   float64 `sym:"r_x" unit:"mm" min:"0" max:"1e5" is:"the point's distance from the centroid across the force"`
	Y   float64 `sym:"r_y" unit:"mm" min:"0" max:"1e5" is:"the point's distance from the centroid along the force"`
	Ssy float64 `sym:"S_sy" unit:"MPa" min:"1" max:"2000" is:"shear strength or allowable shear stress"`
}

// weldTorsion is a flat weld group in shear and torsion at one point.
var weldTorsion = strength.Define(strength.Identity{
	ID: "weld-torsion-stress", Title: "weld in shear and torsion",
	Clause: olderClause("textbook, weld in torsion", "components added as vectors"),
	Demand: "tau", Capacity: "S_sy", Unit: "MPa",
}, func(c *strength.Calc, g weldTorsionGivens) {
	direct := c.Let("tau_1", "V/A", "MPa", g.V/g.A)
	x := c.Let("tau_2x", "M*r_y/J", "MPa", g.M*g.Y/g.J)
	y := c.Let("tau_2y", "M*r_x/J", "MPa", g.M*g.X/g.J)
	tau := c.Let("tau", "sqrt(pow(tau_2x, 2) + pow(tau_1 + tau_2y, 2))", "MPa", math.Sqrt(x*x+(direct+y)*(direct+y)))
	if tau > 0 {
		c.Let("n", "S_sy/tau", "", g.Ssy/tau)
	}
	c.Compare(tau, g.Ssy)
})

type weldPatternGivens struct {
	Kind float64 `sym:"pattern" choices:"one line d|two lines d|two lines b|channel of d and two b|box|circle of diameter d" is:"layout: d upright, b level"`
	B    float64 `sym:"b" unit:"mm" min:"0" max:"1e4" default:"0" is:"width"`
	D    float64 `sym:"d" unit:"mm" min:"0.1" max:"1e4" is:"depth"`
	V    float64 `sym:"V" unit:"N" min:"0" max:"1e9" is:"shear force along d"`
	M    float64 `sym:"M" unit:"N*mm" min:"0" max:"1e12" is:"moment that bends the group about the level axis"`
	W    float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	Tau  float64 `sym:"tau_all" unit:"MPa" min:"1" max:"1000" is:"allowable shear stress on the throat"`
}

// weldPattern holds the properties of welds treated as a line, by pattern: length A_w, section modulus S_w, polar inertia J_w.
var weldPattern = strength.Define(strength.Identity{
	ID: "weld-line-properties", Title: "weld pattern in shear and bending",
	Clause: olderClause("table of welds treated as a line", "from memory"),
	Demand: "q", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g weldPatternGivens) {
	b, d := g.B, g.D
	k := int(g.Kind)
	wide := d
	if k >= 2 && k <= 4 {
		wide = b
	}
	wide = c.Let("b_w", "when(pattern < 1.5, d, when(pattern > 4.5, d, b))", "mm", wide)
	c.Need(wide > 0, "b_w > 0*mm", "the pattern has a width")
	Aw := c.Let("A_w", [...]string{"d", "2*d", "2*b", "2*b + d", "2*b + 2*d", "pi*d"}[k], "mm", [...]float64{d, 2 * d, 2 * b, 2*b + d, 2*b + 2*d, math.Pi * d}[k])
	Sw := c.Let("S_w", [...]string{"d*d/6", "d*d/3", "b*d", "b*d + d*d/6", "b*d + d*d/3", "pi*d*d/4"}[k], "mm^2",
		[...]float64{d * d / 6, d * d / 3, b * d, b*d + d*d/6, b*d + d*d/3, math.Pi * d * d / 4}[k])
	c.Let("I_u", "S_w*d/2", "mm^3", Sw*d/2)
	c.Let("J_w", [...]string{
		"d*d*d/12", "d*(3*b*b + d*d)/6", "b*(3*d*d + b*b)/6", "pow(A_w, 3)/12 - b*b*pow(b + d, 2)/A_w", "pow(b + d, 3)/6", "pi*d*d*d/4",
	}[k], "mm^3", [...]float64{
		d * d * d / 12, d * (3*b*b + d*d) / 6, b * (3*d*d + b*b) / 6, Aw*Aw*Aw/12 - b*b*((b+d)*(b+d))/Aw, (b + d) * (b + d) * (b + d) / 6, math.Pi * d * d * d / 4,
	}[k])
	qv := c.Let("q_v", "V/A_w", "N/mm", g.V/Aw)
	qb := c.Let("q_b", "M/S_w", "N/mm", g.M/Sw)
	q := c.Let("q", "sqrt(pow(q_v, 2) + pow(q_b, 2))", "N/mm", math.Sqrt(qv*qv+qb*qb))
	c.Let("w_req", "q/(0.707*tau_all)", "mm", q/(0.707*g.Tau))
	c.Compare(q, c.Let("q_c", "0.707*w*tau_all", "N/mm", 0.707*g.W*g.Tau))
})

type lrfd2Givens struct {
	X1    []float64 `sym:"x1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	Y1    []float64 `sym:"y1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	X2    []float64 `sym:"x2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	Y2    []float64 `sym:"y2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	P     float64   `sym:"P_u" unit:"N" min:"0" max:"1e9" is:"factored force on the group"`
	Theta float64   `sym:"theta" unit:"rad" min:"-3.141592653589793" max:"3.141592653589793" default:"0" is:"angle of the force from straight down (-y), positive towards +x"`
	E     float64   `sym:"e_x" unit:"mm" min:"-1e6" max:"1e6" is:"level distance of the force from the centroid"`
	W     float64   `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	L     float64   `sym:"l" unit:"mm" min:"0.1" max:"1e5" is:"length to which C belongs"`
	FEXX  float64   `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" default:"482.63301051" is:"filler metal strength, E70 when left out"`
}

// lrfd2WeldGroup is a weld group by the instantaneous centre as the second LRFD Manual tables it: C holds phi = 0.75 and all lines of the group.
var lrfd2WeldGroup = strength.Define(strength.Identity{
	ID: "weld-group-ic", Title: "weld group by the instantaneous centre of rotation",
	Clause: strength.Clause{Document: "AISC LRFD Manual", Edition: "2nd ed.", Section: "Part 8, eccentrically loaded weld groups", Words: "C with phi and all lines"},
	Demand: "P_u", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g lrfd2Givens) {
	segs, ok := weldSegments(c, g.X1, g.Y1, g.X2, g.Y2)
	if !ok {
		return
	}
	group, err := statics.NewICWeld(segs, 0)
	if !taken(c, err) {
		return
	}
	s, k := math.Sincos(g.Theta)
	r, err := group.Solve(statics.Vec2{X: s, Y: -k}, -g.E*k)
	if !taken(c, err) {
		return
	}
	Le := c.Solved("L_e", "sum of the elements' resistance in the force's direction over 0.60 F_EXX a_w, at the instantaneous centre", "mm", r.Factor)
	D := c.Let("D", "16*w/in", "", 16*g.W/usInch)
	c1 := c.Let("C_1", "F_EXX/(70*ksi)", "", g.FEXX/(70*usKsi))
	C := c.Let("C", "0.75*0.60*(70*ksi)*0.707*(in/16)*L_e/l", "N/mm", 0.75*0.60*(70*usKsi)*0.707*(usInch/16)*Le/g.L)
	Pc := c.Let("P_c", "C*C_1*D*l", "N", C*c1*D*g.L)
	c.Let("D_min", "P_u/(C*C_1*l)", "", g.P/(C*c1*g.L))
	c.Compare(g.P, Pc)
})
