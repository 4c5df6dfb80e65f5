package strength

// The places of a bracket in the order in which a drawing is read: pins, plates, welds, bolts, supports.

import (
	"slices"

	"lugwright/part"
)

// layOut prepares every place that is checked.
func (r *run) layOut() {
	for _, step := range [...]struct {
		on string
		do func()
	}{
		{"pins", r.layPins}, {"sweeps", r.laySweeps}, {"composites", r.layOutstands}, {"welds", r.layWelds}, {"welds", r.layRibRoots}, {"welds", r.laySizes},
		{"bolts", r.layBolts}, {"rods", r.layRods}, {"contacts", r.layContacts}, {"bracket", r.layTrays}, {"plates", r.laySpreads}, {"plates", r.layUncut},
		{"plates", r.markMetals},
	} {
		r.on = step.on
		step.do()
	}
}

// layUncut names plates and legs that load passes and no section is cut through.
func (r *run) layUncut() {
	for i := range r.things {
		id := r.things[i].plate.ID
		cut := false
		for _, s := range r.b.Sweeps {
			r.spend(len(s.Things))
			cut = cut || slices.Contains(s.Things, id)
		}
		cut = cut || slices.ContainsFunc(r.trays, func(y tray) bool { return y.t.plate.ID == id })
		cut = cut || slices.ContainsFunc(r.spreads, func(p spread) bool { return p.washer != nil && p.washer.plate.ID == id })
		if !cut && !idle(r.passes(id)) {
			r.skip("sections of the plate", id, "the bracket's model cuts none through it")
		}
	}
}

// layOutstands checks each web's free edge once: it does not depend on the load.
func (r *run) layOutstands() {
	type found struct {
		f     Outstand
		thing string
		from  string // the flange it stands out from
	}
	var all []found
	for _, c := range r.b.Composites {
		for _, id := range c.Things[1:] {
			t := r.thing(id)
			if t == nil {
				continue
			}
			width := 0.0
			normal := c.To.Sub(c.From).Unit()
			for k := range scanSteps + 1 {
				at := c.From.AddScaled(float64(k)/scanSteps, c.To.Sub(c.From))
				r.room.chords = t.chords(r.room.chords[:0], at, normal)
				for i := range r.room.chords {
					width = max(width, r.room.chords[i].length)
				}
			}
			if width > 0 {
				all = append(all, found{Outstand{B: width, T: t.plate.ThicknessMM, Fy: t.fy, E: t.e}, id, c.Things[0]})
			}
		}
	}
	for i := range r.b.Sweeps {
		s := &r.b.Sweeps[i]
		if width := r.besideWebs(s); width > 0 {
			t := r.thing(s.Things[0])
			all = append(all, found{Outstand{B: width, T: t.plate.ThicknessMM, Fy: t.fy, E: t.e}, s.Things[0], "its gussets"})
		}
	}
	r.outstands = make([]slots[Outstand], len(all))
	for i := range all {
		r.outstands[i] = newSlots(r.basis.Rules.Outstand, all[i].thing+", free edge away from "+all[i].from, all[i].thing, "free edge", r.thing(all[i].thing).plate.Pose.Origin, nil)
		r.outstands[i].consider(r, all[i].f, "")
		r.places = append(r.places, &r.outstands[i])
	}
}

// besideWebs is how far a swept plate stands out beside its outermost web, where it works as one section with webs; 0 where it never does.
// A wide flange on ribs counts only as far as shear lag leaves it.
func (m *model) besideWebs(s *part.Sweep) float64 {
	if s.Ribs {
		return 0
	}
	width := 0.0
	normal := s.To.Sub(s.From).Unit()
	var room [8]web
	for k := range scanSteps + 1 {
		at := s.From.AddScaled(float64(k)/scanSteps, s.To.Sub(s.From))
		acts := m.together(s, at, normal, false)
		if len(acts.active) == 0 {
			continue
		}
		whole := m.chordsOf(m.room.chords[:0], s, acts.ids, &cut{at: at, normal: normal})
		m.room.chords = whole
		for _, ch := range whole {
			if ch.t.plate.ID != s.Things[0] {
				continue
			}
			m.spend(len(acts.active) + len(whole)*named(acts.active))
			webs, _ := websOn(room[:0], ch, whole, acts.active)
			if len(webs) == 0 {
				continue
			}
			first, last := webs[0], webs[len(webs)-1]
			width = max(width, first.along+ch.length/2-first.chord.t.plate.ThicknessMM/2, ch.length/2-last.along-last.chord.t.plate.ThicknessMM/2)
		}
	}
	return width
}

// layRibRoots prepares the welds that root a rib on something other than its flange.
func (r *run) layRibRoots() {
	n := 0
	for i := range r.cuts {
		if r.isRoot(i) {
			n += len(r.cuts[i].ribs)
		}
	}
	r.ribRoots = make([]slots[WeldLine], 0, n)
	for i := range r.cuts {
		c := &r.cuts[i]
		if !r.isRoot(i) {
			continue
		}
		for k := range c.ribs {
			rb := &c.ribs[k]
			rb.root = r.ribRoot(c, rb.label, r.b.Sweeps[c.slot].Things[0])
			if rb.root == nil {
				continue
			}
			rb.slot = len(r.ribRoots)
			notes := []string{"the rib's own part of the section's stress, elastic"}
			r.ribRoots = append(r.ribRoots, newSlots(r.lineRules(rb.root), rb.root.words+", root of the rib", rb.root.thing, "strength", rb.root.at, notes))
			r.places = append(r.places, &r.ribRoots[rb.slot])
		}
	}
}
