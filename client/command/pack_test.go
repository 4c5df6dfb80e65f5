package command

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func filesOf(t *testing.T, dir string) []string {
	t.Helper()
	files, err := listed(dir)
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func count(files []string, part string) (n int) {
	for _, f := range files {
		if strings.Contains(f, part) {
			n++
		}
	}
	return n
}

func TestPack(t *testing.T) {
	path, out := starterJob(t), filepath.Join(t.TempDir(), "out")
	r := lugwright(t, "pack", path, "-o", out).want(t, Done, "")
	files := filesOf(t, out)
	if count(files, ".dxf") < 4 || count(files, ".scad") == 0 || count(files, "calc-sheet") != 2 || count(files, "manifest") != 1 {
		t.Errorf("files: %q", files)
	}
	for _, f := range files {
		if !strings.Contains(r.out, f+"\n") {
			t.Errorf("%s is not said to be written", f)
		}
	}
	lugwright(t, "pack", path, "-o", out).want(t, NotWritten, "is not empty")
}

// What was not checked is counted on screen, as many things as the check of the same job lists, and the paper named has them.
func TestPackCountsTheUnchecked(t *testing.T) {
	path, out := starterJob(t), filepath.Join(t.TempDir(), "out")
	listed := strings.Count(lugwright(t, "check", path).want(t, Done, "").out, "\n  not checked")
	r := lugwright(t, "pack", path, "-o", out).want(t, Done, "")
	words := strings.Join(strings.Fields(r.out), " ")
	if want := fmt.Sprintf("%d things of pair-left not checked: the calc sheet lists each with the reason, under Not checked", listed); listed < 5 || !strings.Contains(words, want) {
		t.Errorf("want %q in:\n%s", want, r.out)
	}
	paper, err := os.ReadFile(filepath.Join(out, "calc-sheet.html"))
	if err != nil || !strings.Contains(string(paper), ">Not checked</h2>") {
		t.Errorf("%v", err)
	}
}

// The same job gives the same bytes.
func TestPackTwice(t *testing.T) {
	path, dir := starterJob(t), t.TempDir()
	var packs [2]map[string]string
	for i := range packs {
		out := filepath.Join(dir, string(rune('a'+i)))
		lugwright(t, "pack", "--out", out, path).want(t, Done, "")
		packs[i] = map[string]string{}
		for _, f := range filesOf(t, out) {
			data, err := os.ReadFile(filepath.Join(out, f))
			if err != nil {
				t.Fatal(err)
			}
			packs[i][f] = string(data)
		}
	}
	if len(packs[0]) != len(packs[1]) {
		t.Fatalf("%d files, then %d", len(packs[0]), len(packs[1]))
	}
	for name, data := range packs[0] {
		if packs[1][name] != data {
			t.Errorf("%s differs", name)
		}
	}
}

// A job that does not pass gets its calc sheet and no cut file, unless the user insists; then every name is marked.
func TestPackOfAFailingJob(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	r := lugwright(t, "pack", "testdata/bare.yaml", "-o", out).want(t, Failed, "lugwright: pair-left fails: ")
	files := filesOf(t, out)
	if count(files, ".dxf")+count(files, ".scad") != 0 || count(files, "calc-sheet") != 2 {
		t.Errorf("files: %q", files)
	}
	if !strings.Contains(r.out, "no cut file is written") {
		t.Errorf("output:\n%s", r.out)
	}
	out += "-insisted"
	lugwright(t, "pack", "testdata/bare.yaml", "-o", out, "--despite-failure").want(t, Failed, "pair-left fails")
	files = filesOf(t, out)
	if count(files, ".dxf") == 0 {
		t.Errorf("files: %q", files)
	}
	mark, _, _ := strings.Cut(filepath.Base(files[0]), "calc")
	for _, f := range files {
		if mark == "" || !strings.HasPrefix(filepath.Base(f), mark) && !strings.Contains(strings.ToUpper(f), "NOT") {
			t.Errorf("%s is not marked", f)
		}
	}
}

func TestPackNotWritable(t *testing.T) {
	path := starterJob(t)
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	lugwright(t, "pack", path, "-o", file).want(t, NotWritten, "cannot be written")
	lugwright(t, "pack", path, "-o", filepath.Join(file, "out")).want(t, NotWritten, "cannot be written")
	if os.Geteuid() == 0 {
		return // root may write anywhere
	}
	locked := filepath.Join(t.TempDir(), "locked")
	if err := os.Mkdir(locked, 0o500); err != nil {
		t.Fatal(err)
	}
	lugwright(t, "pack", path, "-o", filepath.Join(locked, "out")).want(t, NotWritten, "cannot be written")
}

// A pack whose service is not there leaves nothing.
func TestPackUnreachable(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	lugwright(t, "pack", starterJob(t), "-o", out, "--geometry", "127.0.0.1:1").want(t, Unreachable, "geometry service")
	if _, err := os.Stat(out); err == nil {
		t.Error("a folder was left behind")
	}
}
