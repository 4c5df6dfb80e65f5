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
	Ranges []Range // behind the signs
}

// Range is a stretch that a number may lie in.
type Range struct{ X, Low, High float64 }

// Upright is a place along the lower axis.
type Upright struct {
	At    float64
	Words string // over the area; empty: the line alone
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
	// Under are more areas below the first, over the same X: their lines and marks have the same names, and their titles are not drawn.
	Under []*Chart
}

// Sizes on paper, mm.
const (
	wideMM   = 180.0
	usualMM  = 62.0 // two charts and two headings on a page of either size
	leftMM   = 20.0
	rightMM  = 176.0
	smallMM  = 2.5
	titleMM  = 3.2
	lineMM   = 4.6
	sampleMM = 9.0
)

// Drawing is the chart on paper.
func (c *Chart) Drawing() *draw.Drawing {
	p := &plot{Chart: c, d: &draw.Drawing{WidthMM: wideMM, Name: c.Name, Title: c.Title, Desc: c.Desc}}
	p.x = c.X.settled(c.across(), rightMM-leftMM, c.Marks != nil)
	p.legend()
	p.samples()
	// From below upwards, each area with what its numbers are over it.
	p.low = p.legendHigh + p.footHigh()
	areas := append([]*Chart{c}, c.Under...)
	for i := len(areas) - 1; i >= 0; i-- {
		p.Chart = areas[i]
		p.area(i == len(areas)-1)
		p.low += p.high + p.overHigh()
		p.text(2, p.low-smallMM, smallMM, draw.Left, false, p.Y.Words)
		p.low += 3.2
	}
	p.fitted(2, p.low, titleMM, wideMM-4, true, c.Title)
	p.d.HeightMM = p.low + titleMM + 1.6
	return p.d
}

// area draws one of the areas from its lower edge upwards; the last of them has the numbers along it.
func (p *plot) area(last bool) {
	p.high = p.HeightMM
	if p.high == 0 {
		p.high = usualMM
	}
	p.y = p.Y.settled(p.up(), p.high, p.Marks != nil)
	p.bands()
	p.scales(last)
	p.uprights()
	for i := range p.Lines {
		p.line(&p.Lines[i])
	}
	for i := range p.Marks {
		for _, r := range p.Marks[i].Ranges {
			p.stroke(rangePen, p.place(Point{r.X, r.Low}), p.place(Point{r.X, r.High}))
		}
	}
	for i := range p.Marks {
		for _, q := range p.Marks[i].Points {
			p.add(p.Marks[i].Sign.at(p.place(q))...)
		}
	}
	p.frame()
}

// overHigh is the room for what stands over an area: what its numbers are, and the words of places in one row or two.
func (p *plot) overHigh() float64 {
	return smallMM + 2.6 + uprightMM*float64(p.rows())
}

// across and up are all numbers that must be seen.
func (c *Chart) across() []float64 {
	var out []float64
	for _, one := range append([]*Chart{c}, c.Under...) {
		one.each(func(q Point) { out = append(out, q.X) })
		for _, u := range one.Uprights {
			out = append(out, u.At)
		}
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
		for _, r := range m.Ranges {
			do(Point{r.X, r.Low})
			do(Point{r.X, r.High})
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
	rangePen = draw.Pen{WidthMM: 0.35, Grey: 0.5}
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

// scales are the rules with their numbers, or names turned upright; those along the lower edge only where they are wanted.
func (p *plot) scales(lower bool) {
	for _, v := range p.x.ticks() {
		at := p.place(Point{v, 0}).X
		p.stroke(rulePen, draw.Point{X: at, Y: p.low}, draw.Point{X: at, Y: p.low + p.high})
		if p.X.Names == nil && lower {
			p.text(at, p.low-4, smallMM, draw.Middle, false, p.x.label(v))
		}
	}
	for i, name := range p.X.Names {
		if !lower {
			break
		}
		at := p.place(Point{float64(i), 0}).X
		p.add(&draw.Text{At: draw.Point{X: at + smallMM/2, Y: p.low - 1.5}, HeightMM: smallMM, Align: draw.Right, TurnRad: math.Pi / 2, Words: name})
	}
	for _, v := range p.y.ticks() {
		at := p.place(Point{0, v}).Y
		p.stroke(rulePen, draw.Point{X: leftMM, Y: at}, draw.Point{X: rightMM, Y: at})
		p.text(leftMM-1.5, at-smallMM/2, smallMM, draw.Right, false, p.y.label(v))
	}
	if p.X.Names == nil && lower {
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

// uprights have their words over the area, in rows so that no line goes through words.
func (p *plot) uprights() {
	for i, t := range p.signposts() {
		at := p.place(Point{p.Uprights[i].At, 0}).X
		if t.Words == "" {
			p.stroke(markPen, draw.Point{X: at, Y: p.low}, draw.Point{X: at, Y: p.low + p.high})
			continue
		}
		p.stroke(markPen, draw.Point{X: at, Y: p.low}, draw.Point{X: at, Y: t.At.Y - 0.4})
		p.add(t)
	}
}

const uprightMM = 2.9 // from one row of words over the area to the next

// signposts are the words of the uprights, in their places: each begins at its own line and goes to the right, or ends at the paper's edge. Words that
// another's line comes up under stand in a row above that other's.
func (p *plot) signposts() []*draw.Text {
	n := len(p.Uprights)
	out, at, to, row := make([]*draw.Text, n), make([]float64, n), make([]float64, n), make([]int, n)
	for i, u := range p.Uprights {
		t := &draw.Text{HeightMM: 2.2, Words: u.Words}
		at[i] = p.place(Point{u.At, 0}).X
		t.At.X = max(min(at[i]-0.8, wideMM-1-t.WidthMM()), 1)
		out[i], to[i] = t, t.At.X+t.WidthMM()+1.5
	}
	for moved, rounds := true, 0; moved && rounds < n; rounds++ {
		moved = false
		for i := range out {
			for k := range out {
				over := at[k] > out[i].At.X-1 && at[k] < to[i]
				both := over && at[i] > out[k].At.X-1 && at[i] < to[k]
				meet := out[i].At.X < to[k] && out[k].At.X < to[i]
				if i != k && row[i] <= row[k] && (over && (!both || i < k) || row[i] == row[k] && meet && i < k) {
					row[i], moved = row[k]+1, true
				}
			}
		}
	}
	for i, t := range out {
		t.At.Y = p.low + p.high + 1 + uprightMM*float64(row[i])
	}
	return out
}

// rows is how many rows of words the uprights have.
func (p *plot) rows() int {
	rows := 0
	for _, t := range p.signposts() {
		if t.Words != "" {
			rows = max(rows, 1+int(math.Round((t.At.Y-p.low-p.high-1)/uprightMM)))
		}
	}
	return rows
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
			p.keys = append(p.keys, key{words: m.Name, draw: func(at draw.Point) {
				if m.Sign == Tick {
					at.Y += 2.3
				}
				p.add(m.Sign.at(at)...)
			}})
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
