package tray

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
	return fabtest.Sized(Kind(), set{"thickness": 4})
}

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, sized(), s) }

// The flat pattern by its strips: 700 x 600 outside, 60 high, 4 mm, inside radius 6, K 0.44. A fold takes pi/2 (6 + 1.76) = 12.189 mm; the
// bottom is 680 x 580, a side's flat 50. The notch goes 6 past the folds: sides are 668 and 568 long.
func TestFlatPattern(t *testing.T) {
	b := made(t, set{"drain": 0})
	p := &b.Plates[0]
	fold := math.Pi / 2 * 7.76
	box := p.Outer.BBox()
	for name, c := range map[string][2]float64{
		"length": {box.Width(), 680 + 2*(fold+50)}, "width": {box.Height(), 580 + 2*(fold+50)},
		"area": {math.Abs(p.Outer.Area()), 668*(580+2*(fold+50)) + 568*(680+2*(fold+50)) - 668*568},
	} {
		if math.Abs(c[0]-c[1]) > 1e-6 {
			t.Errorf("%s %g, want %g", name, c[0], c[1])
		}
	}
	if len(p.Bends) != 4 || p.Bends[0].RadiusMM != 6 || math.Abs(p.Bends[3].A.Y-(290+fold/2)) > 1e-9 {
		t.Errorf("folds %+v", p.Bends)
	}
	// What is to the left of a fold turns up: the outline beyond it.
	for i, f := range p.Bends {
		mid := f.A.Add(f.B).Scale(0.5)
		if left := mid.Add(f.B.Sub(f.A).Unit().Perp().Scale(20)); left.Norm() < mid.Norm() {
			t.Errorf("fold %d turns the bottom up", i)
		}
	}
}

func TestRods(t *testing.T) {
	b := made(t, set{"rods_per_side": 3})
	if len(b.Rods[0].Points) != 6 || len(b.Plates) != 7 {
		t.Fatalf("%d rods, %d plates", len(b.Rods[0].Points), len(b.Plates))
	}
	for i, p := range b.Rods[0].Points {
		want := b.Rods[0].Pose.At(p.X, p.Y, 0)
		for _, id := range []string{"tray", b.Plates[i+1].ID} {
			plate := b.Plate(id)
			found := false
			for _, h := range plate.Holes {
				at := plate.HoleAt(h)
				found = found || h.Purpose == part.ForRod && math.Hypot(at.X-want.X, at.Y-want.Y) < 1e-9 && h.DiaMM == 17.5
			}
			if !found {
				t.Errorf("rod %d passes no hole of %s", i, id)
			}
		}
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"inside_radius": 3}, Param: "inside_radius", Bound: "4 mm"},
		{Given: set{"side_height": 17}, Param: "side_height", Bound: "18 mm"},
		{Given: set{"corner_relief": 2}, Param: "corner_relief", Bound: "4 mm"},
		{Given: set{"rod_spacing": 640}, Param: "rod_spacing", Bound: "620 mm"},
		{Given: set{"rod_gauge": 530}, Param: "rod_gauge", Bound: "520 mm"},
		{Given: set{"rod_gauge": 50}, Param: "rod_gauge", Bound: "60 mm"},
		{Given: set{"washer_side": 40}, Param: "washer_side", Bound: "48 mm"},
		{Given: set{"engagement": 60}, Param: "engagement", Bound: "48 mm"},
		{Given: set{"width": 80, "inside_radius": 30}, Param: "width", Bound: "between the folds"},
		{Given: set{"rod_size": "M7"}, Param: "rod_size", Bound: "clearance hole"},
		{Given: set{"drain": 3}, Param: "drain", Bound: "4 mm"},
		{Given: set{}},
	} {
		if fault := c.Broken(sized()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, sized(), 1000) }

func FuzzTray(f *testing.F) { fabtest.Fuzz(f, sized()) }
