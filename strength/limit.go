package strength

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"sync"
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
	s := c.cited() + " " + c.Section
	if c.Words != "" {
		s += " (" + c.Words + ")"
	}
	return s
}

// cited is document and edition as the publisher writes them: "EN 1993-1-8:2005", "AISC 360-2022", "AISC Manual 15th ed.".
func (c Clause) cited() string {
	switch _, err := strconv.Atoi(c.Edition); {
	case err != nil:
		return c.Document + " " + c.Edition
	case strings.HasPrefix(c.Document, "EN "):
		return c.Document + ":" + c.Edition
	}
	return c.Document + "-" + c.Edition
}

// Identity is what a limit state is.
type Identity struct {
	ID       string // "pin-shear": stable, used by evaluate
	Title    string // "Shear of the pin"
	Unruled  bool   // no published rule states it and a bracket can do without it: a job may leave it out
	Clause   Clause
	Demand   string // symbol compared against ...
	Capacity string // ... this symbol
	Unit     string // of both
	// Detail marks a rule about dimensions, which no load changes; it is shown after the strengths.
	Detail bool
	// Fatigue marks a rule about repeated load, reported apart from strength.
	Fatigue bool
}

// Given is one input of a limit state, with its accepted range (in its unit, ends included).
type Given struct {
	Symbol, Unit, Words string
	Min, Max            float64
	Optional            bool     // may be left out
	Default             float64  // its value then
	Step                float64  // a number of things is a multiple of it: 1, or 0.5 where halves count; 0 for none
	List                bool     // several values, such as the positions of bolts
	Choices             []string // names of the values 0, 1, 2, ... of a choice
}

// Info is a limit state as a user sees it in a list.
type Info struct {
	Identity
	Givens []Given
}

// Evaluator is a limit state that can be evaluated alone, from numbers.
type Evaluator interface {
	// Ident is the limit state without its givens, which Info has to read first.
	Ident() *Identity
	// Cited is the clause as it is printed.
	Cited() string
	Info() Info
	// FromNumbers evaluates with values in the order of Info().Givens; one value each, more for a list. Errors name the given and
	// what is accepted.
	FromNumbers(c *Calc, values [][]float64) error
}

// Limit is a limit state with its givens as a struct G. Each field is a float64, or a []float64 for a list, tagged
// `sym:"F_u" unit:"MPa" min:"100" max:"2500" is:"tensile strength of the pin"`. One that may be left out has default:"0" too; a
// choice has choices:"standard|oversize" instead of min and max, and its value is the place of the name, from 0.
type Limit[G any] struct {
	Identity
	eval func(c *Calc, g G)
	list sync.Once // the givens are read from the tags when first wanted: a program uses few of all limit states
	tags []Given
	cite sync.Once
	text string // the clause
}

// Define makes a limit state. A field of G without a complete tag panics when the givens are first wanted: that is the author's mistake
// and shows in the suite that every basis runs.
func Define[G any](id Identity, eval func(c *Calc, g G)) *Limit[G] {
	return &Limit[G]{Identity: id, eval: eval}
}

func (l *Limit[G]) givens() []Given {
	l.list.Do(func() { l.tags = givensOf(reflect.TypeFor[G]()) })
	return l.tags
}

// Check evaluates within a bracket: typed givens, no look-ups; with Trace on the givens are listed first.
func (l *Limit[G]) Check(c *Calc, g G) {
	c.reset()
	if c.Trace {
		l.trace(c, g)
	}
	l.eval(c, g)
}

// Ident names the limit state.
func (l *Limit[G]) Ident() *Identity { return &l.Identity }

// Cited gives the clause as it is printed.
func (l *Limit[G]) Cited() string {
	l.cite.Do(func() { l.text = l.Clause.String() })
	return l.text
}

// Info lists the limit state and its givens.
func (l *Limit[G]) Info() Info { return Info{l.Identity, l.givens()} }

// FromNumbers evaluates with values in the order of the givens.
func (l *Limit[G]) FromNumbers(c *Calc, values [][]float64) error {
	givens := l.givens()
	if len(values) != len(givens) {
		return fmt.Errorf("limit state %s takes %d givens, not %d", l.ID, len(givens), len(values))
	}
	var g G
	fields := reflect.ValueOf(&g).Elem()
	longest := longestList(givens, values)
	for i, v := range values {
		if err := givens[i].check(v); err != nil {
			return err
		}
		if givens[i].List && len(v) != len(values[longest]) && len(v) != 1 {
			return &GivenError{Given: givens[i], Count: len(v), Beside: &givens[longest], Want: len(values[longest])}
		}
		if givens[i].List {
			fields.Field(i).Set(reflect.ValueOf(v))
		} else {
			fields.Field(i).SetFloat(v[0])
		}
	}
	l.Check(c, g)
	return nil
}

// longestList is the place of the list with the most values: every list of a limit state is about the same things, one value standing for all.
func longestList(givens []Given, values [][]float64) int {
	at := 0
	for i, g := range givens {
		if g.List && (!givens[at].List || len(values[i]) > len(values[at])) {
			at = i
		}
	}
	return at
}

func (l *Limit[G]) trace(c *Calc, g G) {
	fields := reflect.ValueOf(g)
	for i, d := range l.givens() {
		line := Line{Kind: GivenLine, Symbol: d.Symbol, Unit: d.Unit, Words: d.Words}
		if d.List {
			line.Values = append([]float64{}, fields.Field(i).Interface().([]float64)...)
		} else {
			line.Value = fields.Field(i).Float()
			line.Words = d.named(line.Value)
		}
		c.Lines = append(c.Lines, line)
	}
}

// GivenError is a given that is out of range.
type GivenError struct {
	Given Given
	Found float64
	Count int // values given
	// Beside is a longer list of the same limit state, of Want values, that this one does not match; else nil.
	Beside *Given
	Want   int
}

func (e *GivenError) Error() string {
	found, accept := e.Words()
	return e.Given.Symbol + ": " + found + "; " + accept
}

// Words say what was found and what is accepted.
func (e *GivenError) Words() (found, accept string) {
	g := &e.Given
	found = strings.TrimSpace(fmt.Sprintf("%g %s", e.Found, g.Unit))
	switch {
	case e.Beside != nil:
		found, accept = fmt.Sprintf("%d values beside %d of %s", e.Count, e.Want, e.Beside.Symbol), "as many of both are needed, or one for all"
	case !g.List && e.Count != 1 || e.Count == 0 || e.Count > MaxList:
		found, accept = fmt.Sprintf("%d values", e.Count), fmt.Sprintf("one, or for a list 1 to %d, are accepted", MaxList)
	case g.Choices != nil:
		accept = fmt.Sprintf("one of %s is accepted", strings.Join(g.Choices, ", "))
	case g.Step > 0 && e.Found >= g.Min && e.Found <= g.Max:
		accept = fmt.Sprintf("a number of things, in steps of %g", g.Step)
	default:
		accept = strings.TrimSpace(fmt.Sprintf("%g to %g %s", g.Min, g.Max, g.Unit)) + " is accepted"
	}
	return found, fmt.Sprintf("%s (%s)", accept, g.Words)
}

// MaxList bounds the values of one list.
const MaxList = 500

func (g Given) check(values []float64) error {
	if !g.List && len(values) != 1 || g.List && (len(values) == 0 || len(values) > MaxList) {
		return &GivenError{Given: g, Count: len(values)}
	}
	for _, v := range values {
		if math.IsNaN(v) || v < g.Min || v > g.Max || g.Choices != nil && v != math.Trunc(v) || g.Step > 0 && math.Mod(v, g.Step) != 0 {
			return &GivenError{Given: g, Found: v, Count: len(values)}
		}
	}
	return nil
}

// named adds the name of a chosen value to the words.
func (g Given) named(v float64) string {
	if i := int(v); g.Choices != nil && i >= 0 && i < len(g.Choices) {
		return g.Words + ": " + g.Choices[i]
	}
	return g.Words
}

func givensOf(t reflect.Type) []Given {
	out := make([]Given, t.NumField())
	for i := range out {
		f := t.Field(i)
		g, err := givenOf(f)
		if err != nil {
			panic(fmt.Sprintf("givens %s: field %s: %v", t.Name(), f.Name, err))
		}
		out[i] = g
	}
	return out
}

func givenOf(f reflect.StructField) (Given, error) {
	g := Given{Symbol: f.Tag.Get("sym"), Unit: f.Tag.Get("unit"), Words: f.Tag.Get("is")}
	switch f.Type {
	case reflect.TypeFor[float64]():
	case reflect.TypeFor[[]float64]():
		g.List = true
	default:
		return g, fmt.Errorf("wants float64 or []float64, not %s", f.Type)
	}
	if g.Symbol == "" || g.Words == "" {
		return g, fmt.Errorf("wants tags sym and is")
	}
	if names := f.Tag.Get("choices"); names != "" {
		g.Choices = strings.Split(names, "|")
		g.Max = float64(len(g.Choices) - 1)
	} else {
		var errLow, errHigh error
		g.Min, errLow = strconv.ParseFloat(f.Tag.Get("min"), 64)
		g.Max, errHigh = strconv.ParseFloat(f.Tag.Get("max"), 64)
		if errLow != nil || errHigh != nil {
			return g, fmt.Errorf("wants tags min and max")
		}
	}
	if text, ok := f.Tag.Lookup("step"); ok {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil || !(v > 0) {
			return g, fmt.Errorf("step %q is no number above 0", text)
		}
		g.Step = v
	}
	if text, ok := f.Tag.Lookup("default"); ok {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return g, fmt.Errorf("default %q is no number", text)
		}
		g.Optional, g.Default = true, v
	}
	return g, nil
}

func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
