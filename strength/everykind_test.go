package strength_test

// Every kind on every basis under random loads: what holds whatever the bracket.

import (
	"fmt"
	"math"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/geometry/kinds"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis"
)

// Random brackets of every kind under a random load, on every basis that checks brackets: an answer or a typed refusal; no utilisation that is no
// number; nothing that passes under more of the same load and fails under less; the other hand under the mirrored load the same.
func TestEveryKindUnderRandomLoads(t *testing.T) {
	for _, kind := range kinds.All() {
		for _, b := range basis.All() {
			if b.Card.ReferenceOnly || len(b.Rules.Cut) == 0 {
				continue
			}
			t.Run(kind.Name+"/"+b.Card.Name, func(t *testing.T) {
				for seed := range uint64(40) {
					request := fabtest.Draw(kind, seed)
					request.Hand = part.LeftHand
					bracket, err := geometry.Build([]geometry.Kind{kind}, request)
					if err != nil {
						continue
					}
					request.Hand = part.RightHand
					other, err := geometry.Build([]geometry.Kind{kind}, request)
					if err != nil {
						t.Fatal(err)
					}
					hold(t, fmt.Sprint("seed ", seed), b, bracket, other, randomLoad(bracket, seed))
				}
			})
		}
	}
}

// randomLoad is a force in the directions that the bracket has paths for.
func randomLoad(b *part.Bracket, seed uint64) part.Vec {
	rate := func(c part.Component, n float64) float64 {
		for _, p := range b.Paths {
			if p.Component == c {
				return n
			}
		}
		return 0
	}
	size := func(k uint64) float64 { return float64((seed*2654435761+k*40503)%20000) + 1 }
	pick := func(plus, minus part.Component, k uint64) float64 {
		if size(k) > 10000 {
			return rate(plus, size(k+7))
		}
		return -rate(minus, size(k+7))
	}
	return part.Vec{X: pick(part.FxPlus, part.FxMinus, 1), Y: pick(part.FyPlus, part.FyMinus, 2), Z: pick(part.FzPlus, part.FzMinus, 3)}
}

func hold(t *testing.T, words string, b *strength.Basis, left, right *part.Bracket, force part.Vec) {
	t.Helper()
	mirrored := force
	mirrored.Y = -mirrored.Y
	one, err := strength.Run(b, left, []part.Case{service("load", force)}, strength.Options{})
	two, err2 := strength.Run(b, left, []part.Case{service("load", force.Scale(1.5))}, strength.Options{})
	same, err3 := strength.Run(b, right, []part.Case{service("load", mirrored)}, strength.Options{})
	tired, err4 := strength.Run(b, left, []part.Case{service("load", force), service("more", force.Scale(1.5))}, strength.Options{Spectrum: []strength.StressCycle{{From: "load", To: "more", Cycles: 1e5}}})
	for _, e := range []error{err, err2, err3, err4} {
		if e != nil {
			if part.Fields(e) == nil {
				t.Errorf("%s: %v", words, e)
			}
			return
		}
	}
	for _, k := range tired.Checks {
		if k.Fatigue && (math.IsNaN(k.Demand) || k.Demand > 1e15) {
			t.Errorf("%s: %s at %s: damage %g", words, k.Limit, k.Place, k.Demand)
		}
	}
	worst := func(r *strength.Report) (use float64, v strength.Verdict) {
		for i := range r.Checks {
			k := &r.Checks[i]
			if math.IsNaN(k.Utilisation) || k.Utilisation < 0 {
				t.Errorf("%s: %s at %s is used %g", words, k.Limit, k.Place, k.Utilisation)
			}
			if k.Verdict == strength.Fail || k.Verdict == strength.Pass {
				use = max(use, k.Utilisation)
			}
		}
		return use, r.Verdict()
	}
	u1, v1 := worst(one)
	u2, v2 := worst(two)
	u3, v3 := worst(same)
	if v1 == strength.Fail && v2 == strength.Pass || v2 == strength.Pass && u2 < u1*(1-1e-9) {
		t.Errorf("%s: %s at %g, under half as much again %s at %g", words, v1, u1, v2, u2)
	}
	if v1 != v3 || !math.IsInf(u1, 1) && math.Abs(u1-u3) > 1e-6*(1+u1) {
		t.Errorf("%s: %s at %g, the other hand %s at %g", words, v1, u1, v3, u3)
	}
}
