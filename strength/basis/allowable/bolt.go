package allowable

// Bolts on their stress area, their holes, and the plies that they pull on.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/material"
)

var boltLimits = []strength.Evaluator{boltShear, boltTension, boltCombined, boltBearing, boltPly}

type boltShearGivens struct {
	V       float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on one bolt"`
	D       float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	As      float64 `sym:"A_s" unit:"mm^2" min:"0.1" max:"2e4" is:"tensile stress area"`
	Threads float64 `sym:"threads" unit:"" min:"0" max:"1" is:"1 when threads are in the shear plane, else 0"`
	Fy      float64 `sym:"F_y" unit:"MPa" min:"100" max:"2000" is:"yield strength of the bolt"`
	Fu      float64 `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
}

// boltShear is the mean shear on the area that the shear plane cuts.
var boltShear = strength.Define(strength.Identity{
	ID: "bolt-shear", Title: "shear of the bolt", Clause: common("mean shear on the stress area, or on the shank"),
	Demand: "tau", Capacity: "tau_all", Unit: "MPa",
}, func(c *strength.Calc, g boltShearGivens) {
	A := shearArea(c, g.D, g.As, g.Threads)
	tau := c.Let("tau", "V_r/A", "MPa", g.V/A)
	c.Compare(tau, allowedShear(c, allowed(c, g.Fy, g.Fu)))
})

func shearArea(c *strength.Calc, d, as, threads float64) float64 {
	A := math.Pi * d * d / 4
	if threads > 0 {
		A = as
	}
	return c.Let("A", "when(threads > 0, A_s, pi*pow(d, 2)/4)", "mm^2", A)
}

type boltTensionGivens struct {
	T  float64 `sym:"T_r" unit:"N" min:"0" max:"1e9" is:"tension in one bolt"`
	As float64 `sym:"A_s" unit:"mm^2" min:"0.1" max:"2e4" is:"tensile stress area"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"100" max:"2000" is:"yield strength of the bolt"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
}

// boltTension is the mean stress on the stress area.
var boltTension = strength.Define(strength.Identity{
	ID: "bolt-tension", Title: "tension of the bolt", Clause: common("mean stress on the stress area"),
	Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g boltTensionGivens) {
	sigma := c.Let("sigma", "T_r/A_s", "MPa", g.T/g.As)
	c.Compare(sigma, allowed(c, g.Fy, g.Fu))
})

type boltCombinedGivens struct {
	T  float64 `sym:"T_r" unit:"N" min:"0" max:"1e9" is:"tension in one bolt"`
	V  float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on the same bolt"`
	As float64 `sym:"A_s" unit:"mm^2" min:"0.1" max:"2e4" is:"tensile stress area"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"100" max:"2000" is:"yield strength of the bolt"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
}

// boltCombined is the von Mises stress of both on the stress area, wherever the shear plane lies.
var boltCombined = strength.Define(strength.Identity{
	ID: "bolt-combined", Title: "tension of the bolt with its shear", Clause: common("von Mises stress on the stress area"),
	Demand: "sigma_v", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g boltCombinedGivens) {
	sigma := c.Let("sigma", "T_r/A_s", "MPa", g.T/g.As)
	tau := c.Let("tau", "V_r/A_s", "MPa", g.V/g.As)
	c.Compare(vonMises(c, sigma, tau), allowed(c, g.Fy, g.Fu))
})

type boltBearingGivens struct {
	V     float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on one bolt"`
	D     float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Dh    float64 `sym:"d_h" unit:"mm" min:"1" max:"200" is:"hole diameter"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the ply"`
	Edge  float64 `sym:"l_e" unit:"mm" min:"0" max:"1e5" is:"hole centre to the nearest edge; 0 when none is near"`
	Pitch float64 `sym:"s" unit:"mm" min:"0" max:"1e5" is:"hole centre to the nearest hole; 0 when none is near"`
	Fy    float64 `sym:"F_y" unit:"MPa" min:"0" max:"2500" default:"0" is:"yield strength of the ply; 0 where it is not known, carbon steel alone"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
}

// boltBearing is mean pressure on the projected area, and mean shear on two planes to the nearest edge or hole, whichever way the force
// points.
var boltBearing = strength.Define(strength.Identity{
	ID: "bolt-bearing", Title: "bearing and tear-out at the bolt hole", Clause: common("mean pressure; mean shear on two planes"),
	Demand: "V_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g boltBearingGivens) {
	sigma := allowedBare(c, g.Fy, g.Fu)
	tau := allowedShear(c, sigma)
	Rc := c.Let("R_b", "sigma_p*d*t", "N", allowedBearing(c, sigma)*g.D*g.T)
	if g.Edge > 0 {
		lc := c.Let("l_ce", "l_e - d_h/2", "mm", g.Edge-g.Dh/2)
		c.Need(lc > 0, "l_ce > 0*mm", "material between the hole and the edge")
		Rc = min(Rc, c.Let("R_te", "2*l_ce*t*tau_all", "N", 2*lc*g.T*tau))
	}
	if g.Pitch > 0 {
		lc := c.Let("l_cs", "s - d_h", "mm", g.Pitch-g.Dh)
		c.Need(lc > 0, "l_cs > 0*mm", "material between the holes")
		Rc = min(Rc, c.Let("R_ts", "2*l_cs*t*tau_all", "N", 2*lc*g.T*tau))
	}
	c.Compare(g.V, c.Let("R_c", leastOf(g.Edge > 0, g.Pitch > 0), "N", Rc))
})

func leastOf(edge, pitch bool) string {
	switch {
	case edge && pitch:
		return "min(R_b, R_te, R_ts)"
	case edge:
		return "min(R_b, R_te)"
	case pitch:
		return "min(R_b, R_ts)"
	}
	return "R_b"
}

type boltPlyGivens struct {
	T  float64 `sym:"T_r" unit:"N" min:"0" max:"1e9" is:"tension on one bolt, prying not in it"`
	B  float64 `sym:"b" unit:"mm" min:"0.1" max:"1000" is:"bolt line to the face of the part that stands on the ply"`
	P  float64 `sym:"p" unit:"mm" min:"1" max:"2000" is:"length of ply that serves one bolt"`
	Tp float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the ply"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"0" max:"2500" default:"0" is:"yield strength of the ply; 0 where it is not known, carbon steel alone"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
}

// boltPly holds the ply at a bolt in tension to the thickness at which it carries the bolt's force as a cantilever by itself, so that no
// prying force is needed for balance.
var boltPly = strength.Define(strength.Identity{
	ID: "bolt-prying", Title: "ply bent by the bolt's tension", Clause: common("cantilever from the standing part, so that nothing pries"),
	Demand: "t_req", Capacity: "t", Unit: "mm",
}, func(c *strength.Calc, g boltPlyGivens) {
	sigma := allowedBare(c, g.Fy, g.Fu)
	c.Compare(c.Let("t_req", "sqrt(6*T_r*b/(p*sigma_all))", "mm", math.Sqrt(6*g.T*g.B/(g.P*sigma))), g.Tp)
})

// yieldOf is the yield strength of a bolt grade at a diameter; 0, and so no verdict of pass, where its table does not reach.
func yieldOf(f *strength.Bolt) float64 {
	grade, err := material.LookupBoltGrade(f.Grade)
	if err != nil {
		return 0
	}
	_, fy, _, err := grade.Strength(f.D)
	if err != nil {
		return 0
	}
	return fy
}

var boltRules = []strength.Rule[strength.Bolt]{
	{Of: boltShear, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltShear.Check(c, boltShearGivens{V: f.V, D: f.D, As: f.As, Threads: strength.Flag(f.ThreadsIn), Fy: yieldOf(f), Fu: f.Fub})
	}},
	{Of: boltTension, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltTension.Check(c, boltTensionGivens{T: f.T, As: f.As, Fy: yieldOf(f), Fu: f.Fub})
	}},
	{Of: boltCombined, Check: func(c *strength.Calc, f *strength.Bolt) {
		boltCombined.Check(c, boltCombinedGivens{T: f.T, V: f.V, As: f.As, Fy: yieldOf(f), Fu: f.Fub})
	}},
}

var bearingRules = []strength.Rule[strength.BoltBearing]{
	{Of: boltBearing, Check: func(c *strength.Calc, f *strength.BoltBearing) {
		boltBearing.Check(c, boltBearingGivens{V: f.V, D: f.D, Dh: f.Dh, T: f.T, Edge: f.Edge, Pitch: f.Pitch, Fy: f.Fy, Fu: f.Fu})
	}},
}

var pryingRules = []strength.Rule[strength.Prying]{
	{Of: boltPly, Check: func(c *strength.Calc, f *strength.Prying) {
		boltPly.Check(c, boltPlyGivens{T: f.T, B: f.B, P: f.P, Tp: f.Tply, Fy: f.Fy, Fu: f.Fu})
	}},
}
