package statics

import (
	"errors"
	"math"
	"math/bits"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// force is a hold at r along u with stiffness k.
func force(r, u Vec3, k float64, oneWay bool) Hold {
	return Hold{Force: u, Moment: r.Cross(u), Stiffness: k, OneWay: oneWay}
}

var ex, ey, ez = Vec3{1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}

func body(t *testing.T, holds []Hold, length float64) *RigidBody {
	t.Helper()
	b, err := NewRigidBody(holds, length)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Engineering Mechanics: Statics (textbook), example 5.13: a plate of 100 kg on a roller, a ball and a cord, with an edge force of 300 N and a couple of
// 200 N m: A 790, B -217, C 707 N. Geometry rebuilt from the moment equations printed there: 2 C + 2 B = 981, 3 (A + B) = 450 + 1471.5 - 200.
func TestPlateOnThreeSupports(t *testing.T) {
	b := body(t, []Hold{force(Vec3{3, 0, 0}, ez, 1, false), force(Vec3{3, 2, 0}, ez, 1, false), force(Vec3{0, 2, 0}, ez, 1, false)}, 2)
	load := Wrench{F: Vec3{0, 0, -300}, At: Vec3{1.5, 0, 0}}.MovedTo(Vec3{}).Add(Wrench{F: Vec3{0, 0, -981}, At: Vec3{1.5, 1, 0}})
	load.M = load.M.Sub(Vec3{0, 200, 0}) // 3 (A + B) = 1.5 * 300 + 1.5 * 981 - 200
	r, err := b.React(load)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{790, -217, 707} {
		near(t, "reaction", r.R[i], want, 0.005)
	}
	if n := len(b.Free()); b.Rank() != 3 || n != 3 || len(b.Surplus()) != 0 {
		t.Errorf("rank %d, %d free motions, %d surplus", b.Rank(), n, len(b.Surplus()))
	}
}

// A beam of ends that only push, loaded beyond one end, tips about that end: the other parts.
func TestTipping(t *testing.T) {
	b := body(t, []Hold{force(Vec3{0, 0, 0}, ez, 1, true), force(Vec3{1000, 0, 0}, ez, 1, true)}, 1000)
	_, err := b.React(Wrench{F: Vec3{0, 0, -10}, At: Vec3{1200, 0, 0}})
	var un *UnheldError
	if !errors.As(err, &un) {
		t.Fatalf("got %v, want an UnheldError", err)
	}
	if len(un.Parts) != 1 || un.Parts[0] != 0 || un.Motion.Along(b.holds[1]) < -1e-12 {
		t.Errorf("parts %v in the motion %+v", un.Parts, un.Motion)
	}
}

// Two springs of a gap: nothing acts until it is used up. Springs k1 = 2, k2 = 3 along x, the second after 10 mm: under 50 N the body moves u with
// 2 u + 3 (u - 10) = 50, u = 16, reactions -32 and -18.
func TestGap(t *testing.T) {
	far := force(Vec3{}, ex, 3, false)
	far.Gap = 10
	b := body(t, []Hold{force(Vec3{}, ex, 2, false), far}, 1)
	for _, c := range []struct{ f, first, second float64 }{{50, -32, -18}, {-50, 32, 18}, {15, -15, 0}} {
		r, err := b.React(Wrench{F: Vec3{c.f, 0, 0}})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "first", r.R[0], c.first, 1e-12)
		near(t, "second", r.R[1], c.second, 1e-12)
		near(t, "motion", r.Motion.Shift.X, -c.first/2, 1e-12)
	}
}

func TestRigidBodyRefusesBadInput(t *testing.T) {
	good := force(Vec3{1, 2, 3}, ez, 1, false)
	var in *InputError
	for _, c := range []struct {
		h      Hold
		length float64
	}{
		{good, 0}, {good, math.NaN()}, {good, math.Inf(1)}, {Hold{Stiffness: 1}, 1}, {Hold{Force: Vec3{math.NaN(), 0, 0}, Stiffness: 1}, 1},
		{Hold{Force: ez, Stiffness: 0}, 1}, {Hold{Force: ez, Stiffness: math.NaN()}, 1}, {Hold{Force: ez, Stiffness: 1, Gap: -1}, 1},
		{Hold{Force: ez, Stiffness: 1, Gap: math.NaN()}, 1}, {Hold{Force: Vec3{0, 0, 1e300}, Stiffness: 1}, 1},
	} {
		if _, err := NewRigidBody([]Hold{c.h}, c.length); !errors.As(err, &in) {
			t.Errorf("%+v: got %v, want an InputError", c, err)
		}
	}
	if _, err := NewRigidBody(nil, 1); !errors.As(err, &in) {
		t.Errorf("no holds: %v", err)
	}
	b := body(t, []Hold{good}, 1)
	for _, w := range []Wrench{{F: Vec3{math.NaN(), 0, 0}}, {M: Vec3{0, math.Inf(1), 0}}, {F: Vec3{0, 0, 1e200}}} {
		if _, err := b.React(w); !errors.As(err, &in) {
			t.Errorf("%+v: got %v", w, err)
		}
		if _, err := b.Extremes(w, nil); !errors.As(err, &in) {
			t.Errorf("%+v: got %v", w, err)
		}
	}
	if _, err := b.Extremes(Wrench{}, make([]Way, 7)); !errors.As(err, &in) {
		t.Errorf("ways of another length: %v", err)
	}
}

// randomHolds are n holds in a box of 4 x 2 x 1 m, along the axes or any way, on springs of very different stiffness.
func randomHolds(rng *rand.Rand, n int, oneWay bool) []Hold {
	axes := []Vec3{ex, ey, ez}
	holds := make([]Hold, n)
	for i := range holds {
		r := Vec3{4000 * (rng.Float64() - 0.5), 2000 * (rng.Float64() - 0.5), 1000 * (rng.Float64() - 0.5)}
		if rng.IntN(3) == 0 { // layouts with many alike
			r = Vec3{1000 * float64(rng.IntN(4)), 500 * float64(rng.IntN(3)-1), 0}
		}
		u := axes[rng.IntN(3)]
		if rng.IntN(3) == 0 {
			u = Vec3{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()}.Unit()
		}
		k := math.Pow(10, 3*rng.Float64())
		if rng.IntN(5) == 0 {
			holds[i] = Hold{Moment: u.Scale(1000), Stiffness: k / 10} // a couple, in N at 1 m
		} else {
			holds[i] = force(r, u, k, oneWay && rng.IntN(2) == 0)
		}
	}
	return holds
}

func randomLoad(rng *rand.Rand) Wrench {
	return Wrench{F: Vec3{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()}.Scale(1e4), At: Vec3{500 * rng.NormFloat64(), 200 * rng.NormFloat64(), 1000}}
}

// matrix is the holds' columns over a length of 1 m, and the load's.
func matrix(holds []Hold, w Wrench) (*mat.Dense, *mat.VecDense) {
	a := mat.NewDense(6, len(holds), nil)
	col := func(f, m Vec3) []float64 { return []float64{f.X, f.Y, f.Z, m.X / 1000, m.Y / 1000, m.Z / 1000} }
	for i, h := range holds {
		a.SetCol(i, col(h.Force, h.Moment))
	}
	w = w.MovedTo(Vec3{})
	return a, mat.NewVecDense(6, col(w.F, w.M))
}

// pinv solves in the sense of least squares with the least norm, by singular values.
func pinv(a *mat.Dense, rhs *mat.VecDense) (x []float64, rank int) {
	var svd mat.SVD
	svd.Factorize(a, mat.SVDThin)
	s := svd.Values(nil)
	for rank < len(s) && s[rank] > 1e-7*s[0] {
		rank++
	}
	var out mat.Dense
	if rank > 0 {
		svd.SolveTo(&out, rhs, rank)
		x = mat.Col(nil, 0, &out)
	} else {
		_, n := a.Dims()
		x = make([]float64, n)
	}
	return x, rank
}

// byGonum gives the reactions of two-way springs: with r = sqrt(K) s they are of the least norm of s.
func byGonum(holds []Hold, w Wrench) (r []float64, rank int, held bool) {
	a, l := matrix(holds, w)
	weighted := mat.DenseCopyOf(a)
	for j, h := range holds {
		for i := range 6 {
			weighted.Set(i, j, a.At(i, j)*math.Sqrt(h.Stiffness))
		}
	}
	var rhs mat.VecDense
	rhs.ScaleVec(-1, l)
	_, rank = pinv(a, &rhs)
	r, _ = pinv(weighted, &rhs)
	for j, h := range holds {
		r[j] *= math.Sqrt(h.Stiffness)
	}
	var left mat.VecDense
	left.MulVec(a, mat.NewVecDense(len(r), r))
	left.AddVec(&left, l)
	return r, rank, mat.Norm(&left, 2) < 1e-6*mat.Norm(l, 2)
}

func TestReactAgainstSingularValues(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	solved, mechanisms, worst := 0, 0, 0.0
	for range 4000 {
		holds, w := randomHolds(rng, 1+rng.IntN(16), false), randomLoad(rng)
		b := body(t, holds, 1000)
		want, rank, held := byGonum(holds, w)
		if b.Rank() != rank || len(b.Surplus()) != len(holds)-rank || len(b.Free()) != 6-rank {
			t.Fatalf("rank %d, gonum %d; surplus %d of %d; free %d: %+v", b.Rank(), rank, len(b.Surplus()), len(holds), len(b.Free()), holds)
		}
		for _, m := range b.Free() {
			for i, h := range holds {
				if v := m.Along(h); math.Abs(v) > 1e-5*(m.Shift.Norm()+1000*m.Turn.Norm()) {
					t.Fatalf("free motion %+v meets hold %d by %g", m, i, v)
				}
			}
		}
		got, err := b.React(w)
		if (err == nil) != held {
			t.Fatalf("held %v, got %v", held, err)
		}
		if !held {
			mechanisms++
			continue
		}
		solved++
		for i := range want {
			d := math.Abs(got.R[i]-want[i]) / w.F.Norm()
			worst = max(worst, d)
			if d > 1e-6*(1+math.Abs(want[i])/w.F.Norm()) {
				t.Fatalf("hold %d: got %g, want %g; %+v", i, got.R[i], want[i], holds)
			}
		}
		if got.Residual.F.Norm() > 1e-9*w.F.Norm() {
			t.Fatalf("residual %+v", got.Residual)
		}
	}
	t.Logf("%d solved, %d mechanisms, largest difference %.1e of the load", solved, mechanisms, worst)
}

// A self-balanced set of reactions moves nothing.
func TestSurplusBalances(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 1000 {
		holds := randomHolds(rng, 2+rng.IntN(12), false)
		for _, s := range body(t, holds, 1000).Surplus() {
			var f, m Vec3
			size := 0.0
			for i, k := range s.Balanced {
				f, m = f.Add(holds[i].Force.Scale(k)), m.Add(holds[i].Moment.Scale(k))
				size = max(size, math.Abs(k)*(holds[i].Force.Norm()+holds[i].Moment.Norm()/1000))
			}
			if f.Norm()+m.Norm()/1000 > 1e-5*size || s.Balanced[s.Hold] != 1 {
				t.Fatalf("left %v %v of %+v", f, m, s)
			}
		}
	}
}

// What contact iteration finds must be the one set of reactions that meets the conditions; all sets of acting holds are tried, by least squares.
func TestContactAgainstAllSets(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	solved, lost := 0, 0
	for range 1500 {
		holds, w := randomHolds(rng, 3+rng.IntN(6), true), randomLoad(rng)
		b := body(t, holds, 1000)
		got, err := b.React(w)
		want := contactByTrial(holds, w)
		var un *UnheldError
		if errors.As(err, &un) {
			lost++
			if want != nil {
				t.Fatalf("got %v, want %v: %+v", err, want, holds)
			}
			checkUnheld(t, holds, w, un)
			continue
		}
		if err != nil || want == nil {
			t.Fatalf("got %v (%v), want %v: %+v, %+v", got, err, want, holds, w)
		}
		solved++
		for i := range want {
			if math.Abs(got.R[i]-want[i]) > 1e-5*(w.F.Norm()+math.Abs(want[i])) {
				t.Fatalf("hold %d: got %v, want %v", i, got.R, want)
			}
		}
	}
	if solved < 100 || lost < 100 {
		t.Errorf("%d solved, %d lost: the sample is lopsided", solved, lost)
	}
}

// checkUnheld: the load does work on the motion and no hold meets it.
func checkUnheld(t *testing.T, holds []Hold, w Wrench, un *UnheldError) {
	t.Helper()
	w = w.MovedTo(Vec3{})
	size := un.Motion.Shift.Norm() + 1000*un.Motion.Turn.Norm()
	if w.F.Dot(un.Motion.Shift)+w.M.Dot(un.Motion.Turn) <= 0 {
		t.Fatalf("the load does no work on %+v", un.Motion)
	}
	for i, h := range holds {
		if v := un.Motion.Along(h) / size; v < -1e-6 || !h.OneWay && v > 1e-6 {
			t.Fatalf("hold %d meets %+v by %g", i, un.Motion, v)
		}
	}
}

// contactByTrial tries every set of one-way holds to act and keeps the reactions of the least energy among those that push: the least of a strictly
// convex energy over r >= 0 is the least over its own set of acting holds.
func contactByTrial(holds []Hold, w Wrench) (best []float64) {
	least := math.Inf(1)
	for set := range 1 << len(holds) {
		var acting []Hold
		var index []int
		skip := false
		for i, h := range holds {
			in := set>>i&1 == 1
			skip = skip || !h.OneWay && !in
			if in {
				acting, index = append(acting, h), append(index, i)
			}
		}
		if skip || len(acting) == 0 {
			continue
		}
		some, _, held := byGonum(acting, w)
		if !held {
			continue
		}
		r, energy, pushes := make([]float64, len(holds)), 0.0, true
		for k, i := range index {
			r[i] = some[k]
			energy += some[k] * some[k] / holds[i].Stiffness
			pushes = pushes && (!holds[i].OneWay || some[k] > -1e-7*w.F.Norm())
		}
		if pushes && energy < least {
			best, least = r, energy
		}
	}
	return best
}

// The extremes against every vertex: each basis of as many columns as the rank, solved by gonum, kept where it pushes. Open ends show as a
// self-balanced push that grows without bound: a vertex of the programme with that hold at 1 and no load.
func TestExtremesAgainstVertices(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	solved, open := 0, 0
	for n := range 360 {
		holds, w := randomHolds(rng, 3+rng.IntN(5), true), randomLoad(rng)
		if n%40 > 0 { // in a plane three columns do, so that more holds are too many
			for i, h := range holds {
				h.Force.Y, h.Moment.X, h.Moment.Z = 0, 0, 0
				if h.Force.Norm()+h.Moment.Norm() < 1e-3 {
					h.Force = ez
				}
				holds[i] = h
			}
			w = w.MovedTo(Vec3{})
			w.F.Y, w.M.X, w.M.Z = 0, 0, 0
		}
		if rng.IntN(4) > 0 { // one that the holds can balance
			w = Wrench{}
			for _, h := range holds {
				k := -1e4 * rng.Float64()
				w.F, w.M = w.F.Add(h.Force.Scale(k)), w.M.Add(h.Moment.Scale(k))
			}
		}
		ways := make([]Way, len(holds))
		for i := range ways {
			if rng.IntN(3) == 0 {
				ways[i] = Way(rng.IntN(4))
			}
		}
		got, err := body(t, holds, 1000).Extremes(w, ways)
		cols, hold, sign := split(holds, ways)
		lo, hi := make([]float64, len(holds)), make([]float64, len(holds))
		for i := range lo {
			lo[i], hi[i] = math.Inf(1), math.Inf(-1)
		}
		any := false
		most := 6
		if n%40 > 0 {
			most = 3
		}
		vertices(cols, most, w, func(index []int, x []float64) {
			any = true
			r := make([]float64, len(holds))
			for k, j := range index {
				r[hold[j]] += sign[j] * x[k]
			}
			for i := range r {
				lo[i], hi[i] = min(lo[i], r[i]), max(hi[i], r[i])
			}
		})
		if (err == nil) != any {
			t.Fatalf("got %v, vertices %v: %+v %v", err, any, holds, ways)
		}
		if !any {
			continue
		}
		solved++
		for i, e := range got {
			loOpen, hiOpen := grows(cols, most, hold, sign, i, -1), grows(cols, most, hold, sign, i, 1)
			if e.LoOpen != loOpen || e.HiOpen != hiOpen {
				t.Fatalf("hold %d: open %v %v, want %v %v: %+v %v", i, e.LoOpen, e.HiOpen, loOpen, hiOpen, holds, ways)
			}
			if loOpen || hiOpen {
				open++
			}
			tol := 1e-5 * (size(w) + max(math.Abs(lo[i]), math.Abs(hi[i])))
			if !loOpen && math.Abs(e.Lo-lo[i]) > tol || !hiOpen && math.Abs(e.Hi-hi[i]) > tol {
				t.Fatalf("hold %d: got %+v, want %g to %g: %+v %v", i, e, lo[i], hi[i], holds, ways)
			}
		}
	}
	if solved < 100 || open < 100 {
		t.Errorf("%d solved, %d open ends: the sample is lopsided", solved, open)
	}
}

// size is a load's in N, moments over 1 m.
func size(w Wrench) float64 {
	w = w.MovedTo(Vec3{})
	return w.F.Norm() + w.M.Norm()/1000
}

// split gives the programme's columns: a hold that may pull has a second one.
func split(holds []Hold, ways []Way) (cols []Hold, hold []int, sign []float64) {
	for i, h := range holds {
		if ways[i] == AnyWay || ways[i] == PushOnly {
			cols, hold, sign = append(cols, h), append(hold, i), append(sign, 1)
		}
		if (ways[i] == AnyWay || ways[i] == PullOnly) && !h.OneWay {
			cols, hold, sign = append(cols, Hold{Force: h.Force.Scale(-1), Moment: h.Moment.Scale(-1), Stiffness: 1}), append(hold, i), append(sign, -1)
		}
	}
	return cols, hold, sign
}

// vertices visits every basic solution: sets of independent columns that balance the load by pushing.
func vertices(cols []Hold, most int, w Wrench, visit func(index []int, x []float64)) {
	for set := range 1 << len(cols) {
		if bits.OnesCount(uint(set)) > most {
			continue
		}
		var some []Hold
		var index []int
		for j := range cols {
			if set>>j&1 == 1 {
				some, index = append(some, cols[j]), append(index, j)
			}
		}
		if len(some) == 0 {
			continue
		}
		plain := make([]Hold, len(some))
		for k, h := range some {
			plain[k] = Hold{Force: h.Force, Moment: h.Moment, Stiffness: 1}
		}
		x, rank, held := byGonum(plain, w)
		if !held || rank < len(some) {
			continue
		}
		pushes := true
		for _, v := range x {
			pushes = pushes && v > -1e-7*size(w)
		}
		if pushes {
			visit(index, x)
		}
	}
}

// grows says whether a self-balanced push exists with a hold's reaction at the sign given: its column, reversed, is balanced by the others.
func grows(cols []Hold, most int, hold []int, sign []float64, i int, s float64) bool {
	for j := range cols {
		if hold[j] != i || sign[j] != s {
			continue
		}
		var others []Hold
		for k := range cols {
			if hold[k] != i {
				others = append(others, cols[k])
			}
		}
		found := false
		vertices(others, most, Wrench{F: cols[j].Force, M: cols[j].Moment}, func([]int, []float64) { found = true })
		if found {
			return true
		}
	}
	return false
}

// Turning and shifting the whole, or scaling the load, does the same to the reactions; what acts stays.
func TestReactionsTurnWithTheBody(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 10))
	for range 500 {
		holds, w := randomHolds(rng, 4+rng.IntN(10), true), randomLoad(rng)
		a, errA := body(t, holds, 1000).React(w)
		turn := randomTurn(rng)
		by := Vec3{300 * rng.NormFloat64(), 300 * rng.NormFloat64(), 300 * rng.NormFloat64()}
		moved := make([]Hold, len(holds))
		for i, h := range holds {
			h.Force, h.Moment = turn(h.Force), turn(h.Moment)
			h.Moment = h.Moment.Add(by.Cross(h.Force))
			moved[i] = h
		}
		w2 := Wrench{F: turn(w.F), M: turn(w.M), At: turn(w.At).Add(by)}
		w2.F, w2.M = w2.F.Scale(3), w2.M.Scale(3)
		c, errC := body(t, moved, 1000).React(w2)
		if (errA == nil) != (errC == nil) {
			t.Fatalf("%v and %v", errA, errC)
		}
		if errA != nil {
			continue
		}
		for i := range a.R {
			if math.Abs(c.R[i]-3*a.R[i]) > 1e-5*(w.F.Norm()+math.Abs(a.R[i])) {
				t.Fatalf("hold %d: %g and 3 x %g", i, c.R[i], a.R[i])
			}
		}
	}
}

func randomTurn(rng *rand.Rand) func(Vec3) Vec3 {
	x := Vec3{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()}.Unit()
	y := x.Cross(Vec3{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()}).Unit()
	z := x.Cross(y)
	return func(v Vec3) Vec3 { return x.Scale(v.X).Add(y.Scale(v.Y)).Add(z.Scale(v.Z)) }
}

// A small change of the load changes the reactions as Following says, as long as the same holds act.
func TestFollowing(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	tried := 0
	for range 500 {
		holds, w := randomHolds(rng, 5+rng.IntN(8), true), randomLoad(rng)
		b := body(t, holds, 1000)
		a, err := b.React(w)
		if err != nil {
			continue
		}
		more := randomLoad(rng)
		more.F = more.F.Scale(1e-4)
		sum := w.MovedTo(Vec3{}).Add(more.MovedTo(Vec3{}))
		c, err := b.React(sum)
		if err != nil {
			continue
		}
		same := true
		for i := range a.Acting {
			same = same && a.Acting[i] == c.Acting[i]
		}
		d, err := b.Following(a.Acting).Change(more)
		if !same || err != nil {
			continue
		}
		tried++
		for i := range d {
			if math.Abs(a.R[i]+d[i]-c.R[i]) > 1e-6*w.F.Norm() {
				t.Fatalf("hold %d: %g + %g, got %g", i, a.R[i], d[i], c.R[i])
			}
		}
	}
	if tried < 100 {
		t.Errorf("%d tried", tried)
	}
}
