package aisc360

// Groove welds of complete penetration, whose strength is that of the base metal, and plugs within a bracket.

import (
	"math"

	"lugwright/strength"
)

type cjpGivens struct {
	N    float64 `sym:"n_r" unit:"N/mm" min:"0" max:"1e6" is:"force per length across the joint, square to the weld's axis"`
	V    float64 `sym:"v_r" unit:"N/mm" min:"0" max:"1e6" is:"shear per length"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness that the force goes through: the thinner part's, or half of it for each of its faces"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the weaker part"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part"`
	FEXX float64 `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
}

// cjpLine is the base metal at a groove weld of complete penetration, in tension or compression across it and in shear: AISC 360-22 Table J2.5, the base metal by
// J4.1(a) and (b), Eq. J4-1 and J4-2, and J4.2, Eq. J4-3 and J4-4. The two together are added as squares, as the AISC Design Examples do for partial penetration; the
// Specification has no rule for both. Matching filler is told by tensile strength: the pairs of AWS D1.1 that the table names come to no less.
var cjpLine = strength.Define(strength.Identity{
	ID: "cjp-line", Title: "metal at the complete-penetration weld",
	Clause: clause("J2.4, Table J2.5; J4.1, Eq. J4-1 and J4-2; J4.2, Eq. J4-3 and J4-4", "shear and tension added as squares, after the AISC Design Examples"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g cjpGivens) {
	c.Need(g.FEXX >= g.Fu, "F_EXX >= F_u", "matching filler metal, Table J2.5")
	y := c.Available("n_cy", "F_y*t", "N/mm", g.Fy*g.T, 0.90, 1.67)
	u := c.Available("n_cu", "F_u*t", "N/mm", g.Fu*g.T, 0.75, 2.00)
	vy, vu := baseShear(c, g.T, g.Fy, g.Fu)
	n, v := g.N/min(y, u), g.V/min(vy, vu)
	c.Compare(c.Let("U", "sqrt(pow(n_r/min(n_cy, n_cu), 2) + pow(v_r/min(v_cy, v_cu), 2))", "", math.Sqrt(n*n+v*v)), 1)
})

// baseShear is base metal in shear, per length: J4.2, Eq. J4-3 and J4-4.
func baseShear(c *strength.Calc, t, fy, fu float64) (yield, rupture float64) {
	yield = c.Available("v_cy", "0.60*F_y*t", "N/mm", 0.60*fy*t, 1.00, 1.50)
	return yield, c.Available("v_cu", "0.60*F_u*t", "N/mm", 0.60*fu*t, 0.75, 2.00)
}

type stoodOnGivens struct {
	Q     float64 `sym:"q_r" unit:"N/mm" min:"0" max:"1e6" is:"force per length at the worst point of either face of the plate that stands"`
	T     float64 `sym:"t_b" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate that it stands on"`
	Sides float64 `sym:"n" unit:"" min:"1" max:"2" step:"1" is:"weld lines that share the thickness"`
	Fy    float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of that plate"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of that plate"`
}

// cjpStoodOn is shear in the plate that a weld of complete penetration stands on, beside the weld: Table J2.5 and J4.2, Eq. J4-3 and J4-4.
var cjpStoodOn = strength.Define(strength.Identity{
	ID: "cjp-base-metal", Title: "plate that the complete-penetration weld stands on",
	Clause: clause("Table J2.5; J4.2, Eq. J4-3 and J4-4", "the resultant as shear"),
	Demand: "q_r", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g stoodOnGivens) {
	t := c.Let("t", "t_b/n", "mm", g.T/g.Sides)
	y, u := baseShear(c, t, g.Fy, g.Fu)
	c.Compare(g.Q, c.Let("q_c", "min(v_cy, v_cu)", "N/mm", min(y, u)))
})

type plugFaceGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"shear force on one weld, in the faying surface"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"500" is:"diameter of the hole, or width of the slot"`
	L  float64 `sym:"l" unit:"mm" min:"1" max:"5000" is:"length over the round ends, of a plug its diameter"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part"`
}

// plugFace is shear rupture of the parts on the face that a plug fuses to: AISC 360-22 J2.3a and J4.2(b), Eq. J4-4.
var plugFace = strength.Define(strength.Identity{
	ID: "plug-base-metal", Title: "parts at the plug weld",
	Clause: clause("J2.3a; J4.2(b), Eq. J4-4", "on the area of the hole"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g plugFaceGivens) {
	c.Need(g.L >= g.D, "l >= d", "a slot is no shorter than wide")
	Anv := c.Let("A_nv", "d*(l - d) + pi*pow(d, 2)/4", "mm^2", g.D*(g.L-g.D)+math.Pi*(g.D*g.D)/4)
	Rn := c.Let("R_n", "0.60*F_u*A_nv", "N", 0.60*g.Fu*Anv)
	c.Compare(g.P, c.Available("P_c", "R_n", "N", Rn, 0.75, 2.00))
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
		plug.Check(c, plugGivens{P: f.V * f.Run, Pull: f.N * f.Run, D: f.Width, L: f.Slot(), T: f.T1, Depth: f.Leg, N: 1, S: f.Pitch, Line: f.OnLine, FEXX: f.FEXX})
		f.GuardPlug(c)
	}},
	{Of: plugFace, Check: func(c *strength.Calc, f *strength.WeldLine) {
		plugFace.Check(c, plugFaceGivens{P: f.V * f.Run, D: f.Width, L: f.Run, Fu: strength.LeastKnown(f.Fu, f.Fu2)})
		f.GuardPlug(c)
	}},
}
