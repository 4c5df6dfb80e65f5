package fab

// Pin and bolt holes, bolt patterns.

import (
	"fmt"
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// PinHole is a hole for a pin. It is cut smaller by the finish allowance and reamed; an allowance of 0 leaves it as cut.
func PinHole(center shape.Point, holeMM, allowanceMM float64) part.Hole {
	h := part.Hole{ID: "pin", Center: center, DiaMM: holeMM, CutMM: holeMM - allowanceMM, Purpose: part.ForPin, Finish: part.AsCut}
	if allowanceMM > 0 {
		h.Finish = part.Reamed
	}
	return h
}

// BoltHole is a bolt hole cut to size, or drilled in a member.
func BoltHole(id string, center shape.Point, diaMM float64, finish part.Finish) part.Hole {
	return part.Hole{ID: id, Center: center, DiaMM: diaMM, CutMM: diaMM, Purpose: part.ForBolt, Finish: finish}
}

// BoltHoles are the holes of a pattern, cut to size and numbered from 1.
func BoltHoles(points []shape.Point, diaMM float64) []part.Hole {
	out := make([]part.Hole, len(points))
	for i, at := range points {
		out[i] = BoltHole(fmt.Sprintf("bolt-%d", i+1), at, diaMM, part.AsCut)
	}
	return out
}

// Clearance is a thread's diameter and its clearance hole by a fit; no hole for a size that the tables lack, which ThatHole refuses.
func Clearance(size string, fit part.Fit) (diaMM, holeMM float64) {
	diaMM, _ = part.NominalDiaMM(size) // the parameter's unit has been checked
	holeMM, _ = part.ClearanceMM(size, fit)
	return diaMM, holeMM
}

// ThatHole refuses a size for which Clearance found no hole.
func (n *Needs) ThatHole(holeMM float64, param, size string) bool {
	return n.That(holeMM > 0, param, size, "a size with a clearance hole in ISO 273 or ASME B18.2.8")
}

// TappedHole is a hole for a coarse thread: marked on the table, drilled and tapped later.
func TappedHole(id string, center shape.Point, size string) part.Hole {
	dia, _ := part.NominalDiaMM(size) // the parameter's unit has been checked
	return part.Hole{ID: id, Center: center, DiaMM: dia, Purpose: part.ForBolt, Finish: part.Tapped, Thread: size}
}

// Grid is every point of xs by ys, row after row.
func Grid(xs, ys []float64) []shape.Point {
	out := make([]shape.Point, 0, len(xs)*len(ys))
	for _, y := range ys {
		for _, x := range xs {
			out = append(out, shape.Point{X: x, Y: y})
		}
	}
	return out
}

// LeastPitch is the least distance between two of the points; 0 for a single one.
func LeastPitch(points []shape.Point) float64 {
	least := 0.0
	for i, p := range points {
		for _, q := range points[:i] {
			if d := p.Dist(q); least == 0 || d < least {
				least = d
			}
		}
	}
	return least
}

// LeastEdge is the least distance from a point to the outline's outer edge; 0 when one is outside.
func LeastEdge(outer shape.Loop, points []shape.Point) float64 {
	least := math.Inf(1)
	for _, p := range points {
		if !outer.Contains(p) {
			return 0
		}
		least = min(least, outer.DistTo(p))
	}
	return least
}
