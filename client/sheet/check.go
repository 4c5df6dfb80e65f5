package sheet

// This file writes checks in full.

import (
	"fmt"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/part"
	"lugwright/strength"
)

func (s *sheet) inFull(b *run.Bracket) {
	s.heading(3, "Checks of "+b.Spec.Name+" in full")
	number := 0
	for i, g := range grouped(b.Part, b.Report.Checks) {
		if i > 0 {
			s.line("")
		}
		s.line("**%s**", prose(g.title))
		for _, k := range g.checks {
			number++
			s.heading(4, fmt.Sprintf("%d. %s, %s", number, k.Title, k.Place))
			s.check(b.Spec, k)
		}
	}
}

func (s *sheet) check(spec *job.Bracket, k *strength.Check) {
	s.item("Clause", k.Clause)
	if k.Verdict == strength.NotApplied {
		s.item("Does not apply", k.Why)
		return
	}
	if k.Case == "" {
		s.item("Case", "none: a rule of the shape, whatever the load")
	} else {
		s.item("Case", s.caseOf(spec, k.Case))
	}
	if k.Sharing != "" {
		s.item("Load sharing", k.Sharing)
	}
	s.item("At", fmt.Sprintf("x %s, y %s, z %s", s.length(k.At.X), s.length(k.At.Y), s.length(k.At.Z)))
	for _, n := range k.Notes {
		s.item("Note", n)
	}
	s.line("")
	s.calculation(k.Lines)
	s.line("%s", prose(s.result(k)))
}

// caseOf names the case with its level, its source and, where it is multiplied, the load factor with its source.
func (s *sheet) caseOf(spec *job.Bracket, name string) string {
	for _, l := range spec.Loads {
		c := s.job.Case(l.Case)
		if l.Name() != name || c == nil {
			continue
		}
		words := fmt.Sprintf("%s (%s, source: %s", name, c.Level, c.Source)
		if c.Level == part.Service {
			words += "; load factor " + s.loadFactor()
		}
		return words + ")"
	}
	return name
}

func (s *sheet) result(k *strength.Check) string {
	if k.Verdict == strength.Outside && !k.Compares() {
		return shout(k.Verdict) + ": " + k.Why
	}
	text := fmt.Sprintf("%s: %s of %s, utilisation %s",
		shout(k.Verdict), named(k.DemandSymbol, s.show(k.Demand, k.Unit)), named(k.CapacitySymbol, s.show(k.Capacity, k.Unit)), used(k))
	if k.Why != "" {
		text += "; " + k.Why
	}
	return text
}

// named is symbol = value; a limit that is itself a number, as of an interaction, stands alone.
func named(symbol, value string) string {
	if symbol == "" || symbol == value {
		return value
	}
	return symbol + " = " + value
}
