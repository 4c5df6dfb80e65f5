package sweep

// This file gathers what is known of one bracket once its rows are there.

import (
	"context"
	"slices"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/services/dial"
	"lugwright/strength"
)

// Swept is one bracket of a sweep.
type Swept struct {
	Grid     *Grid
	Rows     []Row // in the order of the grid; fewer than it has when the sweep was stopped
	Lightest *Row  // nil: none passes
	Steps    []Step
	Edges    *Edges // nil: not asked for
	// NotChecked is what no variant was checked for, each once, with the words of the reports of as many variants as differ in how many there are.
	NotChecked []strength.NotChecked
	Notes      []string // remarks of the same reports
}

// Settle finds the lightest row and what one step down brings.
func Settle(g *Grid, rows []Row) *Swept {
	s := &Swept{Grid: g, Rows: rows}
	if passing := LightestFirst(rows); len(passing) > 0 {
		s.Lightest = passing[0]
		s.Steps = Thinner(g, rows, s.Lightest)
	}
	return s
}

// Report asks for the whole reports that say what is not checked: of the lightest row, and of one more for each other number of such things.
func (s *Swept) Report(ctx context.Context, c *dial.Client, b *Bench) error {
	var counts []int
	ask := func(r *Row) error {
		if r == nil || r.Outcome == Refused || slices.Contains(counts, r.NotChecked) {
			return nil
		}
		counts = append(counts, r.NotChecked)
		full, err := run.One(ctx, c, b.Job, With(s.Grid.Spec, r.Values))
		if err != nil {
			return err
		}
		for _, n := range full.Report.NotChecked {
			if !slices.Contains(s.NotChecked, n) {
				s.NotChecked = append(s.NotChecked, n)
			}
		}
		for _, n := range full.Notes {
			if !slices.Contains(s.Notes, n) {
				s.Notes = append(s.Notes, n)
			}
		}
		return nil
	}
	if err := ask(s.Lightest); err != nil {
		return err
	}
	for i := range s.Rows {
		if err := ask(&s.Rows[i]); err != nil {
			return err
		}
	}
	return nil
}

// Picture is the rows against what one of them takes. Those of plate that the job has in stock are marked.
func (s *Swept) Picture(j *job.Job, title, across string, margin float64, of func(*Takes) float64) *Plot {
	p := &Plot{Title: title, Across: across, Margin: margin}
	for i := range s.Rows {
		if r := &s.Rows[i]; r.Governs != nil {
			p.Points = append(p.Points, Point{of(&r.Takes), r.Governs.Utilisation, r.Outcome, r == s.Lightest, InStock(j, r.Takes.Stock)})
		}
	}
	return p
}
