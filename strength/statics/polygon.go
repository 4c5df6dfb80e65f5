package statics

// A rectangle cut by a line, and the moments of what is left: the one piece of plane geometry that
// contact patches and plastic moduli share.

// moments are the area integrals of 1, x, y, x^2, xy, y^2.
type moments struct{ a, x, y, xx, xy, yy float64 }

// below gives the moments of the part of a convex quadrilateral (corners anticlockwise) on which
// c + n.X x + n.Y y < 0. Exact but for rounding.
func below(quad [4]Vec2, c float64, n Vec2) moments {
	var poly [8]Vec2
	return polygonMoments(clip(poly[:0], quad[:], c, n))
}

// clip adds to dst the corners of the part of a convex polygon on which c + n.X x + n.Y y < 0: at most one more than it had.
func clip(dst, poly []Vec2, c float64, n Vec2) []Vec2 {
	if len(poly) == 0 {
		return dst
	}
	prev := poly[len(poly)-1]
	sPrev := c + n.X*prev.X + n.Y*prev.Y
	for _, p := range poly {
		s := c + n.X*p.X + n.Y*p.Y
		if (s < 0) != (sPrev < 0) {
			t := sPrev / (sPrev - s)
			dst = append(dst, Vec2{prev.X + t*(p.X-prev.X), prev.Y + t*(p.Y-prev.Y)})
		}
		if s < 0 {
			dst = append(dst, p)
		}
		prev, sPrev = p, s
	}
	return dst
}

// polygonMoments sums triangles from the first corner, which keeps slivers accurate.
func polygonMoments(poly []Vec2) (m moments) {
	for i := 2; i < len(poly); i++ {
		p, q, r := poly[0], poly[i-1], poly[i]
		a := ((q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X)) / 2
		sx, sy := p.X+q.X+r.X, p.Y+q.Y+r.Y
		m.a += a
		m.x += a * sx / 3
		m.y += a * sy / 3
		m.xx += a / 12 * (sx*sx + p.X*p.X + q.X*q.X + r.X*r.X)
		m.xy += a / 12 * (sx*sy + p.X*p.Y + q.X*q.Y + r.X*r.Y)
		m.yy += a / 12 * (sy*sy + p.Y*p.Y + q.Y*q.Y + r.Y*r.Y)
	}
	return m
}
