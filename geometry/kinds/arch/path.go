package arch

// Shares, load paths, sections.

import (
	"fmt"
	"slices"

	"lugwright/geometry/fab"
	"lugwright/part"
)

// format writes a plain number for a message.
func format(v float64) string { return fmt.Sprintf("%.4g", v) }

func (d *design) addPaths(b *part.Bracket) {
	low, high := d.v.Ratio("stiffness_ratio_low"), d.v.Ratio("stiffness_ratio_high")
	b.Shares = []part.Share{
		{ID: "travel", Rule: part.ByPinSpan, Legs: 2, Pin: "pin", Source: "statics of the pin, lug at either end of its travel"},
		{
			ID: "bar", Rule: part.Between, Legs: 2, Lo: low / (1 + low), Hi: high / (1 + high),
			Source: fmt.Sprintf("cross member %s to %s times as stiff as the rail under the feet, stated by the builder; two springs side by side", format(low), format(high)),
		},
		{
			ID: "hold", Rule: part.Between, Legs: 2, Lo: d.v.Ratio("feet_hold_low"), Hi: d.v.Ratio("feet_hold_high"),
			Source: "hold of the feet against spreading and turning, from none to fixed under a limp crown (portal frame, elementary theory)",
		},
		{ID: "legs", Rule: part.Equal, Legs: 2, Source: "the arch is alike before and behind its pin"},
	}
	b.Shares = append(b.Shares,
		part.Share{
			ID: "bar ties", Rule: part.Between, Legs: 2, Lo: 0, Hi: 1,
			Source: "the bar's welds tie the plates under a side force, from not at all to all that statics bring on feet free to turn (frame, elementary theory)",
		},
		part.Share{ID: "tied legs", Rule: part.Equal, Legs: 2 * len(feet), Source: "statics of both plates and the bar between them"},
	)
	if d.lug.Tied() {
		b.Shares = append(b.Shares, part.Share{
			ID: "tie", Rule: part.Between, Legs: 2, Lo: 0, Hi: 0.5,
			Source: "head and nut pull the far plate along once the end play is used up; from nothing to an equal share, common practice, no source",
		})
	}
	for _, c := range fab.Forces() {
		b.Paths = append(b.Paths, part.Path{LoadPoint: "pin", Component: c, Branches: d.branches(c)})
	}
}

func (d *design) branches(c part.Component) []part.Branch {
	var out []part.Branch
	switch c {
	case part.FyPlus, part.FyMinus: // the lug's face presses one plate, and the pin's ends may pull the other; the bar may tie them or not
		near, far := plates[0], plates[1]
		if c == part.FyMinus {
			near, far = far, near
		}
		if !d.lug.Tied() {
			return d.aside(nil, c, near, far, nil)
		}
		out = d.aside(nil, c, far, near, []string{"pin"}, part.Fork{Share: "tie"})
		return d.aside(out, c, near, far, nil, part.Fork{Share: "tie", Leg: 1})
	}
	for leg, p := range [2]plate{plates[1], plates[0]} { // seats in order along the pin
		way := []part.Fork{{Share: "travel", Leg: leg}}
		if c == part.FzMinus { // a bar only presses
			out = append(out, d.onBar(p, append(way, part.Fork{Share: "bar"})))
			way = append(way, part.Fork{Share: "bar", Leg: 1})
		}
		out = d.onLegs(out, c, p, []string{"pin"}, way...)
	}
	return out
}

// onBar brings a plate's load through its notch and its weld, each as if it were alone, to the bar and the cross member.
func (d *design) onBar(p plate, way []part.Fork) part.Branch {
	through := []string{"pin", p.id, d.notchID(p), d.barWeldID(p), "bar"}
	if !d.round {
		through = append(through, "seat")
	}
	return forked(way, part.Branch{At: d.seat(p), Through: append(through, "cross member")})
}

// onLegs brings a plate's load down both its legs, at both bounds of what the feet hold.
func (d *design) onLegs(out []part.Branch, c part.Component, p plate, before []string, way ...part.Fork) []part.Branch {
	for h, how := range [2]hold{held, free} {
		for leg, f := range feet {
			whole := append(slices.Clone(way), part.Fork{Share: "hold", Leg: h}, part.Fork{Share: "legs", Leg: leg})
			through := append(append(slices.Clone(before), p.id, f.weld(p)), f.chain()...)
			thrust, couple := d.other(c, f, how)
			out = append(out, forked(whole, part.Branch{At: d.seat(p), Through: through, Thrust: thrust, Couple: couple}))
		}
	}
	return out
}

// aside brings a side force on one plate down its own legs, and by the bar down those of both.
func (d *design) aside(out []part.Branch, c part.Component, on, other plate, before []string, way ...part.Fork) []part.Branch {
	tied := part.Fork{Share: "bar ties"}
	out = d.onLegs(out, c, on, before, append(slices.Clone(way), part.Fork{Share: tied.Share, Leg: 1})...)
	direct := append(slices.Clone(before), on.id)
	across := append(slices.Clone(direct), d.barWeldID(on), "bar", d.barWeldID(other), other.id)
	for i, leg := range d.tied(c, on, other) {
		through := direct
		if leg.plate == other {
			through = across
		}
		through = append(append(slices.Clone(through), leg.foot.weld(leg.plate)), leg.foot.chain()...)
		whole := append(slices.Clone(way), tied, part.Fork{Share: "tied legs", Leg: i})
		out = append(out, forked(whole, part.Branch{At: d.seat(on), Through: through, Thrust: leg.thrust, Couple: leg.couple}))
	}
	return out
}

func forked(way []part.Fork, b part.Branch) part.Branch {
	b.Share, b.Leg, b.Then = way[0].Share, way[0].Leg, way[1:]
	return b
}

// seat is where the pin bears in a plate.
func (d *design) seat(p plate) part.Vec { return part.Vec{Y: d.y(p), Z: d.pinZ} }

func (d *design) addSweeps(b *part.Bracket) {
	for _, p := range plates {
		d.sweepPlate(b, p)
	}
	for _, p := range plates {
		z := d.crossZ + d.barH/2
		b.Sweeps = append(b.Sweeps, part.Sweep{
			// From the weld on the plate to the middle, as if the cross member touched the bar there alone: the most that it bends.
			ID: "bar-" + p.id, Name: "support bar", Things: []string{"bar"}, Via: p.id, From: part.Vec{Y: d.face(p), Z: z}, To: part.Vec{Y: d.middle, Z: z},
		})
	}
}

// sweepPlate cuts the head from the pin's hole down to the bar, the crown from the pin to each leg, and each leg from the crown to its foot.
func (d *design) sweepPlate(b *part.Bracket, p plate) {
	things, y, high := []string{p.id}, d.y(p), (d.notchTop()+d.top())/2
	b.Sweeps = append(b.Sweeps, part.Sweep{
		ID: p.id + " head", Name: "arch under the pin", Things: things, EntryMM: d.lug.PinMM,
		From: part.Vec{Y: y, Z: d.pinZ - d.lug.HoleMM/2}, To: part.Vec{Y: y, Z: d.notchTop()},
	})
	for _, f := range feet {
		b.Sweeps = append(b.Sweeps,
			part.Sweep{
				ID: p.id + " crown, " + f.word, Name: "crown of the arch", Things: things, Via: f.weld(p), FreeMM: 2 * d.reach(),
				From: part.Vec{Y: y, Z: high}, To: part.Vec{X: f.side * d.half, Y: y, Z: high},
			},
			part.Sweep{
				ID: p.id + " leg, " + f.word, Name: "leg of the arch", Things: things, Via: f.weld(p), Alone: true, FreeMM: d.pinZ,
				From: part.Vec{X: f.side * d.reach(), Y: y, Z: d.openZ}, To: part.Vec{X: f.side * d.reach(), Y: y},
			})
	}
}
