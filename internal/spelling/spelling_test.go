package spelling

import (
	"strings"
	"testing"
)

// The first two are the usual examples of textbooks on string matching, from memory.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"kitten", "sitting", 3}, {"saturday", "sunday", 3}, {"", "abc", 3}, {"abc", "", 3}, {"same", "same", 0}, {"ab", "ba", 2},
		{strings.Repeat("x", 1000), "x", longest - 1},
	} {
		if got := Distance(c.a, c.b); got != c.want || Distance(c.b, c.a) != got {
			t.Errorf("%q to %q: %d, back %d, want %d", c.a, c.b, got, Distance(c.b, c.a), c.want)
		}
	}
}

func TestNearest(t *testing.T) {
	known := []string{"A36", "S355", "6061-T6", "5083-H116", "A572-50"}
	for word, want := range map[string]string{"6061": "6061-T6", "s335": "S355", "a36": "A36", "A572": "A572-50", "steel": "", "": "", "xx": ""} {
		if got := Nearest(word, known); got != want {
			t.Errorf("%q: %q, want %q", word, got, want)
		}
	}
}

// Of words that hold what was typed, the shorter change is meant, wherever it stands in the list.
func TestNearestOfThoseThatHoldTheWord(t *testing.T) {
	for _, known := range [][]string{{"fork_thickness", "thickness", "thick"}, {"thick", "thickness", "fork_thickness"}} {
		for word, want := range map[string]string{"thicknes": "thickness", "fork_thick": "fork_thickness", "THICKNESS": "thickness", "thicness": "thickness"} {
			if got := Nearest(word, known); got != want {
				t.Errorf("%q of %q: %q, want %q", word, known, got, want)
			}
		}
	}
	if got := Nearest("bore", []string{"core", "bore_diameter"}); got != "bore_diameter" {
		t.Errorf("a word cut short gives %q", got)
	}
}
