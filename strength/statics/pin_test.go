package statics

import (
	"errors"
	"math"
	"testing"
)

// twoEars is a lug between two ears, moved by shift towards the right one. X starts at the left ear's outer face.
func twoEars(tL, gL, tLug, gR, tR, shift, forceN float64) [3]Seat {
	return [3]Seat{
		{X: tL / 2, T: tL, Role: Support},
		{X: tL + gL + tLug/2 + shift, T: tLug, Role: Load, ForceN: forceN},
		{X: tL + gL + tLug + gR + tR/2, T: tR, Role: Support},
	}
}

// Symmetric clevis: M = (P/2)(t_outer/2 + t_inner/4 + g), the engineers' convention, equal to
// M_Ed = F (b + 4c + 2a)/8 of EN 1993-1-8 Figure 3.11 (from memory).
func TestPinSymmetric(t *testing.T) {
	const a, b, c, F = 12.0, 20.0, 2.0, 50e3
	seats := twoEars(a, c, b, c, a, 0, F)
	var shears [2]float64
	p, err := SolvePin(shears[:], seats[:])
	if err != nil {
		t.Fatal(err)
	}
	near(t, "M", p.MaxMoment, F*(b+4*c+2*a)/8, 1e-12)
	near(t, "at", p.AtX, a+c+b/2, 1e-12)
	near(t, "left", p.Left, F/2, 1e-12)
	near(t, "shear", p.MaxShear, F/2, 1e-12)
	near(t, "shear right", shears[1], -F/2, 1e-12)
}

// Any clevis against a plain numerical integration of the spread loads.
func TestPinUnsymmetric(t *testing.T) {
	for _, c := range []struct{ tL, gL, tLug, gR, tR, shift float64 }{
		{8, 3, 20, 1, 16, 1}, {8, 3, 20, 1, 16, -3}, {25, 0, 10, 6, 6, 6}, {10, 2, 20, 2, 10, 2},
	} {
		seats := twoEars(c.tL, c.gL, c.tLug, c.gR, c.tR, c.shift, 1e4)
		var shears [2]float64
		p, err := SolvePin(shears[:], seats[:])
		if err != nil {
			t.Fatal(err)
		}
		near(t, "moment", p.MaxMoment, integrated(seats, p), 1e-4)
		near(t, "balance", p.Left+p.Right, 1e4, 1e-12)
		// By statics of the span, moments about the left ear's middle.
		near(t, "right", p.Right, 1e4*(seats[1].X-seats[0].X)/(seats[2].X-seats[0].X), 1e-12)
	}
}

func integrated(seats [3]Seat, p PinForces) (worst float64) {
	end := seats[2].X + seats[2].T/2
	const n = 200000
	v, m, dx := 0.0, 0.0, end/n
	for i := range n {
		x := (float64(i) + 0.5) * dx
		for k, q := range [3]float64{p.Left, -seats[1].ForceN, p.Right} {
			if math.Abs(x-seats[k].X) < seats[k].T/2 {
				v += q / seats[k].T * dx
			}
		}
		m += v * dx
		worst = math.Max(worst, math.Abs(m))
	}
	return worst
}

// Two half lugs side by side are one lug.
func TestPinManySeats(t *testing.T) {
	one := []Seat{{5, 10, Support, 0}, {22, 20, Load, 8e3}, {40, 10, Support, 0}}
	two := []Seat{{5, 10, Support, 0}, {17, 10, Load, 4e3}, {27, 10, Load, 4e3}, {40, 10, Support, 0}}
	a, err := SolvePin(make([]float64, 2), one)
	if err != nil {
		t.Fatal(err)
	}
	b, err := SolvePin(make([]float64, 3), two)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "moment", b.MaxMoment, a.MaxMoment, 1e-12)
	near(t, "left", b.Left, a.Left, 1e-12)
}

func TestPinRefuses(t *testing.T) {
	var span *SpanError
	for name, seats := range map[string][]Seat{
		"single ear":  {{5, 10, Support, 0}, {20, 10, Load, 1}},
		"overhang":    {{5, 10, Support, 0}, {20, 10, Support, 0}, {40, 10, Load, 1}},
		"three ears":  {{5, 10, Support, 0}, {20, 10, Support, 0}, {40, 10, Support, 0}},
		"no seats":    nil,
		"lug first":   {{5, 10, Load, 1}, {20, 10, Support, 0}, {40, 10, Support, 0}},
		"only a load": {{5, 10, Load, 1}},
	} {
		if _, err := SolvePin(make([]float64, max(0, len(seats)-1)), seats); !errors.As(err, &span) {
			t.Errorf("%s: got %v, want a SpanError", name, err)
		}
	}
	var in *InputError
	if _, err := SolvePin(make([]float64, 2), []Seat{{5, 10, Support, 0}, {8, 10, Load, 1}, {40, 10, Support, 0}}); !errors.As(err, &in) {
		t.Errorf("overlap: got %v, want an InputError", err)
	}
	if _, err := SolvePin(make([]float64, 2), []Seat{{5, 10, Support, 0}, {20, math.NaN(), Load, 1}, {40, 10, Support, 0}}); !errors.As(err, &in) {
		t.Errorf("NaN thickness: got %v, want an InputError", err)
	}
}
