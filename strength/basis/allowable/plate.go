package allowable

// Free edges, corner plates, a support's wall, block shear.

import (
	"math"

	"lugwright/strength"
)

var plateLimits = []strength.Evaluator{blockShear, freeEdge, cornerStress, cornerShear, wallBending}

type blockGivens struct {
	V      float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force of the block's bolts towards the edge"`
	T      float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the ply"`
	Planes float64 `sym:"n_v" unit:"" min:"1" max:"2" step:"1" is:"shear planes: 2 between lines of bolts, 1 where the block is open to a side edge"`
	Lgv    float64 `sym:"L_gv" unit:"mm" min:"0.1" max:"1e5" is:"length of one shear plane"`
	HolesV float64 `sym:"n_hv" unit:"" min:"0" max:"100" step:"0.5" is:"holes on one shear plane, half the one at its end"`
	Lgt    float64 `sym:"L_gt" unit:"mm" min:"0.1" max:"1e5" is:"length of the tension plane"`
	HolesT float64 `sym:"n_ht" unit:"" min:"0" max:"100" step:"0.5" is:"holes on the tension plane, half those at its ends"`
	Dh     float64 `sym:"d_h" unit:"mm" min:"1" max:"200" is:"hole diameter"`
	Ubs    float64 `sym:"U_bs" unit:"" min:"0.5" max:"1" default:"1" is:"1 where the tension is even, 0.5 where it is not"`
	Fy     float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the ply"`
	Fu     float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
	Across float64 `sym:"V_x" unit:"N" min:"0" max:"1e9" default:"0" is:"shear force of the same bolts towards the side that the block is open to"`
	LostV  float64 `sym:"L_ov" unit:"mm" min:"0" max:"1e5" default:"0" is:"what other openings take from all shear planes together"`
	LostT  float64 `sym:"L_ot" unit:"mm" min:"0" max:"1e5" default:"0" is:"what other openings take from the tension plane"`
}

// blockShear adds the allowed shear and tension of the net planes, as if both reached their stress together. Force both ways on a block
// that is open to a side: if shear and tension of one plane lie within an ellipse, both planes together hold the ellipse through the
// strengths along and across, a lower bound. U_bs is 0.5 across.
var blockShear = strength.Define(strength.Identity{
	ID: "block-shear", Title: "block shear at the bolts", Clause: common("allowed stresses of the net planes added"),
	Demand: "V_e", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g blockGivens) {
	Anv := c.Let("A_nv", "(n_v*(L_gv - n_hv*d_h) - L_ov)*t", "mm^2", (g.Planes*(g.Lgv-g.HolesV*g.Dh)-g.LostV)*g.T)
	Ant := c.Let("A_nt", "(L_gt - n_ht*d_h - L_ot)*t", "mm^2", (g.Lgt-g.HolesT*g.Dh-g.LostT)*g.T)
	c.Need(Anv > 0, "A_nv > 0*mm*mm", "material left along the force")
	c.Need(Ant > 0, "A_nt > 0*mm*mm", "material left across the force")
	sigma := allowed(c, g.Fy, g.Fu)
	tau := allowedShear(c, sigma)
	Vc := c.Let("V_c", "tau_all*A_nv + U_bs*sigma_all*A_nt", "N", tau*Anv+g.Ubs*sigma*Ant)
	if g.Across <= 0 {
		c.Compare(c.Let("V_e", "V_r", "N", g.V), Vc)
		return
	}
	Vx := c.Let("V_cx", "tau_all*A_nt + 0.5*sigma_all*A_nv/n_v", "N", tau*Ant+0.5*sigma*Anv/g.Planes)
	c.Compare(c.Let("V_e", "sqrt(pow(V_r, 2) + pow(V_x*V_c/V_cx, 2))", "N", math.Sqrt(g.V*g.V+math.Pow(g.Across*Vc/Vx, 2))), Vc)
})

// edgeStress is the elastic buckling stress of a long plate with one free edge, the other held but free to turn: 0.425 of the Euler stress of
// its slenderness. Elementary stability.
func edgeStress(b, t, e float64) float64 {
	return 0.425 * math.Pi * math.Pi * e / (12 * (1 - poisson*poisson)) * (t / b) * (t / b)
}

type freeEdgeGivens struct {
	B  float64 `sym:"b" unit:"mm" min:"0.1" max:"5000" is:"greatest width that stands out from its support"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	E  float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity: 200000 steel, 70000 aluminium"`
}

// freeEdge wants a gusset's free edge to yield before it buckles, whichever way the load turns, with 2 in hand for edges that are not flat:
// b/t up to 0.44 sqrt(E/F_y). A wider plate is outside the rule.
var freeEdge = strength.Define(strength.Identity{
	ID: "free-edge", Title: "buckling of a free edge", Clause: common("elastic plate buckling, coefficient 0.425, at twice the yield strength"),
	Demand: "F_need", Capacity: "F_cr", Unit: "MPa", Detail: true,
}, func(c *strength.Calc, g freeEdgeGivens) {
	Fcr := c.Let("F_cr", "0.425*pow(pi, 2)*E/(12*(1 - pow(0.3, 2)))*pow(t/b, 2)", "MPa", edgeStress(g.B, g.T, g.E))
	need := c.Let("F_need", "2*F_y", "MPa", 2*g.Fy)
	c.Need(need <= Fcr, "F_need <= F_cr", "an edge that yields before it buckles")
	c.Compare(need, Fcr)
})

type cornerGivens struct {
	P    float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"load along the support line"`
	E    float64 `sym:"e" unit:"mm" min:"0" max:"5000" is:"load to the support line"`
	A    float64 `sym:"a" unit:"mm" min:"1" max:"5000" is:"height along the support"`
	B    float64 `sym:"b" unit:"mm" min:"1" max:"5000" is:"projection from the support"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"0" max:"3000" default:"0" is:"tensile strength; 0 where it is not known"`
	Em   float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity: 200000 steel, 70000 aluminium"`
	Hole float64 `sym:"hole" choices:"none|in the plate" default:"0" is:"an opening: the section through it is checked by itself, and its edge must yield before it buckles"`
}

// cornerStress is a triangular plate on the section square to its free edge: elastic axial force and bending, against the lesser of the
// allowed stress and the edge's buckling stress over its factor.
var cornerStress = strength.Define(strength.Identity{
	ID: "bracket-plate", Title: "free edge of a triangular bracket plate", Clause: common("elastic stress and edge buckling on the section square to the free edge"),
	Demand: "sigma", Capacity: "sigma_c", Unit: "MPa",
}, func(c *strength.Calc, g cornerGivens) {
	theta := c.Let("theta", "atan(b/a)", "rad", math.Atan(g.B/g.A))
	bp := c.Let("b_p", "a*sin(theta)", "mm", g.A*math.Sin(theta))
	N := c.Let("N_r", "P_r*cos(theta)", "N", g.P*math.Cos(theta))
	M := c.Let("M", "P_r*e - N_r*b_p/2", "N*mm", g.P*g.E-N*bp/2)
	sigma := c.Let("sigma", "N_r/(t*b_p) + 6*abs(M)/(t*pow(b_p, 2))", "MPa", N/(g.T*bp)+6*math.Abs(M)/(g.T*bp*bp))
	all := allowedFloor(c, g.Fy, g.Fu)
	Fcr := c.Let("F_cr", "0.425*pow(pi, 2)*E/(12*(1 - pow(0.3, 2)))*pow(t/b_p, 2)", "MPa", edgeStress(bp, g.T, g.Em))
	nu := c.Factor("n_u")
	if g.Hole > 0 {
		c.Need(Fcr/nu >= all, "F_cr/n_u >= sigma_all", "an edge that yields before it buckles, since there is an opening")
	}
	c.Compare(sigma, c.Let("sigma_c", "min(sigma_all, F_cr/n_u)", "MPa", min(all, Fcr/nu)))
})

// cornerShear is the peak of elastic shear on the same section.
var cornerShear = strength.Define(strength.Identity{
	ID: "bracket-plate-shear", Title: "shear of a triangular bracket plate", Clause: common("peak shear of a rectangle"),
	Demand: "tau", Capacity: "tau_all", Unit: "MPa",
}, func(c *strength.Calc, g cornerGivens) {
	theta := c.Let("theta", "atan(b/a)", "rad", math.Atan(g.B/g.A))
	bp := c.Let("b_p", "a*sin(theta)", "mm", g.A*math.Sin(theta))
	V := c.Let("V", "P_r*sin(theta)", "N", g.P*math.Sin(theta))
	tau := c.Let("tau", "1.5*V/(t*b_p)", "MPa", 1.5*V/(g.T*bp))
	c.Compare(tau, allowedShear(c, allowedFloor(c, g.Fy, g.Fu)))
})

type wallGivens struct {
	M   float64 `sym:"M_r" unit:"N*mm" min:"0" max:"1e12" is:"couple of the bolt group on the wall"`
	Mv  float64 `sym:"M_v" unit:"N*mm" min:"0" max:"1e12" default:"0" is:"its couple the other way, along the flanges"`
	N   float64 `sym:"N_r" unit:"N" min:"0" max:"1e9" is:"pull or push square to the wall"`
	T   float64 `sym:"t" unit:"mm" min:"0.1" max:"200" is:"wall thickness"`
	W   float64 `sym:"w" unit:"mm" min:"1" max:"5000" is:"width of wall that works"`
	L   float64 `sym:"h" unit:"mm" min:"1" max:"5000" is:"clear height between the flanges"`
	Arm float64 `sym:"s" unit:"mm" min:"0.1" max:"5000" is:"distance over which the couple acts"`
	A   float64 `sym:"a" unit:"mm" min:"0" max:"5000" default:"0" is:"the nearer of the couple's two forces to its flange; 0 is the worst place"`
	Fy  float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the wall"`
	Fu  float64 `sym:"F_u" unit:"MPa" min:"0" max:"3000" default:"0" is:"tensile strength of the wall; 0 where it is not known"`
}

// wallBending is the wall as a one-way strip, pinned at the flanges, the couple is two forces s apart, the couple along the flanges a force at
// mid-height on each half of the width, those half the width apart, pull or push is spread over s.
var wallBending = strength.Define(strength.Identity{
	ID: "wall-bending", Title: "bending of the support's wall out of its plane", Clause: common("one-way strip, elastic"),
	Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g wallGivens) {
	c.Need(g.Arm < g.L, "s < h", "a bracket lower than the clear web")
	c.Need(2*g.A+g.Arm <= g.L+1e-9*g.L, "2*a + s <= h", "a couple between the flanges, a to the nearer of them")
	M := c.Let("M_s", "M_r*(h - s - a)/h + M_v*h/w + N_r*(2*h - s)/8", "N*mm",
		g.M*(g.L-g.Arm-g.A)/g.L+g.Mv*g.L/g.W+g.N*(2*g.L-g.Arm)/8)
	sigma := c.Let("sigma", "6*M_s/(w*pow(t, 2))", "MPa", 6*M/(g.W*g.T*g.T))
	c.Compare(sigma, allowedFloor(c, g.Fy, g.Fu))
})

var blockRules = []strength.Rule[strength.Block]{
	{Of: blockShear, Check: func(c *strength.Calc, f *strength.Block) {
		ubs := 0.5
		if f.EvenPull() {
			ubs = 1
		}
		blockShear.Check(c, blockGivens{
			V: f.V, T: f.T, Planes: f.Planes, Lgv: f.Lgv, HolesV: f.HolesV, Lgt: f.Lgt, HolesT: f.HolesT,
			Dh: f.Dh, Ubs: ubs, Fy: f.Fy, Fu: f.Fu, Across: f.Across, LostV: f.LostV, LostT: f.LostT,
		})
	}},
}

var outstandRules = []strength.Rule[strength.Outstand]{
	{Of: freeEdge, Check: func(c *strength.Calc, f *strength.Outstand) {
		freeEdge.Check(c, freeEdgeGivens{B: f.B, T: f.T, Fy: f.Fy, E: f.E})
	}},
}

var cornerPlateRules = []strength.Rule[strength.CornerPlate]{
	{Of: cornerStress, Check: func(c *strength.Calc, f *strength.CornerPlate) { cornerStress.Check(c, givensOf(f)) }},
	{Of: cornerShear, Check: func(c *strength.Calc, f *strength.CornerPlate) { cornerShear.Check(c, givensOf(f)) }},
}

func givensOf(f *strength.CornerPlate) cornerGivens {
	return cornerGivens{P: f.P, E: f.E, A: f.A, B: f.B, T: f.T, Fy: f.Fy, Em: f.Modulus, Hole: strength.Flag(f.Holed)}
}

var wallRules = []strength.Rule[strength.Wall]{
	{Of: wallBending, Check: func(c *strength.Calc, f *strength.Wall) {
		wallBending.Check(c, wallGivens{M: f.M, Mv: f.Mv, N: f.N, T: f.T, W: f.Width, L: f.Clear, Arm: f.Arm, Fy: f.Fy})
	}},
}
