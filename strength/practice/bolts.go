package practice

// What bases share about bolts and rods: the core of a thread, and the pattern of a group.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/statics"
)

// ThreadRoot is the core diameter d_3 of a 60 degree thread of nominal diameter d and pitch p, mm.
func ThreadRoot(c *strength.Calc, d, p float64) float64 {
	c.Need(d > 1.3*p, "d > 1.3*p", "a core within the thread")
	return c.Let("d_3", "d - 1.2269*p", "mm", d-1.2269*p)
}

// BoltsAt pairs the positions of bolts, one value standing for all; with lists that do not fit the verdict is outside the rule.
func BoltsAt(c *strength.Calc, x, y []float64) ([]statics.Vec2, bool) {
	n := max(len(x), len(y))
	odd := 0
	for _, list := range [2][]float64{x, y} {
		if len(list) != 1 {
			odd += n - len(list)
		}
	}
	c.Solved("n_b", "bolts, counted", "", float64(n))
	c.Solved("n_odd", "coordinates too few", "", float64(odd))
	if !c.Need(odd == 0, "n_odd == 0", "one x and one y for each bolt, or one value for all") {
		c.Compare(math.Inf(1), 0)
		return nil, false
	}
	pos := make([]statics.Vec2, n)
	for i := range pos {
		pos[i] = statics.Vec2{X: x[min(i, len(x)-1)], Y: y[min(i, len(y)-1)]}
	}
	return pos, true
}
