package part

import (
	"math"
	"testing"

	"lugwright/geometry/shape"
)

// A strip of 100 x 20 folded up at x = 70 by 90 degrees: a base of 70 and a face of 30 that stands on its end, the hole in it 15 up.
func TestFolded(t *testing.T) {
	p := Plate{ID: "p", ThicknessMM: 2, Outer: shape.Rect(shape.Point{}, shape.Point{X: 100, Y: 20}), Pose: Pose{U: Vec{X: 1}, V: Vec{Y: 1}},
		Holes: []Hole{{ID: "h", Center: shape.Point{X: 85, Y: 10}, DiaMM: 6}},
		Bends: []Bend{{A: shape.Point{X: 70, Y: 20}, B: shape.Point{X: 70}, AngleRad: math.Pi / 2}}}
	f := p.Folded()
	if len(f) != 2 || math.Abs(f[0].Outer.Area()-1400) > 1e-9 || math.Abs(math.Abs(f[1].Outer.Area())-600) > 1e-9 || len(f[0].Holes) != 0 || len(f[1].Holes) != 1 {
		t.Fatalf("%+v", f)
	}
	if at := f[1].HoleAt(f[1].Holes[0]); at.Sub(Vec{X: 70, Y: 10, Z: 15}).Norm() > 1e-9 {
		t.Errorf("hole at %v", at)
	}
	flat := Plate{ID: "q", Outer: p.Outer}
	if got := flat.Folded(); len(got) != 1 || got[0].ID != "q" {
		t.Errorf("%+v", got)
	}
}

// The same strip 6 thick with an inside radius of 6, its fold taking 14: the bends begin at 63 and end at 77. Folded, the upright's middle plane is 6 + 3
// past where the bend begins, at 72; the hole, 8 past the bend's end, is 9 + 8 up.
func TestFoldedWithItsAllowance(t *testing.T) {
	for _, sense := range []float64{1, -1} {
		p := Plate{ID: "p", ThicknessMM: 6, Outer: shape.Rect(shape.Point{}, shape.Point{X: 100, Y: 20}), Pose: Pose{U: Vec{X: 1}, V: Vec{Y: 1}},
			Holes: []Hole{{ID: "h", Center: shape.Point{X: 85, Y: 10}, DiaMM: 6}},
			Bends: []Bend{{A: shape.Point{X: 70, Y: 20}, B: shape.Point{X: 70}, AngleRad: sense * math.Pi / 2, RadiusMM: 6, AllowanceMM: 14}}}
		f := p.Folded()[1]
		if at := f.HoleAt(f.Holes[0]); f.ID != "p.1" || at.Sub(Vec{X: 72, Y: 10, Z: sense * 17}).Norm() > 1e-9 {
			t.Errorf("%s: hole at %v", f.ID, at)
		}
	}
}
