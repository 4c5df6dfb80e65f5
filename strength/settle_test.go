package strength

// The bound by which a wrench is settled, against the sum that knows every arm.

import (
	"math"
	"math/rand/v2"
	"testing"

	"lugwright/part"
)

// summed is a wrench of some forces about a point, settled by the greatest component that was added.
func summed(forces []force, at part.Vec) wrench {
	var w wrench
	for _, f := range forces {
		w.plus(f.f, f.m, f.at, at)
	}
	return w.settled()
}

func TestSettledAlike(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	odd := []float64{0, 0, 1, -1, 1e-9, 1e9, math.NaN(), math.Inf(1)}
	vec := func(odds int) part.Vec {
		one := func() float64 {
			if r.IntN(odds) == 0 {
				return odd[r.IntN(len(odd))]
			}
			return (r.Float64() - 0.5) * math.Pow(10, float64(r.IntN(8)))
		}
		return part.Vec{X: one(), Y: one(), Z: one()}
	}
	noughts := 0
	for range 200_000 {
		on := loaded{}
		for range 1 + r.IntN(4) {
			f := force{f: vec(6), m: vec(3), at: vec(4)}
			on.forces = append(on.forces, f)
			if r.IntN(2) == 0 { // and what cancels it
				back := f
				back.f, back.m = f.f.Scale(-1), f.m.Scale(-1)
				on.forces = append(on.forces, back)
			}
		}
		for _, f := range on.forces {
			on.f = on.f.Add(f.f)
			on.mostF, on.mostM = max(on.mostF, greatest(f.f)), max(on.mostM, greatest(f.m))
			on.far = max(on.far, taxi(f.at))
		}
		at := vec(4)
		got, want := on.settledAbout(on.about(at), at), summed(on.forces, at)
		for i, pair := range [][2]float64{{got.f.X, want.f.X}, {got.f.Y, want.f.Y}, {got.f.Z, want.f.Z}, {got.m.X, want.m.X}, {got.m.Y, want.m.Y}, {got.m.Z, want.m.Z}} {
			if pair[0] != pair[1] && !(math.IsNaN(pair[0]) && math.IsNaN(pair[1])) {
				t.Fatalf("component %d: %g, by every arm %g, of %+v about %v", i, pair[0], pair[1], on.forces, at)
			}
			if pair[0] == 0 {
				noughts++
			}
		}
	}
	if noughts < 1000 {
		t.Errorf("only %d components were settled to nought", noughts)
	}
}
