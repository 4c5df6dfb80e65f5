package strength_test

// More loads never help: on this rests that what fails under a few of its loads need not be checked under the others.

import (
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/geometry/kinds"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis"
)

// Every kind on every basis under four random loads, and under two of them: at each place each limit state is at least as bad under all, and the bracket passes
// under all only where it passes under the two, or where those load nothing that is checked.
func TestMoreLoadsNeverHelp(t *testing.T) {
	compared := 0
	for _, kind := range kinds.All() {
		for _, b := range basis.All() {
			if b.Card.ReferenceOnly || len(b.Rules.Cut) == 0 {
				continue
			}
			for seed := range uint64(10) {
				request := fabtest.Draw(kind, seed)
				request.Hand = part.LeftHand
				bracket, err := geometry.Build([]geometry.Kind{kind}, request)
				if err != nil {
					continue
				}
				cases := make([]part.Case, 4)
				for i := range cases {
					cases[i] = service(string(rune('a'+i)), randomLoad(bracket, seed*7+uint64(i)).Scale(0.3*float64(i+1)))
				}
				all, err := strength.Run(b, bracket, cases, strength.Options{})
				few, err2 := strength.Run(b, bracket, cases[1:3], strength.Options{})
				if err != nil || err2 != nil {
					continue
				}
				words := kind.Name + ", " + b.Card.Name + ", seed"
				most := worstOf(all)
				for at, k := range worstOf(few) {
					a, found := most[at]
					compared++
					if !found || rank[a.Verdict] < rank[k.Verdict] || a.Verdict == k.Verdict && a.Utilisation < k.Utilisation*(1-1e-12) {
						t.Errorf("%s %d: %s at %s is %s, %g under two loads, and %s, %g under all", words, seed, k.Limit, k.Place, k.Verdict, k.Utilisation, a.Verdict, a.Utilisation)
					}
				}
				if all.Verdict() == strength.Pass && few.Verdict() != strength.Pass && few.Governing() != nil {
					t.Errorf("%s %d passes under all and not under two", words, seed)
				}
			}
		}
	}
	if compared < 1000 {
		t.Errorf("%d checks compared", compared)
	}
}

var rank = map[strength.Verdict]int{strength.NotApplied: 0, strength.Pass: 1, strength.Outside: 2, strength.Fail: 3}

// spot is a limit state and a thing. Where along the thing, or how, it is worst may differ from load to load.
type spot struct{ limit, thing string }

func worstOf(r *strength.Report) map[spot]strength.Check {
	out := map[spot]strength.Check{}
	for _, k := range r.Checks {
		at := spot{k.Limit, k.Thing}
		if w, found := out[at]; !found || rank[w.Verdict] < rank[k.Verdict] || w.Verdict == k.Verdict && w.Utilisation < k.Utilisation {
			out[at] = k
		}
	}
	return out
}
