package strength_test

// The bracket model on three brackets that no kind builds yet, written as plain data: a saddle with a bolted cap, an arch
// with a support bar, a hung tray. A load is carried through each; what arrives is compared with statics by hand.

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength"
)

func flat(id string, w, h, t float64, pose part.Pose, holes ...part.Hole) part.Plate {
	return part.Plate{
		ID: id, Name: id, ThicknessMM: t, Material: "A572-50", Pose: pose, Holes: holes,
		Outer: shape.Rect(shape.Point{X: -w / 2}, shape.Point{X: w / 2, Y: h}),
	}
}

var (
	level   = part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
	upright = part.Pose{U: part.Vec{X: 1}, V: part.Vec{Z: 1}} // faces -y
)

func at(p part.Pose, x, y, z float64) part.Pose {
	p.Origin = part.Vec{X: x, Y: y, Z: z}
	return p
}

func box(x0, y0, x1, y1 float64) shape.Box {
	return shape.Box{Min: shape.Point{X: x0, Y: y0}, Max: shape.Point{X: x1, Y: y1}}
}

// saddle sits on a round tube along y: a seat bears down, four cap bolts hold up, collars hold along the tube, and the
// turn about the tube is free.
func saddle() *part.Bracket {
	seat := flat("saddle", 80, 90, 10, at(upright, 0, 0, 0))
	rolled := flat("cap", 150, 80, 8, at(level, 0, 0, -50))
	rolled.RolledMM = 45
	all := []part.Component{part.MyPlus, part.MyMinus}
	top := part.Vec{Z: 90}
	through := func(k part.Component, ids ...string) part.Path {
		return part.Path{LoadPoint: "p", Component: k, Branches: []part.Branch{{At: top, Through: ids}}}
	}
	return &part.Bracket{
		Name:   "saddle",
		Plates: []part.Plate{seat, rolled},
		Bolts: []part.BoltGroup{{
			ID: "cap bolts", Pose: at(level, 0, 0, 0), Size: "M12", DiaMM: 12, Grade: "10.9", HoleMM: 13.5, GripMM: 20,
			Points: []shape.Point{{X: -60, Y: -25}, {X: 60, Y: -25}, {X: -60, Y: 25}, {X: 60, Y: 25}}, Patch: box(-75, -40, 75, 40),
			Plies: [2]part.Ply{{Thing: "saddle", ThicknessMM: 10, Material: "A572-50"}, {Thing: "cap", ThicknessMM: 8, Material: "A572-50"}},
		}},
		Contacts: []part.Contact{
			{ID: "seat", Things: [2]string{"saddle", "tube"}, Pose: at(level, 0, 0, 0), Patch: box(-38, -40, 38, 40), WrapRad: 2.09},
			{ID: "cap seat", Things: [2]string{"cap", "tube"}, Pose: at(level, 0, 0, 0), Patch: box(-38, -40, 38, 40), WrapRad: 2.09},
			{ID: "collar +", Things: [2]string{"saddle", "tube"}, Pose: at(upright, 0, 41, 0), Patch: box(-20, -20, 20, 20), GapMM: 1},
			{ID: "collar -", Things: [2]string{"saddle", "tube"}, Pose: at(upright, 0, -41, 0), Patch: box(-20, -20, 20, 20), GapMM: 1},
		},
		Supports:   []part.Support{{ID: "tube", Kind: part.TubeWall, ThicknessMM: 8, ClearMM: 88.9, Material: "S355"}},
		LoadPoints: []part.LoadPoint{{ID: "p", At: top, Axis: part.Vec{X: 1}, Released: all}},
		Paths: []part.Path{
			through(part.FzMinus, "saddle", "seat", "tube"),
			through(part.FzPlus, "saddle", "cap bolts", "cap", "cap seat", "tube"),
			through(part.FyPlus, "saddle", "collar +", "tube"),
			through(part.FyMinus, "saddle", "collar -", "tube"),
		},
	}
}

// arch straddles a cross member between two plates; a support bar seats on it, so a stated share of the weight goes there
// and the rest to the rail.
func arch() *part.Bracket {
	feet := []part.Vec{{X: -120}, {X: 120}}
	b := &part.Bracket{
		Name: "arch",
		Plates: []part.Plate{
			flat("side-1", 260, 150, 8, at(upright, 0, -30, 0)), flat("side-2", 260, 150, 8, at(upright, 0, 30, 0)),
		},
		Members: []part.Member{{
			ID: "bar", Name: "support bar", Material: "C45+N", LengthMM: 76,
			Profile: part.Profile{Kind: part.RoundBar, AMM: 40}, Pose: part.Pose{Origin: part.Vec{Y: -38, Z: 60}, U: part.Vec{Y: 1}, V: part.Vec{Z: 1}},
		}},
		Contacts: []part.Contact{{ID: "bar seat", Things: [2]string{"bar", "cross member"}, Pose: at(level, 0, 0, 40), Patch: box(-20, -30, 20, 30)}},
		Supports: []part.Support{
			{ID: "rail", Kind: part.RailWeb, ThicknessMM: 6, ClearMM: 188, Material: "S355"},
			{ID: "cross member", Kind: part.CrossMember, ThicknessMM: 6, Material: "S355"},
		},
		LoadPoints: []part.LoadPoint{{ID: "p", At: part.Vec{Z: 140}}},
		Shares:     []part.Share{{ID: "cross member takes", Rule: part.Between, Legs: 2, Lo: 0.3, Hi: 0.7, Source: "stated stiffness range"}},
	}
	for i, at := range feet {
		id := []string{"w-front", "w-rear"}[i]
		b.Welds = append(b.Welds, part.WeldGroup{
			ID: id, Joins: [2]string{"side-1", "rail"}, Kind: part.Fillet, LegMM: 6, Electrode: "E70", BothSides: true,
			Segments: []part.WeldSegment{{A: at.Add(part.Vec{Y: -30}), B: at.Add(part.Vec{Y: 30})}},
		})
	}
	b.Paths = []part.Path{
		{LoadPoint: "p", Component: part.FzMinus, Branches: []part.Branch{
			{Share: "cross member takes", Leg: 0, At: part.Vec{Z: 60}, Through: []string{"side-1", "bar", "bar seat", "cross member"}},
			{Share: "cross member takes", Leg: 1, At: part.Vec{Z: 140}, Through: []string{"side-1", "w-front", "rail"}},
		}},
		// Up, the bar lifts off its seat and the rail has it all.
		{LoadPoint: "p", Component: part.FzPlus, Branches: []part.Branch{{At: part.Vec{Z: 140}, Through: []string{"side-1", "w-front", "rail"}}}},
	}
	return b
}

// tray hangs on four rods from deck beams; a tank's weight acts on a patch, and side stops take the side load.
func tray() *part.Bracket {
	centre := part.Vec{Z: 100}
	return &part.Bracket{
		Name:   "tray",
		Plates: []part.Plate{flat("bottom", 700, 500, 3, at(level, 0, -250, 0))},
		Rods: []part.Rods{{
			ID: "rods", Pose: at(level, 0, 0, 140), Points: []shape.Point{{X: -300, Y: -270}, {X: 300, Y: -270}, {X: -300, Y: 270}, {X: 300, Y: 270}},
			Size: "M12", DiaMM: 12, Grade: "8.8", FreeMM: 140, FixedTop: true, FixedFoot: true, EngagementMM: 15,
		}},
		Contacts: []part.Contact{{ID: "stops", Things: [2]string{"bottom", "beams"}, Pose: at(upright, 0, 260, 0), Patch: box(-300, 0, 300, 40)}},
		Supports: []part.Support{{ID: "beams", Kind: part.BodyFrame, ThicknessMM: 4, Material: "S355"}},
		LoadPoints: []part.LoadPoint{{
			ID: "tank", At: centre, Patch: &part.Patch{Pose: at(level, 0, 0, 0), Box: box(-300, -200, 300, 200)},
		}},
		Paths: []part.Path{
			{LoadPoint: "tank", Component: part.FzMinus, Branches: []part.Branch{{At: centre, Through: []string{"bottom", "rods", "beams"}}}},
			{LoadPoint: "tank", Component: part.FyPlus, Branches: []part.Branch{{At: centre, Through: []string{"bottom", "stops", "beams"}}}},
		},
	}
}

func TestCarryThroughSaddle(t *testing.T) {
	down := carry(t, saddle(), part.Vec{Z: -8000}, false, "seat", "cap bolts", "tube")
	near(t, "seat", down[0].Force.Z, -8000)
	near(t, "cap bolts, pressed down", down[1].Force.Norm(), 0)
	up := carry(t, saddle(), part.Vec{Y: 3000, Z: 5000}, false, "seat", "cap bolts", "collar +", "tube")
	near(t, "seat, lifted", up[0].Force.Norm(), 0)
	near(t, "cap bolts", up[1].Force.Z, 5000)
	near(t, "collar", up[2].Force.Y, 3000)
	near(t, "tube gets all", up[3].Force.Z, 5000)
	// A turn about the tube is free, so a load along x has no path.
	_, err := strength.Carry(saddle(), part.Case{Name: "c", Level: part.Service, Moment: part.Vec{Y: 1e5}}, false, "tube")
	if err == nil || !strings.Contains(err.Error(), "the joint lets ") {
		t.Errorf("a released turn must be refused, got %v", err)
	}
}

func TestCarryThroughArch(t *testing.T) {
	for _, c := range []struct {
		high bool
		bar  float64
	}{{false, -0.3 * 9000}, {true, -0.7 * 9000}} {
		got := carry(t, arch(), part.Vec{Z: -9000}, c.high, "bar seat", "rail", "cross member")
		near(t, "bar seat", got[0].Force.Z, c.bar)
		near(t, "both supports", got[1].Force.Z+got[2].Force.Z, -9000)
	}
	up := carry(t, arch(), part.Vec{Z: 4000}, false, "bar seat", "rail")
	near(t, "bar lifts off", up[0].Force.Norm(), 0)
	near(t, "rail", up[1].Force.Z, 4000)
}

// Two sides take 30 to 70 % and the rest of 9 kN, each through two bolts alike: 1350 N and 3150 N at either end.
func TestCarryThroughHalves(t *testing.T) {
	b := saddle()
	b.Shares = []part.Share{{ID: "sides", Rule: part.Between, Legs: 4, Lo: 0.3, Hi: 0.7}}
	down := &b.Paths[0]
	down.Branches = nil
	for leg := range 4 {
		id := []string{"one", "two", "three", "four"}[leg]
		b.Plates = append(b.Plates, flat(id, 10, 10, 5, at(level, 0, 0, 200)))
		down.Branches = append(down.Branches, part.Branch{Share: "sides", Leg: leg, Through: []string{id, "tube"}})
	}
	for _, c := range []struct {
		high bool
		want [4]float64
	}{{false, [4]float64{-1350, -1350, -3150, -3150}}, {true, [4]float64{-3150, -3150, -1350, -1350}}} {
		for i, k := range carry(t, b, part.Vec{Z: -9000}, c.high, "one", "two", "three", "four") {
			near(t, k.Thing, k.Force.Z, c.want[i])
		}
	}
}

func TestCarryThroughTray(t *testing.T) {
	got := carry(t, tray(), part.Vec{Y: 1000, Z: -6000}, false, "rods", "stops", "beams")
	near(t, "rods", got[0].Force.Z, -6000)
	near(t, "stops", got[1].Force.Y, 1000)
	near(t, "beams, up", got[2].Force.Z, -6000)
	near(t, "beams, side", got[2].Force.Y, 1000)
	_, err := strength.Carry(tray(), part.Case{Name: "c", Level: part.Service, Force: part.Vec{X: 1}}, false, "beams")
	if err == nil || !strings.Contains(err.Error(), `no load path for Fx+ of case "c"; this bracket carries Fy+, Fz-`) {
		t.Errorf("fore-aft load on a tray with side stops alone must be refused, got %v", err)
	}
}

func carry(t *testing.T, b *part.Bracket, f part.Vec, high bool, things ...string) []strength.Carried {
	t.Helper()
	got, err := strength.Carry(b, part.Case{Name: "c", Level: part.Service, Force: f}, high, things...)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*max(1, math.Abs(want)) {
		t.Errorf("%s: got %g, want %g", what, got, want)
	}
}
