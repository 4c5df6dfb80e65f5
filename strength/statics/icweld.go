package statics

// Weld groups in a plane by the instantaneous centre of rotation: any layout of straight fillets of one leg, any load.
// The group, its elements, and what one element does are here; the search for the centre is in icweldsolve.go.
//
// Source: AISC Steel Construction Manual 16th ed., Part 8: R_i = 0.60 F_EXX a_w (1 + 0.50 sin^1.5 th) [p (1.9 - 0.9 p)]^0.3 dl,
// p = D_i/D_mi, D_m = 0.209 (th + 2)^-0.32 w, D_u = 1.087 (th + 6)^-0.65 w <= 0.17 w, th in degrees.

import (
	"fmt"
	"math"
	"sync"
)

// ICWeldSegment is a straight fillet from A to B (mm).
type ICWeldSegment struct{ A, B Vec2 }

// ICWeld is a group of fillets of one leg, cut into elements, with all that depends on the layout alone. The leg does not matter
// here: deformations go with it.
type ICWeld struct {
	LengthMM float64
	Centroid Vec2 // mm

	radius   float64 // polar radius of gyration, mm: the unit of length inside
	elements []icPoint
	coarse   []icPoint // fewer elements, for the first step
	ends     []icPoint
	elastic  sym3 // inverse of the elastic stiffness for two shifts and a turn
}

// icPoint is a point of a weld, from the centroid, in radii; t is the weld's direction, dl the part of the length (mm) it stands for.
type icPoint struct {
	x, y, tx, ty, dl float64
	segment          int
}

const (
	// ICWeldElements is the number of elements of a group that NewICWeld takes when none is asked for. The strength is then within
	// 0.1 % of that of ever finer elements (measured over random layouts, and 0.03 % for the layouts of the Manual's tables).
	ICWeldElements = 120
	// icCoarse is how much longer the elements of the first step are.
	icCoarse = 2.5
	// MaxICWeldElements bounds the elements of a group.
	MaxICWeldElements = 20000
)

// NewICWeld cuts the segments into elements of about one length, so many in all (0: ICWeldElements) and at least one in each.
// Coordinates are within +/- 1e6 mm and no segment is shorter than 1e-6 mm; else an *InputError with the index.
func NewICWeld(segs []ICWeldSegment, elements int) (ICWeld, error) {
	if elements == 0 {
		elements = ICWeldElements
	}
	if len(segs) == 0 {
		return ICWeld{}, &InputError{What: "segments", Got: 0, Want: "at least one weld segment"}
	}
	if elements < 1 || elements > MaxICWeldElements || len(segs) > MaxICWeldElements {
		return ICWeld{}, &InputError{"elements", float64(elements), fmt.Sprintf("1 to %d, and as many segments at most", MaxICWeldElements)}
	}
	g := ICWeld{}
	for i, s := range segs {
		l, err := s.check(i)
		if err != nil {
			return ICWeld{}, err
		}
		g.LengthMM += l
		g.Centroid.X += l * (s.A.X + s.B.X) / 2
		g.Centroid.Y += l * (s.A.Y + s.B.Y) / 2
	}
	g.Centroid.X /= g.LengthMM
	g.Centroid.Y /= g.LengthMM
	g.measure(segs)
	size := g.LengthMM / float64(elements)
	for i, s := range segs {
		g.elements = g.cut(g.elements, i, s, size)
		g.coarse = g.cut(g.coarse, i, s, icCoarse*size)
		g.ends = append(g.ends, g.point(i, s, 0, 0), g.point(i, s, 1, 0))
	}
	g.stiffen()
	return g, nil
}

func (s ICWeldSegment) length() float64 { return math.Hypot(s.B.X-s.A.X, s.B.Y-s.A.Y) }

func (s ICWeldSegment) check(i int) (length float64, err error) {
	for _, x := range [4]float64{s.A.X, s.A.Y, s.B.X, s.B.Y} {
		if err := checkWithin(fmt.Sprintf("segments[%d]", i), x, maxLength); err != nil {
			return 0, err
		}
	}
	l := s.length()
	if !(l >= tiny) {
		return 0, &InputError{fmt.Sprintf("segments[%d] length", i), l, "at least 1e-6 mm"}
	}
	return l, nil
}

// measure finds the polar radius of gyration.
func (g *ICWeld) measure(segs []ICWeldSegment) {
	polar := 0.0
	for _, s := range segs {
		ax, ay, bx, by := s.A.X-g.Centroid.X, s.A.Y-g.Centroid.Y, s.B.X-g.Centroid.X, s.B.Y-g.Centroid.Y
		polar += s.length() / 3 * (ax*ax + ay*ay + bx*bx + by*by + ax*bx + ay*by)
	}
	g.radius = math.Sqrt(polar / g.LengthMM)
}

// point is k of the way along a segment.
func (g *ICWeld) point(segment int, s ICWeldSegment, k, dl float64) icPoint {
	l := s.length()
	return icPoint{
		x: (s.A.X + k*(s.B.X-s.A.X) - g.Centroid.X) / g.radius, y: (s.A.Y + k*(s.B.Y-s.A.Y) - g.Centroid.Y) / g.radius,
		tx: (s.B.X - s.A.X) / l, ty: (s.B.Y - s.A.Y) / l, dl: dl, segment: segment,
	}
}

// cut adds elements of one segment, each of about a size.
func (g *ICWeld) cut(to []icPoint, segment int, s ICWeldSegment, size float64) []icPoint {
	n := max(1, math.Round(s.length()/size))
	for i := 0.0; i < n; i++ {
		to = append(to, g.point(segment, s, (i+0.5)/n, s.length()/n))
	}
	return to
}

// stiffen sums the elastic stiffness of equal springs.
func (g *ICWeld) stiffen() {
	var k sym3
	for i := range g.elements {
		p := &g.elements[i]
		k = k.plusOuter(p.along(1, 0), p.dl).plusOuter(p.along(0, 1), p.dl)
	}
	g.elastic = k.inverse()
}

// along is what a unit force (ux, uy) at the point does to the group: two forces and a moment about the centroid.
func (p *icPoint) along(ux, uy float64) Vec3 { return Vec3{ux, uy, p.x*uy - p.y*ux} }

// curves are the load-deformation curves of one element.
type curves struct {
	deformed *anglePower // 0.209 w/D_m
	ultimate *anglePower // D_u/(1.087 w)
	curve    *fixedPower
}

// icCurves makes the tables when a weld group first asks: a program that never does should not wait for them.
var icCurves = sync.OnceValue(func() *curves {
	return &curves{newAnglePower(2, 0.32), newAnglePower(6, -0.65), newFixedPower(0.3)}
})

// against gives the parts of the motion (ux, uy) across and along the weld, neither negative, and the sign with which the load angle
// grows as the motion turns to the left.
func (p *icPoint) against(ux, uy float64) (across, along, sign float64) {
	across, along = p.tx*uy-p.ty*ux, p.tx*ux+p.ty*uy
	return math.Abs(across), math.Abs(along), math.Copysign(1, across*along)
}

// ultimate is D_u/w, and its logarithmic derivative by th.
func ultimate(across, along float64) (du, slope float64) {
	du, slope = icCurves().ultimate.of(across, along)
	if du *= 1.087; du > 0.17 {
		return 0.17, 0
	}
	return du, slope
}

// secants sums the stiffness of springs that resist what the elements do in a motion.
func (g *ICWeld) secants(d Vec3, scale float64) sym3 {
	var k sym3
	t := icCurves()
	for i := range g.elements {
		p := &g.elements[i]
		ux, uy := d.X-d.Z*p.y, d.Y+d.Z*p.x
		u := math.Sqrt(ux*ux+uy*uy) + 1e-30
		across, along, _ := p.against(ux, uy)
		power, _ := t.deformed.of(across+icSpeck, along)
		def := scale / 0.209 * u * power
		w := p.dl / u * (1 + 0.5*math.Pow(across/u, 1.5)) * math.Pow(def*(1.9-0.9*def), 0.3)
		k = k.plusOuter(p.along(1, 0), w).plusOuter(p.along(0, 1), w)
	}
	return k
}
