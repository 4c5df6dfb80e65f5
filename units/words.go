package units

// This file turns lengths in sentences.

import (
	"regexp"
	"strconv"
	"strings"
)

// millimetres are lengths in the words of a note: "6 mm", "150 x 25 mm", "0.8 to 1.3 mm".
var millimetres = regexp.MustCompile(`([0-9.]+(?: x | to | and ))*[0-9]+(?:\.[0-9]+)? mm\b`)

// decimal are the numbers of such lengths.
var decimal = regexp.MustCompile(`[0-9]+(?:\.[0-9]+)?`)

// Words is a sentence with its lengths in mm brought to a system.
func Words(text string, system System) string {
	if system != Inch {
		return text
	}
	return millimetres.ReplaceAllStringFunc(text, func(s string) string {
		return decimal.ReplaceAllStringFunc(strings.TrimSuffix(s, " mm"), func(n string) string {
			v, err := strconv.ParseFloat(n, 64)
			if err != nil {
				return n
			}
			return strings.TrimSuffix(ShopLength(v, system), " in")
		}) + " in"
	})
}

// ShopLength writes a length as a shop reads it: inches are fractions, or at most thousandths.
func ShopLength(mm float64, system System) string {
	text := Format(mm, Length, system)
	if system != Inch || strings.Contains(text, "/") {
		return text
	}
	return strings.TrimSuffix(strings.TrimRight(FormatPlain(mm/inch, 3), "0"), ".") + " in"
}
