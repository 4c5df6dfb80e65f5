package aisc360

// Properties of the bolt groups of boltgroup.go.

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"lugwright/strength"
)

// A loaded bolt pattern with its load's direction and point.
type loadedBolts struct {
	x, y             []float64
	theta, atX, atY  float64
	force, couple, d float64
}

func drawBolts(d *rand.Rand) loadedBolts {
	b := loadedBolts{
		theta: 6 * (d.Float64() - 0.5), atX: 800 * (d.Float64() - 0.5), atY: 800 * (d.Float64() - 0.5), force: 1e5 * d.Float64(), d: 20,
	}
	grid := d.IntN(2) == 0
	for range 2 + d.IntN(12) {
		x, y := 300*d.Float64(), 300*d.Float64()
		if grid {
			x, y = 75*float64(d.IntN(4)), 75*float64(d.IntN(5))
		}
		b.x, b.y = append(b.x, x), append(b.y, y)
	}
	// Two at least stand apart, so that every load has a path.
	b.x, b.y = append(b.x, 400), append(b.y, -90)
	return b
}

// turned turns pattern and load about the origin, after a mirror in x = 0 where asked.
func (b loadedBolts) turned(angle float64, mirror bool) loadedBolts {
	out := b
	out.x, out.y = slices.Clone(b.x), slices.Clone(b.y)
	s, c := math.Sincos(angle)
	turn := func(x, y float64) (float64, float64) {
		if mirror {
			x = -x
		}
		return c*x - s*y, s*x + c*y
	}
	for i := range b.x {
		out.x[i], out.y[i] = turn(b.x[i], b.y[i])
	}
	out.atX, out.atY = turn(b.atX, b.atY)
	if mirror {
		out.theta, out.couple = -out.theta, -out.couple
	}
	out.theta = math.Remainder(out.theta+angle, 2*math.Pi)
	return out
}

func (b loadedBolts) elastic(t *testing.T) *strength.Calc {
	t.Helper()
	s, k := math.Sincos(b.theta)
	return checkLists(t, "bolt-group-elastic", strength.LRFD, lists{
		"x": b.x, "y": b.y, "P_x": {b.force * s}, "P_y": {-b.force * k}, "M_z": {b.couple}, "x_P": {b.atX}, "y_P": {b.atY}, "d": {b.d}, "F_u": {830}, "threads": {1},
	})
}

func (b loadedBolts) centre(t *testing.T) *strength.Calc {
	t.Helper()
	return checkLists(t, "bolt-group-ic", strength.LRFD, lists{
		"x": b.x, "y": b.y, "P_r": {b.force}, "theta": {b.theta}, "x_P": {b.atX}, "y_P": {b.atY}, "d": {b.d}, "F_u": {830}, "threads": {1},
	})
}

func within(a, b, relative float64) bool {
	return math.Abs(a-b) <= relative*max(math.Abs(a), math.Abs(b))
}

// TestBoltGroupsTurned: pattern and load turned or mirrored together are as strong; the force slides along its line.
func TestBoltGroupsTurned(t *testing.T) {
	d := rand.New(rand.NewPCG(7, 11))
	for range 200 {
		b := drawBolts(d)
		b.couple = 1e6 * (d.Float64() - 0.5)
		slid := b
		s, k := math.Sincos(b.theta)
		slid.atX, slid.atY = b.atX+500*s, b.atY-500*k
		elastic, centre := b.elastic(t).Demand, b.centre(t).Capacity
		for name, other := range map[string]loadedBolts{"turned": b.turned(6*d.Float64(), false), "mirrored": b.turned(6*d.Float64(), true), "slid": slid} {
			if got := other.elastic(t).Demand; !within(got, elastic, 1e-9) {
				t.Errorf("%s, elastic: %v, want %v", name, got, elastic)
			}
			if got := other.centre(t).Capacity; !within(got, centre, 1e-5) {
				t.Errorf("%s, instantaneous centre: %v, want %v", name, got, centre)
			}
		}
	}
}

// TestBoltGroupsCentric: without eccentricity each bolt has its share, and C is what 0.34 in leaves of the bolts' number.
func TestBoltGroupsCentric(t *testing.T) {
	for _, n := range []int{1, 2, 7} {
		b := loadedBolts{y: []float64{}, x: []float64{30}, theta: 0.4, atX: 30, force: 1e5, d: 20}
		for k := range n {
			b.y = append(b.y, 75*(float64(k)-float64(n-1)/2))
		}
		if got := b.elastic(t).Demand; !same(got, 1e5/float64(n)) {
			t.Errorf("%d bolts: %v on each", n, got)
		}
		if got, want := line(t, b.centre(t), "C"), float64(n)*math.Pow(1-math.Exp(-3.4), 0.55); !within(got, want, 1e-6) {
			t.Errorf("%d bolts: C = %v, want %v", n, got, want)
		}
	}
}

// TestBoltGroupsOffLine: further off, the elastic force grows and the instantaneous centre's strength falls; it stays above the elastic one but for
// the 2 % of 0.34 in, and far out strength times distance is that of a couple.
func TestBoltGroupsOffLine(t *testing.T) {
	b := loadedBolts{x: []float64{-40, -40, -40, 40, 40, 40}, y: []float64{-75, 0, 75, -75, 0, 75}, force: 1e4, d: 20}
	elastic, centre := 0.0, math.Inf(1)
	for e := 0.0; e < 9e5; e = 1.5*e + 1 {
		b.atX = e
		off, in := b.elastic(t), b.centre(t)
		if off.Demand <= elastic || in.Capacity >= centre*(1+1e-6) {
			t.Errorf("e = %v: elastic %v after %v, instantaneous centre %v after %v", e, off.Demand, elastic, in.Capacity, centre)
		}
		elastic, centre = off.Demand, in.Capacity
		if strong := line(t, off, "P_c"); centre < 0.98*strong || centre > 1.6*strong {
			t.Errorf("e = %v: instantaneous centre %v, elastic %v", e, centre, strong)
		}
	}
	couple := b
	couple.force, couple.couple = 0, 1e4*b.atX
	if got := couple.elastic(t).Demand; !within(got, elastic, 1e-3) {
		t.Errorf("a couple gives %v, the same far off %v", got, elastic)
	}
}

// TestBoltGroupStrength: two planes are twice as strong, and a weaker ply governs.
func TestBoltGroupStrength(t *testing.T) {
	for _, id := range []string{"bolt-group-elastic", "bolt-group-ic"} {
		v := lists{"x": {0, 80}, "y": {0}, "P_y": {-1e4}, "P_r": {1e4}, "x_P": {90}, "d": {20}, "F_u": {830}, "threads": {1}}
		one, two := checkLists(t, id, strength.ASD, v), checkLists(t, id, strength.ASD, v.with("n_s", 2))
		rn := line(t, one, "r_n")
		ply := checkLists(t, id, strength.ASD, v.with("n_s", 2).with("r_p", rn/2))
		if !same(two.Capacity, 2*one.Capacity) || !same(ply.Capacity, one.Capacity/2) {
			t.Errorf("%s: %v, twice %v, ply %v", id, one.Capacity, two.Capacity, ply.Capacity)
		}
	}
}

// refusedGiven evaluates and wants an error that names the given.
func refusedGiven(t *testing.T, id, symbol string, v lists) {
	t.Helper()
	l := Basis().Limit(id)
	var in [][]float64
	for _, g := range l.Info().Givens {
		x, ok := v[g.Symbol]
		if !ok {
			x = []float64{g.Default}
		}
		in = append(in, x)
	}
	err := l.FromNumbers(&strength.Calc{Method: strength.ASD}, in)
	var wrong *strength.GivenError
	if !errors.As(err, &wrong) || wrong.Given.Symbol != symbol {
		t.Errorf("%s: %v, want an error at %s", id, err, symbol)
	}
}

// TestBoltGroupsRefused: no bolts, no numbers and numbers beyond bounds are errors at their given; a couple that meets no arm, and lists that do
// not fit, are outside the rule with x and y named.
func TestBoltGroupsRefused(t *testing.T) {
	v := lists{"x": {0, 80}, "y": {0, 0}, "P_y": {-1e4}, "P_r": {1e4}, "x_P": {90}, "d": {20}, "F_u": {830}, "threads": {1}}
	for _, id := range []string{"bolt-group-elastic", "bolt-group-ic"} {
		refusedGiven(t, id, "x", v.with("x"))
		refusedGiven(t, id, "y", v.with("y", 0, math.NaN()))
		refusedGiven(t, id, "x", v.with("x", 0, math.Inf(1)))
		refusedGiven(t, id, "x_P", v.with("x_P", 1e9))
		refusedGiven(t, id, "x_P", v.with("x_P", math.NaN()))
		refusedGiven(t, id, "d", v.with("d", 0))
		for name, bad := range map[string]lists{
			"one bolt off its load": v.with("x", 0).with("y", 0),
			"bolts in one point":    v.with("x", 5, 5, 5).with("y", 7),
		} {
			got := checkLists(t, id, strength.ASD, bad)
			if got.Verdict != strength.Outside || !strings.Contains(got.Why, "x") || !strings.Contains(got.Why, "y") {
				t.Errorf("%s, %s: %q %s", id, name, got.Verdict, got.Why)
			}
		}
	}
}

var bracketBolts = lists{"x": {-40, 40, -40, 40, -40, 40}, "y": {0, 0, 80, 80, 160, 160}, "d": {20}, "F_u": {830}, "threads": {1}}

func tensionOf(t *testing.T, v lists) float64 {
	t.Helper()
	c := checkLists(t, "bolt-group-tension", strength.LRFD, v)
	if c.Verdict == strength.Outside && c.Demand == math.Inf(1) {
		t.Fatalf("%v: %s", v, c.Why)
	}
	return c.Demand
}

// TestTensionNumbers: T = N/n + M y/sum(y^2), N/n + M/(n' d_m), and the textbook's cracked section with b c^2/2 = A (d - c), T = M/(d - c/3).
func TestTensionNumbers(t *testing.T) {
	const P, e, N = 4e4, 120.0, 1.2e4
	v := bracketBolts.with("P_r", P).with("e", e).with("N_r", N)
	if got, want := tensionOf(t, v.with("axis", 1)), N/6+P*e*80/(4*80*80); !same(got, want) {
		t.Errorf("by distance: %v, want %v", got, want)
	}
	if got, want := tensionOf(t, v.with("axis", 0)), N/6+P*e/(2*160); !same(got, want) {
		t.Errorf("in halves: %v, want %v", got, want)
	}
	const width, high = 120.0, 60.0
	A := 2 * math.Pi * 20 * 20 / 4
	depth := (-A + math.Sqrt(A*A+2*width*A*high)) / width
	one := bracketBolts.with("x", -40, 40).with("y", high).with("P_r", P).with("e", e).with("axis", 2).with("y_2", 80).with("b_eff", width)
	if got, want := tensionOf(t, one), P*e/(high-depth/3)/2; !within(got, want, 1e-9) {
		t.Errorf("from the compression edge: %v, want %v", got, want)
	}
}

// TestTensionTurned: pattern and moments turned together, or turned upside down, pull alike; without any moment each bolt has its share.
func TestTensionTurned(t *testing.T) {
	d := rand.New(rand.NewPCG(7, 12))
	for range 200 {
		b := drawBolts(d)
		b.x, b.y = append(b.x, -60), append(b.y, 350) // not all in a row
		mx, my := 1e7*(d.Float64()-0.5), 1e7*(d.Float64()-0.5)
		v := lists{"x": b.x, "y": b.y, "M_x": {mx}, "M_y": {my}, "N_r": {1e4}, "axis": {1}, "d": {20}, "F_u": {830}, "threads": {1}}
		want := tensionOf(t, v)
		angle := 6 * d.Float64()
		turned := b.turned(angle, false)
		s, c := math.Sincos(angle)
		if got := tensionOf(t, v.with("x", turned.x...).with("y", turned.y...).with("M_y", c*my-s*mx).with("M_x", s*my+c*mx)); !within(got, want, 1e-9) {
			t.Errorf("turned: %v, want %v", got, want)
		}
		down := make([]float64, len(b.y))
		for i, y := range b.y {
			down[i] = -y
		}
		for axis := range 3 {
			v := v.with("axis", float64(axis)).with("M_y", 0).with("y_1", -500).with("y_2", 500).with("b_eff", 90)
			if got, want := tensionOf(t, v.with("y", down...).with("M_x", -mx)), tensionOf(t, v); !within(got, want, 1e-7) {
				t.Errorf("axis %d upside down: %v, want %v", axis, got, want)
			}
			if got := tensionOf(t, v.with("M_x", 0)); axis < 2 && !same(got, 1e4/float64(len(b.x))) {
				t.Errorf("axis %d, no moment: %v on each of %d", axis, got, len(b.x))
			}
		}
	}
}

// TestTensionGrows: further from the plane the tension grows; shear on the same bolts lowers what they bear.
func TestTensionGrows(t *testing.T) {
	for axis := range 3 {
		v := bracketBolts.with("axis", float64(axis)).with("P_r", 3e4).with("y_1", -40).with("y_2", 200).with("b_eff", 100)
		before := -1.0
		for _, e := range []float64{0, 10, 50, 200, 1000, 1e4, 1e5} {
			now := tensionOf(t, v.with("e", e))
			if now <= before {
				t.Errorf("axis %d: tension %v at e = %v, %v before", axis, now, e, before)
			}
			before = now
		}
		moment := v.with("P_r", 0).with("M_x", 3e4*50)
		a, b := checkLists(t, "bolt-group-tension", strength.ASD, v.with("e", 50).with("P_r", 2e5).with("M_x", -1.7e5*50)), checkLists(t, "bolt-group-tension", strength.ASD, moment)
		if !within(a.Demand, b.Demand, 1e-9) || a.Capacity >= b.Capacity {
			t.Errorf("axis %d: with shear %v of %v, without %v of %v", axis, a.Demand, a.Capacity, b.Demand, b.Capacity)
		}
	}
}

// TestTensionRefused: no bolts, no numbers, a row without an arm, a contact that is none, a second moment where one is reckoned with.
func TestTensionRefused(t *testing.T) {
	const id = "bolt-group-tension"
	v := bracketBolts.with("P_r", 3e4).with("e", 50)
	refusedGiven(t, id, "y", v.with("y"))
	refusedGiven(t, id, "x", v.with("x", math.NaN()))
	refusedGiven(t, id, "e", v.with("e", 1e9))
	refusedGiven(t, id, "e", v.with("e", math.NaN()))
	for name, bad := range map[string]struct {
		v     lists
		names string
	}{
		"a row, halves":         {v.with("axis", 0).with("y", 10), "x, y"},
		"a row, by distance":    {v.with("axis", 1).with("y", 10), "x, y"},
		"no contact":            {v.with("axis", 2).with("b_eff", 100), "y_1"},
		"no width":              {v.with("axis", 2).with("y_2", 200), "b_eff"},
		"bolt off the contact":  {v.with("axis", 2).with("y_2", 100).with("b_eff", 100), "y_1"},
		"at the edge":           {v.with("axis", 2).with("y", 0).with("y_2", 100).with("b_eff", 100), "y_1"},
		"two moments, halves":   {v.with("axis", 0).with("M_y", 1), "M_y"},
		"two moments, one edge": {v.with("axis", 2).with("M_y", 1).with("y_2", 200).with("b_eff", 100), "M_y"},
	} {
		if got := checkLists(t, id, strength.ASD, bad.v); got.Verdict != strength.Outside || !strings.Contains(got.Why, bad.names) {
			t.Errorf("%s: %q %s", name, got.Verdict, got.Why)
		}
	}
}
