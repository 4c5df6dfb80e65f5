package statics

import (
	"errors"
	"math"
	"testing"
)

// near fails unless got is within rel of want; want 0 compares absolutely.
func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if d := math.Abs(got - want); !(d <= rel*math.Max(math.Abs(want), 1e-300) || want == 0 && d <= rel) {
		t.Errorf("%s: got %.9g, want %.9g within %g", what, got, want, rel)
	}
}

func worst(v []Vec2) (m float64) {
	for _, f := range v {
		m = math.Max(m, f.Norm())
	}
	return m
}

func grid(nu, nv int, pu, pv float64) (pos []Vec2) {
	for i := range nu {
		for j := range nv {
			pos = append(pos, Vec2{float64(i) * pu, float64(j) * pv})
		}
	}
	return pos
}

func TestShearsPublished(t *testing.T) {
	t.Run("AISC Companion to the Steel Construction Manual, Vol. 1: Design Examples v16.0 (2023), Example II.A-25", func(t *testing.T) {
		pos := grid(2, 6, 5.5, 3) // inches and kips
		dst := make([]Vec2, len(pos))
		if err := Shears(dst, pos, 0, 1, 16); err != nil {
			t.Fatal(err)
		}
		near(t, "Ip", PolarInertia(pos), 406, 0.005)
		near(t, "rmax", worst(dst), 0.352, 0.005)
		near(t, "P LRFD", 24.3/worst(dst), 69, 0.005)
		near(t, "P ASD", 16.2/worst(dst), 46, 0.005)
	})
	t.Run("Design of machine elements (university textbook, companion listing), example 7.3, four bolts", func(t *testing.T) {
		pos := grid(2, 2, 200, 150)
		dst := make([]Vec2, 4)
		if err := Shears(dst, pos, 0, 10e3, 10e3*500); err != nil {
			t.Fatal(err)
		}
		near(t, "F_max", worst(dst), 12093.4, 0.001)
	})
	t.Run("Design of machine elements (university textbook, companion listing), example 8.27, nine rivets 100 x 100 grid, e = 300", func(t *testing.T) {
		pos := grid(3, 3, 100, 100)
		l := GroupLoad{Vv: -50000}.MovedTo(Vec2{-300, 0}) // the load point is 300 mm from the centroid
		dst := make([]Vec2, 9)
		if err := Shears(dst, pos, l.Vu, l.Vv, l.Torsion); err != nil {
			t.Fatal(err)
		}
		near(t, "d", math.Sqrt(4*worst(dst)/(math.Pi*60)), 21.587293, 1e-5)
	})
}

func TestShearsNoArm(t *testing.T) {
	dst := make([]Vec2, 1)
	if err := Shears(dst, []Vec2{{3, 4}}, 5, 6, 0); err != nil || dst[0] != (Vec2{5, 6}) {
		t.Errorf("one bolt in plain shear: %v, %v", dst, err)
	}
	var np *NoPathError
	if err := Shears(dst, []Vec2{{3, 4}}, 0, 0, 1); !errors.As(err, &np) {
		t.Errorf("torsion on one bolt: got %v, want a NoPathError", err)
	}
}

func TestShearsRefusesBadInput(t *testing.T) {
	var in *InputError
	for _, pos := range [][]Vec2{nil, {{math.NaN(), 0}}, {{0, math.NaN()}}, {{0, math.Inf(-1)}}, {{1e9, 0}}} {
		if err := Shears(make([]Vec2, len(pos)), pos, 1, 1, 1); !errors.As(err, &in) {
			t.Errorf("%v: got %v, want an InputError", pos, err)
		}
	}
	if err := Shears(make([]Vec2, 1), []Vec2{{1, 1}}, math.NaN(), 0, 0); !errors.As(err, &in) {
		t.Errorf("NaN force: got %v", err)
	}
}

// A load moved to another point has the same moments as its bolts' forces there; elementary statics.
func TestGroupLoadMovedTo(t *testing.T) {
	p := Vec2{7, -3}
	got := GroupLoad{Vu: 2, Vv: 5, N: 11}.MovedTo(p)
	arm, f := Vec3{-p.X, -p.Y, 0}, Vec3{2, 5, 11}
	if m := arm.Cross(f); got.Mu != m.X || got.Mv != m.Y || got.Torsion != m.Z {
		t.Errorf("got %+v, want moments %v", got, m)
	}
}
