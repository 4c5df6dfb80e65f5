package pack

// This file adds the list of what is bought: bolts, pins and rods.

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lugwright/part"
)

// bought is one row: everything but the quantity says what it is.
type bought struct {
	item, size, grade, gripMM, lengthMM, notes string
	count                                      int
	users                                      []string
}

func (a *assembly) addBuyList(context.Context) error {
	var all []*bought
	for i := range a.Result.Brackets {
		b := &a.Result.Brackets[i]
		var own []*bought
		for _, item := range items(b.Part) {
			own = addItem(own, item)
		}
		for _, item := range own {
			item.count *= b.Spec.Quantity
			item.users = []string{fmt.Sprintf("%s (%d)", b.Spec.Name, item.count)}
			all = addItem(all, item)
		}
	}
	rows := [][]string{{"item", "size", "grade_or_material", "grip_mm", "length_mm", "qty", "for", "notes"}}
	for _, x := range all {
		rows = append(rows, []string{x.item, x.size, x.grade, x.gripMM, x.lengthMM, strconv.Itoa(x.count), strings.Join(x.users, "; "), x.notes})
	}
	a.list("buy-list.csv", rows)
	return nil
}

func addItem(all []*bought, item *bought) []*bought {
	at := slices.IndexFunc(all, func(x *bought) bool {
		return x.item == item.item && x.size == item.size && x.grade == item.grade && x.gripMM == item.gripMM &&
			x.lengthMM == item.lengthMM && x.notes == item.notes
	})
	if at < 0 {
		return append(all, item)
	}
	all[at].count += item.count
	all[at].users = append(all[at].users, item.users...)
	return all
}

// items are one bracket's.
func items(b *part.Bracket) []*bought {
	var out []*bought
	for _, g := range b.Bolts {
		if g.SameAs != "" {
			continue // bought once, for all their shear planes
		}
		item, notes := "bolt with nut and washers", "threads may lie in the shear plane"
		switch {
		case tapped(b, &g):
			item, notes = "screw with locking washer", "into tapped holes of "+g.Plies[1].Thing+": the grip and the depth of the thread"
		case !g.ThreadsIn:
			notes = "threads must stay out of the shear plane: choose the shank by the grip"
		}
		out = append(out, &bought{item: item, size: g.Size, grade: g.Grade, gripMM: hundredths(g.GripMM), notes: notes, count: len(g.Points)})
	}
	for _, p := range b.Pins {
		out = append(out, &bought{
			item: "pin", size: mm(p.DiaMM) + " mm diameter", grade: p.Material, lengthMM: hundredths(p.LengthMM),
			notes: fmt.Sprintf("ends: %s and %s", p.Ends[0].Kind, p.Ends[1].Kind), count: 1,
		})
		for _, e := range p.Ends {
			if e.Kind == part.EndRetainer && e.Size != "" {
				out = append(out, &bought{item: "retaining bolt with nut and washer", size: e.Size, gripMM: hundredths(p.DiaMM), notes: "through the pin's end: grade and lock wire as noted with the pin", count: 1})
			}
		}
	}
	for _, r := range b.Rods {
		out = append(out, &bought{item: "threaded rod", size: r.Size, grade: r.Grade, lengthMM: hundredths(r.FreeMM), notes: "length is free between its ends; add both engagements", count: len(r.Points)})
	}
	return out
}

// tapped says whether bolts are screwed into the plate behind.
func tapped(b *part.Bracket, g *part.BoltGroup) bool {
	p := b.Plate(g.Plies[1].Thing)
	return p != nil && slices.ContainsFunc(p.Holes, func(h part.Hole) bool { return h.Finish == part.Tapped && h.Thread == g.Size })
}
