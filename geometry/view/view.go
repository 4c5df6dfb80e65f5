// Package view says what is seen of a bracket from one direction: its things as faces on paper, from back to front. It knows no format, and never
// measures or decides anything.
//
// Bends are sharp and rolling is not shown (such plates stand flat), nor are welds, root fillets, or holes of members other than angles; bolt heads
// are hexagons, not to any standard. Who covers whom is decided pair by pair by a plane between them; where no plane parts two things, by their distance.
//
//	view.go       directions, and what is seen
//	solid.go      plates, members, pins and bolts as extruded outlines
//	order.go      from back to front
//	interlock.go  plates that pass through one another, cut so that planes part them
//	face.go       the faces of one solid
//	anchor.go     places to point at
//	ray.go        whether a point of space is seen
//	span.go       how far the steel reaches
package view

import (
	"lugwright/geometry/shape"
	"lugwright/part"
)

// Direction is where the viewer stands: unit vectors square to one another, Eye from the bracket to him, the others to the right and up on paper.
type Direction struct{ Eye, Right, Up part.Vec }

// Isometric is from ahead, left and above, of a bracket as it stands in space (part.Bracket.AsMade): x forward, y left, z up. It shows a left-hand bracket from
// outside the frame.
var Isometric = isometric(part.Vec{X: 1, Y: 1, Z: 1}.Unit(), part.Vec{X: -1, Y: 1}.Unit())

func isometric(eye, right part.Vec) Direction { return Direction{eye, right, eye.Cross(right)} }

// From is the direction of a viewer who stands towards eye, with up as near to up on paper as can be. The two are not parallel.
func From(eye, up part.Vec) Direction {
	eye = eye.Unit()
	right := up.Cross(eye).Unit()
	return Direction{eye, right, eye.Cross(right)}
}

// Project is the picture of a point, in mm, y up.
func (d *Direction) Project(p part.Vec) shape.Point {
	return shape.Point{X: p.Dot(d.Right), Y: p.Dot(d.Up)}
}

// Scene is a bracket seen from one direction.
type Scene struct {
	Direction
	Things []Thing // from back to front
	solids []solid
}

// Thing is a piece of a thing of the bracket, and what is seen of it.
type Thing struct {
	Of    string // name of the plate, member, pin, bolt group or rods
	Mark  string // part mark, where it has one
	Label string // mark and name in words, of one piece of each thing or more; else empty
	Faces []Face // in the order of painting
}

// Of is a bracket as made (part.Bracket.AsMade) seen from a direction.
func Of(b *part.Bracket, d Direction) *Scene {
	s := newScene(solids(b, &d), &d).unringed()
	out := &Scene{Direction: d, Things: make([]Thing, 0, len(s.list)), solids: s.list}
	for _, i := range s.backToFront() {
		one := &s.list[i]
		out.Things = append(out.Things, Thing{one.of, one.mark, one.label, one.faces(&d)})
	}
	return out
}
