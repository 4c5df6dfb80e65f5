package fab

// Weld runs at a plate's two faces.

import (
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Weld is a fillet on both faces of a plate.
func Weld(id, stands, on string, legMM float64, electrode string, runs ...part.WeldSegment) part.WeldGroup {
	return part.WeldGroup{
		ID: id, Joins: [2]string{stands, on}, Kind: part.Fillet, LegMM: legMM, Electrode: electrode,
		Segments: runs, BothSides: true,
	}
}

// EdgeWeld is a fillet along the edges of a plate that lies on another.
func EdgeWeld(id, lies, on string, legMM float64, electrode string, runs ...part.WeldSegment) part.WeldGroup {
	w := Weld(id, lies, on, legMM, electrode, runs...)
	w.BothSides, w.AlongEdge = false, true
	return w
}

// ThroughWeld is a groove weld of complete penetration under a plate, from both faces.
func ThroughWeld(id, stands, on string, thicknessMM float64, electrode string, runs ...part.WeldSegment) part.WeldGroup {
	w := Weld(id, stands, on, thicknessMM, electrode, runs...)
	w.Kind = part.CJP
	return w
}

// PlugWeld fills round holes of a plate to its thickness; at are their middles in the faying plane, along lies in it.
func PlugWeld(id, lies, on string, thicknessMM, diaMM float64, electrode string, along part.Vec, at ...part.Vec) part.WeldGroup {
	w := part.WeldGroup{ID: id, Joins: [2]string{lies, on}, Kind: part.Plug, LegMM: thicknessMM, WidthMM: diaMM, Electrode: electrode}
	for _, p := range at {
		w.Segments = append(w.Segments, part.WeldSegment{A: p.AddScaled(-diaMM/2, along), B: p.AddScaled(diaMM/2, along)})
	}
	return w
}

// AtFaces gives the two runs of a root line from a to b in the plate's middle plane, one at each face; normal is the plate's
// unit normal.
func AtFaces(a, b, normal part.Vec, thicknessMM float64) []part.WeldSegment {
	half := thicknessMM / 2
	return []part.WeldSegment{
		{A: a.AddScaled(half, normal), B: b.AddScaled(half, normal)},
		{A: a.AddScaled(-half, normal), B: b.AddScaled(-half, normal)},
	}
}

// Beyond cuts a run to the part at x or more; false when nothing weldable is left.
func Beyond(a, b shape.Point, x float64) (shape.Point, shape.Point, bool) {
	if a.X < x && b.X < x {
		return a, b, false
	}
	if a.X < x {
		a = a.Lerp(b, (x-a.X)/(b.X-a.X))
	}
	if b.X < x {
		b = b.Lerp(a, (x-b.X)/(a.X-b.X))
	}
	return a, b, a.Dist(b) >= 1
}

// roundWeldSides is the runs of the polygon that stands for a round fillet.
const roundWeldSides = 16

// Round gives the runs of a fillet round a disc as a polygon on its edge; sides is at least 3. The polygon is a little
// shorter than the circle, on the safe side.
func Round(pose part.Pose, offMM, diaMM float64, sides int) []part.WeldSegment {
	ring := make([]part.Vec, sides)
	for i := range ring {
		p := polar(diaMM/2, i, sides)
		ring[i] = pose.At(p.X, p.Y, offMM)
	}
	out := make([]part.WeldSegment, sides)
	for i := range out {
		out[i] = part.WeldSegment{A: ring[i], B: ring[(i+1)%sides]}
	}
	return out
}

func polar(r float64, i, of int) shape.Point {
	return shape.Polar(r, 2*math.Pi*float64(i)/float64(of))
}
