package aisc360

// Weld groups alone: elastic in space, by the instantaneous centre in a plane. Within a bracket the elastic method gives the force at the worst
// point to the rules of weld.go.

import (
	"math"
	"strconv"

	"lugwright/strength"
	"lugwright/strength/statics"
)

// weldGroupLimits are welds of stated length and layout, and the rules about their dimensions.
var weldGroupLimits = []strength.Evaluator{
	filletLines, filletPair, baseLines, matching, weldGroupElastic, weldGroupIC,
	pjpShear, pjpTension, pjpCompression, pjpBoth, pjpLine, pjpThroat, cjpLine, cjpStoodOn, plug, plugFace, lap, barEnd, filletReturn,
}

type elasticGivens struct {
	X1     []float64 `sym:"x1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	Y1     []float64 `sym:"y1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	Z1     []float64 `sym:"z1" unit:"mm" min:"-1e5" max:"1e5" default:"0" is:"start of each weld; one value for all when alike"`
	X2     []float64 `sym:"x2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	Y2     []float64 `sym:"y2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	Z2     []float64 `sym:"z2" unit:"mm" min:"-1e5" max:"1e5" default:"0" is:"end of each weld; one value for all when alike"`
	Px     float64   `sym:"P_x" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along x"`
	Py     float64   `sym:"P_y" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along y"`
	Pz     float64   `sym:"P_z" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along z"`
	Mx     float64   `sym:"M_x" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment about x beside the force's own"`
	My     float64   `sym:"M_y" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment about y"`
	Mz     float64   `sym:"M_z" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment about z"`
	X      float64   `sym:"x_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	Y      float64   `sym:"y_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	Z      float64   `sym:"z_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	Origin float64   `sym:"origin" choices:"coordinates|centroid" default:"0" is:"whence the point of the force is measured: as the welds, or from their centroid"`
	W      float64   `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	FEXX   float64   `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
}

// weldGroupElastic is a group of fillets of one leg as lines, force and moments spread as in a rigid body: AISC Manual 16th ed. Part 8, elastic
// method, for groups in a plane; in space by the same mechanics. k_ds = 1: an elastic line has no strain compatibility.
var weldGroupElastic = strength.Define(strength.Identity{
	ID: "weld-group-elastic", Title: "weld group by the elastic method",
	Clause: clause("J2.4(a), Eq. J2-4", "force by the elastic method of AISC Manual 16th ed. Part 8; in space elementary statics"),
	Demand: "q_r", Capacity: "q_c", Unit: "N/mm",
}, func(c *strength.Calc, g elasticGivens) {
	group, ok := weldGroup(c, g)
	if !ok {
		return
	}
	at := statics.Vec3{X: g.X, Y: g.Y, Z: g.Z}
	if g.Origin > 0 {
		at = at.Add(group.Centroid)
	}
	load := statics.Wrench{F: statics.Vec3{X: g.Px, Y: g.Py, Z: g.Pz}, M: statics.Vec3{X: g.Mx, Y: g.My, Z: g.Mz}, At: at}.MovedTo(group.Centroid)
	peak, err := group.Peak(load.F, load.M)
	if !solved(c, err) {
		return
	}
	aw := c.Let("a_w", "0.707*w", "mm", 0.707*g.W)
	groupProperties(c, group)
	least := leastAtEnds(group, load)
	q := c.Solved("q_r", "greatest force per length, at "+ordinal(c, peak.Segment), "N/mm", peak.Q.Norm())
	c.Solved("q_min", "least force per length at an end of a weld", "N/mm", least)
	c.Let("f_r", "q_r/a_w", "MPa", q/aw)
	c.Let("f_min", "q_min/a_w", "MPa", least/aw)
	qn := c.Let("q_n", "0.60*F_EXX*a_w", "N/mm", 0.60*g.FEXX*aw)
	qc := c.Available("q_c", "q_n", "N/mm", qn, 0.75, 2.00)
	c.Let("w_min", "w*q_r/q_c", "mm", g.W*q/qc)
	if q > 0 {
		c.Let("k_P", "q_c/q_r", "", qc/q)
	}
	c.Compare(q, qc)
})

// groupProperties lists length, centroid and moments of inertia, of lines and of throats.
func groupProperties(c *strength.Calc, group *statics.WeldGroup) {
	if !c.Trace {
		return
	}
	Jx, Jy, Jz := group.Inertia()
	L := c.Solved("L_w", "length of the welds, summed", "mm", group.LengthMM)
	c.Solved("x_bar", "centroid of the welds", "mm", group.Centroid.X)
	c.Solved("y_bar", "centroid of the welds", "mm", group.Centroid.Y)
	c.Solved("z_bar", "centroid of the welds", "mm", group.Centroid.Z)
	Jx = c.Solved("I_x", "moment of inertia of the lines about x, summed", "mm^3", Jx)
	Jy = c.Solved("I_y", "moment of inertia of the lines about y, summed", "mm^3", Jy)
	Jz = c.Solved("I_p", "moment of inertia of the lines about z, summed", "mm^3", Jz)
	aw := lastValue(c, "a_w")
	c.Let("A_t", "a_w*L_w", "mm^2", aw*L)
	c.Let("I_xt", "a_w*I_x", "mm^4", aw*Jx)
	c.Let("I_yt", "a_w*I_y", "mm^4", aw*Jy)
	c.Let("I_pt", "a_w*I_p", "mm^4", aw*Jz)
}

func lastValue(c *strength.Calc, symbol string) float64 {
	for i := len(c.Lines) - 1; i >= 0; i-- {
		if c.Lines[i].Symbol == symbol {
			return c.Lines[i].Value
		}
	}
	return math.NaN()
}

func ordinal(c *strength.Calc, segment int) string {
	if !c.Trace {
		return ""
	}
	return "weld " + strconv.Itoa(segment+1)
}

func leastAtEnds(group *statics.WeldGroup, load statics.Wrench) float64 {
	least := math.Inf(1)
	for i := range group.Segments() {
		a, b, err := group.SegmentEnds(i, load.F, load.M)
		if err == nil {
			least = min(least, a.Norm(), b.Norm())
		}
	}
	return least
}

// weldGroup makes the group; with lists that do not fit the verdict is outside the rule.
func weldGroup(c *strength.Calc, g elasticGivens) (*statics.WeldGroup, bool) {
	n := len(g.X1)
	if !sameCount(c, n, len(g.Y1), len(g.X2), len(g.Y2)) || !heights(c, n, g.Z1, g.Z2) {
		return nil, false
	}
	segs := make([]statics.WeldSegment, n)
	for i := range segs {
		segs[i] = statics.WeldSegment{
			A: statics.Vec3{X: g.X1[i], Y: g.Y1[i], Z: height(g.Z1, i)}, B: statics.Vec3{X: g.X2[i], Y: g.Y2[i], Z: height(g.Z2, i)}, Weight: 1,
		}
	}
	group, err := statics.NewWeldGroup(segs)
	return &group, solved(c, err)
}

func sameCount(c *strength.Calc, x1, y1, x2, y2 int) bool {
	c.Solved("n_w", "starts given", "", float64(x1))
	odd := 0
	for _, n := range [3]int{y1, x2, y2} {
		odd += max(n-x1, x1-n)
	}
	c.Solved("n_odd", "coordinates too many or too few", "", float64(odd))
	return c.Need(odd == 0, "n_odd == 0", "each weld has x1, y1, x2 and y2") || refused(c)
}

func heights(c *strength.Calc, n int, z1, z2 []float64) bool {
	odd := 0
	for _, z := range [2][]float64{z1, z2} {
		if len(z) != 1 {
			odd += max(len(z)-n, n-len(z))
		}
	}
	c.Solved("n_oddz", "heights too many or too few", "", float64(odd))
	return c.Need(odd == 0, "n_oddz == 0", "one height for all welds, or one for each") || refused(c)
}

func height(z []float64, i int) float64 {
	if len(z) == 1 {
		return z[0]
	}
	return z[i]
}

// solved turns a refusal of statics into a verdict outside the rule, in its own words.
func solved(c *strength.Calc, err error) bool {
	if err == nil {
		return true
	}
	c.Verdict, c.Why = strength.Outside, err.Error()
	return refused(c)
}

// refused ends a limit state that has nothing to compare.
func refused(c *strength.Calc) bool {
	c.Compare(math.Inf(1), 0)
	return false
}

type icGivens struct {
	X1     []float64 `sym:"x1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	Y1     []float64 `sym:"y1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	X2     []float64 `sym:"x2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	Y2     []float64 `sym:"y2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	P      float64   `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force on all groups"`
	Theta  float64   `sym:"theta" unit:"rad" min:"-3.141592653589793" max:"3.141592653589793" default:"0" is:"angle of the force from straight down (-y), positive towards +x"`
	X      float64   `sym:"x_P" unit:"mm" min:"-1e6" max:"1e6" is:"point of the force"`
	Y      float64   `sym:"y_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	Origin float64   `sym:"origin" choices:"coordinates|centroid" default:"0" is:"whence the point of the force is measured: as the welds, or from their centroid, where x_P is the Manual's e_x = a l"`
	W      float64   `sym:"w" unit:"mm" min:"0.5" max:"100" is:"fillet leg"`
	FEXX   float64   `sym:"F_EXX" unit:"MPa" min:"300" max:"1000" is:"filler metal strength"`
	L      float64   `sym:"l" unit:"mm" min:"0" max:"1e5" default:"0" is:"length to which the Manual's C belongs; 0 leaves C out"`
	N      float64   `sym:"n" unit:"" min:"1" max:"100" default:"1" is:"groups alike that share the force"`
}

// weldGroupIC is a group of fillets of one leg in a plane by the instantaneous centre of rotation: AISC Manual 16th ed. Part 8. C is the Manual's
// coefficient for D in sixteenths and l in inches, with C_1 in proportion to F_EXX (the Manual's C_1 is less for E80 and above).
var weldGroupIC = strength.Define(strength.Identity{
	ID: "weld-group-ic", Title: "weld group by the instantaneous centre of rotation",
	Clause: strength.Clause{Document: "AISC Manual", Edition: "16th ed.", Section: "Part 8, instantaneous center of rotation method"},
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g icGivens) {
	Le, ok := icLength(c, g)
	if !ok {
		return
	}
	aw := c.Let("a_w", "0.707*w", "mm", 0.707*g.W)
	Rn := c.Let("R_n", "0.60*F_EXX*a_w*L_e*n", "N", 0.60*g.FEXX*aw*Le*g.N)
	D := c.Let("D", "16*w/in", "", 16*g.W/inch)
	if g.L > 0 {
		c1 := c.Let("C_1", "F_EXX/(70*ksi)", "", g.FEXX/(70*ksi))
		c.Let("C", "R_n/(n*C_1*D*l)", "N/mm", Rn/(g.N*c1*D*g.L))
	}
	Pc := c.Available("P_c", "R_n", "N", Rn, 0.75, 2.00)
	c.Let("D_min", "D*P_r/P_c", "", D*g.P/Pc)
	c.Compare(g.P, Pc)
})

// icLength is the length of weld along its own axis that is as strong as the group under its load.
func icLength(c *strength.Calc, g icGivens) (float64, bool) {
	if !sameCount(c, len(g.X1), len(g.Y1), len(g.X2), len(g.Y2)) {
		return 0, false
	}
	segs := make([]statics.ICWeldSegment, len(g.X1))
	for i := range segs {
		segs[i] = statics.ICWeldSegment{A: statics.Vec2{X: g.X1[i], Y: g.Y1[i]}, B: statics.Vec2{X: g.X2[i], Y: g.Y2[i]}}
	}
	group, err := statics.NewICWeld(segs, 0)
	if !solved(c, err) {
		return 0, false
	}
	c.Solved("L_w", "length of the welds, summed", "mm", group.LengthMM)
	c.Solved("x_bar", "centroid of the welds", "mm", group.Centroid.X)
	c.Solved("y_bar", "centroid of the welds", "mm", group.Centroid.Y)
	x, y := g.X, g.Y
	if g.Origin == 0 {
		x, y = x-group.Centroid.X, y-group.Centroid.Y
	}
	s, k := math.Sincos(g.Theta)
	r, err := group.Solve(statics.Vec2{X: s, Y: -k}, -x*k-y*s)
	if !solved(c, err) {
		return 0, false
	}
	if math.Hypot(r.Centre.X, r.Centre.Y) < 1e9 {
		c.Solved("x_IC", "instantaneous centre, from the balance of force and moment", "mm", r.Centre.X)
		c.Solved("y_IC", "instantaneous centre, from the balance of force and moment", "mm", r.Centre.Y)
	}
	c.Solved("k_u", "number of the weld whose end reaches its ultimate deformation first", "", float64(r.Segment+1))
	return c.Solved("L_e", "sum of the elements' resistance in the force's direction over 0.60 F_EXX a_w, at the instantaneous centre", "mm", r.Factor), true
}
