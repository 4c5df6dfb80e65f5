package drawings

import (
	"cmp"
	"math"
	"slices"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
	"lugwright/geometry/view"
	"lugwright/part"
)

// picture is a bracket seen from one direction, brought to paper.
type picture struct {
	scene  *view.Scene
	scale  float64
	box    shape.Box // of all that is seen, mm of the model
	ink    shape.Box // the same with arcs as they are drawn, which box has as polygons
	at     shape.Point
	shaded bool
}

func newPicture(b *part.Bracket, d view.Direction, shaded bool) *picture {
	p := &picture{scene: view.Of(b, d), scale: 1, box: shape.EmptyBox(), ink: shape.EmptyBox(), shaded: shaded}
	for i := range p.scene.Things {
		for _, f := range p.scene.Things[i].Faces {
			for _, r := range f.Loops {
				for _, q := range r.Points {
					p.box = p.box.Extend(q)
				}
			}
			for _, l := range f.Exact {
				p.ink = p.ink.Union(l.BBox())
			}
		}
	}
	p.ink = p.ink.Union(p.box)
	return p
}

// flat brings a point of the picture's plane to paper, point one of space.
func (p *picture) flat(q shape.Point) shape.Point {
	return p.at.Add(q.Sub(p.box.Min).Scale(p.scale))
}

func (p *picture) point(v part.Vec) shape.Point { return p.flat(p.scene.Project(v)) }

// on is the box that the picture takes on paper.
func (p *picture) on() shape.Box { return shape.Box{Min: p.flat(p.box.Min), Max: p.flat(p.box.Max)} }

// groupOf is the name under which a page finds a thing: its part mark, or where it has none its own name.
func groupOf(t *view.Thing) string {
	if t.Mark != "" {
		return t.Mark
	}
	return t.Of
}

// draw paints from back to front. Edges that are covered are not drawn: each plate has a drawing of its own.
func (p *picture) draw(g *page) {
	for i := range p.scene.Things {
		t := &p.scene.Things[i]
		g.group(groupOf(t), func(g *page) {
			g.items = make([]draw.Item, 0, 2*len(t.Faces))
			for k := range t.Faces {
				p.face(g, &t.Faces[k])
			}
		})
	}
}

func (p *picture) face(g *page, f *view.Face) {
	grey := 0.93 + 0.07*(f.Tone[1]-200)/30
	pen, closing := draw.Pen{WidthMM: 0.35}, 0.35
	if p.shaded {
		grey, pen.WidthMM, closing = f.Tone[1]/255*f.Light, 0.2, 0.15
	}
	grey = math.Round(min(grey, 1)*255) / 255
	if f.Exact != nil {
		path := loopPath(moved(f.Exact[0], p.flat))
		for _, l := range f.Exact[1:] {
			l = moved(l, p.flat)
			path.More = append(path.More, draw.Loop{Start: at(l[0].Point), Segments: segments(l)})
		}
		path.Fill, path.Pen = draw.Shade{On: true, Grey: grey}, pen
		g.add(path)
		return
	}
	// The line in the face's own grey closes the hairlines between neighbours, through which covered edges would show.
	area := g.path(len(f.Loops[0].Points) - 1)
	area.Fill, area.Pen, area.Closed = draw.Shade{On: true, Grey: grey}, draw.Pen{WidthMM: closing, Grey: grey}, true
	area.Start, area.Segments = p.polygon(area.Segments, f.Loops[0].Points)
	for _, r := range f.Loops[1:] {
		start, rest := p.polygon(make([]draw.Segment, 0, len(r.Points)-1), r.Points)
		area.More = append(area.More, draw.Loop{Start: start, Segments: rest})
	}
	g.add(area)
	p.lines(g, pen, f.Lines)
}

func (p *picture) polygon(out []draw.Segment, points []shape.Point) (draw.Point, []draw.Segment) {
	for _, q := range points[1:] {
		out = append(out, draw.Segment{To: at(p.flat(q))})
	}
	return at(p.flat(points[0])), out
}

// lines joins lines that follow each other to one stroke.
func (p *picture) lines(g *page, pen draw.Pen, list [][2]part.Vec) {
	var few [8]shape.Point
	run := few[:0]
	flush := func() {
		if len(run) > 1 {
			g.line(pen, run...)
		}
		run = run[:0]
	}
	var last part.Vec
	for _, l := range list {
		if len(run) == 0 || l[0] != last {
			flush()
			run = append(run, p.point(l[0]))
		}
		run = append(run, p.point(l[1]))
		last = l[1]
	}
	flush()
}

// tag is a label beside a picture: what it says is drawn by write from the leader's elbow, to the right where way is 1, to the left where it is -1.
type tag struct {
	id      string
	at      shape.Point // on paper
	visible bool
	width   float64
	up      float64       // paper over and under its middle
	arrow   bool          // the leader ends in an arrowhead, as welding symbols have it, not in a dot
	by      []shape.Point // where the leader goes on its way, then up or down to the tag's height; nil: straight
	write   func(g *page, elbow shape.Point, way float64)
}

const tagGapMM = 6.0 // from the picture to the nearest tag

// tagged is how wide and how high tags stand in their two columns.
func tagged(list []tag, box shape.Box) (width, height float64) {
	left, right := sides(list, box)
	for _, side := range [2][]tag{left, right} {
		most, sum := 0.0, 0.0
		for _, t := range side {
			most, sum = max(most, t.width), sum+2*t.up
		}
		if most > 0 {
			width += most + tagGapMM
		}
		height = max(height, sum)
	}
	return width, height
}

// sides parts tags between the two sides of a box, as many on either as do not stand too high, each from below upwards.
func sides(list []tag, box shape.Box) (left, right []tag) {
	byX := slices.Clone(list)
	slices.SortStableFunc(byX, func(a, b tag) int { return cmp.Compare(a.at.X, b.at.X) })
	half := 0
	for _, t := range byX {
		if t.at.X < box.Center().X {
			half++
		}
	}
	// Neither side has more than two thirds where there are many.
	if n := len(byX); n > 3 {
		half = min(max(half, n/3), n-n/3)
	}
	left, right = byX[:half], byX[half:]
	for _, side := range [2][]tag{left, right} {
		slices.SortStableFunc(side, func(a, b tag) int { return cmp.Compare(a.at.Y, b.at.Y) })
	}
	return left, right
}

// setTags draws tags in two columns beside a box, each with a leader that ends in a dot or an arrowhead, broken where what it points at is covered.
func setTags(g *page, list []tag, box shape.Box) {
	left, right := sides(list, box)
	setColumn(g, left, box, -1)
	setColumn(g, right, box, 1)
}

// setColumn draws tags beside a box, from below upwards: to the right where side is 1, to the left where it is -1.
func setColumn(g *page, list []tag, box shape.Box, side float64) {
	x := box.Max.X + tagGapMM
	if side < 0 {
		x = box.Min.X - tagGapMM
	}
	for i, y := range stacked(list, box) {
		t := list[i]
		g.group(t.id, func(g *page) {
			elbow := shape.Point{X: x, Y: y}
			pen := thin()
			if !t.visible {
				pen.Dash = []float64{1, 0.8}
			}
			way := append([]shape.Point{t.at}, t.by...)
			if t.by != nil {
				way = append(way, shape.Point{X: t.by[len(t.by)-1].X, Y: y})
			}
			way = append(way, elbow)
			g.line(pen, way...)
			if t.arrow {
				g.arrow(t.at, way[1])
			} else {
				g.circle(draw.Pen{}, draw.Shade{On: true}, t.at, 0.9)
			}
			t.write(g, elbow, side)
		})
	}
}

// stacked finds heights for tags, from below upwards, near what they point at.
func stacked(list []tag, box shape.Box) []float64 {
	want := make([]float64, len(list))
	sum := 0.0
	under := make([]float64, len(list)) // paper under the middle of each, in a stack from 0
	for i, t := range list {
		sum += t.up
		under[i] = sum
		sum += t.up
		want[i] = t.at.Y - under[i]
	}
	lo, hi := box.Min.Y, box.Max.Y-sum
	if hi < lo {
		lo = box.Center().Y - sum/2
		hi = lo
	}
	out := spread(want, 0, lo, hi)
	for i := range out {
		out[i] += under[i]
	}
	return out
}
