package allowable

// Fillet welds: the resultant on the throat against an allowed shear stress, whatever its direction.

import (
	"math"

	"lugwright/strength"
)

var weldLimits = []strength.Evaluator{filletStrength, filletBaseMetal, filletFlow, cjpLine, cjpStoodOn, plug}

type filletGivens struct {
	Q    float64 `sym:"q_r" unit:"N/mm" min:"0" max:"1e6" is:"force per length at the worst point of the weld"`
	W    float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
}

// filletStrength is the resultant on the throat as shear.
var filletStrength = strength.Define(strength.Identity{
	ID: "fillet-strength", Title: "strength of the fillet weld", Clause: common("resultant on the throat as shear"),
	Demand: "tau", Capacity: "tau_w", Unit: "MPa",
}, func(c *strength.Calc, g filletGivens) {
	tau := c.Let("tau", "q_r/(0.707*w)", "MPa", g.Q/(0.707*g.W))
	c.Compare(tau, allowedFiller(c, g.FEXX))
})

// allowedFiller is the shear stress allowed in filler metal: its tensile strength alone is given, which governs as its yield strength is at
// least 0.8 of it (from memory).
func allowedFiller(c *strength.Calc, fexx float64) float64 {
	ny, nu := c.Factor("n_y"), c.Factor("n_u")
	c.Need(nu >= 1.25*ny, "n_u >= 1.25*n_y", "factors with which the filler's tensile strength governs, its yield strength is not given")
	return c.Let("tau_w", "F_EXX/(sqrt(3)*n_u)", "MPa", fexx/(math.Sqrt(3)*nu))
}

type baseMetalGivens struct {
	Q     float64 `sym:"q_r" unit:"N/mm" min:"0" max:"1e6" is:"force per length at the worst point of the weld"`
	W     float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate"`
	Sides float64 `sym:"n" unit:"" min:"1" max:"2" step:"1" is:"weld lines that share the thickness"`
	Fy    float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
}

// filletBaseMetal is shear of the plate on the face that the weld fuses to, and through its thickness beside the weld.
var filletBaseMetal = strength.Define(strength.Identity{
	ID: "fillet-base-metal", Title: "plate beside the fillet weld", Clause: common("shear on the fused face and through the thickness"),
	Demand: "q_r", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g baseMetalGivens) {
	tau := allowedShear(c, allowed(c, g.Fy, g.Fu))
	c.Compare(g.Q, c.Let("q_c", "tau_all*min(w, t/n)", "N/mm", tau*min(g.W, g.T/g.Sides)))
})

type flowGivens struct {
	Q    float64 `sym:"q_r" unit:"N/mm" min:"0" max:"1e6" is:"shear flow V Q/I between web and flange"`
	N    float64 `sym:"n" unit:"" min:"1" max:"100" step:"1" is:"weld lines that carry it"`
	W    float64 `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thinner part"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"0" max:"2500" default:"0" is:"yield strength of the thinner part; 0 where it is not known, carbon steel alone"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the thinner part"`
}

// filletFlow is shear flow between the plates of one section against its welds and the plate beside them.
var filletFlow = strength.Define(strength.Identity{
	ID: "fillet-shear-flow", Title: "shear flow in the weld between gusset and plate", Clause: common("shear flow of elementary beam theory"),
	Demand: "q_r", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g flowGivens) {
	weld := c.Let("q_w", "n*0.707*w*tau_w", "N/mm", g.N*0.707*g.W*allowedFiller(c, g.FEXX))
	tau := allowedShear(c, allowedBare(c, g.Fy, g.Fu))
	base := c.Let("q_b", "tau_all*min(n*w, t)", "N/mm", tau*min(g.N*g.W, g.T))
	c.Compare(g.Q, c.Let("q_c", "min(q_w, q_b)", "N/mm", min(weld, base)))
})

// throated guards the rules that speak of fillets, and of groove welds of the same throat.
func throated(c *strength.Calc, f *strength.WeldLine) {
	c.SkipUnless(f.Throated(), "the weld is neither a fillet nor of partial penetration")
}

var weldRules = []strength.Rule[strength.WeldLine]{
	{Of: filletStrength, Check: func(c *strength.Calc, f *strength.WeldLine) {
		filletStrength.Check(c, filletGivens{Q: f.Q, W: f.AsFillet(), FEXX: f.FEXX})
		throated(c, f)
	}},
	{Of: filletBaseMetal, Check: func(c *strength.Calc, f *strength.WeldLine) {
		t, lines, fy, fu := f.BesideWeld()
		filletBaseMetal.Check(c, baseMetalGivens{Q: f.Q, W: f.Leg, T: t, Sides: lines, Fy: fy, Fu: fu})
		throated(c, f)
	}},
}

var flowRules = []strength.Rule[strength.WeldFlow]{
	{Of: filletFlow, Check: func(c *strength.Calc, f *strength.WeldFlow) {
		filletFlow.Check(c, flowGivens{Q: f.Q, N: f.Lines, W: f.Leg, T: f.T, FEXX: f.FEXX, Fu: strength.LeastKnown(f.Fu, f.Fu2)})
	}, Demand: func(_ *strength.Calc, f *strength.WeldFlow) (float64, strength.Sense) { return f.Q, strength.EitherWay }},
}
