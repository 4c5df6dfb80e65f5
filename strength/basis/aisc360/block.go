package aisc360

// Block shear of a ply.

import (
	"lugwright/strength"
)

type blockGivens struct {
	V      float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force of the group towards the edge"`
	T      float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the ply"`
	Planes float64 `sym:"n_v" unit:"" min:"1" max:"2" is:"shear planes: 2 between lines of bolts, 1 where the block is open to a side edge"`
	Lgv    float64 `sym:"L_gv" unit:"mm" min:"0.1" max:"1e5" is:"length of one shear plane"`
	HolesV float64 `sym:"n_hv" unit:"" min:"0" max:"100" is:"holes on one shear plane, half the one at its end"`
	Lgt    float64 `sym:"L_gt" unit:"mm" min:"0.1" max:"1e5" is:"length of the tension plane"`
	HolesT float64 `sym:"n_ht" unit:"" min:"0" max:"100" is:"holes on the tension plane, half those at its ends"`
	Dh     float64 `sym:"d_h" unit:"mm" min:"1" max:"200" is:"hole diameter"`
	Ubs    float64 `sym:"U_bs" unit:"" min:"0.5" max:"1" default:"1" is:"1 where the tension is even, 0.5 where it is not"`
	Fy     float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the ply"`
	Fu     float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
}

// blockShear is rupture in tension across the force with yielding or rupture in shear along it: AISC 360-22 J4.3, Eq. J4-5. A hole
// takes 1/16 in more than its size from the net area, B4.3b.
var blockShear = strength.Define(strength.Identity{
	ID: "block-shear", Title: "block shear at the bolts",
	Clause: clause("J4.3, Eq. J4-5; B4.3b", ""),
	Demand: "V_r", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g blockGivens) {
	dn := c.Let("d_n", "d_h + 1/16*in", "mm", g.Dh+inch/16)
	Agv := c.Let("A_gv", "n_v*L_gv*t", "mm^2", g.Planes*g.Lgv*g.T)
	Anv := c.Let("A_nv", "n_v*(L_gv - n_hv*d_n)*t", "mm^2", g.Planes*(g.Lgv-g.HolesV*dn)*g.T)
	Ant := c.Let("A_nt", "(L_gt - n_ht*d_n)*t", "mm^2", (g.Lgt-g.HolesT*dn)*g.T)
	c.Need(Anv > 0, "A_nv > 0*mm*mm", "material left along the force")
	c.Need(Ant > 0, "A_nt > 0*mm*mm", "material left across the force")
	Rv := c.Let("R_nv", "min(0.60*F_u*A_nv, 0.60*F_y*A_gv)", "N", min(0.60*g.Fu*Anv, 0.60*g.Fy*Agv))
	Rt := c.Let("R_nt", "U_bs*F_u*A_nt", "N", g.Ubs*g.Fu*Ant)
	Rn := c.Let("R_n", "R_nv + R_nt", "N", Rv+Rt)
	c.Compare(g.V, c.Available("V_c", "R_n", "N", Rn, 0.75, 2.00))
})

var blockRules = []strength.Rule[strength.Block]{
	{Of: blockShear, Check: func(c *strength.Calc, f *strength.Block) {
		ubs := 0.5
		if f.Even {
			ubs = 1
		}
		blockShear.Check(c, blockGivens{
			V: f.V, T: f.T, Planes: f.Planes, Lgv: f.Lgv, HolesV: f.HolesV, Lgt: f.Lgt, HolesT: f.HolesT,
			Dh: f.Dh, Ubs: ubs, Fy: f.Fy, Fu: f.Fu,
		})
	}},
}
