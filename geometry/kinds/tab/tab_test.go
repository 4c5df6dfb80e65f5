package tab

import (
	"math"
	"testing"

	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

// 60 x 60 less two corners of 12 and a hole of 11: ISO 273 medium for M10.
func TestPlate(t *testing.T) {
	b := made(t, set{})
	want := 60*60 - 2*12*12*(1-math.Pi/4) - math.Pi*11*11/4
	if got := b.Plates[0].Shape(true).Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, want %g", got, want)
	}
	two := made(t, set{"bolts": 2, "width": 80})
	if p := two.Bolts[0].Points; len(p) != 2 || p[1].X-p[0].X != 30 || two.Bolts[0].Plies[0].EdgeMM != 20 {
		t.Errorf("%+v, edge %g", p, two.Bolts[0].Plies[0].EdgeMM)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"corner_radius": 40}, Param: "corner_radius", Bound: "30 mm"},
		{Given: set{"bolt_height": 15}, Param: "bolt_height", Bound: "16 mm"},
		{Given: set{"bolt_height": 55}, Param: "height", Bound: "12.5 mm to the edge"},
		{Given: set{"bolts": 2, "bolt_pitch": 20}, Param: "bolt_pitch", Bound: "26.67 mm"},
		{Given: set{"width": 15, "corner_radius": 5}, Param: "width", Bound: "16 mm"},
		{Given: set{"bolt_size": "M7"}, Param: "bolt_size", Bound: "clearance hole"},
		{Given: set{"corner_radius": 0}},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzTab(f *testing.F) { fabtest.Fuzz(f, Kind()) }
