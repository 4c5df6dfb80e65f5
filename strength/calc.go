package strength

import (
	"math"
	"slices"
)

// Method is how a basis compares demand with capacity.
type Method string

const (
	ASD            Method = "ASD"             // allowable strength, service loads
	LRFD           Method = "LRFD"            // load and resistance factors, factored loads
	PartialFactors Method = "partial factors" // partial factors on resistance, factored loads
	Allowable      Method = "allowable"       // allowable stress by a design factor, service loads
)

// Verdict is the outcome of one check.
type Verdict string

const (
	Pass       Verdict = "pass"
	Fail       Verdict = "fail"
	Outside    Verdict = "outside the rule" // a need is not met: the source does not speak
	NotApplied Verdict = "does not apply"
)

// LineKind says what a line of a calculation is.
type LineKind string

const (
	GivenLine   LineKind = "given"
	NeedLine    LineKind = "need"
	FormulaLine LineKind = "line"
)

// Line is one printed line of a calculation.
type Line struct {
	Kind    LineKind
	Symbol  string
	Formula string  // as printed in the source, a Go expression; for a need the condition; empty for a given
	Unit    string  // unit of Value
	Value   float64 // for a need: 1 met, 0 not met
	Words   string
	Values  []float64 // of a given that is a list
}

// Calc is one evaluation of one limit state. With Trace off nothing is recorded and nothing is allocated.
type Calc struct {
	Trace  bool
	Method Method
	// Factors are the values of the basis's settable factors.
	Factors []FactorValue

	Demand, Capacity float64
	Verdict          Verdict
	Why              string // why outside the rule or not applied
	Lines            []Line

	kept *kept // of the place at hand, nil for none
}

// kept is what limit states have worked out at one place that no load changes.
type kept struct {
	known    [5]bool
	value    [5]float64
	capacity [6][2]float64 // of the place's first rules that state their demand, by sense; 0 where not known
}

// keepNothing is for the test that nothing kept from load to load or from cut to cut changes a result.
var keepNothing bool

// keeps says whether the capacity of a rule, told by its place in its list, can be kept at the place at hand.
func (c *Calc) keeps(rule int) bool {
	return c.kept != nil && rule < len(c.kept.capacity) && !keepNothing
}

// Known gives a value that no load changes, where a limit state kept it here before: k is the basis's own number for it among those of
// one kind of feature. With Trace on nothing is known, so that every line is written.
func (c *Calc) Known(k int) (v float64, ok bool) {
	if c.kept == nil || c.Trace || !c.kept.known[k] {
		return 0, false
	}
	return c.kept.value[k], true
}

// Keep keeps such a value and returns it. What a need has put outside the rule is not kept: the need has to be heard every time.
func (c *Calc) Keep(k int, v float64) float64 {
	if c.kept != nil && c.Verdict == "" && !keepNothing {
		c.kept.known[k], c.kept.value[k] = true, v
	}
	return v
}

// reset readies c for the next limit state and keeps the lines' memory.
func (c *Calc) reset() {
	c.Demand, c.Capacity, c.Verdict, c.Why, c.Lines = 0, 0, "", "", c.Lines[:0]
}

// Let records one line of the source, the printed formula beside the computed value, and returns the value.
func (c *Calc) Let(symbol, formula, unit string, v float64) float64 {
	if c.Trace {
		c.let(symbol, formula, unit, v)
	}
	return v
}

func (c *Calc) let(symbol, formula, unit string, v float64) {
	c.Lines = append(c.Lines, Line{Kind: FormulaLine, Symbol: symbol, Formula: formula, Unit: unit, Value: v})
}

// Solved records a value that a solver gave and that no printed formula yields; words say which.
func (c *Calc) Solved(symbol, words, unit string, v float64) float64 {
	if c.Trace {
		c.Lines = append(c.Lines, Line{Kind: FormulaLine, Symbol: symbol, Unit: unit, Value: v, Words: words})
	}
	return v
}

// Factor gives one of the basis's settable factors and lists it as a given. Asking for one that the card does not declare gives
// NaN, and so never a pass.
func (c *Calc) Factor(symbol string) float64 {
	for i := range c.Factors {
		if f := &c.Factors[i]; f.Symbol == symbol {
			if c.Trace {
				c.Lines = append(c.Lines, Line{Kind: GivenLine, Symbol: symbol, Unit: f.Unit, Value: f.Value, Words: f.Words})
			}
			return f.Value
		}
	}
	return math.NaN()
}

// Need records a condition under which the rule speaks; when it does not hold the verdict is outside the rule. It
// returns whether it holds.
func (c *Calc) Need(holds bool, condition, words string) bool {
	if c.Trace {
		v := 0.0
		if holds {
			v = 1
		}
		c.Lines = append(c.Lines, Line{Kind: NeedLine, Formula: condition, Value: v, Words: words})
	}
	if !holds && c.Why == "" {
		c.Verdict, c.Why = Outside, words+" ("+condition+" does not hold)"
	}
	return holds
}

// Skip says that the limit state does not apply here, and why.
func (c *Calc) Skip(why string) { c.Verdict, c.Why = NotApplied, why }

// Least compares a least size with the one given; where that is nought only the least is wanted, and there is no verdict.
func (c *Calc) Least(least, given float64) {
	c.Compare(least, given)
	if given == 0 {
		c.Skip("no size is given: only the least is worked out")
	}
}

// SkipUnless says so where ok is false.
func (c *Calc) SkipUnless(ok bool, why string) {
	if !ok {
		c.Skip(why)
	}
}

// Available is the available strength by the method: phi*R_n or R_n/Omega, as one line.
func (c *Calc) Available(symbol, nominal, unit string, rn, phi, omega float64) float64 {
	if c.Method == LRFD {
		c.Let("phi", literal(c, phi), "", phi)
		return c.Let(symbol, join(c, "phi*", nominal), unit, phi*rn)
	}
	c.Let("Omega", literal(c, omega), "", omega)
	return c.Let(symbol, join(c, nominal, "/Omega"), unit, rn/omega)
}

// exactFit lets a demand that equals its capacity pass although both were rounded on the way; it is far below any print.
const exactFit = 1e-12

func fits(demand, capacity float64) bool { return demand <= capacity*(1+exactFit) }

// ruleOut puts what a limit state found outside the rule, for a reason that is none of its own. Its capacity and its lines were those of
// another metal, and are not shown; nor is the demand, which may be a sum over such capacities.
func (c *Calc) RuleOut(why string) {
	if why != "" && c.Verdict != NotApplied {
		c.Verdict, c.Why, c.Demand, c.Capacity, c.Lines = Outside, why, 0, 0, c.Lines[:0]
	}
}

// Compare ends a limit state: demand against capacity. Needs that failed stand.
func (c *Calc) Compare(demand, capacity float64) {
	c.Demand, c.Capacity = demand, capacity
	switch {
	case c.Verdict != "":
	case !(capacity > 0) || !finite(capacity) || !finite(demand):
		c.Verdict, c.Why = Outside, "no finite positive capacity comes of these givens"
	case fits(demand, capacity):
		c.Verdict = Pass
	default:
		c.Verdict = Fail
	}
}

// Utilisation is demand / capacity; +Inf where there is no capacity.
func (c *Calc) Utilisation() float64 {
	u := c.Demand / c.Capacity
	if !(c.Capacity > 0 && u >= 0) { // past a need that does not hold a demand may be anything
		return math.Inf(1)
	}
	return u
}

// Show leaves out what is no finite number, and the lines from there on: a limit state whose verdict is out is to be shown.
func (c *Calc) Show() {
	if finite(c.Demand) && finite(c.Capacity) {
		return
	}
	c.Demand, c.Capacity = 0, 0
	if k := slices.IndexFunc(c.Lines, func(l Line) bool { return !finite(l.Value) }); k >= 0 {
		c.Lines = c.Lines[:k]
	}
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func join(c *Calc, a, b string) string {
	if !c.Trace {
		return ""
	}
	return a + b
}

func literal(c *Calc, v float64) string {
	if !c.Trace {
		return ""
	}
	return number(v)
}
