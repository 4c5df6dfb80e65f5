// Package setout says where each welded part of a bracket stands on what it is welded to, and by which fillet, in the order in which the parts go on. It
// reads the poses of the bracket alone, and never moves or checks anything.
package setout

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Placing is one weld of a part: where its foot stands on another part.
type Placing struct {
	Step   int    // parts of one step go on before those of the next
	Part   string // what stands
	On     string // what it stands on: a plate, a face of a bent one, a leg, a member, a support
	Side   Side
	From   [2]Edge    // edges of On from which the foot is measured; empty where On has no flat face
	AtMM   [2]float64 // from those edges to the nearer side of the foot
	FootMM [2]float64 // size of the foot along the same two directions
	// TurnedRad is how far the part stands turned from those directions, over 0 and under a quarter turn; 0 for square, lying or round parts.
	TurnedRad float64
	Weld      *part.WeldGroup
	LengthMM  float64 // of all runs together; a round one as the polygon that stands for it
}

// Faces says in words where a weld runs on the part that it holds.
func Faces(w *part.WeldGroup) string {
	switch {
	case w.AlongEdge:
		return "along its edge"
	case w.BothSides:
		return "both faces"
	}
	return "one face"
}

// Side is a face of what a part stands on.
type Side string

const (
	Shown  Side = "the face that its cut file shows"
	Behind Side = "the face behind that of its cut file"
	Inner  Side = "inner face of the leg"
	Outer  Side = "outer face of the leg"
)

// Edge is an edge from which the foot is measured, or the face of a plate that what stands beside it stops against.
type Edge string

const (
	Left   Edge = "left edge"
	Bottom Edge = "bottom edge"
	Heel   Edge = "heel"
	Start  Edge = "start of its length"
	// The start of an angle's length, as it is seen on the outer face of either leg with the heel down.
	RightEnd Edge = "right end, heel down"
	LeftEnd  Edge = "left end, heel down"
)

// Of lists the placings of a bracket, in the order in which its parts go on.
func Of(b *part.Bracket) []Placing {
	var out []Placing
	for i := range b.Welds {
		w := &b.Welds[i]
		p := Placing{Part: b.Owner(w.Joins[0]), On: w.Joins[1], Weld: w}
		p.Step = step(b, p.Part, nil)
		if loose(b, b.Owner(p.On)) {
			p.Step++
		}
		for _, s := range w.Segments {
			p.LengthMM += s.B.Sub(s.A).Norm()
		}
		p.place(b)
		out = append(out, p)
	}
	slices.SortStableFunc(out, func(x, y Placing) int { return x.Step - y.Step })
	return out
}

// step counts what a part stands on, one over the other: 1 on what stands on nothing.
func step(b *part.Bracket, id string, above []string) int {
	deepest := 0
	for i := range b.Welds {
		w := &b.Welds[i]
		under := b.Owner(w.Joins[1])
		if b.Owner(w.Joins[0]) != id || under == id || slices.Contains(above, under) {
			continue
		}
		deepest = max(deepest, 1+step(b, under, append(slices.Clip(above), id)))
	}
	return deepest
}

// loose says whether a member, as a bar through plates, is held by nothing but what is welded to it, all of which stands on something that is held. It is in
// place from the start, and its welds wait for all others of what it is welded to.
func loose(b *part.Bracket, id string) bool {
	if b.Member(id) == nil || held(b, id) {
		return false
	}
	for i := range b.Welds {
		w := &b.Welds[i]
		if b.Owner(w.Joins[1]) != id {
			continue
		}
		own := b.Owner(w.Joins[0])
		if !slices.ContainsFunc(b.Welds, func(o part.WeldGroup) bool {
			return b.Owner(o.Joins[0]) == own && b.Owner(o.Joins[1]) != own && held(b, b.Owner(o.Joins[1]))
		}) {
			return false
		}
	}
	return true
}

// held says whether a thing is not of the bracket, is bolted, or stands on something.
func held(b *part.Bracket, id string) bool {
	if b.Plate(id) == nil && b.Member(id) == nil {
		return true
	}
	return slices.ContainsFunc(b.Welds, func(w part.WeldGroup) bool { return b.Owner(w.Joins[0]) == id && b.Owner(w.Joins[1]) != id }) ||
		slices.ContainsFunc(b.Bolts, func(g part.BoltGroup) bool { return b.Owner(g.Plies[0].Thing) == id || b.Owner(g.Plies[1].Thing) == id })
}

// place measures the foot, the box round the weld's runs, on a flat face or along a member.
func (p *Placing) place(b *part.Bracket) {
	face, leg := faceOf(b, p.On)
	if face == nil {
		p.along(b.Member(b.Owner(p.On)))
		p.beside(b)
		return
	}
	box, height := footOn(p.Weld, face.Pose)
	edges := face.Outer.BBox()
	p.From, p.AtMM = [2]Edge{Left, Bottom}, [2]float64{box.Min.X - edges.Min.X, box.Min.Y - edges.Min.Y}
	p.FootMM = [2]float64{box.Width(), box.Height()}
	p.Side = Behind
	if height > 0 {
		p.Side = Shown
	}
	if leg != "" {
		p.From, p.AtMM = [2]Edge{RightEnd, Heel}, [2]float64{box.Min.X, box.Min.Y}
		if leg == part.LegB {
			p.From[0] = LeftEnd
		}
		// Leg a's own normal points into the corner, leg b's out of its back.
		p.Side = Outer
		if (height > 0) == (leg == part.LegA) {
			p.Side = Inner
		}
	}
	if own, _ := faceOf(b, p.Part); own != nil {
		p.TurnedRad = turned(own, face)
	}
}

// along measures the foot along a member without flat faces.
func (p *Placing) along(m *part.Member) {
	if m == nil {
		return
	}
	box, _ := footOn(p.Weld, m.Pose)
	p.From[0], p.AtMM[0], p.FootMM[0] = Start, box.Min.X, box.Width()
}

// beside measures what stands on no part of the bracket, as a collar on a tube, from the plate that it stops against.
func (p *Placing) beside(b *part.Bracket) {
	own := b.Plate(p.Part)
	if own == nil || p.From[0] != "" {
		return
	}
	for i := range b.Contacts {
		if c := &b.Contacts[i]; c.Things[0] == p.Part && b.Plate(c.Things[1]) != nil {
			p.From[0], p.AtMM[0], p.FootMM[0] = Edge("face of "+c.Things[1]), c.GapMM, own.ThicknessMM
			return
		}
	}
}

// faceOf is a plate, a face of a bent plate or a leg of an angle, nil for anything else.
func faceOf(b *part.Bracket, id string) (*part.Plate, part.Face) {
	if f := b.Face(id); f != nil {
		return f, ""
	}
	if m := b.Member(b.Owner(id)); m != nil && m.Profile.Kind == part.Angle {
		legA, legB := m.Legs()
		switch id {
		case legA.ID:
			return &legA, part.LegA
		case legB.ID:
			return &legB, part.LegB
		}
	}
	return nil, ""
}

// footOn is the box round a weld's runs in a pose's plane, and the greatest height of a run over it, by its size.
func footOn(w *part.WeldGroup, at part.Pose) (shape.Box, float64) {
	box, height := shape.EmptyBox(), 0.0
	for _, s := range w.Segments {
		for _, q := range [2]part.Vec{s.A, s.B} {
			u, v, h := at.Local(q)
			box = box.Extend(shape.Point{X: u, Y: v})
			if math.Abs(h) > math.Abs(height) {
				height = h
			}
		}
	}
	return box, height
}

// turned is the angle, over 0 and under a quarter turn, between a standing plate's trace on a face and the face's own directions; 0 for one that lies on it.
func turned(own, face *part.Plate) float64 {
	trace := own.Pose.W().Cross(face.Pose.W())
	if trace.Norm() < 1e-6 {
		return 0
	}
	a := math.Mod(math.Atan2(trace.Dot(face.Pose.V), trace.Dot(face.Pose.U))+2*math.Pi, math.Pi/2)
	if a < 1e-6 || a > math.Pi/2-1e-6 {
		return 0
	}
	return a
}
