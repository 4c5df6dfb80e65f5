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
}

// Size is a parameter that was chosen.
type Size struct {
	Axis   sweep.Axis
	Role   sweep.Role // empty for one of Options.Vary that has none
	Source string     // where its values come from, in words
}

// Form is the bracket with one word of each parameter that adds or drops plates, and the sizes that it then has.
type Form struct {
	Words []part.Param // none: the words as they are
	Sizes []Size
	Whole bool // every combination was tried
	Rows  []sweep.Row
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
	Nearest *Proposal  // what comes nearest to passing, when nothing does; nil when nothing could be built
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
	for i, form := range forms {
		err = f.search(ctx, spec, form, max(1, (o.Most-a.Tried)/(len(forms)-i)))
		a.Tried += len(form.Rows)
		if whole = whole && form.Whole; err != nil {
			break
		}
	}
	a.Whole = whole && err == nil
	a.rank(spec)
	return a, err
}

type finder struct {
	b    *sweep.Bench
	kind *geometry.Kind
	Options
}
