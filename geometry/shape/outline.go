package shape

// An outer loop with holes: measures that need both.

import (
	"math"
	"slices"
)

// Outline is what is cut from plate: one outer loop less its holes. Windings do not matter here; Normalize sets them as
// cut files want them.
type Outline struct {
	Outer Loop
	Holes []Loop
}

// Clone returns a copy that shares nothing with o.
func (o Outline) Clone() Outline { return o.mapped(Loop.Clone) }

// Area returns the area less the holes, in mm2.
func (o Outline) Area() float64 {
	a := math.Abs(o.Outer.Area())
	for _, h := range o.Holes {
		a -= math.Abs(h.Area())
	}
	return a
}

// Length returns the cut length of all loops, in mm.
func (o Outline) Length() float64 {
	sum := o.Outer.Length()
	for _, h := range o.Holes {
		sum += h.Length()
	}
	return sum
}

// BBox returns the smallest box around the outer loop.
func (o Outline) BBox() Box { return o.Outer.BBox() }

// Contains reports whether p is in the material or on one of its edges (within OnTolMM).
func (o Outline) Contains(p Point) bool {
	if !o.Outer.Contains(p) {
		return false
	}
	for _, h := range o.Holes {
		if h.encloses(p) && !h.Within(p, OnTolMM) {
			return false
		}
	}
	return true
}

// Within reports whether an edge of the outline is as near to p as d, or nearer.
func (o Outline) Within(p Point, d float64) bool {
	return o.Outer.Within(p, d) || slices.ContainsFunc(o.Holes, func(h Loop) bool { return h.Within(p, d) })
}

// DistTo returns the least distance from p to any edge of the outline.
func (o Outline) DistTo(p Point) float64 {
	d := o.Outer.DistTo(p)
	for _, h := range o.Holes {
		d = min(d, h.DistTo(p))
	}
	return d
}

// Ligament returns the least distance from hole i to every other loop, in mm; 0 where they touch or cross, +Inf when
// there is no such hole or nothing else.
func (o Outline) Ligament(i int) float64 {
	d, _ := o.ligament(i)
	return d
}

// ligament also says which loop is nearest: a hole's index, or -1 for the outer loop.
func (o Outline) ligament(i int) (value float64, nearest int) {
	value, nearest = math.Inf(1), -1
	if i < 0 || i >= len(o.Holes) {
		return value, nearest
	}
	value = LoopDistance(o.Holes[i], o.Outer)
	for j, h := range o.Holes {
		if j == i {
			continue
		}
		if d := LoopDistance(o.Holes[i], h); d < value {
			value, nearest = d, j
		}
	}
	return value, nearest
}

// MinLigament returns the least ligament of the outline, the hole i it belongs to and the loop j it reaches: a hole's
// index, or -1 for the outer loop. Without holes it returns +Inf, -1, -1.
func (o Outline) MinLigament() (value float64, i, j int) {
	value, i, j = math.Inf(1), -1, -1
	for k := range o.Holes {
		if d, near := o.ligament(k); d < value {
			value, i, j = d, k, near
		}
	}
	return value, i, j
}
