package papers

// This file says which plates come from the shop without their marks.

import (
	"strings"

	"lugwright/geometry/shop"
)

// unmarked is for whoever picks the plates up; empty where all are marked.
func (p *page) unmarked() string {
	plates, _ := p.pieces()
	profile := &p.in.Result.Job.Shop
	var bare []string
	for _, q := range plates {
		if profile.Unmarked(q.plate) != "" {
			bare = append(bare, q.plate.Mark+" "+q.plate.Name)
		}
	}
	switch {
	case bare == nil:
		return ""
	case profile.Marks.Style == shop.NoMarks:
		return "the shop marks no plate: paint each one's mark on, or tag it, when it is picked up, by the cut list and the plates' drawings"
	}
	return "too small for an etched mark, so paint it on or tag them when they are picked up: " + strings.Join(bare, ", ")
}
