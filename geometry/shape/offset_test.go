package shape

// Offsets with known answers. For a convex loop of length L and area A the outward offset has area A + L d + pi d^2 and
// length L + 2 pi d (Steiner's formula, any text on convex geometry, from memory).

import (
	"errors"
	"math"
	"testing"
)

func TestOffsetOutwardOfConvexLoops(t *testing.T) {
	rounded, err := RoundedRect(Point{}, Point{80, 50}, 12)
	if err != nil {
		t.Fatal(err)
	}
	for name, l := range map[string]Loop{
		"rectangle": Rect(Point{}, Point{80, 50}),
		"triangle":  Polyline(Point{0, 0}, Point{90, 10}, Point{20, 70}),
		"circle":    Circle(Point{5, 6}, 40),
		"slot":      Slot(Point{0, 0}, Point{40, 30}, 20),
		"rounded":   rounded,
		"half disc": {{Point{20, 0}, 1}, {Point{-20, 0}, 0}},
	} {
		for _, d := range []float64{0.1, 5, 300} {
			got, err := Offset(l, d)
			if err != nil {
				t.Errorf("%s by %g: %v", name, d, err)
				continue
			}
			nearRel(t, name+" area", got.Area(), l.Area()+l.Length()*d+math.Pi*d*d, 1e-12)
			nearRel(t, name+" length", got.Length(), l.Length()+2*math.Pi*d, 1e-12)
			back, err := Offset(got, -d)
			if err != nil {
				t.Errorf("%s back by %g: %v", name, d, err)
				continue
			}
			nearRel(t, name+" there and back", back.Area(), l.Area(), 1e-7)
		}
	}
}

func TestOffsetInward(t *testing.T) {
	rounded, err := RoundedRect(Point{}, Point{80, 50}, 12)
	if err != nil {
		t.Fatal(err)
	}
	ell := Polyline(Point{0, 0}, Point{100, 0}, Point{100, 30}, Point{40, 30}, Point{40, 80}, Point{0, 80})
	sniped, err := Chamfer(Rect(Point{}, Point{80, 50}), 2, 10, 10)
	if err != nil {
		t.Fatal(err)
	}
	ellFillet, err := Fillet(ell, 3, 4)
	if err != nil {
		t.Fatal(err)
	}
	corner := (1 - math.Pi/4) // of a unit radius
	for _, tt := range []struct {
		name string
		l    Loop
		d    float64
		area float64
	}{
		{"rectangle", Rect(Point{}, Point{80, 50}), -10, 60 * 30},
		{"rounded, arcs stay", rounded, -5, 70*40 - 4*corner*49},
		{"rounded, arcs vanish", rounded, -20, 40 * 10},
		{"rounded, arcs just vanish", rounded, -12, 56 * 26},
		{"circle", Circle(Point{}, 40), -15, math.Pi * 25},
		// The L is inset to two overlapping bars; its inner corner gets an arc about the old vertex.
		{"re-entrant corner opens", ell, -10, 80*10 + 20*60 - 20*10 + 10*10*corner},
		{"clockwise", Rect(Point{}, Point{80, 50}).Reverse(), 10, -60 * 30},
		{"chamfer stays", sniped, -5, 70*40 - math.Pow(10-5*(2-math.Sqrt2), 2)/2},
		{"chamfer vanishes", sniped, -20, 40 * 10},
		// As for the L with a sharp corner: length x d, five quarter discs, and the corner square counted twice.
		{"re-entrant fillet vanishes outwards", ellFillet, 6, ell.Area() + 6*360 + 5*36*math.Pi/4 - 36},
	} {
		got, err := Offset(tt.l, tt.d)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		near(t, tt.name, got.Area(), tt.area, 1e-7)
	}
}

func TestOffsetRefuses(t *testing.T) {
	dumbbell := Polyline(Point{0, 0}, Point{40, 0}, Point{40, 18}, Point{60, 18}, Point{60, 0}, Point{100, 0},
		Point{100, 40}, Point{60, 40}, Point{60, 22}, Point{40, 22}, Point{40, 40}, Point{0, 40})
	cee := Polyline(Point{0, 0}, Point{100, 0}, Point{100, 30}, Point{20, 30}, Point{20, 40}, Point{100, 40}, Point{100, 70}, Point{0, 70})
	for _, tt := range []struct {
		name string
		l    Loop
		d    float64
	}{
		{"nothing left of a rectangle", Rect(Point{}, Point{80, 50}), -26},
		{"nothing left of a circle", Circle(Point{}, 40), -21},
		{"falls in two", dumbbell, -3},
		{"closes a gap", cee, 6},
		{"bow-tie", Polyline(Point{0, 0}, Point{10, 10}, Point{10, 0}, Point{0, 20}), 1},
		{"not a number", Rect(Point{}, Point{80, 50}), math.NaN()},
		{"endless", Rect(Point{}, Point{80, 50}), math.Inf(-1)},
		{"empty", nil, 1},
	} {
		var typed *OffsetError
		if got, err := Offset(tt.l, tt.d); !errors.Is(err, ErrOffset) || !errors.As(err, &typed) || got != nil {
			t.Errorf("%s: got %v, %v", tt.name, got, err)
		}
	}
	_, err := Offset(Rect(Point{}, Point{80, 50}), -26)
	if got, want := err.Error(), "cannot offset by -26 mm: nothing is left of the loop"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
