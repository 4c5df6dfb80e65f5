package dxf

import (
	"math"
	"math/bits"
	"strconv"

	"lugwright/geometry/shape"
)

// writer collects tags. Once err is set the rest means nothing.
type writer struct {
	buf     []byte
	handles int     // handles given out so far
	unit    float64 // mm to the unit of the file
	layers  Layers  // in the tables their names, in the entities their groups
	err     error

	space    int // handle of the model space's block record
	numerals numerals
}

func (w *writer) reset(o Options) {
	unit := 1.0
	if o.Inch {
		unit = mmPerInch
	}
	w.buf, w.handles, w.unit, w.layers, w.err = w.buf[:0], 0, unit, o.Layers, nil
}

// open writes the tables and begins the entities.
func (w *writer) open(t *tables) {
	w.buf = append(w.buf, t.text...)
	w.handles, w.space = t.handles, t.space
}

// text writes what is made up already.
func (w *writer) text(s string) { w.buf = append(w.buf, s...) }

// tag writes one group code, below 1000, and its value.
func (w *writer) tag(code int, value string) {
	w.code(code)
	w.text(value)
	w.text("\n")
}

// code writes a group code in three places.
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

func (w *writer) count(code, n int) { w.tag(code, strconv.Itoa(n)) }

func (w *writer) number(code int, v float64) {
	w.code(code)
	w.buf = w.real(w.buf, v)
}

// length adds a length given in mm.
func (w *writer) length(to []byte, mm float64) []byte {
	if w.unit != 1 {
		mm /= w.unit
	}
	return w.real(to, mm)
}

// handle gives out the next handle.
func (w *writer) handle() int {
	w.handles++
	return w.handles
}

// appendHex adds a handle and the end of its line.
func appendHex(to []byte, n int) []byte {
	const digits = "0123456789ABCDEF"
	if n >= 0x10 && n <= 0xFF {
		return append(to, digits[n>>4], digits[n&15], '\n')
	}
	for shift := max(0, (bits.Len(uint(n))-1)&^3); shift >= 0; shift -= 4 {
		to = append(to, digits[n>>shift&15])
	}
	return append(to, '\n')
}

// reference writes a group that holds a handle.
func (w *writer) reference(code, handle int) {
	w.code(code)
	w.buf = appendHex(w.buf, handle)
}

func (w *writer) section(name string) {
	w.tag(0, "SECTION")
	w.tag(2, name)
}

func (w *writer) endSection() { w.tag(0, "ENDSEC") }

// sizes writes the header's extents and limits.
func (w *writer) sizes(b shape.Box) {
	to := append(w.buf, "  9\n$INSBASE\n"+origin+"  9\n$EXTMIN\n"...)
	to = w.point(to, b.Min)
	to = append(to, " 30\n0.0\n  9\n$EXTMAX\n"...)
	to = w.point(to, b.Max)
	to = append(to, " 30\n0.0\n  9\n$LIMMIN\n"...)
	to = w.point(to, b.Min)
	to = append(to, "  9\n$LIMMAX\n"...)
	w.buf = w.point(to, b.Max)
}

// origin is a base point.
const origin = " 10\n0.0\n 20\n0.0\n 30\n0.0\n"

// point adds a point given in mm in groups 10 and 20.
func (w *writer) point(to []byte, p shape.Point) []byte {
	to = append(to, " 10\n"...)
	to = w.length(to, p.X)
	to = append(to, " 20\n"...)
	return w.length(to, p.Y)
}

// ends adds the two ends of a line.
func (w *writer) ends(to []byte, a, b shape.Point) []byte {
	to = w.point(to, a)
	to = append(to, " 30\n0.0\n 11\n"...)
	to = w.length(to, b.X)
	to = append(to, " 21\n"...)
	to = w.length(to, b.Y)
	return append(to, " 31\n0.0\n"...)
}

func (w *writer) circle(to []byte, center shape.Point, radius float64) []byte {
	to = w.point(to, center)
	to = append(to, " 30\n0.0\n 40\n"...)
	return w.length(to, radius)
}

// arcDegrees are the directions of the arc's start and end; an ARC always runs counter-clockwise.
func arcDegrees(e shape.Edge, center shape.Point) (start, end float64) {
	if e.Bulge < 0 {
		e = e.Reverse()
		center = e.Center()
	}
	return degrees(e.A.Sub(center)), degrees(e.B.Sub(center))
}

func degrees(p shape.Point) float64 {
	d := p.Angle() * 180 / math.Pi
	if d < 0 {
		d += 360
	}
	return d
}
