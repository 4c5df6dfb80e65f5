package statics

import (
	"math"
	"testing"
)

// Levy's series against the printed table (Formulas for Stress and Strain, Table 11.4, case 1a), and its limit, a strip one unit wide:
// 6/8, 12 (1 - nu^2) 5/384, 1/2.
func TestSupportedPlate(t *testing.T) {
	for _, row := range [][4]float64{{1, 0.2874, 0.0444, 0.420}, {1.4, 0.4530, 0.0770, 0.478}, {1.8, 0.5688, 0.1017, 0.499}, {3, 0.7134, 0.1335, 0.505}} {
		c := SupportedPlate(row[0], 0.3)
		for i, got := range []float64{c.Stress, c.Sag, c.Edge} {
			if math.Abs(got/row[i+1]-1) > 0.006 {
				t.Errorf("a/b = %g: %.4f, printed %g", row[0], got, row[i+1])
			}
		}
	}
	c := SupportedPlate(1000, 0.3)
	if math.Abs(c.Stress-0.75) > 1e-5 || math.Abs(c.Sag-12*0.91*5/384) > 1e-9 || math.Abs(c.Edge-0.5) > 1e-3 {
		t.Errorf("strip: %+v", c)
	}
}

// Held edges: softer nowhere as the plate grows longer, stiffer than simple supports; a long plate is a built-in strip, 6/12 and
// 12 (1 - nu^2)/384.
func TestFixedPlate(t *testing.T) {
	var last PlateCoefficients
	for r := 1.0; r < 6; r += 0.05 {
		c, free := FixedPlate(r), SupportedPlate(r, 0.3)
		if c.Stress < last.Stress || c.Sag < last.Sag || c.Sag >= free.Sag {
			t.Errorf("a/b = %g: %+v after %+v, %+v when supported", r, c, last, free)
		}
		last = c
	}
	if math.Abs(last.Stress-0.5) > 1e-9 || math.Abs(last.Sag-12*0.91/384) > 1e-4 {
		t.Errorf("long plate: %+v", last)
	}
}
