package shape

// Ready-made loops and what is done to their corners. All loops are counter-clockwise.

import (
	"errors"
	"fmt"
	"math"
)

// ErrNoFit is wrapped by errors of constructors and corner work whose radius or cut does not fit.
var ErrNoFit = errors.New("does not fit")

// Circle returns a full circle of two half arcs. A diameter that is not positive gives a loop that Validate refuses.
func Circle(center Point, dia float64) Loop {
	r := dia / 2
	return Loop{{Point{center.X + r, center.Y}, 1}, {Point{center.X - r, center.Y}, 1}}
}

// Rect returns the rectangle with two opposite corners, in any order. It starts at the lower left.
func Rect(a, b Point) Loop {
	box := Box{a, a}.Extend(b)
	return Polyline(box.Min, Point{box.Max.X, box.Min.Y}, box.Max, Point{box.Min.X, box.Max.Y})
}

// Polyline returns the closed loop of straight edges through the points, wound as they are given.
func Polyline(points ...Point) Loop {
	out := make(Loop, len(points))
	for i, p := range points {
		out[i] = Vertex{p, 0}
	}
	return out
}

// Slot returns a slot with half-round ends whose arc centres are a and b; width is twice the end radius. With a equal to b
// it is a circle.
func Slot(a, b Point, width float64) Loop {
	if a == b {
		return Circle(a, width)
	}
	side := b.Sub(a).Unit().Perp().Scale(width / 2)
	return Loop{{a.Sub(side), 0}, {b.Sub(side), 1}, {b.Add(side), 0}, {a.Add(side), 1}}
}

// RoundedRect returns a rectangle with all corners rounded to one radius, 0 for none. It fails with ErrNoFit when the
// radius is over half the shorter side.
func RoundedRect(a, b Point, radius float64) (Loop, error) {
	return FilletAll(Rect(a, b), func(int) float64 { return radius })
}

// TangentPoints returns the points where the two tangents from a point touch a circle: left and right of the line that
// looks from the point to the centre. It fails with ErrNoFit when the point is on or inside the circle.
func TangentPoints(from, center Point, r float64) (left, right Point, err error) {
	d := from.Dist(center)
	if !(r > 0) || !(d > r) || math.IsInf(d, 1) {
		return left, right, fmt.Errorf("tangent to radius %g mm from %g mm off its centre: %w: need 0 < radius < distance", r, d, ErrNoFit)
	}
	back := from.Sub(center).Scale(1 / d)
	along, aside := r*r/d, r*math.Sqrt((d-r)*(d+r))/d
	foot := center.Add(back.Scale(along))
	side := back.Perp().Scale(aside)
	return foot.Sub(side), foot.Add(side), nil
}

// Fillet rounds the corner at vertex index (between two lines, convex or re-entrant) to a radius in mm. See FilletAll.
func Fillet(l Loop, index int, radius float64) (Loop, error) {
	if index < 0 || index >= len(l) {
		return nil, fmt.Errorf("fillet: no vertex %d in a loop of %d: %w", index, len(l), ErrNoFit)
	}
	return FilletAll(l, func(i int) float64 {
		if i == index {
			return radius
		}
		return 0
	})
}

// FilletAll rounds every vertex i to radius(i) in mm, 0 to leave it as it is. It fails with ErrNoFit for a corner that is
// not between two lines, is straight or folds back, or where the tangent lengths exceed an edge.
func FilletAll(l Loop, radius func(i int) float64) (Loop, error) {
	r := make([]float64, len(l))
	cut := make([]float64, len(l)) // tangent length at each vertex
	for i := range l {
		if r[i] = radius(i); r[i] == 0 {
			continue
		}
		turn, err := lineCorner(l, i)
		if err != nil {
			return nil, fmt.Errorf("fillet %d: %w", i, err)
		}
		if !(r[i] > 0) || math.IsInf(r[i], 1) {
			return nil, fmt.Errorf("fillet %d: radius %g mm: %w: need a positive radius", i, r[i], ErrNoFit)
		}
		cut[i] = r[i] * math.Abs(math.Tan(turn/2))
	}
	if err := roomFor(l, "fillet", func(i int) (float64, float64) { return cut[i], cut[i] }); err != nil {
		return nil, err
	}
	out := make(Loop, 0, 2*len(l))
	for i, v := range l {
		if r[i] == 0 {
			out = append(out, v)
			continue
		}
		turn, _ := lineCorner(l, i)
		from, to := setBack(l, i, cut[i], cut[i])
		out = append(out, Vertex{from, math.Tan(turn / 4)}, Vertex{to, 0})
	}
	return out.Normalize(), nil
}

// Chamfer cuts off (snipes) the corner at vertex index: before mm back along the edge that arrives, after mm along the one
// that leaves. Both edges must be lines long enough, else ErrNoFit.
func Chamfer(l Loop, index int, before, after float64) (Loop, error) {
	if index < 0 || index >= len(l) {
		return nil, fmt.Errorf("chamfer: no vertex %d in a loop of %d: %w", index, len(l), ErrNoFit)
	}
	if _, err := lineCorner(l, index); err != nil {
		return nil, fmt.Errorf("chamfer %d: %w", index, err)
	}
	if !(before > 0 && after > 0) {
		return nil, fmt.Errorf("chamfer %d: %g x %g mm: %w: need two positive lengths", index, before, after, ErrNoFit)
	}
	err := roomFor(l, "chamfer", func(i int) (float64, float64) {
		if i == index {
			return before, after
		}
		return 0, 0
	})
	if err != nil {
		return nil, err
	}
	from, to := setBack(l, index, before, after)
	out := append(l[:index:index], Vertex{from, 0}, Vertex{to, 0})
	return append(out, l[index+1:]...).Normalize(), nil
}

// lineCorner returns the turn at vertex i, left positive.
func lineCorner(l Loop, i int) (turn float64, err error) {
	in, out := l.Edge(i-1), l.Edge(i)
	if in.IsArc() || out.IsArc() {
		return 0, fmt.Errorf("corner at (%g, %g) is not between two lines: %w", l[i].X, l[i].Y, ErrNoFit)
	}
	u, v := in.TangentAt(1), out.TangentAt(0)
	turn = math.Atan2(u.Cross(v), u.Dot(v))
	if a := math.Abs(turn); !(a > 1e-6 && a < math.Pi-1e-6) {
		return 0, fmt.Errorf("corner at (%g, %g) turns %.4g degrees: %w: need a corner that neither runs straight on nor folds back",
			l[i].X, l[i].Y, turn*180/math.Pi, ErrNoFit)
	}
	return turn, nil
}

// roomFor checks that what is taken off both ends of each edge leaves no less than nothing.
func roomFor(l Loop, what string, cut func(i int) (before, after float64)) error {
	for i := range l {
		_, start := cut(i)
		end, _ := cut((i + 1) % len(l))
		if have := l.Edge(i).Chord(); start+end > have+OnTolMM {
			return fmt.Errorf("%s: corners take %.6g mm of edge %d, which has %.6g mm: %w", what, start+end, i, have, ErrNoFit)
		}
	}
	return nil
}

func setBack(l Loop, i int, before, after float64) (from, to Point) {
	p := l[i].Point
	return p.Sub(l.Edge(i - 1).TangentAt(1).Scale(before)), p.Add(l.Edge(i).TangentAt(0).Scale(after))
}
