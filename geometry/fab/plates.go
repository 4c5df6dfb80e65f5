package fab

// Gusset outlines and spreads.

import (
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Corner is a plate in the corner of two faces: one runs along u at v = 0, the other along v at u = 0.
type Corner struct {
	AlongU, AlongV float64 // legs
	Snipe          float64 // 45 degree cut at the corner
	NoseU, NoseV   float64 // square blunt ends: at the tip of the u leg (measured along v) and of the v leg (along u)
}

// Fits says whether the outline is a plate: both legs longer than the snipe, the noses within the legs.
func (c Corner) Fits() bool {
	return c.Snipe >= 0 && c.Snipe < c.AlongU && c.Snipe < c.AlongV &&
		c.NoseU >= 0 && c.NoseV >= 0 && c.NoseU <= c.AlongV && c.NoseV <= c.AlongU
}

// Outline draws it, counter-clockwise for positive u and v. A corner that fits gives a sound loop.
func (c Corner) Outline() shape.Loop {
	return shape.Polyline(
		shape.Point{X: c.Snipe}, shape.Point{X: c.AlongU},
		shape.Point{X: c.AlongU, Y: c.NoseU}, shape.Point{X: c.NoseV, Y: c.AlongV},
		shape.Point{Y: c.AlongV}, shape.Point{Y: c.Snipe},
	).Normalize()
}

// HeightAt is how far up v the plate reaches at a distance along u.
func (c Corner) HeightAt(u float64) float64 {
	switch {
	case u <= c.NoseV:
		return c.AlongV
	case u >= c.AlongU:
		return 0
	}
	return c.AlongV + (u-c.NoseV)/(c.AlongU-c.NoseV)*(c.NoseU-c.AlongV)
}

// Spread gives n positions at a spacing, middled on zero, in rising order.
func Spread(n int, spacing float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = (float64(i) - float64(n-1)/2) * spacing
	}
	return out
}

// Standing is the pose of an upright plate whose plane holds z: u runs along the given level unit direction, v up.
func Standing(origin, along part.Vec) part.Pose {
	return part.Pose{Origin: origin, U: along, V: part.Vec{Z: 1}}
}

// Bearing is the rectangle of a rounded rectangle of plate that presses all over: what its corners lack is left out all along the sides.
func Bearing(outer shape.Loop, cornerRadiusMM float64) shape.Box {
	return outer.BBox().Grow(-cornerRadiusMM * cornerLack)
}

// cornerLack is how deep a corner's arc lies under the sides at its middle, over its radius.
const cornerLack = 1 - math.Sqrt2/2

// ThatPresses refuses corners so round that no bolt is left where the plate presses all over.
func (n *Needs) ThatPresses(outer shape.Loop, points []shape.Point, radiusMM float64, param string) bool {
	box, most := outer.BBox(), 0.0
	for _, p := range points {
		most = max(most, min(p.X-box.Min.X, box.Max.X-p.X, p.Y-box.Min.Y, box.Max.Y-p.Y)/cornerLack)
	}
	return n.That(radiusMM <= most+shape.TouchMM, param, MM(radiusMM), "at most %.4g mm, so that a bolt is where the plate presses", most)
}
