package standoff

import (
	"math"
	"testing"

	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

// The tube is 120 less 16 and 6 long and stands on the base plate's outer face; its weld is the four flats of 100 - 2 x 12 mm.
func TestParts(t *testing.T) {
	b := made(t, set{})
	m := b.Members[0]
	if m.LengthMM != 98 || m.Pose.Origin != (part.Vec{Y: 16}) {
		t.Errorf("tube %+v", m)
	}
	length := 0.0
	for _, s := range b.Weld("w-tube").Segments {
		length += s.B.Sub(s.A).Norm()
	}
	if math.Abs(length-4*76) > 1e-9 {
		t.Errorf("weld %g mm, want %d", length, 4*76)
	}
	area := 260*150 - (4-math.Pi)*100 - 4*math.Pi*17*17/4
	if got := b.Plate("base").Shape(true).Area(); math.Abs(got-area) > 1e-6 {
		t.Errorf("base plate %g mm2, want %g", got, area)
	}
	// Bolts at 95 along and 45 up, the tube's corner at 50 and 50.
	if p := b.Bolts[0].Across; p[1] != (part.Pry{}) || math.Abs(p[0].BMM-45) > 1e-9 || math.Abs(p[0].AMM-35) > 1e-9 {
		t.Errorf("prying %+v", p)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"tube_wall": 20, "tube_width": 60}, Param: "tube_wall", Bound: "15 mm"},
		{Given: set{"tube_corner": 4}, Param: "tube_corner", Bound: "6 mm"},
		{Given: set{"reach": 40, "load_out": 30}, Param: "reach", Bound: "42 mm"},
		{Given: set{"load_out": 130}, Param: "load_out", Bound: "120 mm"},
		{Given: set{"base_height": 200}, Param: "base_height", Bound: "188 mm"},
		{Given: set{"bolt_pitch": 230}, Param: "bolt_pitch", Bound: "20 mm to the edge"},
		{Given: set{"bolt_gauge": 120}, Param: "bolt_gauge", Bound: "20 mm to the edge"},
		{Given: set{"bolt_pitch": 130}, Param: "bolt_pitch", Bound: "24.2 mm"},
		{Given: set{"base_length": 100}, Param: "base_length", Bound: "110 mm"},
		{Given: set{"bolt_rows": 1}},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzStandoff(f *testing.F) { fabtest.Fuzz(f, Kind()) }
