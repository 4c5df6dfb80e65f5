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
