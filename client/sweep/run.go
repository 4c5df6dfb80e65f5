package sweep

// This file tries a grid and hands out its rows as they come.

import (
	"context"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/part"
)

// The first rows are to show at once, later ones to come in messages that are worth their while.
const (
	firstTried = 2
	mostTried  = 128
)

// Bench is what variants are tried on.
type Bench struct {
	Client    run.Trier
	Job       *job.Job // as run.Loaded gives it
	Densities run.Densities
	Margin    float64 // every utilisation is to be at most 1/Margin; at least 1
}

// Try tries brackets with other parameters and gives a row for each.
func (b *Bench) Try(ctx context.Context, spec *job.Bracket, variants [][]part.Param) ([]Row, error) {
	return b.rows(ctx, spec, variants, run.Try)
}

// Weigh builds brackets with other parameters, and gives a row for each that says what it takes, or why there is none.
func (b *Bench) Weigh(ctx context.Context, spec *job.Bracket, variants [][]part.Param) ([]Row, error) {
	return b.rows(ctx, spec, variants, run.Make)
}

func (b *Bench) rows(ctx context.Context, spec *job.Bracket, variants [][]part.Param, try func(context.Context, run.Trier, *job.Job, []job.Bracket) ([]run.Variant, error)) ([]Row, error) {
	specs := make([]job.Bracket, len(variants))
	for i, v := range variants {
		specs[i] = With(spec, v)
	}
	made, err := try(ctx, b.Client, b.Job, specs)
	if err != nil {
		return nil, err
	}
	out := make([]Row, len(made))
	for i := range made {
		out[i] = row(&made[i], b.Densities, b.Margin)
		out[i].Bracket, out[i].Values = spec.Name, variants[i]
	}
	return out, nil
}

// Run tries a grid in order and gives each row to emit as it comes; an error of emit ends the run. A fault of the job
// that refuses the first rows, whatever the parameters are, ends it at once, with its place in the file. What is done is returned beside any error.
func (b *Bench) Run(ctx context.Context, g *Grid, emit func(*Row) error) ([]Row, error) {
	var done []Row
	for from, size, n := 0, firstTried, g.Count(); from < n; {
		to := min(from+size, n)
		variants := make([][]part.Param, to-from)
		for i := range variants {
			variants[i] = g.Values(from + i)
		}
		rows, err := b.Try(ctx, g.Spec, variants)
		if err != nil {
			return done, err
		}
		if fault := Fault(rows); from == 0 && fault != nil {
			if err := b.Job.Locate(g.Spec, fault); part.Fields(err) == nil {
				return nil, err
			}
		}
		for i := range rows {
			rows[i].Index = from + i
			done = append(done, rows[i])
			if err := emit(&done[len(done)-1]); err != nil {
				return done, err
			}
		}
		from, size = to, min(2*size, mostTried)
	}
	return done, nil
}
