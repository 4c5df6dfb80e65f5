package command

import (
	"context"
	"encoding/json"
	goflag "flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/urfave/cli/v2"

	"lugwright/client/batch"
	"lugwright/client/family"
	"lugwright/services/dial"
)

const lapsFamily = "../../testdata/families/laps.yaml"

func TestBatch(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	r := lugwright(t, "batch", lapsFamily, "-o", dir, "--detail", "2,3,5").want(t, Failed, "lugwright: of 5 variants 1 fail, 2 refused")
	for _, part := range []string{
		"5 variants of kind lap-plate by AISC 360-22, ASD", "         1  FAIL", "         2  refused", "         2  pass",
		"         4   1.50  FAIL  fillet-minimum-leg, weld w-lap-1", "lap_thickness 0.315 in, lap_width 2.953 in, weld 1/8 in",
		"REFUSED  laps.csv:4:1: lap_thickness: 6 has no unit; write a length", "the lightest that passes", "results.csv", "Cautions",
	} {
		if !strings.Contains(r.out, part) {
			t.Errorf("no %q in\n%s", part, r.out)
		}
	}
	if strings.Count(r.err, "\n") != 1 {
		t.Errorf("more than the reason on standard error, which is no terminal:\n%s", r.err)
	}
	sheets, err := os.ReadDir(filepath.Join(dir, "detail"))
	if err != nil || len(sheets) != 1 || sheets[0].Name() != "2.html" {
		t.Errorf("sheets %v, %v", sheets, err)
	}
	src, err := os.ReadFile(filepath.Join(dir, "detail", "2.html"))
	if err != nil || !strings.Contains(string(src), "laps over a joint in the lower flange, variant 2") {
		t.Errorf("sheet: %v\n%.300s", err, src)
	}
	again := lugwright(t, "batch", lapsFamily, "-o", dir, "--resume").want(t, Failed, "of 5 variants")
	if hint := keptHint(0, 5, dir, context.Canceled); strings.Contains(hint, "kept") || !strings.HasSuffix(hint, "--resume begins again") {
		t.Errorf("nothing is kept: %s", hint)
	}
	if hint := keptHint(64, 500, dir, context.Canceled); !strings.HasPrefix(hint, "64 of 500 variants are done and kept in "+dir) {
		t.Errorf("64 are kept: %s", hint)
	}
	code, hint := status(&stoppedError{&family.ChangedError{File: "laps.csv"}, "what is kept"})
	if code != Misused || hint != "what is kept" {
		t.Errorf("rows that changed: status %d, %s", code, hint)
	}
	if code, hint = status(&family.ChangedError{File: "laps.csv"}); code != Misused || !strings.Contains(hint, "give it a copy") {
		t.Errorf("rows that changed: status %d, %s", code, hint)
	}
	whole, _, _ := strings.Cut(r.out, "wrote ")
	if !strings.HasPrefix(again.out, whole) {
		t.Errorf("resumed when all was done:\n%s\nwant\n%s", again.out, whole)
	}
}

func TestBatchJSON(t *testing.T) {
	var d familyDoc
	r := lugwright(t, "batch", lapsFamily, "--json", "--worst", "1").want(t, Failed, `"status": 1`)
	if err := json.Unmarshal([]byte(r.out), &d); err != nil {
		t.Fatal(err)
	}
	if d.Variants != 5 || d.Passes || d.Verdicts["pass"] != 2 || len(d.Worst) != 1 || d.Worst[0].ID != 4 || len(d.Refused) != 1 || d.Refused[0].ID != 3 || d.Lightest == nil || len(d.Worst[0].Parameters) != 3 || d.Worst[0].Parameters[0].Name != "lap_thickness" || *d.Worst[0].Parameters[0].Number != 8 {
		t.Errorf("%+v", d)
	}
}

// Every row passes: 0. The rows are named on the command line.
func TestBatchPasses(t *testing.T) {
	dir := t.TempDir()
	src, err := os.ReadFile(lapsFamily)
	if err != nil {
		t.Fatal(err)
	}
	common, rows := filepath.Join(dir, "common.yaml"), filepath.Join(dir, "rows.csv")
	for path, text := range map[string]string{common: strings.Replace(string(src), "rows: laps.csv\n", "", 1), rows: "weld [mm]\n6\n"} {
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	lugwright(t, "batch", rows, "--common", common).want(t, Done, "")
	lugwright(t, "batch", rows).want(t, Misused, "has rows alone")
	lugwright(t, "batch", common).want(t, Misused, "grid: missing; grid, with the values that parameters take, or rows")
	lugwright(t, "batch", common, "--common", common).want(t, Misused, "--common goes with a CSV file of rows")
	lugwright(t, "batch", rows, "--common", lapsFamily).want(t, Misused, "rows here and on the command line")
}

// A service that does not answer yet is waited for where --patience says so, and told at once where nothing does.
func TestPatienceAtTheStart(t *testing.T) {
	args := []string{"batch", lapsFamily, "--strength", "127.0.0.1:1"}
	if r := lugwright(t, args...).want(t, Unreachable, "127.0.0.1:1"); strings.Contains(r.err, "waiting") {
		t.Errorf("waited without being told to: %s", r.err)
	}
	lugwright(t, append(args, "--patience", "1ms")...).want(t, Unreachable, "waiting for it, 1ms at most")

	client, err := dial.Remote("", "127.0.0.1:1", dial.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer client.Close()
	_, gone := client.Bases(t.Context())
	var told strings.Builder
	flags := goflag.NewFlagSet("batch", goflag.ContinueOnError)
	flags.Duration("patience", 0, "")
	if err := flags.Parse([]string{"-patience", "1h"}); err != nil {
		t.Fatal(err)
	}
	s := &session{Streams: Streams{Err: &told}}
	asked := 0
	err = s.patiently(t.Context(), cli.NewContext(nil, flags, nil), func() error {
		if asked++; asked < 3 {
			return gone
		}
		return nil
	})
	if err != nil || asked != 3 || strings.Count(told.String(), "waiting") != 1 {
		t.Errorf("asked %d times, %v, told %q", asked, err, told.String())
	}
}

func TestBatchRefusals(t *testing.T) {
	dir := t.TempDir()
	for _, c := range []struct {
		args   string
		status int
		want   string
	}{
		{"batch", Misused, "batch takes one argument, not 0"},
		{"batch nowhere.yaml", Misused, "nowhere.yaml: no such file or directory"},
		{"batch " + lapsFamily + " --resume", Misused, "--resume and --detail need the folder of the results"},
		{"batch " + lapsFamily + " --detail 1", Misused, "need the folder of the results"},
		{"batch " + lapsFamily + " -o " + dir + "/x --detail 1,9-3", Misused, `--detail: "9-3" is not taken`},
		{"batch " + lapsFamily + " -o " + dir + "/x --detail 1-9999", Misused, `--detail: "1-9999" is not taken`},
		{"batch " + lapsFamily + " -o " + dir + "/x --detail 6", Misused, "there is no variant 6"},
		{"batch " + lapsFamily + " --worst=-1", Misused, "--worst -1 is not taken"},
		{"batch " + lapsFamily + " --patience 0s", Misused, "--patience 0s is not a time to wait"},
		{"batch " + lapsFamily + " -o " + dir + " ", NotWritten, "is not empty"},
		{"batch " + lapsFamily + " -o " + dir + "/file/x", NotWritten, "not a directory"},
	} {
		if err := os.WriteFile(filepath.Join(dir, "file"), nil, 0o600); err != nil {
			t.Fatal(err)
		}
		lugwright(t, strings.Fields(c.args)...).want(t, c.status, c.want)
		if _, err := os.Stat(filepath.Join(dir, "x", batch.FamilyFile)); err == nil {
			t.Errorf("%s wrote results", c.args)
		}
	}
}

// The family of the guide is one that runs.
func TestGuidesFamily(t *testing.T) {
	guide, err := os.ReadFile("../../docs/family-file.md")
	if err != nil {
		t.Fatal(err)
	}
	demo, err := os.ReadFile("../../testdata/families/ears.yaml")
	if err != nil {
		t.Fatal(err)
	}
	_, block, _ := strings.Cut(string(guide), "```yaml\n")
	block, _, _ = strings.Cut(block, "```")
	if _, text, _ := strings.Cut(string(demo), "\n"); text != block {
		t.Errorf("testdata/families/ears.yaml is not the family of docs/family-file.md")
	}
	if testing.Short() {
		t.Skip("it takes some seconds")
	}
	r := lugwright(t, "batch", "../../testdata/families/ears.yaml")
	if !strings.Contains(r.out, "42 variants of kind clevis") {
		t.Errorf("%s%s", r.out, r.err)
	}
}
