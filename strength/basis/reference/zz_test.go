package reference

import (
	"lugwright/strength"
	"lugwright/strength/strengthtest"
	"testing"
)

func TestZ(t *testing.T) {
	all := &strength.Basis{Card: strength.Card{Name: "x", Methods: []strength.Method{strength.Allowable}}, Limits: append(append([]strength.Evaluator{}, olderWelds.Limits...), lrfd2.Limits...)}
	strengthtest.Formulas(t, all)
	strengthtest.Limits(t, olderWelds)
	strengthtest.Limits(t, lrfd2)
}
