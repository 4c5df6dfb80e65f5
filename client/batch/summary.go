package batch

// This file sums up rows, in memory that does not grow with their number.

import (
	"cmp"
	"container/heap"
	"slices"

	"lugwright/strength"
)

// Summary is what is told of a family at the end.
type Summary struct {
	Variants  int64
	Verdicts  map[strength.Verdict]int64
	Governing map[string]Governed // by limit state
	Lightest  *Row                // of those that pass; nil: none does
	worst     worstHeap
	refused   []Row // the first few
	most      int
}

// Governed is how often a limit state governs, and how often it is not met then.
type Governed struct{ Variants, NotMet int64 }

// NewSummary keeps so many of the worst variants, and of those that are refused.
func NewSummary(worst int) *Summary {
	return &Summary{Verdicts: map[strength.Verdict]int64{}, Governing: map[string]Governed{}, most: worst}
}

// Add adds a row.
func (s *Summary) Add(r *Row) {
	s.Variants++
	s.Verdicts[r.Verdict]++
	if r.Verdict == Refused {
		if len(s.refused) < s.most {
			s.refused = append(s.refused, r.kept())
		}
		return
	}
	if r.Limit != "" {
		g := s.Governing[r.Limit]
		g.Variants++
		if r.Verdict != strength.Pass {
			g.NotMet++
		}
		s.Governing[r.Limit] = g
	}
	if r.Verdict == strength.Pass && r.MassKG > 0 && (s.Lightest == nil || r.MassKG < s.Lightest.MassKG) {
		kept := r.kept()
		s.Lightest = &kept
	}
	switch {
	case len(s.worst) < s.most:
		heap.Push(&s.worst, r.kept())
	case s.most > 0 && worse(r, &s.worst[0]) < 0:
		s.worst[0] = r.kept()
		heap.Fix(&s.worst, 0)
	}
}

// Worst gives the worst variants that were checked, worst first: by verdict, then by utilisation, then in the order of the family.
func (s *Summary) Worst() []Row {
	out := slices.Clone(s.worst)
	slices.SortFunc(out, func(a, b Row) int { return worse(&a, &b) })
	return out
}

// Refused gives the first variants that are none.
func (s *Summary) Refused() []Row { return s.refused }

// Passes says whether every variant does.
func (s *Summary) Passes() bool { return s.Verdicts[strength.Pass] == s.Variants }

var ranks = []strength.Verdict{strength.Fail, strength.Outside, strength.Pass}

// worse orders the worst before the less bad.
func worse(a, b *Row) int {
	return cmp.Or(cmp.Compare(slices.Index(ranks, a.Verdict), slices.Index(ranks, b.Verdict)), -cmp.Compare(a.Utilisation, b.Utilisation), cmp.Compare(a.ID, b.ID))
}

// worstHeap has the least bad of the worst on top.
type worstHeap []Row

func (h worstHeap) Len() int           { return len(h) }
func (h worstHeap) Less(i, k int) bool { return worse(&h[i], &h[k]) > 0 }
func (h worstHeap) Swap(i, k int)      { h[i], h[k] = h[k], h[i] }
func (h *worstHeap) Push(r any)        { *h = append(*h, r.(Row)) }
func (h *worstHeap) Pop() any {
	last := (*h)[len(*h)-1]
	*h = (*h)[:len(*h)-1]
	return last
}
