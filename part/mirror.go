package part

import (
	"math"

	"lugwright/geometry/shape"
)

// Mirrored is the bracket for the other hand: every thing reflected through the plane y = 0. Plates keep their etched
// face on the reflected face, so an unsymmetrical plate's outline is a mirror image and a different piece.
// Pins and names stay; signed y components swap.
func (b *Bracket) Mirrored() *Bracket {
	m := inY.bracket(b)
	m.Hand = RightHand
	if b.Hand == RightHand {
		m.Hand = LeftHand
	}
	return m
}

// AsMade is the bracket as it stands in space, for whatever draws, cuts or folds it: x forward, y left, z up. The vehicle's axes, x rearward, y left,
// z up, are a left-handed set; drawn by them a bracket would come out as its mirror image. Its hand stays, for it is the same bracket.
func (b *Bracket) AsMade() *Bracket { return inX.bracket(b) }

// reflection is one through the plane where one coordinate is nought.
type reflection struct {
	flip  func(Vec) Vec
	turns []Component // signed components that turn round: the force along the axis, and the moments about the two others, which are axial vectors
}

var (
	inX = reflection{func(v Vec) Vec { return Vec{0 - v.X, v.Y, v.Z} }, []Component{FxPlus, MyPlus, MzPlus}}
	inY = reflection{func(v Vec) Vec { return Vec{v.X, 0 - v.Y, v.Z} }, []Component{FyPlus, MxPlus, MzPlus}}
)

func (r reflection) bracket(b *Bracket) *Bracket {
	m := *b
	m.Plates = mapped(b.Plates, r.plate)
	m.Members = mapped(b.Members, r.member)
	m.Pins = mapped(b.Pins, func(p Pin) Pin {
		// Seats keep their order and their measure along the reflected axis.
		p.Axis, p.Center = r.flip(p.Axis), r.flip(p.Center)
		return p
	})
	m.Bolts = mapped(b.Bolts, r.bolts)
	m.Rods = mapped(b.Rods, r.rods)
	m.Welds = mapped(b.Welds, r.weld)
	m.Contacts = mapped(b.Contacts, func(c Contact) Contact {
		c.Pose, c.Patch = r.pose(c.Pose), mirrorBox(c.Patch)
		return c
	})
	m.Composites = mapped(b.Composites, func(c Composite) Composite {
		c.From, c.To = r.flip(c.From), r.flip(c.To)
		return c
	})
	m.LoadPoints = mapped(b.LoadPoints, r.loadPoint)
	m.Shares = mapped(b.Shares, func(s Share) Share {
		s.Ends = [2]Vec{r.flip(s.Ends[0]), r.flip(s.Ends[1])}
		return s
	})
	m.Paths = mapped(b.Paths, r.path)
	m.Sweeps = mapped(b.Sweeps, func(s Sweep) Sweep {
		s.From, s.To = r.flip(s.From), r.flip(s.To)
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

// pose reflects a pose and turns U round, so that W is the reflection of W; plane coordinates become (-u, v).
func (r reflection) pose(p Pose) Pose {
	return Pose{Origin: r.flip(p.Origin), U: r.flip(p.U).Scale(-1), V: r.flip(p.V)}
}

func mirrorPoint(p shape.Point) shape.Point { return shape.Point{X: 0 - p.X, Y: p.Y} }

func mirrorBox(b shape.Box) shape.Box {
	return shape.Box{Min: shape.Point{X: 0 - b.Max.X, Y: b.Min.Y}, Max: shape.Point{X: 0 - b.Min.X, Y: b.Max.Y}}
}

func (r reflection) plate(p Plate) Plate {
	p.Outer = p.Outer.MirrorX()
	p.Holes = mapped(p.Holes, func(h Hole) Hole { h.Center = mirrorPoint(h.Center); return h })
	p.Etch = mapped(p.Etch, mirrorEtch)
	p.Cutouts = mapped(p.Cutouts, func(l shape.Loop) shape.Loop { return l.MirrorX() })
	p.Bends = mapped(p.Bends, func(b Bend) Bend {
		// Swapping the ends keeps the left of A to B on the reflected left.
		b.A, b.B = mirrorPoint(b.B), mirrorPoint(b.A)
		return b
	})
	p.Pose = r.pose(p.Pose)
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

// member turns the length round as well, so that both legs keep their own side; holes are then measured from the
// other end.
func (r reflection) member(m Member) Member {
	m.Pose = Pose{Origin: r.flip(m.Pose.At(m.LengthMM, 0, 0)), U: r.flip(m.Pose.U).Scale(-1), V: r.flip(m.Pose.V)}
	m.Holes = mapped(m.Holes, func(h FaceHole) FaceHole { h.Center.X = m.LengthMM - h.Center.X; return h })
	return m
}

func (r reflection) bolts(g BoltGroup) BoltGroup {
	g.Pose, g.Points, g.Patch = r.pose(g.Pose), mapped(g.Points, mirrorPoint), mirrorBox(g.Patch)
	return g
}

func (r reflection) rods(g Rods) Rods {
	g.Pose, g.Points = r.pose(g.Pose), mapped(g.Points, mirrorPoint)
	return g
}

func (r reflection) weld(w WeldGroup) WeldGroup {
	w.Segments = mapped(w.Segments, func(s WeldSegment) WeldSegment { return WeldSegment{r.flip(s.A), r.flip(s.B)} })
	return w
}

func (r reflection) loadPoint(l LoadPoint) LoadPoint {
	l.At, l.Axis = r.flip(l.At), r.flip(l.Axis)
	l.Released = mapped(l.Released, r.component)
	if l.Patch != nil {
		l.Patch = &Patch{r.pose(l.Patch.Pose), mirrorBox(l.Patch.Box)}
	}
	return l
}

func (r reflection) path(p Path) Path {
	p.Component = r.component(p.Component)
	p.Branches = mapped(p.Branches, func(b Branch) Branch {
		b.At, b.Thrust, b.Couple = r.flip(b.At), r.flip(b.Thrust), r.flip(b.Couple).Scale(-1) // a couple is an axial vector
		return b
	})
	return p
}

// component reflects a signed component.
func (r reflection) component(c Component) Component {
	for _, t := range r.turns {
		if c/2 == t/2 {
			return c ^ 1
		}
	}
	return c
}
