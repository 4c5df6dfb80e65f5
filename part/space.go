package part

import "math"

// Vec is a point (mm), a direction, a force (N) or a moment (N*mm) in bracket axes.
type Vec struct{ X, Y, Z float64 }

func (a Vec) Add(b Vec) Vec                  { return Vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a Vec) Sub(b Vec) Vec                  { return Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a Vec) Scale(k float64) Vec            { return Vec{a.X * k, a.Y * k, a.Z * k} }
func (a Vec) Dot(b Vec) float64              { return float64(a.X*b.X) + float64(a.Y*b.Y) + float64(a.Z*b.Z) }
func (a Vec) Norm() float64                  { return math.Sqrt(a.Dot(a)) }
func (a Vec) AddScaled(k float64, b Vec) Vec { return a.Add(b.Scale(k)) }

// Cross is the vector product a x b.
func (a Vec) Cross(b Vec) Vec {
	return Vec{
		float64(a.Y*b.Z) - float64(a.Z*b.Y),
		float64(a.Z*b.X) - float64(a.X*b.Z),
		float64(a.X*b.Y) - float64(a.Y*b.X),
	}
}

// Unit is a scaled to length 1; the zero vector stays zero.
func (a Vec) Unit() Vec {
	n := a.Norm()
	if n == 0 {
		return Vec{}
	}
	return a.Scale(1 / n)
}

// Pose places a flat thing: plane coordinates (u, v) sit at Origin + u U + v V. U and V are unit vectors square to each
// other; W = U x V points away from the face that is up on the cutting table's other side, and carries the etch marks.
type Pose struct{ Origin, U, V Vec }

// W is the normal of the plane.
func (p Pose) W() Vec { return p.U.Cross(p.V) }

// At is the point of space at plane coordinates (u, v), w along the normal.
func (p Pose) At(u, v, w float64) Vec {
	return p.Origin.AddScaled(u, p.U).AddScaled(v, p.V).AddScaled(w, p.W())
}

// Local gives plane coordinates (u, v, w) of a point of space.
func (p Pose) Local(q Vec) (u, v, w float64) {
	d := q.Sub(p.Origin)
	return d.Dot(p.U), d.Dot(p.V), d.Dot(p.W())
}
