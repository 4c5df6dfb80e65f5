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
	width, height := w.number(d.WidthMM), w.number(d.HeightMM)
	w.tag(true, "svg", "xmlns", "http://www.w3.org/2000/svg", "version", "1.1", "width", width+"mm", "height", height+"mm", "viewBox", "0 0 "+width+" "+height,
		"role", "img", "font-family", fonts, "fill", "none", "stroke-linecap", "round", "stroke-linejoin", "round")
	w.buf.WriteByte('\n')
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
	_, err := out.Write(w.buf.Bytes())
	return err
}

// writer collects elements; only its first error counts.
type writer struct {
	buf    bytes.Buffer
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

func (w *writer) group(g *draw.Group) {
	if !usable(g.ID) {
		w.fail(fmt.Errorf("group %q: the name of a group is letters, digits, '-' and '_'", g.ID))
	}
	attrs := []string{"data-id", g.ID}
	if !w.groups[g.ID] {
		attrs = append(attrs, "id", w.prefix+g.ID)
	}
	w.groups[g.ID] = true
	w.tag(true, "g", attrs...)
	w.buf.WriteByte('\n')
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
	data := w.loop(nil, p.Start, p.Segments, p.Closed)
	for _, l := range p.More {
		data = w.loop(data, l.Start, l.Segments, true)
	}
	attrs := []string{"d", string(data)}
	if p.Fill.On {
		attrs = append(attrs, "fill", grey(p.Fill.Grey))
		if len(p.More) > 0 {
			attrs = append(attrs, "fill-rule", "evenodd")
		}
	}
	if p.Pen.WidthMM > 0 {
		attrs = append(attrs, "stroke", grey(p.Pen.Grey), "stroke-width", w.number(p.Pen.WidthMM))
		if len(p.Pen.Dash) > 0 {
			var dash []byte
			for i, length := range p.Pen.Dash {
				if i > 0 {
					dash = append(dash, ' ')
				}
				dash = w.append(dash, length)
			}
			// Round ends would close the gaps.
			attrs = append(attrs, "stroke-dasharray", string(dash), "stroke-linecap", "butt")
		}
	}
	w.tag(false, "path", attrs...)
}

// loop adds path data. No arc is over half a circle, so the large flag is always 0.
func (w *writer) loop(to []byte, start draw.Point, segments []draw.Segment, closed bool) []byte {
	to = w.point(append(to, 'M'), start)
	from := start
	for _, s := range segments {
		switch {
		case math.Abs(s.Bulge) > 1:
			w.fail(fmt.Errorf("bulge %g; -1 to 1 is accepted", s.Bulge))
		case s.Bulge == 0:
			to = w.point(append(to, 'L'), s.To)
		default:
			b := math.Abs(s.Bulge)
			r := math.Hypot(s.To.X-from.X, s.To.Y-from.Y) * (1 + b*b) / (4 * b)
			to = w.append(append(to, 'A'), r)
			to = w.append(append(to, ' '), r)
			if s.Bulge > 0 {
				to = append(to, " 0 0 0 "...)
			} else {
				to = append(to, " 0 0 1 "...)
			}
			to = w.point(to, s.To)
		}
		from = s.To
	}
	if closed {
		to = append(to, 'Z')
	}
	return to
}

func (w *writer) text(t *draw.Text) {
	if t.Words == "" {
		return
	}
	attrs := []string{"x", w.number(t.At.X), "y", w.number(w.height - t.At.Y), "font-size", w.number(t.SizeMM()), "fill", grey(0)}
	switch t.Align {
	case draw.Middle:
		attrs = append(attrs, "text-anchor", "middle")
	case draw.Right:
		attrs = append(attrs, "text-anchor", "end")
	}
	if t.Bold {
		attrs = append(attrs, "font-weight", "bold")
	}
	attrs = append(attrs, "textLength", w.number(t.WidthMM()), "lengthAdjust", "spacingAndGlyphs")
	if t.TurnRad != 0 {
		attrs = append(attrs, "transform", "rotate("+w.number(-t.TurnRad*180/math.Pi)+" "+w.number(t.At.X)+" "+w.number(w.height-t.At.Y)+")")
	}
	w.leaf("text", t.Words, attrs...)
}

// grey is a colour from 0 black to 1 white.
func grey(v float64) string {
	const digits = "0123456789abcdef"
	n := int(math.Round(255 * max(0, min(1, v))))
	pair := string([]byte{digits[n>>4], digits[n&15]})
	return "#" + pair + pair + pair
}

// tag writes one element with attributes in pairs of name and value, and leaves it open when told so.
func (w *writer) tag(open bool, name string, attrs ...string) {
	w.buf.WriteString("<" + name)
	for i := 0; i+1 < len(attrs); i += 2 {
		w.buf.WriteString(" " + attrs[i] + `="`)
		w.escape(attrs[i+1])
		w.buf.WriteByte('"')
	}
	if open {
		w.buf.WriteByte('>')
	} else {
		w.buf.WriteString("/>\n")
	}
}

// leaf writes an element that holds a text.
func (w *writer) leaf(name, text string, attrs ...string) {
	w.tag(true, name, attrs...)
	w.escape(text)
	w.end(name)
}

func (w *writer) end(name string) { w.buf.WriteString("</" + name + ">\n") }

func (w *writer) escape(s string) {
	if err := xml.EscapeText(&w.buf, []byte(s)); err != nil {
		w.fail(err)
	}
}

func (w *writer) point(to []byte, p draw.Point) []byte {
	to = w.append(to, p.X)
	return w.append(append(to, ' '), w.height-p.Y)
}

func (w *writer) number(v float64) string { return string(w.append(nil, v)) }

func (w *writer) append(to []byte, v float64) []byte {
	if !(math.Abs(v) <= decimal.Most) {
		w.fail(fmt.Errorf("number %g; numbers must be finite and at most 1e6", v))
		return append(to, '0')
	}
	return decimal.Append(to, v, decimals)
}
