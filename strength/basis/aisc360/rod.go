package aisc360

// Threaded rods that hang a tray: tension, bending between two guided ends under a side force, both together.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

var rodLimits = []strength.Evaluator{rodTension, rodBending, rodCombined}

type rodTensionGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"tension on all rods together"`
	N  float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" step:"1" is:"rods"`
	K  float64 `sym:"k_s" unit:"" min:"1" max:"100" default:"1" is:"force of the worst rod over the even share: 2 where two rods of four carry all"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// rodTension is rupture of the worst of several threaded rods on the nominal area: AISC 360-22 J3.7, Eq. J3-1, with F_nt = 0.75 F_u of
// Table J3.2 for threaded parts.
var rodTension = strength.Define(strength.Identity{
	ID: "rod-tension", Title: "tension of the worst threaded rod",
	Clause: clause("J3.7, Eq. J3-1 and Table J3.2, threaded parts", "share of the rods is a given"),
	Demand: "T_r", Capacity: "T_c", Unit: "N",
}, func(c *strength.Calc, g rodTensionGivens) {
	c.Need(g.K <= g.N, "k_s <= n", "a rod that bears no more than all of it")
	T := c.Let("T_r", "k_s*P_r/n", "N", g.K*g.P/g.N)
	c.Compare(T, rodTensile(c, g.D, g.Fu))
})

// rodTensile is the available tension of a threaded rod.
func rodTensile(c *strength.Calc, d, fu float64) float64 {
	A := c.Let("A_b", "pi*pow(d, 2)/4", "mm^2", math.Pi*d*d/4)
	F := c.Let("F_nt", "0.75*F_u", "MPa", 0.75*fu)
	return c.Available("T_c", "F_nt*A_b", "N", F*A, 0.75, 2.00)
}

type rodBendingGivens struct {
	V    float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"side force on one rod"`
	L    float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length of the rod, nut to nut"`
	Ends float64 `sym:"ends" choices:"both ends held upright|one end held" default:"0" is:"how the rod's ends are held against turning: nuts on both faces of stiff plates hold; a plate that bends does not"`
	D    float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	P    float64 `sym:"p" unit:"mm" min:"0.1" max:"20" is:"pitch; 1/n of n threads to the inch"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// rodBending is bending of a rod whose ends move sideways and stay upright, or of which one end turns freely, on the thread's root: AISC
// 360-22 F11.1, Eq. F11-2. The moment is elementary statics; d_3 is the root of a 60 degree thread.
var rodBending = strength.Define(strength.Identity{
	ID: "rod-bending", Title: "bending of a rod under a side force",
	Clause: clause("F11.1, Eq. F11-2 (rounds)", "root of the thread; moment by elementary statics"),
	Demand: "M_r", Capacity: "M_c", Unit: "N*mm",
}, func(c *strength.Calc, g rodBendingGivens) {
	M := rodMoment(c, g.V, g.L, g.Ends)
	c.Compare(M, rodFlexure(c, practice.ThreadRoot(c, g.D, g.P), g.Fy))
})

func rodMoment(c *strength.Calc, v, l, ends float64) float64 {
	k := 0.5
	if ends > 0 {
		k = 1
	}
	return c.Let("M_r", "V_r*L*when(ends > 0, 1, 1/2)", "N*mm", v*l*k)
}

// rodFlexure is the available moment; for a round Z/S is 1.70, so that 1.6 F_y S governs.
func rodFlexure(c *strength.Calc, d3, fy float64) float64 {
	Z := c.Let("Z", "pow(d_3, 3)/6", "mm^3", d3*d3*d3/6)
	S := c.Let("S", "pi*pow(d_3, 3)/32", "mm^3", math.Pi*d3*d3*d3/32)
	return c.Available("M_c", "min(F_y*Z, 1.6*F_y*S)", "N*mm", min(fy*Z, 1.6*fy*S), 0.90, 1.67)
}

type rodCombinedGivens struct {
	N    float64 `sym:"P_r" unit:"N" min:"-1e9" max:"1e9" is:"force along the rod, tension positive"`
	V    float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"side force on the rod"`
	L    float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length of the rod, nut to nut"`
	Ends float64 `sym:"ends" choices:"both ends held upright|one end held" default:"0" is:"how the rod's ends are held against turning"`
	D    float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	P    float64 `sym:"p" unit:"mm" min:"0.1" max:"20" is:"pitch; 1/n of n threads to the inch"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// rodCombined is the force along the rod with its bending: AISC 360-22 H1.1 and H1.2, Eq. H1-1a and H1-1b; in compression the rod buckles
// with its end swaying, K = 1.2 or 2.1 (Commentary Table C-A-7.1, from memory), and the moment grows by Eq. A-8-6.
var rodCombined = strength.Define(strength.Identity{
	ID: "rod-combined", Title: "force along a rod with its bending",
	Clause: clause("H1.1 and H1.2, Eq. H1-1a and H1-1b; E3; J3.7; F11.1; Appendix 8, Eq. A-8-6", "K and the growth of the moment from memory"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g rodCombinedGivens) {
	d3 := practice.ThreadRoot(c, g.D, g.P)
	M := rodMoment(c, g.V, g.L, g.Ends)
	Mc := rodFlexure(c, d3, g.Fy)
	if g.N >= 0 {
		Tc := rodTensile(c, g.D, g.Fu)
		h11(c, c.Let("u_P", "P_r/T_c", "", g.N/Tc), c.Let("u_M", "M_r/M_c", "", M/Mc))
		return
	}
	K := 1.2
	if g.Ends > 0 {
		K = 2.1
	}
	A := c.Let("A_3", "pi*pow(d_3, 2)/4", "mm^2", math.Pi*d3*d3/4)
	lc := c.Let("L_c", "L*when(ends > 0, 2.1, 1.2)", "mm", g.L*K)
	Fn := columnStress(c, lc, c.Let("r", "d_3/4", "mm", d3/4), g.Fy)
	Pc := c.Available("P_c", "F_n*A_3", "N", Fn*A, 0.90, 1.67)
	B := swayGrowth(c, g.N, lc, d3)
	h11(c, c.Let("u_P", "-P_r/P_c", "", -g.N/Pc), c.Let("u_M", "B_2*M_r/M_c", "", B*M/Mc))
})

// swayGrowth is B_2 of a lone rod: 1/(1 - alpha P/P_e), alpha 1.6 for ASD.
func swayGrowth(c *strength.Calc, n, lc, d3 float64) float64 {
	alpha, text := 1.0, "1.0"
	if c.Method == strength.ASD {
		alpha, text = 1.6, "1.6"
	}
	c.Let("alpha", text, "", alpha)
	k := c.Let("k_e", "-alpha*P_r*pow(L_c, 2)/(pow(pi, 2)*29000*ksi*pi*pow(d_3, 4)/64)", "", -alpha*n*lc*lc/(math.Pi*math.Pi*E*math.Pi*d3*d3*d3*d3/64))
	c.Need(k < 1, "k_e < 1", "a rod under its elastic buckling load")
	return c.Let("B_2", "1/(1 - k_e)", "", 1/(1-k))
}

// h11 ends a limit state with the interaction of axial force and bending, H1-1a from a fifth of the axial strength up, else H1-1b.
func h11(c *strength.Calc, uP, uM float64) {
	u := uP/2 + uM
	if uP >= 0.2 {
		u = uP + 8.0/9*uM
	}
	c.Compare(c.Let("U", "when(u_P >= 0.2, u_P + 8/9*u_M, u_P/2 + u_M)", "", u), 1)
}

var rodRules = append([]strength.Rule[strength.Rod]{
	{Of: rodTension, Check: func(c *strength.Calc, f *strength.Rod) {
		rodTension.Check(c, rodTensionGivens{P: max(f.N, 0), N: 1, K: 1, D: f.D, Fu: f.Fu})
	}},
	{Of: rodBending, Check: func(c *strength.Calc, f *strength.Rod) {
		rodBending.Check(c, rodBendingGivens{V: f.V, L: f.L, Ends: strength.Flag(!f.Held), D: f.D, P: f.Pitch, Fy: f.Fy})
	}},
	{Of: rodCombined, Check: func(c *strength.Calc, f *strength.Rod) {
		rodCombined.Check(c, rodCombinedGivens{N: f.N, V: f.V, L: f.L, Ends: strength.Flag(!f.Held), D: f.D, P: f.Pitch, Fy: f.Fy, Fu: f.Fu})
	}},
}, practice.RodRules(func(c *strength.Calc, fy, _ float64) float64 {
	if c.Method == strength.LRFD {
		return 0.90 * fy
	}
	return fy / 1.67
})...)
