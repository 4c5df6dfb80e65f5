package shape

// Edges and loops: measures of arcs, tidying, winding, circles.

import (
	"math"
	"testing"
)

func TestEdgeArc(t *testing.T) {
	// A 3-4-5 circle: radius 5 about the origin.
	for _, tt := range []struct {
		name        string
		e           Edge
		sweep       float64
		mid         Point
		box         Box
		tangentAtA  Point
		sagitta, rr float64
	}{
		{"quarter", Edge{Point{5, 0}, Point{0, 5}, math.Tan(math.Pi / 8)}, math.Pi / 2, Polar(5, math.Pi/4), Box{Point{0, 0}, Point{5, 5}}, Point{0, 1}, 5 - 5/math.Sqrt2, 5},
		{"half, clockwise", Edge{Point{-5, 0}, Point{5, 0}, -1}, -math.Pi, Point{0, 5}, Box{Point{-5, 0}, Point{5, 5}}, Point{0, 1}, 5, 5},
		{"three quarters", Edge{Point{5, 0}, Point{0, -5}, math.Tan(3 * math.Pi / 8)}, 1.5 * math.Pi, Polar(5, 3*math.Pi/4), Box{Point{-5, -5}, Point{5, 5}}, Point{0, 1}, 5 + 5/math.Sqrt2, 5},
	} {
		t.Run(tt.name, func(t *testing.T) {
			e := tt.e
			near(t, "sweep", e.Sweep(), tt.sweep, 1e-14)
			near(t, "radius", e.Radius(), tt.rr, 1e-14)
			near(t, "sagitta", e.Sagitta(), tt.sagitta, 1e-14)
			near(t, "length", e.Length(), 5*math.Abs(tt.sweep), 1e-13)
			nearPoint(t, "centre", e.Center(), Point{}, 1e-14)
			nearPoint(t, "mid", e.Mid(), tt.mid, 1e-14)
			nearPoint(t, "at 0.5", e.At(0.5), tt.mid, 1e-14)
			nearPoint(t, "at 0", e.At(0), e.A, 1e-14)
			nearPoint(t, "at 1", e.At(1), e.B, 1e-14)
			nearPoint(t, "tangent", e.TangentAt(0), tt.tangentAtA, 1e-14)
			nearPoint(t, "box min", e.BBox().Min, tt.box.Min, 1e-14)
			nearPoint(t, "box max", e.BBox().Max, tt.box.Max, 1e-14)
			nearPoint(t, "reverse", e.Reverse().At(0.25), e.At(0.75), 1e-14)
			for _, k := range []float64{0.1, 0.3, 0.7} {
				near(t, "param", e.paramAt(e.At(k)), k, 1e-14)
				near(t, "param toward", e.paramToward(e.At(k)), k, 1e-14)
				near(t, "distance from inside", e.DistTo(e.At(k).Scale(0.6)), 2, 1e-14)
				near(t, "distance from outside", e.DistTo(e.At(k).Scale(3)), 10, 1e-14)
			}
		})
	}
}

// An arc of 0.1 mm rise on 10 m, and flatter: the centre is so far away that naive formulas lose the rise itself.
func TestFlatArcKeepsItsDigits(t *testing.T) {
	for _, rise := range []float64{0.1, 1e-3, 1e-5} {
		const c = 10000.0
		e := Edge{Point{100, 200}, Point{100 + c, 200}, -2 * rise / c}
		nearPoint(t, "mid", e.Mid(), Point{100 + c/2, 200 + rise}, 1e-11)
		nearPoint(t, "at", e.At(0.5), Point{100 + c/2, 200 + rise}, 1e-11)
		near(t, "distance", e.DistTo(Point{100 + c/2, 201}), 1-rise, 1e-9)
		at := Outline{Outer: Loop{{e.A, e.Bulge}, {e.B, 0}, {Point{100 + c, 0}, 0}, {Point{100, 0}, 0}}}.Chords(Point{100 + c/2, -1}, Point{0, 1})
		if len(at) != 1 {
			t.Fatalf("chords %v", at)
		}
		near(t, "chord", at[0].Hi, 201+rise, 1e-10)
	}
}

func TestNormalize(t *testing.T) {
	big := math.Tan(1.5 * math.Pi / 4)
	l := Loop{{Point{0, 0}, 0}, {Point{10, 0}, big}, {Point{10, 10}, 1e-9}, {Point{10, 10}, 0}, {Point{0, 10}, 1 + 1e-12}}
	got := l.Normalize()
	if len(got) != 5 {
		t.Fatalf("got %v", got)
	}
	for i, want := range []float64{0, math.Tan(1.5 * math.Pi / 8), math.Tan(1.5 * math.Pi / 8), 0, 1} {
		near(t, "bulge", got[i].Bulge, want, 1e-15)
	}
	nearRel(t, "area", got.Area(), l.Area(), 1e-12)
	nearRel(t, "length", got.Length(), l.Length(), 1e-12)
	if again := got.Normalize(); len(again) != len(got) {
		t.Errorf("not stable: %v", again)
	}
}

func TestWinding(t *testing.T) {
	l := Loop{{Point{0, 0}, 0.3}, {Point{10, 0}, 0}, {Point{12, 9}, -0.2}, {Point{1, 8}, 0}}
	r := l.Reverse()
	nearRel(t, "area", r.Area(), -l.Area(), 1e-14)
	if r[0].Point != l[0].Point {
		t.Errorf("reversed loop starts at %v", r[0])
	}
	for i := range l {
		if r.Edge(i) != l.Edge(len(l)-1-i).Reverse() {
			t.Errorf("edge %d: got %v", i, r.Edge(i))
		}
	}
	if l.CCW().Area() <= 0 || r.CCW().Area() <= 0 || l.CW().Area() >= 0 || r.CW().Area() >= 0 {
		t.Error("wrong winding")
	}
	if c := Circle(Point{3, 4}, 2).MirrorX(); c[0].Bulge != 1 || c.Area() < 0 || c.BBox().Max.X != -2 {
		t.Errorf("mirrored circle %v", c)
	}
}

func TestIsCircle(t *testing.T) {
	for _, l := range []Loop{Circle(Point{3, 4}, 7), Circle(Point{3, 4}, 7).Reverse(), Circle(Point{3, 4}, 7).Rotate(1, Point{3, 4}),
		{{Point{6.5, 4}, math.Tan(math.Pi / 8)}, {Point{3, 7.5}, math.Tan(math.Pi / 8)}, {Point{-0.5, 4}, 1}}} {
		c, d, ok := l.IsCircle()
		if !ok {
			t.Errorf("%v is a circle", l)
		}
		nearPoint(t, "centre", c, Point{3, 4}, 1e-12)
		near(t, "diameter", d, 7, 1e-12)
	}
	for _, l := range []Loop{nil, {{Point{}, 1}}, Rect(Point{}, Point{1, 1}), Slot(Point{}, Point{1, 0}, 1), {{Point{5, 0}, 1}, {Point{-5, 0}, 0.9}},
		{{Point{5, 0}, 1}, {Point{-5, 0}, -1}}} {
		if _, _, ok := l.IsCircle(); ok {
			t.Errorf("%v is no circle", l)
		}
	}
}

func TestContainsBoundary(t *testing.T) {
	o := Outline{Outer: Rect(Point{}, Point{40, 40}), Holes: []Loop{Circle(Point{20, 20}, 10)}}
	for _, tt := range []struct {
		p    Point
		want bool
	}{
		{Point{0, 0}, true}, {Point{40, 20}, true}, {Point{20, -1e-10}, true}, {Point{20, -1e-6}, false}, {Point{25, 20}, true},
		{Point{20, 15}, true}, {Point{20, 20}, false}, {Point{24.999, 20}, false}, {Point{25.001, 20}, true}, {Point{-5, 0}, false}, {Point{-5, 40}, false},
	} {
		if got := o.Contains(tt.p); got != tt.want {
			t.Errorf("%v: got %v", tt.p, got)
		}
	}
}

func TestPolygonStaysWithinSagitta(t *testing.T) {
	l := Slot(Point{0, 0}, Point{50, 20}, 30)
	for _, s := range []float64{1, 0.01, 1e-4, 0, math.NaN()} {
		pts := l.Polygon(s)
		for i, p := range pts {
			q := pts[(i+1)%len(pts)]
			if d := l.DistTo(p); d > 1e-12 {
				t.Errorf("vertex %g off the loop", d)
			}
			if d := l.DistTo(p.Lerp(q, 0.5)); s > 0 && d > s*(1+1e-9) {
				t.Errorf("side %g off the loop, sagitta %g", d, s)
			}
		}
	}
	if n := len(Circle(Point{}, 1).Polygon(100)); n != 8 {
		t.Errorf("coarse circle has %d sides", n)
	}
}
