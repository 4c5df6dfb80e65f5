package job

// This file writes the numbers of the services' words, which speak of mm, kg and kN, in the units of an inch job.

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"sync"

	"lugwright/units"
)

// A quantity is a number, or two that belong together, before its unit; "N mm" and "N/mm" are other things.
var quantities = sync.OnceValue(func() *regexp.Regexp {
	const number = `-?[0-9]+(?:\.[0-9]+)?(?:[eE][-+]?[0-9]+)?`
	return regexp.MustCompile(`(` + number + `)(?:( to | and | or | x | against )(` + number + `))? (mm2|mm|kg|kN m|kN|N m|MPa)($|[^\pL\pN·*/²³⁴])`)
})

// InInches writes every quantity of a text in inches, pounds and what goes with them.
func InInches(text string) string {
	return quantities().ReplaceAllStringFunc(text, func(s string) string {
		m := quantities().FindStringSubmatch(s)
		out := inInchUnits(m[1], m[4])
		if m[2] != "" {
			out += m[2] + inInchUnits(m[3], m[4])
		}
		return out + m[5]
	})
}

func inInchUnits(number, unit string) string {
	if unit == "mm" {
		return inches(number)
	}
	v, err := strconv.ParseFloat(number, 64)
	factor, dim, known := units.Factor(unit)
	if err != nil || known != nil {
		return number + " " + unit
	}
	return units.Format(v*factor, dim, units.Inch)
}

// inches writes a length given as mm. The services round to four figures: what a sixty-fourth of an inch rounds to is that fraction.
func inches(mm string) string {
	v, err := strconv.ParseFloat(mm, 64)
	if err != nil {
		return mm + " mm"
	}
	const sixtyFourth = 25.4 / 64
	if near := math.Round(v/sixtyFourth) * sixtyFourth; math.Abs(v) < 100 && fmt.Sprintf("%.4g", near) == mm {
		v = near
	}
	return units.Format(v, units.Length, units.Inch)
}
