package strength_test

import (
	"math"
	"slices"
	"testing"
	"time"

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

// BenchmarkFurtherCase is what one more load case costs in a full check of a clevis, over the bare arithmetic of the formulas that it evaluates:
// those of sections and of shear flow in welds, 19 of 20 evaluations, written out below without names, units or verdicts.
func BenchmarkFurtherCase(b *testing.B) {
	bracket, err := geometry.Build(kinds.All(), geometry.Request{Kind: "clevis", Name: "pair", Hand: part.LeftHand})
	if err != nil {
		b.Fatal(err)
	}
	check := func(basis *strength.Basis, cases []part.Case) time.Duration {
		begin := time.Now()
		if _, err := strength.Run(basis, bracket, cases, strength.Options{Method: strength.ASD}); err != nil {
			b.Fatal(err)
		}
		return time.Since(begin)
	}
	cases := tenCases()
	noted := *aisc360.Basis()
	var cuts []strength.Cut
	var flows []strength.WeldFlow
	noted.Rules.Cut = slices.Clone(noted.Rules.Cut)
	first := noted.Rules.Cut[0].Check
	noted.Rules.Cut[0].Check = func(c *strength.Calc, f *strength.Cut) { cuts = append(cuts, *f); first(c, f) }
	noted.Rules.WeldFlow = slices.Clone(noted.Rules.WeldFlow)
	firstFlow := noted.Rules.WeldFlow[0].Check
	noted.Rules.WeldFlow[0].Check = func(c *strength.Calc, f *strength.WeldFlow) { flows = append(flows, *f); firstFlow(c, f) }
	check(&noted, cases)

	var one, ten, bare time.Duration
	for b.Loop() {
		one += check(aisc360.Basis(), cases[:1])
		ten += check(aisc360.Basis(), cases)
		begin := time.Now()
		for i := range cuts {
			sink += bareCut(&cuts[i])
		}
		for i := range flows {
			sink += bareFlow(&flows[i])
		}
		bare += time.Since(begin)
	}
	n := float64(b.N)
	b.ReportMetric(float64(ten-one)/9/n, "ns/case")
	b.ReportMetric(float64(bare)/10/n, "arithmetic-ns/case")
	b.ReportMetric(float64(ten-one)/9/(float64(bare)/10), "ratio")
}

var sink float64

// bareCut is the arithmetic of the five rules of a section: each works out anew what it needs, as they do.
func bareCut(f *strength.Cut) float64 {
	const E = 199948.0
	weak := func() float64 {
		if f.Za > 0 {
			return min(f.Fy*f.Za, 1.5*f.Fy*f.Sa) / 1.67
		}
		return f.Fy * f.Sa / 1.67
	}
	edge := func() float64 {
		if f.Zb == 0 {
			return f.Fy * f.Sb / 1.67
		}
		mp, lam := min(f.Fy*f.Zb, 1.5*f.Fy*f.Sb), f.FreeLength*f.Depth/(f.TMax*f.TMax)
		switch {
		case lam <= 0.08*E/f.Fy:
			return mp / 1.67
		case lam <= 1.9*E/f.Fy:
			return min((1.52-0.274*lam*f.Fy/E)*f.Fy*f.Sb, mp) / 1.67
		}
		return min(1.9*E/lam*f.Sb, mp) / 1.67
	}
	axial := func() float64 {
		slender := 2.1 * f.FreeLength / f.R
		if f.N >= 0 || slender <= 25 {
			return f.Fy * f.Area / 1.67
		}
		fe := math.Pi * math.Pi * E / (slender * slender)
		if slender <= 4.71*math.Sqrt(E/f.Fy) {
			return math.Pow(0.658, f.Fy/fe) * f.Fy * f.Area / 1.67
		}
		return 0.877 * fe * f.Area / 1.67
	}
	shear := func() float64 {
		va, vb := f.Va/f.AreaVa, f.Vb/f.AreaVb
		return (math.Sqrt(va*va+vb*vb) + f.T*f.TMax/f.J) / (0.6 * f.Fy / 1.5)
	}
	u := f.Ma/weak() + f.Mb/edge() + math.Abs(f.N)/axial() + shear()
	return u + f.Ma/weak() + f.Mb/edge() + math.Pow(math.Abs(f.N)/axial(), 2) + math.Pow(shear(), 4)
}

func bareFlow(f *strength.WeldFlow) float64 {
	weld := 0.6 * f.FEXX * 0.707 * f.Leg * f.Lines / 2
	return f.Q / min(weld, 0.6*min(f.Fu, f.Fu2)*f.T/2)
}
