package command

import (
	"bytes"
	"strings"
	"testing"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/strength"
	"lugwright/units"
)

// A check that fails by a hair never prints as one that just passes.
func TestUtilisationNeverRoundsToAPass(t *testing.T) {
	k := strength.Check{Title: "pin shear", Place: "pin", Utilisation: 1.004, DemandSymbol: "V", Demand: 2.008, CapacitySymbol: "V_c", Capacity: 2, Unit: "N", Verdict: strength.Fail, Case: "A1"}
	var out bytes.Buffer
	(&printer{w: &out}).check(&k, units.Metric)
	b := &run.Bracket{Spec: &job.Bracket{Name: "b"}, Report: &strength.Report{Checks: []strength.Check{k}}}
	for _, text := range []string{out.String(), reason(b)} {
		if !strings.Contains(text, "1.01") || strings.Contains(text, "1.00") {
			t.Errorf("%s", text)
		}
	}
}

func TestReason(t *testing.T) {
	check := func(v strength.Verdict) *run.Bracket {
		k := strength.Check{Title: "Weak-axis bending", Place: "ear-1", Utilisation: 3.414, Verdict: v, Case: "A6 side right", Why: "the plate is too slender"}
		return &run.Bracket{Spec: &job.Bracket{Name: "pair-left"}, Report: &strength.Report{Checks: []strength.Check{k}}}
	}
	for _, c := range []struct {
		b    *run.Bracket
		want string
	}{
		{check(strength.Fail), "pair-left fails: weak-axis bending, ear-1, at 3.41 of capacity (A6 side right)"},
		{check(strength.Outside), "pair-left is outside the rule: weak-axis bending, ear-1: the plate is too slender"},
		{check(strength.NotApplied), "pair-left is not checked: no limit state speaks of it"},
	} {
		if got := reason(c.b); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}

func TestWrapped(t *testing.T) {
	var out bytes.Buffer
	p := &printer{w: &out}
	p.wrapped("name", 6, strings.Repeat("word ", 20))
	p.wrapped("a long name", 6, "word")
	p.table([][]string{{"a", "b"}, {"long", "c"}})
	want := "name  " + strings.TrimSpace(strings.Repeat("word ", 15)) + "\n      " + strings.TrimSpace(strings.Repeat("word ", 5)) +
		"\na long name\n      word\na     b\nlong  c\n"
	if out.String() != want {
		t.Errorf("got\n%swant\n%s", out.String(), want)
	}
}
