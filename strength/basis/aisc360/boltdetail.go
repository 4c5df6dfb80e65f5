package aisc360

// Bolts in long joints and through fillers, plies pulled over their heads, holes and edge distances.

import (
	"math"

	"lugwright/strength"
)

var boltDetailLimits = []strength.Evaluator{boltShearJoint, boltPullThrough, boltEdge, boltHole}

type boltJointGivens struct {
	V       float64 `sym:"V_r" unit:"N" min:"0" max:"1e9" is:"shear force on one bolt, on all its planes"`
	D       float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Fu      float64 `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
	Threads float64 `sym:"threads" unit:"" min:"0" max:"1" default:"1" is:"1 when threads are in the shear plane, else 0"`
	Planes  float64 `sym:"n_s" unit:"" min:"1" max:"2" default:"1" step:"1" is:"shear planes"`
	Lj      float64 `sym:"L_j" unit:"mm" min:"0" max:"1e5" default:"0" is:"length of an end-loaded pattern along the force, between outermost bolts; 0 when not end-loaded"`
	Tf      float64 `sym:"t_f" unit:"mm" min:"0" max:"500" default:"0" is:"thickness of the fillers, summed"`
	Held    float64 `sym:"fillers" choices:"loose|held" default:"0" is:"fillers: held are those fastened beyond the joint, or in a slip-critical one"`
	Kind    float64 `sym:"bolt" choices:"high strength|A307" default:"0" is:"kind of bolt"`
	Grip    float64 `sym:"grip" unit:"mm" min:"0" max:"5000" default:"0" is:"grip; matters for A307 alone"`
	Whole   float64 `sym:"stress" choices:"parts of F_u|whole ksi of Table J3.2" default:"0" is:"nominal stresses: 0.450 or 0.563 and 0.75 F_u, or these as the table prints them for bolts of a group"`
}

// boltShearJoint is shear of one bolt where the joint is long, has fillers, or its plain bolts a long grip: AISC 360-22 J3.7 with the footnotes of
// Table J3.2, and J5.2. The reduction for fillers is from memory; the footnote's 1 % for each 1/16 in is taken in proportion.
var boltShearJoint = strength.Define(strength.Identity{
	ID: "bolt-shear-joint", Title: "shear of a bolt in a long joint, through fillers or with a long grip",
	Clause: clause("J3.7, Eq. J3-1, Table J3.2 with footnotes; J5.2", "reduction for fillers from memory"),
	Demand: "V_r", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g boltJointGivens) {
	Ab := c.Let("A_b", "pi*pow(d, 2)/4", "mm^2", math.Pi*g.D*g.D/4)
	c.Need(g.Kind*(1-g.Threads) <= 0, "bolt*(1 - threads) <= 0", "A307 has one strength, that with threads in the plane")
	Fnv := shearStrength(c, g.Fu, g.Threads, g.Whole)
	kl, kf, kg := 1.0, 1.0, 1.0
	if g.Lj > 38*inch {
		kl = 0.833
	}
	if g.Tf > inch/4 && g.Held == 0 {
		kf = max(1-0.4*(g.Tf/inch-1.0/4), 0.85)
	}
	if g.Kind > 0 {
		kg = 1 - 0.01*max(g.Grip-5*g.D, 0)/(inch/16)
	}
	kl = c.Let("k_L", "when(L_j > 38*in, 0.833, 1)", "", kl)
	kf = c.Let("k_f", "when(t_f > 1/4*in, when(fillers > 0, 1, max(1 - 0.4*(t_f/in - 1/4), 0.85)), 1)", "", kf)
	kg = c.Let("k_g", "when(bolt > 0, 1 - 0.01*max(grip - 5*d, 0*mm)/(1/16*in), 1)", "", kg)
	c.Need(kg > 0, "k_g > 0", "a grip for which the footnote leaves some strength")
	Rn := c.Let("R_n", "k_L*k_f*k_g*n_s*F_nv*A_b", "N", kl*kf*kg*g.Planes*Fnv*Ab)
	c.Compare(g.V, c.Available("V_c", "R_n", "N", Rn, 0.75, 2.00))
})

type pullThroughGivens struct {
	T  float64 `sym:"T_r" unit:"N" min:"0" max:"1e9" is:"tension in one bolt, prying in it"`
	Wf float64 `sym:"w_f" unit:"mm" min:"1" max:"300" is:"head or nut, the smaller, across its flats"`
	Dw float64 `sym:"d_w" unit:"mm" min:"0" max:"1000" default:"0" is:"outside diameter of the washer, or side of a square one; 0 for none"`
	Tw float64 `sym:"t_w" unit:"mm" min:"0" max:"100" default:"0" is:"thickness of the washer"`
	Dh float64 `sym:"d_h" unit:"mm" min:"1" max:"200" is:"hole in the ply, the long way for a slot"`
	Tp float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the ply"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the ply"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the ply"`
}

// boltPullThrough is shear through the thickness of a ply round the head or its washer. No clause speaks of it for hot-rolled plies: J4.2 is taken round
// the perimeter, as common practice has it. The head's force spreads at 45 degrees through the washer, so that a thin wide washer counts for
// less. Sheet under 3/16 in dishes and pulls over the head at less, for which cold-formed steel has a rule of its own (AISI S100); the limit is from memory.
// Bending of the ply is bolt-prying's.
var boltPullThrough = strength.Define(strength.Identity{
	ID: "bolt-pull-through", Title: "ply pulled through by the bolt's head or washer",
	Clause: clause("J4.2, Eq. J4-3 and J4-4", "round the washer's perimeter through the thickness: common practice, no clause"),
	Demand: "T_r", Capacity: "T_c", Unit: "N",
}, func(c *strength.Calc, g pullThroughGivens) {
	c.Need(g.Tp >= 3.0/16*inch, "t >= 3/16*in", "a ply that shears before it dishes; thinner sheet is cold-formed steel's, AISI S100")
	we := c.Let("w_e", "max(w_f, min(d_w, w_f + 2*t_w))", "mm", max(g.Wf, min(g.Dw, g.Wf+2*g.Tw)))
	c.Need(we > g.Dh, "w_e > d_h", "head or washer covers the hole")
	Av := c.Let("A_v", "pi*w_e*t", "mm^2", math.Pi*we*g.Tp)
	Ry := c.Let("R_ny", "0.60*F_y*A_v", "N", 0.60*g.Fy*Av)
	Ty := c.Available("T_cy", "R_ny", "N", Ry, 1.00, 1.50)
	Ru := c.Let("R_nu", "0.60*F_u*A_v", "N", 0.60*g.Fu*Av)
	Tu := c.Available("T_cu", "R_nu", "N", Ru, 0.75, 2.00)
	c.Compare(g.T, c.Let("T_c", "min(T_cy, T_cu)", "N", min(Ty, Tu)))
})

type boltEdgeGivens struct {
	D      float64 `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Edge   float64 `sym:"l_e" unit:"mm" min:"0" max:"1e5" default:"0" is:"hole centre to the edge"`
	Series float64 `sym:"series" choices:"inch|metric" default:"0" is:"table: J3.4 and J3.5, or J3.4M and J3.5M"`
	Hole   float64 `sym:"hole" choices:"standard|oversize|short slot|long slot" default:"0" is:"hole, a slot across the edge; one along it is as standard"`
}

// boltEdge is the least distance from a hole to an edge: AISC 360-22 J3.5, Tables J3.4 and J3.5, inch and metric. A diameter between two rows takes the larger, one below the first row that row.
var boltEdge = strength.Define(strength.Identity{
	ID: "bolt-edge-distance", Title: "least distance of a bolt hole from an edge",
	Clause: clause("J3.5, Tables J3.4, J3.4M, J3.5 and J3.5M", ""),
	Demand: "l_min", Capacity: "l_e", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g boltEdgeGivens) {
	lt := c.Solved("l_t", "Table J3.4 or J3.4M: standard holes", "mm", leastEdge(g.D, g.Series > 0))
	c2 := edgeIncrement(c, &g)
	c.Compare(c.Let("l_min", "l_t + C_2", "mm", lt+c2), g.Edge)
})

// edgeRow is a row of Table J3.4: a bolt and its edge distance, in inches or in mm.
type edgeRow struct{ d, edge float64 }

var (
	j34  = [...]edgeRow{{1.0 / 2, 3.0 / 4}, {5.0 / 8, 7.0 / 8}, {3.0 / 4, 1}, {7.0 / 8, 1.125}, {1, 1.25}, {1.125, 1.5}, {1.25, 1.625}}
	j34m = [...]edgeRow{{12, 18}, {16, 22}, {20, 26}, {22, 28}, {24, 30}, {27, 34}, {30, 38}, {36, 46}}
)

// leastEdge is that of standard holes; beyond the table 1.25 d.
func leastEdge(d float64, metric bool) float64 {
	table, unit := j34[:], inch
	if metric {
		table, unit = j34m[:], 1
	}
	for _, r := range table {
		if d <= r.d*unit*(1+1e-9) {
			return r.edge * unit
		}
	}
	return 1.25 * d
}

// edgeIncrement is C_2 of Table J3.5 or J3.5M.
func edgeIncrement(c *strength.Calc, g *boltEdgeGivens) float64 {
	if g.Hole == 0 {
		return c.Let("C_2", "0*mm", "mm", 0)
	}
	if g.Hole == 3 {
		return c.Let("C_2", "3/4*d", "mm", 3.0/4*g.D)
	}
	row := 0
	limits, unit := [2]float64{7.0 / 8, 1}, inch
	over, short := [3]float64{1.0 / 16, 1.0 / 8, 1.0 / 8}, [3]float64{1.0 / 8, 1.0 / 8, 3.0 / 16}
	if g.Series > 0 {
		limits, unit = [2]float64{22, 24}, 1
		over, short = [3]float64{2, 3, 3}, [3]float64{3, 3, 5}
	}
	for _, limit := range limits {
		if g.D > limit*unit*(1+1e-9) {
			row++
		}
	}
	if g.Hole == 1 {
		return c.Solved("C_2", "Table J3.5 or J3.5M: oversize hole", "mm", over[row]*unit)
	}
	return c.Solved("C_2", "Table J3.5 or J3.5M: short slot", "mm", short[row]*unit)
}

type boltHoleGivens struct {
	Dh   float64 `sym:"d_h" unit:"mm" min:"0" max:"500" is:"diameter of the hole, or length of the slot"`
	Size float64 `sym:"size" choices:"1/2 in|5/8 in|3/4 in|7/8 in|1 in|1-1/8 in|1-1/4 in|1-3/8 in|1-1/2 in|M12|M16|M20|M22|M24|M27|M30|M36" is:"bolt"`
	Hole float64 `sym:"hole" choices:"standard|oversize|short slot|long slot" default:"0" is:"hole; a slot is as wide as a standard hole"`
}

// boltHoles are Tables J3.3 (inches; 360-16 and later) and J3.3M (mm): standard and oversize hole, length of
// short and long slot.
var boltHoles = [...][4]float64{
	{9.0 / 16, 5.0 / 8, 11.0 / 16, 1.25},
	{11.0 / 16, 13.0 / 16, 7.0 / 8, 1.5625},
	{13.0 / 16, 15.0 / 16, 1, 1.875},
	{15.0 / 16, 1.0625, 1.125, 2.1875},
	{1.125, 1.25, 1.3125, 2.5},
	{1.25, 1.4375, 1.5, 2.8125},
	{1.375, 1.5625, 1.625, 3.125},
	{1.5, 1.6875, 1.75, 3.4375},
	{1.625, 1.8125, 1.875, 3.75},
	{14, 16, 18, 30},
	{18, 20, 22, 40},
	{22, 24, 26, 50},
	{24, 28, 30, 55},
	{27, 30, 32, 60},
	{30, 35, 37, 67},
	{33, 38, 40, 75},
	{39, 44, 46, 90},
}

// holeBolts are the bolts of those rows: inches, then mm.
var holeBolts = [...]float64{1.0 / 2, 5.0 / 8, 3.0 / 4, 7.0 / 8, 1, 1.125, 1.25, 1.375, 1.5, 12, 16, 20, 22, 24, 27, 30, 36}

// holeSize is the row of a bolt's diameter, -1 for none.
func holeSize(d float64) int {
	for i, row := range holeBolts {
		if i < inchBolts {
			row *= inch
		}
		if math.Abs(d-row) < 1e-6 {
			return i
		}
	}
	return -1
}

// boltHole is the greatest hole of each kind: AISC 360-22 J3.3, Tables J3.3 and J3.3M. A joint that bears has standard holes, or slots across the force: oversize ones are
// for slip-critical joints alone, J3.3. Bolts of a bracket bear.
var boltHole = strength.Define(strength.Identity{
	ID: "bolt-hole-size", Title: "greatest hole for a bolt",
	Clause: clause("J3.3, Tables J3.3 and J3.3M", "oversize holes in slip-critical joints alone"),
	Demand: "d_h", Capacity: "d_max", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g boltHoleGivens) {
	unit := inch
	if int(g.Size) >= inchBolts {
		unit = 1
	}
	c.Compare(g.Dh, c.Solved("d_max", "Table J3.3 or J3.3M", "mm", boltHoles[int(g.Size)][int(g.Hole)]*unit))
})

var pullThroughRules = []strength.Rule[strength.PullThrough]{
	{Of: boltPullThrough, Check: func(c *strength.Calc, f *strength.PullThrough) {
		boltPullThrough.Check(c, pullThroughGivens{T: f.T, Wf: f.Flats, Dw: f.Side, Tw: f.Washer, Dh: f.Hole, Tp: f.Sheet, Fy: f.Fy, Fu: f.Fu})
	}},
}
