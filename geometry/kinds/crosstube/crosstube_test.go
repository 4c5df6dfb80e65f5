package crosstube

import (
	"math"
	"testing"

	"lugwright/geometry/access"
	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

func length(w *part.WeldGroup) (mm float64) {
	for _, s := range w.Segments {
		mm += s.B.Sub(s.A).Norm()
	}
	return mm
}

// 800 between the webs less two plates of 20 leave a tube of 760 from y = 380 to -380. Its welds are rings of sixteen chords, 16 sin(pi/16) of 88.9; round a
// rectangular one the four flats of 100 - 2 x 16. The plate has its area less four holes of 17 (ISO 273, fine series).
func TestParts(t *testing.T) {
	b := made(t, set{})
	m := b.Members[0]
	if m.LengthMM != 760 || m.Pose.Origin != (part.Vec{Y: 380}) || m.Pose.At(760, 0, 0) != (part.Vec{Y: -380}) || m.Profile.Kind != part.RoundTube {
		t.Errorf("tube %+v", m)
	}
	square := made(t, set{"section": "rectangular"})
	for _, id := range []string{"w-near", "w-far"} {
		if got, want := length(b.Weld(id)), 16*math.Sin(math.Pi/16)*88.9; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s round: %g mm, want %g", id, got, want)
		}
		if got := length(square.Weld(id)); math.Abs(got-4*68) > 1e-9 {
			t.Errorf("%s square: %g mm, want %d", id, got, 4*68)
		}
	}
	area := 220*150 - (4-math.Pi)*100 - 4*math.Pi*17*17/4
	for i, y := range [2]float64{390, -390} {
		if p := b.Plates[i]; math.Abs(p.Shape(true).Area()-area) > 1e-6 || p.Pose.Origin != (part.Vec{Y: y}) {
			t.Errorf("%s: %g mm2 at %v, want %g", p.ID, p.Shape(true).Area(), p.Pose.Origin, area)
		}
	}
	// Bolts stand at 82.5 along and 45 up; a round tube stiffens the plate at least over the square within it, 88.9/sqrt2 wide.
	for i := range b.Bolts {
		p, half := b.Bolts[i].Across, 88.9/2/math.Sqrt2
		if math.Abs(p[1].BMM-(45-half)) > 1e-9 || math.Abs(p[1].AMM-30) > 1e-9 || math.Abs(p[0].BMM-(82.5-half)) > 1e-9 || math.Abs(p[0].AMM-27.5) > 1e-9 {
			t.Errorf("%s: prying %+v", b.Bolts[i].ID, p)
		}
	}
}

// The load is measured from the left rail on the left hand and from the right rail on the right one.
func TestLoadAt(t *testing.T) {
	b := made(t, set{"load_at": 250, "load_height": 60})
	if at := b.LoadPoints[0].At; at != (part.Vec{Y: 150, Z: 60}) {
		t.Errorf("load at %v", at)
	}
	other := b.Mirrored()
	if along, _ := other.Share("ends").AlongSpan(other.LoadPoints[0].At); along != 250 {
		t.Errorf("on the other hand %g from the near rail", along)
	}
	if got := other.Share("ends").Ends[0]; got != (part.Vec{Y: -400}) {
		t.Errorf("near rail of the other hand at %v", got)
	}
}

// The marks of the end plates lie beside the tube, where they can still be read.
func TestMarksBesideTheTube(t *testing.T) {
	b := made(t, set{})
	for i := range b.Plates {
		p := &b.Plates[i]
		if at := p.Etch[0].At; math.Hypot(at.X, at.Y) < 88.9/2 {
			t.Errorf("%s: its mark at %v lies under the tube of 88.9 mm", p.ID, at)
		}
	}
}

// A torch gets round both ends of the shortest tube that is taken, and a socket over every bolt.
func TestAccess(t *testing.T) {
	for _, s := range []set{{}, {"section": "rectangular"}, {"span": 200, "load_at": 100}} {
		if got := access.Findings(made(t, s), access.Usual()); got != nil {
			t.Errorf("%v: %v", s, got)
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"tube_wall": 20, "tube_diameter": 60}, Param: "tube_wall", Bound: "quarter of the diameter, 15 mm"},
		{Given: set{"section": "rectangular", "tube_width": 60, "tube_wall": 16, "tube_corner": 16}, Param: "tube_wall", Bound: "15 mm"},
		{Given: set{"section": "rectangular", "tube_corner": 4}, Param: "tube_corner", Bound: "8 mm"},
		{Given: set{"section": "rectangular", "tube_corner": 34}, Param: "tube_corner", Bound: "33.33 mm"},
		{Given: set{"section": "rectangular", "tube_weld": 18}, Param: "tube_weld", Bound: "17 mm"},
		{Given: set{"span": 210, "end_thickness": 60, "load_at": 100}, Param: "span", Bound: "220 mm"},
		{Given: set{"load_at": 20}, Param: "load_at", Bound: "over 20 and under 780 mm"},
		{Given: set{"load_at": 780}, Param: "load_at", Bound: "over 20 and under 780 mm"},
		{Given: set{"end_height": 200}, Param: "end_height", Bound: "188 mm"},
		{Given: set{"end_height": 100, "bolt_rows": 1}, Param: "end_height", Bound: "104.9 mm"},
		{Given: set{"bolt_pitch": 190}, Param: "bolt_pitch", Bound: "20 mm to the edge"},
		{Given: set{"bolt_gauge": 120}, Param: "bolt_gauge", Bound: "20 mm to the edge"},
		{Given: set{"bolt_pitch": 100}, Param: "bolt_pitch", Bound: "27.2 mm"},
		{Given: set{"tube_corner": 60}}, // not of a round tube
		{Given: set{"bolt_rows": 1}},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzCrosstube(f *testing.F) { fabtest.Fuzz(f, Kind()) }
