package fold

import (
	"fmt"
	"math"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Pattern is a plate's flat pattern cut at its bends. Corners are shared by number.
type Pattern struct {
	Points   []shape.Point
	Faces    []Face
	Openings [][]int // rings of the openings, in the order of Plate.Shape
	Bends    []Bend

	pose part.Pose
}

// Face is a part of the pattern.
type Face struct {
	Outer    []int // counter-clockwise
	Openings []int // places in Pattern.Openings
	Bend     int   // the bend whose strip it is, -1 for a flat face
	Beyond   []int // the bends that move it, its own included, the outermost first
}

// Bend is one bend as it is drawn.
type Bend struct {
	A, Along, Out shape.Point // a point of its line, its direction with the moved side to the left, and towards that side
	From, To      float64     // where the line enters and leaves the plate, along it from A
	FlatMM        float64     // what it takes of the flat pattern, half on either side of its line
	RadiusMM      float64     // inside
	AngleRad      float64     // towards +W

	thickness float64
}

// Flat is the pattern of a plate as it is cut, in one face.
func Flat(p *part.Plate, facetMM float64) *Pattern {
	s, _ := take(p, nil, facetMM)
	return s
}

// Take takes a plate apart at its bends. No facet is further than facetMM from its arc, a bend's included. The error says which bend does not part the
// pattern into two sides, or what lies in its way: such a plate can only be shown flat.
func Take(p *part.Plate, facetMM float64) (*Pattern, error) { return take(p, p.Bends, facetMM) }

func take(p *part.Plate, bends []part.Bend, facetMM float64) (*Pattern, error) {
	s := &Pattern{pose: p.Pose}
	c := &cutter{}
	outline := p.Shape(false)
	c.whole = c.add(outline.Outer.Normalize().CCW(), facetMM)
	c.rings = [][]int{slices.Clone(c.whole)}
	for _, l := range outline.Holes {
		s.Openings = append(s.Openings, c.add(l.Normalize().CCW(), facetMM))
	}
	var ends [][2]int // corners where what each bend moves begins
	for i, b := range bends {
		if b.AngleRad == 0 {
			continue
		}
		bend, end, err := c.bend(b, p.ThicknessMM, facetMM)
		if err != nil {
			return nil, fmt.Errorf("bend %d: %w", i+1, err)
		}
		s.Bends, ends = append(s.Bends, bend), append(ends, end)
	}
	s.Points = c.points
	if err := s.sort(c, ends); err != nil {
		return nil, err
	}
	return s, s.settle(c)
}

// add puts a loop's corners in.
func (c *cutter) add(l shape.Loop, facetMM float64) []int {
	points := l.Polygon(facetMM)
	ring := make([]int, len(points))
	for i := range ring {
		ring[i] = len(c.points) + i
	}
	c.points = append(c.points, points...)
	return ring
}

// bend cuts the strips of a bend. It gives the corners at the ends of the first cut.
func (c *cutter) bend(b part.Bend, thickness, facetMM float64) (Bend, [2]int, error) {
	along := b.B.Sub(b.A).Unit()
	r := max(b.RadiusMM, thickness/100)
	turn := math.Abs(b.AngleRad)
	out := Bend{A: b.A, Along: along, Out: along.Perp(), FlatMM: b.AllowanceMM, RadiusMM: r, AngleRad: b.AngleRad, thickness: thickness}
	if out.FlatMM == 0 {
		out.FlatMM = turn * (r + thickness/2)
	}
	middle := b.A.Lerp(b.B, 0.5)
	before, after, ok := c.meet(c.whole, middle, along)
	if !ok || !c.holds(c.whole, middle) {
		return out, [2]int{}, fmt.Errorf("its line does not cross the plate")
	}
	from := middle.Sub(b.A).Dot(along)
	out.From, out.To = from+before.x, from+after.x
	step := 2 * math.Acos(1-min(facetMM/(r+thickness), 0.3))
	n := max(1, int(math.Ceil(turn/step-1e-9)))
	var ends [2]int
	for k := range n + 1 {
		at := middle.Add(out.Out.Scale(out.FlatMM * (float64(k)/float64(n) - 0.5)))
		a, z, ok := c.cut(at, along)
		if !ok {
			return out, ends, fmt.Errorf("the %.4g mm that it takes of the flat pattern do not lie within the plate", out.FlatMM)
		}
		if k == 0 {
			ends = [2]int{a, z}
		}
	}
	return out, ends, nil
}

// sort makes faces of the rings and says which bends move each.
func (s *Pattern) sort(c *cutter, ends [][2]int) error {
	beyond := make([][]int, len(ends))
	order := make([]int, len(ends))
	for i, e := range ends {
		beyond[i], order[i] = stretch(c.whole, e[1], e[0]), i
	}
	// What an outer bend moves is a part of what an inner one moves.
	slices.SortStableFunc(order, func(i, k int) int { return len(beyond[i]) - len(beyond[k]) })
	for _, ring := range c.rings {
		f := Face{Outer: ring, Bend: -1}
		for _, i := range order {
			if !holdsAll(beyond[i], ring) {
				continue
			}
			f.Beyond = append(f.Beyond, i)
			lo, hi := s.reach(ring, i)
			half := s.Bends[i].FlatMM / 2
			switch {
			case lo < -half-onLineMM || lo < half-onLineMM && hi > half+onLineMM:
				return fmt.Errorf("bend %d: what it moves reaches back behind its line", i+1)
			case hi <= half+onLineMM && (f.Bend >= 0 || len(f.Beyond) > 1):
				return fmt.Errorf("bend %d: it lies in another", i+1)
			case hi <= half+onLineMM:
				f.Bend = i
			}
		}
		s.Faces = append(s.Faces, f)
	}
	return s.agree()
}

func holdsAll(set, ring []int) bool {
	return !slices.ContainsFunc(ring, func(v int) bool { return !slices.Contains(set, v) })
}

// reach is how far the corners of a ring lie from a bend's line, towards the moved side.
func (s *Pattern) reach(ring []int, bend int) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, v := range ring {
		d := s.Bends[bend].off(s.Points[v])
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}

// tornMM is how far a corner may be from itself when two faces place it.
const tornMM = 1e-4

// agree says whether faces that share a corner put it in one place.
func (s *Pattern) agree() error {
	if len(s.Faces) == 1 {
		return nil
	}
	placed := map[int]part.Vec{}
	for i := range s.Faces {
		for _, v := range s.Faces[i].Outer {
			at := s.Place(i, v, 0)
			if first, ok := placed[v]; ok && first.Sub(at).Norm() > tornMM {
				return fmt.Errorf("the bends tear the plate at %v", s.Points[v])
			}
			placed[v] = at
		}
	}
	return nil
}

// settle gives each opening to its face.
func (s *Pattern) settle(c *cutter) error {
	for k, ring := range s.Openings {
		if len(s.Faces) == 1 {
			s.Faces[0].Openings = append(s.Faces[0].Openings, k)
			continue
		}
		i := slices.IndexFunc(s.Faces, func(f Face) bool { return c.holds(f.Outer, s.Points[ring[0]]) })
		if i < 0 || s.Faces[i].Bend >= 0 || slices.ContainsFunc(ring, func(v int) bool { return !c.holds(s.Faces[i].Outer, s.Points[v]) }) {
			return fmt.Errorf("opening %d lies in a bend", k+1)
		}
		s.Faces[i].Openings = append(s.Faces[i].Openings, k)
	}
	return nil
}
