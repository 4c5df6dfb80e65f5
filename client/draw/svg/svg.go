// Package svg writes drawings as SVG, with arcs as arcs and words as words. It never measures or places anything.
//
// Written: svg, title, desc, g, path and text with plain attributes, so that a picture can be set into any page; no styles, scripts, fonts or
// references. Coordinates are mm, y down as the format has it, so a counter-clockwise arc has sweep flag 0. A line of words has the length that it
// was placed with, whatever face the reader has. A group's name is its data-id, and its id where it is the first of that name.
package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strings"

	"lugwright/client/draw"
	"lugwright/geometry/decimal"
)

const (
	decimals = 3
	fonts    = "Go, Helvetica, Arial, sans-serif"
)

// Write writes a drawing. It fails when a number is not finite or beyond 1e6, or a group has no usable name.
func Write(out io.Writer, d *draw.Drawing) error { return WriteInto(out, d, "") }

// WriteInto writes a drawing among others on one page: before each id it sets a prefix that is the drawing's own.
func WriteInto(out io.Writer, d *draw.Drawing, prefix string) error {
	w := writer{height: d.HeightMM, prefix: prefix, groups: map[string]bool{}}
	w.buf = make([]byte, 0, 1024+length(d.Items))
	w.begin("svg")
	w.attr("xmlns", "http://www.w3.org/2000/svg")
	w.attr("version", "1.1")
	w.number("width", d.WidthMM, "mm")
	w.number("height", d.HeightMM, "mm")
	w.add(` viewBox="0 0 `)
	w.append(d.WidthMM)
	w.add(" ")
	w.append(d.HeightMM)
	w.add(`" role="img"`)
	w.attr("font-family", fonts)
	w.add(` fill="none" stroke-linecap="round" stroke-linejoin="round">` + "\n")
	w.leaf("title", d.Title)
	if d.Desc != "" {
		w.leaf("desc", d.Desc)
	}
	w.items(d.Items)
	w.end("svg")
	if !(d.WidthMM > 0 && d.HeightMM > 0) {
		w.fail(fmt.Errorf("size %g x %g mm; both must be above 0", d.WidthMM, d.HeightMM))
	}
	if w.err != nil {
		return fmt.Errorf("drawing %q: %w", d.Title, w.err)
	}
	_, err := out.Write(w.buf)
	return err
}

// writer collects elements; only its first error counts.
type writer struct {
	buf    []byte
	height float64
	prefix string
	groups map[string]bool
	err    error
}

func (w *writer) fail(err error) {
	if w.err == nil {
		w.err = err
	}
}

func (w *writer) items(list []draw.Item) {
	for _, item := range list {
		switch item := item.(type) {
		case *draw.Path:
			w.path(item)
		case *draw.Text:
			w.text(item)
		case *draw.Group:
			w.group(item)
		}
	}
}

// length is about how many bytes items take.
func length(items []draw.Item) int {
	const element, place = 120, 16
	n := 0
	for _, item := range items {
		n += element
		switch item := item.(type) {
		case *draw.Path:
			n += place * len(item.Segments)
			for _, l := range item.More {
				n += place * (1 + len(l.Segments))
			}
		case *draw.Text:
			n += element
		case *draw.Group:
			n += length(item.Items)
		}
	}
	return n
}

func (w *writer) group(g *draw.Group) {
	if !usable(g.ID) {
		w.fail(fmt.Errorf("group %q: the name of a group is letters, digits, '-' and '_'", g.ID))
	}
	w.begin("g")
	w.attr("data-id", g.ID)
	if !w.groups[g.ID] {
		w.attr("id", w.prefix+g.ID)
	}
	w.groups[g.ID] = true
	w.add(">\n")
	w.items(g.Items)
	w.end("g")
}

func usable(id string) bool {
	bad := func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_')
	}
	return id != "" && !strings.ContainsFunc(id, bad)
}

func (w *writer) path(p *draw.Path) {
	w.add(`<path d="`)
	w.loop(p.Start, p.Segments, p.Closed)
	for _, l := range p.More {
		w.loop(l.Start, l.Segments, true)
	}
	w.add(`"`)
	if p.Fill.On {
		w.grey("fill", p.Fill.Grey)
		if len(p.More) > 0 {
			w.attr("fill-rule", "evenodd")
		}
	}
	if p.Pen.WidthMM > 0 {
		w.grey("stroke", p.Pen.Grey)
		w.number("stroke-width", p.Pen.WidthMM, "")
		if len(p.Pen.Dash) > 0 {
			w.add(` stroke-dasharray="`)
			for i, length := range p.Pen.Dash {
				if i > 0 {
					w.add(" ")
				}
				w.append(length)
			}
			// Round ends would close the gaps.
			w.add(`" stroke-linecap="butt"`)
		}
	}
	w.add("/>\n")
}

// loop adds path data. No arc is over half a circle, so the large flag is always 0.
func (w *writer) loop(start draw.Point, segments []draw.Segment, closed bool) {
	w.point('M', start)
	from := start
	for _, s := range segments {
		switch {
		case math.Abs(s.Bulge) > 1:
			w.fail(fmt.Errorf("bulge %g; -1 to 1 is accepted", s.Bulge))
		case s.Bulge == 0:
			w.point('L', s.To)
		default:
			b := math.Abs(s.Bulge)
			r := math.Hypot(s.To.X-from.X, s.To.Y-from.Y) * (1 + b*b) / (4 * b)
			w.add("A")
			w.append(r)
			w.add(" ")
			w.append(r)
			if s.Bulge > 0 {
				w.add(" 0 0 0")
			} else {
				w.add(" 0 0 1")
			}
			w.point(' ', s.To)
		}
		from = s.To
	}
	if closed {
		w.add("Z")
	}
}

func (w *writer) text(t *draw.Text) {
	if t.Words == "" {
		return
	}
	w.begin("text")
	w.number("x", t.At.X, "")
	w.number("y", w.height-t.At.Y, "")
	w.number("font-size", t.SizeMM(), "")
	w.grey("fill", 0)
	switch t.Align {
	case draw.Middle:
		w.attr("text-anchor", "middle")
	case draw.Right:
		w.attr("text-anchor", "end")
	}
	if t.Bold {
		w.attr("font-weight", "bold")
	}
	w.number("textLength", t.WidthMM(), "")
	w.attr("lengthAdjust", "spacingAndGlyphs")
	if t.TurnRad != 0 {
		w.add(` transform="rotate(`)
		w.append(-t.TurnRad * 180 / math.Pi)
		w.point(' ', t.At)
		w.add(`)"`)
	}
	w.add(">")
	w.escape(t.Words)
	w.end("text")
}

// grey is a colour from 0 black to 1 white.
func (w *writer) grey(name string, v float64) {
	const digits = "0123456789abcdef"
	n := int(math.Round(255 * max(0, min(1, v))))
	a, b := digits[n>>4], digits[n&15]
	w.open(name)
	w.buf = append(w.buf, '#', a, b, a, b, a, b, '"')
}

func (w *writer) add(s string) { w.buf = append(w.buf, s...) }

// begin opens an element, which attributes follow.
func (w *writer) begin(name string) {
	w.buf = append(w.buf, '<')
	w.add(name)
}

// open begins an attribute.
func (w *writer) open(name string) {
	w.buf = append(w.buf, ' ')
	w.add(name)
	w.add(`="`)
}

func (w *writer) attr(name, value string) {
	w.open(name)
	w.escape(value)
	w.add(`"`)
}

func (w *writer) number(name string, v float64, unit string) {
	w.open(name)
	w.append(v)
	w.add(unit)
	w.add(`"`)
}

// leaf writes an element that holds a text.
func (w *writer) leaf(name, text string) {
	w.begin(name)
	w.add(">")
	w.escape(text)
	w.end(name)
}

func (w *writer) end(name string) {
	w.add("</")
	w.add(name)
	w.add(">\n")
}

func (w *writer) escape(s string) {
	var b bytes.Buffer
	if err := xml.EscapeText(&b, []byte(s)); err != nil {
		w.fail(err)
	}
	w.buf = append(w.buf, b.Bytes()...)
}

// point writes a place after a letter.
func (w *writer) point(letter byte, p draw.Point) {
	w.buf = append(w.buf, letter)
	w.append(p.X)
	w.buf = append(w.buf, ' ')
	w.append(w.height - p.Y)
}

func (w *writer) append(v float64) {
	if !(math.Abs(v) <= decimal.Most) {
		w.fail(fmt.Errorf("number %g; numbers must be finite and at most 1e6", v))
		v = 0
	}
	w.buf = decimal.Append(w.buf, v, decimals)
}
