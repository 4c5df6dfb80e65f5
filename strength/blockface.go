package strength

// The material of a ply along lines of a bolt group's plane: how far the edge is, what openings take away.

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
)

// face is a ply as a bolt group meets it: its material along lines of the group's plane.
type face struct {
	g    *boltGroup
	t    *thing
	hole float64      // the bolts' holes in it
	gaps []shape.Loop // all other openings of it
}

// faceOf is one ply of a group, or why no flat block can be cut from it.
func (r *run) faceOf(group, ply int) (face, string) {
	g := &r.groups[group]
	t := r.thing(g.Plies[ply].Thing)
	switch {
	case t == nil:
		return face{}, "it is not a plate of this bracket"
	case t.plate.RolledMM > 0 || len(t.plate.Bends) > 0:
		return face{}, "it is rolled or bent, and the blocks here are flat"
	case math.Abs(g.Pose.W().Dot(t.plate.Pose.W())) < 0.99:
		return face{}, "it does not lie in the plane of the bolts"
	}
	f := face{g: g, t: t, hole: g.HoleMM, gaps: slices.Clone(t.plate.Cutouts)}
	for _, h := range t.plate.Holes {
		own := false
		for _, p := range g.Points {
			at, _ := f.on(p, shape.Point{})
			own = own || at.Dist(h.Center) < g.HoleMM/2
		}
		if own {
			f.hole = max(f.hole, h.DiaMM)
		} else if h.DiaMM > 0 {
			f.gaps = append(f.gaps, shape.Circle(h.Center, h.DiaMM))
		}
	}
	for _, p := range g.Points {
		if at, _ := f.on(p, shape.Point{}); !t.plate.Outer.Contains(at) {
			return face{}, "a bolt stands outside its outline"
		}
	}
	return f, ""
}

// on turns a point and a direction of the group's plane into the ply's own axes.
func (f *face) on(p, d shape.Point) (at, dir shape.Point) {
	u, v, _ := f.t.plate.Pose.Local(f.g.Pose.At(p.X, p.Y, 0))
	away := f.g.Pose.U.Scale(d.X).Add(f.g.Pose.V.Scale(d.Y))
	return shape.Point{X: u, Y: v}, shape.Point{X: away.Dot(f.t.plate.Pose.U), Y: away.Dot(f.t.plate.Pose.V)}
}

// edge is the least distance from the given bolts to the ply's outer edge along d.
func (f *face) edge(d shape.Point, bolts []shape.Point) float64 {
	least := math.Inf(1)
	for _, p := range bolts {
		at, dir := f.on(p, d)
		_, ahead := reach(shape.Outline{Outer: f.t.plate.Outer}, at, dir)
		least = min(least, ahead)
	}
	return least
}

// end is how far a block goes ahead of its foremost bolts: to the edge, or to an opening that lies ahead of both the first and the last
// of them, since what is left beyond it is a strip that bends.
func (f *face) end(d shape.Point, bolts []shape.Point) float64 {
	least := f.edge(d, bolts)
	first, near := f.opening(bolts[0], d)
	last, far := f.opening(bolts[len(bolts)-1], d)
	if first >= 0 && first == last {
		least = min(least, near, far)
	}
	return least
}

// opening is the first opening ahead of a bolt, and how far it is; -1 when there is none.
func (f *face) opening(p, d shape.Point) (gap int, away float64) {
	gap, away = -1, math.Inf(1)
	at, dir := f.on(p, d)
	for i, g := range f.gaps {
		var room [8]shape.Interval
		for _, c := range (shape.Outline{Outer: g}).ChordsInto(room[:0], at, dir) {
			if c.Lo > 0 && c.Lo < away {
				gap, away = i, c.Lo
			}
		}
	}
	return gap, away
}

// lost is the length that openings and notches take from a plane that starts at a bolt. The ply may tear along either side of the
// bolts' holes as well as through their middle: the line that loses most to openings counts.
func (f *face) lost(p, d shape.Point, length float64) float64 {
	most := 0.0
	for _, off := range [3]float64{0, -f.hole / 2, f.hole / 2} {
		at, dir := f.on(p.Add(d.Perp().Scale(off)), d)
		gone := 0.0
		for _, g := range f.gaps {
			gone += within(shape.Outline{Outer: g}, at, dir, length)
		}
		most = max(most, gone)
	}
	at, dir := f.on(p, d)
	if notch := length - within(shape.Outline{Outer: f.t.plate.Outer}, at, dir, length); notch > shape.OnTolMM {
		most += notch
	}
	return most
}

// within is how much of the first length of a line lies in an outline.
func within(o shape.Outline, at, dir shape.Point, length float64) float64 {
	sum := 0.0
	var room [8]shape.Interval
	for _, c := range o.ChordsInto(room[:0], at, dir.Unit()) {
		sum += max(0, min(c.Hi, length)-max(c.Lo, 0))
	}
	return sum
}
