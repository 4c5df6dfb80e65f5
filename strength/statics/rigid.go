package statics

// A rigid body on supports: what holds it, what does not, and what is held more than once.

import (
	"fmt"
	"math"
	"sync/atomic"
)

// Hold is one way in which a support can act on a rigid body: for each unit of its reaction the body feels Force, and Moment about the origin.
// A push at r along the unit vector u is {u, r x u}; a couple about u is {0, u}.
type Hold struct {
	Force, Moment Vec3
	OneWay        bool    // the reaction is never negative: the support pushes and cannot pull
	Stiffness     float64 // reaction for each unit of motion against it
	Gap           float64 // motion before it acts; of a hold that acts both ways, in either way
}

// Motion is a small motion of a rigid body: Shift (mm) of its origin and Turn (rad) about it.
type Motion struct{ Shift, Turn Vec3 }

// Along is the motion that a hold meets: in the way of its reaction, so that a support parts from the body where it is positive.
func (m Motion) Along(h Hold) float64 { return m.Shift.Dot(h.Force) + m.Turn.Dot(h.Moment) }

// RigidBody is a rigid body with its holds. Its origin ought to lie amid them.
type RigidBody struct {
	holds  []Hold
	length float64   // mm: moments count in forces at this arm
	cols   []vec6    // the holds' columns at length 1
	size   []float64 // and what they were divided by
	basis  []vec6    // orthonormal: the wrenches that the holds can make, two-way
	free   []vec6    // orthonormal: the motions that no hold meets
	grip   float64   // see Grip
	last   atomic.Pointer[factored]
}

// vec6 is a wrench (force, moment over the length) or a motion (shift, turn times the length).
type vec6 [6]float64

func (a vec6) dot(b vec6) (s float64) {
	for i := range a {
		s += float64(a[i] * b[i])
	}
	return s
}

func (a vec6) norm() float64 { return math.Sqrt(a.dot(a)) }

func (a vec6) plus(k float64, b vec6) vec6 {
	for i := range a {
		a[i] += float64(k * b[i])
	}
	return a
}

func (a vec6) scale(k float64) vec6 { return vec6{}.plus(k, a) }

const (
	maxHolds     = 1000
	maxStiffness = 1e12 // N/mm, or N*mm/rad over a length squared
	rankTol      = 1e-5 // what is left of a unit column when the others are taken away, below which it is none
)

// NewRigidBody takes the holds and the size of the layout, an arm (mm) at which moments and forces count alike.
func NewRigidBody(holds []Hold, lengthMM float64) (*RigidBody, error) {
	if err := checkPositive("length", lengthMM, maxLength); err != nil {
		return nil, err
	}
	if len(holds) == 0 || len(holds) > maxHolds {
		return nil, &InputError{What: "holds", Got: float64(len(holds)), Want: fmt.Sprintf("1 to %d", maxHolds)}
	}
	b := &RigidBody{holds: holds, length: lengthMM, cols: make([]vec6, len(holds)), size: make([]float64, len(holds))}
	for i, h := range holds {
		c := b.scaled(h.Force, h.Moment)
		b.size[i] = c.norm()
		if !(b.size[i] > 1e-9) || b.size[i] > 1e9 {
			return nil, &InputError{What: fmt.Sprintf("holds[%d]", i), Got: b.size[i], Want: "a force or a moment of a sensible size"}
		}
		if err := checkPositive(fmt.Sprintf("holds[%d].stiffness", i), h.Stiffness, maxStiffness*math.Max(1, lengthMM*lengthMM)); err != nil {
			return nil, err
		}
		if !(h.Gap >= 0) || h.Gap > maxLength {
			return nil, &InputError{What: fmt.Sprintf("holds[%d].gap", i), Got: h.Gap, Want: "0 to 1e6"}
		}
		b.cols[i] = c.scale(1 / b.size[i])
	}
	b.grip = math.Inf(1)
	b.split()
	return b, nil
}

func (b *RigidBody) scaled(f, m Vec3) vec6 {
	return vec6{f.X, f.Y, f.Z, m.X / b.length, m.Y / b.length, m.Z / b.length}
}

func (b *RigidBody) motion(d vec6) Motion {
	return Motion{Vec3{d[0], d[1], d[2]}, Vec3{d[3] / b.length, d[4] / b.length, d[5] / b.length}}
}

// split finds the wrenches that the holds can make and the motions that none of them meets, by rotations that make the six rows of the holds'
// matrix square to each other (one-sided Jacobi).
func (b *RigidBody) split() {
	var axes [6]vec6
	rows := rows(6, len(b.cols))
	for i := range rows {
		axes[i][i] = 1
		for j, c := range b.cols {
			rows[i][j] = c[i]
		}
	}
	for range 60 {
		turned := false
		for p := range 6 {
			for q := p + 1; q < 6; q++ {
				turned = turnSquare(rows[p], rows[q], &axes[p], &axes[q]) || turned
			}
		}
		if !turned {
			break
		}
	}
	for i, r := range rows {
		if n := norm(r); n > rankTol {
			b.basis = append(b.basis, axes[i])
			b.grip = math.Min(b.grip, n)
		} else {
			b.free = append(b.free, axes[i])
		}
	}
}

// turnSquare turns two rows, and their axes with them, until they are square to each other; false when they were.
func turnSquare(p, q []float64, axisP, axisQ *vec6) bool {
	pp, qq, pq := dot(p, p), dot(q, q), dot(p, q)
	if math.Abs(pq) <= 1e-15*math.Sqrt(pp*qq) || pp < 1e-300 || qq < 1e-300 {
		return false
	}
	zeta := (qq - pp) / (2 * pq)
	t := 1 / (math.Abs(zeta) + math.Sqrt(1+zeta*zeta))
	if zeta < 0 {
		t = -t
	}
	c := 1 / math.Sqrt(1+t*t)
	s := c * t
	for i := range p {
		p[i], q[i] = float64(c*p[i])-float64(s*q[i]), float64(s*p[i])+float64(c*q[i])
	}
	for i := range axisP {
		axisP[i], axisQ[i] = float64(c*axisP[i])-float64(s*axisQ[i]), float64(s*axisP[i])+float64(c*axisQ[i])
	}
	return true
}

func dot(a, b []float64) (s float64) {
	for i := range a {
		s += float64(a[i] * b[i])
	}
	return s
}

func norm(a []float64) float64 { return math.Sqrt(dot(a, a)) }

// Rank is how many of the six motions the holds resist, one-way holds counted as if they acted both ways.
func (b *RigidBody) Rank() int { return len(b.basis) }

// Grip is how firmly the holds meet the motion that they meet worst, of those that they meet: about 1 for a layout as wide as the length in every way, and
// about the width over the length for a narrow one.
func (b *RigidBody) Grip() float64 { return b.grip }

// Free gives the motions that no hold meets, as few directions at a time as can be: turns about one axis first, pure shifts last.
func (b *RigidBody) Free() []Motion {
	var out []Motion
	for _, d := range reduced(b.free, [6]int{3, 4, 5, 0, 1, 2}) {
		out = append(out, b.motion(d))
	}
	return out
}

// reduced brings rows to reduced echelon form with the columns taken in the order given.
func reduced(rows []vec6, order [6]int) []vec6 {
	rows = append([]vec6{}, rows...)
	done := 0
	for _, c := range order {
		best := done
		for i := done; i < len(rows); i++ {
			if math.Abs(rows[i][c]) > math.Abs(rows[best][c]) {
				best = i
			}
		}
		if done == len(rows) || math.Abs(rows[best][c]) < 1e-6 {
			continue
		}
		rows[done], rows[best] = rows[best], rows[done]
		rows[done] = rows[done].scale(1 / rows[done][c])
		for i := range rows {
			if i != done {
				rows[i] = rows[i].plus(-rows[i][c], rows[done])
			}
		}
		done++
	}
	for i := range rows {
		for k := range rows[i] {
			if math.Abs(rows[i][k]) < 1e-6 {
				rows[i][k] = 0
			}
		}
	}
	return rows
}

// Surplus is a hold more than equilibrium needs, and the reactions of all holds that balance each other when it pushes with 1.
type Surplus struct {
	Hold     int
	Balanced []float64
}

// Surplus lists the holds that come after enough others, in their order, to do what they do. There are as many as the body is statically
// indeterminate; a body with none has one set of reactions, whatever the stiffness.
func (b *RigidBody) Surplus() []Surplus {
	var needed []int
	var ortho []vec6     // of the needed columns
	var coef [][]float64 // ortho[i] = sum of coef[i][k] * cols[needed[k]]
	var out []Surplus
	for j, c := range b.cols {
		rest, share := c, make([]float64, len(needed)+1)
		for range 2 { // twice is enough
			for i, o := range ortho {
				k := rest.dot(o)
				rest = rest.plus(-k, o)
				for m, v := range coef[i] {
					share[m] -= k * v
				}
			}
		}
		share[len(needed)] = 1
		if n := rest.norm(); n > rankTol && len(ortho) < 6 {
			for m := range share {
				share[m] /= n
			}
			needed, ortho, coef = append(needed, j), append(ortho, rest.scale(1/n)), append(coef, share)
			continue
		}
		s := Surplus{j, make([]float64, len(b.cols))}
		s.Balanced[j] = 1
		for m, i := range needed {
			if v := share[m] * b.size[j] / b.size[i]; math.Abs(v) > 1e-7 {
				s.Balanced[i] = v
			}
		}
		out = append(out, s)
	}
	return out
}

// UnheldError says that nothing holds the body under a load: the load drives this motion, and no hold meets it.
type UnheldError struct {
	Motion Motion
	Parts  []int // one-way holds that part from the body as it moves
}

// Error says so; a caller with names has better words.
func (e *UnheldError) Error() string {
	return fmt.Sprintf("no hold meets the motion %v", e.Motion)
}

// unheld is the error for a motion that the load drives.
func (b *RigidBody) unheld(d vec6) *UnheldError {
	d = d.scale(1 / d.norm())
	for i := range d {
		if math.Abs(d[i]) < 1e-9 {
			d[i] = 0
		}
	}
	e := &UnheldError{Motion: b.motion(d)}
	for i, c := range b.cols {
		if b.holds[i].OneWay && c.dot(d) > 1e-9 {
			e.Parts = append(e.Parts, i)
		}
	}
	return e
}

// load is what acts on the body besides its holds, about the origin.
func (b *RigidBody) load(w Wrench) (vec6, error) {
	w = w.MovedTo(Vec3{})
	for _, v := range []float64{w.F.X, w.F.Y, w.F.Z} {
		if err := checkWithin("force", v, maxForce); err != nil {
			return vec6{}, err
		}
	}
	for _, v := range []float64{w.M.X, w.M.Y, w.M.Z} {
		if err := checkWithin("moment", v, maxMoment); err != nil {
			return vec6{}, err
		}
	}
	return b.scaled(w.F, w.M), nil
}

// within is the part of a load that the holds can make; a load with more drives a free motion.
func (b *RigidBody) within(l vec6) (vec6, error) {
	rest := l
	for range 2 {
		for _, f := range b.free {
			k := rest.dot(f)
			rest = rest.plus(-k, f)
		}
	}
	driven := l.plus(-1, rest)
	if driven.norm() > 1e-9*l.norm() {
		return vec6{}, b.unheld(driven)
	}
	return rest, nil
}
