package statics

// Bolt groups in a plane by the instantaneous centre of rotation: any pattern of bolts of one size, any load in their plane.
//
// Source: AISC Steel Construction Manual 16th ed., Part 7: R_i = R_ult (1 - exp(-10 D_i))^0.55, D_i in proportion to the distance from the
// centre, 0.34 in at the furthest bolt. Only the ratio to that deformation enters, so that any unit of length and force will do.
//
// As with welds the unknown is the motion d of the group, two shifts and a turn up to a factor; the resistance F(d) must be parallel to
// the load. Each bolt's force grows with its motion and never against it, so that every load has a motion.

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sync"
)

// MaxICBolts bounds the bolts of a group.
const MaxICBolts = 10000

// ICBolts is a group of bolts of one size, with all that depends on the pattern alone.
type ICBolts struct {
	Centroid Vec2 // mm

	radius  float64 // polar radius of gyration, mm: the unit of length inside; 0 when the bolts stand in one point
	at      []boltPoint
	outer   []int // corners of the hull of the bolts, one of which is furthest from any centre
	elastic sym3  // inverse of the stiffness of equal springs, for two shifts and a turn
}

// boltPoint is a bolt from the centroid, in radii; r2 the square of its distance.
type boltPoint struct{ x, y, r2 float64 }

// ICBoltResult is the ultimate state of a group.
type ICBoltResult struct {
	// Factor times the load is the strength of a group whose bolts have R_ult = 1 N; for a load of 1 N it is the Manual's C.
	Factor float64
	// Centre is the instantaneous centre (mm); infinite when the group shifts without turning.
	Centre Vec2
	// Bolt is the furthest from the centre, which reaches 0.34 in.
	Bolt int
	// Residual is the part of the resistance that is out of balance, at most 1e-6; Rounds is how often the resistance was summed.
	Residual float64
	Rounds   int
}

// NewICBolts readies a group. Positions are within +/- 1e6 mm, at most MaxICBolts of them; else an *InputError with the index. Bolts
// may stand on one point, where they count as so many.
func NewICBolts(pos []Vec2) (ICBolts, error) {
	if len(pos) == 0 || len(pos) > MaxICBolts {
		return ICBolts{}, &InputError{"bolts", float64(len(pos)), fmt.Sprintf("1 to %d positions", MaxICBolts)}
	}
	for i, p := range pos {
		for _, x := range [2]float64{p.X, p.Y} {
			if err := checkWithin(fmt.Sprintf("bolts[%d]", i), x, maxLength); err != nil {
				return ICBolts{}, err
			}
		}
	}
	g := ICBolts{Centroid: Centroid(pos), radius: math.Sqrt(PolarInertia(pos) / float64(len(pos)))}
	if g.radius < tiny {
		g.radius = 0
	}
	g.at = make([]boltPoint, len(pos))
	if g.radius == 0 {
		return g, nil
	}
	var k sym3
	for i, p := range pos {
		x, y := (p.X-g.Centroid.X)/g.radius, (p.Y-g.Centroid.Y)/g.radius
		g.at[i] = boltPoint{x, y, x*x + y*y}
		k = k.plusOuter(Vec3{1, 0, -y}, 1).plusOuter(Vec3{0, 1, x}, 1)
	}
	g.elastic = k.inverse()
	g.outer = hull(g.at)
	return g, nil
}

// hull gives the corners of the least convex polygon around the points, by two chains from left to right.
func hull(at []boltPoint) []int {
	order := make([]int, len(at))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, k int) int {
		return cmp.Or(cmp.Compare(at[i].x, at[k].x), cmp.Compare(at[i].y, at[k].y), cmp.Compare(i, k))
	})
	corners := chain(at, order, nil)
	slices.Reverse(order)
	return chain(at, order, corners)
}

// chain adds the corners met along points in their order, keeping to one side.
func chain(at []boltPoint, order, corners []int) []int {
	from := len(corners)
	for _, i := range order {
		for len(corners) > from+1 && !left(at[corners[len(corners)-2]], at[corners[len(corners)-1]], at[i]) {
			corners = corners[:len(corners)-1]
		}
		corners = append(corners, i)
	}
	return corners[:len(corners)-1]
}

func left(a, b, c boltPoint) bool {
	return float64((b.x-a.x)*(c.y-a.y)) > float64((b.y-a.y)*(c.x-a.x))
}

// Solve finds the state in which the resistance is parallel to a load of force F (N) with moment (N*mm, turning x towards y) about the
// centroid. Nothing is allocated. A load of nought or beyond 1e12 N and 1e18 N*mm is an *InputError; a moment on bolts that all stand in one point a *NoPathError; a
// search that does not end a *NotFoundError.
func (g *ICBolts) Solve(F Vec2, moment float64) (ICBoltResult, error) {
	if len(g.at) == 0 {
		return ICBoltResult{}, &InputError{What: "bolts", Got: 0, Want: "a group from NewICBolts"}
	}
	if err := checkLoads(F.X, F.Y, moment); err != nil {
		return ICBoltResult{}, err
	}
	if g.radius == 0 {
		return g.solvePoint(F, moment)
	}
	load := Vec3{F.X, F.Y, moment / g.radius}
	size := load.Norm()
	if !(size > 1e-12) {
		return ICBoltResult{}, &InputError{"load", size, "a force or moment"}
	}
	s := boltSearch{g: g, curve: boltCurve(), want: load.Scale(1 / size)}
	s.run()
	off := math.Sqrt(s.off2)
	if !(off <= icAccepted) {
		return ICBoltResult{}, &NotFoundError{off, s.rounds}
	}
	return ICBoltResult{
		Factor: s.F.Dot(s.want) * math.Sqrt(s.scale) / size, Centre: g.centre(s.d), Bolt: s.far, Residual: off, Rounds: s.rounds,
	}, nil
}

// solvePoint is for bolts that all stand in one point.
func (g *ICBolts) solvePoint(F Vec2, moment float64) (ICBoltResult, error) {
	size := F.Norm()
	if math.Abs(moment) > tiny*size {
		return ICBoltResult{}, &NoPathError{"moment on the bolts", "they stand in one point and have no arm"}
	}
	if !(size > 1e-12) {
		return ICBoltResult{}, &InputError{"load", size, "a force"}
	}
	return ICBoltResult{Factor: float64(len(g.at)) * boltUltimate / size, Centre: Vec2{math.Inf(1), math.Inf(1)}}, nil
}

func (g *ICBolts) centre(d Vec3) Vec2 {
	if d.Z == 0 {
		return Vec2{math.Inf(1), math.Inf(1)}
	}
	return Vec2{g.Centroid.X - d.Y/d.Z*g.radius, g.Centroid.Y + d.X/d.Z*g.radius}
}

const (
	boltDeformation = 3.4 // 10 D at 0.34 in
	boltOctaves     = 127
	boltParts       = 64
	// boltSpeck is the least square of a motion over the furthest bolt's; a bolt that moves less resists in proportion, with less than a
	// millionth of its strength.
	boltSpeck = 1.0 / (1 << 80)
	boltCells = 128 * boltParts
)

// boltUltimate is R/R_ult of the furthest bolt.
var boltUltimate = math.Pow(1-math.Exp(-boltDeformation), 0.55)

// boltTable is R/(R_ult p), p the motion over that of the furthest bolt, by parabolas over p^2 that are within 3e-8 of the value.
type boltTable [boltCells]struct{ y, s, c float64 }

// boltCurve makes the table when a group first asks. A parabola goes through three points of its cell, those of Chebyshev.
var boltCurve = sync.OnceValue(func() *boltTable {
	t := &boltTable{}
	for k := range t {
		place := 1023*boltParts - boltCells + boltParts + k
		q := math.Float64frombits(uint64(place) << 46)
		h := (math.Float64frombits(uint64(place+1)<<46) - q) / 2
		x := h * math.Sqrt(3) / 2
		low, mid, high := boltSecant(q+h-x), boltSecant(q+h), boltSecant(q+h+x)
		c := (high - 2*mid + low) / (2 * x * x)
		slope := (high - low) / (2 * x)
		t[place%boltCells] = struct{ y, s, c float64 }{mid - h*slope + h*h*c, slope - 2*h*c, c}
	}
	return t
})

// boltSecant is R/(R_ult p) by q = p^2.
func boltSecant(q float64) float64 {
	p := math.Sqrt(q)
	return math.Pow(-math.Expm1(-boltDeformation*p), 0.55) / p
}
