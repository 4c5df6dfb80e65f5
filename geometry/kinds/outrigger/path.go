package outrigger

// Bolts, supports, shares, load paths.

import (
	"fmt"
	"slices"

	"lugwright/geometry/fab"
	"lugwright/part"
)

func (d *design) addBolts(b *part.Bracket) {
	web := part.Support{
		ID: "support", Kind: part.RailWeb, ThicknessMM: d.v.MM("support_thickness"), Material: d.v.Word("support_material"),
		ClearMM: d.v.MM("web_clear_height"), Couple: part.CouplePath(d.v.Word("couple")),
	}
	b.Supports = append(b.Supports, web)
	b.Bolts = append(b.Bolts, d.base.Bolts("bolts", "base", web, upright(0)))
}

// rooted is the rest of a plate's way to the web.
func (a arm) rooted() []string { return []string{a.id, a.weld(), "base", "bolts", "support"} }

// addPin brings the lug's load to the plates through the pin; along the pin the lug presses one of them, and the pin's ends may pull the other.
func (d *design) addPin(b *part.Bracket) {
	rear, front := arms[1], arms[0]
	d.lug.Hold(b, [2]string{rear.id, front.id}, d.t, d.v.Word("material"), part.Vec{X: d.out})
	b.Shares = append(b.Shares, part.Share{ID: "travel", Rule: part.ByPinSpan, Legs: 2, Pin: "pin", Source: "statics of the pin, lug at either end of its travel"})
	if d.lug.Tied() {
		b.Shares = append(b.Shares, part.Share{
			ID: "tie", Rule: part.Between, Legs: 2, Lo: 0, Hi: 0.5,
			Source: "head and nut pull the far plate along once the end play is used up; from nothing to an equal share, common practice, no source",
		})
	}
	branch := func(share string, leg int, a arm, before ...string) part.Branch {
		return part.Branch{Share: share, Leg: leg, At: part.Vec{X: d.out, Y: d.y(a)}, Through: append(before, a.rooted()...)}
	}
	for _, c := range fab.Forces() {
		near, far := front, rear
		var branches []part.Branch
		switch c {
		case part.FyMinus:
			near, far = rear, front
			fallthrough
		case part.FyPlus:
			branches = []part.Branch{branch("", 0, near)}
			if d.lug.Tied() {
				branches = []part.Branch{branch("tie", 0, far, "pin"), branch("tie", 1, near)}
			}
		default: // seats in order along the pin
			branches = []part.Branch{branch("travel", 0, rear, "pin"), branch("travel", 1, front, "pin")}
		}
		b.Paths = append(b.Paths, part.Path{LoadPoint: "pin", Component: c, Branches: branches})
	}
}

// addPaths brings what the mount does to the head plate down both plates, at all bounds.
func (d *design) addPaths(b *part.Bracket) {
	b.LoadPoints = append(b.LoadPoints, part.LoadPoint{ID: "mount", At: d.place(0)})
	low, high := d.v.Ratio("hold_low"), d.v.Ratio("hold_high")
	b.Shares = append(b.Shares,
		part.Share{ID: "plates", Rule: part.Equal, Legs: 2, Source: "statics of the head plate on both plates"},
		part.Share{
			ID: "hold", Rule: part.Between, Legs: 2, Lo: low, Hi: high,
			Source: fmt.Sprintf("hold of the plates' outer ends, %.4g to %.4g of a frame's whose roots hold nothing, stated by the builder; statics at either bound", low, high),
		},
	)
	if d.off > 0 {
		b.Shares = append(b.Shares, part.Share{ID: "off", Rule: part.Between, Legs: 2, Lo: 0, Hi: 1, Source: "load off the middle to the front or to the rear, stated by the builder"})
	}
	if d.endT > 0 {
		b.Shares = append(b.Shares,
			part.Share{ID: "by", Rule: part.Between, Legs: 2, Lo: 0, Hi: 1, Source: "the ends are held by the head plate, by the end tie, or by both"},
			part.Share{ID: "tied plates", Rule: part.Equal, Legs: 4, Source: "statics of the end tie between both plates"},
		)
	}
	for _, c := range part.Components() {
		p := part.Path{LoadPoint: "mount", Component: c}
		if d.off == 0 {
			d.addBranches(&p, 0)
		} else {
			d.addBranches(&p, d.off, part.Fork{Share: "off"})
			d.addBranches(&p, -d.off, part.Fork{Share: "off", Leg: 1})
		}
		b.Paths = append(b.Paths, p)
	}
}

// addBranches adds the ways of a component at a place off the middle.
func (d *design) addBranches(p *part.Path, off float64, way ...part.Fork) {
	c := p.Component
	if c != part.FyPlus && c != part.FyMinus {
		d.addPair(p, off, false, way)
		return
	}
	on := func(forks ...part.Fork) []part.Fork { return append(slices.Clone(way), forks...) }
	held, by := part.Fork{Share: "hold"}, part.Fork{Share: "by"}
	if d.endT == 0 {
		d.addPair(p, off, true, on(held))
	} else {
		d.addPair(p, off, true, on(held, by))
		by.Leg = 1
		d.addTied(p, off, on(held, by))
	}
	held.Leg = 1
	d.addPair(p, off, false, on(held))
}

// addPair brings a component down both plates, their ends held by the head plate or free.
func (d *design) addPair(p *part.Path, off float64, held bool, way []part.Fork) {
	for k, a := range arms {
		l := d.free(p.Component, off, a)
		if held {
			l = l.plus(d.turned(p.Component, off, a, d.headMid(), d.top()))
		}
		br := forked(append(slices.Clone(way), part.Fork{Share: "plates", Leg: k}), d.place(off), d.fromHead(a))
		p.Branches = append(p.Branches, leg(br, p.Component, l, float64(len(arms))))
	}
}

func (d *design) fromHead(a arm) []string {
	return append([]string{"head", a.headWeld()}, a.rooted()...)
}

// addTied brings a component down both plates as hinges do, and what holds their ends from one to the other by the end tie: what the first plate is spared
// is a leg of its own, which meets it and its weld on the head plate against what goes on to the other. Between tie and head plate's middle the other plate
// is seen bent as both are.
func (d *design) addTied(p *part.Path, off float64, way []part.Fork) {
	c, on, other := p.Component, arms[0], arms[1]
	across := append([]string{"head", on.headWeld(), on.id, on.endWeld(), "end", other.endWeld()}, other.rooted()...)
	turned := d.turned(c, off, other, d.end(), d.top()-d.tip/2)
	for k, one := range [4]struct {
		l       load
		through []string
	}{
		{d.free(c, off, on), d.fromHead(on)}, {d.free(c, off, other), d.fromHead(other)}, {turned, across}, {turned.by(-1), d.fromHead(on)},
	} {
		br := forked(append(slices.Clone(way), part.Fork{Share: "tied plates", Leg: k}), d.place(off), one.through)
		p.Branches = append(p.Branches, leg(br, c, one.l, 4))
	}
}

func forked(way []part.Fork, place part.Vec, through []string) part.Branch {
	return part.Branch{Share: way[0].Share, Leg: way[0].Leg, Then: way[1:], At: place, Through: through}
}
