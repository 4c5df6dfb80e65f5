package strength_test

import (
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/aisc360"
)

// A load that enters over less than its hole is wide meets no steel there: its sweep is refused, and no section is left out without a word.
func TestSpreadInAHole(t *testing.T) {
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "tab", Name: "t", Hand: part.LeftHand})
	if err != nil {
		t.Fatal(err)
	}
	cases := []part.Case{{Name: "pull", Level: part.Service, LoadPoint: b.LoadPoints[0].ID}}
	for _, p := range b.Paths {
		if p.Component == part.FzPlus {
			cases[0].Force = part.Vec{Z: 1000}
		}
	}
	tried := 0
	for i := range b.Sweeps {
		if b.Sweeps[i].EntryMM == 0 {
			continue
		}
		tried++
		was := b.Sweeps[i].EntryMM
		b.Sweeps[i].EntryMM = 0.5
		_, err := strength.Run(aisc360.Basis(), b, cases, strength.Options{})
		if err == nil || !strings.Contains(err.Error(), "entry_mm: 0.5 mm: no steel within the load's spread") {
			t.Errorf("sweep %s: %v", b.Sweeps[i].ID, err)
		}
		b.Sweeps[i].EntryMM = was
	}
	if tried == 0 {
		t.Error("the tab has no load that enters over part of its width")
	}
}
