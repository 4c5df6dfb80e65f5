package statics

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

// Textbook elastic cracked section with modular ratio 1: b c^2/2 = A (d - c), T = M/(d - c/3).
func TestOneRowAgainstCrackedSection(t *testing.T) {
	const area, d, depth, width, M = 2 * 84.3, 60, 80, 120, 1.5e6
	c := (-area + math.Sqrt(area*area+2*width*area*d)) / width
	T := M / (d - c/3)
	dst := make([]float64, 2)
	st, err := TensionsOneAxis(dst, []float64{d, d}, area/2, 0, depth, width, 0, M)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "depth", st.DepthMM, c, 1e-12)
	near(t, "tension", dst[0]+dst[1], T, 1e-12)
	near(t, "contact", st.ContactN, T, 1e-12)
	near(t, "contact point", st.ContactAt, c/3, 1e-12)
	near(t, "pressure", st.PressureMPa, 2*T/(c*width), 1e-12)
	if !st.FromLow || st.Open {
		t.Errorf("M > 0 closes the low edge: %+v", st)
	}
	// Reversed, the row is 20 mm from the other edge.
	st, err = TensionsOneAxis(dst, []float64{d, d}, area/2, 0, depth, width, 0, -M)
	if err != nil {
		t.Fatal(err)
	}
	c = (-area + math.Sqrt(area*area+2*width*area*(depth-d))) / width
	near(t, "reversed tension", dst[0]+dst[1], M/(depth-d-c/3), 1e-12)
	if st.FromLow {
		t.Error("M < 0 closes the high edge")
	}
}

func TestOneAxisLimits(t *testing.T) {
	y := []float64{20, 60}
	dst := make([]float64, 2)
	run := func(N, M float64) AxisState {
		t.Helper()
		st, err := TensionsOneAxis(dst, y, 100, 0, 80, 50, N, M)
		if err != nil {
			t.Fatal(err)
		}
		return st
	}
	if st := run(1000, 40*1000); !st.Open || dst[0] != 500 || dst[1] != 500 {
		t.Errorf("pure pull through the centroid: %v %+v", dst, st)
	}
	if st := run(-1000, -40*1000); st.ContactN != 1000 || dst[0] != 0 || dst[1] != 0 || st.DepthMM != 80 {
		t.Errorf("pure push: %v %+v", dst, st)
	}
	// Bolts alone: N/n +- M/s with the edges open.
	if st := run(1000, 40*1000+40*100); !st.Open || math.Abs(dst[1]-600) > 1e-9 || math.Abs(dst[0]-400) > 1e-9 {
		t.Errorf("pull with a little moment: %v %+v", dst, st)
	}
	// Push within the middle third keeps contact all over: p = N/A (1 +- 6e/h), textbook kern.
	st := run(-1000, -1000*(40-10))
	near(t, "kern pressure", st.PressureMPa, 1000.0/4000*(1+6.0*10/80), 1e-9)
	if st := run(0, 0); !st.Open || dst[0] != 0 {
		t.Errorf("no load: %v %+v", dst, st)
	}
}

func TestTensionNoPath(t *testing.T) {
	var np *NoPathError
	dst := make([]float64, 1)
	if _, err := TensionsOneAxis(dst, []float64{0}, 100, 0, 80, 50, 0, 1e5); !errors.As(err, &np) {
		t.Errorf("bolt on the compression edge: got %v, want a NoPathError", err)
	}
	if _, err := Tensions(dst, []Vec2{{0, 0}}, 100, Patch{-20, 20, 0, 80}, 0, 1e5, 0); !errors.As(err, &np) {
		t.Errorf("bolt on the compression edge: got %v, want a NoPathError", err)
	}
}

// Two axes with moment about one only, on a symmetrical group, must be the one-axis solution.
func TestTwoAxesReduceToOne(t *testing.T) {
	pos := []Vec2{{-40, 15}, {40, 15}, {-40, 55}, {40, 55}}
	y := []float64{15, 15, 55, 55}
	one, two := make([]float64, 4), make([]float64, 4)
	for _, load := range [][2]float64{{0, 1e6}, {0, -1e6}, {9e3, 5e5}, {-9e3, 5e5}, {-5e4, 1e5}, {1e4, 3.6e5}, {1e4, 4e5}} {
		a, err := TensionsOneAxis(one, y, 84.3, 0, 75, 120, load[0], load[1])
		if err != nil {
			t.Fatal(err)
		}
		b, err := Tensions(two, pos, 84.3, Patch{-60, 60, 0, 75}, load[0], load[1], 0)
		if err != nil {
			t.Fatal(err)
		}
		for i := range one {
			if math.Abs(one[i]-two[i]) > 1e-8*(math.Abs(load[0])+math.Abs(load[1])/75) {
				t.Errorf("load %v bolt %d: %g about one axis, %g about two", load, i, one[i], two[i])
			}
		}
		if a.Open != b.Open || math.Abs(a.ContactN-b.ContactN) > 1e-6*(1+a.ContactN) {
			t.Errorf("load %v: %+v and %+v", load, a, b)
		}
	}
}

// A square group loaded about its diagonal: by symmetry the two bolts on the diagonal carry the same.
func TestTwoAxesDiagonal(t *testing.T) {
	pos := []Vec2{{-30, -30}, {30, -30}, {30, 30}, {-30, 30}}
	dst := make([]float64, 4)
	if _, err := Tensions(dst, pos, 157, Patch{-50, 50, -50, 50}, 0, 1e6, -1e6); err != nil {
		t.Fatal(err)
	}
	near(t, "side bolts", dst[1], dst[3], 1e-9)
	if !(dst[2] > dst[1] && dst[1] > 0 && dst[0] == 0) {
		t.Errorf("the bolt in the opening corner carries most: %v", dst)
	}
}

// Source: AISC Companion to the Steel Construction Manual, Vol. 1: Design Examples v16.0 (2023), Example II.C-1 (Manual Eq. 7-14).
// The rows stand so that n' = 4 and d_m = 9 in as printed.
func TestTensionCaseII(t *testing.T) {
	y := []float64{0, 0, 3, 3, 6, 6, 9, 9, 12, 12}
	for _, c := range []struct{ P, want float64 }{{106, 18}, {70.4, 11.9}} {
		T, n, dm, err := TensionCaseII(y, c.P*6.1)
		if err != nil || n != 4 || dm != 9 {
			t.Fatalf("n' = %g, d_m = %g, %v", n, dm, err)
		}
		near(t, "tension per bolt", T, c.want, 0.005)
	}
}

// Textbook T = N/n + M y/sum(y^2).
func TestTensionsAtCentroid(t *testing.T) {
	pos := grid(2, 3, 60, 40)
	dst := make([]float64, len(pos))
	l := GroupLoad{N: 6000, Mu: 80e3}.MovedTo(Vec2{-30, -40}) // acting at the centroid
	if err := TensionsAtCentroid(dst, pos, l.N, l.Mu, l.Mv); err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{500, 1000, 1500, 500, 1000, 1500} {
		near(t, "tension", dst[i], want, 1e-12)
	}
	var np *NoPathError
	row := []Vec2{{0, 0}, {60, 0}}
	if err := TensionsAtCentroid(dst[:2], row, 0, 1e3, 0); !errors.As(err, &np) {
		t.Errorf("moment across a row: got %v, want a NoPathError", err)
	}
	if err := TensionsAtCentroid(dst[:2], row, 0, 0, -60e3); err != nil || math.Abs(dst[1]-1000) > 1e-9 || dst[0] != 0 {
		t.Errorf("moment along a row: %v, %v", dst[:2], err)
	}
}

// FuzzBoltGroup checks equilibrium from the returned forces alone, and that no bolt is pushed.
func FuzzBoltGroup(f *testing.F) {
	f.Add(4, uint64(7), 80.0, 60.0, 84.3, 0.0, 1e6, 2e5)
	f.Add(1, uint64(3), 80.0, 60.0, 84.3, 5e3, -1e6, 0.0)
	f.Add(2, uint64(9), 200.0, 10.0, 157.0, -5e4, 1e3, -3e6)
	f.Add(12, uint64(1), 500.0, 300.0, 20.1, 1e3, 1e4, 1e4)
	f.Fuzz(func(t *testing.T, n int, seed uint64, wide, deep, area, N, Mu, Mv float64) {
		if n < 1 || n > 20 {
			t.Skip()
		}
		pos, y := make([]Vec2, n), make([]float64, n)
		for i := range pos {
			pos[i] = Vec2{wide * fraction(&seed), deep * fraction(&seed)}
			y[i] = pos[i].Y
		}
		dst := make([]float64, n)
		sane := wide >= 5 && wide < 1e4 && deep >= 5 && deep < 1e4 && area > 1 && area < 5e3
		st, err := Tensions(dst, pos, area, Patch{0, wide, 0, deep}, N, Mu, Mv)
		if err == nil {
			c := st.ContactN
			checkBalance(t, dst, N, Mu/deep, Mv/wide, func(i int) (a, b float64) { return pos[i].Y / deep, -pos[i].X / wide },
				-c, -c*st.ContactAt.Y/deep, c*st.ContactAt.X/wide)
		} else if sane && math.Abs(N) < 1e9 && math.Abs(Mu) < 1e12 && math.Abs(Mv) < 1e12 {
			t.Errorf("no solution for %v area %g patch %g x %g N %g Mu %g Mv %g: %v", pos, area, wide, deep, N, Mu, Mv, err)
		}
		one, err := TensionsOneAxis(dst, y, area, 0, deep, wide, N, Mu)
		if err == nil {
			c := one.ContactN
			checkBalance(t, dst, N, Mu/deep, 0, func(i int) (a, b float64) { return y[i] / deep, 0 }, -c, -c*one.ContactAt/deep, 0)
			if !(one.DepthMM >= 0 && one.DepthMM <= deep*(1+1e-12)) {
				t.Errorf("neutral axis %g outside 0..%g", one.DepthMM, deep)
			}
		} else if sane && math.Abs(N) < 1e9 && math.Abs(Mu) < 1e12 {
			t.Errorf("no solution about one axis: %v", err)
		}
	})
}

// fraction is a cheap repeatable number in 0.05..0.95.
func fraction(s *uint64) float64 {
	*s = *s*6364136223846793005 + 1442695040888963407
	return 0.05 + 0.9*float64(*s>>40)/(1<<24)
}

func checkBalance(t *testing.T, T []float64, N, m1, m2 float64, arm func(int) (a, b float64), sum, sum1, sum2 float64) {
	t.Helper()
	for i, v := range T {
		if !(v >= 0) || math.IsInf(v, 0) {
			t.Fatalf("bolt %d carries %g", i, v)
		}
		a, b := arm(i)
		sum, sum1, sum2 = sum+v, sum1+v*a, sum2+v*b
	}
	size := math.Abs(N) + math.Abs(m1) + math.Abs(m2)
	if off := math.Abs(sum-N) + math.Abs(sum1-m1) + math.Abs(sum2-m2); !(off <= 1e-6*size) {
		t.Errorf("out of balance by %g of %g", off, size)
	}
}

func BenchmarkTensions(b *testing.B) {
	pos, dst := grid(2, 3, 60, 40), make([]float64, 6)
	for b.Loop() {
		if _, err := Tensions(dst, pos, 84.3, Patch{-20, 80, -20, 100}, 1e3, 1e6, 2e5); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTensionsOneAxis(b *testing.B) {
	y, dst := []float64{20, 20, 60, 60, 100, 100}, make([]float64, 6)
	for b.Loop() {
		if _, err := TensionsOneAxis(dst, y, 84.3, 0, 120, 100, 1e3, 1e6); err != nil {
			b.Fatal(err)
		}
	}
}

// TestContactBeyond: the contact on both sides of any line makes up the whole, in force and moment; one bolt above the middle of a patch
// 100 high under a moment gives a triangle of pressure, of which the outer half of its depth holds three quarters.
func TestContactBeyond(t *testing.T) {
	d := rand.New(rand.NewPCG(3, 14))
	patch := Patch{-60, 80, -50, 50}
	pos := []Vec2{{-40, 30}, {60, 30}, {-40, -30}, {60, -30}}
	dst := make([]float64, len(pos))
	for range 500 {
		st, err := Tensions(dst, pos, 84.3, patch, 4e3*(d.Float64()-0.7), 2e6*(d.Float64()-0.5), 2e6*(d.Float64()-0.5))
		if err != nil {
			t.Fatal(err)
		}
		at := Vec2{-60 + 140*d.Float64(), -50 + 100*d.Float64()}
		s, c := math.Sincos(7 * d.Float64())
		f1, p1 := st.ContactBeyond(at, Vec2{c, s})
		f2, p2 := st.ContactBeyond(at, Vec2{-c, -s})
		near(t, "both sides", f1+f2, st.ContactN, 1e-9)
		near(t, "their moment about v", f1*p1.X+f2*p2.X+1e6, st.ContactN*st.ContactAt.X+1e6, 1e-9)
		near(t, "their moment about u", f1*p1.Y+f2*p2.Y+1e6, st.ContactN*st.ContactAt.Y+1e6, 1e-9)
	}
	one := []Vec2{{0, 30}}
	st, err := Tensions(dst[:1], one, 84.3, Patch{-50, 50, -50, 50}, 0, 1e6, 0)
	if err != nil {
		t.Fatal(err)
	}
	depth := 3 * (st.ContactAt.Y + 50)
	outer, _ := st.ContactBeyond(Vec2{0, -50 + depth/2}, Vec2{0, -1})
	near(t, "outer half of a triangle", outer, 0.75*st.ContactN, 1e-6)
}
