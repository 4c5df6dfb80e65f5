package statics

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

// Programmes that have met other loads give what a programme solved from nothing gives, at every load, way and hold.
func TestProgramme(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	met := 0
	for range 60 {
		holds := randomHolds(rng, 6+rng.IntN(6), true)
		b := body(t, holds, 1000)
		var sets [][]Way
		for range 4 {
			ways := make([]Way, len(holds))
			for i := range ways {
				if rng.IntN(3) == 0 {
					ways[i] = Way(rng.IntN(4))
				}
			}
			sets = append(sets, ways)
		}
		programmes := b.Programmes(append(sets, nil))
		for range 40 {
			w := randomLoad(rng)
			for i, p := range programmes {
				var ways []Way
				if i < len(sets) {
					ways = sets[i]
				}
				want, wantErr := b.Extremes(w, ways)
				got, err := p.Extremes(w, nil)
				var un *UnheldError
				if (err == nil) != (wantErr == nil) || err != nil && !errors.As(err, &un) {
					t.Fatalf("%v, from nothing %v", err, wantErr)
				}
				for k := range got {
					g, x := got[k], want[k]
					near := func(a, b float64) bool { return math.Abs(a-b) <= 1e-7*(w.F.Norm()+math.Abs(b)) }
					if g.LoOpen != x.LoOpen || g.HiOpen != x.HiOpen || !g.LoOpen && !near(g.Lo, x.Lo) || !g.HiOpen && !near(g.Hi, x.Hi) {
						t.Fatalf("hold %d: %+v, from nothing %+v", k, g, x)
					}
					met++
				}
			}
		}
	}
	if met < 10000 {
		t.Errorf("%d reactions met", met)
	}
}
