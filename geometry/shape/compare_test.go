package shape

// Against the simplefeatures library on polygonised outlines. With sides within sagitta s of their arcs:
//   - area: within s x cut length (the slivers between arcs and sides have area 2/3 s x chord each);
//   - centroid: within twice that area x the box diagonal / area;
//   - distance between loops: within 2 s (each side is within s of its arc);
//   - containment: equal for points further than s from every edge;
//   - validity: equal, where need be after making s a hundred and then ten thousand times smaller.

import (
	"math"
	"math/rand"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
)

const testSagitta = 0.02

func TestMeasuresAgainstSimplefeatures(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for _, o := range validOutlines(1500, 3) {
		poly := polygon(o, testSagitta)
		p := o.Properties()
		sliver := testSagitta * o.Length()
		near(t, "area", p.AreaMM2, poly.Area(), sliver)
		c, ok := poly.Centroid().XY()
		if !ok {
			t.Fatal("no centroid")
		}
		box := o.BBox()
		nearPoint(t, "centroid", p.Centroid, Point{c.X, c.Y}, 2*sliver*box.Min.Dist(box.Max)/p.AreaMM2)
		for range 10 {
			at := Point{box.Min.X + box.Width()*rng.Float64(), box.Min.Y + box.Height()*rng.Float64()}
			want := geom.Intersects(geom.XY{X: at.X, Y: at.Y}.AsPoint().AsGeometry(), poly.AsGeometry())
			if got := o.Contains(at); got != want && o.DistTo(at) > testSagitta {
				t.Errorf("contains (%g, %g): got %v, want %v in %+v", at.X, at.Y, got, want, o)
			}
		}
	}
}

func TestDistancesAgainstSimplefeatures(t *testing.T) {
	rng := rand.New(rand.NewSource(4))
	touching := 0
	for range 3000 {
		a, b := randomHole(rng, Point{}), randomHole(rng, Polar(40*rng.Float64(), 7*rng.Float64()))
		want, _ := geom.Distance(ring(a, testSagitta).AsGeometry(), ring(b, testSagitta).AsGeometry())
		got := LoopDistance(a, b)
		near(t, "distance", got, want, 2*testSagitta)
		near(t, "distance, the other way", LoopDistance(b, a), got, 1e-9)
		if got == 0 {
			touching++
		}
	}
	if touching < 300 || touching > 2700 {
		t.Errorf("%d of 3000 pairs touch: the test needs both sorts", touching)
	}
}

func TestValidityAgainstSimplefeatures(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	valid, refined := 0, 0
	const count = 3000
	for range count {
		o := randomOutline(rng)
		got := len(o.Validate()) == 0
		if got {
			valid++
		}
		s := testSagitta
		for got != (polygon(o, s).Validate() == nil) {
			refined++
			if s /= 100; s < testSagitta/1e5 {
				t.Fatalf("valid: got %v, want %v in %+v: %v", got, !got, o, o.Validate())
			}
		}
	}
	t.Logf("%d of %d valid; %d needed a finer polygon", valid, count, refined)
	if valid < count/10 || valid > count*9/10 {
		t.Errorf("%d of %d valid: the test needs both sorts", valid, count)
	}
}

// The parallel against the library's distance: every point of the offset loop is at d from the source.
func TestOffsetAgainstSimplefeatures(t *testing.T) {
	rng := rand.New(rand.NewSource(6))
	done, refused := 0, 0
	for range 1000 {
		l := randomStar(rng)
		d := 10 * (rng.Float64() - 0.5)
		off, err := Offset(l, d)
		if err != nil {
			refused++
			continue
		}
		done++
		source := ring(l, 0.005).AsGeometry()
		least, most := math.Inf(1), 0.0
		for _, p := range off.Polygon(2) {
			have, _ := geom.Distance(geom.XY{X: p.X, Y: p.Y}.AsPoint().AsGeometry(), source)
			least, most = math.Min(least, have), math.Max(most, have)
		}
		near(t, "least", least, math.Abs(d), 0.005)
		near(t, "most", most, math.Abs(d), 0.005)
	}
	t.Logf("%d offset, %d refused", done, refused)
	if done < 500 {
		t.Errorf("only %d of 1000 offset", done)
	}
}
