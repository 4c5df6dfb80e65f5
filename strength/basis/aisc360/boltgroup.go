package aisc360

// Bolt groups alone: in a plane by the elastic method and by the instantaneous centre, out of it in tension. Within a bracket the elastic method
// gives the force of the worst bolt to the rules of bolt.go.

import (
	"math"
	"slices"

	"lugwright/strength"
	"lugwright/strength/practice"
	"lugwright/strength/statics"
)

var boltGroupLimits = []strength.Evaluator{boltGroupElastic, boltGroupIC, boltGroupTension, boltSlip}

func manual7(section, words string) strength.Clause {
	return strength.Clause{Document: "AISC Manual", Edition: "16th ed.", Section: "Part 7, " + section, Words: words}
}

type boltElasticGivens struct {
	X       []float64 `sym:"x" unit:"mm" min:"-1e5" max:"1e5" is:"position of each bolt; one value for all when alike"`
	Y       []float64 `sym:"y" unit:"mm" min:"-1e5" max:"1e5" is:"position of each bolt; one value for all when alike"`
	Px      float64   `sym:"P_x" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along x"`
	Py      float64   `sym:"P_y" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along y"`
	M       float64   `sym:"M_z" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment beside the force's own, from x towards y"`
	XP      float64   `sym:"x_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	YP      float64   `sym:"y_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	Origin  float64   `sym:"origin" choices:"coordinates|centroid" default:"0" is:"whence the point of the force is measured: as the bolts, or from their centroid"`
	D       float64   `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Fu      float64   `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
	Threads float64   `sym:"threads" unit:"" min:"0" max:"1" default:"1" is:"1 when threads are in the shear plane, else 0"`
	Planes  float64   `sym:"n_s" unit:"" min:"1" max:"2" default:"1" step:"1" is:"shear planes of each bolt"`
	Rp      float64   `sym:"r_p" unit:"N" min:"0" max:"1e8" default:"0" is:"nominal strength of the ply at the weakest bolt, bearing and tear-out (bolt-bearing); 0 leaves it out"`
	Whole   float64   `sym:"stress" choices:"parts of F_u|whole ksi of Table J3.2" default:"0" is:"nominal stresses: 0.450 or 0.563 and 0.75 F_u, or these as the table prints them for bolts of a group"`
}

// boltGroupElastic is a group of bolts of one size under a force in their plane: AISC Manual 16th ed. Part 7, elastic method. Its answer is on the
// safe side of the instantaneous centre's.
var boltGroupElastic = strength.Define(strength.Identity{
	ID: "bolt-group-elastic", Title: "eccentric bolt group in its plane by the elastic method",
	Clause: manual7("elastic method", "bolts by AISC 360-22 J3.7, Eq. J3-1"),
	Demand: "V_r", Capacity: "V_c", Unit: "N",
}, func(c *strength.Calc, g boltElasticGivens) {
	pos, ok := practice.BoltsAt(c, g.X, g.Y)
	if !ok {
		return
	}
	centre := statics.Centroid(pos)
	at := statics.Vec2{X: g.XP, Y: g.YP}
	if g.Origin > 0 {
		at = statics.Vec2{X: at.X + centre.X, Y: at.Y + centre.Y}
	}
	moment := (at.X-centre.X)*g.Py - (at.Y-centre.Y)*g.Px + g.M
	shears := make([]statics.Vec2, len(pos))
	if !boltsSolved(c, statics.Shears(shears, pos, g.Px, g.Py, moment)) {
		return
	}
	Ip := groupInertia(c, pos, centre)
	M := c.Solved("M_r", "moment about the centroid", "N*mm", moment)
	V := worstBolt(c, &g, pos, shears, centre, M, Ip)
	Vc := c.Available("V_c", "r_n", "N", oneBolt(c, g.D, g.Fu, g.Threads, g.Whole, g.Planes, g.Rp), 0.75, 2.00)
	if P := c.Let("P_r", "sqrt(pow(P_x, 2) + pow(P_y, 2))", "N", math.Sqrt(g.Px*g.Px+g.Py*g.Py)); P > 0 {
		c.Let("C_e", "P_r/V_r", "", P/V)
		c.Let("r_1", "V_r/P_r", "", V/P)
		c.Let("P_c", "P_r*V_c/V_r", "N", P*Vc/V)
	}
	c.Compare(V, Vc)
})

// worstBolt writes the formula at the bolt with the greatest force.
func worstBolt(c *strength.Calc, g *boltElasticGivens, pos, shears []statics.Vec2, centre statics.Vec2, M, Ip float64) float64 {
	worst := 0
	for i, s := range shears {
		if s.Norm() > shears[worst].Norm() {
			worst = i
		}
	}
	n := float64(len(pos))
	x := c.Solved("x_w", "most loaded bolt, from the centroid", "mm", pos[worst].X-centre.X)
	y := c.Solved("y_w", "most loaded bolt, from the centroid", "mm", pos[worst].Y-centre.Y)
	rx, ry := g.Px/n, g.Py/n
	if M == 0 {
		c.Let("r_x", "P_x/n_b", "N", rx)
		c.Let("r_y", "P_y/n_b", "N", ry)
	} else {
		rx = c.Let("r_x", "P_x/n_b - M_r*y_w/I_p", "N", rx-M*y/Ip)
		ry = c.Let("r_y", "P_y/n_b + M_r*x_w/I_p", "N", ry+M*x/Ip)
	}
	return c.Let("V_r", "sqrt(pow(r_x, 2) + pow(r_y, 2))", "N", math.Sqrt(rx*rx+ry*ry))
}

// groupInertia lists the centroid and the moments of inertia of bolts of unit area, and gives the polar one.
func groupInertia(c *strength.Calc, pos []statics.Vec2, centre statics.Vec2) float64 {
	var xx, yy float64
	for _, p := range pos {
		xx += (p.X - centre.X) * (p.X - centre.X)
		yy += (p.Y - centre.Y) * (p.Y - centre.Y)
	}
	c.Solved("x_bar", "centroid of the bolts", "mm", centre.X)
	c.Solved("y_bar", "centroid of the bolts", "mm", centre.Y)
	c.Solved("I_x", "sum of y^2 from the centroid", "mm^2", yy)
	c.Solved("I_y", "sum of x^2 from the centroid", "mm^2", xx)
	return c.Let("I_p", "I_x + I_y", "mm^2", xx+yy)
}

// oneBolt is the nominal strength of one bolt, that of the ply at it where that is less: both have the same factors.
func oneBolt(c *strength.Calc, d, fu, threads, whole, planes, ply float64) float64 {
	Ab := c.Let("A_b", "pi*pow(d, 2)/4", "mm^2", math.Pi*d*d/4)
	rn := c.Let("r_nv", "n_s*F_nv*A_b", "N", planes*shearStrength(c, fu, threads, whole)*Ab)
	least := rn
	if ply > 0 {
		least = min(rn, ply)
	}
	return c.Let("r_n", "when(r_p > 0*N, min(r_nv, r_p), r_nv)", "N", least)
}

// boltsSolved turns a refusal of statics into a verdict outside the rule that names the givens.
func boltsSolved(c *strength.Calc, err error) bool {
	if err == nil {
		return true
	}
	c.Verdict, c.Why = strength.Outside, "x, y: "+err.Error()
	return refused(c)
}

type boltICGivens struct {
	X       []float64 `sym:"x" unit:"mm" min:"-1e5" max:"1e5" is:"position of each bolt; one value for all when alike"`
	Y       []float64 `sym:"y" unit:"mm" min:"-1e5" max:"1e5" is:"position of each bolt; one value for all when alike"`
	P       float64   `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force on the group"`
	Theta   float64   `sym:"theta" unit:"rad" min:"-3.141592653589793" max:"3.141592653589793" default:"0" is:"angle of the force from straight down (-y), positive towards +x"`
	XP      float64   `sym:"x_P" unit:"mm" min:"-1e6" max:"1e6" is:"point of the force"`
	YP      float64   `sym:"y_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"point of the force"`
	Origin  float64   `sym:"origin" choices:"coordinates|centroid" default:"0" is:"whence the point of the force is measured: as the bolts, or from their centroid, where x_P is the Manual's e_x; with none C is 0.98 of the number of bolts, to which the Manual's tables tend"`
	D       float64   `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Fu      float64   `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
	Threads float64   `sym:"threads" unit:"" min:"0" max:"1" default:"1" is:"1 when threads are in the shear plane, else 0"`
	Planes  float64   `sym:"n_s" unit:"" min:"1" max:"2" default:"1" step:"1" is:"shear planes of each bolt"`
	Rp      float64   `sym:"r_p" unit:"N" min:"0" max:"1e8" default:"0" is:"nominal strength of the ply at the weakest bolt, bearing and tear-out (bolt-bearing); 0 leaves it out"`
	Whole   float64   `sym:"stress" choices:"parts of F_u|whole ksi of Table J3.2" default:"0" is:"nominal stresses: 0.450 or 0.563 and 0.75 F_u, or these as the table prints them for bolts of a group"`
}

// boltGroupIC is a group of bolts of one size in a plane by the instantaneous centre of rotation: AISC Manual 16th ed. Part 7. C is the
// coefficient of Tables 7-6 to 7-13, here for any pattern; even without eccentricity it is 0.98 of the number of bolts, as the curve has it
// at 0.34 in. The tables are made so: Table 7-6 has 5.45 for six bolts 2 in off (from memory), which would be 5.55 if the furthest reached all its strength. The curve is that of 3/4 in A325 bolts in bearing; the Manual uses it for all.
var boltGroupIC = strength.Define(strength.Identity{
	ID: "bolt-group-ic", Title: "eccentric bolt group in its plane by the instantaneous centre of rotation",
	Clause: manual7("instantaneous center of rotation method", "bolts by AISC 360-22 J3.7, Eq. J3-1"),
	Demand: "P_r", Capacity: "P_c", Unit: "N",
}, func(c *strength.Calc, g boltICGivens) {
	C, ok := boltCoefficient(c, &g)
	if !ok {
		return
	}
	rn := oneBolt(c, g.D, g.Fu, g.Threads, g.Whole, g.Planes, g.Rp)
	rc := c.Available("r_c", "r_n", "N", rn, 0.75, 2.00)
	c.Let("C_min", "P_r/r_c", "", g.P/rc)
	c.Let("R_n", "C*r_n", "N", C*rn)
	c.Compare(g.P, c.Let("P_c", "C*r_c", "N", C*rc))
})

// boltCoefficient is the number of bolts whose full strength the group has under its force.
func boltCoefficient(c *strength.Calc, g *boltICGivens) (float64, bool) {
	pos, ok := practice.BoltsAt(c, g.X, g.Y)
	if !ok {
		return 0, false
	}
	group, err := statics.NewICBolts(pos)
	if !boltsSolved(c, err) {
		return 0, false
	}
	c.Solved("x_bar", "centroid of the bolts", "mm", group.Centroid.X)
	c.Solved("y_bar", "centroid of the bolts", "mm", group.Centroid.Y)
	x, y := g.XP, g.YP
	if g.Origin == 0 {
		x, y = x-group.Centroid.X, y-group.Centroid.Y
	}
	s, k := math.Sincos(g.Theta)
	e := c.Solved("e", "distance of the force's line from the centroid", "mm", x*k+y*s)
	r, err := group.Solve(statics.Vec2{X: s, Y: -k}, -e)
	if !boltsSolved(c, err) {
		return 0, false
	}
	if math.Hypot(r.Centre.X, r.Centre.Y) < 1e9 {
		c.Solved("x_IC", "instantaneous centre, from the balance of force and moment", "mm", r.Centre.X)
		c.Solved("y_IC", "instantaneous centre, from the balance of force and moment", "mm", r.Centre.Y)
	}
	c.Solved("k_u", "number of the bolt furthest from it, which reaches 0.34 in", "", float64(r.Bolt+1))
	return c.Solved("C", "sum of the bolts' resistance in the force's direction over that of one bolt, at the instantaneous centre", "", r.Factor), true
}

type boltGroupTensionGivens struct {
	X       []float64 `sym:"x" unit:"mm" min:"-1e5" max:"1e5" default:"0" is:"position of each bolt; one value for all when alike"`
	Y       []float64 `sym:"y" unit:"mm" min:"-1e5" max:"1e5" is:"position of each bolt; one value for all when alike"`
	P       float64   `sym:"P_r" unit:"N" min:"0" max:"1e9" default:"0" is:"force along -y, shared alike in shear"`
	E       float64   `sym:"e" unit:"mm" min:"-1e5" max:"1e5" default:"0" is:"distance of that force from the plane of the bolts, on the side on which it opens the greater y"`
	N       float64   `sym:"N_r" unit:"N" min:"0" max:"1e9" default:"0" is:"tension through the centroid of the bolts"`
	Mx      float64   `sym:"M_x" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"further moment, positive where it opens the greater y"`
	My      float64   `sym:"M_y" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"moment that opens the greater x"`
	Axis    float64   `sym:"axis" choices:"halves|centroid|compression edge" is:"neutral axis: case II with one tension in each half, case II with tension by distance, or case I"`
	Y1      float64   `sym:"y_1" unit:"mm" min:"-1e5" max:"1e5" default:"0" is:"lower edge of the contact, for case I"`
	Y2      float64   `sym:"y_2" unit:"mm" min:"-1e5" max:"1e5" default:"0" is:"upper edge of the contact, for case I"`
	B       float64   `sym:"b_eff" unit:"mm" min:"0" max:"1e5" default:"0" is:"width of the contact, for case I; the Manual takes 8 flange thicknesses at most"`
	D       float64   `sym:"d" unit:"mm" min:"1" max:"150" is:"nominal diameter"`
	Fu      float64   `sym:"F_u" unit:"MPa" min:"200" max:"2000" is:"tensile strength of the bolt"`
	Threads float64   `sym:"threads" unit:"" min:"0" max:"1" default:"1" is:"1 when threads are in the shear plane, else 0"`
	Whole   float64   `sym:"stress" choices:"parts of F_u|whole ksi of Table J3.2" default:"0" is:"nominal stresses: 0.450 or 0.563 and 0.75 F_u, or these as the table prints them for bolts of a group"`
}

// boltGroupTension is the tension of the worst bolt of a group loaded out of its plane: AISC Manual 16th ed. Part 7. Case II has the neutral axis
// at the centroid of the bolts and needs no contact; case I finds it from contact at the compression edge, bolts and plies of one modulus.
var boltGroupTension = strength.Define(strength.Identity{
	ID: "bolt-group-tension", Title: "bolt group loaded out of its plane",
	Clause: manual7("eccentrically loaded bolt groups out of plane, cases I and II (Eq. 7-14)", "tension by distance elementary statics; bolts by AISC 360-22 J3.8; prying not in it"),
	Demand: "T_r", Capacity: "T_c", Unit: "N",
}, func(c *strength.Calc, g boltGroupTensionGivens) {
	pos, ok := practice.BoltsAt(c, g.X, g.Y)
	if !ok {
		return
	}
	M := c.Let("M_r", "P_r*e + M_x", "N*mm", g.P*g.E+g.Mx)
	T, ok := groupTension(c, &g, pos, M)
	if !ok {
		return
	}
	V := c.Let("V_r", "P_r/n_b", "N", g.P/float64(len(pos)))
	c.Compare(T, tensionWithShear(c, V, g.D, g.Fu, g.Threads, g.Whole))
})

func groupTension(c *strength.Calc, g *boltGroupTensionGivens, pos []statics.Vec2, M float64) (float64, bool) {
	if g.Axis == 1 {
		return tensionByDistance(c, g, pos, M)
	}
	c.Need(g.My == 0, "M_y == 0*N*mm", "a moment about one axis only; by distance from the centroid takes both")
	if g.Axis == 0 {
		return tensionInHalves(c, g, pos, M)
	}
	return tensionFromEdge(c, g, pos, M)
}

func tensionInHalves(c *strength.Calc, g *boltGroupTensionGivens, pos []statics.Vec2, M float64) (float64, bool) {
	n := float64(len(pos))
	if M == 0 {
		return c.Let("T_r", "N_r/n_b", "N", g.N/n), true
	}
	// The half that opens counts.
	y := make([]float64, len(pos))
	for i, p := range pos {
		y[i] = math.Copysign(1, M) * p.Y
	}
	_, above, dm, err := statics.TensionCaseII(y, M)
	if !boltsSolved(c, err) {
		return 0, false
	}
	above = c.Solved("n_1", "bolts in the half that opens, n' of the Manual", "", above)
	dm = c.Solved("d_m", "distance between the middles of the halves", "mm", dm)
	return c.Let("T_r", "N_r/n_b + abs(M_r)/(n_1*d_m)", "N", g.N/n+math.Abs(M)/(above*dm)), true
}

func tensionByDistance(c *strength.Calc, g *boltGroupTensionGivens, pos []statics.Vec2, M float64) (float64, bool) {
	mid := statics.Centroid(pos)
	tensions := make([]float64, len(pos))
	if !boltsSolved(c, statics.TensionsAtCentroid(tensions, pos, g.N, M+g.N*mid.Y, -g.My-g.N*mid.X)) {
		return 0, false
	}
	return c.Solved("T_r", "N/n and the moments over the distances from the centroid; bolts on the compression side carry none", "N", slices.Max(tensions)), true
}

func tensionFromEdge(c *strength.Calc, g *boltGroupTensionGivens, pos []statics.Vec2, M float64) (float64, bool) {
	y, mean := make([]float64, len(pos)), statics.Centroid(pos).Y
	for i, p := range pos {
		y[i] = p.Y
	}
	tensions := make([]float64, len(pos))
	st, err := statics.TensionsOneAxis(tensions, y, math.Pi*g.D*g.D/4, g.Y1, g.Y2, g.B, g.N, M+g.N*mean)
	if err != nil {
		c.Verdict, c.Why = strength.Outside, "y, y_1, y_2 and b_eff: "+err.Error()
		return 0, refused(c)
	}
	c.Solved("c_NA", "neutral axis from the compression edge; 0 where the bolts alone carry the load", "mm", st.DepthMM)
	c.Solved("p_c", "contact pressure at the compression edge", "MPa", st.PressureMPa)
	return c.Solved("T_r", "A_b times the distance from the neutral axis, in balance with the contact", "N", slices.Max(tensions)), true
}
