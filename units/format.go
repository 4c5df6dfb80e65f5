package units

// This file writes numbers inside as a shop reads them. Everything is rounded here, once.

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A step is a unit to write in, from a least size (of that unit) on, the decimals that a large number still keeps, and the
// significant figures that a small one does.
type step struct {
	unit     string
	least    float64
	decimals int
	figures  int
}

// pens lists, for each kind and system, the units to write in, largest first.
var pens = map[Dim][2][]step{
	Length:         {{{"mm", 0, 2, 4}}, {{"in", 0, 3, 3}}},
	Force:          {{{"kN", 1, 0, 4}, {"N", 0, 0, 4}}, {{"kip", 1, 0, 4}, {"lbf", 0, 0, 4}}},
	Moment:         {{{"kN m", 1, 0, 4}, {"N m", 1, 0, 4}, {"N mm", 0, 0, 4}}, {{"kip in", 1, 0, 4}, {"lbf in", 0, 0, 4}}},
	Stress:         {{{"MPa", 0, 0, 4}}, {{"ksi", 1, 0, 4}, {"psi", 0, 0, 4}}},
	Mass:           {{{"kg", 0, 1, 4}}, {{"lb", 0, 1, 4}}},
	Angle:          {{{"deg", 0, 2, 4}}, {{"deg", 0, 2, 4}}},
	Area:           {{{"mm2", 0, 0, 4}}, {{"in2", 0, 2, 4}}},
	SectionModulus: {{{"mm3", 0, 0, 4}}, {{"in3", 0, 2, 4}}},
	SecondMoment:   {{{"mm4", 0, 0, 4}}, {{"in4", 0, 2, 4}}},
	Acceleration:   {{{"g", 0, 3, 4}}, {{"g", 0, 3, 4}}},
	ForcePerLength: {{{"N/mm", 0, 0, 4}}, {{"kip/in", 1, 0, 4}, {"lbf/in", 0, 0, 4}}},
	Volume:         {{{"L", 0, 1, 4}}, {{"US gal", 0, 1, 4}}},
	Density:        {{{"kg/L", 0, 3, 4}}, {{"lb/US gal", 0, 3, 4}}},
	Ratio:          {{{"", 0, 3, 4}}, {{"", 0, 3, 4}}},
	Count:          {{{"", 0, 0, 4}}, {{"", 0, 0, 4}}},
}

// notFinite is written for NaN and infinities, which no quantity should be.
const notFinite = "not finite"

// Format writes a number inside with a unit of the system, to four significant figures (inches: three) or a few decimals,
// whichever is finer: "12 mm", "15.21 kN", "0.472 in". A length that is a whole number of sixty-fourths of an inch is written
// as a fraction in Inch: "1-3/8 in". Parse reads every result back. For a ratio of demand to capacity use Utilisation.
func Format(v float64, d Dim, system System) string {
	pen, ok := pens[d]
	if !ok || math.IsNaN(v) || math.IsInf(v, 0) {
		return notFinite
	}
	if system != Inch {
		system = Metric
	}
	if d == Length && system == Inch {
		if text, ok := fraction(v / inch); ok {
			return text
		}
	}
	return write(v, pen[system])
}

func write(v float64, steps []step) string {
	s, n := choose(v, steps)
	text := s.number(n)
	if s.unit == "" {
		return text
	}
	return text + " " + s.unit
}

// choose takes the largest unit that v fills, and gives v in it.
func choose(v float64, steps []step) (step, float64) {
	for _, s := range steps[:len(steps)-1] {
		if n := v / oneOf(s.unit); math.Abs(n) >= s.least {
			return s, n
		}
	}
	last := steps[len(steps)-1]
	return last, v / oneOf(last.unit)
}

func oneOf(unitName string) float64 {
	if unitName == "" {
		return 1
	}
	if u, ok := byName[unitName]; ok { // as nearly all are written
		return u.factor
	}
	return byName[canonical(unitName)].factor
}

// number writes x without trailing zeros; an exponent appears only outside the sizes of a shop.
func (s step) number(x float64) string {
	size, decimals := math.Abs(x), s.decimals
	if size != 0 && (size < 1e-6 || size >= 1e15) {
		return strconv.FormatFloat(x, 'g', s.figures, 64)
	}
	if size != 0 {
		decimals = max(decimals, s.figures-1-int(math.Floor(math.Log10(size))))
	}
	text := FormatPlain(x, decimals)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// FormatPlain writes v with a fixed number of decimals (0 to 15), never as -0 and never with an exponent.
func FormatPlain(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return notFinite
	}
	text := strconv.FormatFloat(v, 'f', min(max(decimals, 0), 15), 64)
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text
}

// Utilisation writes demand over capacity with two decimals. A value above one never reads 1.00: it goes up to 1.01, so that
// rounding does not turn a failure into a pass.
func Utilisation(u float64) string {
	text := FormatPlain(u, 2)
	if u > 1 && text == "1.00" {
		return "1.01"
	}
	return text
}

// fraction writes inches as a whole and a fraction when they are a whole number of sixty-fourths.
func fraction(inches float64) (string, bool) {
	parts := math.Round(inches * 64)
	if math.Abs(inches*64-parts) > 1e-7 || math.Abs(parts) > 1e7 {
		return "", false
	}
	sign := ""
	if parts < 0 {
		sign = "-"
	}
	whole, top := int64(math.Abs(parts))/64, int64(math.Abs(parts))%64
	bottom := int64(64)
	for top > 0 && top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	switch {
	case top == 0:
		return fmt.Sprintf("%s%d in", sign, whole), true
	case whole == 0:
		return fmt.Sprintf("%s%d/%d in", sign, top, bottom), true
	}
	return fmt.Sprintf("%s%d-%d/%d in", sign, whole, top, bottom), true
}
