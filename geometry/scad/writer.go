package scad

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// writer collects lines. After the first error every call does nothing.
type writer struct {
	buf []byte
	err error
}

// line writes one line. Arguments that are numbers, points, vectors and poses are put through value; %s shows them.
func (w *writer) line(format string, args ...any) {
	if w.err != nil {
		return
	}
	for i, a := range args {
		args[i] = w.value(a)
	}
	w.buf = fmt.Appendf(w.buf, format+"\n", args...)
}

func (w *writer) value(a any) any {
	switch v := a.(type) {
	case float64:
		return w.number(v)
	case shape.Point:
		return w.list(v.X, v.Y)
	case part.Vec:
		return w.list(v.X, v.Y, v.Z)
	case part.Pose:
		u, n, o := v.U, v.W(), v.Origin
		return "[" + strings.Join([]string{
			w.list(u.X, v.V.X, n.X, o.X), w.list(u.Y, v.V.Y, n.Y, o.Y), w.list(u.Z, v.V.Z, n.Z, o.Z), "[0, 0, 0, 1]",
		}, ", ") + "]"
	}
	return a
}

func (w *writer) list(numbers ...float64) string {
	words := make([]string, len(numbers))
	for i, n := range numbers {
		words[i] = w.number(n)
	}
	return "[" + strings.Join(words, ", ") + "]"
}

// number gives at most nine decimals, no exponent and no -0.
func (w *writer) number(v float64) string {
	if !(math.Abs(v) <= 1e6) {
		if w.err == nil {
			w.err = fmt.Errorf("number %g; numbers must be finite and at most 1e6", v)
		}
		return "0"
	}
	s := strings.TrimRight(strconv.FormatFloat(v, 'f', 9, 64), "0")
	s = strings.TrimSuffix(s, ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// outline writes a list of corners, each with the bulge of the edge to the next.
func (w *writer) outline(name string, l shape.Loop) {
	w.line("%s = [", name)
	for _, v := range l {
		w.line("  %s,", w.list(v.X, v.Y, v.Bulge))
	}
	w.line("];")
}
