package strength_test

import (
	"math"
	"slices"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/allowable"
)

// standing is a plate of 10 x 100 that stands on its root at z = 0, y its thickness, loaded at its top through whatever goes before it.
func standing(at part.Vec, before ...string) *part.Bracket {
	b := &part.Bracket{
		Name: "plate", Kind: "test", Hand: part.LeftHand,
		Plates: []part.Plate{{ID: "plate", Name: "plate", ThicknessMM: 10, Material: "S355", Outer: shape.Rect(shape.Point{X: -50}, shape.Point{X: 50, Y: 160}),
			Pose: part.Pose{U: part.Vec{X: 1}, V: part.Vec{Z: 1}}}},
		Supports:   []part.Support{{ID: "floor", Kind: part.BodyFrame, ThicknessMM: 10, Material: "S355"}},
		LoadPoints: []part.LoadPoint{{ID: "p", At: at}},
		Sweeps:     []part.Sweep{{ID: "plate", Things: []string{"plate"}, From: part.Vec{Z: 160}, To: part.Vec{}, Name: "plate"}},
	}
	for _, c := range part.Components() {
		b.Paths = append(b.Paths, part.Path{LoadPoint: "p", Component: c, Branches: []part.Branch{{At: at, Through: append(before, "plate", "floor")}}})
	}
	return b
}

// A neck of 30 x 10 between two places of the scan is found from the outline's corners: 150 kN/(300 x 355/1.67).
func TestNeckIsCut(t *testing.T) {
	b := standing(part.Vec{Z: 160})
	b.Plates[0].Outer = shape.Polyline(shape.Point{X: -50}, shape.Point{X: 50}, shape.Point{X: 50, Y: 85}, shape.Point{X: 15, Y: 85}, shape.Point{X: 15, Y: 95}, shape.Point{X: 50, Y: 95},
		shape.Point{X: 50, Y: 160}, shape.Point{X: -50, Y: 160}, shape.Point{X: -50, Y: 95}, shape.Point{X: -15, Y: 95}, shape.Point{X: -15, Y: 85}, shape.Point{X: -50, Y: 85})
	r := run(t, b, strength.Options{Method: strength.ASD}, service("pull", part.Vec{Z: 150000}))
	within(t, "neck", find(t, r, "axial-force", "plate").Utilisation, 150000/(300*355/1.67), 1e-4)
}

// A hook welded to the plate's top, whose eye hangs below the plate's middle 100 away: its load comes into the plate at the weld, so that every section bends
// with 10 kN x 100, wherever the eye is.
func TestLoadEntersAtTheJointBefore(t *testing.T) {
	for _, z := range []float64{-50, 80, 170} {
		b := standing(part.Vec{Y: 100, Z: z}, "hook", "w-hook")
		b.Plates = append(b.Plates, part.Plate{ID: "hook", Name: "hook", ThicknessMM: 10, Material: "S355", Outer: shape.Rect(shape.Point{X: -50, Y: -60}, shape.Point{X: 120, Y: 170}),
			Pose: part.Pose{Origin: part.Vec{Z: 0}, U: part.Vec{Y: 1}, V: part.Vec{Z: 1}}})
		b.Welds = []part.WeldGroup{{ID: "w-hook", Joins: [2]string{"hook", "plate"}, Kind: part.Fillet, LegMM: 6, Electrode: "E70", BothSides: true,
			Segments: []part.WeldSegment{{A: part.Vec{Y: -5, X: -5, Z: 160}, B: part.Vec{Y: 5, X: -5, Z: 160}}, {A: part.Vec{Y: -5, X: 5, Z: 160}, B: part.Vec{Y: 5, X: 5, Z: 160}}}}}
		r := run(t, b, strength.Options{Method: strength.ASD}, service("down", part.Vec{Z: -10000}))
		within(t, "moment", find(t, r, "weak-axis-bending", "plate").Demand, 10000*100, 1e-6)
	}
}

// A load a little over a stand-off's tube bends its base plate as the same load on the tube's axis with its moment does: it comes in through the tube's weld.
func TestLoadOverATube(t *testing.T) {
	demand := func(high float64, moment part.Vec) float64 {
		b, err := geometry.Build(reckoned(), geometry.Request{Kind: "standoff", Name: "s", Hand: part.LeftHand, Params: []part.Param{{Name: "load_height", Number: high, Unit: "mm"}}})
		if err != nil {
			t.Fatal(err)
		}
		load := service("in", part.Vec{Y: -5000})
		load.Moment = moment
		return find(t, run(t, b, strength.Options{Method: strength.ASD}, load), "weak-axis-bending", "base").Demand
	}
	for _, high := range []float64{40, 51, 60, 75} {
		within(t, "base plate", demand(high, part.Vec{}), demand(0, part.Vec{X: 5000 * high}), 1e-6)
	}
}

// A window of 60 x 80 in a plate of 100 x 10: 5 kN in the plane bends each strip of 20 x 10 by 2.5 kN x 40, 150 MPa, over the 25 MPa of the whole section's
// bending at 80 below the load; as one moment on the section that is 175 MPa x its modulus.
func TestStripsBesideAnOpening(t *testing.T) {
	b := standing(part.Vec{Z: 160})
	b.Plates[0].Cutouts = []shape.Loop{shape.Rect(shape.Point{X: -30, Y: 40}, shape.Point{X: 30, Y: 120})}
	r, err := strength.Run(allowable.Basis(), b, []part.Case{service("across", part.Vec{X: 5000})}, strength.Options{})
	if err != nil {
		t.Fatal(err)
	}
	modulus := 10 * (math.Pow(100, 3) - math.Pow(60, 3)) / 12 / 50
	within(t, "stress", find(t, r, "edgewise-bending", "plate").Demand, 2500*40/(10*400/6.)+5000*120/modulus, 1e-3)
}

// One piece of a frame is cut where its line runs; at a hole on that line none is, and the report says so. Off the line the hole is no matter.
func TestLinesThroughAHole(t *testing.T) {
	for x, named := range map[float64]bool{0: true, 40: false} {
		b := standing(part.Vec{Z: 160})
		b.Sweeps[0].Alone = true
		b.Plates[0].Holes = []part.Hole{{ID: "h", Center: shape.Point{X: x, Y: 80}, DiaMM: 14, Purpose: part.ForDrain}}
		r := run(t, b, strength.Options{Method: strength.ASD}, service("pull", part.Vec{Z: 15000}))
		if got := slices.ContainsFunc(r.NotChecked, func(n strength.NotChecked) bool { return n.What == "section" && n.Place == "plate" }); got != named {
			t.Errorf("hole at %g: %v", x, r.NotChecked)
		}
	}
}
