package aisc360

// Struts and columns: AISC 360-22 E3, and E7 for tubes with slender walls.

import (
	"math"

	"lugwright/strength"
)

type columnGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"compression"`
	L  float64 `sym:"L_c" unit:"mm" min:"0" max:"1e6" is:"effective length"`
	R  float64 `sym:"r" unit:"mm" min:"0.1" max:"1e4" is:"least radius of gyration"`
	A  float64 `sym:"A_g" unit:"mm^2" min:"0.1" max:"1e7" is:"gross area"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// column is flexural buckling of a member without slender parts: AISC 360-22 E3, Eq. E3-1 to E3-4.
var column = strength.Define(strength.Identity{
	ID: "column-buckling", Title: "flexural buckling in compression",
	Clause: clause("E3, Eq. E3-1 to E3-4", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g columnGivens) {
	Fn := columnStress(c, g.L, g.R, g.Fy)
	Pn := c.Let("P_n", "F_n*A_g", "N", Fn*g.A)
	c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67))
})

// columnStress gives F_n, in its lines; a member of no length yields.
func columnStress(c *strength.Calc, l, r, fy float64) float64 {
	lcr := c.Let("Lc_r", "L_c/r", "", l/r)
	if lcr == 0 {
		return c.Let("F_n", "F_y", "MPa", fy)
	}
	return bucklingStress(c, lcr, fy)
}

type slenderTubeGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"compression"`
	L  float64 `sym:"L_c" unit:"mm" min:"0" max:"1e6" is:"effective length"`
	R  float64 `sym:"r" unit:"mm" min:"0.1" max:"1e4" is:"least radius of gyration"`
	A  float64 `sym:"A_g" unit:"mm^2" min:"0.1" max:"1e7" is:"gross area"`
	T  float64 `sym:"t" unit:"mm" min:"0.2" max:"100" is:"design wall"`
	Bt float64 `sym:"b_t" unit:"" min:"1" max:"300" is:"flat of the narrow side over the wall"`
	Ht float64 `sym:"h_t" unit:"" min:"1" max:"300" is:"flat of the wide side over the wall"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// slenderTube is compression of a rectangular tube with the effective width of slender walls: AISC 360-22 E7.1, Eq. E7-1 to E7-5 with
// c_1 = 0.20 and c_2 = 1.38 of Table E7.1; the method dates from 360-16.
var slenderTube = strength.Define(strength.Identity{
	ID: "slender-tube-column", Title: "compression of a rectangular tube with slender walls",
	Clause: clause("E7.1, Eq. E7-1 to E7-5 and Table E7.1", ""),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g slenderTubeGivens) {
	Fn := columnStress(c, g.L, g.R, g.Fy)
	c.Let("lambda_r", "1.40*sqrt(29000*ksi/F_y)", "", 1.40*math.Sqrt(E/g.Fy))
	b := c.Let("b", "b_t*t", "mm", g.Bt*g.T)
	h := c.Let("h", "h_t*t", "mm", g.Ht*g.T)
	be := effectiveSide(c, "b", g.Bt, b, Fn, g.Fy)
	he := effectiveSide(c, "h", g.Ht, h, Fn, g.Fy)
	Ae := c.Let("A_e", "A_g - 2*(b - b_e)*t - 2*(h - h_e)*t", "mm^2", g.A-2*(b-be)*g.T-2*(h-he)*g.T)
	c.Need(Ae > 0, "A_e > 0*mm*mm", "an area greater than what its walls lose")
	Pn := c.Let("P_n", "F_n*A_e", "N", Fn*Ae)
	c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67))
})

// effectiveSide is the effective width of one side, named b or h.
func effectiveSide(c *strength.Calc, side string, ratio, width, fn, fy float64) float64 {
	lr := 1.40 * math.Sqrt(E/fy)
	symbol, whole := "b_e", "b"
	text := "b*(1 - 0.20*sqrt(F_elb/F_n))*sqrt(F_elb/F_n)"
	elastic, formula := "F_elb", "pow(1.38*lambda_r/b_t, 2)*F_y"
	if side == "h" {
		symbol, whole = "h_e", "h"
		text = "h*(1 - 0.20*sqrt(F_elh/F_n))*sqrt(F_elh/F_n)"
		elastic, formula = "F_elh", "pow(1.38*lambda_r/h_t, 2)*F_y"
	}
	if ratio <= lr*math.Sqrt(fy/fn) {
		return c.Let(symbol, whole, "mm", width)
	}
	Fel := c.Let(elastic, formula, "MPa", sq(1.38*lr/ratio)*fy)
	root := math.Sqrt(Fel / fn)
	return c.Let(symbol, text, "mm", width*(1-0.20*root)*root)
}
