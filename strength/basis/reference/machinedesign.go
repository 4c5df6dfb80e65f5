package reference

// Rivets, bolts and welds by allowable stress, as machine design textbooks size them.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/statics"
)

// machineDesign is the card of the textbook methods.
var machineDesign = bookCard("Machine design textbook", "machine design textbooks", "various",
	rivetSize, bandWidth, weldLength, weldGroupThroat, fastenerGroup, lapJoint, boltTilt, sideWelds, loadShare,
)

func bookClause(section, words string) strength.Clause {
	return strength.Clause{Document: "machine design textbooks", Edition: "various", Section: section, Words: words}
}

type rivetSizeGivens struct {
	P      float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force on the joint"`
	N      float64 `sym:"n" unit:"" min:"1" max:"1000" default:"1" step:"1" is:"rivets or bolts that share it"`
	Planes float64 `sym:"n_s" unit:"" min:"1" max:"2" default:"1" step:"1" is:"shear planes of each"`
	Tau    float64 `sym:"tau_all" unit:"MPa" min:"0.1" max:"2000" is:"allowable shear stress"`
	D      float64 `sym:"d" unit:"mm" min:"0.1" max:"500" default:"20" is:"diameter"`
}

// rivetSize is the diameter at which rivets that share a force alike bear it in shear.
var rivetSize = strength.Define(strength.Identity{
	ID: "rivet-shear", Title: "rivets or bolts in shear at an allowable stress",
	Clause: bookClause("riveted joints, shear of the rivets", ""),
	Demand: "d_req", Capacity: "d", Unit: "mm",
}, func(c *strength.Calc, g rivetSizeGivens) {
	F := c.Let("P_1", "P/(n*n_s)", "N", g.P/(g.N*g.Planes))
	c.Let("tau", "4*P_1/(pi*pow(d, 2))", "MPa", 4*F/(math.Pi*g.D*g.D))
	c.Compare(c.Let("d_req", "sqrt(4*P_1/(pi*tau_all))", "mm", roundFor(F, g.Tau)), g.D)
})

type bandWidthGivens struct {
	P     float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"tension"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the band"`
	D     float64 `sym:"d" unit:"mm" min:"0" max:"500" is:"hole diameter"`
	Holes float64 `sym:"n_h" unit:"" min:"0" max:"100" step:"1" is:"holes in one row across the force"`
	Sigma float64 `sym:"sigma_all" unit:"MPa" min:"0.1" max:"2000" is:"allowable tensile stress"`
	W     float64 `sym:"w" unit:"mm" min:"0.1" max:"1e5" default:"1000" is:"width of the band"`
}

// bandWidth is the width at which a row of holes leaves enough net section.
var bandWidth = strength.Define(strength.Identity{
	ID: "net-section-width", Title: "width of a band with a row of holes at an allowable stress",
	Clause: bookClause("riveted joints, tension of the plate", ""),
	Demand: "w_req", Capacity: "w", Unit: "mm",
}, func(c *strength.Calc, g bandWidthGivens) {
	c.Compare(c.Let("w_req", "P/(sigma_all*t) + n_h*d", "mm", g.P/(g.Sigma*g.T)+g.Holes*g.D), g.W)
})

type weldLengthGivens struct {
	P     float64 `sym:"P" unit:"N" min:"0" max:"1e9" is:"force on all welds"`
	H     float64 `sym:"h" unit:"mm" min:"0.1" max:"200" is:"fillet leg"`
	Tau   float64 `sym:"tau_all" unit:"MPa" min:"0.1" max:"2000" is:"allowable shear stress on the throat"`
	N     float64 `sym:"n" unit:"" min:"1" max:"100" default:"2" is:"welds alike"`
	Allow float64 `sym:"l_0" unit:"mm" min:"0" max:"1000" default:"0" is:"length added for starting and stopping"`
	L     float64 `sym:"l" unit:"mm" min:"0.1" max:"1e5" default:"1000" is:"length of each weld"`
}

// weldLength is the length of parallel or transverse fillets at an allowable stress on the throat, 0.707 of the leg.
var weldLength = strength.Define(strength.Identity{
	ID: "fillet-length", Title: "length of fillet welds at an allowable stress",
	Clause: bookClause("strength of fillet welds", "throat of 0.707 h"),
	Demand: "l_req", Capacity: "l", Unit: "mm",
}, func(c *strength.Calc, g weldLengthGivens) {
	net := c.Let("l_n", "P/(n*0.707*h*tau_all)", "mm", g.P/(g.N*0.707*g.H*g.Tau))
	c.Compare(c.Let("l_req", "l_n + l_0", "mm", net+g.Allow), g.L)
})

type weldGroupGivens struct {
	X1  []float64 `sym:"x1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	Y1  []float64 `sym:"y1" unit:"mm" min:"-1e5" max:"1e5" is:"start of each weld"`
	X2  []float64 `sym:"x2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	Y2  []float64 `sym:"y2" unit:"mm" min:"-1e5" max:"1e5" is:"end of each weld"`
	Px  float64   `sym:"P_x" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along x"`
	Py  float64   `sym:"P_y" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along y"`
	X   float64   `sym:"x_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"a point on the force's line"`
	Y   float64   `sym:"y_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"a point on the force's line"`
	Tau float64   `sym:"tau_all" unit:"MPa" min:"0.1" max:"2000" is:"allowable shear stress on the throat"`
	W   float64   `sym:"w" unit:"mm" min:"0.1" max:"200" default:"10" is:"fillet leg"`
}

// weldGroupThroat is a flat weld group in its own plane, as lines of unit throat with components added as vectors.
var weldGroupThroat = strength.Define(strength.Identity{
	ID: "weld-group-throat", Title: "throat of an eccentrically loaded weld group",
	Clause: bookClause("eccentric load in the plane of the welds", "components added as vectors"),
	Demand: "leg", Capacity: "w", Unit: "mm",
}, func(c *strength.Calc, g weldGroupGivens) {
	segs, ok := weldSegments(c, g.X1, g.Y1, g.X2, g.Y2)
	if !ok {
		return
	}
	lines := make([]statics.WeldSegment, len(segs))
	for i, s := range segs {
		lines[i] = statics.WeldSegment{A: statics.Vec3{X: s.A.X, Y: s.A.Y}, B: statics.Vec3{X: s.B.X, Y: s.B.Y}, Weight: 1}
	}
	group, err := statics.NewWeldGroup(lines)
	if !taken(c, err) {
		return
	}
	M := (g.X-group.Centroid.X)*g.Py - (g.Y-group.Centroid.Y)*g.Px
	peak, err := group.Peak(statics.Vec3{X: g.Px, Y: g.Py}, statics.Vec3{Z: M})
	if !taken(c, err) {
		return
	}
	_, _, J := group.Inertia()
	c.Solved("A_1", "length of the welds, summed: area for a throat of 1", "mm", group.LengthMM)
	c.Solved("J_1", "polar moment of the lines about their centroid", "mm^3", J)
	c.Solved("M", "moment about the centroid", "N*mm", M)
	q := c.Solved("q", "greatest force per length", "N/mm", peak.Q.Norm())
	throat := c.Let("throat", "q/tau_all", "mm", q/g.Tau)
	c.Compare(c.Let("leg", "throat/0.707", "mm", throat/0.707), g.W)
})

type fastenerGroupGivens struct {
	Xs  []float64 `sym:"x" unit:"mm" min:"-1e5" max:"1e5" is:"position of each fastener"`
	Ys  []float64 `sym:"y" unit:"mm" min:"-1e5" max:"1e5" is:"position of each fastener"`
	As  []float64 `sym:"A_i" unit:"" min:"0.001" max:"1000" default:"1" is:"area of each fastener as a multiple of the one judged; 1 for all alike"`
	Px  float64   `sym:"P_x" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along x"`
	Py  float64   `sym:"P_y" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"force along y"`
	X   float64   `sym:"x_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"a point on the force's line"`
	Y   float64   `sym:"y_P" unit:"mm" min:"-1e6" max:"1e6" default:"0" is:"a point on the force's line"`
	M   float64   `sym:"M_0" unit:"N*mm" min:"-1e12" max:"1e12" default:"0" is:"a further moment"`
	Tau float64   `sym:"tau_all" unit:"MPa" min:"0.1" max:"2000" is:"allowable shear stress"`
	K   float64   `sym:"k_d" unit:"" min:"0.5" max:"1" default:"0.8" is:"core diameter of a thread over its nominal one"`
	D   float64   `sym:"d" unit:"mm" min:"0.1" max:"500" default:"20" is:"diameter in the shear plane"`
}

// fastenerGroup is a group in its own plane by the elastic vector method; its worst member against an allowable shear stress.
var fastenerGroup = strength.Define(strength.Identity{
	ID: "bolt-group-elastic", Title: "eccentrically loaded group of bolts or rivets",
	Clause: bookClause("eccentric load in the plane of the fasteners", "elastic vector method"),
	Demand: "d_req", Capacity: "d", Unit: "mm",
}, func(c *strength.Calc, g fastenerGroupGivens) {
	worst, J, why := worstFastener(&g)
	if why != "" {
		c.Verdict, c.Why = strength.Outside, why
		c.Compare(math.Inf(1), 0)
		return
	}
	c.Solved("n", "fasteners, counted", "", float64(len(g.Xs)))
	c.Solved("J", "sum of area times the square of the distance to the centroid", "mm^2", J)
	F := c.Solved("F_max", "greatest force on a fastener over its area, direct and turning parts added as vectors", "N", worst)
	c.Let("tau", "4*F_max/(pi*pow(d, 2))", "MPa", 4*F/(math.Pi*g.D*g.D))
	d := c.Let("d_req", "sqrt(4*F_max/(pi*tau_all))", "mm", roundFor(F, g.Tau))
	c.Let("d_nom", "d_req/k_d", "mm", d/g.K)
	c.Compare(d, g.D)
})

// worstFastener gives the greatest force per unit of area and the polar moment about the centroid, or why there is none.
func worstFastener(g *fastenerGroupGivens) (worst, polar float64, why string) {
	n := len(g.Xs)
	area := func(i int) float64 { return g.As[min(i, len(g.As)-1)] }
	if len(g.Ys) != n || len(g.As) != n && len(g.As) != 1 {
		return 0, 0, "each fastener has x, y and A_i; the lists have different lengths"
	}
	var a, x, y float64
	for i := range n {
		a += area(i)
		x += area(i) * g.Xs[i]
		y += area(i) * g.Ys[i]
	}
	x, y = x/a, y/a
	for i := range n {
		polar += area(i) * (sq(g.Xs[i]-x) + sq(g.Ys[i]-y))
	}
	M := (g.X-x)*g.Py - (g.Y-y)*g.Px + g.M
	turn := 0.0
	switch {
	case polar > 1e-9*a:
		turn = M / polar
	case M != 0:
		return 0, 0, "fasteners in one point cannot take a moment"
	}
	for i := range n {
		worst = max(worst, math.Hypot(g.Px/a-turn*(g.Ys[i]-y), g.Py/a+turn*(g.Xs[i]-x)))
	}
	return worst, polar, ""
}

func sq(x float64) float64 { return x * x }

type lapJointGivens struct {
	F    float64 `sym:"F" unit:"N" min:"0" max:"1e9" is:"force on the joint"`
	N    float64 `sym:"n" unit:"" min:"1" max:"1000" default:"1" step:"1" is:"bolts that share it"`
	D    float64 `sym:"d" unit:"mm" min:"0.1" max:"500" is:"bolt diameter, at the area given below"`
	A    float64 `sym:"A_1" unit:"mm^2" min:"0" max:"2e5" default:"0" is:"area of one bolt in shear; 0 for the nominal one"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness of the members"`
	W    float64 `sym:"w" unit:"mm" min:"0" max:"1e5" default:"0" is:"width of the members; 0 leaves their tension out"`
	Row  float64 `sym:"n_row" unit:"" min:"0" max:"100" default:"0" step:"1" is:"holes across the width"`
	Dh   float64 `sym:"d_h" unit:"mm" min:"0" max:"500" default:"0" is:"hole diameter; 0 for the bolt's"`
	Syb  float64 `sym:"S_yb" unit:"MPa" min:"1" max:"3000" is:"yield strength of the bolts"`
	Sym  float64 `sym:"S_ym" unit:"MPa" min:"1" max:"3000" is:"yield strength of the members"`
	N1   float64 `sym:"n_1" unit:"" min:"1" max:"20" default:"1" is:"design factor, shear of the bolts"`
	N2   float64 `sym:"n_2" unit:"" min:"1" max:"20" default:"1" is:"design factor, bearing on the bolts"`
	N3   float64 `sym:"n_3" unit:"" min:"1" max:"20" default:"1" is:"design factor, bearing on the members"`
	N4   float64 `sym:"n_4" unit:"" min:"1" max:"20" default:"1" is:"design factor, tension of the members"`
	Kind float64 `sym:"shear_rule" choices:"0.577|0.5" default:"0" is:"shear yield strength over tensile: distortion energy, or maximum shear"`
}

// lapJoint is a bolted lap on first yield: shear of the bolts, bearing on bolts and members, tension of the members, each with a design factor of
// its own; given a load it prints the stresses and the factors reached.
var lapJoint = strength.Define(strength.Identity{
	ID: "lap-joint-yield", Title: "bolted lap joint on first yield",
	Clause: bookClause("shear joints", "first yield"),
	Demand: "F", Capacity: "F_c", Unit: "N",
}, func(c *strength.Calc, g lapJointGivens) {
	area := g.A
	if area == 0 {
		area = math.Pi * g.D * g.D / 4
	}
	A := c.Let("A", "n*when(A_1 > 0*mm*mm, A_1, pi*pow(d, 2)/4)", "mm^2", g.N*area)
	k := 0.577
	if g.Kind > 0 {
		k = 0.5
	}
	Ssy := c.Let("S_sy", "when(shear_rule > 0, 0.5, 0.577)*S_yb", "MPa", k*g.Syb)
	Ab := c.Let("A_b", "n*d*t", "mm^2", g.N*g.D*g.T)
	Fs := c.Let("F_shear", "A*S_sy/n_1", "N", A*Ssy/g.N1)
	Fb := c.Let("F_bolt", "A_b*S_yb/n_2", "N", Ab*g.Syb/g.N2)
	Fm := c.Let("F_mem", "A_b*S_ym/n_3", "N", Ab*g.Sym/g.N3)
	tau := c.Let("tau", "F/A", "MPa", g.F/A)
	sb := c.Let("sigma_b", "F/A_b", "MPa", g.F/Ab)
	if g.F > 0 {
		c.Let("n_shear", "S_sy/tau", "", Ssy/tau)
		c.Let("n_bolt", "S_yb/sigma_b", "", g.Syb/sb)
		c.Let("n_mem", "S_ym/sigma_b", "", g.Sym/sb)
	}
	if g.W == 0 {
		c.Compare(g.F, c.Let("F_c", "min(F_shear, F_bolt, F_mem)", "N", min(Fs, Fb, Fm)))
		return
	}
	hole := g.Dh
	if hole == 0 {
		hole = g.D
	}
	At := c.Let("A_t", "(w - n_row*when(d_h > 0*mm, d_h, d))*t", "mm^2", (g.W-g.Row*hole)*g.T)
	c.Need(At > 0, "A_t > 0*mm*mm", "material left between the holes")
	Ft := c.Let("F_tens", "A_t*S_ym/n_4", "N", At*g.Sym/g.N4)
	st := c.Let("sigma_t", "F/A_t", "MPa", g.F/At)
	if g.F > 0 {
		c.Let("n_tens", "S_ym/sigma_t", "", g.Sym/st)
	}
	c.Compare(g.F, c.Let("F_c", "min(F_shear, F_bolt, F_mem, F_tens)", "N", min(Fs, Fb, Fm, Ft)))
})
