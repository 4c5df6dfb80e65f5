package run

// This file tries brackets of a job with other parameters, many at a time.

import (
	"context"

	"lugwright/client/job"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/services/dial"
)

// Trier is what trying variants takes of the services' client.
type Trier interface {
	Build(ctx context.Context, requests []geometry.Request) ([]dial.Built, error)
	Brief(ctx context.Context, requests []dial.CheckRequest) ([]dial.Briefed, error)
}

// Variant is a bracket of a job with other parameters, built and checked.
type Variant struct {
	Part  *part.Bracket // nil when it cannot be built
	Brief *dial.Brief   // nil when it cannot be checked, or was not
	Err   error         // why not: part.FieldErrors where fields are at fault
}

// Make builds variants as Job does the job's own brackets. What the geometry or the shop's rules refuse is a variant with its error; the returned error means
// that a service did not answer.
func Make(ctx context.Context, c Trier, j *job.Job, specs []job.Bracket) ([]Variant, error) {
	requests := make([]geometry.Request, len(specs))
	for i := range specs {
		requests[i] = specs[i].Request()
	}
	answers, err := c.Build(ctx, requests)
	if err != nil {
		return nil, err
	}
	out := make([]Variant, len(specs))
	for i, a := range answers {
		v := &out[i]
		if v.Err = a.Err; v.Err == nil {
			v.Part, v.Err = made(j, a.Bracket)
		}
	}
	return out, nil
}

// Try builds and checks variants as Job does the job's own brackets, and gives only verdicts and utilisations. The job is as Loaded gives it. What the geometry,
// the shop's rules or the loads refuse is a variant with its error; the returned error means that a service did not answer.
func Try(ctx context.Context, c Trier, j *job.Job, specs []job.Bracket) ([]Variant, error) {
	out, err := Make(ctx, c, j, specs)
	if err != nil {
		return nil, err
	}
	var asked []*Variant
	var questions []dial.CheckRequest
	for i := range out {
		v := &out[i]
		if v.Err != nil {
			continue
		}
		q := Question(j, &specs[i])
		q.Bracket = v.Part
		if v.Err = carried(v.Part, q.Cases); v.Err == nil {
			asked, questions = append(asked, v), append(questions, q)
		}
	}
	if len(asked) == 0 {
		return out, nil
	}
	briefs, err := c.Brief(ctx, questions)
	if err != nil {
		return nil, err
	}
	for k, v := range asked {
		v.Brief, v.Err = briefs[k].Brief, briefs[k].Err
	}
	return out, nil
}

// One builds and checks one bracket of a job that Loaded gave, with its whole report.
func One(ctx context.Context, c *dial.Client, j *job.Job, spec job.Bracket) (*Bracket, error) {
	alone := *j
	alone.Brackets = []job.Bracket{spec}
	built, err := build(ctx, c, &alone)
	if err != nil {
		return nil, err
	}
	reports, err := check(ctx, c, &alone, built, Options{})
	if err != nil {
		return nil, err
	}
	return &Bracket{Spec: &alone.Brackets[0], Part: built[0], Report: reports[0], Notes: notes(&alone, &spec, built[0], reports[0])}, nil
}
