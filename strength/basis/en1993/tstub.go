package en1993

// A ply that bends at a bolt in tension, as half of an equivalent T-stub: EN 1993-1-8, 6.2.4.

import (
	"math"

	"lugwright/strength"
)

var tstubLimits = []strength.Evaluator{prying}

type pryingGivens struct {
	T       float64 `sym:"F_t_Ed" unit:"N" min:"0" max:"1e9" is:"tension on one bolt, prying not in it"`
	V       float64 `sym:"F_v_Ed" unit:"N" min:"0" max:"1e9" is:"shear force on the same bolt"`
	M       float64 `sym:"m" unit:"mm" min:"0.1" max:"1000" is:"bolt line to the face of the part that stands on the ply, less 0.8 of its weld's throat by root two or of its root radius"`
	E       float64 `sym:"e" unit:"mm" min:"0.1" max:"1000" is:"bolt line to the ply's free edge"`
	P       float64 `sym:"p" unit:"mm" min:"1" max:"2000" is:"length of ply that serves one bolt"`
	Tp      float64 `sym:"t_f" unit:"mm" min:"0.1" max:"500" is:"thickness of the ply"`
	Fy      float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the ply"`
	A       float64 `sym:"A" unit:"mm^2" min:"1" max:"20000" is:"area of the bolt in the shear plane"`
	As      float64 `sym:"A_s" unit:"mm^2" min:"1" max:"20000" is:"tensile stress area"`
	Fub     float64 `sym:"f_ub" unit:"MPa" min:"200" max:"2000" is:"nominal tensile strength of the bolt"`
	Class   float64 `sym:"class" choices:"4.6|5.6|8.8|4.8|5.8|6.8|10.9|other" is:"property class; other is taken as 10.9"`
	Threads float64 `sym:"threads" choices:"out of the plane|in the plane" default:"1" is:"threads in the shear plane"`
	Wide    float64 `sym:"clearance" choices:"as Table 11 of EN 1090-2|2 mm at M12 or M14" default:"0" is:"clearance of the hole"`
}

// prying is the tension that one bolt takes from a ply that bends: modes 1 to 3 of Table 6.2, halved for the one side that the bolt stands
// on, with l_eff of an inner bolt row (Table 6.4) and at most the length that serves the bolt. Prying is taken to develop whatever the
// bolt's length. The bolt has the tension that its shear leaves it by Table 3.4.
var prying = strength.Define(strength.Identity{
	ID: "bolt-prying", Title: "tension of the bolt with prying of the ply",
	Clause: joint("6.2.4, Tables 6.2 and 6.4, modes 1 to 3; Table 3.4", "half a T-stub, one bolt; l_eff from memory"),
	Demand: "F_t_Ed", Capacity: "F_T_Rd", Unit: "N",
}, func(c *strength.Calc, g pryingGivens) {
	g2 := c.Factor("gamma_M2")
	V := shearStrength(c, g.Threads, g.Class, g.Wide, g.Fub, g.A)
	c.Need(g.V <= V, "F_v_Ed <= F_v_Rd", "the bolt carries its shear alone")
	Ft := c.Let("F_t_Rd", "0.9*f_ub*A_s/gamma_M2", "N", 0.9*g.Fub*g.As/g2)
	F3 := c.Let("F_T_3", "max(min(1.4*(1 - F_v_Ed/F_v_Rd), 1), 0)*F_t_Rd", "N", max(min(1.4*(1-g.V/V), 1), 0)*Ft)
	g0 := c.Factor("gamma_M0")
	n := c.Let("n", "min(e, 1.25*m)", "mm", min(g.E, 1.25*g.M))
	nc := min(4*g.M+1.25*g.E, g.P)
	l1 := c.Let("l_eff_1", "min(2*pi*m, 4*m + 1.25*e, p)", "mm", min(2*math.Pi*g.M, nc))
	l2 := c.Let("l_eff_2", "min(4*m + 1.25*e, p)", "mm", nc)
	M1 := c.Let("M_pl_1", "0.25*l_eff_1*pow(t_f, 2)*f_y/gamma_M0", "N*mm", 0.25*l1*g.Tp*g.Tp*g.Fy/g0)
	M2 := c.Let("M_pl_2", "0.25*l_eff_2*pow(t_f, 2)*f_y/gamma_M0", "N*mm", 0.25*l2*g.Tp*g.Tp*g.Fy/g0)
	F1 := c.Let("F_T_1", "2*M_pl_1/m", "N", 2*M1/g.M)
	F2 := c.Let("F_T_2", "(M_pl_2 + n*F_T_3)/(m + n)", "N", (M2+n*F3)/(g.M+n))
	c.Compare(g.T, c.Let("F_T_Rd", "min(F_T_1, F_T_2, F_T_3)", "N", min(F1, F2, F3)))
})

// m is the whole clear distance: the weld or root radius of the standing part is not known here, and leaving it out is cautious.
var pryingRules = []strength.Rule[strength.Prying]{
	{Of: prying, Check: func(c *strength.Calc, f *strength.Prying) {
		b := &f.Bolt
		prying.Check(c, pryingGivens{
			T: f.T, V: f.V, M: f.B, E: f.A, P: f.P, Tp: f.Tply, Fy: f.Fy, A: sheared(b), As: b.As, Fub: tensile(b),
			Class: classOf(b.Grade), Threads: strength.Flag(b.ThreadsIn), Wide: wide(b),
		})
	}},
}
