package strength_test

import (
	"math"
	"runtime"
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

// BenchmarkClevis builds and checks one clevis under ten load cases, reports what each part costs, and how many variants a second all cores
// build and check.
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
	b.Run("variants", func(b *testing.B) { benchVariants(b, all, req, cases) })
}

// evaluated lists the sections and the shear flows that a check judges.
func evaluated(b *testing.B, bracket *part.Bracket, cases []part.Case) (cuts []strength.Cut, flows []strength.WeldFlow) {
	noted := *aisc360.Basis()
	noted.Rules.Cut, noted.Rules.WeldFlow = slices.Clone(noted.Rules.Cut), slices.Clone(noted.Rules.WeldFlow)
	cut, flow := &noted.Rules.Cut[0], &noted.Rules.WeldFlow[0]
	first, firstFlow := cut.Check, flow.Check
	cut.Check, cut.Demand = func(c *strength.Calc, f *strength.Cut) { cuts = append(cuts, *f); first(c, f) }, nil
	flow.Check, flow.Demand = func(c *strength.Calc, f *strength.WeldFlow) { flows = append(flows, *f); firstFlow(c, f) }, nil
	if _, err := strength.Run(&noted, bracket, cases, strength.Options{Method: strength.ASD}); err != nil {
		b.Fatal(err)
	}
	return cuts, flows
}

// bareArithmetic times the formulas alone.
func bareArithmetic(cuts []strength.Cut, flows []strength.WeldFlow) time.Duration {
	begin := time.Now()
	for i := range cuts {
		sink += bareCut(&cuts[i])
	}
	for i := range flows {
		sink += bareFlow(&flows[i])
	}
	return time.Since(begin)
}

// benchVariants builds and checks clevises under ten load cases on all cores, without calculation lines, as a family does. The floor is the bare
// arithmetic of the formulas of the sections and shear flows that each of them has judged, on one core; the ratio is a variant's time on one
// core over it.
func benchVariants(b *testing.B, all []geometry.Kind, req geometry.Request, cases []part.Case) {
	begin := time.Now()
	b.RunParallel(func(pb *testing.PB) {
		for pb.Next() {
			bracket, err := geometry.Build(all, req)
			if err == nil {
				_, err = strength.Run(aisc360.Basis(), bracket, cases, strength.Options{Method: strength.ASD})
			}
			if err != nil {
				b.Error(err)
			}
		}
	})
	took := time.Since(begin)
	b.StopTimer()
	bracket, err := geometry.Build(all, req)
	if err != nil {
		b.Fatal(err)
	}
	cuts, flows := evaluated(b, bracket, cases)
	floor := bareArithmetic(cuts, flows)
	for range 20 {
		floor = min(floor, bareArithmetic(cuts, flows))
	}
	b.ReportMetric(float64(b.N)/took.Seconds(), "variants/s")
	b.ReportMetric(float64(len(cuts)), "sections/variant")
	b.ReportMetric(float64(len(flows)), "flows/variant")
	b.ReportMetric(float64(floor), "arithmetic-ns/variant")
	b.ReportMetric(took.Seconds()*float64(runtime.GOMAXPROCS(0))/float64(b.N)/floor.Seconds(), "ratio")
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
	cuts, flows := evaluated(b, bracket, cases)

	var one, ten, bare time.Duration
	for b.Loop() {
		one += check(aisc360.Basis(), cases[:1])
		ten += check(aisc360.Basis(), cases)
		bare += bareArithmetic(cuts, flows)
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
