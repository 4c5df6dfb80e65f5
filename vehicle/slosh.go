package vehicle

import (
	"fmt"
	"math"

	"lugwright/part"
)

// contentsAt is where the contents of a tank lie at a fill, under an apparent acceleration, and words for how they shifted. Without a shape they lie at
// the tank's centre.
//
// In a box of length b along the acceleration a, over a depth h, a flat surface tilted by a over gravity moves the centre by b^2 (a/g) / (12 h) and lifts
// it by half that times a/g (textbook statics of a wedge), while the surface stays inside the walls: it meets neither the floor nor the roof at a
// corner. Beyond that the rule does not speak, and the centre is taken where it would lie with everything piled against the wall, at
// mid-height: nothing can shift further.
func (t *Tank) contentsAt(level float64, accelG part.Vec) (part.Vec, string) {
	b := t.Box
	if b == (Box{}) || level == 0 {
		return t.At, ""
	}
	depth := min(level*t.CapacityL*1e6/(b.LengthMM*b.WidthMM), b.HeightMM)
	air := b.HeightMM - depth
	at := t.At
	side := math.Hypot(accelG.X, accelG.Y)
	if side == 0 {
		if accelG.Z > 0 { // at the roof
			at.Z += air / 2
		} else {
			at.Z -= air / 2
		}
		return at, ""
	}
	if air <= 1e-9*b.HeightMM {
		return at, ""
	}
	tanX, tanY := accelG.X/math.Abs(accelG.Z), accelG.Y/math.Abs(accelG.Z)
	rise := math.Abs(tanX)*b.LengthMM/2 + math.Abs(tanY)*b.WidthMM/2 // at the corner; infinite without gravity
	if rise <= min(depth, air) {
		dx, dy := b.LengthMM*b.LengthMM*tanX/(12*depth), b.WidthMM*b.WidthMM*tanY/(12*depth)
		lift := (dx*tanX + dy*tanY) / 2
		up := 1.0
		if accelG.Z > 0 {
			up = -1
		}
		at = at.Add(part.Vec{X: dx, Y: dy, Z: up * (lift - air/2)})
		return at, fmt.Sprintf("%s: contents shift %.0f mm", t.Name, math.Hypot(dx, dy))
	}
	piled := func(length, a float64) float64 {
		switch {
		case a > 0:
			return length / 2 * air / b.HeightMM
		case a < 0:
			return -length / 2 * air / b.HeightMM
		}
		return 0
	}
	dx, dy := piled(b.LengthMM, accelG.X), piled(b.WidthMM, accelG.Y)
	at = at.Add(part.Vec{X: dx, Y: dy})
	return at, fmt.Sprintf("%s: the surface would leave the walls, where the wedge rule does not speak; contents taken as piled against the wall, %.0f mm off", t.Name, math.Hypot(dx, dy))
}
