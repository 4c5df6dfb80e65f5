package bodybracket

// Shares, load paths, sections. A plate is rigid beside the tubes. What it hangs from are two tubes alike, so each takes half of a force along x or y, and
// half of an upright one, as the pin is below the middle. The couples of these forces about a tube go one of two ways, between which the builder says
// what is possible: the tubes are free to turn, and the couple of a force along x becomes a pull at one tube and a push at the other; or they hold the
// plate's ends fixed.

import (
	"fmt"
	"slices"

	"lugwright/geometry/fab"
	"lugwright/part"
)

// hold is what the tubes hold against turning.
type hold int

const (
	held hold = iota
	free
)

func (d *design) addPaths(b *part.Bracket) {
	b.Shares = append(b.Shares,
		part.Share{
			ID: "hold", Rule: part.Between, Legs: 2, Lo: d.v.Ratio("hold_low"), Hi: d.v.Ratio("hold_high"),
			Source: fmt.Sprintf("hold of the tubes against turning, %.4g to %.4g of a fixed end, stated by the builder; statics at either bound", d.v.Ratio("hold_low"), d.v.Ratio("hold_high")),
		},
		part.Share{ID: "tubes", Rule: part.Equal, Legs: 2, Source: "the pin is below the middle between two tubes alike"},
	)
	if d.forked {
		b.Shares = append(b.Shares, part.Share{ID: "travel", Rule: part.ByPinSpan, Legs: 2, Pin: "pin", Source: "statics of the pin, lug at either end of its travel"})
		if d.lug.Tied() {
			b.Shares = append(b.Shares, part.Share{
				ID: "tie", Rule: part.Between, Legs: 2, Lo: 0, Hi: 0.5,
				Source: "head and nut pull the far plate along once the end play is used up; from nothing to an equal share, common practice, no source",
			})
		}
	}
	for _, c := range fab.Forces() {
		b.Paths = append(b.Paths, part.Path{LoadPoint: "pin", Component: c, Branches: d.branches(c)})
	}
}

func (d *design) branches(c part.Component) []part.Branch {
	along := c == part.FyPlus || c == part.FyMinus // the mount's face presses a plate, and the pin's ends may pull the other
	switch {
	case !d.forked && along:
		return d.onTubes(nil, c, d.plates[0], nil)
	case !d.forked:
		return d.onTubes(nil, c, d.plates[0], []string{"pin"})
	case along:
		near, far := d.plates[0], d.plates[1]
		if c == part.FyMinus {
			near, far = far, near
		}
		if !d.lug.Tied() {
			return d.onTubes(nil, c, near, nil)
		}
		out := d.onTubes(nil, c, far, []string{"pin"}, part.Fork{Share: "tie"})
		return d.onTubes(out, c, near, nil, part.Fork{Share: "tie", Leg: 1})
	}
	out := d.onTubes(nil, c, d.plates[1], []string{"pin"}, part.Fork{Share: "travel"}) // seats in order along the pin
	return d.onTubes(out, c, d.plates[0], []string{"pin"}, part.Fork{Share: "travel", Leg: 1})
}

// onTubes brings a plate's load to both tubes, at both bounds of their hold.
func (d *design) onTubes(out []part.Branch, c part.Component, p plate, before []string, way ...part.Fork) []part.Branch {
	for h, how := range [2]hold{held, free} {
		for leg, t := range tubes {
			forks := append(slices.Clone(way), part.Fork{Share: "hold", Leg: h}, part.Fork{Share: "tubes", Leg: leg})
			br := part.Branch{Share: forks[0].Share, Leg: forks[0].Leg, Then: forks[1:], At: d.eyeAt(p), Through: append(slices.Clone(before), p.id, p.weld(t), t.id)}
			br.Thrust, br.Couple = d.other(c, t, how)
			out = append(out, br)
		}
	}
	return out
}

// other is what the other tube's part does to one tube's, where the force enters the plate, for each N of its own half. A beam on two supports carries a
// force in its middle with a couple of F e there, F a half and e half its span; fixed at its ends with half of that.
func (d *design) other(c part.Component, t tube, how hold) (thrust, couple part.Vec) {
	f, _ := c.Unit()
	e, part1 := d.reach(), 1.0
	if how == held {
		part1 = 0.5
	}
	couple = part.Vec{Y: -t.side * e * f.Z, Z: t.side * e * f.Y}.Scale(part1)
	if how == free {
		thrust.Z = t.side * f.X * (d.holdZ() + d.below) / e
	}
	return thrust, couple
}

// addSweeps cuts each plate from the pin up to where the tubes hold it, and from the pin's line to each tube with what goes there.
func (d *design) addSweeps(b *part.Bracket) {
	for _, p := range d.plates {
		top, flat := d.corner, true
		if d.under {
			top, flat = -d.relief, false // beside the notch all works as far as the load has spread
		}
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: p.id + " head", Name: "plate over the pin", Things: []string{p.id}, From: d.eyeAt(p), To: part.Vec{Y: p.y, Z: top}, EntryMM: 2 * d.pin, EntryFlat: flat,
		})
		for _, t := range tubes {
			d.sweepTo(b, p, t)
		}
	}
}

func (d *design) sweepTo(b *part.Bracket, p plate, t tube) {
	s := part.Sweep{
		ID: p.id + " to " + t.word, Name: "plate towards the " + t.word + " tube", Things: []string{p.id}, Via: p.weld(t), FreeMM: 2 * d.reach(),
		From: part.Vec{Y: p.y, Z: d.holdZ()}, To: part.Vec{X: t.side * d.gap, Y: p.y, Z: d.holdZ()},
	}
	if d.under {
		s.From.Z, s.To.Z = -d.relief, -d.relief
	}
	b.Sweeps = append(b.Sweeps, s)
	if d.under {
		x := t.side * d.spacing / 2
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: p.id + " horn, " + t.word, Name: "plate under the " + t.word + " tube", Things: []string{p.id}, Via: p.weld(t), Alone: true,
			From: part.Vec{X: x, Y: p.y, Z: -max(d.relief, d.gussetTip())}, To: part.Vec{X: x, Y: p.y},
		})
	}
}

// gussetTip is how far below the tubes upright gussets reach.
func (d *design) gussetTip() float64 {
	if d.gusseted {
		return d.gussetL
	}
	return 0
}
