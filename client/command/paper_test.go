package command

import (
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
	data, err := os.ReadFile(filepath.Join(out, "papers", "revision-sheet.pdf"))
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, "alone.pdf")
	lugwright(t, "paper", later, "revision-sheet", "--since", old, "-o", file).want(t, Done, "")
	if alone, err := os.ReadFile(file); err != nil || string(alone) != string(data) {
		t.Errorf("alone %d bytes, in the pack %d: %v", len(alone), len(data), err)
	}
	r := lugwright(t, "paper", later, "revision-sheet", "--since", old).want(t, Done, "")
	if !strings.Contains(r.out, "WRONG, cut anew") || !strings.Contains(r.out, "stays right") {
		t.Errorf("%s", r.out)
	}
}

// Each paper stands alone in every form; all go one after the other into one file, or into a folder.
func TestPaperFiles(t *testing.T) {
	path, dir := starterJob(t), t.TempDir()
	begins := map[string]string{".pdf": "%PDF-", ".html": "<!DOCTYPE html>", ".txt": "WELD MAP\n"}
	for ending, begin := range begins {
		file := filepath.Join(dir, "weld-map"+ending)
		r := lugwright(t, "paper", path, "weld-map", "-o", file).want(t, Done, "")
		data, err := os.ReadFile(file)
		if err != nil || !strings.HasPrefix(string(data), begin) || r.out != "wrote "+file+"\n" {
			t.Errorf("%s: %v, %.40q, said %q", ending, err, data, r.out)
		}
		lugwright(t, "paper", path, "weld-map", "-o", file).want(t, NotWritten, "is there already")
		again, err := os.ReadFile(file)
		if err != nil || string(again) != string(data) {
			t.Errorf("%s was written again: %v", file, err)
		}
		folder := filepath.Join(dir, "all-"+ending[1:])
		lugwright(t, "paper", path, "all", "-o", folder, "--form", ending[1:]).want(t, Done, "")
		for _, name := range []string{"calc-sheet", "weld-map", "torque-card"} {
			if data, err := os.ReadFile(filepath.Join(folder, name+ending)); err != nil || !strings.HasPrefix(string(data), begin[:1]) && ending != ".txt" {
				t.Errorf("%s%s: %v, %.40q", name, ending, err, data)
			}
		}
		lugwright(t, "paper", path, "all", "-o", folder).want(t, NotWritten, "")
	}
	one := filepath.Join(dir, "all.html")
	lugwright(t, "paper", path, "all", "-o", one).want(t, Done, "")
	data, err := os.ReadFile(one)
	if err != nil || !strings.Contains(string(data), ">Weld map</h2>") || !strings.Contains(string(data), ">Calc sheet</h2>") || strings.Count(string(data), "<h1>") != 1 {
		t.Errorf("%v, %.200s", err, data)
	}
	lugwright(t, "paper", path, "weld-map", "-o", filepath.Join(dir, "map.doc")).want(t, Misused, "not written as .doc")
	lugwright(t, "paper", path, "weld-map", "-o", filepath.Join(dir, "map.html"), "--form", "pdf").want(t, Misused, "--form says pdf")
	lugwright(t, "paper", path, "weld-map", "--form", "pdf").want(t, Misused, "-o names none")
	lugwright(t, "paper", path, "-o", filepath.Join(dir, "map.html")).want(t, Misused, "needs the name of a paper")
	lugwright(t, "paper", path, "weld-map", "-o", filepath.Join(dir, "maps"), "--form", "doc").want(t, Misused, `"doc" is not a form`)
	lugwright(t, "paper", path, "lift-plan", "-o", filepath.Join(dir, "lift.pdf")).want(t, Misused, "the job has no vehicle")
	if _, err := os.Stat(filepath.Join(dir, "lift.pdf")); err == nil {
		t.Error("a paper that there is none of was written")
	}
}

// In a folder, the files' names too say that the job fails.
func TestPaperFilesOfFailure(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "papers")
	lugwright(t, "paper", "../../testdata/jobs/fieldlab-byfeel.yaml", "calc-sheet", "-o", dir, "--form", "txt").want(t, Failed, "fails")
	if data, err := os.ReadFile(filepath.Join(dir, "NOT-PASSED-calc-sheet.txt")); err != nil || !strings.HasPrefix(string(data), "NOT PASSED: ") {
		t.Errorf("%v, %.80q", err, data)
	}
}
