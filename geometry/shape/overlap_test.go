package shape

import "testing"

// A cross of two bars overlaps although no corner of either lies in the other; bars side by side touch; one within another overlaps.
func TestOverlap(t *testing.T) {
	bar := Rect(Point{}, Point{100, 20})
	for name, c := range map[string]struct {
		other Loop
		want  bool
	}{
		"cross":       {Rect(Point{40, -40}, Point{60, 60}), true},
		"side":        {Rect(Point{0, 20}, Point{100, 40}), false},
		"corner":      {Rect(Point{100, 20}, Point{120, 40}), false},
		"within":      {Rect(Point{10, 5}, Point{20, 15}), true},
		"itself":      {bar, true},
		"apart":       {Rect(Point{200, 0}, Point{220, 20}), false},
		"disc beside": {Circle(Point{50, 30}, 20), false},
		"disc in":     {Circle(Point{50, 29}, 20), true},
		"seam":        {Rect(Point{0, 19.9999}, Point{100, 40}), false},
	} {
		if got := Overlap(bar, c.other, 1e-3); got != c.want {
			t.Errorf("%s: %v", name, got)
		}
		if got := Overlap(c.other, bar, 1e-3); got != c.want {
			t.Errorf("%s, the other way: %v", name, got)
		}
	}
}
