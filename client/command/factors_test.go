package command

import (
	"bytes"
	"strings"
	"testing"

	"lugwright/client/job"
	"lugwright/services/dial"
	"lugwright/strength"
	"lugwright/units"
)

func printed(print func(p *printer)) string {
	var out bytes.Buffer
	print(&printer{w: &out})
	return out.String()
}

func contains(t *testing.T, text string, parts ...string) {
	t.Helper()
	for _, part := range parts {
		if !strings.Contains(text, part) {
			t.Errorf("no %q in\n%s", part, text)
		}
	}
}

func TestEvaluateKinds(t *testing.T) {
	list := []string{"evaluate", "fatigue-damage", "f_SR=12 ksi, 10 ksi", "n_SR=1e6, 2e6"}
	// By hand: 1e6 x 12^3/44e8 + 2e6 x 10^3/44e8 = 0.847.
	r := lugwright(t, append(list, "category=C", "--inch")...).want(t, Done, "")
	contains(t, r.out, "f_SR = 12 ksi, 10 ksi", "category = 3", "Table A-3.1: C", "= 0.8473 (sum of", "pass  D = 0.8473 of 1")
	contains(t, lugwright(t, append(list, "category=C", "--json")...).out, `"value": null`, `"values": [`)
	lugwright(t, append(list, "category=Z")...).want(t, Misused, `category: "Z"; one of: A, B, B', C`)
	lugwright(t, append(list, "category=C", "--factor", "q=1")...).want(t, Misused, "factors.q: AISC 360-22 has no such factor")
	lugwright(t, append(list, "category=C", "--factor", "q")...).want(t, Misused, "factors.q: no value; write SYMBOL=VALUE")
	lugwright(t, append(list, "category=C", "--factor-set", "moon")...).want(t, Misused, `has no set "moon"`)
	lugwright(t, "evaluate", "fatigue-damage", "f_SR=12 ksi, 10", "n_SR=1, 2", "category=C").want(t, Misused, "f_SR: 10 has no unit")
}

func TestLimitsShowKinds(t *testing.T) {
	contains(t, lugwright(t, "limits", "fatigue-damage").out, "f_SR      list, 0 to 2000 MPa", "category  a choice", "A, B, B', C,")
	card := strength.Card{Name: "Euro", Document: "EN", Edition: "2005", Methods: []strength.Method{strength.PartialFactors}, ReferenceOnly: true, Factors: []strength.Factor{
		{Symbol: "gamma_M2", Words: "rupture", Default: 1.25, Min: 1, Max: 1.5, Sets: []strength.FactorSet{{Name: "UK", Value: 1.1}}},
	}}
	limit := strength.Info{Identity: strength.Identity{ID: "x"}, Givens: []strength.Given{
		{Symbol: "hole", Words: "kind of hole", Max: 1, Choices: []string{"standard", "oversize"}, Optional: true, Default: 1},
		{Symbol: "e", Words: "offset", Unit: "mm", Max: 9, Optional: true, Default: 2},
	}}
	all := []dial.Basis{{Card: card, Limits: []strength.Info{limit}}}
	contains(t, printed(func(p *printer) { p.limitList(all) }), "for reference: evaluate and verify only", "factor gamma_M2 = 1.25, 1 to 1.5; UK 1.1 (rupture)")
	contains(t, printed(func(p *printer) { p.givens(all) }), "kind of hole: standard, oversize (left out: oversize)", "offset (left out: 2 mm)")
	if got := forChecks(append(all, dial.Basis{Card: strength.Card{Name: "now"}})); len(got) != 1 || got[0].Name != "now" || len(forChecks(all)) != 1 {
		t.Errorf("bases for checks: %v", got)
	}
}

func TestCheckNamesFactors(t *testing.T) {
	r := &strength.Report{PinJoint: "ASME BTH-1", Factors: []strength.FactorValue{{Symbol: "gamma_M0", Value: 1.05}, {Symbol: "a", Value: 25.4, Unit: "mm"}}}
	got := printed(func(p *printer) { p.factors(r, &job.Job{Units: units.Inch, FactorSet: "Norway"}) })
	if got != "pin holes by ASME BTH-1\nfactors gamma_M0 = 1.05, a = 1 in (set Norway)\n" {
		t.Errorf("%q", got)
	}
	if got := printed(func(p *printer) { p.factors(&strength.Report{}, &job.Job{}) }); got != "" {
		t.Errorf("%q", got)
	}
}
