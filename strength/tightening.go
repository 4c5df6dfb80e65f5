package strength

// Bolts of a group together, and how they are tightened: what a set bears, separation and torque where a preload is stated, slip where the joint must
// not slip, threads in a tapped ply.

import "lugwright/strength/material"

// tapped is a ply with a thread of its own for the bolts of a group.
type tapped struct {
	group, ply int
	f          Thread
}

// layTightening prepares the places; a group listed once more for a further shear plane has its bolts' tension in its own listing.
func (r *run) layTightening() {
	rules := &r.basis.Rules
	r.boltSets, r.preloads = make([]slots[BoltSet], len(r.groups)), make([]slots[BoltSet], len(r.groups))
	r.slips = make([]slots[Bolt], len(r.groups))
	for i := range r.groups {
		g := &r.groups[i]
		r.boltSets[i] = newSlots(rules.BoltSet, g.ID, g.ID, "set of bolts", g.Pose.Origin, nil)
		r.boltSets[i].idle = idle(g.passes)
		r.places = append(r.places, &r.boltSets[i])
		if g.Preload == 0 {
			r.skip("slip, separation and torque of the bolts", g.ID, "no preload is stated")
			continue
		}
		notes := []string{"prying forces are not in the tension"}
		r.preloads[i] = newSlots(rules.Preloaded, g.ID, g.ID, "preload", g.Pose.Origin, notes)
		r.preloads[i].idle = idle(g.passes)
		r.places = append(r.places, &r.preloads[i])
		if g.SlipC == 0 {
			r.skip("slip of the bolts", g.ID, "no slip coefficient is stated: the joint may slip into bearing")
			continue
		}
		r.slips[i] = newSlots(rules.Slip, g.ID, g.ID, "slip", g.Pose.Origin, notes)
		r.slips[i].idle = idle(g.passes)
		r.places = append(r.places, &r.slips[i])
	}
	r.layThreads()
}

// layThreads makes a place for each tapped ply.
func (r *run) layThreads() {
	for i := range r.groups {
		g := &r.groups[i]
		size, err := material.ParseBolt(g.Size)
		for k, ply := range g.Plies {
			if err != nil || !r.isTapped(g, ply.Thing) {
				continue
			}
			_, _, fu := r.ply(ply.Thing)
			if fu == 0 {
				r.skip("thread in the ply", ply.Thing, "its material is not known")
				continue
			}
			r.tapped = append(r.tapped, tapped{i, k, Thread{D: g.DiaMM, Pitch: size.PitchMM, L: ply.ThicknessMM, Fub: g.f.Fub, Fu: fu, As: g.f.As, Preload: g.Preload}})
		}
	}
	r.threads = make([]slots[Thread], len(r.tapped))
	for n, t := range r.tapped {
		g := &r.groups[t.group]
		id := g.Plies[t.ply].Thing
		r.threads[n] = newSlots(r.basis.Rules.Thread, id+" at "+g.ID+", tapped", id, "tapped thread", g.Pose.Origin, nil)
		r.threads[n].idle, r.threads[n].outside = idle(g.passes), r.strange(r.basis, id)
		r.places = append(r.places, &r.threads[n])
	}
}

// isTapped says whether a plate has threads at a group's bolts.
func (r *run) isTapped(g *boltGroup, id string) bool {
	t := r.thing(id)
	if t == nil {
		return false
	}
	for _, h := range t.plate.Holes {
		if h.Thread == "" {
			continue
		}
		r.spend(4 * len(g.Points))
		for _, p := range g.Points {
			off := t.plate.HoleAt(h).Sub(g.Pose.At(p.X, p.Y, 0))
			if off.AddScaled(-off.Dot(g.Pose.W()), g.Pose.W()).Norm() < 0.01 {
				return true
			}
		}
	}
	return false
}

// atTightening gives each group its worst tension, and each bolt's own pair of forces where the joint must not slip.
func (r *run) atTightening(i int) {
	g := &r.groups[i]
	f := g.set
	f.Service = r.factor
	for _, t := range g.tensions {
		f.T = max(f.T, t)
	}
	r.boltSets[i].consider(r, f, "")
	if g.Preload == 0 {
		return
	}
	r.preloads[i].consider(r, f, "")
	if g.SlipC == 0 {
		return
	}
	for b := range g.pos {
		one := g.f
		one.V, one.T = g.shears[b].Norm(), g.tensions[b]
		r.slips[i].consider(r, one, "")
	}
}

// atThreads gives tapped plies the worst tension of their bolts.
func (r *run) atThreads() {
	for n := range r.tapped {
		f := r.tapped[n].f
		r.spend(1 + len(r.groups[r.tapped[n].group].tensions))
		f.Service = r.factor
		for _, t := range r.groups[r.tapped[n].group].tensions {
			f.T = max(f.T, t)
		}
		r.threads[n].consider(r, f, "")
	}
}
