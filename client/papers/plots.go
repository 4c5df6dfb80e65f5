package papers

// This file is the plots: numbers of the vehicle's statics and of other thicknesses of plate as pictures.

import (
	"lugwright/client/plots"
)

func plotsOf(p *page) string {
	if v := p.in.Vehicle; v != nil {
		for _, g := range plots.OfVehicle(v.Answer, v.Request, plots.Scale{System: p.system}) {
			p.blocks = append(p.blocks, g.Blocks(2)...)
		}
	}
	if g := p.in.Thickness; g != nil {
		p.blocks = append(p.blocks, g.Blocks(2)...)
	}
	if p.blocks == nil {
		if p.in.Vehicle == nil {
			return p.noVehicle() + ", and names no plates over which to vary a thickness"
		}
		return "the vehicle has no mounts, frame or measured gaps to show"
	}
	if p.in.Vehicle == nil {
		p.cautions(4, 5)
		return ""
	}
	p.cautions(2, 4, 5, 6)
	return ""
}
