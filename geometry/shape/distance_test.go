package shape

// Distances and crossings of single edges, from right triangles.

import (
	"math"
	"math/rand"
	"testing"
)

func TestEdgeDistance(t *testing.T) {
	line := Edge{Point{-50, 0}, Point{50, 0}, 0}
	half := func(c Point, r float64, facing float64) Edge { // half circle, counter-clockwise, its middle in direction facing
		return Edge{c.Add(Polar(r, facing-math.Pi/2)), c.Add(Polar(r, facing+math.Pi/2)), 1}
	}
	down, up, right, left := -math.Pi/2, math.Pi/2, 0.0, math.Pi
	for _, tt := range []struct {
		name string
		a, b Edge
		want float64
	}{
		{"parallel lines", line, Edge{Point{0, 7}, Point{10, 7}, 0}, 7},
		{"end to line", line, Edge{Point{0, 3}, Point{10, 9}, 0}, 3},
		{"end to end", line, Edge{Point{53, 4}, Point{90, 90}, 0}, 5},
		{"crossing lines", line, Edge{Point{0, -3}, Point{10, 9}, 0}, 0},
		{"belly to line", line, half(Point{5, 20}, 12, down), 8},
		{"arc turned away", line, half(Point{5, 20}, 12, up), 20},
		{"belly past the line's end", line, half(Point{59, 12}, 10, down), 5}, // centre 15 mm from the line's end
		{"arc crossing line", line, half(Point{5, 10}, 12, down), 0},
		{"line inside arc", Edge{Point{-1, 0}, Point{1, 0}, 0}, half(Point{}, 12, right), 11},
		{"bellies", half(Point{0, 0}, 10, right), half(Point{50, 0}, 15, left), 25},
		{"belly to back", half(Point{0, 0}, 10, right), half(Point{50, 0}, 15, right), math.Hypot(50, 15) - 10},
		{"one inside the other", half(Point{0, 0}, 30, right), half(Point{5, 0}, 10, right), 15},
		{"concentric", half(Point{0, 0}, 30, right), half(Point{0, 0}, 10, up), 20},
		{"same circle, overlapping", half(Point{0, 0}, 30, right), half(Point{0, 0}, 30, up), 0},
		{"crossing arcs", half(Point{0, 0}, 10, right), half(Point{12, 0}, 10, left), 0},
		{"touching arcs", half(Point{0, 0}, 10, right), half(Point{25, 0}, 15, left), 0},
	} {
		near(t, tt.name, EdgeDistance(tt.a, tt.b), tt.want, 1e-12)
		near(t, tt.name+", swapped", EdgeDistance(tt.b, tt.a), tt.want, 1e-12)
		near(t, tt.name+", reversed", EdgeDistance(tt.a.Reverse(), tt.b), tt.want, 1e-12)
		turn := func(e Edge) Edge { return Edge{e.A.Rotate(0.7), e.B.Rotate(0.7), e.Bulge} }
		near(t, tt.name+", turned", EdgeDistance(turn(tt.a), turn(tt.b)), tt.want, 1e-7)
	}
}

// Exact distance against the least over finely spaced points of both edges, which can only be larger, and by no more than
// the spacing.
func TestEdgeDistanceAgainstSampling(t *testing.T) {
	rng := rand.New(rand.NewSource(11))
	edge := func() Edge {
		e := Edge{Polar(60*rng.Float64(), 7*rng.Float64()), Polar(60*rng.Float64(), 7*rng.Float64()), 0}
		switch rng.Intn(4) {
		case 0:
		case 1:
			e.Bulge = math.Pow(10, -8*rng.Float64())
		default:
			e.Bulge = 3 * (rng.Float64() - 0.5) // also more than half a circle
		}
		return e
	}
	for range 2000 {
		a, b := edge(), edge()
		got, sampled := EdgeDistance(a, b), math.Inf(1)
		const n = 200
		for i := range n + 1 {
			sampled = math.Min(sampled, b.DistTo(a.At(float64(i)/n)))
		}
		if got > sampled+1e-9 || got < sampled-a.Length()/n {
			t.Errorf("%v to %v: got %g, sampled %g", a, b, got, sampled)
		}
	}
}

func TestEdgeIntersections(t *testing.T) {
	unit := Edge{Point{5, 0}, Point{-5, 0}, 1} // upper half of the circle of radius 5
	for _, tt := range []struct {
		name string
		a, b Edge
		want []Point
	}{
		{"lines", Edge{Point{0, 0}, Point{10, 10}, 0}, Edge{Point{0, 10}, Point{10, 0}, 0}, []Point{{5, 5}}},
		{"parallel", Edge{Point{0, 0}, Point{10, 0}, 0}, Edge{Point{0, 1}, Point{10, 1}, 0}, nil},
		{"short of each other", Edge{Point{0, 0}, Point{4, 4}, 0}, Edge{Point{0, 10}, Point{10, 0}, 0}, nil},
		{"overlapping lines", Edge{Point{0, 0}, Point{10, 0}, 0}, Edge{Point{15, 0}, Point{4, 0}, 0}, []Point{{10, 0}, {4, 0}}},
		{"line through arc", Edge{Point{-9, 3}, Point{9, 3}, 0}, unit, []Point{{-4, 3}, {4, 3}}},
		{"line through the missing half", Edge{Point{-9, -3}, Point{9, -3}, 0}, unit, nil},
		{"line ends inside", Edge{Point{0, 3}, Point{9, 3}, 0}, unit, []Point{{4, 3}}},
		{"tangent", Edge{Point{-9, 5}, Point{9, 5}, 0}, unit, []Point{{0, 5}}},
		{"arcs", unit, Edge{Point{11, 0}, Point{1, 0}, 1}, []Point{{3, 4}}},
		{"arcs on one circle", unit, Edge{Point{0, 5}, Point{0, -5}, 1}, []Point{{0, 5}, {-5, 0}}},
		{"concentric", unit, Edge{Point{6, 0}, Point{-6, 0}, 1}, nil},
	} {
		got := EdgeIntersections(tt.a, tt.b)
		for _, w := range tt.want {
			if p, ok := nearest(got, w); !ok || p.Dist(w) > 1e-7 {
				t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
			}
		}
		if len(got) != len(tt.want) {
			t.Errorf("%s: got %v, want %v", tt.name, got, tt.want)
		}
	}
}

func TestLigament(t *testing.T) {
	o := Outline{Outer: Rect(Point{}, Point{100, 60}), Holes: []Loop{Circle(Point{20, 30}, 20), Circle(Point{60, 30}, 30), Slot(Point{90, 20}, Point{90, 40}, 6)}}
	near(t, "hole 0", o.Ligament(0), 10, 1e-12)
	near(t, "hole 1", o.Ligament(1), 12, 1e-12) // to the slot's straight side: 90 - 3 - 75
	near(t, "hole 2", o.Ligament(2), 7, 1e-12)
	if v, i, j := o.MinLigament(); math.Abs(v-7) > 1e-12 || i != 2 || j != -1 {
		t.Errorf("got %g, %d, %d", v, i, j)
	}
	if v, i, j := (Outline{Outer: o.Outer}).MinLigament(); !math.IsInf(v, 1) || i != -1 || j != -1 {
		t.Errorf("no holes: got %g, %d, %d", v, i, j)
	}
	if !math.IsInf(o.Ligament(3), 1) || !math.IsInf(o.Ligament(-1), 1) {
		t.Error("no such hole")
	}
}
