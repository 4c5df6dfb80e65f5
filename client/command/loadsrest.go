package command

// This file prints clearances, drilling, the lift plan and trays.

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/run"
	"lugwright/strength"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/finding"
	"lugwright/vehicle/hung"
)

// findingMark stands before a finding.
func (l *loadsPage) findingMark(v finding.Verdict) string {
	switch v {
	case finding.Fail:
		return l.paint(strength.Fail, "FAILS")
	case finding.NotCovered:
		return "unknown"
	}
	return "ok"
}

// gathered takes the findings of one rule on one rail together: its worst, with all the places.
func gathered(list []finding.Finding) []finding.Finding {
	type key struct {
		rail, rule, source string
		verdict            finding.Verdict
		need               float64
	}
	at := map[key]int{}
	var out []finding.Finding
	var places [][]string
	for _, f := range list {
		rail, thing, ok := strings.Cut(f.At, ", ")
		k := key{rail, f.Rule, f.Source, f.Verdict, f.Need}
		i, known := at[k]
		if !ok || !known {
			at[k] = len(out)
			out, places = append(out, f), append(places, []string{thing})
			continue
		}
		if !slices.Contains(places[i], thing) {
			places[i] = append(places[i], thing)
		}
		if worse := f.Had < out[i].Had; worse == (f.Sense == finding.AtLeast) && f.Had != out[i].Had {
			f.At = out[i].At
			out[i] = f
		}
	}
	for i := range out {
		if len(places[i]) > 1 {
			rail, _, _ := strings.Cut(out[i].At, ", ")
			out[i].At = rail + ", " + numbered(places[i])
		}
	}
	return out
}

// numbered shortens "hole a 1, hole a 2, hole a 3" to "hole a 1, 2, 3".
func numbered(places []string) string {
	out := ""
	before := ""
	for _, p := range places {
		i := strings.LastIndex(p, " ")
		switch {
		case out == "":
			out = p
		case i > 0 && p[:i] == before:
			out += "," + p[i:]
		default:
			out += ", " + p
		}
		before = p[:max(i, 0)]
	}
	return out
}

// source is where a rule is from: a guide's name, which the list of guides explains.
func source(f finding.Finding) string {
	for _, g := range drill.Guides() {
		if g.Source == f.Source {
			return g.Name
		}
	}
	return f.Source
}

// findings lists them, what fails first; those that pass only counted where they are many.
func (l *loadsPage) findings(list []finding.Finding, everyPass bool) {
	passes := 0
	if !l.all {
		list = gathered(list)
	}
	for _, v := range []finding.Verdict{finding.Fail, finding.NotCovered, finding.Pass} {
		for _, f := range list {
			if f.Verdict != v {
				continue
			}
			if v == finding.Pass && !everyPass && !l.all {
				passes++
				continue
			}
			l.wrapped("  "+l.findingMark(v), 11, l.finding(f))
		}
	}
	if passes > 0 {
		l.wrapped("  ok", 11, counting(passes, "rule is kept", "rules are kept")+"; --all lists them")
	}
}

func (l *loadsPage) finding(f finding.Finding) string {
	text := f.At + ": " + f.Rule
	switch {
	case f.Unit != "" && f.Verdict != finding.NotCovered:
		text += fmt.Sprintf(", %s %s, has %s", f.Sense, l.measure(f.Need, f.Unit), l.measure(f.Had, f.Unit))
	case f.Unit != "" && f.Need != 0:
		text += fmt.Sprintf(", %s %s", f.Sense, l.measure(f.Need, f.Unit))
	}
	if f.Words != "" {
		text += "; " + l.words(f.Words)
	}
	return text + " (" + source(f) + ")"
}

func (l *loadsPage) clearance() {
	c := l.v.Answer.Clearance
	if c == nil {
		return
	}
	l.chapter(fmt.Sprintf("Room, with the frame twisted by %s degrees", l.degrees(c.Allowance.AngleRad)))
	l.findings(c.Findings, true)
	for _, words := range c.Allowance.Words {
		l.wrapped("  -", 4, l.words(words))
	}
}

func (l *loadsPage) drilling() {
	a := l.v.Answer
	if a.Drilling == nil && a.Subframe == nil {
		return
	}
	l.chapter("Holes in the frame")
	for _, h := range l.v.Holes {
		l.wrapped("  -", 4, h)
	}
	if d := a.Drilling; d != nil {
		l.findings(d.Findings, false)
		if len(d.Findings) == 0 {
			l.line("  no new hole is stated, and no bracket makes one")
		}
		if l.all {
			for _, f := range d.Silent {
				l.wrapped("  silent", 11, f.Rule+": "+l.words(f.Words))
			}
		} else if n := len(d.Silent); n > 0 {
			l.wrapped("  silent", 11, counting(n, "rule of which a guide does not speak", "rules of which a guide does not speak")+"; --all lists them")
		}
		for _, g := range drill.Guides() {
			if q := l.v.Request.Drilling; q != nil && slices.Contains(q.Guides, g.ID) {
				l.wrapped("  -", 4, g.Name+": "+g.Source)
			}
		}
		for _, r := range d.Remarks {
			l.wrapped("  -", 4, l.words(r))
		}
		l.wrapped("  -", 4, d.Overrule)
	}
	l.findings(a.Subframe, true)
}

func (l *loadsPage) lift() {
	p := l.v.Answer.Lift
	if p == nil {
		return
	}
	l.chapter(fmt.Sprintf("Lift: %s of %s %s, tanks dry and nothing optional aboard", p.Body, l.mass(p.Mass.KG.Value), l.massUnit()))
	rows := [][]string{{"jack, " + l.massUnit(), "even share", "worst", "plan for", "rated", ""}}
	for _, s := range p.Shares {
		rated, over := "none", ""
		if s.RatedKG > 0 {
			rated = l.mass(s.RatedKG)
		}
		if s.OverRate {
			over = "OVER"
		}
		rows = append(rows, []string{s.Name, l.mass(s.EvenKG), l.mass(s.WorstKG), l.mass(s.PlanKG), rated, over})
	}
	l.grid(1, rows)
	l.wrapped("", 2, "even share by "+p.Rule+"; worst: the most that a jack can carry while all push; the mass centre lies "+l.length(p.MarginMM)+" "+l.lengthUnit()+" inside the jacks")
	if p.Tips != "" {
		l.wrapped("  FAILS", 11, l.words(p.Tips))
	}
	for _, c := range p.Cautions {
		l.wrapped("  -", 4, c)
	}
}

func (l *loadsPage) trays() {
	a := l.v.Answer
	for i := range a.Trays {
		t := &a.Trays[i]
		l.chapter("Tray " + t.Tray + ": forces on its rods")
		for _, m := range t.States {
			name := ""
			if m.State != "" {
				name = m.State + ": "
			}
			l.wrapped("", 2, fmt.Sprintf("%s%s %s at %s", name, l.mass(m.KG), l.massUnit(), l.at(m.At)))
		}
		l.trayRows(t.Cases)
		l.rodRoots(t.Cases, l.v.Job.Vehicle.RodSizes[i])
	}
	if a.Washers != nil {
		l.chapter("Spreader washers")
		l.findings(a.Washers, true)
	}
	if a.PlasticTanks != nil {
		l.chapter("Plastic tanks")
		l.findings(a.PlasticTanks, true)
	}
}

// rodRoots: what bends the rods does at the roots of their threads, where their size is known.
func (l *loadsPage) rodRoots(cases []hung.CaseLoads, size string) {
	worst := map[string]float64{}
	var order []string
	for i := range cases {
		for _, r := range cases[i].Rods {
			if mpa, ok := run.RodRootMPa(size, r.BendingNMM); ok && mpa > 0 {
				if worst[cases[i].Case] == 0 {
					order = append(order, cases[i].Case)
				}
				worst[cases[i].Case] = max(worst[cases[i].Case], mpa)
			}
		}
	}
	if order == nil {
		return
	}
	var parts []string
	for _, c := range order {
		parts = append(parts, c+" "+l.stress(worst[c]))
	}
	l.wrapped("  -", 4, "bending alone at the root of the thread of "+size+", "+l.stressUnit()+": "+strings.Join(parts, ", ")+". What the rod holds, a bracket of the kind tray says")
}

// trayRows: each case in the state whose rods are worst off.
func (l *loadsPage) trayRows(cases []hung.CaseLoads) {
	rows := [][]string{
		{"", "even", "two rods", "worst rod", "", "side on", "bends it,", ""},
		{l.name("N", "lbf"), "share", "carry all", "pulls", "is pushed", "a rod", l.name("N m", "lbf in"), "stops"},
	}
	states := slices.ContainsFunc(cases, func(c hung.CaseLoads) bool { return c.State != "" })
	var words []string
	for i := range cases {
		c := &cases[i]
		var pull, push, side, bend float64
		for _, r := range c.Rods {
			pull, push, side, bend = max(pull, r.TensionN), max(push, r.PushN), max(side, r.SideN), max(bend, r.BendingNMM)
		}
		name := c.Case
		if states {
			name += ", " + c.State
		}
		rows = append(rows, []string{
			name, l.small(c.EvenN), l.small(c.DiagonalN), l.small(pull), l.small(push), l.small(math.Abs(side)), l.in(bend, "N m", 1, "lbf in", 0), l.small(c.StopN),
		})
		for _, w := range c.Words {
			if !slices.Contains(words, w) {
				words = append(words, w)
			}
		}
	}
	l.grid(1, rows)
	for _, w := range words {
		l.wrapped("  -", 4, l.words(w))
	}
}
