package vehicle

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"

	"lugwright/part"
)

func under(accels ...part.Vec) []Case {
	var out []Case
	for i, a := range accels {
		out = append(out, Case{ID: "case " + string(rune('1'+i)), AccelG: a, Level: part.Service, Source: "test"})
	}
	return out
}

func solved(t *testing.T, v *Vehicle, b *Body, cases []Case) Result {
	t.Helper()
	r, err := Solve(v, b, []State{v.Empty()}, cases)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Hand statics: W = 10 kN, centre at x 800 from the pair and 1000 above the mounts, pair half width 500, single 2000 behind it, 0.5 g sideways. The single
// takes 10 * 800/2000 = 4 kN; of the 6 kN each of the pair has 3; the moment of 5 kN at 1 m turns the body between the pair alone, since a mount on the
// centreline takes none: 5/1 = 5 kN up and down: 8 and -2. The right one (thrown to the left, y plus) lifts.
func TestThreePointSideways(t *testing.T) {
	v := lorry(item("body", 10000/G, 800, 0, 2000))
	b := &Body{Mounts: append([]Mount{SinglePivot("single", part.Vec{X: 2000, Z: 1000})}, ClevisPair("left", "right", part.Vec{Z: 1000}, 500)...)}
	c := solved(t, v, b, under(part.Vec{Y: 0.5, Z: -1})).Cases[0]
	near(t, "single", c.Reactions[0].Force.Z, 4000, 1e-6)
	near(t, "left", c.Reactions[1].Force.Z, 8000, 1e-6)
	near(t, "right", c.Reactions[2].Force.Z, -2000, 1e-6)
	if !c.Reactions[2].HoldsDown || c.Reactions[1].HoldsDown {
		t.Errorf("%+v", c.Reactions)
	}
	// The pair takes 5 * (2000 - 800)/2000 = 3 kN of the side load, 0 to 100 % at each, the single 2.
	for i, want := range [][2]float64{{-2000, -2000}, {-3000, 0}, {-3000, 0}} {
		y := component(t, c.Reactions[i], "y")
		near(t, "least side", y.Low, want[0], 60) // by stiffness the pair's fore-aft couple takes a little of the yaw
		near(t, "most side", y.High, want[1], 60)
	}
}

// The same body on mounts that only bear: at 0.5 g it tips over the left one, and says so; at 0.25 g it stands. On a wedge of y 250, z 1000 it would
// tip at 6/10 * 500/1000 = 0.3 g.
func TestBearersAlone(t *testing.T) {
	v := lorry(item("body", 10000/G, 800, 0, 2000))
	b := &Body{Mounts: append([]Mount{SinglePivot("single", part.Vec{X: 2000, Z: 1000})}, ClevisPair("left", "right", part.Vec{Z: 1000}, 500)...)}
	for i := range b.Mounts {
		b.Mounts[i].Z.Way = PlusOnly
	}
	r := solved(t, v, b, under(part.Vec{Y: 0.5, Z: -1}, part.Vec{Y: 0.29, Z: -1}))
	c := r.Cases[0]
	if c.Held || !slices.Equal(c.Parts, []string{"right"}) || c.Unheld != "nothing holds the body against turning about the line through single and left: it lifts off right" {
		t.Errorf("%v %v %q", c.Held, c.Parts, c.Unheld)
	}
	if !r.Cases[1].Held {
		t.Errorf("0.29 g: %q", r.Cases[1].Unheld)
	}
	if len(r.Loads[0].Missing) != 1 || !strings.Contains(r.Loads[0].Missing[0], "lifts off right") {
		t.Errorf("%+v", r.Loads[0].Missing)
	}
}

// A centre of gravity outside the mounts is a result: the mount at the far end holds the body down, or lifts off where it only bears.
func TestCentreOutsideTheMounts(t *testing.T) {
	v := lorry(item("body", 1000, 5000, 0, 1500))
	b := &Body{Mounts: []Mount{Rigid("front", part.Vec{X: 1000, Z: 1000}), Rigid("left", part.Vec{X: 4000, Y: 400, Z: 1000}), Rigid("right", part.Vec{X: 4000, Y: -400, Z: 1000})}}
	c := solved(t, v, b, under(part.Vec{Z: -1})).Cases[0]
	near(t, "front", c.Reactions[0].Force.Z, -1000*G/3, 1e-6)
	if !c.Held || !c.Reactions[0].HoldsDown {
		t.Errorf("%+v", c)
	}
	b.Mounts[0].Z.Way = PlusOnly
	c = solved(t, v, b, under(part.Vec{Z: -1})).Cases[0]
	if c.Held || !slices.Equal(c.Parts, []string{"front"}) || !strings.Contains(c.Unheld, "the line along y through left and right") {
		t.Errorf("%+v", c)
	}
}

// Four bearers under a body whose centre lies over the diagonal's corner region: the stiffness solution lifts one off, and equilibrium alone bounds the
// others. Corners at (+-1, +-1) m, centre at (0.5, 0.25): a plane through four equal springs gives W/4 (1 +- 0.5 +- 0.25): all bear. At (0.6, 0.6) the
// far corner would have 1/4 (1 - 1.2) < 0: it lifts off, and the three others take W (x and y moments): near corner 0.6, two sides 0.2 each.
func TestFourBearers(t *testing.T) {
	b := &Body{}
	for i, at := range [][2]float64{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
		m := Rigid([]string{"a", "b", "c", "d"}[i], part.Vec{X: 3000 + 1000*at[0], Y: 1000 * at[1], Z: 1000})
		m.Z.Way = PlusOnly
		b.Mounts = append(b.Mounts, m)
	}
	for _, k := range []struct {
		x, y         float64
		want         [4]float64
		least, most4 float64 // of a, times W
	}{
		// a - b - c + d is free: a = (1 + x + y)/4 + s, d = (1 - x - y)/4 + s, b and c less s; all positive.
		{0.5, 0.25, [4]float64{0.4375, 0.3125, 0.1875, 0.0625}, 0.4375 - 0.0625, 0.4375 + 0.1875},
		{0.6, 0.6, [4]float64{0.6, 0.2, 0.2, 0}, 0.6, 0.8},
	} {
		v := lorry(item("body", 1000/G, 3000+1000*k.x, 1000*k.y, 1000))
		c := solved(t, v, b, under(part.Vec{Z: -1})).Cases[0]
		for i, want := range k.want {
			near(t, b.Mounts[i].Name, c.Reactions[i].Force.Z, 1000*want, 1e-6)
		}
		z := component(t, c.Reactions[0], "z")
		near(t, "least of a", z.Low, 1000*k.least, 1e-6)
		near(t, "most of a", z.High, 1000*k.most4, 1e-6)
		if c.Reactions[3].LiftedOff != (k.want[3] == 0) {
			t.Errorf("lifted off: %v", c.Reactions[3].LiftedOff)
		}
	}
}

func TestSchemeWords(t *testing.T) {
	s := scenarios(t)["S1"]
	v := s.vehicle()
	joined := func(b *Body) string {
		return strings.Join(solved(t, v, b, under(part.Vec{Z: -1})).Scheme.Words, "\n")
	}
	line := func(n int) *Body {
		b := &Body{}
		for i := range n {
			b.Mounts = append(b.Mounts, Rigid(string(rune('a'+i)), part.Vec{X: 1000 + 1000*float64(i), Z: 1000}))
		}
		return b
	}
	for _, c := range []struct {
		name string
		b    *Body
		want []string
	}{
		{"three-point", s.body(), []string{"left and right both hold y", "left and right each take 0 to 100 % of the fore-aft load", "left and right each take 0 to 100 % of the side load", "statically indeterminate"}},
		{"in line", line(3), []string{"nothing holds the body against turning about the line along x through a, b and c"}},
		{"one", line(1), []string{"turning about the line along x at y 0, z 1000 mm", "turning about the line along y at x 1000, z 1000 mm", "turning about the line along z at x 1000, y 0 mm"}},
		{"stated", s.printed(), []string{"statically determinate"}},
		{"diamond", &Body{Mounts: FourPointDiamond(part.Vec{X: 1000, Z: 1000}, part.Vec{X: 4000, Z: 1000}, part.Vec{X: 2500, Z: 1000}, 450)},
			[]string{"front, rear, middle left and middle right all hold z, 1 more than equilibrium needs"}},
		{"long rail", &Body{Mounts: SpringLoadedLongRail([]float64{1200, 2000, 2800, 3600, 4400}, 430, 1000, 200)}, []string{"7 more than equilibrium needs", "too many ways of slack"}},
	} {
		got := joined(c.b)
		for _, w := range c.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s: %q is not in\n%s", c.name, w, got)
			}
		}
	}
	// Nobody holds fore and aft.
	b := s.body()
	for i := range b.Mounts {
		b.Mounts[i].X = Restraint{}
	}
	r := solved(t, v, b, under(part.Vec{Z: -1}, part.Vec{X: -0.8, Z: -1}))
	if r.Scheme.Free[0].Words != "sliding along x" || !r.Cases[0].Held || r.Cases[1].Held || !strings.Contains(r.Cases[1].Unheld, "sliding along x") {
		t.Errorf("%+v %+v", r.Scheme.Free, r.Cases[1].Unheld)
	}
}

// A spring hold-down at the front of a long body on a rigid pair and a bearer: thrown up by 1 g net the front mount pulls down through its spring.
func TestSpringHoldDown(t *testing.T) {
	v := lorry(item("body", 1000, 2000, 0, 1000))
	b := &Body{Mounts: SpringLoadedLongRail([]float64{1000, 3000}, 400, 1000, 200)}
	r := solved(t, v, b, under(part.Vec{Z: -1}, part.Vec{Z: 1}))
	for i, sign := range []float64{1, -1} {
		for _, m := range r.Cases[i].Reactions {
			near(t, m.Mount, m.Force.Z, sign*1000*G/4, 1e-6)
		}
	}
}

// Couples that equilibrium does not need are not counted on in the loads; they are in the stiffness solution.
func TestHeldTurning(t *testing.T) {
	v := lorry(item("body", 1000, 2000, 100, 1800))
	b := scenarios(t)["S1"].body()
	for i := range b.Mounts {
		b.Mounts[i].RX.Held = true
	}
	r := solved(t, v, b, under(part.Vec{Y: 0.5, Z: -1}))
	c := r.Cases[0]
	if rx := component(t, c.Reactions[0], "rx"); rx.Value == 0 || rx.Low > 0 || rx.High < 0 {
		t.Errorf("%+v", rx)
	}
	free := solved(t, v, scenarios(t)["S1"].body(), under(part.Vec{Y: 0.5, Z: -1})).Cases[0]
	with, without := component(t, c.Reactions[1], "z"), component(t, free.Reactions[1], "z")
	if with.Low > without.Low+1e-6 || with.High < without.High-1e-6 {
		t.Errorf("%+v does not hold %+v", with, without)
	}
	slack := false
	for _, l := range r.Loads[1].Loads {
		slack = slack || strings.Contains(l.Share, "couples slack")
	}
	if !slack {
		t.Errorf("%+v", r.Loads[1].Loads)
	}
	// One mount that holds everything needs its couples.
	one := &Body{Mounts: []Mount{Rigid("post", part.Vec{X: 2000, Z: 1000})}}
	one.Mounts[0].RX.Held, one.Mounts[0].RY.Held, one.Mounts[0].RZ.Held = true, true, true
	p := solved(t, v, one, under(part.Vec{Y: 0.5, Z: -1}))
	near(t, "Mx", p.Cases[0].Reactions[0].Moment.X, 1000*G*(0.5*800+100), 1e-3) // balances -0.5 W at 800 above and W at 100 left
	if !p.Scheme.Determinate {
		t.Errorf("%+v", p.Scheme)
	}
}

// randomBody has mounts that hold random directions, both ways.
func randomBody(rng *rand.Rand, n int) *Body {
	b := &Body{}
	ways := []Way{Both, Free}
	for i := range n {
		m := Mount{Name: string(rune('a' + i)), At: part.Vec{X: 1000 + 100*float64(rng.IntN(40)), Y: 100 * float64(rng.IntN(11)-5), Z: 900 + 50*float64(rng.IntN(5))}}
		for _, r := range []*Restraint{&m.X, &m.Y, &m.Z} {
			r.Way = ways[rng.IntN(2)]
			if rng.IntN(3) == 0 {
				r.StiffnessNPerMM = math.Pow(10, 2+3*rng.Float64())
			}
		}
		m.Z.Way = Both
		m.RZ.Held = rng.IntN(8) == 0
		b.Mounts = append(b.Mounts, m)
	}
	return b
}

func randomVehicle(rng *rand.Rand) *Vehicle {
	v := lorry()
	for i := range 1 + rng.IntN(6) {
		v.Items = append(v.Items, item(string(rune('A'+i)), 10+500*rng.Float64(), 500+4000*rng.Float64(), 1000*(rng.Float64()-0.5), 1000+1000*rng.Float64()))
	}
	return v
}

func randomAccel(rng *rand.Rand) part.Vec {
	return part.Vec{X: float64(rng.IntN(5)-2) / 2, Y: float64(rng.IntN(5)-2) / 2, Z: float64(rng.IntN(4) - 3)}
}

// byGonum solves the mounts for a load at a point by singular values: least norm of reaction over the root of stiffness. Nil: not held.
func byGonum(b *Body, f, at part.Vec) (out [][6]float64, rank int) {
	var cols [][6]float64
	var who [][2]int
	var k []float64
	for i, m := range b.Mounts {
		for dir := range 6 {
			var c part.Vec
			var moment part.Vec
			stiff := 1e4
			if dir < 3 {
				r := [3]Restraint{m.X, m.Y, m.Z}[dir]
				if r.Way != Both {
					continue
				}
				if r.StiffnessNPerMM > 0 {
					stiff = r.StiffnessNPerMM
				}
				c = [3]part.Vec{{X: 1}, {Y: 1}, {Z: 1}}[dir]
				moment = m.At.Sub(at).Cross(c)
			} else {
				if ![3]Turn{m.RX, m.RY, m.RZ}[dir-3].Held {
					continue
				}
				stiff = 1e8
				moment = [3]part.Vec{{X: 1}, {Y: 1}, {Z: 1}}[dir-3]
			}
			s := math.Sqrt(stiff)
			cols = append(cols, [6]float64{c.X * s, c.Y * s, c.Z * s, moment.X * s / 1000, moment.Y * s / 1000, moment.Z * s / 1000})
			who, k = append(who, [2]int{i, dir}), append(k, s)
		}
	}
	a := mat.NewDense(6, len(cols), nil)
	for j := range cols {
		a.SetCol(j, cols[j][:])
	}
	var svd mat.SVD
	svd.Factorize(a, mat.SVDThin)
	s := svd.Values(nil)
	for rank < len(s) && s[rank] > 1e-9*s[0] {
		rank++
	}
	rhs := mat.NewVecDense(6, []float64{-f.X, -f.Y, -f.Z, 0, 0, 0})
	var x mat.Dense
	svd.SolveTo(&x, rhs, rank)
	var left mat.Dense
	left.Mul(a, &x)
	left.Sub(&left, rhs)
	if mat.Norm(&left, 2) > 1e-6*f.Norm() {
		return nil, rank
	}
	out = make([][6]float64, len(b.Mounts))
	for j, w := range who {
		out[w[0]][w[1]] = x.At(j, 0) * k[j]
	}
	return out, rank
}

func TestSolveAgainstSingularValues(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	held, lost, worst := 0, 0, 0.0
	for range 2000 {
		v, b, a := randomVehicle(rng), randomBody(rng, 1+rng.IntN(6)), randomAccel(rng)
		if a == (part.Vec{}) {
			continue
		}
		c := solved(t, v, b, under(a)).Cases[0]
		body := rollUp(t, v, v.Empty()).Bodies[0].Mass
		f := a.Scale(body.KG.Value * G)
		want, _ := byGonum(b, f, body.CG())
		if c.Held != (want != nil) {
			t.Fatalf("held %v (%s), gonum %v: %+v", c.Held, c.Unheld, want, b)
		}
		if !c.Held {
			lost++
			continue
		}
		held++
		for i, m := range c.Reactions {
			got := [6]float64{m.Force.X, m.Force.Y, m.Force.Z, m.Moment.X, m.Moment.Y, m.Moment.Z}
			for k := range got {
				scale := 1.0
				if k > 2 {
					scale = 1000
				}
				d := math.Abs(got[k]-want[i][k]) / scale / f.Norm()
				worst = max(worst, d)
				if d > 1e-7*(1+math.Abs(want[i][k])/scale/f.Norm()) {
					t.Fatalf("mount %d, %d: got %g, want %g: %+v", i, k, got[k], want[i][k], b)
				}
			}
			for _, x := range m.Components {
				if x.Value < x.Low || x.Value > x.High {
					t.Fatalf("%s: %+v", m.Mount, x)
				}
			}
		}
	}
	t.Logf("%d held, %d not, largest difference %.1e of the weight", held, lost, worst)
	if held < 800 || lost < 300 {
		t.Errorf("%d held, %d not: the sample is lopsided", held, lost)
	}
}

// Where all choices of sharing and slack could be made, the linear programme's range is the hull of their solutions and the one by stiffness: each
// choice is a vertex of it. Two-way mounts, so that no choice is lost.
func TestRangesAreTheHullOfChoices(t *testing.T) {
	rng := rand.New(rand.NewPCG(23, 24))
	tried, shared := 0, 0
	for range 700 {
		v, b, a := randomVehicle(rng), randomBody(rng, 2+rng.IntN(4)), randomAccel(rng)
		for i := range b.Mounts {
			b.Mounts[i].RZ.Held = false
		}
		if rng.IntN(2) == 0 {
			b = scenarios(t)["S1"].body()
		}
		if a == (part.Vec{}) {
			continue
		}
		r := solved(t, v, b, under(a))
		c := r.Cases[0]
		if !c.Held || !r.Scheme.SlackTried || r.Scheme.Surplus == 0 || len(c.Notes) > 0 || r.Scheme.OneAtATime {
			continue
		}
		tried++
		if len(r.Scheme.Sharing) > 0 {
			shared++
		}
		size := c.BodyKG * G * a.Norm()
		for i, m := range c.Reactions {
			lo, hi := part.Vec{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}, part.Vec{X: math.Inf(-1), Y: math.Inf(-1), Z: math.Inf(-1)}
			for _, l := range r.Loads[i].Loads {
				f := l.Force.Scale(-1)
				lo = part.Vec{X: min(lo.X, f.X), Y: min(lo.Y, f.Y), Z: min(lo.Z, f.Z)}
				hi = part.Vec{X: max(hi.X, f.X), Y: max(hi.Y, f.Y), Z: max(hi.Z, f.Z)}
			}
			for _, x := range m.Components {
				k := slices.Index(directions[:], x.Direction)
				low, high := [3]float64{lo.X, lo.Y, lo.Z}[k], [3]float64{hi.X, hi.Y, hi.Z}[k]
				if x.LowOpen || x.HighOpen || math.Abs(x.Low-low) > 1e-4*(size+math.Abs(low)) || math.Abs(x.High-high) > 1e-4*(size+math.Abs(high)) {
					t.Fatalf("%s %+v, choices give %g to %g\n%+v\n%+v", m.Mount, x, low, high, b, r.Scheme)
				}
			}
		}
	}
	if tried < 150 || shared < 80 {
		t.Errorf("%d tried, %d with sharing", tried, shared)
	}
}

func flip(v part.Vec) part.Vec { return part.Vec{X: v.X, Y: 0 - v.Y, Z: v.Z} }

// The mirrored job has the mirrored reactions and ranges.
func TestMirroredJob(t *testing.T) {
	rng := rand.New(rand.NewPCG(25, 26))
	for range 300 {
		v, b, a := randomVehicle(rng), randomBody(rng, 2+rng.IntN(4)), randomAccel(rng)
		if a == (part.Vec{}) {
			continue
		}
		for i := range b.Mounts {
			if rng.IntN(4) == 0 {
				b.Mounts[i].Z.Way = PlusOnly
			}
			if rng.IntN(4) == 0 && b.Mounts[i].Y.Way == Both {
				b.Mounts[i].Y.Way = MinusOnly
			}
		}
		mv, mb := *v, Body{}
		mv.Items = slices.Clone(v.Items)
		for i := range mv.Items {
			mv.Items[i].At = flip(mv.Items[i].At)
		}
		for _, m := range b.Mounts {
			m.At = flip(m.At)
			switch m.Y.Way {
			case MinusOnly:
				m.Y.Way = PlusOnly
			case PlusOnly:
				m.Y.Way = MinusOnly
			}
			mb.Mounts = append(mb.Mounts, m)
		}
		r, m := solved(t, v, b, under(a)), solved(t, &mv, &mb, under(flip(a)))
		c, d := r.Cases[0], m.Cases[0]
		if c.Held != d.Held {
			t.Fatalf("%v %q, %v %q", c.Held, c.Unheld, d.Held, d.Unheld)
		}
		size := c.BodyKG * G * a.Norm()
		for i := range c.Reactions {
			if got, want := d.Reactions[i].Force, flip(c.Reactions[i].Force); got.Sub(want).Norm() > 1e-5*(size+want.Norm()) {
				t.Fatalf("%s: %v, want %v", c.Reactions[i].Mount, got, want)
			}
			for k, x := range c.Reactions[i].Components {
				y := d.Reactions[i].Components[k]
				if x.Direction == "y" || x.Direction == "rx" || x.Direction == "rz" { // a couple is an axial vector
					y.Low, y.High, y.LowOpen, y.HighOpen = -y.High, -y.Low, y.HighOpen, y.LowOpen
				}
				if x.LowOpen != y.LowOpen || x.HighOpen != y.HighOpen || math.Abs(x.Low-y.Low) > 1e-4*(size+math.Abs(x.Low)) || math.Abs(x.High-y.High) > 1e-4*(size+math.Abs(x.High)) {
					t.Fatalf("%s: %+v mirrored %+v", c.Reactions[i].Mount, x, y)
				}
			}
		}
	}
}

// Shifted together, body and mounts react as before; twice the masses, twice the reactions; two cases in sum (both ways held), the sum.
func TestShiftScaleSum(t *testing.T) {
	rng := rand.New(rand.NewPCG(27, 28))
	for range 300 {
		v, b := randomVehicle(rng), randomBody(rng, 3+rng.IntN(3))
		a1, a2 := randomAccel(rng).Add(part.Vec{X: 0.1}), randomAccel(rng).Add(part.Vec{Y: 0.1})
		by := part.Vec{X: 777, Y: -333, Z: 111}
		w, mb := *v, Body{Mounts: slices.Clone(b.Mounts)}
		w.Items = slices.Clone(v.Items)
		for i := range w.Items {
			w.Items[i].At, w.Items[i].MassKG = w.Items[i].At.Add(by), 2*w.Items[i].MassKG
		}
		for i := range mb.Mounts {
			mb.Mounts[i].At = mb.Mounts[i].At.Add(by)
		}
		cases := under(a1, a2, a1.Add(a2))
		r, m := solved(t, v, b, cases), solved(t, &w, &mb, cases)
		size := r.Cases[0].BodyKG * G
		for k := range r.Cases {
			if r.Cases[k].Held != m.Cases[k].Held {
				t.Fatal("held in one place alone")
			}
			for i := range r.Cases[k].Reactions {
				got, want := m.Cases[k].Reactions[i].Force, r.Cases[k].Reactions[i].Force.Scale(2)
				if got.Sub(want).Norm() > 1e-5*(size+want.Norm()) {
					t.Fatalf("%v, want %v", got, want)
				}
			}
		}
		if !r.Cases[0].Held || !r.Cases[1].Held {
			continue
		}
		for i := range r.Cases[0].Reactions {
			sum := r.Cases[0].Reactions[i].Force.Add(r.Cases[1].Reactions[i].Force)
			if got := r.Cases[2].Reactions[i].Force; got.Sub(sum).Norm() > 1e-5*(size+sum.Norm()) {
				t.Fatalf("%v, want the sum %v", got, sum)
			}
		}
	}
}

// A quarter turn about z of body, mounts and load turns the reactions.
func TestQuarterTurn(t *testing.T) {
	turn := func(v part.Vec) part.Vec { return part.Vec{X: -v.Y, Y: v.X, Z: v.Z} }
	rng := rand.New(rand.NewPCG(29, 30))
	for range 300 {
		v, b, a := randomVehicle(rng), randomBody(rng, 3+rng.IntN(3)), randomAccel(rng).Add(part.Vec{X: 0.1})
		w, mb := *v, Body{}
		w.Items = slices.Clone(v.Items)
		for i := range w.Items {
			w.Items[i].At = turn(w.Items[i].At)
		}
		for _, m := range b.Mounts {
			m.At, m.X, m.Y = turn(m.At), m.Y, m.X
			mb.Mounts = append(mb.Mounts, m)
		}
		c, d := solved(t, v, b, under(a)).Cases[0], solved(t, &w, &mb, under(turn(a))).Cases[0]
		if c.Held != d.Held {
			t.Fatal("held in one way alone")
		}
		for i := range c.Reactions {
			if got, want := d.Reactions[i].Force, turn(c.Reactions[i].Force); got.Sub(want).Norm() > 1e-5*(c.BodyKG*G*a.Norm()+want.Norm()) {
				t.Fatalf("%v, want %v", got, want)
			}
		}
	}
}

// What the masses' doubt does to a reaction: the worst of all corners of their ranges, on a determinate set.
func TestPlusMinusAgainstCorners(t *testing.T) {
	s := scenarios(t)["S1"]
	v, b := s.vehicle(), s.printed()
	v.Items = v.Items[:6]
	cases := under(part.Vec{Y: -0.5, Z: -1})
	nominal := solved(t, v, b, cases).Cases[0]
	most := map[string]float64{}
	for set := range 1 << len(v.Items) {
		w := *v
		w.Items = slices.Clone(v.Items)
		for i := range w.Items {
			f := 0.8 // a guess: 20 %
			if set>>i&1 == 1 {
				f = 1.2
			}
			w.Items[i].MassKG *= f
		}
		for _, m := range solved(t, &w, b, cases).Cases[0].Reactions {
			for _, x := range m.Components {
				most[m.Mount+x.Direction] = max(most[m.Mount+x.Direction], x.Value)
			}
		}
	}
	for _, m := range nominal.Reactions {
		for _, x := range m.Components {
			near(t, m.Mount+" "+x.Direction, x.Value+x.PlusMinus, most[m.Mount+x.Direction], 1e-6*math.Abs(x.Value)+1e-6)
		}
	}
}

// React has the reactions of Solve, to the last bit, and nothing beside them.
func TestReact(t *testing.T) {
	for name, s := range scenarios(t) {
		v := s.vehicle()
		states := []State{v.Empty(), v.Full()}
		for _, b := range []*Body{s.body(), s.printed(), {Mounts: s.body().Mounts[1:]}} {
			whole, err := Solve(v, b, states, offRoadCases(t))
			if err != nil {
				t.Fatal(err)
			}
			brief, err := React(t.Context(), v, b, states, offRoadCases(t))
			if err != nil || brief.Loads != nil || len(brief.Cases) != len(whole.Cases) {
				t.Fatalf("%s: %v", name, err)
			}
			for i := range whole.Cases {
				a, b := &whole.Cases[i], &brief.Cases[i]
				if a.Held != b.Held || a.Unheld != b.Unheld || len(a.Reactions) != len(b.Reactions) {
					t.Fatalf("%s: %+v, was %+v", name, b, a)
				}
				for k := range a.Reactions {
					if a.Reactions[k].Force != b.Reactions[k].Force || a.Reactions[k].HoldsDown != b.Reactions[k].HoldsDown {
						t.Errorf("%s %s: %v, was %v", name, a.Case, b.Reactions[k].Force, a.Reactions[k].Force)
					}
				}
			}
		}
	}
}
