package shape

// Closed loops of edges: measures and tidying.

import (
	"math"
	"slices"
)

// Vertex is a corner of a loop together with the edge that leaves it towards the next vertex.
type Vertex struct {
	Point
	Bulge float64 // tan(sweep/4) of the edge to the next vertex, counter-clockwise positive, 0 for a line
}

// Loop is a closed chain of lines and arcs. The first vertex is not repeated at the end.
type Loop []Vertex

// Edge returns the edge that leaves vertex i; i may be any integer and counts round the loop.
func (l Loop) Edge(i int) Edge {
	n := len(l)
	if i < 0 || i >= n {
		i = (i%n + n) % n
	}
	j := i + 1
	if j == n {
		j = 0
	}
	return Edge{l[i].Point, l[j].Point, l[i].Bulge}
}

// Edges returns all edges in order. Edge i leaves vertex i.
func (l Loop) Edges() []Edge {
	out := make([]Edge, len(l))
	for i := range l {
		out[i] = l.Edge(i)
	}
	return out
}

// Area returns the enclosed area in mm2, positive for a counter-clockwise loop.
func (l Loop) Area() float64 {
	if len(l) == 0 {
		return 0
	}
	return l.area()
}

// Length returns the length round the loop in mm.
func (l Loop) Length() float64 {
	sum := 0.0
	for i := range l {
		sum += l.Edge(i).Length()
	}
	return sum
}

// BBox returns the smallest box around the loop.
func (l Loop) BBox() Box {
	box := EmptyBox()
	for i := range l {
		box = box.Union(l.Edge(i).BBox())
	}
	return box
}

// Clone returns a copy that shares nothing with l.
func (l Loop) Clone() Loop { return append(Loop(nil), l...) }

// Reverse returns the loop travelled the other way, starting at the same vertex.
func (l Loop) Reverse() Loop {
	n := len(l)
	out := make(Loop, n)
	for i := range out {
		from, edge := (n-i)%n, n-1-i
		out[i] = Vertex{l[from].Point, -l[edge].Bulge}
	}
	return out
}

// CCW returns a copy wound counter-clockwise (positive area).
func (l Loop) CCW() Loop {
	if l.Area() < 0 {
		return l.Reverse()
	}
	return l.Clone()
}

// CW returns a copy wound clockwise (negative area), as most formats want holes.
func (l Loop) CW() Loop {
	if l.Area() > 0 {
		return l.Reverse()
	}
	return l.Clone()
}

// Normalize returns the loop in the form that writers rely on: no edge shorter than ZeroEdgeMM, arcs of more than half a
// circle split in two, bulges within 1e-9 of a half circle snapped to it, arcs with a sagitta below FlatMM made lines. It
// may return a loop of fewer than two vertices, which Validate refuses.
func (l Loop) Normalize() Loop { return l.AppendNormalized(make(Loop, 0, len(l)+2), FlatMM) }

// AppendNormalized adds the vertices of the loop's normal form, in which arcs with a sagitta below flatMM are lines.
func (l Loop) AppendNormalized(to Loop, flatMM float64) Loop {
	for i := range l {
		e := l.Edge(i)
		switch chord := e.Chord(); {
		case chord < ZeroEdgeMM:
		case math.Abs(e.Bulge)*chord/2 < flatMM:
			to = append(to, Vertex{e.A, 0})
		default:
			to = appendArc(to, e)
		}
	}
	return to
}

func appendArc(to Loop, e Edge) Loop {
	b := math.Abs(e.Bulge)
	switch {
	case math.Abs(b-1) < 1e-9:
		return append(to, Vertex{e.A, math.Copysign(1, e.Bulge)})
	case b > 1:
		half := e.Bulge / (1 + math.Hypot(1, e.Bulge)) // tan(x/2) from tan x
		return append(to, Vertex{e.A, half}, Vertex{e.Mid(), half})
	}
	return append(to, Vertex{e.A, e.Bulge})
}

// IsCircle tells whether the loop is one full circle, and which. Writers make such a loop a CIRCLE, drills a hole.
func (l Loop) IsCircle() (center Point, dia float64, ok bool) {
	if len(l) < 2 || l[0].Bulge == 0 {
		return Point{}, 0, false
	}
	first := l.Edge(0)
	center, r, sweep := first.Center(), first.Radius(), 0.0
	if len(l) == 2 && math.Abs(first.Bulge) == 1 {
		center = l[0].Lerp(l[1].Point, 0.5)
		if first.Bulge == l[1].Bulge {
			return center, 2 * r, true
		}
	}
	for i := range l {
		e := l.Edge(i)
		if !e.IsArc() || e.Center().Dist(center) > TouchMM || math.Abs(e.Radius()-r) > TouchMM {
			return Point{}, 0, false
		}
		sweep += e.Sweep()
	}
	if math.Abs(math.Abs(sweep)-2*math.Pi) > 1e-9 {
		return Point{}, 0, false
	}
	return center, 2 * r, true
}

// DistTo returns the least distance from p to the loop's edges; +Inf for an empty loop.
func (l Loop) DistTo(p Point) float64 {
	d := math.Inf(1)
	for i := range l {
		if e := l.Edge(i); !(e.atLeast(p) > d+far) {
			d = min(d, e.DistTo(p))
		}
	}
	return d
}

// Within reports whether an edge is as near to p as d, or nearer.
func (l Loop) Within(p Point, d float64) bool {
	for i := range l {
		if l.Edge(i).Within(p, d) {
			return true
		}
	}
	return false
}

// far is beyond the rounding of distances: what is as much further off need not be measured.
const far = 1e-6

// Contains reports whether p is inside the loop, or on it within OnTolMM.
func (l Loop) Contains(p Point) bool {
	return l.Within(p, OnTolMM) || l.encloses(p)
}

// encloses counts crossings of a ray; points on the boundary may fall either way.
func (l Loop) encloses(p Point) bool {
	var buf [32]float64
	inside := false
	for _, s := range l.crossings(buf[:0], p, Point{1, 0}) {
		if s > 0 {
			inside = !inside
		}
	}
	return inside
}

// Polygon returns vertices on the loop, close enough that no straight side is further than sagitta (mm) from its arc and
// no side turns more than 45 degrees. For screens, meshes and tests: results of this package never pass through it.
func (l Loop) Polygon(sagitta float64) []Point {
	var out []Point
	for i := range l {
		e := l.Edge(i)
		n := e.steps(sagitta)
		out = slices.Grow(out, n)
		for k := range n {
			out = append(out, e.At(float64(k)/float64(n)))
		}
	}
	return out
}

// steps returns how many straight sides replace the edge; at most 1e5.
func (e Edge) steps(sagitta float64) int {
	if !e.IsArc() {
		return 1
	}
	step := math.Pi / 4
	if r := e.Radius(); sagitta < r {
		step = min(step, 4*math.Asin(math.Sqrt(max(sagitta, 0)/(2*r))))
	}
	n := math.Ceil(math.Abs(e.Sweep())/step - 1e-9)
	return int(max(1, min(n, 1e5)))
}

// HasArc reports whether any edge is an arc.
func (l Loop) HasArc() bool {
	for _, v := range l {
		if v.Bulge != 0 {
			return true
		}
	}
	return false
}
