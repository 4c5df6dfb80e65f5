package pdf

// This file makes the marks on a page: lines, areas and words, as operators of its content (ISO 32000-1, 8 and 9, from memory).

import (
	"math"

	"lugwright/client/draw"
	"lugwright/geometry/decimal"
)

// perMM is how many of a content's units are a millimetre. Places are whole units, from the page's lower left corner: finer than printers are, and the shortest to write.
const perMM = 100

// marks are those on one page. What is set once is set again only where it changes.
type marks struct {
	content []byte
	tall    float64 // of the page: places are given from its upper left corner
	pen     draw.Pen
	round   bool // ends of lines
	fill    float64
	font    style
}

// begin begins a page, with the memory of the one before.
func (m *marks) begin(tall float64) {
	*m = marks{content: m.content[:0], tall: tall, pen: draw.Pen{WidthMM: -1}}
	m.op("q\n1 j") // lines meet round
	m.ratios(1/(perMM*pointMM), 0, 0, 1/(perMM*pointMM), 0, 0)
	m.op("cm")
}

// end leaves the page as it was, for what comes after.
func (m *marks) end() []byte {
	m.op("Q")
	return m.content
}

// number writes what a page can hold; what is beyond is off the page in any case.
func (m *marks) number(v float64, places int) {
	v = max(-decimal.Most, min(decimal.Most, v))
	if v != v {
		v = 0
	}
	m.content = append(decimal.Append(m.content, v, places), ' ')
}

func (m *marks) length(mm float64) { m.number(perMM*mm, 1) }

func (m *marks) ratios(list ...float64) {
	for _, v := range list {
		m.number(v, 9)
	}
}

func (m *marks) point(x, y float64) {
	m.number(perMM*x, 0)
	m.number(perMM*(m.tall-y), 0)
}

func (m *marks) op(name string) { m.content = append(append(m.content, name...), '\n') }

// stroke is how lines are drawn from now on.
func (m *marks) stroke(p draw.Pen) {
	p.Grey = shade(p.Grey)
	if p.WidthMM != m.pen.WidthMM {
		m.length(p.WidthMM)
		m.op("w")
	}
	if p.Grey != m.pen.Grey {
		m.number(p.Grey, greys)
		m.op("G")
	}
	if len(p.Dash)+len(m.pen.Dash) > 0 {
		m.content = append(m.content, '[')
		for _, l := range p.Dash {
			m.length(l)
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
		m.number(grey, greys)
		m.op("g")
		m.fill = grey
	}
}

const greys = 3 // decimals

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
	m.number(perMM*width, 0)
	m.number(perMM*height, 0)
	m.op("re")
}

// words stand on a base line from a place, turned about it counter-clockwise.
func (m *marks) words(s style, x, y, turn float64, words string) {
	m.shaded(0)
	m.op("BT")
	if s != m.font {
		m.content = append(append(append(m.content, '/'), s.face...), ' ')
		m.number(perMM*s.size*pointMM, 3)
		m.op("Tf")
		m.font = s
	}
	if turn == 0 {
		m.point(x, y)
		m.content = append(m.content, "Td ("...)
	} else {
		sin, cos := math.Sincos(turn)
		m.ratios(cos, sin, -sin, cos)
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
