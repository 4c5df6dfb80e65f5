package papers

// This file sets drawings into papers.

import (
	"slices"

	"lugwright/client/drawings"
	"lugwright/client/paper"
	"lugwright/client/run"
)

// Heights of drawings: two on a page, and one that has a page nearly to itself.
const (
	halfMM  = 108
	largeMM = 185
)

// drawingsOf are a bracket's drawings of some names.
func (p *page) drawingsOf(b *run.Bracket, names ...string) {
	for _, d := range drawings.Bracket(b.Part, drawings.Options{Units: p.system, HeightMM: halfMM}) {
		if slices.Contains(names, d.Name) {
			p.add(&paper.Figure{Drawing: d})
		}
	}
}

// plateDrawing is a plate's, flat, with its dimensions, no taller than a height.
func (p *page) plateDrawing(q *piece, heightMM float64) *paper.Figure {
	o := drawings.PlateOptions{Options: drawings.Options{Units: p.system, HeightMM: heightMM}, Hand: q.hand, Quantity: q.count}
	return &paper.Figure{Drawing: drawings.Plate(q.plate, o)}
}
