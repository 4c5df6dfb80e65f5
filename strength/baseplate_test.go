package strength_test

// The base plate foot as a plate: past the fork, across its corners, and between the ears. By statics on the clevis kind.

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
)

// Four bolts at (+-100, +-75) under bare ears of 8 x 100 whose outer faces are 20 off the middle: a pull of 8 kN gives each 2 kN, with no
// contact. Past the ears' ends two bolts bend it at 50 mm; across a corner, at 45 degrees through the fork's corner (50, 20), one at
// (50 + 55)/sqrt2; between the ears 4 kN on an ear at 16 and two bolts at 75 make a couple over the ears' width of 100 alone.
func TestBasePlateByHand(t *testing.T) {
	b := clevisOf(t, part.LeftHand, with(bare, word("foot", "base plate"), mm("plate_length", 280), mm("plate_width", 200), mm("plate_thickness", 16),
		mm("bolts_per_row", 2), mm("bolt_pitch", 200), mm("bolt_rows", 2), mm("bolt_gauge", 150), mm("web_clear_height", 240)))
	b.Pins[0].TravelMM = 0
	r := run(t, b, strength.Options{}, service("up", part.Vec{Z: 8000}))
	at := func(place string) strength.Check {
		for _, c := range r.Checks {
			if c.Limit == "weak-axis-bending" && strings.HasPrefix(c.Place, place+" ") {
				return c
			}
		}
		t.Fatalf("no section %q", place)
		return strength.Check{}
	}
	const Z = 16 * 16 / 4.0 // per length
	for _, c := range []struct {
		place         string
		moment, width float64
	}{
		{"base, rear", 4000 * 50, 200},
		{"base, outboard", 4000 * 55, 280},
		{"base, rear outboard", 2000 * 105 / math.Sqrt2, (80 + 90) * math.Sqrt2},
		{"base, between", 4000 * (75 - 16), 100},
	} {
		got := at(c.place)
		within(t, c.place+", moment", got.Demand, c.moment, 1e-4)
		within(t, c.place+", capacity", got.Capacity, 50*6.894757*Z*c.width/1.67, 1e-4)
	}
}

// A force moved along its own line does the same. From 200 mm over a stand-off's tube, higher than its base plate, 8 kN down bends the plate past the tube
// as from the tube's middle: the load comes to the plate by the tube's weld, not up there.
func TestLoadOverTheTube(t *testing.T) {
	of := func(height float64) *strength.Report {
		b, err := geometry.Build(reckoned(), geometry.Request{Kind: "standoff", Name: "out", Hand: part.LeftHand, Params: []part.Param{mm("load_height", height)}})
		if err != nil {
			t.Fatal(err)
		}
		return run(t, b, strength.Options{}, service("down", part.Vec{Z: -8000}))
	}
	low, high := of(0), of(200)
	for _, place := range []string{"base, over", "base, under", "base, rear", "base, over rear"} {
		want := placed(t, low, "weak-axis-bending", place+" (").Demand
		if got := placed(t, high, "weak-axis-bending", place+" (").Demand; math.Abs(got-want) > 1e-6*want+1e-3 {
			t.Errorf("%s: %.4g N mm, from the tube's middle %.4g", place, got, want)
		}
	}
}

// A stand-off's web, 6 thick and 188 between flanges, alone under couples of 100 N m. About the height it is a force on each half of the width that works, w
// (between the flanges: M h/w); about the rail two forces s apart, at most M. The width along the rail is the bolts' 190, a head of 24 and a spread at 30 degrees,
// at most what bears of the plate's 260, whose corners of 10 take off 20 (1 - 1/sqrt(2)): strength F_y w t^2/4 by AISC 360-22 F11.1.
func TestStandOffWeb(t *testing.T) {
	b, err := geometry.Build(reckoned(), geometry.Request{Kind: "standoff", Name: "out", Hand: part.LeftHand, Params: []part.Param{mm("load_height", 0), word("couple", string(part.CoupleByWall))}})
	if err != nil {
		t.Fatal(err)
	}
	couple := func(m part.Vec) strength.Check {
		c := service("couple", part.Vec{})
		c.Moment = m
		return find(t, run(t, b, strength.Options{Method: strength.ASD}, c), "wall-bending", "support")
	}
	upright, level := couple(part.Vec{Z: 1e5}), couple(part.Vec{X: 1e5})
	wide := 260 - 20*(1-math.Sqrt2/2)
	within(t, "about the height", upright.Demand, 1e5*188/wide, 1e-9)
	within(t, "capacity", upright.Capacity, 355*wide*36/4/1.67, 1e-4)
	if level.Demand > 1e5 || level.Demand < 1e5*(188-150)/188 {
		t.Errorf("about the rail %.4g N mm", level.Demand)
	}
}
