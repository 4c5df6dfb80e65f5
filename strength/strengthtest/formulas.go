package strengthtest

// Formulas: print and code of a limit state cannot drift apart.

import (
	"lugwright/strength"
)

// A limit state is drawn at least fewest times, and up to most times while an argument or a condition has not been reached.
const (
	fewest = 300
	most   = 8000
)

// Formulas evaluates every quoted formula of every limit state and method over random givens, from the lines above it, and
// compares value (1e-12) and dimension with what Go computed; conditions must agree in truth. Every argument of min, max
// and when must govern at least once, every condition hold and fail, and every formula written in the Go files of the
// working directory be reached. What cannot be is listed in never, as the message names it; a listed one that is reached is an error.
func Formulas(t T, b *strength.Basis, never ...string) {
	t.Helper()
	r := newReach(never)
	for _, l := range b.Limits {
		for _, m := range b.Card.Methods {
			formulasOf(t, l, m, &b.Card, r)
		}
	}
	r.report(t)
	r.written(t, ".")
}

func formulasOf(t T, l strength.Evaluator, m strength.Method, card *strength.Card, r *reach) {
	t.Helper()
	info := l.Info()
	c := strength.Calc{Trace: true, Method: m}
	p := replay{id: info.ID, reach: r, said: map[string]bool{}}
	d := newDice()
	for i := range most {
		if i >= fewest && r.whole(info.ID) {
			return
		}
		c.Factors = d.factors(card)
		if err := l.FromNumbers(&c, d.values(info.Givens)); err != nil {
			t.Errorf("%s, %s: %v", info.ID, m, err)
			return
		}
		for _, slip := range p.run(&c, info.Identity) {
			t.Errorf("%s, %s: %s", info.ID, m, slip)
		}
	}
}
