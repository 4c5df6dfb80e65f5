package vehicle

import (
	"math"

	"lugwright/part"
	"lugwright/strength/statics"
)

// Way is how a mount acts on the body along an axis.
type Way string

const (
	Free      Way = "free" // also the zero value, ""
	Both      Way = "both"
	PlusOnly  Way = "plus"  // it can only push the body towards plus: a bearer under it is PlusOnly in z
	MinusOnly Way = "minus" // and only towards minus: a hold-down chain
)

// Ways lists all of them.
func Ways() []Way { return []Way{Free, Both, PlusOnly, MinusOnly} }

// DefaultStiffness is that of a restraint that states none (builder's choice, no source). Among mounts without one only its being the same matters.
const (
	DefaultStiffnessNPerMM        = 1e4
	DefaultTurnStiffnessNMMPerRad = 1e8 // that of four such restraints 50 mm from the mount's middle
)

// Restraint is what a mount does along one axis. It matters for the stiffness solution of an indeterminate set alone, except which way it acts.
type Restraint struct {
	Way             Way
	StiffnessNPerMM float64 // 0: DefaultStiffnessNPerMM
	MinusNPerMM     float64 // where it pushes the body towards minus, if that differs: a spring hold-down. 0: the same
	GapMM           float64 // play on each side before it acts
}

// Turn is what a mount does about one axis.
type Turn struct {
	Held               bool
	StiffnessNMMPerRad float64 // 0: DefaultTurnStiffnessNMMPerRad
}

// Mount is one place where a body stands on the vehicle.
type Mount struct {
	Name       string
	At         part.Vec
	X, Y, Z    Restraint
	RX, RY, RZ Turn
}

// Share states how mounts divide what they hold together in one direction, where the builder knows: fractions that add up to 1, or none, which is 0 to
// 100 % at each.
type Share struct {
	Direction string // "x", "y" or "z"
	Mounts    []string
	Fractions []float64
}

// Body is a set of mounts and the name that items ride on.
type Body struct {
	Name   string // empty: MainBody
	Mounts []Mount
	Shares []Share
}

// directions are the six components in their order, as results name them.
var directions = [6]string{"x", "y", "z", "rx", "ry", "rz"}

var axes = [3]part.Vec{{X: 1}, {Y: 1}, {Z: 1}}

func (m *Mount) restraint(dir int) Restraint { return [3]Restraint{m.X, m.Y, m.Z}[dir] }
func (m *Mount) turn(dir int) Turn           { return [3]Turn{m.RX, m.RY, m.RZ}[dir-3] }

// piece is a component of a mount's reaction in an actor, with its part of it.
type piece struct {
	mount, dir int
	factor     float64
}

// actor is one unknown of the statics: a mount's component, or those that share by stated fractions. Its reaction counts along the axis, whatever
// way it acts.
type actor struct {
	pieces        []piece
	force, moment part.Vec // for a reaction of 1, about the rig's origin
	way           Way
	plus, minus   float64 // stiffness each way
	gap           float64
}

func (a *actor) couple() bool { return a.pieces[0].dir >= 3 }

// net is the actor as one hold, for what knows no stiffness; sign is the reaction's along the axis.
func (a *actor) net() (h statics.Hold, sign float64) {
	sign = 1
	if a.way == MinusOnly {
		sign = -1
	}
	return statics.Hold{
		Force: statics.Vec3(a.force.Scale(sign)), Moment: statics.Vec3(a.moment.Scale(sign)), OneWay: a.way != Both, Stiffness: a.plus, Gap: a.gap,
	}, sign
}

// springs are the holds it is when stiffness counts: two where its stiffness differs by the way it acts.
func (a *actor) springs() (holds []statics.Hold, signs []float64) {
	h, sign := a.net()
	if a.way == MinusOnly {
		h.Stiffness = a.minus
	}
	if a.way != Both || a.plus == a.minus {
		return []statics.Hold{h}, []float64{sign}
	}
	h.OneWay = true
	back := h
	back.Force, back.Moment, back.Stiffness = h.Force.Scale(-1), h.Moment.Scale(-1), a.minus
	return []statics.Hold{h, back}, []float64{1, -1}
}

// rig is a body on its mounts, made ready.
type rig struct {
	body     *Body
	origin   part.Vec
	lengthMM float64
	actors   []actor
}

// newRig numbers the components, z first, then y and x, then couples: what comes late and is too much is named as such.
func newRig(b *Body) *rig {
	r := &rig{body: b}
	for i := range b.Mounts {
		r.origin = r.origin.AddScaled(1/float64(len(b.Mounts)), b.Mounts[i].At)
	}
	for i := range b.Mounts {
		r.lengthMM = max(r.lengthMM, b.Mounts[i].At.Sub(r.origin).Norm())
	}
	r.lengthMM = max(r.lengthMM, 100) // one mount has a size of its own
	shared := map[[2]int]bool{}
	for _, dir := range []int{2, 1, 0} {
		for _, s := range b.Shares {
			if s.Direction == directions[dir] && len(s.Fractions) > 0 {
				r.actors = append(r.actors, r.fixed(s, dir, shared))
			}
		}
		for i := range b.Mounts {
			if way := b.Mounts[i].restraint(dir).Way; way != Free && way != "" && !shared[[2]int{i, dir}] {
				r.actors = append(r.actors, r.single(i, dir))
			}
		}
	}
	for dir := 3; dir < 6; dir++ {
		for i := range b.Mounts {
			if b.Mounts[i].turn(dir).Held {
				r.actors = append(r.actors, r.couple(i, dir))
			}
		}
	}
	return r
}

func (r *rig) single(mount, dir int) actor {
	m := &r.body.Mounts[mount]
	s := m.restraint(dir)
	a := actor{pieces: []piece{{mount, dir, 1}}, force: axes[dir], moment: m.At.Sub(r.origin).Cross(axes[dir]), way: s.Way, gap: s.GapMM}
	a.plus = DefaultStiffnessNPerMM
	if s.StiffnessNPerMM > 0 {
		a.plus = s.StiffnessNPerMM
	}
	a.minus = a.plus
	if s.MinusNPerMM > 0 {
		a.minus = s.MinusNPerMM
	}
	return a
}

func (r *rig) couple(mount, dir int) actor {
	t := r.body.Mounts[mount].turn(dir)
	a := actor{pieces: []piece{{mount, dir, 1}}, moment: axes[dir-3], way: Both, plus: DefaultTurnStiffnessNMMPerRad}
	if t.StiffnessNMMPerRad > 0 {
		a.plus = t.StiffnessNMMPerRad
	}
	a.minus = a.plus
	return a
}

// fixed is the one unknown of a stated share. It acts both ways when all its members do.
func (r *rig) fixed(s Share, dir int, shared map[[2]int]bool) actor {
	out := actor{way: Both}
	for k, name := range s.Mounts {
		i := r.mount(name)
		shared[[2]int{i, dir}] = true
		f := s.Fractions[k]
		if f == 0 {
			continue
		}
		a := r.single(i, dir)
		out.pieces = append(out.pieces, piece{i, dir, f})
		out.force, out.moment = out.force.AddScaled(f, a.force), out.moment.AddScaled(f, a.moment)
		out.plus, out.minus, out.gap = out.plus+a.plus, out.minus+a.minus, math.Max(out.gap, a.gap)
		if a.way != Both {
			out.way = a.way
		}
	}
	return out
}

func (r *rig) mount(name string) int {
	for i := range r.body.Mounts {
		if r.body.Mounts[i].Name == name {
			return i
		}
	}
	return -1
}
