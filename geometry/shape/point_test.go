package shape

// Points and boxes.

import (
	"math"
	"testing"
)

func TestPoint(t *testing.T) {
	p := Point{3, 4}
	if p.Norm() != 5 || p.Perp() != (Point{-4, 3}) || p.Unit() != (Point{0.6, 0.8}) || (Point{}).Unit() != (Point{}) {
		t.Error("norm, left normal or unit vector")
	}
	if (Point{1, 0}).Cross(Point{0, 1}) != 1 {
		t.Error("cross product is positive to the left")
	}
	near(t, "angle", (Point{0, -2}).Angle(), -math.Pi/2, 0)
	nearPoint(t, "quarter turn", (Point{3, 2}).RotateAbout(math.Pi/2, Point{1, 2}), Point{1, 4}, 1e-15)
}

func TestBox(t *testing.T) {
	if !EmptyBox().Empty() || EmptyBox().Width() != 0 || EmptyBox().Height() != 0 {
		t.Error("the empty box")
	}
	b := EmptyBox().Extend(Point{1, 2}).Extend(Point{5, 0})
	if b.Empty() || b.Width() != 4 || b.Height() != 2 || b.Center() != (Point{3, 1}) {
		t.Errorf("got %v", b)
	}
	if b.Contains(Point{0.5, 1}) || !b.Contains(Point{1, 2}) || !b.Grow(1).Contains(Point{0.5, 1}) {
		t.Error("contains")
	}
	if got := b.Union(Box{Point{0, 0}, Point{2, 9}}); got != (Box{Point{0, 0}, Point{5, 9}}) {
		t.Errorf("union %v", got)
	}
}

func TestOutlineCloneAndDistance(t *testing.T) {
	o := Outline{Outer: Rect(Point{}, Point{40, 40}), Holes: []Loop{Circle(Point{20, 20}, 10)}}
	c := o.Clone()
	c.Outer[0].X, c.Holes[0][0].X = 99, 99
	if o.Outer[0].X != 0 || o.Holes[0][0].X != 25 {
		t.Error("the clone shares vertices")
	}
	near(t, "to the hole", o.DistTo(Point{27, 20}), 2, 1e-14)
	near(t, "to the edge", o.DistTo(Point{-3, -4}), 5, 1e-14)
}
