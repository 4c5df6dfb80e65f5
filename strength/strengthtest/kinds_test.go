package strengthtest

// A limit state with every kind of given: a list, a choice, one with a default, a settable factor, and a solver's value.

import (
	"testing"

	"lugwright/strength"
)

type groupGivens struct {
	V    float64   `sym:"V" unit:"N" min:"0" max:"1e9" is:"shear of the group"`
	X    []float64 `sym:"x" unit:"mm" min:"-2000" max:"2000" is:"positions of the bolts"`
	D    float64   `sym:"d" unit:"mm" min:"1" max:"100" is:"bolt diameter"`
	Hole float64   `sym:"hole" choices:"standard|oversize" is:"kind of hole"`
	K    float64   `sym:"k" unit:"" min:"0.5" max:"1" default:"1" is:"reduction"`
	Fub  float64   `sym:"f_ub" unit:"MPa" min:"100" max:"2000" is:"tensile strength"`
}

func groupCheck(c *strength.Calc, g groupGivens) {
	n := c.Solved("n", "number of bolts, counted", "", float64(len(g.X)))
	kh := c.Let("k_h", "when(hole <= 0, 1, 0.85)", "", map[bool]float64{true: 1, false: 0.85}[g.Hole <= 0])
	gamma := c.Factor("gamma_M2")
	R := c.Let("R", "k*k_h*n*f_ub*pow(d, 2)/gamma_M2", "N", g.K*kh*n*g.Fub*g.D*g.D/gamma)
	c.Compare(g.V, R)
}

func groupBasis(eval func(c *strength.Calc, g groupGivens)) *strength.Basis {
	return &strength.Basis{
		Card: strength.Card{
			Methods: []strength.Method{strength.PartialFactors},
			Factors: []strength.Factor{{Symbol: "gamma_M2", Words: "partial factor", Default: 1.25, Min: 1, Max: 1.5, Sets: []strength.FactorSet{{Name: "N", Value: 1.3}}}},
		},
		Limits: []strength.Evaluator{strength.Define(strength.Identity{
			ID: "group", Title: "group", Clause: strength.Clause{Words: "no rule at all"}, Demand: "V", Capacity: "R", Unit: "N",
		}, eval)},
	}
}

func TestEveryKindOfGiven(t *testing.T) {
	Formulas(t, groupBasis(groupCheck))
	Limits(t, groupBasis(groupCheck))
}

func TestKindsCatch(t *testing.T) {
	for name, slip := range map[string]struct {
		says string
		eval func(c *strength.Calc, g groupGivens)
	}{
		"a list in a formula": {"x: is not given", func(c *strength.Calc, g groupGivens) {
			c.Let("u", "x*2", "mm", g.X[0]*2)
			groupCheck(c, g)
		}},
		"a factor taken as its default": {"as printed", func(c *strength.Calc, g groupGivens) {
			c.Factor("gamma_M2")
			c.Compare(g.V, c.Let("R", "f_ub*pow(d, 2)/gamma_M2", "N", g.Fub*g.D*g.D/1.25))
		}},
		"a solved value without words": {"nor words", func(c *strength.Calc, g groupGivens) {
			c.Compare(g.V, c.Solved("R", "", "N", 1))
		}},
	} {
		t.Run(name, func(t *testing.T) {
			var heard listener
			Formulas(&heard, groupBasis(slip.eval))
			heard.mustSay(t, slip.says)
		})
	}
}
