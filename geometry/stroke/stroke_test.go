package stroke

import (
	"math"
	"testing"

	"lugwright/geometry/shape"
)

func TestEveryLetterFillsItsCellAndNoMore(t *testing.T) {
	for r := range font {
		box := shape.EmptyBox()
		for _, line := range Text(string(r), shape.Point{X: 12, Y: 23}, 6, 0) {
			if len(line) < 2 {
				t.Errorf("%c: stroke of %d points", r, len(line))
			}
			for i, p := range line {
				box = box.Extend(p)
				if i > 0 && p == line[i-1] {
					t.Errorf("%c: the tool stands still at %v", r, p)
				}
			}
		}
		if r == ' ' {
			continue
		}
		if box.Min.X < 10 || box.Max.X > 14 || box.Min.Y < 20 || box.Max.Y > 26 {
			t.Errorf("%c leaves its cell: %v", r, box)
		}
	}
}

func TestLettersDiffer(t *testing.T) {
	seen := map[string]rune{box: '?'}
	for r, s := range font {
		if other, ok := seen[s]; ok {
			t.Errorf("%c and %c are drawn alike", r, other)
		}
		seen[s] = r
	}
	for r := 'A'; r <= 'Z'; r++ {
		if _, ok := font[r]; !ok {
			t.Errorf("no %c", r)
		}
	}
	for r := '0'; r <= '9'; r++ {
		if _, ok := font[r]; !ok {
			t.Errorf("no %c", r)
		}
	}
}

func TestTextTurnsAboutItsMiddle(t *testing.T) {
	lines := Text("ll", shape.Point{X: 5, Y: 5}, 12, math.Pi/2)
	if len(lines) != 2 {
		t.Fatalf("%d strokes, want 2", len(lines))
	}
	// L ends at column 4 of the second letter, at its foot: half of the 20 mm text above the middle, which it turns about, and half the
	// height of 12 mm to the right.
	end := lines[1][len(lines[1])-1]
	if want := (shape.Point{X: 11, Y: 15}); end.Dist(want) > 1e-9 {
		t.Errorf("end at %v, want %v", end, want)
	}
	if got := WidthMM("ll", 12); got != 20 {
		t.Errorf("width %g, want 20", got)
	}
	if got := WidthMM("", 12); got != 0 {
		t.Errorf("width of nothing %g", got)
	}
}

func TestUnknownIsABox(t *testing.T) {
	if got := Text("ü", shape.Point{}, 6, 0); len(got) != 1 || len(got[0]) != 5 {
		t.Errorf("got %v, want one box", got)
	}
}
