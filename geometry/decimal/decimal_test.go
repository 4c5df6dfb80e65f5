package decimal

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// seeds are numbers half-way between two of few decimals, the largest, subnormal ones and ones that end in noughts.
var seeds = []float64{
	0, 1.0 / 8192, 3.0 / 8192, 123456 + 1.0/8192, 0.0625, 0.1875, 0.5, 1.5, 2.5, 1e6, math.Nextafter(1e6, 0), 999999.9999999999, 0.9999999999995,
	5e-13, math.Nextafter(5e-13, 1), 1.5e-12, 5e-324, 0x1p-1022, 1e-300, 12.34, 1000, 999.999, 1.001, 100.000001, 0.0005, 0.0015, 0.0025,
}

func want(v float64, places int) string {
	s := strconv.FormatFloat(v, 'f', places, 64)
	if places > 0 {
		s = strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

func FuzzAppend(f *testing.F) {
	for _, v := range seeds {
		f.Add(v)
	}
	f.Fuzz(func(t *testing.T, v float64) {
		if !(math.Abs(v) <= Most) {
			v = math.Mod(v, Most)
		}
		if math.IsNaN(v) {
			return
		}
		for _, v := range []float64{v, -v, math.Round(v*1e3) / 1e3, math.Round(v*8192) / 8192, math.Round(v)} {
			for places := range Places + 1 {
				if got := string(Append(nil, v, places)); got != want(v, places) {
					t.Errorf("%g with %d decimals: %q, want %q", v, places, got, want(v, places))
				}
			}
		}
	})
}
