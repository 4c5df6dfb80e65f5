package bodybracket

import (
	"math"
	"slices"
	"testing"

	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

func fork(s set) set {
	s["form"], s["thickness"] = "fork", 14
	return s
}

func under(s set) set {
	s["fit"], s["pin_below"], s["shoulder"] = "under", 80, 30
	return s
}

// What a builder may want: each must build and be sound.
func TestVariants(t *testing.T) {
	for name, s := range map[string]set{
		"defaults":       {},
		"gussets":        {"gussets": "outer"},
		"fork":           fork(set{}),
		"fork, gussets":  fork(set{"gussets": "outer"}),
		"under":          under(set{}),
		"under, gussets": under(set{"gussets": "outer"}),
		"under, fork":    under(fork(set{"gussets": "outer"})),
		"along":          fork(set{"pin_axis": "along", "pin_ends": "keeper"}),
	} {
		t.Run(name, func(t *testing.T) { made(t, s) })
	}
}

// Tubes of 60 at 200 leave 140 between: a rectangle 140 wide from 15 below to 85 above the tubes' lower faces, under it two trapezes to where the tangents
// touch an arc of 45 round a middle 27 under the pin, and the arc's part below. The tangent from (70, -15) to a circle about (0, -87): both by the right
// triangle of distance d = sqrt(70^2 + 72^2), radius 45 and tangent sqrt(d^2 - 45^2).
func TestOutline(t *testing.T) {
	b := made(t, set{"finish_allowance": 0})
	d := math.Hypot(70, 72)
	turn := math.Atan2(70, 72) // of the line to the corner, from upright
	touch := turn + math.Acos(45/d)
	// Area of the half right of the middle, under the shoulder: the quadrilateral of middle, corner's foot, corner and point of touch, and the sector below.
	quad := 70*72/2. + math.Sqrt(d*d-45*45)*45/2
	sector := 45 * 45 / 2. * (math.Pi - touch)
	want := 140*100 + 2*(quad+sector) - math.Pi*25.5*25.5/4
	if got := b.Plate("plate").Shape(true).Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, want %g", got, want)
	}
	if low := b.Plate("plate").Outer.BBox().Min.Y; math.Abs(low+60+72) > 1e-9 {
		t.Errorf("lower end at %g, want 72 under the pin", low)
	}
	for _, c := range []struct {
		weld   string
		x      float64
		length float64
	}{{"w-plate-front", -70, 75}, {"w-plate-rear", 70, 75}} {
		for _, s := range b.Weld(c.weld).Segments {
			if s.A.X != c.x || s.B.X != c.x || math.Abs(s.B.Sub(s.A).Norm()-c.length) > 1e-9 {
				t.Errorf("%s runs %v, want %g at x = %g", c.weld, s, c.length, c.x)
			}
		}
	}
}

// Under tubes of 60 with corners of 10 the welds are 40 long, middled under the tubes; gussets stand there, upright.
func TestUnder(t *testing.T) {
	b := made(t, under(set{"gussets": "outer"}))
	for _, s := range b.Weld("w-plate-rear").Segments {
		if mid := s.A.Add(s.B).Scale(0.5); math.Abs(mid.X-100) > 1e-9 || mid.Z != 0 || math.Abs(s.B.Sub(s.A).Norm()-40) > 1e-9 {
			t.Errorf("weld %v", s)
		}
	}
	p := b.Plate("gusset-plate-front-1")
	if tip := p.Pose.At(0, 45, 0); tip.Sub(part.Vec{X: -100, Y: 10, Z: -45}).Norm() > 1e-9 {
		t.Errorf("gusset's tip at %v", tip)
	}
	if tip := p.Pose.At(50, 0, 0); tip.Sub(part.Vec{X: -100, Y: 60}).Norm() > 1e-9 {
		t.Errorf("gusset reaches %v along the tube", tip)
	}
}

// A lug of 30 with gaps of 2 between plates of 14: their middles at 15 + 2 + 7.
func TestFork(t *testing.T) {
	b := made(t, fork(set{}))
	for id, y := range map[string]float64{"plate-1": 24, "plate-2": -24} {
		p := b.Plate(id)
		h, _ := p.Hole("pin")
		if at := p.HoleAt(h); at.Sub(part.Vec{Y: y, Z: -60}).Norm() > 1e-9 {
			t.Errorf("%s: hole at %v", id, at)
		}
	}
	if p := b.Pins[0]; p.Seats[0].Thing != "plate-2" || !p.Seats[1].Loads || p.Seats[2].AtMM != 24 {
		t.Errorf("seats %+v", p.Seats)
	}
}

// A quarter turn brings the tubes, their share of a load and what it does to them round: x to y, y to -x.
func TestAlong(t *testing.T) {
	across, along := made(t, set{}), made(t, set{"pin_axis": "along"})
	path := func(b *part.Bracket, c part.Component) *part.Path {
		return &b.Paths[slices.IndexFunc(b.Paths, func(p part.Path) bool { return p.Component == c })]
	}
	one, other := path(across, part.FxPlus).Branches, path(along, part.FyPlus).Branches
	for i := range one {
		if one[i].Thrust != other[i].Thrust || one[i].Through[2] != other[i].Through[2] {
			t.Errorf("branch %d: %+v and %+v", i, one[i], other[i])
		}
	}
	if at := along.Weld("w-plate-rear").Segments[0].A; math.Abs(at.Y-70) > 1e-9 {
		t.Errorf("the rear tube's weld at %v, want y = 70", at)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"tube_spacing": 85}, Param: "tube_spacing", Bound: "90 mm"},
		{Given: set{"tube_corner": 30}, Param: "tube_corner", Bound: "30 mm"},
		{Given: set{"hold_low": 0.5, "hold_high": 0.4}, Param: "hold_low", Bound: "0.4"},
		{Given: set{"rise": 91}, Param: "rise", Bound: "90 mm"},
		{Given: set{"rise": 41}, Param: "rise", Bound: "42 mm"},
		{Given: under(set{"tube_width": 50}), Param: "tube_width", Bound: "52 mm"},
		{Given: under(set{"relief": 31}), Param: "relief", Bound: "30 mm"},
		{Given: set{"bush_length": 21}, Param: "bush_length", Bound: "20 mm"},
		{Given: set{"tube_spacing": 96}, Param: "tube_spacing", Bound: "98 mm"},
		{Given: set{"fork_end": 91}, Param: "fork_end", Bound: "90.2 mm, so that the fork swings clear of the tubes"},
		{Given: under(set{"gussets": "outer", "fork_end": 102}), Param: "fork_end", Bound: "gussets"},
		{Given: set{"end_distance": 18}, Param: "end_distance", Bound: "19 mm"},
		{Given: set{"pin_below": 18, "shoulder": 5}, Param: "pin_below", Bound: "19 mm"},
		{Given: set{"fit": "under", "pin_below": 48}, Param: "pin_below", Bound: "49 mm"},
		{Given: set{"head_radius": 70}, Param: "head_radius", Bound: "70 mm"},
		{Given: set{"shoulder": 90}, Param: "head_radius", Bound: "42 mm"},
		{Given: set{"head_radius": 12, "end_distance": 25, "pin_below": 300}, Param: "head_radius", Bound: "6.25 mm"},
		{Given: fork(set{"lug_radius": 91}), Param: "lug_radius", Bound: "90.2 mm"},
		{Given: fork(set{"lug_thickness": 20}), Param: "gap", Bound: "28 mm"},
		{Given: set{"gussets": "outer", "gusset_length": 30}, Param: "gusset_length", Bound: "31 mm"},
		{Given: set{"gussets": "outer", "gusset_length": 65}, Param: "gusset_length", Bound: "64 mm"},
		{Given: set{"gussets": "outer", "gusset_level": 18}, Param: "gusset_level", Bound: "19 and 76 mm"},
		{Given: under(set{"gussets": "outer", "gusset_thickness": 31}), Param: "gusset_thickness", Bound: "30 mm"},
		{Given: under(set{"gussets": "outer", "gusset_length": 60}), Param: "gusset_length", Bound: "under the tube's middle"},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzBodyBracket(f *testing.F) { fabtest.Fuzz(f, Kind()) }
