package papers

// This file is the inspection and log card: re-torque, grease, places to look at for cracks, wear.

import (
	"slices"
	"strings"

	"lugwright/client/run"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

// hotSpots is how many places a bracket is looked at.
const hotSpots = 4

func inspectionLog(p *page) string {
	if len(p.brackets()) == 0 {
		return noBrackets
	}
	p.head("When")
	t := table("", "what", "first", "then", "source")
	row(t, "tightness of every bolt, line over the nut", "after the first loaded drive and at the first service", "each 6 months or 39 000 km (24 000 miles), and after each hard trip", "truck maintenance manual; U-bolts: trade blog")
	row(t, "cracks at the places below", "after the first rough loop, tanks full", "at each of the above", common)
	row(t, "grease, pins that turn", "until it shows at the bore", "each 5 000 km (3 000 miles), after each ford", common)
	row(t, "rods: nuts snug, rods straight", "after the first loaded drive", "at each of the above", common)
	if !p.hung() {
		t.Rows = t.Rows[:3]
	}
	p.add(t)
	for i := range p.brackets() {
		p.spots(&p.brackets()[i])
	}
	p.wear()
	p.head("The frame")
	p.bullets("out of service: a crack from the web round the radius into a flange; a web crack over 38 mm (1.5 in); a bottom-flange crack over 25 mm (1 in) (legal summary of frame rules, second hand)",
		"nothing loose, broken or missing at a bracket or body bolt (49 CFR 393.201)")
	log := table("", "date", "distance", "what was done, what was found", "by")
	for range 8 {
		row(log, blank, blank, strings.Repeat("_", 30), blank)
	}
	p.head("Log")
	p.add(log)
	p.cautions(1, 4, 5, 6, 12)
	return ""
}

func (p *page) hung() bool {
	return slices.ContainsFunc(p.brackets(), func(b run.Bracket) bool { return len(b.Part.Rods) > 0 })
}

// spot is a place to look at; of welds acting together the thing is the one at which they are used most.
type spot struct {
	thing string
	check *strength.Check
}

// spots are a bracket's: by fatigue first where it was reckoned, then by strength, each thing once.
func (p *page) spots(b *run.Bracket) {
	p.head(title(b))
	list, fatigue := hottest(b)
	own := false
	t := table("", "look at", "for", "used", "because of", "seen")
	for _, s := range list {
		because := lower(s.check.Title)
		if s.check.Case != "" {
			because += ", " + s.check.Case
			if p.own(b, s.check.Case) {
				because, own = because+" *", true
			}
		}
		row(t, p.where(b.Part, s), looked(b.Part, s), units.Utilisation(s.check.Utilisation), because, blank)
	}
	if len(t.Rows) == 0 {
		p.say("Nothing of it was checked: look at every weld and bolt.")
		return
	}
	p.add(t)
	var remarks []string
	if own {
		remarks = append(remarks, "* the load of the case is "+chosen)
	}
	if !fatigue {
		remarks = append(remarks, "fatigue was not reckoned for it: these are the places of the highest static use, where a crack is likeliest to begin, not a promise that it begins nowhere else")
	}
	p.bullets(remarks...)
}

// own says whether a case's loads are the builder's choice.
func (p *page) own(b *run.Bracket, name string) bool {
	for _, l := range b.Spec.Loads {
		if l.Name() == name {
			c := p.in.Result.Job.Case(l.Case)
			return c != nil && strings.Contains(c.Source, chosen)
		}
	}
	return false
}

// hottest gives the things with the highest use, by fatigue and by strength, and whether fatigue was reckoned.
func hottest(b *run.Bracket) (list []spot, fatigue bool) {
	take := func(ofFatigue bool, most int) {
		checks := b.Report.Checks
		order := make([]int, 0, len(checks))
		for i := range checks {
			k := &checks[i]
			if k.Fatigue == ofFatigue && !k.Detail && k.Verdict != strength.NotApplied && cracks(b.Part, k) {
				order = append(order, i)
			}
		}
		slices.SortStableFunc(order, func(x, y int) int {
			switch a, c := checks[x].Utilisation, checks[y].Utilisation; {
			case a > c:
				return -1
			case a < c:
				return 1
			}
			return 0
		})
		for _, i := range order {
			k := &checks[i]
			fatigue = fatigue || ofFatigue
			thing := k.Thing
			if at := k.WeldOf(b.Part); at != "" {
				thing = at
			}
			if len(list) < most && !slices.ContainsFunc(list, func(s spot) bool { return s.thing == thing }) {
				list = append(list, spot{thing, k})
			}
		}
	}
	take(true, hotSpots/2)
	take(false, hotSpots)
	return list, fatigue
}

// cracks says whether a check is about steel or a weld that cracks, and not about contact pressure, play or a deflection.
func cracks(b *part.Bracket, k *strength.Check) bool {
	if strings.Contains(k.Limit, "contact") || strings.Contains(k.Limit, "deflection") || strings.Contains(k.Limit, "bush") || strings.Contains(k.Limit, "pressure") {
		return false
	}
	return b.Weld(k.Thing) != nil || b.Plate(b.Owner(k.Thing)) != nil || b.Member(b.Owner(k.Thing)) != nil || b.Pin(k.Thing) != nil ||
		b.BoltGroup(k.Thing) != nil || b.Support(k.Thing) != nil || slices.ContainsFunc(b.Rods, func(r part.Rods) bool { return r.ID == k.Thing })
}

func (p *page) where(b *part.Bracket, s spot) string {
	if w := b.Weld(s.thing); w != nil {
		words := joint(b, w.ID) + " " + w.ID + ", " + thing(b, w.Joins[0]) + " on " + thing(b, w.Joins[1])
		if s.check.Thing != s.thing {
			words += ", acting with " + joint(b, s.check.Thing) + " " + s.check.Thing
		}
		return words
	}
	name := thing(b, s.thing)
	if name == s.thing {
		return s.check.Place
	}
	return name + ": " + s.check.Place
}

func looked(b *part.Bracket, s spot) string {
	switch {
	case b.Weld(s.thing) != nil:
		return "crack at the toe and the ends of the runs, rust line"
	case b.Pin(s.thing) != nil:
		return "bent, stepped, turned blue or galled"
	case b.BoltGroup(s.thing) != nil:
		return "line broken, head or nut sunk, thread drawn"
	case slices.ContainsFunc(b.Rods, func(r part.Rods) bool { return r.ID == s.thing }):
		return "bent, crack at the first thread"
	case b.Support(s.thing) != nil:
		return "dished, crack round the bolts or the weld's toe"
	}
	return "crack in the paint, from an edge, hole or weld's toe; bent"
}

// wear is of pins in their holes.
func (p *page) wear() {
	t := table("", "pin of", "#pin", "#hole", "#play new", "#limit of play", "read")
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for k := range b.Part.Pins {
			q := &b.Part.Pins[k]
			if !ownPin(b.Part, q) {
				continue
			}
			play := bore(q) - q.DiaMM
			row(t, b.Spec.Name, p.bare(q.DiaMM), p.bare(bore(q)), p.bare(play), p.bare(2*play), blank)
		}
	}
	if len(t.Rows) == 0 {
		return
	}
	p.head("Wear, lengths " + p.inUnit())
	p.add(t)
	p.bullets("limit: twice the play when new ("+common+"). Strength was checked with the play when new: a hole worn beyond that was not",
		"a step that a fingernail feels on the pin: a new pin ("+common+")",
		"a bush that turns in its housing, or grease that does not come through: take the joint apart")
}

func lower(s string) string {
	if s == "" || len(s) > 1 && s[1] >= 'A' && s[1] <= 'Z' {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}
