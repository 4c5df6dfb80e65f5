package strength_test

// The base plate foot as a plate: past the fork, across its corners, and between the ears. By statics on the clevis kind.

import (
	"math"
	"strings"
	"testing"

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
