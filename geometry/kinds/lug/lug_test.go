package lug

import (
	"math"
	"testing"

	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

// A round head of 100 wide on a pin 60 up, 50 to the top: 100 x 60 under a half circle of 50, less the hole of 25.5.
func TestOutline(t *testing.T) {
	b := made(t, set{"head": "round", "end_distance": 50, "finish_allowance": 0})
	want := 100*60 + math.Pi*50*50/2 - math.Pi*25.5*25.5/4
	if got := b.Plate("lug").Shape(true).Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, want %g", got, want)
	}
}

func TestPartsInPlace(t *testing.T) {
	b := made(t, set{"cheek_thickness": 6, "cheek_diameter": 50, "gusset_height": 28, "gusset_length": 40, "cheek_weld": 3, "pin_height": 70, "gusset_weld": 4, "weld": 6})
	if c := b.Plate("cheek-2"); c == nil || math.Abs(c.Pose.Origin.Y+13) > 1e-9 {
		t.Errorf("cheek plate %+v", c)
	}
	g := b.Plate("gusset-1")
	if tip := g.Pose.At(40, 0, 0); tip.Sub(part.Vec{Y: 50}).Norm() > 1e-9 {
		t.Errorf("gusset's tip at %v", tip)
	}
	if s := b.Pins[0].Seats; s[1].ThicknessMM != 32 || math.Abs(s[2].AtMM-(16+2+5)) > 1e-9 {
		t.Errorf("seats %+v", s)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"head_radius": 51}, Param: "head_radius", Bound: "50 mm"},
		{Given: set{"end_distance": 15, "head_radius": 15}, Param: "end_distance", Bound: "6.25 mm is left"},
		{Given: set{"pin_height": 26}, Param: "pin_height", Bound: "27 mm"},
		{Given: set{"cheek_thickness": 2}, Param: "cheek_thickness", Bound: "3 mm"},
		{Given: set{"cheek_thickness": 6, "cheek_diameter": 90}, Param: "cheek_diameter", Bound: "at most"},
		{Given: set{"gusset_height": 60}, Param: "gusset_height", Bound: "at most 42.25 mm"},
		{Given: set{"gusset_height": 20}, Param: "gusset_height", Bound: "at least 31 mm"},
		{Given: set{"bush_length": 30}, Param: "bush_length", Bound: "20 mm"},
		{Given: set{"width": 30, "head_radius": 10}, Param: "width", Bound: "32 mm"},
		{Given: set{"gusset_height": 40}},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzLug(f *testing.F) { fabtest.Fuzz(f, Kind()) }
