package shape

// Random outlines for tests, and the second opinion: the same outlines as polygons of the simplefeatures library
// (github.com/peterstace/simplefeatures v0.50.0, package geom), a general-purpose geometry library.

import (
	"math"
	"math/rand"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
)

// randomOutline makes a star-shaped outline of 3 to 12 edges, lines and arcs, some corners filleted, with up to 4 holes
// that may or may not fit. Sizes are tens of mm.
func randomOutline(rng *rand.Rand) Outline {
	o := Outline{Outer: randomStar(rng)}
	box := o.Outer.BBox()
	for range rng.Intn(5) {
		c := Point{
			box.Min.X + box.Width()*(0.2+0.6*rng.Float64()),
			box.Min.Y + box.Height()*(0.2+0.6*rng.Float64()),
		}
		o.Holes = append(o.Holes, randomHole(rng, c))
	}
	return o
}

func randomStar(rng *rand.Rand) Loop {
	n := 3 + rng.Intn(10)
	c := Point{400 * (rng.Float64() - 0.5), 400 * (rng.Float64() - 0.5)}
	l := make(Loop, n)
	for i := range l {
		a := 2 * math.Pi * (float64(i) + 0.8*rng.Float64()) / float64(n)
		l[i] = Vertex{c.Add(Polar(30+70*rng.Float64(), a)), 0}
		if rng.Intn(3) == 0 {
			l[i].Bulge = rng.Float64() - 0.4
		}
	}
	for range 3 {
		if f, err := Fillet(l, rng.Intn(len(l)), 1+8*rng.Float64()); err == nil {
			l = f
		}
	}
	return l
}

func randomHole(rng *rand.Rand, c Point) Loop {
	size := 2 + 20*rng.Float64()
	switch rng.Intn(4) {
	case 0:
		return Slot(c, c.Add(Polar(size, 7*rng.Float64())), 2+size/2)
	case 1:
		l, err := RoundedRect(c, c.Add(Point{size, size / 2}), size/6)
		if err != nil {
			panic(err) // bug in the test: a sixth is less than half of a half
		}
		return l.Rotate(7*rng.Float64(), c)
	case 2:
		return randomStar(rng).scaled(0.1, c)
	}
	return Circle(c, size)
}

// scaled shrinks a loop towards the middle of its box and puts that at c.
func (l Loop) scaled(k float64, c Point) Loop {
	m := l.BBox().Center()
	return l.mapped(func(p Point) Point { return p.Sub(m).Scale(k).Add(c) })
}

// validOutlines returns count random outlines that validate.
func validOutlines(count int, seed int64) []Outline {
	rng := rand.New(rand.NewSource(seed))
	var out []Outline
	for len(out) < count {
		if o := randomOutline(rng); len(o.Validate()) == 0 {
			out = append(out, o)
		}
	}
	return out
}

func ring(l Loop, sagitta float64) geom.LineString {
	pts := l.Polygon(sagitta)
	flat := make([]float64, 0, 2*len(pts)+2)
	for _, p := range append(pts, pts[0]) {
		flat = append(flat, p.X, p.Y)
	}
	return geom.NewLineString(geom.NewSequence(flat, geom.DimXY))
}

func polygon(o Outline, sagitta float64) geom.Polygon {
	rings := []geom.LineString{ring(o.Outer, sagitta)}
	for _, h := range o.Holes {
		rings = append(rings, ring(h, sagitta))
	}
	return geom.NewPolygon(rings)
}

// near fails unless got is within tol of want.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.15g, want %.15g within %g", what, got, want, tol)
	}
}

// nearRel is near with a tolerance relative to want.
func nearRel(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	near(t, what, got, want, rel*math.Abs(want))
}

func nearPoint(t *testing.T, what string, got, want Point, tol float64) {
	t.Helper()
	if !(got.Dist(want) <= tol) {
		t.Errorf("%s: got (%.15g, %.15g), want (%.15g, %.15g) within %g", what, got.X, got.Y, want.X, want.Y, tol)
	}
}
