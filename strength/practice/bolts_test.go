package practice

import (
	"testing"

	"lugwright/strength"
)

type patternGivens struct {
	X []float64 `sym:"x" unit:"mm" min:"-1e5" max:"1e5" is:"position of each bolt"`
	Y []float64 `sym:"y" unit:"mm" min:"-1e5" max:"1e5" is:"position of each bolt"`
	D float64   `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	P float64   `sym:"p" unit:"mm" min:"0.1" max:"200" is:"pitch"`
}

// patterned lets the suite run over what bases share about bolts.
var patterned = strength.Define(strength.Identity{
	ID: "patterned", Title: "core of the bolts of a pattern", Clause: strength.Clause{Words: "for the suite alone"}, Demand: "1*mm", Capacity: "d_3", Unit: "mm",
}, func(c *strength.Calc, g patternGivens) {
	if _, ok := BoltsAt(c, g.X, g.Y); ok {
		c.Compare(1, ThreadRoot(c, g.D, g.P))
	}
})

// The core of M12 is 9.853 mm (ISO 724, from memory: minor diameter of the external thread by d - 1.2269 p); one y stands for all.
func TestPattern(t *testing.T) {
	c := &strength.Calc{Method: strength.ASD}
	if d3 := ThreadRoot(c, 12, 1.75); d3 < 9.852 || d3 > 9.854 {
		t.Errorf("core of M12: %g", d3)
	}
	pos, ok := BoltsAt(c, []float64{0, 80}, []float64{5})
	if !ok || len(pos) != 2 || pos[1].X != 80 || pos[1].Y != 5 {
		t.Errorf("%v, %v", pos, ok)
	}
	if _, ok := BoltsAt(c, []float64{0, 80}, []float64{1, 2, 3}); ok || c.Verdict != strength.Outside {
		t.Errorf("lists that do not fit: %s", c.Verdict)
	}
}
