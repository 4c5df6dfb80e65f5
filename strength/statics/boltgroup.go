package statics

// Bolt groups in a faying plane: shear by the elastic vector method, and what a force and moments do to the
// group's own centroid. Tension is in tension.go.

import "math"

// GroupLoad is what acts on a bolt group at a reference point of its faying plane with axes u, v and
// normal w = u x v pointing out of the support: N > 0 pulls the joint apart.
// A pull T at (u, v) has Mu = v T and Mv = -u T; Torsion turns u towards v.
type GroupLoad struct {
	Vu, Vv, N       float64 // N
	Mu, Mv, Torsion float64 // N*mm, about the reference point
}

// MovedTo gives the same load about the point p (mm, from the present reference point).
func (l GroupLoad) MovedTo(p Vec2) GroupLoad {
	l.Mu -= p.Y * l.N
	l.Mv += p.X * l.N
	l.Torsion -= p.X*l.Vv - p.Y*l.Vu
	return l
}

// Centroid is the mean of the bolt positions (mm), for bolts of one size. No positions give the origin.
func Centroid(pos []Vec2) Vec2 {
	var c Vec2
	for _, p := range pos {
		c.X += p.X
		c.Y += p.Y
	}
	n := math.Max(1, float64(len(pos)))
	return Vec2{c.X / n, c.Y / n}
}

// PolarInertia is Ip = sum(x^2 + y^2) about the centroid (mm^2), for bolts of one size.
func PolarInertia(pos []Vec2) float64 {
	c, ip := Centroid(pos), 0.0
	for _, p := range pos {
		x, y := p.X-c.X, p.Y-c.Y
		ip += x*x + y*y
	}
	return ip
}

// Shears writes each bolt's share (N) of the in-plane load by the elastic vector method into dst, which must
// be as long as pos: Vu/n - T y/Ip and Vv/n + T x/Ip, with x, y from the centroid.
// T is about the centroid (see GroupLoad.MovedTo). The shares sum to the load; bolts are of one size,
// the plate is rigid, friction is nil. Source: AISC Manual Part 7, elastic method.
// A torsion on bolts that all stand on one point has no path and is a *NoPathError.
func Shears(dst []Vec2, pos []Vec2, Vu, Vv, T float64) error {
	if err := checkBolts(len(dst), pos); err != nil {
		return err
	}
	if err := checkLoads(Vu, Vv, T); err != nil {
		return err
	}
	c, ip, n := Centroid(pos), PolarInertia(pos), float64(len(pos))
	k := 0.0
	if T != 0 {
		if !(ip > tiny*tiny) {
			return &NoPathError{"torsion", "the bolts stand on one point and have no arm"}
		}
		k = T / ip
	}
	for i, p := range pos {
		dst[i] = Vec2{Vu/n - k*(p.Y-c.Y), Vv/n + k*(p.X-c.X)}
	}
	return nil
}

// tiny is a length in mm below which two positions count as one.
const tiny = 1e-6

func checkBolts(nDst int, pos []Vec2) error {
	if len(pos) == 0 {
		return &InputError{What: "bolts", Got: 0, Want: "at least one position"}
	}
	if nDst != len(pos) {
		return &InputError{What: "len(dst)", Got: float64(nDst), Want: "the number of bolts"}
	}
	for _, p := range pos {
		if err := checkWithin("bolt position", math.Max(math.Abs(p.X), math.Abs(p.Y)), maxLength); err != nil {
			return err
		}
	}
	return nil
}

func checkLoads(f1, f2, m float64) error {
	if err := checkWithin("force", f1, maxForce); err != nil {
		return err
	}
	if err := checkWithin("force", f2, maxForce); err != nil {
		return err
	}
	return checkWithin("moment", m, maxMoment)
}
