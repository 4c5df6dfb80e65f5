package foot

import (
	"math"
	"testing"

	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

type set = fabtest.Given

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, Kind(), s) }

// over changes what a leg over the subframe needs.
func over(s set) set {
	s["leg"], s["stiffener_count"], s["angle_down"], s["bolt_first"] = "over the subframe", 0, 230, 150
	return s
}

// lapped changes what a lap needs: a rail 300 high.
func lapped(s set) set {
	s["lap"], s["web_clear_height"], s["angle_down"] = "fitted", 288, 191
	return s
}

// What a builder may want of a foot: each must build and be sound.
func TestVariants(t *testing.T) {
	for name, s := range map[string]set{
		"defaults":         {},
		"bent":             {"form": "bent plate"},
		"bent, plain":      {"form": "bent plate", "stiffener_count": 0, "angle_down": 188},
		"over":             over(set{}),
		"over, bent":       over(set{"form": "bent plate"}),
		"over, lap":        {"leg": "over the subframe", "stiffener_count": 0, "lap": "fitted", "web_clear_height": 288, "angle_down": 281, "bolt_first": 150},
		"lap":              lapped(set{}),
		"welded":           {"seat_bolts": 0},
		"below the corner": {"heel_below": 62, "clear_of_corner": 50, "angle_down": 76, "bolt_rows": 1, "bolt_first": 45, "stiffener_depth": 60},
	} {
		t.Run(name, func(t *testing.T) { made(t, s) })
	}
}

// 100 and 150 over the back of 10 mm plate with an inside radius of 12: flats of 78 and 128 and pi/2 (12 + 0.44 x 10) = 25.761 for the fold. Folded, the
// upper row stands 60 below the leg and 5 off the web in the plate's middle, the subframe's bolts 60 off the web.
func TestBentPlate(t *testing.T) {
	p := made(t, set{"form": "bent plate"}).Plate("base")
	if box, want := p.Outer.BBox(), 78+128+math.Pi/2*16.4; math.Abs(box.Height()-want) > 1e-9 || box.Width() != 240 {
		t.Errorf("blank %g x %g, want 240 x %g", box.Width(), box.Height(), want)
	}
	faces := p.Folded()
	for name, c := range map[string]struct {
		leg  *part.Plate
		hole string
		want part.Vec
	}{
		"first row":  {&faces[1], "bolt-1", part.Vec{X: -90, Y: 5, Z: -60}},
		"second row": {&faces[1], "bolt-4", part.Vec{X: -90, Y: 5, Z: -120}},
		"subframe":   {&faces[0], "seat-2", part.Vec{X: 75, Y: 60, Z: -5}},
	} {
		h, _ := c.leg.Hole(c.hole)
		if at := c.leg.HoleAt(h); at.Sub(c.want).Norm() > 1e-9 {
			t.Errorf("%s at %v, want %v", name, at, c.want)
		}
	}
	for i, want := range []part.Vec{{Y: 100, Z: -5}, {Y: 5, Z: -150}} {
		most := part.Vec{}
		for _, q := range faces[i].Outer {
			at := faces[i].Pose.At(q.X, q.Y, 0)
			most = part.Vec{Y: max(most.Y, at.Y), Z: min(most.Z, at.Z)}
		}
		if most.Sub(want).Norm() > 1e-9 {
			t.Errorf("leg %d reaches %v, want %v", i, most, want)
		}
	}
}

// A leg over a subframe of 80: its underside 80 over the rail's upper face, which lies 90 below its upper face; bolted leg outboard of the web.
func TestOver(t *testing.T) {
	b := made(t, over(set{}))
	m := b.Member("base")
	legA, legB := m.Legs()
	h, _ := legA.Hole("seat-1")
	if at := legA.HoleAt(h); at.Sub(part.Vec{X: -75, Y: -60, Z: -5}).Norm() > 1e-9 {
		t.Errorf("subframe's bolt at %v", at)
	}
	h, _ = legB.Hole("bolt-1")
	if at := legB.HoleAt(h); at.Sub(part.Vec{X: -90, Y: 5, Z: -150}).Norm() > 1e-9 {
		t.Errorf("bolt at %v", at)
	}
	if p := b.BoltGroup("bolts").Patch; p.Max.Y != -90-12 || p.Min.Y != -230 {
		t.Errorf("it touches the web from %g to %g, want from the rail's edge, 102 down, to the leg's end", p.Max.Y, p.Min.Y)
	}
	if at := b.LoadPoints[0].At; at.Sub(part.Vec{Y: -60, Z: -50}).Norm() > 1e-9 {
		t.Errorf("load at %v, want 40 below the leg's underside", at)
	}
}

// The rail is 300 high with edges of 12: its web is flat down to 288. The lap reaches there from 50 over the leg's end at 191, its weld runs up one side,
// along the top and down the other; the packer fills the leg's thickness behind its end.
func TestLap(t *testing.T) {
	b := made(t, lapped(set{}))
	for id, want := range map[string][2]part.Vec{
		"lap": {{X: -100, Y: 10, Z: -288}, {X: 100, Y: 20, Z: -141}}, "packer": {{X: -100, Z: -288}, {X: 100, Y: 10, Z: -258}},
	} {
		p := b.Plate(id)
		box := p.Outer.BBox()
		one, other := p.Pose.At(box.Min.X, box.Min.Y, p.ThicknessMM/2), p.Pose.At(box.Max.X, box.Max.Y, -p.ThicknessMM/2)
		if one.Sub(want[0]).Norm() > 1e-9 || other.Sub(want[1]).Norm() > 1e-9 {
			t.Errorf("%s from %v to %v, want %v", id, one, other, want)
		}
		if len(p.Holes) != 0 {
			t.Errorf("a hole in the %s", id)
		}
	}
	length := 0.0
	for _, s := range b.Weld("w-lap").Segments {
		length += s.B.Sub(s.A).Norm()
	}
	if math.Abs(length-300) > 1e-9 {
		t.Errorf("weld of %g, want 50 + 200 + 50", length)
	}
}

// Rules for holes: hole 13 in a rail with 6 mm flanges; the row's depth less 6.5 and 6 is the steel to the flange.
func TestRefusals(t *testing.T) {
	for _, c := range []fabtest.Refusal{
		{Given: set{"bolt_first": 50}, Param: "bolt_first", Bound: "38 mm"},
		{Given: set{"bolt_first": 50.5}},
		{Given: set{"bolt_row_pitch": 90, "angle_down": 188}, Param: "bolt_row_pitch", Bound: "38 mm"},
		{Given: set{"bolt_fit": "normal"}, Param: "bolt_fit", Bound: "1 mm"},
		{Given: set{"bolt_fit": "normal", "hole_over_bolt": 1.5}},
		{Given: set{"bolt_size": "M20"}, Param: "bolt_size", Bound: "19 mm"},
		{Given: set{"bolt_pitch": 37, "stiffener_count": 0}, Param: "bolt_pitch", Bound: "38 mm"},
		{Given: set{"bolt_size": "M16", "bolt_row_pitch": 42, "stiffener_count": 0}, Param: "bolt_row_pitch", Bound: "42.67 mm"},
		{Given: set{"bolt_size": "M16", "bolt_row_pitch": 43, "hole_to_hole": 20, "stiffener_count": 0}},
		{Given: set{"bolt_size": "M16", "bolt_row_pitch": 43, "hole_to_hole": 30, "stiffener_count": 0}, Param: "bolt_row_pitch", Bound: "47 mm"},
		{Given: set{"bolt_rows": 4, "bolt_row_pitch": 38}, Param: "bolt_rows", Bound: "at most holes_in_line, 3"},
		{Given: set{"angle_down": 189}, Param: "angle_down", Bound: "188 mm"},
		{Given: set{"clear_of_corner": 50}, Param: "heel_below", Bound: "62 mm"},
		{Given: over(set{"clear_of_corner": 10}), Param: "leg", Bound: "22 mm"},
		{Given: set{"leg": "over the subframe", "angle_down": 230, "bolt_first": 150}, Param: "stiffener_count", Bound: "0"},
		{Given: over(set{"subframe_corner": 5}), Param: "subframe_corner", Bound: "12 mm"},
		{Given: set{"leg": "over the subframe", "stiffener_count": 0, "angle_down": 230, "bolt_first": 100}, Param: "bolt_first", Bound: "117 mm"},
		{Given: lapped(set{"form": "bent plate"}), Param: "lap", Bound: "none"},
		{Given: lapped(set{"lap_overlap": 40}), Param: "lap_overlap", Bound: "50 mm"},
		{Given: lapped(set{"lap_overlap": 51}), Param: "lap_overlap", Bound: "50.6 mm"},
		{Given: lapped(set{"stiffener_depth": 126}), Param: "stiffener_depth", Bound: "125 mm"},
		{Given: lapped(set{"packer_height": 96}), Param: "packer_height", Bound: "95 mm"},
		{Given: set{"lap": "fitted", "web_clear_height": 207, "angle_down": 191}, Param: "lap", Bound: "none"},
		{Given: lapped(set{"lap_width": 230}), Param: "lap_width", Bound: "228 mm"},
		{Given: lapped(set{"lap_width": 100, "bolts_per_row": 2, "bolt_pitch": 180}), Param: "lap_width", Bound: "180 mm"},
		{Given: set{"form": "bent plate", "inside_radius": 8}, Param: "inside_radius", Bound: "10 mm"},
		{Given: set{"form": "bent plate", "angle_out": 40}, Param: "angle_out", Bound: "42 mm"},
		{Given: set{"seat_offset": 30}, Param: "seat_offset", Bound: "36.4 mm"},
		{Given: set{"seat_offset": 86}, Param: "seat_offset", Bound: "85 mm"},
		{Given: set{"seat_pitch": 60}, Param: "seat_pitch", Bound: "19.4 mm"},
		{Given: set{"seat_pitch": 220}, Param: "seat_pitch", Bound: "15 mm"},
		{Given: set{"seat_bolts": 0, "seat_length": 250}, Param: "seat_length", Bound: "240 mm"},
	} {
		if fault := c.Broken(Kind()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

func TestRandom(t *testing.T) { fabtest.Random(t, Kind(), 1000) }

func FuzzFoot(f *testing.F) { fabtest.Fuzz(f, Kind()) }
