package aisc360

// Block shear of a ply.

import (
	"math"

	"lugwright/strength"
)

type blockGivens struct {
	V      float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force of the block's bolts towards the edge"`
	T      float64 `sym:"t" unit:"mm" min:"0" max:"500" default:"0" is:"thickness of the ply"`
	Planes float64 `sym:"n_v" unit:"" min:"1" max:"2" default:"1" step:"1" is:"shear planes: 2 between lines of bolts, 1 where the block is open to a side edge"`
	Lgv    float64 `sym:"L_gv" unit:"mm" min:"0" max:"1e5" default:"0" is:"length of one shear plane"`
	HolesV float64 `sym:"n_hv" unit:"" min:"0" max:"100" default:"0" step:"0.5" is:"holes on one shear plane, half the one at its end"`
	Lgt    float64 `sym:"L_gt" unit:"mm" min:"0" max:"1e5" default:"0" is:"length of the tension plane"`
	HolesT float64 `sym:"n_ht" unit:"" min:"0" max:"100" default:"0" step:"0.5" is:"holes on the tension plane, half those at its ends"`
	Dh     float64 `sym:"d_h" unit:"mm" min:"0" max:"200" default:"0" is:"hole diameter"`
	Agv    float64 `sym:"A_gv_0" unit:"mm^2" min:"0" max:"1e7" default:"0" is:"gross area in shear where it is known; 0 works it out from the lengths"`
	Anv    float64 `sym:"A_nv_0" unit:"mm^2" min:"0" max:"1e7" default:"0" is:"net area in shear where it is known; 0 works it out from the lengths"`
	Ant    float64 `sym:"A_nt_0" unit:"mm^2" min:"0" max:"1e7" default:"0" is:"net area in tension where it is known; 0 works it out from the lengths"`
	Ubs    float64 `sym:"U_bs" unit:"" min:"0.5" max:"1" default:"1" is:"1 where the tension is even, 0.5 where it is not"`
	Fy     float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the ply"`
	Fu     float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
	Across float64 `sym:"V_x" unit:"N" min:"0" max:"1e9" default:"0" is:"shear force of the same bolts towards the side that the block is open to"`
	LostV  float64 `sym:"L_ov" unit:"mm" min:"0" max:"1e5" default:"0" is:"what other openings take from all shear planes together"`
	Extra  float64 `sym:"a_h" unit:"mm" min:"0" max:"5" default:"1.5875" is:"added to the hole for the net area: 1/16 in, or the metric text's 2 mm"`
	LostT  float64 `sym:"L_ot" unit:"mm" min:"0" max:"1e5" default:"0" is:"what other openings take from the tension plane"`
}

// blockShear is rupture in tension across the force with yielding or rupture in shear along it: AISC 360-22 J4.3, Eq. J4-5. A hole
// takes 1/16 in (2 mm) more than its size from the net area, B4.3b; other openings are off the gross area as well.
//
// A block that is open to a side has each plane in tension under the force that shears the other. The clause does not speak of force both
// ways. If shear and tension of one plane lie within an ellipse, what both planes carry together holds the ellipse through the two
// strengths of J4-5, along and across (the sum of two convex shapes): a lower bound, no clause. U_bs is 0.5 across.
var blockShear = strength.Define(strength.Identity{
	ID: "block-shear", Title: "block shear at the bolts",
	Clause: clause("J4.3, Eq. J4-5; B4.3b", "force both ways by a lower bound, no clause"),
	Demand: "V_e", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g blockGivens) {
	dn := c.Let("d_n", "d_h + a_h", "mm", g.Dh+g.Extra)
	agv, anv, ant := g.areas(dn)
	Agv := c.Let("A_gv", "when(A_gv_0 > 0*mm*mm, A_gv_0, (n_v*L_gv - L_ov)*t)", "mm^2", agv)
	Anv := c.Let("A_nv", "when(A_nv_0 > 0*mm*mm, A_nv_0, (n_v*(L_gv - n_hv*d_n) - L_ov)*t)", "mm^2", anv)
	Ant := c.Let("A_nt", "when(A_nt_0 > 0*mm*mm, A_nt_0, (L_gt - n_ht*d_n - L_ot)*t)", "mm^2", ant)
	c.Need(g.HolesV+g.HolesT <= 1000*g.Dh, "n_hv + n_ht <= 1000*d_h/mm", "a diameter of the holes")
	c.Need(Agv > 0, "A_gv > 0*mm*mm", "an area in shear: its lengths and the thickness, or the area itself")
	c.Need(Anv > 0, "A_nv > 0*mm*mm", "material left along the force")
	c.Need(Ant > 0, "A_nt > 0*mm*mm", "material left across the force")
	rupture := c.Let("R_nr", "0.60*F_u*A_nv + U_bs*F_u*A_nt", "N", 0.60*g.Fu*Anv+g.Ubs*g.Fu*Ant)
	yield := c.Let("R_ny", "0.60*F_y*A_gv + U_bs*F_u*A_nt", "N", 0.60*g.Fy*Agv+g.Ubs*g.Fu*Ant)
	Rn := c.Let("R_n", "min(R_nr, R_ny)", "N", min(rupture, yield))
	Vc := c.Available("V_c", "R_n", "N", Rn, 0.75, 2.00)
	if g.Across <= 0 {
		c.Compare(c.Let("V_e", "V_r", "N", g.V), Vc)
		return
	}
	Agx := c.Let("A_gx", "(L_gt - L_ot)*t", "mm^2", (g.Lgt-g.LostT)*g.T)
	Rx := c.Let("R_nx", "min(0.60*F_u*A_nt, 0.60*F_y*A_gx) + 0.5*F_u*A_nv/n_v", "N", min(0.60*g.Fu*Ant, 0.60*g.Fy*Agx)+0.5*g.Fu*Anv/g.Planes)
	Vx := c.Available("V_cx", "R_nx", "N", Rx, 0.75, 2.00)
	c.Compare(c.Let("V_e", "sqrt(pow(V_r, 2) + pow(V_x*V_c/V_cx, 2))", "N", math.Sqrt(g.V*g.V+math.Pow(g.Across*Vc/Vx, 2))), Vc)
})

// areas gives the block's areas: those that are known, else by the lengths.
func (g *blockGivens) areas(dn float64) (gv, nv, nt float64) {
	gv, nv, nt = g.Agv, g.Anv, g.Ant
	if gv == 0 {
		gv = (g.Planes*g.Lgv - g.LostV) * g.T
	}
	if nv == 0 {
		nv = (g.Planes*(g.Lgv-g.HolesV*dn) - g.LostV) * g.T
	}
	if nt == 0 {
		nt = (g.Lgt - g.HolesT*dn - g.LostT) * g.T
	}
	return gv, nv, nt
}

// blockRules give U_bs by the Commentary to J4.3, Fig. C-J4.2 (from memory): 0.5 where the tension is not even, as at an end with several
// lines of bolts.
var blockRules = []strength.Rule[strength.Block]{
	{Of: blockShear, Check: func(c *strength.Calc, f *strength.Block) {
		ubs := 0.5
		if f.EvenPull() {
			ubs = 1
		}
		blockShear.Check(c, blockGivens{
			V: f.V, T: f.T, Planes: f.Planes, Lgv: f.Lgv, HolesV: f.HolesV, Lgt: f.Lgt, HolesT: f.HolesT,
			Dh: f.Dh, Extra: inch / 16, Ubs: ubs, Fy: f.Fy, Fu: f.Fu, Across: f.Across, LostV: f.LostV, LostT: f.LostT,
		})
	}},
}
