// Package plots draws numbers over numbers, in black and greys whose meaning dashes and signs carry too, and the plots of a vehicle. It never reckons what
// it shows, and knows no file format.
//
//	chart.go    a chart: axes, lines, marks, legend
//	axis.go     round numbers along an axis
//	sign.go     marks and dashes
//	vehicle.go  reactions, rails, room under twist
package plots

import (
	"math"

	"lugwright/client/draw"
)

// Point is a pair of numbers in the units of the axes.
type Point struct{ X, Y float64 }

// Line is numbers joined by a stroke.
type Line struct {
	Name   string // in the legend; empty: not there
	Points []Point
	Dash   Dash
}

// Marks are numbers with a sign each.
type Marks struct {
	Name   string
	Points []Point
	Sign   Sign
}

// Upright is a place along the lower axis.
type Upright struct {
	At    float64
	Words string
}

// Band is a stretch of heights that is laid under with grey.
type Band struct {
	From, To float64
	Words    string // in the legend
}

// Chart is one plot.
type Chart struct {
	Name     string // of the drawing
	Title    string
	Desc     string
	X, Y     Axis
	Lines    []Line
	Marks    []Marks
	Uprights []Upright
	Bands    []Band
	// HeightMM of the area of numbers; 0: as is usual.
	HeightMM float64
}

// Sizes on paper, mm.
const (
	wideMM   = 180.0
	usualMM  = 80.0
	leftMM   = 20.0
	rightMM  = 176.0
	smallMM  = 2.5
	titleMM  = 3.2
	lineMM   = 4.6
	sampleMM = 9.0
)

// Drawing is the chart on paper.
func (c *Chart) Drawing() *draw.Drawing {
	p := &plot{Chart: c, high: c.HeightMM}
	if p.high == 0 {
		p.high = usualMM
	}
	p.x, p.y = c.X.settled(c.across(), rightMM-leftMM, c.Marks != nil), c.Y.settled(c.up(), p.high, c.Marks != nil)
	p.legend()
	p.low = p.legendHigh + p.footHigh()
	tall := p.low + p.high + 5
	if len(c.Uprights) > 0 {
		tall += 5
	}
	p.d = &draw.Drawing{WidthMM: wideMM, HeightMM: tall + titleMM + 3.5, Name: c.Name, Title: c.Title, Desc: c.Desc}
	p.bands()
	p.scales()
	p.uprights()
	for i := range c.Lines {
		p.line(&c.Lines[i])
	}
	for i := range c.Marks {
		for _, q := range c.Marks[i].Points {
			p.add(c.Marks[i].Sign.at(p.place(q))...)
		}
	}
	p.frame()
	p.samples()
	p.fitted(2, p.d.HeightMM-titleMM-1.6, titleMM, wideMM-4, true, c.Title)
	p.text(2, p.d.HeightMM-titleMM-1.6-4.2, smallMM, draw.Left, false, c.Y.Words)
	return p.d
}

// across and up are all numbers that must be seen.
func (c *Chart) across() []float64 {
	var out []float64
	c.each(func(q Point) { out = append(out, q.X) })
	for _, u := range c.Uprights {
		out = append(out, u.At)
	}
	return out
}

func (c *Chart) up() []float64 {
	var out []float64
	c.each(func(q Point) { out = append(out, q.Y) })
	for _, b := range c.Bands {
		out = append(out, b.From, b.To)
	}
	return out
}

func (c *Chart) each(do func(Point)) {
	for _, l := range c.Lines {
		for _, q := range l.Points {
			do(q)
		}
	}
	for _, m := range c.Marks {
		for _, q := range m.Points {
			do(q)
		}
	}
}

// plot is a chart being drawn.
type plot struct {
	*Chart
	d          *draw.Drawing
	x, y       scale
	low, high  float64 // lower edge of the area of numbers, and how tall it is
	keys       []key
	legendHigh float64
}

// place is where a point lies on paper; what is beyond the axis lies on its edge.
func (p *plot) place(q Point) draw.Point {
	return draw.Point{X: leftMM + p.x.part(q.X)*(rightMM-leftMM), Y: p.low + p.y.part(q.Y)*p.high}
}

func (p *plot) add(items ...draw.Item) { p.d.Items = append(p.d.Items, items...) }

func (p *plot) stroke(pen draw.Pen, points ...draw.Point) {
	path := &draw.Path{Start: points[0], Pen: pen}
	for _, q := range points[1:] {
		path.Segments = append(path.Segments, draw.Segment{To: q})
	}
	p.add(path)
}

func (p *plot) text(x, y, high float64, align draw.Align, bold bool, words string) {
	p.add(&draw.Text{At: draw.Point{X: x, Y: y}, HeightMM: high, Align: align, Bold: bold, Words: words})
}

// fitted is text made smaller where it would be wider than there is room.
func (p *plot) fitted(x, y, high, room float64, bold bool, words string) {
	t := &draw.Text{At: draw.Point{X: x, Y: y}, HeightMM: high, Bold: bold, Words: words}
	if w := t.WidthMM(); w > room {
		t.HeightMM *= room / w
	}
	p.add(t)
}

var (
	rulePen  = draw.Pen{WidthMM: 0.1, Grey: 0.78}
	framePen = draw.Pen{WidthMM: 0.3}
	zeroPen  = draw.Pen{WidthMM: 0.25}
	markPen  = draw.Pen{WidthMM: 0.15, Dash: []float64{1.2, 1}, Grey: 0.3}
)

func (p *plot) bands() {
	for _, b := range p.Bands {
		from, to := p.place(Point{0, b.From}).Y, p.place(Point{0, b.To}).Y
		p.add(&draw.Path{
			Start: draw.Point{X: leftMM, Y: from}, Closed: true, Fill: draw.Shade{On: true, Grey: bandGrey},
			Segments: []draw.Segment{{To: draw.Point{X: rightMM, Y: from}}, {To: draw.Point{X: rightMM, Y: to}}, {To: draw.Point{X: leftMM, Y: to}}},
		})
	}
}

const bandGrey = 0.92

// scales are the rules with their numbers, or names turned upright.
func (p *plot) scales() {
	for _, v := range p.x.ticks() {
		at := p.place(Point{v, 0}).X
		p.stroke(rulePen, draw.Point{X: at, Y: p.low}, draw.Point{X: at, Y: p.low + p.high})
		if p.X.Names == nil {
			p.text(at, p.low-4, smallMM, draw.Middle, false, p.x.label(v))
		}
	}
	for i, name := range p.X.Names {
		at := p.place(Point{float64(i), 0}).X
		p.add(&draw.Text{At: draw.Point{X: at + smallMM/2, Y: p.low - 1.5}, HeightMM: smallMM, Align: draw.Right, TurnRad: math.Pi / 2, Words: name})
	}
	for _, v := range p.y.ticks() {
		at := p.place(Point{0, v}).Y
		p.stroke(rulePen, draw.Point{X: leftMM, Y: at}, draw.Point{X: rightMM, Y: at})
		p.text(leftMM-1.5, at-smallMM/2, smallMM, draw.Right, false, p.y.label(v))
	}
	if p.X.Names == nil {
		p.text(rightMM, p.low-8.4, smallMM, draw.Right, false, p.X.Words)
	}
	if p.y.low < 0 && p.y.high > 0 {
		at := p.place(Point{0, 0}).Y
		p.stroke(zeroPen, draw.Point{X: leftMM, Y: at}, draw.Point{X: rightMM, Y: at})
	}
}

// footHigh is the room for what stands under the lower axis.
func (p *plot) footHigh() float64 {
	high := 10.5
	if p.X.Names != nil {
		high = 4
	}
	for _, name := range p.X.Names {
		high = max(high, (&draw.Text{HeightMM: smallMM, Words: name}).WidthMM()+4)
	}
	return high
}

// uprights have their words over the area, apart from one another.
func (p *plot) uprights() {
	end := math.Inf(-1)
	raise := 0.0
	for _, u := range p.Uprights {
		at := p.place(Point{u.At, 0}).X
		t := &draw.Text{At: draw.Point{X: at}, HeightMM: 2.2, Align: draw.Middle, Words: u.Words}
		half := t.WidthMM() / 2
		t.At.X = min(max(at, leftMM+half), wideMM-half-1)
		if t.At.X-half < end+1.5 { // two heights by turns
			raise = 2.8 - raise
		} else {
			raise = 0
		}
		end = max(end, t.At.X+half)
		t.At.Y = p.low + p.high + 1 + raise
		p.stroke(markPen, draw.Point{X: at, Y: p.low}, draw.Point{X: at, Y: p.low + p.high + 0.6 + raise})
		p.add(t)
	}
}

// line is drawn within the area alone.
func (p *plot) line(l *Line) {
	if len(l.Points) < 2 {
		return
	}
	points := make([]draw.Point, len(l.Points))
	for i, q := range l.Points {
		points[i] = p.place(q)
	}
	p.stroke(l.Dash.pen(), points...)
}

func (p *plot) frame() {
	p.stroke(framePen, draw.Point{X: leftMM, Y: p.low + p.high}, draw.Point{X: leftMM, Y: p.low}, draw.Point{X: rightMM, Y: p.low})
}

// key is one entry of the legend.
type key struct {
	words string
	draw  func(at draw.Point) // at the middle of its sample
	x, y  float64             // of the left end of its sample's middle line, y from the lower edge
}

// legend sets the entries in rows.
func (p *plot) legend() {
	for i := range p.Lines {
		if l := &p.Lines[i]; l.Name != "" {
			p.keys = append(p.keys, key{words: l.Name, draw: func(at draw.Point) {
				p.stroke(l.Dash.pen(), draw.Point{X: at.X - sampleMM/2, Y: at.Y}, draw.Point{X: at.X + sampleMM/2, Y: at.Y})
			}})
		}
	}
	for i := range p.Marks {
		if m := &p.Marks[i]; m.Name != "" {
			p.keys = append(p.keys, key{words: m.Name, draw: func(at draw.Point) { p.add(m.Sign.at(at)...) }})
		}
	}
	for _, b := range p.Bands {
		if b.Words != "" {
			p.keys = append(p.keys, key{words: b.Words, draw: func(at draw.Point) {
				p.add(&draw.Path{
					Start: draw.Point{X: at.X - sampleMM/2, Y: at.Y - 1.3}, Closed: true, Fill: draw.Shade{On: true, Grey: bandGrey}, Pen: draw.Pen{WidthMM: 0.1, Grey: 0.5},
					Segments: []draw.Segment{{To: draw.Point{X: at.X + sampleMM/2, Y: at.Y - 1.3}}, {To: draw.Point{X: at.X + sampleMM/2, Y: at.Y + 1.3}}, {To: draw.Point{X: at.X - sampleMM/2, Y: at.Y + 1.3}}},
				})
			}})
		}
	}
	const from, between = 2.0, 5.0
	x, row := from, 0
	for i := range p.keys {
		k := &p.keys[i]
		wide := sampleMM + 2 + (&draw.Text{HeightMM: smallMM, Words: k.words}).WidthMM()
		if x > from && x+wide > wideMM-2 {
			x, row = from, row+1
		}
		k.x, k.y = x, float64(row)
		x += wide + between
	}
	if len(p.keys) > 0 {
		p.legendHigh = float64(row+1)*lineMM + 1
	}
	for i := range p.keys {
		p.keys[i].y = p.legendHigh - (p.keys[i].y+0.5)*lineMM
	}
}

func (p *plot) samples() {
	for _, k := range p.keys {
		k.draw(draw.Point{X: k.x + sampleMM/2, Y: k.y})
		p.fitted(k.x+sampleMM+2, k.y-smallMM/2, smallMM, wideMM-k.x-sampleMM-3, false, k.words)
	}
}
