package lapplate

import (
	"math"
	"testing"

	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

// Areas and weld lengths of half a lap by elementary geometry: 101 mm from the joint's middle, 80 wide, first weld at 11 mm.
func TestEnds(t *testing.T) {
	slant := math.Hypot(40, 25)
	for _, c := range []struct {
		set          set
		area, length float64
	}{
		{set{"ends": "rectangular"}, 202 * 80, 2*90 + 80},
		{set{"ends": "tapered"}, 202*80 - 4*40*25/2., 2*50 + 2*slant + 30},
		{set{"ends": "diamond"}, 101 * (80 + 30), 2*math.Hypot(101, 25)*90/101 + 30},
	} {
		b := made(t, c.set)
		if got := b.Plates[0].Shape(true).Area(); math.Abs(got-c.area) > 1e-6 {
			t.Errorf("%v: area %g, want %g", c.set, got, c.area)
		}
		for _, w := range b.Welds {
			sum := 0.0
			for _, s := range w.Segments {
				sum += s.B.Sub(s.A).Norm()
			}
			if math.Abs(sum-c.length) > 1e-9 {
				t.Errorf("%v: %s is %g mm long, want %g", c.set, w.ID, sum, c.length)
			}
		}
	}
}

// A single lap of t2 on flats of t1 carries its force (t1 + t2)/2 off its own middle; two laps balance.
func TestEccentricity(t *testing.T) {
	for _, c := range []struct {
		set  set
		laps int
		off  float64
	}{
		{set{"member_thickness": 10, "lap_thickness": 6}, 1, 8},
		{set{"member_thickness": 10, "lap_thickness": 6, "faces": "two", "stagger": 30}, 2, 0},
	} {
		b := made(t, c.set)
		branches := b.Paths[0].Branches
		if len(branches) != c.laps {
			t.Fatalf("%v: %d branches", c.set, len(branches))
		}
		for i, br := range branches {
			if off := math.Abs(b.Plates[i].Pose.Origin.Z - br.At.Z); math.Abs(off-c.off) > 1e-12 {
				t.Errorf("%v: force %g mm off the lap's middle, want %g", c.set, off, c.off)
			}
		}
	}
}

func TestStaggerMovesTheSecondLapsEnds(t *testing.T) {
	b := made(t, set{"faces": "two", "stagger": 30, "ends": "rectangular"})
	if a, c := b.Plates[0].Outer.BBox().Width(), b.Plates[1].Outer.BBox().Width(); a != 202 || c != 262 {
		t.Errorf("laps %g and %g mm long, want 202 and 262", a, c)
	}
}

// Bolts 25 and 60 mm from a flat's end 1 mm off the middle, on both halves and on both faces.
func TestBolted(t *testing.T) {
	b := made(t, set{"fixing": "bolted", "faces": "two", "bolts_per_row": 2})
	if len(b.Bolts) != 4 || len(b.Welds) != 0 || len(b.Plates[0].Holes) != 8 {
		t.Fatalf("%d groups, %d welds, %d holes", len(b.Bolts), len(b.Welds), len(b.Plates[0].Holes))
	}
	g := b.BoltGroup("bolts-lap-1")
	if g.Points[0].X != 26 || g.Points[1].X != 61 || g.GripMM != 24 {
		t.Errorf("rows at %g and %g, grip %g", g.Points[0].X, g.Points[1].X, g.GripMM)
	}
	if p := g.Plies[1]; p.EdgeMM != 25 || p.PitchMM != 35 {
		t.Errorf("flat %+v, want 25 to its end and rows 35 apart", p)
	}
}

func TestRefusals(t *testing.T) {
	bolted := func(s set) set { s["fixing"] = "bolted"; return s }
	for _, c := range []fabtest.Refusal{
		{Given: set{"stagger": 20}, Param: "stagger", Bound: "two"},
		{Given: set{"nose": 80}, Param: "nose", Bound: "80 mm"},
		{Given: set{"nose": 80, "ends": "rectangular"}},
		{Given: set{"taper": 101}, Param: "taper", Bound: "100 mm"},
		{Given: set{"lap_width": 91}, Param: "lap_width", Bound: "90 mm"},
		{Given: set{"overlap": 39, "taper": 20}, Param: "overlap", Bound: "40 mm"},
		{Given: set{"overlap": 60, "weld_stop": 45}, Param: "overlap", Bound: "65 mm"},
		{Given: bolted(set{"bolt_size": "M7"}), Param: "bolt_size", Bound: "clearance hole"},
		{Given: bolted(set{"lap_width": 101}), Param: "lap_width", Bound: "100 mm"},
		{Given: bolted(set{"bolt_first": 14}), Param: "bolt_first", Bound: "15 mm"},
		{Given: bolted(set{"bolt_row_pitch": 30}), Param: "bolt_row_pitch", Bound: "32 mm"},
		{Given: bolted(set{"bolts_per_row": 2, "bolt_gauge": 30}), Param: "bolt_gauge", Bound: "32 mm"},
		{Given: bolted(set{"bolts_per_row": 3, "bolt_gauge": 33}), Param: "bolt_gauge", Bound: "15 mm"},
		{Given: bolted(set{"bolt_rows": 3}), Param: "overlap", Bound: "15 mm"},
		{Given: bolted(set{"bolts_per_row": 2, "bolt_gauge": 48, "bolt_row_pitch": 50}), Param: "nose", Bound: "15 mm"},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

// Requests drawn at random: a typed refusal or a sound bracket.
func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzLapPlate(f *testing.F) { fabtest.Fuzz(f, Kind()) }
