package en1993

// Pins and the plates that they bear in: EN 1993-1-8, 3.13.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

var pinLimits = []strength.Evaluator{
	pinShear, pinBending, pinBendingService, pinCombined, pinSpanBending,
	pinBearing, pinBearingService, pinContact, pinEndDistance, pinSideDistance, pinTypeB,
}

type pinShearGivens struct {
	F  float64 `sym:"F_v_Ed" unit:"N" min:"0" max:"1e9" is:"shear force on one plane of the pin"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fu float64 `sym:"f_up" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the pin"`
}

// pinShear is shear on one plane of a solid round pin.
var pinShear = strength.Define(strength.Identity{
	ID: "pin-shear", Title: "shear of the pin",
	Clause: joint("3.13.2, Table 3.10", ""),
	Demand: "F_v_Ed", Capacity: "F_v_Rd", Unit: "N",
}, func(c *strength.Calc, g pinShearGivens) {
	c.Compare(g.F, pinShearStrength(c, g.D, g.Fu))
})

func pinShearStrength(c *strength.Calc, d, fu float64) float64 {
	g2 := c.Factor("gamma_M2")
	A := c.Let("A", "pi*pow(d, 2)/4", "mm^2", math.Pi*d*d/4)
	return c.Let("F_v_Rd", "0.6*A*f_up/gamma_M2", "N", 0.6*A*fu/g2)
}

type pinBendingGivens struct {
	M  float64 `sym:"M_Ed" unit:"N*mm" min:"0" max:"1e12" is:"largest bending moment in the pin"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy float64 `sym:"f_yp" unit:"MPa" min:"50" max:"2500" is:"yield strength of the pin"`
}

// pinBending is bending of a solid round pin.
var pinBending = strength.Define(strength.Identity{
	ID: "pin-bending", Title: "bending of the pin",
	Clause: joint("3.13.2, Table 3.10", ""),
	Demand: "M_Ed", Capacity: "M_Rd", Unit: "N*mm",
}, func(c *strength.Calc, g pinBendingGivens) {
	c.Compare(g.M, pinMoment(c, g.D, g.Fy))
})

func pinModulus(c *strength.Calc, d float64) float64 {
	return c.Let("W_el", "pi*pow(d, 3)/32", "mm^3", math.Pi*d*d*d/32)
}

func pinMoment(c *strength.Calc, d, fy float64) float64 {
	g0 := c.Factor("gamma_M0")
	W := pinModulus(c, d)
	return c.Let("M_Rd", "1.5*W_el*f_yp/gamma_M0", "N*mm", 1.5*W*fy/g0)
}

type pinBendingServiceGivens struct {
	M  float64 `sym:"M_Ed_ser" unit:"N*mm" min:"0" max:"1e12" is:"largest bending moment in the pin, service level"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy float64 `sym:"f_yp" unit:"MPa" min:"50" max:"2500" is:"yield strength of the pin"`
}

// pinBendingService keeps a replaceable pin straight enough to come out.
var pinBendingService = strength.Define(strength.Identity{
	ID: "pin-bending-service", Title: "bending of a replaceable pin, service loads",
	Clause: joint("3.13.2, Table 3.10", "replaceable pins"),
	Demand: "M_Ed_ser", Capacity: "M_Rd_ser", Unit: "N*mm",
}, func(c *strength.Calc, g pinBendingServiceGivens) {
	g6 := c.Factor("gamma_M6_ser")
	W := pinModulus(c, g.D)
	c.Compare(g.M, c.Let("M_Rd_ser", "0.8*W_el*f_yp/gamma_M6_ser", "N*mm", 0.8*W*g.Fy/g6))
})

type pinCombinedGivens struct {
	M  float64 `sym:"M_Ed" unit:"N*mm" min:"0" max:"1e12" is:"largest bending moment in the pin"`
	F  float64 `sym:"F_v_Ed" unit:"N" min:"0" max:"1e9" is:"largest shear force in the pin"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy float64 `sym:"f_yp" unit:"MPa" min:"50" max:"2500" is:"yield strength of the pin"`
	Fu float64 `sym:"f_up" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the pin"`
}

// pinCombined is bending with shear, both at their largest though they need not meet at one section.
var pinCombined = strength.Define(strength.Identity{
	ID: "pin-combined", Title: "bending and shear of the pin together",
	Clause: joint("3.13.2, Table 3.10", ""),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g pinCombinedGivens) {
	M := pinMoment(c, g.D, g.Fy)
	F := pinShearStrength(c, g.D, g.Fu)
	c.Compare(c.Let("U", "pow(M_Ed/M_Rd, 2) + pow(F_v_Ed/F_v_Rd, 2)", "", (g.M/M)*(g.M/M)+(g.F/F)*(g.F/F)), 1)
})

type pinSpanGivens struct {
	F  float64 `sym:"F_Ed" unit:"N" min:"0" max:"1e9" is:"force of the middle plate"`
	A  float64 `sym:"a" unit:"mm" min:"0.1" max:"500" is:"thickness of each outer plate"`
	B  float64 `sym:"b" unit:"mm" min:"0.1" max:"500" is:"thickness of the middle plate"`
	C  float64 `sym:"c" unit:"mm" min:"0" max:"500" is:"gap between the plates"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy float64 `sym:"f_yp" unit:"MPa" min:"50" max:"2500" is:"yield strength of the pin"`
}

// pinSpanBending is the moment of a middle plate between two alike, with even bearing and even gaps. Within a bracket the span is
// solved as it stands instead.
var pinSpanBending = strength.Define(strength.Identity{
	ID: "pin-span-bending", Title: "bending of the pin between two like plates",
	Clause: joint("3.13.2, Figure 3.11 and Table 3.10", "moment from memory"),
	Demand: "M_Ed", Capacity: "M_Rd", Unit: "N*mm",
}, func(c *strength.Calc, g pinSpanGivens) {
	M := c.Let("M_Ed", "F_Ed/8*(b + 4*c + 2*a)", "N*mm", g.F/8*(g.B+4*g.C+2*g.A))
	c.Compare(M, pinMoment(c, g.D, g.Fy))
})

type pinBearingGivens struct {
	F  float64 `sym:"F_b_Ed" unit:"N" min:"0" max:"1e9" is:"force of the pin on the hole"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness at the hole"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength, the lower of plate and pin"`
}

// pinBearing is bearing of plate and pin.
var pinBearing = strength.Define(strength.Identity{
	ID: "pin-bearing", Title: "bearing of the pin on the plate",
	Clause: joint("3.13.2, Table 3.10", ""),
	Demand: "F_b_Ed", Capacity: "F_b_Rd", Unit: "N",
}, func(c *strength.Calc, g pinBearingGivens) {
	g0 := c.Factor("gamma_M0")
	c.Compare(g.F, c.Let("F_b_Rd", "1.5*t*d*f_y/gamma_M0", "N", 1.5*g.T*g.D*g.Fy/g0))
})

type pinBearingServiceGivens struct {
	F  float64 `sym:"F_b_Ed_ser" unit:"N" min:"0" max:"1e9" is:"force of the pin on the hole, service level"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness at the hole"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength, the lower of plate and pin"`
}

// pinBearingService keeps the hole of a replaceable pin from growing.
var pinBearingService = strength.Define(strength.Identity{
	ID: "pin-bearing-service", Title: "bearing of a replaceable pin, service loads",
	Clause: joint("3.13.2, Table 3.10", "replaceable pins"),
	Demand: "F_b_Ed_ser", Capacity: "F_b_Rd_ser", Unit: "N",
}, func(c *strength.Calc, g pinBearingServiceGivens) {
	g6 := c.Factor("gamma_M6_ser")
	c.Compare(g.F, c.Let("F_b_Rd_ser", "0.6*t*d*f_y/gamma_M6_ser", "N", 0.6*g.T*g.D*g.Fy/g6))
})

type pinContactGivens struct {
	F  float64 `sym:"F_Ed_ser" unit:"N" min:"0" max:"1e9" is:"force of the pin on the hole, service level"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	D0 float64 `sym:"d_0" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness at the hole"`
	E  float64 `sym:"E" unit:"MPa" min:"1000" max:"500000" default:"210000" is:"modulus of elasticity"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength, the lower of plate and pin"`
}

// pinContact is the contact stress of a replaceable pin in its hole.
var pinContact = strength.Define(strength.Identity{
	ID: "pin-contact", Title: "contact stress of a replaceable pin, service loads",
	Clause: joint("3.13.2(3), Eq. 3.14 to 3.16", "replaceable pins"),
	Demand: "sigma_h_Ed", Capacity: "f_h_Rd", Unit: "MPa",
}, func(c *strength.Calc, g pinContactGivens) {
	g6 := c.Factor("gamma_M6_ser")
	c.Need(g.D0 >= g.D, "d_0 >= d", "the pin goes into the hole")
	s := c.Let("sigma_h_Ed", "0.591*sqrt(E*F_Ed_ser*abs(d_0 - d)/(pow(d, 2)*t))", "MPa", 0.591*math.Sqrt(g.E*g.F*math.Abs(g.D0-g.D)/(g.D*g.D*g.T)))
	c.Compare(s, c.Let("f_h_Rd", "2.5*f_y/gamma_M6_ser", "MPa", 2.5*g.Fy/g6))
})

type pinEndGivens struct {
	F  float64 `sym:"F_Ed" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	D0 float64 `sym:"d_0" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
	A  float64 `sym:"a" unit:"mm" min:"0" max:"2000" default:"0" is:"clear distance from the hole's edge to the plate's end; 0 when only the least is wanted"`
}

// pinEndDistance is the end distance that a plate of given thickness needs: it stands for tear-out, of which the standard says nothing
// else. It stays above 2/3 d_0 when no load acts.
var pinEndDistance = strength.Define(strength.Identity{
	ID: "pin-plate-end-distance", Title: "end distance at the pin hole (tear-out)",
	Clause: joint("3.13.1, Table 3.9, type A", "from memory"),
	Demand: "a_min", Capacity: "a", Unit: "mm",
}, func(c *strength.Calc, g pinEndGivens) {
	g0 := c.Factor("gamma_M0")
	c.Least(c.Let("a_min", "F_Ed*gamma_M0/(2*t*f_y) + 2*d_0/3", "mm", g.F*g0/(2*g.T*g.Fy)+2*g.D0/3), g.A)
})

type pinSideGivens struct {
	F  float64 `sym:"F_Ed" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	D0 float64 `sym:"d_0" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
	C  float64 `sym:"c" unit:"mm" min:"0" max:"2000" default:"0" is:"clear distance from the hole's edge to the side edge; 0 when only the least is wanted"`
}

// pinSideDistance is the side distance that a plate of given thickness needs: it stands for the net section.
var pinSideDistance = strength.Define(strength.Identity{
	ID: "pin-plate-side-distance", Title: "side distance at the pin hole (net section)",
	Clause: joint("3.13.1, Table 3.9, type A", "from memory"),
	Demand: "c_min", Capacity: "c", Unit: "mm",
}, func(c *strength.Calc, g pinSideGivens) {
	g0 := c.Factor("gamma_M0")
	c.Least(c.Let("c_min", "F_Ed*gamma_M0/(2*t*f_y) + d_0/3", "mm", g.F*g0/(2*g.T*g.Fy)+g.D0/3), g.C)
})

type pinTypeBGivens struct {
	F  float64 `sym:"F_Ed" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	D0 float64 `sym:"d_0" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	Fy float64 `sym:"f_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0" max:"500" default:"0" is:"plate thickness; 0 when only the least is wanted"`
}

// pinTypeB is the thickness of a plate whose shape is the figure's: 1.6 d_0 from the hole's centre to the end, 2.5 d_0 wide, 0.75 d_0
// beside the hole. The shape itself is not checked.
var pinTypeB = strength.Define(strength.Identity{
	ID: "pin-plate-type-b", Title: "thickness of a pin plate of the figure's shape",
	Clause: joint("3.13.1, Table 3.9, type B", "from memory"),
	Demand: "t_min", Capacity: "t", Unit: "mm",
}, func(c *strength.Calc, g pinTypeBGivens) {
	g0 := c.Factor("gamma_M0")
	t := c.Let("t_min", "max(0.7*sqrt(F_Ed*gamma_M0/f_y), d_0/2.5)", "mm", max(0.7*math.Sqrt(g.F*g0/g.Fy), g.D0/2.5))
	c.Least(t, g.T)
})

var pinPlaneRules = []strength.Rule[strength.PinPlane]{
	{Of: pinShear, Check: func(c *strength.Calc, f *strength.PinPlane) {
		pinShear.Check(c, pinShearGivens{F: f.V, D: f.D, Fu: f.Fu})
	}},
}

// The pins of a mount come out when the body is lifted off: all are taken as replaceable.
var pinSpanRules = []strength.Rule[strength.PinSpan]{
	{Of: pinBending, Check: func(c *strength.Calc, f *strength.PinSpan) {
		pinBending.Check(c, pinBendingGivens{M: f.M, D: f.D, Fy: f.Fy})
	}},
	{Of: pinBendingService, Check: func(c *strength.Calc, f *strength.PinSpan) {
		pinBendingService.Check(c, pinBendingServiceGivens{M: f.M / f.Service, D: f.D, Fy: f.Fy})
	}},
	{Of: pinCombined, Check: func(c *strength.Calc, f *strength.PinSpan) {
		pinCombined.Check(c, pinCombinedGivens{M: f.M, F: f.V, D: f.D, Fy: f.Fy, Fu: f.Fu})
	}},
	practice.PinDeflectionRule,
}

var boreRules = []strength.Rule[strength.Bore]{
	{Of: pinBearing, Check: func(c *strength.Calc, f *strength.Bore) {
		pinBearing.Check(c, pinBearingGivens{F: f.P, D: f.D, T: f.T, Fy: min(f.Fy, f.FyPin)})
	}},
	{Of: pinBearingService, Check: func(c *strength.Calc, f *strength.Bore) {
		pinBearingService.Check(c, pinBearingServiceGivens{F: f.P / f.Service, D: f.D, T: f.T, Fy: min(f.Fy, f.FyPin)})
	}},
	{Of: pinContact, Check: func(c *strength.Calc, f *strength.Bore) {
		pinContact.Check(c, pinContactGivens{F: f.P / f.Service, D: f.D, D0: f.Dh, T: f.T, E: e210, Fy: min(f.Fy, f.FyPin)})
	}},
	{Of: pinEndDistance, Check: func(c *strength.Calc, f *strength.Bore) {
		p, a, _, ok := f.Tears()
		pinEndDistance.Check(c, pinEndGivens{F: p, T: f.T, D0: f.Dh, Fy: f.Fy, A: a})
		c.SkipUnless(ok, strength.Pressed)
	}},
	{Of: pinSideDistance, Check: func(c *strength.Calc, f *strength.Bore) {
		p, _, s, ok := f.Tears()
		pinSideDistance.Check(c, pinSideGivens{F: p, T: f.T, D0: f.Dh, Fy: f.Fy, C: s})
		c.SkipUnless(ok, strength.Pressed)
	}},
	practice.DishingRule,
}

// eyeRules are bearing, its limit at service loads, and contact.
var eyeRules = boreRules[:3:3]
