package shape

// Constructors, corners, tangents and paths.

import (
	"errors"
	"math"
	"testing"
)

func TestFilletAndChamfer(t *testing.T) {
	rect := Rect(Point{}, Point{100, 60})
	// An L with a re-entrant corner at vertex 3.
	ell := Polyline(Point{0, 0}, Point{100, 0}, Point{100, 30}, Point{40, 30}, Point{40, 80}, Point{0, 80})
	spandrel := (1 - math.Pi/4) * 100 // what a radius of 10 takes off a right corner
	got, err := Fillet(rect, 2, 10)
	if err != nil {
		t.Fatal(err)
	}
	nearRel(t, "convex", got.Area(), 6000-spandrel, 1e-14)
	if got, err = Fillet(ell, 3, 10); err != nil {
		t.Fatal(err)
	}
	nearRel(t, "re-entrant", got.Area(), ell.Area()+spandrel, 1e-14)
	if got, err = Fillet(ell.Reverse(), 3, 10); err != nil {
		t.Fatal(err)
	}
	nearRel(t, "re-entrant, clockwise", got.Area(), -ell.Area()-spandrel, 1e-14)
	if got, err = FilletAll(rect, func(int) float64 { return 30 }); err != nil || len(got) != 6 {
		t.Fatalf("a radius that uses up two edges: %v, %v", got, err)
	}
	nearRel(t, "stadium", got.Area(), 40*60+math.Pi*900, 1e-14)
	if got, err = Chamfer(rect, 0, 20, 5); err != nil {
		t.Fatal(err)
	}
	nearRel(t, "chamfer", got.Area(), 6000-50, 1e-14)
	nearPoint(t, "chamfer starts back along the edge that arrives", got[0].Point, Point{0, 20}, 1e-12)
	nearPoint(t, "chamfer ends along the edge that leaves", got[1].Point, Point{5, 0}, 1e-12)
	if rect[0].Point != (Point{}) || len(rect) != 4 {
		t.Error("the source was changed")
	}
}

func TestCornersThatDoNotFit(t *testing.T) {
	rect := Rect(Point{}, Point{100, 60})
	for name, f := range map[string]func() (Loop, error){
		"radius too large":  func() (Loop, error) { return Fillet(rect, 0, 61) },
		"two radii":         func() (Loop, error) { return RoundedRect(Point{}, Point{100, 60}, 31) },
		"no such vertex":    func() (Loop, error) { return Fillet(rect, 4, 1) },
		"negative":          func() (Loop, error) { return Fillet(rect, 0, -1) },
		"not a number":      func() (Loop, error) { return Fillet(rect, 0, math.NaN()) },
		"endless":           func() (Loop, error) { return Fillet(rect, 0, math.Inf(1)) },
		"beside an arc":     func() (Loop, error) { return Fillet(Slot(Point{}, Point{9, 0}, 4), 1, 1) },
		"straight":          func() (Loop, error) { return Fillet(Polyline(Point{}, Point{5, 0}, Point{10, 0}, Point{0, 9}), 1, 1) },
		"chamfer too long":  func() (Loop, error) { return Chamfer(rect, 1, 101, 5) },
		"chamfer of zero":   func() (Loop, error) { return Chamfer(rect, 1, 0, 5) },
		"chamfer no vertex": func() (Loop, error) { return Chamfer(rect, -1, 5, 5) },
		"empty":             func() (Loop, error) { return Chamfer(nil, 0, 5, 5) },
	} {
		if l, err := f(); !errors.Is(err, ErrNoFit) || l != nil {
			t.Errorf("%s: got %v, %v", name, l, err)
		}
	}
}

func TestTangentPoints(t *testing.T) {
	// 3-4-5 triangle: from 50 mm off a circle of radius 30 the tangent is 40 mm long.
	from, center := Point{7, 9}, Point{7, 59}
	left, right, err := TangentPoints(from, center, 30)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []Point{left, right} {
		near(t, "tangent length", p.Dist(from), 40, 1e-13)
		near(t, "on the circle", p.Dist(center), 30, 1e-13)
		near(t, "square to the radius", p.Sub(center).Dot(p.Sub(from)), 0, 1e-10)
	}
	if !(left.X < 7 && right.X > 7) {
		t.Errorf("left %v, right %v", left, right)
	}
	for _, r := range []float64{50, 51, 0, -1, math.NaN()} {
		if _, _, err := TangentPoints(from, center, r); !errors.Is(err, ErrNoFit) {
			t.Errorf("radius %g: %v", r, err)
		}
	}
}

func TestPath(t *testing.T) {
	quarter := math.Tan(math.Pi / 8)
	for name, p := range map[string]*Path{
		"Arc":       NewPath(Point{0, 0}).Line(Point{20, 0}).Arc(Point{30, 10}, quarter).Line(Point{30, 40}).Line(Point{0, 40}),
		"ArcVia":    NewPath(Point{0, 0}).LineBy(20, 0).ArcVia(Point{20, 10}.Add(Polar(10, -1)), Point{30, 10}).Line(Point{30, 40}).Line(Point{0, 40}),
		"ArcCenter": NewPath(Point{0, 0}).Line(Point{20, 0}).ArcCenter(Point{30, 10}, Point{20, 10}, true).Line(Point{30, 40}).Line(Point{0, 40}).Line(Point{0, 0}),
		"TangentTo": NewPath(Point{0, 0}).Line(Point{20, 0}).TangentTo(Point{30, 10}).TangentTo(Point{30, 40}).Line(Point{0, 40}),
	} {
		l, err := p.Close()
		if err != nil || len(l) != 5 {
			t.Errorf("%s: %v, %v", name, l, err)
			continue
		}
		nearRel(t, name, l.Area(), 30*40-(1-math.Pi/4)*100, 1e-13)
	}
	// The long way round splits in two.
	l, err := NewPath(Point{5, 0}).ArcCenter(Point{0, 5}, Point{}, false).Close()
	if err != nil || len(l) != 3 {
		t.Fatal(l, err)
	}
	nearRel(t, "long way, clockwise", l.Area(), -(math.Pi*25*0.75 + 12.5), 1e-14)
	l, err = NewPath(Point{5, 0}).ArcVia(Point{-5, 0}, Point{0, -5}).Close()
	if err != nil {
		t.Fatal(err)
	}
	nearRel(t, "long way, counter-clockwise", l.Area(), math.Pi*25*0.75+12.5, 1e-14)
}

func TestPathErrors(t *testing.T) {
	a := NewPath(Point{0, 0})
	for name, p := range map[string]*Path{
		"empty":            a,
		"straight behind":  NewPath(Point{}).Line(Point{10, 0}).TangentTo(Point{5, 0}),
		"tangent at start": NewPath(Point{}).TangentTo(Point{5, 0}),
		"unequal radii":    NewPath(Point{5, 0}).ArcCenter(Point{0, 6}, Point{}, true),
		"whole turn":       NewPath(Point{5, 0}).ArcCenter(Point{5, 0}, Point{}, true),
		"collinear":        NewPath(Point{0, 0}).ArcVia(Point{10, 0}, Point{5, 0}),
		"not a number":     NewPath(Point{0, 0}).Line(Point{math.NaN(), 0}).Line(Point{5, 5}),
		"endless bulge":    NewPath(Point{0, 0}).Arc(Point{1, 0}, math.Inf(1)),
	} {
		if l, err := p.Close(); !errors.Is(err, ErrPath) {
			t.Errorf("%s: got %v, %v", name, l, err)
		}
	}
}

func TestSlotAndRect(t *testing.T) {
	if c, d, ok := Slot(Point{1, 2}, Point{1, 2}, 8).IsCircle(); !ok || d != 8 || c != (Point{1, 2}) {
		t.Error("a slot of no length is a circle")
	}
	if r := Rect(Point{10, 20}, Point{0, 0}); r.Area() != 200 || r[0].Point != (Point{}) {
		t.Errorf("got %v", r)
	}
}
