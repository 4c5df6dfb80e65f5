package drill

// The rules one by one: what is measured, against what.

import (
	"fmt"
	"math"

	"lugwright/vehicle/finding"
)

func measured(had float64, sense finding.Sense, need float64, unit, words string) finding.Finding {
	f := finding.Measured("", "", "", had, sense, need, unit)
	f.Words = words
	return f
}

func clear(words string) finding.Finding { return finding.Finding{Verdict: finding.Pass, Words: words} }

func webOnly(_ *checker, _ *Guide, h *NewHole) finding.Finding {
	if h.Face == Web {
		return clear("")
	}
	return finding.Finding{Verdict: finding.Fail, Words: fmt.Sprintf("it is in the %s", h.Face)}
}

// existingFirst names the nearest hole that the bolt would pass; whether the bracket can move there is the builder's to say.
func existingFirst(c *checker, _ *Guide, h *NewHole) finding.Finding {
	best, name := math.Inf(1), ""
	for _, o := range c.rail.Holes {
		if d := math.Hypot(o.XMM-h.XMM, o.ZMM-h.ZMM); o.DiaMM >= h.bolt() && o.DiaMM <= h.bolt()+2 && d < best {
			best, name = d, o.Name
		}
	}
	if name == "" {
		return clear("no existing hole of this rail fits the bolt within 2 mm (our choice)")
	}
	return finding.Finding{Verdict: finding.NotCovered, Words: fmt.Sprintf("existing hole %s fits the bolt, %.0f mm away: say whether the bracket can use it", name, best)}
}

func largest(_ *checker, g *Guide, h *NewHole) finding.Finding {
	return measured(h.DiaMM, finding.AtMost, g.LargestMM, "mm", "")
}

func fromFlange(c *checker, g *Guide, h *NewHole) finding.Finding {
	outer := min(c.rail.TopZMM-h.ZMM, h.ZMM-c.rail.bottom()) // from the hole's centre to the flange's outer face
	f := measured(outer-c.rail.ThicknessMM-h.DiaMM/2, finding.AtLeast, g.FlangeMM, "mm", "")
	if g.FlangeUnclear {
		f.Words = "where it is measured is not known; this reading asks most"
		if f.Verdict == finding.Fail && outer >= g.FlangeMM {
			f.Words += fmt.Sprintf("; from the hole's centre to the flange's outer face it would be %.4g mm and pass", outer)
		}
	}
	return f
}

// edgeToEdge finds the neighbour with the least margin.
func edgeToEdge(c *checker, g *Guide, h *NewHole) finding.Finding {
	worst := clear("no other hole on this rail")
	margin := math.Inf(1)
	for _, o := range c.others(h) {
		need := g.EdgeMM
		if larger := max(h.DiaMM, o.d); larger > g.EdgeSmallMM+1e-9 && g.EdgeTimes > 0 {
			need = g.EdgeTimes * larger
		}
		if had := h.circle().edges(o); had-need < margin {
			margin = had - need
			worst = measured(had, finding.AtLeast, need, "mm", "to "+o.name)
		}
	}
	return worst
}

func pitch(c *checker, g *Guide, h *NewHole) finding.Finding {
	o, had := c.nearest(h, circle.centres)
	if o == "" {
		return clear("no other hole on this rail")
	}
	return measured(had, finding.AtLeast, g.PitchMM, "mm", "to "+o)
}

func inLine(c *checker, g *Guide, h *NewHole) finding.Finding {
	n := 1
	for _, o := range c.others(h) {
		if h.circle().inLine(o) {
			n++
		}
	}
	return measured(float64(n), finding.AtMost, float64(g.InLine), "holes", "")
}

func fromReinforcement(c *checker, g *Guide, h *NewHole) finding.Finding {
	return c.reinforcement(g, func(b box) float64 { return b.toEdge(h.XMM, h.ZMM) - h.DiaMM/2 })
}

func fromCrossMember(c *checker, g *Guide, h *NewHole) finding.Finding {
	return c.crossMember(g, h.circle().toBox)
}

func fromCorner(c *checker, g *Guide, h *NewHole) finding.Finding {
	r := h.DiaMM / 2
	return c.corner(g, box{h.XMM - r, h.XMM + r, h.ZMM - r, h.ZMM + r})
}

func (c *checker) reinforcement(g *Guide, distance func(b box) float64) finding.Finding {
	return c.along(Reinforcement, g.ReinforcementMM, reinforcementRule, distance)
}

func (c *checker) crossMember(g *Guide, distance func(b box) float64) finding.Finding {
	return c.along(CrossMember, g.CrossMemberMM, crossMemberRule, distance)
}

// along is the nearest zone of a kind; nothing where the guide does not speak.
func (c *checker) along(k Kind, need float64, name string, distance func(b box) float64) finding.Finding {
	if need == 0 {
		return finding.Finding{}
	}
	best, which := math.Inf(1), ""
	for i := range c.rail.Zones {
		if z := &c.rail.Zones[i]; z.Kind == k {
			if d := distance(z.box()); d < best {
				best, which = d, z.Name
			}
		}
	}
	f := clear(fmt.Sprintf("no %s is stated on this rail", k))
	if which != "" {
		f = measured(best, finding.AtLeast, need, "mm", "to "+which)
	}
	f.Rule = name
	return f
}

// corner is the distance of a box from the section's corners, and from profile changes where the word is unclear.
func (c *checker) corner(g *Guide, b box) finding.Finding {
	if g.CornerMM == 0 {
		return finding.Finding{}
	}
	section := min(c.rail.TopZMM-b.top, b.bottom-c.rail.bottom())
	f := measured(section, finding.AtLeast, g.CornerMM, "mm", "to the corner of web and flange")
	f.Rule = cornerRule
	if !g.CornerUnclear {
		return f
	}
	change, which := math.Inf(1), ""
	for i := range c.rail.Zones {
		if z := &c.rail.Zones[i]; z.Kind == ProfileChange {
			if d := b.gap(z.box()); d < change {
				change, which = d, z.Name
			}
		}
	}
	if change < section {
		f = measured(change, finding.AtLeast, g.CornerMM, "mm", "to "+which)
		f.Rule = cornerRule
	} else if f.Verdict == finding.Fail && change >= g.CornerMM {
		f.Words += "; it passes if \"corner\" means where the rail's height changes"
	}
	return f
}

func offLoads(c *checker, _ *Guide, h *NewHole) finding.Finding { return c.off(h, LoadPoint) }

func offChanges(c *checker, _ *Guide, h *NewHole) finding.Finding {
	return c.off(h, ProfileChange, CrossMember, Reinforcement)
}

// off wants the hole outside of every zone of some kinds; the source gives no distance.
func (c *checker) off(h *NewHole, kinds ...Kind) finding.Finding {
	best, which := math.Inf(1), ""
	for i := range c.rail.Zones {
		z := &c.rail.Zones[i]
		for _, k := range kinds {
			if d := h.circle().toBox(z.box()); z.Kind == k && d < best {
				best, which = d, z.Name
			}
		}
	}
	if which == "" {
		return clear("none is stated on this rail")
	}
	return measured(best, finding.AtLeast, 0, "mm", "to "+which+"; the source gives no distance")
}

func overBolt(_ *checker, g *Guide, h *NewHole) finding.Finding {
	if h.BoltMM == 0 {
		return finding.Finding{Verdict: finding.NotCovered, Words: "the bolt's diameter is not stated"}
	}
	return measured(h.DiaMM-h.BoltMM, finding.AtMost, g.OverBoltMM, "mm", "")
}
