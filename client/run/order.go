package run

// This file orders brackets and gives the verdict on the whole job.

import (
	"cmp"
	"slices"

	"lugwright/strength"
)

// WorstFirst gives the brackets by verdict, then by utilisation, then in the order of the job.
func (r *Result) WorstFirst() []*Bracket {
	out := make([]*Bracket, len(r.Brackets))
	for i := range r.Brackets {
		out[i] = &r.Brackets[i]
	}
	slices.SortStableFunc(out, func(a, b *Bracket) int {
		return cmp.Or(cmp.Compare(rank(a.Report.Verdict()), rank(b.Report.Verdict())), -cmp.Compare(a.Utilisation(), b.Utilisation()))
	})
	return out
}

// Utilisation is that of the governing check: 0 when nothing was checked, +Inf when there is no capacity.
func (b *Bracket) Utilisation() float64 {
	if k := b.Report.Governing(); k != nil {
		return k.Utilisation
	}
	return 0
}

func rank(v strength.Verdict) int {
	return slices.Index([]strength.Verdict{strength.Fail, strength.Outside, strength.Pass}, v)
}

// Verdict is the verdict on the job: that of its worst bracket. Only a pass may be cut.
func (r *Result) Verdict() strength.Verdict {
	worst := strength.Pass
	for i := range r.Brackets {
		if v := r.Brackets[i].Report.Verdict(); rank(v) < rank(worst) {
			worst = v
		}
	}
	return worst
}

// Passes says whether every bracket passes. A bracket of which nothing was checked does not.
func (r *Result) Passes() bool {
	for i := range r.Brackets {
		if r.Brackets[i].Report.Governing() == nil {
			return false
		}
	}
	return r.Verdict() == strength.Pass
}
