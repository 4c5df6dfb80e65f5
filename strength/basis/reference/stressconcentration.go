package reference

// Stress at holes: a strip with an open or a pin-loaded hole, and the exact field round a hole in a wide plate. They are for fatigue and for brittle
// parts; a ductile part under static load does not need them.

import (
	"math"

	"lugwright/strength"
)

// stressConcentration is the card of the factors.
var stressConcentration = bookCard("Stress concentration", "stress concentration factors", "various", openHole, pinnedHole, wideHole)

func factorClause(section, words string) strength.Clause {
	return strength.Clause{Document: "stress concentration factors", Edition: "various", Section: section, Words: words}
}

type openHoleGivens struct {
	D     float64 `sym:"d" unit:"mm" min:"0.001" max:"5000" is:"hole diameter"`
	W     float64 `sym:"W" unit:"mm" min:"0.001" max:"1e5" is:"width of the strip"`
	T     float64 `sym:"t" unit:"mm" min:"0.001" max:"500" default:"1" is:"thickness"`
	P     float64 `sym:"P" unit:"N" min:"0" max:"1e9" default:"0" is:"tension in the strip"`
	Curve float64 `sym:"curve" choices:"cubic|simple" default:"0" is:"fit of the factor on the net section: handbook cubic, or 2 + (1 - d/W)^3, 1.6 % low at d/W = 0.5"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"5000" default:"250" is:"stress that the material bears at the hole"`
}

// openHole is the peak stress at a hole in the middle of a strip in tension.
var openHole = strength.Define(strength.Identity{
	ID: "open-hole-stress", Title: "peak stress at an open hole in a strip",
	Clause: factorClause("strip in tension with a central hole", "handbook fits; the simple one from memory"),
	Demand: "sigma_max", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g openHoleGivens) {
	c.Need(g.D < g.W, "d < W", "a hole narrower than the strip")
	x := c.Let("x", "d/W", "", g.D/g.W)
	var K float64
	if g.Curve > 0 {
		K = c.Let("K_net", "2 + pow(1 - x, 3)", "", 2+(1-x)*(1-x)*(1-x))
	} else {
		K = c.Let("K_net", "3 - 3.13*x + 3.66*pow(x, 2) - 1.53*pow(x, 3)", "", 3-3.13*x+3.66*x*x-1.53*x*x*x)
	}
	c.Let("K_gross", "K_net/(1 - x)", "", K/(1-x))
	nominal := c.Let("sigma_nom", "P/((W - d)*t)", "MPa", g.P/((g.W-g.D)*g.T))
	c.Compare(c.Let("sigma_max", "K_net*sigma_nom", "MPa", K*nominal), g.Limit)
})

type pinnedHoleGivens struct {
	D     float64 `sym:"d" unit:"mm" min:"0.001" max:"5000" is:"hole diameter"`
	W     float64 `sym:"W" unit:"mm" min:"0.001" max:"1e5" is:"width of the lug"`
	T     float64 `sym:"t" unit:"mm" min:"0.001" max:"500" default:"1" is:"thickness"`
	P     float64 `sym:"P" unit:"N" min:"0" max:"1e9" default:"0" is:"pull of the pin"`
	Loose float64 `sym:"k_loose" unit:"" min:"1" max:"1.5" default:"1" is:"1 for a close pin; 1.35 to 1.5 for a loose one"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"5000" default:"250" is:"stress that the material bears at the hole"`
}

// pinnedHole is the peak stress in a square-ended lug whose close pin pulls towards its end, on the net section.
var pinnedHole = strength.Define(strength.Identity{
	ID: "pin-hole-stress", Title: "peak stress at the hole of a pinned lug",
	Clause: factorClause("pin-loaded hole, square-ended lug", "cubic fit from memory, 5 % under a textbook's chart at d/W = 0.4"),
	Demand: "sigma_max", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g pinnedHoleGivens) {
	x := c.Let("x", "d/W", "", g.D/g.W)
	c.Need(x >= 0.15, "x >= 0.15", "a hole of at least 0.15 of the width")
	c.Need(x <= 0.75, "x <= 0.75", "a hole of at most 0.75 of the width")
	K := c.Let("K_net", "k_loose*(12.882 - 52.714*x + 89.762*pow(x, 2) - 51.667*pow(x, 3))", "", g.Loose*(12.882-52.714*x+89.762*x*x-51.667*x*x*x))
	nominal := c.Let("sigma_nom", "P/((W - d)*t)", "MPa", g.P/((g.W-g.D)*g.T))
	c.Compare(c.Let("sigma_max", "K_net*sigma_nom", "MPa", K*nominal), g.Limit)
})

type wideHoleGivens struct {
	A     float64 `sym:"a" unit:"mm" min:"0.001" max:"1000" is:"radius of the hole"`
	R     float64 `sym:"r" unit:"mm" min:"0.001" max:"1e6" is:"distance from the hole's centre"`
	Theta float64 `sym:"theta" unit:"rad" min:"-6.283185307179587" max:"6.283185307179587" default:"0" is:"angle from x"`
	Sx    float64 `sym:"S_x" unit:"MPa" min:"-5000" max:"5000" default:"0" is:"stress along x far away"`
	Sy    float64 `sym:"S_y" unit:"MPa" min:"-5000" max:"5000" default:"0" is:"stress along y far away"`
	Sxy   float64 `sym:"S_xy" unit:"MPa" min:"-5000" max:"5000" default:"0" is:"shear stress far away"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"5000" default:"250" is:"stress that the material bears"`
}

// wideHole is the stress round a round hole in an infinite elastic plate: the exact solution of 1898, for any plane stress far away.
var wideHole = strength.Define(strength.Identity{
	ID: "wide-plate-hole", Title: "stress round a hole in a wide plate",
	Clause: factorClause("infinite plate, exact solution of 1898", ""),
	Demand: "abs(s_tt)", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g wideHoleGivens) {
	c.Need(g.R >= g.A, "r >= a", "a point in the plate")
	q2 := c.Let("q_2", "pow(a/r, 2)", "", sq(g.A/g.R))
	q4 := c.Let("q_4", "pow(q_2, 2)", "", q2*q2)
	mean := c.Let("S_m", "(S_x + S_y)/2", "MPa", (g.Sx+g.Sy)/2)
	s, k := math.Sincos(2 * g.Theta)
	along := c.Let("S_d", "(S_x - S_y)/2*cos(2*theta) + S_xy*sin(2*theta)", "MPa", (g.Sx-g.Sy)/2*k+g.Sxy*s)
	across := c.Let("S_t", "-(S_x - S_y)/2*sin(2*theta) + S_xy*cos(2*theta)", "MPa", -(g.Sx-g.Sy)/2*s+g.Sxy*k)
	c.Let("s_rr", "S_m*(1 - q_2) + S_d*(1 - 4*q_2 + 3*q_4)", "MPa", mean*(1-q2)+along*(1-4*q2+3*q4))
	c.Let("s_rt", "S_t*(1 + 2*q_2 - 3*q_4)", "MPa", across*(1+2*q2-3*q4))
	hoop := c.Let("s_tt", "S_m*(1 + q_2) - S_d*(1 + 3*q_4)", "MPa", mean*(1+q2)-along*(1+3*q4))
	c.Compare(math.Abs(hoop), g.Limit)
})
