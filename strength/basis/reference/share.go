package reference

// Plates that act beside each other: a lap plate or a doubler on a rail, and how much of the load each takes. Elementary elasticity.

import (
	"math"

	"lugwright/strength"
)

// loadShares is the card of shares, and of a tube that carries two loads as a beam.
var loadShares = bookCard("Load share", "strength of materials textbooks", "various", axialShare, bendingShare, lapBreak, tubeBeam)

func elasticClause(words string) strength.Clause {
	return strength.Clause{Document: "strength of materials textbooks", Edition: "various", Section: "elementary elasticity", Words: words}
}

type axialShareGivens struct {
	N     float64 `sym:"N_r" unit:"N" min:"0" max:"1e9" is:"force along both"`
	A1    float64 `sym:"A_1" unit:"mm^2" min:"0.1" max:"1e7" is:"area of the rail, or of the plate that is doubled"`
	E1    float64 `sym:"E_1" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"its modulus of elasticity"`
	A2    float64 `sym:"A_2" unit:"mm^2" min:"0.1" max:"1e7" is:"area of the doubler, all of its plates"`
	E2    float64 `sym:"E_2" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"its modulus of elasticity"`
	Lap   float64 `sym:"L_d" unit:"mm" min:"0.1" max:"1e5" is:"length of the doubler"`
	K     float64 `sym:"k" unit:"N/mm^2" min:"0.001" max:"1e6" is:"stiffness of the joint along the doubler: force for each mm of length and mm of slip; bolts k_b n/L_d"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"2500" is:"stress that the rail may bear"`
}

// axialShare is the share of a doubler in its middle: by stiffness of the two, as far as its length and its fastening bring the force
// across. From each end the force builds up as in the theory of lap joints (Volkersen 1938, from memory): 1 - 1/cosh(lambda L/2) of
// the full share.
var axialShare = strength.Define(strength.Identity{
	ID: "doubler-share", Title: "share of a doubler in an axial force",
	Clause: elasticClause("shares by stiffness; build-up by the theory of lap joints, from memory"),
	Demand: "sigma_1", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g axialShareGivens) {
	s1, s2 := g.E1*g.A1, g.E2*g.A2
	full := c.Let("s_full", "E_2*A_2/(E_1*A_1 + E_2*A_2)", "", s2/(s1+s2))
	x := math.Sqrt(g.K*(1/s1+1/s2)) * g.Lap / 2
	x = c.Let("x", "min(sqrt(k*(1/(E_1*A_1) + 1/(E_2*A_2)))*L_d/2, 300)", "", min(x, 300))
	s := c.Let("s", "s_full*(1 - 2/(exp(x) + exp(-x)))", "", full*(1-2/(math.Exp(x)+math.Exp(-x))))
	c.Let("N_2", "s*N_r", "N", s*g.N)
	N1 := c.Let("N_1", "N_r - s*N_r", "N", g.N-s*g.N)
	c.Compare(c.Let("sigma_1", "N_1/A_1", "MPa", N1/g.A1), g.Limit)
})

type bendingShareGivens struct {
	M     float64 `sym:"M" unit:"N*mm" min:"0" max:"1e12" is:"bending moment on both"`
	I1    float64 `sym:"I_1" unit:"mm^4" min:"1" max:"1e12" is:"second moment of the rail"`
	S1    float64 `sym:"S_1" unit:"mm^3" min:"1" max:"1e10" is:"elastic modulus of the rail"`
	I2    float64 `sym:"I_2" unit:"mm^4" min:"1" max:"1e12" is:"second moment of the doubler about its own axis"`
	S2    float64 `sym:"S_2" unit:"mm^3" min:"1" max:"1e10" is:"elastic modulus of the doubler about its own axis"`
	E1    float64 `sym:"E_1" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity of the rail"`
	E2    float64 `sym:"E_2" unit:"MPa" min:"1000" max:"300000" default:"200000" is:"modulus of elasticity of the doubler"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"2500" is:"stress that either may bear"`
}

// bendingShare is a rail and a doubler that bend alike with no shear across their joint: moments by E I. Joined so that they cannot slip
// they are stiffer, and the sum of second moments about the common axis stands for them.
var bendingShare = strength.Define(strength.Identity{
	ID: "doubler-bending-share", Title: "share of a doubler in bending, free to slip",
	Clause: elasticClause("equal curvature, moments by E I"),
	Demand: "sigma", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g bendingShareGivens) {
	EI := c.Let("EI", "E_1*I_1 + E_2*I_2", "N*mm^2", g.E1*g.I1+g.E2*g.I2)
	M1 := c.Let("M_1", "M*E_1*I_1/EI", "N*mm", g.M*g.E1*g.I1/EI)
	M2 := c.Let("M_2", "M*E_2*I_2/EI", "N*mm", g.M*g.E2*g.I2/EI)
	c.Compare(c.Let("sigma", "max(M_1/S_1, M_2/S_2)", "MPa", max(M1/g.S1, M2/g.S2)), g.Limit)
})

type lapBreakGivens struct {
	M     float64 `sym:"M" unit:"N*mm" min:"0" max:"1e12" is:"bending moment where the rail is cut through"`
	V     float64 `sym:"V" unit:"N" min:"0" max:"1e9" is:"shear force there"`
	N     float64 `sym:"n" unit:"" min:"1" max:"4" default:"1" is:"lap plates beside each other"`
	T     float64 `sym:"t" unit:"mm" min:"0.1" max:"200" is:"thickness of each"`
	H     float64 `sym:"h" unit:"mm" min:"1" max:"2000" is:"depth of each"`
	K     float64 `sym:"k_s" unit:"" min:"0.25" max:"1" default:"1" is:"part of the load in the worst plate: 1/n where all share alike, more where one lies outside the web and one inside"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"2500" is:"stress allowed"`
}

// lapBreak is the lap plates alone over a butt in the rail, as if nothing came across the butt itself: elastic bending and the peak of
// shear, von Mises of the two as if they met.
var lapBreak = strength.Define(strength.Identity{
	ID: "lap-plate", Title: "lap plates over a butt in a rail",
	Clause: elasticClause("plates alone; nothing is counted across the butt"),
	Demand: "sigma_v", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g lapBreakGivens) {
	c.Need(g.K*g.N >= 1-1e-9, "k_s*n >= 1 - 1e-9", "a worst plate that bears no less than its even share")
	sigma := c.Let("sigma", "6*k_s*M/(t*pow(h, 2))", "MPa", 6*g.K*g.M/(g.T*g.H*g.H))
	tau := c.Let("tau", "1.5*k_s*V/(t*h)", "MPa", 1.5*g.K*g.V/(g.T*g.H))
	c.Compare(c.Let("sigma_v", "sqrt(pow(sigma, 2) + 3*pow(tau, 2))", "MPa", math.Sqrt(sigma*sigma+3*tau*tau)), g.Limit)
})

type tubeBeamGivens struct {
	P1    float64 `sym:"P_1" unit:"N" min:"-1e9" max:"1e9" is:"first load, down positive"`
	X1    float64 `sym:"x_1" unit:"mm" min:"-1e4" max:"2e4" is:"its place from the left support; beyond a support it hangs over"`
	P2    float64 `sym:"P_2" unit:"N" min:"-1e9" max:"1e9" default:"0" is:"second load"`
	X2    float64 `sym:"x_2" unit:"mm" min:"-1e4" max:"2e4" default:"0" is:"its place"`
	L     float64 `sym:"L" unit:"mm" min:"1" max:"1e4" is:"distance between the supports"`
	S     float64 `sym:"S" unit:"mm^3" min:"1" max:"1e9" is:"elastic modulus of the tube"`
	Av    float64 `sym:"A_v" unit:"mm^2" min:"0.1" max:"1e7" is:"area that resists shear: two webs of a rectangular tube, half the area of a round one"`
	Limit float64 `sym:"sigma_lim" unit:"MPa" min:"1" max:"2500" is:"stress allowed"`
}

// tubeBeam is a cross tube on two supports under two loads, between them or beyond either: greatest moment at a load or a support, greatest
// shear anywhere, taken as if they met. M_max and V_max serve a code's own tube limit states too.
var tubeBeam = strength.Define(strength.Identity{
	ID: "cross-tube-beam", Title: "cross tube on two supports under two loads",
	Clause: elasticClause("simple beam with overhangs"),
	Demand: "sigma_v", Capacity: "sigma_lim", Unit: "MPa",
}, func(c *strength.Calc, g tubeBeamGivens) {
	RB := c.Let("R_B", "(P_1*x_1 + P_2*x_2)/L", "N", (g.P1*g.X1+g.P2*g.X2)/g.L)
	RA := c.Let("R_A", "P_1 + P_2 - R_B", "N", g.P1+g.P2-RB)
	MA := c.Let("M_A", "-P_1*max(-x_1, 0*mm) - P_2*max(-x_2, 0*mm)", "N*mm", -g.P1*max(-g.X1, 0)-g.P2*max(-g.X2, 0))
	MB := c.Let("M_B", "-P_1*max(x_1 - L, 0*mm) - P_2*max(x_2 - L, 0*mm)", "N*mm", -g.P1*max(g.X1-g.L, 0)-g.P2*max(g.X2-g.L, 0))
	at := func(x, p, y float64) float64 { return RA*max(x, 0) + RB*max(x-g.L, 0) - p*max(x-y, 0) }
	M1 := c.Let("M_1", "R_A*max(x_1, 0*mm) + R_B*max(x_1 - L, 0*mm) - P_2*max(x_1 - x_2, 0*mm)", "N*mm", at(g.X1, g.P2, g.X2))
	M2 := c.Let("M_2", "R_A*max(x_2, 0*mm) + R_B*max(x_2 - L, 0*mm) - P_1*max(x_2 - x_1, 0*mm)", "N*mm", at(g.X2, g.P1, g.X1))
	M := c.Let("M_max", "max(abs(M_A), abs(M_B), abs(M_1), abs(M_2))", "N*mm", max(math.Abs(MA), math.Abs(MB), math.Abs(M1), math.Abs(M2)))
	L := c.Let("P_L", "when(x_1 < 0*mm, P_1, 0*N) + when(x_2 < 0*mm, P_2, 0*N)", "N", beyond(g.P1, -g.X1)+beyond(g.P2, -g.X2))
	R := c.Let("P_R", "when(x_1 > L, P_1, 0*N) + when(x_2 > L, P_2, 0*N)", "N", beyond(g.P1, g.X1-g.L)+beyond(g.P2, g.X2-g.L))
	first, x := g.P2, g.X2
	if g.X1 <= g.X2 {
		first, x = g.P1, g.X1
	}
	first = c.Let("P_first", "when(x_1 <= x_2, P_1, P_2)", "N", first)
	x = c.Let("x_first", "when(x_1 <= x_2, x_1, x_2)", "mm", x)
	mid := RA - L
	if x > 0 && x < g.L {
		mid -= first
	}
	mid = c.Let("V_mid", "R_A - P_L - when(x_first > 0*mm, when(x_first < L, P_first, 0*N), 0*N)", "N", mid)
	V := c.Let("V_max", "max(abs(P_L), abs(P_R), abs(R_A - P_L), abs(R_B - P_R), abs(V_mid))", "N",
		max(math.Abs(L), math.Abs(R), math.Abs(RA-L), math.Abs(RB-R), math.Abs(mid)))
	sigma := c.Let("sigma", "M_max/S", "MPa", M/g.S)
	tau := c.Let("tau", "V_max/A_v", "MPa", V/g.Av)
	c.Compare(c.Let("sigma_v", "sqrt(pow(sigma, 2) + 3*pow(tau, 2))", "MPa", math.Sqrt(sigma*sigma+3*tau*tau)), g.Limit)
})

// beyond is a load that stands further out than a support.
func beyond(p, out float64) float64 {
	if out > 0 {
		return p
	}
	return 0
}
