package strengthtest

// One traced calculation, evaluated again from its own lines.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/strength"
	"lugwright/strength/formula"
)

// closeness is the relative difference allowed between a quoted formula and compiled Go, which may round in another order.
const closeness = 1e-12

// A replay says each slip of a limit state once.
type replay struct {
	id    string
	reach *reach
	said  map[string]bool

	env   map[string]formula.Value
	given map[string]bool
	slips []string
}

func (p *replay) run(c *strength.Calc, id strength.Identity) []string {
	p.env, p.given, p.slips = map[string]formula.Value{}, map[string]bool{}, nil
	unmet := false
	for _, l := range c.Lines {
		if !finite(l.Value) || slices.ContainsFunc(l.Values, notFinite) {
			if !unmet {
				p.say(l.Symbol, "%s = %s is not finite, and no need has failed", l.Symbol, l.Formula)
			}
			return p.slips
		}
		switch l.Kind {
		case strength.GivenLine:
			p.givenLine(l)
		case strength.NeedLine:
			p.needLine(l)
			unmet = unmet || l.Value == 0
		case strength.FormulaLine:
			if l.Formula == "" {
				p.solvedLine(l)
				continue
			}
			p.formulaLine(l)
		}
	}
	if finite(c.Demand) && finite(c.Capacity) && c.Verdict != strength.NotApplied {
		p.ends("demand", id.Demand, id.Unit, c.Demand)
		p.ends("capacity", id.Capacity, id.Unit, c.Capacity)
	}
	return p.slips
}

func (p *replay) say(key, format string, args ...any) {
	if !p.said[key] {
		p.said[key] = true
		p.slips = append(p.slips, fmt.Sprintf(format, args...))
	}
}

func (p *replay) givenLine(l strength.Line) {
	p.given[l.Symbol] = true
	p.bind(l)
}

// bind makes a line's value known to the lines below it.
func (p *replay) bind(l strength.Line) {
	e, err := formula.Parse(l.Symbol)
	if err != nil || len(e.Symbols()) != 1 || e.Symbols()[0] != l.Symbol {
		p.say("name "+l.Symbol, "%q is not a symbol that a formula can use", l.Symbol)
		return
	}
	dim, factor, err := formula.ParseUnit(l.Unit)
	if err != nil || factor != 1 {
		p.say("unit "+l.Symbol, "%s: unit %q is not one of N, mm, MPa, rad and their products", l.Symbol, l.Unit)
		return
	}
	if l.Values != nil { // a formula cannot take a list
		return
	}
	p.env[l.Symbol] = formula.Value{V: l.Value, Dim: dim}
}

func (p *replay) needLine(l strength.Line) {
	text := "when(" + l.Formula + ", 1, 0)"
	got, err := p.reach.eval(text, p.env)
	switch {
	case err != nil:
		p.say(l.Formula, "need %q: %v", l.Formula, err)
	case got.V != l.Value:
		p.say(l.Formula, "need %q is %v as printed, %v as computed", l.Formula, got.V == 1, l.Value == 1)
	case l.Words == "":
		p.say(l.Formula, "need %q has no words", l.Formula)
	default:
		p.reach.note(p.id, text, p.env)
	}
}

// solvedLine takes a solver's value as it is.
func (p *replay) solvedLine(l strength.Line) {
	switch {
	case p.given[l.Symbol]:
		p.say("again "+l.Symbol, "%s is given and computed too", l.Symbol)
	case l.Words == "":
		p.say("words "+l.Symbol, "%s has neither a formula nor words that say who solved it", l.Symbol)
	}
	p.bind(l)
}

func (p *replay) formulaLine(l strength.Line) {
	key := l.Symbol + " = " + l.Formula
	got, err := p.reach.eval(l.Formula, p.env)
	if p.given[l.Symbol] {
		p.say("again "+l.Symbol, "%s is given and computed too", l.Symbol)
	}
	p.bind(l)
	want, known := p.env[l.Symbol]
	switch {
	case !known:
	case err != nil:
		p.say(key, "%s: %v", l.Symbol, err)
	case got.Dim != want.Dim && !(got.V == 0 && l.Value == 0):
		p.say(key, "%s is in %s as printed, but is given in %s", key, got.Dim, want.Dim)
	case !near(got.V, l.Value):
		p.say(key, "%s gives %.15g as printed, %.15g as computed", key, got.V, l.Value)
	default:
		p.reach.note(p.id, l.Formula, p.env)
	}
}

// ends compares what a limit state says of itself with what it compared.
func (p *replay) ends(what, text, unit string, value float64) {
	got, err := p.reach.eval(text, p.env)
	dim, _, errUnit := formula.ParseUnit(unit)
	switch {
	case err != nil || errUnit != nil:
		p.say(what, "%s %q: %v %v", what, text, err, errUnit)
	case got.Dim != dim:
		p.say(what, "%s %s is in %s, the limit state in %q", what, text, got.Dim, unit)
	case !near(got.V, value):
		p.say(what, "%s %s is %.15g, compared was %.15g", what, text, got.V, value)
	}
}

func near(a, b float64) bool {
	return a == b || math.Abs(a-b) <= closeness*max(math.Abs(a), math.Abs(b))
}

func notFinite(v float64) bool { return !finite(v) }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
