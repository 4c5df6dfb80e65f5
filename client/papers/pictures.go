package papers

// This file sets drawings into papers.

import (
	"lugwright/client/draw"
	"lugwright/client/drawings"
	"lugwright/client/paper"
	"lugwright/client/run"
)

// Heights of drawings: two on a page, and one that has a page nearly to itself.
const (
	halfMM  = 108
	largeMM = 185
)

// drawings are a bracket's.
func (p *page) drawings(b *run.Bracket) *drawings.Set {
	return p.in.Drawings.Of(b.Part, p.in.Result.Job.LoadCases(b.Spec), b.Fits...)
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

// plateDrawing is a plate's, flat, with its dimensions, no taller than a height.
func (p *page) plateDrawing(q *piece, heightMM float64) *paper.Figure {
	o := drawings.PlateOptions{Options: drawings.Options{Units: p.system, HeightMM: heightMM}, Hand: q.hand, Quantity: q.count, AtHoles: p.in.Result.AtHoles(q.plate.Mark)}
	return &paper.Figure{Drawing: drawings.Plate(q.plate, o)}
}
