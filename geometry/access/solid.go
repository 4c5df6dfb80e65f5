package access

import (
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// solid is a plate or member.
type solid struct {
	id       string                        // of the plate or member
	pose     part.Pose                     // of a box around it
	min, max part.Vec                      // of that box, in the pose
	dist     func(u, v, w float64) float64 // from a point in the pose, 0 within
}

// scene is the solids of a bracket.
type scene struct {
	b      *part.Bracket
	solids []solid
	welded map[string]bool // plates and members: what no weld joins comes on after welding
}

func newScene(b *part.Bracket) *scene {
	s := &scene{b: b, welded: map[string]bool{}}
	for i := range b.Welds {
		for _, id := range b.Welds[i].Joins {
			s.welded[b.Owner(id)] = true
		}
	}
	for i := range b.Plates {
		for _, face := range b.Plates[i].Folded() {
			s.addPlate(&face, b.Plates[i].ID)
		}
	}
	for i := range b.Members {
		m := &b.Members[i]
		if m.Profile.Kind == part.Angle {
			a, c := m.Legs()
			s.addPlate(&a, m.ID)
			s.addPlate(&c, m.ID)
			continue
		}
		s.addMember(m)
	}
	return s
}

// addPlate takes a face of a plate as a prism, holes open. A rolled one is taken flat where it is posed.
func (s *scene) addPlate(p *part.Plate, id string) {
	outline, half := p.Shape(false), p.ThicknessMM/2
	box := outline.BBox()
	s.solids = append(s.solids, solid{
		id: id, pose: p.Pose, min: part.Vec{X: box.Min.X, Y: box.Min.Y, Z: -half}, max: part.Vec{X: box.Max.X, Y: box.Max.Y, Z: half},
		dist: func(u, v, w float64) float64 {
			flat, at := 0.0, shape.Point{X: u, Y: v}
			if !outline.Contains(at) {
				flat = outline.DistTo(at)
			}
			return math.Hypot(flat, max(0, math.Abs(w)-half))
		},
	})
}

// addMember takes a tube or bar as if it were full.
func (s *scene) addMember(m *part.Member) {
	p := m.Profile
	wide, high := p.AMM/2, p.BMM/2
	round := p.Kind == part.RoundTube || p.Kind == part.RoundBar
	if p.Kind == part.FlatBar {
		high = p.TMM / 2
	}
	if round {
		high = wide
	}
	s.solids = append(s.solids, solid{
		id: m.ID, pose: m.Pose, min: part.Vec{Y: -wide, Z: -high}, max: part.Vec{X: m.LengthMM, Y: wide, Z: high},
		dist: func(u, v, w float64) float64 {
			along := max(0, -u, u-m.LengthMM)
			if round {
				return math.Hypot(along, max(0, math.Hypot(v, w)-wide))
			}
			return math.Hypot(along, math.Hypot(max(0, math.Abs(v)-wide), max(0, math.Abs(w)-high)))
		},
	})
}

// pathStepMM is how close points of a path are looked at.
const pathStepMM = 4

// path is a straight way for a tool: from a point along a unit direction, from one distance to another, with a half width that grows with the
// distance until it is full.
type path struct {
	from     part.Vec
	along    part.Vec
	lo, hi   float64
	half     float64
	taper    float64 // half width over distance from the point; 0: full at once
	ignoring func(id string) bool
}

// blockedBy is the first solid that stands in the way, "" when the path is free.
func (s *scene) blockedBy(p path) string {
	for i := range s.solids {
		o := &s.solids[i]
		if (p.ignoring == nil || !p.ignoring(o.id)) && p.meets(o) {
			return o.id
		}
	}
	return ""
}

// meets looks along the stretch of a path that passes a solid's box.
func (p *path) meets(o *solid) bool {
	u, v, w := o.pose.Local(p.from)
	from := part.Vec{X: u, Y: v, Z: w}
	along := part.Vec{X: p.along.Dot(o.pose.U), Y: p.along.Dot(o.pose.V), Z: p.along.Dot(o.pose.W())}
	lo, hi := p.lo, p.hi
	for _, side := range [3]struct{ from, along, min, max float64 }{
		{from.X, along.X, o.min.X, o.max.X}, {from.Y, along.Y, o.min.Y, o.max.Y}, {from.Z, along.Z, o.min.Z, o.max.Z},
	} {
		a, b := between(side.from, side.along, side.min-p.half, side.max+p.half)
		lo, hi = max(lo, a), min(hi, b)
	}
	for t := lo; t <= hi; t += pathStepMM {
		if p.touches(o, from.AddScaled(t, along), t) {
			return true
		}
	}
	return lo <= hi && p.touches(o, from.AddScaled(hi, along), hi)
}

func (p *path) touches(o *solid, at part.Vec, t float64) bool {
	half := p.half
	if p.taper > 0 {
		half = min(half, t*p.taper)
	}
	return o.dist(at.X, at.Y, at.Z) < half
}

// between is the stretch in which from + t along lies between two bounds; empty when the first is the larger.
func between(from, along, least, most float64) (lo, hi float64) {
	if math.Abs(along) < 1e-12 {
		if from < least || from > most {
			return 1, 0
		}
		return math.Inf(-1), math.Inf(1)
	}
	a, b := (least-from)/along, (most-from)/along
	return min(a, b), max(a, b)
}
