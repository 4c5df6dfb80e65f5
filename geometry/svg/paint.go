package svg

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// A bracket comes as it stands in space: x forward, y left, z up. The viewer stands ahead, to the left and above: the isometric view of a left-hand bracket
// from outside the frame.
var (
	eye   = part.Vec{X: 1, Y: 1, Z: 1}.Unit()
	right = part.Vec{X: -1, Y: 1}.Unit()
	up    = eye.Cross(right)
	light = part.Vec{X: 0.25, Y: 0.5, Z: 0.85}.Unit()
)

// project is the picture of a point, in mm, y up.
func project(p part.Vec) shape.Point { return shape.Point{X: p.Dot(right), Y: p.Dot(up)} }

// shade is the colour of a face.
func (t tone) shade(normal part.Vec) string {
	k := 0.66 + 0.36*max(0, normal.Dot(light))
	var c [3]int
	for i := range c {
		c[i] = int(min(255, math.Round(t[i]*k)))
	}
	const digits = "0123456789abcdef"
	return string([]byte{'#', digits[c[0]>>4], digits[c[0]&15], digits[c[1]>>4], digits[c[1]&15], digits[c[2]>>4], digits[c[2]&15]})
}

// face is one painted area, with the lines that are drawn on it.
type face struct {
	loops []ring // on paper
	fill  string
	lines [][2]part.Vec
	depth float64
}

// faces of a solid that the viewer sees, in order of painting: walls of holes, outer walls, then the near end.
func (s *solid) faces() []face {
	near, far := s.hi, s.lo
	towards := s.pose.W().Dot(eye)
	if towards < 0 {
		near, far = s.lo, s.hi
	}
	var inner, outer []face
	for i, r := range s.loops {
		walls := s.walls(r, near, far, i > 0)
		if i == 0 {
			outer = walls
		} else {
			inner = append(inner, walls...)
		}
	}
	byDepth := func(a, b face) int {
		switch {
		case a.depth < b.depth:
			return -1
		case a.depth > b.depth:
			return 1
		}
		return 0
	}
	slices.SortStableFunc(inner, byDepth)
	slices.SortStableFunc(outer, byDepth)
	list := append(inner, outer...)
	if math.Abs(towards) > 1e-6 {
		list = append(list, s.end(near, math.Copysign(1, towards)))
	}
	return list
}

func (s *solid) end(w, sign float64) face {
	f := face{fill: s.tone.shade(s.pose.W().Scale(sign))}
	for _, r := range s.loops {
		n := len(r.points)
		flat := ring{points: make([]shape.Point, 0, n)}
		f.lines = slices.Grow(f.lines, n)
		for i, p := range r.points {
			q := r.after(i)
			a, b := s.pose.At(p.X, p.Y, w), s.pose.At(q.X, q.Y, w)
			flat.points = append(flat.points, project(a))
			f.lines = append(f.lines, [2]part.Vec{a, b})
		}
		f.loops = append(f.loops, flat)
	}
	return f
}

// facing says whether a wall of this normal is turned to the viewer.
func facing(normal part.Vec) bool { return normal.Dot(eye) > 1e-9 }

// wall is the memory of a wall's face.
type wall struct {
	loops  [1]ring
	points [4]shape.Point
	lines  [3][2]part.Vec
}

// walls of one loop that face the viewer. Each has its far edge drawn, and an upright at a corner or where the wall turns
// out of sight; uprights inside a hole only at corners.
func (s *solid) walls(r ring, near, far float64, hole bool) []face {
	n := len(r.points)
	normals := make([]part.Vec, n)
	count := 0
	for i, p := range r.points {
		d := r.after(i).Sub(p).Unit()
		normals[i] = s.pose.U.Scale(d.Y).AddScaled(-d.X, s.pose.V)
		if facing(normals[i]) {
			count++
		}
	}
	list := make([]face, 0, count)
	before := n - 1
	for i, p := range r.points {
		last, next := before, i+1
		if before = i; next == n {
			next = 0
		}
		if !facing(normals[i]) {
			continue
		}
		q := r.points[next]
		a, b := s.pose.At(p.X, p.Y, far), s.pose.At(q.X, q.Y, far)
		c, d := s.pose.At(q.X, q.Y, near), s.pose.At(p.X, p.Y, near)
		own := &wall{points: [4]shape.Point{project(a), project(b), project(c), project(d)}}
		own.loops[0].points = own.points[:]
		f := face{
			loops: own.loops[:],
			fill:  s.tone.shade(normals[i]),
			lines: append(own.lines[:0], [2]part.Vec{a, b}),
			depth: a.Add(b).Add(c).Add(d).Dot(eye) / 4,
		}
		// The wall painted later covers half of an upright that it shares, so both draw it.
		if r.sharp[i] || !hole && !facing(normals[last]) {
			f.lines = append(f.lines, [2]part.Vec{a, d})
		}
		if r.sharp[next] || !hole && !facing(normals[next]) {
			f.lines = append(f.lines, [2]part.Vec{b, c})
		}
		list = append(list, f)
	}
	return list
}

// visible is what is left of a line when the solid's seams are taken off it.
func (s *solid) visible(l [2]part.Vec) [][2]part.Vec {
	list := [][2]part.Vec{l}
	for _, m := range s.seams {
		var left [][2]part.Vec
		for _, l := range list {
			left = append(left, without(l, m)...)
		}
		list = left
	}
	return list
}

// without takes the stretch of a line that runs along a seam off it.
func without(l, seam [2]part.Vec) [][2]part.Vec {
	const near = 1e-6
	length := l[1].Sub(l[0]).Norm()
	dir := l[1].Sub(l[0]).Unit()
	along := func(p part.Vec) (t, off float64) {
		t = p.Sub(l[0]).Dot(dir)
		return t, p.Sub(l[0].AddScaled(t, dir)).Norm()
	}
	lo, offLo := along(seam[0])
	hi, offHi := along(seam[1])
	lo, hi = min(lo, hi), max(lo, hi)
	if offLo > near || offHi > near || hi < near || lo > length-near {
		return [][2]part.Vec{l}
	}
	var out [][2]part.Vec
	if lo > near {
		out = append(out, [2]part.Vec{l[0], l[0].AddScaled(lo, dir)})
	}
	if hi < length-near {
		out = append(out, [2]part.Vec{l[0].AddScaled(hi, dir), l[1]})
	}
	return out
}

// paint writes the faces of one solid.
func (c *canvas) paint(s *solid, faces []face) {
	c.tag(true, "g")
	c.buf.WriteByte('\n')
	for i := range faces {
		f := &faces[i]
		to := append(c.buf.AvailableBuffer(), `<path d="`...)
		for _, r := range f.loops {
			to = c.ring(to, r.points)
		}
		to = append(append(to, `" fill="`...), f.fill...)
		to = append(append(to, `" fill-rule="evenodd" stroke="`...), f.fill...)
		// The thin stroke in the face's own colour closes the hairlines between neighbours.
		to = append(to, "\" stroke-width=\"0.06\"/>\n"...)
		without := len(to)
		to = append(to, `<path d="`...)
		start := len(to)
		if to = c.lines(to, s, f.lines); len(to) > start {
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
func (c *canvas) lines(to path, s *solid, list [][2]part.Vec) path {
	var last part.Vec
	from := len(to)
	stroke := func(l [2]part.Vec) {
		if len(to) == from || l[0] != last {
			to = c.appendPoint(to, 'M', c.at(project(l[0])))
		}
		to = c.appendPoint(to, 'L', c.at(project(l[1])))
		last = l[1]
	}
	for _, whole := range list {
		if len(s.seams) == 0 {
			stroke(whole)
			continue
		}
		for _, l := range s.visible(whole) {
			stroke(l)
		}
	}
	return to
}
