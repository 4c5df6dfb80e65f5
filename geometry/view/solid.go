package view

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// solid is an outline in the plane of a pose, extruded along its normal from lo to hi.
type solid struct {
	of      string // the thing of the bracket
	mark    string // of a plate or member
	label   string
	pose    part.Pose
	outline []shape.Loop // with its arcs
	loops   []Ring       // the same as polygons: outer first, counter-clockwise; holes clockwise: steel is on the left
	lo, hi  float64
	tone    Tone
	seams   [][2]part.Vec // lines inside one piece of steel that is drawn as two solids
}

// Ring is a loop as a polygon.
type Ring struct {
	Points []shape.Point
	sharp  []bool // the outline turns a corner at this point
}

// After is the point that follows a point.
func (r *Ring) After(i int) shape.Point {
	if i++; i < len(r.Points) {
		return r.Points[i]
	}
	return r.Points[0]
}

// Tone is the colour of a thing in full light: red, green and blue, to 255.
type Tone [3]float64

var (
	plateTone  = Tone{222, 227, 232}
	memberTone = Tone{196, 205, 214}
	boltTone   = Tone{160, 165, 171}
)

const (
	sagittaMM = 0.04        // how far a facet is from its arc
	sharpTurn = math.Pi / 9 // 20 degrees
)

func newRing(l shape.Loop) Ring {
	var r Ring
	for i := range l {
		e, before := l.Edge(i), l.Edge(i-1)
		u, v := before.TangentAt(1), e.TangentAt(0)
		corner := math.Abs(math.Atan2(u.Cross(v), u.Dot(v))) > sharpTurn
		pts := shape.Loop{l[i], {Point: e.B}}.Polygon(sagittaMM)
		r.Points, r.sharp = slices.Grow(r.Points, len(pts)), slices.Grow(r.sharp, len(pts))
		for k, p := range pts[:len(pts)-1] {
			r.Points, r.sharp = append(r.Points, p), append(r.sharp, corner && k == 0)
		}
	}
	return r
}

func newSolid(o shape.Outline, pose part.Pose, lo, hi float64, t Tone) solid {
	s := solid{pose: pose, outline: loopsOf(o), lo: lo, hi: hi, tone: t}
	s.loops = make([]Ring, len(s.outline))
	for i, l := range s.outline {
		s.loops[i] = newRing(l)
	}
	return s
}

func loopsOf(o shape.Outline) []shape.Loop {
	o = o.Normalize()
	var out []shape.Loop
	for _, l := range append([]shape.Loop{o.Outer}, o.Holes...) {
		if len(l) > 1 {
			out = append(out, l)
		}
	}
	return out
}

// solids of a bracket; a thing that has no outline is left out.
func solids(b *part.Bracket, d *Direction) []solid {
	var list []solid
	for i := range b.Plates {
		for k, p := range b.Plates[i].Folded() {
			s := newSolid(p.Shape(false), p.Pose, -p.ThicknessMM/2, p.ThicknessMM/2, plateTone)
			s.of, s.mark = b.Plates[i].ID, p.Mark
			if k == 0 {
				s.label = label(p.Mark, p.Name)
			}
			list = append(list, s)
		}
	}
	list = apart(list, d)
	plates := slices.Clone(list)
	for i := range b.Members {
		for _, s := range memberSolids(&b.Members[i]) {
			s.of, s.mark = b.Members[i].ID, b.Members[i].Mark
			list = append(list, split(s, plates)...)
		}
	}
	sheets := slices.Clone(list)
	for i := range b.Pins {
		for _, s := range split(pinSolid(&b.Pins[i]), sheets) {
			s.of, s.mark, s.label = b.Pins[i].ID, b.Pins[i].Mark, label(b.Pins[i].Mark, "pin")
			list = append(list, s)
		}
	}
	for _, g := range b.Bolts {
		if g.SameAs != "" {
			continue
		}
		for _, pt := range g.Points {
			list = append(list, named(g.ID, boltSolids(g, pt, sheets))...)
		}
	}
	for i := range b.Rods {
		list = append(list, named(b.Rods[i].ID, rodSolids(&b.Rods[i], sheets))...)
	}
	return slices.DeleteFunc(list, func(s solid) bool { return len(s.loops) == 0 || !(s.hi > s.lo) })
}

// named says of which thing of the bracket solids are.
func named(id string, list []solid) []solid {
	for i := range list {
		list[i].of = id
	}
	return list
}

func label(mark, name string) string {
	if mark == "" {
		return name
	}
	return mark + " " + name
}

func memberSolids(m *part.Member) []solid {
	p, along := m.Profile, part.Pose{Origin: m.Pose.Origin, U: m.Pose.V, V: m.Pose.W()}
	if p.Kind == part.Angle {
		return angleSolids(m)
	}
	o := shape.Outline{}
	switch p.Kind {
	case part.RoundBar, part.RoundTube:
		o.Outer = shape.Circle(shape.Point{}, p.AMM)
	case part.FlatBar:
		o.Outer = centred(p.AMM, p.TMM)
	default:
		o.Outer = centred(p.AMM, p.BMM)
	}
	switch p.Kind {
	case part.RoundTube:
		o.Holes = []shape.Loop{shape.Circle(shape.Point{}, p.AMM-2*p.TMM)}
	case part.RectTube:
		o.Holes = []shape.Loop{centred(p.AMM-2*p.TMM, p.BMM-2*p.TMM)}
	}
	s := newSolid(o, along, 0, m.LengthMM, memberTone)
	s.label = label(m.Mark, m.Name)
	return []solid{s}
}

func centred(width, height float64) shape.Loop {
	return shape.Rect(shape.Point{X: -width / 2, Y: -height / 2}, shape.Point{X: width / 2, Y: height / 2})
}

// angleSolids are the two legs; the lines where they meet inside the steel are not drawn.
func angleSolids(m *part.Member) []solid {
	a, b := m.Legs()
	t, at := m.Profile.TMM, m.Pose.At
	seams := [][2]part.Vec{
		{at(0, t, 0), at(m.LengthMM, t, 0)}, {at(0, t, 0), at(0, t, t)}, {at(m.LengthMM, t, 0), at(m.LengthMM, t, t)},
	}
	var out []solid
	for _, leg := range []part.Plate{a, b} {
		s := newSolid(leg.Shape(false), leg.Pose, -t/2, t/2, memberTone)
		s.label, s.seams = label(m.Mark, m.Name), seams
		out = append(out, s)
	}
	return out
}

// rodSolids run from under the hung thing to the support; what is in the hung thing's holes is not seen.
func rodSolids(r *part.Rods, sheets []solid) []solid {
	var out []solid
	for i, p := range r.Points {
		pose := r.Pose
		pose.Origin = r.Pose.At(p.X, p.Y, 0)
		s := newSolid(shape.Outline{Outer: shape.Circle(shape.Point{}, r.DiaMM)}, pose, -1.5*r.DiaMM, r.FreeMM, boltTone)
		if i == 0 {
			s.label = "rod " + r.Size
		}
		out = append(out, split(s, sheets)...)
	}
	return out
}

func pinSolid(p *part.Pin) solid { return cylinder(p.Pose(), p.DiaMM, -p.LengthMM/2, p.LengthMM/2) }

func cylinder(pose part.Pose, dia, lo, hi float64) solid {
	return newSolid(shape.Outline{Outer: shape.Circle(shape.Point{}, dia)}, pose, lo, hi, boltTone)
}

// boltSolids are a head on the bracket's side, a nut on the support's, and what shows of the shank between.
func boltSolids(g part.BoltGroup, at shape.Point, sheets []solid) []solid {
	pose, d := g.Pose, g.DiaMM
	pose.Origin = g.Pose.At(at.X, at.Y, 0)
	above := g.Plies[0].ThicknessMM
	below := g.GripMM - above
	hexagon := func(lo, hi float64) solid {
		var corners []shape.Point
		for i := range 6 {
			corners = append(corners, shape.Polar(0.75*d/math.Cos(math.Pi/6), float64(i)*math.Pi/3))
		}
		return newSolid(shape.Outline{Outer: shape.Polyline(corners...)}, pose, lo, hi, boltTone)
	}
	list := split(cylinder(pose, d, -below, above), sheets)
	return append(list, hexagon(above, above+0.65*d), hexagon(-below-0.8*d, -below))
}

// split cuts a round thing or a member at the faces of the sheets that it passes through square, and drops what is inside a hole or in
// steel, so that a plane parts each piece from each sheet.
func split(round solid, sheets []solid) []solid {
	list := []solid{round}
	for _, s := range sheets {
		along := s.pose.W().Dot(round.pose.W())
		u, v, w := s.pose.Local(round.pose.Origin)
		if math.Abs(along) < 0.999 || !s.box().Contains(shape.Point{X: u, Y: v}) {
			continue
		}
		lo, hi := (s.lo-w)/along, (s.hi-w)/along
		list = cutOut(list, min(lo, hi), max(lo, hi), !s.encloses(shape.Point{X: u, Y: v}))
	}
	return list
}

// cutOut splits pieces at lo and hi; what is between stays as a piece of its own when kept.
func cutOut(list []solid, lo, hi float64, keep bool) []solid {
	var out []solid
	for _, s := range list {
		for _, span := range [][2]float64{{s.lo, min(s.hi, lo)}, {max(s.lo, lo), min(s.hi, hi)}, {max(s.lo, hi), s.hi}} {
			inside := span[0] >= lo && span[1] <= hi
			if span[1]-span[0] > 1e-6 && (keep || !inside) {
				piece := s
				piece.lo, piece.hi = span[0], span[1]
				out = append(out, piece)
			}
		}
	}
	return out
}

func (s *solid) box() shape.Box {
	box := shape.EmptyBox()
	if len(s.loops) > 0 {
		for _, p := range s.loops[0].Points {
			box = box.Extend(p)
		}
	}
	return box
}

// encloses says whether a point is within the outer loop, in steel or in a hole.
func (s *solid) encloses(p shape.Point) bool { return Within(p, s.loops[:1]) }

// Within says whether a point is within loops, counted even-odd.
func Within(p shape.Point, loops []Ring) bool {
	in := false
	for _, r := range loops {
		for i, a := range r.Points {
			b := r.After(i)
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
				in = !in
			}
		}
	}
	return in
}
