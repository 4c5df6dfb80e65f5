package en1993

// Full-penetration butt welds, which are as strong as the weaker part, and plugs: EN 1993-1-8, 4.3.5, 4.7.1 and 4.8.

import (
	"math"

	"lugwright/strength"
)

type cjpGivens struct {
	N   float64 `sym:"n_Ed" unit:"N/mm" min:"0" max:"1e6" is:"force per length across the joint, square to the weld's axis"`
	V   float64 `sym:"v_Ed" unit:"N/mm" min:"0" max:"1e6" is:"shear per length"`
	T   float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness that the force goes through: the thinner part's, or half of it for each of its faces"`
	Fy  float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the weaker part"`
	Fu  float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part"`
	Fue float64 `sym:"f_eu" unit:"MPa" min:"300" max:"1000" is:"tensile strength of the filler metal"`
	Fye float64 `sym:"f_ey" unit:"MPa" min:"0" max:"1000" default:"0" is:"yield strength of the filler metal; 0 where its class states none"`
}

// cjpLine is the design resistance of the weaker part at a full-penetration butt weld, its stresses by the yield criterion.
var cjpLine = strength.Define(strength.Identity{
	ID: "cjp-line", Title: "metal at the full-penetration butt weld",
	Clause: joint("4.7.1(1); EN 1993-1-1, 6.2.1(5), Eq. 6.1", "from memory"),
	Demand: "sigma_v", Capacity: "sigma_Rd", Unit: "MPa",
}, func(c *strength.Calc, g cjpGivens) {
	c.Need(g.Fue >= g.Fu, "f_eu >= f_u", "filler metal with no less tensile strength than the parent metal")
	c.Need(g.Fye == 0 || g.Fye >= g.Fy, "f_ey*(f_ey - f_y) >= 0*MPa*MPa", "nor with less yield strength")
	v := c.Let("sigma_v", "sqrt(pow(n_Ed, 2) + 3*pow(v_Ed, 2))/t", "MPa", math.Sqrt(g.N*g.N+3*(g.V*g.V))/g.T)
	g0 := c.Factor("gamma_M0")
	c.Compare(v, c.Let("sigma_Rd", "f_y/gamma_M0", "MPa", g.Fy/g0))
})

type stoodOnGivens struct {
	Q     float64 `sym:"v_Ed" unit:"N/mm" min:"0" max:"1e6" is:"force per length at the worst point of either face of the plate that stands"`
	T     float64 `sym:"t_b" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate that it stands on"`
	Sides float64 `sym:"n" unit:"" min:"1" max:"2" step:"1" is:"weld lines that share the thickness"`
	Fy    float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of that plate"`
}

// cjpStoodOn is shear through the thickness of the plate that a full-penetration butt weld stands on.
var cjpStoodOn = strength.Define(strength.Identity{
	ID: "cjp-base-metal", Title: "plate that the full-penetration butt weld stands on",
	Clause: joint("4.7.1(1); EN 1993-1-1, 6.2.6(2), Eq. 6.18", "the resultant as shear; from memory"),
	Demand: "v_Ed", Capacity: "v_Rd", Unit: "N/mm",
}, func(c *strength.Calc, g stoodOnGivens) {
	g0 := c.Factor("gamma_M0")
	c.Compare(g.Q, c.Let("v_Rd", "t_b/n*f_y/(sqrt(3)*gamma_M0)", "N/mm", g.T/g.Sides*g.Fy/(math.Sqrt(3)*g0)))
})

type plugGivens struct {
	F     float64 `sym:"F_w_Ed" unit:"N" min:"0" max:"1e9" is:"shear force on one weld, in the faying plane"`
	Pull  float64 `sym:"F_t_Ed" unit:"N" min:"0" max:"1e9" default:"0" is:"force square to the faying plane"`
	D     float64 `sym:"d" unit:"mm" min:"1" max:"500" is:"diameter of the hole, or width of the elongated hole"`
	L     float64 `sym:"l" unit:"mm" min:"1" max:"5000" is:"length over the round ends, of a round hole its diameter"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the part with the hole"`
	Depth float64 `sym:"t_w" unit:"mm" min:"0.1" max:"500" is:"thickness of the weld in the hole"`
	Fu    float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part joined"`
	Beta  float64 `sym:"beta_w" unit:"" min:"0.8" max:"1" is:"correlation factor, Table 4.1: 0.80 S235, 0.85 S275, 0.90 S355, 1.00 S420 and S460"`
}

// plug is a plug weld in shear on the area of its hole; it must not resist applied tension (4.3.5(1)).
var plug = strength.Define(strength.Identity{
	ID: "plug-weld", Title: "plug weld in shear",
	Clause: joint("4.3.5; 4.8(1); 4.5.3.3(4), Eq. 4.4", "4.3.5 and 4.8 from memory"),
	Demand: "F_w_Ed", Capacity: "F_w_Rd", Unit: "N",
}, func(c *strength.Calc, g plugGivens) {
	c.Need(g.L >= g.D, "l >= d", "an elongated hole is no shorter than wide")
	c.Need(g.D >= g.T+8, "d >= t + 8*mm", "a hole at least 8 mm wider than the part is thick, 4.3.5(2)")
	least := c.Let("t_min", "when(t > 16*mm, max(t/2, 16*mm), t)", "mm", plugDepth(g.T))
	c.Need(g.Depth >= least, "t_w >= t_min", "filled to the thickness, or over 16 mm to half of it and 16 mm, 4.3.5(4)")
	c.Need(g.Pull <= 0, "F_t_Ed <= 0*N", "a plug must not resist applied tension, 4.3.5(1)")
	Aw := c.Let("A_w", "d*(l - d) + pi*pow(d, 2)/4", "mm^2", g.D*(g.L-g.D)+math.Pi*(g.D*g.D)/4)
	g2 := c.Factor("gamma_M2")
	f := c.Let("f_vw_d", "f_u/(sqrt(3)*beta_w*gamma_M2)", "MPa", g.Fu/(math.Sqrt(3)*g.Beta*g2))
	c.Compare(g.F, c.Let("F_w_Rd", "f_vw_d*A_w", "N", f*Aw))
})

func plugDepth(t float64) float64 {
	if t > 16 {
		return max(t/2, 16)
	}
	return t
}

var throughLimits = []strength.Evaluator{cjpLine, cjpStoodOn, plug}

var cjpRules = []strength.Rule[strength.WeldLine]{
	{Of: cjpLine, Check: func(c *strength.Calc, f *strength.WeldLine) {
		t, fy, fu := f.Metal()
		cjpLine.Check(c, cjpGivens{N: f.N, V: f.V, T: t, Fy: fy, Fu: fu, Fue: f.FEXX, Fye: f.FEY})
		f.GuardCJP(c)
	}},
	{Of: cjpStoodOn, Check: func(c *strength.Calc, f *strength.WeldLine) {
		t, lines, fy, _ := f.StoodOn()
		cjpStoodOn.Check(c, stoodOnGivens{Q: f.Q, T: t, Sides: lines, Fy: fy})
		f.GuardStood(c)
	}},
}

var cjpFlowRules = []strength.Rule[strength.WeldFlow]{
	{Of: cjpLine, Check: func(c *strength.Calc, f *strength.WeldFlow) {
		cjpLine.Check(c, cjpGivens{V: f.Q, T: f.T, Fy: weaker(f.Fy, f.Fy2), Fu: weaker(f.Fu, f.Fu2), Fue: f.FEXX, Fye: f.FEY})
	}},
}

var plugRules = []strength.Rule[strength.WeldLine]{
	{Of: plug, Check: func(c *strength.Calc, f *strength.WeldLine) {
		fu := weaker(f.Fu, f.Fu2)
		plug.Check(c, plugGivens{F: f.V * f.Run, Pull: f.N * f.Run, D: f.Width, L: f.Run, T: f.T1, Depth: f.Leg, Fu: fu, Beta: correlation(fu)})
		f.GuardPlug(c)
	}},
}
