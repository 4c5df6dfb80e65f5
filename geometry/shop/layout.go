package shop

import "lugwright/geometry/shape"

// rowMM is how wide the rows of a file of several pieces grow.
const rowMM = 2000

// Rows lays boxes out in rows, a gap apart, in their order. It gives how far each has to be moved; the first lands at the origin.
func Rows(boxes []shape.Box, gapMM float64) []shape.Point {
	out := make([]shape.Point, len(boxes))
	at, high := shape.Point{}, 0.0
	for i, b := range boxes {
		if at.X > 0 && at.X+b.Width() > rowMM {
			at, high = shape.Point{Y: at.Y + high + gapMM}, 0
		}
		out[i] = at.Sub(b.Min)
		at.X += b.Width() + gapMM
		high = max(high, b.Height())
	}
	return out
}
