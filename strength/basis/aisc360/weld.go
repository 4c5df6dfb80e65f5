package aisc360

// Fillet welds: AISC 360-22 J2. No increase for load angle: it needs strain compatibility, which an elastic line does not give.

import (
	"lugwright/strength"
)

type filletGivens struct {
	Q    float64 `sym:"q_r" unit:"N/mm" min:"0" max:"1e6" is:"force per length at the worst point of the weld"`
	W    float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
}

// filletStrength is the strength of a fillet on its throat, k_ds = 1: AISC 360-22 J2.4(a), Eq. J2-4, and Table J2.5.
var filletStrength = strength.Define(strength.Identity{
	ID: "fillet-strength", Title: "strength of the fillet weld",
	Clause: clause("J2.4(a), Eq. J2-4 and Table J2.5", "k_ds = 1"),
	Demand: "q_r", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g filletGivens) {
	c.Compare(g.Q, filletLine(c, g.W, g.FEXX, "q_c"))
})

func filletLine(c *strength.Calc, w, fexx float64, symbol string) float64 {
	throat := c.Let("a_w", "0.707*w", "mm", 0.707*w)
	qn := c.Let("q_n", "0.60*F_EXX*a_w", "N/mm", 0.60*fexx*throat)
	return c.Available(symbol, "q_n", "N/mm", qn, 0.75, 2.00)
}

type baseMetalGivens struct {
	Q     float64 `sym:"q_r" unit:"N/mm" min:"0" max:"1e6" is:"force per length at the worst point of the weld"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate beside the weld that shears first"`
	Sides float64 `sym:"n" unit:"" min:"1" max:"2" step:"1" is:"weld lines that share the thickness"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
}

// filletBaseMetal is shear rupture of the plate beside its welds: AISC 360-22 J2.4 with J4.2(b), Eq. J4-4.
var filletBaseMetal = strength.Define(strength.Identity{
	ID: "fillet-base-metal", Title: "plate beside the fillet weld",
	Clause: clause("J2.4 and J4.2(b), Eq. J4-4", ""),
	Demand: "q_r", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g baseMetalGivens) {
	qn := c.Let("q_n", "0.60*F_u*t/n", "N/mm", 0.60*g.Fu*g.T/g.Sides)
	c.Compare(g.Q, c.Available("q_c", "q_n", "N/mm", qn, 0.75, 2.00))
})

type filletSizeGivens struct {
	W     float64 `sym:"w" unit:"mm" min:"0" max:"100" default:"0" is:"fillet leg; 0 when only the least is wanted"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the thinner part"`
	Table float64 `sym:"table" choices:"lesser of both columns|inch|mm" default:"0" is:"column of the table"`
}

// filletSize is the least leg for the thinner part joined: AISC 360-22 J2.2b(a), Table J2.4. The table's inch and mm columns are
// not the same sizes; the lesser leg and the greater thickness of each row are taken, so that neither a 3/16 in nor a 5 mm
// weld is refused to a shop that works in the other's units.
var filletSize = strength.Define(strength.Identity{
	ID: "fillet-minimum-leg", Title: "least leg of the fillet weld",
	Clause: clause("J2.2b(a), Table J2.4", ""),
	Demand: "w_min", Capacity: "w", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g filletSizeGivens) {
	switch g.Table {
	case 1:
		c.Least(c.Let("w_min", "when(t <= 1/4*in, 2, when(t <= 1/2*in, 3, when(t <= 3/4*in, 4, 5)))/16*in", "mm", leg(g.T, inch/4, inch/2, inch*3/4, inch/16, 2, 3, 4, 5)), g.W)
	case 2:
		c.Least(c.Let("w_min", "when(t <= 6*mm, 3, when(t <= 13*mm, 5, when(t <= 19*mm, 6, 8)))*mm", "mm", leg(g.T, 6, 13, 19, 1, 3, 5, 6, 8)), g.W)
	default:
		c.Least(c.Let("w_min", "when(t <= 1/4*in, 3*mm, when(t <= 13*mm, 3/16*in, when(t <= 3/4*in, 6*mm, 5/16*in)))", "mm",
			leg(g.T, inch/4, 13, inch*3/4, 1, 3, 3.0/16*inch, 6, 5.0/16*inch)), g.W)
	}
})

// leg is the entry of a table with three limits of thickness and four legs.
func leg(t, t1, t2, t3, unit, w1, w2, w3, w4 float64) float64 {
	switch {
	case t <= t1:
		return w1 * unit
	case t <= t2:
		return w2 * unit
	case t <= t3:
		return w3 * unit
	}
	return w4 * unit
}

type filletEdgeGivens struct {
	W float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	T float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate along whose edge the fillet runs"`
}

// filletEdge is the greatest leg along the edge of a plate, so that the edge does not melt away: AISC 360-22 J2.2b(b), the thickness
// under 1/4 in, 1/16 in less from there on.
var filletEdge = strength.Define(strength.Identity{
	ID: "fillet-maximum-leg", Title: "greatest leg of a fillet along an edge",
	Clause: clause("J2.2b(b)", ""),
	Demand: "w", Capacity: "w_max", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g filletEdgeGivens) {
	c.Compare(g.W, c.Let("w_max", "when(t < 1/4*in, t, t - 1/16*in)", "mm", greatestLeg(g.T)))
})

func greatestLeg(t float64) float64 {
	if t < inch/4 {
		return t
	}
	return t - inch/16
}

type filletLengthGivens struct {
	W float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	L float64 `sym:"l" unit:"mm" min:"0.1" max:"1e5" is:"length of the shortest run"`
}

// filletLength is the least length of a run: AISC 360-22 J2.2b(c), four times the leg. Within a bracket a shorter run counts with a
// leg of a quarter of its length, as the clause allows, and a note says so.
var filletLength = strength.Define(strength.Identity{
	ID: "fillet-minimum-length", Title: "least length of a fillet run",
	Clause: clause("J2.2b(c)", ""),
	Demand: "l_min", Capacity: "l", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g filletLengthGivens) {
	c.Compare(c.Let("l_min", "4*w", "mm", 4*g.W), g.L)
})

type flowGivens struct {
	Q    float64 `sym:"q_r" unit:"N/mm" min:"0" max:"1e6" is:"shear flow V Q/I between web and flange"`
	N    float64 `sym:"n" unit:"" min:"1" max:"100" step:"1" is:"weld lines that carry it"`
	W    float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thinner part"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part"`
}

// filletFlow is shear flow between the plates of one section against its welds and the plate beside them: elementary beam theory for
// the flow, AISC 360-22 Eq. J2-4 and J4-4 for the strength.
var filletFlow = strength.Define(strength.Identity{
	ID: "fillet-shear-flow", Title: "shear flow in the weld between gusset and plate",
	Clause: clause("J2.4, Eq. J2-4; J4.2(b), Eq. J4-4", "flow by elementary beam theory"),
	Demand: "q_r", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g flowGivens) {
	c.Compare(g.Q, flowStrength(c, &g))
})

// flowCapacity is what no load changes at a weld between web and flange.
const flowCapacity = 0

func flowStrength(c *strength.Calc, g *flowGivens) float64 {
	if known, ok := c.Known(flowCapacity); ok {
		return known
	}
	line := filletLine(c, g.W, g.FEXX, "q_w")
	qb := c.Let("q_nb", "0.60*F_u*t", "N/mm", 0.60*g.Fu*g.T)
	base := c.Available("q_b", "q_nb", "N/mm", qb, 0.75, 2.00)
	return c.Keep(flowCapacity, c.Let("q_c", "min(n*q_w, q_b)", "N/mm", min(g.N*line, base)))
}

// throated guards the rules that speak of fillets, and of groove welds of the same throat.
func throated(c *strength.Calc, f *strength.WeldLine) {
	c.SkipUnless(f.Throated(), "the weld is neither a fillet nor of partial penetration")
}

var weldRules = []strength.Rule[strength.WeldLine]{
	{Of: filletStrength, Check: func(c *strength.Calc, f *strength.WeldLine) {
		filletStrength.Check(c, filletGivens{Q: f.Q, W: f.Leg, FEXX: f.FEXX})
		c.SkipUnless(f.Fillet(), "the weld is no fillet")
	}},
	{Of: pjpLine, Check: func(c *strength.Calc, f *strength.WeldLine) {
		pjpLine.Check(c, pjpLineGivens{Q: f.Q, E: f.Leg, FEXX: f.FEXX, Fu: strength.LeastKnown(f.Fu, f.Fu2)})
		c.SkipUnless(f.PJP(), "the weld is no groove weld of partial penetration")
	}},
	{Of: filletBaseMetal, Check: func(c *strength.Calc, f *strength.WeldLine) {
		t, lines, _, fu := f.BesideWeld()
		filletBaseMetal.Check(c, baseMetalGivens{Q: f.Q, T: t, Sides: lines, Fu: fu})
		throated(c, f)
	}},
}

var weldSizeRules = []strength.Rule[strength.WeldLine]{
	{Of: filletSize, Check: func(c *strength.Calc, f *strength.WeldLine) {
		filletSize.Check(c, filletSizeGivens{W: f.Leg, T: strength.LeastKnown(f.T1, f.T2)})
		c.SkipUnless(f.Fillet(), "the weld is no fillet")
	}},
	{Of: pjpThroat, Check: func(c *strength.Calc, f *strength.WeldLine) {
		pjpThroat.Check(c, throatGivens{E: f.Leg, T: strength.LeastKnown(f.T1, f.T2)})
		c.SkipUnless(f.PJP(), "the weld is no groove weld of partial penetration")
	}},
	{Of: filletEdge, Check: func(c *strength.Calc, f *strength.WeldLine) {
		filletEdge.Check(c, filletEdgeGivens{W: f.Leg, T: f.T1})
		c.SkipUnless(f.AlongEdge && f.Fillet(), "the weld is no fillet along the plate's edge")
	}},
}

var flowRules = []strength.Rule[strength.WeldFlow]{
	{Of: filletFlow, Check: func(c *strength.Calc, f *strength.WeldFlow) {
		filletFlow.Check(c, flowGivens{Q: f.Q, N: f.Lines, W: f.Leg, T: f.T, FEXX: f.FEXX, Fu: strength.LeastKnown(f.Fu, f.Fu2)})
	}, Demand: func(_ *strength.Calc, f *strength.WeldFlow) (float64, strength.Sense) { return f.Q, strength.EitherWay }},
}
