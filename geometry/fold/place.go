package fold

import (
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Place is where a corner of a face comes to lie in bracket axes, w from the middle plane.
func (s *Pattern) Place(face, corner int, w float64) part.Vec {
	flat := s.Points[corner]
	at, w := s.Faces[face].moved(s.Bends, flat, flat, w)
	return s.pose.At(at.X, at.Y, w)
}

// moved takes a point through the bends that move a face; flat is where it lies in the flat pattern.
func (f *Face) moved(bends []Bend, flat, at shape.Point, w float64) (shape.Point, float64) {
	for _, i := range f.Beyond {
		at, w = bends[i].turn(bends[i].off(flat), at, w)
	}
	return at, w
}

// off is how far a point of the flat pattern lies from the bend's line, towards the moved side.
func (b *Bend) off(p shape.Point) float64 { return p.Sub(b.A).Dot(b.Out) }

// turn moves a point that lies off from the line in the flat pattern: round with the bend, and on from its end.
func (b *Bend) turn(off float64, at shape.Point, w float64) (shape.Point, float64) {
	half := b.FlatMM / 2
	in := min(max(off, -half), half)
	sin, cos := math.Sincos((in + half) / b.FlatMM * b.AngleRad)
	middle := math.Copysign(b.RadiusMM+b.thickness/2, b.AngleRad)
	d := at.Sub(b.A)
	on := d.Dot(b.Out) - in
	out := -half + middle*sin + on*cos - w*sin
	return b.A.Add(b.Along.Scale(d.Dot(b.Along))).Add(b.Out.Scale(out)), middle*(1-cos) + on*sin + w*cos
}
