package statics

// A beam on two supports whose ends are held against turning or free to.

// Beam is a beam of one section on two supports a span apart. It bends between From and To, measured from the first support, and is rigid
// beyond: an end plate in its bolts.
type Beam struct{ SpanMM, FromMM, ToMM float64 }

// EndMoments gives what the two ends pass to their supports as moments (N*mm), under a force (N) and a couple (N*mm) at a distance from the first
// support. All count as the force's own moment about the first support does. An end not held passes none.
//
// By virtual work with bending alone: a held end has not turned. Ends on springs lie between: whatever the springs, the pair of moments
// is within the quadrilateral of the four ways of holding, since with one spring fixed the pair runs along a straight line as the other
// grows stiffer, and the ends of that line run along two of its sides.
func (b Beam) EndMoments(atMM, forceN, coupleNMM float64, firstHeld, secondHeld bool) (first, second float64) {
	s := b.SpanMM
	reaction := (forceN*(s-atMM) - coupleNMM) / s
	before := func(x float64) float64 { return -reaction * x }
	after := func(x float64) float64 { return forceN*(x-atMM) - coupleNMM - reaction*x }
	one := func(x float64) float64 { return 1 - x/s } // what a moment of 1 at the first end does along the beam
	two := func(x float64) float64 { return -x / s }  // and at the second
	mid := min(max(atMM, b.FromMM), b.ToMM)
	load1 := product(before, one, b.FromMM, mid) + product(after, one, mid, b.ToMM)
	load2 := product(before, two, b.FromMM, mid) + product(after, two, mid, b.ToMM)
	f11, f22, f12 := product(one, one, b.FromMM, b.ToMM), product(two, two, b.FromMM, b.ToMM), product(one, two, b.FromMM, b.ToMM)
	switch {
	case firstHeld && secondHeld:
		det := f11*f22 - f12*f12
		return (f12*load2 - f22*load1) / det, (f12*load1 - f11*load2) / det
	case firstHeld:
		return -load1 / f11, 0
	case secondHeld:
		return 0, -load2 / f22
	}
	return 0, 0
}

// product integrates the product of two straight lines, exactly, by Simpson's rule.
func product(f, g func(float64) float64, from, to float64) float64 {
	m := (from + to) / 2
	return (to - from) / 6 * (f(from)*g(from) + 4*f(m)*g(m) + f(to)*g(to))
}
