package propose

import (
	"context"

	"lugwright/client/job"
	"lugwright/client/sweep"
	"lugwright/geometry"
	"lugwright/part"
)

// Usual is how many variants are tried where nothing else is said, and Most how many may be.
const (
	Usual = 4000
	Most  = 50000
)

// Options say what to choose from.
type Options struct {
	Vary []sweep.Axis // these parameters take these values and no others; one value is kept
	Keep []string     // these keep their present values
	Most int          // variants tried at most; 0 takes Usual
	Told func(n int)  // is called when n more variants were built or checked; may be nil
}

// Size is a parameter that was chosen.
type Size struct {
	Axis   sweep.Axis
	Role   sweep.Role // empty for one of Options.Vary that has none
	Source string     // where its values come from, in words
	// With is what goes with each value of the axis: a bolt's grade. One without a name changes nothing; nil: nothing goes with any.
	With []part.Param
}

// Form is the bracket with one word of each parameter that adds or drops plates, and the sizes that it then has.
type Form struct {
	Words []part.Param // none: the words as they are
	Sizes []Size
	Whole bool // every combination was tried
	// Tried is how many variants were built, Checked how many checks were made, and Settled how many of them under all loads.
	Tried, Checked, Settled int
	Deciding                []string // loads under which the others were made
}

// Proposal is one choice of sizes.
type Proposal struct {
	Form *Form
	Row  *sweep.Row
	Spec job.Bracket // with the sizes
}

// Answer is what was found.
type Answer struct {
	Forms   []*Form
	Best    []Proposal // lightest first, three at most; none when nothing passes
	Nearest *Proposal  // what comes nearest to passing, when nothing does; nil when nothing was tried
	Fault   error      // of the job, which refuses every variant
	Start   *sweep.Row // the present sizes; nil where nothing is proposed
	Tried   int
	Whole   bool // every combination was tried: the first is the lightest of them all
}

// Find searches sizes for a bracket of the bench's job. What was found so far is returned beside any error.
func Find(ctx context.Context, b *sweep.Bench, spec *job.Bracket, kind *geometry.Kind, o Options) (*Answer, error) {
	if o.Most == 0 {
		o.Most = Usual
	}
	f := &finder{b, kind, o}
	a := &Answer{}
	forms, err := f.forms(ctx, spec)
	if err != nil {
		return a, err
	}
	a.Forms = forms
	whole := true
	var searches []*search
	for i, form := range forms {
		c := f.search(ctx, spec, form, max(1, (o.Most-a.Tried)/(len(forms)-i)))
		searches = append(searches, c)
		err = c.run(a.heaviest())
		form.Tried, form.Deciding = len(c.entries), c.loads.cases()
		a.Tried, whole = a.Tried+form.Tried, whole && form.Whole
		a.rank(spec, searches)
		if err != nil {
			break
		}
	}
	a.Whole = whole && err == nil
	if len(a.Best) > 0 && err == nil {
		var rows []sweep.Row
		if rows, err = b.Try(ctx, spec, [][]part.Param{nil}); err == nil {
			a.Start = &rows[0]
		}
	}
	if len(a.Best) == 0 {
		if near := a.near(spec, searches); err == nil {
			err = near
		}
		var rows []sweep.Row
		for _, c := range searches {
			for _, e := range c.entries {
				rows = append(rows, e.row)
			}
		}
		a.Fault = sweep.Fault(rows)
	}
	return a, err
}

// Unchecked is how many more things of a proposal are not checked than of the present sizes; 0 where those cannot be checked.
func (a *Answer) Unchecked(p *Proposal) int {
	if a.Start == nil || a.Start.Outcome == sweep.Refused {
		return 0
	}
	return max(0, p.Row.NotChecked-a.Start.NotChecked)
}

type finder struct {
	b    *sweep.Bench
	kind *geometry.Kind
	Options
}
