package practice

import (
	"math"
	"testing"

	"lugwright/strength"
	"lugwright/strength/strengthtest"
)

// card lets the suite run over limits that belong to no basis of their own.
func card() *strength.Basis {
	return &strength.Basis{Card: strength.Card{Name: "practice", Methods: []strength.Method{strength.ASD}}, Limits: append([]strength.Evaluator{ring, clamped, twisted, patterned}, Limits...)}
}

// TestFormulas: lists are drawn alike, so that counts always agree.
func TestFormulas(t *testing.T) { strengthtest.Formulas(t, card(), "patterned: n_odd == 0: fails") }

func TestLimits(t *testing.T) { strengthtest.Limits(t, card()) }

// A bush of 25 x 20 mm under 29.73 kN has 59 MPa, and 19.8 MPa under a third of it: arithmetic of our own demo.
func TestBush(t *testing.T) {
	c := &strength.Calc{Method: strength.ASD}
	BushPressure.Check(c, bushGivens{P: 29730, D: 25, L: 20, A: 90})
	if math.Round(c.Demand) != 59 || c.Verdict != strength.Pass {
		t.Errorf("peak %.1f MPa, %s", c.Demand, c.Verdict)
	}
	BushWear.Check(c, wearGivens{P: 9910, D: 25, L: 20, A: 25})
	if math.Abs(c.Demand-19.8) > 0.05 || c.Verdict != strength.Pass {
		t.Errorf("at 1 g %.1f MPa, %s", c.Demand, c.Verdict)
	}
}
