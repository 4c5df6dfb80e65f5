package part

import (
	"math"
	"testing"
)

// Weld metal by hand over 100 mm: a fillet of 6 mm is a triangle of 18 mm2, two of them 36; a groove of 10 mm opened to 60 degrees is one of 10 high and
// 2*10*tan 30 deg wide, 57.735 mm2, from both faces two of 5 mm, 28.868 mm2; partly through from both faces 2 x 57.735; a slot of 100 by 20 mm, its ends round,
// 5 mm deep: (80*20 + pi*10^2)*5 mm3.
func TestWeldMetal(t *testing.T) {
	line := []WeldSegment{{B: Vec{X: 100}}}
	for _, c := range []struct {
		w    WeldGroup
		want float64
	}{
		{WeldGroup{Kind: Fillet, LegMM: 6, Segments: line}, 1800},
		{WeldGroup{Kind: Fillet, LegMM: 6, BothSides: true, Segments: line}, 3600},
		{WeldGroup{Kind: CJP, LegMM: 10, Segments: line}, 5773.5},
		{WeldGroup{Kind: CJP, LegMM: 10, BothSides: true, Segments: line}, 2886.75},
		{WeldGroup{Kind: PJP, LegMM: 10, BothSides: true, Segments: line}, 11547},
		{WeldGroup{Kind: Plug, LegMM: 5, WidthMM: 20, Segments: line}, 9570.8},
	} {
		if got := c.w.VolumeMM3(); math.Abs(got-c.want) > 1e-4*c.want {
			t.Errorf("%s, both sides %v: %g mm3, by hand %g", c.w.Kind, c.w.BothSides, got, c.want)
		}
	}
}
