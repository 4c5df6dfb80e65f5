package aisc360

// Published examples, ours beside printed. Each file in testdata/examples is one; a limit state without any is listed in
// noExample and has properties in properties_test.go instead.

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/goccy/go-yaml"

	"lugwright/strength/strengthtest"
)

// noExample: no published example found.
var noExample = []string{
	"pin-shear",           // J4.2 applied to a pin
	"pin-combined",        // common practice
	"section-interaction", // Manual Eq. 9-1 with a second moment
	"fillet-minimum-length",
	"fillet-shear-flow",
	"free-edge",
	"wall-bending",
}

func TestExamples(t *testing.T) {
	basis := Basis()
	shown := map[string]bool{}
	for _, file := range exampleFiles(t) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			e := readExample(t, file)
			if e.Basis != basis.Card.Name {
				t.Fatalf("basis %q; %q is wanted in this folder", e.Basis, basis.Card.Name)
			}
			rows, err := e.Check(basis)
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%s (%s)", e.Source, e.Provenance)
			for _, r := range rows {
				t.Logf("%-22s %-4s %-11s printed %12s = %-12.6g ours %-12.6g %+.2f %%", r.Limit, r.Method, r.Symbol, r.Text, r.Print, r.Ours, 100*r.Difference())
				shown[r.Limit] = true
				if !r.Agrees() {
					t.Errorf("%s, %s: %s is %.6g, printed %s = %.6g within %.2g", r.Limit, r.Method, r.Symbol, r.Ours, r.Text, r.Print, r.Allow)
				}
			}
		})
	}
	for _, l := range basis.Limits {
		id := l.Info().ID
		switch listed := slices.Contains(noExample, id); {
		case shown[id] == listed:
			t.Errorf("%s: example shown %v, listed as without one %v", id, shown[id], listed)
		case listed:
			t.Logf("%-22s no published example found", id)
		}
	}
}

func exampleFiles(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("testdata/examples/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no example files", err)
	}
	return files
}

func readExample(t *testing.T, file string) strengthtest.Example {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var e strengthtest.Example
	if err := yaml.NewDecoder(bytes.NewReader(text), yaml.Strict()).Decode(&e); err != nil {
		t.Fatal(err)
	}
	return e
}

// TestExamplesRefused: an example file with a slip in it is an error, never a silent pass.
func TestExamplesRefused(t *testing.T) {
	file := "testdata/examples/iia22-bolt-shear.yaml"
	for name, spoil := range map[string]func(*strengthtest.Example){
		"no source":           func(e *strengthtest.Example) { e.Source = "" },
		"provenance":          func(e *strengthtest.Example) { e.Provenance = "guessed" },
		"tolerance, no why":   func(e *strengthtest.Example) { e.Tolerance = "5 %" },
		"unknown limit":       func(e *strengthtest.Example) { e.Runs[0].Limit = "bolt-sheer" },
		"unknown method":      func(e *strengthtest.Example) { e.Runs[0].Method = "LSD" },
		"unknown given":       func(e *strengthtest.Example) { e.Runs[0].Givens = map[string]string{"x": "1 in"} },
		"given in wrong unit": func(e *strengthtest.Example) { e.Givens["d"] = "0.75 ksi" },
		"given without unit":  func(e *strengthtest.Example) { e.Givens["d"] = "0.75" },
		"given missing":       func(e *strengthtest.Example) { delete(e.Givens, "d") },
		"given out of range":  func(e *strengthtest.Example) { e.Givens["d"] = "75 in" },
		"unknown line":        func(e *strengthtest.Example) { e.Runs[0].Expect["R_x"] = "1 kip" },
		"line in wrong unit":  func(e *strengthtest.Example) { e.Runs[0].Expect["V_c"] = "17.9 ksi" },
		"widened, no why": func(e *strengthtest.Example) {
			e.Runs[0].Widened = map[string]strengthtest.Widening{"V_c": {Tolerance: "5 %"}}
		},
	} {
		e := readExample(t, file)
		e.Runs[0].Expect = maps.Clone(e.Runs[0].Expect)
		spoil(&e)
		if rows, err := e.Check(Basis()); err == nil {
			t.Errorf("%s: no error, %d rows", name, len(rows))
		}
	}
	e := readExample(t, file)
	e.Runs[0].Expect["V_c"] = "18.0 kip"
	rows, err := e.Check(Basis())
	if err != nil || !slices.ContainsFunc(rows, func(r strengthtest.Row) bool { return !r.Agrees() }) {
		t.Errorf("a wrong last digit agrees: %v %v", rows, err)
	}
}
