package units

// This file turns the quantities in sentences, which the services write in mm, kg and kN.

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// A quantity is one number or several that belong together before their unit: "6 mm", "150 x 25 mm", "0.8 to 1.3 mm". "N mm" and "N/mm" are other things.
const number = `-?[0-9]+(?:\.[0-9]+)?(?:[eE][-+]?[0-9]+)?`

var (
	quantities = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`(` + number + `(?:(?: to | and | or | x | against )` + number + `)*) (mm2|mm|kg|kN m|kN|N m|MPa)($|[^\pL\pN·*/²³⁴])`)
	})
	numbers = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(number) })
)

// Words is a sentence with its quantities brought to a system.
func Words(text string, system System) string {
	if system != Inch {
		return text
	}
	return quantities().ReplaceAllStringFunc(text, func(s string) string {
		m := quantities().FindStringSubmatch(s)
		if m[2] == "mm" {
			return numbers().ReplaceAllStringFunc(m[1], func(n string) string { return strings.TrimSuffix(inchesOf(n), " in") }) + " in" + m[3]
		}
		return numbers().ReplaceAllStringFunc(m[1], func(n string) string { return inInchUnits(n, m[2]) }) + m[3]
	})
}

func inInchUnits(number, unit string) string {
	v, err := strconv.ParseFloat(number, 64)
	factor, dim, known := Factor(unit)
	if err != nil || known != nil {
		return number + " " + unit
	}
	return Format(v*factor, dim, Inch)
}

// inchesOf writes a length given as mm. The services round to four figures: what a sixty-fourth of an inch rounds to is that fraction.
func inchesOf(mm string) string {
	v, err := strconv.ParseFloat(mm, 64)
	if err != nil {
		return mm + " mm"
	}
	const sixtyFourth, figures = inch / 64, 4
	digits := len(strings.TrimLeft(strings.NewReplacer("-", "", ".", "").Replace(mm), "0"))
	if near := math.Round(v/sixtyFourth) * sixtyFourth; digits == figures && fmt.Sprintf("%.4g", near) == mm {
		v = near
	}
	if math.Abs(v) < 0.01*inch { // thousandths would say too little
		return Format(v, Length, Inch)
	}
	return ShopLength(v, Inch)
}

// ShopLength writes a length as a shop reads it: inches are fractions, or at most thousandths.
func ShopLength(mm float64, system System) string {
	text := Format(mm, Length, system)
	if system != Inch || strings.Contains(text, "/") {
		return text
	}
	return strings.TrimSuffix(strings.TrimRight(FormatPlain(mm/inch, 3), "0"), ".") + " in"
}

// WeldLength writes a length that a weld must have at least, as a welder reads it: inches in sixteenths, never rounded down.
func WeldLength(mm float64, system System) string {
	if system != Inch {
		return ShopLength(mm, system)
	}
	const noise = 1e-5 // sixteenths: of sums of coordinates
	return ShopLength(math.Ceil(mm/inch*16-noise)/16*inch, Inch)
}

// Unitless is a quantity's number without its unit, for where the unit is said once.
func Unitless(text string) string {
	if i := strings.LastIndexByte(text, ' '); i > 0 {
		return text[:i]
	}
	return text
}
