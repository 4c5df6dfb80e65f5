package reference

// What the cards of textbook methods share.

import (
	"math"

	"lugwright/strength"
)

// bookCard is a card for fixed strengths or allowable stresses under service loads as they are.
func bookCard(name, document, edition string, limits ...strength.Evaluator) *strength.Basis {
	return &strength.Basis{
		Card: strength.Card{
			Name: name, Document: document, Edition: edition,
			Methods: []strength.Method{strength.Allowable}, ServiceFactor: map[strength.Method]float64{strength.Allowable: 1},
			FactorSource: "service loads as they are", ReferenceOnly: true,
		},
		Limits: limits,
	}
}

// roundFor is the diameter of a round that carries a force at a mean stress.
func roundFor(force, stress float64) float64 { return math.Sqrt(4 * force / (math.Pi * stress)) }
