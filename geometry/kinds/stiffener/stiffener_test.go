package stiffener

import (
	"math"
	"testing"

	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

// 55 x 188 less what is open at its corners: triangles of 13 (9 + 4), or quarters of a circle of 13; two of them between flanges, one across
// an angle.
func TestOutlines(t *testing.T) {
	for _, c := range []struct {
		set  set
		area float64
	}{
		{set{}, 55*188 - 2*13*13/2.},
		{set{"corner": "root hole"}, 55*188 - 2*math.Pi*13*13/4},
		{set{"sides": "two"}, 55*188 - 13*13/2.},
		{set{"sides": "two", "corner": "root hole"}, 55*188 - math.Pi*13*13/4},
	} {
		if got := made(t, c.set).Plates[0].Shape(true).Area(); math.Abs(got-c.area) > 1e-6 {
			t.Errorf("%v: area %g, want %g", c.set, got, c.area)
		}
	}
}

// Between flanges the web's weld runs from 13 to 175 below the flange, the flanges' from 13 to 55; across an angle to its far leg's end.
func TestWelds(t *testing.T) {
	for _, c := range []struct {
		set  set
		runs map[string][2]part.Vec
	}{
		{set{}, map[string][2]part.Vec{"w-flange": {{Y: 13}, {Y: 55}}, "w-web": {{Z: -13}, {Z: -175}}, "w-far": {{Y: 13, Z: -188}, {Y: 55, Z: -188}}}},
		{set{"sides": "two"}, map[string][2]part.Vec{"w-flange": {{Y: 13}, {Y: 55}}, "w-web": {{Z: -13}, {Z: -188}}}},
	} {
		b := made(t, c.set)
		if len(b.Welds) != len(c.runs) {
			t.Errorf("%v: %d welds", c.set, len(b.Welds))
		}
		for id, want := range c.runs {
			for _, s := range b.Weld(id).Segments {
				for k, end := range [2]part.Vec{s.A, s.B} {
					if math.Abs(math.Abs(end.X)-4) > 1e-9 || end.Sub(part.Vec{X: end.X}).Sub(want[k]).Norm() > 1e-9 {
						t.Errorf("%v, %s: run ends at %v, want %v at x = 4 or -4", c.set, id, end, want[k])
					}
				}
			}
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"width": 32}, Param: "width", Bound: "33 mm"},
		{Given: set{"width": 33}},
		{Given: set{"height": 45}, Param: "height", Bound: "46 mm"},
		{Given: set{"height": 45, "sides": "two"}},
		{Given: set{"height": 32, "sides": "two"}, Param: "height", Bound: "33 mm"},
		{Given: set{"load_distance": 12}, Param: "load_distance", Bound: "13 to 55 mm"},
		{Given: set{"load_distance": 56}, Param: "load_distance", Bound: "13 to 55 mm"},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzStiffener(f *testing.F) { fabtest.Fuzz(f, Kind()) }
