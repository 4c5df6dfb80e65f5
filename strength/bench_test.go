package strength_test

import (
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/aisc360"
)

func tenCases() []part.Case {
	out := make([]part.Case, 10)
	for i := range out {
		k := float64(i)
		out[i] = service("c", part.Vec{X: 1000 * (k - 5), Y: 1500 * (5 - k), Z: -2000 * k})
	}
	return out
}

// BenchmarkClevis builds and checks one clevis under ten load cases, and reports what each part costs.
func BenchmarkClevis(b *testing.B) {
	req := geometry.Request{Kind: "clevis", Name: "pair", Hand: part.LeftHand}
	all, cases := kinds.All(), tenCases()
	b.Run("build", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := geometry.Build(all, req); err != nil {
				b.Fatal(err)
			}
		}
	})
	bracket, err := geometry.Build(all, req)
	if err != nil {
		b.Fatal(err)
	}
	for _, n := range []int{1, 10} {
		b.Run(map[int]string{1: "check one case", 10: "check ten cases"}[n], func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := strength.Run(aisc360.Basis(), bracket, cases[:n], strength.Options{Method: strength.ASD}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
