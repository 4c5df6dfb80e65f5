package vehicle

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lugwright/part"
)

// The main demo, cornering to the right when full: of the pair the left one lifts with 1.40 kN and the right one bears 16.60 kN, and the pair's side load of 7.60
// kN is all at either: each with its own vertical (SCENARIOS numbers; TestScenarioReactions has the rest).
func TestDesignLoadsOfThePair(t *testing.T) {
	s := scenarios(t)["S1"]
	v := s.vehicle()
	r, err := Solve(v, s.body(), []State{v.Empty(), v.Full()}, offRoadCases(t))
	if err != nil {
		t.Fatal(err)
	}
	find := func(mount int, name string) Load {
		t.Helper()
		for _, l := range r.Loads[mount].Loads {
			if l.Name == name {
				return l
			}
		}
		var names []string
		for _, l := range r.Loads[mount].Loads {
			names = append(names, l.Name)
		}
		t.Fatalf("no load %q among\n%s", name, strings.Join(names, "\n"))
		return Load{}
	}
	for _, c := range []struct {
		mount   int
		name    string
		x, y, z float64
	}{
		{1, "A5 right, full, side all at left", 0, -7603.2, 1396.4},
		{1, "A5 right, full, side all at right", 0, 0, 1396.4},
		{2, "A5 right, full, side all at right", 0, -7603.2, -16602.9},
		{2, "A5 right, full, side all at left", 0, 0, -16602.9},
		{0, "A5 right, full", 0, -4164.8, -8329.5},
		{1, "A7, full, fore-aft all at right, side all at right", 0, 0, -75.8},
		{2, "A6 left, full, side all at right", 0, 15206.4, 3473.3},
	} {
		l := find(c.mount, c.name)
		near(t, c.name+" x", l.Force.X, c.x, 0.06)
		near(t, c.name+" y", l.Force.Y, c.y, 0.06)
		near(t, c.name+" z", l.Force.Z, c.z, 0.06)
		if l.Uplift != (c.z > 0) || l.Level != part.Service || l.Source == "" {
			t.Errorf("%+v", l)
		}
	}
	// All of 2 g fore and aft, 47.07 kN, at one of the pair: the other and the single hold the yaw.
	l := find(1, "A7, full, fore-aft all at left, side all at left")
	near(t, "fore-aft", l.Force.X, -47071.9, 0.06)
	for i, want := range []int{52, 80, 80} {
		if n := len(r.Loads[i].Loads); n > want {
			t.Errorf("%s: %d loads, %d will do", r.Loads[i].Mount, n, want)
		}
	}
	if r.Scheme.Choices != 5 {
		t.Errorf("%d choices", r.Scheme.Choices)
	}
}

// Every load balances: over all mounts the loads of one name, where all mounts have it, sum to the body's.
func TestLoadsBalance(t *testing.T) {
	s := scenarios(t)["S3"]
	v := s.vehicle()
	r, err := Solve(v, s.printed(), []State{v.Full()}, offRoadCases(t))
	if err != nil {
		t.Fatal(err)
	}
	sum, count := map[string]part.Vec{}, map[string]int{}
	for _, m := range r.Loads {
		for _, l := range m.Loads {
			for _, name := range append([]string{l.Name}, l.Same...) {
				sum[name], count[name] = sum[name].Add(l.Force), count[name]+1
			}
		}
	}
	for _, c := range offRoadCases(t) {
		name := c.ID + ", full"
		if want := c.AccelG.Scale(1960 * G); count[name] != 3 || sum[name].Sub(want).Norm() > 0.01 {
			t.Errorf("%s: %d mounts, %v, want %v", name, count[name], sum[name], want)
		}
	}
}

// Equal loads of two sets are given once and both named; at another level or factor they are not equal.
func TestEqualLoads(t *testing.T) {
	s := scenarios(t)["S1"]
	v := s.vehicle()
	down := part.Vec{Z: -3}
	cases := []Case{{ID: "one", AccelG: down, Level: part.Service}, {ID: "two", AccelG: down, Level: part.Service}, {ID: "three", AccelG: down, Level: part.Factored},
		{ID: "four", AccelG: down, Level: part.Service, OnUltimate: 4}}
	r := solved(t, v, s.printed(), cases)
	for _, m := range r.Loads {
		if len(m.Loads) != 3 || !slices.Equal(m.Loads[0].Same, []string{"two, empty"}) || m.Loads[1].Level != part.Factored || m.Loads[2].OnUltimate != 4 {
			t.Errorf("%+v", m)
		}
	}
}

// Every load of a choice lies within the mount's range: the range is what a reader sees, the loads are what brackets get.
func TestLoadsLieWithinTheRanges(t *testing.T) {
	s := scenarios(t)["S1"]
	v := s.vehicle()
	for _, b := range []*Body{s.body(), {Mounts: FourPointDiamond(part.Vec{X: 1000, Z: 1000}, part.Vec{X: 4500, Z: 1000}, part.Vec{X: 2800, Z: 1000}, 450)}} {
		for _, k := range offRoadCases(t) {
			r := solved(t, v, b, []Case{k})
			for i, m := range r.Cases[0].Reactions {
				for _, x := range m.Components {
					if x.LowOpen || x.HighOpen {
						t.Errorf("%s %s: open", k.ID, m.Mount)
					}
					for _, l := range r.Loads[i].Loads {
						f := -[3]float64{l.Force.X, l.Force.Y, l.Force.Z}[slices.Index(directions[:], x.Direction)]
						if f < x.Low-0.1 || f > x.High+0.1 {
							t.Errorf("%s: %s %s %g outside %g to %g", l.Name, m.Mount, x.Direction, f, x.Low, x.High)
						}
					}
				}
			}
		}
	}
}

// A part-full tank's contents shift against the turn: the outer mount gets more than with the contents fixed.
func TestSloshLoadsTheOuterMount(t *testing.T) {
	s := scenarios(t)["S1"]
	v := s.vehicle()
	v.Tanks = []Tank{{Name: "water", CapacityL: 1000, Fluid: Fluid{"water", 1}, At: part.Vec{X: 2800, Z: 1500}}}
	half := State{Name: "half", Fills: []Fill{{"water", 0.5}}}
	solve := func() Reaction {
		t.Helper()
		r, err := Solve(v, s.printed(), []State{half}, under(part.Vec{Y: -0.3, Z: -1}))
		if err != nil {
			t.Fatal(err)
		}
		return r.Cases[0].Reactions[2]
	}
	fixed := solve()
	v.Tanks[0].Box = Box{1000, 1250, 800} // 500 L stand 400 deep: shift 1250^2 * 0.3 / 4800 = 97.66 mm; centre 200 lower than fixed, lifted 14.65
	shifted := solve()
	more := 500 * G * (97.65625 - 0.3*(200-14.6484375)) / (2 * 468)
	near(t, "right", shifted.Force.Z-fixed.Force.Z, more-0.0, math.Abs(more)*1e-6+500*G*0.001)
}
