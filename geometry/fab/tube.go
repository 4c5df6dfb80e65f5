package fab

// Tubes and turned rings.

import (
	"lugwright/geometry/shape"
	"lugwright/part"
)

// Tube is a round tube or turned ring by its outside and inside diameter; the pose's u runs along it.
func Tube(id, name, material string, outsideMM, insideMM, lengthMM float64, pose part.Pose) part.Member {
	return part.Member{
		ID: id, Name: name, Material: material, LengthMM: lengthMM, Pose: pose,
		Profile: part.Profile{Kind: part.RoundTube, AMM: outsideMM, TMM: (outsideMM - insideMM) / 2},
	}
}

// CheckTube refuses walls and corners that no tube has, by the parameters tube_wall and tube_corner.
func CheckTube(n *Needs, p part.Profile) {
	short := p.AMM
	if p.Kind == part.RectTube {
		short = min(p.AMM, p.BMM)
		n.That(p.RootMM >= p.TMM, "tube_corner", MM(p.RootMM), "at least the wall, %.4g mm", p.TMM)
		n.That(p.RootMM <= short/3, "tube_corner", MM(p.RootMM), "at most a third of the smaller side, %.4g mm", short/3)
	}
	n.That(p.TMM <= short/4, "tube_wall", MM(p.TMM), "at most a quarter of the smaller side, %.4g mm", short/4)
}

// TubeEnd gives the runs of a fillet round a tube's end, in whose plane the pose lies, u along the profile's A: the flats of a rectangular tube, whose
// rounded corners count for nothing, or a polygon on a round one.
func TubeEnd(p part.Profile, pose part.Pose) []part.WeldSegment {
	if p.Kind == part.RoundTube {
		return Round(pose, 0, p.AMM, 16)
	}
	a, b := p.AMM/2, p.BMM/2
	flatA, flatB := a-p.RootMM, b-p.RootMM
	at := func(u, v float64) part.Vec { return pose.At(u, v, 0) }
	return []part.WeldSegment{
		{A: at(-flatA, b), B: at(flatA, b)}, {A: at(a, flatB), B: at(a, -flatB)},
		{A: at(flatA, -b), B: at(-flatA, -b)}, {A: at(-a, -flatB), B: at(-a, flatB)},
	}
}

// TubeShape is the outline of a tube's outside, grown by a margin.
func TubeShape(p part.Profile, marginMM float64) (shape.Loop, error) {
	if p.Kind == part.RoundTube {
		return shape.Circle(shape.Point{}, p.AMM+2*marginMM), nil
	}
	half := shape.Point{X: p.AMM/2 + marginMM, Y: p.BMM/2 + marginMM}
	return shape.RoundedRect(half.Scale(-1), half, p.RootMM+marginMM)
}
