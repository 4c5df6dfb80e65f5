package papers

// This file is the paint and mask map.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/client/paper"
	"lugwright/client/run"
	"lugwright/part"
)

func paintMap(p *page) string {
	if len(p.brackets()) == 0 {
		return noBrackets
	}
	for i := range p.brackets() {
		p.paintOf(&p.brackets()[i])
	}
	p.head("The rest of it")
	p.ticks("after welding: slag and spatter off, sharp edges rounded so that paint holds, degreased (common practice, no source)",
		"holes drilled in the frame: bare steel primed before anything is bolted over it (guide B)",
		"earth points: bright metal under each strap's lug, toothed washer, grease or lacquer over it when it is tight; no strap through a pin that turns (common practice, no source)",
		"part marks left to be read, or written again on the paint",
		"threads and pin bores cleared of paint before fitting")
	var voids []string
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for _, n := range b.Part.Notes {
			if strings.Contains(n, "hot-dip") {
				voids = append(voids, b.Spec.Name+": "+p.words(n))
			}
		}
	}
	p.bullets(voids...)
	p.cautions(10)
	return ""
}

func (p *page) paintOf(b *run.Bracket) {
	p.head(title(b))
	t := table("", "where", "what", "done")
	add := func(where, what string) {
		if !slices.ContainsFunc(t.Rows, func(r paper.Row) bool { return r.Cells[0] == where && r.Cells[1] == what }) {
			row(t, where, what, tickBox)
		}
	}
	for k := range b.Part.Bolts {
		g := &b.Part.Bolts[k]
		faces := thing(b.Part, g.Plies[0].Thing) + " against " + thing(b.Part, g.Plies[1].Thing) + " (" + g.ID + ")"
		switch {
		case g.SlipC > 0:
			add(faces, fmt.Sprintf("MASK, no paint: the joint may not slip and is reckoned with a coefficient of %.3g; surface as that asks", g.SlipC))
		default:
			add(faces, "primer only, thin: at most "+p.length(0.05)+" under heads, nuts and between the faces; seal the edge afterwards")
		}
		if tappedDepth(b.Part, g) > 0 {
			add("tapped holes of "+g.ID, "MASK: plug the threads")
		}
	}
	for k := range b.Part.Pins {
		if q := &b.Part.Pins[k]; len(q.Seats) > 0 {
			add(fmt.Sprintf("pin bore, %s finished: %s", p.length(bore(q)), seatNames(b.Part, q)), "MASK the bore and what turns on its face; grease it bare")
		}
	}
	for k := range b.Part.Contacts {
		c := &b.Part.Contacts[k]
		words := "primer only: faces that press on each other"
		if c.WrapRad > 0 {
			words = "primer only in the bore: paint, liner and tube share the play"
		}
		add(thing(b.Part, c.Things[0])+" on "+thing(b.Part, c.Things[1]), words)
	}
	for k := range b.Part.Rods {
		add("threads of rods "+b.Part.Rods[k].Size, "MASK; grease or wax once the nuts are locked")
	}
	if aluminiumOnSteel(b.Part) {
		add("aluminium against steel", "two coats of primer on each face, an insulating layer with closed edges, sleeves on the bolts or rods (army corrosion manuals)")
	}
	if len(b.Part.Welds) > 0 {
		add("joints to weld", "bare and bright until they are welded, then coated like the rest; "+jointsOnFrame(b.Part))
	}
	if len(t.Rows) == 0 {
		p.say("Coated all over.")
		return
	}
	p.add(t)
	p.figures(p.drawings(b).Parts(p.half()))
}

// jointsOnFrame says which joints are made where the bracket stands.
func jointsOnFrame(b *part.Bracket) string {
	var out []string
	for i := range b.Welds {
		if b.Support(b.Welds[i].Joins[1]) != nil {
			out = append(out, joint(b, b.Welds[i].ID))
		}
	}
	if out == nil {
		return "none is on the vehicle"
	}
	return "on the vehicle: " + strings.Join(out, ", ")
}

func bore(q *part.Pin) float64 {
	for _, s := range q.Seats {
		if s.HoleMM > 0 {
			return s.HoleMM
		}
	}
	return q.DiaMM
}

func seatNames(b *part.Bracket, q *part.Pin) string {
	var out []string
	for _, s := range q.Seats {
		name := "the other half"
		if s.Thing != "" && b.Support(s.Thing) == nil {
			name = thing(b, s.Thing)
		}
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return strings.Join(out, ", ")
}
