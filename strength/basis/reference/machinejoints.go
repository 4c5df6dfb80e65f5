package reference

// Joints of machine design textbooks beside the lap: bolts under a bracket that tilts, welds on both sides of an unsymmetric bar, and how bolt
// and members share a load on a preloaded joint.

import (
	"math"

	"lugwright/strength"
)

type tiltGivens struct {
	L    []float64 `sym:"l_i" unit:"mm" min:"0" max:"1e5" is:"distance of each bolt from the edge about which the bracket tilts"`
	P    float64   `sym:"P" unit:"N" min:"0" max:"1e9" is:"force on the bracket"`
	E    float64   `sym:"e" unit:"mm" min:"0" max:"1e6" is:"arm of the force about that edge: of a force across the bolts, from their heads' plane"`
	Way  float64   `sym:"way" choices:"across the bolts|along the bolts" default:"0" is:"direction of the force: shared in shear, or shared in tension"`
	Rule float64   `sym:"rule" choices:"maximum shear|maximum tension" default:"0" is:"stress that is held to the allowable one"`
	S    float64   `sym:"s_all" unit:"MPa" min:"0.1" max:"2000" is:"allowable stress of that rule"`
	K    float64   `sym:"k_d" unit:"" min:"0.5" max:"1" default:"0.8" is:"core diameter of a thread over its nominal one"`
	D    float64   `sym:"d" unit:"mm" min:"0" max:"500" default:"0" is:"core diameter; 0 when only the least is wanted"`
}

// boltTilt is a rigid bracket that tilts about an edge: tension by distance from it, the force itself shared alike.
var boltTilt = strength.Define(strength.Identity{
	ID: "bolt-group-tilting", Title: "bolts of a bracket that tilts about its edge",
	Clause: bookClause("eccentric load out of the plane of the bolts", "rigid bracket, tension by distance from the edge"),
	Demand: "d_req", Capacity: "d", Unit: "mm",
}, func(c *strength.Calc, g tiltGivens) {
	var sum, far float64
	for _, l := range g.L {
		sum += l * l
		far = max(far, l)
	}
	n := c.Solved("n", "bolts, counted", "", float64(len(g.L)))
	far = c.Solved("l_max", "distance of the furthest bolt", "mm", far)
	sum = c.Solved("l_sq", "squares of the distances, summed", "mm^2", sum)
	c.Need(sum > 0, "l_sq > 0*mm*mm", "a bolt away from the edge")
	each := c.Let("P_1", "P/n", "N", g.P/n)
	tilt := c.Let("P_2", "P*e*l_max/l_sq", "N", g.P*g.E*far/sum)
	Ft := c.Let("F_t", "P_2 + when(way > 0, P_1, 0*N)", "N", tilt+each*g.Way)
	Fv := c.Let("F_v", "when(way > 0, 0*N, P_1)", "N", each*(1-g.Way))
	R := c.Let("R", "sqrt(pow(F_t/2, 2) + pow(F_v, 2))", "N", math.Hypot(Ft/2, Fv))
	A := c.Let("A_req", "(R + when(rule > 0, F_t/2, 0*N))/s_all", "mm^2", (R+Ft/2*g.Rule)/g.S)
	d := c.Let("d_req", "sqrt(4*A_req/pi)", "mm", math.Sqrt(4*A/math.Pi))
	c.Let("d_nom", "d_req/k_d", "mm", d/g.K)
	c.Least(d, g.D)
})

type sideWeldGivens struct {
	P   float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force along the bar, through its centroid"`
	H   float64 `sym:"h" unit:"mm" min:"0.1" max:"200" is:"fillet leg"`
	Tau float64 `sym:"tau_all" unit:"MPa" min:"0.1" max:"2000" is:"allowable shear stress on the throat"`
	Ya  float64 `sym:"y_a" unit:"mm" min:"0.1" max:"1e4" is:"distance of weld a from the force"`
	Yb  float64 `sym:"y_b" unit:"mm" min:"0.1" max:"1e4" is:"distance of weld b from the force, on its other side"`
	L   float64 `sym:"l" unit:"mm" min:"0" max:"1e5" default:"0" is:"length of both welds; 0 when only the least is wanted"`
}

// sideWelds are two fillets along an angle or another bar whose force is nearer to one of them: lengths without a moment about the force.
var sideWelds = strength.Define(strength.Identity{
	ID: "fillet-side-lengths", Title: "lengths of the side welds of an unsymmetric bar",
	Clause: bookClause("axially loaded unsymmetric welds", "throat of 0.707 h"),
	Demand: "l_req", Capacity: "l", Unit: "mm",
}, func(c *strength.Calc, g sideWeldGivens) {
	l := c.Let("l_req", "P/(0.707*h*tau_all)", "mm", g.P/(0.707*g.H*g.Tau))
	c.Let("l_a", "l_req*y_b/(y_a + y_b)", "mm", l*g.Yb/(g.Ya+g.Yb))
	c.Let("l_b", "l_req*y_a/(y_a + y_b)", "mm", l*g.Ya/(g.Ya+g.Yb))
	c.Least(l, g.L)
})

type loadShareGivens struct {
	P  float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"load that pulls the joint apart, for one bolt"`
	Fi float64 `sym:"F_i" unit:"N" min:"0" max:"1e9" is:"preload"`
	Kb float64 `sym:"k_b" unit:"N/mm" min:"0" max:"1e9" default:"0" is:"stiffness of the bolt"`
	Km float64 `sym:"k_m" unit:"N/mm" min:"0" max:"1e9" default:"0" is:"stiffness of the members"`
	C  float64 `sym:"C_given" unit:"" min:"0" max:"1" default:"0" is:"part of the load that the bolt takes, where it is known; 0 takes k_b/(k_b + k_m)"`
	At float64 `sym:"A_t" unit:"mm^2" min:"0.1" max:"2e4" is:"tensile stress area"`
	Sp float64 `sym:"S_p" unit:"MPa" min:"1" max:"3000" is:"proof strength"`
}

// loadShare is a preloaded joint under a load that pulls it apart: what the bolt takes of it, against proof and against separation.
var loadShare = strength.Define(strength.Identity{
	ID: "joint-load-share", Title: "share of bolt and members in a load on a preloaded joint",
	Clause: bookClause("preloaded joints in tension", "two springs side by side"),
	Demand: "P", Capacity: "P_max", Unit: "N",
}, func(c *strength.Calc, g loadShareGivens) {
	var C float64
	if g.C > 0 {
		C = c.Let("C", "C_given", "", g.C)
	} else {
		c.Need(g.Kb > 0 && g.Km > 0, "k_b*k_m > 0*N*N/(mm*mm)", "both stiffnesses, or C_given")
		C = c.Let("C", "k_b/(k_b + k_m)", "", g.Kb/(g.Kb+g.Km))
	}
	c.Need(C < 1, "C < 1", "members that take a part of the load")
	Fp := c.Let("F_p", "S_p*A_t", "N", g.Sp*g.At)
	c.Need(g.Fi < Fp, "F_i < F_p", "a preload below proof")
	Fb := c.Let("F_b", "C*P + F_i", "N", C*g.P+g.Fi)
	c.Let("sigma_b", "F_b/A_t", "MPa", Fb/g.At)
	if g.P > 0 && g.Fi > 0 {
		c.Let("n_p", "F_p/F_b", "", Fp/Fb)
		c.Let("n_L", "(F_p - F_i)/(C*P)", "", (Fp-g.Fi)/(C*g.P))
		c.Let("n_0", "F_i/(P*(1 - C))", "", g.Fi/(g.P*(1-C)))
	}
	c.Compare(g.P, c.Let("P_max", "min((F_p - F_i)/C, F_i/(1 - C))", "N", min((Fp-g.Fi)/C, g.Fi/(1-C))))
})
