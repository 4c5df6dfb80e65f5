package plots

import (
	"math"

	"lugwright/client/draw"
)

// Dash is how a line is drawn: by its strokes first, by its grey beside.
type Dash int

// The dashes, in the order in which lines take them.
const (
	Solid Dash = iota
	Long
	Dotted
	DashDot
	Faint // unbroken, thin and grey: for comparison
	Limit // what is not to be passed
	dashes
)

func (d Dash) pen() draw.Pen {
	return [dashes]draw.Pen{
		{WidthMM: 0.5}, {WidthMM: 0.45, Dash: []float64{3.2, 1.4}}, {WidthMM: 0.55, Dash: []float64{0.5, 1.1}}, {WidthMM: 0.4, Dash: []float64{4.5, 1.2, 0.6, 1.2}},
		{WidthMM: 0.35, Grey: 0.55}, {WidthMM: 0.6, Dash: []float64{2, 1}},
	}[d%dashes]
}

// Sign is the form of a mark.
type Sign int

// The signs, in the order in which rows of numbers take them.
const (
	Disc Sign = iota
	Square
	Triangle
	Diamond
	Cross
	Plus
	OpenDisc
	Full // a filled square
	FullDiamond
	Ring // round another mark
	Tick // a bar under another mark
	signs
)

const radiusMM = 1.25

// at draws the sign.
func (s Sign) at(p draw.Point) []draw.Item {
	const r = radiusMM
	pen := draw.Pen{WidthMM: 0.3}
	white, black := draw.Shade{On: true, Grey: 1}, draw.Shade{On: true}
	shape := func(closed bool, fill draw.Shade, by ...draw.Point) draw.Item {
		path := &draw.Path{Start: draw.Point{X: p.X + by[0].X, Y: p.Y + by[0].Y}, Closed: closed, Pen: pen, Fill: fill}
		for _, b := range by[1:] {
			path.Segments = append(path.Segments, draw.Segment{To: draw.Point{X: p.X + b.X, Y: p.Y + b.Y}})
		}
		return path
	}
	circle := func(r float64, fill draw.Shade) draw.Item {
		return &draw.Path{
			Start: draw.Point{X: p.X + r, Y: p.Y}, Closed: true, Pen: pen, Fill: fill,
			Segments: []draw.Segment{{To: draw.Point{X: p.X - r, Y: p.Y}, Bulge: 1}, {To: draw.Point{X: p.X + r, Y: p.Y}, Bulge: 1}},
		}
	}
	const h = 1.05
	square := []draw.Point{{X: -h, Y: -h}, {X: h, Y: -h}, {X: h, Y: h}, {X: -h, Y: h}}
	diamond := func(r float64) []draw.Point { return []draw.Point{{X: r}, {Y: r}, {X: -r}, {Y: -r}} }
	switch s % signs {
	case Disc:
		return []draw.Item{circle(r*0.9, black)}
	case Square:
		return []draw.Item{shape(true, white, square...)}
	case Triangle:
		k := r * math.Sqrt(3) / 2
		return []draw.Item{shape(true, white, draw.Point{X: -k, Y: -r / 2}, draw.Point{X: k, Y: -r / 2}, draw.Point{Y: r})}
	case Diamond:
		return []draw.Item{shape(true, white, diamond(r*1.1)...)}
	case Cross:
		return []draw.Item{shape(false, draw.Shade{}, draw.Point{X: -h, Y: -h}, draw.Point{X: h, Y: h}), shape(false, draw.Shade{}, draw.Point{X: -h, Y: h}, draw.Point{X: h, Y: -h})}
	case Plus:
		return []draw.Item{shape(false, draw.Shade{}, draw.Point{X: -r}, draw.Point{X: r}), shape(false, draw.Shade{}, draw.Point{Y: -r}, draw.Point{Y: r})}
	case OpenDisc:
		return []draw.Item{circle(r*0.9, white)}
	case Full:
		return []draw.Item{shape(true, black, square...)}
	case FullDiamond:
		return []draw.Item{shape(true, black, diamond(r*1.1)...)}
	case Ring:
		return []draw.Item{circle(r*1.8, draw.Shade{})}
	}
	return []draw.Item{shape(false, draw.Shade{}, draw.Point{X: -1.3, Y: -2.3}, draw.Point{X: 1.3, Y: -2.3})}
}
