package svg

import "testing"

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
