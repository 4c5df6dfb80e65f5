package access

import (
	"slices"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// upright is a plate 100 wide and 100 high that stands on the base at x, its plane square to x.
func upright(id string, x float64) part.Plate {
	return part.Plate{ID: id, ThicknessMM: 10, Outer: shape.Rect(shape.Point{X: -50}, shape.Point{X: 50, Y: 100}),
		Pose: part.Pose{Origin: part.Vec{X: x}, U: part.Vec{Y: 1}, V: part.Vec{Z: 1}}}
}

// pair is a base plate with two uprights, the clear gap between them as given, each welded on both faces.
func pair(gap float64) *part.Bracket {
	x := gap/2 + 5
	b := &part.Bracket{Plates: []part.Plate{
		{ID: "base", ThicknessMM: 10, Outer: shape.Rect(shape.Point{X: -200, Y: -100}, shape.Point{X: 200, Y: 100}),
			Pose: part.Pose{Origin: part.Vec{Z: -5}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}},
		upright("left", -x), upright("right", x),
	}}
	for _, w := range []struct {
		id string
		at float64
	}{{"left", -x}, {"right", x}} {
		b.Welds = append(b.Welds, part.WeldGroup{ID: "w-" + w.id, Joins: [2]string{w.id, "base"}, Segments: []part.WeldSegment{
			{A: part.Vec{X: w.at - 5, Y: -50}, B: part.Vec{X: w.at - 5, Y: 50}}, {A: part.Vec{X: w.at + 5, Y: -50}, B: part.Vec{X: w.at + 5, Y: 50}},
		}})
	}
	return b
}

// Between two plates 100 mm high a torch at 30 degrees from upright needs about 100 tan 30 = 58 mm and its own width; along the pocket it is free at
// its ends. With 120 mm between them every run is reached; with 20 mm the two inner runs are not, at their middle.
func TestTorch(t *testing.T) {
	if got := Findings(pair(120), Usual()); got != nil {
		t.Errorf("wide: %v", got)
	}
	got := Findings(pair(20), Usual())
	if len(got) != 2 || got[0].What != "weld w-left" || got[1].What != "weld w-right" || !strings.Contains(got[0].Words, "run 2 in part of 2") || !strings.Contains(got[0].Words, "right") {
		t.Errorf("narrow: %v", got)
	}
	small := Usual()
	small.TorchWidthMM, small.TorchLengthMM, small.TorchAngleRad = 5, 20, 0
	if got := Findings(pair(20), small); got != nil {
		t.Errorf("a small torch: %v", got)
	}
}

func TestSocket(t *testing.T) {
	b := pair(120)
	b.Bolts = []part.BoltGroup{{ID: "b1", DiaMM: 12, Points: []shape.Point{{X: 0, Y: 0}, {X: 55, Y: 0}},
		Pose: part.Pose{Origin: part.Vec{Z: -10}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, Plies: [2]part.Ply{{Thing: "base", ThicknessMM: 10}, {}}}}
	// The second bolt stands 5 mm from the upright's face at x = 60; a socket needs 13.2.
	got := Findings(b, Usual())
	if len(got) != 1 || got[0].String() != "bolts b1: no room for a socket over 1 of 2; in the way: right" {
		t.Errorf("%v", got)
	}
}

// A pin through both uprights is drawn either way until something stands 60 mm off on both sides; its 150 mm and 10 more need 160.
func TestPin(t *testing.T) {
	b := pair(40)
	b.Pins = []part.Pin{{ID: "p1", DiaMM: 25, LengthMM: 150, Axis: part.Vec{X: 1}, Center: part.Vec{Z: 70}, Seats: []part.Seat{
		{Thing: "left", AtMM: -25, ThicknessMM: 10}, {ThicknessMM: 20, BushMM: 20}, {Thing: "right", AtMM: 25, ThicknessMM: 10}}}}
	b.Welds = nil
	if got := Findings(b, Usual()); got != nil {
		t.Errorf("free: %v", got)
	}
	b.Plates = append(b.Plates, upright("wall-1", -95))
	if got := Findings(b, Usual()); got != nil {
		t.Errorf("free to the right: %v", got)
	}
	b.Plates = append(b.Plates, upright("wall-2", 95))
	got := Findings(b, Usual())
	if len(got) != 2 || !strings.Contains(got[0].Words, "cannot be drawn to either side; in the way: wall-1, wall-2") || !strings.Contains(got[1].Words, "grease") {
		t.Errorf("between walls: %v", got)
	}
}

// ISO 13920 class B by its rows: 30 to 120 mm 2 mm, 400 to 1000 mm 3 mm.
func TestFits(t *testing.T) {
	for length, want := range map[float64]float64{20: 1, 45: 2, 300: 2, 500: 3, 1500: 4, 4000: 6, 8000: 12} {
		if got := WeldmentMM(length); got != want {
			t.Errorf("%g mm: %g, want %g", length, got, want)
		}
	}
	b := &part.Bracket{
		Plates: []part.Plate{{ID: "a"}, {ID: "b"}},
		Bolts: []part.BoltGroup{
			{ID: "tight", DiaMM: 12, HoleMM: 13, Points: make([]shape.Point, 4)}, {ID: "easy", DiaMM: 12, HoleMM: 13.5, Points: make([]shape.Point, 4)},
			{ID: "single", DiaMM: 12, HoleMM: 12.5, Points: make([]shape.Point, 1)},
		},
		Pins: []part.Pin{{ID: "p1", DiaMM: 25, Seats: []part.Seat{{Thing: "a", HoleMM: 25.5}, {HoleMM: 25.3}, {Thing: "b", AtMM: 32, HoleMM: 25.5}}}},
	}
	got := Fits(b)
	if len(got) != 2 || !strings.HasPrefix(got[0], "bolts tight: holes may be off by 1.3 mm and have 1.0 mm of play") || !strings.HasPrefix(got[1], "pin p1: its holes may come out 2.0 mm off line") {
		t.Errorf("%q", got)
	}
	b.Bolts[0].ID = "bolts"
	if got := Fits(b); !strings.HasPrefix(got[0], "bolts: holes") {
		t.Errorf("%q", got)
	}
	b.Pins[0].Seats[0].HoleMM, b.Pins[0].Seats[2].HoleMM = 27.5, 27.5
	if got := Fits(b); len(got) != 1 {
		t.Errorf("play enough: %q", got)
	}
}

func TestValidate(t *testing.T) {
	if err := Usual().Validate(); err != nil {
		t.Error(err)
	}
	bad := part.Fields(Room{TorchAngleRad: 2}.Validate())
	if len(bad) != 5 || bad[0].Field != "torch_angle" {
		t.Errorf("%v", bad)
	}
}

// What Fits says of a pattern and a pin is said at their own holes: at those of the plate that is nearer, at the ears' own. Tapped holes that are cut for the
// tap are as true as those over them, 0.3 mm each; where they are punched the drill goes off by up to 1 mm, and is marked off through what lies over them.
func TestAtHoles(t *testing.T) {
	pose := part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
	hole := func(id string, x float64) part.Hole {
		return part.Hole{ID: id, Center: shape.Point{X: x}, DiaMM: 9, CutMM: 9, Finish: part.AsCut}
	}
	outer := shape.Rect(shape.Point{X: -50, Y: -50}, shape.Point{X: 50, Y: 50})
	b := &part.Bracket{
		Plates: []part.Plate{
			{ID: "cover", Outer: outer, Pose: pose, Holes: []part.Hole{hole("bolt-1", -30), hole("bolt-2", 30), hole("drain", 0)}},
			{ID: "under", Outer: outer, Pose: pose, Holes: []part.Hole{hole("bolt-1", -30), hole("bolt-2", 30)}},
		},
		Bolts: []part.BoltGroup{{ID: "bolts", Pose: pose, DiaMM: 8, HoleMM: 9, Points: []shape.Point{{X: -30}, {X: 30}}, Plies: [2]part.Ply{{Thing: "cover"}, {Thing: "under"}}}},
		Pins:  []part.Pin{{ID: "p1", DiaMM: 8.5, Axis: part.Vec{Z: 1}, Seats: []part.Seat{{Thing: "cover", HoleMM: 9}, {HoleMM: 9}, {Thing: "under", AtMM: 32, HoleMM: 9}}}},
	}
	words := func() (out []string) {
		for _, h := range AtHoles(b) {
			out = append(out, h.Piece+" "+h.Hole+" "+h.Words)
		}
		return out
	}
	if got, want := strings.Join(words(), "\n"), "cover bolt-1 match-drill the far side through it\ncover bolt-2 match-drill the far side through it\n"+
		"cover drain weld with a dummy pin through it, or ream in place"; got != want {
		t.Errorf("%s", got)
	}
	b.Pins = nil
	for i := range b.Plates[1].Holes {
		b.Plates[1].Holes[i].Finish, b.Plates[1].Holes[i].CutMM = part.Tapped, 0
	}
	if got, want := strings.Join(words(), "\n"), "under bolt-1 after welding, marked off through the cover\nunder bolt-2 after welding, marked off through the cover"; got != want {
		t.Errorf("%s", got)
	}
	if got := Fits(b); len(got) != 1 || !strings.HasSuffix(got[0], "mark the tapped holes off through the cover after welding, then drill and tap") {
		t.Errorf("%q", got)
	}
	for i := range b.Plates[1].Holes {
		b.Plates[1].Holes[i].CutMM = 6.8
	}
	if got := Fits(b); got != nil {
		t.Errorf("cut for the tap: %q", got)
	}
	// A plate under that is too thick to be cut for the tap is drilled through it.
	ear := b.Plates[1]
	ear.ID, ear.Holes = "ear", slices.Clone(ear.Holes)
	for i := range ear.Holes {
		ear.Holes[i].CutMM = 0
	}
	b.Plates = append(b.Plates, ear)
	if got, want := strings.Join(words(), "\n"), "ear bolt-1 after welding, drilled through the under\near bolt-2 after welding, drilled through the under"; got != want {
		t.Errorf("%s", got)
	}
}
