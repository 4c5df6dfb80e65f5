package spreaderwasher

import (
	"math"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

// sized has the sizes by which these tests are reckoned.
func sized() geometry.Kind {
	return fabtest.Sized(Kind(), set{"sheet_thickness": 3})
}

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, sized(), s) }

// 60 square less four corners of 5, or round, less the hole of 13.5: ISO 273 medium for M12.
func TestOutlines(t *testing.T) {
	hole := math.Pi * 13.5 * 13.5 / 4
	for _, c := range []struct {
		set  set
		area float64
	}{
		{set{}, 60*60 - (4-math.Pi)*5*5 - hole},
		{set{"corner_radius": 0}, 60*60 - hole},
		{set{"shape": "round"}, math.Pi*60*60/4 - hole},
	} {
		if got := made(t, c.set).Plates[0].Shape(true).Area(); math.Abs(got-c.area) > 1e-6 {
			t.Errorf("%v: area %g, want %g", c.set, got, c.area)
		}
	}
}

// On a sheet of 3 the washer of 6 is from 1.5 to 7.5 over its middle; the rod hangs 140 from its underside.
func TestStack(t *testing.T) {
	b := made(t, set{})
	if z, rod, load := b.Plates[0].Pose.Origin.Z, b.Rods[0].Pose.Origin.Z, b.LoadPoints[0].At.Z; z != 4.5 || rod != -141.5 || load != -141.5 {
		t.Errorf("washer at %g, rod at %g, load at %g", z, rod, load)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"side": 35}, Param: "side", Bound: "36 mm"},
		{Given: set{"thickness": 2.5}, Param: "thickness", Bound: "3 mm"},
		{Given: set{"corner_radius": 31}, Param: "corner_radius", Bound: "30 mm"},
		{Given: set{"corner_radius": 31, "shape": "round"}},
		{Given: set{"engagement": 37}, Param: "engagement", Bound: "36 mm"},
		{Given: set{"rod_size": "M7"}, Param: "rod_size", Bound: "clearance hole"},
	} {
		if fault := c.Broken(sized()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, sized(), 1000) }

func FuzzSpreaderWasher(f *testing.F) { fabtest.Fuzz(f, sized()) }
