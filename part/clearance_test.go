package part

import (
	"math"
	"testing"
)

// Source: ASME B18.2.8-1999 Table 1, from memory, cross-checked on a handbook page against the metric drills of the same standard: 13.5, 14.25 and
// 15.5 mm for 1/2 in. ISO 273 from memory.
func TestClearance(t *testing.T) {
	for _, c := range []struct {
		size string
		fit  Fit
		want float64
		slop float64
	}{
		{"1/2-13", CloseFit, 13.5, 0.05}, {"1/2-13", NormalFit, 14.25, 0.05}, {"1/2-13", LooseFit, 15.5, 0.05},
		{"1/4-20", NormalFit, 9. / 32 * 25.4, 1e-9}, {"3/4-10", LooseFit, 29. / 32 * 25.4, 1e-9},
		{"M12", CloseFit, 13, 0}, {"M12", NormalFit, 13.5, 0}, {"M12", LooseFit, 14.5, 0}, {"M20", NormalFit, 22, 0}, {"M12x1.25", NormalFit, 13.5, 0},
	} {
		got, err := ClearanceMM(c.size, c.fit)
		if err != nil || math.Abs(got-c.want) > c.slop {
			t.Errorf("%s %s: %g, %v; want %g", c.size, c.fit, got, err, c.want)
		}
	}
	for _, size := range []string{"M7", "2-4.5", "wide"} {
		if _, err := ClearanceMM(size, NormalFit); err == nil {
			t.Errorf("%s has a hole", size)
		}
	}
}

// Each table rises with the diameter, a looser fit is larger, and a tap drill is smaller than its thread by about the pitch.
func TestHoleTables(t *testing.T) {
	for _, table := range [][]holes{metricHoles, inchHoles} {
		for i, h := range table {
			if !(h.dia < h.close && h.close < h.normal && h.normal < h.loose && h.tap < h.dia && h.tap > 0.75*h.dia) {
				t.Errorf("%+v", h)
			}
			if i > 0 && !(h.dia > table[i-1].dia && h.close > table[i-1].close && h.normal > table[i-1].normal && h.loose > table[i-1].loose && h.tap > table[i-1].tap) {
				t.Errorf("%+v after %+v", h, table[i-1])
			}
		}
	}
	// ISO 262 pitches: the tap drill is the diameter less the pitch, to the nearest drill.
	for size, pitch := range map[string]float64{"M6": 1, "M8": 1.25, "M10": 1.5, "M12": 1.75, "M16": 2, "M20": 2.5, "M24": 3, "M30": 3.5, "M36": 4} {
		dia, _ := NominalDiaMM(size)
		if got, err := TapDrillMM(size); err != nil || math.Abs(got-(dia-pitch)) > 0.1 {
			t.Errorf("%s: %g, %v; want %g", size, got, err, dia-pitch)
		}
	}
}
