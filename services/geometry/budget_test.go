package geometry

import (
	"fmt"
	"math"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"google.golang.org/protobuf/proto"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/geometry/shape"
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	"lugwright/services/wire"
)

// mostTimesUsual bounds the processor time of the costliest drawing that is taken, in drawings of a clevis. Before cuts and corners were
// bounded, a hundred squares that pass through one another took some four thousand.
const mostTimesUsual = 1500

// processor is what this process has used.
func processor(t *testing.T) time.Duration {
	t.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// wavy is a closed outline of so many corners.
func wavy(n int) shape.Loop {
	l := make(shape.Loop, n)
	for i := range l {
		a := 2 * math.Pi * float64(i) / float64(n)
		r := 1000 + 5*math.Sin(a*float64(n)/4)
		l[i].Point = shape.Point{X: r * math.Cos(a), Y: r * math.Sin(a)}
	}
	return l
}

// crossing are plates that pass through one another, every other one square to the rest.
func crossing(b part.Bracket, plates, corners int) *part.Bracket {
	model := b.Plates[0]
	model.Outer, model.Holes = wavy(corners), nil
	b.Plates = append([]part.Plate{}, b.Plates...)
	for i := range plates {
		p := model
		p.ID, p.Name, p.Mark = fmt.Sprint("p", i), fmt.Sprint("p", i), fmt.Sprint("M", i)
		p.Pose.Origin = part.Vec{X: float64(i) * 3, Y: float64(i) * 7, Z: float64(i%7) * 2}
		if i%2 == 1 {
			p.Pose.U, p.Pose.V = part.Vec{Y: 1}, part.Vec{Z: 1}
		}
		b.Plates = append(b.Plates, p)
	}
	return &b
}

// No bracket that is taken keeps a core for long: whatever passes through whatever, the drawing ends within a bound, and what has more
// corners is refused before any is looked at.
func TestCostliestDrawing(t *testing.T) {
	if testing.Short() {
		t.Skip("some seconds of processor time")
	}
	s := New(kinds.All())
	draw := func(b *part.Bracket) (time.Duration, error) {
		q := &pb.ExportBracketRequest{Bracket: wire.EncodeBracket(b), Formats: wire.EncodeFormats([]wire.Format{wire.SVGAssembly})}
		began := processor(t)
		_, err := s.ExportBracket(t.Context(), q)
		return processor(t) - began, err
	}
	build := func(kind string) *part.Bracket {
		b, err := geometry.Build(kinds.All(), geometry.Request{Kind: kind, Name: "x", Hand: part.LeftHand})
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	clevis, washer := build("clevis"), build("spreader-washer")
	const times = 20
	began := processor(t)
	for range times {
		if _, err := draw(clevis); err != nil {
			t.Fatal(err)
		}
	}
	usual := (processor(t) - began) / times
	for _, c := range []struct{ plates, corners int }{{100, 4}, {490, 4}, {30, 80}, {490, 20}, {5, 1990}} {
		took, err := draw(crossing(*washer, c.plates, c.corners))
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%d plates of %d corners: %.0f times a clevis", c.plates, c.corners, float64(took)/float64(usual))
		if took > mostTimesUsual*usual {
			t.Errorf("%d plates of %d corners take %s, a clevis %s", c.plates, c.corners, took, usual)
		}
	}
	if took, err := draw(crossing(*washer, 490, 1000)); err == nil || took > mostTimesUsual*usual {
		t.Errorf("490 plates of 1000 corners: %v in %s", err, took)
	}
}

// No bracket that is taken makes files out of proportion: with as much as it may hold of what is dear in one format or another, what is handed out for them stays
// within a bound, and one piece more is refused. Marks of four megabytes once made a cut file of six gigabytes.
func TestLargestFiles(t *testing.T) {
	if testing.Short() {
		t.Skip("some seconds of processor time")
	}
	const most = 256 << 20 // bytes handed out for one request in all formats
	build := func(kind string) *part.Bracket {
		b, err := geometry.Build(kinds.All(), geometry.Request{Kind: kind, Name: "x", Hand: part.LeftHand})
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	for name, c := range map[string]struct {
		kind, field string
		more        func(b *part.Bracket) // until it is refused
	}{
		"letters": {"clevis", "plates", func(b *part.Bracket) {
			b.Plates[0].Etch = append(b.Plates[0].Etch, part.Etch{Text: strings.Repeat("8", 99), HeightMM: 0.5})
		}},
		"bends": {"tray", "plates", func(b *part.Bracket) {
			p := &b.Plates[0]
			p.Bends = append(p.Bends, p.Bends[0])
		}},
		"members": {"crosstube", "members", func(b *part.Bracket) {
			m := b.Members[0]
			m.ID = fmt.Sprint("m", len(b.Members))
			b.Members = append(b.Members, m)
		}},
	} {
		b, before := build(c.kind), build(c.kind)
		for b.Validate() == nil {
			*before = *b
			before.Plates, before.Members = slices.Clone(b.Plates), slices.Clone(b.Members)
			c.more(b)
		}
		if fields := part.Fields(b.Validate()); len(fields) != 1 || fields[0].Field != c.field {
			t.Errorf("%s: %v", name, b.Validate())
		}
		q := &pb.ExportBracketRequest{Bracket: wire.EncodeBracket(before), Formats: wire.EncodeFormats(wire.Formats())}
		var start, end runtime.MemStats
		runtime.ReadMemStats(&start)
		answer, err := New(kinds.All()).ExportBracket(t.Context(), q)
		runtime.ReadMemStats(&end)
		if err != nil {
			t.Fatal(err)
		}
		handed := end.TotalAlloc - start.TotalAlloc
		t.Logf("%s: request %d kB, answer %d kB, %d MB handed out", name, proto.Size(q)>>10, proto.Size(answer)>>10, handed>>20)
		if handed > most {
			t.Errorf("%s: %d MB handed out", name, handed>>20)
		}
	}
}
