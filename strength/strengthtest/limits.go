package strengthtest

// Limits: names, extremes, verdicts, and growth with the load.

import (
	"math"
	"slices"

	"lugwright/strength"
	"lugwright/strength/formula"
)

const (
	corners = 400 // random corners of the ranges for one limit state and method
	growths = 300
)

// Limits checks every limit state of a basis: its id is alone, its clause and givens are documented; givens at the ends of
// their ranges give a verdict and never a pass or a fail of numbers that are not finite; utilisation never falls as
// all loads grow, is never above 1 in a pass (but for the last bits), and exactly at capacity is a pass; with the trace off nothing is allocated.
func Limits(t T, b *strength.Basis) {
	t.Helper()
	cardSound(t, &b.Card)
	ids := map[string]bool{}
	for _, l := range b.Limits {
		info := l.Info()
		if ids[info.ID] {
			t.Errorf("%s: two limit states have this id", info.ID)
		}
		ids[info.ID] = true
		documented(t, info)
		for _, m := range b.Card.Methods {
			s := suite{T: t, limit: l, info: info, card: &b.Card, calc: strength.Calc{Method: m}, dice: newDice()}
			s.extremes()
			s.grows()
			s.atCapacity()
		}
	}
	silent(t, b)
}

// cardSound checks that each settable factor has words and a range that holds its default and the values of its sets.
func cardSound(t T, c *strength.Card) {
	t.Helper()
	for i, f := range c.Factors {
		if f.Words == "" || slices.ContainsFunc(c.Factors[:i], func(o strength.Factor) bool { return o.Symbol == f.Symbol }) {
			t.Errorf("factor %s wants words, and a symbol of its own", f.Symbol)
		}
		for _, v := range append([]strength.FactorSet{{Name: "default", Value: f.Default}}, f.Sets...) {
			if !(v.Value >= f.Min && v.Value <= f.Max) || v.Name == "" {
				t.Errorf("factor %s: %s is %g, outside %g to %g", f.Symbol, v.Name, v.Value, f.Min, f.Max)
			}
		}
	}
}

func documented(t T, info strength.Info) {
	t.Helper()
	for what, text := range map[string]string{
		"id": info.ID, "title": info.Title, "clause": info.Clause.String(), "demand": info.Demand, "capacity": info.Capacity,
	} {
		if text == "" {
			t.Errorf("%s: has no %s", info.ID, what)
		}
	}
	if c := info.Clause; c.Document != "" && (c.Edition == "" || c.Section == "") {
		t.Errorf("%s: the clause needs an edition and a section beside its document", info.ID)
	}
	var symbols []string
	for _, g := range info.Givens {
		if g.Words == "" || !(g.Min < g.Max) || slices.Contains(symbols, g.Symbol) {
			t.Errorf("%s: given %s wants words, a range, and a symbol of its own", info.ID, g.Symbol)
		}
		if g.Optional && !(g.Default >= g.Min && g.Default <= g.Max) {
			t.Errorf("%s: given %s: its default is out of its range", info.ID, g.Symbol)
		}
		if _, factor, err := formula.ParseUnit(g.Unit); err != nil || factor != 1 {
			t.Errorf("%s: given %s: unit %q is not one of N, mm, MPa, rad and their products", info.ID, g.Symbol, g.Unit)
		}
		symbols = append(symbols, g.Symbol)
	}
}

// A suite is the checks of one limit state under one method.
type suite struct {
	T
	limit strength.Evaluator
	info  strength.Info
	card  *strength.Card
	calc  strength.Calc
	dice  dice
	bad   bool // one message for each kind of fault is enough
}

func (s *suite) fault(format string, args ...any) {
	s.Helper()
	if !s.bad {
		s.Errorf("%s, %s: "+format, append([]any{s.info.ID, s.calc.Method}, args...)...)
	}
	s.bad = true
}

// at evaluates, and says whether the result can be used further.
func (s *suite) at(values [][]float64) bool {
	s.Helper()
	if err := s.limit.FromNumbers(&s.calc, values); err != nil {
		s.fault("%v", err)
		return false
	}
	c := &s.calc
	judged := c.Verdict == strength.Pass || c.Verdict == strength.Fail
	switch {
	case c.Verdict == "":
		s.fault("no verdict with givens %v", values)
	case !judged && c.Why == "":
		s.fault("%q without a reason with givens %v", c.Verdict, values)
	case judged && !(finite(c.Demand) && finite(c.Utilisation()) && c.Capacity > 0 && c.Demand >= 0):
		s.fault("%q of demand %v and capacity %v with givens %v", c.Verdict, c.Demand, c.Capacity, values)
	case c.Verdict == strength.Pass && c.Utilisation() > 1+closeness, c.Verdict == strength.Fail && c.Utilisation() <= 1:
		s.fault("%q at a utilisation of %v", c.Verdict, c.Utilisation())
	}
	return judged
}

// extremes takes all least, all greatest, one of each against the rest, and random corners; lists there are of one to four values.
func (s *suite) extremes() {
	s.Helper()
	s.bad = false
	n := len(s.info.Givens)
	for k := range 2*n + 2 + corners {
		values := make([][]float64, n)
		s.calc.Factors = s.dice.factors(s.card)
		length := 1 + s.dice.IntN(4)
		for i, g := range s.info.Givens {
			values[i] = s.corner(g, length, k < 2*n+2, (k%2 == 1) != (i == k/2))
		}
		s.at(values)
	}
}

// corner gives the least or the greatest value of a given, one of them at random where it is not told which.
func (s *suite) corner(g strength.Given, length int, told, greatest bool) []float64 {
	out := make([]float64, 1)
	if g.List && !told {
		out = make([]float64, length)
	}
	for i := range out {
		if !told {
			greatest = s.dice.IntN(2) == 0
		}
		out[i] = g.Min
		if greatest {
			out[i] = g.Max
		}
	}
	return out
}

// grows: with every force and moment grown alike, utilisation does not fall.
func (s *suite) grows() {
	s.Helper()
	s.bad = false
	if !slices.ContainsFunc(s.info.Givens, isLoad) {
		return
	}
	for range growths {
		values := s.dice.values(s.info.Givens)
		s.calc.Factors = s.dice.factors(s.card)
		if !s.at(values) {
			continue
		}
		before := s.calc.Utilisation()
		alike := true // none held back by its range
		for i, g := range s.info.Givens {
			for k := range values[i] {
				if isLoad(g) {
					values[i][k] *= 1.25
					alike = alike && values[i][k] >= g.Min && values[i][k] <= g.Max
				}
			}
		}
		if alike && s.at(values) && s.calc.Utilisation() < before*(1-1e-12) {
			s.fault("utilisation falls from %v to %v as all loads grow to givens %v", before, s.calc.Utilisation(), values)
		}
	}
}

// isLoad: what grows with the load on a bracket.
func isLoad(g strength.Given) bool { return g.Unit == "N" || g.Unit == "N*mm" || g.Unit == "N/mm" }

// atCapacity sets the given that is demand to the capacity, or the other way round: that is a pass.
func (s *suite) atCapacity() {
	s.Helper()
	s.bad = false
	demand, capacity := s.place(s.info.Demand), s.place(s.info.Capacity)
	if demand < 0 && capacity < 0 {
		return
	}
	for range growths {
		values := s.dice.values(s.info.Givens)
		s.calc.Factors = s.dice.factors(s.card)
		s.at(values)
		k, v := demand, s.calc.Capacity
		if demand < 0 {
			k, v = capacity, s.calc.Demand
		}
		if g := s.info.Givens[k]; !(v >= g.Min && v <= g.Max) {
			continue
		}
		values[k] = []float64{v}
		if s.at(values) && s.calc.Demand == s.calc.Capacity && s.calc.Verdict != strength.Pass {
			s.fault("exactly at capacity is %q", s.calc.Verdict)
		}
		if s.calc.Verdict == strength.Pass && demand >= 0 {
			above := min(math.Nextafter(v, math.Inf(1))*1.001, s.info.Givens[k].Max)
			values[k] = []float64{above}
			if s.at(values) && above > s.calc.Capacity && s.calc.Verdict != strength.Fail {
				s.fault("above capacity is %q", s.calc.Verdict)
			}
		}
	}
}

// place is where a given with one value stands, -1 if none has the symbol.
func (s *suite) place(symbol string) int {
	return slices.IndexFunc(s.info.Givens, func(g strength.Given) bool { return g.Symbol == symbol && !g.List })
}
