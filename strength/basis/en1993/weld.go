package en1993

// Fillet welds: EN 1993-1-8, 4.2 to 4.11.

import (
	"math"

	"lugwright/strength"
)

var weldLimits = []strength.Evaluator{
	filletStrength, filletDirectional, filletTransverse, filletLines, filletFiller, filletSize, filletLength, filletFlow,
}

type filletGivens struct {
	Q    float64 `sym:"F_w_Ed" unit:"N/mm" min:"0" max:"1e6" is:"force per length at the worst point of the weld, resultant"`
	A    float64 `sym:"a" unit:"mm" min:"0.5" max:"100" is:"throat: leg over root two for equal legs"`
	Fu   float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part joined"`
	Beta float64 `sym:"beta_w" unit:"" min:"0.8" max:"1" is:"correlation factor, Table 4.1: 0.80 S235, 0.85 S275, 0.90 S355, 1.00 S420 and S460"`
}

// filletStrength is the simplified method, whichever way the force points. The weld has its full size to its ends, as one that runs round
// them has; otherwise 2 a of its length does not count (4.5.1).
var filletStrength = strength.Define(strength.Identity{
	ID: "fillet-strength", Title: "strength of the fillet weld",
	Clause: joint("4.5.3.3, Eq. 4.2 to 4.4", "simplified method; full size to its ends, 4.5.1(1)"),
	Demand: "F_w_Ed", Capacity: "F_w_Rd", Unit: "N/mm",
}, func(c *strength.Calc, g filletGivens) {
	c.Compare(g.Q, filletLine(c, g.A, g.Fu, g.Beta))
})

func filletLine(c *strength.Calc, a, fu, beta float64) float64 {
	g2 := c.Factor("gamma_M2")
	f := c.Let("f_vw_d", "f_u/(sqrt(3)*beta_w*gamma_M2)", "MPa", fu/(math.Sqrt(3)*beta*g2))
	return c.Let("F_w_Rd", "f_vw_d*a", "N/mm", f*a)
}

type directionalGivens struct {
	N    float64 `sym:"n_t" unit:"N/mm" min:"-1e6" max:"1e6" is:"force per length square to the throat"`
	V    float64 `sym:"v_t" unit:"N/mm" min:"-1e6" max:"1e6" is:"force per length in the throat, square to the weld's axis"`
	L    float64 `sym:"v_l" unit:"N/mm" min:"-1e6" max:"1e6" is:"force per length along the weld's axis"`
	A    float64 `sym:"a" unit:"mm" min:"0.5" max:"100" is:"throat: leg over root two for equal legs"`
	Fu   float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part joined"`
	Beta float64 `sym:"beta_w" unit:"" min:"0.8" max:"1" is:"correlation factor, Table 4.1: 0.80 S235, 0.85 S275, 0.90 S355, 1.00 S420 and S460"`
}

// filletDirectional is the directional method: stresses on the throat by their directions.
var filletDirectional = strength.Define(strength.Identity{
	ID: "fillet-directional", Title: "stresses on the throat of a fillet weld",
	Clause: joint("4.5.3.2, Eq. 4.1", "directional method"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g directionalGivens) {
	c.Compare(throat(c, g.N, g.V, g.L, g.A, g.Fu, g.Beta), 1)
})

// throat is how far forces per length, square to the throat, across it and along it, use its strength.
func throat(c *strength.Calc, n, v, l, a, fu, beta float64) float64 {
	g2 := c.Factor("gamma_M2")
	s := c.Let("sigma_p", "n_t/a", "MPa", n/a)
	tp := c.Let("tau_p", "v_t/a", "MPa", v/a)
	tl := c.Let("tau_l", "v_l/a", "MPa", l/a)
	sw := c.Let("sigma_w", "sqrt(pow(sigma_p, 2) + 3*(pow(tau_p, 2) + pow(tau_l, 2)))", "MPa", math.Sqrt(s*s+3*(tp*tp+tl*tl)))
	f1 := c.Let("f_1", "f_u/(beta_w*gamma_M2)", "MPa", fu/(beta*g2))
	f2 := c.Let("f_2", "0.9*f_u/gamma_M2", "MPa", 0.9*fu/g2)
	return c.Let("U", "max(sigma_w/f_1, abs(sigma_p)/f_2)", "", max(sw/f1, math.Abs(s)/f2))
}

type transverseGivens struct {
	Q     float64 `sym:"F_w_Ed" unit:"N/mm" min:"0" max:"1e6" is:"force per length of one weld, square to its axis"`
	A     float64 `sym:"a" unit:"mm" min:"0.5" max:"100" is:"throat: leg over root two for equal legs"`
	Fu    float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part joined"`
	Beta  float64 `sym:"beta_w" unit:"" min:"0.8" max:"1" is:"correlation factor, Table 4.1: 0.80 S235, 0.85 S275, 0.90 S355, 1.00 S420 and S460"`
	Theta float64 `sym:"theta" unit:"rad" min:"0" max:"1.570796327" default:"0.7853981633974483" is:"angle between the force and the throat"`
}

// filletTransverse is a symmetric pair of welds under a force square to their axes that does not bend them about their roots: the
// directional method solved for the force, as the published tables of weld resistances do.
var filletTransverse = strength.Define(strength.Identity{
	ID: "fillet-transverse", Title: "symmetric pair of fillet welds square to the force",
	Clause: joint("4.5.3.2, Eq. 4.1", "directional method solved for the force"),
	Demand: "F_w_Ed", Capacity: "F_w_T_Rd", Unit: "N/mm",
}, func(c *strength.Calc, g transverseGivens) {
	L := filletLine(c, g.A, g.Fu, g.Beta)
	K := c.Let("K", "sqrt(3/(1 + 2*pow(cos(theta), 2)))", "", math.Sqrt(3/(1+2*math.Pow(math.Cos(g.Theta), 2))))
	c.Compare(g.Q, c.Let("F_w_T_Rd", "K*F_w_Rd", "N/mm", K*L))
})

type filletLinesGivens struct {
	F    float64 `sym:"F_Ed" unit:"N" min:"0" max:"1e9" is:"force on all lines"`
	A    float64 `sym:"a" unit:"mm" min:"0.5" max:"100" is:"throat: leg over root two for equal legs"`
	L    float64 `sym:"L" unit:"mm" min:"0.1" max:"1e5" is:"length of each line"`
	N    float64 `sym:"n" unit:"" min:"1" max:"100" default:"1" step:"1" is:"lines alike"`
	Ends float64 `sym:"ends" choices:"craters|full size" default:"0" is:"whether the weld has its full size to its ends"`
	Lap  float64 `sym:"joint" choices:"other|lap" default:"0" is:"lap joints longer than 150 throats are reduced"`
	Fu   float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part joined"`
	Beta float64 `sym:"beta_w" unit:"" min:"0.8" max:"1" is:"correlation factor, Table 4.1: 0.80 S235, 0.85 S275, 0.90 S355, 1.00 S420 and S460"`
}

// filletLines is a force that runs evenly into like lines of weld, with their effective length and the reduction of long laps.
var filletLines = strength.Define(strength.Identity{
	ID: "fillet-lines", Title: "lines of fillet weld under an even force",
	Clause: joint("4.5.3.3, Eq. 4.2 to 4.4; 4.5.1; 4.11, Eq. 4.9", "simplified method; Eq. 4.9 from memory"),
	Demand: "F_Ed", Capacity: "F_Rd", Unit: "N",
}, func(c *strength.Calc, g filletLinesGivens) {
	q := filletLine(c, g.A, g.Fu, g.Beta)
	l := effectiveLength(c, g.Ends, g.L, g.A)
	shortest(c, l, g.A)
	k := 1.0
	if g.Lap > 0 {
		k = min(max(1.2-0.2*l/(150*g.A), 0), 1)
	}
	k = c.Let("beta_Lw", "when(joint > 0, min(max(1.2 - 0.2*l_eff/(150*a), 0), 1), 1)", "", k)
	c.Compare(g.F, c.Let("F_Rd", "n*beta_Lw*F_w_Rd*l_eff", "N", g.N*k*q*l))
})

func effectiveLength(c *strength.Calc, ends, length, a float64) float64 {
	l := length - 2*a
	if ends > 0 {
		l = length
	}
	return c.Let("l_eff", "when(ends > 0, L, L - 2*a)", "mm", l)
}

// shortest is the length below which a weld carries nothing.
func shortest(c *strength.Calc, l, a float64) {
	least := c.Let("l_min", "max(30*mm, 6*a)", "mm", max(30, 6*a))
	c.Need(l >= least, "l_eff >= l_min", "a weld long enough to carry load, 4.5.1(2)")
}

type fillerGivens struct {
	Fu  float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part joined"`
	Fue float64 `sym:"f_eu" unit:"MPa" min:"300" max:"1000" is:"tensile strength of the filler metal"`
}

// filletFiller wants a filler no weaker than the parent metal: the strengths of 4.5.3 are on the parent's.
var filletFiller = strength.Define(strength.Identity{
	ID: "fillet-filler", Title: "filler metal against the parent metal",
	Clause: joint("4.2(2)", "tensile strength alone"),
	Demand: "f_u", Capacity: "f_eu", Unit: "MPa",
	Detail: true,
}, func(c *strength.Calc, g fillerGivens) { c.Compare(g.Fu, g.Fue) })

type filletSizeGivens struct {
	A float64 `sym:"a" unit:"mm" min:"0.5" max:"100" is:"throat: leg over root two for equal legs"`
}

// filletSize is the least throat.
var filletSize = strength.Define(strength.Identity{
	ID: "fillet-minimum-leg", Title: "least throat of the fillet weld",
	Clause: joint("4.5.2(2)", ""),
	Demand: "a_min", Capacity: "a", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g filletSizeGivens) { c.Compare(c.Let("a_min", "3*mm", "mm", 3), g.A) })

type filletLengthGivens struct {
	A    float64 `sym:"a" unit:"mm" min:"0.5" max:"100" is:"throat: leg over root two for equal legs"`
	L    float64 `sym:"L" unit:"mm" min:"0.1" max:"1e5" is:"length of the run"`
	Ends float64 `sym:"ends" choices:"craters|full size" default:"0" is:"whether the weld has its full size to its ends"`
}

// filletLength is the least effective length of a run that is to carry load.
var filletLength = strength.Define(strength.Identity{
	ID: "fillet-minimum-length", Title: "least length of a fillet run",
	Clause: joint("4.5.1", ""),
	Demand: "l_min", Capacity: "l_eff", Unit: "mm",
	Detail: true,
}, func(c *strength.Calc, g filletLengthGivens) {
	l := effectiveLength(c, g.Ends, g.L, g.A)
	c.Need(l > 0, "l_eff > 0*mm", "a run longer than its craters")
	c.Compare(c.Let("l_min", "max(30*mm, 6*a)", "mm", max(30, 6*g.A)), l)
})

type flowGivens struct {
	Q    float64 `sym:"q_Ed" unit:"N/mm" min:"0" max:"1e6" is:"shear flow V S/I between web and flange"`
	N    float64 `sym:"n" unit:"" min:"1" max:"100" step:"1" is:"weld lines that carry it"`
	A    float64 `sym:"a" unit:"mm" min:"0.5" max:"100" is:"throat: leg over root two for equal legs"`
	T    float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thinner part"`
	Fu   float64 `sym:"f_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the weaker part joined"`
	Beta float64 `sym:"beta_w" unit:"" min:"0.8" max:"1" is:"correlation factor, Table 4.1: 0.80 S235, 0.85 S275, 0.90 S355, 1.00 S420 and S460"`
}

// filletFlow is shear flow between the plates of one section against its welds and the thinner plate in shear beside them.
var filletFlow = strength.Define(strength.Identity{
	ID: "fillet-shear-flow", Title: "shear flow in the weld between gusset and plate",
	Clause: joint("4.9(1) and 4.5.3.3, Eq. 4.2 to 4.4", "flow by elementary beam theory; the plate with f_u/(sqrt3 gamma_M2)"),
	Demand: "q_Ed", Capacity: "q_Rd", Unit: "N/mm",
}, func(c *strength.Calc, g flowGivens) {
	q := filletLine(c, g.A, g.Fu, g.Beta)
	g2 := c.Factor("gamma_M2")
	b := c.Let("q_b", "t*f_u/(sqrt(3)*gamma_M2)", "N/mm", g.T*g.Fu/(math.Sqrt(3)*g2))
	c.Compare(g.Q, c.Let("q_Rd", "min(n*F_w_Rd, q_b)", "N/mm", min(g.N*q, b)))
})

// correlation is beta_w of Table 4.1, found by the tensile strength, so that grades outside the table have one too: up to that of S235 as
// S235, and so on (product standards' strengths and those of EN 1993-1-1 alike).
func correlation(fu float64) float64 {
	switch {
	case fu <= 360:
		return 0.80
	case fu <= 430:
		return 0.85
	case fu <= 510:
		return 0.90
	}
	return 1
}

// weaker is the lower of two strengths; one that is not known is left out.
func weaker(f1, f2 float64) float64 {
	switch {
	case f1 == 0:
		return f2
	case f2 == 0:
		return f1
	}
	return min(f1, f2)
}

// throated guards the rules that speak of fillets, and of groove welds of partial penetration, which 4.7.2(1) takes as fillets of their throat (from memory).
func throated(c *strength.Calc, f *strength.WeldLine) {
	c.SkipUnless(f.Throated(), "the weld is neither a fillet nor of partial penetration")
}

var weldRules = []strength.Rule[strength.WeldLine]{
	{Of: filletStrength, Check: func(c *strength.Calc, f *strength.WeldLine) {
		fu := weaker(f.Fu, f.Fu2)
		filletStrength.Check(c, filletGivens{Q: f.Q, A: f.AsFillet() / math.Sqrt2, Fu: fu, Beta: correlation(fu)})
		throated(c, f)
	}},
}

// weldRun leaves runs out that are shorter than 4.5.1(2) wants. What counts has its full size to its ends.
func weldRun(leg, length float64) float64 {
	return strength.Flag(length >= max(30, 6*leg/math.Sqrt2))
}

var weldSizeRules = []strength.Rule[strength.WeldLine]{
	{Of: filletLength, Check: func(c *strength.Calc, f *strength.WeldLine) {
		// Shorter runs are left out of the strength of the welds that they stand with.
		filletLength.Check(c, filletLengthGivens{A: f.AsFillet() / math.Sqrt2, L: f.Longest, Ends: 1})
		if c.Verdict == strength.Fail && !f.Bare {
			c.Skip("too short to carry load: left out of the strength of the welds beside it")
		}
		throated(c, f)
	}},
	{Of: filletSize, Check: func(c *strength.Calc, f *strength.WeldLine) {
		filletSize.Check(c, filletSizeGivens{A: f.AsFillet() / math.Sqrt2})
		throated(c, f)
	}},
	{Of: filletFiller, Check: func(c *strength.Calc, f *strength.WeldLine) {
		filletFiller.Check(c, fillerGivens{Fu: weaker(f.Fu, f.Fu2), Fue: f.FEXX})
	}},
}

var flowRules = []strength.Rule[strength.WeldFlow]{
	{Of: filletFlow, Check: func(c *strength.Calc, f *strength.WeldFlow) {
		fu := weaker(f.Fu, f.Fu2)
		filletFlow.Check(c, flowGivens{Q: f.Q, N: f.Lines, A: f.Leg / math.Sqrt2, T: f.T, Fu: fu, Beta: correlation(fu)})
	}, Demand: func(_ *strength.Calc, f *strength.WeldFlow) (float64, strength.Sense) { return f.Q, strength.EitherWay }},
}
