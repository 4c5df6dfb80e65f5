package stroke

import (
	"math"
	"testing"

	"lugwright/geometry/shape"
)

// A straight stroke becomes a rectangle of its length and a quarter of a step; a closed one two loops with the same between them.
func TestOutlines(t *testing.T) {
	const height, step = 6.0, 1.0
	line := []shape.Point{{X: 0, Y: 0}, {X: 4, Y: 0}}
	square := []shape.Point{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 4}, {X: 0, Y: 4}, {X: 0, Y: 0}}
	got := Outlines([][]shape.Point{line, square}, height)
	if len(got) != 3 {
		t.Fatalf("%d outlines, want 3", len(got))
	}
	area := func(pts []shape.Point) float64 { return math.Abs(shape.Polyline(pts...).Area()) }
	for i, want := range []float64{4 * step / 4, 3.75 * 3.75, 4.25 * 4.25} {
		if a := area(got[i]); math.Abs(a-want) > 1e-9 {
			t.Errorf("outline %d: area %g, want %g", i, a, want)
		}
	}
}

// No letter's outline crosses itself.
func TestOutlinesAreSound(t *testing.T) {
	for r := range font {
		for i, o := range Outlines(Text(string(r), shape.Point{}, 6, 0), 6) {
			if bad := (shape.Outline{Outer: shape.Polyline(o...)}).Validate(); len(bad) > 0 {
				t.Errorf("%c, outline %d: %v", r, i, bad[0])
			}
		}
	}
}
