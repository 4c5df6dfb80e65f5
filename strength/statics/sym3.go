package statics

// Symmetric 3 x 3 matrices: inertia of weld lines, tangent of a tilting joint.

import "math"

// sym3 holds xx, yy, zz, xy, yz, zx.
type sym3 struct{ xx, yy, zz, xy, yz, zx float64 }

func (m sym3) scale(k float64) sym3 {
	return sym3{k * m.xx, k * m.yy, k * m.zz, k * m.xy, k * m.yz, k * m.zx}
}

func (m sym3) plus(o sym3) sym3 {
	return sym3{m.xx + o.xx, m.yy + o.yy, m.zz + o.zz, m.xy + o.xy, m.yz + o.yz, m.zx + o.zx}
}

func (m sym3) plusOuter(r Vec3, k float64) sym3 {
	return m.plus(sym3{r.X * r.X, r.Y * r.Y, r.Z * r.Z, r.X * r.Y, r.Y * r.Z, r.Z * r.X}.scale(k))
}

func (m sym3) plusDiagonal(k float64) sym3 { return m.plus(sym3{xx: k, yy: k, zz: k}) }

func (m sym3) times(v Vec3) Vec3 {
	return Vec3{
		m.xx*v.X + m.xy*v.Y + m.zx*v.Z,
		m.xy*v.X + m.yy*v.Y + m.yz*v.Z,
		m.zx*v.X + m.yz*v.Y + m.zz*v.Z,
	}
}

// inverse is for positive definite matrices; the caller has excluded singular ones. It goes by Cholesky factors,
// which lose less than cofactors when one direction is far softer than the others.
func (m sym3) inverse() sym3 {
	l11, l21, l31, l22, l32, l33 := m.factor()
	a, b, c := 1/l11, 1/l22, 1/l33
	d := -l21 * a * b
	e := -l32 * b * c
	g := -(l31*a + l32*d) * c
	return sym3{
		xx: a*a + d*d + g*g, yy: b*b + e*e, zz: c * c,
		xy: d*b + g*e, yz: e * c, zx: g * c,
	}
}

// factor gives the lower triangle L of m = L L^T; a pivot lost to rounding is held at a speck of its diagonal.
func (m sym3) factor() (l11, l21, l31, l22, l32, l33 float64) {
	l11 = root(m.xx, m.xx)
	l21, l31 = m.xy/l11, m.zx/l11
	l22 = root(m.yy-l21*l21, m.yy)
	l32 = (m.yz - l21*l31) / l22
	l33 = root(m.zz-l31*l31-l32*l32, m.zz)
	return l11, l21, l31, l22, l32, l33
}

func root(pivot, diagonal float64) float64 { return math.Sqrt(math.Max(pivot, 1e-16*diagonal)) }
