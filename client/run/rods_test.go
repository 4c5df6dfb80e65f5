package run

import (
	"math"
	"testing"
)

// 515 N at the side of each of four rods, 140 mm long and guided at both ends, bends them by F L / 2: our own scenario's printed stresses.
func TestRodRoot(t *testing.T) {
	moment := 210 * 9.80665 / 4 * 140 / 2
	for size, want := range map[string]float64{"M8": 1360, "M10": 676, "M12": 384, "M16": 148} {
		got, ok := RodRootMPa(size, moment)
		if !ok || math.Abs(got-want) > 0.004*want {
			t.Errorf("%s: %g, want %g", size, got, want)
		}
	}
	if _, ok := RodRootMPa("M99", 1); ok {
		t.Error("M99")
	}
}
