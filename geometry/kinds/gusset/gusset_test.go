package gusset

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
	return fabtest.Sized(Kind(), set{"thickness": 8})
}

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, sized(), s) }

// Areas by elementary geometry: half the legs' product, less the snipe's triangle, less the hole, more the blunt ends.
func TestShapes(t *testing.T) {
	for _, c := range []struct {
		set  set
		area float64
	}{
		{set{"shape": "triangle"}, 150*150/2. - 50},
		{set{"shape": "triangle", "hole_diameter": 40}, 150*150/2. - 50 - 400*math.Pi},
		{set{"along": 200, "down": 120, "nose": 30, "corner_weld": 0}, 200*120 - 170*90/2. - 8},
	} {
		if got := made(t, c.set).Plates[0].Shape(true).Area(); math.Abs(got-c.area) > 1e-6 {
			t.Errorf("%v: area %g, want %g", c.set, got, c.area)
		}
	}
}

// The shelf's weld starts past the snipe (6 + 4 mm) and ends at the tip; the standing weld likewise down the face.
func TestWelds(t *testing.T) {
	b := made(t, set{"along": 180, "down": 140})
	for id, want := range map[string][2]part.Vec{
		"w-foot":  {{Y: 10}, {Y: 180}},
		"w-stand": {{Z: -10}, {Z: -140}},
	} {
		for _, s := range b.Weld(id).Segments {
			for k, end := range [2]part.Vec{s.A, s.B} {
				if math.Abs(math.Abs(end.X)-4) > 1e-9 || end.Sub(part.Vec{X: end.X}).Sub(want[k]).Norm() > 1e-9 {
					t.Errorf("%s: run ends at %v, want %v at x = 4 or -4", id, end, want[k])
				}
			}
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"along": 29, "load_distance": 20}, Param: "along", Bound: "30 mm"},
		{Given: set{"down": 29, "nose": 5}, Param: "down", Bound: "30 mm"},
		{Given: set{"nose": 151}, Param: "nose", Bound: "150 mm"},
		{Given: set{"nose": 151, "shape": "triangle"}},
		{Given: set{"load_distance": 151}, Param: "load_distance", Bound: "10 to 150 mm"},
		{Given: set{"load_distance": 9}, Param: "load_distance", Bound: "10 to 150 mm"},
		{Given: set{"down": 190}, Param: "down", Bound: "188 mm"},
		{Given: set{"hole_diameter": 120}, Param: "hole_diameter", Bound: "12 mm is left"},
		{Given: set{"hole_diameter": 57}},
	} {
		if fault := c.Broken(sized()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

// Requests drawn at random: a typed refusal or a sound bracket.
func TestRandom(t *testing.T) { fabtest.Random(t, sized(), 1000) }

func FuzzGusset(f *testing.F) { fabtest.Fuzz(f, sized()) }
