package backingplate

import (
	"math"
	"testing"

	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

// 130 x 90 less four corners of 15 and four holes of 11 (ISO 273 medium for M10), on a wall of 3. Bolts at 40 and 22.5 are 22.5 from the sides; their grip is
// 8 + 3 + 8.
func TestPlate(t *testing.T) {
	b := made(t, set{})
	want := 130*90 - (4-math.Pi)*15*15 - 4*math.Pi*11*11/4
	if got := b.Plates[0].Shape(true).Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, want %g", got, want)
	}
	g := b.Bolts[0]
	if g.GripMM != 19 || g.Plies[0].EdgeMM != 22.5 || g.Plies[0].PitchMM != 45 || b.Plates[0].Pose.Origin.Z != 7 {
		t.Errorf("grip %g, %+v, plate at %v", g.GripMM, g.Plies[0], b.Plates[0].Pose.Origin)
	}
}

// A push goes through the face of the foot, all else through the plate at its corners.
func TestPaths(t *testing.T) {
	b := made(t, set{})
	if len(b.Paths) != 12 {
		t.Fatalf("%d paths", len(b.Paths))
	}
	for _, p := range b.Paths {
		sum := part.Vec{}
		for _, br := range p.Branches {
			sum = sum.Add(br.At)
		}
		if push := p.Component == part.FzMinus; push && p.Branches[0].Through[0] != "face" || !push && (len(p.Branches) != 4 || sum != part.Vec{Z: 12}) {
			t.Errorf("%s: %+v", p.Component, p.Branches)
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"corner_radius": 46}, Param: "corner_radius", Bound: "45 mm"},
		{Given: set{"corner_radius": 45, "bolt_gauge": 60}, Param: "corner_radius", Bound: "12.5 mm to the edge"},
		{Given: set{"bolt_pitch": 26}, Param: "bolt_pitch", Bound: "26.67 mm"},
		{Given: set{"bolt_pitch": 26, "bolt_columns": 1}},
		{Given: set{"bolt_gauge": 26}, Param: "bolt_gauge", Bound: "26.67 mm"},
		{Given: set{"length": 104}, Param: "length", Bound: "105 mm"},
		{Given: set{"width": 69}, Param: "width", Bound: "70 mm"},
		{Given: set{"foot_length": 90}, Param: "foot_length", Bound: "91 mm"},
		{Given: set{"foot_width": 55}, Param: "foot_width", Bound: "56 mm"},
		{Given: set{"bolt_size": "M7"}, Param: "bolt_size", Bound: "clearance hole"},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzBackingPlate(f *testing.F) { fabtest.Fuzz(f, Kind()) }
