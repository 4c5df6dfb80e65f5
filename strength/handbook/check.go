package handbook

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

// Check runs the example. An error is a part.FieldErrors, of every run, with the places in the file ("runs[0].givens.d") and what would be
// accepted, unless the bench itself could not answer.
func (e *Example) Check(b Bench) ([]Row, error) {
	if err := e.sound(b.Card()); err != nil {
		return nil, err
	}
	var rows []Row
	var slips part.FieldErrors
	for i := range e.Runs {
		more, err := e.run(b, i)
		fields := part.Fields(within(fmt.Sprintf("runs[%d].", i), err))
		if err != nil && fields == nil {
			return nil, err
		}
		slips = append(slips, fields...)
		rows = append(rows, more...)
	}
	if slips != nil {
		return nil, slips
	}
	return rows, nil
}

// sound checks what all runs share.
func (e *Example) sound(c *strength.Card) error {
	switch {
	case strings.TrimSpace(e.Source) == "":
		return refuse("source", "missing", "the document, its edition, and the example or page")
	case e.Provenance != Read && e.Provenance != FromMemory && e.Provenance != ByHand:
		return refuse("provenance", quoted(e.Provenance), `"read" where the printed values were seen, "from memory", or "by hand"`)
	case e.Basis != c.Name:
		return refuse("basis", quoted(e.Basis), "this bench evaluates "+c.Name)
	case len(e.Runs) == 0:
		return refuse("runs", "missing", "at least one limit state with what is expected of it")
	}
	return bothOrNone("", Widening{e.Tolerance, e.Why})
}

func bothOrNone(path string, w Widening) error {
	switch {
	case w.Tolerance != "" && w.Why == "":
		return refuse(path+"why", "missing", "the reason for the tolerance")
	case w.Tolerance == "" && w.Why != "":
		return refuse(path+"tolerance", "missing", `a relative tolerance such as "0.5 %"`)
	}
	return nil
}

func (e *Example) run(b Bench, at int) ([]Row, error) {
	r := &e.Runs[at]
	info, err := find(b, r.Limit)
	switch {
	case err != nil:
		return nil, err
	case !slices.Contains(b.Card().Methods, r.Method):
		return nil, refuse("method", quoted(string(r.Method)), "one of "+methodNames(b.Card()))
	case len(r.Expect) == 0:
		return nil, refuse("expect", "missing", "at least one printed result")
	}
	q := Question{Limit: r.Limit, Method: r.Method}
	if q.Values, err = e.values(info, r); err != nil {
		return nil, err
	}
	if q.FactorSet, q.Factors, err = e.factors(b.Card(), r); err != nil {
		return nil, err
	}
	answer, err := b.Evaluate(q)
	if err != nil {
		return nil, given(err)
	}
	return e.compare(info, answer, at)
}

// find gives the limit state of an id; the error names the nearest.
func find(b Bench, id string) (strength.Info, error) {
	var known []string
	for _, l := range b.Limits() {
		if l.ID == id {
			return l, nil
		}
		known = append(known, l.ID)
	}
	return strength.Info{}, refuse("limit", quoted(id), "a limit state of "+b.Card().Name+part.Nearest(id, known))
}

func methodNames(c *strength.Card) string {
	names := make([]string, len(c.Methods))
	for i, m := range c.Methods {
		names[i] = string(m)
	}
	return strings.Join(names, ", ")
}

// compare takes the last line of each expected symbol, in the order of the calculation.
func (e *Example) compare(info strength.Info, a Answer, at int) ([]Row, error) {
	r := &e.Runs[at]
	for symbol := range r.Widened {
		if r.Expect[symbol] == "" {
			return nil, refuse("widened."+symbol, "not among what is expected", "a symbol of expect")
		}
	}
	lines := append(slices.Clone(a.Lines),
		strength.Line{Symbol: Demand, Unit: info.Unit, Value: a.Demand},
		strength.Line{Symbol: Capacity, Unit: info.Unit, Value: a.Capacity},
		strength.Line{Symbol: Utilisation, Value: a.Utilisation})
	var rows []Row
	left := maps.Clone(r.Expect)
	for i, l := range lines {
		text, ok := r.Expect[l.Symbol]
		if !ok || slices.ContainsFunc(lines[i+1:], func(m strength.Line) bool { return m.Symbol == l.Symbol }) {
			continue
		}
		row, err := e.row(l, text, r.Widened[l.Symbol])
		if err != nil {
			return nil, within("expect."+l.Symbol, err)
		}
		rows = append(rows, row)
		delete(left, l.Symbol)
	}
	if text, ok := left[Verdict]; ok {
		rows = append(rows, Row{Symbol: Verdict, Text: text, OurText: string(a.Verdict)})
		delete(left, Verdict)
	}
	for i := range rows {
		rows[i].Run, rows[i].Limit, rows[i].Method = at, r.Limit, r.Method
	}
	return rows, strangers("expect.", left, "has no such line with these givens", lineSymbols(lines)+", "+Verdict)
}

func (e *Example) row(l strength.Line, text string, w Widening) (Row, error) {
	row := Row{Symbol: l.Symbol, Text: text, Unit: l.Unit, Ours: l.Value}
	if l.Values != nil {
		return row, refuse("", "a list", "a line with one value")
	}
	var err error
	if row.Print, err = quantity(text, l.Unit); err != nil {
		return row, refuse("", quoted(text), err.Error())
	}
	row.Allow, row.Why, err = e.allow(text, row.Print, l.Unit, w)
	return row, err
}

// allow gives the accepted difference, and why it is more than half a digit where it is.
func (e *Example) allow(text string, printed float64, unit string, w Widening) (float64, string, error) {
	half, err := halfDigit(text, unit)
	if err != nil {
		return 0, "", refuse("", quoted(text), err.Error())
	}
	if err := bothOrNone(": widened: ", w); err != nil {
		return 0, "", err
	}
	if w.Tolerance == "" {
		w = Widening{e.Tolerance, e.Why}
	}
	if w.Tolerance == "" {
		return half, "", nil
	}
	relative, err := units.Parse(w.Tolerance, units.Ratio)
	if err != nil || relative < 0 || relative > 1 {
		return 0, "", refuse(": tolerance", quoted(w.Tolerance), `a relative tolerance such as "0.5 %"`)
	}
	if wide := relative * max(printed, -printed); wide > half {
		return wide, w.Why, nil
	}
	return half, "", nil
}

func lineSymbols(lines []strength.Line) string {
	var names []string
	for _, l := range lines {
		if l.Symbol != "" && !slices.Contains(names, l.Symbol) {
			names = append(names, l.Symbol)
		}
	}
	return strings.Join(names, ", ")
}

// strangers refuses the first name that nothing took.
func strangers(path string, left map[string]string, found, accept string) error {
	var out part.FieldErrors
	for _, name := range slices.Sorted(maps.Keys(left)) {
		out = append(out, &part.FieldError{Field: path + name, Found: found, Accept: accept})
	}
	if out == nil {
		return nil
	}
	return out
}

func refuse(field, found, accept string) error {
	return &part.FieldError{Field: field, Found: found, Accept: accept}
}

// within puts a path before the field of an error.
func within(path string, err error) error {
	fields := part.Fields(err)
	if fields == nil {
		return err
	}
	out := make(part.FieldErrors, len(fields))
	for i, f := range fields {
		out[i] = &part.FieldError{Field: path + f.Field, Found: f.Found, Accept: f.Accept}
	}
	return out
}

// given turns the refusal of a value into one of the field that it stands in.
func given(err error) error {
	var g *strength.GivenError
	if errors.As(err, &g) {
		found, accept := g.Words()
		return refuse("givens."+g.Given.Symbol, found, accept)
	}
	return err
}

func quoted(text string) string {
	if text == "" {
		return "missing"
	}
	return fmt.Sprintf("%q", text)
}
