package bth1

// Pin-connected plates: ASME BTH-1 3-3.3.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

type tensionGivens struct {
	P    float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Be   float64 `sym:"b_e" unit:"mm" min:"0.1" max:"2000" is:"actual width from the hole's edge to the plate's side, across the force"`
	D    float64 `sym:"D_p" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Dh   float64 `sym:"D_h" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	Fy   float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
	Dish float64 `sym:"dishing" choices:"may dish|held flat" default:"0" is:"whether the plate can buckle out of its plane beside the hole"`
	Rule float64 `sym:"clearance" choices:"1 above 0.90|always by the formula" default:"0" is:"how C_r is taken for a close pin"`
}

// pinPlateTension is tension on the effective width beside the hole: ASME BTH-1 3-3.3.1.
var pinPlateTension = strength.Define(strength.Identity{
	ID: "pin-plate-tension", Title: "tension beside the pin hole",
	Clause: clause("3-3.3.1, Eq. 3-45 to 3-48", ""),
	Demand: "P_r", Capacity: "P_t", Unit: "N",
}, func(c *strength.Calc, g tensionGivens) {
	c.Compare(g.P, besideHole(c, clearance(c, g.D, g.Dh, g.Rule), &g))
})

// besideHole is the allowable tension P_t. Where the plate cannot dish the limit of 4 t is waived.
func besideHole(c *strength.Calc, cr float64, g *tensionGivens) float64 {
	narrow := c.Let("b_n", "b_e*0.6*F_u/F_y*sqrt(D_h/b_e)", "mm", g.Be*0.6*g.Fu/g.Fy*math.Sqrt(g.Dh/g.Be))
	var beff float64
	if g.Dish > 0 {
		beff = c.Let("b_eff", "min(b_n, b_e)", "mm", min(narrow, g.Be))
	} else {
		beff = c.Let("b_eff", "min(4*t, b_n, b_e)", "mm", min(4*g.T, narrow, g.Be))
	}
	Nd := c.Factor("N_d")
	return c.Let("P_t", "C_r*F_u/(1.20*N_d)*2*t*b_eff", "N", cr*g.Fu/(1.20*Nd)*2*g.T*beff)
}

// clearance is C_r, the loss from play of the pin in its hole.
func clearance(c *strength.Calc, d, dh, rule float64) float64 {
	c.Need(dh >= d, "D_h >= D_p", "the pin goes into the hole")
	ratio := c.Let("k_D", "D_p/D_h", "", d/dh)
	if rule == 0 && ratio > 0.90 {
		return c.Let("C_r", "1", "", 1)
	}
	return c.Let("C_r", "1 - 0.275*sqrt(1 - pow(k_D, 2))", "", 1-0.275*math.Sqrt(1-ratio*ratio))
}

type fractureGivens struct {
	P    float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Be   float64 `sym:"b_e" unit:"mm" min:"0.1" max:"2000" is:"actual width from the hole's edge to the plate's side, across the force"`
	R    float64 `sym:"R" unit:"mm" min:"0.5" max:"3000" is:"centre of the hole to the plate's end, along the force"`
	D    float64 `sym:"D_p" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Dh   float64 `sym:"D_h" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	Fu   float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
	Rule float64 `sym:"clearance" choices:"1 above 0.90|always by the formula" default:"0" is:"how C_r is taken for a close pin"`
}

// pinPlateFracture is fracture on the single plane beyond the hole: ASME BTH-1 3-3.3.1.
var pinPlateFracture = strength.Define(strength.Identity{
	ID: "pin-plate-fracture", Title: "single-plane fracture beyond the pin hole",
	Clause: clause("3-3.3.1, Eq. 3-49", ""),
	Demand: "P_r", Capacity: "P_b", Unit: "N",
}, func(c *strength.Calc, g fractureGivens) {
	c.Compare(g.P, beyondHole(c, clearance(c, g.D, g.Dh, g.Rule), &g))
})

// beyondHole is the allowable force P_b of the single plane.
func beyondHole(c *strength.Calc, cr float64, g *fractureGivens) float64 {
	c.Need(g.R > g.Dh/2, "R > D_h/2", "material beyond the hole")
	Nd := c.Factor("N_d")
	return c.Let("P_b", "C_r*F_u/(1.20*N_d)*(1.13*(R - D_h/2) + 0.92*b_e/(1 + b_e/D_h))*t", "N",
		cr*g.Fu/(1.20*Nd)*(1.13*(g.R-g.Dh/2)+0.92*g.Be/(1+g.Be/g.Dh))*g.T)
}

type shearGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	A  float64 `sym:"a" unit:"mm" min:"0.1" max:"2000" is:"edge of the hole to the plate's end, along the force"`
	D  float64 `sym:"D_p" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Dh float64 `sym:"D_h" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	Re float64 `sym:"r" unit:"mm" min:"0" max:"3000" default:"0" is:"radius of a curved end about the hole's centre; 0 for a straight one"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
}

// pinPlateShear is shear on two planes beyond the hole: ASME BTH-1 3-3.3.1, with the commentary's Z' where the end is curved.
var pinPlateShear = strength.Define(strength.Identity{
	ID: "pin-plate-tear-out", Title: "double-plane shear beyond the pin hole",
	Clause: clause("3-3.3.1, Eq. 3-50 to 3-52", "curved end by the commentary"),
	Demand: "P_r", Capacity: "P_v", Unit: "N",
}, func(c *strength.Calc, g shearGivens) {
	c.Need(g.Dh >= g.D, "D_h >= D_p", "the pin goes into the hole")
	c.Compare(g.P, twoPlanes(c, &g))
})

// twoPlanes is the allowable force P_v of both shear planes.
func twoPlanes(c *strength.Calc, g *shearGivens) float64 {
	phi := c.Let("phi", "55*deg*D_p/D_h", "rad", 55*math.Pi/180*g.D/g.Dh)
	s, k := math.Sincos(phi)
	length := c.Let("l_v", "a + D_p/2*(1 - cos(phi))", "mm", g.A+g.D/2*(1-k))
	if g.Re > 0 {
		half := c.Let("h_v", "D_p/2*sin(phi)", "mm", g.D/2*s)
		c.Need(g.Re > half, "r > h_v", "a curved end wider than the shear planes are apart")
		Z := c.Let("Z_p", "r - sqrt(pow(r, 2) - pow(h_v, 2))", "mm", g.Re-math.Sqrt(g.Re*g.Re-half*half))
		c.Need(length > Z, "l_v > Z_p", "material left on the shear planes")
		length = c.Let("l_c", "l_v - Z_p", "mm", length-Z)
	} else {
		c.Let("l_c", "l_v", "mm", length)
	}
	Av := c.Let("A_v", "2*l_c*t", "mm^2", 2*length*g.T)
	Nd := c.Factor("N_d")
	return c.Let("P_v", "0.70*F_u/(1.20*N_d)*A_v", "N", 0.70*g.Fu/(1.20*Nd)*Av)
}

type bearingGivens struct {
	P     float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	D     float64 `sym:"D_p" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Fy    float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength, the lower of plate and pin"`
	Turns float64 `sym:"turns" choices:"at rest|turns" default:"0" is:"whether the pin turns under load through many cycles"`
}

// pinBearing is bearing between pin and plate on the projected area: ASME BTH-1 3-3.3.4.
var pinBearing = strength.Define(strength.Identity{
	ID: "pin-bearing", Title: "bearing of the pin on the plate",
	Clause: clause("3-3.3.4, Eq. 3-53", ""),
	Demand: "P_r", Capacity: "P_p", Unit: "N",
}, func(c *strength.Calc, g bearingGivens) {
	c.Compare(g.P, bearing(c, g.D, g.T, g.Fy, g.Turns))
})

func bearing(c *strength.Calc, d, t, fy, turns float64) float64 {
	Nd := c.Factor("N_d")
	k := 1.25
	if turns > 0 {
		k = 0.63
	}
	Fp := c.Let("F_p", "when(turns > 0, 0.63, 1.25)*F_y/N_d", "MPa", k*fy/Nd)
	return c.Let("P_p", "F_p*D_p*t", "N", Fp*d*t)
}

type weakestGivens struct {
	P     float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the pin on the plate"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"plate thickness"`
	Be    float64 `sym:"b_e" unit:"mm" min:"0.1" max:"2000" is:"actual width from the hole's edge to the plate's side, across the force"`
	A     float64 `sym:"a" unit:"mm" min:"0.1" max:"2000" is:"edge of the hole to the plate's end, along the force"`
	D     float64 `sym:"D_p" unit:"mm" min:"1" max:"1000" is:"pin diameter"`
	Dh    float64 `sym:"D_h" unit:"mm" min:"1" max:"1000" is:"hole diameter"`
	Re    float64 `sym:"r" unit:"mm" min:"0" max:"3000" default:"0" is:"radius of a curved end about the hole's centre; 0 for a straight one"`
	Fy    float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the plate"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the plate"`
	Turns float64 `sym:"turns" choices:"at rest|turns" default:"0" is:"whether the pin turns under load through many cycles"`
	Dish  float64 `sym:"dishing" choices:"may dish|held flat" default:"0" is:"whether the plate can buckle out of its plane beside the hole"`
	Rule  float64 `sym:"clearance" choices:"1 above 0.90|always by the formula" default:"0" is:"how C_r is taken for a close pin"`
}

// pinPlateWeakest is the whole pin-connected plate at once, for a hand calculation: the least of the four. Within a bracket each is
// reported by itself.
var pinPlateWeakest = strength.Define(strength.Identity{
	ID: "pin-plate-weakest", Title: "pin-connected plate, the weakest way",
	Clause: clause("3-3.3.1 and 3-3.3.4, Eq. 3-45 to 3-53", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g weakestGivens) {
	Cr := clearance(c, g.D, g.Dh, g.Rule)
	Pt := besideHole(c, Cr, &tensionGivens{T: g.T, Be: g.Be, D: g.D, Dh: g.Dh, Fy: g.Fy, Fu: g.Fu, Dish: g.Dish})
	R := c.Let("R", "a + D_h/2", "mm", g.A+g.Dh/2)
	Pb := beyondHole(c, Cr, &fractureGivens{T: g.T, Be: g.Be, R: R, Dh: g.Dh, Fu: g.Fu})
	Pv := twoPlanes(c, &shearGivens{T: g.T, A: g.A, D: g.D, Dh: g.Dh, Re: g.Re, Fu: g.Fu})
	Pp := bearing(c, g.D, g.T, g.Fy, g.Turns)
	c.Compare(g.P, c.Let("P_c", "min(P_t, P_b, P_v, P_p)", "N", min(Pt, Pb, Pv, Pp)))
})

// boreRules take every end as curved about the hole's centre: a square or snipped end leaves more on the shear planes, never less. Dishing is in the limit
// of 4 t on the width that acts.
var boreRules = []strength.Rule[strength.Bore]{
	{Of: pinPlateTension, Check: func(c *strength.Calc, f *strength.Bore) {
		p, _, b, ok := f.Tears()
		pinPlateTension.Check(c, tensionGivens{P: p, T: f.T, Be: b, D: f.D, Dh: f.Dh, Fy: f.Fy, Fu: f.Fu})
		c.SkipUnless(ok, strength.Pressed)
	}},
	{Of: pinPlateFracture, Check: func(c *strength.Calc, f *strength.Bore) {
		p, a, b, ok := f.Tears()
		pinPlateFracture.Check(c, fractureGivens{P: p, T: f.T, Be: b, R: a + f.Dh/2, D: f.D, Dh: f.Dh, Fu: f.Fu})
		c.SkipUnless(ok, strength.Pressed)
	}},
	{Of: pinPlateShear, Check: func(c *strength.Calc, f *strength.Bore) {
		p, a, _, ok := f.Tears()
		pinPlateShear.Check(c, shearGivens{P: p, T: f.T, A: a, D: f.D, Dh: f.Dh, Re: a + f.Dh/2, Fu: f.Fu})
		c.SkipUnless(ok, strength.Pressed)
	}},
	{Of: pinBearing, Check: func(c *strength.Calc, f *strength.Bore) {
		pinBearing.Check(c, bearingGivens{P: f.P, T: f.T, D: f.D, Fy: min(f.Fy, f.FyPin), Turns: strength.Flag(f.Turns)})
	}},
	practice.PinContactRule,
}

var eyeRules = boreRules[3:]
