package strength

import (
	"slices"
	"testing"
)

// What a slab gives is zero, whatever was written to what it gave before it took everything back.
func TestSlab(t *testing.T) {
	var s slab[int]
	for round, lengths := range [][]int{{40, 40, 3}, {70, 1, 200, 9}, {64, 64, 64, 500}, {1}, {300, 300, 300}} {
		for _, n := range lengths {
			got := s.take(n)
			if len(got) != n || slices.ContainsFunc(got, func(v int) bool { return v != 0 }) {
				t.Fatalf("round %d: take(%d) gives %d, not all zero", round, n, len(got))
			}
			for i := range got {
				got[i] = round + 1
			}
		}
		s.reset()
	}
}
