package statics

// Sections built of thin rectangles in one plane with axes y, z: area, inertia, elastic and plastic moduli.

import (
	"fmt"
	"math"
)

// Piece is one rectangle of a section: centre (Y, Z), chord length L and thickness T (mm), and the angle of
// the chord from the y axis (rad). Pieces must not overlap; that is not checked.
type Piece struct{ Y, Z, L, T, Ang float64 }

// Section is what a set of pieces amounts to. Inertias are about axes through the centroid.
type Section struct {
	Area                   float64 // mm^2
	CY, CZ                 float64 // centroid, mm
	Iyy, Izz, Iyz          float64 // integrals of z^2, y^2, y z (mm^4)
	YMin, YMax, ZMin, ZMax float64 // extreme corners of the rectangles, mm
	WyTop, WyBottom        float64 // Iyy over the distance from the centroid to ZMax, ZMin (mm^3)
	WzTop, WzBottom        float64 // Izz over the distance from the centroid to YMax, YMin (mm^3)
	WyLeast, WzLeast       float64 // moment about y alone, about z alone, over the greatest stress at any corner, unsymmetric bending included (mm^3)
}

// NewSection sums up pieces acting as one section, exactly and with the rectangles' true corners.
// L and T are more than 0 and at most 1e6 mm; else an *InputError with the index. Source: elementary statics, no clause.
func NewSection(pieces []Piece) (Section, error) {
	if err := checkPieces(pieces); err != nil {
		return Section{}, err
	}
	s := Section{YMin: math.Inf(1), YMax: math.Inf(-1), ZMin: math.Inf(1), ZMax: math.Inf(-1)}
	var room [16]Vec2
	dirs := room[:0] // of the pieces
	for _, p := range pieces {
		dir := p.dir()
		dirs = append(dirs, dir)
		a := p.L * p.T
		s.Area += a
		s.CY += a * p.Y
		s.CZ += a * p.Z
		s.stretch(p.corners(dir))
	}
	s.CY, s.CZ = s.CY/s.Area, s.CZ/s.Area
	for i, p := range pieces {
		yy, zz, yz := p.ownInertia(dirs[i])
		y, z, a := p.Y-s.CY, p.Z-s.CZ, p.L*p.T
		s.Iyy += yy + a*z*z
		s.Izz += zz + a*y*y
		s.Iyz += yz + a*y*z
	}
	s.WyTop, s.WyBottom = s.Iyy/(s.ZMax-s.CZ), s.Iyy/(s.CZ-s.ZMin)
	s.WzTop, s.WzBottom = s.Izz/(s.YMax-s.CY), s.Izz/(s.CY-s.YMin)
	s.WyLeast, s.WzLeast = s.least(pieces, dirs)
	return s, nil
}

// least gives the moduli that hold at every corner for a moment about one axis alone: one over the greatest stress of a unit moment, by StressAt.
func (s *Section) least(pieces []Piece, dirs []Vec2) (wy, wz float64) {
	var stressY, stressZ float64
	det := s.Iyy*s.Izz - s.Iyz*s.Iyz
	for i, p := range pieces {
		for _, c := range p.corners(dirs[i]) {
			y, z := c.X-s.CY, c.Y-s.CZ
			stressY = max(stressY, math.Abs((s.Izz*z-s.Iyz*y)/det))
			stressZ = max(stressZ, math.Abs((s.Iyy*y-s.Iyz*z)/det))
		}
	}
	return 1 / stressY, 1 / stressZ
}

// LeastInertia is the inertia about the weaker principal axis (mm^4).
func (s Section) LeastInertia() float64 {
	return (s.Iyy+s.Izz)/2 - math.Hypot((s.Iyy-s.Izz)/2, s.Iyz)
}

func checkPieces(pieces []Piece) error {
	if len(pieces) == 0 {
		return &InputError{What: "pieces", Got: 0, Want: "at least one rectangle"}
	}
	for i, p := range pieces {
		if p.usable() {
			continue
		}
		if err := p.check(i); err != nil {
			return err
		}
	}
	return nil
}

// usable keeps the good case free of the strings that check makes.
func (p Piece) usable() bool {
	return p.L > 0 && p.T > 0 && p.L <= maxLength && p.T <= maxLength &&
		math.Abs(p.Y) <= maxLength && math.Abs(p.Z) <= maxLength && math.Abs(p.Ang) <= 2*math.Pi
}

func (p Piece) check(i int) error {
	at := fmt.Sprintf("pieces[%d].", i)
	if err := checkPositive(at+"L", p.L, maxLength); err != nil {
		return err
	}
	if err := checkPositive(at+"T", p.T, maxLength); err != nil {
		return err
	}
	if err := checkWithin(at+"Y", p.Y, maxLength); err != nil {
		return err
	}
	if err := checkWithin(at+"Z", p.Z, maxLength); err != nil {
		return err
	}
	return checkWithin(at+"Ang", p.Ang, 2*math.Pi)
}

// dir is the direction of the chord.
func (p Piece) dir() Vec2 {
	sin, cos := math.Sincos(p.Ang)
	return Vec2{cos, sin}
}

// ownInertia is the rectangle's integrals of z^2, y^2 and yz about its own centre; dir is its direction.
func (p Piece) ownInertia(dir Vec2) (yy, zz, yz float64) {
	cos, sin := dir.X, dir.Y
	strong, weak := p.T*p.L*p.L*p.L/12, p.L*p.T*p.T*p.T/12
	return strong*sin*sin + weak*cos*cos, strong*cos*cos + weak*sin*sin, (strong - weak) * sin * cos
}

func (p Piece) corners(dir Vec2) [4]Vec2 {
	cos, sin := dir.X, dir.Y
	a, b := Vec2{cos * p.L / 2, sin * p.L / 2}, Vec2{-sin * p.T / 2, cos * p.T / 2}
	return [4]Vec2{
		{p.Y - a.X - b.X, p.Z - a.Y - b.Y}, {p.Y + a.X - b.X, p.Z + a.Y - b.Y},
		{p.Y + a.X + b.X, p.Z + a.Y + b.Y}, {p.Y - a.X + b.X, p.Z - a.Y + b.Y},
	}
}

func (s *Section) stretch(corners [4]Vec2) {
	for _, c := range corners {
		s.YMin, s.YMax = min(s.YMin, c.X), max(s.YMax, c.X)
		s.ZMin, s.ZMax = min(s.ZMin, c.Y), max(s.ZMax, c.Y)
	}
}

// StressAt is the normal stress (MPa, tension positive) at (y, z) for axial force N at the centroid and moments My, Mz
// (N*mm), unsymmetric bending included. My > 0 stretches +z and Mz > 0 stretches +y.
// Source: elementary statics, no clause.
func (s Section) StressAt(y, z, N, My, Mz float64) float64 {
	y, z = y-s.CY, z-s.CZ
	det := s.Iyy*s.Izz - s.Iyz*s.Iyz
	return N/s.Area + ((My*s.Izz-Mz*s.Iyz)*z+(Mz*s.Iyy-My*s.Iyz)*y)/det
}

// FirstMoments gives the integrals of z and y over part (some of the section's pieces) about the centroid of the whole (mm^3):
// Q of the shear flow V Q/I at the cut that separates part from the rest. Qy goes with Iyy, Qz with Izz.
func (s Section) FirstMoments(part []Piece) (Qy, Qz float64) {
	for _, p := range part {
		Qy += p.L * p.T * (p.Z - s.CZ)
		Qz += p.L * p.T * (p.Y - s.CY)
	}
	return Qy, Qz
}

// PlasticModuli gives the plastic moduli about the y and the z axis (mm^3): each is the first moment about the line, parallel to
// that axis, which halves the area. Exact for every angle. Source: elementary statics, no clause.
func PlasticModuli(pieces []Piece) (Zy, Zz float64, err error) {
	s, err := NewSection(pieces)
	if err != nil {
		return 0, 0, err
	}
	Zy = halving(pieces, s.Area, Vec2{0, 1}, s.CZ, s.ZMin, s.ZMax)
	Zz = halving(pieces, s.Area, Vec2{1, 0}, s.CY, s.YMin, s.YMax)
	return Zy, Zz, nil
}

// halving finds the line square to n with half the area below and gives the first moment about it. The result is
// stationary there, so what bisection leaves of the line's position does not matter.
func halving(pieces []Piece, area float64, n Vec2, centroid, lo, hi float64) float64 {
	var z float64
	for range 60 {
		h := (lo + hi) / 2
		a, first := areaBelow(pieces, n, h, centroid)
		z = -2*first - (h-centroid)*(area-2*a)
		if 2*a < area {
			lo = h
		} else {
			hi = h
		}
	}
	return z
}

// areaBelow gives area and first moment about the centroid of what lies below height h along n.
func areaBelow(pieces []Piece, n Vec2, h, centroid float64) (area, first float64) {
	for _, p := range pieces {
		m := below(p.corners(p.dir()), -h, n)
		area += m.a
		first += n.X*m.x + n.Y*m.y - centroid*m.a
	}
	return area, first
}
