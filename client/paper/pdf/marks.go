package pdf

// This file makes the marks on a page: lines, areas and words, as operators of its content (ISO 32000-1, 8 and 9, from memory).

import (
	"math"

	"lugwright/client/draw"
	"lugwright/geometry/decimal"
)

// Lengths in a page's content are mm from its lower left corner, places to a hundredth, which is finer than printers are, the widths of lines to a thousandth.
const (
	places = 2
	widths = 3
)

// marks are those on one page. What is set once is set again only where it changes.
type marks struct {
	content []byte
	tall    float64 // of the page: places are given from its upper left corner
	pen     draw.Pen
	round   bool // ends of lines
	fill    float64
	font    style
}

func newMarks(tall float64) *marks {
	m := &marks{tall: tall, pen: draw.Pen{WidthMM: -1}}
	m.content = append(m.content, "1 j\n"...) // lines meet round
	m.numbers(1/pointMM, 0, 0, 1/pointMM, 0, 0)
	m.op("cm")
	return m
}

// number writes what a page can hold; what is beyond is off the page in any case.
func (m *marks) number(v float64, places int) {
	v = max(-decimal.Most, min(decimal.Most, v))
	if v != v {
		v = 0
	}
	m.content = append(decimal.Append(m.content, v, places), ' ')
}

func (m *marks) numbers(list ...float64) {
	for _, v := range list {
		m.number(v, 6)
	}
}

func (m *marks) point(x, y float64) {
	m.number(x, places)
	m.number(m.tall-y, places)
}

func (m *marks) op(name string) { m.content = append(append(m.content, name...), '\n') }

// stroke is how lines are drawn from now on.
func (m *marks) stroke(p draw.Pen) {
	p.Grey = shade(p.Grey)
	if p.WidthMM != m.pen.WidthMM {
		m.number(p.WidthMM, widths)
		m.op("w")
	}
	if p.Grey != m.pen.Grey {
		m.number(p.Grey, places)
		m.op("G")
	}
	if len(p.Dash)+len(m.pen.Dash) > 0 {
		m.content = append(m.content, '[')
		for _, l := range p.Dash {
			m.number(l, widths)
		}
		m.op("] 0 d")
	}
	m.pen = p
}

// ends of lines are round, or where they stop.
func (m *marks) ends(round bool) {
	if round != m.round {
		m.op(map[bool]string{true: "1 J", false: "0 J"}[round])
		m.round = round
	}
}

// shaded is the grey of areas and words from now on.
func (m *marks) shaded(grey float64) {
	if grey = shade(grey); grey != m.fill {
		m.number(grey, places)
		m.op("g")
		m.fill = grey
	}
}

// shade is one of the greys that a screen has.
func shade(grey float64) float64 { return math.Round(min(max(grey, 0), 1)*255) / 255 }

func (m *marks) moveTo(x, y float64) {
	m.point(x, y)
	m.op("m")
}

func (m *marks) lineTo(x, y float64) {
	m.point(x, y)
	m.op("l")
}

func (m *marks) curveTo(x1, y1, x2, y2, x, y float64) {
	m.point(x1, y1)
	m.point(x2, y2)
	m.point(x, y)
	m.op("c")
}

// rect is a rectangle by its upper left corner.
func (m *marks) rect(x, y, width, height float64) {
	m.point(x, y+height)
	m.number(width, places)
	m.number(height, places)
	m.op("re")
}

// words stand on a base line from a place, turned about it counter-clockwise.
func (m *marks) words(s style, x, y, turn float64, words string) {
	m.shaded(0)
	m.op("BT")
	if s != m.font {
		m.content = append(append(append(m.content, '/'), s.face...), ' ')
		m.number(s.size*pointMM, 5)
		m.op("Tf")
		m.font = s
	}
	if turn == 0 {
		m.point(x, y)
		m.content = append(m.content, "Td ("...)
	} else {
		sin, cos := math.Sincos(turn)
		m.numbers(cos, sin, -sin, cos)
		m.point(x, y)
		m.content = append(m.content, "Tm ("...)
	}
	for _, r := range words {
		glyph := letter(r) + 1
		m.content = append(m.content, byte(glyph>>8))
		switch low := byte(glyph); low {
		case '(', ')', '\\':
			m.content = append(m.content, '\\', low)
		case '\r':
			m.content = append(m.content, `\r`...)
		default:
			m.content = append(m.content, low)
		}
	}
	m.op(") Tj\nET")
}
