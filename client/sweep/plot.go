package sweep

// This file draws what variants take against how much of their capacity is used: on paper, and in letters for a terminal.

import (
	"fmt"
	"math"
	"strings"

	"lugwright/client/draw"
	"lugwright/units"
)

// Plot is a picture of rows.
type Plot struct {
	Title  string
	Across string // what lies across, with its unit
	Margin float64
	Points []Point
}

// Point is one row that has a utilisation.
type Point struct {
	Across, Utilisation float64
	Outcome             Outcome
	Lightest            bool
}

// mostShown is the utilisation above which points lie on the upper edge.
const mostShown = 2

// span is the part of the plane that is shown.
type plane struct{ left, right, top, step float64 }

func (p *Plot) plane() plane {
	low, high, top := math.Inf(1), math.Inf(-1), 1.0
	for _, q := range p.Points {
		low, high, top = min(low, q.Across), max(high, q.Across), max(top, q.Utilisation)
	}
	if len(p.Points) == 0 {
		low, high = 0, 1
	}
	if high-low < 1e-9*(1+math.Abs(high)) {
		low, high = low-max(math.Abs(low), 1)*0.05, high+max(math.Abs(high), 1)*0.05
	}
	step := nice((high - low) / 5)
	return plane{math.Floor(low/step) * step, math.Ceil(high/step) * step, min(math.Ceil(top*5+0.25)/5, mostShown), step}
}

// nice is the smallest of 1, 2, 5 times a power of ten that is not below v.
func nice(v float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(v)))
	for _, k := range []float64{1, 2, 5} {
		if k*power >= v*(1-1e-9) {
			return k * power
		}
	}
	return 10 * power
}

// ticks are the numbers along the lower edge.
func (p plane) ticks() []float64 {
	var out []float64
	for i := range int(math.Round((p.right-p.left)/p.step)) + 1 {
		out = append(out, p.left+float64(i)*p.step)
	}
	return out
}

func (p plane) label(v float64) string {
	return units.FormatPlain(v, max(0, int(math.Ceil(-math.Log10(p.step)-1e-9))))
}

// at is a point's place from 0 to 1 each way.
func (p plane) at(q Point) (x, y float64) {
	return (q.Across - p.left) / (p.right - p.left), min(q.Utilisation/p.top, 1)
}

// wanted is the utilisation that is not to be passed.
func (p *Plot) wanted() float64 { return 1 / p.Margin }

// Legend says what the marks of the letters mean.
const Legend = "* lightest that passes, o passes, s short of the margin, x fails, ? outside the rule"

// marks by outcome; where several rows share a place, the later of the list is seen.
var marks = []struct {
	outcome Outcome
	letter  byte
}{{Fails, 'x'}, {Outside, '?'}, {Short, 's'}, {Passes, 'o'}}

// Letters is the plot as lines of at most so many columns.
func (p *Plot) Letters(columns, rows int) []string {
	const margin = 6
	wide := columns - margin - 1
	area := p.plane()
	grid := make([][]byte, rows)
	for y := range grid {
		grid[y] = []byte(strings.Repeat(" ", wide))
	}
	row := func(y float64) int { return rows - 1 - int(math.Round(y*float64(rows-1))) }
	limit := row(min(p.wanted()/area.top, 1))
	copy(grid[limit], strings.Repeat("-", wide))
	put := func(q Point, letter byte) {
		x, y := area.at(q)
		grid[row(y)][int(math.Round(x*float64(wide-1)))] = letter
	}
	for _, m := range marks {
		for _, q := range p.Points {
			if q.Outcome == m.outcome {
				put(q, m.letter)
			}
		}
	}
	for _, q := range p.Points {
		if q.Lightest {
			put(q, '*')
		}
	}
	lines := []string{"used"}
	for y := range grid {
		label := ""
		switch {
		case y == limit:
			label = units.FormatPlain(p.wanted(), 2)
		case y == 0:
			label = units.FormatPlain(area.top, 2)
		case y == rows-1:
			label = "0"
		}
		lines = append(lines, strings.TrimRight(fmt.Sprintf("%*s|%s", margin, label, grid[y]), " "))
	}
	lines = append(lines, strings.Repeat(" ", margin)+"+"+strings.Repeat("-", wide))
	foot := []byte(strings.Repeat(" ", columns))
	for _, v := range area.ticks() {
		text := area.label(v)
		x := margin + 1 + int(math.Round((v-area.left)/(area.right-area.left)*float64(wide-1)))
		copy(foot[min(max(0, x-len(text)/2), columns-len(text)):], text)
	}
	return append(lines, strings.TrimRight(string(foot), " "), strings.Repeat(" ", margin+1)+p.Across)
}

// Sizes of the drawing, in mm.
const (
	paperWide, paperHigh = 180, 120
	leftEdge, rightEdge  = 18, 174
	lowEdge, highEdge    = 22, 106
	small                = 2.6
)

// Drawing is the plot on paper.
func (p *Plot) Drawing() *draw.Drawing {
	area := p.plane()
	d := &draw.Drawing{WidthMM: paperWide, HeightMM: paperHigh, Title: p.Title}
	place := func(x, y float64) draw.Point {
		return draw.Point{X: leftEdge + x*(rightEdge-leftEdge), Y: lowEdge + y*(highEdge-lowEdge)}
	}
	line := func(a, b draw.Point, pen draw.Pen) {
		d.Items = append(d.Items, &draw.Path{Start: a, Segments: []draw.Segment{{To: b}}, Pen: pen})
	}
	text := func(at draw.Point, align draw.Align, bold bool, words string) {
		d.Items = append(d.Items, &draw.Text{At: at, HeightMM: small, Align: align, Words: words, Bold: bold})
	}
	for _, v := range area.ticks() {
		x := (v - area.left) / (area.right - area.left)
		line(place(x, 0), place(x, 1), draw.Pen{WidthMM: 0.1, Grey: 0.8})
		text(draw.Point{X: place(x, 0).X, Y: lowEdge - 5}, draw.Middle, false, area.label(v))
	}
	for i := range int(math.Round(area.top*5)) + 1 {
		u := float64(i) / 5
		line(place(0, u/area.top), place(1, u/area.top), draw.Pen{WidthMM: 0.1, Grey: 0.8})
		text(draw.Point{X: leftEdge - 2, Y: place(0, u/area.top).Y - small/2}, draw.Right, false, units.FormatPlain(u, 1))
	}
	limit := place(0, min(p.wanted()/area.top, 1))
	line(limit, draw.Point{X: rightEdge, Y: limit.Y}, draw.Pen{WidthMM: 0.5, Dash: []float64{3, 1.5}})
	line(place(0, 0), place(1, 0), draw.Pen{WidthMM: 0.35})
	line(place(0, 0), place(0, 1), draw.Pen{WidthMM: 0.35})
	for _, m := range marks {
		for _, q := range p.Points {
			if q.Outcome == m.outcome {
				at := place(area.at(q))
				d.Items = append(d.Items, mark(q.Outcome, at)...)
				if q.Lightest {
					d.Items = append(d.Items, mark("", at)...)
				}
			}
		}
	}
	text(draw.Point{X: leftEdge, Y: highEdge + 7}, draw.Left, true, p.Title)
	text(draw.Point{X: leftEdge, Y: highEdge + 2}, draw.Left, false, fmt.Sprintf("used, of capacity; wanted: at most %s; above %s at the upper edge", units.FormatPlain(p.wanted(), 3), units.FormatPlain(area.top, 1)))
	text(draw.Point{X: rightEdge, Y: lowEdge - 10}, draw.Right, false, p.Across)
	x := float64(leftEdge)
	for _, m := range []struct {
		outcome Outcome
		words   string
		wide    float64
	}{{Passes, "passes", 21}, {Short, "short of the margin", 43}, {Fails, "fails", 18}, {Outside, "outside the rule", 36}, {"", "lightest that passes", 0}} {
		d.Items = append(d.Items, mark(m.outcome, draw.Point{X: x + 1.5, Y: 6 + small/2})...)
		text(draw.Point{X: x + 5, Y: 6}, draw.Left, false, m.words)
		x += m.wide
	}
	return d
}

// mark is a sign for an outcome: its form tells it, not a colour. The empty one rings the lightest.
func mark(o Outcome, at draw.Point) []draw.Item {
	const r = 1.3
	shape := func(closed bool, fill draw.Shade, pen float64, by ...draw.Point) draw.Item {
		p := &draw.Path{Start: draw.Point{X: at.X + by[0].X, Y: at.Y + by[0].Y}, Closed: closed, Pen: draw.Pen{WidthMM: pen}, Fill: fill}
		for _, b := range by[1:] {
			p.Segments = append(p.Segments, draw.Segment{To: draw.Point{X: at.X + b.X, Y: at.Y + b.Y}})
		}
		return p
	}
	diamond := func(r float64) []draw.Point { return []draw.Point{{X: r}, {Y: r}, {X: -r}, {Y: -r}} }
	switch o {
	case Passes:
		return []draw.Item{shape(true, draw.Shade{On: true}, 0, diamond(r)...)}
	case Short:
		return []draw.Item{shape(true, draw.Shade{On: true, Grey: 1}, 0.3, diamond(r)...)}
	case Outside:
		return []draw.Item{shape(true, draw.Shade{On: true, Grey: 1}, 0.3, draw.Point{X: -1, Y: -1}, draw.Point{X: 1, Y: -1}, draw.Point{X: 1, Y: 1}, draw.Point{X: -1, Y: 1})}
	case Fails:
		return []draw.Item{shape(false, draw.Shade{}, 0.3, draw.Point{X: -1, Y: -1}, draw.Point{X: 1, Y: 1}), shape(false, draw.Shade{}, 0.3, draw.Point{X: -1, Y: 1}, draw.Point{X: 1, Y: -1})}
	}
	return []draw.Item{shape(true, draw.Shade{}, 0.3, diamond(2.6)...)}
}
