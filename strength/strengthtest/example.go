package strengthtest

// A published example: givens and lines as printed, ours beside them.

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"lugwright/strength"
	"lugwright/units"
)

// Example is a published example as its file holds it. Quantities are as printed, each with its unit ("1/2 in", "105 kip").
type Example struct {
	Source     string // document, edition, example, page
	Provenance string // "read" or "from memory"
	Basis      string // Card.Name
	Note       string // what the example differs in from the basis, if anything
	// Tolerance is relative ("0.5 %"), for an author who rounds on the way; empty: half a unit of the last printed digit.
	Tolerance string
	Why       string            // why the tolerance is not half a digit
	Givens    map[string]string // common to the runs; a run takes those that its limit state knows
	Runs      []Run
}

// Run is one limit state under one method. A load that is left out is nought: the printed strengths do not depend on it.
type Run struct {
	Limit  string
	Method strength.Method
	Givens map[string]string // over the example's
	Expect map[string]string // by symbol; "utilisation" is demand / capacity
	// Widened gives a line its own tolerance, with the reason.
	Widened map[string]Widening
}

// Widening is the tolerance of one line, and why it is not the example's.
type Widening struct{ Tolerance, Why string }

// Row is one line, ours beside printed, both in N, mm, MPa.
type Row struct {
	Limit  string
	Method strength.Method
	Symbol string
	Text   string // as printed
	Ours   float64
	Print  float64
	Allow  float64 // largest difference accepted
}

// Agrees says whether ours is the printed value within what is allowed.
func (r Row) Agrees() bool { return math.Abs(r.Ours-r.Print) <= r.Allow }

// Difference is relative to the printed value.
func (r Row) Difference() float64 { return r.Ours/r.Print - 1 }

// Check runs the example. Errors name the place in the file and what would be accepted.
func (e *Example) Check(b *strength.Basis) ([]Row, error) {
	if e.Source == "" || e.Provenance != "read" && e.Provenance != "from memory" {
		return nil, fmt.Errorf(`source and provenance: %q, %q; a source, and "read" or "from memory" are needed`, e.Source, e.Provenance)
	}
	if (e.Tolerance == "") != (e.Why == "") {
		return nil, fmt.Errorf("tolerance and why: %q, %q; each needs the other", e.Tolerance, e.Why)
	}
	var rows []Row
	for i := range e.Runs {
		more, err := e.run(b, &e.Runs[i])
		if err != nil {
			return nil, fmt.Errorf("runs[%d]: %w", i, err)
		}
		rows = append(rows, more...)
	}
	return rows, nil
}

func (e *Example) run(b *strength.Basis, r *Run) ([]Row, error) {
	l := b.Limit(r.Limit)
	if l == nil || !slices.Contains(b.Card.Methods, r.Method) {
		return nil, fmt.Errorf("limit %q, method %q: %s has no such limit state or method", r.Limit, r.Method, b.Card.Name)
	}
	values, err := e.values(l.Info(), r)
	if err != nil {
		return nil, err
	}
	c := strength.Calc{Trace: true, Method: r.Method}
	if err := l.FromNumbers(&c, values); err != nil {
		return nil, err
	}
	rows, err := e.compare(&c, r)
	if err == nil && len(rows) != len(r.Expect) {
		err = fmt.Errorf("expect: %d of %d symbols are lines of %s", len(rows), len(r.Expect), r.Limit)
	}
	return rows, err
}

func (e *Example) values(info strength.Info, r *Run) ([]float64, error) {
	out := make([]float64, len(info.Givens))
	used := 0
	for i, g := range info.Givens {
		text, own := r.Givens[g.Symbol]
		if own {
			used++
		} else if text = e.Givens[g.Symbol]; text == "" && !isLoad(g) && !g.Optional {
			return nil, fmt.Errorf("givens: %s is missing (%s)", g.Symbol, g.Words)
		}
		if text == "" {
			continue
		}
		v, err := quantity(text, g.Unit)
		if err != nil {
			return nil, fmt.Errorf("givens: %s: %w", g.Symbol, err)
		}
		out[i] = v
	}
	if used != len(r.Givens) {
		return nil, fmt.Errorf("givens: %d of %d are givens of %s", used, len(r.Givens), r.Limit)
	}
	return out, nil
}

// quantity reads a printed quantity that must measure what the unit does.
func quantity(text, unit string) (float64, error) {
	_, dim, err := units.Factor(unit)
	if err != nil {
		return 0, err
	}
	return units.Parse(text, dim)
}

// compare takes the last line of each symbol, in the order of the calculation.
func (e *Example) compare(c *strength.Calc, r *Run) ([]Row, error) {
	lines := append(slices.Clone(c.Lines), strength.Line{Symbol: "utilisation", Value: c.Utilisation()})
	var rows []Row
	for i, l := range lines {
		text, ok := r.Expect[l.Symbol]
		if !ok || slices.ContainsFunc(lines[i+1:], func(m strength.Line) bool { return m.Symbol == l.Symbol }) {
			continue
		}
		row := Row{Limit: r.Limit, Method: r.Method, Symbol: l.Symbol, Text: text, Ours: l.Value}
		var err error
		if row.Print, err = quantity(text, l.Unit); err == nil {
			row.Allow, err = e.allow(text, l.Unit, row.Print, r.Widened[l.Symbol])
		}
		if err != nil {
			return nil, fmt.Errorf("expect: %s: %w", l.Symbol, err)
		}
		rows = append(rows, row)
	}
	return rows, nil
}

func (e *Example) allow(text, unit string, printed float64, w Widening) (float64, error) {
	if (w.Tolerance == "") != (w.Why == "") {
		return 0, fmt.Errorf("widened: tolerance %q, why %q; each needs the other", w.Tolerance, w.Why)
	}
	half, err := halfDigit(text, unit)
	if err != nil {
		return 0, err
	}
	for _, t := range []string{w.Tolerance, e.Tolerance} {
		if t != "" {
			relative, err := units.Parse(t, units.Ratio)
			return max(half, relative*math.Abs(printed)), err
		}
	}
	return half, nil
}

// halfDigit is half a unit of the last printed digit; nought for a fraction such as 3/16 in, which is exact.
func halfDigit(text, unit string) (float64, error) {
	number, name, _ := strings.Cut(text, " ")
	if strings.Contains(number, "/") {
		return 1e-9, nil
	}
	if _, err := strconv.ParseFloat(number, 64); err != nil {
		return 0, fmt.Errorf("%q: a decimal number, a blank and a unit are needed", text)
	}
	_, decimals, _ := strings.Cut(number, ".")
	half := "0." + strings.Repeat("0", len(decimals)) + "5"
	return quantity(strings.TrimSpace(half+" "+name), unit)
}
