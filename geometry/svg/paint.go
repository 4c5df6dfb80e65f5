package svg

import (
	"math"

	"lugwright/geometry/shape"
	"lugwright/geometry/view"
	"lugwright/part"
)

// shade is the colour of a face.
func shade(t view.Tone, light float64) string {
	var c [3]int
	for i := range c {
		c[i] = int(min(255, math.Round(t[i]*light)))
	}
	const digits = "0123456789abcdef"
	return string([]byte{'#', digits[c[0]>>4], digits[c[0]&15], digits[c[1]>>4], digits[c[1]&15], digits[c[2]>>4], digits[c[2]&15]})
}

// paint writes the faces of one thing.
func (c *canvas) paint(t *view.Thing) {
	c.tag(true, "g")
	c.buf.WriteByte('\n')
	for i := range t.Faces {
		f := &t.Faces[i]
		fill := shade(f.Tone, f.Light)
		to := append(c.buf.AvailableBuffer(), `<path d="`...)
		for _, r := range f.Loops {
			to = c.ring(to, r.Points)
		}
		to = append(append(to, `" fill="`...), fill...)
		to = append(append(to, `" fill-rule="evenodd" stroke="`...), fill...)
		// The thin stroke in the face's own colour closes the hairlines between neighbours.
		to = append(to, "\" stroke-width=\"0.06\"/>\n"...)
		without := len(to)
		to = append(to, `<path d="`...)
		start := len(to)
		if to = c.lines(to, f.Lines); len(to) > start {
			to = append(to, `" fill="none" stroke="`+ink+"\" stroke-width=\"0.18\" stroke-linecap=\"round\" stroke-linejoin=\"round\"/>\n"...)
		} else {
			to = to[:without]
		}
		c.buf.Write(to)
	}
	c.end("g")
}

// ring adds a closed loop to path data.
func (c *canvas) ring(to path, points []shape.Point) path {
	step := byte('M')
	for _, p := range points {
		to = c.appendPoint(to, step, c.at(p))
		step = 'L'
	}
	return append(to, 'Z')
}

// lines joins lines that follow each other to one stroke.
func (c *canvas) lines(to path, list [][2]part.Vec) path {
	var last part.Vec
	from := len(to)
	for _, l := range list {
		if len(to) == from || l[0] != last {
			to = c.appendPoint(to, 'M', c.at(view.Isometric.Project(l[0])))
		}
		to = c.appendPoint(to, 'L', c.at(view.Isometric.Project(l[1])))
		last = l[1]
	}
	return to
}
