package shape

// The batch takes about fifty cuts and property sets a variant: both should cost about a microsecond and no allocation.

import "testing"

// twelveEdges is a lug plate: tapered sides, round head, sniped corners, a pin hole and two bolt holes.
func twelveEdges() Outline {
	outer, err := NewPath(Point{-50, 0}).Line(Point{50, 0}).Line(Point{55, 5}).Line(Point{55, 20}).Line(Point{30, 100}).
		ArcCenter(Point{-30, 100}, Point{0, 90}, true).Line(Point{-55, 20}).Line(Point{-55, 5}).Close()
	if err != nil {
		panic(err) // bug in the test
	}
	return Outline{Outer: outer, Holes: []Loop{Circle(Point{0, 90}, 26), Circle(Point{-25, 20}, 14)}}
}

func BenchmarkProperties(b *testing.B) {
	o := twelveEdges()
	b.ReportAllocs()
	for b.Loop() {
		o.Properties()
	}
}

func BenchmarkChordsInto(b *testing.B) {
	o := twelveEdges()
	var buf [8]Interval
	b.ReportAllocs()
	for b.Loop() {
		o.ChordsInto(buf[:0], Point{-100, 92}, Point{1, 0.1})
	}
}

func BenchmarkMinLigament(b *testing.B) {
	o := twelveEdges()
	b.ReportAllocs()
	for b.Loop() {
		o.MinLigament()
	}
}

func BenchmarkValidate(b *testing.B) {
	o := twelveEdges()
	b.ReportAllocs()
	for b.Loop() {
		o.Validate()
	}
}

func TestTwelveEdges(t *testing.T) {
	o := twelveEdges()
	n := len(o.Outer)
	for _, h := range o.Holes {
		n += len(h)
	}
	if v := o.Validate(); n != 12 || len(v) > 0 {
		t.Fatalf("%d edges, %v", n, v)
	}
	allocs := testing.AllocsPerRun(10, func() {
		var buf [8]Interval
		o.ChordsInto(buf[:0], Point{-100, 92}, Point{1, 0.1})
		o.Properties()
	})
	if allocs > 0 {
		t.Errorf("chords and properties allocate %g times", allocs)
	}
}
