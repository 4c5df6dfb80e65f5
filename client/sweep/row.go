package sweep

// This file is one variant, and what counts as passing.

import (
	"math"
	"strings"

	"lugwright/client/run"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength"
)

// Outcome is how a variant fares.
type Outcome string

// The outcomes, best first.
const (
	Passes  Outcome = "pass"
	Short   Outcome = "short"   // it passes, and not by the wanted margin
	Outside Outcome = "outside" // no rule speaks of it, or nothing was checked
	Fails   Outcome = "fail"
	Refused Outcome = "refused" // it cannot be built, cut, loaded or checked
)

// Row is one variant.
type Row struct {
	Bracket string
	Index   int // in its grid
	Values  []part.Param
	Takes   Takes
	Outcome Outcome
	// Governs is the check that decides; nil when there is none. Under Short it is the one with the least margin.
	Governs    *Check
	Excess     float64 // how far it is from passing, over all its checks: 0 when it passes, +Inf when it is refused
	NotChecked int
	Err        error // of what is refused
}

// Check is the check that decides a variant.
type Check struct {
	Limit, Place, Case string
	Verdict            strength.Verdict
	Utilisation        float64 // +Inf when there is no capacity
}

// Why is the reason why a variant is refused, on one line.
func (r *Row) Why() string {
	if r.Err == nil {
		return ""
	}
	fields := part.Fields(r.Err)
	if fields == nil {
		return r.Err.Error()
	}
	texts := make([]string, len(fields))
	for i, f := range fields {
		texts[i] = strings.TrimPrefix(f.Field, "parameters.") + ": " + f.Found + "; " + f.Accept
	}
	return strings.Join(texts, ". ")
}

// Utilisation is that of the check which decides; NaN when there is none.
func (r *Row) Utilisation() float64 {
	if r.Governs == nil {
		return math.NaN()
	}
	return r.Governs.Utilisation
}

// Judge says how a variant fares where every utilisation is to be at most 1/margin. Rules about dimensions are met or not: no margin is asked of them.
func Judge(b *dial.Brief, margin float64) (Outcome, *Check) {
	var decides *Check
	if g := b.Governing(); g != nil {
		decides = &Check{g.Limit, g.Place, g.Case, g.Verdict, g.Utilisation}
	}
	switch {
	case b.Verdict == strength.Fail:
		return Fails, decides
	case b.Verdict != strength.Pass || decides == nil:
		return Outside, decides
	}
	worst := decides
	for i := range b.Rows { // fatigue comes after strength, whatever its utilisation
		if k := &b.Rows[i]; k.Verdict == strength.Pass && !k.Detail && k.Utilisation > worst.Utilisation {
			worst = &Check{k.Limit, k.Place, k.Case, k.Verdict, k.Utilisation}
		}
	}
	if worst.Utilisation*margin > 1 {
		return Short, worst
	}
	return Passes, decides
}

// row is what comes of a tried variant.
func row(v *run.Variant, d run.Densities, margin float64) Row {
	r := Row{Outcome: Refused, Err: v.Err, Excess: math.Inf(1)}
	if r.Err == nil {
		r.Takes, r.Err = Measure(v.Part, d)
	}
	if r.Err != nil {
		return r
	}
	r.Outcome, r.Governs = Judge(v.Brief, margin)
	r.NotChecked, r.Excess = v.Brief.NotChecked, excess(v.Brief, r.Outcome, margin)
	return r
}

// mostExcess is what one check adds at most, so that one hopeless check does not hide the others.
const mostExcess = 10

// excess sums by how much each check is over what is wanted. What compares nothing counts whole.
func excess(b *dial.Brief, o Outcome, margin float64) float64 {
	if o == Passes {
		return 0
	}
	sum := 0.0
	for i := range b.Rows {
		k := &b.Rows[i]
		switch {
		case k.Verdict == strength.Outside, k.Verdict == strength.Fail && k.Detail:
			sum++
		case k.Verdict != strength.NotApplied && !k.Detail:
			sum += min(max(k.Utilisation*margin-1, 0), mostExcess)
		}
	}
	return max(sum, 1e-9)
}

// Fault is an error of the job that refuses every row, whatever the parameters are: a load that the bracket does not carry, or a field of the job itself. Nil
// when there is a row that is not refused so.
func Fault(rows []Row) error {
	for i := range rows {
		if rows[i].Outcome != Refused {
			return nil
		}
		fields := part.Fields(rows[i].Err)
		if fields == nil {
			return nil
		}
		for _, f := range fields {
			if strings.HasPrefix(f.Field, "parameters.") || strings.HasPrefix(f.Field, "plates[") {
				return nil
			}
		}
	}
	if len(rows) == 0 {
		return nil
	}
	return rows[0].Err
}
