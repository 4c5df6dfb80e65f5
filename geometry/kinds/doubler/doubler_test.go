package doubler

import (
	"math"
	"testing"

	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

// 160 x 100 less four corners of 20, a hole of 40, and what else goes through it.
func TestPlate(t *testing.T) {
	bare := 160*100 - (4-math.Pi)*20*20
	for _, c := range []struct {
		set  set
		area float64
	}{
		{set{"hole_diameter": 0}, bare},
		{set{}, bare - math.Pi*40*40/4},
		{set{"plugs": 1}, bare - math.Pi*40*40/4 - 2*math.Pi*16*16/4},
		// ISO 273 medium for M12: 13.5.
		{set{"fixing": "bolted"}, bare - math.Pi*40*40/4 - 4*math.Pi*13.5*13.5/4},
	} {
		if got := made(t, c.set).Plates[0].Shape(true).Area(); math.Abs(got-c.area) > 1e-6 {
			t.Errorf("%v: area %g, want %g", c.set, got, c.area)
		}
	}
}

// A half of the fillet goes along half of both sides, round two corners and across the end: 2 (80 - 20) + pi 20 + 60 mm. Its runs are chords of the
// corners and so a little shorter, by 1 % of the arcs at most.
func TestWeldsAllRound(t *testing.T) {
	b := made(t, set{})
	for _, id := range []string{"w-doubler", "w-doubler-b"} {
		sum := 0.0
		for _, s := range b.Weld(id).Segments {
			sum += s.B.Sub(s.A).Norm()
			if s.A.Z != 3 || id == "w-doubler" && min(s.A.X, s.B.X) < 0 || id == "w-doubler-b" && max(s.A.X, s.B.X) > 0 {
				t.Errorf("%s: run %+v", id, s)
			}
		}
		if want := 120 + 20*math.Pi + 60; sum > want || sum < want-0.01*20*math.Pi {
			t.Errorf("%s is %g mm long, want a little under %g", id, sum, want)
		}
	}
}

// Plugs of 16 mm at 45 and 125 mm from the middle fill their holes to the plate's thickness, each a diameter long in the plane where plate and wall meet, 3 mm up.
func TestPlugs(t *testing.T) {
	b := made(t, set{"plugs": 2, "length": 320})
	for id, sign := range map[string]float64{"w-plugs": 1, "w-plugs-b": -1} {
		w := b.Weld(id)
		if w == nil || w.Kind != part.Plug || len(w.Segments) != 2 || w.LegMM != 6 || w.WidthMM != 16 || w.Joins[0] != "doubler" {
			t.Fatalf("%s: %+v", id, w)
		}
		for i, x := range []float64{45, 125} {
			if s := w.Segments[i]; s.A != (part.Vec{X: sign*x - 8, Z: 3}) || s.B != (part.Vec{X: sign*x + 8, Z: 3}) {
				t.Errorf("%s: %+v", id, s)
			}
		}
	}
	if b := made(t, set{}); len(b.Welds) != 2 {
		t.Errorf("%d welds without plugs", len(b.Welds))
	}
}

// Two bolts 50 apart, 40 from the middle: 47.2 from the hole's centre, 27.2 from its edge; 40 and 25 from the plate's; 69 from the wall's.
func TestBolted(t *testing.T) {
	b := made(t, set{"fixing": "bolted"})
	if len(b.Bolts) != 2 || len(b.Welds) != 0 {
		t.Fatalf("%d groups, %d welds", len(b.Bolts), len(b.Welds))
	}
	g := b.BoltGroup("bolts-b")
	if g.Points[0].X != -40 || g.GripMM != 12 || g.Plies[0].PitchMM != 50 || g.Plies[0].EdgeMM != 25 || math.Abs(g.Plies[1].EdgeMM-(math.Hypot(40, 25)-20)) > 1e-9 {
		t.Errorf("%+v", g)
	}
}

// The plate takes what is stated, off its middle plane by half of both thicknesses unless the wall takes that couple; the wall keeps the rest.
func TestShare(t *testing.T) {
	b := made(t, set{"share": 0.3, "thickness": 8, "fixing": "bolted"})
	s, branches := b.Shares[0], b.Paths[0].Branches
	if s.Lo != 0.3 || s.Hi != 0.3 || len(branches) != 2 || len(branches[1].Through) != 1 {
		t.Errorf("%+v, %+v", s, branches)
	}
	if off := b.Plates[0].Pose.Origin.Z - branches[0].At.Z; off != 7 {
		t.Errorf("force %g mm off the plate's middle, want 7", off)
	}
	b = made(t, set{"couple": "wall"})
	if off := b.Plates[0].Pose.Origin.Z - b.Paths[0].Branches[0].At.Z; off != 0 {
		t.Errorf("force %g mm off the plate's middle, want none", off)
	}
}

// Two plates that strain alike share a force as their thicknesses: 12 on a wall of 6 takes 12/18, whatever is stated below that; what is stated above counts.
func TestWeldedShareByThickness(t *testing.T) {
	for share, want := range map[float64][2]float64{0.05: {0.05, 2.0 / 3}, 0.9: {2.0 / 3, 0.9}} {
		s := made(t, set{"share": share, "thickness": 12, "weld": 5}).Shares[0]
		if math.Abs(s.Lo-want[0]) > 1e-12 || math.Abs(s.Hi-want[1]) > 1e-12 {
			t.Errorf("share %g: from %g to %g, want %g to %g", share, s.Lo, s.Hi, want[0], want[1])
		}
	}
	if s := made(t, set{}).Shares[0]; s.Lo != 0.5 || s.Hi != 0.5 {
		t.Errorf("alike: from %g to %g", s.Lo, s.Hi)
	}
}

func TestRefusals(t *testing.T) {
	bolted := func(s set) set { s["fixing"] = "bolted"; return s }
	for _, c := range []fabtest.Refusal{
		{Given: set{"corner_radius": 51}, Param: "corner_radius", Bound: "50 mm"},
		{Given: set{"corner_radius": 50}},
		{Given: set{"hole_diameter": 5}, Param: "hole_diameter", Bound: "6 mm"},
		{Given: set{"hole_diameter": 81}, Param: "hole_diameter", Bound: "80 mm"},
		{Given: set{"weld": 7}, Param: "weld", Bound: "6 mm"},
		{Given: set{"width": 179}, Param: "width", Bound: "178 mm"},
		{Given: bolted(set{"width": 181})},
		{Given: bolted(set{"width": 189}), Param: "width", Bound: "188 mm"},
		{Given: set{"plugs": 1, "plug_diameter": 13}, Param: "plug_diameter", Bound: "14 mm"},
		{Given: set{"plugs": 1, "plug_first": 33}, Param: "plug_first", Bound: "34 mm"},
		{Given: set{"plugs": 1, "plug_first": 67}, Param: "plug_first", Bound: "66 mm"},
		{Given: set{"plugs": 2, "length": 400, "plug_pitch": 63}, Param: "plug_pitch", Bound: "64 mm"},
		{Given: set{"plugs": 1, "plug_first": 70, "plug_diameter": 30, "width": 40, "hole_diameter": 10, "length": 260}, Param: "plug_diameter", Bound: "28 mm"},
		{Given: bolted(set{"bolt_first": 20}), Param: "bolt_first", Bound: "15 mm there"},
		{Given: bolted(set{"bolt_first": 15, "hole_diameter": 0}), Param: "bolt_first", Bound: "16 mm"},
		{Given: bolted(set{"bolt_gauge": 30}), Param: "bolt_gauge", Bound: "32 mm"},
		{Given: bolted(set{"bolt_rows": 2, "bolt_row_pitch": 30}), Param: "bolt_row_pitch", Bound: "32 mm"},
		{Given: bolted(set{"bolt_first": 70}), Param: "length", Bound: "15 mm to the edge"},
		{Given: bolted(set{"bolt_size": "M7"}), Param: "bolt_size", Bound: "clearance hole"},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzDoubler(f *testing.F) { fabtest.Fuzz(f, Kind()) }
