package allowable

// Twist of open sections about their shear centre.

import (
	"lugwright/strength"
	"lugwright/strength/practice"
)

type twistGivens struct {
	Shape float64 `sym:"shape" choices:"channel|angle" default:"0" is:"of the section"`
	Ends  float64 `sym:"ends" choices:"cantilever, root held against warping|span, ends held against twist alone, force in the middle" default:"0" is:"how it is held"`
	V     float64 `sym:"V" unit:"N" min:"0" max:"1e9" is:"force along the web, or along one leg of an angle"`
	X     float64 `sym:"x" unit:"mm" min:"-5000" max:"5000" is:"the force from the middle line of the web, or of the leg along it; positive on the flanges' side"`
	L     float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"length of the cantilever, or span"`
	B     float64 `sym:"b" unit:"mm" min:"2" max:"2000" is:"width of the flange, or of the other leg"`
	H     float64 `sym:"h" unit:"mm" min:"2" max:"2000" is:"depth of the section, or of the leg along the force"`
	Tf    float64 `sym:"t_f" unit:"mm" min:"0.2" max:"100" is:"thickness of the flanges, or of the angle"`
	Tw    float64 `sym:"t_w" unit:"mm" min:"0.2" max:"100" is:"thickness of the web; that of the angle"`
	Sn    float64 `sym:"sigma_o" unit:"MPa" min:"0" max:"2500" default:"0" is:"other stress along the flange's tip: bending and axial force"`
	Sv    float64 `sym:"tau_o" unit:"MPa" min:"0" max:"2500" default:"0" is:"other shear stress, from the force itself"`
	E     float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity: 200000 steel, 70000 aluminium"`
	Fy    float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength"`
}

// openTwist is a channel or an angle under a force off its shear centre: St Venant torsion and restrained warping, with other normal and shear
// stresses at the place. Its lateral buckling as a beam is not in it.
var openTwist = strength.Define(strength.Identity{
	ID: "open-section-twist", Title: "twist of a channel or angle about its shear centre",
	Clause: common("elastic stresses by thin-walled theory, von Mises"),
	Demand: "sigma_v", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g twistGivens) {
	G := c.Let("G", "E/(2*(1 + 0.3))", "MPa", g.E/(2*(1+poisson)))
	t := practice.Twist{Shape: g.Shape, Ends: g.Ends, V: g.V, X: g.X, L: g.L, B: g.B, H: g.H, Tf: g.Tf, Tw: g.Tw, E: g.E, G: G}
	sw, tt := t.Of(c)
	sigma := c.Let("sigma", "sigma_o + sigma_w", "MPa", g.Sn+sw)
	tau := c.Let("tau", "tau_o + tau_T", "MPa", g.Sv+tt)
	c.Compare(vonMises(c, sigma, tau), allowed(c, g.Fy, g.Fu))
})
