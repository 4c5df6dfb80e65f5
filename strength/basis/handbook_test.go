package basis_test

// Published examples of every basis, ours beside printed: all case files in testdata/handbook, one folder for each basis folder. A limit
// state without any is listed in the basis's own testdata/no-example*.yaml and has properties in its tests instead. The table of it
// all is docs/validation.md.

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"lugwright/client/casefile"
	"lugwright/strength"
	"lugwright/strength/basis"
	"lugwright/strength/handbook"
)

var update = flag.Bool("update", false, "write docs/validation.md anew")

const (
	folder     = "../../testdata/handbook"
	validation = "../../docs/validation.md"
)

// A tally is what is known of one limit state of one basis.
type tally struct {
	read, memory int // runs
	rows         int
	worst        float64 // largest relative difference of a printed number
}

func TestHandbook(t *testing.T) {
	tallies := map[string]map[string]*tally{} // by basis and limit state
	for _, file := range files(t, folder+"/*/*.yaml") {
		t.Run(strings.TrimPrefix(filepath.ToSlash(file), folder+"/"), func(t *testing.T) {
			e, rows := check(t, file)
			if tallies[e.Basis] == nil {
				tallies[e.Basis] = map[string]*tally{}
			}
			for i := range e.Runs {
				count(tallies[e.Basis], e, i, rows)
			}
		})
	}
	gaps := readGaps(t)
	for _, b := range basis.All() {
		covered(t, b, tallies[b.Card.Name], gaps[b.Card.Name])
	}
	for name := range gaps {
		if _, err := basis.Find(name); err != nil {
			t.Errorf("a no-example file: %v", err)
		}
	}
	if !t.Failed() {
		compareTable(t, table(tallies, gaps, notExpressed(t)))
	}
}

func check(t *testing.T, file string) (*handbook.Example, []handbook.Row) {
	t.Helper()
	f := read(t, file)
	b, err := basis.Find(f.Example.Basis)
	if err != nil || f.Example.Basis == "" {
		t.Fatalf("%s: %v", file, err)
	}
	rows, err := f.Example.Check(handbook.BenchOf(b))
	if err != nil {
		t.Fatal(f.Located(err))
	}
	if f.Example.Provenance == handbook.ByHand {
		t.Errorf("%s: only published cases are kept in this folder", file)
	}
	t.Logf("%s (%s)", f.Example.Source, f.Example.Provenance)
	for _, r := range rows {
		t.Logf("%-22s %-4s %-11s printed %12s = %-12.6g ours %-12.6g%s %+.2f %%", r.Limit, r.Method, r.Symbol, r.Text, r.Print, r.Ours, r.OurText, 100*r.Difference())
		if !r.Agrees() {
			t.Errorf("%s:%d: %s, %s: %s is %.6g %s, printed %s = %.6g within %.2g", file, f.Place(r.Run).Line, r.Limit, r.Method, r.Symbol, r.Ours, r.OurText, r.Text, r.Print, r.Allow)
		}
	}
	return &f.Example, rows
}

func files(t *testing.T, pattern string) []string {
	t.Helper()
	list, err := filepath.Glob(pattern)
	if err != nil || len(list) == 0 {
		t.Fatalf("no files %s: %v", pattern, err)
	}
	return list
}

func read(t *testing.T, file string) *casefile.File {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	f, err := casefile.Read(file, text)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func count(by map[string]*tally, e *handbook.Example, run int, rows []handbook.Row) {
	id := e.Runs[run].Limit
	if by[id] == nil {
		by[id] = &tally{}
	}
	c := by[id]
	if e.Provenance == handbook.Read {
		c.read++
	} else {
		c.memory++
	}
	for _, r := range rows {
		if r.Run != run {
			continue
		}
		c.rows++
		if r.OurText == "" && r.Print != 0 {
			c.worst = max(c.worst, math.Abs(r.Difference()))
		}
	}
}

// covered wants every limit state either shown or listed as without an example, never both.
func covered(t *testing.T, b *strength.Basis, shown map[string]*tally, gaps map[string]string) {
	t.Helper()
	known := map[string]bool{}
	for _, l := range b.Limits {
		id := l.Info().ID
		known[id] = true
		if reason, listed := gaps[id]; (shown[id] != nil) == listed || listed && reason == "" {
			t.Errorf("%s: %s: example shown %v, listed as without one %v (%q)", b.Card.Name, id, shown[id] != nil, listed, reason)
		}
	}
	for id := range gaps {
		if !known[id] {
			t.Errorf("%s: %s is listed as without an example, but is no limit state", b.Card.Name, id)
		}
	}
}

// readGaps gives the reasons by basis and limit state.
func readGaps(t *testing.T) map[string]map[string]string {
	t.Helper()
	out := map[string]map[string]string{}
	for _, file := range files(t, "*/testdata/no-example*.yaml") {
		var g struct {
			Basis string
			None  map[string]string
		}
		decode(t, file, &g)
		if out[g.Basis] != nil {
			t.Errorf("%s: a second file for %s", file, g.Basis)
		}
		out[g.Basis] = g.None
	}
	return out
}

func decode(t *testing.T, file string, to any) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := yaml.NewDecoder(bytes.NewReader(text), yaml.Strict()).Decode(to); err != nil {
		t.Fatalf("%s: %v", file, err)
	}
}

// A stranger is a published case that no limit state can take.
type stranger struct{ What, Source, Reason string }

func notExpressed(t *testing.T) []stranger {
	t.Helper()
	var list []stranger
	for _, file := range files(t, folder+"/not-expressed*.yaml") {
		var more []stranger
		decode(t, file, &more)
		list = append(list, more...)
	}
	for _, s := range list {
		if s.What == "" || s.Source == "" || s.Reason == "" {
			t.Errorf("not-expressed: %+v wants what, source and reason", s)
		}
	}
	return list
}

func compareTable(t *testing.T, want string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(validation, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	got, err := os.ReadFile(validation)
	if err != nil || string(got) != want {
		t.Errorf("docs/validation.md is not what the case files give: run go test ./strength/basis -run TestHandbook -update (%v)", err)
	}
}

func table(tallies map[string]map[string]*tally, gaps map[string]map[string]string, strangers []stranger) string {
	var out strings.Builder
	out.WriteString("# Validation\n\nGenerated from the case files in `testdata/handbook`; do not edit.\n`go test ./strength/basis -run TestHandbook -update` writes it anew, and\n" +
		"`lugwright verify testdata/handbook` prints every number, ours beside printed.\n\n" +
		"A case is one limit state under one method with one set of givens. \"From memory\" are those\ncases whose printed values were not seen again when they were written down. The worst difference is\nours against printed, over all results compared; " +
		"each lies within half a unit of the last printed digit, or\nwithin the tolerance that the case file gives with its reason.\n")
	for _, b := range basis.All() {
		tableOf(&out, b, tallies[b.Card.Name], gaps[b.Card.Name])
	}
	if len(strangers) > 0 {
		out.WriteString("\n## Published cases that no limit state here can take\n\n| case | source | reason |\n| --- | --- | --- |\n")
		for _, s := range strangers {
			fmt.Fprintf(&out, "| %s | %s | %s |\n", cell(s.What), cell(s.Source), cell(s.Reason))
		}
	}
	return out.String()
}

func tableOf(out *strings.Builder, b *strength.Basis, by map[string]*tally, gaps map[string]string) {
	var sum tally
	fmt.Fprintf(out, "\n## %s\n\n| limit state | clause | cases | from memory | results | worst difference |\n| --- | --- | ---: | ---: | ---: | ---: |\n", b.Card.Name)
	for _, l := range b.Limits {
		info := l.Info()
		c := by[info.ID]
		if c == nil {
			fmt.Fprintf(out, "| `%s` | %s | no published example found: %s | | | |\n", info.ID, cell(info.Clause.String()), cell(gaps[info.ID]))
			continue
		}
		fmt.Fprintf(out, "| `%s` | %s | %d | %d | %d | %.2f %% |\n", info.ID, cell(info.Clause.String()), c.read+c.memory, c.memory, c.rows, 100*c.worst)
		sum = tally{sum.read + c.read, sum.memory + c.memory, sum.rows + c.rows, max(sum.worst, c.worst)}
	}
	fmt.Fprintf(out, "| %d of %d limit states | | %d | %d | %d | %.2f %% |\n", len(by), len(b.Limits), sum.read+sum.memory, sum.memory, sum.rows, 100*sum.worst)
}

func cell(text string) string {
	return strings.ReplaceAll(strings.Join(strings.Fields(text), " "), "|", "\\|")
}

// TestSlipsRefused: a case file with a slip in it is an error with its place, never a silent pass.
func TestSlipsRefused(t *testing.T) {
	file := folder + "/aisc360/iia22-bolt-shear.yaml"
	for _, slip := range []struct {
		name, field string
		spoil       func(*handbook.Example)
	}{
		{"no source", "source", func(e *handbook.Example) { e.Source = "" }},
		{"provenance", "provenance", func(e *handbook.Example) { e.Provenance = "guessed" }},
		{"tolerance, no why", "why", func(e *handbook.Example) { e.Tolerance = "5 %" }},
		{"unknown limit", "runs[0].limit", func(e *handbook.Example) { e.Runs[0].Limit = "bolt-sheer" }},
		{"unknown method", "runs[0].method", func(e *handbook.Example) { e.Runs[0].Method = "LSD" }},
		{"unknown given", "runs[0].givens.x", func(e *handbook.Example) { e.Runs[0].Givens = map[string]handbook.Values{"x": {"1 in"}} }},
		{"given in wrong unit", "runs[0].givens.d", func(e *handbook.Example) { e.Givens["d"] = handbook.Values{"0.75 ksi"} }},
		{"given without unit", "runs[0].givens.d", func(e *handbook.Example) { e.Givens["d"] = handbook.Values{"0.75"} }},
		{"given missing", "runs[0].givens.d", func(e *handbook.Example) { delete(e.Givens, "d") }},
		{"given out of range", "runs[0].givens.d", func(e *handbook.Example) { e.Givens["d"] = handbook.Values{"75 in"} }},
		{"list for one", "runs[0].givens.d", func(e *handbook.Example) { e.Givens["d"] = handbook.Values{"1 in", "1 in"} }},
		{"unknown factor", "runs[0].factors.gamma", func(e *handbook.Example) { e.Factors = map[string]string{"gamma": "1"} }},
		{"unknown factor set", "runs[0].factor_set", func(e *handbook.Example) { e.FactorSet = "X" }},
		{"unknown line", "runs[0].expect.R_x", func(e *handbook.Example) { e.Runs[0].Expect["R_x"] = "1 kip" }},
		{"line in wrong unit", "runs[0].expect.V_c", func(e *handbook.Example) { e.Runs[0].Expect["V_c"] = "17.9 ksi" }},
		{"nothing expected", "runs[0].expect", func(e *handbook.Example) { e.Runs[0].Expect = nil }},
		{"widened, no why", "runs[0].expect.V_c: widened: why", func(e *handbook.Example) {
			e.Runs[0].Widened = map[string]handbook.Widening{"V_c": {Tolerance: "5 %"}}
		}},
		{"widened, not expected", "runs[0].widened.X", func(e *handbook.Example) {
			e.Runs[0].Widened = map[string]handbook.Widening{"X": {Tolerance: "5 %", Why: "y"}}
		}},
	} {
		f := read(t, file)
		slip.spoil(&f.Example)
		b, err := basis.Find(f.Example.Basis)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := f.Example.Check(handbook.BenchOf(b))
		if err == nil || !strings.HasPrefix(err.Error(), slip.field+": ") {
			t.Errorf("%s: %v, %d rows; an error at %s is wanted", slip.name, err, len(rows), slip.field)
		}
	}
	f := read(t, file)
	b, _ := basis.Find(f.Example.Basis)
	f.Example.Runs[0].Expect["V_c"] = "18.0 kip"
	rows, err := f.Example.Check(handbook.BenchOf(b))
	if err != nil || !slices.ContainsFunc(rows, func(r handbook.Row) bool { return !r.Agrees() }) {
		t.Errorf("a wrong last digit agrees: %v %v", rows, err)
	}
}
