package sheet

// This file lays the paper out, from the verdict to the signatures.

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/caution"
	"lugwright/client/job"
	"lugwright/client/paper"
	"lugwright/client/plots"
	"lugwright/client/run"
	"lugwright/strength"
	"lugwright/units"
	"lugwright/vehicle/whole"
)

// Input is what a calc sheet is made from. Checks have lines only when the run had Trace on.
type Input struct {
	Result  *run.Result
	Card    strength.Card // of the job's basis
	Version string        // of the tool
	Warning string        // first line of every page, empty for none
	Vehicle *run.Vehicle  // whose rails, mounts and gaps are plotted; nil: none
	// Thickness is brackets over the plates that the job has; nil where it names none.
	Thickness *plots.Group
	// Drawing gives the drawings of a bracket; nil: there are none.
	Drawing func(*run.Bracket) []*paper.Figure
}

// Paper makes the sheet. Results are in the job's units, lines of a calculation in N, mm and MPa. The same input gives the same paper.
func Paper(in Input) *paper.Paper {
	s := &sheet{Input: in, job: in.Result.Job}
	s.facts(s.verdict())
	s.summary()
	s.assumptions()
	s.masses()
	s.cases()
	s.vehicle()
	for i := range in.Result.Brackets {
		s.bracket(&in.Result.Brackets[i])
	}
	if in.Thickness != nil {
		s.blocks = append(s.blocks, in.Thickness.Blocks(2)...)
	}
	s.rules()
	s.notChecked()
	s.cautions()
	s.heading(2, "Signatures", "")
	s.add(&paper.Sign{Roles: []string{"calculated by", "checked by", "approved by"}})
	return &paper.Paper{
		Name: "calc-sheet", Title: "Calc sheet", Job: s.job.Title, Revision: s.job.Revision, Hash: s.job.Hash(s.Version), Tool: "lugwright " + s.Version,
		Warning: s.Warning, Letter: s.job.Units == units.Inch, Blocks: s.blocks,
	}
}

type sheet struct {
	Input
	job    *job.Job
	blocks []paper.Block
}

func (s *sheet) verdict() []paper.Fact {
	facts := []paper.Fact{{Name: "Verdict on the brackets", Value: verdictOf(s.Result)}}
	if s.Vehicle != nil {
		facts = append(facts, paper.Fact{Name: "Verdict on the vehicle", Value: s.Vehicle.Verdict(s.job.Units) + "; see " + vehicleHead})
	}
	return append(facts, []paper.Fact{
		{Name: "Basis", Value: fmt.Sprintf("%s (%s, edition %s), method %s", s.job.Basis, s.Card.Document, s.Card.Edition, s.job.Method)},
		{Name: "Units", Value: systemName(s.job.Units) + "; lines of a calculation are in N, mm and MPa"},
		{Name: "Axes", Value: "x rearward, y left, z up; forces act on the bracket"},
	}...)
}

func systemName(u units.System) string {
	if u == units.Inch {
		return "inch"
	}
	return "metric"
}

// verdictOf puts the job's verdict in words; a bracket of which nothing was checked is no pass.
func verdictOf(r *run.Result) string {
	switch v := r.Verdict(); {
	case r.Passes():
		return "pass; what was not checked is listed near the end"
	case v == strength.Pass:
		return "NOT CHECKED: no limit state speaks of one of the brackets"
	default:
		return shout(v)
	}
}

// summary has the brackets in the order of the job, each with the check that decides.
func (s *sheet) summary() {
	s.heading(2, "Brackets", "")
	t := &paper.Table{Heads: heads("bracket", "pieces", "verdict", "decided by", "place", "case", "#demand", "#capacity", "#used")}
	for i := range s.Result.Brackets {
		b := &s.Result.Brackets[i]
		row := []string{b.Spec.Name, fmt.Sprintf("%d, %s hand", b.Spec.Quantity, b.Spec.Hand), bracketVerdict(b), "", "", "", "", "", ""}
		if k := b.Report.Governing(); k != nil {
			row = append(row[:3], k.Title, k.Place, k.Case)
			row = append(row, s.compared(k)...)
		}
		t.Rows = append(t.Rows, paper.Row{Cells: row})
	}
	s.add(t)
}

func bracketVerdict(b *run.Bracket) string {
	if b.Report.Governing() == nil {
		return "NOT CHECKED"
	}
	return shout(b.Report.Verdict())
}

// assumptions are what the numbers rest on beside the job's own: factors, and where each comes from.
func (s *sheet) assumptions() {
	s.heading(2, "Assumptions", "")
	list := []paper.Fact{{Name: "Load factor on service cases", Value: s.loadFactor()}}
	if len(s.Result.Brackets) > 0 {
		r := s.Result.Brackets[0].Report
		if r.PinJoint != "" {
			list = append(list, paper.Fact{Name: "Pin holes by", Value: r.PinJoint})
		}
		for _, f := range r.Factors {
			list = append(list, paper.Fact{Name: "Factor " + f.Symbol, Value: withUnit(figures(f.Value), f.Unit) + ", " + f.Words + s.setBy(f.Symbol)})
		}
	}
	if s.job.LeaveOut != nil {
		list = append(list, paper.Fact{Name: "Left out by the job", Value: strings.Join(s.job.LeaveOut, ", ")})
	}
	if s.job.ShopName != "" {
		list = append(list, paper.Fact{Name: "Holes as the shop makes them", Value: fmt.Sprintf("%s (%s)", s.job.Shop.Name, s.job.Shop.Process)})
	}
	s.facts(list)
	var words []string
	for _, c := range caution.Of(5, 7, 8) {
		words = append(words, c.Text)
	}
	s.add(&paper.List{Items: words})
}

// factor is the load factor on service cases, with no factor where the method takes loads as they are.
func (s *sheet) factor() float64 {
	if len(s.Result.Brackets) == 0 {
		return 1
	}
	return s.Result.Brackets[0].Report.LoadFactor
}

func (s *sheet) loadFactor() string {
	k := figures(s.factor())
	switch {
	case s.job.LoadFactor != 0:
		return k + ", builder's choice, set in the job"
	case s.factor() == 1:
		return k + ": the method takes service loads as they are"
	case s.Card.FactorSource != "":
		return k + ", " + s.Card.FactorSource
	}
	return k + ", no source stated"
}

// setBy says where the value of a factor comes from, where it is not the basis's default.
func (s *sheet) setBy(symbol string) string {
	if _, own := s.job.Factors[symbol]; own {
		return "; builder's choice, set in the job"
	}
	if s.job.FactorSet != "" {
		return "; set " + s.job.FactorSet
	}
	return ""
}

func (s *sheet) cases() {
	s.heading(2, "Load cases", "")
	t := &paper.Table{Heads: heads("case", "level", "what it is", "source")}
	for _, c := range s.job.Cases {
		words := c.Words
		if c.AtRest {
			words = strings.TrimPrefix(words+"; "+job.AtRest, "; ")
		}
		t.Rows = append(t.Rows, paper.Row{Cells: []string{c.Name, string(c.Level), words, c.Source}})
	}
	s.add(t)
}

const vehicleHead = "Frame, mounts and room under twist"

// vehicle is what the loads on the brackets come from: what of it fails, is to be minded or is not known, and its plots.
func (s *sheet) vehicle() {
	if s.Vehicle == nil {
		return
	}
	s.heading(2, vehicleHead, "")
	if told := s.Vehicle.Told(s.job.Units); len(told) > 0 {
		t := &paper.Table{Heads: heads("standing", "where", "what")}
		for _, w := range told {
			standing := string(w.Severity)
			if w.Severity == whole.Fails {
				standing = "FAILS"
			}
			t.Rows = append(t.Rows, paper.Row{Cells: []string{standing, w.At, w.Words}})
		}
		s.add(t)
	}
	all := plots.OfVehicle(s.Vehicle.Answer, s.Vehicle.Request, plots.Scale{System: s.job.Units})
	for i := range all {
		s.blocks = append(s.blocks, all[i].Blocks(3)...)
	}
}

// rules are the limit states that checks name by their titles, each with its clause.
func (s *sheet) rules() {
	s.heading(2, "Rules applied", "")
	t := &paper.Table{Heads: heads("check", "clause"), Sortable: true}
	for i := range s.Result.Brackets {
		for _, k := range s.Result.Brackets[i].Report.Checks {
			cells := []string{k.Title, k.Clause}
			if !slices.ContainsFunc(t.Rows, func(r paper.Row) bool { return slices.Equal(r.Cells, cells) }) {
				t.Rows = append(t.Rows, paper.Row{Cells: cells})
			}
		}
	}
	slices.SortStableFunc(t.Rows, func(a, b paper.Row) int { return cmp.Compare(a.Cells[0], b.Cells[0]) })
	s.add(t)
}

// notChecked lists each thing once, with the places that it is about.
func (s *sheet) notChecked() {
	s.heading(2, "Not checked", "")
	t := &paper.Table{Heads: heads("what", "where", "why")}
	for i := range s.Result.Brackets {
		b := &s.Result.Brackets[i]
		for _, n := range b.Report.NotChecked {
			where := b.Spec.Name
			if n.Place != b.Spec.Name && n.Place != "" {
				where += ": " + n.Place
			}
			same := slices.IndexFunc(t.Rows, func(r paper.Row) bool { return r.Cells[0] == n.What && r.Cells[2] == n.Why })
			if same < 0 {
				t.Rows = append(t.Rows, paper.Row{Cells: []string{n.What, where, n.Why}})
			} else {
				t.Rows[same].Cells[1] += "; " + where
			}
		}
	}
	if len(t.Rows) == 0 {
		s.words("Nothing that the brackets' models and the basis know of; the cautions say what no model here covers.")
		return
	}
	s.add(t)
}

func (s *sheet) cautions() {
	s.heading(2, "Cautions", "")
	l := &paper.List{Kind: paper.Steps} // in their order, so that each has its number
	for _, c := range caution.All() {
		l.Items = append(l.Items, c.Text)
	}
	s.add(l)
}

// shout makes what must not be missed stand out.
func shout(v strength.Verdict) string {
	switch v {
	case strength.Fail:
		return "FAIL"
	case strength.Outside:
		return "OUTSIDE THE RULE"
	}
	return string(v)
}

// used is the utilisation of a check, a dash where there is none.
func used(k *strength.Check) string {
	if k.Verdict == strength.NotApplied || math.IsInf(k.Utilisation, 0) || math.IsNaN(k.Utilisation) {
		return "-"
	}
	return units.Utilisation(k.Utilisation)
}
