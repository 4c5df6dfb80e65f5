package en1993

import (
	"testing"

	"lugwright/strength/strengthtest"
)

func TestFormulas(t *testing.T) { strengthtest.Formulas(t, Basis()) }

func TestLimits(t *testing.T) { strengthtest.Limits(t, Basis()) }
