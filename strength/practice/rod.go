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

type heldFootGivens struct {
	V float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"side force on one rod"`
	L float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"free length of the rod, nut to nut"`
	T float64 `sym:"t" unit:"mm" min:"0.1" max:"100" is:"thickness of the sheet"`
	W float64 `sym:"w" unit:"mm" min:"1" max:"1000" is:"side of the spreader washer, or the nut across its flats where there is none"`
	F float64 `sym:"F_c" unit:"MPa" min:"1" max:"2500" is:"stress that the sheet may bear: its yield strength with the basis's factor"`
}

// HeldRodFoot is the sheet that holds a rod's foot upright: half of the rod's end moment goes off on either side, in a strip as wide as the washer. The strips stay
// under first yield, since a sheet that turns does not hold.
var HeldRodFoot = strength.Define(strength.Identity{
	ID: "held-rod-foot", Title: "sheet that holds a rod's foot upright", Unruled: true,
	Clause: strength.Clause{Words: "strips as wide as the washer, bent by nothing else: common practice, no source"},
	Demand: "M_r", Capacity: "M_c", Unit: "N*mm",
}, func(c *strength.Calc, g heldFootGivens) {
	M := c.Let("M_r", "V_r*L/2", "N*mm", g.V*g.L/2)
	c.Compare(M, c.Let("M_c", "2*F_c*w*pow(t, 2)/6", "N*mm", 2*g.F*g.W*g.T*g.T/6))
})

// RodRules serve rods on any basis, which gives the stress that a sheet in bending may bear by its yield and tensile strength.
func RodRules(stress func(c *strength.Calc, fy, fu float64) float64) []strength.Rule[strength.Rod] {
	return []strength.Rule[strength.Rod]{
		{Of: RodEngagement, Check: func(c *strength.Calc, f *strength.Rod) {
			RodEngagement.Check(c, engagementGivens{L: f.Engaged, D: f.D, K: 1})
			c.SkipUnless(f.Engaged > 0, "nuts on plates hold the rod")
		}},
		{Of: HeldRodFoot, Check: func(c *strength.Calc, f *strength.Rod) {
			HeldRodFoot.Check(c, heldFootGivens{V: f.V, L: f.L, T: f.Sheet, W: f.Under, F: stress(c, f.SheetFy, f.SheetFu)})
			c.SkipUnless(f.Sheet > 0, "what the rods' feet stand in is no tray of the bracket")
			c.SkipUnless(f.Held, "the sheet is not counted on to hold the rods upright")
		}},
	}
}
