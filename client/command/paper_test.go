package command

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lugwright/client/papers"
)

func TestPaper(t *testing.T) {
	path := starterJob(t)
	// Without a name: every paper is listed, or why there is none.
	r := lugwright(t, "paper", path).want(t, Done, "")
	for _, k := range papers.Kinds() {
		if !strings.Contains(r.out, k.Name) {
			t.Errorf("%s is not listed:\n%s", k.Name, r.out)
		}
	}
	if r := lugwright(t, "paper", path, "weld-map").want(t, Done, ""); !strings.HasPrefix(r.out, "WELD MAP\n") || strings.Contains(r.out, "TORQUE CARD") {
		t.Errorf("%s", r.out)
	}
	if r := lugwright(t, "paper", path, "all").want(t, Done, ""); !strings.Contains(r.out, "WELD MAP\n") || !strings.Contains(r.out, "TORQUE CARD\n") || !strings.Contains(r.out, "no bend-card: ") {
		t.Errorf("%s", r.out)
	}
	if r := lugwright(t, "paper", path, "lift-plan").want(t, Done, ""); r.out != "no lift-plan: the job has no vehicle\n" {
		t.Errorf("%s", r.out)
	}
	lugwright(t, "paper", path, "weldmap").want(t, Misused, `"weldmap" is not a paper; nearest is "weld-map"`)
	lugwright(t, "paper", path, "revision-sheet", "--since", t.TempDir()).want(t, Misused, "no manifest.json")
}

// A paper of a job that fails begins with the warning, and the run fails as check does.
func TestPaperOfFailure(t *testing.T) {
	r := lugwright(t, "paper", "../../testdata/jobs/fieldlab-byfeel.yaml", "torque-card").want(t, Failed, "fails")
	if !strings.HasPrefix(r.out, "NOT PASSED: ") || !strings.Contains(r.out, "TORQUE CARD") {
		t.Errorf("%s", r.out)
	}
}

func TestPaperJSON(t *testing.T) {
	r := lugwright(t, "paper", "--json", starterJob(t), "buy-list").want(t, Done, "")
	var d papersDoc
	if err := json.Unmarshal([]byte(r.out), &d); err != nil || len(d.Papers) != 1 || d.Papers[0].Name != "buy-list" || len(d.Papers[0].Blocks) == 0 || d.Missing == nil {
		t.Errorf("%v: %s", err, r.out)
	}
}

// A pack holds its papers, and a later one says what changed since: a wider ear is cut anew, what is not touched stays right.
func TestSince(t *testing.T) {
	path, dir := starterJob(t), t.TempDir()
	old := filepath.Join(dir, "old")
	lugwright(t, "pack", path, "-o", old).want(t, Done, "")
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	changed := strings.Replace(string(src), "ear_width: 100 mm", "ear_width: 104 mm", 1)
	if changed == string(src) {
		t.Fatal("the starter job has other ears")
	}
	later := filepath.Join(dir, "later.yaml")
	if err := os.WriteFile(later, []byte(changed), 0o666); err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(dir, "new")
	lugwright(t, "pack", later, "-o", out, "--since", old).want(t, Done, "")
	if data, err := os.ReadFile(filepath.Join(out, "papers", "revision-sheet.pdf")); err != nil || !bytes.HasPrefix(data, []byte("%PDF-")) {
		t.Errorf("%v\n%.100q", err, data)
	}
	alone := lugwright(t, "paper", later, "revision-sheet", "--since", old).want(t, Done, "")
	if !strings.Contains(alone.out, "WRONG, cut anew") || !strings.Contains(alone.out, "stays right") {
		t.Errorf("alone:\n%s", alone.out)
	}
}
