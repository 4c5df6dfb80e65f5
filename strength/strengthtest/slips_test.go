package strengthtest

// The suites must catch the slips that an author makes: each fake limit state has one, on purpose.

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"lugwright/strength"
)

// listener hears what a suite says of a basis with a slip in it.
type listener struct{ errors []string }

func (l *listener) Helper()             {}
func (l *listener) Logf(string, ...any) {}
func (l *listener) Errorf(format string, args ...any) {
	l.errors = append(l.errors, fmt.Sprintf(format, args...))
}

type plateGivens struct {
	P  float64 `sym:"P_r" unit:"N" min:"0" max:"1e9" is:"tension"`
	T  float64 `sym:"t" unit:"mm" min:"0.1" max:"500" is:"thickness"`
	B  float64 `sym:"b" unit:"mm" min:"0.1" max:"2000" is:"width"`
	Fy float64 `sym:"F_y" unit:"MPa" min:"50" max:"2500" is:"yield strength"`
}

func fake(eval func(c *strength.Calc, g plateGivens)) *strength.Basis {
	return fakeOf(strength.Identity{
		ID: "fake", Title: "fake", Clause: strength.Clause{Words: "no rule at all"}, Demand: "P_r", Capacity: "P_c", Unit: "N",
	}, eval)
}

func fakeOf(id strength.Identity, eval func(c *strength.Calc, g plateGivens)) *strength.Basis {
	return &strength.Basis{
		Card:   strength.Card{Methods: []strength.Method{strength.ASD, strength.LRFD}},
		Limits: []strength.Evaluator{strength.Define(id, eval)},
	}
}

// sound is the fake without a slip.
func sound(c *strength.Calc, g plateGivens) {
	c.Need(g.B >= g.T, "b >= t", "a plate, not a bar")
	be := c.Let("b_e", "min(2*t + 16*mm, b)", "mm", min(2*g.T+16, g.B))
	Pn := c.Let("P_n", "F_y*t*b_e", "N", g.Fy*g.T*be)
	c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67))
}

func TestSoundPasses(t *testing.T) {
	Formulas(t, fake(sound))
	Limits(t, fake(sound))
}

func TestFormulasCatches(t *testing.T) {
	id := strength.Identity{ID: "fake", Title: "fake", Clause: strength.Clause{Words: "none"}, Demand: "P_r", Capacity: "P_c", Unit: "N"}
	compare := func(c *strength.Calc, g plateGivens, Pn float64) {
		c.Compare(g.P, c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67))
	}
	for _, slip := range []struct {
		name, says string
		basis      *strength.Basis
		never      []string
	}{
		{name: "a factor only in print", says: "as printed", basis: fake(func(c *strength.Calc, g plateGivens) {
			compare(c, g, c.Let("P_n", "0.60*F_y*t*b", "N", g.Fy*g.T*g.B))
		})},
		{name: "a factor only in code", says: "as computed", basis: fake(func(c *strength.Calc, g plateGivens) {
			compare(c, g, c.Let("P_n", "F_y*t*b", "N", 0.60*g.Fy*g.T*g.B))
		})},
		{name: "a condition only in code", says: "as printed", basis: fake(func(c *strength.Calc, g plateGivens) {
			b := g.B
			if b > 32*g.T {
				b = 32 * g.T
			}
			compare(c, g, c.Let("P_n", "F_y*t*b", "N", g.Fy*g.T*b))
		})},
		{name: "mm added to a pure number in both", says: "adds a pure number to mm", basis: fake(func(c *strength.Calc, g plateGivens) {
			be := c.Let("b_e", "2*t + 16", "mm", 2*g.T+16)
			compare(c, g, c.Let("P_n", "F_y*t*b_e", "N", g.Fy*g.T*be))
		})},
		{name: "a symbol that is not given", says: "w: is not given", basis: fake(func(c *strength.Calc, g plateGivens) {
			compare(c, g, c.Let("P_n", "F_y*t*w", "N", g.Fy*g.T*g.B))
		})},
		{name: "a symbol used before its line", says: "P_n: is not given", basis: fake(func(c *strength.Calc, g plateGivens) {
			Pc := c.Let("P_c", "P_n", "N", g.Fy*g.T*g.B)
			c.Let("P_n", "F_y*t*b", "N", g.Fy*g.T*g.B)
			c.Compare(g.P, Pc)
		})},
		{name: "a line in the wrong unit", says: "is given in", basis: fake(func(c *strength.Calc, g plateGivens) {
			compare(c, g, c.Let("P_n", "F_y*t*b", "MPa", g.Fy*g.T*g.B))
		})},
		{name: "a line in a unit of another system", says: "kip", basis: fake(func(c *strength.Calc, g plateGivens) {
			compare(c, g, c.Let("P_n", "F_y*t*b", "kip", g.Fy*g.T*g.B))
		})},
		{name: "a line that takes a given's name", says: "given and computed too", basis: fake(func(c *strength.Calc, g plateGivens) {
			c.Let("b", "b/2", "mm", g.B/2)
			compare(c, g, c.Let("P_n", "F_y*t*b", "N", g.Fy*g.T*g.B/2))
		})},
		{name: "a line with a unit's name", says: "not a symbol", basis: fake(func(c *strength.Calc, g plateGivens) {
			compare(c, g, c.Let("N", "F_y*t*b", "N", g.Fy*g.T*g.B))
		})},
		{name: "a need that differs in code", says: `need "b >= t"`, basis: fake(func(c *strength.Calc, g plateGivens) {
			c.Need(g.B >= 2*g.T, "b >= t", "a plate, not a bar")
			compare(c, g, c.Let("P_n", "F_y*t*b", "N", g.Fy*g.T*g.B))
		})},
		{name: "another demand compared than said", says: "demand P_r", basis: fake(func(c *strength.Calc, g plateGivens) {
			Pn := c.Let("P_n", "F_y*t*b", "N", g.Fy*g.T*g.B)
			c.Compare(2*g.P, c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67))
		})},
		{name: "another capacity compared than said", says: "capacity P_c", basis: fake(func(c *strength.Calc, g plateGivens) {
			Pn := c.Let("P_n", "F_y*t*b", "N", g.Fy*g.T*g.B)
			c.Available("P_c", "P_n", "N", Pn, 0.90, 1.67)
			c.Compare(g.P, Pn)
		})},
		{name: "a demand that is no symbol", says: `demand "1.5 P_r"`, basis: fakeOf(strength.Identity{ID: id.ID, Title: id.Title, Clause: id.Clause, Demand: "1.5 P_r", Capacity: id.Capacity, Unit: id.Unit}, sound)},
		{name: "a line that is not finite", says: "is not finite", basis: fake(func(c *strength.Calc, g plateGivens) {
			compare(c, g, c.Let("P_n", "F_y*sqrt(-t)*b", "N", g.Fy*math.Sqrt(-g.T)*g.B))
		})},
		{name: "an argument that never governs", says: "never reached", basis: fake(func(c *strength.Calc, g plateGivens) {
			compare(c, g, c.Let("P_n", "F_y*t*min(b, 2*b)", "N", g.Fy*g.T*min(g.B, 2*g.B)))
		})},
		{name: "an argument listed as never governing, that does", says: "is reached", basis: fake(sound), never: []string{"fake: min(2*t + 16*mm, b): b"}},
		{name: "a listed argument that is no more", says: "does not exist", basis: fake(sound), never: []string{"fake: min(2*t, b): b"}},
	} {
		t.Run(slip.name, func(t *testing.T) {
			var heard listener
			Formulas(&heard, slip.basis, slip.never...)
			heard.mustSay(t, slip.says)
		})
	}
}

func TestLimitsCatches(t *testing.T) {
	for _, slip := range []struct {
		name, says string
		basis      *strength.Basis
	}{
		{"the same id twice", "two limit states", &strength.Basis{Limits: append(fake(sound).Limits, fake(sound).Limits...)}},
		{"no clause", "has no clause", fakeOf(strength.Identity{ID: "fake", Title: "fake", Demand: "P_r", Capacity: "P_c", Unit: "N"}, sound)},
		{"no edition", "edition", fakeOf(strength.Identity{ID: "fake", Title: "fake", Clause: strength.Clause{Document: "D"}, Demand: "P_r", Capacity: "P_c", Unit: "N"}, sound)},
		{"no verdict", "no verdict", fake(func(*strength.Calc, plateGivens) {})},
		{"a pass of nothing", "utilisation", fake(func(c *strength.Calc, g plateGivens) {
			c.Compare(g.P, g.Fy*g.T*g.B)
			c.Verdict = strength.Pass
		})},
		{"less use under more load", "falls", fake(func(c *strength.Calc, g plateGivens) { c.Compare(1e6, g.P+1) })},
		{"an infinite demand passed", "demand", fake(func(c *strength.Calc, g plateGivens) {
			c.Compare(g.P, g.Fy*g.T*g.B)
			c.Demand, c.Verdict = math.Inf(1), strength.Pass
		})},
		{"at capacity a fail", "at a utilisation of", fake(func(c *strength.Calc, g plateGivens) {
			c.Compare(g.P, g.Fy*g.T*g.B)
			if c.Demand == c.Capacity {
				c.Verdict = strength.Fail
			}
		})},
		{"a rule for a limit state that is not listed", "does not list it", ruledBy(sound, nil)},
		{"text made with the trace off", "allocations", ruledBy(func(c *strength.Calc, g plateGivens) {
			c.Let("P_n", fmt.Sprint("F_y*t*b", g.B), "N", g.Fy*g.T*g.B)
			sound(c, g)
		}, fake(sound).Limits)},
	} {
		t.Run(slip.name, func(t *testing.T) {
			var heard listener
			slip.basis.Card.Methods = []strength.Method{strength.ASD}
			Limits(&heard, slip.basis)
			heard.mustSay(t, slip.says)
		})
	}
}

// ruledBy is a basis with one rule, for pins.
func ruledBy(eval func(c *strength.Calc, g plateGivens), limits []strength.Evaluator) *strength.Basis {
	id := fake(sound).Limits[0].Info().Identity
	l := strength.Define(id, eval)
	b := &strength.Basis{Limits: limits}
	b.Rules.PinPlane = []strength.Rule[strength.PinPlane]{{Of: l, Check: func(c *strength.Calc, f *strength.PinPlane) {
		l.Check(c, plateGivens{P: f.V, T: f.D, B: f.D, Fy: f.Fy})
	}}}
	return b
}

func (l *listener) mustSay(t *testing.T, text string) {
	t.Helper()
	for _, e := range l.errors {
		if strings.Contains(e, text) {
			return
		}
	}
	t.Errorf("the suite said nothing of %q, but %q", text, l.errors)
}
