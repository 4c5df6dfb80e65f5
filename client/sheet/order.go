package sheet

// This file puts the checks of a bracket in the order of the drawing: pins, plates and members by part mark, welds, bolts,
// rods, contacts, support.

import (
	"cmp"
	"fmt"
	"slices"

	"lugwright/client/drawings"
	"lugwright/part"
	"lugwright/strength"
)

// group is one thing of the drawing with its checks, worst first.
type group struct {
	title  string
	mark   string   // by which the drawing names it
	ref    string   // of the drawing's group
	ids    []string // names by which a check refers to it
	checks []*strength.Check
	// Checks of welds acting together that govern at this weld and stand under another.
	elsewhere []*strength.Check
}

// grouped gives the things that have checks, in the order of the drawing. A check of something that the drawing does not
// name comes last, so that none is lost.
func grouped(b *part.Bracket, checks []strength.Check) []group {
	all := things(b)
	rest := group{title: "Other"}
	for i := range checks {
		k := &checks[i]
		at := slices.IndexFunc(all, func(g group) bool { return slices.Contains(g.ids, k.Thing) })
		if at < 0 {
			rest.checks = append(rest.checks, k)
		} else {
			all[at].checks = append(all[at].checks, k)
		}
		if id := k.WeldOf(b); id != "" && id != k.Thing && k.Verdict != strength.NotApplied {
			at = slices.IndexFunc(all, func(g group) bool { return slices.Contains(g.ids, id) })
			all[at].elsewhere = append(all[at].elsewhere, k)
		}
	}
	return slices.DeleteFunc(append(all, rest), func(g group) bool { return len(g.checks)+len(g.elsewhere) == 0 })
}

func things(b *part.Bracket) []group {
	var out []group
	add := func(mark, title string, ids ...string) {
		out = append(out, group{title: title, mark: mark, ref: drawings.GroupID(mark), ids: ids})
	}
	for _, p := range b.Pins {
		add(cmp.Or(p.Mark, p.ID), "Pin "+p.ID, p.ID)
	}
	for _, p := range byMark(b.Plates, func(p part.Plate) string { return p.Mark }) {
		add(p.Mark, fmt.Sprintf("Plate %s: %s (%s)", p.Mark, p.Name, p.ID), append(p.Flanges(), p.ID)...)
	}
	for _, m := range byMark(b.Members, func(m part.Member) string { return m.Mark }) {
		add(m.Mark, fmt.Sprintf("Member %s: %s (%s)", m.Mark, m.Name, m.ID), m.ID, m.ID+".a", m.ID+".b")
	}
	for _, w := range b.Welds {
		name := weldName(b, w.ID)
		out = append(out, group{title: fmt.Sprintf("Weld %s: %s to %s", name, w.Joins[0], w.Joins[1]), mark: name, ref: drawings.GroupID(w.ID), ids: []string{w.ID}})
	}
	for _, g := range b.Bolts {
		add(g.ID, fmt.Sprintf("Bolts %s: %s", g.ID, g.Size), g.ID)
	}
	for _, r := range b.Rods {
		add(r.ID, "Rods "+r.ID, r.ID)
	}
	for _, c := range b.Contacts {
		add(c.ID, "Contact "+c.ID, c.ID)
	}
	for _, t := range b.Supports {
		add(t.ID, fmt.Sprintf("Support %s: %s", t.ID, t.Kind), t.ID)
	}
	return out
}

// weldName is a weld's number on drawings and weld map, with its name.
func weldName(b *part.Bracket, id string) string {
	return fmt.Sprintf("W%d %s", drawings.WeldNumber(b, id), id)
}

// byMark sorts marks of one root by their running number: a shorter mark has the smaller one.
func byMark[T any](list []T, mark func(T) string) []T {
	return slices.SortedStableFunc(slices.Values(list), func(a, b T) int {
		return cmp.Or(cmp.Compare(len(mark(a)), len(mark(b))), cmp.Compare(mark(a), mark(b)))
	})
}
