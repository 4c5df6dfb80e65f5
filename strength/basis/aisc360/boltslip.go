package aisc360

// Slip-critical joints.

import (
	"lugwright/strength"
)

// slipBolts are the sizes of Tables J3.1 and J3.1M with the least pretension of Group 120 and of Groups 144 and 150: kips for inch sizes, kN for
// metric ones. Both are 0.70 of the tensile strength, rounded.
var slipBolts = [...]struct{ a, b float64 }{
	{12, 15}, {19, 24}, {28, 35}, {39, 49}, {51, 64}, {64, 80}, {81, 102}, {97, 121}, {118, 148},
	{91, 114}, {142, 179}, {176, 221}, {205, 257}, {267, 334}, {326, 408}, {475, 595},
}

// inchBolts are the inch sizes, which stand first in the lists of sizes.
const inchBolts = 9

// pretension is that of the tables in N.
func pretension(size, group float64) float64 {
	row := slipBolts[int(size)-1]
	t := row.a
	if group > 0 {
		t = row.b
	}
	if int(size) <= inchBolts {
		return t * ksi * inch * inch
	}
	return t * 1000
}

type slipGivens struct {
	V     float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on the joint"`
	T     float64 `sym:"T_r" unit:"N" min:"0" max:"1e9" default:"0" is:"tension on the joint"`
	N     float64 `sym:"n_b" unit:"" min:"1" max:"1000" default:"1" step:"1" is:"bolts that share both alike"`
	Size  float64 `sym:"size" choices:"other|1/2 in|5/8 in|3/4 in|7/8 in|1 in|1-1/8 in|1-1/4 in|1-3/8 in|1-1/2 in|M16|M20|M22|M24|M27|M30|M36" default:"0" is:"bolt, for the table's pretension; other takes T_b"`
	Group float64 `sym:"group" choices:"120|150|144" default:"0" is:"strength group: 120 (A325), 150 (A490), 144 (F3148)"`
	Tb    float64 `sym:"T_b" unit:"N" min:"0" max:"1e8" default:"0" is:"pretension of a bolt of another size or group, 0.70 of its tensile strength"`
	Mu    float64 `sym:"mu" unit:"" min:"0.05" max:"0.6" default:"0.3" is:"slip coefficient: 0.30 class A, 0.50 class B, or tested"`
	Ns    float64 `sym:"n_s" unit:"" min:"1" max:"4" default:"1" step:"1" is:"slip planes"`
	Hole  float64 `sym:"hole" choices:"standard|short slot across|oversize|short slot along|long slot" default:"0" is:"hole, a short slot across or along the force"`
	Fill  float64 `sym:"fillers" choices:"held|loose" default:"0" is:"fillers: held are none, one, or those with bolts of their own; loose are two or more without"`
	Du    float64 `sym:"D_u" unit:"" min:"1" max:"1.5" default:"1.13" is:"mean pretension over the least; another value needs the engineer's word"`
}

// boltSlip is slip of a joint with pretensioned bolts, with tension: AISC 360-22 J3.9, Eq. J3-4, and J3.10, Eq. J3-5a (LRFD) and J3-5b (ASD).
// Shear, bearing and tension of the bolts are to hold too.
var boltSlip = strength.Define(strength.Identity{
	ID: "bolt-slip", Title: "slip of a joint with pretensioned bolts",
	Clause: clause("J3.9, Eq. J3-4; J3.10, Eq. J3-5a and J3-5b; Tables J3.1 and J3.1M", ""),
	Demand: "V_r", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g slipGivens) {
	Tm := g.Tb
	if g.Size > 0 {
		Tm = c.Solved("T_m", "least pretension of Table J3.1 or J3.1M", "N", pretension(g.Size, g.Group))
	} else {
		if !c.Need(g.Tb > 0, "T_b > 0*N", "a size of the table, or a pretension T_b") {
			refused(c)
			return
		}
		c.Let("T_m", "T_b", "N", Tm)
	}
	hf := 1.0
	if g.Fill > 0 {
		hf = 0.85
	}
	hf = c.Let("h_f", "when(fillers > 0, 0.85, 1)", "", hf)
	rn := c.Let("r_n", "mu*D_u*h_f*T_m*n_s", "N", g.Mu*g.Du*hf*Tm*g.Ns)
	phi, omega := slipFactors(g.Hole)
	rc := c.Available("r_c", "r_n", "N", rn, phi, omega)
	k := slipTension(c, &g, Tm)
	Vc := c.Let("V_c", "r_c*k_sc*n_b", "N", rc*k*g.N)
	if k > 0 {
		c.Let("n_req", "n_b*V_r/V_c", "", g.N*g.V/Vc)
	}
	c.Compare(g.V, Vc)
})

// slipFactors are those of J3.9 (a) to (c).
func slipFactors(hole float64) (phi, omega float64) {
	switch hole {
	case 0, 1:
		return 1.00, 1.50
	case 2, 3:
		return 0.85, 1.76
	}
	return 0.70, 2.14
}

// slipTension is what tension leaves of the clamping.
func slipTension(c *strength.Calc, g *slipGivens, tm float64) float64 {
	var k float64
	if c.Method == strength.LRFD {
		k = c.Let("k_sc", "1 - T_r/(D_u*T_m*n_b)", "", 1-g.T/(g.Du*tm*g.N))
	} else {
		k = c.Let("k_sc", "1 - 1.5*T_r/(D_u*T_m*n_b)", "", 1-1.5*g.T/(g.Du*tm*g.N))
	}
	c.Need(k > 0, "k_sc > 0", "the faces stay pressed together")
	return k
}
