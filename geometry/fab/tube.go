package fab

// A tube that stands on a plate: its sizes and the weld round its end.

import (
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Tube is a tube, round or rectangular, that stands on a plate with u up and v along. A round one is as wide as high.
type Tube struct {
	Round                             bool
	WidthMM, HighMM, WallMM, CornerMM float64 // outside along v and along u, wall, and outside corner radius
}

// Check refuses a tube that is none, by the parameters tube_wall and tube_corner.
func (t Tube) Check(n *Needs) {
	short, side := min(t.WidthMM, t.HighMM), "smaller side"
	if t.Round {
		side = "diameter"
	}
	n.That(t.WallMM <= short/4, "tube_wall", MM(t.WallMM), "at most a quarter of the "+side+", %.4g mm", short/4)
	if t.Round {
		return
	}
	n.That(t.CornerMM >= t.WallMM, "tube_corner", MM(t.CornerMM), "at least the wall, %.4g mm", t.WallMM)
	n.That(t.CornerMM <= short/3, "tube_corner", MM(t.CornerMM), "at most a third of the smaller side, %.4g mm", short/3)
}

// CheckWeld refuses by the parameter tube_weld a fillet too thick for the flats that it runs along.
func (t Tube) CheckWeld(n *Needs, legMM float64) {
	flat := min(t.WidthMM, t.HighMM) - 2*t.CornerMM
	n.That(t.Round || flat >= 4*legMM, "tube_weld", MM(legMM), "at most a quarter of the tube's flat, %.4g mm", flat/4)
}

// Outline is its outside grown by a margin, its width along x; the error says that the corners have no room.
func (t Tube) Outline(marginMM float64) (shape.Loop, error) {
	if t.Round {
		return shape.Circle(shape.Point{}, t.WidthMM+2*marginMM), nil
	}
	half := shape.Point{X: t.WidthMM/2 + marginMM, Y: t.HighMM/2 + marginMM}
	return shape.RoundedRect(half.Scale(-1), half, t.CornerMM+marginMM)
}

// Profile is its section, the first size along v.
func (t Tube) Profile() part.Profile {
	if t.Round {
		return part.Profile{Kind: part.RoundTube, AMM: t.WidthMM, TMM: t.WallMM}
	}
	return part.Profile{Kind: part.RectTube, AMM: t.WidthMM, BMM: t.HighMM, TMM: t.WallMM, RootMM: t.CornerMM}
}

// Weld runs round its end in a plane; the rounded corners of a rectangular one count for nothing.
func (t Tube) Weld(id, tube, on string, legMM float64, electrode string, pose part.Pose) part.WeldGroup {
	w := EdgeWeld(id, tube, on, legMM, electrode, t.runs(pose)...)
	w.AlongEdge = false
	return w
}

func (t Tube) runs(pose part.Pose) []part.WeldSegment {
	if t.Round {
		return Round(pose, 0, t.WidthMM, roundWeldSides)
	}
	v, u, flatV, flatU := t.WidthMM/2, t.HighMM/2, t.WidthMM/2-t.CornerMM, t.HighMM/2-t.CornerMM
	at := func(v, u float64) part.Vec { return pose.At(u, v, 0) }
	return []part.WeldSegment{
		{A: at(-flatV, u), B: at(flatV, u)}, {A: at(v, flatU), B: at(v, -flatU)},
		{A: at(flatV, -u), B: at(-flatV, -u)}, {A: at(-v, -flatU), B: at(-v, flatU)},
	}
}

// off is the distance of a point of the plate from the tube.
func (t Tube) off(p shape.Point) float64 {
	if t.Round {
		return math.Hypot(p.X, p.Y) - t.WidthMM/2
	}
	return math.Hypot(max(0, math.Abs(p.X)-t.HighMM/2), max(0, math.Abs(p.Y)-t.WidthMM/2))
}

// stiff is half of what it holds flat of the plate, along u and along v: a round one the square within it, so that no line of bending past it is
// taken nearer to the bolts than it is.
func (t Tube) stiff() (u, v float64) {
	if t.Round {
		return t.WidthMM / 2 / math.Sqrt2, t.WidthMM / 2 / math.Sqrt2
	}
	return t.HighMM / 2, t.WidthMM / 2
}
