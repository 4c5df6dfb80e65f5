package view

import (
	"fmt"
	"math"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/part/parttest"
)

// Solids 0, 1 and 2 cover each other in a ring and 3 lies on 0. However far off 3 is, the ring's farthest comes before it.
func TestRing(t *testing.T) {
	hulls := []hull{{depth: 5}, {depth: 3}, {depth: 4}, {depth: 1}}
	behind := [][]bool{{false, true, false, false}, {false, false, true, false}, {true, false, false, false}, {true, false, false, false}}
	done := make([]bool, 4)
	for k, want := range []int{1, 0, 3, 2} {
		got := next(hulls, behind, done)
		if got != want {
			t.Fatalf("place %d: %d, want %d", k, got, want)
		}
		done[got] = true
	}
}

// A plate through another that stands square to it is cut at the other's faces, and the pieces together are the plate; one that only stands on it is not.
func TestPlatesApart(t *testing.T) {
	flat := func(w, h, z float64, pose part.Pose) solid {
		pose.Origin.Z = z
		return newSolid(shape.Outline{Outer: shape.Rect(shape.Point{X: -w / 2, Y: -h / 2}, shape.Point{X: w / 2, Y: h / 2})}, pose, -5, 5, plateTone)
	}
	level, upright := part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, part.Pose{U: part.Vec{X: 1}, V: part.Vec{Z: 1}}
	through := apart([]solid{flat(80, 60, 0, level), flat(100, 100, 0, upright)}, &Isometric)
	area := 0.0
	for _, s := range through {
		if s.pose == level {
			box := s.box()
			area += box.Width() * box.Height()
		}
	}
	if len(through) < 4 || math.Abs(area-80*60) > 1e-9 {
		t.Errorf("%d pieces, the level plate's %g mm2", len(through), area)
	}
	if on := apart([]solid{flat(80, 60, 0, level), flat(100, 100, 55, upright)}, &Isometric); len(on) != 2 {
		t.Errorf("a plate that stands on another: %d pieces", len(on))
	}
}

// A rod through a tray's corner: what is in the hole is not seen, and what stands on the floor is painted after the floor and the far wall, before the near wall.
// The viewer stands at -X, +Y, +Z.
func TestRodInATray(t *testing.T) {
	level := part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
	floor := newSolid(shape.Outline{
		Outer: shape.Rect(shape.Point{X: -20, Y: -100}, shape.Point{X: 20, Y: 100}),
		Holes: []shape.Loop{shape.Circle(shape.Point{Y: 80}, 14)},
	}, level, -2, 2, plateTone)
	wall := func(y float64) solid {
		return newSolid(shape.Outline{Outer: shape.Rect(shape.Point{X: -20, Y: -2}, shape.Point{X: 20, Y: 50})},
			part.Pose{Origin: part.Vec{Y: y}, U: part.Vec{X: 1}, V: part.Vec{Z: 1}}, -2, 2, plateTone)
	}
	sheets := []solid{floor, wall(102), wall(-102)}
	rods := rodSolids(&part.Rods{Pose: level, Points: []shape.Point{{Y: 80}}, Size: "M12", DiaMM: 12, FreeMM: 200}, sheets)
	if len(rods) != 2 || rods[0].lo != -18 || rods[0].hi != -2 || rods[1].lo != 2 || rods[1].hi != 200 {
		t.Fatalf("%+v", rods)
	}
	place := map[int]int{}
	for at, i := range newScene(append(sheets, rods...), &Isometric).backToFront() {
		place[i] = at
	}
	if below, above := place[3], place[4]; below > place[0] || above < place[0] || above < place[2] || above > place[1] {
		t.Errorf("places %v", place)
	}
}

// A cap stands on an ear, the ear reaches past a collar's side, the collar stands before the cap: each covers the next in a ring, seen from +X, +Y, +Z, and no order
// of the whole things is right. Cut, none is in a ring, and the pieces together are the whole.
func TestUnringed(t *testing.T) {
	box := func(x0, x1, z0, z1 float64) shape.Outline {
		return shape.Outline{Outer: shape.Rect(shape.Point{X: x0, Y: z0}, shape.Point{X: x1, Y: z1})}
	}
	level, upright := part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, part.Pose{U: part.Vec{X: 1}, V: part.Vec{Z: 1}}
	ear := newSolid(box(64, 106, -54, 54), level, 112, 128, plateTone)
	plateCap := newSolid(box(-106, 106, 128, 183), upright, -6, 6, plateTone)
	collar := newSolid(box(-62, 62, 48, 172), upright, -17, -7, plateTone) // upright's normal is -Y
	whole := newScene([]solid{ear, plateCap, collar}, &Isometric)
	if rings := ringed(whole.behind); len(rings) != 1 || len(rings[0]) != 3 {
		t.Fatalf("rings %v", rings)
	}
	cut := whole.unringed()
	if rings := ringed(cut.behind); len(cut.list) < 4 || len(rings) != 0 {
		t.Errorf("%d pieces, rings %v", len(cut.list), rings)
	}
	volume := 0.0
	for _, s := range cut.list {
		b := s.box()
		volume += b.Width() * b.Height() * (s.hi - s.lo)
	}
	if want := 42.0*108*16 + 212*55*12 + 124*124*10; math.Abs(volume/want-1) > 1e-9 {
		t.Errorf("pieces of %g mm3, whole %g", volume, want)
	}
}

func TestOrder(t *testing.T) {
	box := func(x, y, z float64) solid {
		return newSolid(shape.Outline{Outer: shape.Rect(shape.Point{}, shape.Point{X: 10, Y: 10})},
			part.Pose{Origin: part.Vec{X: x, Y: y, Z: z}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, 0, 10, plateTone)
	}
	// A long wall behind a small box whose middle is farther from the viewer than the wall's.
	wall := newSolid(shape.Outline{Outer: shape.Rect(shape.Point{}, shape.Point{X: 400, Y: 10})},
		part.Pose{Origin: part.Vec{}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, 0, 10, plateTone)
	for name, c := range map[string]struct {
		list []solid
		want string
	}{
		"above":  {[]solid{box(0, 0, 10), box(0, 0, 0)}, "[1 0]"},
		"left":   {[]solid{box(0, 10, 0), box(0, 0, 0)}, "[1 0]"},
		"behind": {[]solid{box(10, 0, 0), box(0, 0, 0)}, "[1 0]"},
		"wall":   {[]solid{box(0, 10, 0), wall}, "[1 0]"},
	} {
		if got := fmt.Sprint(newScene(c.list, &Isometric).backToFront()); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

func TestPinIsSplitAtTheEars(t *testing.T) {
	b := parttest.Bracket()
	var sheets []solid
	for i := range b.Plates {
		p := &b.Plates[i]
		sheets = append(sheets, newSolid(p.Shape(false), p.Pose, -p.ThicknessMM/2, p.ThicknessMM/2, plateTone))
	}
	var got [][2]float64
	for _, s := range split(pinSolid(&b.Pins[0]), sheets) {
		got = append(got, [2]float64{s.lo, s.hi})
	}
	// Ears of 12 mm about -17 and 17, a pin of 70 mm.
	if want := "[[-35 -23] [-11 11] [23 35]]"; fmt.Sprint(got) != want {
		t.Errorf("%v, want %s", got, want)
	}
}
