package vehicle

import (
	"fmt"

	"lugwright/part"
)

// Mounts by trade name. What each holds is common practice, no source; a builder changes any of it afterwards. Turning is released in all of them: a frame
// bracket turns with its rail and a pin turns in its lug, and counting on either would hide load from the other mounts.

var both = Restraint{Way: Both}

// SinglePivot is the one of a three-point set: it holds up and down and sideways, and lets the body turn and slide fore and aft.
func SinglePivot(name string, at part.Vec) Mount {
	return Mount{Name: name, At: at, Y: both, Z: both}
}

// ClevisPair is the two of a three-point set, half a width left and right of the centreline point given: each holds all three directions.
func ClevisPair(left, right string, at part.Vec, halfWidthMM float64) []Mount {
	out := []Mount{{Name: left, At: at}, {Name: right, At: at}}
	for i, side := range []float64{1, -1} {
		out[i].At.Y += side * halfWidthMM
		out[i].X, out[i].Y, out[i].Z = both, both, both
	}
	return out
}

// FourPointDiamond is a pivot at each end, which holds up and down and sideways, and two middle mounts half a width left and right of the point given,
// which hold up and down and fore and aft.
func FourPointDiamond(front, rear part.Vec, middle part.Vec, halfWidthMM float64) []Mount {
	out := ClevisPair("middle left", "middle right", middle, halfWidthMM)
	for i := range out {
		out[i].Y = Restraint{}
	}
	return append([]Mount{SinglePivot("front", front), SinglePivot("rear", rear)}, out...)
}

// SpringLoadedLongRail is a subframe on long rails: at each station a mount on either rail, half a width left and right, at height z. The rearmost station is
// rigid and holds all three directions; the others bear on the rail, hold sideways, and are held down by springs of the stiffness given, whose
// preload is left out: the body lifts from its first newton of uplift.
func SpringLoadedLongRail(stationsXMM []float64, halfWidthMM, zMM, springNPerMM float64) []Mount {
	last := 0
	for i, x := range stationsXMM {
		if x > stationsXMM[last] {
			last = i
		}
	}
	var out []Mount
	for i, x := range stationsXMM {
		name := fmt.Sprintf("station %d", i+1)
		pair := ClevisPair(name+" left", name+" right", part.Vec{X: x, Z: zMM}, halfWidthMM)
		if i != last {
			for k := range pair {
				pair[k].X = Restraint{}
				pair[k].Z.MinusNPerMM = springNPerMM
			}
		}
		out = append(out, pair...)
	}
	return out
}

// Rigid is a bolted mount that holds all three directions.
func Rigid(name string, at part.Vec) Mount {
	return Mount{Name: name, At: at, X: both, Y: both, Z: both}
}
