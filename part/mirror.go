package part

import (
	"math"

	"lugwright/geometry/shape"
)

// Mirrored is the bracket for the other hand: every thing reflected through the plane y = 0. Plates keep their etched
// face on the reflected face, so an unsymmetrical plate's outline is a mirror image and a different piece.
// Pins and names stay; signed y components swap.
func (b *Bracket) Mirrored() *Bracket {
	m := *b
	m.Hand = RightHand
	if b.Hand == RightHand {
		m.Hand = LeftHand
	}
	m.Plates = mapped(b.Plates, mirrorPlate)
	m.Members = mapped(b.Members, mirrorMember)
	m.Pins = mapped(b.Pins, func(p Pin) Pin {
		// Seats keep their order and their measure along the reflected axis.
		p.Axis, p.Center = flip(p.Axis), flip(p.Center)
		return p
	})
	m.Bolts = mapped(b.Bolts, mirrorBolts)
	m.Rods = mapped(b.Rods, mirrorRods)
	m.Welds = mapped(b.Welds, mirrorWeld)
	m.Contacts = mapped(b.Contacts, func(c Contact) Contact {
		c.Pose, c.Patch = flipPose(c.Pose), mirrorBox(c.Patch)
		return c
	})
	m.Composites = mapped(b.Composites, func(c Composite) Composite {
		c.From, c.To = flip(c.From), flip(c.To)
		return c
	})
	m.LoadPoints = mapped(b.LoadPoints, mirrorLoadPoint)
	m.Shares = mapped(b.Shares, func(s Share) Share {
		s.Ends = [2]Vec{flip(s.Ends[0]), flip(s.Ends[1])}
		return s
	})
	m.Paths = mapped(b.Paths, mirrorPath)
	m.Sweeps = mapped(b.Sweeps, func(s Sweep) Sweep {
		s.From, s.To = flip(s.From), flip(s.To)
		return s
	})
	return &m
}

func mapped[T any](in []T, f func(T) T) []T {
	if in == nil {
		return nil
	}
	out := make([]T, len(in))
	for i, v := range in {
		out[i] = f(v)
	}
	return out
}

// flip reflects through y = 0.
func flip(v Vec) Vec { return Vec{v.X, 0 - v.Y, v.Z} }

// flipPose reflects a pose and turns U round, so that W is the reflection of W; plane coordinates become (-u, v).
func flipPose(p Pose) Pose {
	return Pose{Origin: flip(p.Origin), U: flip(p.U).Scale(-1), V: flip(p.V)}
}

func mirrorPoint(p shape.Point) shape.Point { return shape.Point{X: 0 - p.X, Y: p.Y} }

func mirrorBox(b shape.Box) shape.Box {
	return shape.Box{Min: shape.Point{X: 0 - b.Max.X, Y: b.Min.Y}, Max: shape.Point{X: 0 - b.Min.X, Y: b.Max.Y}}
}

func mirrorPlate(p Plate) Plate {
	p.Outer = p.Outer.MirrorX()
	p.Holes = mapped(p.Holes, func(h Hole) Hole { h.Center = mirrorPoint(h.Center); return h })
	p.Etch = mapped(p.Etch, mirrorEtch)
	p.Cutouts = mapped(p.Cutouts, func(l shape.Loop) shape.Loop { return l.MirrorX() })
	p.Bends = mapped(p.Bends, func(b Bend) Bend {
		// Swapping the ends keeps the left of A to B on the reflected left.
		b.A, b.B = mirrorPoint(b.B), mirrorPoint(b.A)
		return b
	})
	p.Pose = flipPose(p.Pose)
	return p
}

// mirrorEtch reflects the place of a text, not the text; upright text stays readable from the same side.
func mirrorEtch(e Etch) Etch {
	e.At = mirrorPoint(e.At)
	if e.AngleRad > -math.Pi/2 && e.AngleRad < math.Pi/2 {
		e.AngleRad = 0 - e.AngleRad
	}
	return e
}

// mirrorMember turns the length round as well, so that both legs keep their own side; holes are then measured from the
// other end.
func mirrorMember(m Member) Member {
	m.Pose = Pose{Origin: flip(m.Pose.At(m.LengthMM, 0, 0)), U: flip(m.Pose.U).Scale(-1), V: flip(m.Pose.V)}
	m.Holes = mapped(m.Holes, func(h FaceHole) FaceHole { h.Center.X = m.LengthMM - h.Center.X; return h })
	return m
}

func mirrorBolts(g BoltGroup) BoltGroup {
	g.Pose, g.Points, g.Patch = flipPose(g.Pose), mapped(g.Points, mirrorPoint), mirrorBox(g.Patch)
	return g
}

func mirrorRods(r Rods) Rods {
	r.Pose, r.Points = flipPose(r.Pose), mapped(r.Points, mirrorPoint)
	return r
}

func mirrorWeld(w WeldGroup) WeldGroup {
	w.Segments = mapped(w.Segments, func(s WeldSegment) WeldSegment { return WeldSegment{flip(s.A), flip(s.B)} })
	return w
}

func mirrorLoadPoint(l LoadPoint) LoadPoint {
	l.At, l.Axis = flip(l.At), flip(l.Axis)
	l.Released = mapped(l.Released, mirrorComponent)
	if l.Patch != nil {
		l.Patch = &Patch{flipPose(l.Patch.Pose), mirrorBox(l.Patch.Box)}
	}
	return l
}

func mirrorPath(p Path) Path {
	p.Component = mirrorComponent(p.Component)
	p.Branches = mapped(p.Branches, func(b Branch) Branch {
		b.At, b.Thrust, b.Couple = flip(b.At), flip(b.Thrust), flip(b.Couple).Scale(-1) // a couple is an axial vector
		return b
	})
	return p
}

// mirrorComponent reflects a signed component: Fy turns round, and so do Mx and Mz, which are axial vectors.
func mirrorComponent(c Component) Component {
	switch c / 2 {
	case FyPlus / 2, MxPlus / 2, MzPlus / 2:
		return c ^ 1
	}
	return c
}
