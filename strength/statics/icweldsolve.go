package statics

// The search for the instantaneous centre of a weld group. The unknown is the group's motion d, two shifts and a turn up to a
// factor, so that a pure shift (no eccentricity) is a motion like any other; the resistance F(d) must be parallel to the load.
// F(d) is continuous and never against d, so that by the degree of a map of the sphere every load has a motion.
//
// Along a straight weld distance from the centre and load angle grow together towards the ends, so that the least D_u/r is at an end.

import (
	"fmt"
	"math"
)

// ICWeldResult is the ultimate state of a group.
type ICWeldResult struct {
	// Factor times the load is the strength of a group whose fillets resist 1 N/mm along their axis; Factor times 0.60 F_EXX a_w
	// times the load is its nominal strength.
	Factor float64
	// Centre is the instantaneous centre (mm); infinite when the group shifts without turning.
	Centre Vec2
	// Segment has the end that reaches its ultimate deformation first.
	Segment int
	// Residual is the part of the resistance that is out of balance, at most 1e-6; Rounds is how often the resistance was summed.
	Residual float64
	Rounds   int
}

// NotFoundError says that the search for an instantaneous centre did not end.
type NotFoundError struct {
	Residual float64 // part of the resistance that is out of balance
	Rounds   int
}

// Error gives what is out of balance.
func (e *NotFoundError) Error() string {
	return fmt.Sprintf("instantaneous centre: %g of the resistance is out of balance after %d rounds, want at most 1e-6", e.Residual, e.Rounds)
}

const (
	icBalance    = 5e-7   // aim of the search
	icAccepted   = 1e-6   // what a result must meet
	icSpeck      = 1e-150 // keeps an element in the centre itself, which resists nothing, from dividing by nought
	icHalvings   = 6
	icLastStep   = 1e-3 // after which the tangent is not wanted again, as a rule
	icMostRounds = 50   // from one start
	icCreeps     = 120
	icStarts     = 1000
)

// Solve finds the state in which the resistance is parallel to a load of force F (N) with moment (N*mm, turning x towards y) about the
// centroid, one end at its ultimate deformation as the Manual has it. At load angles of 5 to 30 degrees D_u lies far beyond D_m, so that a
// nearly concentric group has softened by then, and may have more than one such state, some hundredths apart; one of them is given.
// Nothing is allocated. A load of nought or beyond 1e12 N and 1e18 N*mm is an *InputError; a search that does not end a
// *NotFoundError.
func (g *ICWeld) Solve(F Vec2, moment float64) (ICWeldResult, error) {
	if len(g.elements) == 0 {
		return ICWeldResult{}, &InputError{What: "segments", Got: 0, Want: "a group from NewICWeld"}
	}
	if err := checkLoads(F.X, F.Y, moment); err != nil {
		return ICWeldResult{}, err
	}
	load := Vec3{F.X, F.Y, moment / g.radius}
	size := load.Norm()
	if !(size > 1e-12) {
		return ICWeldResult{}, &InputError{"load", size, "a force or moment"}
	}
	s := icSearch{g: g, points: g.elements, want: load.Scale(1 / size)}
	s.run()
	if !(s.off <= icAccepted) {
		return ICWeldResult{}, &NotFoundError{s.off, s.rounds}
	}
	return ICWeldResult{
		Factor: s.F.Dot(s.want) / size, Centre: g.centre(s.d), Segment: s.g.ends[s.end].segment, Residual: s.off, Rounds: s.rounds,
	}, nil
}

func (g *ICWeld) centre(d Vec3) Vec2 {
	if d.Z == 0 {
		return Vec2{math.Inf(1), math.Inf(1)}
	}
	return Vec2{g.Centroid.X - d.Y/d.Z*g.radius, g.Centroid.Y + d.X/d.Z*g.radius}
}

// icSearch is one search.
type icSearch struct {
	g      *ICWeld
	want   Vec3      // direction of the load
	points []icPoint // elements that stand for the welds
	icState
	rounds int
	of     [icBlock]icElement
}

// icState is a motion, and what the group does in it.
type icState struct {
	d       Vec3    // motion, of unit length
	F       Vec3    // resistance
	tangent [3]Vec3 // rows of dF/dd; tangent d = 0, since F does not change with the length of d
	scale   float64 // deformation over motion, in legs
	slope   Vec3    // its logarithmic derivative
	end     int     // that breaks first
	off     float64 // distance between the directions of resistance and load
}

// run starts from the elastic motion. When that search goes nowhere it creeps by secant steps alone, which find a centre that lies
// all but in an element, where the tangent has no bound; then it starts from motions that turn more, less, or the other way, and at
// last from everywhere: welds soften beyond D_m, so that the resistance can fold over.
func (s *icSearch) run() {
	elastic := s.g.elastic.times(s.want).Unit()
	s.from(s.roughly(elastic))
	if s.off > icAccepted {
		s.from(s.creep(elastic))
	}
	for turn := 0.01; s.off > icAccepted && turn < 2; turn *= 1.5 {
		s.from(elastic.Add(Vec3{Z: turn}))
		if s.off > icAccepted {
			s.from(elastic.Add(Vec3{Z: -turn}))
		}
	}
	for k := 0; s.off > icAccepted && k < icStarts; k++ {
		if d := spiral(k); d.Dot(s.want) > 0 {
			s.from(d)
		}
	}
}

// spiral gives directions spread evenly over the sphere, a golden angle apart.
func spiral(k int) Vec3 {
	z := 1 - (2*float64(k)+1)/icStarts
	s, c := math.Sincos(float64(k) * math.Pi * (3 - math.Sqrt(5)))
	r := math.Sqrt(1 - z*z)
	return Vec3{r * c, r * s, z}
}

// roughly takes the first step with few elements in place of all.
func (s *icSearch) roughly(d Vec3) Vec3 {
	s.points = s.g.coarse
	s.move(d, true)
	s.points = s.g.elements
	if step, ok := s.step(); ok {
		return s.d.Add(step)
	}
	return d
}

// creep takes secant steps alone.
func (s *icSearch) creep(d Vec3) Vec3 {
	s.move(d, false)
	for i := 0; s.off > icBalance && i < icCreeps; i++ {
		s.secant()
	}
	return s.d
}

// from goes by Newton steps, and by a secant step where those do not help.
func (s *icSearch) from(d Vec3) {
	s.move(d, true)
	for end := s.rounds + icMostRounds; s.off > icBalance && s.rounds < end; {
		if !s.newton() {
			s.secant()
		}
	}
}

// move takes a motion, sums the resistance and, when asked, its tangent, and says how far it is from the load's direction.
func (s *icSearch) move(d Vec3, tangent bool) {
	s.d = d.Unit()
	s.rounds++
	s.criticalEnd()
	s.sum(tangent)
	s.off = s.F.Unit().Sub(s.want).Norm()
}

// criticalEnd sets the scale: the end that is first to reach its ultimate deformation does. The one that was it last is tried first; an end that moves
// less, and less across its weld, cannot come before it.
func (s *icSearch) criticalEnd() {
	s.scale, s.slope = math.Inf(1), Vec3{}
	first := s.end
	most, across, along := s.tryEnd(first)
	for i := range s.g.ends {
		p := &s.g.ends[i]
		ux, uy := s.d.X-s.d.Z*p.y, s.d.Y+s.d.Z*p.x
		a, b, _ := p.against(ux, uy)
		if i != first && (ux*ux+uy*uy > most || a*along > b*across) {
			s.tryEnd(i)
		}
	}
}

// tryEnd takes an end as the first to break if it comes before the one at hand. It gives the square of its motion, and its parts across and along
// the weld.
func (s *icSearch) tryEnd(i int) (u2, across, along float64) {
	p := &s.g.ends[i]
	ux, uy := s.d.X-s.d.Z*p.y, s.d.Y+s.d.Z*p.x
	u2 = ux*ux + uy*uy
	across, along, sign := p.against(ux, uy)
	u := math.Sqrt(u2)
	if u < icSpeck {
		return 0, 0, 1
	}
	du, slope := ultimate(across, along)
	if du < u*s.scale {
		per := 1 / u
		s.scale, s.end = du*per, i
		e, f := p.along(ux*per, uy*per), p.along(-uy*per, ux*per)
		s.slope = f.Scale(sign * slope * per).Sub(e.Scale(per))
	}
	return u2, across, along
}

// icBlock is how many elements go through each stage of the sum together: a loop over short independent chains keeps the machine's
// pipeline full.
const icBlock = 32

// icElement is what an element does in the motion at hand: the motion, its size and its parts across and along the weld, none negative,
// the deformation over D_m, the logarithmic derivative of D_m by the load angle; then the root of its sine, the growth of the strength with it,
// and resistance over motion.
type icElement struct{ ux, uy, per, across, along, sign, def, slope, rootSin, k, w float64 }

// sum adds up the resistance and, when asked, its tangent. What the scale adds to the tangent goes with the growth of R by deformation,
// which is that by the length of d.
func (s *icSearch) sum(tangent bool) {
	s.F = Vec3{}
	if tangent {
		s.tangent = [3]Vec3{}
	}
	for rest := s.points; len(rest) > 0; {
		n := min(len(rest), icBlock)
		s.resist(rest[:n])
		if tangent {
			s.stiffen(rest[:n])
		}
		rest = rest[n:]
	}
	if tangent {
		for i, row := range s.tangent {
			s.tangent[i] = row.Add(s.slope.Scale(row.Dot(s.d)))
		}
	}
}

// resist adds up R e.
func (s *icSearch) resist(points []icPoint) {
	var curve [icBlock]float64
	d, scale, t := s.d, s.scale/0.209, icCurves()
	for i := range points {
		p, o := &points[i], &s.of[i%icBlock]
		ux, uy := d.X-d.Z*p.y, d.Y+d.Z*p.x
		o.across, o.along, o.sign = p.against(ux, uy)
		power, slope := t.deformed.of(o.across+icSpeck, o.along)
		u := math.Sqrt(ux*ux+uy*uy) + icSpeck
		def := scale * u * power
		o.ux, o.uy, o.per, o.def, o.slope = ux, uy, 1/u, def, slope
		curve[i%icBlock] = def * (1.9 - 0.9*def)
	}
	t.curve.of(curve[:len(points)])
	F := s.F
	for i := range points {
		p, o := &points[i], &s.of[i%icBlock]
		per := o.per
		sin := o.across * per
		rootSin := math.Sqrt(sin)
		k := 1 + 0.5*sin*rootSin
		w := k * curve[i%icBlock] * (p.dl * per)
		fx, fy := w*o.ux, w*o.uy
		F.X += fx
		F.Y += fy
		F.Z += p.x*fy - p.y*fx
		o.rootSin, o.k, o.w = rootSin, k, w
	}
	s.F = F
}

// stiffen adds up the tangent. That by an element's own motion is b e e^T + c e f^T + w f f^T, e along the motion and f square to it: growth
// of R along the motion and with its turning, and the turning of R itself.
func (s *icSearch) stiffen(points []icPoint) {
	r0, r1, r2 := s.tangent[0], s.tangent[1], s.tangent[2]
	for i := range points {
		p, o := &points[i], &s.of[i%icBlock]
		per, w := o.per, o.w
		ex, ey := o.ux*per, o.uy*per
		less := 1.9 - 0.9*o.def
		both := 1 / (less * o.k)
		grow := 0.6 - 0.57*o.k*both
		b, c := w*grow, w*o.sign*(0.75*o.rootSin*o.along*per*less*both+grow*o.slope)
		xx, xy := ex*ex, ex*ey
		yy := 1 - xx
		t00, t01 := b*xx+w*yy-c*xy, (b-w)*xy+c*xx
		t10, t11 := t01-c, b*yy+w*xx+c*xy
		t20, t21 := p.x*t10-p.y*t00, p.x*t11-p.y*t01
		r0.X += t00
		r0.Y += t01
		r0.Z += p.x*t01 - p.y*t00
		r1.X += t10
		r1.Y += t11
		r1.Z += p.x*t11 - p.y*t10
		r2.X += t20
		r2.Y += t21
		r2.Z += p.x*t21 - p.y*t20
	}
	s.tangent = [3]Vec3{r0, r1, r2}
}

// newton takes the step to where the tangent is parallel to the load, halved until it helps, and says whether it got anywhere.
func (s *icSearch) newton() bool {
	step, ok := s.step()
	was := s.icState
	for range icHalvings {
		if !ok {
			break
		}
		last := step.Norm() < icLastStep
		s.move(was.d.Add(step), !last)
		if s.off <= icBalance {
			return true
		}
		if last {
			s.move(s.d, true)
		}
		if s.off < was.off {
			return true
		}
		step = step.Scale(0.5)
	}
	s.icState = was
	return false
}

// step solves for the step. With tangent d = 0 and M = tangent + F d^T, M (d + step) = tangent step + F for a step square to d, so that
// M z = load gives d + step up to a factor.
func (s *icSearch) step() (Vec3, bool) {
	m0, m1, m2 := s.tangent[0].Add(s.d.Scale(s.F.X)), s.tangent[1].Add(s.d.Scale(s.F.Y)), s.tangent[2].Add(s.d.Scale(s.F.Z))
	z := m1.Cross(m2).Scale(s.want.X).Add(m2.Cross(m0).Scale(s.want.Y)).Add(m0.Cross(m1).Scale(s.want.Z))
	along := z.Dot(s.d)
	if along == 0 || !z.finite() {
		return Vec3{}, false
	}
	step := z.Scale(1 / along).Sub(s.d)
	if n := step.Norm(); n > 1 {
		step = step.Scale(1 / n)
	}
	return step, step != Vec3{}
}

// secant takes the motion in which springs as stiff as the elements are now carry the load. It need not come nearer at
// once.
func (s *icSearch) secant() {
	s.move(s.g.secants(s.d, s.scale).inverse().times(s.want), true)
}
