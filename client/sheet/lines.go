package sheet

// This file writes the lines of a calculation: givens, needs, and formulas as printed in the source and with numbers.

import (
	"math"
	"regexp"
	"strings"
	"sync"
	"unicode/utf8"

	"lugwright/strength"
	"lugwright/strength/formula"
)

// calculation gives the lines in order, for a face with letters of one width; nil where nothing was traced.
func calculation(lines []strength.Line) []string {
	var out []string
	wide := widest(lines)
	numbers := map[string]string{}
	for _, l := range lines {
		switch {
		case math.IsNaN(l.Value): // past a need that does not hold a line may have no value
			continue
		case l.Kind == strength.GivenLine:
			out = append(out, "given  "+pad(l.Symbol+" = "+value(l), wide)+"  "+oneLine(l.Words))
		case l.Kind == strength.NeedLine:
			out = append(out, "need   "+need(l.Formula, numbers)+": "+met(l.Value)+"; "+oneLine(l.Words))
		default:
			out = append(out, "       "+equation(l, numbers))
		}
		if l.Kind != strength.NeedLine {
			numbers[l.Symbol] = substitute(l)
		}
	}
	return out
}

// widest is the width of the widest given, so that words stand in one column.
func widest(lines []strength.Line) int {
	most := 0
	for _, l := range lines {
		if l.Kind == strength.GivenLine {
			most = max(most, utf8.RuneCountInString(l.Symbol+" = "+value(l)))
		}
	}
	return most
}

func pad(s string, to int) string {
	return s + strings.Repeat(" ", max(0, to-utf8.RuneCountInString(s)))
}

// value is that of a line; a list has several.
func value(l strength.Line) string {
	if l.Values == nil {
		return withUnit(figures(l.Value), l.Unit)
	}
	texts := make([]string, len(l.Values))
	for i, v := range l.Values {
		texts[i] = figures(v)
	}
	return withUnit(strings.Join(texts, ", "), l.Unit)
}

// substitute is the number that stands for a symbol in later lines. Units of N, mm and MPa go without saying; a number in
// any other unit keeps it.
func substitute(l strength.Line) string {
	if _, factor, err := formula.ParseUnit(l.Unit); err != nil || factor != 1 {
		return figures(l.Value) + " " + oneLine(l.Unit)
	}
	return figures(l.Value)
}

func met(v float64) string {
	if v == 1 {
		return "met"
	}
	return "NOT MET"
}

var comparison = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`<=|>=|==|!=|<|>`) })

var signs = strings.NewReplacer("<=", "≤", ">=", "≥", "==", "=", "!=", "≠")

// need is a condition, as printed and with numbers.
func need(condition string, numbers map[string]string) string {
	sides := comparison().Split(condition, -1)
	texts, withNumbers := make([]string, len(sides)), make([]string, len(sides))
	for i, side := range sides {
		texts[i], withNumbers[i] = both(side, numbers)
	}
	between := comparison().FindAllString(condition, -1)
	text, filled := joined(texts, between), joined(withNumbers, between)
	if filled == text {
		return text
	}
	return text + " (" + filled + ")"
}

func joined(sides, between []string) string {
	out := sides[0]
	for i, sign := range between {
		out += " " + signs.Replace(sign) + " " + sides[i+1]
	}
	return out
}

// equation is symbol = formula = numbers = value unit, leaving out what would only repeat.
func equation(l strength.Line, numbers map[string]string) string {
	if l.Formula == "" { // a solver's value
		return l.Symbol + " = " + value(l) + "  (" + oneLine(l.Words) + ")"
	}
	text, withNumbers := both(l.Formula, numbers)
	out := l.Symbol
	last := ""
	for _, step := range []string{text, withNumbers, value(l)} {
		if step != last {
			out += " = " + step
		}
		last = step
	}
	return out
}

// both gives a quoted formula as a reader sees it, and that with numbers. One that cannot be read stays as quoted.
func both(quoted string, numbers map[string]string) (text, withNumbers string) {
	e, err := formula.Parse(quoted)
	if err != nil {
		return oneLine(quoted), oneLine(quoted)
	}
	return e.Text(), e.WithNumbers(func(symbol string) (string, bool) { n, ok := numbers[symbol]; return n, ok })
}
