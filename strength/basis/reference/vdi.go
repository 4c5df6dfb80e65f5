package reference

// Assembly preload and torque of VDI 2230.

import (
	"math"

	"lugwright/strength"
)

// vdi2230 is the card of the guide's assembly tables.
var vdi2230 = bookCard("VDI 2230", "VDI 2230", "2003", assemblyPreload)

type assemblyGivens struct {
	D     float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	P     float64 `sym:"P" unit:"mm" min:"0.1" max:"10" is:"pitch"`
	D2    float64 `sym:"d_2g" unit:"mm" min:"0" max:"200" default:"0" is:"pitch diameter; 0 for d - 0.6495 P"`
	D3    float64 `sym:"d_3g" unit:"mm" min:"0" max:"200" default:"0" is:"core diameter; 0 for d - 1.2269 P"`
	Dw    float64 `sym:"d_w" unit:"mm" min:"1" max:"500" is:"outside diameter of the bearing face under the head"`
	Dh    float64 `sym:"d_h" unit:"mm" min:"1" max:"300" is:"clearance hole"`
	Mu    float64 `sym:"mu_G" unit:"" min:"0.02" max:"0.5" is:"friction in the thread"`
	MuK   float64 `sym:"mu_Kg" unit:"" min:"0" max:"0.5" default:"0" is:"friction under the head; 0 as in the thread"`
	Rp    float64 `sym:"R_p" unit:"MPa" min:"50" max:"2000" is:"0.2 % proof strength: 640 (8.8 to M16), 660 (above), 940 (10.9), 1100 (12.9)"`
	Nu    float64 `sym:"nu" unit:"" min:"0.1" max:"1" default:"0.9" is:"use of the proof strength while it is tightened"`
	Alpha float64 `sym:"alpha_A" unit:"" min:"1" max:"4" default:"1" is:"tightening factor: greatest over least preload"`
	F     float64 `sym:"F_K" unit:"N" min:"0" max:"1e9" default:"0" is:"preload that the joint needs"`
}

// assemblyPreload is the preload at which tension and torsion of tightening reach nu R_p by the equivalent stress, and its torque: VDI 2230, tables A1 to
// A4; formulas from memory. They give the published tables to about 0.6 %.
var assemblyPreload = strength.Define(strength.Identity{
	ID: "assembly-preload", Title: "assembly preload and torque",
	Clause: strength.Clause{Document: "VDI 2230", Edition: "2003", Section: "R7, assembly preload, and tables A1 to A4", Words: "formulas from memory"},
	Demand: "F_K", Capacity: "F_Mmin", Unit: "N",
}, func(c *strength.Calc, g assemblyGivens) {
	d2, d3, muK := or(g.D2, g.D-0.6495*g.P), or(g.D3, g.D-1.2269*g.P), or(g.MuK, g.Mu)
	c.Let("d_2", "when(d_2g > 0*mm, d_2g, d - 0.6495*P)", "mm", d2)
	c.Let("d_3", "when(d_3g > 0*mm, d_3g, d - 1.2269*P)", "mm", d3)
	c.Let("mu_K", "when(mu_Kg > 0, mu_Kg, mu_G)", "", muK)
	c.Need(d2 > 0, "d_2 > 0*mm", "a thread around a core")
	c.Need(d3 > 0, "d_3 > 0*mm", "a core within the thread")
	d0 := c.Let("d_0", "(d_2 + d_3)/2", "mm", (d2+d3)/2)
	A0 := c.Let("A_0", "pi/4*pow(d_0, 2)", "mm^2", math.Pi/4*d0*d0)
	twist := c.Let("k_tau", "1.5*d_2/d_0*(P/(pi*d_2) + 1.155*mu_G)", "", 1.5*d2/d0*(g.P/(math.Pi*d2)+1.155*g.Mu))
	F := c.Let("F_M", "nu*R_p*A_0/sqrt(1 + 3*pow(k_tau, 2))", "N", g.Nu*g.Rp*A0/math.Sqrt(1+3*twist*twist))
	DK := c.Let("D_Km", "(d_w + d_h)/2", "mm", (g.Dw+g.Dh)/2)
	c.Let("M_A", "F_M*(0.16*P + 0.58*d_2*mu_G + D_Km*mu_K/2)", "N*mm", F*(0.16*g.P+0.58*d2*g.Mu+DK*muK/2))
	c.Compare(g.F, c.Let("F_Mmin", "F_M/alpha_A", "N", F/g.Alpha))
})

// or is a value, or another where it is not given.
func or(v, other float64) float64 {
	if v > 0 {
		return v
	}
	return other
}
