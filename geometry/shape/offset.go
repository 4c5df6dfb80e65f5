package shape

// Parallel offsets: the loop a cutter's centre, a clearance or a nesting gap follows.

import (
	"errors"
	"fmt"
	"math"
)

// ErrOffset is wrapped by every error of Offset.
var ErrOffset = errors.New("cannot offset")

// OffsetError says why an offset was refused.
type OffsetError struct {
	DistanceMM float64
	Reason     string
}

// Error implements error.
func (e *OffsetError) Error() string {
	return fmt.Sprintf("cannot offset by %.6g mm: %s", e.DistanceMM, e.Reason)
}

// Unwrap makes errors.Is(err, ErrOffset) true.
func (e *OffsetError) Unwrap() error { return ErrOffset }

// Offset returns the loop at distance d mm to the right of its travel: outwards for a counter-clockwise loop and d > 0.
// Lines stay lines and arcs stay arcs about the same centre; where the corner opens, an arc about the old vertex fills
// it; where it closes, edges are trimmed to where they meet. Edges that vanish are left out when their neighbours then
// meet. Before it is returned, the result is checked: it does not cross itself, and it is at d from the source
// everywhere. Offset fails with an *OffsetError where no such single loop was found, and for loops that do not validate.
func Offset(l Loop, d float64) (Loop, error) {
	if math.IsNaN(d) || math.Abs(d) > MaxSizeMM {
		return nil, &OffsetError{d, fmt.Sprintf("need a distance within %g mm", MaxSizeMM)}
	}
	var c checker
	if !c.loop(alone, l) {
		return nil, &OffsetError{d, "the loop is not sound: " + c.found[0].String()}
	}
	if math.Abs(d) < FlatMM {
		return l.Normalize(), nil
	}
	rest := shifted(l.Normalize(), d)
	for len(rest) >= 2 {
		joints := joinAll(rest, d)
		drop := worst(rest, joints)
		if drop < 0 {
			return checked(assemble(joints).Normalize(), l, d)
		}
		rest = append(rest[:drop:drop], rest[drop+1:]...)
	}
	return nil, &OffsetError{d, "nothing is left of the loop"}
}

// moved is a source edge and its parallel.
type moved struct {
	src, off Edge
}

// shifted returns the parallel of each edge, without arcs that shrink to nothing.
func shifted(l Loop, d float64) []moved {
	var out []moved
	for i := range l {
		e := l.Edge(i)
		off := Edge{e.A.Sub(e.TangentAt(0).Perp().Scale(d)), e.B.Sub(e.TangentAt(1).Perp().Scale(d)), e.Bulge}
		if !e.IsArc() || e.Radius()+math.Copysign(d, d*e.Bulge) > TouchMM {
			out = append(out, moved{e, off})
		}
	}
	return out
}

// joint is how one moved edge runs into the next: it stops at fraction leave, an arc may fill the corner, and the next
// edge starts at fraction enter.
type joint struct {
	edge         Edge
	stop, start  Point   // equal unless an arc fills the corner
	fill         float64 // bulge of that arc
	leave, enter float64 // on this edge and on the next
	apart        bool    // the edges do not meet
}

func joinAll(rest []moved, d float64) []joint {
	out := make([]joint, len(rest))
	for i, m := range rest {
		out[i] = join(m, rest[(i+1)%len(rest)], d)
	}
	return out
}

func join(a, b moved, d float64) joint {
	j := joint{edge: a.off, stop: a.off.B, start: b.off.A, leave: 1, enter: 0}
	if j.stop.Dist(j.start) <= TinyEdgeMM { // tangent, or as good as: the shift is along the edge
		j.stop = j.start
		return j
	}
	u, v := a.src.TangentAt(1), b.src.TangentAt(0)
	turn := math.Atan2(u.Cross(v), u.Dot(v))
	if turn*d > 0 && a.src.B == b.src.A {
		j.fill = math.Tan(turn / 4)
		return j
	}
	p, ok := nearest(EdgeIntersections(a.off, b.off), a.src.B.Lerp(b.src.A, 0.5))
	if !ok {
		j.apart = true
		return j
	}
	j.stop, j.start = p, p
	j.leave, j.enter = a.off.paramAt(p), b.off.paramAt(p)
	return j
}

func nearest(points []Point, to Point) (best Point, ok bool) {
	for _, p := range points {
		if !ok || p.Dist(to) < best.Dist(to) {
			best, ok = p, true
		}
	}
	return best, ok
}

// paramAt returns the fraction of the length at which the edge passes p, a point on it.
func (e Edge) paramAt(p Point) float64 {
	ch, q := e.B.Sub(e.A), p.Sub(e.A)
	if !e.IsArc() {
		return q.Dot(ch) / ch.Dot(ch)
	}
	// The chord to p leaves the tangent at A by half the angle travelled.
	ta, _ := e.endTangents()
	return math.Abs(2*math.Atan2(ta.Cross(q), ta.Dot(q))) / math.Abs(e.Sweep())
}

// worst returns the edge to leave out, or -1: of those that are trimmed to less than nothing the most trimmed one, else
// the shorter of two that do not meet.
func worst(rest []moved, joints []joint) int {
	drop, least := -1, 0.0
	n := len(joints)
	for i, j := range joints {
		left := (j.leave - joints[(i+n-1)%n].enter) * rest[i].off.Length()
		if left < least {
			drop, least = i, left
		}
	}
	if drop >= 0 {
		return drop
	}
	for i, j := range joints {
		if next := (i + 1) % n; j.apart && rest[next].off.Length() < rest[i].off.Length() {
			return next
		} else if j.apart {
			return i
		}
	}
	return -1
}

// assemble lays the trimmed edges and the corner arcs end to end.
func assemble(joints []joint) Loop {
	var out Loop
	n := len(joints)
	for i, j := range joints {
		before := joints[(i+n-1)%n]
		part := j.leave - before.enter
		out = append(out, Vertex{before.start, math.Tan(part * math.Atan(j.edge.Bulge))})
		if j.fill != 0 {
			out = append(out, Vertex{j.stop, j.fill})
		}
	}
	return out
}

// checked refuses what is not the parallel: crossing itself, turned over, or anywhere nearer or further than d.
func checked(out, src Loop, d float64) (Loop, error) {
	var c checker
	if !c.loop(result, out) {
		return nil, &OffsetError{d, c.found[0].String()}
	}
	if out.Area()*src.Area() < 0 {
		return nil, &OffsetError{d, "the loop turns inside out"}
	}
	if have := LoopDistance(out, src); have < math.Abs(d)-10*TouchMM {
		return nil, &OffsetError{d, fmt.Sprintf("the result comes within %.6g mm of the loop", have)}
	}
	for i := range out {
		if p := out.Edge(i).Mid(); math.Abs(src.DistTo(p)-math.Abs(d)) > 10*TouchMM {
			return nil, &OffsetError{d, fmt.Sprintf("the result is %.6g mm from the loop at (%.6g, %.6g)", src.DistTo(p), p.X, p.Y)}
		}
	}
	return out, nil
}
