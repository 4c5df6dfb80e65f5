package statics

import (
	"errors"
	"math"
	"testing"
)

// flat makes a weld group in the plane z = 0 from x0, y0, x1, y1.
func flat(t *testing.T, segs ...[4]float64) WeldGroup {
	t.Helper()
	var list []WeldSegment
	for _, s := range segs {
		list = append(list, WeldSegment{Vec3{s[0], s[1], 0}, Vec3{s[2], s[3], 0}, 1})
	}
	g, err := NewWeldGroup(list)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func peak(t *testing.T, g WeldGroup, w Wrench) WeldPeak {
	t.Helper()
	p, err := g.PeakOf(w)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Source: properties of welds treated as a line, design handbook table, from memory.
func TestWeldLineTable(t *testing.T) {
	const b, d = 60.0, 100.0
	jx, _, jz := line(t, [4]float64{0, 0, 0, d})
	near(t, "one line Ix", jx, d*d*d/12, 1e-12)
	near(t, "one line polar", jz, d*d*d/12, 1e-12)
	jx, _, jz = line(t, [4]float64{0, 0, 0, d}, [4]float64{b, 0, b, d})
	near(t, "two verticals Ix", jx, d*d*d/6, 1e-12)
	near(t, "two verticals polar", jz, d*(3*b*b+d*d)/6, 1e-12)
	jx, _, jz = line(t, [4]float64{0, 0, b, 0}, [4]float64{0, d, b, d})
	near(t, "two horizontals Ix", jx, b*d*d/2, 1e-12)
	near(t, "two horizontals polar", jz, b*(3*d*d+b*b)/6, 1e-12)
	jx, _, jz = line(t, [4]float64{0, 0, b, 0}, [4]float64{b, 0, b, d}, [4]float64{b, d, 0, d}, [4]float64{0, d, 0, 0})
	near(t, "box Ix", jx, d*d*(3*b+d)/6, 1e-12)
	near(t, "box polar", jz, (b+d)*(b+d)*(b+d)/6, 1e-12)
	_, _, jz = line(t, [4]float64{b, 0, 0, 0}, [4]float64{0, 0, 0, d}, [4]float64{0, d, b, d})
	near(t, "channel polar", jz, math.Pow(2*b+d, 3)/12-b*b*(b+d)*(b+d)/(2*b+d), 1e-12)
}

func line(t *testing.T, segs ...[4]float64) (jx, jy, jz float64) {
	t.Helper()
	g := flat(t, segs...)
	return g.Inertia()
}

func TestWeldGroupsPublished(t *testing.T) {
	t.Run("AISC Companion to the Steel Construction Manual, Vol. 1: Design Examples v16.0 (2023), Example II.A-27", func(t *testing.T) {
		g := flat(t, [4]float64{0, 0, 0, 10}, [4]float64{0, 0, 5, 0}, [4]float64{0, 10, 5, 10})
		jx, jy, jz := g.Inertia()
		f := peak(t, g, Wrench{F: Vec3{0, 1, 0}, At: Vec3{10, 0, 0}}).Q.Norm()
		for _, c := range []struct {
			what      string
			got, want float64
		}{
			{"Lw", g.LengthMM, 20}, {"xbar", g.Centroid.X, 1.25}, {"Ix", jx, 333}, {"Iy", jy, 52.1},
			{"Ip", jz, 385}, {"fmax", f, 0.177}, {"P LRFD", 8.352 / f, 47.2}, {"P ASD", 5.568 / f, 31.5},
		} {
			near(t, c.what, c.got, c.want, 0.008) // the source rounds at each step to 3 figures
		}
	})
	t.Run("Solutions manual to Mechanical Engineering Design, 8th ed. (2006), Problem 9-6", func(t *testing.T) {
		g := flat(t, [4]float64{0, 0, 2, 0}, [4]float64{2, 0, 2, 2}, [4]float64{2, 2, 0, 2}, [4]float64{0, 2, 0, 0})
		_, _, jz := g.Inertia()
		near(t, "Ip", jz, 10.67, 0.005)
		near(t, "Ip t", jz*0.3125*0.707, 2.36, 0.005)
	})
	t.Run("A Beginner's Guide to the Steel Construction Manual (14th ed.), Example 5.4", func(t *testing.T) {
		g := flat(t, [4]float64{0, 0, 0, 11}, [4]float64{0, 0, 4, 0}, [4]float64{0, 11, 4, 11})
		_, _, jz := g.Inertia()
		F, M := Vec3{-9.029705238680377, -51.21000315663482, 0}, Vec3{0, 0, -416}
		p, err := g.Peak(F, M)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "xbar", g.Centroid.X, 0.842, 0.005)
		near(t, "A", g.LengthMM*0.3535, 6.72, 0.005)
		near(t, "Ip", jz*0.3535, 135.15, 0.005)
		near(t, "fmax", p.Q.Norm()/0.3535, 25.2, 0.005)
		least := math.Inf(1)
		for i := range g.Segments() {
			a, b, _ := g.SegmentEnds(i, F, M)
			least = min(least, a.Norm(), b.Norm())
		}
		near(t, "fmin", least/0.3535, 16.4, 0.005)
	})
	t.Run("Mechanical Engineering Design, 9th ed. (2011), Example 9-4 (from memory)", func(t *testing.T) {
		g := flat(t, [4]float64{0, 0, 0, 2}, [4]float64{1, 0, 1, 2})
		throat := 1.06 / g.LengthMM
		p, err := g.Peak(Vec3{0, 500, 0}, Vec3{3000, 0, 0})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "direct", p.Q.Y/throat, 472, 0.005)
		near(t, "bending", math.Abs(p.Q.Z)/throat, 8500, 0.005)
		near(t, "both", p.Q.Norm()/throat, 8510, 0.005)
	})
	t.Run("Design of Machine Elements, Example 8.13 (machine solution of the textbook)", func(t *testing.T) {
		// Only the line properties: the book then halves the bending stress, a rule that is not used here.
		g := flat(t, [4]float64{0, 0, 0, 400}, [4]float64{100, 0, 100, 400})
		jx, _, _ := g.Inertia()
		near(t, "A", g.LengthMM, 800, 1e-12)
		near(t, "I", jx, 10666666.666666666, 1e-12)
	})
	t.Run("Design of machine elements (university textbook, companion listing), example 8.9 two parallel welds 50 mm, 50 apart, e = 125", func(t *testing.T) {
		g := flat(t, [4]float64{0, 25, 50, 25}, [4]float64{0, -25, 50, -25})
		p := peak(t, g, Wrench{F: Vec3{0, -7500, 0}, At: Vec3{150, 0, 0}})
		near(t, "throat", p.Q.Norm()/100, 4.538894, 1e-5)
	})
	t.Run("Design of machine elements (university textbook, companion listing), example 8.12 bracket, two horizontal welds", func(t *testing.T) {
		g := flat(t, [4]float64{0, 50, 50, 50}, [4]float64{0, -50, 50, -50})
		q, _, err := g.SegmentEnds(0, Vec3{0, -10e3, 0}, Vec3{10e3 * 100, 0, 0})
		if err != nil {
			t.Fatal(err)
		}
		// The book halves the bending stress and adds the welds' own l t^3/12 with t = 1, which is 3.3e-5 of I.
		near(t, "throat", math.Hypot(q.Z/2, q.Y)/70, 2.020271, 4e-5)
	})
}

// What the welds carry must balance the wrench: integrals of q and r x q along every segment (q is linear, Simpson is exact).
func TestWeldGroupBalances(t *testing.T) {
	segs := []WeldSegment{{Vec3{0, 0, 0}, Vec3{50, 0, 10}, 1}, {Vec3{0, 40, 0}, Vec3{0, 0, 30}, 0.5}, {Vec3{5, 5, 60}, Vec3{80, 20, 5}, 1}}
	g, err := NewWeldGroup(segs)
	if err != nil {
		t.Fatal(err)
	}
	F, M := Vec3{1e3, -2e3, 5e2}, Vec3{3e4, 4e4, -5e4}
	var sum, moment Vec3
	for i, s := range segs {
		a, b, _ := g.SegmentEnds(i, F, M)
		mid, centre := a.Add(b).Scale(0.5), s.A.Add(s.B).Scale(0.5)
		for _, p := range []struct {
			r, q Vec3
			w    float64
		}{{s.A, a, 1}, {centre, mid, 4}, {s.B, b, 1}} {
			q := p.q.Scale(p.w / 6 * s.length())
			sum, moment = sum.Add(q), moment.Add(p.r.Sub(g.Centroid).Cross(q))
		}
	}
	if sum.Sub(F).Norm() > 1e-9*F.Norm() || moment.Sub(M).Norm() > 1e-9*M.Norm() {
		t.Errorf("welds carry %v and %v, want %v and %v", sum, moment, F, M)
	}
}

func TestWeldOnOneLine(t *testing.T) {
	g, err := NewWeldGroup([]WeldSegment{{Vec3{0, 0, 0}, Vec3{30, 40, 0}, 1}, {Vec3{60, 80, 0}, Vec3{90, 120, 0}, 1}})
	if err != nil {
		t.Fatal(err)
	}
	var np *NoPathError
	if _, err := g.Peak(Vec3{}, Vec3{3, 4, 0}); !errors.As(err, &np) {
		t.Errorf("torsion about the line: got %v, want a NoPathError", err)
	}
	one := flat(t, [4]float64{0, 0, 0, 100})
	p, err := one.Peak(Vec3{}, Vec3{1e6, 0, 0})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "M/(d^2/6)", p.Q.Norm(), 1e6/(100*100/6.0), 1e-12)
}

func TestWeldGroupRefusesBadInput(t *testing.T) {
	var in *InputError
	ok := Vec3{10, 0, 0}
	for _, s := range [][]WeldSegment{nil, {{ok, ok, 1}}, {{Vec3{}, ok, 0}}, {{Vec3{}, ok, 1.5}}, {{Vec3{}, Vec3{X: math.NaN()}, 1}}, {{Vec3{}, Vec3{X: 1e9}, 1}}, {{Vec3{}, ok, math.NaN()}}} {
		if _, err := NewWeldGroup(s); !errors.As(err, &in) {
			t.Errorf("%v: got %v, want an InputError", s, err)
		}
	}
	g := flat(t, [4]float64{0, 0, 1, 1})
	if _, err := g.Peak(Vec3{X: math.Inf(1)}, Vec3{}); !errors.As(err, &in) {
		t.Errorf("infinite force: got %v", err)
	}
	if _, _, err := g.SegmentEnds(1, Vec3{}, Vec3{}); !errors.As(err, &in) {
		t.Errorf("segment 1 of 1: got %v", err)
	}
}

func BenchmarkWeldPeak(b *testing.B) {
	g, _ := NewWeldGroup([]WeldSegment{{Vec3{0, 0, 0}, Vec3{0, 0, 80}, 1}, {Vec3{12, 0, 0}, Vec3{12, 0, 80}, 1}})
	for b.Loop() {
		if _, err := g.Peak(Vec3{1, 2, 3}, Vec3{4, 5, 6}); err != nil {
			b.Fatal(err)
		}
	}
}
