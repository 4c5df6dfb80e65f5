package en1993

// Block tearing, EN 1993-1-8, 3.10.2; net sections and shear of plates, EN 1993-1-1, 6.2.3 and 6.2.6.

import (
	"math"

	"lugwright/strength"
)

var tearLimits = []strength.Evaluator{blockTearing, netTension, angleTension, plateShear}

type blockGivens struct {
	V      float64 `sym:"V_Ed" unit:"N" min:"0" max:"1e9" is:"force of the block's bolts towards the edge"`
	T      float64 `sym:"t" unit:"mm" min:"0.1" max:"500" default:"1" is:"thickness of the ply"`
	D0     float64 `sym:"d_0" unit:"mm" min:"1" max:"200" default:"1" is:"hole diameter"`
	Planes float64 `sym:"n_v" unit:"" min:"1" max:"2" default:"1" step:"1" is:"shear planes: 2 between lines of bolts, 1 where the block is open to a side edge"`
	Lv     float64 `sym:"L_v" unit:"mm" min:"0" max:"1e5" default:"0" is:"length of one shear plane"`
	HolesV float64 `sym:"n_hv" unit:"" min:"0" max:"100" default:"0" step:"0.5" is:"holes on one shear plane, half the one at its end"`
	Lt     float64 `sym:"L_t" unit:"mm" min:"0" max:"1e5" default:"0" is:"length of the tension plane"`
	HolesT float64 `sym:"n_ht" unit:"" min:"0" max:"100" default:"0" step:"0.5" is:"holes on the tension plane, half those at its ends"`
	Anv    float64 `sym:"A_nv_0" unit:"mm^2" min:"0" max:"1e7" default:"0" is:"net area in shear where it is known; 0 works it out from the lengths"`
	Ant    float64 `sym:"A_nt_0" unit:"mm^2" min:"0" max:"1e7" default:"0" is:"net area in tension where it is known; 0 works it out from the lengths"`
	Load   float64 `sym:"load" choices:"concentric|eccentric" default:"0" is:"concentric on a symmetric group, or not"`
	Fy     float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the ply"`
	Fu     float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
	Across float64 `sym:"V_x_Ed" unit:"N" min:"0" max:"1e9" default:"0" is:"force of the same bolts towards the side that the block is open to"`
	LostV  float64 `sym:"L_ov" unit:"mm" min:"0" max:"1e5" default:"0" is:"what other openings take from all shear planes together"`
	LostT  float64 `sym:"L_ot" unit:"mm" min:"0" max:"1e5" default:"0" is:"what other openings take from the tension plane"`
}

// blockTearing is rupture in tension across the force with yielding of the net section in shear along it.
//
// A block that is open to a side has each plane in tension under the force that shears the other. The clause does not speak of force both
// ways. If shear and tension of one plane lie within an ellipse, what both planes carry together holds the ellipse through the two
// resistances of Eq. 3.10, along and across (the sum of two convex shapes): a lower bound, no clause. Across is taken as eccentric.
var blockTearing = strength.Define(strength.Identity{
	ID: "block-shear", Title: "block tearing at the bolts",
	Clause: joint("3.10.2, Eq. 3.9 and 3.10", "force both ways by a lower bound, no clause"),
	Demand: "V_e_Ed", Capacity: "V_eff_Rd", Unit: "N",
}, func(c *strength.Calc, g blockGivens) {
	g0, g2 := c.Factor("gamma_M0"), c.Factor("gamma_M2")
	nv, nt := g.Anv, g.Ant
	if nv == 0 {
		nv = (g.Planes*(g.Lv-g.HolesV*g.D0) - g.LostV) * g.T
	}
	if nt == 0 {
		nt = (g.Lt - g.HolesT*g.D0 - g.LostT) * g.T
	}
	Anv := c.Let("A_nv", "when(A_nv_0 > 0*mm*mm, A_nv_0, (n_v*(L_v - n_hv*d_0) - L_ov)*t)", "mm^2", nv)
	Ant := c.Let("A_nt", "when(A_nt_0 > 0*mm*mm, A_nt_0, (L_t - n_ht*d_0 - L_ot)*t)", "mm^2", nt)
	c.Need(Anv > 0, "A_nv > 0*mm*mm", "material left along the force")
	c.Need(Ant > 0, "A_nt > 0*mm*mm", "material left across the force")
	k := 1.0
	if g.Load > 0 {
		k = 0.5
	}
	k = c.Let("k_t", "when(load <= 0, 1, 0.5)", "", k)
	V := c.Let("V_eff_Rd", "k_t*f_u*A_nt/gamma_M2 + f_y*A_nv/(sqrt(3)*gamma_M0)", "N", k*g.Fu*Ant/g2+g.Fy*Anv/(math.Sqrt(3)*g0))
	if g.Across <= 0 {
		c.Compare(c.Let("V_e_Ed", "V_Ed", "N", g.V), V)
		return
	}
	x := c.Let("V_x_Rd", "0.5*f_u*A_nv/(n_v*gamma_M2) + f_y*A_nt/(sqrt(3)*gamma_M0)", "N", 0.5*g.Fu*Anv/(g.Planes*g2)+g.Fy*Ant/(math.Sqrt(3)*g0))
	c.Compare(c.Let("V_e_Ed", "sqrt(pow(V_Ed, 2) + pow(V_x_Ed*V_eff_Rd/V_x_Rd, 2))", "N", math.Sqrt(g.V*g.V+math.Pow(g.Across*V/x, 2))), V)
})

var blockRules = []strength.Rule[strength.Block]{
	{Of: blockTearing, Check: func(c *strength.Calc, f *strength.Block) {
		blockTearing.Check(c, blockGivens{
			V: f.V, T: f.T, D0: f.Dh, Planes: f.Planes, Lv: f.Lgv, HolesV: f.HolesV, Lt: f.Lgt, HolesT: f.HolesT,
			Load: strength.Flag(!f.Even || f.Planes < 2), Fy: f.Fy, Fu: f.Fu, Across: f.Across, LostV: f.LostV, LostT: f.LostT,
		})
	}},
}

type netTensionGivens struct {
	N  float64 `sym:"N_Ed" unit:"N" min:"0" max:"1e9" is:"tension"`
	B  float64 `sym:"b" unit:"mm" min:"0.1" max:"1e4" is:"width of the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness"`
	NH float64 `sym:"n" unit:"" min:"0" max:"100" default:"0" step:"1" is:"holes in the section, straight across or in a zigzag"`
	D0 float64 `sym:"d_0" unit:"mm" min:"0" max:"500" default:"0" is:"hole diameter"`
	Z  float64 `sym:"n_z" unit:"" min:"0" max:"100" default:"0" is:"slanting steps of a zigzag, alike"`
	S  float64 `sym:"s" unit:"mm" min:"0" max:"5000" default:"0" is:"stagger of one step along the force"`
	P  float64 `sym:"p" unit:"mm" min:"0" max:"5000" default:"0" is:"distance of the two holes of one step across the force"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// netTension is a plate in tension: yielding of the gross section, rupture of the net one, in a zigzag with s^2/(4 p) for each slanting step. The least
// section has to be found among the straight ones and the zigzags.
var netTension = strength.Define(strength.Identity{
	ID: "plate-net-tension", Title: "tension of a plate with holes",
	Clause: member("6.2.3, Eq. 6.6 and 6.7; 6.2.2.2, Eq. 6.3", ""),
	Demand: "N_Ed", Capacity: "N_t_Rd", Unit: "N",
}, func(c *strength.Calc, g netTensionGivens) {
	g0, g2 := c.Factor("gamma_M0"), c.Factor("gamma_M2_net")
	A := c.Let("A", "b*t", "mm^2", g.B*g.T)
	gain := 0.0
	if g.Z > 0 {
		if !c.Need(g.P > 0, "p > 0*mm", "the distance p of the holes of a zigzag") {
			c.Compare(math.Inf(1), 0)
			return
		}
		gain = c.Let("w_s", "n_z*pow(s, 2)/(4*p)", "mm", g.Z*g.S*g.S/(4*g.P))
	} else {
		c.Let("w_s", "0*mm", "mm", 0)
	}
	An := c.Let("A_net", "(b - max(n*d_0 - w_s, 0*mm))*t", "mm^2", (g.B-max(g.NH*g.D0-gain, 0))*g.T)
	c.Need(An > 0, "A_net > 0*mm*mm", "material left between the holes")
	pl := c.Let("N_pl_Rd", "A*f_y/gamma_M0", "N", A*g.Fy/g0)
	u := c.Let("N_u_Rd", "0.9*A_net*f_u/gamma_M2_net", "N", 0.9*An*g.Fu/g2)
	c.Compare(g.N, c.Let("N_t_Rd", "min(N_pl_Rd, N_u_Rd)", "N", min(pl, u)))
})

type angleTensionGivens struct {
	N  float64 `sym:"N_Ed" unit:"N" min:"0" max:"1e9" is:"tension"`
	B  float64 `sym:"bolts" choices:"1|2|3 or more" is:"bolts in one line along the force, through one leg"`
	E2 float64 `sym:"e_2" unit:"mm" min:"0" max:"1000" default:"0" is:"bolt line to the edge of the connected leg, for one bolt"`
	P1 float64 `sym:"p_1" unit:"mm" min:"0" max:"5000" default:"0" is:"distance of the bolts along the force, for two or more"`
	D0 float64 `sym:"d_0" unit:"mm" min:"1" max:"200" is:"hole diameter"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"100" is:"thickness"`
	A  float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e6" is:"gross area of the angle; of unequal legs joined by the smaller twice that leg's equal angle at most"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// angleTension is an angle joined by one leg: EN 1993-1-8, 3.10.3, Eq. 3.11 to 3.13 with Table 3.8, beside yielding of the gross section. From memory.
var angleTension = strength.Define(strength.Identity{
	ID: "angle-net-tension", Title: "tension of an angle bolted through one leg",
	Clause: joint("3.10.3, Eq. 3.11 to 3.13, Table 3.8; EN 1993-1-1, 6.2.3, Eq. 6.6", "from memory"),
	Demand: "N_Ed", Capacity: "N_t_Rd", Unit: "N",
}, func(c *strength.Calc, g angleTensionGivens) {
	g0, g2 := c.Factor("gamma_M0"), c.Factor("gamma_M2")
	pl := c.Let("N_pl_Rd", "A*f_y/gamma_M0", "N", g.A*g.Fy/g0)
	var u float64
	if g.B == 0 {
		c.Need(g.E2 > g.D0/2, "e_2 > d_0/2", "the edge distance of one bolt")
		u = c.Let("N_u_Rd", "2.0*(e_2 - 0.5*d_0)*t*f_u/gamma_M2", "N", 2*(g.E2-0.5*g.D0)*g.T*g.Fu/g2)
	} else {
		c.Need(g.P1 > g.D0, "p_1 > d_0", "the distance of the bolts")
		An := c.Let("A_net", "A - d_0*t", "mm^2", g.A-g.D0*g.T)
		c.Need(An > 0, "A_net > 0*mm*mm", "material left beside the hole")
		low := 0.4
		if g.B > 1 {
			low = 0.5
		}
		low = c.Let("beta_0", "when(bolts > 1.5, 0.5, 0.4)", "", low)
		beta := c.Let("beta", "beta_0 + (0.7 - beta_0)*min(max((p_1/d_0 - 2.5)/2.5, 0), 1)", "", low+(0.7-low)*min(max((g.P1/g.D0-2.5)/2.5, 0), 1))
		u = c.Let("N_u_Rd", "beta*A_net*f_u/gamma_M2", "N", beta*An*g.Fu/g2)
	}
	c.Compare(g.N, c.Let("N_t_Rd", "min(N_pl_Rd, N_u_Rd)", "N", min(pl, u)))
})

type plateShearGivens struct {
	V  float64 `sym:"V_Ed" unit:"N" min:"0" max:"1e9" is:"shear force along the plate"`
	H  float64 `sym:"h" unit:"mm" min:"0.1" max:"5000" is:"length of the plate along the force"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness"`
	N  float64 `sym:"n" unit:"" min:"0" max:"100" default:"0" step:"1" is:"holes in one line along the force"`
	D0 float64 `sym:"d_0" unit:"mm" min:"0" max:"500" default:"0" is:"hole diameter"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// plateShear is shear of a connecting plate: yielding of the gross section, rupture of the net one. The clause itself leaves the holes
// of bolts out of shear; the net section is the form of the joint design guides.
var plateShear = strength.Define(strength.Identity{
	ID: "plate-shear", Title: "shear of a connecting plate",
	Clause: member("6.2.6(2), Eq. 6.18", "net section by the European guide to joints in multi-storey buildings"),
	Demand: "V_Ed", Capacity: "V_Rd", Unit: "N",
}, func(c *strength.Calc, g plateShearGivens) {
	g0, g2 := c.Factor("gamma_M0"), c.Factor("gamma_M2")
	Av := c.Let("A_v", "h*t", "mm^2", g.H*g.T)
	An := c.Let("A_v_net", "(h - n*d_0)*t", "mm^2", (g.H-g.N*g.D0)*g.T)
	c.Need(An > 0, "A_v_net > 0*mm*mm", "material left between the holes")
	pl := c.Let("V_pl_Rd", "A_v*f_y/(sqrt(3)*gamma_M0)", "N", Av*g.Fy/(math.Sqrt(3)*g0))
	n := c.Let("V_n_Rd", "A_v_net*f_u/(sqrt(3)*gamma_M2)", "N", An*g.Fu/(math.Sqrt(3)*g2))
	c.Compare(g.V, c.Let("V_Rd", "min(V_pl_Rd, V_n_Rd)", "N", min(pl, n)))
})
