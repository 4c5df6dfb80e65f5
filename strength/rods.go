package strength

// Hanger rods: tension by the even share and by a diagonal pair, couples about the level where a side force does not bend them, side force by bending or on stops.

import (
	"fmt"
	"math"

	"lugwright/part"
	"lugwright/strength/material"
	"lugwright/strength/statics"
)

// rodSet is a pattern of rods made ready.
type rodSet struct {
	*part.Rods
	at     []statics.Vec2 // from their middle
	middle part.Vec
	passes []bool
	f      Rod
	flats  float64        // of the nut
	pulls  []float64      // force along each for a level of its hinge
	now    []float64      // greatest pull of each in the case at hand
	across []statics.Vec2 // and square to each
	field  string
}

// diagonalRods is from how many rods on two of them may come to carry all: a stiff tray rocks on a diagonal.
const diagonalRods = 4

func (m *model) compileRods() {
	for i := range m.b.Rods {
		s := rodSet{Rods: &m.b.Rods[i], passes: m.passes(m.b.Rods[i].ID), field: fmt.Sprintf("rods[%d]", i)}
		for _, p := range s.Points {
			s.at = append(s.at, statics.Vec2{X: p.X, Y: p.Y})
		}
		c := statics.Centroid(s.at)
		s.middle = s.Pose.At(c.X, c.Y, 0)
		for k := range s.at {
			s.at[k] = statics.Vec2{X: s.at[k].X - c.X, Y: s.at[k].Y - c.Y}
		}
		m.rodStrength(&s)
		m.rods = append(m.rods, s)
	}
}

func (m *model) rodStrength(s *rodSet) {
	size, err := material.ParseBolt(s.Size)
	if err != nil {
		m.refuse(s.field+".size", err, "a size from the list of materials")
		return
	}
	s.flats, s.across = size.AcrossFlats, make([]statics.Vec2, len(s.at))
	s.pulls, s.now = make([]float64, len(s.at)), make([]float64, len(s.at))
	s.f = Rod{D: size.DiaMM, Pitch: size.PitchMM, L: s.FreeMM, Held: s.FixedTop && s.FixedFoot, Engaged: s.EngagementMM}
	if grade, err := material.LookupBoltGrade(s.Grade); err == nil {
		s.f.Fy, s.f.Fu, _ = m.gradeAt(grade, size.DiaMM, s.field, "rod")
		return
	}
	_, s.f.Fy, s.f.Fu = m.grade(s.Grade, size.DiaMM, s.field+".grade")
}

// layRods makes a place for each pattern.
func (r *run) layRods() {
	r.rodSlots = make([]slots[Rod], len(r.rods))
	for i := range r.rods {
		s := &r.rods[i]
		notes := []string{"couples are taken by the rods' pulls, about the level where a side force does not bend the rods (elementary statics)"}
		if len(s.at) >= diagonalRods {
			notes = append(notes, "two diagonal rods carry all (common practice, no source)")
		}
		if s.Stopped {
			notes = append(notes, "side force is held by stops, and its couple about them by the rods")
			r.skip("strength of the side stops", s.ID, "the bracket's model has no weld or bolt for them")
		}
		r.spend(len(r.trays) * (1 + len(r.spreads)))
		for k := range r.trays {
			if t := r.trays[k].t; r.trays[k].rods == i {
				s.f.Sheet, s.f.Under, s.f.SheetFy, s.f.SheetFu = t.plate.ThicknessMM, r.underNut(i), t.fy, t.fu
			}
		}
		r.rodSlots[i] = newSlots(r.basis.Rules.Rod, s.ID, s.ID, "hanger rod", s.middle, notes)
		r.rodSlots[i].idle = idle(s.passes)
		r.places = append(r.places, &r.rodSlots[i])
	}
}

// atRods finds what the worst rods bear in the case at hand.
func (r *run) atRods() error {
	for i := range r.rods {
		s := &r.rods[i]
		if err := r.atRodSet(s, &r.rodSlots[i]); err != nil {
			return &part.FieldError{Field: s.field, Found: err.Error(), Accept: "rods that hold every component of the load"}
		}
	}
	return nil
}

func (r *run) atRodSet(s *rodSet, slot *slots[Rod]) error {
	share := 1.0
	if len(s.at) >= diagonalRods {
		share = float64(len(s.at)) / 2
	}
	clear(s.now)
	r.spend(2 * (len(r.forces) + perRule*len(s.at)))
	for _, level := range s.hinges() {
		up := s.Pose.W()
		w := sum(r.forces, s.passes, s.middle.AddScaled(level, up))
		if err := tilted(s.pulls, s.at, -w.f.Dot(up), -w.m.Dot(s.Pose.U), -w.m.Dot(s.Pose.V)); err != nil {
			return err
		}
		if err := s.sideways(w); err != nil {
			return err
		}
		for k := range s.at {
			f := s.f
			f.Service = r.factor
			f.N, f.V = share*s.pulls[k], s.across[k].Norm()
			s.now[k] = max(s.now[k], f.N)
			slot.consider(r, f, "")
		}
	}
	return nil
}

// hinges are the levels at which rods are not bent, and about which their pulls balance the load: the stops, midway between two held ends, the end that is
// not held, or each in turn where it is not told which that is.
func (s *rodSet) hinges() []float64 {
	switch {
	case s.Stopped:
		return []float64{s.StopMM}
	case s.FixedTop && s.FixedFoot:
		return []float64{s.FreeMM / 2}
	case s.FixedTop:
		return []float64{0}
	case s.FixedFoot:
		return []float64{s.FreeMM}
	}
	return []float64{0, s.FreeMM}
}

// tilted shares a pull and a couple among rods as under a plane that stays flat. Rods in one line hold a couple along it and none about it.
func tilted(dst []float64, at []statics.Vec2, pull, mu, mv float64) error {
	const noise = 1 // N*mm
	if math.Abs(mu) < noise {
		mu = 0
	}
	if math.Abs(mv) < noise {
		mv = 0
	}
	if err := statics.PullsAtCentroid(dst, at, pull, mu, mv); err != nil {
		return fmt.Errorf("a couple of %.4g N*mm on %d rods in one line", math.Hypot(mu, mv), len(at))
	}
	return nil
}

// sideways is the side force on each rod, by the elastic vector method; none where stops hold it.
func (s *rodSet) sideways(w wrench) error {
	if s.Stopped {
		return nil
	}
	twist := w.m.Dot(s.Pose.W())
	if statics.PolarInertia(s.at) == 0 {
		if math.Abs(twist) > 1 {
			return fmt.Errorf("a twist of %.4g N*mm on a single rod", math.Abs(twist))
		}
		twist = 0
	}
	return statics.Shears(s.across, s.at, w.f.Dot(s.Pose.U), w.f.Dot(s.Pose.V), twist)
}
