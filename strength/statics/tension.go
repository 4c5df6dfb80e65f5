package statics

// Tension in a bolt group whose plate bears on its support, turning about one axis: the neutral axis is found as in
// a cracked section. Two axes at once are in tension2.go; the rules without contact in tension0.go.

import "math"

// AxisState is how the joint stands when it turns about one axis.
type AxisState struct {
	DepthMM     float64 // neutral axis from the compression edge, at most the depth of the patch; 0 when open
	FromLow     bool    // the compression edge is the low end of the patch
	ContactN    float64 // contact resultant, >= 0
	ContactAt   float64 // where it acts (mm, in the coordinate of the bolts)
	PressureMPa float64 // greatest contact pressure, at the compression edge
	Open        bool    // no contact: the bolts alone carry the load
	Residual    float64 // equilibrium error over the load, a pure number
}

// rocking is a joint that turns about one axis, in the coordinate e = (y - mid)/half of its patch.
type rocking struct {
	y          []float64
	mid, half  float64
	bolt, edge float64 // bolt area (mm^2) and contact area per unit of e (mm^2)
}

// pair is (a, b) of the plane s = a + b e, or (force, moment/half) of a load.
type pair struct{ a, b float64 }

func (p pair) norm() float64          { return math.Hypot(p.a, p.b) }
func (p pair) cross(q pair) float64   { return float64(p.a*q.b) - float64(p.b*q.a) }
func (p pair) scale(k float64) pair   { return pair{k * p.a, k * p.b} }
func (p pair) at(e float64) float64   { return p.a + p.b*e }
func (r rocking) e(y float64) float64 { return (y - r.mid) / r.half }

// TensionsOneAxis writes bolt tensions (N, none negative) into dst for a pull N and a moment M about the point y = 0.
//
// y are bolt positions across the axis (mm), boltArea the stress area of one bolt (mm^2), lo..hi the contact
// patch along y and width its breadth (mm). M > 0 opens the high end: bolts at y with tension T make sum(T y).
// Model: the plate is rigid, the plane stays plane, bolt and contact have one modulus, contact takes
// compression only, and bolts inside the compression zone carry nothing. Stress is k (y - yNA):
//
//	sum(k A_b (y_i - c), y_i > c) - k width c^2/2 = N, and the same with arms = M   (c from the compression edge)
//
// Where the bolts alone can carry the load, all in tension and with both edges open, contact is nil. Bolts must stand within
// the patch. Source: elementary statics of a cracked section, no clause.
// A load nothing can resist (a moment with the only bolts at the compression edge) is a *NoPathError.
func TensionsOneAxis(dst, y []float64, boltArea, lo, hi, width, N, M float64) (AxisState, error) {
	if err := checkRow(dst, y, boltArea, lo, hi, width, N, M); err != nil {
		return AxisState{}, err
	}
	r := rocking{y: y, mid: (lo + hi) / 2, half: (hi - lo) / 2, bolt: boltArea, edge: width * (hi - lo) / 2}
	f := pair{N, (M - N*r.mid) / r.half}
	if f.norm() == 0 {
		clear(dst)
		return AxisState{Open: true}, nil
	}
	if s, ok := r.openPlane(f); ok {
		return r.state(dst, s, f), nil
	}
	s := r.plane(f)
	g := r.response(s)
	if !(g.norm() > 1e-10*(r.edge+r.bolt)) {
		return AxisState{}, &NoPathError{"moment on the bolts", "no bolt stands away from the compression edge"}
	}
	st := r.state(dst, s.scale(f.norm()/g.norm()), f)
	if !(st.Residual <= 1e-6) {
		return AxisState{}, &NoPathError{"moment on the bolts", "bolts and contact have almost no arm"}
	}
	return st, nil
}

func checkRow(dst, y []float64, area, lo, hi, width, N, M float64) error {
	if len(y) == 0 || len(dst) != len(y) {
		return &InputError{What: "len(dst)", Got: float64(len(dst)), Want: "the number of bolts, at least one"}
	}
	if err := checkPatch("patch", lo, hi); err != nil {
		return err
	}
	for _, v := range y {
		if !(v >= lo && v <= hi) {
			return &InputError{What: "bolt position", Got: v, Want: "a position within the contact patch"}
		}
	}
	if err := checkPositive("bolt area", area, maxLength); err != nil {
		return err
	}
	if err := checkPositive("patch width", width, maxLength); err != nil {
		return err
	}
	return checkLoads(N, 0, M)
}

func checkPatch(what string, lo, hi float64) error {
	if err := checkWithin(what, lo, maxLength); err != nil {
		return err
	}
	if err := checkWithin(what, hi, maxLength); err != nil {
		return err
	}
	if !(hi-lo > tiny) {
		return &InputError{What: what + " depth", Got: hi - lo, Want: "more than 1e-6 mm"}
	}
	return nil
}

// openPlane is the linear distribution over the bolts alone, if it leaves every bolt in tension and both edges open.
func (r rocking) openPlane(f pair) (pair, bool) {
	n, mean, inertia := float64(len(r.y)), 0.0, 0.0
	for _, y := range r.y {
		mean += r.e(y) / n
	}
	for _, y := range r.y {
		inertia += (r.e(y) - mean) * (r.e(y) - mean)
	}
	m := f.b - f.a*mean
	slope := 0.0
	if inertia > 1e-12*n {
		slope = m / (r.bolt * inertia)
	} else if math.Abs(m) > 1e-12*f.norm() {
		return pair{}, false
	}
	s := pair{f.a/(n*r.bolt) - slope*mean, slope}
	return s, s.at(-1) >= 0 && s.at(1) >= 0
}

// plane finds the direction of (a, b) whose response is parallel to f. The response is the gradient of a convex
// energy, so it turns with (a, b), never by a right angle or more away from it: the bracket is f turned by -90 and +90 degrees.
func (r rocking) plane(f pair) pair {
	f = f.scale(1 / f.norm())
	low, high, mid := pair{f.b, -f.a}, pair{-f.b, f.a}, f
	for range 64 {
		if f.cross(r.response(mid)) > 0 {
			high = mid
		} else {
			low = mid
		}
		next := pair{low.a + high.a, low.b + high.b}
		mid = next.scale(1 / next.norm())
	}
	return mid
}

// response is the force and moment/half that the plane s makes: bolts where it opens, contact where it closes.
func (r rocking) response(s pair) pair {
	g, first := r.contact(s)
	out := pair{-g, -first}
	for _, y := range r.y {
		e := r.e(y)
		if t := r.bolt * s.at(e); t > 0 {
			out.a += t
			out.b += t * e
		}
	}
	return out
}

// contact is the resultant of the closed part of the plane and its moment/half.
func (r rocking) contact(s pair) (force, first float64) {
	p, q := -1.0, 1.0
	switch lowEnd, highEnd := s.at(-1), s.at(1); {
	case lowEnd >= 0 && highEnd >= 0:
		return 0, 0
	case lowEnd > 0:
		p = -s.a / s.b
	case highEnd > 0:
		q = -s.a / s.b
	}
	sp, sq := math.Min(0, s.at(p)), math.Min(0, s.at(q))
	force = -r.edge * (q - p) * (sp + sq) / 2
	first = -r.edge * (q - p) * (sp*(2*p+q) + sq*(p+2*q)) / 6
	return force, first
}

// state writes the tensions of plane s and says how the joint stands.
func (r rocking) state(dst []float64, s, f pair) AxisState {
	for i, y := range r.y {
		dst[i] = math.Max(0, r.bolt*s.at(r.e(y)))
	}
	g := r.response(s)
	st := AxisState{Residual: math.Hypot(g.a-f.a, g.b-f.b) / f.norm(), FromLow: s.b > 0}
	force, first := r.contact(s)
	if !(force > 0) {
		st.Open = true
		return st
	}
	st.ContactN, st.ContactAt = force, r.mid+r.half*first/force
	st.PressureMPa = -math.Min(s.at(-1), s.at(1))
	st.DepthMM = 2 * r.half
	if math.Abs(s.a) < math.Abs(s.b) {
		st.DepthMM = r.half * (1 - s.a/math.Abs(s.b))
	}
	return st
}
