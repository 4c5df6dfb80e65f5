package command

// This file writes the lines of a calculation: givens, conditions, formulas as printed in the source and with numbers.

import (
	"math"
	"strings"

	"lugwright/strength"
	"lugwright/strength/formula"
	"lugwright/units"
)

// calculation writes lines from the indent on.
func (p *printer) calculation(lines []strength.Line, indent int, system units.System) {
	values := map[string]string{}
	for _, l := range lines {
		if math.IsNaN(l.Value) {
			continue // past a need that does not hold a line may have no value
		}
		result := showLine(l, system)
		switch l.Kind {
		case strength.GivenLine:
			p.wrapped(margin(indent)+l.Symbol+" = "+result, indent+26, l.Words)
		case strength.NeedLine:
			p.wrapped(margin(indent)+met(l.Value), indent+9, readable(l.Formula)+"  "+l.Words)
		default:
			p.wrapped(margin(indent)+l.Symbol+" ", indent+9, steps(l, values, result))
		}
		if l.Symbol != "" {
			values[l.Symbol] = result
		}
	}
}

func margin(n int) string { return pad("", n) }

func met(v float64) string {
	if v == 1 {
		return "met"
	}
	return "NOT MET"
}

// readable is a quoted formula as a reader sees it. One that cannot be read stays as quoted.
func readable(quoted string) string {
	e, err := formula.Parse(quoted)
	if err != nil {
		return quoted
	}
	return e.Text()
}

// showLine is the value of a line; a list has several.
func showLine(l strength.Line, system units.System) string {
	if l.Values == nil {
		return show(l.Value, l.Unit, system)
	}
	texts := make([]string, len(l.Values))
	for i, v := range l.Values {
		texts[i] = show(v, l.Unit, system)
	}
	return strings.Join(texts, ", ")
}

// steps is "= formula = formula with numbers = result", without a step that only repeats another. A solver's value has no formula.
func steps(l strength.Line, values map[string]string, result string) string {
	if l.Formula == "" {
		return "= " + result + " (" + l.Words + ")"
	}
	e, err := formula.Parse(l.Formula)
	if err != nil {
		return "= " + l.Formula + " = " + result
	}
	text := e.Text()
	line := "= " + text
	if withNumbers := e.WithNumbers(func(symbol string) (string, bool) { v, ok := values[symbol]; return v, ok }); withNumbers != text {
		line += " = " + withNumbers
	}
	if strings.HasSuffix(line, "= "+result) {
		return line
	}
	return line + " = " + result
}
