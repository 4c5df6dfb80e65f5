package en1993

// Bearing of bolts on a ply, the group's least, edge distances and spacing: EN 1993-1-8, 3.5 to 3.7.

import (
	"lugwright/strength"
)

var bearingLimits = []strength.Evaluator{boltBearing, boltGroupResistance, boltSpacing, boltSpacingMost}

type boltBearingGivens struct {
	F    float64 `sym:"F_v_Ed" unit:"N" min:"0" max:"1e9" is:"shear force on one bolt"`
	D    float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	D0   float64 `sym:"d_0" unit:"mm" min:"1" max:"200" is:"hole diameter"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the ply"`
	E1   float64 `sym:"e_1" unit:"mm" min:"0" max:"1e5" default:"0" is:"hole centre to the end, along the force; 0 for an inner bolt"`
	P1   float64 `sym:"p_1" unit:"mm" min:"0" max:"1e5" default:"0" is:"hole centre to the next hole, along the force; 0 where there is none"`
	E2   float64 `sym:"e_2" unit:"mm" min:"0" max:"1e5" default:"0" is:"hole centre to the edge, across the force; 0 for an inner bolt"`
	P2   float64 `sym:"p_2" unit:"mm" min:"0" max:"1e5" default:"0" is:"hole centre to the next hole, across the force; 0 where there is none"`
	Fu   float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
	Fub  float64 `sym:"f_ub" unit:"MPa" min:"200" max:"2000" is:"nominal tensile strength of the bolt"`
	Hole float64 `sym:"hole" choices:"normal|oversize|slot across the force" default:"0" is:"kind of hole"`
	Lap  float64 `sym:"joint" choices:"other|single lap, one row" default:"0" is:"single laps with one row of bolts have washers under head and nut"`
	Fv   float64 `sym:"F_v_Rd" unit:"N" min:"0" max:"1e9" default:"0" is:"shear strength of an M12 or M14 in a hole 2 mm larger; 0 in others"`
	Csk  float64 `sym:"h_c" unit:"mm" min:"0" max:"100" default:"0" is:"depth of the countersink, half of which bears nothing; 0 for none"`
}

// boltBearing is bearing of one bolt on one ply. A bolt that is at the end and in a row takes the least of both.
var boltBearing = strength.Define(strength.Identity{
	ID: "bolt-bearing", Title: "bearing of the bolt on the ply",
	Clause: joint("3.6.1, Table 3.4 with its notes; 3.6.1(5); 3.6.1(10), Eq. 3.2", "3.6.1(5) from memory"),
	Demand: "F_v_Ed", Capacity: "F_b_Rd", Unit: "N",
}, func(c *strength.Calc, g boltBearingGivens) {
	g2 := c.Factor("gamma_M2")
	ab, k1 := alphaB(c, &g), edgeFactor(c, &g)
	tb := c.Let("t_b", "t - h_c/2", "mm", g.T-g.Csk/2)
	c.Need(ab > 0, "alpha_b > 0", "bolts that stand far enough apart along the force")
	c.Need(k1 > 0, "k_1 > 0", "bolts that stand far enough apart across the force")
	c.Need(tb > 0, "t_b > 0*mm", "a countersink that leaves ply to bear on")
	kh := c.Let("k_h", "when(hole <= 0, 1, when(hole <= 1, 0.8, 0.6))", "", holeFactor(g.Hole))
	F := kh * k1 * ab * g.Fu * g.D * tb / g2
	if g.Lap > 0 {
		F = min(F, 1.5*g.Fu*g.D*tb/g2)
		c.Let("F_b_Rd", "min(k_h*k_1*alpha_b*f_u*d*t_b/gamma_M2, 1.5*f_u*d*t_b/gamma_M2)", "N", F)
	} else {
		c.Let("F_b_Rd", "k_h*k_1*alpha_b*f_u*d*t_b/gamma_M2", "N", F)
	}
	c.Need(g.Fv <= F, "F_v_Rd <= F_b_Rd", "an M12 or M14 in a hole 2 mm larger whose bearing is no weaker than its shear (3.6.1(5))")
	c.Compare(g.F, F)
})

func alphaB(c *strength.Calc, g *boltBearingGivens) float64 {
	least, text := min(g.Fub/g.Fu, 1), "min(f_ub/f_u, 1)"
	if g.E1 > 0 {
		least = min(least, c.Let("alpha_e", "e_1/(3*d_0)", "", g.E1/(3*g.D0)))
		text = "min(alpha_e, f_ub/f_u, 1)"
	}
	if g.P1 > 0 {
		least = min(least, c.Let("alpha_p", "p_1/(3*d_0) - 1/4", "", g.P1/(3*g.D0)-0.25))
		text = "min(alpha_p, f_ub/f_u, 1)"
	}
	if g.E1 > 0 && g.P1 > 0 {
		text = "min(alpha_e, alpha_p, f_ub/f_u, 1)"
	}
	return c.Let("alpha_b", text, "", least)
}

func edgeFactor(c *strength.Calc, g *boltBearingGivens) float64 {
	least, text := 2.5, "2.5"
	if g.E2 > 0 {
		least = min(least, c.Let("k_1e", "2.8*e_2/d_0 - 1.7", "", 2.8*g.E2/g.D0-1.7))
		text = "min(k_1e, 2.5)"
	}
	if g.P2 > 0 {
		least = min(least, c.Let("k_1p", "1.4*p_2/d_0 - 1.7", "", 1.4*g.P2/g.D0-1.7))
		text = "min(k_1p, 2.5)"
	}
	if g.E2 > 0 && g.P2 > 0 {
		text = "min(k_1e, k_1p, 2.5)"
	}
	return c.Let("k_1", text, "", least)
}

func holeFactor(hole float64) float64 {
	switch {
	case hole <= 0:
		return 1
	case hole <= 1:
		return 0.8
	}
	return 0.6
}

type boltGroupGivens struct {
	V  float64   `sym:"V_Ed" unit:"N" min:"0" max:"1e9" is:"force of the group, which all bolts share alike"`
	Fb []float64 `sym:"F_b" unit:"N" min:"1" max:"1e9" is:"bearing resistance of each bolt"`
	Fv float64   `sym:"F_v" unit:"N" min:"1" max:"1e9" is:"shear resistance of one bolt, all its planes"`
}

// boltGroupResistance adds bearing up where every bolt is at least as strong in shear, else it counts each as the weakest. The number of
// bolts is the number of bearing resistances.
var boltGroupResistance = strength.Define(strength.Identity{
	ID: "bolt-group-resistance", Title: "resistance of a group of bolts in bearing and shear",
	Clause: joint("3.7(1)", ""),
	Demand: "V_Ed", Capacity: "V_Rd", Unit: "N",
}, func(c *strength.Calc, g boltGroupGivens) {
	sum, least, most := g.Fb[0], g.Fb[0], g.Fb[0]
	for _, f := range g.Fb[1:] {
		sum, least, most = sum+f, min(least, f), max(most, f)
	}
	n := c.Solved("n", "bolts, counted", "", float64(len(g.Fb)))
	c.Solved("F_b_sum", "bearing resistances, summed", "N", sum)
	c.Solved("F_b_least", "least bearing resistance", "N", least)
	c.Solved("F_b_most", "greatest bearing resistance", "N", most)
	V := n * min(least, g.Fv)
	if g.Fv >= most {
		V = sum
	}
	c.Compare(g.V, c.Let("V_Rd", "when(F_v >= F_b_most, F_b_sum, n*min(F_b_least, F_v))", "N", V))
})

type boltSpacingGivens struct {
	D0 float64 `sym:"d_0" unit:"mm" min:"1" max:"200" is:"hole diameter"`
	E1 float64 `sym:"e_1" unit:"mm" min:"0" max:"1e5" default:"0" is:"hole centre to the end, along the force; 0 where there is none"`
	E2 float64 `sym:"e_2" unit:"mm" min:"0" max:"1e5" default:"0" is:"hole centre to the edge, across the force; 0 where there is none"`
	P1 float64 `sym:"p_1" unit:"mm" min:"0" max:"1e5" default:"0" is:"distance between holes along the force; 0 where there is none"`
	P2 float64 `sym:"p_2" unit:"mm" min:"0" max:"1e5" default:"0" is:"distance between holes across the force; 0 where there is none"`
}

// boltSpacing is the least end and edge distances and spacings. Holes that are staggered or slotted have rows of their own in the table.
var boltSpacing = strength.Define(strength.Identity{
	ID: "bolt-spacing", Title: "least edge distance and distance between bolt holes",
	Clause: joint("3.5, Table 3.3", "from memory; not staggered, no slots"),
	Demand: "U", Capacity: "1", Unit: "",
	Detail: true,
}, func(c *strength.Calc, g boltSpacingGivens) {
	u := leastDistance(c, "e_1_min", "1.2*d_0", 1.2*g.D0, g.E1)
	u = max(u, leastDistance(c, "e_2_min", "1.2*d_0", 1.2*g.D0, g.E2))
	u = max(u, leastDistance(c, "p_1_min", "2.2*d_0", 2.2*g.D0, g.P1))
	u = max(u, leastDistance(c, "p_2_min", "2.4*d_0", 2.4*g.D0, g.P2))
	if u == 0 {
		c.Skip("no edge and no other hole is given")
	}
	c.Compare(c.Let("U", "max(when(e_1 > 0*mm, e_1_min/e_1, 0), when(e_2 > 0*mm, e_2_min/e_2, 0), when(p_1 > 0*mm, p_1_min/p_1, 0), when(p_2 > 0*mm, p_2_min/p_2, 0))", "", u), 1)
})

// leastDistance lists a least distance and gives its part of the one that there is.
func leastDistance(c *strength.Calc, symbol, formula string, least, found float64) float64 {
	c.Let(symbol, formula, "mm", least)
	if found == 0 {
		return 0
	}
	return least / found
}

type boltSpacingMostGivens struct {
	T float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the thinner outer ply"`
	E float64 `sym:"e" unit:"mm" min:"0" max:"1e5" default:"0" is:"greatest edge distance; 0 where there is none"`
	P float64 `sym:"p" unit:"mm" min:"0" max:"1e5" default:"0" is:"greatest distance between holes; 0 where there is none"`
}

// boltSpacingMost is the greatest distances for joints in the weather, and for plates in compression between bolts.
var boltSpacingMost = strength.Define(strength.Identity{
	ID: "bolt-spacing-most", Title: "greatest edge distance and distance between bolt holes in the weather",
	Clause: joint("3.5, Table 3.3", "from memory"),
	Demand: "U", Capacity: "1", Unit: "",
	Detail: true,
}, func(c *strength.Calc, g boltSpacingMostGivens) {
	e := c.Let("e_max", "4*t + 40*mm", "mm", 4*g.T+40)
	p := c.Let("p_max", "min(14*t, 200*mm)", "mm", min(14*g.T, 200))
	c.Compare(c.Let("U", "max(e/e_max, p/p_max)", "", max(g.E/e, g.P/p)), 1)
})

// kindOfHole tells a normal hole from an oversize one by its clearance: EN 1090-2 Table 11, from memory. Small bolts in 2 mm of clearance
// are normal by 3.6.1(5), which lowers their shear instead.
func kindOfHole(d, dh float64) float64 {
	normal := 3.0
	if d < 24-1e-6 {
		normal = 2
	}
	return strength.Flag(dh-d > normal+1e-6)
}

// ofWideHole is the shear strength that bearing must reach where the hole is 2 mm larger than an M12 or M14; nought for other holes.
func ofWideHole(c *strength.Calc, b *strength.Bolt) float64 {
	if wide(b) <= 0 {
		return 0
	}
	class := classOf(b.Grade)
	return clearanceFactor(wide(b), class) * alphaV(strength.Flag(b.ThreadsIn), class) * tensile(b) * sheared(b) / c.Factor("gamma_M2")
}

// A bolt in a bracket is an end and an edge bolt, and has a neighbour both ways: the nearest edge and hole are taken whichever way the
// force points.
var bearingRules = []strength.Rule[strength.BoltBearing]{
	{Of: boltBearing, Check: func(c *strength.Calc, f *strength.BoltBearing) {
		boltBearing.Check(c, boltBearingGivens{
			Fv: ofWideHole(c, &f.Bolt),
			F:  f.V, D: f.D, D0: f.Dh, T: f.T, E1: f.Edge, E2: f.Edge, P1: f.Pitch, P2: f.Pitch, Fu: f.Fu, Fub: tensile(&f.Bolt),
			Hole: kindOfHole(f.D, f.Dh), Lap: strength.Flag(f.Bolt.OneRow),
		})
	}},
	{Of: boltPunching, Check: func(c *strength.Calc, f *strength.BoltBearing) {
		// Across flats, less than the mean that the table takes: so do the published tables, and it is cautious.
		boltPunching.Check(c, boltPunchingGivens{F: f.Bolt.T, Dm: f.Bolt.Flats, T: f.T, Fu: f.Fu})
	}},
	{Of: boltSpacing, Check: func(c *strength.Calc, f *strength.BoltBearing) {
		boltSpacing.Check(c, boltSpacingGivens{D0: f.Dh, E1: f.Edge, E2: f.Edge, P1: f.Pitch, P2: f.Pitch})
	}},
}
