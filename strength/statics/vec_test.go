package statics

import "testing"

func TestWrench(t *testing.T) {
	w := Wrench{F: Vec3{0, 0, 10}, At: Vec3{100, 0, 0}}
	if m := w.MovedTo(Vec3{}).M; m != (Vec3{0, -1000, 0}) {
		t.Errorf("10 N up at x = 100 gives M = %v about the origin, want -1000 about y", m)
	}
	pair := w.Add(Wrench{F: Vec3{0, 0, -10}})
	if pair.F != (Vec3{}) || pair.M != (Vec3{0, -1000, 0}) {
		t.Errorf("a couple is the same about any point: %+v", pair)
	}
	in := w.In(Vec3{}, Vec3{0, 0, 1}, Vec3{1, 0, 0}, Vec3{0, 1, 0})
	if in.F != (Vec3{10, 0, 0}) || in.M != (Vec3{0, 0, -1000}) {
		t.Errorf("in turned axes: %+v", in)
	}
}

// A batch run calls these millions of times: nothing may allocate.
func TestNoAllocations(t *testing.T) {
	pos, y := grid(2, 2, 60, 40), []float64{0, 40, 0, 40}
	shears, tensions := make([]Vec2, 4), make([]float64, 4)
	patch := Patch{-20, 80, -20, 60}
	g := flat(t, [4]float64{0, 0, 0, 80}, [4]float64{12, 0, 12, 80})
	pieces := []Piece{{0, 105, 100, 10, 0}, {0, 50, 100, 8, 1.2}}
	seats := twoEars(10, 2, 20, 2, 10, 1, 1e4)
	var gaps [2]float64
	for name, f := range map[string]func(){
		"Shears":             func() { _ = Shears(shears, pos, 1, 2, 3) },
		"Tensions":           func() { _, _ = Tensions(tensions, pos, 84, patch, 1e3, 1e6, 2e5) },
		"TensionsOneAxis":    func() { _, _ = TensionsOneAxis(tensions, y, 84, -20, 60, 100, 1e3, 1e6) },
		"TensionsAtCentroid": func() { _ = TensionsAtCentroid(tensions, pos, 1e3, 1e6, 2e5) },
		"Peak":               func() { _, _ = g.Peak(Vec3{1, 2, 3}, Vec3{4, 5, 6}) },
		"NewSection":         func() { _, _ = NewSection(pieces) },
		"PlasticModuli":      func() { _, _, _ = PlasticModuli(pieces) },
		"SolvePin":           func() { _, _ = SolvePin(gaps[:], seats[:]) },
	} {
		if n := testing.AllocsPerRun(20, f); n != 0 {
			t.Errorf("%s allocates %g times a call", name, n)
		}
	}
}
