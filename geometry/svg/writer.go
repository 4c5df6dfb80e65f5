package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"sync"

	"lugwright/geometry/decimal"
	"lugwright/geometry/shape"
)

// writer collects elements. After the first error every call does nothing.
type writer struct {
	buf      *bytes.Buffer
	decimals int // of numbers
	err      error
}

// buffers are used again: pictures are long.
var buffers = sync.Pool{New: func() any { return new(bytes.Buffer) }}

func newWriter(decimals int) writer {
	return writer{buf: buffers.Get().(*bytes.Buffer), decimals: decimals}
}

// free ends the use of the writer.
func (w *writer) free() {
	w.buf.Reset()
	buffers.Put(w.buf)
}

// path is path data, which needs no escape.
type path []byte

// tag writes one element with attributes in pairs of name and value, and leaves it open when told so. A float64 is a
// number.
func (w *writer) tag(open bool, name string, attrs ...any) {
	if w.err != nil {
		return
	}
	w.buf.WriteByte('<')
	w.buf.WriteString(name)
	for i := 0; i+1 < len(attrs); i += 2 {
		w.buf.WriteByte(' ')
		w.buf.WriteString(attrs[i].(string))
		w.buf.WriteString(`="`)
		switch value := attrs[i+1].(type) {
		case string:
			w.escape(value)
		case path:
			w.buf.Write(value)
		case float64:
			w.buf.Write(w.appendNumber(w.buf.AvailableBuffer(), value))
		default:
			w.escape(fmt.Sprint(value))
		}
		w.buf.WriteByte('"')
	}
	if open {
		w.buf.WriteByte('>')
	} else {
		w.buf.WriteString("/>\n")
	}
}

// leaf writes an element that holds a text.
func (w *writer) leaf(name, text string, attrs ...any) {
	w.tag(true, name, attrs...)
	w.escape(text)
	w.end(name)
}

func (w *writer) end(name string) { w.buf.WriteString("</" + name + ">\n") }

func (w *writer) escape(s string) {
	for i := range len(s) {
		if special(s[i]) {
			if err := xml.EscapeText(w.buf, []byte(s)); err != nil && w.err == nil {
				w.err = err
			}
			return
		}
	}
	w.buf.WriteString(s)
}

// special says whether a byte may have to be escaped.
func special(b byte) bool {
	return b < ' ' || b > '~' || b == '<' || b == '>' || b == '&' || b == '\'' || b == '"'
}

// number gives the writer's decimals less trailing noughts, no exponent and no -0.
func (w *writer) number(v float64) string { return string(w.appendNumber(nil, v)) }

func (w *writer) appendNumber(to []byte, v float64) []byte {
	if !(math.Abs(v) <= decimal.Most) {
		if w.err == nil {
			w.err = fmt.Errorf("number %g; numbers must be finite and at most 1e6", v)
		}
		return append(to, '0')
	}
	return decimal.Append(to, v, w.decimals)
}

// open writes the root element of a picture of the given size and its title.
func (w *writer) open(width, height float64, title string) {
	w.tag(true, "svg", "xmlns", "http://www.w3.org/2000/svg", "version", "1.1", "width", w.number(width)+"mm", "height", w.number(height)+"mm",
		"viewBox", "0 0 "+w.number(width)+" "+w.number(height))
	w.buf.WriteByte('\n')
	w.leaf("title", title)
}

// appendPoint adds a step of path data.
func (w *writer) appendPoint(to path, step byte, p shape.Point) path {
	to = w.appendNumber(append(to, step), p.X)
	return w.appendNumber(append(to, ' '), p.Y)
}

// line adds path data through points.
func (w *writer) line(to path, points []shape.Point, closed bool) path {
	step := byte('M')
	for _, p := range points {
		to = w.appendPoint(to, step, p)
		step = 'L'
	}
	if closed {
		to = append(to, 'Z')
	}
	return to
}
