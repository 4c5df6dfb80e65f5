package shape

// Area, centroid and second moments by Green's sum over the vertices plus one circular-segment term for each arc.

import "math"

// Properties are the section properties of an outline. Second moments are about axes through the centroid.
type Properties struct {
	AreaMM2  float64
	Centroid Point
	IxxMM4   float64 // integral of (y - yc)^2 dA: resists bending about the x axis
	IyyMM4   float64 // integral of (x - xc)^2 dA
	IxyMM4   float64 // integral of (x - xc)(y - yc) dA
}

// sums are moments about some origin: area, first moments and second moments, signed by winding.
type sums struct{ area, x, y, xx, yy, xy float64 }

func (s *sums) add(t sums, k float64) {
	s.area += k * t.area
	s.x += k * t.x
	s.y += k * t.y
	s.xx += k * t.xx
	s.yy += k * t.yy
	s.xy += k * t.xy
}

// Properties returns area, centroid and second moments of the outline less its holes, whatever the windings. An outline
// without area gives zeros and its first vertex as centroid.
func (o Outline) Properties() Properties {
	if len(o.Outer) == 0 {
		return Properties{}
	}
	origin := o.Outer[0].Lerp(o.Outer[len(o.Outer)/2].Point, 0.5)
	total := o.Outer.moments(origin).positive()
	for _, h := range o.Holes {
		total.add(h.moments(origin).positive(), -1)
	}
	return total.properties(origin)
}

func (s sums) positive() sums {
	if s.area < 0 {
		var out sums
		out.add(s, -1)
		return out
	}
	return s
}

func (s sums) properties(origin Point) Properties {
	if s.area == 0 {
		return Properties{Centroid: origin}
	}
	cx, cy := s.x/s.area, s.y/s.area
	return Properties{
		AreaMM2:  s.area,
		Centroid: Point{origin.X + cx, origin.Y + cy},
		IxxMM4:   s.yy - cy*s.y,
		IyyMM4:   s.xx - cx*s.x,
		IxyMM4:   s.xy - cx*s.y,
	}
}

// moments sums over the loop's edges, about origin.
func (l Loop) moments(origin Point) sums {
	var s sums
	if len(l) == 0 {
		return s
	}
	prev := &l[len(l)-1]
	a := prev.Sub(origin)
	for i := range l {
		b := l[i].Sub(origin)
		s.addLine(a, b)
		if prev.Bulge != 0 {
			s.addSegment(a, b, prev.Bulge)
		}
		prev, a = &l[i], b
	}
	return s
}

// area is the area of moments alone.
func (l Loop) area() float64 {
	sum := 0.0
	prev := &l[len(l)-1]
	a := prev.Sub(l[0].Point)
	for i := range l {
		b := l[i].Sub(l[0].Point)
		sum += a.Cross(b) / 2
		if c2 := b.Sub(a).Dot(b.Sub(a)); prev.Bulge != 0 && c2 != 0 {
			sum += math.Copysign(1, prev.Bulge) * unitSegmentArea(math.Abs(prev.Bulge)) * c2
		}
		prev, a = &l[i], b
	}
	return sum
}

// addLine adds the triangle origin, a, b (Green's theorem for a straight edge).
func (s *sums) addLine(a, b Point) {
	c := a.Cross(b)
	s.area += c / 2
	s.x += c * (a.X + b.X) / 6
	s.y += c * (a.Y + b.Y) / 6
	s.xx += c * (a.X*a.X + a.X*b.X + b.X*b.X) / 12
	s.yy += c * (a.Y*a.Y + a.Y*b.Y + b.Y*b.Y) / 12
	s.xy += c * (2*a.X*a.Y + a.X*b.Y + b.X*a.Y + 2*b.X*b.Y) / 24
}

// addSegment adds what lies between chord and arc: positive for a belly to the right of travel.
func (s *sums) addSegment(a, b Point, bulge float64) {
	ch := b.Sub(a)
	c2 := ch.Dot(ch)
	if c2 == 0 {
		return
	}
	g := unitSegment(math.Abs(bulge))
	// e along the chord, n towards the belly, both of length c; m is the middle of the chord.
	sign := math.Copysign(1, bulge)
	e, n, m := ch, Point{sign * ch.Y, -sign * ch.X}, a.Lerp(b, 0.5)
	area := sign * g.area * c2
	rise := sign * g.rise * c2
	along, up := sign*g.along*c2, sign*g.up*c2
	s.area += area
	s.x += area*m.X + rise*n.X
	s.y += area*m.Y + rise*n.Y
	s.xx += area*m.X*m.X + 2*rise*m.X*n.X + along*e.X*e.X + up*n.X*n.X
	s.yy += area*m.Y*m.Y + 2*rise*m.Y*n.Y + along*e.Y*e.Y + up*n.Y*n.Y
	s.xy += area*m.X*m.Y + rise*(m.X*n.Y+m.Y*n.X) + along*e.X*e.Y + up*n.X*n.Y
}

// segment holds the moments of a circular segment on a chord of length 1: its area, its first moment over the chord, and
// its second moments along the chord (about the chord's middle) and over it.
type segment struct{ area, rise, along, up float64 }

// flatHalfAngle is the half-angle below which the closed forms lose digits and the series takes over.
const flatHalfAngle = 0.25

// unitSegment gives the moments for a bulge b > 0. With the half-angle t, S = sin t and C = cos t, on radius 1:
// area t - S C; first moment over the chord S - t C - S^3/3; second moments t/4 - S C/3 + S C cos 2t/12 along it and
// t (3 + 2 cos 2t)/4 - S C (14 + cos 2t)/12 over it (integrals of the height cos f - C over -t < f < t).
func unitSegment(b float64) segment {
	t := 2 * math.Atan(b)
	if t < flatHalfAngle {
		return flatSegment(t)
	}
	k := 1 / (1 + b*b)
	s, c := 2*b*k, (1-b*b)*k
	sc, c2 := s*c, (c-s)*(c+s)
	r := 1 / (2 * s)
	r2 := r * r
	return segment{
		area:  r2 * (t - sc),
		rise:  r2 * r * (s - t*c - s*s*s/3),
		along: r2 * r2 * (t/4 - sc*(4-c2)/12),
		up:    r2 * r2 * (t*(3+2*c2)/4 - sc*(14+c2)/12),
	}
}

// unitSegmentArea is the area of unitSegment alone.
func unitSegmentArea(b float64) float64 {
	if b == 1 {
		return math.Pi / 8
	}
	t := 2 * math.Atan(b)
	if t < flatHalfAngle {
		return flatSegment(t).area
	}
	k := 1 / (1 + b*b)
	s, c := 2*b*k, (1-b*b)*k
	r := 1 / (2 * s)
	return r * r * (t - s*c)
}

// flatSegment is the Taylor series of the same in t. Its first terms are the parabola's: area 2/3 c s, centroid 2/5 s.
// Seven terms leave less than 1e-15 at flatHalfAngle.
func flatSegment(t float64) segment {
	q := t * t
	return segment{
		area:  t * (1./6 + q*(1./45+q*(1./315+q*(2./4725+q*(1./18711+q*(1382./212837625+q*2./2606175)))))),
		rise:  q * (1./60 + q*(1./252+q*(1./1350+q*(1./8316+q*(691./38697750+q*(1./400950+q*3617./10854718875)))))),
		along: t * (1./120 + q*(1./630+q*(1./3150+q*(1./17325+q*(823./85135050+q*(323./212837625+q/4417875)))))),
		up:    t * q * (1./420 + q*(1./1260+q*(19./103950+q*(397./11351340+q*(2539./425675250+q*53./56388150))))),
	}
}
