// Package aisc360y2016 is AISC 360-16 where it differs from 360-22: a card for reference, so that a sheet of the older edition can
// be followed. It never serves the check of a bracket.
package aisc360y2016

import (
	"lugwright/strength"
)

// E is the code's 29,000 ksi in MPa.
const E = 29000 * 4448.2216152605 / (25.4 * 25.4)

var basis = &strength.Basis{
	Card: strength.Card{
		Name: "AISC 360-16", Document: "AISC 360", Edition: "2016",
		Methods:       []strength.Method{strength.ASD, strength.LRFD},
		ServiceFactor: map[strength.Method]float64{strength.ASD: 1, strength.LRFD: 1.6},
		FactorSource:  "as AISC 360-22 here",
		ReferenceOnly: true,
	},
	Limits: []strength.Evaluator{pinPlateShear, bar},
}

// Basis gives the older edition's card: only the limit states whose values differ. Table J3.3 (standard hole of 1 1/8 in for a 1 in bolt)
// and Table D3.1 case 5 differ too; they are givens here. Of Table J2.5's rows for complete penetration and for plugs, and of J2.3, nothing is known to differ (from memory).
func Basis() *strength.Basis { return basis }

func clause(section, words string) strength.Clause {
	return strength.Clause{Document: "AISC 360", Edition: "2016", Section: section, Words: words}
}

// pinPlateShear is shear rupture past a pin hole without the factor C_r that 360-22 brought: AISC 360-16 D5.1(b), Eq. D5-2.
var pinPlateShear = strength.Define(strength.Identity{
	ID: "pin-plate-tear-out", Title: "shear rupture (tear-out) past the pin hole",
	Clause: clause("D5.1(b), Eq. D5-2", "no C_r before 2022"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g pinTearGivens) {
	c.Need(g.Dh >= g.D, "d_h >= d", "the pin goes into the hole")
	Asf := c.Let("A_sf", "2*t*(a + d/2)", "mm^2", 2*g.T*(g.A+g.D/2))
	Pn := c.Let("P_n", "0.6*F_u*A_sf", "N", 0.6*g.Fu*Asf)
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

type barGivens struct {
	M  float64 `sym:"M_ry" unit:"N*mm" min:"0" max:"1e12" is:"bending moment in the plane of the bar"`
	Z  float64 `sym:"Z_y" unit:"mm^3" min:"1e-3" max:"1e10" is:"plastic modulus"`
	S  float64 `sym:"S_y" unit:"mm^3" min:"1e-3" max:"1e10" is:"elastic modulus"`
	L  float64 `sym:"L_b" unit:"mm" min:"0" max:"1e5" is:"free length"`
	D  float64 `sym:"h" unit:"mm" min:"0.1" max:"1e4" is:"depth of the bar in bending"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the bar"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// bar is a rectangular bar about its strong axis with the older limit of 1.6 F_y S: AISC 360-16 F11.1 and F11.2, Eq. F11-1 to F11-4.
var bar = strength.Define(strength.Identity{
	ID: "edgewise-bending", Title: "bending in the plane of the plate",
	Clause: clause("F11.1 and F11.2, Eq. F11-1 to F11-4", "C_b = 1; 1.6 F_y S where 360-22 has 1.5"),
	Demand: "M_ry", Capacity: "M_cy", Unit: "N*mm",
}, func(c *strength.Calc, g barGivens) {
	e := c.Let("E", "29000*ksi", "MPa", E)
	Mp := c.Let("M_p", "min(F_y*Z_y, 1.6*F_y*S_y)", "N*mm", min(g.Fy*g.Z, 1.6*g.Fy*g.S))
	lam := c.Let("lambda", "L_b*h/pow(t, 2)", "", g.L*g.D/(g.T*g.T))
	var Mn float64
	switch {
	case lam <= 0.08*e/g.Fy:
		Mn = c.Let("M_ny", "M_p", "N*mm", Mp)
	case lam <= 1.9*e/g.Fy:
		Mn = c.Let("M_ny", "min((1.52 - 0.274*lambda*F_y/E)*F_y*S_y, M_p)", "N*mm", min((1.52-0.274*lam*g.Fy/e)*g.Fy*g.S, Mp))
	default:
		Fcr := c.Let("F_cr", "1.9*E/lambda", "MPa", 1.9*e/lam)
		Mn = c.Let("M_ny", "min(F_cr*S_y, M_p)", "N*mm", min(Fcr*g.S, Mp))
	}
	c.Compare(g.M, c.Available("M_cy", "M_ny", "N*mm", Mn, 0.90, 1.67))
})
