package saddle

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

// sized has the foot by which these tests are reckoned.
func sized() geometry.Kind { return fabtest.Sized(Kind(), set{"foot_width": 210}) }

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, sized(), s) }

// segment is the area of a circle of radius r past a chord at a distance from its centre.
func segment(r, distance float64) float64 {
	return r*r*math.Acos(distance/r) - distance*math.Sqrt(r*r-distance*distance)
}

// The bore is 44.45 + 2 + 0.5 = 46.95 about an axis 145 up; half the gap and an ear, 2 + 16, keep the arced plates 18 off the axis. The ears begin 2 past
// the collars, at 62.5 + 2, and end 42 on, at 106.5.
func TestPlates(t *testing.T) {
	b := made(t, set{})
	cut := segment(46.95, 18)
	for id, want := range map[string]float64{
		"side-1":   (210+213)/2.*(145-18-20) - cut,
		"cap-2":    213*(46.95+40-18) - 35*35 - cut,
		"ear-rear": 42*2*(45+6+26+22) - 2*math.Pi*13.5*13.5/4,
		"collar-1": math.Pi / 4 * (125*125 - 89.4*89.4),
		"base":     340*170 - (4-math.Pi)*100 - 4*math.Pi*17.5*17.5/4,
	} {
		if got := b.Plate(id).Shape(true).Area(); math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %g mm2, want %g", id, got, want)
		}
	}
	length := func(id string) (sum float64) {
		for _, s := range b.Weld(id).Segments {
			sum += s.B.Sub(s.A).Norm()
		}
		return sum
	}
	for id, want := range map[string]float64{"w-side-1": 2 * 210, "w-side-2-front": 2 * 42, "w-cap-1-rear": 2 * 42, "w-collar-2": 16 * 89.4 * math.Sin(math.Pi/16)} {
		if got := length(id); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %g mm, want %g", id, got, want)
		}
	}
	// The collars lie 1 mm off the side plates' outer faces at 45 + 6.
	if y := b.Plate("collar-2").Pose.Origin.Y; math.Abs(y-(51+1+5)) > 1e-9 {
		t.Errorf("collar at %g", y)
	}
	for i := range b.Plates {
		if p := &b.Plates[i]; p.Name == "ear" && !p.SamePiece(b.Plate("ear-front")) {
			t.Errorf("%s is another piece than ear-front", p.ID)
		}
	}
}

// Four cap bolts at 64.5 + 21 across and 51 + 26 along, through two ears and the gap; the ears bend over 26 mm to the side plate.
func TestCapBolts(t *testing.T) {
	b := made(t, set{})
	for _, id := range []string{"cap-bolts-front", "cap-bolts-rear"} {
		g := b.BoltGroup(id)
		if g.GripMM != 2*16+4 || g.Across[0] != (part.Pry{}) || g.Across[1] != (part.Pry{BMM: 26, AMM: 22, PMM: 42}) || len(g.Points) != 2 {
			t.Errorf("%s: %+v", id, g)
		}
		for _, p := range g.Points {
			if at := g.Pose.At(p.X, p.Y, 0); math.Abs(math.Abs(at.X)-85.5) > 1e-9 || math.Abs(math.Abs(at.Y)-77) > 1e-9 || at.Z != 147 {
				t.Errorf("%s: a bolt at %v", id, at)
			}
		}
	}
	// The seats end where the plates do: acos(18/46.95) on either side.
	for _, c := range b.Contacts[:4] {
		if math.Abs(c.WrapRad-2*math.Acos(18/46.95)) > 1e-12 {
			t.Errorf("%s wraps %g", c.ID, c.WrapRad)
		}
	}
	if g := made(t, set{"cap_bolts": 2, "ear_width": 80, "base_length": 400.0, "bolt_pitch": 340.0}).BoltGroup("cap-bolts-rear"); len(g.Points) != 4 || g.Across[1].PMM != 35 {
		t.Errorf("two at each corner: %+v", g)
	}
}

// What lies off the middle by 5 of 90 mm loads one side plate by 1/2 + 1/18. Each component of force has a path but none along a tube without collars; none
// turns the tube.
func TestPaths(t *testing.T) {
	b := made(t, set{})
	if s := b.Shares[0]; s.Rule != part.Between || s.Legs != 4 || math.Abs(s.Hi-(0.5+1./18)) > 1e-12 || math.Abs(s.Lo-(0.5-1./18)) > 1e-12 {
		t.Errorf("share %+v", s)
	}
	components := func(b *part.Bracket) (out []string) {
		for _, p := range b.Paths {
			out = append(out, p.Component.String())
		}
		slices.Sort(out)
		return out
	}
	if got := strings.Join(components(b), " "); got != "Fx+ Fx- Fy+ Fy- Fz+ Fz-" {
		t.Errorf("paths for %s", got)
	}
	bare := made(t, set{"collar_thickness": 0, "side_plates": 1})
	if got := strings.Join(components(bare), " "); got != "Fx+ Fx- Fz+ Fz-" {
		t.Errorf("without collars: paths for %s", got)
	}
	if s := bare.Shares[0]; s.Rule != part.Equal || s.Legs != 2 || len(bare.Plates) != 7 {
		t.Errorf("one side plate: %+v, %d plates", s, len(bare.Plates))
	}
	eccentric := func(text string) bool { return strings.Contains(text, "5 mm off its middle") }
	if centred := made(t, set{"side_plates": 1, "load_offset": 0}); !slices.ContainsFunc(bare.Unchecked, eccentric) || slices.ContainsFunc(centred.Unchecked, eccentric) || slices.ContainsFunc(b.Unchecked, eccentric) {
		t.Errorf("not checked: %q", bare.Unchecked)
	}
	if !slices.Contains(b.LoadPoints[0].Released, part.MyPlus) || b.LoadPoints[0].At != (part.Vec{Z: 145}) {
		t.Errorf("load point %+v", b.LoadPoints[0])
	}
}

// A bore wider than the tube without a liner is refused: to lie on a bore of 49.45 a wall of 8 of a tube of 88.9, 12 + 1.56 sqrt(40.45 x 8) = 40 mm of it, has to
// bend by E I (1/44.45 - 1/49.45) = 0.8 kN m, and 16.7 kN of a side plate bring 0.13 x 16.7 x 40.45 = 88 N m. It bears along a line.
func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"tube_wall": 23}, Param: "tube_wall", Bound: "22.23 mm"},
		{Given: set{"bore_allowance": 0.6}, Param: "bore_allowance", Bound: "0.5 mm"},
		{Given: set{"liner": 0, "bore_allowance": 5, "clamp_gap": 12, "ear_thickness": 12}, Param: "bore_allowance", Bound: "0 mm"},
		{Given: set{"liner": 0}, Param: "bore_allowance", Bound: "0 mm"},
		{Given: set{"clamp_gap": 1, "bore_allowance": 0.5}, Param: "clamp_gap", Bound: "over 1 mm"},
		{Given: set{"ear_thickness": 32}, Param: "ear_thickness", Bound: "31.2 mm"},
		{Given: set{"side_spacing": 35}, Param: "side_spacing", Bound: "36 mm"},
		{Given: set{"side_plates": 1, "load_offset": 6.5}, Param: "load_offset", Bound: "6 mm, with one side plate"},
		{Given: set{"load_offset": 46}, Param: "load_offset", Bound: "45 mm"},
		{Given: set{"axis_height": 80}, Param: "axis_height", Bound: "81.95 mm"},
		{Given: set{"foot_width": 30, "axis_height": 88, "collar_thickness": 0}, Param: "foot_width", Bound: "half of ear_width, 21 mm"},
		{Given: set{"ear_width": 28}, Param: "ear_width", Bound: "30 mm"},
		{Given: set{"cap_bolts": 2}, Param: "ear_width", Bound: "65 mm"},
		{Given: set{"cap_bolts": 2, "cap_bolt_pitch": 31, "ear_width": 70}, Param: "cap_bolt_pitch", Bound: "32 mm"},
		{Given: set{"ear_weld": 12}, Param: "ear_weld", Bound: "10.5 mm"},
		{Given: set{"cap_bolt_out": 20}, Param: "cap_bolt_out", Bound: "20.4 mm"},
		{Given: set{"cap_bolt_edge": 14}, Param: "cap_bolt_edge", Bound: "15 mm"},
		{Given: set{"cap_corner": 58}, Param: "cap_corner", Bound: "56.95 mm"},
		{Given: set{"cap_depth": 120, "cap_corner": 40}, Param: "cap_corner", Bound: "37.35 mm"},
		{Given: set{"collar_thickness": 2}, Param: "collar_thickness", Bound: "0 for none"},
		{Given: set{"collar_diameter": 103}, Param: "collar_diameter", Bound: "103.9 mm"},
		{Given: set{"collar_diameter": 250}, Param: "collar_diameter", Bound: "246 mm"},
		{Given: set{"collar_weld": 17}, Param: "collar_weld", Bound: "16.8 mm"},
		{Given: set{"base_length": 220}, Param: "base_length", Bound: "222 mm"},
		{Given: set{"base_width": 110}, Param: "base_width", Bound: "114 mm"},
		{Given: set{"base_width": 250}, Param: "base_width", Bound: "240 mm"},
		{Given: set{"bolt_pitch": 310}, Param: "bolt_pitch", Bound: "20 mm to the edge"},
		{Given: set{"bolt_gauge": 140}, Param: "bolt_gauge", Bound: "20 mm to the edge"},
		{Given: set{"bolt_pitch": 245, "bolt_gauge": 100}, Param: "bolt_pitch", Bound: "25.2 mm"},
		{Given: set{"bolt_pitch": 240, "foot_width": 180}, Param: "bolt_pitch", Bound: "19.2 mm"},
		{Given: set{"cap_bolt_size": "M7"}, Param: "cap_bolt_size", Bound: "clearance hole"},
		{Given: set{"collar_thickness": 0}},
		{Given: set{"cap_corner": 0}},
		{Given: set{"turns": "yes", "liner": 0, "bore_allowance": 0}},
	} {
		if fault := c.Broken(sized()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, sized(), 500) }

func FuzzSaddle(f *testing.F) { fabtest.Fuzz(f, sized()) }
