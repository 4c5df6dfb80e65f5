package practice

// What no code says of hanger rods and of threads.

import (
	"math"

	"lugwright/strength"
)

type engagementGivens struct {
	L float64 `sym:"L_e" unit:"mm" min:"0" max:"1000" is:"thread engaged"`
	D float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	K float64 `sym:"k_e" unit:"" min:"0.5" max:"3" default:"1" is:"engagement needed in diameters: 1 to 1.5"`
}

// RodEngagement is how deep a rod's thread has to be in its coupling nut or tapped end, and a bolt's in a ply that is tapped for it.
var RodEngagement = strength.Define(strength.Identity{
	ID: "rod-engagement", Title: "engagement of a thread", Unruled: true, Detail: true,
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
		{Of: ThreadStripping, Check: func(c *strength.Calc, f *strength.Rod) {
			ThreadStripping.Check(c, strippingGivens{F: max(f.N, 0) / f.Service, D: f.D, P: f.Pitch, L: f.Engaged, Sue: f.Fu, N: 2})
			c.SkipUnless(f.Engaged > 0, "nuts on plates hold the rod")
		}},
		{Of: HeldRodFoot, Check: func(c *strength.Calc, f *strength.Rod) {
			HeldRodFoot.Check(c, heldFootGivens{V: f.V, L: f.L, T: f.Sheet, W: f.Under, F: stress(c, f.SheetFy, f.SheetFu)})
			c.SkipUnless(f.Sheet > 0, "what the rods' feet stand in is no tray of the bracket")
			c.SkipUnless(f.Held, "the sheet is not counted on to hold the rods upright")
		}},
	}
}

type strippingGivens struct {
	F   float64 `sym:"F" unit:"N" min:"0" max:"1e9" is:"tension, service level"`
	D   float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	P   float64 `sym:"P" unit:"mm" min:"0.05" max:"20" is:"pitch; 1/n of n threads to the inch"`
	L   float64 `sym:"L_e" unit:"mm" min:"0" max:"1000" is:"thread engaged, one pitch of which does not count"`
	Sue float64 `sym:"S_ue" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the bolt or rod"`
	Sui float64 `sym:"S_ui" unit:"MPa" min:"0" max:"3000" default:"0" is:"tensile strength of the tapped part; 0 for a nut of the bolt's own strength or more"`
	N   float64 `sym:"n" unit:"" min:"1" max:"20" default:"2" is:"factor on the strength: 2, by choice, no source"`
}

// ThreadStripping is the tension that shears off the weaker of two threads: half of the cylinder through their flanks' middles, as textbooks have it, less than the
// areas of FED-STD-H28/2 (card Thread stripping) for a basic profile.
var ThreadStripping = strength.Define(strength.Identity{
	ID: "thread-stripping", Title: "stripping of a thread", Unruled: true,
	Clause: strength.Clause{Words: "common practice, no source: half the cylinder of the pitch diameter at 0.577 of the tensile strength"},
	Demand: "F", Capacity: "F_c", Unit: "N",
}, func(c *strength.Calc, g strippingGivens) {
	c.Need(g.D > 1.3*g.P, "d > 1.3*P", "a core within the thread")
	d2 := c.Let("d_2", "d - 0.6495*P", "mm", g.D-0.6495*g.P)
	A := c.Let("A_t", "pi*d_2*max(L_e - P, 0*mm)/2", "mm^2", math.Pi*d2*max(g.L-g.P, 0)/2)
	c.Need(A > 0, "A_t > 0*mm*mm", "more than one thread engaged")
	S := g.Sue
	if g.Sui > 0 {
		S = min(S, g.Sui)
	}
	S = c.Let("S", "when(S_ui > 0*MPa, min(S_ue, S_ui), S_ue)", "MPa", S)
	c.Compare(g.F, c.Let("F_c", "0.577*S*A_t/n", "N", 0.577*S*A/g.N))
})

// ThreadRules serve bolts in tapped plies on any basis.
var ThreadRules = []strength.Rule[strength.Thread]{
	{Of: RodEngagement, Check: func(c *strength.Calc, f *strength.Thread) {
		RodEngagement.Check(c, engagementGivens{L: f.L, D: f.D, K: 1})
	}},
	{Of: ThreadStripping, Check: func(c *strength.Calc, f *strength.Thread) {
		g := strippingGivens{F: f.T / f.Service, D: f.D, P: f.Pitch, L: f.L, Sue: f.Fub, Sui: f.Fu, N: 2}
		// The most that a stated preload may come to is the wrench's own scatter and needs no factor besides; what the load adds to it is small beside it.
		if most := (1 + wrench) * f.Preload * f.Fub * f.As; most > g.N*g.F {
			g.F, g.N = most, 1
		}
		ThreadStripping.Check(c, g)
	}},
}
