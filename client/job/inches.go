package job

// This file writes the lengths of the services' refusals, which speak of mm, in the units of an inch job.

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"sync"

	"lugwright/units"
)

// A length is a number, or two that belong together, before mm; "N mm" and "mm2" are other things.
var lengths = sync.OnceValue(func() *regexp.Regexp {
	const number = `-?[0-9]+(?:\.[0-9]+)?(?:[eE][-+]?[0-9]+)?`
	return regexp.MustCompile(`(` + number + `)(?:( to | and | or | x )(` + number + `))? mm($|[^\pL\pN·*/²³⁴])`)
})

// InInches writes every "<number> mm" of a text in inches.
func InInches(text string) string {
	return lengths().ReplaceAllStringFunc(text, func(s string) string {
		m := lengths().FindStringSubmatch(s)
		out := inches(m[1])
		if m[2] != "" {
			out += m[2] + inches(m[3])
		}
		return out + m[4]
	})
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
