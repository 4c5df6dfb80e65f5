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
	if c := SupportedPlate(1, 0.3); math.Abs(c.Second/c.Stress-1) > 1e-5 {
		t.Errorf("square: %+v, alike along both sides", c)
	}
	c := SupportedPlate(1000, 0.3)
	if math.Abs(c.Second-0.3*0.75) > 1e-5 || math.Abs(c.Stress-0.75) > 1e-5 || math.Abs(c.Sag-12*0.91*5/384) > 1e-9 || math.Abs(c.Edge-0.5) > 1e-3 {
		t.Errorf("strip: %+v", c)
	}
}

// Held edges: softer nowhere as the plate grows longer, stiffer than simple supports; a long plate is a built-in strip, 6/12 and
// 12 (1 - nu^2)/384.
func TestFixedPlate(t *testing.T) {
	var last PlateCoefficients
	for r := 1.0; r < 6; r += 0.05 {
		c, free := FixedPlate(r), SupportedPlate(r, 0.3)
		if c.Stress < last.Stress || c.Second < last.Second || c.Second >= c.Stress || c.Sag < last.Sag || c.Sag >= free.Sag {
			t.Errorf("a/b = %g: %+v after %+v, %+v when supported", r, c, last, free)
		}
		last = c
	}
	if math.Abs(last.Stress-0.5) > 1e-9 || math.Abs(last.Second-0.25) > 1e-9 || math.Abs(last.Sag-12*0.91/384) > 1e-4 {
		t.Errorf("long plate: %+v", last)
	}
}

// The sag under a middle force by Navier's double series; the constant of the stress grows with the plate to 1, that of a strip.
func TestFootedPlate(t *testing.T) {
	last := 0.0
	for _, r := range []float64{1, 1.2, 1.4, 1.6, 1.8, 2} {
		sum := 0.0
		for m := 1.0; m < 400; m += 2 {
			for n := 1.0; n < 400; n += 2 {
				k := m*m/(r*r) + n*n
				sum += 1 / (k * k)
			}
		}
		want := 12 * 0.91 * 4 / (math.Pow(math.Pi, 4) * r) * sum
		beta, alpha := FootedPlate(r)
		if math.Abs(alpha/want-1) > 0.01 || beta <= last || beta > 1 {
			t.Errorf("a/b = %g: sag %.4f, series %.4f; stress constant %g after %g", r, alpha, want, beta, last)
		}
		last = beta
	}
}
