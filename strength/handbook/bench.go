package handbook

import (
	"lugwright/strength"
)

// Bench evaluates limit states of one basis.
type Bench interface {
	Card() *strength.Card
	// Limits are the limit states, in the order of the basis.
	Limits() []strength.Info
	// Evaluate answers one question; the error is a part.FieldError or part.FieldErrors where a field of the question is at fault.
	Evaluate(q Question) (Answer, error)
}

// Question is one evaluation: the values in the order of the limit state's givens, one each or more for a list.
type Question struct {
	Limit     string
	Method    strength.Method
	FactorSet string
	Factors   map[string]float64 // over the set
	Values    [][]float64
}

// Answer is what an evaluation gave.
type Answer struct {
	Demand, Capacity, Utilisation float64
	Verdict                       strength.Verdict
	Lines                         []strength.Line
}

// BenchOf evaluates with a basis itself.
func BenchOf(b *strength.Basis) Bench { return basisBench{b} }

type basisBench struct{ b *strength.Basis }

func (w basisBench) Card() *strength.Card { return &w.b.Card }

func (w basisBench) Limits() []strength.Info {
	out := make([]strength.Info, len(w.b.Limits))
	for i, l := range w.b.Limits {
		out[i] = l.Info()
	}
	return out
}

func (w basisBench) Evaluate(q Question) (Answer, error) {
	factors, err := w.b.Card.FactorValues(q.FactorSet, q.Factors)
	if err != nil {
		return Answer{}, err
	}
	c := strength.Calc{Trace: true, Method: q.Method, Factors: factors}
	if err := w.b.Limit(q.Limit).FromNumbers(&c, q.Values); err != nil {
		return Answer{}, err
	}
	return Answer{c.Demand, c.Capacity, c.Utilisation(), c.Verdict, c.Lines}, nil
}
