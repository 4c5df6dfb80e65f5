package shape

// Where edges cross, and how near they come.

import "math"

// lineRoots returns where the line p + s u (u of length 1) meets the full circle of arc e, lo <= hi, and how deep the
// line runs inside the circle (negative: it misses by about that much, and lo = hi is the nearest place).
//
// It solves bulge x power(p + s u) = 0, which stays well scaled when the centre of a flat arc is far away: the far root
// then runs off to infinity and the near one keeps its digits.
func (e Edge) lineRoots(p, u Point) (lo, hi, depth float64) {
	ch, q, b := e.B.Sub(e.A), p.Sub(e.A), e.Bulge
	k := (1 - b*b) / 2
	b1 := b*(2*q.Dot(u)-ch.Dot(u)) - k*ch.Cross(u)
	b0 := b*q.Dot(q.Sub(ch)) - k*ch.Cross(q)
	disc := b1*b1 - 4*b*b0
	depth = disc / (2 * math.Abs(b) * ch.Norm() * (1 + b*b))
	if disc <= 0 {
		s := -b1 / (2 * b)
		return s, s, depth
	}
	h := -(b1 + math.Copysign(math.Sqrt(disc), b1)) / 2
	lo, hi = h/b, b0/h
	return min(lo, hi), max(lo, hi), depth
}

// EdgeIntersections returns the points that two edges share: crossings, touching points (within OnTolMM), and for edges
// that lie on one another the ends of the common stretch. Points closer together than TouchMM are given once.
func EdgeIntersections(a, b Edge) []Point {
	points, n := shared(a, b, a.BBox(), b.BBox())
	return append([]Point(nil), points[:n]...)
}

// shared are the points of EdgeIntersections, of edges whose boxes are known.
func shared(a, b Edge, boxA, boxB Box) (out [6]Point, n int) {
	if boxA.gap(boxB) > OnTolMM {
		return out, 0
	}
	for _, p := range [4]Point{a.A, a.B, b.A, b.B} {
		n = addShared(&out, n, p, a, b, OnTolMM)
	}
	crossings, found := curveCrossings(a, b)
	for _, p := range crossings[:found] {
		n = addShared(&out, n, p, a, b, crossTolMM)
	}
	return out, n
}

// crossTolMM allows for the rounding of a computed crossing of nearly tangent edges.
const crossTolMM = 1e-7

func addShared(out *[6]Point, n int, p Point, a, b Edge, tol float64) int {
	if !p.finite() || a.DistTo(p) > tol || b.DistTo(p) > tol {
		return n
	}
	for _, q := range out[:n] {
		if p.Dist(q) <= TouchMM {
			return n
		}
	}
	out[n] = p
	return n + 1
}

// curveCrossings returns where the infinite line or circle of a meets that of b; the points may be off the edges.
func curveCrossings(a, b Edge) (at [2]Point, n int) {
	switch {
	case !a.IsArc() && !b.IsArc():
		return lineLine(a, b)
	case !a.IsArc():
		return lineArc(a.A.Lerp(a.B, 0.5), a.B.Sub(a.A).Unit(), b)
	case !b.IsArc():
		return lineArc(b.A.Lerp(b.B, 0.5), b.B.Sub(b.A).Unit(), a)
	}
	if a.Radius() > b.Radius() {
		a, b = b, a // a flat arc all but follows the axis, which then cuts the other one cleanly
	}
	p, u, ok := radicalAxis(a, b)
	if !ok {
		return at, 0
	}
	return lineArc(p, u, a)
}

func lineLine(a, b Edge) (at [2]Point, n int) {
	da, db := a.B.Sub(a.A), b.B.Sub(b.A)
	den := da.Cross(db)
	if den == 0 {
		return at, 0
	}
	at[0] = a.At(b.A.Sub(a.A).Cross(db) / den)
	return at, 1
}

func lineArc(p, u Point, arc Edge) (at [2]Point, n int) {
	if u == (Point{}) {
		return at, 0
	}
	lo, hi, depth := arc.lineRoots(p, u)
	if depth < -crossTolMM {
		return at, 0
	}
	return [2]Point{p.Add(u.Scale(lo)), p.Add(u.Scale(hi))}, 2
}

// radicalAxis returns the line on which two circles have equal power, which holds their crossings; ok is false for
// concentric circles. Point p is the line's nearest to the middle of a's chord.
func radicalAxis(a, b Edge) (p, u Point, ok bool) {
	m := a.A.Lerp(a.B, 0.5)
	fa, ga := a.powerAt(m)
	fb, gb := b.powerAt(m)
	// fa, fb are bulge x power, so that flat arcs stay finite; crosswise bulges cancel the quadratic term.
	f := b.Bulge*fa - a.Bulge*fb
	g := ga.Scale(b.Bulge).Sub(gb.Scale(a.Bulge))
	n := g.Norm()
	if n == 0 {
		return Point{}, Point{}, false
	}
	return m.Sub(g.Scale(f / (n * n))), g.Perp().Scale(1 / n), true
}

// powerAt returns bulge x power of p for the arc's circle, and its gradient.
func (e Edge) powerAt(p Point) (value float64, gradient Point) {
	ch, q, b := e.B.Sub(e.A), p.Sub(e.A), e.Bulge
	k := (1 - b*b) / 2
	value = b*q.Dot(q.Sub(ch)) - k*ch.Cross(q)
	gradient = q.Scale(2).Sub(ch).Scale(b).Sub(ch.Perp().Scale(k))
	return value, gradient
}
