package statics

// Reactions by stiffness: a rigid body on springs, some of which push only, or act after a gap.

import (
	"math"
	"slices"
)

// Reactions is what the holds do to the body under one load.
type Reactions struct {
	R        []float64 // by hold, in the order given
	Acting   []bool    // holds that have not lifted off and whose gap is used up
	Motion   Motion    // of the body, on its springs
	Residual Wrench    // what is left of the load, about the origin: rounding
}

// Steps to where the springs balance a load: more than few are tried when reactions are known to exist.
const (
	fewSteps = 30
	maxSteps = 2000
)

// React gives the reactions that balance a load, each the stiffness of its hold times the motion against it beyond its gap. Of all reactions that
// balance the load and push where a hold only pushes they are those of the least energy, so there is one set of them. A load that no such
// reactions balance is an *UnheldError.
func (b *RigidBody) React(load Wrench) (Reactions, error) {
	l, err := b.load(load)
	if err != nil {
		return Reactions{}, err
	}
	if l, err = b.within(l); err != nil {
		return Reactions{}, err
	}
	s := b.springs(l)
	if !s.settle(fewSteps) { // else it has been seen that reactions exist
		if err := b.Holds(load, nil); err != nil {
			return Reactions{}, err
		}
		if s.d = (vec6{}); !s.settle(maxSteps) {
			return Reactions{}, ErrRounding
		}
	}
	out := Reactions{R: make([]float64, len(b.holds)), Acting: make([]bool, len(b.holds)), Motion: b.motion(s.d.scale(s.size / s.stiffest))}
	rest := l
	for i, c := range b.cols {
		r, k := s.push(i, s.d)
		out.R[i], out.Acting[i] = r*s.size/b.size[i], k > 0
		rest = rest.plus(r*s.size, c)
	}
	out.Residual = Wrench{F: Vec3{rest[0], rest[1], rest[2]}, M: Vec3{rest[3], rest[4], rest[5]}.Scale(b.length)}
	return out, nil
}

// Following is how the reactions change with the load while the same holds act: in proportion.
type Following struct {
	b    *RigidBody
	unit [6][]float64 // what each hold does for one unit of each part of a load
	rest [6]vec6      // and what is left of that part
}

// Following makes that ready for the holds that act.
func (b *RigidBody) Following(acting []bool) *Following {
	s := b.springs(vec6{})
	var h mat6
	for i, c := range b.cols {
		if !acting[i] {
			s.k[i] = 0
		}
		h.add(s.k[i], c)
	}
	l := h.factor()
	out := &Following{b: b}
	for n := range out.unit {
		load := vec6{}
		load[n] = 1
		rest, d := load, vec6{}
		for range 20 {
			d, rest = d.plus(1, l.solve(rest)), load
			for i, c := range b.cols {
				rest = rest.plus(-s.k[i]*c.dot(d), c)
			}
		}
		out.rest[n], out.unit[n] = rest, make([]float64, len(b.holds))
		for i, c := range b.cols {
			out.unit[n][i] = -s.k[i] * c.dot(d) / b.size[i]
		}
	}
	return out
}

// Change gives what the reactions change by when the load does. A load that the acting holds do not hold is an *UnheldError.
func (f *Following) Change(more Wrench) ([]float64, error) {
	l, err := f.b.load(more)
	if err != nil {
		return nil, err
	}
	out, rest := make([]float64, len(f.b.holds)), vec6{}
	for n, x := range l {
		rest = rest.plus(x, f.rest[n])
		for i, u := range f.unit[n] {
			out[i] += float64(x * u)
		}
	}
	if rest.norm() > 1e-6*l.norm() {
		return nil, f.b.unheld(rest)
	}
	return out, nil
}

// springs is a body at a load of size 1 on springs of which the stiffest is 1.
type springs struct {
	b              *RigidBody
	load           vec6
	size, stiffest float64
	k, gap         []float64
	acts           []float64 // stiffness at the last motion looked at
	d              vec6
}

func (b *RigidBody) springs(load vec6) *springs {
	s := &springs{b: b, size: load.norm(), k: make([]float64, len(b.cols)), gap: make([]float64, len(b.cols)), acts: make([]float64, len(b.cols))}
	if s.size == 0 {
		s.size = 1
	}
	s.load = load.scale(1 / s.size)
	for i, h := range b.holds {
		s.k[i] = h.Stiffness * b.size[i] * b.size[i]
		s.stiffest = math.Max(s.stiffest, s.k[i])
	}
	for i, h := range b.holds {
		s.k[i] /= s.stiffest
		s.gap[i] = h.Gap / b.size[i] * s.stiffest / s.size
	}
	return s
}

// push is a hold's reaction at a motion of the body, and its stiffness there: none while it does not act.
func (s *springs) push(i int, d vec6) (r, k float64) {
	m := s.b.cols[i].dot(d)
	switch {
	case m < -s.gap[i]:
		return s.k[i] * (-m - s.gap[i]), s.k[i]
	case s.b.holds[i].OneWay:
		return 0, 0
	case m > s.gap[i]:
		return s.k[i] * (s.gap[i] - m), s.k[i]
	case s.gap[i] == 0:
		return 0, s.k[i]
	}
	return 0, 0
}

// settle moves the body to where its springs balance the load: the least of a convex energy that is quadratic in pieces, by Newton's steps, each as
// long as the energy falls. A speck of stiffness against each step, not against the place, keeps steps finite where nothing acts.
func (s *springs) settle(steps int) bool {
	last := math.Inf(1)
	for range steps {
		rest := s.load
		for i, c := range s.b.cols {
			r, k := s.push(i, s.d)
			rest = rest.plus(r, c)
			s.acts[i] = k
		}
		if n := rest.norm(); n < 1e-13 || n < 1e-9 && n > last/2 { // no better: rounding
			return true
		} else {
			last = n
		}
		step := s.factor().solve(rest)
		t, ok := s.reach(step)
		if !ok {
			return false
		}
		s.d = s.d.plus(t, step)
		if t*step.norm() <= 1e-15*s.d.norm() {
			return rest.norm() < 1e-9
		}
	}
	return false
}

// factor is the stiffness of what acts, factored: that of the last set that acted, where it is the same.
func (s *springs) factor() *mat6 {
	b := s.b
	if last := b.last.Load(); last != nil && slices.Equal(last.acts, s.acts) {
		return &last.factor
	}
	h := mat6{}
	for i, k := range s.acts {
		h.add(k, b.cols[i])
	}
	now := &factored{slices.Clone(s.acts), h.factor()}
	b.last.Store(now)
	return &now.factor
}

// factored is the stiffness of a set of holds, by hold, with its factor.
type factored struct {
	acts   []float64
	factor mat6
}

// reach is how far along a step the energy falls, exactly: its slope is a rising line in pieces, and we walk over its corners.
func (s *springs) reach(step vec6) (float64, bool) {
	slope, rise := -s.load.dot(step), 0.0 // at t = 0
	type corner struct{ at, rise float64 }
	var corners []corner
	for i, c := range s.b.cols {
		m, v := c.dot(s.d), c.dot(step)
		if v == 0 {
			continue
		}
		r, _ := s.push(i, s.d)
		slope -= r * v
		k := s.k[i] * v * v
		// The hold acts where m + t v < -gap and, both ways, where m + t v > gap.
		low := (-s.gap[i] - m) / v
		if v > 0 { // leaves the low side at that corner
			if low > 0 {
				rise += k
				corners = append(corners, corner{low, -k})
			}
		} else if low <= 0 {
			rise += k
		} else {
			corners = append(corners, corner{low, k})
		}
		if s.b.holds[i].OneWay {
			continue
		}
		high := (s.gap[i] - m) / v
		if v < 0 {
			if high > 0 {
				rise += k
				corners = append(corners, corner{high, -k})
			}
		} else if high <= 0 {
			rise += k
		} else {
			corners = append(corners, corner{high, k})
		}
	}
	slices.SortFunc(corners, func(a, b corner) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return 0
	})
	t := 0.0
	for _, c := range corners {
		if next := slope + rise*(c.at-t); next >= 0 && rise > 0 {
			break
		} else {
			slope, t = next, c.at
		}
		rise += c.rise
	}
	if slope >= 0 {
		return t, true
	}
	if rise <= 1e-300 {
		return 0, false
	}
	return t - slope/rise, true
}

// mat6 is a symmetric matrix that is never negative.
type mat6 [6][6]float64

func (m *mat6) add(k float64, c vec6) {
	for i := range c {
		for j := range c {
			m[i][j] += float64(k * float64(c[i]*c[j]))
		}
	}
}

// factor is the lower triangle of the matrix with a speck added to its diagonal.
func (m *mat6) factor() (l mat6) {
	const speck = 1e-12
	for i := range 6 {
		for j := range i + 1 {
			v := m[i][j]
			if i == j {
				v += speck
			}
			for k := range j {
				v -= float64(l[i][k] * l[j][k])
			}
			if i == j {
				l[i][i] = math.Sqrt(math.Max(v, 1e-16))
			} else {
				l[i][j] = v / l[j][j]
			}
		}
	}
	return l
}

// solve gives the step that the factored matrix turns into r.
func (l *mat6) solve(r vec6) vec6 {
	for i := range 6 {
		for k := range i {
			r[i] -= float64(l[i][k] * r[k])
		}
		r[i] /= l[i][i]
	}
	for i := 5; i >= 0; i-- {
		for k := i + 1; k < 6; k++ {
			r[i] -= float64(l[k][i] * r[k])
		}
		r[i] /= l[i][i]
	}
	return r
}
