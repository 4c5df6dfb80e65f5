package en1993

// Threaded rods that hang a tray: tension, bending between two guided ends under a side force, both together.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

var rodLimits = []strength.Evaluator{rodTension, rodBending, rodCombined}

type rodTensionGivens struct {
	F   float64 `sym:"F_Ed" unit:"N" min:"0" max:"1e9" is:"tension on all rods together"`
	N   float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" step:"1" is:"rods"`
	K   float64 `sym:"k_s" unit:"" min:"1" max:"100" default:"1" is:"force of the worst rod over the even share: 2 where two rods of four carry all"`
	D   float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	P   float64 `sym:"p" unit:"mm" min:"0.1" max:"20" is:"pitch"`
	Cut float64 `sym:"thread" choices:"as of bolts to EN 1090|cut by the shop from round bar" default:"1" is:"how the thread was made"`
	Fub float64 `sym:"f_ub" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the rod"`
}

// rodTension is tension of the worst of several threaded rods on the stress area; threads that are not those of EN 1090 bolts count 0.85 by
// 3.6.1(3) (from memory).
var rodTension = strength.Define(strength.Identity{
	ID: "rod-tension", Title: "tension of the worst threaded rod",
	Clause: joint("3.6.1, Table 3.4; 3.6.1(3)", "0.85 from memory; share of the rods is a given"),
	Demand: "F_t_Ed", Capacity: "F_t_Rd", Unit: "N",
}, func(c *strength.Calc, g rodTensionGivens) {
	c.Need(g.K <= g.N, "k_s <= n", "a rod that bears no more than all of it")
	F := c.Let("F_t_Ed", "k_s*F_Ed/n", "N", g.K*g.F/g.N)
	c.Compare(F, rodTensile(c, g.D, g.P, g.Cut, g.Fub))
})

func rodTensile(c *strength.Calc, d, p, cut, fub float64) float64 {
	c.Need(d > 1.3*p, "d > 1.3*p", "a core within the thread")
	A := c.Let("A_s", "pi/4*pow(d - 0.9382*p, 2)", "mm^2", math.Pi/4*(d-0.9382*p)*(d-0.9382*p))
	k := 1.0
	if cut > 0 {
		k = 0.85
	}
	g2 := c.Factor("gamma_M2")
	return c.Let("F_t_Rd", "when(thread > 0, 0.85, 1)*0.9*f_ub*A_s/gamma_M2", "N", k*0.9*fub*A/g2)
}

type rodBendingGivens struct {
	V    float64 `sym:"V_Ed" unit:"N" min:"0" max:"1e9" is:"side force on one rod"`
	L    float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length of the rod, nut to nut"`
	Ends float64 `sym:"ends" choices:"both ends held upright|one end held" default:"0" is:"how the rod's ends are held against turning: nuts on both faces of stiff plates hold; a plate that bends does not"`
	D    float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	P    float64 `sym:"p" unit:"mm" min:"0.1" max:"20" is:"pitch"`
	Fy   float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// rodBending is the plastic moment of the thread's root; a solid round is class 1. The moment is elementary statics; d_3 is the root of
// the metric profile.
var rodBending = strength.Define(strength.Identity{
	ID: "rod-bending", Title: "bending of a rod under a side force",
	Clause: member("6.2.5, Eq. 6.13", "root of the thread; moment by elementary statics"),
	Demand: "M_Ed", Capacity: "M_Rd", Unit: "N*mm",
}, func(c *strength.Calc, g rodBendingGivens) {
	M := rodMoment(c, g.V, g.L, g.Ends)
	c.Compare(M, rodFlexure(c, practice.ThreadRoot(c, g.D, g.P), g.Fy))
})

func rodMoment(c *strength.Calc, v, l, ends float64) float64 {
	k := 0.5
	if ends > 0 {
		k = 1
	}
	return c.Let("M_Ed", "V_Ed*L*when(ends > 0, 1, 1/2)", "N*mm", v*l*k)
}

func rodFlexure(c *strength.Calc, d3, fy float64) float64 {
	g0 := c.Factor("gamma_M0")
	W := c.Let("W_pl", "pow(d_3, 3)/6", "mm^3", d3*d3*d3/6)
	return c.Let("M_Rd", "W_pl*f_y/gamma_M0", "N*mm", W*fy/g0)
}

type rodCombinedGivens struct {
	N    float64 `sym:"N_Ed" unit:"N" min:"-1e9" max:"1e9" is:"force along the rod, tension positive"`
	V    float64 `sym:"V_Ed" unit:"N" min:"0" max:"1e9" is:"side force on the rod"`
	L    float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length of the rod, nut to nut"`
	Ends float64 `sym:"ends" choices:"both ends held upright|one end held" default:"0" is:"how the rod's ends are held against turning"`
	D    float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	P    float64 `sym:"p" unit:"mm" min:"0.1" max:"20" is:"pitch"`
	Cut  float64 `sym:"thread" choices:"as of bolts to EN 1090|cut by the shop from round bar" default:"1" is:"how the thread was made"`
	Fy   float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fub  float64 `sym:"f_ub" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the rod"`
}

// rodCombined adds the parts (6.2.1(7)). In compression the rod sways, buckling length 1.2 L or 2.1 L, curve c, and the moments grow by k
// of Annex B as in section-interaction.
var rodCombined = strength.Define(strength.Identity{
	ID: "rod-combined", Title: "force along a rod with its bending",
	Clause: member("6.2.1(7), Eq. 6.2; 6.3.1; 6.3.3, Eq. 6.61 with Annex B", "buckling length and k from memory, bounded"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g rodCombinedGivens) {
	d3 := practice.ThreadRoot(c, g.D, g.P)
	M := rodMoment(c, g.V, g.L, g.Ends)
	m := c.Let("u_M", "M_Ed/M_Rd", "", M/rodFlexure(c, d3, g.Fy))
	if g.N >= 0 {
		t := c.Let("u_N", "N_Ed/F_t_Rd", "", g.N/rodTensile(c, g.D, g.P, g.Cut, g.Fub))
		c.Compare(c.Let("U", "u_N + u_M", "", t+m), 1)
		return
	}
	k := 1.2
	if g.Ends > 0 {
		k = 2.1
	}
	A := c.Let("A_3", "pi*pow(d_3, 2)/4", "mm^2", math.Pi*d3*d3/4)
	chi := flexural(c, k*g.L, "when(ends > 0, 2.1, 1.2)*L", c.Let("i", "d_3/4", "mm", d3/4), g.Fy)
	g1 := c.Factor("gamma_M1")
	n := c.Let("u_N", "-N_Ed*gamma_M1/(chi*A_3*f_y)", "", -g.N*g1/(chi*A*g.Fy))
	grow := c.Let("k", "max(1, 0.9*(1 + 0.8*min(u_N, 1)))", "", max(1, 0.9*(1+0.8*min(n, 1))))
	c.Compare(c.Let("U", "u_N + k*u_M", "", n+grow*m), 1)
})

// Threads of a rod from a bolt grade count as cut by the shop too: nothing says that they are those of EN 1090.
var rodRules = append([]strength.Rule[strength.Rod]{
	{Of: rodTension, Check: func(c *strength.Calc, f *strength.Rod) {
		rodTension.Check(c, rodTensionGivens{F: max(f.N, 0), N: 1, K: 1, D: f.D, P: f.Pitch, Cut: 1, Fub: f.Fu})
	}},
	{Of: rodBending, Check: func(c *strength.Calc, f *strength.Rod) {
		rodBending.Check(c, rodBendingGivens{V: f.V, L: f.L, Ends: strength.Flag(!f.Held), D: f.D, P: f.Pitch, Fy: f.Fy})
	}},
	{Of: rodCombined, Check: func(c *strength.Calc, f *strength.Rod) {
		rodCombined.Check(c, rodCombinedGivens{N: f.N, V: f.V, L: f.L, Ends: strength.Flag(!f.Held), D: f.D, P: f.Pitch, Cut: 1, Fy: f.Fy, Fub: f.Fu})
	}},
}, practice.RodRules(func(c *strength.Calc, fy, _ float64) float64 { return fy / c.Factor("gamma_M0") })...)
