package nest

import (
	"math"
	"testing"

	"lugwright/geometry/shape"
)

func square(turns ...float64) []float64 { return append([]float64{0}, turns...) }

// Eight plates of 100 x 50 mm fill a sheet of 200 x 200 mm with nothing left.
func TestFills(t *testing.T) {
	plate := Part{Outer: shape.Rect(shape.Point{X: -30, Y: 7}, shape.Point{X: 70, Y: 57}), Count: 8, TurnsRad: square(math.Pi / 2)}
	r, err := Lay([]Part{plate}, []Sheet{{200, 200, 1}}, 0, 1)
	if err != nil {
		t.Fatal(err)
	}
	if r.Left[0] != 0 || len(r.Placements) != 8 || len(r.UsedMM) != 1 || math.Abs(r.UsedMM[0]-200) > 1e-6 {
		t.Errorf("%+v", r)
	}
}

// With a gap of 10 mm rows of 55 mm plates and half a gap at the edges: three fit into 200 mm, the rest goes on a second sheet, and one finds no room.
func TestGapAndSheets(t *testing.T) {
	plate := Part{Outer: shape.Rect(shape.Point{}, shape.Point{X: 190, Y: 55}), Count: 7, TurnsRad: square()}
	r, err := Lay([]Part{plate}, []Sheet{{200, 200, 2}}, 10, 1)
	if err != nil {
		t.Fatal(err)
	}
	if r.Left[0] != 1 || len(r.Placements) != 6 || len(r.UsedMM) != 2 {
		t.Errorf("%+v", r)
	}
}

// Plates with arcs, holes aside, in every turn: never nearer than the gap, by exact distances; the same job gives the same layout.
func TestArcs(t *testing.T) {
	ear, err := shape.NewPath(shape.Point{}).LineBy(100, 0).LineBy(0, 60).Arc(shape.Point{X: 0, Y: 60}, 1).Close()
	if err != nil {
		t.Fatal(err)
	}
	parts := []Part{
		{Outer: ear, Count: 9, TurnsRad: square(math.Pi/2, math.Pi, 3*math.Pi/2)},
		{Outer: shape.Circle(shape.Point{X: 5}, 80), Count: 6, TurnsRad: square()},
		{Outer: shape.Polyline(shape.Point{}, shape.Point{X: 150}, shape.Point{Y: 90}), Count: 8, TurnsRad: square(math.Pi)},
	}
	sheets := []Sheet{{1000, 500, 1}, {600, 300, 2}}
	r, err := Lay(parts, sheets, 8, 30)
	if err != nil {
		t.Fatal(err)
	}
	if err := r.check(parts, list(sheets), 8); err != nil {
		t.Error(err)
	}
	again, _ := Lay(parts, sheets, 8, 30)
	if len(again.Placements) != len(r.Placements) {
		t.Fatal("another layout")
	}
	for i := range r.Placements {
		if r.Placements[i] != again.Placements[i] {
			t.Fatal("another layout")
		}
	}
}

// The check finds pieces that come too near, lie in one another, cross, or leave the sheet.
func TestCheck(t *testing.T) {
	parts := []Part{{Outer: shape.Rect(shape.Point{}, shape.Point{X: 100, Y: 20})}}
	sheets := []Sheet{{WidthMM: 300, HeightMM: 300}}
	for name, at := range map[string]Placement{
		"near":    {At: shape.Point{Y: 25}},
		"same":    {At: shape.Point{Y: 0.0001}},
		"crossed": {At: shape.Point{X: 60, Y: -40}, TurnRad: math.Pi / 2},
		"off":     {At: shape.Point{X: 250, Y: 100}},
	} {
		r := Result{Placements: []Placement{{}, at}}
		if r.check(parts, sheets, 10) == nil {
			t.Errorf("%s is taken", name)
		}
	}
	if err := (&Result{Placements: []Placement{{}, {At: shape.Point{Y: 30}}}}).check(parts, sheets, 10); err != nil {
		t.Error(err)
	}
}

func TestRefusals(t *testing.T) {
	good := Part{Outer: shape.Rect(shape.Point{}, shape.Point{X: 10, Y: 10}), Count: 1, TurnsRad: square()}
	for name, c := range map[string]struct {
		part  Part
		sheet Sheet
		gap   float64
	}{
		"gap":      {good, Sheet{100, 100, 1}, math.NaN()},
		"sheet":    {good, Sheet{math.Inf(1), 100, 1}, 0},
		"no sheet": {good, Sheet{100, 100, 0}, 0},
		"sheets":   {good, Sheet{100, 100, 1000000}, 0},
		"no turn":  {Part{Outer: good.Outer, Count: 1}, Sheet{100, 100, 1}, 0},
		"pieces":   {Part{Outer: good.Outer, Count: 100000, TurnsRad: square()}, Sheet{100, 100, 1}, 0},
	} {
		if _, err := Lay([]Part{c.part}, []Sheet{c.sheet}, c.gap, 1); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
	if r, err := Lay([]Part{good}, []Sheet{{5, 100, 1}}, 0, 1); err != nil || r.Left[0] != 1 {
		t.Errorf("too wide for the sheet: %+v, %v", r, err)
	}
}
