package part

// A bent plate as flat faces.

import (
	"fmt"
	"math"

	"lugwright/geometry/shape"
)

// foldFineMM is how far a face's edge may be off an arc of the outline.
const foldFineMM = 0.05

// Folded gives the faces of a bent plate in the shape that it is folded to, the first one the base; a flat plate is its own face. What is turned up along
// a fold bears the plate's name and the fold's number: "tab.1". It lies where it comes to lie when the fold's allowance is told; folds of none are sharp,
// along their lines. Faces end at the folds' lines. A face with less than three corners is left out.
func (p *Plate) Folded() []Plate {
	if len(p.Bends) == 0 {
		return []Plate{*p}
	}
	base := *p
	base.Bends, base.Etch = nil, nil
	points := p.Outer.CCW().Polygon(foldFineMM)
	rest := points
	var faces []Plate
	for k, b := range p.Bends {
		rest = beyond(rest, b.B, b.A)
		if f, ok := p.flange(b, beyond(points, b.A, b.B)); ok {
			f.ID = flangeID(p.ID, k)
			faces = append(faces, f)
		}
	}
	base.Outer = shape.Polyline(rest...)
	base.Holes, base.Cutouts = nil, nil
	for _, h := range p.Holes {
		if base.Outer.Contains(h.Center) {
			base.Holes = append(base.Holes, h)
		}
	}
	for _, c := range p.Cutouts {
		if base.Outer.Contains(c[0].Point) {
			base.Cutouts = append(base.Cutouts, c)
		}
	}
	return append([]Plate{base}, faces...)
}

// flange is what lies to the left of a fold, turned up. Its own plane runs along the fold and away from it.
func (p *Plate) flange(b Bend, points []shape.Point) (Plate, bool) {
	if len(points) < 3 {
		return Plate{}, false
	}
	dir := b.B.Sub(b.A).Unit()
	out := dir.Perp()
	local := func(q shape.Point) shape.Point { return shape.Point{X: q.Sub(b.A).Dot(dir), Y: q.Sub(b.A).Dot(out)} }
	f := *p
	f.Bends, f.Etch, f.Holes, f.Cutouts = nil, nil, nil, nil
	moved := make([]shape.Point, len(points))
	for i, q := range points {
		moved[i] = local(q)
	}
	f.Outer = shape.Polyline(moved...)
	for _, h := range p.Holes {
		if h.Center = local(h.Center); f.Outer.Contains(h.Center) {
			f.Holes = append(f.Holes, h)
		}
	}
	sin, cos := math.Sincos(b.AngleRad)
	along := p.Pose.U.Scale(dir.X).AddScaled(dir.Y, p.Pose.V)
	away := p.Pose.U.Scale(out.X).AddScaled(out.Y, p.Pose.V)
	f.Pose = Pose{Origin: p.Pose.At(b.A.X, b.A.Y, 0), U: along, V: away.Scale(cos).AddScaled(sin, p.Pose.W())}
	past := b.past(p.ThicknessMM)
	f.Pose.Origin = f.Pose.Origin.AddScaled(past, away).AddScaled(past, f.Pose.V)
	return f, true
}

// past is how far beyond a fold's line the middle planes of its two sides meet, on either side; 0 where its allowance is not told, and for a hem.
func (b *Bend) past(thicknessMM float64) float64 {
	const hem = 0.9 * math.Pi
	if b.AllowanceMM == 0 || math.Abs(b.AngleRad) > hem {
		return 0
	}
	return (b.RadiusMM+thicknessMM/2)*math.Tan(math.Abs(b.AngleRad)/2) - b.AllowanceMM/2
}

// Flanges are the names of what is turned up along the plate's folds.
func (p *Plate) Flanges() []string {
	out := make([]string, len(p.Bends))
	for k := range out {
		out[k] = flangeID(p.ID, k)
	}
	return out
}

// Face finds a plate, or a face of a bent one, by name; nil when there is none.
func (b *Bracket) Face(id string) *Plate {
	if p := b.Plate(id); p != nil {
		return p
	}
	for i := range b.Plates {
		if len(b.Plates[i].Bends) == 0 {
			continue
		}
		faces := b.Plates[i].Folded()
		for k := range faces {
			if faces[k].ID == id {
				return &faces[k]
			}
		}
	}
	return nil
}

func flangeID(plate string, bend int) string { return fmt.Sprintf("%s.%d", plate, bend+1) }

// beyond cuts a polygon along a line and keeps what lies to its left.
func beyond(points []shape.Point, a, b shape.Point) []shape.Point {
	n := b.Sub(a).Unit().Perp()
	var out []shape.Point
	for i, p := range points {
		q := points[(i+1)%len(points)]
		dp, dq := p.Sub(a).Dot(n), q.Sub(a).Dot(n)
		if dp >= 0 {
			out = append(out, p)
		}
		if dp > 0 && dq < 0 || dp < 0 && dq > 0 {
			out = append(out, p.Lerp(q, dp/(dp-dq)))
		}
	}
	return out
}
