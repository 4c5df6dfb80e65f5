package aisc360

import (
	"testing"

	"lugwright/strength/strengthtest"
)

// TestFormulas: lists are drawn alike, so that counts always agree; for a solid round Z/S = 16/(3 pi) = 1.70, so that the limit of 1.6 always governs.
func TestFormulas(t *testing.T) {
	strengthtest.Formulas(t, Basis(),
		"pin-bending: min(F_y*Z, 1.6*F_y*S): F_y*Z",
		"pin-combined: min(F_y*Z, 1.6*F_y*S): F_y*Z",
		"tension-rupture: n_odd == 0: fails", "fatigue-damage: n_odd == 0: fails", "fatigue-root: n_odd == 0: fails",
		"weld-group-elastic: n_odd == 0: fails",
		"weld-group-elastic: n_oddz == 0: fails",
		"weld-group-ic: n_odd == 0: fails",
		"bolt-group-elastic: n_odd == 0: fails",
		"bolt-group-ic: n_odd == 0: fails",
		"bolt-group-tension: n_odd == 0: fails",
	)
}

func TestLimits(t *testing.T) { strengthtest.Limits(t, Basis()) }
