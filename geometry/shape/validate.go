package shape

// Whether an outline is one that can be cut: each rule has a name, each violation a place and what was seen there.

import (
	"fmt"
	"math"
)

// Rules that Validate checks.
const (
	RuleVertices      = "too-few-vertices"   // a loop has at least two vertices
	RuleFinite        = "not-finite"         // every coordinate and bulge is a finite number
	RuleSize          = "absurd-size"        // every coordinate is within MaxSizeMM of the origin, no radius is over MaxRadiusMM
	RuleBulge         = "bulge-over-one"     // no arc is over half a circle (Normalize splits them)
	RuleTinyEdge      = "tiny-edge"          // no edge is shorter than TinyEdgeMM
	RuleNoArea        = "no-area"            // a loop encloses something
	RuleSelfIntersect = "self-intersection"  // a loop neither crosses nor touches itself
	RuleDuplicate     = "duplicate-loop"     // no loop is there twice
	RuleHoleOutside   = "hole-outside-outer" // every hole is inside the outer loop and does not touch it
	RuleHolesOverlap  = "holes-overlap"      // no two holes cross or touch
	RuleHolesNested   = "holes-nested"       // no hole is inside another
)

// Violation is one broken rule: its name (a Rule constant), the place ("outer edge 3", "hole 1", counted from 0) and what
// was seen there. Hole is the hole's number, below 0 for any other loop.
type Violation struct {
	Rule, Place, Message string
	Hole                 int
}

// String gives place, message and rule in one line.
func (v Violation) String() string { return fmt.Sprintf("%s: %s (%s)", v.Place, v.Message, v.Rule) }

// Validate returns the broken rules, loop by loop, none for an outline that can be cut. It assumes no winding and changes
// nothing. Loops with broken numbers are not tested further.
func (o Outline) Validate() []Violation {
	var c checker
	outerOK := c.loop(outer, o.Outer)
	sound := make([]bool, len(o.Holes))
	for i, h := range o.Holes {
		sound[i] = c.loop(loopName(i), h)
	}
	for i, h := range o.Holes {
		if !sound[i] {
			continue
		}
		if outerOK {
			c.inside(i, h, o.Outer)
		}
		for j := range i {
			if sound[j] {
				c.apart(i, j, h, o.Holes[j])
			}
		}
	}
	return c.found
}

// loopName is the number of a hole or one of the names below; words are made of it only where a rule is broken.
type loopName int

const (
	outer loopName = -1 - iota
	alone
	result
)

func (n loopName) String() string {
	switch n {
	case outer:
		return "outer"
	case alone:
		return "loop"
	case result:
		return "result"
	}
	return fmt.Sprintf("hole %d", int(n))
}

type checker struct{ found []Violation }

func (c *checker) add(rule string, loop loopName, format string, args ...any) {
	c.found = append(c.found, Violation{rule, loop.String(), fmt.Sprintf(format, args...), int(loop)})
}

func (c *checker) addEdge(rule string, loop loopName, i int, format string, args ...any) {
	c.add(rule, loop, format, args...)
	c.found[len(c.found)-1].Place += fmt.Sprintf(" edge %d", i)
}

// loop checks one loop alone and reports whether it is sound enough to compare with others.
func (c *checker) loop(name loopName, l Loop) bool {
	if len(l) < 2 {
		c.add(RuleVertices, name, "has %d vertices, need at least 2", len(l))
		return false
	}
	if !c.numbers(name, l) {
		return false
	}
	before := len(c.found)
	c.edges(name, l)
	if a := math.Abs(l.Area()); a < TinyEdgeMM*TinyEdgeMM+TouchMM*l.Length() {
		c.add(RuleNoArea, name, "encloses %.3g mm2 within %.6g mm of length", a, l.Length())
	}
	if _, _, round := l.asCircle(); !round && len(c.found) == before {
		c.crossings(name, l)
	}
	return len(c.found) == before
}

func (c *checker) numbers(name loopName, l Loop) bool {
	before := len(c.found)
	for i, v := range l {
		switch {
		case !v.finite() || math.IsNaN(v.Bulge) || math.IsInf(v.Bulge, 0):
			c.addEdge(RuleFinite, name, i, "starts at (%g, %g) with bulge %g, need finite numbers", v.X, v.Y, v.Bulge)
		case math.Abs(v.X) > MaxSizeMM || math.Abs(v.Y) > MaxSizeMM:
			c.addEdge(RuleSize, name, i, "starts at (%g, %g), need coordinates within %g mm", v.X, v.Y, MaxSizeMM)
		case math.Abs(v.Bulge) > 1+1e-9:
			c.addEdge(RuleBulge, name, i, "has bulge %.6g, need at most 1 (half a circle)", v.Bulge)
		}
	}
	return len(c.found) == before
}

func (c *checker) edges(name loopName, l Loop) {
	for i := range l {
		switch e := l.Edge(i); {
		case e.Chord() < TinyEdgeMM:
			c.addEdge(RuleTinyEdge, name, i, "is %.3g mm long at (%.6g, %.6g), need %g mm", e.Chord(), e.A.X, e.A.Y, TinyEdgeMM)
		case e.IsArc() && e.Radius() > MaxRadiusMM && e.Sagitta() >= FlatMM: // what is flatter is written as a line
			c.addEdge(RuleSize, name, i, "is an arc of radius %.3g mm at (%.6g, %.6g), need at most %g mm, or a line", e.Radius(), e.A.X, e.A.Y, MaxRadiusMM)
		}
	}
}

func (c *checker) crossings(name loopName, l Loop) {
	var buf [24]Box
	boxes := edgeBoxes(buf[:0], l)
	for i := range l {
		for j := range i {
			if boxes[i].gap(boxes[j]) > TouchMM {
				continue
			}
			if p, bad := l.meet(j, i, boxes); bad {
				c.addEdge(RuleSelfIntersect, name, j, "meets edge %d at (%.6g, %.6g)", i, p.X, p.Y)
			}
		}
	}
}

// meet reports whether edges i < j of a loop meet elsewhere than at a vertex they share, and where.
func (l Loop) meet(i, j int, boxes []Box) (Point, bool) {
	a, b := l.Edge(i), l.Edge(j)
	joinedA, joinedB := j == i+1, i == 0 && j == len(l)-1 // a.B is b.A; b.B is a.A
	if joinedA != joinedB && !a.IsArc() && !b.IsArc() && a.B.Sub(a.A).Dot(b.B.Sub(b.A)) >= 0 {
		return Point{}, false // a turn of at most a right angle leads away from the line before it
	}
	points, n := shared(a, b, boxes[i], boxes[j])
	for _, p := range points[:n] {
		if joinedA && p.Dist(b.A) <= TouchMM || joinedB && p.Dist(a.A) <= TouchMM {
			continue
		}
		return p, true
	}
	if !joinedA && !joinedB && apart(a, b) <= TouchMM {
		return a.Mid(), true
	}
	return Point{}, false
}

func (c *checker) inside(i int, hole, outer Loop) {
	_, clear := fromCircle(hole, outer)
	switch {
	case clear && outer.Contains(hole[0].Point):
	case same(hole, outer):
		c.add(RuleDuplicate, loopName(i), "is the outer loop again")
	case LoopDistance(hole, outer) <= TouchMM:
		c.add(RuleHoleOutside, loopName(i), "crosses or touches the outer loop")
	case !outer.Contains(hole[0].Point):
		c.add(RuleHoleOutside, loopName(i), "is outside the outer loop or around it, at (%.6g, %.6g)", hole[0].X, hole[0].Y)
	}
}

func (c *checker) apart(i, j int, a, b Loop) {
	// Many holes must not cost many distances.
	at, r, round := a.asCircle()
	at2, r2, round2 := b.asCircle()
	if round && round2 && at.Dist(at2) > r+r2+2*TouchMM || a.BBox().gap(b.BBox()) > TouchMM {
		return
	}
	switch {
	case same(a, b):
		c.add(RuleDuplicate, loopName(i), "is hole %d again", j)
	case LoopDistance(a, b) <= TouchMM:
		c.add(RuleHolesOverlap, loopName(i), "crosses or touches hole %d", j)
	case b.Contains(a[0].Point):
		c.add(RuleHolesNested, loopName(i), "is inside hole %d", j)
	case a.Contains(b[0].Point):
		c.add(RuleHolesNested, loopName(i), "is around hole %d", j)
	}
}

// same reports whether two loops follow the same line, whatever their first vertex, winding or division into edges.
func same(a, b Loop) bool { return follows(a, b) && follows(b, a) }

func follows(a, b Loop) bool {
	for i := range a {
		if e := a.Edge(i); b.DistTo(e.A) > TouchMM || b.DistTo(e.Mid()) > TouchMM {
			return false
		}
	}
	return true
}
