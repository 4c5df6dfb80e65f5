package view

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/part"
)

var sun = part.Vec{X: 0.25, Y: 0.5, Z: 0.85}.Unit()

// light is how much of it falls on a face, about 1 in full light.
func light(normal part.Vec) float64 { return 0.66 + 0.36*max(0, normal.Dot(sun)) }

// Face is one area that the viewer sees, with the lines that are drawn on it.
type Face struct {
	Loops []Ring // on paper
	// Exact are the same loops with true arcs, where the face lies in the plane of the paper and is whole; else nil.
	Exact []shape.Loop
	Tone  Tone
	Light float64 // on the tone
	Lines [][2]part.Vec
	depth float64
	box   shape.Box
}

// faces of a solid that the viewer sees, in order of painting: walls of holes, outer walls, then the near end.
func (s *solid) faces(d *Direction) []Face {
	near, far := s.hi, s.lo
	towards := s.pose.W().Dot(d.Eye)
	if towards < 0 {
		near, far = s.lo, s.hi
	}
	if math.Abs(towards) <= 1e-6 && len(s.seams) == 0 && len(s.loops) > 0 && s.loops[0].convex() {
		return []Face{s.side(d)}
	}
	var inner, outer []Face
	for i, r := range s.loops {
		walls := s.walls(d, r, near, far, i > 0)
		if i == 0 {
			outer = walls
		} else {
			inner = append(inner, walls...)
		}
	}
	byDepth := func(a, b Face) int {
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
		list = append(list, s.end(d, near, math.Copysign(1, towards)))
	}
	for i := range list {
		list[i].box = ringBox(list[i].Loops[0])
	}
	if len(s.seams) > 0 {
		for i := range list {
			var seen [][2]part.Vec
			for _, l := range list[i].Lines {
				seen = append(seen, s.visible(l)...)
			}
			list[i].Lines = seen
		}
	}
	return list
}

// side is a solid seen square to its axis, whose outline is nowhere hollow: a rectangle with its uprights.
func (s *solid) side(d *Direction) Face {
	r := &s.loops[0]
	lo, hi := math.Inf(1), math.Inf(-1)
	var ends [2]shape.Point
	across := s.pose.W().Cross(d.Eye)
	way := shape.Point{X: s.pose.U.Dot(across), Y: s.pose.V.Dot(across)}
	for _, p := range r.Points {
		t := p.Dot(way)
		if t < lo {
			lo, ends[0] = t, p
		}
		if t > hi {
			hi, ends[1] = t, p
		}
	}
	at := func(p shape.Point, w float64) part.Vec { return s.pose.At(p.X, p.Y, w) }
	corners := [4]part.Vec{at(ends[0], s.lo), at(ends[1], s.lo), at(ends[1], s.hi), at(ends[0], s.hi)}
	normal := s.pose.W().Cross(across).Unit()
	if normal.Dot(d.Eye) < 0 {
		normal = normal.Scale(-1)
	}
	f := Face{Tone: s.tone, Light: light(normal), Loops: []Ring{{}}}
	for i, c := range corners {
		f.Loops[0].Points = append(f.Loops[0].Points, d.Project(c))
		f.Lines = append(f.Lines, [2]part.Vec{c, corners[(i+1)%4]})
	}
	for i, p := range r.Points {
		before := p.Sub(r.Points[(i+len(r.Points)-1)%len(r.Points)])
		after := r.After(i).Sub(p)
		out := func(e shape.Point) part.Vec { return s.pose.U.Scale(e.Y).AddScaled(-e.X, s.pose.V) }
		if t := p.Dot(way); r.sharp[i] && t > lo+1e-6 && t < hi-1e-6 && (d.facing(out(before)) || d.facing(out(after))) {
			f.Lines = append(f.Lines, [2]part.Vec{at(p, s.lo), at(p, s.hi)})
		}
	}
	f.box = ringBox(f.Loops[0])
	return f
}

// convex says whether a ring, counter-clockwise, is nowhere hollow.
func (r *Ring) convex() bool {
	for i, p := range r.Points {
		q := r.After(i)
		k := i + 2
		if k >= len(r.Points) {
			k -= len(r.Points)
		}
		if q.Sub(p).Cross(r.Points[k].Sub(q)) < -1e-9 {
			return false
		}
	}
	return len(r.Points) > 2
}

func (s *solid) end(d *Direction, w, sign float64) Face {
	f := Face{Tone: s.tone, Light: light(s.pose.W().Scale(sign))}
	if math.Abs(s.pose.W().Dot(d.Eye)) > 1-1e-12 && len(s.seams) == 0 {
		f.Exact = s.exact(d, w)
	}
	for _, r := range s.loops {
		n := len(r.Points)
		flat := Ring{Points: make([]shape.Point, 0, n)}
		f.Lines = slices.Grow(f.Lines, n)
		for i, p := range r.Points {
			q := r.After(i)
			a, b := s.pose.At(p.X, p.Y, w), s.pose.At(q.X, q.Y, w)
			flat.Points = append(flat.Points, d.Project(a))
			f.Lines = append(f.Lines, [2]part.Vec{a, b})
		}
		f.Loops = append(f.Loops, flat)
	}
	return f
}

// exact is the outline at a height, on a paper that it lies parallel to.
func (s *solid) exact(d *Direction, w float64) []shape.Loop {
	out := make([]shape.Loop, len(s.outline))
	turned := 1.0 // seen from behind, arcs go round the other way
	if s.pose.W().Dot(d.Eye) < 0 {
		turned = -1
	}
	for k, l := range s.outline {
		out[k] = make(shape.Loop, len(l))
		for i, v := range l {
			out[k][i] = shape.Vertex{Point: d.Project(s.pose.At(v.X, v.Y, w)), Bulge: turned * v.Bulge}
		}
	}
	return out
}

// facing says whether a wall of this normal is turned to the viewer.
func (d *Direction) facing(normal part.Vec) bool { return normal.Dot(d.Eye) > 1e-9 }

// wall is the memory of a wall's face.
type wall struct {
	loops  [1]Ring
	points [4]shape.Point
	lines  [3][2]part.Vec
}

// walls of one loop that face the viewer. Each has its far edge drawn, and an upright at a corner or where the wall turns
// out of sight; uprights inside a hole only at corners. Its near edge is drawn where the near end, which has it too, is not seen.
func (s *solid) walls(d *Direction, r Ring, near, far float64, hole bool) []Face {
	n := len(r.Points)
	normals := make([]part.Vec, n)
	count := 0
	for i, p := range r.Points {
		along := r.After(i).Sub(p).Unit()
		normals[i] = s.pose.U.Scale(along.Y).AddScaled(-along.X, s.pose.V)
		if d.facing(normals[i]) {
			count++
		}
	}
	list, all := make([]Face, 0, count), make([]wall, count)
	before := n - 1
	ended := math.Abs(s.pose.W().Dot(d.Eye)) > 1e-6
	for i, p := range r.Points {
		last, next := before, i+1
		if before = i; next == n {
			next = 0
		}
		if !d.facing(normals[i]) {
			continue
		}
		q := r.Points[next]
		a, b := s.pose.At(p.X, p.Y, far), s.pose.At(q.X, q.Y, far)
		c, e := s.pose.At(q.X, q.Y, near), s.pose.At(p.X, p.Y, near)
		own := &all[len(list)]
		own.points = [4]shape.Point{d.Project(a), d.Project(b), d.Project(c), d.Project(e)}
		own.loops[0].Points = own.points[:]
		f := Face{
			Loops: own.loops[:],
			Tone:  s.tone,
			Light: light(normals[i]),
			Lines: append(own.lines[:0], [2]part.Vec{a, b}),
			depth: a.Add(b).Add(c).Add(e).Dot(d.Eye) / 4,
		}
		// The wall painted later covers half of an upright that it shares, so both draw it.
		if r.sharp[i] || !hole && !d.facing(normals[last]) {
			f.Lines = append(f.Lines, [2]part.Vec{a, e})
		}
		if r.sharp[next] || !hole && !d.facing(normals[next]) {
			f.Lines = append(f.Lines, [2]part.Vec{b, c})
		}
		if !ended {
			f.Lines = append(f.Lines, [2]part.Vec{c, e})
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
