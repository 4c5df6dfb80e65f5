package reference

// Preload by torque: T = K d F, its scatter, and whether a joint separates.

import "lugwright/strength"

// preload is the card of tightening by torque.
var preload = bookCard("Preload by torque", "torque tables and NASA-STD-5020", "various", tighteningTorque, torquePreload, preloadScatter, jointSeparation)

func torqueClause(words string) strength.Clause {
	return strength.Clause{Document: "torque tables of bolt makers", Edition: "various", Section: "T = K D F", Words: words}
}

type torqueGivens struct {
	D      float64 `sym:"d" unit:"mm" min:"0.5" max:"200" is:"nominal diameter"`
	P      float64 `sym:"P" unit:"mm" min:"0" max:"20" default:"0" is:"pitch; may be left out beside an area or a proof load"`
	Thread float64 `sym:"thread" choices:"metric|inch" default:"0" is:"series"`
	As     float64 `sym:"A_given" unit:"mm^2" min:"0" max:"1e5" default:"0" is:"stress area as a table prints it; 0 to calculate it"`
	Sp     float64 `sym:"S_p" unit:"MPa" min:"0" max:"3000" default:"0" is:"proof strength"`
	Fp     float64 `sym:"F_table" unit:"N" min:"0" max:"1e9" default:"0" is:"proof load as a table prints it; 0 to calculate it from area and proof strength"`
	K0     float64 `sym:"k_F" unit:"" min:"0.05" max:"1" default:"0.75" is:"preload over proof load: 0.75 where the joint is to be undone"`
	K      float64 `sym:"K" unit:"" min:"0.05" max:"0.5" default:"0.2" is:"nut factor: 0.15 lubricated, 0.17 zinc dry, 0.20 plain dry (makers' charts)"`
}

// tighteningTorque is the torque for a part of the proof load, which bounds the preload.
var tighteningTorque = strength.Define(strength.Identity{
	ID: "tightening-torque", Title: "torque for a preload", Clause: torqueClause("the nut factor scatters by 35 % either way"),
	Demand: "F", Capacity: "F_p", Unit: "N",
}, func(c *strength.Calc, g torqueGivens) {
	c.Need(g.D > 1.3*g.P, "d > 1.3*P", "a core within the thread")
	Fp := g.Fp
	if g.Fp > 0 {
		c.Let("F_p", "F_table", "N", Fp)
	} else {
		c.Need(g.As > 0 || g.P > 0, "A_given/pow(d, 2) + P/d > 0", "a proof load, a stress area, or a pitch")
		Fp = c.Let("F_p", "A_s*S_p", "N", stressArea(c, g.D, g.P, g.Thread, g.As)*g.Sp)
		c.Need(g.Sp > 0, "S_p > 0*MPa", "a proof strength or a proof load")
	}
	F := c.Let("F", "k_F*F_p", "N", g.K0*Fp)
	c.Let("T", "K*d*F", "N*mm", g.K*g.D*F)
	c.Compare(F, Fp)
})

type torquePreloadGivens struct {
	T    float64 `sym:"T" unit:"N*mm" min:"0" max:"1e12" is:"torque"`
	D    float64 `sym:"d" unit:"mm" min:"0.5" max:"200" is:"nominal diameter"`
	K    float64 `sym:"K" unit:"" min:"0.05" max:"0.5" default:"0.2" is:"nut factor"`
	G    float64 `sym:"G" unit:"" min:"0" max:"0.9" default:"0.35" is:"uncertainty of the preload: 0.35 by torque wrench"`
	Plim float64 `sym:"P_lim" unit:"N" min:"0" max:"1e9" default:"1e8" is:"preload that the bolt bears, such as its proof load"`
}

// torquePreload is the preload that a torque brings, and the most that it may be.
var torquePreload = strength.Define(strength.Identity{
	ID: "torque-preload", Title: "preload of a torque", Clause: torqueClause(""),
	Demand: "P_max", Capacity: "P_lim", Unit: "N",
}, func(c *strength.Calc, g torquePreloadGivens) {
	P := c.Let("P", "T/(K*d)", "N", g.T/(g.K*g.D))
	c.Let("P_min", "(1 - G)*P", "N", (1-g.G)*P)
	c.Compare(c.Let("P_max", "(1 + G)*P", "N", (1+g.G)*P), g.Plim)
})

type scatterGivens struct {
	Fmax  float64 `sym:"F_Mmax" unit:"N" min:"0" max:"1e9" is:"greatest preload of the tightening"`
	Alpha float64 `sym:"alpha_A" unit:"" min:"1" max:"4" is:"tightening factor: greatest over least preload"`
	F     float64 `sym:"F_K" unit:"N" min:"0" max:"1e9" default:"0" is:"preload that the joint needs"`
}

// preloadScatter is the least preload of a tightening: VDI 2230, step R2.
var preloadScatter = strength.Define(strength.Identity{
	ID: "preload-scatter", Title: "least preload of a tightening",
	Clause: strength.Clause{Document: "VDI 2230", Edition: "2003", Section: "alpha_A = F_Mmax/F_Mmin", Words: "numbering from memory"},
	Demand: "F_K", Capacity: "F_Mmin", Unit: "N",
}, func(c *strength.Calc, g scatterGivens) {
	c.Compare(g.F, c.Let("F_Mmin", "F_Mmax/alpha_A", "N", g.Fmax/g.Alpha))
})

type separationGivens struct {
	Tmax  float64 `sym:"T_max" unit:"N*mm" min:"0" max:"1e12" is:"greatest torque of the tolerance"`
	Tmin  float64 `sym:"T_min" unit:"N*mm" min:"0" max:"1e12" default:"0" is:"least torque; 0 where it is the greatest"`
	D     float64 `sym:"d" unit:"mm" min:"0.5" max:"200" is:"nominal diameter"`
	K     float64 `sym:"K" unit:"" min:"0.05" max:"0.5" default:"0.2" is:"nut factor"`
	G     float64 `sym:"G" unit:"" min:"0" max:"0.9" default:"0.35" is:"uncertainty of the preload"`
	Loss  float64 `sym:"k_loss" unit:"" min:"0" max:"0.9" default:"0.05" is:"part of the least preload lost by relaxation: 0.05 metal joints (practice)"`
	Creep float64 `sym:"P_creep" unit:"N" min:"0" max:"1e9" default:"0" is:"loss by creep"`
	Gain  float64 `sym:"P_gain" unit:"N" min:"0" max:"1e9" default:"0" is:"thermal gain"`
	Cold  float64 `sym:"P_cold" unit:"N" min:"0" max:"1e9" default:"0" is:"thermal loss"`
	P     float64 `sym:"P_t" unit:"N" min:"0" max:"1e9" is:"load that pulls the joint apart, for one bolt"`
	Share float64 `sym:"k_s" unit:"" min:"0" max:"1" default:"1" is:"part of the load that unloads the clamped parts"`
	FS    float64 `sym:"FS" unit:"" min:"1" max:"5" default:"1" is:"factor on separation"`
}

// jointSeparation holds the least service preload against the load that opens the joint: the form of NASA-STD-5020, from memory.
var jointSeparation = strength.Define(strength.Identity{
	ID: "joint-separation", Title: "separation of a preloaded joint",
	Clause: strength.Clause{Document: "NASA-STD-5020", Edition: "2012", Section: "preload and separation", Words: "from memory"},
	Demand: "P_sep", Capacity: "P_pmin", Unit: "N",
}, func(c *strength.Calc, g separationGivens) {
	low := g.Tmin
	if low == 0 {
		low = g.Tmax
	}
	c.Need(low <= g.Tmax, "T_min <= T_max", "a least torque that is not above the greatest")
	high := c.Let("P_imax", "(1 + G)*T_max/(K*d)", "N", (1+g.G)*g.Tmax/(g.K*g.D))
	least := c.Let("P_imin", "(1 - G)*when(T_min > 0*N*mm, T_min, T_max)/(K*d)", "N", (1-g.G)*low/(g.K*g.D))
	c.Let("P_pmax", "P_imax + P_gain", "N", high+g.Gain)
	P := c.Let("P_pmin", "(1 - k_loss)*P_imin - P_creep - P_cold", "N", (1-g.Loss)*least-g.Creep-g.Cold)
	c.Compare(c.Let("P_sep", "FS*k_s*P_t", "N", g.FS*g.Share*g.P), P)
})
