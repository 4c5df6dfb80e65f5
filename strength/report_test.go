package strength_test

import (
	"testing"

	"lugwright/part"
	"lugwright/strength"
)

// A check of welds acting together is at the one that its place names; any other at its own, and one of a plate at none.
func TestWeldOf(t *testing.T) {
	b := &part.Bracket{Plates: []part.Plate{{ID: "ear-1"}}, Welds: []part.WeldGroup{{ID: "w-1"}, {ID: "w-10"}, {ID: "w-2"}}}
	for _, c := range []struct{ thing, place, want string }{
		{"w-1", "weld w-1 and 2 more acting with it, at w-2", "w-2"},
		{"w-1", "weld w-1 and 2 more acting with it, at w-10", "w-10"},
		{"w-1", "weld w-1 and 2 more acting with it, at w-1", "w-1"},
		{"w-1", "weld w-1 and 1 more acting with it, weld throat", "w-1"},
		{"w-2", "weld w-2, root of the rib", "w-2"},
		{"w-2", "weld w-2", "w-2"},
		{"ear-1", "ear-1, at the root", ""},
	} {
		k := strength.Check{Thing: c.thing, Place: c.place}
		if got := k.WeldOf(b); got != c.want {
			t.Errorf("%s: %q, need %q", c.place, got, c.want)
		}
	}
}
