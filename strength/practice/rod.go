package practice

// What no code says of hanger rods.

import "lugwright/strength"

type engagementGivens struct {
	L float64 `sym:"L_e" unit:"mm" min:"0" max:"1000" is:"thread engaged at the rod's end"`
	D float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	K float64 `sym:"k_e" unit:"" min:"0.5" max:"3" default:"1" is:"engagement needed in diameters: 1 to 1.5"`
}

// RodEngagement is how deep a rod's thread has to be in its coupling nut or tapped end.
var RodEngagement = strength.Define(strength.Identity{
	ID: "rod-engagement", Title: "engagement of a rod's thread", Unruled: true, Detail: true,
	Clause: strength.Clause{Words: "common practice, no source"},
	Demand: "L_req", Capacity: "L_e", Unit: "mm",
}, func(c *strength.Calc, g engagementGivens) {
	c.Need(g.L > 0, "L_e > 0*mm", "a rod whose thread is engaged")
	c.Compare(c.Let("L_req", "k_e*d", "mm", g.K*g.D), g.L)
})

// RodRules serve rods on any basis.
var RodRules = []strength.Rule[strength.Rod]{
	{Of: RodEngagement, Check: func(c *strength.Calc, f *strength.Rod) {
		RodEngagement.Check(c, engagementGivens{L: f.Engaged, D: f.D, K: 1})
		c.SkipUnless(f.Engaged > 0, "nuts on plates hold the rod")
	}},
}
