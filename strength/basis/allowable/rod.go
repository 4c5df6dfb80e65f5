package allowable

// Threaded rods that hang a tray: tension, and force along the rod with bending between two guided ends.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

var rodLimits = []strength.Evaluator{rodTension, rodCombined}

type rodTensionGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"tension on all rods together"`
	N  float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" step:"1" is:"rods"`
	K  float64 `sym:"k_s" unit:"" min:"1" max:"100" default:"1" is:"force of the worst rod over the even share: 2 where two rods of four carry all"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	Pi float64 `sym:"p" unit:"mm" min:"0.1" max:"20" is:"pitch; 1/n of n threads to the inch"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// rodTension is the mean stress on the stress area of inch threads (ASME B1.1), about 1 % under that of metric ones.
var rodTension = strength.Define(strength.Identity{
	ID: "rod-tension", Title: "tension of the worst threaded rod", Clause: common("mean stress on the stress area; share of the rods is a given"),
	Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g rodTensionGivens) {
	c.Need(g.K <= g.N, "k_s <= n", "a rod that bears no more than all of it")
	c.Need(g.D > 1.3*g.Pi, "d > 1.3*p", "a core within the thread")
	A := c.Let("A_s", "pi/4*pow(d - 0.9743*p, 2)", "mm^2", math.Pi/4*(g.D-0.9743*g.Pi)*(g.D-0.9743*g.Pi))
	T := c.Let("T_r", "k_s*P_r/n", "N", g.K*g.P/g.N)
	c.Compare(c.Let("sigma", "T_r/A_s", "MPa", T/A), allowed(c, g.Fy, g.Fu))
})

type rodCombinedGivens struct {
	N    float64 `sym:"P_r" unit:"N" min:"-1e9" max:"1e9" is:"force along the rod, tension positive"`
	V    float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"side force on the rod"`
	L    float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length of the rod, nut to nut"`
	Ends float64 `sym:"ends" choices:"both ends held upright|one end held" default:"0" is:"how the rod's ends are held against turning: nuts on both faces of stiff plates hold; a plate that bends does not"`
	D    float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	P    float64 `sym:"p" unit:"mm" min:"0.1" max:"20" is:"pitch; 1/n of n threads to the inch"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// rodCombined is the elastic stress at the thread's root. A rod that is pressed sways with its end: its bending grows by what n_u times the
// force is of Euler's, of effective length L, or 2 L where one end turns.
var rodCombined = strength.Define(strength.Identity{
	ID: "rod-combined", Title: "force along a rod with its bending", Clause: common("elastic stress at the root of the thread; growth of the bending under pressure by Euler's force"),
	Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g rodCombinedGivens) {
	d3 := practice.ThreadRoot(c, g.D, g.P)
	A := c.Let("A_3", "pi*pow(d_3, 2)/4", "mm^2", math.Pi*d3*d3/4)
	S := c.Let("S", "pi*pow(d_3, 3)/32", "mm^3", math.Pi*d3*d3*d3/32)
	k := 1.0
	if g.Ends > 0 {
		k = 2
	}
	M := c.Let("M_r", "V_r*L*when(ends > 0, 1, 1/2)", "N*mm", g.V*g.L*k/2)
	grow := 1.0
	if g.N < 0 {
		nu := c.Factor("n_u")
		e := c.Let("k_e", "-n_u*P_r*pow(when(ends > 0, 2, 1)*L, 2)/(pow(pi, 2)*200000*MPa*pi*pow(d_3, 4)/64)", "",
			-nu*g.N*k*g.L*k*g.L/(math.Pi*math.Pi*E*math.Pi*d3*d3*d3*d3/64))
		c.Need(e < 1, "k_e < 1", "a rod whose force, n_u times over, is under Euler's")
		grow = c.Let("k", "1/(1 - k_e)", "", 1/(1-e))
	} else {
		c.Let("k", "1", "", grow)
	}
	sigma := c.Let("sigma", "abs(P_r)/A_3 + k*M_r/S", "MPa", math.Abs(g.N)/A+grow*M/S)
	c.Compare(sigma, allowed(c, g.Fy, g.Fu))
})

var rodRules = append([]strength.Rule[strength.Rod]{
	{Of: rodTension, Check: func(c *strength.Calc, f *strength.Rod) {
		rodTension.Check(c, rodTensionGivens{P: max(f.N, 0), N: 1, K: 1, D: f.D, Pi: f.Pitch, Fy: f.Fy, Fu: f.Fu})
	}},
	{Of: rodCombined, Check: func(c *strength.Calc, f *strength.Rod) {
		rodCombined.Check(c, rodCombinedGivens{N: f.N, V: f.V, L: f.L, Ends: strength.Flag(!f.Held), D: f.D, P: f.Pitch, Fy: f.Fy, Fu: f.Fu})
	}},
}, practice.RodRules(allowed)...)
