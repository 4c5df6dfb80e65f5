package part

import (
	"fmt"
	"strconv"
	"strings"
)

// NominalDiaMM reads the nominal diameter of a bolt or rod from its size as trade writes it: "M12", "M12x1.25",
// "1/2-13", "3/4 in". The error says what is accepted.
func NominalDiaMM(size string) (float64, error) {
	s := strings.TrimSpace(size)
	if rest, ok := strings.CutPrefix(s, "M"); ok {
		dia, _, _ := strings.Cut(rest, "x")
		if v, err := strconv.ParseFloat(dia, 64); err == nil && v >= 1 && v <= 100 {
			return v, nil
		}
		return 0, sizeError(size)
	}
	s = strings.TrimSpace(strings.TrimSuffix(s, "in"))
	whole, rest := 0.0, s
	// "1-1/4-7" is one and a quarter, 7 threads to the inch; "1/2-13" a half, 13 threads.
	if a, b, ok := strings.Cut(s, "-"); ok {
		if strings.Contains(b, "/") && !strings.Contains(a, "/") {
			v, err := strconv.ParseFloat(a, 64)
			if err != nil {
				return 0, sizeError(size)
			}
			whole, rest = v, b
		}
		rest, _, _ = strings.Cut(rest, "-")
	}
	num, den, isFraction := strings.Cut(rest, "/")
	n, err := strconv.ParseFloat(strings.TrimSpace(num), 64)
	d := 1.0
	if err == nil && isFraction {
		d, err = strconv.ParseFloat(strings.TrimSpace(den), 64)
	}
	dia := (whole + n/d) * 25.4
	if err != nil || !(dia >= 1 && dia <= 150) {
		return 0, sizeError(size)
	}
	return dia, nil
}

func sizeError(size string) error {
	return fmt.Errorf("%q is no bolt size; write one such as M12 or 1/2-13", size)
}
