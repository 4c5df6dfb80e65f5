package subframelug

import (
	"math"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

// sized has the sizes by which these tests are reckoned.
func sized() geometry.Kind {
	return fabtest.Sized(Kind(), set{"thickness": 16, "end_distance": 50})
}

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, sized(), s) }

// 100 wide, 90 up the tube and the pin 60 below its edge, 50 more to the half circle's end.
func TestPlate(t *testing.T) {
	b := made(t, set{"finish_allowance": 0, "lap": 80})
	p := b.Plate("lug")
	want := 100*(80+60) + math.Pi*50*50/2 - math.Pi*25.5*25.5/4
	if got := p.Shape(true).Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, want %g", got, want)
	}
	h, _ := p.Hole("pin")
	if at := p.HoleAt(h); at.Sub(part.Vec{Y: 8, Z: -60}).Norm() > 1e-9 {
		t.Errorf("pin at %v", at)
	}
	length := 0.0
	for _, s := range b.Welds[0].Segments {
		length += s.B.Sub(s.A).Norm()
	}
	if math.Abs(length-(100+2*70)) > 1e-9 {
		t.Errorf("weld of %g, want 240", length)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"lap": 90}, Param: "lap", Bound: "85 mm"},
		{Given: set{"lap": 25}, Param: "lap", Bound: "30 mm"},
		{Given: set{"lap": 80, "width": 30}, Param: "width", Bound: "38 mm"},
		{Given: set{"lap": 80, "end_distance": 15}, Param: "end_distance", Bound: "19 mm"},
		{Given: set{"lap": 80, "pin_below": 16}, Param: "pin_below", Bound: "19 mm"},
		{Given: set{"lap": 80, "bush_length": 20}, Param: "bush_length", Bound: "16 mm"},
		{Given: set{"lap": 80, "fork_end": 58.5}, Param: "fork_end", Bound: "58 mm, so that the fork swings clear of the tube"},
		{Given: set{"lap": 80}},
	} {
		if fault := c.Broken(sized()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, sized(), 1000) }

func FuzzSubframeLug(f *testing.F) { fabtest.Fuzz(f, sized()) }
