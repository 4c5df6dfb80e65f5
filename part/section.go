package part

// Sections of members, and where round things lie.

import (
	"math"

	"lugwright/geometry/shape"
)

// Section is the section in the plane of V and W, as Profile's words place it. Toes of angles are square; a root or corner radius that does not fit is left out.
func (p Profile) Section() shape.Outline {
	switch p.Kind {
	case Angle:
		return shape.Outline{Outer: p.angle()}
	case RoundTube:
		return shape.Outline{Outer: shape.Circle(shape.Point{}, p.AMM), Holes: []shape.Loop{shape.Circle(shape.Point{}, p.AMM-2*p.TMM)}}
	case RoundBar:
		return shape.Outline{Outer: shape.Circle(shape.Point{}, p.AMM)}
	case FlatBar:
		return shape.Outline{Outer: rounded(p.AMM, p.TMM, 0)}
	}
	return shape.Outline{Outer: rounded(p.AMM, p.BMM, p.RootMM), Holes: []shape.Loop{rounded(p.AMM-2*p.TMM, p.BMM-2*p.TMM, p.RootMM-p.TMM)}}
}

func (p Profile) angle() shape.Loop {
	a, b, t, r := p.AMM, p.BMM, p.TMM, p.RootMM
	if t+r >= min(a, b) {
		r = 0
	}
	l := shape.Polyline(shape.Point{}, shape.Point{X: a}, shape.Point{X: a, Y: t}, shape.Point{X: t + r, Y: t}, shape.Point{X: t, Y: t + r},
		shape.Point{X: t, Y: b}, shape.Point{Y: b})
	if r > 0 {
		l[3].Bulge = -math.Tan(math.Pi / 8)
	}
	return l.Normalize()
}

// rounded is a rectangle about the origin.
func rounded(width, height, radius float64) shape.Loop {
	a, b := shape.Point{X: -width / 2, Y: -height / 2}, shape.Point{X: width / 2, Y: height / 2}
	if radius > 0 {
		if l, err := shape.RoundedRect(a, b, radius); err == nil {
			return l
		}
	}
	return shape.Rect(a, b)
}

// Pose stands in the middle of what the pin passes through, W along its axis.
func (p *Pin) Pose() Pose {
	at := p.Center
	if n := len(p.Seats); n > 0 {
		first, last := p.Seats[0], p.Seats[n-1]
		at = at.AddScaled((first.AtMM-first.ThicknessMM/2+last.AtMM+last.ThicknessMM/2)/2, p.Axis)
	}
	return AlongAxis(at, p.Axis)
}

// AlongAxis is a pose whose W is the axis.
func AlongAxis(at, axis Vec) Pose {
	side := Vec{X: 1}
	if math.Abs(axis.X) > math.Abs(axis.Y) {
		side = Vec{Y: 1}
	}
	u := side.Cross(axis).Unit()
	return Pose{Origin: at, U: u, V: axis.Unit().Cross(u)}
}
