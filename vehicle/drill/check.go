package drill

import (
	"fmt"
	"math"
	"slices"

	"lugwright/vehicle/finding"
)

// Report is every rule at every hole and bracket.
type Report struct {
	Findings []finding.Finding // rail by rail, hole by hole: the survey's own rules first, then each guide's
	Silent   []finding.Finding // what each guide does not speak of, once
	Remarks  []string          // of the guides, with their names
	Overrule string
}

// The survey's own rules: plain geometry and workmanship.
const surveySource = "survey of the rail"

// Check holds the new holes and brackets of each rail against the survey and the guides. The error is part.FieldErrors.
func Check(rails []Rail, list []Guide) (*Report, error) {
	if err := check(rails, list); err != nil {
		return nil, err
	}
	r := &Report{Overrule: Overrules}
	for i := range rails {
		c := checker{rail: &rails[i], out: &r.Findings}
		c.run(list)
	}
	for i := range list {
		g := &list[i]
		for _, u := range rules {
			if !u.speaks(g) {
				r.Silent = append(r.Silent, finding.Silent("every hole", u.name, g.Source, g.Name+" does not speak of it"))
			}
		}
		for _, words := range g.Remarks {
			r.Remarks = append(r.Remarks, g.Name+": "+words)
		}
		if g.SecondHand {
			r.Remarks = append(r.Remarks, g.Name+": quoted by another (2nd hand), see the original before you cite it")
		}
	}
	return r, nil
}

// checker works through one rail.
type checker struct {
	rail *Rail
	out  *[]finding.Finding
}

func (c *checker) put(f finding.Finding) { *c.out = append(*c.out, f) }

func (c *checker) at(h *NewHole) string { return fmt.Sprintf("%s rail, hole %s", c.rail.Side, h.Name) }

func (c *checker) run(list []Guide) {
	r := c.rail
	if len(r.Holes) == 0 && len(r.Zones) == 0 && len(r.New)+len(r.Brackets) > 0 {
		c.put(finding.Silent(string(r.Side)+" rail", "survey", surveySource, "no hole and no zone is stated on this rail: what is there is not known; the other rail is no guide to it"))
	}
	for i := range r.New {
		h := &r.New[i]
		if old := c.takes(h); old != nil {
			c.reuse(h, old, list)
			continue
		}
		c.survey(h)
		c.inZones(h, list)
		for k := range list {
			c.guide(&list[k], h)
		}
	}
	for i := range r.Brackets {
		for k := range list {
			c.bracket(&list[k], &r.Brackets[i])
		}
	}
}

// takes is the existing hole that the bolt passes where it is, nil when there is none.
func (c *checker) takes(h *NewHole) *Hole {
	bolt := h.bolt()
	if h.Face != Web {
		return nil
	}
	for i := range c.rail.Holes {
		o := &c.rail.Holes[i]
		if math.Hypot(o.XMM-h.XMM, o.ZMM-h.ZMM) <= (o.DiaMM-bolt)/2+1e-9 {
			return o
		}
	}
	return nil
}

func (h *NewHole) bolt() float64 {
	if h.BoltMM > 0 {
		return h.BoltMM
	}
	return h.DiaMM
}

// reuse: nothing is drilled, only the fit of the bolt is left to check.
func (c *checker) reuse(h *NewHole, old *Hole, list []Guide) {
	c.put(finding.Finding{At: c.at(h), Rule: ExistingRule, Source: surveySource, Verdict: finding.Pass,
		Words: fmt.Sprintf("existing hole %s, %.4g mm, takes the bolt where it is: drill nothing", old.Name, old.DiaMM)})
	for i := range list {
		if g := &list[i]; g.OverBoltMM > 0 {
			was := *h
			was.DiaMM = old.DiaMM
			c.put(c.named(overBolt(c, g, &was), overBoltRule, g, h))
		}
	}
}

// survey is what holds whatever the guide.
func (c *checker) survey(h *NewHole) {
	r := c.rail
	if h.XMM-h.DiaMM/2 < r.FromMM || h.XMM+h.DiaMM/2 > r.ToMM {
		c.put(finding.Silent(c.at(h), "surveyed", surveySource, fmt.Sprintf("station %.4g mm lies outside the surveyed stretch %.4g to %.4g mm", h.XMM, r.FromMM, r.ToMM)))
	}
	if h.Face != Web {
		return
	}
	k := h.circle()
	flat := r.ThicknessMM + r.InsideRadiusMM
	c.put(finding.Measured(c.at(h), "on the flat of the web, clear of the flange radius", surveySource,
		min(r.TopZMM-k.z, k.z-r.bottom())-k.d/2-flat, finding.AtLeast, 0, "mm"))
	if o, gap := c.nearest(h, circle.edges); o != "" {
		f := finding.Measured(c.at(h), "clear of other holes", surveySource, gap, finding.AtLeast, 0, "mm")
		f.Words = "nearest is " + o
		c.put(f)
	}
	for i := range r.Zones {
		if z := &r.Zones[i]; z.Kind == KeepOut {
			f := finding.Measured(c.at(h), "clear of keep-out", surveySource, k.toBox(z.box()), finding.AtLeast, 0, "mm")
			f.Words = z.Name
			c.put(f)
		}
	}
}

// inZones names what stands where a hole is to be, of the kinds that none of the guides speaks of.
func (c *checker) inZones(h *NewHole, list []Guide) {
	if h.Face != Web {
		return
	}
	for i := range c.rail.Zones {
		z := &c.rail.Zones[i]
		if z.Kind == KeepOut || slices.ContainsFunc(list, func(g Guide) bool { return g.speaksOf(z.Kind) }) {
			continue
		}
		if h.circle().toBox(z.box()) < 0 {
			c.put(finding.Silent(c.at(h), "clear of what is on the rail", surveySource, fmt.Sprintf("it lies in %s, a %s, and no guide that is asked for speaks of that", z.Name, z.Kind)))
		}
	}
}

func (h *NewHole) circle() circle { return circle{h.Name, h.XMM, h.ZMM, h.DiaMM} }

// others are all holes of the web but this one, those there and those wanted.
func (c *checker) others(h *NewHole) []circle {
	var out []circle
	for _, o := range c.rail.Holes {
		out = append(out, circle{"existing " + o.Name, o.XMM, o.ZMM, o.DiaMM})
	}
	for i := range c.rail.New {
		if o := &c.rail.New[i]; o != h && o.Face == Web && c.takes(o) == nil {
			out = append(out, o.circle())
		}
	}
	return out
}

func (c *checker) nearest(h *NewHole, far func(a, b circle) float64) (name string, gap float64) {
	gap = math.Inf(1)
	for _, o := range c.others(h) {
		if d := far(h.circle(), o); d < gap {
			name, gap = o.name, d
		}
	}
	return name, gap
}

// rule is one thing that a guide may speak of. What reaches check is a hole in the web, but for the first rule.
type rule struct {
	name   string
	along  bool // a distance to something along the rail, which may bind a bracket's outline and not its holes
	speaks func(g *Guide) bool
	check  func(c *checker, g *Guide, h *NewHole) finding.Finding
}

// ExistingRule is that of a bolt that a hole of the survey takes: nothing is drilled.
const ExistingRule = "existing hole"

const (
	webRule           = "in the web only"
	reinforcementRule = "distance from a reinforcement's edge"
	crossMemberRule   = "distance from a cross member"
	cornerRule        = "distance from the rail's corner"
	overBoltRule      = "hole over bolt"
)

var rules = []rule{
	{webRule, false, func(g *Guide) bool { return g.WebOnly }, webOnly},
	{"existing holes first", false, func(g *Guide) bool { return g.ExistingFirst }, existingFirst},
	{"largest hole", false, func(g *Guide) bool { return g.LargestMM > 0 }, largest},
	{"distance from the flange", false, func(g *Guide) bool { return g.FlangeMM > 0 }, fromFlange},
	{"distance from edge to edge", false, func(g *Guide) bool { return g.EdgeMM > 0 || g.EdgeTimes > 0 }, edgeToEdge},
	{"pitch", false, func(g *Guide) bool { return g.PitchMM > 0 }, pitch},
	{"holes in a vertical line", false, func(g *Guide) bool { return g.InLine > 0 }, inLine},
	{reinforcementRule, true, func(g *Guide) bool { return g.ReinforcementMM > 0 }, fromReinforcement},
	{crossMemberRule, true, func(g *Guide) bool { return g.CrossMemberMM > 0 }, fromCrossMember},
	{cornerRule, true, func(g *Guide) bool { return g.CornerMM > 0 }, fromCorner},
	{"off load points", false, func(g *Guide) bool { return g.OffLoads }, offLoads},
	{"off profile changes", false, func(g *Guide) bool { return g.OffChanges }, offChanges},
	{overBoltRule, false, func(g *Guide) bool { return g.OverBoltMM > 0 }, overBolt},
}

// guide holds one hole against one guide.
func (c *checker) guide(g *Guide, h *NewHole) {
	if h.Face != Web {
		if g.WebOnly {
			c.put(c.named(webOnly(c, g, h), webRule, g, h))
		}
		c.put(finding.Silent(c.at(h), "all others", g.Source, "they are for holes in the web"))
		return
	}
	for i := range rules {
		u := &rules[i]
		if !u.speaks(g) || g.Brackets && u.along && h.Bracket != "" {
			continue
		}
		f := c.named(u.check(c, g, h), u.name, g, h)
		if g.Brackets && u.along {
			f.Words = join(f.Words, "no bracket is stated: measured from the hole")
		}
		c.put(f)
	}
}

// bracket holds a bracket's outline against a guide that speaks of brackets.
func (c *checker) bracket(g *Guide, b *Bracket) {
	if !g.Brackets {
		return
	}
	box := b.box()
	for _, f := range []finding.Finding{c.reinforcement(g, box.boxEdge), c.crossMember(g, box.gap), c.corner(g, box)} {
		if f.Rule != "" {
			f.At, f.Source = fmt.Sprintf("%s rail, bracket %s", c.rail.Side, b.Name), g.Source
			c.put(f)
		}
	}
}

func (c *checker) named(f finding.Finding, name string, g *Guide, h *NewHole) finding.Finding {
	f.At, f.Rule, f.Source = c.at(h), name, g.Source
	return f
}

func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}
