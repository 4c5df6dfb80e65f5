package lug

import (
	"math"
	"slices"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

// with fills in what the hand calculations are for, where a row does not say otherwise.
func with(s, usual set) set {
	for name, value := range usual {
		if s[name] == nil {
			s[name] = value
		}
	}
	return s
}

func base(s set) set { return with(s, set{"foot": "base plate"}) }

func closed(s set) set {
	return with(s, set{"foot": "capped tube", "tube_width": 80, "tube_depth": 80, "cap_margin": 12})
}

func slotIn(s set) set {
	return with(s, set{"foot": "slotted tube", "tube_width": 80, "tube_depth": 80, "width": 130})
}

// sized has the sizes by which these tests are reckoned.
func sized() geometry.Kind {
	return fabtest.Sized(Kind(), set{"thickness": 20, "width": 100, "end_distance": 45, "head_radius": 40, "weld": 8, "cap_margin": 16})
}

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, sized(), s) }

// A round head of 100 wide on a pin 60 up, 50 to the top: 100 x 60 under a half circle of 50, less the hole of 25.5.
func TestOutline(t *testing.T) {
	b := made(t, set{"head": "round", "end_distance": 50, "finish_allowance": 0})
	want := 100*60 + math.Pi*50*50/2 - math.Pi*25.5*25.5/4
	if got := b.Plate("lug").Shape(true).Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, want %g", got, want)
	}
}

func TestPartsInPlace(t *testing.T) {
	b := made(t, set{"cheek_thickness": 6, "cheek_diameter": 50, "gusset_height": 28, "gusset_length": 40, "cheek_weld": 3, "pin_height": 70, "gusset_weld": 4, "weld": 6})
	if c := b.Plate("cheek-2"); c == nil || math.Abs(c.Pose.Origin.Y+13) > 1e-9 {
		t.Errorf("cheek plate %+v", c)
	}
	g := b.Plate("gusset-1")
	if tip := g.Pose.At(40, 0, 0); tip.Sub(part.Vec{Y: 50}).Norm() > 1e-9 {
		t.Errorf("gusset's tip at %v", tip)
	}
	if s := b.Pins[0].Seats; s[1].ThicknessMM != 32 || math.Abs(s[2].AtMM-(16+2+5)) > 1e-9 {
		t.Errorf("seats %+v", s)
	}
}

// What a builder may want of a lug: each must build and be sound.
func TestVariants(t *testing.T) {
	for name, s := range map[string]set{
		"capped by default":   {"foot": "capped tube"},
		"slotted by default":  {"foot": "slotted tube"},
		"base plate":          base(set{}),
		"groove weld":         base(set{"weld_kind": "complete penetration"}),
		"base plate, gussets": base(set{"gusset_height": 40, "pin_height": 80, "plate_width": 200, "bolt_gauge": 160}),
		"capped":              closed(set{}),
		"capped round":        closed(set{"tube_form": "round", "tube_width": 101.6}),
		"capped, gussets":     closed(set{"gusset_height": 40, "pin_height": 80, "gusset_length": 35, "tube_width": 100, "tube_depth": 100}),
		"slotted":             slotIn(set{}),
		"slotted round":       slotIn(set{"tube_form": "round"}),
		"bosses":              {"cheek_form": "boss", "cheek_thickness": 12, "cheek_diameter": 50},
		"slotted, cheeks":     slotIn(set{"cheek_thickness": 6, "cheek_diameter": 55}),
	} {
		t.Run(name, func(t *testing.T) { made(t, s) })
	}
}

// A weld of complete penetration goes through the lug's 20 mm, over its 100 mm at both faces.
func TestGrooveWeld(t *testing.T) {
	w := made(t, set{"weld_kind": "complete penetration"}).Weld("w-lug")
	if w.Kind != part.CJP || w.LegMM != 20 || !w.BothSides || len(w.Segments) != 2 {
		t.Fatalf("%+v", w)
	}
	for i, y := range []float64{10, -10} {
		if s := w.Segments[i]; s.A != (part.Vec{X: -50, Y: y}) || s.B != (part.Vec{X: 50, Y: y}) {
			t.Errorf("run %+v", s)
		}
	}
}

// The base plate's bolts at 85 and 45 mm from its middle, the lug 100 x 20 on it: 35 mm past the lug's end and past its face, 25 to the edges.
// A bolt has half the pitch to its neighbour and the rest: 45 + 25 and 85 + 25.
func TestBasePlate(t *testing.T) {
	b := made(t, base(set{"support_clear": 200}))
	g := b.Bolts[0]
	if g.Across != [2]part.Pry{{BMM: 35, AMM: 25, PMM: 70}, {BMM: 35, AMM: 25, PMM: 110}} || g.GripMM != 28 || g.HoleMM != 13.5 || g.Plies[0].EdgeMM != 25 {
		t.Errorf("bolts %+v", g)
	}
	if s := b.Supports[0]; s.ClearMM != 200 || s.Couple != part.CoupleByWall {
		t.Errorf("support %+v", s)
	}
	if through := b.Paths[0].Branches[0].Through; !slices.Equal(through, []string{"pin", "lug", "w-lug", "base", "bolts", "support"}) {
		t.Errorf("path %v", through)
	}
}

// Slots of 90 in a square tube of 80: four fillets along z on its outside, at the lug's faces; in a round one they start where the face at 10 mm comes out,
// sqrt(40^2 - 10^2) = 38.730 off the middle. The lug ends 90 mm down the tube.
func TestSlottedTube(t *testing.T) {
	for form, x := range map[string]float64{"rectangular": 40, "round": math.Sqrt(1500)} {
		b := made(t, slotIn(set{"tube_form": form}))
		w := b.Weld("w-lug")
		if len(w.Segments) != 4 || w.Joins != [2]string{"lug", "tube"} {
			t.Fatalf("%s: weld %+v", form, w)
		}
		for _, s := range w.Segments {
			if math.Abs(math.Abs(s.A.X)-x) > 1e-9 || math.Abs(s.A.Y) != 10 || s.A.Z != 0 || s.B.Sub(s.A) != (part.Vec{Z: -90}) {
				t.Errorf("%s: run %+v", form, s)
			}
		}
		h, _ := b.Plate("lug").Hole("pin")
		if at := b.Plate("lug").HoleAt(h); at.Sub(part.Vec{Z: 60}).Norm() > 1e-9 || b.Plate("lug").Outer.BBox().Max.Y != 60+90+45 {
			t.Errorf("%s: pin at %v", form, at)
		}
		if s := b.Sweeps[1]; s.From.Z != -90 || s.To.Z != -250 {
			t.Errorf("%s: tube cut from %g to %g", form, s.From.Z, s.To.Z)
		}
	}
}

// A cap of 16 mm stands out 12 mm round an 80 mm tube: 104 square with corners of 24, less (4 - pi) 24^2. Its fillet runs along the flats, 4 x 56.
func TestCappedTube(t *testing.T) {
	b := made(t, closed(set{}))
	if got, want := b.Plate("cap").Shape(true).Area(), 104*104-(4-math.Pi)*24*24; math.Abs(got-want) > 1e-6 {
		t.Errorf("cap %g mm2, want %g", got, want)
	}
	length := 0.0
	for _, s := range b.Weld("w-cap").Segments {
		length += s.B.Sub(s.A).Norm()
	}
	if m := b.Member("tube"); math.Abs(length-224) > 1e-9 || m.Pose.Origin.Z != -16 || m.Pose.At(m.LengthMM, 0, 0).Z != -266 {
		t.Errorf("weld %g mm, tube %+v", length, m.Pose)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"head_radius": 51}, Param: "head_radius", Bound: "50 mm"},
		{Given: set{"end_distance": 15, "head_radius": 15}, Param: "end_distance", Bound: "6.25 mm is left"},
		{Given: set{"pin_height": 26}, Param: "pin_height", Bound: "27 mm"},
		{Given: set{"cheek_thickness": 2}, Param: "cheek_thickness", Bound: "3 mm"},
		{Given: set{"cheek_thickness": 6, "cheek_diameter": 90}, Param: "cheek_diameter", Bound: "at most"},
		{Given: set{"gusset_height": 60}, Param: "gusset_height", Bound: "at most 42.25 mm"},
		{Given: set{"gusset_height": 20}, Param: "gusset_height", Bound: "at least 31 mm"},
		{Given: set{"bush_length": 30}, Param: "bush_length", Bound: "20 mm"},
		{Given: set{"width": 30, "head_radius": 10}, Param: "width", Bound: "32 mm"},
		{Given: set{"gusset_height": 40, "pin_height": 80}},
		{Given: set{"gusset_height": 40, "pin_height": 80, "fork_end": 38.5}, Param: "fork_end", Bound: "38 mm, so that the fork swings clear of the gussets"},
		{Given: set{"fork_end": 52.5}, Param: "fork_end", Bound: "52 mm, so that the fork swings clear of the foot's weld"},
		{Given: set{"fork_end": 58.5, "gap": 8}, Param: "fork_end", Bound: "58 mm, so that the fork swings clear of the face"},
		{Given: set{"fork_end": 18}, Param: "fork_end", Bound: "19 mm"},
		{Given: base(set{"plate_length": 115}), Param: "plate_length", Bound: "116 mm"},
		{Given: base(set{"plate_width": 140, "gusset_height": 40, "pin_height": 80, "gusset_length": 60}), Param: "plate_width", Bound: "156 mm"},
		{Given: base(set{"bolt_pitch": 195}), Param: "bolt_pitch", Bound: "15 mm to the edge"},
		{Given: base(set{"bolt_pitch": 110, "bolt_gauge": 50, "plate_length": 160}), Param: "bolt_gauge", Bound: "22.4 mm"},
		{Given: base(set{"bolt_size": "M7"}), Param: "bolt_size", Bound: "clearance hole"},
		{Given: base(set{"support_clear": 120}), Param: "support_clear", Bound: "140 mm"},
		{Given: base(set{"gap": 20, "pin_height": 50, "fork_end": 37, "end_distance": 45, "bolt_gauge": 90, "bolts_per_row": 1, "width": 60, "plate_length": 160, "head_radius": 30}), Param: "fork_end", Bound: "bolts' heads"},
		{Given: slotIn(set{"gusset_height": 40, "pin_height": 80}), Param: "gusset_height", Bound: "0 on a slotted tube"},
		{Given: slotIn(set{"weld_kind": "complete penetration"}), Param: "weld_kind", Bound: "fillet on a slotted tube"},
		{Given: slotIn(set{"thickness": 41}), Param: "thickness", Bound: "40 mm"},
		{Given: slotIn(set{"slot_length": 79}), Param: "slot_length", Bound: "80 mm"},
		{Given: slotIn(set{"tube_length": 100}), Param: "tube_length", Bound: "110 mm"},
		{Given: slotIn(set{"width": 110}), Param: "width", Bound: "96 mm"},
		{Given: closed(set{"width": 60, "head_radius": 30}), Param: "width", Bound: "68 mm"},
		{Given: closed(set{"cap_margin": 4}), Param: "cap_margin", Bound: "5 mm"},
		{Given: closed(set{"width": 106}), Param: "cap_margin", Bound: "stands on the cap"},
		{Given: closed(set{"gusset_height": 40, "pin_height": 80}), Param: "gusset_length", Bound: "stands on the cap"},
		{Given: closed(set{"tube_wall": 21, "tube_corner": 21}), Param: "tube_wall", Bound: "20 mm"},
	} {
		if fault := c.Broken(sized()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, sized(), 1000) }

func FuzzLug(f *testing.F) { fabtest.Fuzz(f, sized()) }
