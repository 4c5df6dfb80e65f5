package fab

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/geometry/stroke"
	"lugwright/part"
)

// A triangle of legs 100 and 60 less its snipe: elementary areas.
func TestCornerArea(t *testing.T) {
	for _, c := range []struct {
		corner Corner
		area   float64
	}{
		{Corner{AlongU: 100, AlongV: 60}, 3000},
		{Corner{AlongU: 100, AlongV: 60, Snipe: 10}, 2950},
		{Corner{AlongU: 100, AlongV: 60, Snipe: 10, NoseU: 60, NoseV: 100}, 5950},
		{Corner{AlongU: 100, AlongV: 60, NoseU: 20, NoseV: 20}, 100*20 + 20*40 + 80*40/2.},
	} {
		o := shape.Outline{Outer: c.corner.Outline()}
		if bad := o.Validate(); bad != nil || !c.corner.Fits() {
			t.Errorf("%+v: %v", c.corner, bad)
		}
		if got := o.Outer.Area(); math.Abs(got-c.area) > 1e-9 {
			t.Errorf("%+v: area %g, want %g", c.corner, got, c.area)
		}
	}
}

func TestCornerThatDoesNotFit(t *testing.T) {
	for _, c := range []Corner{
		{AlongU: 10, AlongV: 60, Snipe: 10},
		{AlongU: 100, AlongV: 60, NoseU: 61},
		{AlongU: 100, AlongV: 60, NoseV: 101},
		{AlongU: 100, AlongV: 60, Snipe: -1},
	} {
		if c.Fits() {
			t.Errorf("%+v fits", c)
		}
	}
}

func TestSpreadIsMiddled(t *testing.T) {
	for n, want := range map[int][]float64{1: {0}, 2: {-15, 15}, 3: {-30, 0, 30}} {
		got := Spread(n, 30)
		for i := range want {
			if got[i] != want[i] {
				t.Errorf("Spread(%d, 30) = %v, want %v", n, got, want)
			}
		}
	}
}

func TestPinHoleIsCutSmall(t *testing.T) {
	if h := PinHole(shape.Point{}, 25.5, 1); h.CutMM != 24.5 || h.DiaMM != 25.5 || h.Finish != part.Reamed {
		t.Errorf("%+v", h)
	}
	if h := PinHole(shape.Point{}, 25.5, 0); h.CutMM != 25.5 || h.Finish != part.AsCut {
		t.Errorf("%+v", h)
	}
}

// Sixteen chords of a circle are 16 sin(pi/16)/pi of its length.
func TestRoundWeldLength(t *testing.T) {
	sum := 0.0
	for _, s := range Round(part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, 5, 60, 16) {
		sum += s.B.Sub(s.A).Norm()
	}
	if want := 60 * 16 * math.Sin(math.Pi/16); math.Abs(sum-want) > 1e-9 {
		t.Errorf("length %g, want %g", sum, want)
	}
}

// A mark lands inside, clear of edge and hole, and stays there in the mirrored outline; a plate too small for it says so.
func TestMarkAll(t *testing.T) {
	triangle := Corner{AlongU: 90, AlongV: 70, Snipe: 10, NoseU: 10, NoseV: 10}.Outline()
	b := &part.Bracket{Plates: []part.Plate{
		{Name: "plate", Outer: shape.Rect(shape.Point{}, shape.Point{X: 60, Y: 40}), Holes: []part.Hole{{Center: shape.Point{X: 30, Y: 20}, DiaMM: 12, CutMM: 12}}},
		{Name: "upright", Outer: shape.Rect(shape.Point{}, shape.Point{X: 13, Y: 80})},
		{Name: "gusset", Outer: triangle, Pose: part.Pose{Origin: part.Vec{X: 3}, U: part.Vec{Y: 1}, V: part.Vec{Z: 1}}},
		{Name: "gusset", Outer: triangle, Pose: part.Pose{Origin: part.Vec{X: 9}, U: part.Vec{Y: -1}, V: part.Vec{Z: 1}}},
		{Name: "chip", Outer: shape.Rect(shape.Point{}, shape.Point{X: 20, Y: 15})},
	}}
	MarkAll(b, "AB")
	for i := range b.Plates[:4] {
		p := &b.Plates[i]
		if len(p.Etch) != 1 {
			t.Fatalf("%s %d has %d marks", p.Name, i, len(p.Etch))
		}
		for _, q := range []*part.Plate{p, &b.Mirrored().Plates[i]} {
			outline := q.Shape(false)
			for _, line := range stroke.Text("AB-L1234", q.Etch[0].At, q.Etch[0].HeightMM, q.Etch[0].AngleRad) {
				for _, at := range line {
					if !outline.Contains(at) || outline.DistTo(at) < 2-1e-6 {
						t.Fatalf("%s: a stroke at %v is off the steel or under 2 mm from an edge", p.Name, at)
					}
				}
			}
		}
	}
	if b.Plates[1].Etch[0].AngleRad == 0 {
		t.Error("a narrow upright plate wants upright text")
	}
	if !b.Plates[2].SamePiece(&b.Plates[3]) {
		t.Error("like pieces became unlike")
	}
	for i, want := range []part.Vec{{X: 3, Y: 90}, {X: 9, Y: -90}} {
		p := &b.Plates[2+i]
		if got := p.Pose.At(p.Outer.BBox().Max.X, 0, 0); got.Sub(want).Norm() > 1e-12 {
			t.Errorf("gusset tip moved to %v, want %v", got, want)
		}
	}
	if len(b.Plates[4].Etch) != 0 {
		t.Errorf("chip: marks %v", b.Plates[4].Etch)
	}
}

// A circle of radius 50 bears on the square in it, of side 50 sqrt(2).
func TestBearingOfRoundedPlate(t *testing.T) {
	disc, err := shape.RoundedRect(shape.Point{X: -50, Y: -50}, shape.Point{X: 50, Y: 50}, 49.999999)
	if err != nil {
		t.Fatal(err)
	}
	if got := Bearing(disc, 50).Width(); math.Abs(got-50*math.Sqrt2) > 1e-4 {
		t.Errorf("%g wide, want %g", got, 50*math.Sqrt2)
	}
}

// A lug of 40 with gaps of 2 between ears of 16: seats at 30 either side, a pin of 76 and the play, 1.15 pins for nut and washer or half a pin for a
// keeper. Only head and nut pull both ears along. Every pin says how it is made: thread, cross hole and slot lie past the 76, the hole past the play, too.
func TestBodyLug(t *testing.T) {
	for ends, want := range map[string]struct {
		length float64
		tied   bool
		first  part.EndKind
		note   string
	}{
		"head and nut": {math.Ceil(76.5 + 1.15*25), true, part.EndNut, "106 mm under the head; no thread within 76 mm of it; washer, castle nut and cotter"},
		"head and retaining bolt": {
			math.Ceil(76.5 + 25), false, part.EndRetainer,
			"102 mm under the head; no edge of its cross hole within 76.5 mm of it; retaining bolt, the maker's choice, with washer and nut",
		},
		"keeper": {
			math.Ceil(76.5 + 12.5), false, part.EndKeeper,
			"89 mm over all; its slot for the keeper beyond one ear's outer face, none in the 76 mm between the two; keeper plate, the maker's choice",
		},
	} {
		l := BodyLug{PinMM: 25, PinMaterial: "C45+N", HoleMM: 25.5, ThicknessMM: 40, GapMM: 2, RadiusMM: 30, PlayMM: 0.5, Ends: ends}
		var b part.Bracket
		l.Hold(&b, [2]string{"in", "out"}, 16, "S355", part.Vec{Z: 90})
		p := b.Pins[0]
		if p.LengthMM != want.length || l.Tied() != want.tied || p.Ends[0].Kind != want.first || p.Seats[0].Thing != "in" || p.Seats[0].AtMM != -30 || p.Seats[2].AtMM != 30 {
			t.Errorf("%s: %+v", ends, p)
		}
		if note := strings.Join(b.Notes, "; "); note != "pin: 25 mm round of C45+N, "+want.note {
			t.Errorf("%s: note %q", ends, note)
		}
	}
}

// What is put in has its names and its place, and still belongs together; what it stands on is the bracket's.
func TestPut(t *testing.T) {
	piece := &part.Bracket{
		Plates:     []part.Plate{{ID: "rib"}},
		Members:    []part.Member{{ID: "base"}},
		Bolts:      []part.BoltGroup{{ID: "bolts", Plies: [2]part.Ply{{Thing: "base.b"}, {Thing: "web"}}}},
		Welds:      []part.WeldGroup{{ID: "w", Joins: [2]string{"rib", "base.a"}, Segments: []part.WeldSegment{{B: part.Vec{Y: 1}}}}},
		Composites: []part.Composite{{ID: "c", Things: []string{"base.a", "rib"}, Welds: []string{"w"}}},
		Sweeps:     []part.Sweep{{ID: "s", Things: []string{"base.a"}, Bolts: "bolts", Via: "w", To: part.Vec{Y: 1}}, {ID: "t", Things: []string{"rib"}}},
		Supports:   []part.Support{{ID: "web"}},
	}
	var b part.Bracket
	by := part.Vec{X: 5}
	Put(&b, piece, "far-", by)
	g, w, c, s := b.Bolts[0], b.Welds[0], b.Composites[0], b.Sweeps[0]
	if b.Plates[0].ID != "far-rib" || b.Members[0].ID != "far-base" || g.ID != "far-bolts" || g.Plies[0].Thing != "far-base.b" || g.Plies[1].Thing != "web" ||
		w.Joins != [2]string{"far-rib", "far-base.a"} || c.Things[1] != "far-rib" || c.Welds[0] != "far-w" || s.Bolts != "far-bolts" || s.Via != "far-w" || b.Sweeps[1].Via != "" || b.Sweeps[1].Bolts != "" || b.Supports != nil {
		t.Errorf("%+v", b)
	}
	if b.Plates[0].Pose.Origin != by || b.Members[0].Pose.Origin != by || g.Pose.Origin != by || w.Segments[0].B != (part.Vec{X: 5, Y: 1}) || s.To != (part.Vec{X: 5, Y: 1}) || c.From != by {
		t.Errorf("not moved by %v: %+v", by, b)
	}
	if piece.Welds[0].Segments[0].B.X != 0 || piece.Bolts[0].Plies[0].Thing != "base.b" {
		t.Error("the piece itself was changed")
	}
}

// A quarter turn brings x to y and y to -x: ends of a beam's share too.
func TestQuarterTurn(t *testing.T) {
	b := part.Bracket{
		Shares: []part.Share{{Ends: [2]part.Vec{{X: 1, Y: 2, Z: 3}, {X: 4}}}},
		Paths:  []part.Path{{Component: part.FyPlus}},
	}
	QuarterTurn(&b)
	if got, want := b.Shares[0].Ends, [2]part.Vec{{X: -2, Y: 1, Z: 3}, {Y: 4}}; got != want || b.Paths[0].Component != part.FxMinus {
		t.Errorf("%v, %v, want %v", got, b.Paths[0].Component, want)
	}
}
