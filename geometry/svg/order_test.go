package svg

import (
	"math"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Solids 0, 1 and 2 cover each other in a ring and 3 lies on 0. However far off 3 is, the ring's farthest comes before it.
func TestRing(t *testing.T) {
	hulls := []hull{{depth: 5}, {depth: 3}, {depth: 4}, {depth: 1}}
	behind := [][]bool{{false, true, false, false}, {false, false, true, false}, {true, false, false, false}, {true, false, false, false}}
	done := make([]bool, 4)
	for k, want := range []int{1, 0, 3, 2} {
		got := next(hulls, behind, done)
		if got != want {
			t.Fatalf("place %d: %d, want %d", k, got, want)
		}
		done[got] = true
	}
}

// A plate through another that stands square to it is cut at the other's faces, and the pieces together are the plate; one that only stands on it is not.
func TestPlatesApart(t *testing.T) {
	flat := func(w, h, z float64, pose part.Pose) solid {
		pose.Origin.Z = z
		return newSolid(shape.Outline{Outer: shape.Rect(shape.Point{X: -w / 2, Y: -h / 2}, shape.Point{X: w / 2, Y: h / 2})}, pose, -5, 5, plateTone)
	}
	level, upright := part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, part.Pose{U: part.Vec{X: 1}, V: part.Vec{Z: 1}}
	through := apart([]solid{flat(80, 60, 0, level), flat(100, 100, 0, upright)})
	area := 0.0
	for _, s := range through {
		if s.pose == level {
			box := s.box()
			area += box.Width() * box.Height()
		}
	}
	if len(through) < 4 || math.Abs(area-80*60) > 1e-9 {
		t.Errorf("%d pieces, the level plate's %g mm2", len(through), area)
	}
	if on := apart([]solid{flat(80, 60, 0, level), flat(100, 100, 55, upright)}); len(on) != 2 {
		t.Errorf("a plate that stands on another: %d pieces", len(on))
	}
}
