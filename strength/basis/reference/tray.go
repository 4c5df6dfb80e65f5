package reference

// Trays hung on rods: what each rod bears, and the bottom as a strip over its hangers, as a plate on its flanges, as a flat sheet on four
// rods. A bottom that cannot pull its edges together is taken to bend only: no membrane force is counted.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/statics"
)

// hungTrays is the card of trays.
var hungTrays = bookCard("Hung trays", "plates and beams of textbooks", "various", hangerShare, trayStrip, traySag, trayPlate, trayFoot, trayOnRods)

func trayClause(section, words string) strength.Clause {
	return strength.Clause{Document: "plates and beams of textbooks", Edition: "various", Section: section, Words: words}
}

type hangerGivens struct {
	W  float64 `sym:"W" unit:"N" min:"0" max:"1e9" is:"weight of tray and contents, full"`
	Kv float64 `sym:"g_v" unit:"" min:"-20" max:"20" default:"1" is:"vertical acceleration on it in g, 1 at rest"`
	Kh float64 `sym:"g_h" unit:"" min:"0" max:"20" default:"0" is:"side acceleration in g"`
	H  float64 `sym:"h" unit:"mm" min:"0" max:"1e4" default:"0" is:"mass centre below the rods' upper ends"`
	S  float64 `sym:"s" unit:"mm" min:"1" max:"1e4" is:"distance between the two lines of rods"`
	N  float64 `sym:"n_s" unit:"" min:"1" max:"50" default:"2" step:"1" is:"rods in each line, one on each side"`
	K  float64 `sym:"k_s" unit:"" min:"0.01" max:"1" default:"1" is:"part of its line's force in the worst rod: 1 where two diagonal rods bear all, 1/n_s where all share alike"`
	T  float64 `sym:"T_all" unit:"N" min:"0.001" max:"1e9" is:"tension that one rod may bear"`
}

// hangerShare shares weight and side force among two lines of rods: half the weight on each, and the couple of the side force about the
// rods' upper ends as a pull on one line and a push on the other. A side stop that takes the side force low down takes the couple too.
var hangerShare = strength.Define(strength.Identity{
	ID: "hanger-share", Title: "tension of the worst of two lines of hanger rods",
	Clause: strength.Clause{Words: "elementary statics, no clause; share within a line by choice"},
	Demand: "T_max", Capacity: "T_all", Unit: "N",
}, func(c *strength.Calc, g hangerGivens) {
	c.Need(g.K*g.N >= 1-1e-9, "k_s*n_s >= 1 - 1e-9", "a worst rod that bears no less than its even share")
	couple := c.Let("C", "g_h*W*h/s", "N", g.Kh*g.W*g.H/g.S)
	low := c.Let("F_min", "g_v*W/2 - C", "N", g.Kv*g.W/2-couple)
	high := c.Let("F_max", "g_v*W/2 + C", "N", g.Kv*g.W/2+couple)
	c.Let("T_min", "k_s*min(F_min, 0*N)", "N", g.K*min(low, 0))
	c.Let("V_rod", "g_h*W/(2*n_s)", "N", g.Kh*g.W/(2*g.N))
	c.Compare(c.Let("T_max", "k_s*max(F_max, 0*N)", "N", g.K*max(high, 0)), g.T)
})

type stripGivens struct {
	W     float64 `sym:"W" unit:"N" min:"0" max:"1e9" is:"load on the strip, all its spans together: weight times the vertical acceleration in g"`
	L     float64 `sym:"L" unit:"mm" min:"1" max:"1e4" is:"span from hanger to hanger"`
	Spans float64 `sym:"spans" choices:"1|2|3|4|5" default:"0" is:"equal spans, hung between each two and at both ends"`
	B     float64 `sym:"b" unit:"mm" min:"1" max:"1e4" is:"width of the strip"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"100" is:"thickness of the sheet"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"2500" is:"stress allowed; that of welded metal for aluminium beside a weld"`
}

// stripTable: greatest moment in w L^2, greatest reaction in w L, greatest sag in w L^4/(E I), reaction at the ends in w L. The moments and
// reactions are those of beam tables, 1/8, 1/8, 1/10, 3/28 and 4/38; the sags were worked out by three moments.
var stripTable = [][4]float64{
	{1.0 / 8, 1.0 / 2, 5.0 / 384, 1.0 / 2}, {1.0 / 8, 5.0 / 4, 0.0054161, 3.0 / 8}, {1.0 / 10, 11.0 / 10, 0.0068842, 4.0 / 10},
	{3.0 / 28, 8.0 / 7, 0.0064604, 11.0 / 28}, {4.0 / 38, 43.0 / 38, 0.0065716, 15.0 / 38},
}

// trayStrip is the bottom as a strip over lines of hangers. Where it rests on rods and no cross bar joins them, the strip is as wide as what one rod
// stiffens, not the tray.
var trayStrip = strength.Define(strength.Identity{
	ID: "tray-strip", Title: "bending of a tray bottom over its hangers",
	Clause: trayClause("continuous beams of equal spans", "even load; membrane force not counted"),
	Demand: "sigma", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g stripGivens) {
	row := stripTable[int(g.Spans)]
	w := c.Let("w", "W/((spans + 1)*L)", "N/mm", g.W/((g.Spans+1)*g.L))
	km := c.Solved("k_M", "greatest moment of so many equal spans, in w L^2", "", row[0])
	kr := c.Solved("k_R", "greatest reaction, in w L", "", row[1])
	ke := c.Solved("k_e", "reaction at the ends, in w L", "", row[3])
	c.Let("k_s", "pow(k_e, 2)/2", "", ke*ke/2) // greatest moment within the end spans, in w L^2
	c.Let("R", "k_R*w*L", "N", kr*w*g.L)
	M := c.Let("M", "k_M*w*pow(L, 2)", "N*mm", km*w*g.L*g.L)
	c.Compare(c.Let("sigma", "6*M/(b*pow(t, 2))", "MPa", 6*M/(g.B*g.T*g.T)), g.Limit)
})

type sagGivens struct {
	W     float64 `sym:"W" unit:"N" min:"0" max:"1e9" is:"load on the strip, all its spans together"`
	L     float64 `sym:"L" unit:"mm" min:"1" max:"1e4" is:"span from hanger to hanger"`
	Spans float64 `sym:"spans" choices:"1|2|3|4|5" default:"0" is:"equal spans"`
	B     float64 `sym:"b" unit:"mm" min:"1" max:"1e4" is:"width of the strip"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"100" is:"thickness of the sheet"`
	E     float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity: 200000 steel, 70000 aluminium"`
	Limit float64 `sym:"y_lim" unit:"mm" min:"0.001" max:"1e4" is:"sag allowed"`
}

// traySag is the sag of the same strip.
var traySag = strength.Define(strength.Identity{
	ID: "tray-strip-sag", Title: "sag of a tray bottom between its hangers",
	Clause: trayClause("continuous beams of equal spans", "even load; membrane force not counted"),
	Demand: "y", Capacity: "y_lim", Unit: "mm",
}, func(c *strength.Calc, g sagGivens) {
	w := c.Let("w", "W/((spans + 1)*L)", "N/mm", g.W/((g.Spans+1)*g.L))
	ky := c.Solved("k_y", "greatest sag of so many equal spans, in w L^4/(E I)", "", stripTable[int(g.Spans)][2])
	I := c.Let("I", "b*pow(t, 3)/12", "mm^4", g.B*g.T*g.T*g.T/12)
	y := c.Let("y", "k_y*w*pow(L, 4)/(E*I)", "mm", ky*w*math.Pow(g.L, 4)/(g.E*I))
	c.Need(y <= g.L/10, "y <= L/10", "a sag for which beam theory holds")
	c.Compare(y, g.Limit)
})

type plateGivens struct {
	W     float64 `sym:"W" unit:"N" min:"0" max:"1e9" is:"load on the plate, even: weight times the vertical acceleration in g"`
	A     float64 `sym:"a" unit:"mm" min:"1" max:"1e4" is:"long side between supports"`
	B     float64 `sym:"b" unit:"mm" min:"1" max:"1e4" is:"short side between supports"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"100" is:"thickness of the sheet"`
	Edges float64 `sym:"edges" choices:"simply supported|held against turning" default:"0" is:"edges on stiff flanges or bars: a bent flange seldom holds against turning"`
	E     float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity: 200000 steel, 70000 aluminium"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"2500" is:"stress allowed; that of welded metal for aluminium beside a weld"`
}

// trayPlate is the bottom as a plate whose four edges are carried: Levy's series, or the printed table for edges that cannot turn. Beyond half
// its thickness of sag a plate carries by membrane force as well, which is not counted here.
var trayPlate = strength.Define(strength.Identity{
	ID: "tray-plate", Title: "bending of a tray bottom carried on four sides",
	Clause: trayClause("Formulas for Stress and Strain, Table 11.4, cases 1a and 8a", "nu = 0.3; case 8a from memory; sag to half the thickness"),
	Demand: "sigma", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g plateGivens) {
	c.Need(g.A >= g.B, "a >= b", "a long side no shorter than the other")
	k := statics.SupportedPlate(max(g.A/g.B, 1), 0.3)
	if g.Edges > 0 {
		k = statics.FixedPlate(g.A / g.B)
	}
	q := c.Let("q", "W/(a*b)", "MPa", g.W/(g.A*g.B))
	beta := c.Solved("beta", "stress in q b^2/t^2: Levy's series, or the table by a/b", "", k.Stress)
	second := c.Solved("beta_2", "stress in the middle, likewise: along the long side on simple supports, along the short one with held edges", "", k.Second)
	alpha := c.Solved("alpha", "sag in q b^4/(E t^3), likewise", "", k.Sag)
	if g.Edges == 0 {
		gamma := c.Solved("gamma", "edge reaction in q b, Levy's series", "", k.Edge)
		c.Let("r_edge", "gamma*q*b", "N/mm", gamma*q*g.B)
	}
	y := c.Let("y", "alpha*q*pow(b, 4)/(E*pow(t, 3))", "mm", alpha*q*math.Pow(g.B, 4)/(g.E*g.T*g.T*g.T))
	c.Need(y <= g.T/2, "y <= t/2", "a sag of at most half the thickness, for which plate theory holds")
	c.Let("sigma_2", "beta_2*q*pow(b, 2)/pow(t, 2)", "MPa", second*q*g.B*g.B/(g.T*g.T))
	c.Compare(c.Let("sigma", "beta*q*pow(b, 2)/pow(t, 2)", "MPa", beta*q*g.B*g.B/(g.T*g.T)), g.Limit)
})

type onRodsGivens struct {
	W     float64 `sym:"W" unit:"N" min:"0" max:"1e9" is:"load on the sheet between the rods, even: weight times the vertical acceleration in g"`
	A     float64 `sym:"a" unit:"mm" min:"1" max:"1e4" is:"greater distance between rods"`
	B     float64 `sym:"b" unit:"mm" min:"1" max:"1e4" is:"lesser distance between rods"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"100" is:"thickness of the sheet"`
	E     float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity: 200000 steel, 70000 aluminium"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"2500" is:"stress allowed"`
}

// trayOnRods is a flat sheet with free edges that hangs at its four corners; a rectangle is taken as the square on its longer side under the same
// pressure, which bends more. The stress at the rods' washers is another matter, and so is the sheet pulled through.
var trayOnRods = strength.Define(strength.Identity{
	ID: "tray-on-four-rods", Title: "bending of a flat sheet hung at four corners",
	Clause: trayClause("Theory of Plates and Shells, square plate supported at its corners", "nu = 0.25; from memory; sag to half the thickness"),
	Demand: "sigma", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g onRodsGivens) {
	c.Need(g.A >= g.B, "a >= b", "a greater distance no less than the other")
	q := c.Let("q", "W/(a*b)", "MPa", g.W/(g.A*g.B))
	D := c.Let("D", "E*pow(t, 3)/(12*(1 - pow(0.25, 2)))", "N*mm", g.E*g.T*g.T*g.T/(12*(1-0.25*0.25)))
	y := c.Let("y", "0.0257*q*pow(a, 4)/D", "mm", 0.0257*q*math.Pow(g.A, 4)/D)
	c.Need(y <= g.T/2, "y <= t/2", "a sag of at most half the thickness: flange the edges")
	m := c.Let("m_edge", "0.153*q*pow(a, 2)", "N", 0.153*q*g.A*g.A)
	c.Compare(c.Let("sigma", "6*m_edge/pow(t, 2)", "MPa", 6*m/(g.T*g.T)), g.Limit)
})
