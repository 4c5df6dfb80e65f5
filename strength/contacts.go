package strength

// Faces that press on each other: a bar on its seat, a saddle on a tube. They hold no pull, no slide beyond friction, and no couple that turns them off.

import (
	"fmt"
	"math"

	"lugwright/part"
)

// seat is a contact made ready.
type seat struct {
	*part.Contact
	passes []bool
	middle part.Vec
	lu, lv float64 // of the patch
	f      Seat
	field  string
	tube   *part.Support // whose wall it lies on, nil for none
	axis   part.Vec      // a point of the tube's axis
	now    Seat          // in the case at hand; no force where nothing presses
}

func (m *model) compileContacts() {
	for i := range m.b.Contacts {
		c := &m.b.Contacts[i]
		box := c.Patch
		s := seat{Contact: c, passes: m.passes(c.ID), lu: box.Width(), lv: box.Height(), field: fmt.Sprintf("contacts[%d]", i)}
		mid := box.Center()
		s.middle = c.Pose.At(mid.X, mid.Y, 0)
		for k, id := range c.Things {
			if _, fy, fu := m.ply(id); fy > 0 && (s.f.Fy == 0 || fy < s.f.Fy) {
				s.f.Fy, s.f.Fu = fy, fu
			}
			if t := m.b.Support(id); t != nil && t.Kind == part.TubeWall {
				s.onTube(m, t, float64(1-2*k))
			}
		}
		m.seats = append(m.seats, s)
	}
}

// layContacts makes a place for each pair of faces that load passes.
func (r *run) layContacts() {
	r.seatSlots = make([]slots[Seat], len(r.seats))
	for i := range r.seats {
		s := &r.seats[i]
		if s.f.Fy == 0 {
			r.skip("pressure between faces in contact", s.ID, "neither material is known")
			continue
		}
		notes := []string{"mean pressure on the part of the face whose middle the force passes (elementary statics); no friction"}
		if s.WrapRad > 0 {
			notes = append(notes, "a curved seat bears on its projected area, evenly about the line of the force as far as the nearer lip")
		}
		if r.hasNeighbour(i) {
			notes = append(notes, "on the tube's wall it adds to the seats beside and opposite")
		}
		r.seatSlots[i] = newSlots(r.basis.Rules.Seat, s.Things[0]+" on "+s.Things[1]+", "+s.ID, s.Things[1], "contact", s.middle, notes)
		r.seatSlots[i].idle = idle(s.passes)
		r.places = append(r.places, &r.seatSlots[i])
	}
}

// atContacts presses the faces with what passes them in the case at hand.
func (r *run) atContacts() error {
	for i := range r.seats {
		s := &r.seats[i]
		s.now = Seat{}
		if s.f.Fy == 0 || idle(s.passes) {
			continue
		}
		r.spend(1 + len(r.forces) + len(s.passes))
		w := sum(r.forces, s.passes, s.middle)
		press := -w.f.Dot(s.Pose.W())
		if what := s.cannotHold(w, press); what != "" {
			return &part.FieldError{Field: s.field, Found: what + " on faces that only press", Accept: "a path for this load that something holds"}
		}
		across := s.lv
		f := s.f
		if s.curved() {
			press, f.Beta, _ = s.bears(w)
			across = f.D * math.Sin(min(f.Beta, math.Pi/2))
			f.Beta = min(max(f.Beta, leastHalfRad), math.Pi/2)
		} else if press >= 1 {
			across = s.works(press, w.m.Dot(s.Pose.U), s.lv)
		}
		if press < 1 {
			continue
		}
		f.F, f.Service = press, r.factor
		f.Along = s.works(press, w.m.Dot(s.Pose.V), s.lu)
		f.Area = f.Along * max(across, 0)
		s.now = f
	}
	for i := range r.seats {
		if f := r.seats[i].now; f.F > 0 {
			f.Wall = r.onWall(i)
			r.seatSlots[i].consider(r, f, "")
		}
	}
	return nil
}

// cannotHold names what comes to the faces that they have no hold on; empty when they take it all. A curved seat's flanks hold what points into them.
func (s *seat) cannotHold(w wrench, press float64) string {
	const noise = 1 // N, at the face's rim for couples
	along, across := math.Abs(w.f.Dot(s.Pose.U)), math.Abs(w.f.Dot(s.Pose.V))
	if s.curved() {
		if what := s.climbs(w, noise); what != "" && press >= -noise {
			return what
		}
		across = 0
	} else if s.WrapRad > 0 && across <= math.Tan(min(s.WrapRad, 0.99*math.Pi)/2)*press {
		across = 0
	}
	slide, reach := math.Hypot(along, across), s.lu+s.lv
	couple, spin := math.Hypot(w.m.Dot(s.Pose.U), w.m.Dot(s.Pose.V)), math.Abs(w.m.Dot(s.Pose.W()))
	switch {
	case press < -noise:
		return fmt.Sprintf("a pull of %.4g N", -press)
	case slide > s.FrictionC*max(press, 0)+noise:
		return fmt.Sprintf("a slide of %.4g N", slide)
	case press < noise && couple > noise*reach:
		return fmt.Sprintf("a couple of %.4g N*mm", couple)
	case spin > s.FrictionC*max(press, 0)*reach/4+noise*reach:
		return fmt.Sprintf("a twist of %.4g N*mm", spin)
	}
	return ""
}

// works is how much of a face's length presses under a force whose line is off its middle: as much as lies evenly about that line, nothing when it passes
// beside the face.
func (s *seat) works(force, moment, length float64) float64 {
	return max(length-2*math.Abs(moment)/force, 0)
}
