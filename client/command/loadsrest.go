package command

// This file prints clearances, drilling, the lift plan and trays.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/vehicle/finding"
	"lugwright/vehicle/hung"
)

// findingMark stands before a finding.
func findingMark(v finding.Verdict) string {
	switch v {
	case finding.Fail:
		return "FAILS"
	case finding.NotCovered:
		return "unknown"
	}
	return "ok"
}

// findings lists them, what fails first; those that pass only counted where they are many.
func (l *loadsPage) findings(list []finding.Finding, everyPass bool) {
	passes := 0
	for _, v := range []finding.Verdict{finding.Fail, finding.NotCovered, finding.Pass} {
		for _, f := range list {
			if f.Verdict != v {
				continue
			}
			if v == finding.Pass && !everyPass && !l.all {
				passes++
				continue
			}
			l.wrapped("  "+findingMark(v), 11, l.finding(f))
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
		text += fmt.Sprintf(", %s %s, has %s", f.Sense, show(f.Need, f.Unit, l.system), show(f.Had, f.Unit, l.system))
	case f.Unit != "" && f.Need != 0:
		text += fmt.Sprintf(", %s %s", f.Sense, show(f.Need, f.Unit, l.system))
	}
	if f.Words != "" {
		text += "; " + l.words(f.Words)
	}
	return text + " (" + f.Source + ")"
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

// trayRows: each case in the state whose rods are worst off.
func (l *loadsPage) trayRows(cases []hung.CaseLoads) {
	unit := l.name("N", "lbf")
	rows := [][]string{{"case, " + unit, "", "even share", "two rods carry", "worst rod pulls", "is pushed", "side on a rod", "bends it, " + l.name("N m", "lbf in"), "stops"}}
	var words []string
	for i := range cases {
		c := &cases[i]
		var pull, push, side, bend float64
		for _, r := range c.Rods {
			pull, push, side, bend = max(pull, r.TensionN), max(push, r.PushN), max(side, r.SideN), max(bend, r.BendingNMM)
		}
		rows = append(rows, []string{
			c.Case, c.State, l.small(c.EvenN), l.small(c.DiagonalN), l.small(pull), l.small(push), l.small(math.Abs(side)), l.in(bend, "N m", 1, "lbf in", 0), l.small(c.StopN),
		})
		for _, w := range c.Words {
			if !slices.Contains(words, w) {
				words = append(words, w)
			}
		}
	}
	l.grid(2, rows)
	for _, w := range words {
		l.wrapped("  -", 4, l.words(w))
	}
}
