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

// rank takes what the searches have found.
func (a *Answer) rank(spec *job.Bracket, searches []*search) {
	var passing []Proposal
	for _, c := range searches {
		for _, e := range c.settled() {
			passing = append(passing, Proposal{Form: c.form, Row: &e.row})
		}
	}
	slices.SortStableFunc(passing, func(p, q Proposal) int { return p.Row.Takes.Compare(&q.Row.Takes) })
	have := map[string]bool{}
	a.Best = nil
	for _, p := range passing {
		if key := bought(p.Form, p.Row); !have[key] && len(a.Best) < shown {
			have[key] = true
			p.Spec = sweep.With(spec, p.Row.Values)
			a.Best = append(a.Best, p)
		}
	}
}

// heaviest is the last of as many proposals as are shown; nil while there are fewer.
func (a *Answer) heaviest() *sweep.Row {
	if len(a.Best) < shown {
		return nil
	}
	return a.Best[shown-1].Row
}

// near finds what comes nearest to passing, where nothing does.
func (a *Answer) near(spec *job.Bracket, searches []*search) error {
	for _, c := range searches {
		e, err := c.nearest()
		if e != nil && (a.Nearest == nil || e.row.Excess < a.Nearest.Row.Excess) {
			a.Nearest = &Proposal{c.form, &e.row, sweep.With(spec, e.row.Values)}
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// bought tells proposals apart by what is bought and welded for them: plates, pins, bolts and the form. A runner-up that differs in nothing but the length of a
// plate or the leg of a weld would be no choice.
func bought(f *Form, r *sweep.Row) string {
	var b strings.Builder
	fmt.Fprintln(&b, f.Words)
	b.WriteString(sweep.StockKey(r.Takes.Stock))
	fmt.Fprintln(&b, r.Takes.Fasteners)
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
