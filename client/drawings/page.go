package drawings

import (
	"math"
	"strings"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
)

// Lines after ISO 128: wide for edges, half of it for dimensions. Letters of 2.5 mm, the least of ISO 3098 that copies well.
const (
	wideMM   = 0.5
	narrowMM = 0.2
	textMM   = 2.5
	lineMM   = 4.4 // from one line of words to the next
	clearMM  = 0.9 // from a line to words that stand on it
	arrowMM  = 2.6
	edgeMM   = 1.5 // paper round what is drawn
)

// page collects items.
type page struct {
	items []draw.Item
	room  *room
}

// room is memory for the many small items of a picture, taken in pieces.
type room struct {
	paths    []draw.Path
	segments []draw.Segment
}

// path is a new one with room for so many segments.
func (g *page) path(segments int) *draw.Path {
	const piece = 64
	if g.room == nil {
		g.room = &room{}
	}
	r := g.room
	if len(r.paths) == 0 {
		r.paths = make([]draw.Path, piece)
	}
	if len(r.segments) < segments {
		r.segments = make([]draw.Segment, max(4*piece, segments))
	}
	p := &r.paths[0]
	p.Segments = r.segments[:0:segments]
	r.paths, r.segments = r.paths[1:], r.segments[segments:]
	return p
}

func at(p shape.Point) draw.Point { return draw.Point{X: p.X, Y: p.Y} }

func (g *page) add(items ...draw.Item) { g.items = append(g.items, items...) }

// group adds what fill draws as one group.
func (g *page) group(id string, fill func(*page)) {
	if g.room == nil {
		g.room = &room{}
	}
	inner := page{room: g.room}
	fill(&inner)
	if len(inner.items) > 0 {
		g.add(&draw.Group{ID: GroupID(id), Items: inner.items})
	}
}

// line draws through points.
func (g *page) line(pen draw.Pen, points ...shape.Point) {
	p := g.path(len(points) - 1)
	p.Start, p.Pen = at(points[0]), pen
	for _, q := range points[1:] {
		p.Segments = append(p.Segments, draw.Segment{To: at(q)})
	}
	g.add(p)
}

func (g *page) circle(pen draw.Pen, fill draw.Shade, c shape.Point, dia float64) {
	p := loopPath(shape.Circle(c, dia))
	p.Pen, p.Fill = pen, fill
	g.add(p)
}

// arrow is a filled head at a point, that comes from another.
func (g *page) arrow(tip, from shape.Point) { g.head(tip, from, arrowMM) }

func (g *page) head(tip, from shape.Point, length float64) {
	back := from.Sub(tip).Unit().Scale(length)
	side := back.Perp().Scale(0.16)
	a, b := tip.Add(back).Add(side), tip.Add(back).Sub(side)
	g.add(&draw.Path{Start: at(tip), Segments: []draw.Segment{{To: at(a)}, {To: at(b)}}, Closed: true, Fill: draw.Shade{On: true}})
}

func (g *page) words(p shape.Point, align draw.Align, turn float64, words string) {
	g.add(&draw.Text{At: at(p), HeightMM: textMM, Align: align, TurnRad: turn, Words: words})
}

func thin() draw.Pen { return draw.Pen{WidthMM: narrowMM} }

// loopPath is a closed loop on paper.
func loopPath(l shape.Loop) *draw.Path {
	return &draw.Path{Start: at(l[0].Point), Segments: segments(l), Closed: true}
}

func segments(l shape.Loop) []draw.Segment {
	out := make([]draw.Segment, len(l))
	for i := range l {
		e := l.Edge(i)
		out[i] = draw.Segment{To: at(e.B), Bulge: e.Bulge}
	}
	return out
}

// outlinePath is an outline brought to paper by a similarity that turns nothing over.
func outlinePath(o shape.Outline, to func(shape.Point) shape.Point) *draw.Path {
	o = o.Normalize()
	p := loopPath(moved(o.Outer, to))
	for _, h := range o.Holes {
		if h = moved(h, to); len(h) > 1 {
			p.More = append(p.More, draw.Loop{Start: at(h[0].Point), Segments: segments(h)})
		}
	}
	return p
}

func moved(l shape.Loop, to func(shape.Point) shape.Point) shape.Loop {
	out := make(shape.Loop, len(l))
	for i, v := range l {
		out[i] = shape.Vertex{Point: to(v.Point), Bulge: v.Bulge}
	}
	return out
}

func textWidth(words string) float64 { return (&draw.Text{HeightMM: textMM, Words: words}).WidthMM() }

// wrapped breaks words into lines no longer than a width.
func wrapped(words string, width float64) []string {
	words = strings.Join(strings.Fields(words), " ")
	var lines []string
	from, end := 0, 0 // of the line, as far as it goes
	for k := 0; k <= len(words); k++ {
		if k < len(words) && words[k] != ' ' {
			continue
		}
		if end > from && textWidth(words[from:k]) > width {
			lines = append(lines, words[from:end])
			from = end + 1
		}
		end = k
	}
	return append(lines, words[from:])
}

// finished moves everything so that the least box round it, with an edge, begins at 0, and makes it a drawing.
func (g *page) finished(name, title, desc string) *draw.Drawing {
	box := g.box()
	by := shape.Point{X: edgeMM - box.Min.X, Y: edgeMM - box.Min.Y}
	for _, item := range g.items {
		move(item, by)
	}
	return &draw.Drawing{WidthMM: box.Width() + 2*edgeMM, HeightMM: box.Height() + 2*edgeMM, Name: name, Title: title, Desc: desc, Items: g.items}
}

// box is the least box round all items.
func (g *page) box() shape.Box {
	box := shape.EmptyBox()
	for _, item := range g.items {
		box = box.Union(boxOf(item))
	}
	return box
}

// boxOf is the least box round an item; of an arc at most the circle's.
func boxOf(item draw.Item) shape.Box {
	box := shape.EmptyBox()
	switch item := item.(type) {
	case *draw.Group:
		for _, inner := range item.Items {
			box = box.Union(boxOf(inner))
		}
	case *draw.Text:
		for _, c := range item.Corners() {
			box = box.Extend(shape.Point{X: c.X, Y: c.Y})
		}
	case *draw.Path:
		box = boxOfLoop(box, item.Start, item.Segments)
		for _, l := range item.More {
			box = boxOfLoop(box, l.Start, l.Segments)
		}
	}
	return box
}

func boxOfLoop(box shape.Box, start draw.Point, list []draw.Segment) shape.Box {
	from := shape.Point{X: start.X, Y: start.Y}
	if len(list) > 0 {
		box = box.Extend(from)
	}
	for _, s := range list {
		to := shape.Point{X: s.To.X, Y: s.To.Y}
		if s.Bulge == 0 {
			box = box.Extend(to)
		} else {
			box = box.Union(shape.Edge{A: from, B: to, Bulge: s.Bulge}.BBox())
		}
		from = to
	}
	return box
}

func move(item draw.Item, by shape.Point) {
	shift := func(p *draw.Point) { p.X, p.Y = p.X+by.X, p.Y+by.Y }
	switch item := item.(type) {
	case *draw.Group:
		for _, inner := range item.Items {
			move(inner, by)
		}
	case *draw.Text:
		shift(&item.At)
	case *draw.Path:
		shift(&item.Start)
		for i := range item.Segments {
			shift(&item.Segments[i].To)
		}
		for k := range item.More {
			shift(&item.More[k].Start)
			for i := range item.More[k].Segments {
				shift(&item.More[k].Segments[i].To)
			}
		}
	}
}

// degrees writes an angle.
func degrees(rad float64) string { return trimmed(rad * 180 / math.Pi) }
