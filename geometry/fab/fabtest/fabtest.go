// Package fabtest holds checks that every built bracket must pass, whatever its kind: pieces that do not run through each
// other, welds that lie where two parts meet, bolts in their holes. It never knows a kind.
package fabtest

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/geometry/shape"
	"lugwright/geometry/stroke"
	"lugwright/part"
)

const nearMM = 1e-6

// Faults lists what is unsound in a bracket, nothing when it is sound. It goes beyond Bracket.Validate: there names and
// numbers, here whether the thing could be put together.
func Faults(b *part.Bracket) []string {
	c := checker{b: b, solids: solids(b)}
	c.plates()
	c.apart()
	c.welds()
	c.bolts()
	c.pins()
	c.paths()
	return c.found
}

type checker struct {
	b      *part.Bracket
	solids []part.Plate // plates, the legs of angles, rings on pins
	found  []string
}

func (c *checker) add(format string, args ...any) {
	c.found = append(c.found, fmt.Sprintf(format, args...))
}

func solids(b *part.Bracket) []part.Plate {
	var out []part.Plate
	for i := range b.Plates {
		out = append(out, b.Plates[i].Folded()...)
	}
	for i := range b.Members {
		m := &b.Members[i]
		if m.Profile.Kind == part.Angle {
			legA, legB := m.Legs()
			out = append(out, legA, legB)
		}
		if slices.ContainsFunc(b.Pins, func(p part.Pin) bool { return m.OnPin(&p) }) {
			out = append(out, m.Ring())
		}
	}
	return out
}

// faceOf is what a weld may stand on: as solid, but an angle's leg A with the heel's face.
func (c *checker) faceOf(id string) *part.Plate {
	p := c.solid(id)
	for i := range c.b.Members {
		if m := &c.b.Members[i]; p != nil && id == m.ID+".a" {
			whole := *p
			whole.Outer = shape.Rect(shape.Point{}, shape.Point{X: m.LengthMM, Y: m.Profile.AMM})
			return &whole
		}
	}
	return p
}

// solid is a plate or a leg by its name; of a bent plate the flat pattern, which lies in the plane of its base, with arcs as they are.
func (c *checker) solid(id string) *part.Plate {
	if p := c.b.Plate(id); p != nil {
		return p
	}
	for i := range c.solids {
		if c.solids[i].ID == id {
			return &c.solids[i]
		}
	}
	return nil
}

// plates: outlines that can be cut, some steel, marks within it.
func (c *checker) plates() {
	for i := range c.b.Plates {
		p := &c.b.Plates[i]
		o := p.Shape(false)
		if bad := append(o.Validate(), p.Shape(true).Validate()...); bad != nil {
			c.add("%s: %v", p.ID, bad)
		}
		if !(o.Area() > 1 && o.Outer.Area() > 0) {
			c.add("%s: area %g mm2, want a counter-clockwise plate with steel in it", p.ID, o.Area())
		}
		for _, e := range p.Etch {
			c.etch(p, o, e)
		}
	}
}

// etch: every stroke of the text is on steel.
func (c *checker) etch(p *part.Plate, o shape.Outline, e part.Etch) {
	for _, line := range stroke.Text(e.Text, e.At, e.HeightMM, e.AngleRad) {
		for _, at := range line {
			if !o.Contains(at) {
				c.add("%s: mark %q off the steel at %v", p.ID, e.Text, at)
				return
			}
		}
	}
}

// apart: no point inside one piece is inside another. Points are taken on a grid, a hair under the surface.
func (c *checker) apart() {
	for i := range c.solids {
		for j := range c.solids {
			p, q := &c.solids[i], &c.solids[j]
			if i != j && !samePlate(p.ID, q.ID) && overlap(p, q) {
				c.add("%s runs into %s", p.ID, q.ID)
			}
		}
	}
}

// samePlate says whether two names are faces of one bent plate, which meet in its fold.
func samePlate(p, q string) bool {
	a, first, _ := strings.Cut(p, ".")
	b, second, _ := strings.Cut(q, ".")
	return a == b && first != "a" && second != "a" // the legs of an angle are told apart
}

func overlap(p, q *part.Plate) bool {
	o, other := p.Shape(false), q.Shape(false)
	box := o.BBox()
	const steps = 12
	for i := range steps + 1 {
		for j := range steps + 1 {
			at := shape.Point{X: between(box.Min.X, box.Max.X, i, steps), Y: between(box.Min.Y, box.Max.Y, j, steps)}
			if !o.Contains(at) {
				continue
			}
			for _, w := range [3]float64{-0.499, 0, 0.499} {
				u, v, off := q.Pose.Local(p.Pose.At(at.X, at.Y, w*p.ThicknessMM))
				inside := math.Abs(off) < q.ThicknessMM/2-1e-3
				if at := (shape.Point{X: u, Y: v}); inside && other.Contains(at) && other.DistTo(at) > 1e-3 {
					return true
				}
			}
		}
	}
	return false
}

// between stays a hair inside both ends.
func between(lo, hi float64, i, steps int) float64 {
	t := min(max(float64(i)/float64(steps), 0.001), 0.999)
	return lo + t*(hi-lo)
}

// welds: both ends of each run lie on an edge of the plate that stands, at one of its faces, and on a face of what it
// stands on.
func (c *checker) welds() {
	for _, w := range c.b.Welds {
		stands, on := c.solid(w.Joins[0]), c.faceOf(w.Joins[1])
		for _, s := range w.Segments {
			for _, end := range [2]part.Vec{s.A, s.B} {
				if !c.atEdge(w.Joins[0], stands, end) && !c.through(w.Joins[1], stands, end) {
					c.add("%s: %v is not at the edge of %s", w.ID, end, w.Joins[0])
				}
				if on == nil {
					continue
				}
				u, v, off := on.Pose.Local(end)
				edge := math.Abs(math.Abs(off)-on.ThicknessMM/2) < nearMM
				if at := (shape.Point{X: u, Y: v}); !edge || !on.Outer.Contains(at) && on.Outer.DistTo(at) > nearMM {
					c.add("%s: %v is not on a face of %s", w.ID, end, on.ID)
				}
			}
		}
	}
}

// atEdge says whether a point is on an edge of a face of a plate, or on the outside of a tube at one of its ends.
func (c *checker) atEdge(id string, stands *part.Plate, at part.Vec) bool {
	if stands != nil {
		u, v, off := stands.Pose.Local(at)
		return math.Abs(math.Abs(off)-stands.ThicknessMM/2) < nearMM && stands.Shape(false).DistTo(shape.Point{X: u, Y: v}) < nearMM
	}
	m := c.b.Member(id)
	if m == nil {
		return false
	}
	u, _, _ := m.Pose.Local(at)
	return math.Min(math.Abs(u), math.Abs(u-m.LengthMM)) < nearMM && onOutside(m, at)
}

// through says whether a point lies where a plate's face comes out of a tube that it passes.
func (c *checker) through(id string, plate *part.Plate, at part.Vec) bool {
	m := c.b.Member(id)
	if m == nil || plate == nil || !onOutside(m, at) {
		return false
	}
	u, v, off := plate.Pose.Local(at)
	return math.Abs(math.Abs(off)-plate.ThicknessMM/2) < nearMM && plate.Outer.Contains(shape.Point{X: u, Y: v})
}

// onOutside says whether a point is on a tube's outside, within its length.
func onOutside(m *part.Member, at part.Vec) bool {
	u, v, w := m.Pose.Local(at)
	off := math.Inf(1)
	switch m.Profile.Kind {
	case part.RectTube:
		off = math.Max(math.Abs(v)-m.Profile.AMM/2, math.Abs(w)-m.Profile.BMM/2)
	case part.RoundTube:
		off = math.Hypot(v, w) - m.Profile.AMM/2
	}
	return math.Abs(off) < nearMM && u > -nearMM && u < m.LengthMM+nearMM
}

// bolts: every bolt stands in a hole of the bracket's ply, and edge and pitch are what the holes have.
func (c *checker) bolts() {
	for _, g := range c.b.Bolts {
		ply := c.solid(g.Plies[0].Thing)
		if ply == nil {
			c.add("%s: %s is no plate", g.ID, g.Plies[0].Thing)
			continue
		}
		pulled := false
		for _, p := range g.Points {
			at := g.Pose.At(p.X, p.Y, 0)
			u, v, off := ply.Pose.Local(at)
			if math.Abs(math.Abs(off)-ply.ThicknessMM/2) > nearMM {
				c.add("%s: the faying plane is not a face of %s", g.ID, ply.ID)
			}
			if !hasHole(ply, shape.Point{X: u, Y: v}, g.HoleMM) {
				c.add("%s: no hole of %s at %v", g.ID, ply.ID, at)
			}
			if d := c.freeEdges(ply).DistTo(shape.Point{X: u, Y: v}); d < g.Plies[0].EdgeMM-nearMM {
				c.add("%s: a bolt %g mm from the edge, %g stated", g.ID, d, g.Plies[0].EdgeMM)
			}
			pulled = pulled || g.Patch.Grow(nearMM).Contains(p)
		}
		if !pulled {
			c.add("%s: no bolt within the contact patch", g.ID)
		}
		// W leads from the support into the bracket: the ply's middle is on its side.
		if _, _, w := g.Pose.Local(ply.Pose.Origin); w <= 0 {
			c.add("%s: w does not point into %s", g.ID, ply.ID)
		}
	}
}

// freeEdges leaves out what is no edge of a leg: the corner of an angle, the fold of a bent plate.
func (c *checker) freeEdges(p *part.Plate) shape.Loop {
	for i := range c.b.Members {
		if m := &c.b.Members[i]; p.ID == m.ID+".a" || p.ID == m.ID+".b" {
			tip := p.Outer.BBox().Max.Y
			return shape.Rect(shape.Point{Y: -m.LengthMM - tip}, shape.Point{X: m.LengthMM, Y: tip})
		}
	}
	if root, _, turned := strings.Cut(p.ID, "."); !turned || c.b.Plate(root) == nil {
		return p.Outer
	}
	// What is turned up has its fold along v = 0.
	out := slices.Clone(p.Outer)
	for i := range out {
		if out[i].Y < nearMM {
			out[i].Y -= p.Outer.BBox().Width() + p.Outer.BBox().Height()
		}
	}
	return out
}

func hasHole(p *part.Plate, at shape.Point, dia float64) bool {
	for _, h := range p.Holes {
		if h.Center.Dist(at) < nearMM && h.DiaMM == dia {
			return true
		}
	}
	return false
}

// pins: every seat's plate has the pin hole on the axis, where the seat says.
func (c *checker) pins() {
	for _, pin := range c.b.Pins {
		for _, s := range pin.Seats {
			p := c.solid(s.Thing)
			if p == nil { // the other side's
				continue
			}
			h, ok := p.Hole("pin")
			if !ok {
				c.add("%s: no pin hole in %s", pin.ID, s.Thing)
				continue
			}
			off := p.HoleAt(h).Sub(pin.Center)
			along := off.Dot(pin.Axis)
			if off.AddScaled(-along, pin.Axis).Norm() > nearMM {
				c.add("%s: the hole of %s is off the axis", pin.ID, s.Thing)
			}
			if math.Abs(along-s.AtMM) > s.ThicknessMM/2-p.ThicknessMM/2+nearMM {
				c.add("%s: %s is at %g mm along the pin, its seat at %g", pin.ID, s.Thing, along, s.AtMM)
			}
		}
	}
}

// paths: the branches of each path carry the whole of its load, no more and no less, at either end of their shares.
func (c *checker) paths() {
	for _, p := range c.b.Paths {
		for high := range 2 {
			sum := 0.0
			for i := range p.Branches {
				of := 1.0
				for _, f := range p.Branches[i].Forks() {
					of *= c.takes(f, high)
				}
				sum += of
			}
			if math.Abs(sum-1) > 1e-12 {
				c.add("path %s carries %g of its load", p.Component, sum)
			}
		}
	}
}

// takes is what a leg takes of its share, at its low or its high end. Of a share between bounds the first half of the legs takes the fraction alike.
func (c *checker) takes(f part.Fork, high int) float64 {
	s := c.b.Share(f.Share)
	firsts := c.firsts(f.Share)
	first := firsts[min(high, len(firsts)-1)]
	switch half := s.Legs / 2; {
	case s.Rule == part.Between && f.Leg >= half:
		return (1 - first) / float64(half)
	case s.Rule == part.Between:
		return first / float64(half)
	case f.Leg == 0:
		return first
	}
	return (1 - first) / float64(s.Legs-1)
}

// firsts gives the fractions that the first leg of a share may take.
func (c *checker) firsts(id string) []float64 {
	s := c.b.Share(id)
	switch s.Rule {
	case part.Between:
		return []float64{s.Lo, s.Hi}
	case part.ByPinSpan:
		return c.levers(c.b.Pin(s.Pin))
	}
	return []float64{1 / float64(s.Legs)}
}

// levers is the part of a pin's first supporting seat, by the lever rule, with the lug at either end of its travel; it must lie
// between nothing and all.
func (c *checker) levers(p *part.Pin) []float64 {
	first, last := p.Seats[0].AtMM, p.Seats[len(p.Seats)-1].AtMM
	var out []float64
	for _, s := range p.Seats {
		for _, shift := range [2]float64{-p.TravelMM, p.TravelMM} {
			if s.Loads {
				f := (last - s.AtMM - shift) / (last - first)
				if f <= 0 || f >= 1 {
					c.add("%s: the lug is not between its ears", p.ID)
				}
				out = append(out, f)
			}
		}
	}
	return out
}
