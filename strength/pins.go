package strength

// Pins and the holes they bear in.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength/material"
	"lugwright/strength/statics"
)

// pin is a pin made ready. The statics of the span hold for a load of 1 N and scale with it.
type pin struct {
	*part.Pin
	fy, fu float64
	e      float64
	at     [3]pinState // lug at the negative end of its travel, where it bends the pin most, and at the positive end
	passes []bool
	seats  []bore
	eyes   []eye
	share  int     // index of the share that states the travel, -1 when there is none
	span   float64 // between the middles of its supporting seats
	play   float64 // least of hole over pin; 0 where no hole is stated
	bush   float64 // bearing length of the loaded seat's bush, 0 when there is none
}

type pinState struct {
	reactions     []float64 // by supporting seat, in order
	shear, moment float64   // per newton
	bending       bool      // moment is known
}

// bore is a supporting seat in a plate, or the part of one in a plate welded round the hole.
type bore struct {
	plate  *thing
	passes []bool
	free   part.Vec // direction towards the plate's free end
	part   float64  // of the seat's force
	f      Bore     // what does not change with the load
}

// eye is a seat in something that is no plate of the bracket: the body's lug, or the fork that holds the pin.
type eye struct {
	place    string
	supports []int // which of the supporting seats: like ears are one place; none for the loaded seat
	outside  string
	f        Bore
}

func (m *model) pin(id string) *pin {
	for i := range m.pins {
		if m.pins[i].ID == id {
			return &m.pins[i]
		}
	}
	return nil
}

// reaction gives each support's part of 1 N with the lug at travel v: -1, +1, or 0 for no travel.
func (p *pin) reaction(v float64) []float64 { return p.state(v).reactions }

func (p *pin) state(v float64) *pinState {
	if v > 0 {
		return &p.at[2]
	}
	return &p.at[0]
}

func (m *model) compilePins() {
	for i := range m.b.Pins {
		p := pin{Pin: &m.b.Pins[i], share: -1}
		p.at = [3]pinState{spanStates(p.Pin, -p.TravelMM), mostBent(p.Pin), spanStates(p.Pin, p.TravelMM)}
		p.measure()
		for k, s := range m.b.Shares {
			if s.Pin == p.ID {
				p.share = k
			}
		}
		if m.listing != "" {
			var g *material.Grade
			if g, p.fy, p.fu = m.grade(p.Material, p.DiaMM, fmt.Sprintf("pins[%d].material", i)); g != nil {
				p.e = g.EMPa
			}
		}
		m.pins = append(m.pins, p)
	}
}

// measure takes what the seats say of span, play and bush.
func (p *pin) measure() {
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range p.Seats {
		if s.Loads {
			p.bush = s.BushMM
		} else {
			low, high = min(low, s.AtMM), max(high, s.AtMM)
		}
		if play := s.HoleMM - p.DiaMM; s.HoleMM > 0 && (p.play == 0 || play < p.play) {
			p.play = play
		}
	}
	p.span = high - low
}

// spanStates solves the pin as a beam on its two supporting seats, under 1 N from the loaded seat shifted along the
// axis. A pin with one supporting seat is a cantilever: the seat takes all and bending is not known.
func spanStates(p *part.Pin, shift float64) pinState {
	f, supports, err := solveSpan(p, shift)
	if err != nil { // a cantilever: validation has refused every other pin that is no beam
		st := pinState{reactions: make([]float64, supports), shear: 1}
		for i := range st.reactions {
			st.reactions[i] = 1 / float64(supports)
		}
		return st
	}
	return pinState{reactions: []float64{f.Left, f.Right}, shear: f.MaxShear, moment: f.MaxMoment, bending: true}
}

func solveSpan(p *part.Pin, shift float64) (f statics.PinForces, supports int, err error) {
	var room [8]statics.Seat
	var shears [8]float64
	seats := room[:0]
	for _, s := range p.Seats {
		seat := statics.Seat{X: s.AtMM, T: s.ThicknessMM}
		if s.Loads {
			seat.X += shift
			seat.Role, seat.ForceN = statics.Load, 1
		} else {
			supports++
		}
		seats = append(seats, seat)
	}
	f, err = statics.SolvePin(append(shears[:0], make([]float64, len(seats)-1)...), seats)
	return f, supports, err
}

// mostBent is the state with the lug where it bends the pin most, as a rule midway between the ears. Over so fine a row of places the greatest moment is missed
// by no more than P s^2/L, s being half a step: a thousandth of a fifth of the travel.
func mostBent(p *part.Pin) pinState {
	const steps = 64
	at, moment := 0.0, spanStates(p, 0).moment
	for k := -steps / 2; k <= steps/2 && p.TravelMM > 0; k++ {
		shift := p.TravelMM * float64(2*k) / steps
		if f, _, err := solveSpan(p, shift); err == nil && f.MaxMoment > moment {
			at, moment = shift, f.MaxMoment
		}
	}
	return spanStates(p, at)
}

// layPins prepares the places where pins are checked; it needs the branches.
func (r *run) layPins() {
	r.pinPlanes = make([]slots[PinPlane], len(r.pins))
	r.pinSpans = make([]slots[PinSpan], len(r.pins))
	r.bushes = make([]slots[Bush], len(r.pins))
	for i := range r.pins {
		p := &r.pins[i]
		p.passes = r.passes(p.ID)
		r.pinPlanes[i] = newSlots(r.basis.Rules.PinPlane, p.ID, p.ID, "pin shear", p.Center, nil)
		r.pinPlanes[i].idle = idle(p.passes)
		r.places = append(r.places, &r.pinPlanes[i])
		if p.at[0].bending {
			r.pinSpans[i] = newSlots(r.basis.Rules.PinSpan, p.ID, p.ID, "pin bending", p.Center, nil)
			r.pinSpans[i].idle = idle(p.passes)
			r.places = append(r.places, &r.pinSpans[i])
		} else {
			r.skip("bending of the pin", p.ID, "the pin has one supporting seat: a cantilever pin is not covered")
		}
		r.laySeats(p)
		r.bushes[i] = newSlots(r.basis.Rules.Bush, p.ID+" in its bush", p.ID, "bush pressure", p.Center, nil)
		r.bushes[i].idle = idle(p.passes)
		if p.bush > 0 {
			r.places = append(r.places, &r.bushes[i])
			if !slices.ContainsFunc(r.cases, func(c part.Case) bool { return c.AtRest }) {
				r.skip("wear of the bush", p.ID, "no load case is stated as acting at rest, 1 g down")
			}
		}
	}
	r.layEyes()
	n := 0
	for i := range r.pins {
		n += len(r.pins[i].seats)
	}
	r.bores = make([]slots[Bore], 0, n)
	for i := range r.pins {
		for k := range r.pins[i].seats {
			s := &r.pins[i].seats[k]
			id := s.plate.plate.ID
			var notes []string
			if s.part < 1 {
				notes = []string{"plates that the pin bears in together share by thickness (common practice, no source)"}
			}
			r.bores = append(r.bores, newSlots(r.basis.Rules.Bore, id+" at the pin hole", id, "pin hole", r.pins[i].Center, notes))
			r.bores[len(r.bores)-1].idle = idle(s.passes)
			r.places = append(r.places, &r.bores[len(r.bores)-1])
		}
	}
}

func (r *run) laySeats(p *pin) {
	support := -1
	for _, s := range p.Seats {
		if !s.Loads {
			support++
		}
		t := r.thing(s.Thing)
		if t == nil {
			r.addEye(p, s, support)
			continue
		}
		if _, ok := t.holeNear(p.Center, p.Axis); !ok {
			r.skip("bearing and tear-out at the pin", s.Thing, "no pin hole was found on the pin's axis")
			continue
		}
		leaves := append([]*thing{t}, r.doublers(p, s.Thing)...)
		total := 0.0
		for _, leaf := range leaves {
			total += leaf.plate.ThicknessMM
		}
		passes, free := both(p.passes, r.passes(s.Thing)), r.freeEnd(s.Thing)
		for k, leaf := range leaves {
			hole, _ := leaf.holeNear(p.Center, p.Axis)
			b := bore{plate: leaf, passes: passes, free: free, part: leaf.plate.ThicknessMM / total}
			fy, fu := r.atHole(leaf, hole)
			b.f = Bore{
				D: p.DiaMM, Dh: hole.DiaMM, T: s.ThicknessMM * b.part, Fy: fy, Fu: fu, FyPin: p.fy, E: leaf.e, EPin: p.e, Turns: p.Turns, Doubler: k > 0,
			}
			leaf.measure(&b.f, hole, free)
			p.seats = append(p.seats, b)
			if k > 0 {
				r.pullDoubler(p, &b)
			}
		}
	}
}

// addEye takes a seat that is no plate of the bracket, of which only bearing and contact can be judged.
func (r *run) addEye(p *pin, s part.Seat, support int) {
	place := orWord(s.Thing, "the body's lug")
	r.skip("tear-out and net section at the pin", place, "it is not a plate of this bracket")
	what := "bearing and contact of the pin"
	g, err := material.LookupGrade(s.Material)
	switch {
	case s.HoleMM < p.DiaMM:
		r.skip(what, place, "no hole of it for the pin is stated")
		return
	case s.BushMM > 0:
		r.skip(what, place, "it has a bush, whose own pressure is checked; its fit in the lug is not stated")
		return
	case err != nil:
		r.skip(what, place, "its material is not known")
		return
	}
	fy, fu, err := g.Strength(s.ThicknessMM)
	if err != nil {
		r.skip(what, place, err.Error())
		return
	}
	r.remark(g)
	e := eye{place: place, f: Bore{
		D: p.DiaMM, Dh: s.HoleMM, T: s.ThicknessMM, Fy: fy, Fu: fu, FyPin: p.fy, E: g.EMPa, EPin: p.e, Turns: p.Turns,
	}}
	if !s.Loads {
		if like := slices.IndexFunc(p.eyes, func(o eye) bool { return o.supports != nil && o.place == place && o.f == e.f }); like >= 0 {
			p.eyes[like].supports = append(p.eyes[like].supports, support)
			return
		}
		e.supports = []int{support}
	}
	on := r.atHoles()
	if e.outside = r.strange(on, p.ID); !on.Covers(g.Family) {
		e.outside = strangeMetal(on, place, g)
	}
	p.eyes = append(p.eyes, e)
}

// layEyes makes a place for each.
func (r *run) layEyes() {
	for i := range r.pins {
		p := &r.pins[i]
		for _, e := range p.eyes {
			slot := newSlots(r.basis.Rules.Eye, e.place+" at the pin hole", e.place, "pin hole", p.Center, nil)
			slot.outside, slot.idle = e.outside, idle(p.passes)
			r.eyes = append(r.eyes, slot)
		}
	}
	for i := range r.eyes {
		r.places = append(r.places, &r.eyes[i])
	}
}

// doublers are the plates round a pin hole, welded to the plate that a seat is in. Plates that the pin bears in together share its force
// by thickness: common practice, no source.
func (m *model) doublers(p *pin, seat string) []*thing {
	var out []*thing
	for i := range m.things {
		t := &m.things[i]
		m.spend(len(m.b.Welds) + 4*len(t.plate.Holes))
		welded := slices.ContainsFunc(m.b.Welds, func(w part.WeldGroup) bool { return w.Joins == [2]string{t.plate.ID, seat} })
		if _, ok := t.holeNear(p.Center, p.Axis); ok && welded {
			out = append(out, t)
		}
	}
	return out
}

// pullDoubler gives the weld of a doubler the doubler's part of the pin's force, in the doubler's middle plane.
func (r *run) pullDoubler(p *pin, b *bore) {
	r.spend(len(r.rootSets) * (1 + len(r.b.Welds)))
	for i := range r.rootSets {
		s := &r.rootSets[i]
		if w := r.b.Weld(s.thing); w != nil && w.Joins[0] == b.plate.plate.ID {
			off := b.plate.plate.Pose.Origin.Sub(p.Center).Dot(p.Axis)
			s.passes, s.pull = b.passes, &pull{axis: p.Axis, center: p.Center, at: p.Center.AddScaled(off, p.Axis), part: b.part}
		}
	}
}

func orWord(s, word string) string {
	if s == "" {
		return word
	}
	return s
}

func both(a, b []bool) []bool {
	out := make([]bool, len(a))
	for i := range a {
		out[i] = a[i] && b[i]
	}
	return out
}

// holeNear finds the plate's hole on an axis through a point.
func (t *thing) holeNear(center, axis part.Vec) (part.Hole, bool) {
	for _, h := range t.plate.Holes {
		off := t.plate.HoleAt(h).Sub(center)
		if off.AddScaled(-off.Dot(axis), axis).Norm() < 0.01 {
			return h, true
		}
	}
	return part.Hole{}, false
}

// freeEnd is the direction away from a plate's root: back along the sweep that cuts it; zero when no sweep does.
func (m *model) freeEnd(id string) part.Vec {
	for _, s := range m.b.Sweeps {
		if len(s.Things) > 0 && s.Things[0] == id {
			return s.From.Sub(s.To).Unit()
		}
	}
	return part.Vec{}
}

// measure takes the exact distances round a pin hole, to the outline's edge or to the nearest other opening.
func (t *thing) measure(f *Bore, h part.Hole, free part.Vec) {
	p := *t.plate
	p.Holes = slices.DeleteFunc(slices.Clone(p.Holes), func(o part.Hole) bool { return o.Center == h.Center })
	o := p.Shape(false)
	dir := shape.Point{X: free.Dot(t.plate.Pose.U), Y: free.Dot(t.plate.Pose.V)}
	if dir.Norm() < 1e-9 {
		dir = shape.Point{Y: 1}
	}
	_, ahead := reach(o, h.Center, dir)
	right, left := reach(o, h.Center, dir.Perp())
	f.A = ahead - h.DiaMM/2
	f.B = min(left, right) - h.DiaMM/2
	f.W = left + right
	f.OffMM = math.Abs(left-right) / 2
	f.Least = o.DistTo(h.Center) - h.DiaMM/2
}

// reach is how far material goes from a point against and along a direction.
func reach(o shape.Outline, p, dir shape.Point) (back, ahead float64) {
	var room [8]shape.Interval
	for _, iv := range o.ChordsInto(room[:0], p, dir.Unit()) {
		if iv.Lo <= 0 && iv.Hi >= 0 {
			return -iv.Lo, iv.Hi
		}
	}
	return 0, 0
}

// freeOfCouples refuses a couple that a path brings through a pin: the forces on a pin's seats are all that its checks know.
func (p *pin) freeOfCouples(forces []force) error {
	const noise = 1 // N at the pin's surface
	var m part.Vec
	for i := range forces {
		if f := &forces[i]; p.passes[f.branch] {
			m = m.Add(f.m)
		}
	}
	if m.Norm() > noise*p.DiaMM {
		return fmt.Errorf("a couple of %.4g N*mm", m.Norm())
	}
	return nil
}

// atPins puts the case's forces on pins and pin holes.
func (r *run) atPins() error {
	k, n := 0, 0
	for i := range r.pins {
		p := &r.pins[i]
		if err := p.freeOfCouples(r.forces); err != nil {
			return &part.FieldError{Field: fmt.Sprintf("pins[%d]", i), Found: err.Error(), Accept: "a path for a couple that passes the pin's seats as forces, or not the pin"}
		}
		w := sum(r.forces, p.passes, p.Center)
		across := w.f.AddScaled(-w.f.Dot(p.Axis), p.Axis).Norm()
		if p.bush > 0 {
			r.bushes[i].consider(r, Bush{P: across, D: p.DiaMM, L: p.bush, Service: r.factor, AtRest: r.cases[r.inCase].AtRest}, "")
		}
		for k := range p.eyes {
			r.atEye(p, &p.eyes[k], &r.eyes[n], across)
			n++
		}
		for _, st := range r.travels(p) {
			r.pinPlanes[i].consider(r, PinPlane{V: across * st.shear, D: p.DiaMM, Fy: p.fy, Fu: p.fu}, "")
			if st.bending {
				r.pinSpans[i].consider(r, PinSpan{
					M: across * st.moment, V: across * st.shear, D: p.DiaMM, Fy: p.fy, Fu: p.fu, Service: r.factor, P: across, Span: p.span, Play: p.play, E: p.e,
				}, "")
			}
		}
		for s := range p.seats {
			r.atBore(p, &p.seats[s], &r.bores[k])
			k++
		}
	}
	return nil
}

// travels are the places of the lug that a corner asks a pin to be checked at: where it bends the pin most, and at the end of its travel that the corner
// states, or at both ends where none does.
func (r *run) travels(p *pin) []pinState {
	switch {
	case p.share < 0:
		return p.at[:]
	case r.corners[r.inCorner].value[p.share] > 0:
		return p.at[1:]
	}
	return p.at[:2]
}

// atEye puts on a seat its part of the pin's force, at the worst of the lug's travel.
func (r *run) atEye(p *pin, e *eye, out *slots[Bore], across float64) {
	f := e.f
	f.P, f.Service = across, r.factor
	if e.supports != nil {
		f.P = 0
		for _, st := range r.travels(p) {
			for _, k := range e.supports {
				f.P = max(f.P, across*st.reactions[k])
			}
		}
	}
	out.consider(r, f, "")
}

func (r *run) atBore(p *pin, s *bore, out *slots[Bore]) {
	w := sum(r.forces, s.passes, p.Center)
	across := w.f.AddScaled(-w.f.Dot(p.Axis), p.Axis)
	s.f.P, s.f.Pull, s.f.Service = s.part*across.Norm(), s.part*across.Dot(s.free), r.factor
	out.consider(r, s.f, "")
}
