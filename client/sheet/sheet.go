package sheet

// This file lays the paper out, from head to signatures.

import (
	"fmt"
	"math"
	"strings"

	"lugwright/client/caution"
	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/strength"
	"lugwright/units"
)

// Input is what a calc sheet is made from. Checks have lines only when the run had Trace on.
type Input struct {
	Result  *run.Result
	Card    strength.Card // of the job's basis
	Version string        // of the tool
	Warning string        // first line of the paper, empty for none
}

// Markdown writes the sheet. Results are in the job's units, lines of a calculation in N, mm and MPa. The same input
// gives the same bytes.
func Markdown(in Input) []byte {
	s := &sheet{Input: in, job: in.Result.Job}
	s.head()
	s.cases()
	s.summary()
	s.notChecked()
	for i := range in.Result.Brackets {
		s.bracket(&in.Result.Brackets[i])
	}
	s.cautions()
	s.signatures()
	return []byte(s.String())
}

type sheet struct {
	Input
	paper
	job *job.Job
}

func (s *sheet) head() {
	if s.Warning != "" {
		s.line("**%s**", prose(s.Warning))
		s.line("")
	}
	s.heading(1, "Calc sheet: "+s.job.Title)
	if s.job.Revision != "" {
		s.item("Revision", s.job.Revision)
	}
	s.item("Verdict", verdictOf(s.Result))
	s.item("Basis", fmt.Sprintf("%s (%s, edition %s), method %s", s.job.Basis, s.Card.Document, s.Card.Edition, s.job.Method))
	s.item("Load factor on service cases", s.loadFactor())
	s.factors()
	s.item("Units", systemName(s.job.Units)+"; lines of a calculation are in N, mm and MPa")
	s.item("Axes", "x rearward, y left, z up; forces act on the bracket")
	s.item("Input hash (SHA-256)", s.job.Hash(s.Version))
	s.item("Tool", "lugwright "+s.Version)
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
		return "pass; what was not checked is listed below"
	case v == strength.Pass:
		return "NOT CHECKED: no limit state speaks of one of the brackets"
	default:
		return shout(v)
	}
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

// factors names the settable factors as used, and the basis of pin holes where it is another.
func (s *sheet) factors() {
	if len(s.Result.Brackets) == 0 {
		return
	}
	r := s.Result.Brackets[0].Report
	if r.PinJoint != "" {
		s.item("Pin holes by", r.PinJoint)
	}
	for _, f := range r.Factors {
		s.item("Factor "+f.Symbol, withUnit(figures(f.Value), f.Unit)+", "+f.Words+s.setBy(f.Symbol))
	}
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
	s.heading(2, "Load cases")
	rows := [][]string{{"case", "level", "source", "what it is"}}
	for _, c := range s.job.Cases {
		words := c.Words
		if c.AtRest {
			words = strings.TrimPrefix(words+"; "+job.AtRest, "; ")
		}
		rows = append(rows, []string{c.Name, string(c.Level), c.Source, words})
	}
	s.table(rows)
}

func (s *sheet) summary() {
	s.heading(2, "Brackets, worst first")
	rows := [][]string{{"used", "verdict", "bracket", "governed by", "place", "case"}}
	for _, b := range s.Result.WorstFirst() {
		k := b.Report.Governing()
		if k == nil {
			rows = append(rows, []string{"-", "NOT CHECKED", b.Spec.Name, "", "", ""})
			continue
		}
		rows = append(rows, []string{used(k), shout(b.Report.Verdict()), b.Spec.Name, k.Title, k.Place, k.Case})
	}
	s.table(rows)
}

func (s *sheet) notChecked() {
	s.heading(2, "Not checked")
	rows := [][]string{{"bracket", "what", "place", "why"}}
	for i := range s.Result.Brackets {
		b := &s.Result.Brackets[i]
		for _, n := range b.Report.NotChecked {
			rows = append(rows, []string{b.Spec.Name, n.What, n.Place, n.Why})
		}
	}
	if len(rows) == 1 {
		s.line("Nothing that the brackets' models and the basis know of; the cautions say what no model here covers.")
		return
	}
	s.table(rows)
}

func (s *sheet) cautions() {
	s.heading(2, "Cautions")
	for _, c := range caution.All() {
		s.line("%d. %s", c.Number, prose(c.Text))
	}
}

func (s *sheet) signatures() {
	s.heading(2, "Signatures")
	const blank = "______________________"
	s.table([][]string{
		{"", "name", "date", "signature"},
		{"calculated by", blank, blank, blank},
		{"checked by", blank, blank, blank},
		{"approved by", blank, blank, blank},
	})
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
