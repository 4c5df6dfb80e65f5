package svg

import (
	"iter"
	"math"
	"slices"
	"unicode/utf8"

	"lugwright/geometry/shape"
)

const (
	labelMM     = 3.2  // height of the letters
	labelStepMM = 5.0  // from one label to the next
	letterMM    = 0.64 // width of a broad letter to the font's size: no font is known
	gapMM       = 7.0  // from a column of labels to the drawing
	sliverMM    = 0.5  // to the nearest cover of a place pointed at, so that it is not seen through the play round a pin alone
)

// note is a label and the place on the picture that it points at.
type note struct {
	text    string
	at      shape.Point // projected
	visible bool
}

// notes gives every different label one visible place; a thing that is covered everywhere gets its middle.
func notes(painted []painting) []note {
	var list []note
	for i, p := range painted {
		if p.solid.label == "" {
			continue
		}
		n := p.anchor(painted[i+1:])
		at := slices.IndexFunc(list, func(m note) bool { return m.text == n.text })
		switch {
		case at < 0:
			list = append(list, n)
		case n.visible: // what is painted later is nearer
			list[at] = n
		}
	}
	return list
}

// anchor is the uncovered place of the solid that is farthest from the edges of its face.
func (p painting) anchor(later []painting) note {
	best := note{text: p.solid.label}
	room := 0.0
	for k := len(p.faces) - 1; k >= 0; k-- {
		f := p.faces[k]
		box := ringBox(f.loops[0])
		if min(box.Width(), box.Height())/2 < room {
			continue // no place of it is further from its edges
		}
		for q := range samples(box) {
			if inset(q, box) < room-1e-9 {
				continue // the way out of the box crosses an edge
			}
			if d := f.room(q, room); d > room && within(q, f.loops) && open(q, later, p.faces[k+1:]) {
				room = d
				best.at, best.visible = q, true
			}
		}
	}
	if !best.visible && len(p.faces) > 0 {
		best.at = ringBox(p.faces[len(p.faces)-1].loops[0]).Center()
	}
	return best
}

func ringBox(r ring) shape.Box {
	box := shape.EmptyBox()
	for _, p := range r.points {
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

// room is the distance of a place from the edges of the face, or something no more than least where it is no more.
func (f face) room(q shape.Point, least float64) float64 {
	d := math.Inf(1)
	for _, r := range f.loops {
		for i, p := range r.points {
			e := shape.Edge{A: p, B: r.after(i)}
			if beside(e.A.X, e.B.X, q.X) > d || beside(e.A.Y, e.B.Y, q.Y) > d {
				continue // further off than the nearest
			}
			d = min(d, e.DistTo(q))
			if d <= least {
				return d
			}
		}
	}
	return d
}

// beside is how far x lies outside the stretch between a and b.
func beside(a, b, x float64) float64 { return max(min(a, b)-x, x-max(a, b)) }

// open says whether a place and its neighbourhood are covered by nothing that is painted later.
func open(q shape.Point, later []painting, own []face) bool {
	for _, off := range [...]shape.Point{{}, {X: sliverMM}, {X: -sliverMM}, {Y: sliverMM}, {Y: -sliverMM}} {
		if at := q.Add(off); covered(at, later) || coveredBy(at, own) {
			return false
		}
	}
	return true
}

func covered(q shape.Point, later []painting) bool {
	for i := range later {
		if p := &later[i]; p.box.Contains(q) && coveredBy(q, p.faces) {
			return true
		}
	}
	return false
}

func coveredBy(q shape.Point, faces []face) bool {
	for i := range faces {
		if within(q, faces[i].loops) {
			return true
		}
	}
	return false
}

// columnMM is the paper that the longest label needs beside the drawing.
func columnMM(labels []note) float64 {
	most := 0
	for _, n := range labels {
		most = max(most, utf8.RuneCountInString(n.text))
	}
	if most == 0 {
		return 0
	}
	return float64(most)*letterMM*labelMM + gapMM
}

// tallest is the number of labels in the fuller column.
func tallest(labels []note, c *canvas) int {
	l, r := columns(labels, c)
	return max(len(l), len(r))
}

// columns sorts labels to the nearer side, each column from the top of the picture down.
func columns(labels []note, c *canvas) (left, right []note) {
	for _, n := range labels {
		if n.at.X < c.box.Center().X {
			left = append(left, n)
		} else {
			right = append(right, n)
		}
	}
	for _, list := range [][]note{left, right} {
		slices.SortStableFunc(list, func(a, b note) int {
			if a.at.Y > b.at.Y {
				return -1
			}
			return 1
		})
	}
	return left, right
}

// notes writes the labels in two columns with a leader to each thing.
func (c *canvas) notes(labels []note) {
	left, right := columns(labels, c)
	inset := edgeMM + columnMM(labels) - gapMM
	c.column(left, inset, "end", 1)
	c.column(right, c.width-inset, "start", -1)
}

// column writes labels whose inner ends stand at x, so that leaders start beside them in any font; inward is +1 on the left
// side of the paper.
func (c *canvas) column(list []note, x float64, anchor string, inward float64) {
	heights := c.spread(list)
	for i, n := range list {
		y := heights[i]
		to := c.at(n.at)
		attrs := []any{"d", c.line(nil, []shape.Point{{X: x + inward, Y: y}, {X: x + inward*4, Y: y}, to}, false), "fill", "none", "stroke", ink, "stroke-width", 0.15}
		if !n.visible {
			attrs = append(attrs, "stroke-dasharray", "1 0.8")
		}
		c.tag(false, "path", attrs...)
		c.tag(false, "circle", "cx", to.X, "cy", to.Y, "r", 0.5, "fill", ink)
		c.leaf("text", n.text, "x", x, "y", y+labelMM*0.35, "text-anchor", anchor, "font-family", "sans-serif", "font-size", labelMM, "fill", ink)
	}
}

// spread sets labels level with their places, pushed apart to labelStepMM and kept on the paper.
func (c *canvas) spread(list []note) []float64 {
	y := make([]float64, len(list))
	for i, n := range list {
		y[i] = c.at(n.at).Y
		if i > 0 {
			y[i] = max(y[i], y[i-1]+labelStepMM)
		}
	}
	floor := c.height - edgeMM
	for i := len(list) - 1; i >= 0; i-- {
		y[i] = min(y[i], floor)
		floor = y[i] - labelStepMM
	}
	return y
}
