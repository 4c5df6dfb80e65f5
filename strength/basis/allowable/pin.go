package allowable

// Pins and the holes they bear in.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

var pinLimits = []strength.Evaluator{pinShear, pinBending, pinCombined, pinBearing, pinPlateTension, pinPlateShear}

type pinShearGivens struct {
	V  float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on one plane of the pin"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the pin"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the pin"`
}

// pinShear is the peak of elastic shear in a round section, 4/3 of the mean: elementary beam theory.
var pinShear = strength.Define(strength.Identity{
	ID: "pin-shear", Title: "shear of the pin", Clause: common("peak shear of a round section"),
	Demand: "tau", Capacity: "tau_all", Unit: "MPa",
}, func(c *strength.Calc, g pinShearGivens) {
	A := c.Let("A_pin", "pi*pow(d, 2)/4", "mm^2", math.Pi*g.D*g.D/4)
	tau := c.Let("tau", "4/3*V_r/A_pin", "MPa", 4.0/3*g.V/A)
	c.Compare(tau, allowedShear(c, allowed(c, g.Fy, g.Fu)))
})

type pinBendingGivens struct {
	M  float64 `sym:"M_r" unit:"N*mm" min:"0" max:"1e12" is:"largest bending moment in the pin"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the pin"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the pin"`
}

// pinBending is the elastic bending stress of a round bar.
var pinBending = strength.Define(strength.Identity{
	ID: "pin-bending", Title: "bending of the pin", Clause: common("elastic bending"),
	Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g pinBendingGivens) {
	S := c.Let("S", "pi*pow(d, 3)/32", "mm^3", math.Pi*g.D*g.D*g.D/32)
	sigma := c.Let("sigma", "M_r/S", "MPa", g.M/S)
	c.Compare(sigma, allowed(c, g.Fy, g.Fu))
})

type pinCombinedGivens struct {
	M  float64 `sym:"M_r" unit:"N*mm" min:"0" max:"1e12" is:"largest bending moment in the pin"`
	V  float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"largest shear force in the pin"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the pin"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the pin"`
}

// pinCombined adds the mean shear to the greatest bending stress by von Mises, though the two meet neither in one fibre nor always in one
// section.
var pinCombined = strength.Define(strength.Identity{
	ID: "pin-combined", Title: "bending and shear of the pin together", Clause: common("von Mises of the greatest bending stress and the mean shear"),
	Demand: "sigma_v", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g pinCombinedGivens) {
	A := c.Let("A_pin", "pi*pow(d, 2)/4", "mm^2", math.Pi*g.D*g.D/4)
	S := c.Let("S", "pi*pow(d, 3)/32", "mm^3", math.Pi*g.D*g.D*g.D/32)
	sigma := c.Let("sigma", "M_r/S", "MPa", g.M/S)
	tau := c.Let("tau", "V_r/A_pin", "MPa", g.V/A)
	c.Compare(vonMises(c, sigma, tau), allowed(c, g.Fy, g.Fu))
})

func vonMises(c *strength.Calc, sigma, tau float64) float64 {
	return c.Let("sigma_v", "sqrt(pow(sigma, 2) + 3*pow(tau, 2))", "MPa", math.Sqrt(sigma*sigma+3*tau*tau))
}

type pinBearingGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the hole"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness at the hole"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength, the lower of plate and pin"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
}

// pinBearing is the mean pressure on the projected area.
var pinBearing = strength.Define(strength.Identity{
	ID: "pin-bearing", Title: "bearing of the pin on the plate", Clause: common("mean pressure on the projected area"),
	Demand: "p", Capacity: "sigma_p", Unit: "MPa",
}, func(c *strength.Calc, g pinBearingGivens) {
	p := c.Let("p", "P_r/(d*t)", "MPa", g.P/(g.D*g.T))
	c.Compare(p, allowedBearing(c, allowed(c, g.Fy, g.Fu)))
})

type pinTensionGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	B  float64 `sym:"b" unit:"mm" min:"0.1" max:"2000" is:"clear distance from the hole's edge to the plate's edge, across the force"`
	Dh float64 `sym:"d_h" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
}

// pinPlateTension is the mean stress on both sides of the hole; on each side no more than one hole's width is taken to act.
var pinPlateTension = strength.Define(strength.Identity{
	ID: "pin-plate-tension", Title: "tension beside the pin hole", Clause: common("mean stress; each side acts with one hole's width at most"),
	Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g pinTensionGivens) {
	be := c.Let("b_e", "min(b, d_h)", "mm", min(g.B, g.Dh))
	sigma := c.Let("sigma", "P_r/(2*t*b_e)", "MPa", g.P/(2*g.T*be))
	c.Compare(sigma, allowed(c, g.Fy, g.Fu))
})

type pinTearGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	A  float64 `sym:"a" unit:"mm" min:"0.1" max:"2000" is:"clear distance from the hole's edge to the plate's end, along the force"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
}

// pinPlateShear is the mean shear on two planes as long as the hole's edge is from the end.
var pinPlateShear = strength.Define(strength.Identity{
	ID: "pin-plate-tear-out", Title: "shear (tear-out) past the pin hole", Clause: common("mean shear on two planes of the clear end distance"),
	Demand: "tau", Capacity: "tau_all", Unit: "MPa",
}, func(c *strength.Calc, g pinTearGivens) {
	tau := c.Let("tau", "P_r/(2*a*t)", "MPa", g.P/(2*g.A*g.T))
	c.Compare(tau, allowedShear(c, allowed(c, g.Fy, g.Fu)))
})

var pinPlaneRules = []strength.Rule[strength.PinPlane]{
	{Of: pinShear, Check: func(c *strength.Calc, f *strength.PinPlane) {
		pinShear.Check(c, pinShearGivens{V: f.V, D: f.D, Fy: f.Fy, Fu: f.Fu})
	}},
}

var pinSpanRules = []strength.Rule[strength.PinSpan]{
	{Of: pinBending, Check: func(c *strength.Calc, f *strength.PinSpan) {
		pinBending.Check(c, pinBendingGivens{M: f.M, D: f.D, Fy: f.Fy, Fu: f.Fu})
	}},
	{Of: pinCombined, Check: func(c *strength.Calc, f *strength.PinSpan) {
		pinCombined.Check(c, pinCombinedGivens{M: f.M, V: f.V, D: f.D, Fy: f.Fy, Fu: f.Fu})
	}},
	practice.PinDeflectionRule,
}

var boreRules = []strength.Rule[strength.Bore]{
	{Of: pinBearing, Check: func(c *strength.Calc, f *strength.Bore) {
		pinBearing.Check(c, pinBearingGivens{P: f.P, D: f.D, T: f.T, Fy: min(f.Fy, f.FyPin), Fu: f.Fu})
	}},
	{Of: pinPlateTension, Check: func(c *strength.Calc, f *strength.Bore) {
		p, _, b, ok := f.Tears()
		pinPlateTension.Check(c, pinTensionGivens{P: p, T: f.T, B: b, Dh: f.Dh, Fy: f.Fy, Fu: f.Fu})
		c.SkipUnless(ok, strength.Pressed)
	}},
	{Of: pinPlateShear, Check: func(c *strength.Calc, f *strength.Bore) {
		p, a, _, ok := f.Tears()
		pinPlateShear.Check(c, pinTearGivens{P: p, T: f.T, A: a, Fy: f.Fy, Fu: f.Fu})
		c.SkipUnless(ok, strength.Pressed)
	}},
	practice.PinContactRule,
	practice.DishingRule,
}

var eyeRules = []strength.Rule[strength.Bore]{boreRules[0], practice.PinContactRule}
