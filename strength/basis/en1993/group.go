package en1993

// Bolt and weld groups by elastic theory, and partial-penetration butt welds: EN 1993-1-8, 3.12, 4.7 and 4.9.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
	"lugwright/strength/statics"
)

var groupLimits = []strength.Evaluator{boltGroupElastic, weldGroupElastic, pjpStrength, pjpTee}

type boltGroupElasticGivens struct {
	X       []float64 `sym:"x" unit:"mm" min:"-1e5" max:"1e5" is:"position of each bolt; one value for all when alike"`
	Y       []float64 `sym:"y" unit:"mm" min:"-1e5" max:"1e5" is:"position of each bolt; one value for all when alike"`
	Px      float64   `sym:"P_x" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along x"`
	Py      float64   `sym:"P_y" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along y"`
	M       float64   `sym:"M_z" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment beside the force's own, from x towards y"`
	XP      float64   `sym:"x_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	YP      float64   `sym:"y_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	Origin  float64   `sym:"origin" choices:"coordinates|centroid" default:"0" is:"whence the point of the force is measured: as the bolts, or from their centroid"`
	A       float64   `sym:"A" unit:"mm^2" min:"1" max:"20000" is:"area of the bolt in the plane: stress area where threads are in it, else that of the shank"`
	Fub     float64   `sym:"f_ub" unit:"MPa" min:"200" max:"2000" is:"nominal tensile strength of the bolt"`
	Class   float64   `sym:"class" choices:"4.6|5.6|8.8|4.8|5.8|6.8|10.9|other" is:"property class; other is taken as 10.9"`
	Threads float64   `sym:"threads" choices:"out of the plane|in the plane" default:"1" is:"threads in the shear plane"`
	Wide    float64   `sym:"clearance" choices:"as Table 11 of EN 1090-2|2 mm at M12 or M14" default:"0" is:"clearance of the hole"`
	N       float64   `sym:"n" unit:"" min:"1" max:"2" default:"1" step:"1" is:"shear planes"`
	Bearing float64   `sym:"F_b_Rd" unit:"N" min:"0" max:"1e8" default:"0" is:"bearing resistance of the ply at the weakest bolt (bolt-bearing); 0 leaves it out"`
}

// boltGroupElastic is a group of bolts of one size under a force in their plane, forces in proportion to the distance from the centre of
// rotation. 3.12(2) wants that where bolts are weaker in shear than in bearing, must not slip, or are struck, shaken or loaded to and fro.
var boltGroupElastic = strength.Define(strength.Identity{
	ID: "bolt-group-elastic", Title: "eccentric bolt group in its plane by elastic theory",
	Clause: joint("3.12; 3.6.1, Table 3.4", "3.12 from memory"),
	Demand: "F_v_Ed", Capacity: "F_Rd", Unit: "N",
}, func(c *strength.Calc, g boltGroupElasticGivens) {
	pos, ok := practice.BoltsAt(c, g.X, g.Y)
	if !ok {
		return
	}
	centre, at := statics.Centroid(pos), statics.Vec2{X: g.XP, Y: g.YP}
	if g.Origin > 0 {
		at = statics.Vec2{X: at.X + centre.X, Y: at.Y + centre.Y}
	}
	M := (at.X-centre.X)*g.Py - (at.Y-centre.Y)*g.Px + g.M
	shears := make([]statics.Vec2, len(pos))
	if err := statics.Shears(shears, pos, g.Px, g.Py, M); err != nil {
		outside(c, "x, y: "+err.Error())
		return
	}
	worst := 0.0
	for _, s := range shears {
		worst = max(worst, s.Norm())
	}
	c.Solved("x_bar", "centroid of the bolts", "mm", centre.X)
	c.Solved("y_bar", "centroid of the bolts", "mm", centre.Y)
	c.Solved("I_p", "sum of the squares of the distances from the centroid", "mm^2", statics.PolarInertia(pos))
	c.Solved("M_Ed", "moment about the centroid", "N*mm", M)
	F := c.Solved("F_v_Ed", "force of the most loaded bolt, P/n_b and M r/I_p added as vectors", "N", worst)
	Fv := shearStrength(c, g.Threads, g.Class, g.Wide, g.Fub, g.A)
	least := g.N * Fv
	if g.Bearing > 0 {
		least = min(least, g.Bearing)
	}
	FRd := c.Let("F_Rd", "when(F_b_Rd > 0*N, min(n*F_v_Rd, F_b_Rd), n*F_v_Rd)", "N", least)
	if P := c.Let("P_Ed", "sqrt(pow(P_x, 2) + pow(P_y, 2))", "N", math.Sqrt(g.Px*g.Px+g.Py*g.Py)); P > 0 {
		c.Let("P_Rd", "P_Ed*F_Rd/F_v_Ed", "N", P*FRd/F)
	}
	c.Compare(F, FRd)
})

// outside ends a limit state whose givens have no answer, in the words of who refused them.
func outside(c *strength.Calc, why string) {
	c.Verdict, c.Why = strength.Outside, why
	c.Compare(math.Inf(1), 0)
}

type weldGroupGivens struct {
	X1     []float64 `sym:"x1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	Y1     []float64 `sym:"y1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	X2     []float64 `sym:"x2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	Y2     []float64 `sym:"y2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	Px     float64   `sym:"P_x" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along x"`
	Py     float64   `sym:"P_y" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along y"`
	Pz     float64   `sym:"P_z" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along z, out of the plane of the welds"`
	Mx     float64   `sym:"M_x" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment about x beside the force's own"`
	My     float64   `sym:"M_y" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment about y"`
	Mz     float64   `sym:"M_z" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment about z"`
	X      float64   `sym:"x_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	Y      float64   `sym:"y_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	Z      float64   `sym:"z_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force, from the plane of the welds"`
	Origin float64   `sym:"origin" choices:"coordinates|centroid" default:"0" is:"whence the point of the force is measured: as the welds, or from their centroid"`
	A      float64   `sym:"a" unit:"mm" min:"0.5" max:"100" is:"throat: leg over root two for equal legs"`
	Ends   float64   `sym:"ends" choices:"craters|full size" default:"0" is:"whether the welds have their full size to their ends; craters take a throat off each end"`
	Rule   float64   `sym:"rule" choices:"simplified|directional" default:"0" is:"method: 4.5.3.3, or 4.5.3.2"`
	Fu     float64   `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part joined"`
	Beta   float64   `sym:"beta_w" unit:"" min:"0.8" max:"1" is:"correlation factor, Table 4.1: 0.80 S235, 0.85 S275, 0.90 S355, 1.00 S420 and S460"`
}

// weldGroupElastic is a group of fillets of one throat in a plane under any force and moments, spread as in a rigid body: 4.9(1). The directional
// method takes fillets of equal legs between that plane and a plate that stands or lies on it, on whichever side of their axis is worse.
var weldGroupElastic = strength.Define(strength.Identity{
	ID: "weld-group-elastic", Title: "weld group by elastic theory",
	Clause: joint("4.9(1); 4.5.3.2, Eq. 4.1; 4.5.3.3, Eq. 4.2 to 4.4; 4.5.1", "force per length by elementary statics"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g weldGroupGivens) {
	group, ok := weldGroup(c, &g)
	if !ok {
		return
	}
	at := statics.Vec3{X: g.X, Y: g.Y, Z: g.Z}
	if g.Origin > 0 {
		at = at.Add(group.Centroid)
	}
	load := statics.Wrench{F: statics.Vec3{X: g.Px, Y: g.Py, Z: g.Pz}, M: statics.Vec3{X: g.Mx, Y: g.My, Z: g.Mz}, At: at}.MovedTo(group.Centroid)
	peak, err := group.Peak(load.F, load.M)
	if err != nil {
		outside(c, "x1, y1, x2, y2: "+err.Error())
		return
	}
	_, _, J := group.Inertia()
	c.Solved("L_w", "effective length of the welds, summed", "mm", group.LengthMM)
	c.Solved("x_bar", "centroid of the welds", "mm", group.Centroid.X)
	c.Solved("y_bar", "centroid of the welds", "mm", group.Centroid.Y)
	c.Solved("I_p", "moment of inertia of the lines about z, summed", "mm^3", J)
	F := c.Solved("F_w_Ed", "greatest force per length", "N/mm", peak.Q.Norm())
	if g.Rule == 0 {
		c.Compare(c.Let("U", "F_w_Ed/F_w_Rd", "", F/filletLine(c, g.A, g.Fu, g.Beta)), 1)
		return
	}
	w := worstThroat(&g, group, load)
	n := c.Solved("n_t", "force per length square to the throat, where the throat is used most", "N/mm", w.X)
	v := c.Solved("v_t", "there, in the throat and square to the axis", "N/mm", w.Y)
	l := c.Solved("v_l", "there, along the axis", "N/mm", w.Z)
	c.Compare(throat(c, n, v, l, g.A, g.Fu, g.Beta), 1)
})

// weldGroup makes the group of effective lengths; with lists that do not fit, or runs too short, the verdict is outside the rule.
func weldGroup(c *strength.Calc, g *weldGroupGivens) (*statics.WeldGroup, bool) {
	n, odd := len(g.X1), 0
	for _, k := range [3]int{len(g.Y1), len(g.X2), len(g.Y2)} {
		odd += max(n-k, k-n)
	}
	c.Solved("n_odd", "coordinates too many or too few", "", float64(odd))
	if !c.Need(odd == 0, "n_odd == 0", "each weld has x1, y1, x2 and y2") {
		c.Compare(math.Inf(1), 0)
		return nil, false
	}
	crater := g.A
	if g.Ends > 0 {
		crater = 0
	}
	segs, least := make([]statics.WeldSegment, n), math.Inf(1)
	for i := range segs {
		a, b := statics.Vec3{X: g.X1[i], Y: g.Y1[i]}, statics.Vec3{X: g.X2[i], Y: g.Y2[i]}
		least = min(least, b.Sub(a).Norm()-2*crater)
		off := b.Sub(a).Unit().Scale(crater)
		segs[i] = statics.WeldSegment{A: a.Add(off), B: b.Sub(off), Weight: 1}
	}
	shortest(c, c.Solved("l_eff", "effective length of the shortest weld", "mm", least), g.A)
	if c.Verdict != "" {
		c.Compare(math.Inf(1), 0)
		return nil, false
	}
	group, err := statics.NewWeldGroup(segs)
	if err != nil {
		outside(c, "x1, y1, x2, y2: "+err.Error())
		return nil, false
	}
	return &group, true
}

// worstThroat gives the parts of the force per length, square to the throat, across it and along it, at the end and on the side where sigma_w is
// greatest. It is convex in a force that varies linearly along a weld, so that an end is the worst. On the worse side sigma_w is at least root two of
// the force across the axis, so that 0.9 f_u never governs.
func worstThroat(g *weldGroupGivens, group *statics.WeldGroup, load statics.Wrench) statics.Vec3 {
	var worst statics.Vec3
	most := -1.0
	for i := range group.Segments() {
		axis := statics.Vec3{X: g.X2[i] - g.X1[i], Y: g.Y2[i] - g.Y1[i]}.Unit()
		across := statics.Vec3{X: -axis.Y, Y: axis.X}
		qa, qb, err := group.SegmentEnds(i, load.F, load.M)
		if err != nil {
			continue
		}
		for _, q := range [2]statics.Vec3{qa, qb} {
			for _, side := range [2]float64{1, -1} {
				m := side * q.Dot(across)
				parts := statics.Vec3{X: (m + q.Z) / math.Sqrt2, Y: (m - q.Z) / math.Sqrt2, Z: q.Dot(axis)}
				use := parts.X*parts.X + 3*(parts.Y*parts.Y+parts.Z*parts.Z)
				if use > most {
					most, worst = use, parts
				}
			}
		}
	}
	return worst
}

type pjpGivens struct {
	N     float64 `sym:"n_t" unit:"N/mm" min:"-1e6" max:"1e6" default:"0" is:"force per length of one weld square to its throat, which is that across the joint"`
	V     float64 `sym:"v_t" unit:"N/mm" min:"-1e6" max:"1e6" default:"0" is:"force per length in the throat, square to the weld's axis"`
	L     float64 `sym:"v_l" unit:"N/mm" min:"-1e6" max:"1e6" default:"0" is:"force per length along the weld's axis"`
	A     float64 `sym:"a" unit:"mm" min:"0.5" max:"200" is:"throat: depth of penetration that is consistently achieved"`
	Sides float64 `sym:"sides" choices:"both|one, held|one, free" is:"sides that are welded; one held against turning, or free to turn"`
	Rule  float64 `sym:"rule" choices:"simplified|directional" default:"0" is:"method: 4.5.3.3, or 4.5.3.2"`
	Fu    float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part joined"`
	Beta  float64 `sym:"beta_w" unit:"" min:"0.8" max:"1" is:"correlation factor, Table 4.1: 0.80 S235, 0.85 S275, 0.90 S355, 1.00 S420 and S460"`
}

// pjpStrength is a partial-penetration butt weld, which 4.7.2 treats as a fillet with deep penetration; one from one side alone that may turn has its
// root in tension, which 4.12 wants avoided.
var pjpStrength = strength.Define(strength.Identity{
	ID: "pjp-strength", Title: "strength of the partial-penetration butt weld",
	Clause: joint("4.7.2; 4.5.3.2, Eq. 4.1; 4.5.3.3, Eq. 4.2 to 4.4; 4.12", "4.7.2 and 4.12 from memory"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g pjpGivens) {
	c.Need(g.Sides < 2, "sides < 2", "welded from both sides, or held so that its root does not open")
	if g.Rule > 0 {
		c.Compare(throat(c, g.N, g.V, g.L, g.A, g.Fu, g.Beta), 1)
		return
	}
	F := c.Let("F_w_Ed", "sqrt(pow(n_t, 2) + pow(v_t, 2) + pow(v_l, 2))", "N/mm", math.Sqrt(g.N*g.N+g.V*g.V+g.L*g.L))
	c.Compare(c.Let("U", "F_w_Ed/F_w_Rd", "", F/filletLine(c, g.A, g.Fu, g.Beta)), 1)
})

type pjpTeeGivens struct {
	T   float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the part that forms the stem of the tee"`
	A1  float64 `sym:"a_nom1" unit:"mm" min:"0" max:"500" is:"throat of the weld on one side, penetration in it"`
	A2  float64 `sym:"a_nom2" unit:"mm" min:"0" max:"500" is:"throat of the weld on the other side"`
	Gap float64 `sym:"c_nom" unit:"mm" min:"0" max:"500" is:"gap between them that is not welded"`
}

// pjpTee is the tee of two partial-penetration welds under fillets that counts as one of full penetration: 4.7.3(1).
var pjpTee = strength.Define(strength.Identity{
	ID: "pjp-tee", Title: "tee of partial-penetration welds that counts as full penetration",
	Clause: joint("4.7.3(1)", "from memory"),
	Demand: "t", Capacity: "a_nom", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g pjpTeeGivens) {
	most := c.Let("c_max", "min(t/5, 3*mm)", "mm", min(g.T/5, 3))
	c.Need(g.Gap <= most, "c_nom <= c_max", "a gap no wider than a fifth of the stem and 3 mm")
	c.Compare(g.T, c.Let("a_nom", "a_nom1 + a_nom2", "mm", g.A1+g.A2))
})
