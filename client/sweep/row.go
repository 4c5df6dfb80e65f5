package sweep

// This file is one variant, and what counts as passing.

import (
	"math"
	"slices"
	"strconv"
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
	Weighed Outcome = "weighed" // it can be built; whether it holds was not looked at
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
	Excess     float64  // how far it is from passing, over all its checks: 0 when it passes, +Inf when it is refused
	Over       []string // load cases under which a check is not as wanted, worst first, each once; an empty name is of fatigue or of a dimension
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
	var words, names []string // the same words of several fields once
	for _, f := range fields {
		name, text := strings.TrimPrefix(f.Field, "parameters."), f.Found+"; "+f.Accept
		if i := slices.Index(words, text); i >= 0 {
			names[i] += ", " + name
			continue
		}
		words, names = append(words, text), append(names, name)
	}
	for i := range words {
		words[i] = names[i] + ": " + words[i]
	}
	return strings.Join(words, ". ")
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

// row is what comes of a variant that was tried, or only built.
func row(v *run.Variant, d run.Densities, margin float64) Row {
	r := Row{Outcome: Refused, Err: v.Err, Excess: math.Inf(1)}
	if r.Err == nil {
		r.Takes, r.Err = Measure(v.Part, d)
	}
	switch {
	case r.Err != nil:
	case v.Brief == nil:
		r.Outcome = Weighed
	default:
		r.Outcome, r.Governs = Judge(v.Brief, margin)
		r.NotChecked = v.Brief.NotChecked
		r.weighExcess(v.Brief, margin)
	}
	return r
}

// mostExcess is what one check adds at most, so that one hopeless check does not hide the others.
const mostExcess = 10

// weighExcess sums by how much each check is over what is wanted, and names the cases of those that are. What compares nothing counts whole.
func (r *Row) weighExcess(b *dial.Brief, margin float64) {
	r.Excess = 0
	if r.Outcome == Passes {
		return
	}
	for i := range b.Rows {
		k := &b.Rows[i]
		over := 0.0
		switch {
		case k.Verdict == strength.Outside, k.Verdict == strength.Fail && k.Detail:
			over = 1
		case k.Verdict != strength.NotApplied && !k.Detail:
			over = min(max(k.Utilisation*margin-1, 0), mostExcess)
		}
		if over > 0 && !slices.Contains(r.Over, k.Case) {
			r.Over = append(r.Over, k.Case)
		}
		r.Excess += over
	}
	r.Excess = max(r.Excess, 1e-9)
}

// quoted says whether a text is about a word of the row's own.
func (r *Row) quoted(text string) bool {
	return slices.ContainsFunc(r.Values, func(v part.Param) bool { return v.Text != "" && strings.Contains(text, strconv.Quote(v.Text)) })
}

// Fault is an error of the job that refuses every row, whatever the parameters are: a load that the bracket does not carry, or a field of the job itself. Nil
// when there is a row that is not refused so, or for a word that was varied.
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
			if strings.HasPrefix(f.Field, "parameters.") || strings.HasPrefix(f.Field, "plates[") || rows[i].quoted(f.Found) {
				return nil
			}
		}
	}
	if len(rows) == 0 {
		return nil
	}
	return rows[0].Err
}
