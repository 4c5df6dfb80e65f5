package units

// This file reads the number in front of a unit, and evens out typographic variants.

import (
	"math"
	"strconv"
	"strings"
)

// tidy turns the typographic forms of blanks, minus, primes, dots, powers and fractions into plain ones.
var typographic = strings.NewReplacer(
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "\t", " ",
	"\u2212", "-", "\u2013", "-",
	"\u2033", `"`, "\u201d", `"`, "''", `"`, "\u2032", "'", "\u2019", "'",
	"\u00b7", "*", "\u22c5", "*", "\u00d7", "*", "\u00ba", "°",
	"²", "2", "³", "3", "⁴", "4",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

func tidy(text string) string { return typographic.Replace(text) }

// refuseLookalikes refuses what other languages read as a number, so that no half of it is taken for one.
func refuseLookalikes(text string) *fault {
	lower := strings.ToLower(strings.TrimLeft(text, "+-"))
	switch {
	case text == "":
		return &fault{reason: "is empty"}
	case strings.Contains(text, ","):
		return &fault{reason: "has a comma", accept: "write a decimal point, and no mark between thousands: 12.5 mm, 1200 mm"}
	case strings.Contains(text, "_"):
		return &fault{reason: "has an underscore", accept: "write the digits without a mark between them: 1200 mm"}
	case len(lower) > 1 && lower[0] == '0' && lower[1] >= 'a' && lower[1] <= 'z' && strings.IndexByte("xbo", lower[1]) >= 0:
		return &fault{reason: "is not a decimal number", accept: "write it with the digits 0 to 9: 12.5 mm"}
	}
	return nil
}

// readNumber takes a decimal, a fraction or a mixed number off the front of text.
func readNumber(text string) (float64, string, *fault) {
	whole, rest, err := readDecimal(text)
	if err != nil {
		return 0, "", err
	}
	if after, ok := strings.CutPrefix(rest, "/"); ok && leadingDigits(after) > 0 {
		return readFraction(0, text)
	}
	part := afterWhole(rest)
	if n := leadingDigits(part); n > 0 && strings.HasPrefix(part[n:], "/") && whole == math.Trunc(whole) {
		return readFraction(whole, part)
	}
	return whole, rest, nil
}

// afterWhole drops the blank or dash between the whole and the fraction of a mixed number.
func afterWhole(rest string) string {
	trimmed := strings.TrimLeft(rest, " ")
	if after, ok := strings.CutPrefix(trimmed, "-"); ok {
		return strings.TrimLeft(after, " ")
	}
	return trimmed
}

func readFraction(whole float64, text string) (float64, string, *fault) {
	n := leadingDigits(text)
	d := leadingDigits(text[min(n+1, len(text)):])
	if n == 0 || d == 0 || text[n] != '/' {
		return 0, "", &fault{reason: "has a fraction that is not two whole numbers"}
	}
	top, err := strconv.ParseFloat(text[:n], 64)
	bottom, err2 := strconv.ParseFloat(text[n+1:n+1+d], 64)
	switch {
	case err != nil || err2 != nil:
		return 0, "", &fault{reason: "has a number that is too large"}
	case bottom == 0:
		return 0, "", &fault{reason: "has a fraction over zero"}
	case whole != 0 && top >= bottom:
		return 0, "", &fault{reason: "has a whole number with a fraction that is not less than one"}
	}
	return whole + top/bottom, text[n+1+d:], nil
}

// readDecimal takes digits, a point and an exponent off the front of text.
func readDecimal(text string) (float64, string, *fault) {
	end := leadingDigits(text)
	digits := end
	if end < len(text) && text[end] == '.' {
		decimals := leadingDigits(text[end+1:])
		digits += decimals
		end += 1 + decimals
	}
	if digits == 0 {
		return 0, "", &fault{reason: "does not begin with a number"}
	}
	mantissa := text[:end]
	end += exponent(text[end:])
	v, err := strconv.ParseFloat(text[:end], 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, "", &fault{reason: "has a number that is too large"}
	}
	if v == 0 && strings.ContainsAny(mantissa, "123456789") {
		return 0, "", &fault{reason: "has a number that is too small"}
	}
	return v, text[end:], nil
}

// exponent gives the length of an exponent such as e3 or E-4 at the front of text, or 0.
func exponent(text string) int {
	if text == "" || text[0]|0x20 != 'e' {
		return 0
	}
	sign := 0
	if len(text) > 1 && (text[1] == '+' || text[1] == '-') {
		sign = 1
	}
	n := leadingDigits(text[1+sign:])
	if n == 0 {
		return 0
	}
	return 1 + sign + n
}

func leadingDigits(text string) int {
	n := 0
	for n < len(text) && isDigit(text[n]) {
		n++
	}
	return n
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
