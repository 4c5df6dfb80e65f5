package aisc360

// Fatigue: AISC 360-22 Appendix 3, stress ranges of live load against detail categories, and Miner's sum over a spectrum.

import (
	"math"

	"lugwright/strength"
)

// category is one detail category of Appendix 3: C_f (times 1e8, ksi^3 cycles) and the threshold in ksi. E, E' and B' are from memory, and
// so is F: 150e10 in 360-10, which is the 100(1.5/n)^0.167 ksi of 360-16.
type category struct{ cf, fth float64 }

var categories = [...]category{{250, 24}, {120, 16}, {61, 12}, {44, 10}, {22, 7}, {11, 4.5}, {3.9, 2.6}, {15000, 8}, {3.9, 7}}

const categoryF = 7 // shear on weld throats: exponent 1/6

type fatigueGivens struct {
	F   float64 `sym:"f_SR" unit:"MPa" min:"0" max:"2000" is:"stress range of live load"`
	N   float64 `sym:"n_SR" unit:"" min:"1" max:"1e10" is:"cycles"`
	Cat float64 `sym:"category" choices:"A|B|B'|C|D|E|E'|F|threads" is:"detail category of Table A-3.1"`
}

// fatigueRange is one stress range against its design value: AISC 360-22 Appendix 3, A-3.3, Eq. A-3-1 and A-3-2, written with the older
// constants C_f of 360-10 (the same curve). Threads are checked on the tensile stress area (A-3.4, from memory). Not needed
// under 20,000 cycles.
var fatigueRange = strength.Define(strength.Identity{
	ID: "fatigue-range", Title: "one stress range in fatigue", Fatigue: true,
	Clause: clause("Appendix 3, Eq. A-3-1 and A-3-2; Table A-3.1", "categories B', E, E', F and threads from memory"),
	Demand: "f_SR", Capacity: "F_SR", Unit: "MPa",
}, func(c *strength.Calc, g fatigueGivens) {
	k := categories[int(g.Cat)]
	c.Let("C_f", "when(category < 0.5, 250, when(category < 1.5, 120, when(category < 2.5, 61, when(category < 3.5, 44, when(category < 4.5, 22, when(category < 5.5, 11, when(category < 6.5, 3.9, when(category < 7.5, 15000, 3.9))))))))", "", k.cf)
	c.Let("F_TH", "when(category < 0.5, 24, when(category < 1.5, 16, when(category < 2.5, 12, when(category < 3.5, 10, when(category < 4.5, 7, when(category < 5.5, 4.5, when(category < 6.5, 2.6, when(category < 7.5, 8, 7))))))))*ksi", "MPa", k.fth*ksi)
	power := 1.0 / 3
	if int(g.Cat) == categoryF {
		power = 0.167
	}
	Fsr := c.Let("F_SR", "max(pow(C_f*100000000/n_SR, when(category > 6.5, when(category < 7.5, 0.167, 1/3), 1/3))*ksi, F_TH)", "MPa",
		max(math.Pow(k.cf*1e8/g.N, power)*ksi, k.fth*ksi))
	c.Compare(g.F, Fsr)
})

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
	c.Solved("k_f", "stress ranges given", "", float64(len(g.F)))
	c.Solved("k_n", "numbers of cycles given", "", float64(len(g.N)))
	if !c.Need(len(g.F) == len(g.N), "k_f == k_n", "as many cycles as ranges") {
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
			D += g.N[i] * math.Pow(f/ksi, power) / (k.cf * 1e8)
		}
	}
	c.Compare(c.Solved("D", "sum of n_SR/N over the ranges, N = C_f 1e8/f_SR^3 (f^6 for F), without a cut-off once one range exceeds F_TH", "", D), 1)
})

// Places in the list of categories.
const (
	categoryC       = 3 // plate at the toe of a transverse fillet, to 1/2 in thick
	categoryD       = 4 // plate at an open hole; holes filled by tight bolts do better (from memory)
	categoryE       = 5 // net section of an eyebar head or pin plate (from memory)
	categoryThreads = 8
)

func categoryOf(d strength.FatigueDetail) float64 {
	switch d {
	case strength.WeldThroat:
		return categoryF
	case strength.NetSection:
		return categoryD
	case strength.PinHole:
		return categoryE
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
