package command

// This file writes a sweep as JSON and as CSV. Numbers are in the unit named beside them, whatever the job prints in.

import (
	"bytes"
	"encoding/csv"
	"math"
	"slices"
	"strconv"

	"lugwright/client/caution"
	"lugwright/client/job"
	"lugwright/client/sweep"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
)

type sweepDoc struct {
	Format   int         `json:"format"`
	Tool     string      `json:"tool"`
	Job      triedJobDoc `json:"job"`
	Margin   float64     `json:"margin"`           // wanted: no utilisation above 1/margin
	Most     float64     `json:"most_utilisation"` // 1/margin
	Whole    bool        `json:"complete"`         // every variant was tried
	Sources  []string    `json:"sizes_from"`       // where the rack's sizes came from
	Brackets []sweptDoc  `json:"brackets"`
	Common   []commonDoc `json:"common_thicknesses"` // fewest thicknesses first, the last every bracket at its own lightest
	Apart    string      `json:"why_no_common,omitempty"`
	Cautions []string    `json:"cautions"`
}

type triedJobDoc struct {
	File     string `json:"file"`
	Title    string `json:"title"`
	Revision string `json:"revision"`
	Hash     string `json:"hash"`
	Basis    string `json:"basis"`
	Method   string `json:"method"`
}

func docOfTriedJob(j *job.Job, version string) triedJobDoc {
	return triedJobDoc{j.File, j.Title, j.Revision, j.Hash(version), j.Basis, string(j.Method)}
}

type sweptDoc struct {
	Name       string          `json:"name"`
	Kind       string          `json:"kind"`
	Quantity   int             `json:"quantity"`
	Varied     []axisDoc       `json:"varied"`
	Rows       []rowDoc        `json:"rows"`
	Lightest   *int            `json:"lightest"` // its place among rows; null when none passes
	StepsDown  []stepDoc       `json:"one_step_down"`
	Edges      *edgesDoc       `json:"edges,omitempty"`
	NotChecked []notCheckedDoc `json:"not_checked"`
	Notes      []string        `json:"notes"`
}

type axisDoc struct {
	Parameter string         `json:"parameter"`
	Values    []parameterDoc `json:"values"`
}

type rowDoc struct {
	Values   []parameterDoc `json:"values"`
	Outcome  string         `json:"outcome"`
	MassKG   number         `json:"mass_kg"`      // all told; null for what is refused
	BareKG   number         `json:"bare_mass_kg"` // without weld metal and bolts: what the pack's lists weigh
	CutMM    number         `json:"cut_length_mm"`
	WeldMM3  number         `json:"weld_volume_mm3"`
	Stock    []stockDoc     `json:"plates_from"`
	Governs  *governingDoc  `json:"governing"` // null when nothing was checked
	NotCheck int            `json:"not_checked"`
	Why      string         `json:"why,omitempty"` // of what is refused
}

type stockDoc struct {
	ThicknessMM float64 `json:"thickness_mm"`
	Material    string  `json:"material"`
}

type stepDoc struct {
	Parameter string  `json:"parameter"`
	Row       *rowDoc `json:"row"` // null: no smaller value was tried
}

type edgesDoc struct {
	Parameter string    `json:"parameter"`
	Tried     int       `json:"tried"`
	Once      bool      `json:"turns_once"` // among the values that were looked at
	List      []edgeDoc `json:"edges"`
}

type edgeDoc struct {
	Below rowDoc `json:"below"`
	Above rowDoc `json:"above"`
}

type commonDoc struct {
	Stock  []stockDoc  `json:"plates_from"`
	MassKG float64     `json:"mass_kg"`
	MoreKG float64     `json:"more_than_own_lightest_kg"`
	Chosen []chosenDoc `json:"brackets"`
}

type chosenDoc struct {
	Name   string         `json:"name"`
	Values []parameterDoc `json:"values"`
}

func docOfSweep(r *swept, version string) sweepDoc {
	d := sweepDoc{
		Format: format, Tool: "lugwright " + version, Job: docOfTriedJob(r.job, version), Margin: r.margin, Most: 1 / r.margin, Whole: r.whole,
		Sources: append([]string{}, r.plan.Sources...), Brackets: docsOf(r.brackets, docOfSwept), Common: []commonDoc{}, Cautions: []string{},
	}
	for _, c := range r.common {
		d.Common = append(d.Common, commonDoc{
			docsOf(c.Stock, docOfStock), c.KG, c.KG - r.common[len(r.common)-1].KG,
			docsOf(c.Rows, func(r *sweep.Row) chosenDoc { return chosenDoc{r.Bracket, docsOf(r.Values, docOfParameter)} }),
		})
	}
	if r.apart != nil {
		d.Apart = r.apart.Error()
	}
	for _, c := range caution.Checked(r.job.Vehicle != nil) {
		d.Cautions = append(d.Cautions, c.Text)
	}
	return d
}

func docOfSwept(b *sweep.Swept) sweptDoc {
	d := sweptDoc{
		Name: b.Grid.Spec.Name, Kind: b.Grid.Spec.Kind, Quantity: b.Grid.Spec.Quantity,
		Varied: docsOf(b.Grid.Axes, func(a sweep.Axis) axisDoc { return axisDoc{a.Param.Name, docsOf(a.Values, docOfParameter)} }),
		Rows:   docsOf(b.Rows, docOfRow), StepsDown: []stepDoc{}, Notes: append([]string{}, b.Notes...),
		NotChecked: docsOf(b.NotChecked, func(n strength.NotChecked) notCheckedDoc { return notCheckedDoc{n.What, n.Place, n.Why} }),
	}
	if b.Lightest != nil {
		d.Lightest = &b.Lightest.Index
	}
	for _, s := range b.Steps {
		one := stepDoc{Parameter: s.Axis.Param.Name}
		if s.Row != nil {
			row := docOfRow(*s.Row)
			one.Row = &row
		}
		d.StepsDown = append(d.StepsDown, one)
	}
	if e := b.Edges; e != nil {
		d.Edges = &edgesDoc{e.Axis.Param.Name, e.Tried, !e.Finely, docsOf(e.List, func(x sweep.Edge) edgeDoc { return edgeDoc{docOfRow(*x.Below), docOfRow(*x.Above)} })}
	}
	return d
}

func docOfStock(s sweep.Stock) stockDoc { return stockDoc{s.ThicknessMM, s.Material} }

func docOfRow(r sweep.Row) rowDoc {
	d := rowDoc{
		Values: docsOf(r.Values, docOfParameter), Outcome: string(r.Outcome), MassKG: number(r.Takes.KG), BareKG: number(r.Takes.BareKG), CutMM: number(r.Takes.CutMM), WeldMM3: number(r.Takes.WeldMM3),
		Stock: docsOf(r.Takes.Stock, docOfStock), NotCheck: r.NotChecked, Why: r.Why(),
	}
	if r.Outcome == sweep.Refused {
		none := number(math.NaN())
		d.MassKG, d.BareKG, d.CutMM, d.WeldMM3 = none, none, none, none
	}
	if g := r.Governs; g != nil {
		d.Governs = &governingDoc{g.Limit, g.Place, g.Case, number(g.Utilisation)}
	}
	return d
}

// csvOfSweep has one line for each variant of every bracket, and a column for each parameter that is varied of any.
func csvOfSweep(r *swept) []byte {
	var names []geometry.Param
	for i := range r.plan.Grids {
		for _, a := range r.plan.Grids[i].Axes {
			if !slices.ContainsFunc(names, func(p geometry.Param) bool { return p.Name == a.Param.Name && p.Unit == a.Param.Unit }) {
				names = append(names, a.Param)
			}
		}
	}
	head := []string{"bracket"}
	for _, n := range names {
		head = append(head, n.Name+map[geometry.Unit]string{geometry.MM: "_mm", geometry.Rad: "_rad"}[n.Unit])
	}
	rows := [][]string{append(head, "outcome", "mass_kg", "bare_mass_kg", "cut_length_mm", "weld_volume_mm3", "utilisation", "limit", "place", "case", "not_checked", "why")}
	for _, b := range r.brackets {
		for i := range b.Rows {
			rows = append(rows, csvRow(&b.Rows[i], names))
		}
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	w.WriteAll(rows) //nolint:errcheck // a buffer takes everything
	return out.Bytes()
}

func csvRow(r *sweep.Row, names []geometry.Param) []string {
	exact := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	line := []string{r.Bracket}
	for _, n := range names {
		cell := ""
		if i := slices.IndexFunc(r.Values, func(v part.Param) bool { return v.Name == n.Name && v.Unit == string(n.Unit) }); i >= 0 {
			if cell = r.Values[i].Text; cell == "" {
				cell = exact(r.Values[i].Number)
			}
		}
		line = append(line, cell)
	}
	line = append(line, string(r.Outcome))
	if r.Outcome == sweep.Refused {
		return append(line, "", "", "", "", "", "", "", "", "", r.Why())
	}
	line = append(line, exact(r.Takes.KG), exact(r.Takes.BareKG), exact(r.Takes.CutMM), exact(r.Takes.WeldMM3))
	if g := r.Governs; g != nil {
		u := "" // no capacity: no number
		if !math.IsInf(g.Utilisation, 0) {
			u = exact(g.Utilisation)
		}
		return append(line, u, g.Limit, g.Place, g.Case, strconv.Itoa(r.NotChecked), "")
	}
	return append(line, "", "", "", "", strconv.Itoa(r.NotChecked), "")
}
