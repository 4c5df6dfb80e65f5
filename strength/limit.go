package strength

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
)

// Clause is where a rule stands. Document is empty for mechanics that no clause states.
type Clause struct {
	Document string // "AISC 360"
	Edition  string // "2022"
	Section  string // "J3.7, Eq. J3-1"
	Words    string // "common practice, no source", "elementary statics", or empty
}

func (c Clause) String() string {
	if c.Document == "" {
		return c.Words
	}
	s := c.Document + "-" + c.Edition + " " + c.Section
	if c.Words != "" {
		s += " (" + c.Words + ")"
	}
	return s
}

// Identity is what a limit state is.
type Identity struct {
	ID       string // "pin-shear": stable, used by evaluate
	Title    string // "Shear of the pin"
	Clause   Clause
	Demand   string // symbol compared against ...
	Capacity string // ... this symbol
	Unit     string // of both
	// Detail marks a rule about dimensions, which no load changes; it is shown after the strengths.
	Detail bool
}

// Given is one input of a limit state, with its accepted range (in its unit, ends included).
type Given struct {
	Symbol, Unit, Words string
	Min, Max            float64
	Optional            bool // zero when left out
}

// Info is a limit state as a user sees it in a list.
type Info struct {
	Identity
	Givens []Given
}

// Evaluator is a limit state that can be evaluated alone, from numbers.
type Evaluator interface {
	Info() Info
	// FromNumbers evaluates with values in the order of Info().Givens. Errors name the given and what is accepted.
	FromNumbers(c *Calc, values []float64) error
}

// Limit is a limit state with its givens as a struct G of float64 fields, each tagged
// `sym:"F_u" unit:"MPa" min:"100" max:"2500" is:"tensile strength of the pin"`.
type Limit[G any] struct {
	Identity
	givens []Given
	eval   func(c *Calc, g G)
}

// Define makes a limit state. It panics when a field of G has no complete tag: that is the author's mistake and shows at
// the first run.
func Define[G any](id Identity, eval func(c *Calc, g G)) *Limit[G] {
	return &Limit[G]{Identity: id, givens: givensOf(reflect.TypeFor[G]()), eval: eval}
}

// Check evaluates within a bracket: typed givens, no look-ups; with Trace on the givens are listed first.
func (l *Limit[G]) Check(c *Calc, g G) {
	c.reset()
	if c.Trace {
		l.trace(c, g)
	}
	l.eval(c, g)
}

// Info lists the limit state and its givens.
func (l *Limit[G]) Info() Info { return Info{l.Identity, l.givens} }

// FromNumbers evaluates with values in the order of the givens.
func (l *Limit[G]) FromNumbers(c *Calc, values []float64) error {
	if len(values) != len(l.givens) {
		return fmt.Errorf("limit state %s takes %d givens, not %d", l.ID, len(l.givens), len(values))
	}
	var g G
	fields := reflect.ValueOf(&g).Elem()
	for i, v := range values {
		if err := l.givens[i].check(v); err != nil {
			return err
		}
		fields.Field(i).SetFloat(v)
	}
	l.Check(c, g)
	return nil
}

func (l *Limit[G]) trace(c *Calc, g G) {
	fields := reflect.ValueOf(g)
	for i, d := range l.givens {
		c.Lines = append(c.Lines, Line{Kind: GivenLine, Symbol: d.Symbol, Unit: d.Unit, Value: fields.Field(i).Float(), Words: d.Words})
	}
}

// GivenError is a given that is out of range.
type GivenError struct {
	Given Given
	Found float64
}

func (e *GivenError) Error() string {
	return fmt.Sprintf("%s: %g %s; %g to %g %s is accepted (%s)", e.Given.Symbol, e.Found, e.Given.Unit, e.Given.Min, e.Given.Max, e.Given.Unit, e.Given.Words)
}

func (g Given) check(v float64) error {
	if math.IsNaN(v) || v < g.Min || v > g.Max {
		return &GivenError{g, v}
	}
	return nil
}

func givensOf(t reflect.Type) []Given {
	out := make([]Given, t.NumField())
	for i := range out {
		f := t.Field(i)
		low, errLow := strconv.ParseFloat(f.Tag.Get("min"), 64)
		high, errHigh := strconv.ParseFloat(f.Tag.Get("max"), 64)
		g := Given{Symbol: f.Tag.Get("sym"), Unit: f.Tag.Get("unit"), Words: f.Tag.Get("is"), Min: low, Max: high}
		g.Words, g.Optional = strings.CutSuffix(g.Words, ", optional")
		if f.Type.Kind() != reflect.Float64 || g.Symbol == "" || g.Words == "" || errLow != nil || errHigh != nil {
			panic(fmt.Sprintf("givens %s: field %s wants float64 and tags sym, is, min, max", t.Name(), f.Name))
		}
		out[i] = g
	}
	return out
}

func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
