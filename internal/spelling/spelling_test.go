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
