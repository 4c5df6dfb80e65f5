package run

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"lugwright/client/job"
	"lugwright/geometry"
	"lugwright/geometry/access"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength"
	"lugwright/vehicle/whole"
)

// Options say how much to ask for.
type Options struct {
	Trace  bool // record every line of every governing check
	Access bool // look for what tools cannot reach, and what welding puts out of line
}

// Result is a job with its checked brackets.
type Result struct {
	Job      *job.Job
	Brackets []Bracket // in the order of the job
	// Vehicle is what the loads of mounts and trays are from; nil where no bracket takes any.
	Vehicle *whole.Answer
}

// Bracket is one bracket of a job, built and checked.
type Bracket struct {
	Spec   *job.Bracket
	Part   *part.Bracket
	Report *strength.Report
	Notes  []string         // cases without a load, and what the report remarks
	Looked bool             // for what follows; else nothing is known of it
	Access []access.Finding // what tools cannot reach
	Fits   []string         // holes that welding may put out of line, and what to do
	// AtHoles is the same for each of those holes, for the drawing of its piece and its line of a list.
	AtHoles []access.AtHole
}

// AtHoles is what is done at holes of the piece with a mark because welding may put them out of line, by the holes' names; a piece of several brackets has that of all.
func (r *Result) AtHoles(mark string) map[string]string {
	out := map[string]string{}
	for i := range r.Brackets {
		b := &r.Brackets[i]
		for _, h := range b.AtHoles {
			p, m := b.Part.Plate(h.Piece), b.Part.Member(h.Piece)
			if p != nil && p.Mark != mark || m != nil && m.Mark != mark || slices.Contains(strings.Split(out[h.Hole], "; "), h.Words) {
				continue
			}
			if out[h.Hole] != "" {
				out[h.Hole] += "; "
			}
			out[h.Hole] += h.Words
		}
	}
	return out
}

// Known asks the services what a job may say.
func Known(ctx context.Context, c *dial.Client) (job.Known, error) {
	kinds, err := c.Kinds(ctx)
	if err != nil {
		return job.Known{}, err
	}
	cards, err := c.Cards(ctx)
	if err != nil {
		return job.Known{}, err
	}
	materials, err := c.Materials(ctx)
	if err != nil {
		return job.Known{}, err
	}
	var grades []string
	for _, g := range materials.Grades {
		grades = append(append(grades, g.Name), g.Aliases...)
	}
	return job.Known{Kinds: kinds, Bases: cards, Grades: grades}, nil
}

// Job finds the loads of mounts, builds every bracket, settles how the job's shop makes its holes, and checks it. Refused fields come as job.Errors with their places in the file, those of all brackets
// together; any other error means that a service did not answer or could not compute.
func Job(ctx context.Context, c *dial.Client, j *job.Job, o Options) (*Result, error) {
	if len(j.Brackets) == 0 {
		return nil, j.AtRoot("brackets", "missing", "brackets to check; `lugwright loads` shows the vehicle")
	}
	j, from, err := Loaded(ctx, c, j)
	if err != nil {
		return nil, err
	}
	built, err := build(ctx, c, j)
	if err != nil {
		return nil, err
	}
	reports, err := check(ctx, c, j, built, o)
	if err != nil {
		return nil, err
	}
	r := &Result{Job: j, Brackets: make([]Bracket, len(built)), Vehicle: from}
	for i := range built {
		r.Brackets[i] = Bracket{Spec: &j.Brackets[i], Part: built[i], Report: reports[i], Notes: notes(j, &j.Brackets[i], built[i], reports[i])}
		if o.Access {
			r.Brackets[i].Looked = true
			r.Brackets[i].Access, r.Brackets[i].Fits = access.Findings(built[i], j.Room), access.Fits(built[i])
			r.Brackets[i].AtHoles = access.AtHoles(built[i])
		}
	}
	return r, nil
}

func build(ctx context.Context, c *dial.Client, j *job.Job) ([]*part.Bracket, error) {
	requests := make([]geometry.Request, len(j.Brackets))
	for i := range j.Brackets {
		requests[i] = j.Brackets[i].Request()
	}
	answers, err := c.Build(ctx, requests)
	if err != nil {
		return nil, err
	}
	out := make([]*part.Bracket, len(answers))
	var refused refusals
	for i, a := range answers {
		if a.Err != nil {
			refused.add(j, &j.Brackets[i], a.Err)
			continue
		}
		var bad error
		out[i], bad = made(j, a.Bracket)
		refused.add(j, &j.Brackets[i], bad)
	}
	return out, refused.err()
}

// made is a bracket with its holes as the job's shop makes them, and what of it that shop cannot cut.
func made(j *job.Job, b *part.Bracket) (*part.Bracket, error) {
	out := j.Shop.Finished(b)
	if bad := j.Shop.Broken(out); bad != nil {
		return out, bad
	}
	return out, nil
}

// Question is what the strength service is asked about brackets of the job like one of them, but for the bracket.
func Question(j *job.Job, b *job.Bracket) dial.CheckRequest {
	return dial.CheckRequest{
		Cases: j.LoadCases(b), Basis: j.Basis, PinJoint: j.PinJoint,
		Options: strength.Options{Method: j.Method, LoadFactor: j.LoadFactor, FactorSet: j.FactorSet, Factors: j.Factors, Spectrum: b.Spectrum, LeaveOut: j.LeaveOut},
	}
}

func check(ctx context.Context, c *dial.Client, j *job.Job, built []*part.Bracket, o Options) ([]*strength.Report, error) {
	requests := make([]dial.CheckRequest, len(built))
	var refused refusals
	for i, b := range built {
		requests[i] = Question(j, &j.Brackets[i])
		requests[i].Bracket, requests[i].Options.Trace = b, o.Trace
		refused.add(j, &j.Brackets[i], carried(b, requests[i].Cases))
	}
	if err := refused.err(); err != nil {
		return nil, err
	}
	answers, err := c.Check(ctx, requests)
	if err != nil {
		return nil, err
	}
	out := make([]*strength.Report, len(answers))
	for i, a := range answers {
		out[i] = a.Report
		refused.add(j, &j.Brackets[i], a.Err)
	}
	return out, refused.err()
}

// refusals gathers the errors of several brackets.
type refusals struct {
	fields job.Errors
	other  error // the first that is not about fields
}

func (r *refusals) add(j *job.Job, b *job.Bracket, err error) {
	err = j.Locate(b, err)
	var fields job.Errors
	switch {
	case errors.As(err, &fields):
		for _, f := range fields { // a field of the job is refused for every bracket
			if !slices.ContainsFunc(r.fields, func(g *job.Error) bool { return *g == *f }) {
				r.fields = append(r.fields, f)
			}
		}
	case err != nil && r.other == nil:
		r.other = fmt.Errorf("bracket %s: %w", b.Name, err)
	}
}

func (r *refusals) err() error {
	if r.fields != nil {
		return r.fields
	}
	return r.other
}

func notes(j *job.Job, b *job.Bracket, built *part.Bracket, report *strength.Report) []string {
	var out []string
	for _, name := range j.NotLoaded(b) {
		out = append(out, "no load is given for the case "+name)
	}
	return slices.Concat(out, bareAluminium(b, built), strangeThreads(built), report.Notes)
}
