package strength_test

import (
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/en1993"
)

// lapped is a flat of 5 mm on a flat of 5 mm, two bolts M24 100 apart along x.
func lapped() *part.Bracket {
	pose := part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
	ply := func(thing string) part.Ply {
		return part.Ply{Thing: thing, ThicknessMM: 5, Material: "S355", EdgeMM: 60, PitchMM: 100}
	}
	b := &part.Bracket{
		Name: "lap", Kind: "test", Hand: part.LeftHand,
		Plates: []part.Plate{{ID: "flat", Name: "flat", ThicknessMM: 5, Material: "S355", Outer: shape.Rect(shape.Point{X: -110, Y: -60}, shape.Point{X: 110, Y: 60}),
			Holes: []part.Hole{{ID: "a", Center: shape.Point{X: -50}, DiaMM: 26, CutMM: 26, Purpose: part.ForBolt, Finish: part.AsCut},
				{ID: "b", Center: shape.Point{X: 50}, DiaMM: 26, CutMM: 26, Purpose: part.ForBolt, Finish: part.AsCut}},
			Pose: part.Pose{Origin: part.Vec{Z: 2.5}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}}},
		Bolts: []part.BoltGroup{{ID: "bolts", Pose: pose, Points: []shape.Point{{X: -50}, {X: 50}}, Size: "M24", DiaMM: 24, Grade: "8.8", HoleMM: 26, GripMM: 10,
			Patch: shape.Box{Min: shape.Point{X: -110, Y: -60}, Max: shape.Point{X: 110, Y: 60}}, Plies: [2]part.Ply{ply("flat"), ply("other")}}},
		Supports:   []part.Support{{ID: "other", Kind: part.BodyFrame, ThicknessMM: 5, Material: "S355"}},
		LoadPoints: []part.LoadPoint{{ID: "p"}},
	}
	for _, c := range part.Components() {
		b.Paths = append(b.Paths, part.Path{LoadPoint: "p", Component: c, Branches: []part.Branch{{Through: []string{"flat", "bolts", "other"}}}})
	}
	return b
}

// EN 1993-1-8, 3.6.1(10): two bolts are one row for what pulls across their line, be it a skew load's part or torsion, and two rows for what pulls along it.
// With one row bearing is at most 1.5 d t f_u/gamma_M2 = 67.7 kN; with two k_1 alpha_b d t f_u/gamma_M2 = 2.5 x 60/78 x 45.12 = 86.8 kN.
func TestSingleRowOfBolts(t *testing.T) {
	twist := service("twist", part.Vec{})
	twist.Moment = part.Vec{Z: 1e6}
	for _, c := range []struct {
		load part.Case
		want float64
	}{
		{service("along", part.Vec{X: 20000}), 86769}, {service("across", part.Vec{Y: 20000}), 67680},
		{service("skew", part.Vec{X: 20000, Y: 1000}), 67680}, {twist, 67680},
	} {
		for _, other := range []string{"support", "plate"} {
			b := lapped()
			if other == "plate" { // the other flat is a plate of the bracket, and rests on what is beyond
				b.Plates = append(b.Plates, b.Plates[0])
				b.Plates[1].ID, b.Plates[1].Pose.Origin = "under", part.Vec{Z: -2.5}
				b.Bolts[0].Plies[1].Thing = "under"
				for i := range b.Paths {
					b.Paths[i].Branches[0].Through = []string{"flat", "bolts", "under", "other"}
				}
			}
			r, err := strength.Run(en1993.Basis(), b, []part.Case{c.load}, strength.Options{})
			if err != nil {
				t.Fatal(err)
			}
			within(t, c.load.Name+", "+other, find(t, r, "bolt-bearing", "flat").Capacity, c.want, 1e-4)
		}
	}
}

// The ply in the middle bears what its bolts bring through both shear planes, whichever side of a plane it is on: 20 kN on two bolts are 10 kN each, and
// with a second plane as much again.
func TestPlyBetweenTwoPlanes(t *testing.T) {
	for _, first := range []bool{true, false} {
		b := lapped()
		second := b.Bolts[0]
		second.ID, second.SameAs, second.Pose.Origin = "bolts-2", "bolts", part.Vec{Z: 5}
		second.Plies = [2]part.Ply{b.Bolts[0].Plies[0], b.Bolts[0].Plies[1]}
		second.Plies[1].Thing, second.Plies[0].Thing = "far", "flat"
		if !first {
			second.Plies[0], second.Plies[1] = second.Plies[1], second.Plies[0]
		}
		b.Bolts = append(b.Bolts, second)
		b.Supports = append(b.Supports, part.Support{ID: "far", Kind: part.BodyFrame, ThicknessMM: 5, Material: "S355"})
		for i := range b.Paths {
			b.Paths[i].Branches[0].Through = []string{"flat", "bolts", "bolts-2", "other"}
		}
		r, err := strength.Run(en1993.Basis(), b, []part.Case{service("along", part.Vec{X: 20000})}, strength.Options{Method: strength.PartialFactors, LoadFactor: 1})
		if err != nil {
			t.Fatal(err)
		}
		within(t, "middle ply", find(t, r, "bolt-bearing", "flat").Demand, 20000, 1e-9)
	}
}

// Bolts that all stand outside the faces' contact hold shear but no pull: said, not guessed.
func TestBoltsOutsideTheContact(t *testing.T) {
	b := lapped()
	b.Bolts[0].Patch = shape.Box{Min: shape.Point{X: -20, Y: -60}, Max: shape.Point{X: 20, Y: 60}}
	if _, err := strength.Run(en1993.Basis(), b, []part.Case{service("pull", part.Vec{Z: 1000})}, strength.Options{}); err == nil || !strings.Contains(err.Error(), "bolts[0]") {
		t.Errorf("a pull: %v", err)
	}
}

// AISC 360-22 Table J3.3M gives an M16 a standard hole of 18 mm, M12 one of 14; a joint that bears may have no larger one (J3.3). A close hole of M16 has 17, a loose one 18.5 mm,
// by ISO 273. M8 stands in no table.
func TestHolesOfABearingJoint(t *testing.T) {
	for _, c := range []struct {
		size, fit string
		hole, max float64
		want      strength.Verdict
	}{
		{"M16", "close", 17, 18, strength.Pass}, {"M16", "loose", 18.5, 18, strength.Fail}, {"M12", "normal", 13.5, 14, strength.Pass}, {"M8", "normal", 0, 0, strength.NotApplied},
	} {
		b := clevisOf(t, part.LeftHand, with(bare, word("bolt_size", c.size), word("bolt_fit", c.fit)))
		k := find(t, run(t, b, strength.Options{Method: strength.ASD}, service("up", part.Vec{Z: 1000})), "bolt-hole-size", "base.b")
		if k.Verdict != c.want {
			t.Errorf("%s %s: %s", c.size, c.fit, k.Verdict)
		}
		if c.hole > 0 {
			within(t, c.size+" "+c.fit, k.Demand, c.hole, 1e-9)
			within(t, c.size+", greatest", k.Capacity, c.max, 1e-9)
		}
	}
}
