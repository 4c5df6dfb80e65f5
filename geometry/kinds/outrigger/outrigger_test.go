package outrigger

import (
	"math"
	"testing"

	"lugwright/geometry/access"
	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

// What a builder may want: each must build and be sound, and a torch reaches every run, a socket every bolt.
func TestVariants(t *testing.T) {
	for name, s := range map[string]set{
		"defaults":    {},
		"end tie":     {"end_thickness": 12},
		"straight":    {"tip_height": 150, "load_offset": 0},
		"three rows":  {"bolt_rows": 3, "bolt_gauge": 55},
		"pin":         {"mount": "pin"},
		"pin, keeper": {"mount": "pin", "pin_ends": "keeper"},
	} {
		t.Run(name, func(t *testing.T) {
			if got := access.Findings(made(t, s), access.Usual()); got != nil {
				t.Errorf("out of reach: %v", got)
			}
		})
	}
}

// Under the head plate: 120 + 12 between the plates' middles, 210 long from the base plate of 20 to 230, 150 high and 90 at the end: trapezes. The head plate
// lies on 130 of their upper edges, 75 over the middle.
func TestParts(t *testing.T) {
	b := made(t, set{})
	for id, x := range map[string]float64{"plate-front": -66, "plate-rear": 66} {
		p := b.Plate(id)
		if got, want := p.Shape(true).Area(), 210*(150+90)/2.; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %g mm2, want %g", id, got, want)
		}
		if got := p.Pose.At(230, 75, 0); got.Sub(part.Vec{X: x, Y: 230, Z: 75}).Norm() > 1e-9 {
			t.Errorf("%s: upper outer corner at %v", id, got)
		}
		for weld, want := range map[string]float64{"w-" + id: 2 * 150, "w-head-" + id: 2 * 130} {
			length := 0.0
			for _, s := range b.Weld(weld).Segments {
				length += s.B.Sub(s.A).Norm()
			}
			if math.Abs(length-want) > 1e-9 {
				t.Errorf("%s of %g mm, want %g", weld, length, want)
			}
		}
	}
	if got := b.Plate("head").Pose.Origin; got.Sub(part.Vec{Y: 165, Z: 83}).Norm() > 1e-9 {
		t.Errorf("head plate's middle at %v", got)
	}
	if got := b.LoadPoints[0].At; got.Sub(part.Vec{Y: 170, Z: 131}).Norm() > 1e-9 {
		t.Errorf("load at %v", got)
	}
	// Bolts at 130 along and 55 up; the plates' outer faces at 72, their ends at 75.
	if p := b.Bolts[0].Across; p[1] != (part.Pry{}) || math.Abs(p[0].BMM-58) > 1e-9 || math.Abs(p[0].AMM-30) > 1e-9 {
		t.Errorf("prying %+v", p)
	}
}

// Open plates on a pin 170 out: a lug of 80 with gaps of 2, plates of 12, so 96 between their middles. Half a plate is the triangle of the pin, the middle of
// the root and its end, 150 by 75, that of pin, root's end and the point where the edge touches an arc of 40 about the pin, and the sector from there on.
func TestPinned(t *testing.T) {
	b := made(t, set{"mount": "pin", "finish_allowance": 0, "end_distance": 40})
	away := math.Hypot(150, 75)
	sector := math.Pi - math.Atan2(75, 150) - math.Acos(40/away)
	want := 150*75 + 40*math.Sqrt(away*away-40*40) + 40*40*sector - math.Pi*25.5*25.5/4
	for id, x := range map[string]float64{"plate-front": -48, "plate-rear": 48} {
		p := b.Plate(id)
		if got := p.Shape(true).Area(); math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %g mm2, want %g", id, got, want)
		}
		if h, _ := p.Hole("pin"); p.HoleAt(h).Sub(part.Vec{X: x, Y: 170}).Norm() > 1e-9 {
			t.Errorf("%s: hole at %v", id, p.HoleAt(h))
		}
	}
	if p := b.Pins[0]; p.Seats[0].Thing != "plate-rear" || !p.Seats[1].Loads || p.Seats[2].AtMM != 48 {
		t.Errorf("seats %+v", p.Seats)
	}
}

func TestRefusals(t *testing.T) {
	pin := func(s set) set {
		s["mount"] = "pin"
		return s
	}
	for _, c := range []fabtest.Refusal{
		{Given: set{"plate_gap": 23}, Param: "plate_gap", Bound: "24 mm"},
		{Given: set{"tip_height": 151}, Param: "tip_height", Bound: "150 mm"},
		{Given: set{"end_thickness": 3}, Param: "end_thickness", Bound: "4 mm"},
		{Given: set{"end_thickness": 8, "tip_height": 23}, Param: "tip_height", Bound: "24 mm"},
		{Given: set{"hold_low": 0.6, "hold_high": 0.5}, Param: "hold_low", Bound: "0.5"},
		{Given: set{"plate_weld": 25, "root_height": 90, "tip_height": 90}, Param: "root_height", Bound: "100 mm"},
		{Given: set{"reach": 170}, Param: "reach", Bound: "176 mm"},
		{Given: set{"head_length": 30, "end_thickness": 8}, Param: "head_length", Bound: "32 mm"},
		{Given: set{"head_width": 155}, Param: "head_width", Bound: "156 mm"},
		{Given: set{"mount_length": 131}, Param: "mount_length", Bound: "130 mm"},
		{Given: set{"load_out": 140}, Param: "load_out", Bound: "145 and 185 mm"},
		{Given: set{"mount_width": 181}, Param: "mount_width", Bound: "180 mm"},
		{Given: set{"load_offset": 67}, Param: "load_offset", Bound: "66 mm"},
		{Given: set{"base_height": 160}, Param: "base_height", Bound: "162 mm"},
		{Given: set{"base_height": 189}, Param: "base_height", Bound: "188 mm"},
		{Given: set{"bolt_pitch": 190}, Param: "bolt_pitch", Bound: "25.2 mm"},
		{Given: set{"bolt_columns": 3, "bolt_pitch": 130, "root_height": 90, "tip_height": 80, "bolt_gauge": 120}, Param: "bolt_columns", Bound: "97.2 mm from the middle"},
		{Given: pin(set{"lug_thickness": 15}), Param: "gap", Bound: "24 mm"},
		{Given: pin(set{"load_out": 50}), Param: "load_out", Bound: "52 mm"},
		{Given: pin(set{"head_radius": 76}), Param: "head_radius", Bound: "75 mm"},
		{Given: pin(set{"end_distance": 18}), Param: "end_distance", Bound: "6.25 mm"},
		{Given: pin(set{"bush_length": 81}), Param: "bush_length", Bound: "80 mm"},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzOutrigger(f *testing.F) { fabtest.Fuzz(f, Kind()) }
