package propose

// This file picks the lightest and its runners-up.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/client/job"
	"lugwright/client/sweep"
	"lugwright/geometry"
	"lugwright/part"
)

// shown is how many proposals are given: the lightest and two runners-up.
const shown = 3

func (a *Answer) rank(spec *job.Bracket) {
	var passing []Proposal
	for _, form := range a.Forms {
		for i := range form.Rows {
			r := &form.Rows[i]
			switch {
			case r.Outcome == sweep.Passes:
				passing = append(passing, Proposal{Form: form, Row: r})
			case a.Nearest == nil || r.Excess < a.Nearest.Row.Excess:
				a.Nearest = &Proposal{Form: form, Row: r}
			}
		}
	}
	slices.SortStableFunc(passing, func(p, q Proposal) int { return p.Row.Takes.Compare(&q.Row.Takes) })
	bought := map[string]bool{}
	for _, p := range passing {
		if key := p.bought(); !bought[key] && len(a.Best) < shown {
			bought[key] = true
			p.Spec = sweep.With(spec, p.Row.Values)
			a.Best = append(a.Best, p)
		}
	}
	if a.Nearest != nil {
		a.Nearest.Spec = sweep.With(spec, a.Nearest.Row.Values)
	}
	if a.Best != nil {
		a.Nearest = nil
	}
}

// bought tells proposals apart by what is bought and welded for them: plates, pins, bolts and the form. A runner-up that differs in nothing but the length of a
// plate or the leg of a weld would be no choice.
func (p *Proposal) bought() string {
	var b strings.Builder
	fmt.Fprintln(&b, p.Form.Words)
	b.WriteString(sweep.StockKey(p.Row.Takes.Stock))
	for _, s := range p.Form.Sizes {
		if s.Role == sweep.Bar || s.Role == sweep.Bolt {
			i := slices.IndexFunc(p.Row.Values, func(v part.Param) bool { return v.Name == s.Axis.Param.Name })
			fmt.Fprintln(&b, p.Row.Values[i])
		}
	}
	return b.String()
}

// Changed is what of a row is another value than in a bracket.
func Changed(r *sweep.Row, spec *job.Bracket, kind *geometry.Kind) []part.Param {
	return slices.DeleteFunc(slices.Clone(r.Values), func(v part.Param) bool {
		i := slices.IndexFunc(kind.Params, func(d geometry.Param) bool { return d.Name == v.Name })
		was := sweep.Current(spec, &kind.Params[i])
		return was.Number == v.Number && was.Text == v.Text
	})
}

// AtTheEnd names the sizes of a proposal that are the largest there are to choose from: what a larger one would need.
func (p *Proposal) AtTheEnd() []string {
	var out []string
	for _, s := range p.Form.Sizes {
		last := s.Axis.Values[len(s.Axis.Values)-1]
		if sweep.Ordered(s.Axis.Param) && slices.Contains(p.Row.Values, last) {
			out = append(out, s.Axis.Param.Name)
		}
	}
	return out
}
