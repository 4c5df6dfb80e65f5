package statics

// The search for the instantaneous centre of a bolt group.

import "math"

// boltSearch is one search.
type boltSearch struct {
	g     *ICBolts
	curve *boltTable
	want  Vec3 // direction of the load
	boltState
	rounds int
	of     [boltBlock]boltMotion
}

// boltState is a motion, and what the group does in it. Forces are kept up to a factor: only directions matter until the end.
type boltState struct {
	d       Vec3    // motion, of about unit length
	F       Vec3    // resistance
	secant  sym3    // F = secant d
	tangent [3]Vec3 // rows of dF/dd, at this motion or one near it
	scale   float64 // of F
	far     int     // bolt that moves most
	off2    float64 // square of the sine between resistance and load
}

const (
	boltNearStep = 0.02 // after which the tangent at hand serves once more
	boltCreeps   = 1000
)

// run goes by Newton steps from the elastic motion, and by a secant step where those do not help. Where a bolt stands all but in the
// centre its stiffness has no bound and Newton steps go nowhere; then secant steps alone creep to the end.
func (s *boltSearch) run() {
	s.move(s.g.elastic.times(s.want).Unit(), true)
	for !s.balanced() && s.rounds < icMostRounds {
		if !s.newton() {
			s.secantStep()
		}
	}
	for end := s.rounds + boltCreeps; !s.balanced() && s.rounds < end; {
		s.secantStep()
	}
}

func (s *boltSearch) balanced() bool { return s.off2 <= icBalance*icBalance }

// secantStep takes the motion in which springs as stiff as the bolts are now carry the load. It need not come nearer at once.
func (s *boltSearch) secantStep() { s.move(s.secant.inverse().times(s.want).Unit(), true) }

// move takes a motion, sums the resistance and, when asked, its tangent, and says how far it is from the load's direction.
func (s *boltSearch) move(d Vec3, tangent bool) {
	s.d = d
	s.rounds++
	q := 1 / s.furthest()
	if tangent {
		s.sumTangent(q)
	} else {
		s.sum(q)
	}
	F, n := s.F, s.want
	x, y, z := F.Y*n.Z-F.Z*n.Y, F.Z*n.X-F.X*n.Z, F.X*n.Y-F.Y*n.X
	s.off2 = (x*x + y*y + z*z) / (F.X*F.X + F.Y*F.Y + F.Z*F.Z)
}

// furthest finds the bolt that moves most, one of the outermost, and gives the square of its motion.
func (s *boltSearch) furthest() float64 {
	most := 0.0
	dx, dy, dz := s.d.X, s.d.Y, s.d.Z
	for _, i := range s.g.outer {
		p := &s.g.at[i]
		ux, uy := dx-dz*p.y, dy+dz*p.x
		if q := ux*ux + uy*uy; q > most {
			most, s.far = q, i
		}
	}
	return most
}

// sum adds up the resistance: that of springs as stiff as the bolts are in this motion. q is 1 over the square of the furthest bolt's.
func (s *boltSearch) sum(q float64) {
	var a, ax, ay, ap float64
	dx, dy, dz := s.d.X, s.d.Y, s.d.Z
	curve := s.curve
	for i := range s.g.at {
		p := &s.g.at[i]
		ux, uy := dx-dz*p.y, dy+dz*p.x
		v := (ux*ux+uy*uy)*q + boltSpeck
		k := math.Float64bits(v) >> 46
		c := &curve[k%boltCells]
		h := v - math.Float64frombits(k<<46)
		w := c.y + h*(c.s+h*c.c)
		a += w
		ax += w * p.x
		ay += w * p.y
		ap += w * p.r2
	}
	s.springs(a, ax, ay, ap, q)
}

func (s *boltSearch) springs(a, ax, ay, ap, q float64) {
	s.secant, s.scale = sym3{a, a, ap, 0, ax, -ay}, q
	d := s.d
	s.F = Vec3{a*d.X - ay*d.Z, a*d.Y + ax*d.Z, ax*d.Y - ay*d.X + ap*d.Z}
}

// boltBlock is how many bolts go through each stage of the sum together: a loop with few sums keeps them in registers.
const boltBlock = 32

// boltMotion is the motion of a bolt, and the growth of R/(R_ult p) with p^2.
type boltMotion struct{ ux, uy, grow float64 }

// sumTangent adds up the resistance and its tangent; the scale falls with the furthest bolt's motion.
func (s *boltSearch) sumTangent(q float64) {
	var a, ax, ay, ap float64
	var t sym3
	d, curve := s.d, s.curve
	for rest := s.g.at; len(rest) > 0; {
		n := min(len(rest), boltBlock)
		block, of := rest[:n], s.of[:n]
		for i := range block {
			p, o := &block[i], &of[i]
			ux, uy := d.X-d.Z*p.y, d.Y+d.Z*p.x
			v := (ux*ux+uy*uy)*q + boltSpeck
			k := math.Float64bits(v) >> 46
			c := &curve[k%boltCells]
			h := v - math.Float64frombits(k<<46)
			w := c.y + h*(c.s+h*c.c)
			o.ux, o.uy, o.grow = ux, uy, c.s+h*(2*c.c)
			a += w
			ax += w * p.x
			ay += w * p.y
			ap += w * p.r2
		}
		t = stiffen(block, of, t)
		rest = rest[n:]
	}
	s.springs(a, ax, ay, ap, q)
	p := &s.g.at[s.far]
	ux, uy := d.X-d.Z*p.y, d.Y+d.Z*p.x
	slope := Vec3{ux, uy, p.x*uy - p.y*ux}.Scale(-q)
	t = s.secant.plus(t.scale(2 * q))
	s.tangent = [3]Vec3{{t.xx, t.xy, t.zx}, {t.xy, t.yy, t.yz}, {t.zx, t.yz, t.zz}}
	for i, r := range s.tangent {
		s.tangent[i] = r.Add(slope.Scale(r.Dot(d)))
	}
}

// stiffen adds to t what bolts grow or lose along their motion: grow v v^T, v what a bolt's motion does to the group.
func stiffen(block []boltPoint, of []boltMotion, t sym3) sym3 {
	of = of[:len(block)]
	xx, yy, zz, xy, yz, zx := t.xx, t.yy, t.zz, t.xy, t.yz, t.zx
	for i := range block {
		p, o := &block[i], &of[i]
		m := p.x*o.uy - p.y*o.ux
		bx, by, bm := o.grow*o.ux, o.grow*o.uy, o.grow*m
		xx += bx * o.ux
		xy += bx * o.uy
		yy += by * o.uy
		zx += bx * m
		yz += by * m
		zz += bm * m
	}
	return sym3{xx, yy, zz, xy, yz, zx}
}

// newton takes the step to where the tangent is parallel to the load, halved until it helps, and says whether it got anywhere. After a
// short step the tangent at hand serves for a second one.
func (s *boltSearch) newton() bool {
	from, off2 := s.d, s.off2
	step, ok := s.step()
	for range icHalvings {
		if !ok {
			break
		}
		near := step.Dot(step) < boltNearStep*boltNearStep
		s.move(from.Add(step), !near)
		if near && !s.balanced() {
			again, _ := s.step()
			s.move(s.d.Add(again), false)
		}
		if s.balanced() {
			return true
		}
		if near {
			s.move(s.d, true)
		}
		if s.off2 < off2 {
			return true
		}
		step = step.Scale(0.5)
	}
	s.move(from.Unit(), true)
	return false
}

// step solves for the step. With M = J + (F - J d) d^T/d^2, M (d + step) = J step + F for a step square to d, so that M z = load
// gives d + step up to a factor.
func (s *boltSearch) step() (Vec3, bool) {
	J, d := &s.tangent, s.d
	d2 := d.Dot(d)
	k := 1 / d2
	m0 := J[0].Add(d.Scale((s.F.X - J[0].Dot(d)) * k))
	m1 := J[1].Add(d.Scale((s.F.Y - J[1].Dot(d)) * k))
	m2 := J[2].Add(d.Scale((s.F.Z - J[2].Dot(d)) * k))
	c0, c1, c2 := m1.Cross(m2), m2.Cross(m0), m0.Cross(m1)
	n := s.want
	z := Vec3{n.X*c0.X + n.Y*c1.X + n.Z*c2.X, n.X*c0.Y + n.Y*c1.Y + n.Z*c2.Y, n.X*c0.Z + n.Y*c1.Z + n.Z*c2.Z}
	along := z.Dot(d)
	step := z.Scale(d2 / along).Sub(d)
	if !step.finite() || step == (Vec3{}) {
		return Vec3{}, false
	}
	if n2 := step.Dot(step); n2 > d2 {
		step = step.Scale(math.Sqrt(d2 / n2))
	}
	return step, true
}
