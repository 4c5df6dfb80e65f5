package mesh

// Angles, tubes and bars.

import (
	"fmt"
	"math"

	"lugwright/geometry/fold"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// member is a member as sawn and drilled; remark names the holes that are left out.
func member(mb *part.Member, facetMM float64) (m Mesh, remark string, err error) {
	left := len(mb.Holes)
	switch mb.Profile.Kind {
	case part.Angle:
		m, left, err = angle(mb, facetMM)
	case part.FlatBar:
		bar := flatBar(mb)
		left -= len(bar.Holes)
		m, err = thicken(fold.Flat(&bar, facetMM), bar.ThicknessMM)
	default:
		m, err = prism(mb.Profile.Section(), lengthwise(mb), mb.LengthMM, facetMM)
	}
	if left > 0 {
		remark = fmt.Sprintf("%d of its holes are left out: they are not in flat faces", left)
	}
	return m, remark, err
}

// lengthwise is the plane of a member's section at its start.
func lengthwise(mb *part.Member) part.Pose {
	return part.Pose{Origin: mb.Pose.Origin, U: mb.Pose.V, V: mb.Pose.W()}
}

// prism is an outline drawn out from its plane along the normal.
func prism(o shape.Outline, from part.Pose, length, facetMM float64) (Mesh, error) {
	from.Origin = from.At(0, 0, length/2)
	p := part.Plate{Outer: o.Outer, Cutouts: o.Holes, Pose: from}
	return thicken(fold.Flat(&p, facetMM), length)
}

// flatBar is a flat bar as a plate, with the holes of its wide face.
func flatBar(mb *part.Member) part.Plate {
	half := mb.Profile.AMM / 2
	p := part.Plate{
		ThicknessMM: mb.Profile.TMM, Pose: mb.Pose,
		Outer: shape.Rect(shape.Point{Y: -half}, shape.Point{X: mb.LengthMM, Y: half}),
	}
	for _, h := range mb.Holes {
		if h.Face == part.LegA {
			p.Holes = append(p.Holes, h.Hole)
		}
	}
	return p
}

// angle is an angle with the holes that lie in the flat part of a leg, clear of the root; left is how many do not.
func angle(mb *part.Member, facetMM float64) (m Mesh, left int, err error) {
	ring := mb.Profile.Section().Outer.Polygon(facetMM)
	n := len(ring)
	a := angleMesh{m: Mesh{Points: make([]part.Vec, 2*n)}, member: mb, section: ring, facetMM: facetMM}
	around := make([]int, n)
	for i, p := range ring {
		around[i] = i
		a.m.Points[i], a.m.Points[i+n] = mb.Pose.At(mb.LengthMM, p.X, p.Y), mb.Pose.At(0, p.X, p.Y)
	}
	if a.m.Triangles, err = divide(grid(ring), [][]int{around}); err != nil {
		return a.m, 0, err
	}
	for i := range a.m.Triangles {
		t := a.m.Triangles[i]
		a.m.Triangles = append(a.m.Triangles, Triangle{t[0] + n, t[2] + n, t[1] + n})
	}
	holes := map[side3][]rim{}
	for _, h := range mb.Holes {
		if !a.drill(h, holes) {
			left++
		}
	}
	for i := range ring {
		if err := a.side(i, holes[a.sideOf(i)]); err != nil {
			return a.m, left, err
		}
	}
	return a.m, left, a.m.closed()
}

// side3 is a flat side of an angle: a leg's outer or inner face.
type side3 struct {
	leg   part.Face
	inner bool
}

// rim is a hole's edge in a side: the numbers of its points, and where they lie across the leg and along it.
type rim struct {
	corners []int
	at      []shape.Point
}

// angleMesh is an angle being made.
type angleMesh struct {
	m       Mesh
	member  *part.Member
	section []shape.Point
	facetMM float64
}

// drill adds both rims of a hole and the wall between them; false when the hole does not lie in the flat of both sides.
func (a *angleMesh) drill(h part.FaceHole, holes map[side3][]rim) bool {
	p := a.member.Profile
	reach := p.AMM
	if h.Face == part.LegB {
		reach = p.BMM
	}
	if c, r := h.Center.Y, h.DiaMM/2; c-r <= p.TMM+p.RootMM || c+r >= reach || h.Face != part.LegA && h.Face != part.LegB {
		return false
	}
	circle := shape.Circle(shape.Point{X: h.Center.Y, Y: h.Center.X}, h.DiaMM).Polygon(a.facetMM)
	outer, inner := rim{at: circle}, rim{at: circle}
	for _, q := range circle {
		outer.corners = append(outer.corners, a.add(h.Face, q, 0))
		inner.corners = append(inner.corners, a.add(h.Face, q, p.TMM))
	}
	for i := range circle {
		k := (i + 1) % len(circle)
		o, o2, n, n2 := outer.corners[i], outer.corners[k], inner.corners[i], inner.corners[k]
		if h.Face == part.LegB {
			o, o2, n, n2 = o2, o, n2, n
		}
		a.m.Triangles = append(a.m.Triangles, Triangle{o, o2, n}, Triangle{o2, n2, n})
	}
	holes[side3{h.Face, false}] = append(holes[side3{h.Face, false}], outer)
	holes[side3{h.Face, true}] = append(holes[side3{h.Face, true}], inner)
	return true
}

// add puts a point in: across the leg from the heel, along the length, deep in the steel.
func (a *angleMesh) add(leg part.Face, at shape.Point, deep float64) int {
	v, w := at.X, deep
	if leg == part.LegB {
		v, w = w, v
	}
	a.m.Points = append(a.m.Points, a.member.Pose.At(at.Y, v, w))
	return len(a.m.Points) - 1
}

// sideOf names the flat side that an edge of the section makes, nothing for the others.
func (a *angleMesh) sideOf(i int) side3 {
	p, q, t := a.section[i], a.section[(i+1)%len(a.section)], a.member.Profile.TMM
	switch {
	case p.Y == 0 && q.Y == 0:
		return side3{part.LegA, false}
	case p.X == 0 && q.X == 0:
		return side3{part.LegB, false}
	case p.Y == t && q.Y == t:
		return side3{part.LegA, true}
	case p.X == t && q.X == t:
		return side3{part.LegB, true}
	}
	return side3{}
}

// side adds the side that an edge of the section makes, around its holes.
func (a *angleMesh) side(i int, holes []rim) error {
	n := len(a.section)
	k := (i + 1) % n
	if len(holes) == 0 {
		a.m.Triangles = append(a.m.Triangles, Triangle{k, i, i + n}, Triangle{k, i + n, k + n})
		return nil
	}
	// Seen from outside: x along the edge, y along the member.
	from, way := a.section[i], a.section[k].Sub(a.section[i])
	along := way.Unit()
	heel := math.Abs(from.Dot(along)) // of the edge's start, across the leg
	out := along.X + along.Y          // +1 away from the heel, -1 towards it
	corners := []int{i + n, k + n, k, i}
	at := []shape.Point{{}, {X: way.Norm()}, {X: way.Norm(), Y: a.member.LengthMM}, {Y: a.member.LengthMM}}
	rings := [][]int{{0, 1, 2, 3}}
	for _, h := range holes {
		var ring []int
		for j, q := range h.at {
			ring = append(ring, len(at))
			corners, at = append(corners, h.corners[j]), append(at, shape.Point{X: (q.X - heel) * out, Y: q.Y})
		}
		rings = append(rings, ring)
	}
	list, err := divide(grid(at), rings)
	for _, t := range list {
		a.m.Triangles = append(a.m.Triangles, Triangle{corners[t[0]], corners[t[1]], corners[t[2]]})
	}
	return err
}
