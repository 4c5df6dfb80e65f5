package shape

// The rules of section cuts, one line each, and their integral against the area.

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
)

func TestChordRules(t *testing.T) {
	square := Outline{Outer: Rect(Point{}, Point{100, 60})}
	holed := Outline{Outer: square.Outer, Holes: []Loop{Circle(Point{50, 30}, 20)}}
	disc := Outline{Outer: Circle(Point{0, 0}, 50)}
	diamond := Outline{Outer: Polyline(Point{0, -10}, Point{10, 0}, Point{0, 10}, Point{-10, 0})}
	// A plate with a V notch from the top, tip at (50, 20).
	notched := Outline{Outer: Polyline(Point{0, 0}, Point{100, 0}, Point{100, 60}, Point{60, 60}, Point{50, 20}, Point{40, 60}, Point{0, 60})}
	step := Outline{Outer: Polyline(Point{0, 0}, Point{100, 0}, Point{100, 30}, Point{40, 30}, Point{40, 60}, Point{0, 60})}
	right, left, up := Point{1, 0}, Point{-1, 0}, Point{0, 1}
	tests := []struct {
		name      string
		o         Outline
		base, dir Point
		want      []Interval
	}{
		{"through", square, Point{0, 20}, right, []Interval{{0, 100}}},
		{"direction need not have length 1", square, Point{0, 20}, Point{7, 0}, []Interval{{0, 100}}},
		{"from elsewhere, backwards", square, Point{30, 20}, left, []Interval{{-70, 30}}},
		{"through the hole", holed, Point{0, 30}, right, []Interval{{0, 40}, {60, 100}}},
		{"off the hole's middle", holed, Point{0, 36}, right, []Interval{{0, 42}, {58, 100}}},
		{"touching the hole", holed, Point{0, 40}, right, []Interval{{0, 100}}},
		{"touching the hole within rounding", holed, Point{0, 40 - 1e-12}, right, []Interval{{0, 100}}},
		{"beside", square, Point{0, 61}, right, nil},
		{"along the lower edge, material left", square, Point{0, 0}, right, []Interval{{0, 100}}},
		{"along the lower edge, material right", square, Point{100, 0}, left, nil},
		{"along the upper edge, material right", square, Point{0, 60}, right, nil},
		{"along the upper edge, material left", square, Point{100, 60}, left, []Interval{{0, 100}}},
		{"along the step, seen from above", step, Point{0, 30}, right, []Interval{{0, 40}}},
		{"along the step, seen from below", step, Point{100, 30}, left, []Interval{{0, 100}}},
		{"through two vertices", diamond, Point{-20, 0}, right, []Interval{{10, 30}}},
		{"touching a vertex from outside", diamond, Point{-20, 10}, right, nil},
		{"touching a vertex, other sense", diamond, Point{-20, 10}, left, nil},
		{"touching the tip of a notch", notched, Point{0, 20}, right, []Interval{{0, 100}}},
		{"across a notch", notched, Point{0, 40}, right, []Interval{{0, 45}, {55, 100}}},
		{"through arc ends", disc, Point{-50, 0}, right, []Interval{{25, 75}}},
		{"across a circle", disc, Point{15, -100}, up, []Interval{{80, 120}}},
		{"touching a circle", disc, Point{25, -100}, up, nil},
		{"touching a circle at its top", disc, Point{0, 25}, right, nil},
		{"no direction", square, Point{}, Point{}, nil},
		{"not a number", square, Point{math.NaN(), 0}, right, nil},
		{"endless", square, Point{}, Point{math.Inf(1), 0}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := tt.o.Chords(tt.base, tt.dir)
			if len(got) != len(tt.want) {
				t.Fatalf("got %v, want %v", got, tt.want)
			}
			for i := range got {
				near(t, "lo", got[i].Lo, tt.want[i].Lo, 1e-9)
				near(t, "hi", got[i].Hi, tt.want[i].Hi, 1e-9)
			}
		})
	}
}

// The rules hold when everything is turned, where coordinates no longer are round numbers.
func TestChordRulesTurned(t *testing.T) {
	step := Outline{Outer: Loop{{Point{0, 0}, 0}, {Point{100, 0}, 0}, {Point{100, 30}, 0}, {Point{40, 30}, 0}, {Point{40, 60}, 1}, {Point{0, 60}, 0}}}
	for k := range 1000 {
		a := float64(k) * 0.00731
		o := step.Rotate(a, Point{17, 3})
		at := func(x, y float64) Point { return Point{x, y}.RotateAbout(a, Point{17, 3}) }
		dir := Point{1, 0}.Rotate(a)
		for _, tt := range []struct {
			base Point
			dir  Point
			want string
		}{
			{at(0, 30), dir, "[{0 40}]"},
			{at(100, 30), dir.Scale(-1), "[{0 100}]"},
			{at(0, 0), dir, "[{0 100}]"},
			{at(0, 80), dir, "[]"},
			{at(0, 60), dir, "[{0 40}]"},
			{at(40, 0), dir.Perp(), "[{0 60}]"},
			{at(100, 0), dir.Perp(), "[{0 30}]"},
		} {
			got := o.Chords(tt.base, tt.dir)
			for i := range got {
				got[i] = Interval{math.Round(got[i].Lo*1e6)/1e6 + 0, math.Round(got[i].Hi*1e6)/1e6 + 0}
			}
			if fmt.Sprint(got) != tt.want {
				t.Fatalf("turned by %g from (%g, %g): got %v, want %s", a, tt.base.X, tt.base.Y, got, tt.want)
			}
		}
	}
}

// Chords over evenly spaced lines add up to the area. The mid-point rule is wrong by at most half the spacing times the
// variation of the chord length, which is at most the length of all edges.
func checkChordIntegral(t *testing.T, o Outline, angle float64, lines int) {
	t.Helper()
	turned := o.Rotate(-angle, Point{})
	box := turned.BBox()
	h := box.Height() / float64(lines)
	dir := Point{1, 0}.Rotate(angle)
	sum := 0.0
	var buf [16]Interval
	for i := range lines {
		base := Point{0, box.Min.Y + (float64(i)+0.5)*h}.Rotate(angle)
		for _, iv := range o.ChordsInto(buf[:0], base, dir) {
			sum += iv.Length() * h
			if !(iv.Length() > 0) {
				t.Errorf("chord %v", iv)
			}
			if mid := base.Add(dir.Scale((iv.Lo + iv.Hi) / 2)); !o.Contains(mid) && o.DistTo(mid) > 1e-6 {
				t.Errorf("middle of chord %v at (%g, %g) is not in the material", iv, mid.X, mid.Y)
			}
		}
	}
	near(t, "integral of chords", sum, o.Area(), h/2*o.Length()+1e-9)
}

func TestChordsAddUpToArea(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	for _, o := range validOutlines(300, 8) {
		checkChordIntegral(t, o, 7*rng.Float64(), 100)
	}
	checkChordIntegral(t, validOutlines(1, 9)[0], 0.3, 100000)
}

// Lines through every pair of vertices, where a careless cut breaks, against lines a hair to the left.
func TestChordsThroughVertices(t *testing.T) {
	const hair = 1e-7
	for _, o := range validOutlines(100, 10) {
		for i, v := range o.Outer {
			for _, w := range o.Outer[i+1:] {
				dir := w.Sub(v.Point).Unit()
				got := total(o.Chords(v.Point, dir))
				want := total(o.Chords(v.Add(dir.Perp().Scale(hair)), dir))
				near(t, "chords", got, want, slack(o.Outer, dir, hair))
			}
		}
	}
}

// slack is how much a chord can change when the cut moves by a hair: along a line of a small slope to it, or where it
// touches an arc.
func slack(l Loop, dir Point, hair float64) float64 {
	sum := 1e-6
	for _, e := range l.Edges() {
		if rise := math.Abs(dir.Cross(e.B.Sub(e.A))); !e.IsArc() {
			sum += math.Min(1, hair/rise) * e.Length()
		}
		sum += math.Sqrt(8 * e.Radius() * hair)
	}
	return sum
}

func total(ivs []Interval) float64 {
	sum := 0.0
	for _, iv := range ivs {
		sum += iv.Length()
	}
	return sum
}
