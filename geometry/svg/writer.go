package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"

	"lugwright/geometry/shape"
)

// writer collects elements. After the first error every call does nothing.
type writer struct {
	buf      bytes.Buffer
	decimals int // of numbers
	err      error
}

// tag writes one element with attributes in pairs of name and value, and leaves it open when told so. A float64 is a
// number.
func (w *writer) tag(open bool, name string, attrs ...any) {
	if w.err != nil {
		return
	}
	w.buf.WriteString("<" + name)
	for i := 0; i+1 < len(attrs); i += 2 {
		value, ok := attrs[i+1].(string)
		if v, isNumber := attrs[i+1].(float64); isNumber {
			value, ok = w.number(v), true
		}
		if !ok {
			value = fmt.Sprint(attrs[i+1])
		}
		w.buf.WriteString(" " + attrs[i].(string) + `="`)
		w.escape(value)
		w.buf.WriteByte('"')
	}
	if open {
		w.buf.WriteString(">")
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
	if !strings.ContainsFunc(s, special) {
		w.buf.WriteString(s)
		return
	}
	if err := xml.EscapeText(&w.buf, []byte(s)); err != nil && w.err == nil {
		w.err = err
	}
}

// special says whether a letter may have to be escaped.
func special(r rune) bool { return r < ' ' || r > '~' || strings.ContainsRune(`<>&'"`, r) }

// number gives the writer's decimals less trailing noughts, no exponent and no -0.
func (w *writer) number(v float64) string {
	if !(math.Abs(v) <= 1e6) {
		if w.err == nil {
			w.err = fmt.Errorf("number %g; numbers must be finite and at most 1e6", v)
		}
		return "0"
	}
	s := strconv.FormatFloat(v, 'f', w.decimals, 64)
	if w.decimals > 0 {
		s = strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// open writes the root element of a picture of the given size and its title.
func (w *writer) open(width, height float64, title string) {
	w.tag(true, "svg", "xmlns", "http://www.w3.org/2000/svg", "version", "1.1", "width", w.number(width)+"mm", "height", w.number(height)+"mm",
		"viewBox", "0 0 "+w.number(width)+" "+w.number(height))
	w.buf.WriteByte('\n')
	w.leaf("title", title)
}

func (w *writer) point(p shape.Point) string { return w.number(p.X) + " " + w.number(p.Y) }

// line is path data through points.
func (w *writer) line(points []shape.Point, closed bool) string {
	var d strings.Builder
	for i, p := range points {
		if i == 0 {
			d.WriteString("M")
		} else {
			d.WriteString("L")
		}
		d.WriteString(w.point(p))
	}
	if closed {
		d.WriteString("Z")
	}
	return d.String()
}
