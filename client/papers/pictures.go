package papers

// This file sets drawings into papers.

import (
	"lugwright/client/draw"
	"lugwright/client/drawings"
	"lugwright/client/paper"
	"lugwright/client/run"
)

// halfMM is the height of a drawing of which two go on a page.
const halfMM = 108

// drawings are a bracket's.
func (p *page) drawings(b *run.Bracket) *drawings.Set {
	return p.in.Drawings.Of(b.Part, p.in.Result.Job.LoadCases(b.Spec))
}

// half is the size of a drawing of which two go on a page.
func (p *page) half() drawings.Options {
	return drawings.Options{Units: p.system, HeightMM: halfMM}
}

func (p *page) figures(list ...*draw.Drawing) {
	for _, d := range list {
		p.add(&paper.Figure{Drawing: d})
	}
}

// plateDrawing is a plate's, flat, with its dimensions.
func (p *page) plateDrawing(q *piece) *paper.Figure {
	o := drawings.PlateOptions{Options: p.half(), Hand: q.hand, Quantity: q.count}
	return &paper.Figure{Drawing: drawings.Plate(q.plate, o)}
}
