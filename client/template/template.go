// Package template makes templates for drilling at full scale, cut into tiles that fit on a sheet. It never sizes a hole or places a bracket, and knows no
// file format.
//
//	template.go  a face with its holes, of a support, a plate or a member's leg
//	tiles.go     the windows in which it goes on sheets
//	clip.go      lines within a window
//	sheet.go     the drawing of one tile
//	label.go     words where no line runs into them
package template

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/geometry/shape"
	"lugwright/geometry/view"
	"lugwright/part"
)

// Template is one face, seen by who stands before it with the drill, in mm of the model to the right and up. The two datum lines cross at 0.
type Template struct {
	Title    string // "pair-left: into the rail web of S355"
	Hand     string // "LEFT HAND", or "LEFT RAIL" of a bracket on both rails; empty where there is none
	Seen     string // from where
	Right    string // what lies to the right on paper, and what up
	Up       string
	Outlines []Outline
	Holes    []Hole
	// Vertical and Horizontal are what the datum lines stand for.
	Vertical, Horizontal string
	// Into is what is drilled, where that is no part of the bracket.
	Into part.SupportKind
	// From is the point of the model, a load point, that the datum lines stand away from, to the right and up on paper.
	From shape.Point
	// Remarks are what is minded before these holes are made.
	Remarks []string
	// FirstRow is the row whose letter the upper tiles have: 0 for A.
	FirstRow int
}

// Outline is the line of a part's edge.
type Outline struct {
	Name  string
	Shape shape.Loop
	Given bool // it is there before drilling: the part itself; else where the part will lie
}

// Hole is one to drill.
type Hole struct {
	Name  string
	At    shape.Point
	DiaMM float64
	How   string // "drill", "drill 29.5, ream"
	// Group and N are the bolt group and the number in it, from 1, of a hole in what a bracket is bolted to.
	Group string
	N     int
	// Verdict is a word on the place of a hole in a frame; empty where nothing is asked.
	Verdict string
}

// axes names the directions of space of a bracket as made: x forward, y left, z up.
var axes = []struct {
	v     part.Vec
	words string
	seen  string // by who stands there
}{
	{part.Vec{X: 1}, "forward", "from ahead, looking rearward"}, {part.Vec{X: -1}, "rearward", "from behind, looking forward"},
	{part.Vec{Y: 1}, "left", "from the vehicle's left, looking right"}, {part.Vec{Y: -1}, "right", "from the vehicle's right, looking left"},
	{part.Vec{Z: 1}, "up", "from above, looking down"}, {part.Vec{Z: -1}, "down", "from below, looking up"},
}

const square = 1 - 1e-9

func axisOf(v part.Vec) int {
	for i := range axes {
		if v.Dot(axes[i].v) > square {
			return i
		}
	}
	return -1
}

// facing is the direction of who stands before a face whose normal points to him: up on paper is up, on a level face forward.
func facing(eye part.Vec) view.Direction {
	if math.Abs(eye.Z) > square {
		return view.From(eye, part.Vec{X: 1})
	}
	return view.From(eye, part.Vec{Z: 1})
}

// OfSupports are the templates of what a bracket as made (part.Bracket.AsMade) is bolted to: one for each plane of holes. from is the load point that
// the datum is keyed to; nil for none.
func OfSupports(b *part.Bracket, from *part.Vec) []*Template {
	var out []*Template
	var planes []*plane
	for i := range b.Bolts {
		g := &b.Bolts[i]
		s := b.Support(g.Plies[1].Thing)
		if s == nil || g.SameAs != "" || len(g.Points) == 0 {
			continue
		}
		k := slices.IndexFunc(planes, func(p *plane) bool { return p.has(g, s) })
		if k < 0 {
			d := facing(eyeOf(b, g))
			p := &plane{Direction: d, at: g.Pose.Origin.Dot(d.Eye), support: s, y: g.Pose.Origin.Y}
			t := &Template{Hand: handOf(b.Hand), Into: s.Kind}
			t.say(d)
			k, planes, out = len(planes), append(planes, p), append(out, t)
		}
		planes[k].groups = append(planes[k].groups, g.ID)
		out[k].group(b, g, &planes[k].Direction)
	}
	tell(b, planes, out)
	for k, t := range out {
		t.key(from, &planes[k].Direction)
	}
	return out
}

// apartMM is less than the two rails of a frame stand apart, and more than two faces of one rail.
const apartMM = 300.0

// tell makes the templates of one bracket known apart: by the rail where it spans both, and by their bolts where there are several.
func tell(b *part.Bracket, planes []*plane, out []*Template) {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range planes {
		if p.onRail() {
			lo, hi = min(lo, p.y), max(hi, p.y)
		}
	}
	for k, p := range planes {
		t := out[k]
		bolts, into := "", string(p.support.Kind)
		if len(out) > 1 {
			bolts = ", " + strings.Join(p.groups, ", ")
		}
		if p.onRail() && hi-lo > apartMM {
			side := "right"
			if p.y > (lo+hi)/2 {
				side = "left"
			}
			t.Hand, into = strings.ToUpper(side)+" RAIL", side+" "+into
		}
		t.Title = fmt.Sprintf("%s%s: into the %s, %s", b.Name, bolts, into, p.support.Material)
	}
}

// plane is one of holes.
type plane struct {
	view.Direction
	at      float64
	support *part.Support
	y       float64  // of the first group, to the left
	groups  []string // IDs
}

func (p *plane) onRail() bool {
	return p.support.Kind == part.RailWeb || p.support.Kind == part.RailFlange
}

// has says whether a group is drilled through this plane: into one support, within what a face is flat.
func (p *plane) has(g *part.BoltGroup, s *part.Support) bool {
	const flat = 0.01
	return p.support == s && math.Abs(g.Pose.W().Dot(p.Eye)) > square && math.Abs(g.Pose.Origin.Dot(p.Eye)-p.at) < flat
}

// eyeOf is the normal of a group's plane towards the bracket's side, where who marks it stands.
func eyeOf(b *part.Bracket, g *part.BoltGroup) part.Vec {
	w := g.Pose.W()
	side := 0.0
	if p := face(b, g.Plies[0].Thing); p != nil {
		side = p.Pose.Origin.Sub(g.Pose.Origin).Dot(w)
	}
	if side == 0 {
		for i := range b.LoadPoints {
			side += b.LoadPoints[i].At.Sub(g.Pose.Origin).Dot(w)
		}
	}
	if side < 0 {
		return w.Scale(-1)
	}
	return w
}

// face is a plate, a flange of one or a leg of a member, as a plate; nil for none of these.
func face(b *part.Bracket, id string) *part.Plate {
	if p := b.Face(id); p != nil {
		return p
	}
	for i := range b.Members {
		m := &b.Members[i]
		if m.Profile.Kind != part.Angle {
			continue
		}
		first, second := m.Legs()
		for _, leg := range []*part.Plate{&first, &second} {
			if leg.ID == id {
				return leg
			}
		}
	}
	return nil
}

func (t *Template) say(d view.Direction) {
	t.Seen, t.Right, t.Up = "square to the face", "along", "up"
	if i := axisOf(d.Eye); i >= 0 {
		t.Seen = axes[i].seen
	}
	if i := axisOf(d.Right); i >= 0 {
		t.Right = axes[i].words
	}
	if i := axisOf(d.Up); i >= 0 {
		t.Up = axes[i].words
	}
}

func (t *Template) group(b *part.Bracket, g *part.BoltGroup, d *view.Direction) {
	for n, q := range g.Points {
		t.Holes = append(t.Holes, Hole{Name: fmt.Sprintf("%s %d", g.ID, n+1), At: d.Project(g.Pose.At(q.X, q.Y, 0)), DiaMM: g.HoleMM, How: "drill", Group: g.ID, N: n + 1})
	}
	p := face(b, g.Plies[0].Thing)
	if p == nil || math.Abs(p.Pose.W().Dot(d.Eye)) < square {
		return
	}
	o := Outline{Name: p.Mark + " " + p.Name, Shape: projected(p, d)}
	if !slices.ContainsFunc(t.Outlines, func(have Outline) bool { return slices.Equal(have.Shape, o.Shape) }) {
		t.Outlines = append(t.Outlines, o)
	}
}

// projected is a plate's edge on paper; seen from its back it is turned over.
func projected(p *part.Plate, d *view.Direction) shape.Loop {
	sense := 1.0
	if p.Pose.W().Dot(d.Eye) < 0 {
		sense = -1
	}
	out := make(shape.Loop, len(p.Outer))
	for i, v := range p.Outer {
		out[i] = shape.Vertex{Point: d.Project(p.Pose.At(v.X, v.Y, 0)), Bulge: sense * v.Bulge}
	}
	return out
}

// near is how far beyond what is drawn a datum line may lie, mm; one that is further off goes through a row of holes.
const near = 30.0

// key moves the template so that its datum lines cross at 0.
func (t *Template) key(from *part.Vec, d *view.Direction) {
	box := t.extent()
	first := t.Holes[0].At
	for _, h := range t.Holes { // the upper row, and its left hole
		if h.At.Y > first.Y+0.01 || h.At.Y > first.Y-0.01 && h.At.X < first.X {
			first = h.At
		}
	}
	datum := first
	t.Vertical, t.Horizontal = "through the left hole of the upper row", "through the upper row of holes"
	if from != nil {
		at := d.Project(*from)
		if at.X > box.Min.X-near && at.X < box.Max.X+near {
			datum.X, t.Vertical = at.X, "centre line of the load point"
		}
		if at.Y > box.Min.Y-near && at.Y < box.Max.Y+near {
			datum.Y, t.Horizontal = at.Y, "level with the load point"
		}
		t.From = datum.Sub(at)
	}
	t.move(shape.Point{}.Sub(datum))
}

func (t *Template) move(by shape.Point) {
	for i := range t.Holes {
		t.Holes[i].At = t.Holes[i].At.Add(by)
	}
	for i := range t.Outlines {
		for k := range t.Outlines[i].Shape {
			v := &t.Outlines[i].Shape[k]
			v.Point = v.Point.Add(by)
		}
	}
}

// extent is the least box round outlines and holes.
func (t *Template) extent() shape.Box {
	box := shape.EmptyBox()
	for _, o := range t.Outlines {
		box = box.Union(o.Shape.BBox())
	}
	for _, h := range t.Holes {
		r := shape.Point{X: h.DiaMM / 2, Y: h.DiaMM / 2}
		box = box.Extend(h.At.Sub(r)).Extend(h.At.Add(r))
	}
	return box
}

// OfPlate is the template of a plate's holes that the shop does not cut, as its cut file shows it, flat; nil where it cuts all of them. how says how a
// hole is made.
func OfPlate(p *part.Plate, hand part.Hand, how func(*part.Hole) string) *Template {
	t := &Template{Title: p.Mark + " " + p.Name, Hand: handOf(hand), Seen: "as the cut file shows the part", Right: "from the left", Up: "from the bottom"}
	for i := range p.Holes {
		if h := &p.Holes[i]; h.CutMM == 0 {
			t.Holes = append(t.Holes, Hole{Name: h.ID, At: h.Center, DiaMM: h.DiaMM, How: how(h)})
		}
	}
	return t.ofPart(p.Outer)
}

// OfLeg is that of a leg of an angle, its outer face towards who looks and the heel down; nil where the leg has none.
func OfLeg(m *part.Member, face part.Face, hand part.Hand, how func(*part.Hole) string) *Template {
	first, second := m.Legs()
	leg, reach, turned := &first, m.Profile.AMM, true
	if face == part.LegB {
		leg, reach, turned = &second, m.Profile.BMM, false
	}
	t := &Template{
		Title: fmt.Sprintf("%s %s, leg %s", m.Mark, m.Name, face), Hand: handOf(hand), Seen: "outer face of the leg, heel down", Right: "from the left end", Up: "from the heel",
	}
	for i := range leg.Holes {
		h := &leg.Holes[i]
		at := h.Center
		if turned {
			at.X = m.LengthMM - at.X
		}
		t.Holes = append(t.Holes, Hole{Name: h.ID, At: at, DiaMM: h.DiaMM, How: how(h)})
	}
	return t.ofPart(shape.Rect(shape.Point{}, shape.Point{X: m.LengthMM, Y: reach}))
}

// ofPart has the datum at the lower left corner of the part.
func (t *Template) ofPart(edge shape.Loop) *Template {
	if len(t.Holes) == 0 {
		return nil
	}
	t.Outlines = []Outline{{Name: "edge of the part", Shape: edge.Clone(), Given: true}}
	t.Vertical, t.Horizontal = "left edge", "lower edge"
	t.move(shape.Point{}.Sub(edge.BBox().Min))
	return t
}

func handOf(h part.Hand) string {
	if h == part.RightHand {
		return "RIGHT HAND"
	}
	return "LEFT HAND"
}

// MirrorOf says whether two templates are mirror images of one another, left to right.
func (t *Template) MirrorOf(o *Template) bool {
	const same = 1e-6
	if t.Hand == o.Hand || len(t.Holes) != len(o.Holes) {
		return false
	}
	for _, h := range t.Holes {
		if !slices.ContainsFunc(o.Holes, func(g Hole) bool {
			return math.Abs(h.At.X+g.At.X) < same && math.Abs(h.At.Y-g.At.Y) < same && math.Abs(h.DiaMM-g.DiaMM) < same
		}) {
			return false
		}
	}
	return true
}
