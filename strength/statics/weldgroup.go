package statics

// Weld groups as lines of unit throat in space: length, centroid, inertia, and the force per length.

import (
	"fmt"
	"math"
)

// WeldSegment is a straight weld from A to B (mm). Weight in (0, 1] is the part of its length that is effective
// (intermittent welds, deducted ends), taken as spread evenly.
type WeldSegment struct {
	A, B   Vec3
	Weight float64
}

// WeldGroup is a set of weld lines with all that depends on the lines alone.
type WeldGroup struct {
	LengthMM float64 // effective length
	Centroid Vec3    // mm
	second   sym3    // integral of r r^T about the centroid, mm^3
	inverse  sym3    // inverse of J, or its pseudo-inverse for welds on one line
	line     Vec3    // direction of that one line; zero when the group is not a line
	reach    float64 // distance of the furthest end from the centroid, mm
	segs     []WeldSegment
}

// WeldPeak is the worst point of a weld group.
type WeldPeak struct {
	Q       Vec3 // force per effective length there, N/mm
	At      Vec3 // mm
	Segment int  // index of the segment
}

// NewWeldGroup works out length, centroid and inertia of the lines: J = integral of (|r|^2 I - r r^T) ds.
// Coordinates are within +/- 1e6 mm and no segment is shorter than 1e-6 mm; else an *InputError with the index.
func NewWeldGroup(segs []WeldSegment) (WeldGroup, error) {
	g := WeldGroup{segs: append([]WeldSegment(nil), segs...)}
	if len(segs) == 0 {
		return WeldGroup{}, &InputError{What: "segments", Got: 0, Want: "at least one weld segment"}
	}
	for i, s := range segs {
		if err := s.check(i); err != nil {
			return WeldGroup{}, err
		}
		l := s.length()
		g.LengthMM += l
		g.Centroid = g.Centroid.Add(s.A.Add(s.B).Scale(l / 2))
	}
	g.Centroid = g.Centroid.Scale(1 / g.LengthMM)
	g.sumInertia()
	return g, nil
}

func (s WeldSegment) length() float64 { return s.Weight * s.B.Sub(s.A).Norm() }

// usable keeps the good case free of the strings that check makes.
func (s WeldSegment) usable() bool {
	far := 0.0
	for _, x := range [6]float64{s.A.X, s.A.Y, s.A.Z, s.B.X, s.B.Y, s.B.Z} {
		far = math.Max(far, math.Abs(x))
	}
	return far <= maxLength && s.Weight > 0 && s.Weight <= 1 && s.length() >= tiny
}

func (s WeldSegment) check(i int) error {
	if s.usable() {
		return nil
	}
	for _, x := range [6]float64{s.A.X, s.A.Y, s.A.Z, s.B.X, s.B.Y, s.B.Z} {
		if err := checkWithin(fmt.Sprintf("segments[%d]", i), x, maxLength); err != nil {
			return err
		}
	}
	if !(s.Weight > 0 && s.Weight <= 1) {
		return &InputError{fmt.Sprintf("segments[%d].Weight", i), s.Weight, "more than 0 and at most 1"}
	}
	if l := s.length(); !(l >= tiny) {
		return &InputError{fmt.Sprintf("segments[%d] length", i), l, "at least 1e-6 mm"}
	}
	return nil
}

func (g *WeldGroup) sumInertia() {
	var far Vec3
	for _, s := range g.segs {
		a, b, l := s.A.Sub(g.Centroid), s.B.Sub(g.Centroid), s.length()
		g.second = g.second.plusOuter(a, l/6).plusOuter(b, l/6).plusOuter(a.Add(b), l/6)
		far = further(far, further(a, b))
	}
	g.reach = far.Norm()
	axis := far.Unit()
	if g.onLine(axis) {
		// J has no inertia about the line; elsewhere it is (trace) (I - axis axis^T).
		g.line = axis
		g.inverse = sym3{xx: 1, yy: 1, zz: 1}.plusOuter(axis, -1).scale(1 / g.second.trace())
		return
	}
	g.inverse = g.inertia().inverse()
}

func further(a, b Vec3) Vec3 {
	if b.Dot(b) > a.Dot(a) {
		return b
	}
	return a
}

// onLine reports whether every end lies within a millionth of the group's size of the line along axis.
func (g *WeldGroup) onLine(axis Vec3) bool {
	for _, s := range g.segs {
		off := math.Max(axis.Cross(s.A.Sub(g.Centroid)).Norm(), axis.Cross(s.B.Sub(g.Centroid)).Norm())
		if off > 1e-6*g.reach {
			return false
		}
	}
	return true
}

func (m sym3) trace() float64 { return m.xx + m.yy + m.zz }

func (g *WeldGroup) inertia() sym3 { return g.second.scale(-1).plusDiagonal(g.second.trace()) }

// Inertia gives the moments of inertia of the lines per unit throat (mm^3) about axes through the centroid: Jx is the
// integral of y^2 + z^2, and so on; for a group in the plane z = 0, Jx and Jy are the bending and Jz the polar values.
func (g *WeldGroup) Inertia() (Jx, Jy, Jz float64) {
	j := g.inertia()
	return j.xx, j.yy, j.zz
}

// Products gives the integrals of xy, yz and zx about the centroid (mm^3).
func (g *WeldGroup) Products() (Pxy, Pyz, Pzx float64) { return g.second.xy, g.second.yz, g.second.zx }

// Segments is the number of segments.
func (g *WeldGroup) Segments() int { return len(g.segs) }

// turn gives w = J^-1 M, or the *NoPathError of a torsion about welds that lie on one line.
func (g *WeldGroup) turn(F, M Vec3) (Vec3, error) {
	if !F.finite() || !M.finite() {
		return Vec3{}, &InputError{What: "wrench on the welds", Got: F.Norm() + M.Norm(), Want: "finite numbers"}
	}
	if t := math.Abs(M.Dot(g.line)); t > 1e-9*(M.Norm()+F.Norm()*g.reach) {
		return Vec3{}, &NoPathError{"torsion about the weld line", "all welds lie on one straight line"}
	}
	return g.inverse.times(M), nil
}

// SegmentEnds gives the force per effective length (N/mm) at ends A and B of segment i for F (N) and M (N*mm) at the centroid:
// q(r) = F/L + w x r with w = J^-1 M. It varies linearly between them.
//
// Source: elastic vector method for lines of unit throat, AISC Manual Part 8 for groups in a plane; in space the same
// rigid-body rule, elementary statics, no clause.
func (g *WeldGroup) SegmentEnds(i int, F, M Vec3) (qa, qb Vec3, err error) {
	if i < 0 || i >= len(g.segs) {
		return Vec3{}, Vec3{}, &InputError{"segment", float64(i), "the index of a segment"}
	}
	f, err := g.Field(F, M)
	if err != nil {
		return Vec3{}, Vec3{}, err
	}
	return f.At(g.segs[i].A), f.At(g.segs[i].B), nil
}

// A WeldField is the force per effective length (N/mm) over a weld group under one load, see SegmentEnds.
type WeldField struct{ even, spin, about Vec3 }

// Field is the force per effective length everywhere for F (N) and M (N*mm) at the centroid.
func (g *WeldGroup) Field(F, M Vec3) (WeldField, error) {
	w, err := g.turn(F, M)
	return WeldField{F.Scale(1 / g.LengthMM), w, g.Centroid}, err
}

// At is the force per effective length at a point of the group.
func (f *WeldField) At(p Vec3) Vec3 { return f.even.Add(f.spin.Cross(p.Sub(f.about))) }

// Peak gives the point with the greatest |q| for F (N) and M (N*mm) at the centroid, see SegmentEnds. |q|^2 is a convex
// parabola along a segment, so the worst point is an end; the first of equals is given.
func (g *WeldGroup) Peak(F, M Vec3) (WeldPeak, error) {
	f, err := g.Field(F, M)
	if err != nil {
		return WeldPeak{}, err
	}
	best, worst := WeldPeak{Q: f.At(g.segs[0].A), At: g.segs[0].A}, 0.0
	for i, s := range g.segs {
		for _, p := range [2]Vec3{s.A, s.B} {
			q := f.At(p)
			// The margin keeps the first of points that differ only by rounding, on every machine.
			if n := q.Norm(); n > worst*(1+1e-12) {
				worst, best = n, WeldPeak{Q: q, At: p, Segment: i}
			}
		}
	}
	return best, nil
}

// PeakOf is Peak for a wrench given about any point.
func (g *WeldGroup) PeakOf(w Wrench) (WeldPeak, error) {
	m := w.MovedTo(g.Centroid)
	return g.Peak(m.F, m.M)
}
