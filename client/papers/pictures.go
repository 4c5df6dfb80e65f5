package papers

// This file sets drawings into papers.

import (
	"slices"

	"lugwright/client/drawings"
	"lugwright/client/paper"
	"lugwright/client/run"
)

// halfMM is the height of a drawing of which two go on a page.
const halfMM = 108

// drawingsOf are a bracket's drawings of some names.
func (p *page) drawingsOf(b *run.Bracket, names ...string) {
	for _, d := range drawings.Bracket(b.Part, drawings.Options{Units: p.system, HeightMM: halfMM}) {
		if slices.Contains(names, d.Name) {
			p.add(&paper.Figure{Drawing: d})
		}
	}
}

// plateDrawing is a plate's, flat, with its dimensions.
func (p *page) plateDrawing(q *piece) *paper.Figure {
	o := drawings.PlateOptions{Options: drawings.Options{Units: p.system, HeightMM: halfMM}, Hand: q.hand, Quantity: q.count}
	return &paper.Figure{Drawing: drawings.Plate(q.plate, o)}
}
