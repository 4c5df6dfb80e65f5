package keeperplate

import (
	"math"
	"testing"

	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

// 65 x 30 less four corners of 4 and two holes of 9: ISO 273 medium for M8. In a slot 5 deep its edge is 10 under the middle of a pin of 30, its bolts 16
// further down, sqrt(20^2 + 26^2) - 15 from the pin's hole; over the pin it is middled on it.
func TestPlate(t *testing.T) {
	want := 65*30 - (4-math.Pi)*4*4 - 2*math.Pi*9*9/4
	for _, c := range []struct {
		set            set
		top, bolt, ear float64
	}{
		{set{}, -10, -26, math.Hypot(20, 26) - 15},
		{set{"form": "over", "bolt_pitch": 50, "width": 75}, 15, 0, 10},
	} {
		b := made(t, c.set)
		p, g := b.Plates[0], b.Bolts[0]
		if got := p.Shape(true).Area(); math.Abs(got-want) > 1e-6 && c.set["width"] == nil {
			t.Errorf("%v: area %g, want %g", c.set, got, want)
		}
		if top := p.Outer.BBox().Max.Y; top != c.top || g.Points[0].Y != c.bolt || math.Abs(g.Plies[1].EdgeMM-c.ear) > 1e-9 || g.GripMM != 18 {
			t.Errorf("%v: edge at %g, bolts at %g, %+v", c.set, top, g.Points[0].Y, g.Plies[1])
		}
	}
}

// The segment 5 deep of a circle of 30: its chord is 2 sqrt(5 x 25) = 22.36; its area by the circle is r^2 acos(2/3) - 10 sqrt(125) = 77.4 mm2, its middle
// chord^3/(12 A) = 12.04 from the pin's. The parabola's are 74.5 and 12.
func TestSegment(t *testing.T) {
	b := made(t, set{})
	box := b.Contacts[0].Patch
	chord := 2 * math.Sqrt(125)
	area := 225*math.Acos(2.0/3) - 10*math.Sqrt(125)
	if got := box.Width() * box.Height(); math.Abs(box.Width()-chord) > 1e-9 || got > area || got < 0.95*area {
		t.Errorf("%g x %g mm, want %g wide and a little under %g mm2", box.Width(), box.Height(), chord, area)
	}
	if at, want := -b.LoadPoints[0].At.Z, chord*chord*chord/(12*area); math.Abs(at-want) > 0.05 {
		t.Errorf("load %g under the pin's middle, want %g", at, want)
	}
}

// The square in a pin's end is 0.7071 of it wide, 42.4 of 60, and no higher than the plate over it, here 30.
func TestPressedSquare(t *testing.T) {
	box := made(t, set{"form": "over", "pin_diameter": 60, "bolt_pitch": 90, "width": 120}).Contacts[0].Patch
	if math.Abs(box.Width()-42.426) > 0.001 || box.Height() != 30 || box.Center().Y != 0 {
		t.Errorf("%g x %g", box.Width(), box.Height())
	}
}

// A plate in a slot holds the pin both ways along its axis, one over its end outwards only.
func TestPaths(t *testing.T) {
	if b := made(t, set{}); len(b.Paths) != 2 || len(b.Contacts) != 2 || len(b.Sweeps) != 3 {
		t.Errorf("%d paths, %d contacts, %d sweeps", len(b.Paths), len(b.Contacts), len(b.Sweeps))
	}
	if b := made(t, set{"form": "over", "bolt_pitch": 50, "width": 75}); len(b.Paths) != 1 || b.Paths[0].Component != part.FyPlus || len(b.Sweeps) != 2 {
		t.Errorf("%+v", b.Paths)
	}
}

func TestRefusals(t *testing.T) {
	over := func(s set) set { s["form"] = "over"; return s }
	for _, c := range []fabtest.Refusal{
		{Given: set{"corner_radius": 16}, Param: "corner_radius", Bound: "15 mm"},
		{Given: set{"slot_depth": 10.5}, Param: "slot_depth", Bound: "10 mm"},
		{Given: set{"width": 30}, Param: "width", Bound: "30.36 mm"},
		{Given: set{"bolt_drop": 4}, Param: "bolt_drop", Bound: "5 mm"},
		{Given: set{"bolt_drop": 9}, Param: "height", Bound: "10 mm to the edge"},
		{Given: set{"bolt_drop": 21}, Param: "height", Bound: "10 mm to the edge"},
		{Given: set{"width": 59}, Param: "width", Bound: "10 mm to the edge"},
		{Given: set{"bolt_pitch": 20}, Param: "bolt_pitch", Bound: "21.33 mm"},
		{Given: over(set{"bolt_pitch": 49, "width": 75}), Param: "bolt_pitch", Bound: "10 mm there"},
		{Given: over(set{"bolt_pitch": 50, "width": 70})},
		{Given: set{"bolt_size": "M7"}, Param: "bolt_size", Bound: "clearance hole"},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzKeeperPlate(f *testing.F) { fabtest.Fuzz(f, Kind()) }
