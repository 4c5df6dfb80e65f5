package papers

// This file says what the survey and the guides make of the frame holes that papers list.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/client/run"
	"lugwright/client/template"
	"lugwright/part"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/finding"
	"lugwright/vehicle/whole"
)

const (
	notHeld    = "not checked"
	takesThere = "there already"
)

// openMeans explains a hole's verdict that counts open rules.
const openMeans = "open: rules whose guide or survey does not speak, or a number is missing; `lugwright loads` says which: settle them before drilling"

// holeVerdict is a word on a hole in a rail, and in full each rule that it breaks.
func (p *page) holeVerdict(side drill.Side, hole string) (word string, fails []string) {
	d := p.in.Vehicle.Answer.Drilling
	if d == nil {
		return notHeld, nil
	}
	at := fmt.Sprintf("%s rail, hole %s", side, hole)
	passes, open := 0, 0
	there := false
	for i := range d.Findings {
		f := &d.Findings[i]
		if f.At != at {
			continue
		}
		switch f.Verdict {
		case finding.Fail:
			fails = append(fails, p.broken(f))
		case finding.NotCovered:
			open++
		default:
			passes++
			there = there || f.Rule == drill.ExistingRule
		}
	}
	switch {
	case fails != nil:
		return "FAIL", fails
	case there:
		return takesThere, nil
	case open > 0:
		return fmt.Sprintf("open: %d", open), nil
	case passes > 0:
		return string(finding.Pass), nil
	}
	return notHeld, nil
}

// broken tells a rule that is not kept: "distance from the flange 32.5 mm, at least 38.1 mm (guide A)".
func (p *page) broken(f *finding.Finding) string {
	source := f.Source
	for _, g := range drill.Guides() {
		if g.Source == f.Source {
			source = g.Name
		}
	}
	words := f.Rule
	switch f.Unit {
	case "":
	case "mm":
		words += fmt.Sprintf(" %s, %s %s", p.length(f.Had), f.Sense, p.length(f.Need))
	default:
		words += fmt.Sprintf(" %.4g %s, %s %.4g", f.Had, f.Unit, f.Sense, f.Need)
	}
	if f.Words != "" {
		words += "; " + p.words(f.Words)
	}
	return words + " (" + source + ")"
}

// brokenHoles gathers what holes break: those that break one rule alike stand together, "pair-left 4, 5, 6 FAILS: ...".
type brokenHoles struct{ words, holes []string }

func (b *brokenHoles) add(hole string, fails []string) {
	for _, f := range fails {
		if i := slices.Index(b.words, f); i >= 0 {
			b.holes[i] += ", " + hole
			continue
		}
		b.words, b.holes = append(b.words, f), append(b.holes, hole)
	}
}

func (b *brokenHoles) lines() []string {
	var out []string
	for i := range b.words {
		out = append(out, b.holes[i]+" FAILS: "+b.words[i])
	}
	return out
}

// bracketFails are the rules on a bracket on a rail that it breaks, and the warnings about its holes.
func (p *page) bracketFails(name string) []string {
	var out []string
	v := p.in.Vehicle
	if d := v.Answer.Drilling; d != nil {
		for i := range d.Findings {
			if f := &d.Findings[i]; f.Verdict == finding.Fail && strings.HasSuffix(f.At, " rail, bracket "+name) {
				out = append(out, name+" FAILS: "+p.broken(f))
			}
		}
	}
	for _, w := range v.Warnings {
		if w.Severity == whole.Fails && w.Kind == "drilling" && w.At == "bracket "+name {
			out = append(out, name+" FAILS: "+p.words(w.Words))
		}
	}
	return out
}

// onRail finds the hole of a rail's survey that a bracket's bolt passes; nil where none was held.
func (p *page) onRail(b *run.Bracket, group string, n int) (drill.Side, *drill.NewHole) {
	if p.in.Vehicle == nil || p.in.Vehicle.Request.Drilling == nil {
		return "", nil
	}
	for _, g := range run.OnWeb(b.Part) {
		if g.ID != group {
			n += len(g.Points)
			continue
		}
		name := run.HoleName(b.Spec, n)
		for _, r := range p.in.Vehicle.Request.Drilling.Rails {
			for i := range r.New {
				if r.New[i].Bracket == b.Spec.Name && r.New[i].Name == name {
					return r.Side, &r.New[i]
				}
			}
		}
		break
	}
	return "", nil
}

// notHeldWhy says why a bracket's holes in a rail were not held against a survey.
func (p *page) notHeldWhy(b *run.Bracket) string {
	why := "the rail is not surveyed in the job"
	if p.in.Vehicle == nil {
		why = p.noVehicle()
	} else {
		for _, o := range p.in.Vehicle.Open {
			if words, ok := strings.CutPrefix(o, "holes of "+b.Spec.Name+" in the frame: "); ok {
				why = words
			}
		}
	}
	return b.Spec.Name + ": its holes in the rail were held against no survey and no guide: " + why
}

// unheld are the brackets bolted to a rail's web whose holes were held against nothing, with why.
func (p *page) unheld() []string {
	var out []string
	for i := range p.brackets() {
		b := &p.brackets()[i]
		if groups := run.OnWeb(b.Part); groups != nil {
			if side, _ := p.onRail(b, groups[0].ID, 1); side == "" {
				out = append(out, p.notHeldWhy(b))
			}
		}
	}
	return out
}

// judge puts the verdicts on a template's holes, and says what they are about.
func (p *page) judge(t *template.Template, b *run.Bracket) {
	if t.Into != part.RailWeb && t.Into != part.RailFlange {
		return
	}
	var broken brokenHoles
	held, open := false, false
	for i := range t.Holes {
		h := &t.Holes[i]
		side, hole := p.onRail(b, h.Group, h.N)
		if hole == nil {
			h.Verdict = notHeld
			continue
		}
		held = true
		var fails []string
		h.Verdict, fails = p.holeVerdict(side, hole.Name)
		open = open || strings.HasPrefix(h.Verdict, "open")
		broken.add(h.Name, fails)
	}
	switch {
	case t.Into == part.RailFlange:
		t.Remarks = append(t.Remarks, b.Spec.Name+": its holes in the rail's flange were held against no survey and no guide, which are asked about webs alone here")
	case !held:
		t.Remarks = append(t.Remarks, p.notHeldWhy(b))
	}
	t.Remarks = append(t.Remarks, broken.lines()...)
	if p.in.Vehicle != nil {
		t.Remarks = append(t.Remarks, p.bracketFails(b.Spec.Name)...)
	}
	if open {
		t.Remarks = append(t.Remarks, openMeans)
	}
}
