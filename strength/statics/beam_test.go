package statics

import (
	"math"
	"testing"
)

// A force at a and b from the ends of a span l: P a b^2/l^2 and P a^2 b/l^2 where both ends are held, P a b (l + b)/(2 l^2) where one is (AISC Manual
// Table 3-23, cases 17 and 14, from memory; any textbook). The second end's moment turns the other way.
func TestBeamForce(t *testing.T) {
	const l, a, P = 800.0, 250.0, 12000.0
	const b = l - a
	beam := Beam{SpanMM: l, ToMM: l}
	for _, c := range []struct {
		one, two      bool
		first, second float64
	}{
		{false, false, 0, 0},
		{true, false, P * a * b * (l + b) / (2 * l * l), 0},
		{false, true, 0, -P * a * b * (l + a) / (2 * l * l)},
		{true, true, P * a * b * b / (l * l), -P * a * a * b / (l * l)},
	} {
		first, second := beam.EndMoments(a, P, 0, c.one, c.two)
		near(t, "first", first, c.first, 1e-12)
		near(t, "second", second, c.second, 1e-12)
	}
}

// A couple is two forces a little apart, so its end moments are the derivatives of those of a force by its place: with both ends held
// C (l - a)(l - 3a)/l^2 and C a (3a - 2l)/l^2, with one held C (2l^2 - 6la + 3a^2)/(2 l^2). Signs: the couple counts as the force's moment about the
// first support.
func TestBeamCouple(t *testing.T) {
	const l, a, C = 800.0, 250.0, 2e6
	beam := Beam{SpanMM: l, ToMM: l}
	first, second := beam.EndMoments(a, 0, C, true, true)
	near(t, "both, first", first, C*(l-a)*(l-3*a)/(l*l), 1e-12)
	near(t, "both, second", second, C*a*(3*a-2*l)/(l*l), 1e-12)
	first, _ = beam.EndMoments(a, 0, C, true, false)
	near(t, "one", first, C*(2*l*l-6*l*a+3*a*a)/(2*l*l), 1e-12)
}

// Ends rigid over t, both held: the part between is itself a beam with both ends held, and the end passes its moment and its reaction over t:
// in the middle P (l - 2t)/8 + P t/2.
func TestBeamWithRigidEnds(t *testing.T) {
	const l, e, P = 800.0, 16.0, 1000.0
	first, second := Beam{SpanMM: l, FromMM: e, ToMM: l - e}.EndMoments(l/2, P, 0, true, true)
	near(t, "first", first, P*(l-2*e)/8+P*e/2, 1e-12)
	near(t, "second", second, -first, 1e-12)
}

// Ends on springs pass a pair of moments within the quadrilateral of the four ways of holding. Springs by the textbook's flexibilities, l/3 and l/6 over E I:
// (l/3 + s1) m1 - (l/6) m2 = what the load turns the end by.
func TestSpringsLieBetween(t *testing.T) {
	const l = 800.0
	beam := Beam{SpanMM: l, ToMM: l}
	for _, c := range []struct{ at, force, couple float64 }{{250, 1000, 0}, {700, 1000, 0}, {100, 0, 1e5}, {400, 0, 1e5}, {300, -500, 2e5}} {
		var corners [4][2]float64
		for i, held := range [4][2]bool{{false, false}, {true, false}, {true, true}, {false, true}} {
			corners[i][0], corners[i][1] = beam.EndMoments(c.at, c.force, c.couple, held[0], held[1])
		}
		turn1, turn2 := corners[1][0]*l/3, corners[3][1]*l/3
		for s1 := 1.0; s1 < 1e6; s1 *= 3 {
			for s2 := 1.0; s2 < 1e6; s2 *= 3 {
				f1, f2, f12 := l/3+s1, l/3+s2, l/6
				det := f1*f2 - f12*f12
				m := [2]float64{(f2*turn1 + f12*turn2) / det, (f1*turn2 + f12*turn1) / det}
				if !within(corners, m) {
					t.Fatalf("%+v: springs %g, %g give %v outside %v", c, s1, s2, m, corners)
				}
			}
		}
	}
}

// within says whether a point is in the hull of four: no direction sees it past them all.
func within(corners [4][2]float64, p [2]float64) bool {
	for k := range 3600 {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / 3600)
		most, size := math.Inf(-1), 0.0
		for _, c := range corners {
			most, size = max(most, c[0]*cos+c[1]*sin), max(size, math.Hypot(c[0], c[1]))
		}
		if p[0]*cos+p[1]*sin > most+1e-9*size {
			return false
		}
	}
	return true
}
