// Package practice holds limit states that no design code states and every basis may offer: bush pressure, wear, the deflection of a
// slender pin, the contact of a loose one, a lug that dishes; and lines of elementary theory that limit states of several bases share. Each
// names a maker's page, elementary mechanics, or "common practice, no source"; it never speaks for a code.
package practice

import (
	"math"

	"lugwright/strength"
)

type bushGivens struct {
	P float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force on the bush, service level"`
	D float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	L float64 `sym:"L" unit:"mm" min:"0.5" max:"1000" is:"bearing length of the bush"`
	A float64 `sym:"p_lim" unit:"MPa" min:"1" max:"500" default:"90" is:"pressure that the bush bears at rest: 90 turned bronze, 250 lined steel (makers' pages)"`
}

// BushPressure is the static peak pressure of a pin in its bush, P/(d L).
var BushPressure = strength.Define(strength.Identity{
	ID: "bush-pressure", Title: "peak pressure of the pin in its bush", Unruled: true,
	Clause: strength.Clause{Words: "makers' pages for turned bronze and lined steel bushes; static"},
	Demand: "p", Capacity: "p_lim", Unit: "MPa",
}, func(c *strength.Calc, g bushGivens) {
	c.Compare(c.Let("p", "P/(d*L)", "MPa", g.P/(g.D*g.L)), g.A)
})

type wearGivens struct {
	P float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force on the bush at rest, 1 g"`
	D float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	L float64 `sym:"L" unit:"mm" min:"0.5" max:"1000" is:"bearing length of the bush"`
	A float64 `sym:"p_lim" unit:"MPa" min:"1" max:"500" default:"25" is:"pressure that the bush bears while it turns: 25 turned bronze, 140 lined steel (makers' pages)"`
}

// BushWear is the pressure at 1 g, which decides how long a bush lasts.
var BushWear = strength.Define(strength.Identity{
	ID: "bush-wear", Title: "pressure of the pin in its bush at 1 g", Unruled: true,
	Clause: strength.Clause{Words: "makers' pages for turned bronze and lined steel bushes; moving"},
	Demand: "p", Capacity: "p_lim", Unit: "MPa",
}, func(c *strength.Calc, g wearGivens) {
	c.Compare(c.Let("p", "P/(d*L)", "MPa", g.P/(g.D*g.L)), g.A)
})

type deflectionGivens struct {
	P float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force in the middle of the span"`
	S float64 `sym:"s" unit:"mm" min:"1" max:"5000" is:"span between the middles of the outer ears"`
	D float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	E float64 `sym:"E" unit:"MPa" min:"1000" max:"500000" default:"200000" is:"modulus of elasticity"`
	A float64 `sym:"delta_lim" unit:"mm" min:"0.001" max:"100" is:"deflection that the fit allows: half the play, common practice, no source"`
}

// PinDeflection is the deflection of a pin as a simple beam under a load in its middle, shear left out: elementary statics. A pin that bows by more than
// half its play presses on its ears' edges.
var PinDeflection = strength.Define(strength.Identity{
	ID: "pin-deflection", Title: "deflection of a slender pin", Unruled: true,
	Clause: strength.Clause{Words: "elementary statics; the limit of half the play common practice, no source"},
	Demand: "delta", Capacity: "delta_lim", Unit: "mm",
}, func(c *strength.Calc, g deflectionGivens) {
	I := c.Let("I", "pi*pow(d, 4)/64", "mm^4", math.Pi*math.Pow(g.D, 4)/64)
	c.Compare(c.Let("delta", "P*pow(s, 3)/(48*E*I)", "mm", g.P*g.S*g.S*g.S/(48*g.E*I)), g.A)
})

// BushRules serve the feature Bush in any basis.
var BushRules = []strength.Rule[strength.Bush]{
	{Of: BushPressure, Check: func(c *strength.Calc, f *strength.Bush) {
		BushPressure.Check(c, bushGivens{P: f.P / f.Service, D: f.D, L: f.L, A: 90})
	}},
	{Of: BushWear, Check: func(c *strength.Calc, f *strength.Bush) {
		BushWear.Check(c, wearGivens{P: f.P / f.Service, D: f.D, L: f.L, A: 25})
		c.SkipUnless(f.AtRest, "no load case is stated as acting at rest, 1 g down")
	}},
}

// PinDeflectionRule serves pins between two seats in any basis.
var PinDeflectionRule = strength.Rule[strength.PinSpan]{Of: PinDeflection, Check: func(c *strength.Calc, f *strength.PinSpan) {
	PinDeflection.Check(c, deflectionGivens{P: f.P / f.Service, S: f.Span, D: f.D, E: f.E, A: f.Play / 2})
	c.SkipUnless(f.Play > 0, "no play of the pin in its holes is stated")
}}

// Limits lists the limit states.
var Limits = []strength.Evaluator{BushPressure, BushWear, PinDeflection, PinContact, LugDishing, RodEngagement, HeldRodFoot, ThreadStripping, BoltSet, BoltSeparation, BoltTorque}
