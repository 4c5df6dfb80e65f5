package strength

// Metals: those that a basis has no rule for, which put a check outside the rule, and aluminium, whose strength a weld lowers.

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength/material"
)

// softenedMM is how far from a weld aluminium counts as softened: 40 mm, the greatest extent of EN 1999-1-1, 6.1.6.3, and more than the 1 in
// of the US aluminium manual (both from memory).
const softenedMM = 40

// Covers says whether the basis has rules for a metal. Carbon steel every one has.
func (b *Basis) Covers(f material.Family) bool {
	return f == material.CarbonSteel || slices.Contains(b.Metals, f)
}

// strange says why the rules of a basis cannot speak for the named things: empty when they can.
func (m *model) strange(on *Basis, ids ...string) string {
	for _, id := range ids {
		if g := m.gradeOf(id); g != nil && !on.Covers(g.Family) {
			return strangeMetal(on, id, g)
		}
	}
	return ""
}

func strangeMetal(on *Basis, id string, g *material.Grade) string {
	return fmt.Sprintf("%s is of %s, %s, for which %s gives no rule", id, g.Name, g.Family, on.Card.Document)
}

// atHoles is the basis whose rules serve pin holes.
func (r *run) atHoles() *Basis {
	if r.basis.pinJoint != nil {
		return r.basis.pinJoint
	}
	return r.basis
}

// strangeWeld is the same for a weld, which besides wants a filler that suits the metal.
func (m *model) strangeWeld(on *Basis, joins ...string) string {
	if why := m.strange(on, joins...); why != "" {
		return why
	}
	for _, id := range joins {
		if g := m.gradeOf(id); g != nil && g.Family == material.Aluminium {
			return fmt.Sprintf("%s is of %s, aluminium: its weld has the strength of an aluminium filler, and the list of fillers has none", id, g.Name)
		}
	}
	return ""
}

// mixed says why no rule speaks for a section of several metals: sections are worked out for one stiffness.
func (m *model) mixed(ids ...string) string {
	var first *material.Grade
	for _, id := range ids {
		g := m.gradeOf(id)
		if first == nil {
			first = g
		}
		if g != nil && g.Family != first.Family && (g.Family == material.Aluminium || first.Family == material.Aluminium) {
			return fmt.Sprintf("%s and %s act together in one section, and %s is of another stiffness", ids[0], id, g.Family)
		}
	}
	return ""
}

// gradeOf is the grade of a plate, a member or its leg, a support, a pin or rods; nil when it has none.
func (m *model) gradeOf(id string) *material.Grade {
	g, err := material.LookupGrade(m.materialOf(id))
	if err != nil {
		return nil
	}
	return g
}

func (m *model) materialOf(id string) string {
	if p := m.b.Pin(id); p != nil {
		return p.Material
	}
	if s := m.b.Support(id); s != nil {
		return s.Material
	}
	m.spend(len(m.b.Rods) + len(m.b.Plates) + len(m.b.Members))
	for i := range m.b.Rods {
		if s := &m.b.Rods[i]; s.ID == id {
			return s.Grade
		}
	}
	for i := range m.b.Plates {
		if p := &m.b.Plates[i]; p.ID == id {
			return p.Material
		}
	}
	if t := m.thing(id); t != nil { // a leg, or what a fold turns up
		return t.plate.Material
	}
	for i := range m.b.Members {
		if mem := &m.b.Members[i]; id == mem.ID || id == mem.ID+".a" || id == mem.ID+".b" {
			return mem.Material
		}
	}
	return ""
}

// soften gives an aluminium thing that is welded the strength beside a weld.
func (m *model) soften(t *thing, g *material.Grade, field string) {
	t.parentFy, t.parentFu = t.fy, t.fu
	m.spend(len(m.b.Welds))
	if g == nil || g.Family != material.Aluminium || !slices.ContainsFunc(m.b.Welds, t.inWeld) {
		return
	}
	fy, fu, err := g.WeldedStrength(t.plate.ThicknessMM)
	if err != nil {
		m.refuse(field, err, "a grade whose strength beside a weld is known, or no weld on the part")
		return
	}
	t.fy, t.fu = fy, fu
	m.note("%s: welded, so %s is taken at its strength beside a weld (%s) everywhere but at holes further than %d mm and a hole's width from every weld", t.plate.ID, g.Name, g.WeldedFrom, softenedMM)
}

// inWeld says whether a weld heats a thing: one on it, or on any leg of the angle that it is a leg of.
func (t *thing) inWeld(w part.WeldGroup) bool {
	return slices.ContainsFunc(w.Joins[:], func(id string) bool {
		return id == t.plate.ID || t.of != "" && (id == t.of || strings.HasPrefix(id, t.of+"."))
	})
}

// atHole is the strength round a pin hole: the parent metal's where the plate for a hole's width round it is clear of every weld's heat.
func (m *model) atHole(t *thing, h part.Hole) (fy, fu float64) {
	if t.fy == t.parentFy {
		return t.fy, t.fu
	}
	at := t.plate.HoleAt(h)
	for _, w := range m.b.Welds {
		if !t.inWeld(w) {
			continue
		}
		m.spend(len(w.Segments))
		for _, s := range w.Segments {
			if distance(at, s)-w.WidthMM/2-1.5*h.DiaMM < softenedMM {
				return t.fy, t.fu
			}
		}
	}
	return t.parentFy, t.parentFu
}

// distance is that of a point from a weld segment.
func distance(p part.Vec, s part.WeldSegment) float64 {
	along := s.B.Sub(s.A)
	k := 0.0
	if n := along.Norm(); n > 0 {
		k = math.Max(0, math.Min(1, p.Sub(s.A).Dot(along)/(n*n)))
	}
	return p.Sub(s.A.AddScaled(k, along)).Norm()
}

// markMetals rules out the places whose metal the basis, or the basis of the pin joint, has no rule for.
func (r *run) markMetals() {
	on, atHoles := r.basis, r.atHoles()
	k := 0
	for i := range r.pins {
		p := &r.pins[i]
		why := r.strange(on, p.ID)
		r.pinPlanes[i].outside, r.pinSpans[i].outside = why, why
		for s := range p.seats {
			r.bores[k].outside = r.strange(atHoles, p.seats[s].plate.plate.ID, p.ID)
			k++
		}
	}
	for i := range r.b.Sweeps {
		ids := r.sectionOf(&r.b.Sweeps[i])
		why := r.strange(on, ids...)
		if why == "" {
			why = r.mixed(ids...)
		}
		if why == "" {
			why = r.slender[i]
		}
		r.cutSlots[i].outside, r.cornerPlates[i].outside = why, why
	}
	for i := range r.outstands {
		r.outstands[i].outside = r.strange(on, r.outstands[i].thing)
	}
	r.markWelds(on)
	for i := range r.groups {
		for k := range r.bearings[i] {
			r.bearings[i][k].outside = r.strange(on, r.bearings[i][k].thing)
			r.pryings[i][k].outside = r.strange(on, r.pryings[i][k].thing)
		}
	}
	for i := range r.blocks {
		r.blocks[i].outside = r.strange(on, r.blocks[i].thing)
	}
	for i := range r.trays {
		id := r.trays[i].t.plate.ID
		why := r.strange(on, id)
		r.bottoms[i].outside, r.sides[i].outside, r.rims[i].outside = why, why, why
	}
	r.strangeSheets(on)
	for i := range r.rods {
		if g := r.gradeOf(r.rods[i].ID); g != nil && g.Family != material.CarbonSteel {
			r.rodSlots[i].outside = fmt.Sprintf("%s is of %s, %s: the rules for rods are of steel ones", r.rods[i].ID, g.Name, g.Family)
		}
	}
	for i := range r.seats {
		r.seatSlots[i].outside = r.strange(on, r.seats[i].Things[:]...)
	}
	for i := range r.wallSlots {
		r.wallSlots[i].outside = r.strange(on, r.wallSlots[i].thing)
	}
}

// markWelds does so for welds, with those of a kind that no rule here speaks of.
func (r *run) markWelds(on *Basis) {
	for i := range r.b.Welds {
		r.sizes[i].outside = r.strangeWeld(on, r.b.Welds[i].Joins[:]...)
	}
	for i := range r.flows {
		w := r.flowSets[i].weld
		r.flows[i].outside = r.strangeWeld(on, w.Joins[:]...)
		if w.Kind == part.PJP || w.Kind == part.Plug {
			r.flows[i].outside = "the weld is " + string(w.Kind) + "; between web and flange only fillets and complete penetration are covered"
		}
	}
	for i := range r.roots {
		r.roots[i].outside = r.strangeWeld(on, r.weldedTo(r.roots[i].thing)...)
		for k := range r.rootSets[i].welds {
			if w := &r.rootSets[i].welds[k]; w.PJP() && !hasThroat(flatOf(r.b, w.standing), r.b.Member(w.standing)) {
				r.roots[i].outside = fmt.Sprintf("a groove weld of partial penetration on %s, whose throat lies within it: name the leg or plate that it holds", w.standing)
			}
		}
	}
	for i := range r.ribRoots {
		r.ribRoots[i].outside = r.strangeWeld(on, r.weldedTo(r.ribRoots[i].thing)...)
	}
}

// sectionOf names the swept things and all that composites join to them anywhere.
func (m *model) sectionOf(s *part.Sweep) []string {
	ids := slices.Clone(s.Things)
	for changed := true; changed; {
		changed = false
		for _, c := range m.b.Composites {
			m.spend(1 + 2*len(c.Things)*len(ids))
			if !slices.ContainsFunc(c.Things, func(id string) bool { return slices.Contains(ids, id) }) {
				continue
			}
			for _, id := range c.Things {
				if !slices.Contains(ids, id) {
					ids, changed = append(ids, id), true
				}
			}
		}
	}
	return ids
}

// weldedTo names a thing and what welds join to it.
func (m *model) weldedTo(id string) []string {
	ids := []string{id}
	m.spend(len(m.b.Welds))
	for _, w := range m.b.Welds {
		if slices.Contains(w.Joins[:], id) || w.ID == id {
			ids = append(ids, w.Joins[:]...)
		}
	}
	return ids
}
