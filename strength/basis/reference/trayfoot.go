package reference

// A tray bottom under the foot of a tank or a pump.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/statics"
)

type footGivens struct {
	W     float64 `sym:"W" unit:"N" min:"0" max:"1e9" is:"force of the foot, in the middle: its share of the weight times the vertical acceleration in g"`
	A     float64 `sym:"a" unit:"mm" min:"1" max:"1e4" is:"long side between supports"`
	B     float64 `sym:"b" unit:"mm" min:"1" max:"1e4" is:"short side between supports"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"100" is:"thickness of the sheet"`
	R     float64 `sym:"r_0" unit:"mm" min:"0" max:"1000" is:"radius of the foot; of a square one 0.56 of its side, for the same area"`
	E     float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity: 200000 steel, 70000 aluminium"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"2500" is:"stress allowed; that of welded metal for aluminium beside a weld"`
}

// trayFoot is the stress under a foot in the middle of a bottom carried on four sides that turn freely. A foot smaller than half the
// thickness bears on r' of the source.
var trayFoot = strength.Define(strength.Identity{
	ID: "tray-foot", Title: "tray bottom under a foot in its middle",
	Clause: trayClause("Formulas for Stress and Strain, Table 11.4, case 1b", "nu = 0.3; rows between read ones from memory; sag to half the thickness"),
	Demand: "sigma", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g footGivens) {
	c.Need(g.A >= g.B, "a >= b", "a long side no shorter than the other")
	kb, ka := statics.FootedPlate(g.A / g.B)
	beta := c.Solved("beta", "constant of the stress: the table by a/b", "", kb)
	alpha := c.Solved("alpha", "sag in W b^2/(E t^3), likewise", "", ka)
	r := g.R
	if g.R < 0.5*g.T {
		r = math.Sqrt(1.6*g.R*g.R+g.T*g.T) - 0.675*g.T
	}
	r = c.Let("r_e", "when(r_0 < 0.5*t, sqrt(1.6*pow(r_0, 2) + pow(t, 2)) - 0.675*t, r_0)", "mm", r)
	c.Need(r <= g.B/4, "r_e <= b/4", "a foot small beside the bottom")
	y := c.Let("y", "alpha*W*pow(b, 2)/(E*pow(t, 3))", "mm", alpha*g.W*g.B*g.B/(g.E*g.T*g.T*g.T))
	c.Need(y <= g.T/2, "y <= t/2", "a sag of at most half the thickness, for which plate theory holds")
	sigma := 3 * g.W / (2 * math.Pi * g.T * g.T) * (1.3*math.Log(2*g.B/(math.Pi*r)) + beta)
	c.Compare(c.Let("sigma", "3*W/(2*pi*pow(t, 2))*(1.3*log(2*b/(pi*r_e)) + beta)", "MPa", sigma), g.Limit)
})
