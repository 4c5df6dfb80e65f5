package sweep

// This file turns what is typed into the grids of a job's brackets.

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/geometry"
	"lugwright/part"
)

// Plan is what a sweep is to try.
type Plan struct {
	Grids   []Grid
	Sources []string // where sizes of the rack came from, each once
}

// planner reads what is typed against the job.
type planner struct {
	client run.Trier
	job    *job.Job
	kinds  []geometry.Kind
	plan   Plan
}

// NewPlan reads "PARAMETER=VALUES" or "BRACKET.PARAMETER=VALUES" for the named brackets of a job; without names, for its only one. A parameter without a bracket
// is varied of every bracket whose kind has it.
func NewPlan(ctx context.Context, c run.Trier, j *job.Job, kinds []geometry.Kind, names, varied []string) (*Plan, error) {
	p := &planner{client: c, job: j, kinds: kinds}
	brackets, err := chosen(j, names)
	if err != nil {
		return nil, err
	}
	for _, b := range brackets {
		p.plan.Grids = append(p.plan.Grids, Grid{Spec: b})
	}
	for _, text := range varied {
		if err := p.vary(ctx, text); err != nil {
			return nil, fmt.Errorf("--vary %q: %w", text, err)
		}
	}
	for i := range p.plan.Grids {
		if len(p.plan.Grids[i].Axes) == 0 {
			b := p.plan.Grids[i].Spec
			return nil, fmt.Errorf("nothing of %s is varied; --vary with a parameter of the kind %s, which `lugwright kinds %s` lists", b.Name, b.Kind, b.Kind)
		}
	}
	return &p.plan, Bounded(p.plan.Grids)
}

func chosen(j *job.Job, names []string) ([]*job.Bracket, error) {
	known := make([]string, len(j.Brackets))
	for i := range j.Brackets {
		known[i] = j.Brackets[i].Name
	}
	if len(names) == 0 && len(known) != 1 {
		return nil, fmt.Errorf("the job has %d brackets: %s; name those that are to be varied", len(known), strings.Join(known, ", "))
	}
	if len(names) == 0 {
		names = known
	}
	var out []*job.Bracket
	for i, name := range names {
		b, err := Named(j, name)
		if err != nil {
			return nil, err
		}
		if slices.Contains(names[:i], name) {
			return nil, fmt.Errorf("the bracket %s is named twice; once is enough", name)
		}
		out = append(out, b)
	}
	return out, nil
}

// Named finds a bracket of the job.
func Named(j *job.Job, name string) (*job.Bracket, error) {
	known := make([]string, len(j.Brackets))
	for i := range j.Brackets {
		if known[i] = j.Brackets[i].Name; known[i] == name {
			return &j.Brackets[i], nil
		}
	}
	return nil, fmt.Errorf("no bracket %q in %s; it has %s%s", name, j.File, strings.Join(known, ", "), part.Nearest(name, known))
}

func (p *planner) vary(ctx context.Context, text string) error {
	name, values, ok := strings.Cut(text, "=")
	if !ok {
		return fmt.Errorf("no values; write a parameter and its values, such as ear_thickness=6 mm..16 mm step 2 mm")
	}
	if name = strings.TrimSpace(name); name == "" {
		return fmt.Errorf("no parameter before the equals sign; write one, such as ear_thickness=6 mm..16 mm step 2 mm")
	}
	bracket, param, single := strings.Cut(name, ".")
	if !single {
		param = name
	}
	found := false
	var known []string
	for i := range p.plan.Grids {
		g := &p.plan.Grids[i]
		if single && g.Spec.Name != bracket {
			continue
		}
		kind, err := geometry.Find(p.kinds, g.Spec.Kind)
		if err != nil {
			return err
		}
		k := slices.IndexFunc(kind.Params, func(d geometry.Param) bool { return d.Name == param })
		if k < 0 {
			for _, d := range kind.Params {
				known = append(known, d.Name)
			}
			continue
		}
		found = true
		if err := p.add(ctx, g, kind, kind.Params[k], values); err != nil {
			return err
		}
	}
	switch {
	case found:
		return nil
	case known == nil:
		names := make([]string, len(p.plan.Grids))
		for i := range names {
			names[i] = p.plan.Grids[i].Spec.Name
		}
		return fmt.Errorf("the bracket %q is not among those that are varied: %s%s", bracket, strings.Join(names, ", "), part.Nearest(bracket, names))
	}
	return fmt.Errorf("no such parameter%s; `lugwright kinds %s` lists them", part.Nearest(param, known), p.plan.Grids[0].Spec.Kind)
}

func (p *planner) add(ctx context.Context, g *Grid, kind *geometry.Kind, d geometry.Param, values string) error {
	switch {
	case slices.ContainsFunc(g.Axes, func(a Axis) bool { return a.Param.Name == d.Name }):
		return fmt.Errorf("%s of %s is varied twice; once with all values", d.Name, g.Spec.Name)
	case slices.Contains(p.job.OfTray(g.Spec), d.Name):
		return fmt.Errorf("it is settled by the vehicle's tray %s; change it there", g.Spec.Tray)
	}
	var a Axis
	var err error
	if strings.TrimSpace(values) == Rack {
		a, err = p.onRack(ctx, g.Spec, kind, d)
	} else {
		a, err = ReadAxis(d, values)
	}
	if err != nil {
		return err
	}
	g.Axes = append(g.Axes, a)
	return nil
}

func (p *planner) onRack(ctx context.Context, spec *job.Bracket, kind *geometry.Kind, d geometry.Param) (Axis, error) {
	roles, err := AllRoles(ctx, p.client, spec, kind)
	if err != nil {
		return Axis{}, err
	}
	a, source, err := OnRack(p.job, spec, d, roles[d.Name])
	if err == nil && !slices.Contains(p.plan.Sources, source) {
		p.plan.Sources = append(p.plan.Sources, source)
	}
	return a, err
}
