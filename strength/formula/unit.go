package formula

// This file holds unit names: those that may stand in an expression, and those that ParseUnit reads.

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Exact definitions: inch and pound of the international yard and pound agreement (1959), standard gravity of the 3rd CGPM
// (1901); repeated in NIST SP 811 (2008), appendix B.
const (
	inch  = 25.4                 // mm
	lbf   = 0.45359237 * 9.80665 // N
	kip   = 1000 * lbf
	ksi   = kip / (inch * inch) // MPa
	pound = 0.45359237          // kg
)

var dimStress = dimForce.over(dimLength).over(dimLength)

// constants may stand in an expression. They are few, because each takes a name away from the symbols.
var constants = map[string]Value{
	"mm":  {1, dimLength},
	"in":  {inch, dimLength},
	"ft":  {12 * inch, dimLength},
	"N":   {1, dimForce},
	"kN":  {1000, dimForce},
	"lbf": {lbf, dimForce},
	"kip": {kip, dimForce},
	"MPa": {1, dimStress},
	"ksi": {ksi, dimStress},
	"kg":  {1, dimMass},
	"rad": {1, Dim{}},
	"deg": {math.Pi / 180, Dim{}},
}

// further are read by ParseUnit only.
var further = map[string]Value{
	"cm":  {10, dimLength},
	"MN":  {1e6, dimForce},
	"kgf": {9.80665, dimForce},
	"m":   {1000, dimLength},
	"Pa":  {1e-6, dimStress},
	"GPa": {1000, dimStress},
	"psi": {ksi / 1000, dimStress},
	"lb":  {pound, dimMass},
	"%":   {0.01, Dim{}},
	"1":   {1, Dim{}},
}

// ParseUnit reads a unit such as "N", "mm^2", "mm2", "N*mm", "N/mm", "kip/in", "1" or "" (a pure number). The factor turns a
// number of these units into N, mm, kg and rad. Each "/" divides by the one name behind it.
func ParseUnit(text string) (Dim, float64, error) {
	total := Value{V: 1}
	if text == "" {
		return total.Dim, total.V, nil
	}
	if len(text) > longestUnit {
		return Dim{}, 0, fmt.Errorf("unit %q... is too long; write one such as N*mm", text[:longestUnit])
	}
	plain := strings.ReplaceAll(text, "·", "*")
	for start := 0; start <= len(plain); {
		end := start + strings.IndexAny(plain[start:]+"*", "*/")
		one, err := oneUnit(plain[start:end])
		if err != nil {
			return Dim{}, 0, fmt.Errorf("unit %q: %w", text, err)
		}
		if start > 0 && plain[start-1] == '/' {
			total = Value{total.V / one.V, total.Dim.over(one.Dim)}
		} else {
			total = Value{total.V * one.V, total.Dim.times(one.Dim)}
		}
		start = end + 1
	}
	if total.V == 0 || math.IsInf(total.V, 0) {
		return Dim{}, 0, fmt.Errorf("unit %q is too large or too small", text)
	}
	return total.Dim, total.V, nil
}

const longestUnit = 40

// oneUnit reads a name with a whole power: "mm", "mm2", "mm^2", "mm^-1".
func oneUnit(text string) (Value, error) {
	text = strings.TrimSpace(text)
	if u, ok := unitNamed(text); ok {
		return u, nil
	}
	name := strings.TrimRight(text, "0123456789")
	digits := text[len(name):]
	name, minus := strings.CutSuffix(name, "^-")
	name = strings.TrimSuffix(name, "^")
	u, ok := unitNamed(name)
	power, err := strconv.Atoi(digits)
	if !ok || err != nil || power < 1 || power > 9 {
		return Value{}, fmt.Errorf("%q is not a known unit; write names such as N, mm, MPa, kg, rad, in, kip, ksi, joined by * and /", text)
	}
	if minus {
		power = -power
	}
	d, _ := u.Dim.power(float64(power))
	return Value{math.Pow(u.V, float64(power)), d}, nil
}

func unitNamed(name string) (Value, bool) {
	if u, ok := constants[name]; ok {
		return u, true
	}
	u, ok := further[name]
	return u, ok
}
