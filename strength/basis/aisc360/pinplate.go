package aisc360

// Pin-connected plates: AISC 360-22 D5, and bearing J7.

import (
	"lugwright/strength"
	"lugwright/strength/practice"
)

type pinBearingGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the hole"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness at the hole"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength, the lower of plate and pin"`
}

// pinBearing is bearing of a pin in a reamed, drilled or bored hole: AISC 360-22 J7(a), Eq. J7-1.
var pinBearing = strength.Define(strength.Identity{
	ID: "pin-bearing", Title: "bearing of the pin on the plate",
	Clause: clause("J7(a), Eq. J7-1", ""),
	Demand: "P_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g pinBearingGivens) {
	Apb := c.Let("A_pb", "d*t", "mm^2", g.D*g.T)
	Rn := c.Let("R_n", "1.8*F_y*A_pb", "N", 1.8*g.Fy*Apb)
	c.Compare(g.P, c.Available("R_c", "R_n", "N", Rn, 0.75, 2.00))
})

type pinTensionGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	B  float64 `sym:"b" unit:"mm" min:"0.1" max:"2000" is:"clear distance from the hole's edge to the plate's edge, across the force"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
}

// pinPlateTension is tensile rupture on the net effective area: AISC 360-22 D5.1(a), Eq. D5-1. The 0.63 in of b_e is
// the code's own; b_e is never more than b.
var pinPlateTension = strength.Define(strength.Identity{
	ID: "pin-plate-tension", Title: "tensile rupture beside the pin hole",
	Clause: clause("D5.1(a), Eq. D5-1", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g pinTensionGivens) {
	be := c.Let("b_e", "min(2*t + 0.63*in, b)", "mm", min(2*g.T+0.63*inch, g.B))
	Pn := c.Let("P_n", "F_u*2*t*b_e", "N", g.Fu*2*g.T*be)
	c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.75, 2.00))
})

type pinTearGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	A  float64 `sym:"a" unit:"mm" min:"0.1" max:"2000" is:"clear distance from the hole's edge to the plate's end, along the force"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Dh float64 `sym:"d_h" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
}

// pinPlateShear is shear rupture (tear-out): AISC 360-22 D5.1(b), Eq. D5-2 with C_r, new in 2022. Beyond a play of
// 1/16 in the clause does not speak. Its inch values are taken; its 1 mm and 2 mm are a little larger.
var pinPlateShear = strength.Define(strength.Identity{
	ID: "pin-plate-tear-out", Title: "shear rupture (tear-out) past the pin hole",
	Clause: clause("D5.1(b), Eq. D5-2", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g pinTearGivens) {
	c.Need(g.Dh >= g.D, "d_h >= d", "the pin goes into the hole")
	c.Need(g.Dh-g.D <= inch/16+1e-9, "d_h - d <= 1/16*in", "play in the hole of at most 1/16 in")
	Cr := c.Let("C_r", "when(d_h - d <= 1/32*in, 1, 0.95)", "", clearanceFactor(g.D, g.Dh))
	Asf := c.Let("A_sf", "2*t*(a + d/2)", "mm^2", 2*g.T*(g.A+g.D/2))
	Pn := c.Let("P_n", "0.6*C_r*F_u*A_sf", "N", 0.6*Cr*g.Fu*Asf)
	c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.75, 2.00))
})

// clearanceFactor leaves a millionth of a millimetre for the rounding of inches.
func clearanceFactor(d, dh float64) float64 {
	if dh-d <= inch/32+1e-9 {
		return 1
	}
	return 0.95
}

type pinYieldGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	W  float64 `sym:"w" unit:"mm" min:"1" max:"5000" is:"plate width"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
}

// pinPlateYield is yielding of the gross section: AISC 360-22 D5.1(d) with D2(a), Eq. D2-1.
var pinPlateYield = strength.Define(strength.Identity{
	ID: "pin-plate-yield", Title: "yielding of the plate's gross section",
	Clause: clause("D5.1(d) and D2(a), Eq. D2-1", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g pinYieldGivens) {
	Ag := c.Let("A_g", "w*t", "mm^2", g.W*g.T)
	Pn := c.Let("P_n", "F_y*A_g", "N", g.Fy*Ag)
	c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67))
})

type pinDimensionGivens struct {
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	A     float64 `sym:"a" unit:"mm" min:"0.1" max:"2000" is:"clear distance from the hole's edge to the plate's end"`
	B     float64 `sym:"b" unit:"mm" min:"0.1" max:"2000" is:"clear distance from the hole's edge to the side edge"`
	W     float64 `sym:"w" unit:"mm" min:"1" max:"5000" is:"plate width at the hole"`
	D     float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Dh    float64 `sym:"d_h" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	Off   float64 `sym:"e" unit:"mm" min:"0" max:"1000" is:"hole off the middle of the width"`
	Turns float64 `sym:"turns" unit:"" min:"0" max:"1" is:"1 when the pin turns under full load, else 0"`
}

// pinPlateDimensions are the proportions that D5 wants before its strengths hold: AISC 360-22 D5.2. A plate that misses
// them is outside the rule, not failed.
var pinPlateDimensions = strength.Define(strength.Identity{
	ID: "pin-plate-dimensions", Title: "proportions of the pin-connected plate",
	Clause: clause("D5.2(a) to (c)", ""),
	Demand: "a_min", Capacity: "a", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g pinDimensionGivens) {
	be := c.Let("b_e", "min(2*t + 0.63*in, b)", "mm", min(2*g.T+0.63*inch, g.B))
	c.Need(g.Off <= 0.02*g.W, "e <= 0.02*w", "hole midway between the edges (2 % taken as midway, our reading)")
	c.Need(g.W >= 2*be+g.D, "w >= 2*b_e + d", "width at the hole at least 2 b_e + d")
	c.Need(g.A >= 1.33*be, "a >= 1.33*b_e", "end distance at least 1.33 b_e")
	if g.Turns > 0 {
		play := c.Let("c_max", "when(d < 3*in, 1/32*in, 1/16*in)", "mm", turningPlay(g.D))
		c.Need(g.Dh-g.D <= play+1e-9, "d_h - d <= c_max", "play of at most 1/32 in, 1/16 in from a 3 in pin on, where the pin turns under full load")
	}
	c.Let("w_min", "2*b_e + d", "mm", 2*be+g.D)
	need := c.Let("a_min", "1.33*b_e", "mm", 1.33*be)
	c.Compare(need, g.A)
})

type eyebarGivens struct {
	W  float64 `sym:"w" unit:"mm" min:"1" max:"1e4" is:"width of the body"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Dh float64 `sym:"d_h" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	B  float64 `sym:"b" unit:"mm" min:"1" max:"1e4" is:"hole's edge to the head's edge, across the force"`
	R  float64 `sym:"R" unit:"mm" min:"1" max:"1e5" is:"radius between head and body"`
	Dk float64 `sym:"d_head" unit:"mm" min:"1" max:"1e4" is:"diameter of the head"`
}

// eyebarDimensions are the proportions under which an eyebar has the strength of its body (pin-plate-yield): AISC 360-22 D6. The rule for
// steel over 70 ksi, d_h of at most 5 t, is left out.
var eyebarDimensions = strength.Define(strength.Identity{
	ID: "eyebar-dimensions", Title: "proportions of an eyebar",
	Clause: clause("D6.1 and D6.2", "to 70 ksi"),
	Demand: "w", Capacity: "w_max", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g eyebarGivens) {
	tiny := 1e-9
	pin := c.Let("d_min", "7/8*w", "mm", 7.0/8*g.W)
	hole := c.Let("d_h_max", "d + 1/32*in", "mm", g.D+inch/32)
	low := c.Let("b_min", "2/3*w", "mm", 2.0/3*g.W)
	high := c.Let("b_max", "3/4*w", "mm", 3.0/4*g.W)
	c.Need(g.T >= inch/2-tiny, "t >= 1/2*in - 1e-9*mm", "a thickness of at least 1/2 in")
	c.Need(g.D >= pin-tiny, "d >= d_min - 1e-9*mm", "a pin of at least 7/8 of the body's width")
	c.Need(g.Dh <= hole+tiny, "d_h <= d_h_max + 1e-9*mm", "a hole of at most 1/32 in over the pin")
	c.Need(g.B > low, "b > b_min", "more than 2/3 of the body's width beside the hole")
	c.Need(g.B <= high+tiny, "b <= b_max + 1e-9*mm", "at most 3/4 of the body's width beside the hole")
	c.Need(g.R >= g.Dk, "R >= d_head", "a radius between head and body no less than the head's diameter")
	c.Compare(g.W, c.Let("w_max", "8*t", "mm", 8*g.T))
})

func turningPlay(d float64) float64 {
	if d < 3*inch {
		return inch / 32
	}
	return inch / 16
}

var boreRules = []strength.Rule[strength.Bore]{
	{Of: pinBearing, Check: func(c *strength.Calc, f *strength.Bore) {
		pinBearing.Check(c, pinBearingGivens{P: f.P, D: f.D, T: f.T, Fy: min(f.Fy, f.FyPin)})
	}},
	{Of: pinPlateTension, Check: func(c *strength.Calc, f *strength.Bore) {
		p, a, b, ok := f.Tears()
		if f.Doubler {
			b = min(b, a/1.33) // in place of D5.2(b) and (c): no more width than its end holds
		}
		pinPlateTension.Check(c, pinTensionGivens{P: p, T: f.T, B: b, Fu: f.Fu})
		c.SkipUnless(ok, strength.Pressed)
	}},
	{Of: pinPlateShear, Check: func(c *strength.Calc, f *strength.Bore) {
		p, a, _, ok := f.Tears()
		pinPlateShear.Check(c, pinTearGivens{P: p, T: f.T, A: a, D: f.D, Dh: f.Dh, Fu: f.Fu})
		c.SkipUnless(ok, strength.Pressed)
	}},
	{Of: pinPlateYield, Check: func(c *strength.Calc, f *strength.Bore) {
		p, _, _, ok := f.Tears()
		pinPlateYield.Check(c, pinYieldGivens{P: p, T: f.T, W: f.W, Fy: f.Fy})
		c.SkipUnless(ok, strength.Pressed)
	}},
	{Of: pinPlateDimensions, Check: func(c *strength.Calc, f *strength.Bore) {
		pinPlateDimensions.Check(c, pinDimensionGivens{T: f.T, A: f.A, B: f.B, W: f.W, D: f.D, Dh: f.Dh, Off: f.OffMM, Turns: strength.Flag(f.Turns)})
		if f.Doubler {
			c.Skip("a cheek plate is no pin-connected member: the width counted beside its hole is kept to 1/1.33 of its end distance")
		}
	}},
	practice.PinContactRule,
	practice.DishingRule,
}

var eyeRules = []strength.Rule[strength.Bore]{boreRules[0], practice.PinContactRule}
