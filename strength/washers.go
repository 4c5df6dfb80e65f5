package strength

// Spreader washers: plates between a rod's nut and the sheet that it pulls on, of a tray or of a support; and the sheet under them, or under the nut
// alone.

import "slices"

// spread is a sheet on the nuts of a pattern of rods.
type spread struct {
	rods            int
	sheet           string  // plate or support
	t, fy, fu, hole float64 // of the sheet
	washer          *thing  // nil where the nut lies on the sheet
	side            float64 // of the washer, the least
}

func (m *model) compileSpreads() {
	for k := range m.rods {
		if i := slices.IndexFunc(m.trays, func(y tray) bool { return y.rods == k }); i >= 0 {
			m.spreadOnTray(&m.trays[i])
		} else {
			m.spreadOnSupport(k)
		}
	}
}

func (m *model) spreadOnTray(y *tray) {
	s, t := &m.rods[y.rods], y.t
	p := spread{rods: y.rods, sheet: t.plate.ID, t: t.plate.ThicknessMM, fy: t.fy, fu: t.fu, hole: holeOn(t.plate, s, s.Points[0]).DiaMM}
	for i := range m.things {
		if w := &m.things[i]; w != t && holeOn(w.plate, s, s.Points[0]) != nil {
			p.put(w)
		}
	}
	m.spreads = append(m.spreads, p)
}

func (p *spread) put(w *thing) {
	box := w.plate.Outer.BBox()
	p.washer, p.side = w, min(box.Width(), box.Height())
}

// spreadOnSupport finds a washer that a path goes through after the rods and straight before its support. The sheet's hole is taken as the washer's.
func (m *model) spreadOnSupport(k int) {
	s := &m.rods[k]
	for _, br := range m.branches {
		n := len(br.Through)
		if n < 3 || br.Through[n-3] != s.ID {
			continue
		}
		w := m.thing(br.Through[n-2])
		if w == nil {
			continue
		}
		if hole := holeOn(w.plate, s, s.Points[0]); hole != nil {
			p := spread{rods: k, sheet: br.Through[n-1], hole: hole.DiaMM}
			p.t, p.fy, p.fu = m.ply(p.sheet)
			p.put(w)
			m.spreads = append(m.spreads, p)
			return
		}
	}
}

// laySpreads makes places for each washer and the sheet under it.
func (r *run) laySpreads() {
	rules := &r.basis.Rules
	r.washers, r.pulls = make([]slots[Cut], len(r.spreads)), make([]slots[PullThrough], len(r.spreads))
	for i := range r.spreads {
		p := &r.spreads[i]
		at := r.rods[p.rods].middle
		r.pulls[i] = newSlots(rules.PullThrough, p.sheet+" at the rods", p.sheet, "pull-through", at, nil)
		r.places = append(r.places, &r.pulls[i])
		if p.washer == nil {
			continue
		}
		id := p.washer.plate.ID
		r.washers[i] = newSlots(rules.Cut, id+", beside the nut", id, "section", at, []string{"even pressure under the washer, cantilever from the nut's flats (elementary statics)"})
		r.places = append(r.places, &r.washers[i])
	}
}

// atSpreads gives the sheet and its washer the greatest pull of a rod in the case at hand.
func (r *run) atSpreads() {
	for i := range r.spreads {
		p := &r.spreads[i]
		worst, flats, thick := r.worstPull(p.rods), r.rods[p.rods].flats, 0.0
		if p.washer != nil {
			thick = p.washer.plate.ThicknessMM
			reach := max(p.side-flats, 0) / 2
			line := worst / p.side // per length of the side
			r.washers[i].consider(r, strip(p.washer, p.side, thick, line*reach*reach/2, line*reach, 0), "")
		}
		r.pulls[i].consider(r, PullThrough{T: worst, Flats: flats, Side: p.side, Washer: thick, Hole: p.hole, Sheet: p.t, Fy: p.fy, Fu: p.fu}, "")
	}
}

// worstPull is the greatest pull of a rod of a pattern, none in compression.
func (r *run) worstPull(k int) float64 {
	worst := 0.0
	for _, n := range r.rods[k].now {
		worst = max(worst, n)
	}
	return worst
}

// underNut is the width over which a rod's nut or its washer presses a sheet.
func (r *run) underNut(rods int) float64 {
	for i := range r.spreads {
		if p := &r.spreads[i]; p.rods == rods {
			return max(p.side, r.rods[rods].flats)
		}
	}
	return r.rods[rods].flats
}

// strangeSheets rules out washers and sheets of a metal that the basis has no rule for.
func (r *run) strangeSheets(on *Basis) {
	for i := range r.spreads {
		r.pulls[i].outside = r.strange(on, r.spreads[i].sheet)
		if w := r.spreads[i].washer; w != nil {
			r.washers[i].outside = r.strange(on, w.plate.ID)
		}
	}
}
