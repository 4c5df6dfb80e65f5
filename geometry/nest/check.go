package nest

import (
	"fmt"

	"lugwright/geometry/shape"
)

// touchMM is how near two pieces may come beyond the gap: rounding of the places.
const touchMM = 1e-3

// check says why a result may not be cut: pieces that come nearer than the gap, lie in one another, or leave the sheet.
func (r *Result) check(parts []Part, sheets []Sheet, gapMM float64) error {
	outers := make([]shape.Loop, len(r.Placements))
	boxes := make([]shape.Box, len(r.Placements))
	for i, p := range r.Placements {
		outers[i] = parts[p.Part].Outer.Rotate(p.TurnRad, shape.Point{}).Translate(p.At)
		boxes[i] = outers[i].BBox()
		s := sheets[p.Sheet]
		if b := boxes[i]; b.Min.X < -touchMM || b.Min.Y < -touchMM || b.Max.X > s.WidthMM+touchMM || b.Max.Y > s.HeightMM+touchMM {
			return fmt.Errorf("piece %d leaves sheet %d", i, p.Sheet)
		}
		for k := range i {
			if r.Placements[k].Sheet == p.Sheet && boxes[k].Grow(gapMM).Overlaps(boxes[i]) && !apart(outers[k], outers[i], gapMM) {
				return fmt.Errorf("pieces %d and %d on sheet %d come nearer than %g mm", k, i, p.Sheet, gapMM)
			}
		}
	}
	return nil
}

func apart(a, b shape.Loop, gapMM float64) bool {
	if gapMM > 0 && shape.LoopDistance(a, b) < gapMM-touchMM {
		return false
	}
	return !shape.Overlap(a, b, touchMM)
}
