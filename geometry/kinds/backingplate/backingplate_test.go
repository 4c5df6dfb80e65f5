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
		if p.Component >= part.MxPlus && p.Component <= part.MyMinus {
			continue
		}
		if push := p.Component == part.FzMinus; push && p.Branches[0].Through[0] != "face" || !push && (len(p.Branches) != 4 || sum != part.Vec{Z: 12}) {
			t.Errorf("%s: %+v", p.Component, p.Branches)
		}
	}
}

// A couple of 1 N mm about x on a foot of 80: bolts at 22.5 pull no nearer the middle than 22.5^2/40 = 12.66 and the wall presses 80/3 off it, so that they pull
// 1/39.32 in all. The edges of a plate of 300 hold half of that each, the lifted one 12.66/150 more. No leg brings a couple of its own.
func TestCouple(t *testing.T) {
	b := made(t, set{"width": 300, "corner_radius": 0})
	s := 22.5 * 22.5 / 40
	pulls := 1 / (s + 80/3.)
	for _, p := range b.Paths {
		if p.Component != part.MxPlus {
			continue
		}
		turn, pull := part.Vec{}, 0.0
		for _, br := range p.Branches {
			force, moment := p.Component.Unit()
			force, moment = force.Add(br.Thrust).Scale(1./5), moment.Add(br.Couple).Scale(1./5)
			if moment.Norm() > 1e-12 {
				t.Errorf("leg %d turns by %v", br.Leg, moment)
			}
			turn, pull = turn.Add(br.At.Cross(force)), pull+force.Z
			want, known := map[float64]float64{150: pulls * (1 + s/150) / 4, -150: pulls * (1 - s/150) / 4, -26.667: -pulls}[math.Round(br.At.Y*1e3)/1e3]
			if !known || math.Abs(force.Z-want) > 1e-12 {
				t.Errorf("at %v: %g, want %g", br.At, force.Z, want)
			}
		}
		if math.Abs(turn.X-1) > 1e-12 || math.Abs(pull) > 1e-12 {
			t.Errorf("all: %v and %g", turn, pull)
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
