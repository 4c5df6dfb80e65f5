package command

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const boltCase = "../../testdata/handbook/aisc360/iia22-bolt-shear.yaml"

// spoiltCase writes a case file with one thing changed.
func spoiltCase(t *testing.T, from, to string) string {
	t.Helper()
	src, err := os.ReadFile(boltCase)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(src, []byte(from)) {
		t.Fatalf("%s has no %q", boltCase, from)
	}
	path := filepath.Join(t.TempDir(), "case.yaml")
	if err := os.WriteFile(path, bytes.Replace(src, []byte(from), []byte(to), 1), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestVerify(t *testing.T) {
	r := lugwright(t, "verify", boltCase).want(t, Done, "")
	for _, part := range []string{"Design Examples v16.0", "printed values read", "bolt-shear, LRFD", "printed 17.9 kip", "ours 17.892 kip", "1 case file, 3 results: 3 agree, 0 disagree"} {
		if !strings.Contains(r.out, part) {
			t.Errorf("no %q in\n%s", part, r.out)
		}
	}
}

// Every published case that the project keeps agrees through the service, too.
func TestVerifyHandbook(t *testing.T) {
	r := lugwright(t, "verify", "../../testdata/handbook", "--brief").want(t, Done, "")
	if lines := strings.Count(r.out, "\n"); lines != 1 || !strings.Contains(r.out, " 0 disagree") {
		t.Errorf("%s", r.out)
	}
	for _, line := range strings.Split(lugwright(t, "verify", "../../testdata/handbook").out, "\n") {
		if width(line) > columns && !strings.Contains(line, "printed") {
			t.Errorf("%d columns: %s", width(line), line)
		}
	}
}

// Cases calculated by hand, which show forms that no published case at hand has, agree too.
func TestVerifyByHand(t *testing.T) {
	r := lugwright(t, "verify", "../../testdata/byhand", "--brief").want(t, Done, "")
	if words := strings.Join(strings.Fields(r.out), " "); !strings.Contains(words, " 0 disagree; ") || strings.Contains(words, "memory") {
		t.Errorf("%s", r.out)
	}
}

func TestVerifyDisagrees(t *testing.T) {
	path := spoiltCase(t, "17.9 kip", "18.0 kip")
	r := lugwright(t, "verify", path, boltCase, "--brief").want(t, Failed, "case.yaml:7: bolt-shear, LRFD: V_c is 17.892 kip, printed 18.0 kip")
	if !strings.Contains(r.out, "DISAGREES  V_c  printed 18.0 kip") || !strings.Contains(r.out, "2 case files, 6 results: 5 agree, 1 disagree") || strings.Contains(r.out, boltCase) {
		t.Errorf("%s", r.out)
	}
}

// A slip is told with its place, and does not hide the results of other files.
func TestVerifyBadFiles(t *testing.T) {
	for name, c := range map[string]struct{ from, to, err string }{
		"unknown field":      {"note:", "nota:", `case.yaml:4:1: nota: unknown field; known are`},
		"not YAML":           {"runs:", "runs: [", "case.yaml:"},
		"unknown basis":      {"AISC 360-22\n", "AISC 361\n", `case.yaml:3:1: basis: "AISC 361" is not a basis`},
		"unknown limit":      {"limit: bolt-shear", "limit: bolt-sheer", `case.yaml:7:4: runs[0].limit: "bolt-sheer"; a limit state of AISC 360-22; nearest is "bolt-shear"`},
		"unknown method":     {"method: LRFD", "method: LSD", `runs[0].method: "LSD"; one of ASD, LRFD`},
		"given without unit": {"d: 0.75 in", "d: 0.75", "case.yaml:7:3: runs[0].givens.d: 0.75 has no unit; write a length"},
		"given too large":    {"d: 0.75 in", "d: 75 in", "runs[0].givens.d: 1905 mm; "},
		"unknown result":     {"F_nv: 54 ksi", "F_nw: 54 ksi", "expect.F_nw: has no such line"},
		"stranger":           {"d: 0.75 in", "d: 0.75 in, foo: 3 in", "case.yaml:5:22: givens.foo: no run has such a given; one of "},
		"word for verdict":   {"F_nv: 54 ksi", "verdict: ok", `expect.verdict: "ok"; one of pass, fail, outside the rule`},
		"bare tolerance":     {"note:", "tolerance: 0.5\nwhy: rounds\nnote:", `case.yaml:4:12: tolerance: "0.5"; a tolerance in per cent up to 10 %`},
		"no source":          {"source:", "#", "source: missing"},
		"a number in YAML":   {"threads: \"1\"", "threads: [1, 1]", "givens.threads: a list; one value"},
	} {
		t.Run(name, func(t *testing.T) {
			r := lugwright(t, "verify", spoiltCase(t, c.from, c.to), boltCase).want(t, Misused, c.err)
			if !strings.Contains(r.err, "hint: docs/case-files.md") || !strings.Contains(r.out, "1 case file, 3 results") {
				t.Errorf("%s%s", r.out, r.err)
			}
		})
	}
	lugwright(t, "verify").want(t, Misused, "verify takes")
	lugwright(t, "verify", "nowhere").want(t, Misused, "nowhere")
	lugwright(t, "verify", t.TempDir()).want(t, Misused, "holds no case file")
}

func TestVerifyJSON(t *testing.T) {
	var doc verifiedDoc
	if err := json.Unmarshal([]byte(lugwright(t, "verify", boltCase, "--json").want(t, Done, "").out), &doc); err != nil {
		t.Fatal(err)
	}
	if doc.Agree != 3 || doc.Differ != 0 || len(doc.Files) != 1 || doc.Files[0].Results[1].Printed != "17.9 kip" || doc.Files[0].Results[1].Line != 7 {
		t.Errorf("%+v", doc)
	}
}

// The examples in the manual are whole files that agree.
func TestVerifyManual(t *testing.T) {
	manual, err := os.ReadFile("../../docs/case-files.md")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	blocks := strings.Split(string(manual), "```yaml\n")[1:]
	for i, b := range blocks {
		text, _, _ := strings.Cut(b, "```")
		if err := os.WriteFile(filepath.Join(dir, string(rune('a'+i))+".yaml"), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	r := lugwright(t, "verify", dir).want(t, Done, "")
	if len(blocks) < 4 || !strings.Contains(r.out, "CALCULATED BY HAND") {
		t.Errorf("%d examples:\n%s", len(blocks), r.out)
	}
}
