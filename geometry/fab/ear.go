package fab

// Ears and lugs: a plate with a pin hole under a round head.

import (
	"math"

	"lugwright/geometry/shape"
)

// Ear is an upright plate: u along its foot, v up from it, the pin's centre at u = 0. Its sides run straight from the foot to the head's arc and touch
// it.
type Ear struct {
	Width      float64 // at the foot
	Pin        float64 // height of the pin's centre
	End        float64 // pin's centre to the top
	HeadRadius float64 // half the width for a round head
}

// HeadCenter is the height of the head arc's centre.
func (e Ear) HeadCenter() float64 { return e.Pin + e.End - e.HeadRadius }

// Outline draws it, counter-clockwise; the error says that no side can touch the arc.
func (e Ear) Outline() (shape.Loop, error) {
	half, top := e.Width/2, shape.Point{Y: e.HeadCenter()}
	_, right, err := shape.TangentPoints(shape.Point{X: half}, top, e.HeadRadius)
	if err != nil {
		return nil, err
	}
	left := shape.Point{X: -right.X, Y: right.Y}
	return shape.NewPath(shape.Point{X: -half}).Line(shape.Point{X: half}).Line(right).ArcCenter(left, top, true).Close()
}

// Spread30 is what a width has spread to after a distance, at 30 degrees to either side, at most all there is.
func Spread30(widthMM, distanceMM, mostMM float64) float64 {
	return min(widthMM+2*math.Tan(math.Pi/6)*distanceMM, mostMM)
}
