package papers

// This file is the plots of the vehicle: numbers of the calc sheet and of loads as pictures.

import (
	"lugwright/client/paper"
	"lugwright/client/plots"
)

func plotsOf(p *page) string {
	v := p.in.Vehicle
	if v == nil {
		return p.noVehicle()
	}
	s := plots.Scale{System: p.system}
	if charts := plots.Rails(v.Answer, v.Request, s); charts != nil {
		p.head("Rails")
		p.charts(charts...)
		p.bullets("service loads as the cases have them, no load factor inside; each rail under the way of sharing that is worst for it")
	}
	if r := v.Answer.Clearance; r != nil {
		if c := plots.Twist(r, v.Request.Points, s); c != nil {
			p.head("Twist")
			p.charts(c)
			p.bullets("by geometry, half-width x tan or height x sin of the angle, what is needed beside twist taken off; read the gaps in the twist test")
		}
	}
	for i := range v.Answer.Report.Bodies {
		r := &v.Answer.Report.Bodies[i]
		if charts := plots.Reactions(r, s); charts != nil {
			p.head("Mounts of " + p.body(i))
			p.charts(charts...)
			p.bullets("by the stiffness of the mounts; what a bracket is designed for also holds the ways of sharing and the masses' doubt: the calc sheet lists it")
		}
	}
	if p.blocks == nil {
		return "the vehicle has no mounts, frame or measured gaps to show"
	}
	p.cautions(2, 5, 6)
	return ""
}

// body names a body by its place among them.
func (p *page) body(i int) string {
	if b := p.in.Vehicle.Request.Bodies; i < len(b) && b[i].Name != "" {
		return b[i].Name
	}
	return "the body"
}

func (p *page) charts(list ...*plots.Chart) {
	for _, c := range list {
		p.add(&paper.Figure{Drawing: c.Drawing()})
	}
}
