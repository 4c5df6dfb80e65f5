package dxf

import (
	"fmt"
	"math"
	"strconv"

	"lugwright/geometry/shape"
)

// writer collects tags. After the first error every call does nothing.
type writer struct {
	buf     []byte
	handles int     // handles given out so far
	unit    float64 // mm to the unit of the file
	layers  Layers
	err     error

	space string // handle of the model space's block record
}

// tag writes one group code and its value.
func (w *writer) tag(code int, value string) {
	if w.err != nil {
		return
	}
	w.code(code)
	w.buf = append(w.buf, value...)
	w.buf = append(w.buf, '\n')
}

// code writes a group code, below 1000, in three places.
func (w *writer) code(code int) {
	hundreds, tens := byte(' '), byte(' ')
	if code >= 100 {
		hundreds = '0' + byte(code/100)
	}
	if code >= 10 {
		tens = '0' + byte(code/10%10)
	}
	w.buf = append(w.buf, hundreds, tens, '0'+byte(code%10), '\n')
}

// number writes a real with at most 12 decimals and no exponent. A value that rounds to nothing is 0.0, never -0.
func (w *writer) number(code int, v float64) {
	if w.err != nil {
		return
	}
	if !(math.Abs(v) <= 1e6) {
		w.err = fmt.Errorf("number %g in group %d; numbers must be finite and at most 1e6", v, code)
		return
	}
	w.code(code)
	n := int64(math.Round(v * 1e12))
	if n < 0 {
		w.buf = append(w.buf, '-')
		n = -n
	}
	w.buf = strconv.AppendInt(w.buf, n/1e12, 10)
	rest := uint64(n % 1e12)
	if rest == 0 {
		w.buf = append(w.buf, '.', '0', '\n')
		return
	}
	var digits [13]byte
	digits[0] = '.'
	sixDigits(digits[1:7], uint32(rest/1e6))
	sixDigits(digits[7:13], uint32(rest%1e6))
	last := 12
	for digits[last] == '0' {
		last--
	}
	w.buf = append(append(w.buf, digits[:last+1]...), '\n')
}

func sixDigits(to []byte, n uint32) {
	for i := 5; i >= 0; i, n = i-1, n/10 {
		to[i] = byte('0' + n%10)
	}
}

func (w *writer) count(code, n int) {
	if w.err != nil {
		return
	}
	w.code(code)
	w.buf = append(strconv.AppendInt(w.buf, int64(n), 10), '\n')
}

// length writes a length given in mm.
func (w *writer) length(code int, mm float64) { w.number(code, mm/w.unit) }

// point writes a point given in mm in groups code and code+10; a third coordinate of 0 goes into code+20 when flat is false.
func (w *writer) point(code int, p shape.Point, flat bool) {
	w.length(code, p.X)
	w.length(code+10, p.Y)
	if !flat {
		w.number(code+20, 0)
	}
}

// handle gives out the next handle, a hexadecimal number.
func (w *writer) handle() string {
	w.handles++
	return hex(w.handles)
}

func hex(n int) string {
	const digits = "0123456789ABCDEF"
	var b [16]byte
	i := len(b)
	for ; n > 0 || i == len(b); n >>= 4 {
		i--
		b[i] = digits[n&15]
	}
	return string(b[i:])
}

func (w *writer) section(name string) {
	w.tag(0, "SECTION")
	w.tag(2, name)
}

func (w *writer) endSection() { w.tag(0, "ENDSEC") }

// variable opens a header variable.
func (w *writer) variable(name string) { w.tag(9, name) }

// sizes writes the header's extents and limits.
func (w *writer) sizes(b shape.Box) {
	w.variable("$INSBASE")
	w.point(10, shape.Point{}, false)
	w.variable("$EXTMIN")
	w.point(10, b.Min, false)
	w.variable("$EXTMAX")
	w.point(10, b.Max, false)
	w.variable("$LIMMIN")
	w.point(10, b.Min, true)
	w.variable("$LIMMAX")
	w.point(10, b.Max, true)
}

// degrees of the arc's start and end; an ARC always runs counter-clockwise.
func arcDegrees(e shape.Edge) (start, end float64) {
	if e.Bulge < 0 {
		e = e.Reverse()
	}
	c := e.Center()
	return degrees(e.A.Sub(c)), degrees(e.B.Sub(c))
}

func degrees(p shape.Point) float64 {
	d := p.Angle() * 180 / math.Pi
	if d < 0 {
		d += 360
	}
	return d
}
