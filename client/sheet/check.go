package sheet

// This file writes the checks of a bracket: a table of all in the order of the drawing, then those in full that decide a part, weld, bolt or pin,
// or do not pass.

import (
	"fmt"
	"slices"

	"lugwright/client/job"
	"lugwright/client/paper"
	"lugwright/client/run"
	"lugwright/part"
	"lugwright/strength"
)

// checked adds the tables and the calculations.
func (s *sheet) checked(b *run.Bracket) {
	groups := grouped(b.Part, b.Report.Checks)
	s.heading(3, "Checks of "+b.Spec.Name+" in the order of the drawing", "")
	if len(b.Report.Checks) == 0 {
		s.words("None: no limit state speaks of it.")
		return
	}
	s.table(b.Part, groups)
	s.notApplied(groups)
	s.heading(3, "Checks of "+b.Spec.Name+" in full: the worst of each part, and what does not pass", "")
	number := 0
	for _, g := range groups {
		for i, k := range inFull(g.checks) {
			if i == 0 {
				s.heading(4, g.title, g.ref)
			}
			number++
			s.words(fmt.Sprintf("%d. %s, %s", number, k.Title, k.Place))
			s.blocks[len(s.blocks)-1].(*paper.Words).Strong = true
			s.check(b.Spec, k)
		}
	}
}

// table has every check that compares something or is outside its rule; a row refers to its part on the drawing. Those in full stand out. What governs at
// another of welds acting together is found under that one too, which says where the check stands.
func (s *sheet) table(b *part.Bracket, groups []group) {
	t := &paper.Table{Heads: heads("mark", "check", "place", "case", "#demand", "#capacity", "#used", "verdict"), Sortable: true}
	for _, g := range groups {
		full := inFull(g.checks)
		for _, k := range g.checks {
			if k.Verdict == strength.NotApplied {
				continue
			}
			row := append(append([]string{g.mark, k.Title, k.Place, k.Case}, s.compared(k)...), shout(k.Verdict))
			t.Rows = append(t.Rows, paper.Row{Cells: row, Ref: g.ref, Strong: slices.Contains(full, k)})
		}
		for _, k := range g.elsewhere {
			row := []string{g.mark, k.Title, k.Place + ": see " + weldName(b, k.Thing), k.Case, "-", "-", "-", shout(k.Verdict)}
			if k.Compares() {
				row[6] = used(k)
			}
			t.Rows = append(t.Rows, paper.Row{Cells: row, Ref: g.ref})
		}
	}
	s.add(t)
}

// compared is demand, capacity and what is used.
func (s *sheet) compared(k *strength.Check) []string {
	if !k.Compares() {
		return []string{"-", "-", "-"}
	}
	return []string{s.show(k.Demand, k.Unit), s.show(k.Capacity, k.Unit), used(k)}
}

// notApplied has what does not apply, one row for each check and reason.
func (s *sheet) notApplied(groups []group) {
	t := &paper.Table{Caption: "Does not apply", Heads: heads("check", "place", "why")}
	for _, g := range groups {
		for _, k := range g.checks {
			if k.Verdict != strength.NotApplied {
				continue
			}
			same := slices.IndexFunc(t.Rows, func(r paper.Row) bool { return r.Cells[0] == k.Title && r.Cells[2] == k.Why })
			if same < 0 {
				t.Rows = append(t.Rows, paper.Row{Cells: []string{k.Title, k.Place, k.Why}})
			} else {
				t.Rows[same].Cells[1] += "; " + k.Place
			}
		}
	}
	if len(t.Rows) > 0 {
		s.add(t)
	}
}

// inFull are the checks of one thing that are written out: the worst about strength, or about dimensions where there is none, and of each limit
// state that does not pass the worst.
func inFull(checks []*strength.Check) []*strength.Check {
	var out []*strength.Check
	for _, k := range checks {
		bad := k.Verdict == strength.Fail || k.Verdict == strength.Outside
		first := out == nil && k.Verdict != strength.NotApplied
		if first || bad && !slices.ContainsFunc(out, func(o *strength.Check) bool { return o.Limit == k.Limit && o.Verdict == k.Verdict }) {
			out = append(out, k)
		}
	}
	return out
}

func (s *sheet) check(spec *job.Bracket, k *strength.Check) {
	list := []paper.Fact{{Name: "Clause", Value: k.Clause}, {Name: "Case", Value: s.caseOf(spec, k.Case)}}
	if k.Sharing != "" {
		list = append(list, paper.Fact{Name: "Load sharing", Value: k.Sharing})
	}
	list = append(list, paper.Fact{Name: "At", Value: fmt.Sprintf("x %s, y %s, z %s", s.length(k.At.X), s.length(k.At.Y), s.length(k.At.Z))})
	for _, n := range k.Notes {
		list = append(list, paper.Fact{Name: "Note", Value: n})
	}
	s.facts(list)
	if lines := calculation(k.Lines); lines != nil {
		s.add(&paper.Calculation{Lines: lines})
	}
	s.add(&paper.Words{Text: oneLine(s.result(k)), Strong: true})
}

// caseOf names the case with its level, its source and, where it is multiplied, the load factor with its source.
func (s *sheet) caseOf(spec *job.Bracket, name string) string {
	if name == "" {
		return "none: a rule of the shape, whatever the load"
	}
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
	if !k.Compares() {
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
