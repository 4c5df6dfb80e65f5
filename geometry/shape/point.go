package shape

// Points, boxes and intervals.

import "math"

// Point is a place or a vector in the plane, in mm.
type Point struct{ X, Y float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q, the vector from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Scale returns p with both coordinates multiplied by k.
func (p Point) Scale(k float64) Point { return Point{p.X * k, p.Y * k} }

// Dot returns the scalar product. Products are rounded so that signs agree between machines with and without fused
// multiply-add.
func (p Point) Dot(q Point) float64 { return float64(p.X*q.X) + float64(p.Y*q.Y) }

// Cross returns the z component of p x q: positive when q points to the left of p.
func (p Point) Cross(q Point) float64 { return float64(p.X*q.Y) - float64(p.Y*q.X) }

// Norm returns the length of p, for coordinates between about 1e-150 and 1e150 (math.Hypot costs four times as much).
func (p Point) Norm() float64 { return math.Sqrt(p.Dot(p)) }

// Unit returns p scaled to length 1, or the zero vector when p has no length.
func (p Point) Unit() Point {
	n := p.Norm()
	if n == 0 {
		return Point{}
	}
	return Point{p.X / n, p.Y / n}
}

// Perp returns the left normal of p: p turned by +90 degrees.
func (p Point) Perp() Point { return Point{-p.Y, p.X} }

// Dist returns the distance between p and q.
func (p Point) Dist(q Point) float64 { return p.Sub(q).Norm() }

// Lerp returns the point at fraction t of the way from p to q.
func (p Point) Lerp(q Point, t float64) Point {
	return Point{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y)}
}

// Angle returns the direction of p in radians, in (-pi, pi].
func (p Point) Angle() float64 { return math.Atan2(p.Y, p.X) }

// Rotate returns p turned about the origin, counter-clockwise positive.
func (p Point) Rotate(rad float64) Point {
	s, c := math.Sincos(rad)
	return p.turn(c, s)
}

// RotateAbout returns p turned about a centre, counter-clockwise positive.
func (p Point) RotateAbout(rad float64, about Point) Point {
	return p.Sub(about).Rotate(rad).Add(about)
}

func (p Point) turn(c, s float64) Point { return Point{p.X*c - p.Y*s, p.X*s + p.Y*c} }

func (p Point) finite() bool {
	const far = math.MaxFloat64
	return math.Abs(p.X) <= far && math.Abs(p.Y) <= far
}

// Polar returns the vector of length r in direction rad.
func Polar(r, rad float64) Point {
	s, c := math.Sincos(rad)
	return Point{r * c, r * s}
}

// Box is an axis-parallel rectangle. The box of nothing has Min above Max (see EmptyBox).
type Box struct{ Min, Max Point }

// EmptyBox returns the box that contains nothing and grows from any point.
func EmptyBox() Box {
	inf := math.Inf(1)
	return Box{Point{inf, inf}, Point{-inf, -inf}}
}

// Empty reports whether the box contains nothing.
func (b Box) Empty() bool { return b.Min.X > b.Max.X || b.Min.Y > b.Max.Y }

// Width returns the extent along x, 0 for an empty box.
func (b Box) Width() float64 { return max(0, b.Max.X-b.Min.X) }

// Height returns the extent along y, 0 for an empty box.
func (b Box) Height() float64 { return max(0, b.Max.Y-b.Min.Y) }

// Center returns the middle of the box.
func (b Box) Center() Point { return b.Min.Lerp(b.Max, 0.5) }

// Extend returns the box grown to hold p.
func (b Box) Extend(p Point) Box {
	return Box{
		Point{min(b.Min.X, p.X), min(b.Min.Y, p.Y)},
		Point{max(b.Max.X, p.X), max(b.Max.Y, p.Y)},
	}
}

// Union returns the smallest box that holds both.
func (b Box) Union(c Box) Box {
	return Box{
		Point{min(b.Min.X, c.Min.X), min(b.Min.Y, c.Min.Y)},
		Point{max(b.Max.X, c.Max.X), max(b.Max.Y, c.Max.Y)},
	}
}

// Grow returns the box moved out by d on every side.
func (b Box) Grow(d float64) Box {
	return Box{Point{b.Min.X - d, b.Min.Y - d}, Point{b.Max.X + d, b.Max.Y + d}}
}

// Contains reports whether p is in the box or on its edge.
func (b Box) Contains(p Point) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}

// gap returns a lower bound of the distance between anything in b and anything in c.
func (b Box) gap(c Box) float64 {
	dx := max(0, max(b.Min.X-c.Max.X, c.Min.X-b.Max.X))
	dy := max(0, max(b.Min.Y-c.Max.Y, c.Min.Y-b.Max.Y))
	return max(dx, dy)
}

// Interval is a stretch along a cut line, in mm from the line's base point, Lo < Hi.
type Interval struct{ Lo, Hi float64 }

// Length returns Hi - Lo.
func (iv Interval) Length() float64 { return iv.Hi - iv.Lo }

// Overlaps reports whether two boxes share a point.
func (b Box) Overlaps(c Box) bool {
	return b.Min.X <= c.Max.X && c.Min.X <= b.Max.X && b.Min.Y <= c.Max.Y && c.Min.Y <= b.Max.Y
}
