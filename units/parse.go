package units

// This file reads a quantity: sign, number, unit, and the feet-and-inches pair.

import (
	"math"
	"strings"
)

// longest is far more than any quantity needs, in bytes.
const longest = 100

// Parse reads one quantity of the wanted kind and gives its number inside. It accepts a sign, a decimal ("12.5", "1e3"), a
// fraction ("1/4", "1-3/8", "1 3/8"), a unit with or without a blank before it, and feet with inches ("5'6\"", "5 ft 6 in").
// A number without a unit is accepted for Ratio and Count only. Any other text is an *Error, and the result is then 0.
func Parse(text string, want Dim) (float64, error) {
	if _, ok := words[want]; !ok {
		return 0, &Error{text, want, "cannot be read", "the kind of quantity asked for is not known"}
	}
	q, wrong := read(text)
	if wrong != nil {
		return 0, wrong.about(text, want)
	}
	return q.as(text, want)
}

// ParseAny reads one quantity of whatever kind its unit says. A number without a unit is a Ratio.
func ParseAny(text string) (value float64, dim Dim, err error) {
	q, wrong := read(text)
	if wrong != nil {
		return 0, 0, wrong.about(text, 0)
	}
	return q.value, q.dim, nil
}

type quantity struct {
	value float64
	dim   Dim
	unit  string // canonical; empty for a bare number
}

func (q quantity) as(text string, want Dim) (float64, error) {
	switch {
	case q.unit == "" && !want.bare():
		return 0, &Error{text, want, "has no unit", want.invited()}
	case want == Count && q.unit == "" && q.value != math.Trunc(q.value):
		return 0, &Error{text, want, "is not a whole number", want.invited()}
	case q.dim != want && q.unit != "":
		return 0, &Error{text, want, "is " + words[q.dim].name, want.needed() + q.hint(want)}
	}
	return q.value, nil
}

// hint tells apart the pairs that a shop writes alike.
func (q quantity) hint(want Dim) string {
	switch {
	case q.dim == Mass && want == Force && strings.HasPrefix(q.unit, "lb"):
		return " (write lbf for a force)"
	case q.dim == Mass && want == Force:
		return " (write the weight in N or kN)"
	case q.dim == Force && want == Mass && q.unit == "lbf":
		return " (write lb for a mass)"
	case q.dim == Acceleration && want == Mass:
		return " (g is gravity here, not gram)"
	}
	return ""
}

// A fault is what is wrong with a text, before it is known which kind was wanted.
type fault struct {
	reason string
	accept string // empty: name the wanted kind's example
	unit   string // the unknown unit, to be told the nearest one of the wanted kind
}

func (f *fault) about(text string, want Dim) *Error {
	accept := f.accept
	switch {
	case f.unit != "":
		accept = suggest(f.unit, want)
	case accept != "":
	case want == 0:
		accept = "write a number and a unit such as 12 mm"
	default:
		accept = want.invited()
	}
	return &Error{text, want, f.reason, accept}
}

func read(text string) (quantity, *fault) {
	if len(text) > longest {
		return quantity{}, &fault{reason: "is too long for a quantity"}
	}
	rest := strings.TrimSpace(tidy(text))
	if err := refuseLookalikes(rest); err != nil {
		return quantity{}, err
	}
	sign := 1.0
	if trimmed := strings.TrimLeft(rest, "+-"); len(rest)-len(trimmed) == 1 {
		if rest[0] == '-' {
			sign = -1
		}
		rest = strings.TrimLeft(trimmed, " ")
	}
	q, err := readUnsigned(rest)
	q.value *= sign
	return q, err
}

func readUnsigned(text string) (quantity, *fault) {
	n, rest, err := readNumber(text)
	if err != nil {
		return quantity{}, err
	}
	if inches, ok := afterFeet(rest); ok {
		return readFeetInches(n, inches)
	}
	return readUnit(n, rest)
}

func readUnit(n float64, written string) (quantity, *fault) {
	name := canonical(written)
	if name == "" {
		return quantity{n, Ratio, ""}, nil
	}
	if strings.IndexByte("0123456789./+*", name[0]) >= 0 {
		return quantity{}, &fault{reason: "is not one number with one unit"}
	}
	factor, dim, err := Factor(written)
	if err != nil {
		return quantity{}, &fault{reason: "has the unknown unit " + shown(written), unit: name}
	}
	value := n * factor
	if math.IsInf(value, 0) {
		return quantity{}, &fault{reason: "is too large"}
	}
	return quantity{value, dim, name}, nil
}

// afterFeet gives what follows a feet mark when a second number does: `6"` of `5'-6"`, `6 in` of `5 ft 6 in`.
func afterFeet(rest string) (string, bool) {
	rest = strings.TrimLeft(rest, " ")
	for _, mark := range []string{"'", "feet", "foot", "ft"} {
		if after, ok := strings.CutPrefix(rest, mark); ok {
			after = strings.TrimLeft(strings.TrimPrefix(strings.TrimLeft(after, " "), "-"), " ")
			_, isUnit := byName[canonical(rest)] // ft2
			return after, !isUnit && after != "" && (isDigit(after[0]) || after[0] == '.')
		}
	}
	return "", false
}

func readFeetInches(feet float64, text string) (quantity, *fault) {
	n, rest, err := readNumber(text)
	if err != nil {
		return quantity{}, err
	}
	q, err := readUnit(n, rest)
	if err != nil {
		return quantity{}, err
	}
	if u := byName[q.unit]; u.dim != Length || u.factor != inch {
		return quantity{}, &fault{reason: "has feet followed by something else than inches", accept: `write feet and inches as 5 ft 6 in or 5'6"`}
	}
	if feet != math.Trunc(feet) || n >= 12 {
		return quantity{}, &fault{reason: "does not split into whole feet and less than 12 inches", accept: `write feet and inches as 5 ft 6 in or 5'6"`}
	}
	return quantity{feet*foot + q.value, Length, "ft"}, nil
}
