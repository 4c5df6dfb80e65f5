package setout

import (
	"math"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
)

func fillet(id, stands, on string, runs ...part.WeldSegment) part.WeldGroup {
	return part.WeldGroup{ID: id, Joins: [2]string{stands, on}, Kind: part.Fillet, LegMM: 5, Segments: runs, BothSides: true}
}

// A plate of 10 x 80 stands on a base of 200 x 100, its foot from x = 20 to 100 about y = 40; a gusset of 8 on its face in turn; the base lies with its upper
// face at z = 0. From the base's left edge 20 + 100, from its bottom edge 35 + 50.
func TestOnAPlate(t *testing.T) {
	b := &part.Bracket{
		Plates: []part.Plate{
			{ID: "gusset", ThicknessMM: 8, Outer: shape.Rect(shape.Point{}, shape.Point{X: 30, Y: 50}), Pose: part.Pose{Origin: part.Vec{X: 60, Y: 45}, U: part.Vec{Y: 1}, V: part.Vec{Z: 1}}},
			{ID: "base", ThicknessMM: 12, Outer: shape.Rect(shape.Point{X: -100, Y: -50}, shape.Point{X: 100, Y: 50}), Pose: part.Pose{Origin: part.Vec{Z: -6}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}},
			{ID: "ear", ThicknessMM: 10, Outer: shape.Rect(shape.Point{X: 20}, shape.Point{X: 100, Y: 90}), Pose: part.Pose{Origin: part.Vec{Y: 40}, U: part.Vec{X: 1}, V: part.Vec{Z: 1}}},
		},
		Welds: []part.WeldGroup{
			fillet("w-gusset", "gusset", "ear", part.WeldSegment{A: part.Vec{X: 56, Y: 45}, B: part.Vec{X: 56, Y: 45, Z: 50}}, part.WeldSegment{A: part.Vec{X: 64, Y: 45}, B: part.Vec{X: 64, Y: 45, Z: 50}}),
			fillet("w-ear", "ear", "base", part.WeldSegment{A: part.Vec{X: 20, Y: 35}, B: part.Vec{X: 100, Y: 35}}, part.WeldSegment{A: part.Vec{X: 20, Y: 45}, B: part.Vec{X: 100, Y: 45}}),
		},
	}
	got := Of(b)
	if len(got) != 2 || got[0].Part != "ear" || got[0].Step != 1 || got[1].Part != "gusset" || got[1].Step != 2 {
		t.Fatalf("order: %+v", got)
	}
	ear := got[0]
	if ear.AtMM != [2]float64{120, 85} || ear.FootMM != [2]float64{80, 10} || ear.From != [2]Edge{Left, Bottom} || ear.Side != Shown || ear.TurnedRad != 0 || ear.LengthMM != 160 {
		t.Errorf("ear: %+v", ear)
	}
	// In the ear's own axes its left edge is at 20; its normal U x V points to -y, away from the gusset.
	if g := got[1]; g.AtMM != [2]float64{36, 0} || g.FootMM != [2]float64{8, 50} || g.Side != Behind {
		t.Errorf("gusset: %+v", g)
	}
	turn := math.Pi / 6
	b.Plates[2].Pose.U = part.Vec{X: math.Cos(turn), Y: math.Sin(turn)}
	if got := Of(b)[0].TurnedRad; math.Abs(got-turn) > 1e-9 {
		t.Errorf("turned %g, want 30 degrees", got)
	}
}

// An angle 100 x 150 x 12, 250 long from x = 125 back: its leg a reaches out along y with its upper face at z = 0, its leg b hangs down. An ear of 12 stands on
// leg a, 18 mm from the heel and 67 from the end; a stiffener in the corner under it is on the inner faces, 59 mm from the end that is left on leg b.
func TestOnAnAngle(t *testing.T) {
	ear := func(y float64) part.WeldSegment {
		return part.WeldSegment{A: part.Vec{X: -58, Y: y}, B: part.Vec{X: 58, Y: y}}
	}
	down := func(x float64) part.WeldSegment {
		return part.WeldSegment{A: part.Vec{X: x, Y: 12, Z: -26}, B: part.Vec{X: x, Y: 12, Z: -142}}
	}
	b := &part.Bracket{
		Members: []part.Member{{ID: "base", LengthMM: 250, Profile: part.Profile{Kind: part.Angle, AMM: 100, BMM: 150, TMM: 12, RootMM: 11},
			Pose: part.Pose{Origin: part.Vec{X: 125}, U: part.Vec{X: -1}, V: part.Vec{Y: 1}}}},
		Plates: []part.Plate{
			{ID: "ear", ThicknessMM: 12, Outer: shape.Rect(shape.Point{X: -58}, shape.Point{X: 58, Y: 90}), Pose: part.Pose{Origin: part.Vec{Y: 24}, U: part.Vec{X: 1}, V: part.Vec{Z: 1}}},
			{ID: "stiffener", ThicknessMM: 16, Outer: shape.Rect(shape.Point{}, shape.Point{X: 80, Y: 130}), Pose: part.Pose{Origin: part.Vec{X: 58, Y: 12, Z: -12}, U: part.Vec{Y: 1}, V: part.Vec{Z: -1}}},
		},
		Welds: []part.WeldGroup{fillet("w-ear", "ear", "base.a", ear(18), ear(30)), fillet("w-down", "stiffener", "base.b", down(50), down(66)), fillet("w-tube", "ear", "rail", ear(18))},
	}
	got := Of(b)
	if e := got[0]; e.From != [2]Edge{RightEnd, Heel} || e.AtMM != [2]float64{67, 18} || e.FootMM != [2]float64{116, 12} || e.Side != Outer {
		t.Errorf("ear: %+v", e)
	}
	if s := got[1]; s.From != [2]Edge{LeftEnd, Heel} || s.AtMM != [2]float64{59, 26} || s.FootMM != [2]float64{16, 116} || s.Side != Inner {
		t.Errorf("stiffener: %+v", s)
	}
	if s := got[2]; s.From != [2]Edge{} {
		t.Errorf("on a support: %+v", s)
	}
}

// Two plates on a bolted foot with a loose bar through them: the bar's welds come last, listed first or not. A plate between them still waits for the foot alone.
func TestLooseBarIsWeldedLast(t *testing.T) {
	run := part.WeldSegment{B: part.Vec{X: 40}}
	b := &part.Bracket{
		Plates:  []part.Plate{{ID: "foot"}, {ID: "plate-1"}, {ID: "plate-2"}, {ID: "between"}},
		Members: []part.Member{{ID: "bar", Profile: part.Profile{Kind: part.RoundBar, AMM: 30}}},
		Bolts:   []part.BoltGroup{{ID: "foot-bolts", Plies: [2]part.Ply{{Thing: "foot"}, {Thing: "rail"}}}},
		Welds: []part.WeldGroup{
			fillet("w-bar-1", "plate-1", "bar", run), fillet("w-bar-2", "plate-2", "bar", run), fillet("w-1", "plate-1", "foot", run), fillet("w-2", "plate-2", "foot", run),
			fillet("w-between", "between", "foot", run),
		},
	}
	order := func() (out string) {
		for _, p := range Of(b) {
			out += p.Weld.ID + " "
		}
		return out
	}
	if got, want := order(), "w-1 w-2 w-between w-bar-1 w-bar-2 "; got != want {
		t.Errorf("%s, need %s", got, want)
	}
	// A bar that is bolted itself is a foot like the other.
	b.Bolts = append(b.Bolts, part.BoltGroup{ID: "bar-bolts", Plies: [2]part.Ply{{Thing: "bar"}, {Thing: "rail"}}})
	if got, want := order(), "w-bar-1 w-bar-2 w-1 w-2 w-between "; got != want {
		t.Errorf("bolted: %s, need %s", got, want)
	}
}

// A collar on a tube stands off the plate that it stops against: no face of the bracket carries it.
func TestBesideAPlate(t *testing.T) {
	b := &part.Bracket{
		Plates:   []part.Plate{{ID: "side", ThicknessMM: 10}, {ID: "collar", ThicknessMM: 8}},
		Supports: []part.Support{{ID: "tube", Kind: part.TubeWall}},
		Contacts: []part.Contact{{ID: "stop", Things: [2]string{"collar", "side"}, GapMM: 1.5}},
		Welds:    []part.WeldGroup{fillet("w-collar", "collar", "tube", part.WeldSegment{B: part.Vec{X: 40}})},
	}
	if got := Of(b)[0]; got.From != [2]Edge{"face of side"} || got.AtMM[0] != 1.5 || got.FootMM[0] != 8 {
		t.Errorf("%+v", got)
	}
}
