package en1993

// Twist of open sections about their shear centre.

import (
	"math"

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
	Fy    float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// openTwist is a channel or an angle under a force off its shear centre: St Venant torsion and restrained warping, elastic, 6.2.7(2) to (5),
// with the yield criterion of 6.2.1(5); other normal and shear stresses at the place are added. Its lateral buckling as a beam is not in it.
var openTwist = strength.Define(strength.Identity{
	ID: "open-section-twist", Title: "twist of a channel or angle about its shear centre",
	Clause: member("6.2.7; 6.2.1(5), Eq. 6.1", "stresses by thin-walled theory, textbook"),
	Demand: "sigma_v", Capacity: "sigma_Rd", Unit: "MPa",
}, func(c *strength.Calc, g twistGivens) {
	e := c.Let("E", "210000*MPa", "MPa", e210)
	G := c.Let("G", "81000*MPa", "MPa", g81)
	t := practice.Twist{Shape: g.Shape, Ends: g.Ends, V: g.V, X: g.X, L: g.L, B: g.B, H: g.H, Tf: g.Tf, Tw: g.Tw, E: e, G: G}
	sw, tt := t.Of(c)
	sigma := c.Let("sigma", "sigma_o + sigma_w", "MPa", g.Sn+sw)
	tau := c.Let("tau", "tau_o + tau_T", "MPa", g.Sv+tt)
	g0 := c.Factor("gamma_M0")
	v := c.Let("sigma_v", "sqrt(pow(sigma, 2) + 3*pow(tau, 2))", "MPa", math.Sqrt(sigma*sigma+3*tau*tau))
	c.Compare(v, c.Let("sigma_Rd", "f_y/gamma_M0", "MPa", g.Fy/g0))
})
