package aisc360

// A tube pressed on its wall: by a saddle, by a plate across or along it, by a bolt that clamps through it.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

var saddleLimits = []strength.Evaluator{saddleRing, contactBearing, roundTubePlate, rectTubePlate, tubeClamp}

type saddleGivens struct {
	P       float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the saddle on the tube"`
	D       float64 `sym:"D" unit:"mm" min:"5" max:"2000" is:"outside diameter of the tube"`
	T       float64 `sym:"t" unit:"mm" min:"0.2" max:"200" is:"design wall"`
	B       float64 `sym:"b" unit:"mm" min:"0" max:"5000" is:"length of the saddle along the tube"`
	Beta    float64 `sym:"beta" unit:"rad" min:"0.01" max:"1.57" is:"half of the angle over which the saddle bears; 0.01 for a line of contact"`
	Carried float64 `sym:"carried" choices:"to a support opposite|along the tube" default:"0" is:"where the force goes on from the saddle"`
	Fy      float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the tube"`
}

// saddleRing is the tube's wall as a plastic strip bent round as a ring, with half of the force as thrust: AISC 360-22 F11.1, Eq. F11-1, and
// J4.4, Eq. J4-6, joined as in Manual Part 9, Eq. 9-1. Ring moments are elementary; the tube's bending as a beam is another limit state, and
// so is what its axial stress takes from the wall.
var saddleRing = strength.Define(strength.Identity{
	ID: "saddle-ring", Title: "bending of a tube's wall under a saddle",
	Clause: clause("F11.1, Eq. F11-1; J4.4, Eq. J4-6", "moments of thin rings, textbook; working length by Zick 1951, from memory"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g saddleGivens) {
	R, be := practice.RingWidth(c, g.D, g.T, g.B)
	k := practice.RingUnderSaddle(c, g.Beta, g.Carried)
	M := c.Let("M_w", "k_M*P_r*R", "N*mm", k*g.P*R)
	N := c.Let("N_w", "P_r/2", "N", g.P/2)
	wallStrip(c, M, N, be, g.T, g.Fy)
})

// wallStrip ends a limit state with the moment M_w and the thrust N_w on a strip of wall b_e wide.
func wallStrip(c *strength.Calc, m, n, be, t, fy float64) {
	Mc := c.Available("M_c", "F_y*b_e*pow(t, 2)/4", "N*mm", fy*be*t*t/4, 0.90, 1.67)
	Nc := c.Available("N_c", "F_y*b_e*t", "N", fy*be*t, 0.90, 1.67)
	c.Compare(c.Let("U", "M_w/M_c + pow(N_w/N_c, 2)", "", m/Mc+(n/Nc)*(n/Nc)), 1)
}

type roundPlateGivens struct {
	P     float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force square to the tube's axis"`
	Way   float64 `sym:"way" choices:"across the tube|along the tube" default:"0" is:"how the plate stands on the tube"`
	D     float64 `sym:"D" unit:"mm" min:"5" max:"2000" is:"outside diameter"`
	T     float64 `sym:"t" unit:"mm" min:"0.2" max:"200" is:"design wall"`
	Bp    float64 `sym:"B_p" unit:"mm" min:"0.1" max:"5000" is:"width of the plate across the tube, or its length along it"`
	Other float64 `sym:"through" choices:"one side|both sides" default:"0" is:"whether a like plate stands opposite"`
	Qf    float64 `sym:"Q_f" unit:"" min:"0.01" max:"1" default:"1" is:"loss by the tube's own stress; 1 for a tube in tension"`
	Fy    float64 `sym:"F_y" unit:"MPa" min:"50" max:"360" is:"yield strength of the tube, at most 52 ksi"`
}

// roundTubePlate is plastification of a round tube under a plate welded across or along it: AISC 360-22 Table K2.1, from memory.
var roundTubePlate = strength.Define(strength.Identity{
	ID: "round-tube-plate", Title: "crushing of a round tube under a plate",
	Clause: clause("K2, Eq. K2-1a and K2-2a, Table K2.1", "from memory"),
	Demand: "P_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g roundPlateGivens) {
	most := 50.0
	if g.Other > 0 {
		most = 40
	}
	most = c.Let("D_t", "when(through > 0, 40, 50)", "", most)
	c.Need(g.D <= most*g.T, "D <= D_t*t", "a wall within the table")
	x := c.Let("x", "B_p/D", "", g.Bp/g.D)
	if g.Way > 0 {
		R := c.Let("R_n", "5.5*F_y*pow(t, 2)*(1 + 0.25*x)*Q_f", "N", 5.5*g.Fy*g.T*g.T*(1+0.25*x)*g.Qf)
		c.Compare(g.P, c.Available("R_c", "R_n", "N", R, 0.90, 1.67))
		return
	}
	c.Need(x >= 0.2, "x >= 0.2", "a plate of at least a fifth of the diameter")
	c.Need(x <= 1, "x <= 1", "a plate no wider than the tube")
	R := c.Let("R_n", "F_y*pow(t, 2)*5.5/(1 - 0.81*x)*Q_f", "N", g.Fy*g.T*g.T*5.5/(1-0.81*x)*g.Qf)
	c.Compare(g.P, c.Available("R_c", "R_n", "N", R, 0.90, 1.67))
})

type rectPlateGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force square to the wall"`
	B  float64 `sym:"B" unit:"mm" min:"5" max:"2000" is:"outside width of the loaded wall"`
	T  float64 `sym:"t" unit:"mm" min:"0.2" max:"100" is:"design wall"`
	Tp float64 `sym:"t_p" unit:"mm" min:"0.1" max:"1000" is:"thickness of the plate"`
	Lb float64 `sym:"l_b" unit:"mm" min:"0" max:"5000" is:"length of the plate along the tube"`
	Qf float64 `sym:"Q_f" unit:"" min:"0.01" max:"1" default:"1" is:"loss by the tube's own stress; 1 for a wall in tension"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"360" is:"yield strength of the tube, at most 52 ksi"`
}

// rectTubePlate is the yield-line strength of a rectangular tube's wall under a plate that runs along its middle: AISC 360-10 Table K1.2, from
// memory; later editions leave it to the user's own yield-line analysis.
var rectTubePlate = strength.Define(strength.Identity{
	ID: "rect-tube-plate", Title: "wall of a rectangular tube under a plate along it",
	Clause: strength.Clause{Document: document, Edition: "2010", Section: "K1, Eq. K1-12, Table K1.2", Words: "from memory"},
	Demand: "P_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g rectPlateGivens) {
	c.Need(g.B/g.T <= 40, "B/t <= 40", "a wall within the table")
	k := c.Let("k", "1 - t_p/B", "", 1-g.Tp/g.B)
	c.Need(k >= 0.15, "k >= 0.15", "a plate on the wall, not over its corners")
	R := c.Let("R_n", "F_y*pow(t, 2)/k*(2*l_b/B + 4*sqrt(max(k, 0))*Q_f)", "N", g.Fy*g.T*g.T/k*(2*g.Lb/g.B+4*math.Sqrt(max(k, 0))*g.Qf))
	c.Compare(g.P, c.Available("R_c", "R_n", "N", R, 1.00, 1.50))
})

type clampGivens struct {
	P     float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"clamping force of the bolts that stand side by side across the tube"`
	Shape float64 `sym:"shape" choices:"rectangular|round" default:"0" is:"of the tube"`
	H     float64 `sym:"H" unit:"mm" min:"5" max:"2000" is:"outside size along the bolt; the diameter of a round tube"`
	B     float64 `sym:"B" unit:"mm" min:"5" max:"2000" is:"outside size across the bolt; the diameter of a round tube"`
	T     float64 `sym:"t" unit:"mm" min:"0.2" max:"100" is:"design wall"`
	W     float64 `sym:"w" unit:"mm" min:"0" max:"2000" is:"length of the washer or spreader along the tube"`
	Fy    float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the tube"`
	Do    float64 `sym:"d_o" unit:"mm" min:"0" max:"500" default:"0" is:"outside diameter of a crush sleeve round the bolt; 0 without one"`
	Di    float64 `sym:"d_i" unit:"mm" min:"0" max:"500" default:"0" is:"its inside diameter"`
	Fs    float64 `sym:"F_ys" unit:"MPa" min:"50" max:"2500" default:"235" is:"yield strength of the sleeve"`
}

// tubeClamp is a tube clamped by a bolt through it. Without a sleeve its walls bend: a closed frame, or a ring, under two opposed forces, on a
// length that grows at 45 degrees from the washer to the corners (common practice) or by the ring's own; AISC 360-22 F11.1 and J4.4. A sleeve
// of the tube's inside height carries all of the force: J4.4, Eq. J4-6.
var tubeClamp = strength.Define(strength.Identity{
	ID: "tube-clamp", Title: "crushing of a tube by a bolt through it",
	Clause: clause("F11.1, Eq. F11-1; J4.4, Eq. J4-6", "moments of closed frames and rings, textbook; spread by common practice"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g clampGivens) {
	if g.Do > 0 {
		sleeve(c, &g)
		return
	}
	wall := practice.Clamp{Round: g.Shape > 0, P: g.P, H: g.H, B: g.B, T: g.T, W: g.W}
	M, N, be := wall.Of(c)
	wallStrip(c, M, N, be, g.T, g.Fy)
})

func sleeve(c *strength.Calc, g *clampGivens) {
	c.Need(g.Di < g.Do, "d_i < d_o", "a sleeve of some wall")
	A := c.Let("A_s", "pi/4*(pow(d_o, 2) - pow(d_i, 2))", "mm^2", math.Pi/4*(g.Do*g.Do-g.Di*g.Di))
	r := c.Let("r", "sqrt(pow(d_o, 2) + pow(d_i, 2))/4", "mm", math.Sqrt(g.Do*g.Do+g.Di*g.Di)/4)
	c.Need(g.H-2*g.T <= 25*r, "H - 2*t <= 25*r", "a sleeve too short to buckle")
	Pc := c.Available("P_c", "F_ys*A_s", "N", g.Fs*A, 0.90, 1.67)
	c.Compare(c.Let("U", "P_r/P_c", "", g.P/Pc), 1)
}

type contactGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force that presses the faces together"`
	A  float64 `sym:"A_pb" unit:"mm^2" min:"0" max:"1e8" is:"area that presses, projected where it is curved"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the weaker"`
}

// contactBearing is bearing of faces that fit: AISC 360-22 J7(a), Eq. J7-1.
var contactBearing = strength.Define(strength.Identity{
	ID: "contact-bearing", Title: "bearing of faces pressed together",
	Clause: clause("J7(a), Eq. J7-1", "finished surfaces, or edges that are fitted"),
	Demand: "P_r", Capacity: "R_c", Unit: "N",
}, func(c *strength.Calc, g contactGivens) {
	c.Need(g.A > 0, "A_pb > 0*mm*mm", "a force that passes through the faces")
	Rn := c.Let("R_n", "1.8*F_y*A_pb", "N", 1.8*g.Fy*g.A)
	c.Compare(g.P, c.Available("R_c", "R_n", "N", Rn, 0.75, 2.00))
})

var seatRules = []strength.Rule[strength.Seat]{
	{Of: contactBearing, Check: func(c *strength.Calc, f *strength.Seat) {
		contactBearing.Check(c, contactGivens{P: f.F, A: f.Area, Fy: f.Fy})
	}},
	{Of: saddleRing, Check: func(c *strength.Calc, f *strength.Seat) {
		saddleRing.Check(c, saddleGivens{P: f.Wall, D: f.D, T: f.T, B: f.Along, Beta: f.Beta, Carried: 1, Fy: f.TubeFy})
		c.SkipUnless(f.Tube, "no tube's wall lies under it")
	}},
}
