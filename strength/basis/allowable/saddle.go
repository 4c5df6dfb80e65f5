package allowable

// A tube's wall under a saddle, a tube clamped by a bolt, a support bar as a strut.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/practice"
)

type saddleGivens struct {
	P       float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force of the saddle on the tube"`
	D       float64 `sym:"D" unit:"mm" min:"5" max:"2000" is:"outside diameter of the tube"`
	T       float64 `sym:"t" unit:"mm" min:"0.2" max:"200" is:"wall"`
	B       float64 `sym:"b" unit:"mm" min:"0" max:"5000" is:"length of the saddle along the tube"`
	Beta    float64 `sym:"beta" unit:"rad" min:"0.01" max:"1.57" is:"half of the angle over which the saddle bears; 0.01 for a line of contact"`
	Carried float64 `sym:"carried" choices:"to a support opposite|along the tube" default:"0" is:"where the force goes on from the saddle"`
	Beam    float64 `sym:"sigma_b" unit:"MPa" min:"0" max:"2500" default:"0" is:"stress along the tube at the same place, from its bending as a beam"`
	Fy      float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the tube"`
	Fu      float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the tube"`
}

// saddleRing is the elastic stress round the tube's wall, with half of the force as thrust; the stress along the tube is added as if of the
// other sign (greatest shear), which is cautious beside von Mises.
var saddleRing = strength.Define(strength.Identity{
	ID: "saddle-ring", Title: "bending of a tube's wall under a saddle",
	Clause: common("elastic moments of thin rings, textbook; working length by Zick 1951, from memory"),
	Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g saddleGivens) {
	R, be := practice.RingWidth(c, g.D, g.T, g.B)
	k := practice.RingUnderSaddle(c, g.Beta, g.Carried)
	M := c.Let("M_r", "k_M*P_r*R", "N*mm", k*g.P*R)
	ring := c.Let("sigma_r", "6*M_r/(b_e*pow(t, 2)) + P_r/(2*b_e*t)", "MPa", 6*M/(be*g.T*g.T)+g.P/(2*be*g.T))
	c.Compare(c.Let("sigma", "sigma_r + sigma_b", "MPa", ring+g.Beam), allowed(c, g.Fy, g.Fu))
})

type clampGivens struct {
	P     float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"clamping force of the bolts that stand side by side across the tube"`
	Shape float64 `sym:"shape" choices:"rectangular|round" default:"0" is:"of the tube"`
	H     float64 `sym:"H" unit:"mm" min:"5" max:"2000" is:"outside size along the bolt; the diameter of a round tube"`
	B     float64 `sym:"B" unit:"mm" min:"5" max:"2000" is:"outside size across the bolt; the diameter of a round tube"`
	T     float64 `sym:"t" unit:"mm" min:"0.2" max:"100" is:"wall"`
	W     float64 `sym:"w" unit:"mm" min:"0" max:"2000" is:"length of the washer or spreader along the tube"`
	Do    float64 `sym:"d_o" unit:"mm" min:"0" max:"500" default:"0" is:"outside diameter of a crush sleeve round the bolt; 0 without one"`
	Di    float64 `sym:"d_i" unit:"mm" min:"0" max:"500" default:"0" is:"its inside diameter"`
	Fy    float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the tube, or of the sleeve where there is one"`
	Fu    float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the same"`
}

// tubeClamp is a tube clamped by a bolt through it: elastic stress in its walls as a closed frame or a ring, or in a sleeve that is too short to
// buckle and carries all.
var tubeClamp = strength.Define(strength.Identity{
	ID: "tube-clamp", Title: "crushing of a tube by a bolt through it",
	Clause: common("elastic closed frames and rings; mean stress of a sleeve"),
	Demand: "sigma", Capacity: "sigma_all", Unit: "MPa",
}, func(c *strength.Calc, g clampGivens) {
	if g.Do > 0 {
		c.Need(g.Di < g.Do, "d_i < d_o", "a sleeve of some wall")
		A := c.Let("A_s", "pi/4*(pow(d_o, 2) - pow(d_i, 2))", "mm^2", math.Pi/4*(g.Do*g.Do-g.Di*g.Di))
		r := c.Let("r", "sqrt(pow(d_o, 2) + pow(d_i, 2))/4", "mm", math.Sqrt(g.Do*g.Do+g.Di*g.Di)/4)
		c.Need(g.H-2*g.T <= 25*r, "H - 2*t <= 25*r", "a sleeve too short to buckle")
		c.Compare(c.Let("sigma", "P_r/A_s", "MPa", g.P/A), allowed(c, g.Fy, g.Fu))
		return
	}
	wall := practice.Clamp{Round: g.Shape > 0, P: g.P, H: g.H, B: g.B, T: g.T, W: g.W}
	M, N, be := wall.Of(c)
	sigma := c.Let("sigma", "6*M_w/(b_e*pow(t, 2)) + N_w/(b_e*t)", "MPa", 6*M/(be*g.T*g.T)+N/(be*g.T))
	c.Compare(sigma, allowed(c, g.Fy, g.Fu))
})

type columnGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"compression of the support bar"`
	L  float64 `sym:"L_c" unit:"mm" min:"0" max:"1e6" is:"effective length: 1 between hinges, 2 of a bar that stands free"`
	R  float64 `sym:"r" unit:"mm" min:"0.1" max:"1e4" is:"least radius of gyration"`
	A  float64 `sym:"A" unit:"mm^2" min:"0.1" max:"1e7" is:"area"`
	E  float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity: 200000 steel, 70000 aluminium"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

// strut is a support bar in compression: Euler's column, Johnson's parabola where it is stocky, over the factor on buckling.
var strut = strength.Define(strength.Identity{
	ID: "column-buckling", Title: "flexural buckling in compression",
	Clause: common("elementary stability: Euler and Johnson columns"),
	Demand: "P_r", Capacity: "P_all", Unit: "N",
}, func(c *strength.Calc, g columnGivens) {
	s := c.Let("s", "L_c/r", "", g.L/g.R)
	s1 := c.Let("s_1", "sqrt(2*pow(pi, 2)*E/F_y)", "", math.Sqrt(2*math.Pi*math.Pi*g.E/g.Fy))
	P := g.Fy * g.A * (1 - s*s*g.Fy/(4*math.Pi*math.Pi*g.E))
	if s > s1 {
		P = math.Pi * math.Pi * g.E * g.A / (s * s)
	}
	P = c.Let("P_cr", "when(s > s_1, pow(pi, 2)*E*A/pow(s, 2), F_y*A*(1 - pow(s, 2)*F_y/(4*pow(pi, 2)*E)))", "N", P)
	nu := c.Factor("n_u")
	c.Compare(g.P, c.Let("P_all", "P_cr/n_u", "N", P/nu))
})

type contactGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"force that presses the faces together"`
	A  float64 `sym:"A_c" unit:"mm^2" min:"0" max:"1e8" is:"area that presses, projected where it is curved"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength of the weaker"`
	Fu float64 `sym:"F_u" unit:"MPa" min:"50" max:"3000" is:"its tensile strength"`
}

// contactBearing is the mean pressure on the area that presses.
var contactBearing = strength.Define(strength.Identity{
	ID: "contact-bearing", Title: "bearing of faces pressed together", Clause: common("mean pressure; faces that fit"),
	Demand: "P_r", Capacity: "P_all", Unit: "N",
}, func(c *strength.Calc, g contactGivens) {
	c.Need(g.A > 0, "A_c > 0*mm*mm", "a force that passes through the faces")
	c.Compare(g.P, c.Let("P_all", "sigma_p*A_c", "N", allowedBearing(c, allowed(c, g.Fy, g.Fu))*g.A))
})

var seatRules = []strength.Rule[strength.Seat]{
	{Of: contactBearing, Check: func(c *strength.Calc, f *strength.Seat) {
		contactBearing.Check(c, contactGivens{P: f.F, A: f.Area, Fy: f.Fy, Fu: f.Fu})
	}},
	{Of: saddleRing, Check: func(c *strength.Calc, f *strength.Seat) {
		saddleRing.Check(c, saddleGivens{P: f.Wall, D: f.D, T: f.T, B: f.Along, Beta: f.Beta, Carried: 1, Fy: f.TubeFy, Fu: f.TubeFu})
		c.SkipUnless(f.Tube, "no tube's wall lies under it")
	}},
}
