package shape

// Path draws a loop edge by edge.

import (
	"errors"
	"fmt"
	"math"
)

// ErrPath is wrapped by every error of Path.Close.
var ErrPath = errors.New("path cannot be drawn")

// Path collects edges from a start point. Calls chain; after the first error the rest do nothing, and Close reports it.
//
//	l, err := shape.NewPath(a).Line(b).TangentTo(c).Line(d).Close()
type Path struct {
	loop Loop
	at   Point
	err  error
}

// NewPath starts a path.
func NewPath(start Point) *Path { return &Path{at: start} }

// Heading returns the unit direction in which the last edge ends; the zero vector before the first edge.
func (p *Path) Heading() Point {
	if len(p.loop) == 0 {
		return Point{}
	}
	last := p.loop[len(p.loop)-1]
	return Edge{last.Point, p.at, last.Bulge}.TangentAt(1)
}

// Line draws a straight edge to a point.
func (p *Path) Line(to Point) *Path { return p.Arc(to, 0) }

// LineBy draws a straight edge by a step.
func (p *Path) LineBy(dx, dy float64) *Path { return p.Line(p.at.Add(Point{dx, dy})) }

// Arc draws an arc with a given bulge (tan of a quarter of the sweep, counter-clockwise positive) to a point.
func (p *Path) Arc(to Point, bulge float64) *Path {
	switch {
	case p.err != nil:
	case !to.finite() || math.IsNaN(bulge) || math.IsInf(bulge, 0):
		p.fail("to (%g, %g) with bulge %g: need finite numbers", to.X, to.Y, bulge)
	default:
		p.loop = append(p.loop, Vertex{p.at, bulge})
		p.at = to
	}
	return p
}

// ArcVia draws the arc through a point on the way. It fails when via is on the chord's line but not between its ends.
func (p *Path) ArcVia(via, to Point) *Path {
	a, b := p.at.Sub(via), to.Sub(via)
	cross, dot := a.Cross(b), a.Dot(b)
	if cross == 0 && dot >= 0 {
		return p.fail("arc via (%g, %g) to (%g, %g): no circle through the three points", via.X, via.Y, to.X, to.Y)
	}
	// The angle seen from via is half a turn less half the sweep.
	seen := math.Abs(math.Atan2(cross, dot))
	return p.Arc(to, math.Copysign(math.Tan((math.Pi-seen)/2), -cross))
}

// ArcCenter draws the arc about a centre, counter-clockwise or clockwise, at most one turn. Both ends must be at the same
// distance from the centre within TouchMM.
func (p *Path) ArcCenter(to, center Point, ccw bool) *Path {
	a, b := p.at.Sub(center), to.Sub(center)
	if !(math.Abs(a.Norm()-b.Norm()) <= TouchMM) || p.at == to {
		return p.fail("arc to (%g, %g): ends are %g and %g mm from the centre: need two points of one circle", to.X, to.Y, a.Norm(), b.Norm())
	}
	sweep := math.Atan2(a.Cross(b), a.Dot(b))
	if ccw && sweep < 0 {
		sweep += 2 * math.Pi
	}
	if !ccw && sweep > 0 {
		sweep -= 2 * math.Pi
	}
	return p.Arc(to, math.Tan(sweep/4))
}

// TangentTo draws the arc that leaves in the present heading and ends at a point; a line when that is straight ahead. It
// fails as the first edge, and when the point is straight behind.
func (p *Path) TangentTo(to Point) *Path {
	h, ch := p.Heading(), to.Sub(p.at)
	half := math.Atan2(h.Cross(ch), h.Dot(ch)) // heading to chord is half the sweep
	if h == (Point{}) || math.Abs(half) > math.Pi-1e-6 {
		return p.fail("tangent arc to (%g, %g): need an edge before it and a point that is not straight behind", to.X, to.Y)
	}
	return p.Arc(to, math.Tan(half/2))
}

// Close returns the finished loop, normalised and wound as drawn; a straight edge is added when the path has not returned
// to its start.
func (p *Path) Close() (Loop, error) {
	if p.err != nil {
		return nil, p.err
	}
	if len(p.loop) > 0 && p.at.Dist(p.loop[0].Point) > ZeroEdgeMM {
		p.Line(p.loop[0].Point)
	}
	out := p.loop.Normalize()
	if len(out) < 2 {
		return nil, fmt.Errorf("%w: %d edges, need at least 2", ErrPath, len(out))
	}
	return out, nil
}

func (p *Path) fail(format string, args ...any) *Path {
	if p.err == nil {
		p.err = fmt.Errorf("%w: edge %d: %s", ErrPath, len(p.loop), fmt.Sprintf(format, args...))
	}
	return p
}
