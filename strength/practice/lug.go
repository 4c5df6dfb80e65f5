package practice

// What a loose pin and a thin lug add to the checks of a code: contact pressure by Hertz, and the plate beyond the pin that dishes out.

import (
	"math"

	"lugwright/strength"
)

type contactGivens struct {
	P  float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force of the pin on one plate, service level"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Dh float64 `sym:"d_h" unit:"mm" min:"1" max:"1100" is:"hole diameter"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate at the hole"`
	E1 float64 `sym:"E_1" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity of the pin"`
	E2 float64 `sym:"E_2" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity of the plate"`
	K  float64 `sym:"k_c" unit:"" min:"1" max:"4" default:"2.5" is:"pressure allowed over the yield strength: 2.5 of EN 1993-1-8, Eq. 3.16, for replaceable pins; 1.67 is first yield under the surface (greatest shear, Johnson, Contact Mechanics, from memory)"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength, the lower of plate and pin"`
}

// PinContact is the peak pressure of Hertz (1881) between a cylinder and a hole a little larger, Poisson's ratio 0.3; with equal metals and little
// play it is Eq. 3.15 of EN 1993-1-8, 0.591 sqrt(E F (d_0 - d)/(d^2 t)). Its theory holds for a contact narrow beside the pin, up to 30 degrees on either
// side; a wider one, as with a close fit, presses no harder than one of that width would, whatever the play.
var PinContact = strength.Define(strength.Identity{
	ID: "pin-contact-pressure", Title: "contact pressure of a loose pin in its hole", Unruled: true,
	Clause: strength.Clause{Words: "Hertz 1881, cylinder in a cylindrical hole; textbook, no clause; limit as in EN 1993-1-8, Eq. 3.16"},
	Demand: "p_0", Capacity: "p_lim", Unit: "MPa",
}, func(c *strength.Calc, g contactGivens) {
	c.Need(g.Dh >= g.D, "d_h >= d", "the pin goes into the hole")
	e := c.Let("E_s", "1/((1 - pow(0.3, 2))*(1/E_1 + 1/E_2))", "MPa", 1/((1-0.3*0.3)*(1/g.E1+1/g.E2)))
	k := c.Let("kappa", "2*(d_h - d)/(d_h*d)", "1/mm", 2*(g.Dh-g.D)/(g.Dh*g.D))
	narrow := c.Let("p_H", "sqrt(max(P*E_s*kappa/(pi*t), 0*MPa*MPa))", "MPa", math.Sqrt(max(g.P*e*k/(math.Pi*g.T), 0)))
	wide := c.Let("p_w", "8*P/(pi*d*t)", "MPa", 8*g.P/(math.Pi*g.D*g.T))
	p := c.Let("p_0", "max(p_H, p_w)", "MPa", max(narrow, wide))
	c.Compare(p, c.Let("p_lim", "k_c*F_y", "MPa", g.K*g.Fy))
})

// PinContactRule serves pin holes in any basis; one that has a rule of its own does without it.
var PinContactRule = strength.Rule[strength.Bore]{Of: PinContact, Check: func(c *strength.Calc, f *strength.Bore) {
	PinContact.Check(c, contactGivens{P: f.P / f.Service, D: f.D, Dh: f.Dh, T: f.T, E1: f.EPin, E2: f.E, K: 2.5, Fy: min(f.Fy, f.FyPin)})
}}

type dishingGivens struct {
	P  float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force of the pin towards the lug's end"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	A  float64 `sym:"a" unit:"mm" min:"0.1" max:"2000" is:"clear distance from the hole's edge to the lug's end"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	N  float64 `sym:"n" unit:"" min:"1" max:"20" default:"2" is:"factor on buckling: 2, by choice, no source"`
	E  float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity: 200000 steel, 70000 aluminium"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// LugDishing is the strip of plate that the pin presses towards the lug's end, as wide as the pin, held at the hole, free at the end, and loaded
// whole at its end: Euler's column of effective length 2 a, Johnson's parabola where it is stocky. It is cautious, since the plate beside the
// strip holds it and takes the force out of it by shear. A lug held flat on both faces cannot dish.
var LugDishing = strength.Define(strength.Identity{
	ID: "lug-dishing", Title: "dishing of a lug beyond its pin", Unruled: true,
	Clause: strength.Clause{Words: "elementary stability, no clause: a strip as wide as the pin"},
	Demand: "P_n", Capacity: "P_cr", Unit: "N",
}, func(c *strength.Calc, g dishingGivens) {
	s := c.Let("s", "2*a*sqrt(12)/t", "", 2*g.A*math.Sqrt(12)/g.T)
	s1 := c.Let("s_1", "sqrt(2*pow(pi, 2)*E/F_y)", "", math.Sqrt(2*math.Pi*math.Pi*g.E/g.Fy))
	F := g.Fy * (1 - s*s*g.Fy/(4*math.Pi*math.Pi*g.E))
	if s > s1 {
		F = math.Pi * math.Pi * g.E / (s * s)
	}
	F = c.Let("F_cr", "when(s > s_1, pow(pi, 2)*E/pow(s, 2), F_y*(1 - pow(s, 2)*F_y/(4*pow(pi, 2)*E)))", "MPa", F)
	need := c.Let("P_n", "n*P", "N", g.N*g.P)
	c.Compare(need, c.Let("P_cr", "F_cr*d*t", "N", F*g.D*g.T))
})

// DishingRule serves pin holes in any basis but one that limits the width beside the hole for it. Of a force askew the pull dishes the strip to the
// plate's end, the part across that to the farther side; the worse is taken.
var DishingRule = strength.Rule[strength.Bore]{Of: LugDishing, Check: func(c *strength.Calc, f *strength.Bore) {
	across, side := f.Across()
	end := dishingGivens{P: max(f.Pull, 0) / f.Service, D: f.D, A: f.A, T: f.T, N: 2, E: f.E, Fy: f.Fy}
	aside := end
	aside.P, aside.A = across/f.Service, side
	LugDishing.Check(c, aside)
	worse := c.Utilisation()
	LugDishing.Check(c, end)
	if worse > c.Utilisation() {
		LugDishing.Check(c, aside)
	}
	if _, _, _, ok := f.Tears(); !ok {
		c.Skip(strength.Pressed)
	}
	c.SkipUnless(!f.Doubler, "it is welded to the plate behind it")
}}
