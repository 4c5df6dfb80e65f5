package statics

// Vectors and wrenches: the plain numbers that everything else here is made of.

import "math"

// Vec2 is a point (mm) or force (N) in a plane; X is the plane's first axis (u), Y its second (v).
type Vec2 struct{ X, Y float64 }

// Norm is the length of v.
func (v Vec2) Norm() float64 { return math.Hypot(v.X, v.Y) }

// Vec3 is a point (mm), force (N) or moment (N*mm) in space.
type Vec3 struct{ X, Y, Z float64 }

// Add is a + b.
func (a Vec3) Add(b Vec3) Vec3 { return Vec3{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub is a - b.
func (a Vec3) Sub(b Vec3) Vec3 { return Vec3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Scale is k a.
func (a Vec3) Scale(k float64) Vec3 { return Vec3{k * a.X, k * a.Y, k * a.Z} }

// Dot is the scalar product. Products are rounded one by one so that every machine gives the same bits.
func (a Vec3) Dot(b Vec3) float64 {
	return float64(a.X*b.X) + float64(a.Y*b.Y) + float64(a.Z*b.Z)
}

// Cross is the right-handed vector product a x b.
func (a Vec3) Cross(b Vec3) Vec3 {
	return Vec3{
		float64(a.Y*b.Z) - float64(a.Z*b.Y),
		float64(a.Z*b.X) - float64(a.X*b.Z),
		float64(a.X*b.Y) - float64(a.Y*b.X),
	}
}

// Norm is the length of a.
func (a Vec3) Norm() float64 { return math.Sqrt(a.Dot(a)) }

// Unit is a divided by its length; the zero vector stays zero.
func (a Vec3) Unit() Vec3 {
	n := a.Norm()
	if n == 0 {
		return Vec3{}
	}
	return Vec3{a.X / n, a.Y / n, a.Z / n}
}

func (a Vec3) finite() bool { return finite(a.X) && finite(a.Y) && finite(a.Z) }

// Wrench is a force F (N) with a moment M (N*mm) about the point At (mm).
type Wrench struct{ F, M, At Vec3 }

// MovedTo gives the same wrench about p: M grows by (At - p) x F.
func (w Wrench) MovedTo(p Vec3) Wrench {
	return Wrench{F: w.F, M: w.M.Add(w.At.Sub(p).Cross(w.F)), At: p}
}

// Add sums two wrenches about w's point; o is moved there first.
func (w Wrench) Add(o Wrench) Wrench {
	o = o.MovedTo(w.At)
	return Wrench{F: w.F.Add(o.F), M: w.M.Add(o.M), At: w.At}
}

// In resolves the wrench into axes x, y, z (unit vectors, square to each other) with origin o:
// the result's F and M are components along those axes and its At is the origin of them.
func (w Wrench) In(o, x, y, z Vec3) Wrench {
	m := w.MovedTo(o)
	return Wrench{F: Vec3{m.F.Dot(x), m.F.Dot(y), m.F.Dot(z)}, M: Vec3{m.M.Dot(x), m.M.Dot(y), m.M.Dot(z)}}
}
