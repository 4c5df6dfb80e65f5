package en1993

import (
	"testing"

	"lugwright/strength/strengthtest"
)

// TestFormulas: lists are drawn alike, so that counts always agree; a weld group takes the worse side of a fillet, on which 0.9 f_u never governs.
func TestFormulas(t *testing.T) {
	strengthtest.Formulas(t, Basis(),
		"bolt-group-elastic: n_odd == 0: fails",
		"weld-group-elastic: n_odd == 0: fails",
		"weld-group-elastic: max(sigma_w/f_1, abs(sigma_p)/f_2): abs(sigma_p)/f_2",
	)
}

func TestLimits(t *testing.T) { strengthtest.Limits(t, Basis()) }
