package command

// The verbs sweep and propose.

import (
	"bufio"
	"context"
	"encoding/csv"
	"encoding/json"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var (
	hashLine = regexp.MustCompile(`(?m)^job [0-9a-f]{16}, lugwright .*\n`)
	locker   = "../../testdata/jobs/sidelocker.yaml"
	plates   = "../../testdata/jobs/forgeplates.yaml"
	carrier  = "../../testdata/jobs/hivecarrier.yaml"
)

// What the demo jobs print, metric and in inches, within 80 columns.
func TestSweepGolden(t *testing.T) {
	plot := filepath.Join(t.TempDir(), "plot.svg")
	for name, c := range map[string]struct {
		args   []string
		status int
	}{
		"locker":  {[]string{"sweep", locker, "--vary", "plate_thickness=rack", "--vary", "root_height=130 mm, 150 mm", "--margin", "1.1", "--plot", plot}, Done},
		"refined": {[]string{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm..8 mm step 1 mm", "--refine", "--margin", "1.2", "--against", "weld"}, Done},
		"inch":    {[]string{"sweep", carrier, "single", "--vary", "plate_thickness=1/2 in, 5/8 in, 3/4 in"}, Done},
		"common":  {[]string{"sweep", plates, "web-doubler", "slide-stiffener", "--vary", "thickness=4 mm, 6 mm, 8 mm", "--common"}, Done},
		"none":    {[]string{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm", "--vary", "width=30 mm, 40 mm"}, Failed},
		"propose": {[]string{"propose", plates, "slide-stiffener", "--margin", "1.2"}, Done},
	} {
		t.Run(name, func(t *testing.T) {
			r := lugwright(t, c.args...).want(t, c.status, "")
			got := hashLine.ReplaceAllString(r.out+r.err, "")
			got = strings.ReplaceAll(got, plot, "plot.svg")
			for _, line := range strings.Split(r.out, "\n") {
				if width(line) > columns && !strings.HasPrefix(line, "wrote") {
					t.Errorf("%d columns: %s", width(line), line)
				}
			}
			golden(t, filepath.Join("testdata", "sweep", name+".txt"), got)
		})
	}
	svg, err := os.ReadFile(plot)
	if err != nil {
		t.Fatal(err)
	}
	golden(t, filepath.Join("testdata", "sweep", "locker.svg"), string(svg))
}

func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if want, err := os.ReadFile(file); err != nil || string(want) != got {
		t.Errorf("%s is not what is printed (%v); run with -update and read the difference:\n%s", file, err, got)
	}
}

// JSON and CSV hold every variant; the exit status is the same; a file that is there is not touched.
func TestSweepFiles(t *testing.T) {
	file := filepath.Join(t.TempDir(), "sweep.csv")
	args := []string{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm..8 mm step 1 mm", "--vary", "weld=5 mm, 25 mm", "-o", file}
	var doc sweepDoc
	r := lugwright(t, append(args, "--json")...).want(t, Done, "")
	if err := json.Unmarshal([]byte(r.out), &doc); err != nil {
		t.Fatal(err)
	}
	b := doc.Brackets[0]
	if len(b.Rows) != 12 || b.Lightest == nil || !doc.Whole || len(b.NotChecked) == 0 || len(doc.Cautions) == 0 || b.Rows[*b.Lightest].Outcome != "pass" {
		t.Errorf("%+v", doc)
	}
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(src))).ReadAll()
	if err != nil || len(rows) != 13 || rows[0][1] != "thickness_mm" || rows[0][2] != "weld_mm" || rows[1][1] != "3" {
		t.Errorf("%v, %v", rows, err)
	}
	lugwright(t, args...).want(t, NotWritten, "is there already")
	r = lugwright(t, append(args[:len(args)-1], "/dev/null/x")...).want(t, NotWritten, "in a folder that is there")
	if r.out != "" {
		t.Errorf("work was done before a file was refused: %s", r.out)
	}
}

func TestSweepRefuses(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"sweep", plates, "slide-stiffener"}, "needs something to vary"},
		{[]string{"sweep", plates, "--vary", "thickness=3 mm"}, "the job has 5 brackets"},
		{[]string{"sweep", plates, "slide-stifener", "--vary", "thickness=3 mm"}, `nearest is "slide-stiffener"`},
		{[]string{"sweep", plates, "slide-stiffener", "--vary", "thickness=3"}, "has no unit"},
		{[]string{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm", "--margin", "0.9"}, "write a number from 1 to 10"},
		{[]string{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm", "--margin", "NaN"}, "write a number from 1 to 10"},
		{[]string{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm", "--against", "cost"}, "one of mass, cut, weld"},
		{[]string{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm, 4 mm", "--refine"}, "one parameter is refined"},
		{[]string{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm", "--plot", "./q.csv", "-o", "q.csv"}, "--out and --plot name one file, q.csv"},
		{[]string{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm, 3 mm"}, "3 mm stands there twice"},
		{[]string{"sweep", "nowhere.yaml", "--vary", "thickness=3 mm"}, "no such file"},
		{[]string{"sweep", "../../testdata/jobs/watertrays.yaml", "--vary", "rod_free=100 mm"}, ""},
		{[]string{"propose", plates}, "needs a bracket of the job"},
		{[]string{"propose", plates, "slide-stiffener", "--vary", "thickness=rack"}, "taken without saying"},
		{[]string{"propose", plates, "slide-stiffener", "--vary", "web-doubler.thickness=6 mm"}, "has no such parameter"},
		{[]string{"propose", plates, "nobody"}, `no bracket "nobody"`},
		{[]string{"propose", plates, "slide-stiffener", "--mount", "x", "--kind", "clevis"}, "not both"},
		{[]string{"propose", plates, "--mount", "x", "--kind", "clevis"}, "vehicle: missing"},
		{[]string{"propose", demo, "--mount", "pair-lft", "--kind", "clevis"}, `nearest is "pair-left"`},
		{[]string{"propose", demo, "--mount", "pair-left", "--kind", "clevs"}, `nearest is "clevis"`},
		{[]string{"propose", demo, "--mount", "pair-left", "--kind", "clevis", "--hand", "right"}, "is on the left"},
		{[]string{"propose", plates, "slide-stiffener", "--keep", "thicknss"}, "has no such parameter"},
		{[]string{"propose", plates, "slide-stiffener", "--most", "0"}, "a number from 1 to"},
		{[]string{"propose", plates, "slide-stiffener", "--pick", "4"}, "1, 2 or 3"},
	} {
		lugwright(t, c.args...).want(t, Misused, c.want)
	}
	lugwright(t, "sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm", "--strength", "127.0.0.1:1", "--timeout", "5s").want(t, Unreachable, "")
}

// stopping cancels after so many lines.
type stopping struct {
	strings.Builder
	lines int
	stop  context.CancelFunc
}

func (s *stopping) Write(b []byte) (int, error) {
	if s.lines -= strings.Count(string(b), "\n"); s.lines < 0 {
		s.stop()
	}
	return s.Builder.Write(b)
}

// Stopped in the middle a sweep says what is done, and writes it.
func TestSweepInterrupted(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	out := &stopping{lines: 14, stop: stop}
	file := filepath.Join(t.TempDir(), "part.csv")
	var errs strings.Builder
	status := Main(ctx, []string{"lugwright", "sweep", plates, "slide-stiffener", "--vary", "thickness=4 mm..8 mm step 0.01 mm", "-o", file}, Streams{Out: out, Err: &errs})
	if status != Interrupted || !strings.Contains(errs.String(), "interrupted") || !strings.Contains(out.String(), "stopped after ") || !strings.Contains(out.String(), "the lightest that passes") {
		t.Errorf("status %d, %s\n%s", status, errs.String(), out.String())
	}
	src, err := os.ReadFile(file)
	if n := strings.Count(string(src), "\r\n"); err != nil || n < 3 || n > 300 {
		t.Errorf("%v, %d lines", err, n)
	}
}

// A new bracket on a mount: its side and a name of its own, and what is printed is an item of the job.
func TestProposeOnMount(t *testing.T) {
	r := lugwright(t, "propose", demo, "--mount", "pair-right", "--kind", "clevis", "--most", "12", "--vary", "couple=cross member at this station", "--json")
	if r.status != Done && r.status != Failed {
		t.Fatalf("status %d: %s", r.status, r.err)
	}
	var doc proposedDoc
	if err := json.Unmarshal([]byte(r.out), &doc); err != nil || doc.Bracket != "pair-right-2" || doc.Tried == 0 || doc.Tried > 12 {
		t.Errorf("%v, %+v", err, doc)
	}
}

// A comma belongs to the value of an option that may be given again.
func TestCommasStay(t *testing.T) {
	r := lugwright(t, "loads", demo, "--move", "clean water: x 300 mm, y -20 mm")
	if r.status == Misused {
		t.Errorf("%s", r.err)
	}
}

// served starts both services at one address of this machine.
func served(t *testing.T) string {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	lines, in := io.Pipe()
	done := make(chan int, 1)
	go func() {
		done <- Main(ctx, []string{"lugwright", "serve"}, Streams{Out: in, Err: io.Discard})
		in.Close()
	}()
	addr, err := bufio.NewReader(lines).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	go io.Copy(io.Discard, lines)
	t.Cleanup(func() { stop(); <-done })
	return strings.TrimSpace(addr)
}

// Services elsewhere give the same bytes: of sweeps with words, inches and several brackets on common thicknesses, and of proposals by steps.
func TestSweepElsewhere(t *testing.T) {
	addr := served(t)
	for _, args := range [][]string{
		{"sweep", plates, "web-doubler", "slide-stiffener", "--vary", "thickness=rack", "--common", "--margin", "1.1"},
		{"sweep", carrier, "pair-left", "--vary", "ear_thickness=3/8 in, 1/2 in", "--vary", "gussets=all", "--json"},
		{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm..8 mm step 1 mm", "--refine"},
		{"propose", locker, "outrigger-left", "--most", "60"},
		{"propose", plates, "slide-stiffener", "--json", "--margin", "1.2"},
	} {
		here := lugwright(t, args...)
		there := lugwright(t, append(args, "--geometry", addr, "--strength", addr)...)
		if here.status != Done || here != there {
			t.Errorf("%v: status %d, elsewhere %d\n%s\nelsewhere\n%s", args, here.status, there.status, here.out+here.err, there.out+there.err)
		}
	}
}

// On a terminal a bar is drawn on standard error, and what is printed is the same.
func TestSweepBar(t *testing.T) {
	for _, args := range [][]string{
		{"sweep", plates, "slide-stiffener", "--vary", "thickness=3 mm..8 mm step 1 mm"},
		{"propose", plates, "slide-stiffener"},
	} {
		plain := lugwright(t, args...).want(t, Done, "")
		var out, bar strings.Builder
		status := Main(t.Context(), append([]string{"lugwright"}, args...), Streams{Out: &out, Err: &bar, Watched: true})
		if status != Done || plain.err != "" || out.String() != plain.out || !strings.Contains(bar.String(), "\r") {
			t.Errorf("%v: status %d, standard error %q and on a terminal %q\n%s", args, status, plain.err, bar.String(), out.String())
		}
	}
}

// A row of a batch is a row of a sweep: verdict, governing check, utilisation, and the mass of plates, sections and pins.
func TestBatchIsSweep(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "laps.yaml")
	const loads = "{case: pull, force: {x: 15 kN, y: 0 N, z: 0 N}}"
	const cases = "basis: AISC 360-22\nmethod: ASD\ncases: {pull: {level: service, source: own}}\n"
	if err := os.WriteFile(file, []byte("family: laps\nkind: lap-plate\nhand: left\n"+cases+"loads: ["+loads+"]\ngrid: {lap_thickness: [4 mm, 6 mm, 8 mm], lap_width: [50 mm, 80 mm]}\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	jobFile := filepath.Join(dir, "job.yaml")
	if err := os.WriteFile(jobFile, []byte("job: laps\n"+cases+"brackets: [{name: lap, kind: lap-plate, hand: left, loads: ["+loads+"]}]\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	var doc sweepDoc
	r := lugwright(t, "sweep", jobFile, "--vary", "lap_thickness=4 mm, 6 mm, 8 mm", "--vary", "lap_width=50 mm, 80 mm", "--json")
	if err := json.Unmarshal([]byte(r.out), &doc); err != nil {
		t.Fatal(err)
	}
	lugwright(t, "batch", file, "-o", filepath.Join(dir, "out"))
	src, err := os.ReadFile(filepath.Join(dir, "out", "results.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(src)), "\n")
	if len(lines) != 6 || len(doc.Brackets[0].Rows) != 6 {
		t.Fatalf("%d lines, %d rows", len(lines), len(doc.Brackets[0].Rows))
	}
	for i, line := range lines {
		var b struct {
			Verdict, Limit, Place, Case string
			Utilisation                 float64
			MassKG                      float64 `json:"mass_kg"`
			NotChecked                  int     `json:"not_checked"`
		}
		if err := json.Unmarshal([]byte(line), &b); err != nil {
			t.Fatal(err)
		}
		s := &doc.Brackets[0].Rows[i]
		if b.Verdict != s.Outcome || s.Governs == nil || b.Limit != s.Governs.Limit || b.Place != s.Governs.Place || b.Case != s.Governs.Case ||
			b.Utilisation != float64(s.Governs.Utilisation) || math.Abs(b.MassKG-float64(s.BareKG)) > 0.0006 || b.NotChecked != s.NotCheck {
			t.Errorf("batch %+v, sweep %+v %+v", b, s, s.Governs)
		}
	}
}
