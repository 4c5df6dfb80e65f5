package strength_test

import (
	"math"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/aisc360"
	"lugwright/strength/basis/en1993"
)

// seated is a plate that stands on a tube of 88.9 x 8 along y, over 120 degrees and 80 along it, loaded at a height over the tube's axis.
func seated(height float64) *part.Bracket {
	at := part.Vec{Z: height}
	b := &part.Bracket{
		Name: "saddle", Kind: "test", Hand: part.LeftHand,
		Plates: []part.Plate{{ID: "side", Name: "side", ThicknessMM: 16, Material: "S355", Outer: shape.Rect(shape.Point{X: -60, Y: 44.45}, shape.Point{X: 60, Y: 120}),
			Pose: part.Pose{U: part.Vec{X: 1}, V: part.Vec{Z: 1}}}},
		Contacts: []part.Contact{{ID: "seat", Things: [2]string{"side", "tube"}, WrapRad: 2 * math.Pi / 3,
			Pose:  part.Pose{Origin: part.Vec{Z: 44.45}, U: part.Vec{Y: 1}, V: part.Vec{X: -1}},
			Patch: shape.Box{Min: shape.Point{X: -40, Y: -60}, Max: shape.Point{X: 40, Y: 60}}}},
		Supports:   []part.Support{{ID: "tube", Kind: part.TubeWall, ThicknessMM: 8, ClearMM: 88.9, Material: "S355"}},
		LoadPoints: []part.LoadPoint{{ID: "p", At: at}},
	}
	for _, c := range part.Components() {
		b.Paths = append(b.Paths, part.Path{LoadPoint: "p", Component: c, Branches: []part.Branch{{At: at, Through: []string{"side", "seat", "tube"}}}})
	}
	return b
}

// 25 kN down on 88.9 sin 60 deg = 76.99 by 80: 6159 mm2 of S355, 2186 kN by EN 1993-1-1, 6.2.4. The ring bends as saddle-ring has it alone.
func TestSeatOnTube(t *testing.T) {
	down := service("down", part.Vec{Z: -25e3})
	r, err := strength.Run(en1993.Basis(), seated(100), []part.Case{down}, strength.Options{Method: strength.PartialFactors, LoadFactor: 1})
	if err != nil {
		t.Fatal(err)
	}
	k := find(t, r, "contact-bearing", "tube")
	within(t, "force", k.Demand, 25e3, 1e-9)
	within(t, "capacity", k.Capacity, 88.9*math.Sin(math.Pi/3)*80*355, 1e-9)
	alone := strength.Calc{Method: strength.ASD}
	// P_r, D, t, b, beta, carried along the tube, F_y
	if err := aisc360.Basis().Limit("saddle-ring").FromNumbers(&alone, [][]float64{{25e3}, {88.9}, {8}, {80}, {math.Pi / 3}, {1}, {355}}); err != nil {
		t.Fatal(err)
	}
	within(t, "ring", find(t, run(t, seated(100), strength.Options{}, down), "saddle-ring", "tube").Demand, alone.Demand, 1e-12)
}

// With 5 kN along the tube at 100 - 44.45 over the seat the force is 11.11 off the middle: 80 - 22.22 press. Beside the seat the rule does not speak.
// What the faces have no hold on is refused: a pull, a slide without or beyond friction, a couple or a twist with nothing that presses.
func TestSeatOffItsMiddle(t *testing.T) {
	rough := seated(100)
	rough.Contacts[0].FrictionC = 1
	r := run(t, rough, strength.Options{}, service("askew", part.Vec{Y: 5e3, Z: -25e3}))
	arm := 5e3 * (100 - 44.45) / 25e3
	within(t, "capacity", find(t, r, "contact-bearing", "tube").Capacity, 1.8*355*88.9*math.Sin(math.Pi/3)*(80-2*arm)/2, 1e-9)
	r = run(t, rough, strength.Options{}, service("over", part.Vec{Y: 25e3, Z: -25e3}))
	if k := find(t, r, "contact-bearing", "tube"); k.Verdict != strength.Outside {
		t.Errorf("beside the seat: %s", k.Verdict)
	}
	couple, twist := service("couple", part.Vec{}), service("twist", part.Vec{})
	couple.Moment, twist.Moment = part.Vec{X: 5e6}, part.Vec{Z: 5e6}
	for _, c := range []part.Case{
		service("up", part.Vec{Z: 1e3}), service("slide", part.Vec{Y: 5e3}), service("too much", part.Vec{Y: 26e3, Z: -25e3}), couple, twist,
		service("over the flank", part.Vec{X: 5e3, Z: -2e3}), // 68 degrees from upright, where the seat reaches 60
	} {
		_, err := strength.Run(aisc360.Basis(), rough, []part.Case{c}, strength.Options{})
		if f := part.Fields(err); len(f) != 1 || f[0].Field != "contacts[0]" {
			t.Errorf("%s: %v", c.Name, err)
		}
	}
}

// A couple that a path leads through a pin is refused: its seats are checked for forces.
func TestCoupleThroughPin(t *testing.T) {
	b, err := geometry.Build(reckoned(), geometry.Request{Kind: "lug", Name: "lug", Hand: part.LeftHand})
	if err != nil {
		t.Fatal(err)
	}
	b.LoadPoints[0].Released = nil
	b.Paths = append(b.Paths, part.Path{LoadPoint: "pin", Component: part.MxPlus, Branches: []part.Branch{{At: b.LoadPoints[0].At, Through: b.Paths[0].Branches[0].Through}}})
	load := service("couple", part.Vec{})
	load.Moment = part.Vec{X: 2e6}
	if _, err := strength.Run(aisc360.Basis(), b, []part.Case{load}, strength.Options{}); err == nil || part.Fields(err)[0].Field != "pins[0]" {
		t.Errorf("a couple: %v", err)
	}
}
