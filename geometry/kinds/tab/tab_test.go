package tab

import (
	"math"
	"slices"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/access"
	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func welded(s set) set { s["foot"] = "bent, welded"; return s }
func bolted(s set) set { s["foot"] = "bent, bolted"; return s }

// sized has the sizes by which these tests are reckoned.
func sized() geometry.Kind {
	return fabtest.Sized(Kind(), set{"weld": 4})
}

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, sized(), s) }

// 60 x 60 less two corners of 12 and a hole of 11: ISO 273 medium for M10.
func TestPlate(t *testing.T) {
	b := made(t, set{})
	want := 60*60 - 2*12*12*(1-math.Pi/4) - math.Pi*11*11/4
	if got := b.Plates[0].Shape(true).Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, want %g", got, want)
	}
	two := made(t, set{"bolts": 2, "width": 80})
	if p := two.Bolts[0].Points; len(p) != 2 || p[1].X-p[0].X != 30 || two.Bolts[0].Plies[0].EdgeMM != 20 {
		t.Errorf("%+v, edge %g", p, two.Bolts[0].Plies[0].EdgeMM)
	}
}

// 6 mm bent about an inside radius of 6 with K 0.44: the fold takes pi/2 (6 + 2.64) = 13.572 mm. Upright 60 - 12, foot 52 - 12 over the fold: the flat
// pattern is 48 + 13.572 + 40 long. Folded, the foot lies on the face, its tip 52 mm from the upright's outer face at y = 3.
func TestBentTab(t *testing.T) {
	fold := math.Pi / 2 * (6 + 0.44*6)
	for _, s := range []set{welded(set{"corner_radius": 0}), bolted(set{"corner_radius": 0})} {
		b := made(t, s)
		p := &b.Plates[0]
		if box := p.Outer.BBox(); math.Abs(box.Height()-(48+fold+40)) > 1e-9 || box.Width() != 60 {
			t.Errorf("%v: flat pattern %v", s, box)
		}
		if f := p.Bends[0]; math.Abs(f.AllowanceMM-fold) > 1e-9 || math.Abs(f.A.Y-(12-fold/2)) > 1e-9 || f.A.X != 30 {
			t.Errorf("%v: fold %+v", s, f)
		}
		foot := b.Face("tab.1")
		if foot == nil || math.Abs(foot.Pose.Origin.Z-3) > 1e-9 || foot.Pose.W().Sub(part.Vec{Z: 1}).Norm() > 1e-9 {
			t.Fatalf("%v: foot %+v", s, foot)
		}
		if tip := foot.Pose.At(0, foot.Outer.BBox().Max.Y, 0); math.Abs(tip.Y-(3-52)) > 1e-9 {
			t.Errorf("%v: tip at %v", s, tip)
		}
	}
}

// Two bolts 34 mm from the upright's outer face, 31 from its middle plane; 18 to the tip, 15 to the sides: 30/2 + 15 serve each.
func TestBoltedFoot(t *testing.T) {
	b := made(t, bolted(set{"support_kind": "tube wall", "support_clear": 68}))
	g := b.BoltGroup("foot bolts")
	if g.Across != [2]part.Pry{{}, {BMM: 31, AMM: 18, PMM: 30}} || g.Plies[0].EdgeMM != 15 || g.GripMM != 11 {
		t.Errorf("%+v", g)
	}
	for i, p := range g.Points {
		h := b.Face("tab.1").Holes[1-i] // the foot's own u runs the other way
		if at := b.Face("tab.1").HoleAt(h); math.Abs(at.X-p.X) > 1e-9 && math.Abs(at.X+p.X) > 1e-9 || math.Abs(at.Y+31) > 1e-9 {
			t.Errorf("bolt at %v, hole at %v", p, at)
		}
	}
	if s := b.Supports[0]; s.ClearMM != 68 || s.Kind != part.TubeWall {
		t.Errorf("support %+v", s)
	}
	if got, want := b.Paths[0].Branches[0].Through, []string{"bolts", "tab", "tab.1", "foot bolts", "support"}; !slices.Equal(got, want) {
		t.Errorf("path %v", got)
	}
}

// What is welded down is reached by a torch, and the bolts of the foot by a socket.
func TestFootIsReached(t *testing.T) {
	for _, s := range []set{welded(set{}), bolted(set{})} {
		if got := access.Findings(made(t, s), access.Usual()); got != nil {
			t.Errorf("%v: %v", s, got)
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"corner_radius": 40}, Param: "corner_radius", Bound: "30 mm"},
		{Given: set{"bolt_height": 15}, Param: "bolt_height", Bound: "16 mm"},
		{Given: set{"bolt_height": 55}, Param: "height", Bound: "12.5 mm to the edge"},
		{Given: set{"bolts": 2, "bolt_pitch": 20}, Param: "bolt_pitch", Bound: "26.67 mm"},
		{Given: set{"width": 15, "corner_radius": 5}, Param: "width", Bound: "16 mm"},
		{Given: set{"bolt_size": "M7"}, Param: "bolt_size", Bound: "clearance hole"},
		{Given: set{"corner_radius": 0}},
		{Given: welded(set{"inside_radius": 5}), Param: "inside_radius", Bound: "6 mm"},
		{Given: welded(set{"height": 23, "bolt_height": 10}), Param: "height", Bound: "24 mm"},
		{Given: welded(set{"foot_length": 27}), Param: "foot_length", Bound: "28 mm"},
		{Given: welded(set{"bolt_height": 29}), Param: "bolt_height", Bound: "29.5 mm"},
		{Given: bolted(set{"foot_bolt_back": 29}), Param: "foot_bolt_back", Bound: "29.5 mm"},
		{Given: bolted(set{"foot_bolt_back": 40}), Param: "foot_bolt_back", Bound: "39.5 mm"},
		{Given: bolted(set{"foot_bolt_pitch": 26}), Param: "foot_bolt_pitch", Bound: "26.67 mm"},
		{Given: bolted(set{"foot_bolt_pitch": 36}), Param: "foot_bolt_pitch", Bound: "12.5 mm there"},
		{Given: bolted(set{"foot_bolt_size": "M7"}), Param: "foot_bolt_size", Bound: "clearance hole"},
		{Given: bolted(set{"support_clear": 50}), Param: "support_clear", Bound: "60 mm"},
		{Given: bolted(set{"support_clear": 60})},
	} {
		if fault := c.Broken(sized()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, sized(), 1000) }

func FuzzTab(f *testing.F) { fabtest.Fuzz(f, sized()) }
