package allowable

// Groove welds of complete penetration, whose strength is that of the plates, and plugs.

import (
	"math"

	"lugwright/strength"
)

type cjpGivens struct {
	N    float64 `sym:"n_r" unit:"N/mm" min:"0" max:"1e6" is:"force per length across the joint, square to the weld's axis"`
	V    float64 `sym:"v_r" unit:"N/mm" min:"0" max:"1e6" is:"shear per length"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness that the force goes through: the thinner part's, or half of it for each of its faces"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"0" max:"2500" default:"0" is:"yield strength of the weaker part; 0 where it is not known, carbon steel alone"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
}

// cjpLine is the von Mises stress in the metal at a groove weld that goes through the plate.
var cjpLine = strength.Define(strength.Identity{
	ID: "cjp-line", Title: "metal at the complete-penetration weld", Clause: common("von Mises stress"),
	Demand: "sigma_v", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g cjpGivens) {
	c.Need(g.FEXX >= g.Fu, "F_EXX >= F_u", "filler metal no weaker than the plates")
	v := c.Let("sigma_v", "sqrt(pow(n_r, 2) + 3*pow(v_r, 2))/t", "MPa", math.Sqrt(g.N*g.N+3*(g.V*g.V))/g.T)
	c.Compare(v, allowedBare(c, g.Fy, g.Fu))
})

type stoodOnGivens struct {
	Q     float64 `sym:"q_r" unit:"N/mm" min:"0" max:"1e6" is:"force per length at the worst point of either face of the plate that stands"`
	T     float64 `sym:"t_b" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate that it stands on"`
	Sides float64 `sym:"n" unit:"" min:"1" max:"2" step:"1" is:"weld lines that share the thickness"`
	Fy    float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of that plate"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of that plate"`
}

// cjpStoodOn is shear through the thickness of the plate that a groove weld through another stands on.
var cjpStoodOn = strength.Define(strength.Identity{
	ID: "cjp-base-metal", Title: "plate that the complete-penetration weld stands on", Clause: common("the resultant as shear through the thickness"),
	Demand: "q_r", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g stoodOnGivens) {
	tau := allowedShear(c, allowed(c, g.Fy, g.Fu))
	c.Compare(g.Q, c.Let("q_c", "tau_all*t_b/n", "N/mm", tau*g.T/g.Sides))
})

type plugGivens struct {
	P    float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"shear force on one weld, in the faying plane"`
	Pull float64 `sym:"T_r" unit:"N" min:"0" max:"1e9" default:"0" is:"force square to the faying plane"`
	D    float64 `sym:"d" unit:"mm" min:"1" max:"500" is:"diameter of the hole, or width of the slot"`
	L    float64 `sym:"l" unit:"mm" min:"1" max:"5000" is:"length over the round ends, of a plug its diameter"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the part with the hole"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"0" max:"2500" default:"0" is:"yield strength of the weaker part; 0 where it is not known, carbon steel alone"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part"`
}

// plug is shear on the area of the hole, in the filler and in the parts that it fuses to. A hole that no electrode gets to the bottom of holds nothing: 8 mm over the
// thickness, as EN 1993-1-8, 4.3.5, has it (from memory).
var plug = strength.Define(strength.Identity{
	ID: "plug-weld", Title: "plug or slot weld in shear", Clause: common("shear on the area of the hole"),
	Demand: "tau", Capacity: "tau_c", Unit: "MPa",
}, func(c *strength.Calc, g plugGivens) {
	c.Need(g.L >= g.D, "l >= d", "a slot is no shorter than wide")
	c.Need(g.D >= g.T+8, "d >= t + 8*mm", "room for the electrode")
	c.Need(g.Pull <= 0, "T_r <= 0*N", "a plug holds in the faying plane alone")
	Aw := c.Let("A_w", "d*(l - d) + pi*pow(d, 2)/4", "mm^2", g.D*(g.L-g.D)+math.Pi*(g.D*g.D)/4)
	tau := c.Let("tau", "P_r/A_w", "MPa", g.P/Aw)
	w := allowedFiller(c, g.FEXX)
	base := allowedShear(c, allowedBare(c, g.Fy, g.Fu))
	c.Compare(tau, c.Let("tau_c", "min(tau_w, tau_all)", "MPa", min(w, base)))
})

var cjpRules = []strength.Rule[strength.WeldLine]{
	{Of: cjpLine, Check: func(c *strength.Calc, f *strength.WeldLine) {
		t, fy, fu := f.Metal()
		cjpLine.Check(c, cjpGivens{N: f.N, V: f.V, T: t, Fy: fy, Fu: fu, FEXX: f.FEXX})
		f.GuardCJP(c)
	}},
	{Of: cjpStoodOn, Check: func(c *strength.Calc, f *strength.WeldLine) {
		t, lines, fy, fu := f.StoodOn()
		cjpStoodOn.Check(c, stoodOnGivens{Q: f.Q, T: t, Sides: lines, Fy: fy, Fu: fu})
		f.GuardStood(c)
	}},
}

var cjpFlowRules = []strength.Rule[strength.WeldFlow]{
	{Of: cjpLine, Check: func(c *strength.Calc, f *strength.WeldFlow) {
		cjpLine.Check(c, cjpGivens{V: f.Q, T: f.T, Fy: strength.LeastKnown(f.Fy, f.Fy2), Fu: strength.LeastKnown(f.Fu, f.Fu2), FEXX: f.FEXX})
	}},
}

var plugRules = []strength.Rule[strength.WeldLine]{
	{Of: plug, Check: func(c *strength.Calc, f *strength.WeldLine) {
		plug.Check(c, plugGivens{
			P: f.V * f.Run, Pull: f.N * f.Run, D: f.Width, L: f.Run, T: f.T1, FEXX: f.FEXX,
			Fy: strength.LeastKnown(f.Fy, f.Fy2), Fu: strength.LeastKnown(f.Fu, f.Fu2),
		})
		f.GuardPlug(c)
	}},
}
