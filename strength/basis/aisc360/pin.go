package aisc360

// Round pins. AISC 360 has no rule of its own for a plain pin's shear: the connecting-element rule J4.2 is applied to it.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

type pinShearGivens struct {
	V  float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on one plane of the pin"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the pin"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the pin"`
}

// pinShear is shear on one plane of a solid round pin, yield and rupture: AISC 360-22 J4.2, Eq. J4-3 and J4-4, N and mm.
var pinShear = strength.Define(strength.Identity{
	ID: "pin-shear", Title: "shear of the pin",
	Clause: clause("J4.2, Eq. J4-3 and J4-4", "for connecting elements, applied to a solid pin"),
	Demand: "V_r", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g pinShearGivens) {
	A := c.Let("A_pin", "pi*pow(d, 2)/4", "mm^2", math.Pi*g.D*g.D/4)
	Vy := c.Let("R_ny", "0.60*F_y*A_pin", "N", 0.60*g.Fy*A)
	Vu := c.Let("R_nu", "0.60*F_u*A_pin", "N", 0.60*g.Fu*A)
	cy := c.Available("R_cy", "R_ny", "N", Vy, 1.00, 1.50)
	cu := c.Available("R_cu", "R_nu", "N", Vu, 0.75, 2.00)
	Vc := c.Let("V_c", "min(R_cy, R_cu)", "N", min(cy, cu))
	c.Compare(g.V, Vc)
})

type pinBendingGivens struct {
	M  float64 `sym:"M_r" unit:"N*mm" min:"0" max:"1e12" is:"largest bending moment in the pin"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the pin"`
}

// pinBending is bending of a solid round bar: AISC 360-22 F11.1, Eq. F11-2; a round does not buckle sideways. The limit
// 1.6 F_y S always governs, as Z/S = 1.70.
var pinBending = strength.Define(strength.Identity{
	ID: "pin-bending", Title: "bending of the pin",
	Clause: clause("F11.1, Eq. F11-2", "rounds"),
	Demand: "M_r", Capacity: "M_c", Unit: "N*mm",
}, func(c *strength.Calc, g pinBendingGivens) {
	c.Compare(g.M, roundMoment(c, g.D, g.Fy))
})

// roundMoment gives the available moment of a solid round bar, in the lines of F11.1.
func roundMoment(c *strength.Calc, d, fy float64) float64 {
	Z := c.Let("Z", "pow(d, 3)/6", "mm^3", d*d*d/6)
	S := c.Let("S", "pi*pow(d, 3)/32", "mm^3", math.Pi*d*d*d/32)
	Mn := c.Let("M_n", "min(F_y*Z, 1.6*F_y*S)", "N*mm", min(fy*Z, 1.6*fy*S))
	return c.Available("M_c", "M_n", "N*mm", Mn, 0.90, 1.67)
}

type pinCombinedGivens struct {
	M  float64 `sym:"M_r" unit:"N*mm" min:"0" max:"1e12" is:"largest bending moment in the pin"`
	V  float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"largest shear force in the pin"`
	D  float64 `sym:"d" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the pin"`
}

// pinCombined is bending with shear in a pin: M/M_c + (V/V_c)^2 <= 1, with both at their largest though they need not meet
// at one section.
var pinCombined = strength.Define(strength.Identity{
	ID: "pin-combined", Title: "bending and shear of the pin together", Unruled: true,
	Clause: strength.Clause{Words: "common practice, no source"},
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g pinCombinedGivens) {
	Mc := roundMoment(c, g.D, g.Fy)
	A := c.Let("A_pin", "pi*pow(d, 2)/4", "mm^2", math.Pi*g.D*g.D/4)
	Vn := c.Let("V_n", "0.60*F_y*A_pin", "N", 0.60*g.Fy*A)
	Vc := c.Available("V_c", "V_n", "N", Vn, 1.00, 1.50)
	U := c.Let("U", "M_r/M_c + pow(V_r/V_c, 2)", "", g.M/Mc+(g.V/Vc)*(g.V/Vc))
	c.Compare(U, 1)
})

var pinPlaneRules = []strength.Rule[strength.PinPlane]{
	{Of: pinShear, Check: func(c *strength.Calc, f *strength.PinPlane) {
		pinShear.Check(c, pinShearGivens{V: f.V, D: f.D, Fy: f.Fy, Fu: f.Fu})
	}},
}

var pinSpanRules = []strength.Rule[strength.PinSpan]{
	{Of: pinBending, Check: func(c *strength.Calc, f *strength.PinSpan) {
		pinBending.Check(c, pinBendingGivens{M: f.M, D: f.D, Fy: f.Fy})
	}},
	{Of: pinCombined, Check: func(c *strength.Calc, f *strength.PinSpan) {
		pinCombined.Check(c, pinCombinedGivens{M: f.M, V: f.V, D: f.D, Fy: f.Fy})
	}},
	practice.PinDeflectionRule,
}
