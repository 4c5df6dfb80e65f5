package handbook

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"lugwright/strength/formula"
	"lugwright/units"
)

// kips is the k that US manuals print for kip: k, k-ft, ft-k, k/in.; an exponent's or another unit's k is none.
var kips = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(^|[ */-])k($|[ */-])`) })

// pounds are the lb that US examples print for a pound of force: lb, lbs, lb-in, ft-lb, lb/in.
var pounds = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(^|[^A-Za-z])lbs?($|[^A-Za-z])`) })

// quantity reads a printed quantity that must measure what the unit does. Units that a shop has no name for (in5, 1/in, kip*in/in)
// are read as products. No given and no result is a mass: where a force is wanted, or what holds one, lb is lbf. A number alone is a pure number, never an angle.
func quantity(text, unit string) (float64, error) {
	text = kips().ReplaceAllString(text, "${1}kip$2")
	if strings.Contains(unit, "N") || strings.Contains(unit, "MPa") {
		text = pounds().ReplaceAllString(text, "${1}lbf$2")
	}
	factor, dim, err := units.Factor(unit)
	if err == nil && factor == 1 {
		v, err := units.Parse(text, dim)
		if err == nil {
			return v, nil
		}
		if _, bare := strconv.ParseFloat(strings.TrimSpace(text), 64); bare == nil {
			return 0, err
		}
		if v, errProduct := product(text, unit); errProduct == nil {
			return v, nil
		}
		return 0, err
	}
	return product(text, unit)
}

// product reads a decimal number and a unit of the same dimension as the given one.
func product(text, unit string) (float64, error) {
	number, name, _ := strings.Cut(strings.TrimSpace(text), " ")
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("a decimal number, a blank and a unit are needed")
	}
	want, _, err := formula.ParseUnit(unit)
	if err != nil {
		return 0, err
	}
	dim, factor, err := formula.ParseUnit(strings.ReplaceAll(strings.ReplaceAll(strings.TrimSpace(name), " ", "*"), "-", "*"))
	if err != nil {
		return 0, err
	}
	if dim != want {
		return 0, fmt.Errorf("a quantity in %s or the like is needed", unit)
	}
	return v * factor, nil
}

// fraction is one of two whole numbers, alone or behind a whole number and a dash; 1/in is none.
var fraction = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(-?[0-9]+-)?-?[0-9]+/[0-9]+( |$)`) })

// exact is what a printed fraction is held to, in the unit of the line: 3/16 in has no last digit.
const exact = 1e-9

// halfDigit is half a unit of the last printed digit.
func halfDigit(text, unit string) (float64, error) {
	number, name, _ := strings.Cut(strings.TrimSpace(text), " ")
	if fraction().MatchString(number) || fraction().MatchString(name) { // 3/16 in, 1-3/8 in, 1 1/2 in
		return exact, nil
	}
	if _, err := strconv.ParseFloat(number, 64); err != nil {
		return 0, fmt.Errorf("a decimal number, a blank and a unit are needed")
	}
	mantissa, exponent, scientific := strings.Cut(strings.ToLower(number), "e")
	_, decimals, _ := strings.Cut(mantissa, ".")
	half := "0." + strings.Repeat("0", len(decimals)) + "5"
	if scientific {
		half += "e" + exponent
	}
	return quantity(strings.TrimSpace(half+" "+name), unit)
}
