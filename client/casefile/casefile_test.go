package casefile

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"lugwright/client/yamlfile"
	"lugwright/part"
)

const whole = `source: "S: one"
provenance: read
basis: B
note: n
tolerance: 0.5 %
why: rounds
factor_set: UK
factors: {gamma_M2: 1.10}
givens:
  x: [0 in, 3.00 in]
  d: 0.750 in
runs:
- limit: a
  method: ASD
  factors: {gamma_M0: 1}
  givens: {n: 47.90}
  expect: {P_n: 1.00, Q: 3 kip}
  widened:
    P_n: {tolerance: 1 %, why: w}
`

// Numbers keep every printed digit, quoted or not.
func TestRead(t *testing.T) {
	f, err := Read("x.yaml", []byte(whole))
	if err != nil {
		t.Fatal(err)
	}
	e := &f.Example
	r := &e.Runs[0]
	if e.Source != "S: one" || e.Factors["gamma_M2"] != "1.10" || !slices.Equal(e.Givens["x"], []string{"0 in", "3.00 in"}) || e.Givens["d"][0] != "0.750 in" ||
		r.Givens["n"][0] != "47.90" || r.Expect["P_n"] != "1.00" || r.Widened["P_n"].Why != "w" || r.Factors["gamma_M0"] != "1" {
		t.Errorf("%+v", e)
	}
	if p := f.Place(0); p.Line != 13 {
		t.Errorf("the run begins at %v", p)
	}
	got := f.Located(part.FieldErrors{{Field: "runs[0].givens.n", Found: "f", Accept: "a"}, {Field: "runs[0].givens.m", Found: "f", Accept: "a"}, {Field: "runs[0].expect.Q: widened: why", Found: "f", Accept: "a"}}).Error()
	want := "x.yaml:16:12: runs[0].givens.n: f; a\nx.yaml:16:3: runs[0].givens.m: f; a\nx.yaml:17:23: runs[0].expect.Q: widened: why: f; a"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if other := errors.New("x"); f.Located(other) != other {
		t.Error("another error was changed")
	}
}

func TestRefused(t *testing.T) {
	for _, c := range []struct{ from, to, want string }{
		{"note:", "nota:", `x.yaml:4:1: nota: unknown field; known are source, provenance, basis, note, tolerance, why, factor_set, factors, givens, runs; nearest is "note"`},
		{"method:", "methd:", "runs[0].methd: unknown field"},
		{"[0 in, 3.00 in]", "{a: 1}", "x.yaml:10:6: givens.x: a group of fields; a text or a quantity"},
		{"d: 0.750 in", "d: [[1 in]]", "givens.d[0]: a list; a text or a quantity"},
		{"d: 0.750 in", "d:", "givens.d: "},
		{"d: 0.750 in", "x: 0.750 in", "givens.x: given twice"},
		{"expect: {P_n: 1.00, Q: 3 kip}", "expect: 3", `runs[0].expect: "3"; names with values`},
		{"runs:\n-", "runs:\n ", "runs: a group of fields; a list"},
		{"runs:", "runs: &a", "an anchor"},
		{"tolerance: 0.5 %", "tolerance: 0.5", `x.yaml:5:12: tolerance: "0.5"; a tolerance in per cent up to 10 %, such as 0.5 %`},
		{"tolerance: 0.5 %", "tolerance: 50 %", `x.yaml:5:12: tolerance: "50 %"; a tolerance in per cent up to 10 %`},
		{"tolerance: 0.5 %", "tolerance: -1 %", `x.yaml:5:12: tolerance: "-1 %"; `},
		{"tolerance: 1 %", "tolerance: NaN %", `x.yaml:19:22: runs[0].widened.P_n.tolerance: "NaN %"; `},
		{"Q: 3 kip", "verdict: ok", `x.yaml:17:23: runs[0].expect.verdict: "ok"; one of pass, fail, outside the rule`},
		{whole, "", "x.yaml: the file is empty; write a case file as docs/case-files.md shows"},
	} {
		src := strings.Replace(whole, c.from, c.to, 1)
		_, err := Read("x.yaml", []byte(src))
		var all yamlfile.Errors
		if !errors.As(err, &all) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %s", c.to, err, c.want)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(whole))
	f.Add([]byte("runs: [{expect: {a: [1]}}]"))
	f.Fuzz(func(t *testing.T, src []byte) {
		file, err := Read("x.yaml", src)
		var all yamlfile.Errors
		if err == nil {
			file.Place(len(file.Example.Runs))
		} else if !errors.As(err, &all) {
			t.Fatalf("%T: %v", err, err)
		}
	})
}
