package aisc360

// Fatigue: AISC 360-22 Appendix 3, stress ranges of live load against detail categories, and Miner's sum over a spectrum.

import (
	"math"

	"lugwright/strength"
)

// category is one detail category of Appendix 3: C_f (times 1e8, ksi^3 cycles; of F times 1e10, ksi^6 cycles) and the threshold in ksi.
type category struct{ cf, fth float64 }

var categories = [...]category{{250, 24}, {120, 16}, {61, 12}, {44, 10}, {22, 7}, {11, 4.5}, {3.9, 2.6}, {150, 8}, {3.9, 7}}

const categoryF = 7 // shear on weld throats and on plugs: exponent 1/6

type fatigueGivens struct {
	F    float64 `sym:"f_SR" unit:"MPa" min:"0" max:"2000" is:"stress range of live load"`
	N    float64 `sym:"n_SR" unit:"" min:"1" max:"1e10" is:"cycles"`
	Cat  float64 `sym:"category" choices:"A|B|B'|C|D|E|E'|F|threads" is:"detail category of Table A-3.1"`
	Form float64 `sym:"form" choices:"360-16 and later|360-10 and before" default:"0" is:"edition whose form of the curve is taken: 1000 (C_f/n)^0.333, or without the 1000, which its rounded exponent makes 0.7 % less"`
}

// fatigueRange is one stress range against its design value: AISC 360-22 Appendix 3, A-3.3, Eq. A-3-1 and A-3-2. C_f is written as in 360-10, in 1e8 (F in 1e10);
// 360-16 and later have a tenth of it, and no C_f for F.
// Threads, category G, are checked on the tensile stress area. Not needed under 20,000 cycles.
var fatigueRange = strength.Define(strength.Identity{
	ID: "fatigue-range", Title: "one stress range in fatigue", Fatigue: true,
	Clause: clause("Appendix 3, Eq. A-3-1 and A-3-2; Table A-3.1", "C_f as 360-10 writes it"),
	Demand: "f_SR", Capacity: "F_SR", Unit: "MPa",
}, func(c *strength.Calc, g fatigueGivens) {
	k := categories[int(g.Cat)]
	c.Let("C_f", "when(category < 0.5, 250, when(category < 1.5, 120, when(category < 2.5, 61, when(category < 3.5, 44, when(category < 4.5, 22, when(category < 5.5, 11, when(category < 6.5, 3.9, when(category < 7.5, 150, 3.9))))))))", "", k.cf)
	c.Let("F_TH", "when(category < 0.5, 24, when(category < 1.5, 16, when(category < 2.5, 12, when(category < 3.5, 10, when(category < 4.5, 7, when(category < 5.5, 4.5, when(category < 6.5, 2.6, when(category < 7.5, 8, 7))))))))*ksi", "MPa", k.fth*ksi)
	Fsr := c.Let("F_SR", "max(F_c, F_TH)", "MPa", max(fatigueCurve(c, g, k.cf), k.fth*ksi))
	c.Compare(g.F, Fsr)
})

func fatigueCurve(c *strength.Calc, g fatigueGivens, cf float64) float64 {
	isF := int(g.Cat) == categoryF
	switch {
	case isF && g.Form == 0:
		return c.Let("F_c", "100*pow(C_f/100/n_SR, 0.167)*ksi", "MPa", 100*math.Pow(cf/100/g.N, 0.167)*ksi)
	case isF:
		return c.Let("F_c", "pow(C_f*10000000000/n_SR, 0.167)*ksi", "MPa", math.Pow(cf*1e10/g.N, 0.167)*ksi)
	case g.Form == 0:
		return c.Let("F_c", "1000*pow(C_f/10/n_SR, 0.333)*ksi", "MPa", 1000*math.Pow(cf/10/g.N, 0.333)*ksi)
	}
	return c.Let("F_c", "pow(C_f*100000000/n_SR, 0.333)*ksi", "MPa", math.Pow(cf*1e8/g.N, 0.333)*ksi)
}

type damageGivens struct {
	F   []float64 `sym:"f_SR" unit:"MPa" min:"0" max:"2000" is:"stress ranges of live load"`
	N   []float64 `sym:"n_SR" unit:"" min:"0" max:"1e10" is:"cycles of each range"`
	Cat float64   `sym:"category" choices:"A|B|B'|C|D|E|E'|F|threads" is:"detail category of Table A-3.1"`
}

// fatigueDamage is Miner's sum over a spectrum. Once one range exceeds the threshold none is cut off: the curve is carried
// down for all. AISC 360-22 Appendix 3 for the curve; the sum is Miner's rule, common practice.
var fatigueDamage = strength.Define(strength.Identity{
	ID: "fatigue-damage", Title: "fatigue damage of a spectrum", Fatigue: true,
	Clause: clause("Appendix 3, Eq. A-3-1", "summed by Miner's rule"),
	Demand: "D", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g damageGivens) {
	if !eachHasCycles(c, g.F, g.N) {
		return
	}
	k := categories[int(g.Cat)]
	power, over := 3.0, false
	if int(g.Cat) == categoryF {
		power = 1 / 0.167
	}
	for _, f := range g.F {
		over = over || f > k.fth*ksi
	}
	D := 0.0
	for i, f := range g.F {
		if over {
			D += g.N[i] / life(f/ksi, k.cf, power)
		}
	}
	c.Compare(c.Solved("D", "sum of n_SR/N over the ranges, N = C_f 1e8/f_SR^3 (for F 1.5 (100/f_SR)^(1/0.167)), without a cut-off once one range exceeds F_TH", "", D), 1)
})

type rootGivens struct {
	F  []float64 `sym:"f_SR" unit:"MPa" min:"0" max:"2000" is:"stress ranges of live load in the plate"`
	N  []float64 `sym:"n_SR" unit:"" min:"0" max:"1e10" is:"cycles of each range"`
	W  float64   `sym:"w" unit:"mm" min:"1" max:"200" is:"leg of the fillets"`
	Tp float64   `sym:"t_p" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate"`
}

// fatigueRoot is Miner's sum for a plate in tension held by a pair of transverse fillets, for a crack from their roots: category C” of AISC 360-22
// Appendix 3, A-3.3(c), whose R_FIL (t_p in inches) is from memory. It has no threshold.
var fatigueRoot = strength.Define(strength.Identity{
	ID: "fatigue-root", Title: "fatigue damage at the roots of a pair of fillets", Fatigue: true,
	Clause: clause("Appendix 3, A-3.3(c)", "R_FIL from memory, summed by Miner's rule"),
	Demand: "D", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g rootGivens) {
	if !eachHasCycles(c, g.F, g.N) {
		return
	}
	R := filletRoot(c, g.W, g.Tp)
	D := 0.0
	for i, f := range g.F {
		D += g.N[i] / life(f/ksi/R, categories[categoryC].cf, 3)
	}
	c.Compare(c.Solved("D", "sum of n_SR/N over the ranges, N = 44e8 (R_FIL/f_SR)^3", "", D), 1)
})

type rootRangeGivens struct {
	F     float64 `sym:"f_SR" unit:"MPa" min:"0" max:"2000" is:"stress range of live load in the plate"`
	N     float64 `sym:"n_SR" unit:"" min:"1" max:"1e10" is:"cycles"`
	Joint float64 `sym:"joint" choices:"pair of fillets|partial penetration" is:"what holds the plate in tension across its end: fillets on both faces (category C”), or groove welds with a root face left between them (C')"`
	W     float64 `sym:"w" unit:"mm" min:"0" max:"200" default:"0" is:"leg of the fillets, or of those that reinforce the groove welds"`
	A     float64 `sym:"a_2" unit:"mm" min:"0" max:"500" default:"0" is:"root face that is not welded, 2a, in the direction of the plate's thickness"`
	Tp    float64 `sym:"t_p" unit:"mm" min:"0.1" max:"500" is:"thickness of the plate"`
}

// fatigueRootRange is one stress range against the design value for a crack from the root: categories C' and C” of AISC 360-22 Appendix 3, A-3.3(c); R_FIL from memory.
// Where the factor is 1 the toe governs, category C.
var fatigueRootRange = strength.Define(strength.Identity{
	ID: "fatigue-root-range", Title: "one stress range in fatigue, crack from a weld's root", Fatigue: true,
	Clause: clause("Appendix 3, A-3.3(c)", "R_FIL from memory"),
	Demand: "f_SR", Capacity: "F_SR", Unit: "MPa",
}, func(c *strength.Calc, g rootRangeGivens) {
	var R float64
	formula := "1000*R_FIL*pow(4.4/n_SR, 0.333)*ksi"
	if g.Joint > 0 {
		formula = "1000*R_PJP*pow(4.4/n_SR, 0.333)*ksi"
		c.Need(g.A <= g.Tp, "a_2 <= t_p", "a root face within the plate")
		R = c.Let("R_PJP", "min((0.65 - 0.59*a_2/t_p + 0.72*w/t_p)/pow(t_p/in, 0.167), 1)", "", min((0.65-0.59*g.A/g.Tp+0.72*g.W/g.Tp)/math.Pow(g.Tp/inch, 0.167), 1))
	} else {
		c.Need(g.W > 0, "w > 0*mm", "a leg of the fillets")
		R = filletRoot(c, g.W, g.Tp)
	}
	c.Compare(g.F, c.Let("F_SR", formula, "MPa", 1000*R*math.Pow(4.4/g.N, 0.333)*ksi))
})

// filletRoot is the factor of a pair of fillets.
func filletRoot(c *strength.Calc, w, tp float64) float64 {
	return c.Let("R_FIL", "min((0.06 + 0.72*w/t_p)/pow(t_p/in, 0.167), 1)", "", min((0.06+0.72*w/tp)/math.Pow(tp/inch, 0.167), 1))
}

// eachHasCycles says whether there are as many cycles as ranges; else the verdict is outside the rule.
func eachHasCycles(c *strength.Calc, ranges, cycles []float64) bool {
	odd := c.Solved("n_odd", "ranges without cycles, or cycles without a range", "", math.Abs(float64(len(ranges)-len(cycles))))
	if c.Need(odd == 0, "n_odd == 0", "a number of cycles for each range") {
		return true
	}
	c.Compare(math.Inf(1), 0)
	return false
}

// life is the number of cycles of a stress range in ksi on the curve without its threshold.
func life(f, cf, power float64) float64 {
	if power > 3 {
		return cf / 100 * math.Pow(100/f, power)
	}
	return cf * 1e8 / math.Pow(f, power)
}

// Places in the list of categories.
const (
	categoryA       = 0 // base metal with cut edges of a roughness to 25 um, without inward corners (row 1.1, from memory)
	categoryB       = 1 // plates tied by a weld along the stress (section 3, from memory)
	categoryC       = 3 // plate at the toe of a transverse fillet, to 1/2 in thick, and of a groove weld through it from both faces (row 5.4, from memory)
	categoryD       = 4 // plate at an open hole; holes filled by tight bolts do better (from memory)
	categoryE       = 5 // net section of an eyebar head or pin plate; end of a welded attachment, whatever its length; beside a plug; at backing left in place (from memory); plate held by fillets along it, to 1/2 in (row 4.1, from memory)
	categoryE1      = 6 // E', end of a welded attachment over 20 mm thick (rows 3.5 and 7.1); plate over 1/2 in held by fillets along it (row 4.1, from memory); inward corner of at least 10 mm radius, not ground (row 1.3, from memory)
	categoryThreads = 8
)

func categoryOf(d strength.FatigueDetail) float64 {
	switch d {
	case strength.WeldThroat:
		return categoryF
	case strength.NetSection:
		return categoryD
	case strength.PinHole, strength.WebEnd, strength.PlugHole, strength.OneSided, strength.WeldsEnd:
		return categoryE
	case strength.CutEdge:
		return categoryA
	case strength.ThickEnd, strength.InwardCorner, strength.ThickWeldsEnd:
		return categoryE1
	case strength.LongWeld:
		return categoryB
	case strength.BoltThread:
		return categoryThreads
	}
	return categoryC
}

var fatigueRules = []strength.Rule[strength.Fatigue]{
	{Of: fatigueDamage, Check: func(c *strength.Calc, f *strength.Fatigue) {
		fatigueDamage.Check(c, damageGivens{F: f.Ranges, N: f.Cycles, Cat: categoryOf(f.Detail)})
	}},
}

var rootFatigueRules = []strength.Rule[strength.Fatigue]{
	{Of: fatigueRoot, Check: func(c *strength.Calc, f *strength.Fatigue) {
		fatigueRoot.Check(c, rootGivens{F: f.Ranges, N: f.Cycles, W: f.Leg, Tp: f.T})
	}},
}
