package strength_test

// Bolts that bring the load to the bracket: the load acts on the far ply.

import (
	"testing"

	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
)

func kindOf(t *testing.T, kind string, ps ...part.Param) *part.Bracket {
	t.Helper()
	b, err := geometry.Build(reckoned(), geometry.Request{Kind: kind, Name: "it", Hand: part.LeftHand, Params: ps})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Equipment on the +y face of a tab, held by one bolt: 4 kN away from the tab is the bolt's tension, 4 kN against it only presses.
func TestEquipmentPullsItsBolt(t *testing.T) {
	b := kindOf(t, "tab")
	for force, want := range map[float64]float64{4000: 4000, -4000: 0} {
		r := run(t, b, strength.Options{}, service("side", part.Vec{Y: force}))
		if got := find(t, r, "bolt-tension", "bolts").Demand; got < want-1e-6 || got > want+1e-6 {
			t.Errorf("side force %g N: tension %g N, want %g", force, got, want)
		}
	}
}

// A single lap bolted to two flats is its own mirror image about the joint: the bolts that bring the load and those that take it off are alike.
func TestBothHalvesOfALapAreAlike(t *testing.T) {
	b := kindOf(t, "lap-plate", word("fixing", "bolted"), word("faces", "one"))
	r := run(t, b, strength.Options{}, service("pull", part.Vec{X: 20000}))
	one, other := find(t, r, "bolt-tension", "bolts-lap-1"), find(t, r, "bolt-tension", "bolts-lap-1-b")
	within(t, "tension of the bolts that bring the load", other.Demand, one.Demand, 1e-9)
	if one.Demand == 0 {
		t.Error("an eccentric lap bends its bolts")
	}
}
