package command

// This file holds the documents that --json writes. Field names are stable: fields may be added, none is renamed or dropped
// within a version of "format". Numbers are in the unit named beside them.

import (
	"encoding/json"
	"errors"
	"io"
	"math"

	"lugwright/client/caution"
	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/geometry/access"
	"lugwright/part"
	"lugwright/strength"
)

// format is the number of the JSON documents' form.
const format = 1

func (s *session) writeJSON(v any) error { return writeJSON(s.out, v) }

func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}

// number is null where JSON has no number: an endless utilisation.
type number float64

func (n number) MarshalJSON() ([]byte, error) {
	if math.IsNaN(float64(n)) || math.IsInf(float64(n), 0) {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n))
}

type resultDoc struct {
	Format   int          `json:"format"`
	Tool     string       `json:"tool"`
	Job      jobDoc       `json:"job"`
	Verdict  string       `json:"verdict"`
	Passes   bool         `json:"passes"`
	Brackets []bracketDoc `json:"brackets"` // worst first
	Cautions []string     `json:"cautions"`
}

type jobDoc struct {
	File       string  `json:"file"`
	Title      string  `json:"title"`
	Revision   string  `json:"revision"`
	Hash       string  `json:"hash"`
	Basis      string  `json:"basis"`
	Method     string  `json:"method"`
	LoadFactor float64 `json:"load_factor"` // on service cases
	// PinJoint is the basis whose rules serve pin holes, where it is another.
	PinJoint  string      `json:"pin_joint,omitempty"`
	LeaveOut  []string    `json:"leave_out,omitempty"`
	FactorSet string      `json:"factor_set,omitempty"`
	Factors   []factorDoc `json:"factors"` // settable ones, as used
}

type factorDoc struct {
	Symbol string  `json:"symbol"`
	Value  float64 `json:"value"`
	Unit   string  `json:"unit,omitempty"`
	Words  string  `json:"words"`
}

type bracketDoc struct {
	Name       string          `json:"name"`
	Kind       string          `json:"kind"`
	Hand       string          `json:"hand"`
	Quantity   int             `json:"quantity"`
	Parameters []parameterDoc  `json:"parameters"`
	Verdict    string          `json:"verdict"`
	Governing  *governingDoc   `json:"governing"` // null when nothing was checked
	Checks     []checkDoc      `json:"checks"`    // worst first
	NotChecked []notCheckedDoc `json:"not_checked"`
	NoAccess   []string        `json:"no_access"` // what tools cannot reach
	Fits       []string        `json:"fits"`      // holes that welding may put out of line
	Notes      []string        `json:"notes"`
}

// governingDoc names the check that decides.
type governingDoc struct {
	Limit       string `json:"limit"`
	Place       string `json:"place"`
	Case        string `json:"case"`
	Utilisation number `json:"utilisation"`
}

type parameterDoc struct {
	Name   string   `json:"name"`
	Number *float64 `json:"number,omitempty"`
	Unit   string   `json:"unit"`
	Text   string   `json:"text,omitempty"`
}

type checkDoc struct {
	Limit       string     `json:"limit"`
	Title       string     `json:"title"`
	Clause      string     `json:"clause"`
	Place       string     `json:"place"`
	Thing       string     `json:"thing"`
	AtMM        [3]float64 `json:"at_mm"`
	Case        string     `json:"case"`
	Sharing     string     `json:"sharing,omitempty"`
	Demand      number     `json:"demand"`
	Capacity    number     `json:"capacity"`
	Unit        string     `json:"unit"`
	Utilisation number     `json:"utilisation"` // null when there is no capacity
	Verdict     string     `json:"verdict"`
	Why         string     `json:"why,omitempty"`
	Notes       []string   `json:"notes,omitempty"`
	Lines       []lineDoc  `json:"lines"`
}

type lineDoc struct {
	Kind    string    `json:"kind"`
	Symbol  string    `json:"symbol,omitempty"`
	Formula string    `json:"formula,omitempty"`
	Value   number    `json:"value"`            // null for a list
	Values  []float64 `json:"values,omitempty"` // of a list
	Unit    string    `json:"unit,omitempty"`
	Words   string    `json:"words,omitempty"`
}

type notCheckedDoc struct {
	What  string `json:"what"`
	Place string `json:"place"`
	Why   string `json:"why"`
}

func docOfResult(r *run.Result, version string) resultDoc {
	d := resultDoc{
		Format: format, Tool: "lugwright " + version, Job: docOfJob(r, version),
		Verdict: string(r.Verdict()), Passes: r.Passes(), Brackets: []bracketDoc{}, Cautions: []string{},
	}
	for _, b := range r.WorstFirst() {
		d.Brackets = append(d.Brackets, docOfBracket(b))
	}
	for _, c := range caution.Checked(r.Job.Vehicle != nil) {
		d.Cautions = append(d.Cautions, c.Text)
	}
	return d
}

func docOfJob(r *run.Result, version string) jobDoc {
	j := r.Job
	d := jobDoc{File: j.File, Title: j.Title, Revision: j.Revision, Hash: j.Hash(version), Basis: j.Basis, Method: string(j.Method), PinJoint: j.PinJoint, LeaveOut: j.LeaveOut, FactorSet: j.FactorSet, Factors: []factorDoc{}}
	if len(r.Brackets) > 0 {
		d.LoadFactor = r.Brackets[0].Report.LoadFactor
		d.Factors = docsOf(r.Brackets[0].Report.Factors, func(f strength.FactorValue) factorDoc { return factorDoc{f.Symbol, f.Value, f.Unit, f.Words} })
	}
	return d
}

func docOfBracket(b *run.Bracket) bracketDoc {
	d := bracketDoc{
		Name: b.Spec.Name, Kind: b.Spec.Kind, Hand: string(b.Spec.Hand), Quantity: b.Spec.Quantity,
		Parameters: docsOf(b.Part.Params, docOfParameter), Verdict: string(b.Report.Verdict()),
		Checks:     docsOf(b.Report.Checks, docOfCheck),
		NotChecked: docsOf(b.Report.NotChecked, func(n strength.NotChecked) notCheckedDoc { return notCheckedDoc{n.What, n.Place, n.Why} }),
		NoAccess:   docsOf(b.Access, access.Finding.String),
		Fits:       append([]string{}, b.Fits...),
		Notes:      append([]string{}, b.Notes...),
	}
	if k := b.Report.Governing(); k != nil {
		d.Governing = &governingDoc{k.Limit, k.Place, k.Case, number(k.Utilisation)}
	}
	return d
}

func docOfParameter(p part.Param) parameterDoc {
	d := parameterDoc{Name: p.Name, Unit: p.Unit, Text: p.Text}
	if p.Text == "" {
		d.Number = &p.Number
	}
	return d
}

func docOfCheck(k strength.Check) checkDoc {
	return checkDoc{
		Limit: k.Limit, Title: k.Title, Clause: k.Clause, Place: k.Place, Thing: k.Thing, AtMM: [3]float64{k.At.X, k.At.Y, k.At.Z},
		Case: k.Case, Sharing: k.Sharing, Demand: number(k.Demand), Capacity: number(k.Capacity), Unit: k.Unit,
		Utilisation: number(k.Utilisation), Verdict: string(k.Verdict), Why: k.Why, Notes: k.Notes, Lines: docsOf(k.Lines, docOfLine),
	}
}

func docOfLine(l strength.Line) lineDoc {
	d := lineDoc{string(l.Kind), l.Symbol, l.Formula, number(l.Value), l.Values, l.Unit, l.Words}
	if l.Values != nil {
		d.Value = number(math.NaN())
	}
	return d
}

// docsOf maps a list; an empty list stays a list and is never null.
func docsOf[A, B any](list []A, f func(A) B) []B {
	out := make([]B, len(list))
	for i, a := range list {
		out[i] = f(a)
	}
	return out
}

// errorDoc is what standard error gets with --json: why the run did not end with status 0.
type errorDoc struct {
	Format int        `json:"format"`
	Status int        `json:"status"`
	Errors []fieldDoc `json:"errors"`
	Hint   string     `json:"hint,omitempty"`
}

// fieldDoc is one error; what has no place in a file has its message alone.
type fieldDoc struct {
	File    string `json:"file,omitempty"`
	Line    int    `json:"line,omitempty"`
	Column  int    `json:"column,omitempty"`
	Field   string `json:"field,omitempty"`
	Message string `json:"message"`
	Accept  string `json:"accept,omitempty"`
}

func docOfError(err error, code int, hint string) errorDoc {
	d := errorDoc{Format: format, Status: code, Hint: hint}
	var fields job.Errors
	if !errors.As(err, &fields) {
		d.Errors = []fieldDoc{{Message: err.Error()}}
	}
	for _, e := range fields {
		d.Errors = append(d.Errors, fieldDoc{e.File, e.At.Line, e.At.Column, e.Field, e.Found, e.Accept})
	}
	return d
}
