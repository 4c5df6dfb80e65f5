package shape

// Section cuts: where an infinite line runs through material.

import (
	"math"
	"slices"
)

// Chords returns the stretches of the line through base along dir that lie in material, in mm from base in the sense of
// dir, in rising order. See ChordsInto.
func (o Outline) Chords(base, dir Point) []Interval { return o.ChordsInto(nil, base, dir) }

// ChordsInto appends the chords to dst and returns it; with room in dst it allocates nothing (up to 64 crossings).
//
// The rule for lines that touch: the cut is the limit of cuts just to the left of the line (left looking along dir). So a
// line along an edge reports that edge only when the material is on its left; a line that touches a vertex or an arc
// from outside reports nothing; a line through vertices needs no nudging. Vertices within OnTolMM of the line count as
// on it, and an arc must reach over it by more than that. Chords that meet end to end are joined. The outline is taken
// as valid: loops are counted even-odd. A direction without length or anything not finite gives no chords.
func (o Outline) ChordsInto(dst []Interval, base, dir Point) []Interval {
	u := dir.Unit()
	if u == (Point{}) || !u.finite() || !base.finite() {
		return dst
	}
	var buf [64]float64
	at := o.Outer.crossings(buf[:0], base, u)
	for _, h := range o.Holes {
		at = h.crossings(at, base, u)
	}
	slices.Sort(at)
	return appendPairs(dst, at)
}

// appendPairs turns sorted crossings into intervals, dropping empty ones and joining those that meet.
func appendPairs(dst []Interval, at []float64) []Interval {
	first := len(dst)
	for i := 0; i+1 < len(at); i += 2 {
		lo, hi := at[i], at[i+1]
		if hi-lo <= OnTolMM {
			continue
		}
		if n := len(dst); n > first && lo-dst[n-1].Hi <= OnTolMM {
			dst[n-1].Hi = hi
			continue
		}
		dst = append(dst, Interval{lo, hi})
	}
	return dst
}

// crossings appends where the loop crosses the line base + s u (u of length 1), seen from just left of it: a vertex is
// either left of the line or not, never on it. That makes the number of crossings even without exception.
func (l Loop) crossings(at []float64, base, u Point) []float64 {
	if len(l) == 0 {
		return at
	}
	prev := &l[len(l)-1]
	a := across(prev.Point, base, u)
	for i := range l {
		b := across(l[i].Point, base, u)
		switch {
		case prev.Bulge != 0:
			at = arcCrossings(at, a, b, prev.Bulge)
		case (a.Y > 0) != (b.Y > 0):
			at = append(at, a.X+a.Y/(a.Y-b.Y)*(b.X-a.X))
		}
		prev, a = &l[i], b
	}
	return at
}

// across returns p in the line's own axes: X along it, Y to its left, snapped to the line within OnTolMM.
func across(p, base, u Point) Point {
	q := p.Sub(base)
	y := u.Cross(q)
	if math.Abs(y) <= OnTolMM {
		y = 0
	}
	return Point{u.Dot(q), y}
}

// arcCrossings works in the line's axes. When the ends are on different sides there is one crossing, and the sense of
// travel says which of the circle's two it is: a counter-clockwise circle goes up on its right. When they are on the same
// side there are two or none.
func arcCrossings(at []float64, a, b Point, bulge float64) []float64 {
	e := Edge{a, b, bulge}
	up, down := a.Y <= 0 && b.Y > 0, a.Y > 0 && b.Y <= 0
	if up == down && !e.turnsBack() {
		return at
	}
	m := (a.X + b.X) / 2
	lo, hi, depth := e.lineRoots(Point{m, 0}, Point{1, 0})
	switch {
	case up == down && depth > OnTolMM:
		return append(at, m+lo, m+hi)
	case up == down:
		return at
	case up == (bulge > 0):
		return append(at, m+hi)
	}
	return append(at, m+lo)
}

// turnsBack reports for an arc with both ends on one side of the x axis whether it first runs towards the axis and then
// away, near enough to reach it.
func (e Edge) turnsBack() bool {
	mid, ch := (e.A.Y+e.B.Y)/2, e.B.Sub(e.A)
	if math.Abs(e.Bulge) <= 1 && 4*mid*mid > ch.Dot(ch) {
		return false // at most half a circle stays within half its chord of the middle of its chord
	}
	ta, tb := e.endTangents()
	towards, away := ta.Y < 0, tb.Y > 0
	if e.A.Y <= 0 {
		towards, away = ta.Y > 0, tb.Y < 0
	}
	if math.Abs(e.Bulge) > 1 {
		return towards || away
	}
	return towards && away
}
