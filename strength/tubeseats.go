package strength

// Curved seats on a round tube: how much of an arc bears under a force askew to it, and what several seats bring to one length of the wall.

import (
	"fmt"
	"math"

	"lugwright/part"
)

// leastHalfRad is half of the angle of a line of contact, the least that the limit states take.
const leastHalfRad = 0.01

// onTube makes a seat one on a tube's wall; toAxis is 1 when the contact's W leads from the seat to the tube, else -1.
func (s *seat) onTube(m *model, t *part.Support, toAxis float64) {
	_, s.f.TubeFy, s.f.TubeFu = m.ply(t.ID)
	s.tube, s.axis = t, s.middle.AddScaled(toAxis*t.ClearMM/2, s.Pose.W())
	s.f.Tube, s.f.D, s.f.T, s.f.Beta = true, t.ClearMM, t.ThicknessMM, max(s.WrapRad/2, leastHalfRad)
}

func (s *seat) curved() bool { return s.tube != nil && s.WrapRad > 0 }

// bears gives, under a wrench about the seat's middle, the force square to the tube's axis, half of the angle over which it bears, and what turns the seat
// about the tube. It bears as much as lies evenly about the force's line, up to the nearer lip: on no angle when it points past that.
func (s *seat) bears(w wrench) (force, half, turn float64) {
	down, side := -w.f.Dot(s.Pose.W()), w.f.Dot(s.Pose.V)
	turn = math.Abs(w.m.Add(s.middle.Sub(s.axis).Cross(w.f)).Dot(s.Pose.U))
	return math.Hypot(down, side), max(s.WrapRad/2-math.Atan2(math.Abs(side), down), 0), turn
}

// climbs names what makes the tube climb out of a curved seat or turn in it; empty when neither comes.
func (s *seat) climbs(w wrench, noise float64) string {
	force, half, turn := s.bears(w)
	switch {
	case force > noise && half == 0:
		return fmt.Sprintf("a force of %.4g N that points past the seat's lip", force)
	case turn > s.FrictionC*force*s.f.D/2+noise*s.f.D:
		return fmt.Sprintf("a turn of %.4g N*mm about the tube", turn)
	}
	return ""
}

// onWall adds the forces of all seats that press the same length of the tube's wall: the moments that they make in its ring add up to no more than
// this force makes under the worst of them.
func (r *run) onWall(i int) float64 {
	all := 0.0
	r.spend(len(r.seats))
	for k := range r.seats {
		if i == k || r.seats[i].shares(&r.seats[k]) {
			all += r.seats[k].now.F
		}
	}
	return all
}

func (r *run) hasNeighbour(i int) bool {
	r.spend(len(r.seats))
	for k := range r.seats {
		if i != k && r.seats[i].shares(&r.seats[k]) {
			return true
		}
	}
	return false
}

// shares says whether two seats press one tube so near each other along it that the lengths of wall that work as rings meet: 0.78 sqrt(R t) past
// either end, as practice.RingWidth has it.
func (s *seat) shares(o *seat) bool {
	if s.tube == nil || s.tube != o.tube {
		return false
	}
	past := 2 * 0.78 * math.Sqrt(max((s.f.D-s.f.T)/2*s.f.T, 0))
	return math.Abs(o.middle.Sub(s.middle).Dot(s.Pose.U)) < (s.lu+o.lu)/2+past
}
