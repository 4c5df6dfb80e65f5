package view

// Places to point at.

import (
	"iter"
	"math"

	"lugwright/geometry/shape"
)

const sliverMM = 0.5 // to the nearest cover of a place pointed at, so that it is not seen through the play round a pin alone

// Anchor is the place of one of some things, painted in their order, to point at: of what no other covers, the farthest from the edges of its face, and how far that is. A thing
// that is covered everywhere gives its middle.
func Anchor(painted []Thing, i int) (at shape.Point, room float64, visible bool) {
	p, later := &painted[i], painted[i+1:]
	for k := len(p.Faces) - 1; k >= 0; k-- {
		f := p.Faces[k]
		box := ringBox(f.Loops[0])
		if min(box.Width(), box.Height())/2 < room {
			continue // no place of it is further from its edges
		}
		for q := range samples(box) {
			if inset(q, box) < room-1e-9 {
				continue // the way out of the box crosses an edge
			}
			if d := roomIn(f, q, room); d > room && Within(q, f.Loops) && open(q, later, p.Faces[k+1:]) {
				room = d
				at, visible = q, true
			}
		}
	}
	if !visible && len(p.Faces) > 0 {
		at = ringBox(p.Faces[len(p.Faces)-1].Loops[0]).Center()
	}
	return at, room, visible
}

func ringBox(r Ring) shape.Box {
	box := shape.EmptyBox()
	for _, p := range r.Points {
		box = box.Extend(p)
	}
	return box
}

// inset is how far a place lies within a box.
func inset(q shape.Point, box shape.Box) float64 {
	return min(q.X-box.Min.X, box.Max.X-q.X, q.Y-box.Min.Y, box.Max.Y-q.Y)
}

// samples are places spread over a box.
func samples(box shape.Box) iter.Seq[shape.Point] {
	const n = 12
	return func(yield func(shape.Point) bool) {
		if box.Width() < 2 && box.Height() < 2 {
			yield(box.Center())
			return
		}
		for i := range n * n {
			x, y := float64(i/n), float64(i%n)
			if !yield(shape.Point{X: box.Min.X + box.Width()*(x+0.5)/n, Y: box.Min.Y + box.Height()*(y+0.5)/n}) {
				return
			}
		}
	}
}

// roomIn is the distance of a place from the edges of the face, or something no more than least where it is no more.
func roomIn(f Face, q shape.Point, least float64) float64 {
	d := math.Inf(1)
	for _, r := range f.Loops {
		for i, p := range r.Points {
			b := r.After(i)
			if beside(p.X, b.X, q.X) > d || beside(p.Y, b.Y, q.Y) > d {
				continue // further off than the nearest
			}
			d = min(d, fromLine(p, b, q))
			if d <= least {
				return d
			}
		}
	}
	return d
}

// fromLine is the distance of q from the line between a and b.
func fromLine(a, b, q shape.Point) float64 {
	along, out, back := b.Sub(a), q.Sub(a), q.Sub(b)
	d := math.Sqrt(min(out.Dot(out), back.Dot(back)))
	if out.Dot(along) >= 0 && back.Dot(along) <= 0 {
		if long := along.Norm(); long > 0 {
			d = min(d, math.Abs(out.Cross(along))/long)
		}
	}
	return d
}

// beside is how far x lies outside the stretch between a and b.
func beside(a, b, x float64) float64 { return max(min(a, b)-x, x-max(a, b)) }

// open says whether a place and its neighbourhood are covered by nothing that is painted later.
func open(q shape.Point, later []Thing, own []Face) bool {
	for _, off := range [...]shape.Point{{}, {X: sliverMM}, {X: -sliverMM}, {Y: sliverMM}, {Y: -sliverMM}} {
		if at := q.Add(off); covered(at, later) || coveredBy(at, own) {
			return false
		}
	}
	return true
}

func covered(q shape.Point, later []Thing) bool {
	for i := range later {
		if coveredBy(q, later[i].Faces) {
			return true
		}
	}
	return false
}

func coveredBy(q shape.Point, faces []Face) bool {
	for i := range faces {
		if f := &faces[i]; f.box.Contains(q) && Within(q, f.Loops) {
			return true
		}
	}
	return false
}
