package command

// The demo jobs of testdata/jobs, the schema beside them, and the README's picture.

import (
	"bytes"
	stdflag "flag"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var update = stdflag.Bool("update", false, "rewrite the README's picture and the demo jobs' schema")

const (
	demo    = "../../testdata/jobs/fieldlab.yaml"
	byFeel  = "../../testdata/jobs/fieldlab-byfeel.yaml"
	schema  = "../../testdata/jobs/lugwright.schema.json"
	picture = "../../docs/pair-left.svg"
)

// The main demo passes with something in hand, and its pack holds what the README says.
func TestFieldLabPacks(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	r := lugwright(t, "pack", demo, "-o", out).want(t, Done, "")
	if !strings.Contains(r.out, "pass  pair-left") || !strings.Contains(r.out, "pass  single") {
		t.Errorf("no pass in:\n%s", r.out)
	}
	files := filesUnder(t, out)
	for _, want := range []string{"calc-sheet.html", "cut-list.csv", "manifest.json", "hole-list.csv", "placing-list.csv", "scad/pair-right.scad", "drawings/brackets/single-views.svg", "3mf/single.3mf"} {
		if !slices.Contains(files, want) {
			t.Errorf("no %s among %v", want, files)
		}
	}
	// The outboard ear: 43 + 25 mm from the web's face, its 116 mm in the middle of 250.
	list, err := os.ReadFile(filepath.Join(out, "placing-list.csv"))
	if row := `pair-left,left,1,1,ear-1,PAIR-L1,ear,base.a,PAIR-L4,outer face of the leg,"right end, heel down",67.00,heel,68.00,116.00,12.00,,w-ear-1,fillet,6.00,both faces,3,206.00,E70`; err != nil || !strings.Contains(string(list), row) {
		t.Errorf("%v: no row %s in\n%s", err, row, list)
	}
	got, err := os.ReadFile(filepath.Join(out, "drawings", "brackets", "pair-left-parts.svg"))
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile(picture, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if shown, err := os.ReadFile(picture); err != nil || !bytes.Equal(got, shown) {
		t.Errorf("the README's picture is not what the demo draws (%v); run with -update and look at it", err)
	}
}

// What a demo job passes can be made: every weld, bolt and pin of it is reached. The job made by feel is there to fail, and some have no brackets.
func TestDemosCanBeMade(t *testing.T) {
	jobs, err := filepath.Glob("../../testdata/jobs/*.yaml")
	if err != nil || len(jobs) < 9 {
		t.Fatalf("%v, %v", jobs, err)
	}
	for _, job := range jobs {
		src, err := os.ReadFile(job)
		if err != nil {
			t.Fatal(err)
		}
		if filepath.Base(job) == filepath.Base(byFeel) || !bytes.Contains(src, []byte("\nbrackets:")) {
			continue
		}
		if r := lugwright(t, "check", "--access", job).want(t, Done, ""); strings.Contains(r.out, "no access") {
			t.Errorf("%s:\n%s", job, r.out[strings.Index(r.out, "no access"):][:300])
		}
	}
}

// The hive carrier's mounts pass and pack in inches, though the front axle is over its rating; ears of half the thickness fail, and a number without a unit
// is refused.
func TestHiveCarrier(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	r := lugwright(t, "pack", jobs+"hivecarrier.yaml", "-o", out).want(t, Done, "")
	wantAll(t, r.out, "pass  pair-left", "pass  pair-right", "pass  single", "_A572-50_")
	lugwright(t, "check", edited(t, "hivecarrier.yaml", "ear_thickness: 1/2 in", "ear_thickness: 1/4 in", "spacer_length: 9/16 in", "spacer_length: 1/2 in")).want(t, Failed, "pair-left fails: ")
	lugwright(t, "check", edited(t, "hivecarrier.yaml", "pin_diameter: 1-1/4 in", "pin_diameter: 1.25")).want(t, Misused, "no unit")
}

// The workshop's mounts pass and pack, the saddle governed by the empty state. A fork that would swing into the subframe's tube is refused by its parameter;
// without collars nothing holds the saddle's tube along its axis, and the job is told so.
func TestForgeWorkshop(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	r := lugwright(t, "pack", jobs+"forgeworkshop.yaml", "-o", out).want(t, Done, "")
	wantAll(t, r.out, "pass  front", "pass  pair-left", "pass  pair-right", "pass  subframe-lug-left", "pass  subframe-lug-right")
	if r := lugwright(t, "check", jobs+"forgeworkshop.yaml"); !strings.Contains(strings.Join(strings.Fields(r.out), " "), "at 0.77 of capacity (A7, empty, ") {
		t.Error(r.out)
	}
	if files := filesUnder(t, out); !slices.Contains(files, "drawings/brackets/subframe-lug-right-welds.svg") {
		t.Errorf("%v", files)
	}
	lugwright(t, "check", edited(t, "forgeworkshop.yaml", "fork_end: 50 mm", "fork_end: 54 mm")).want(t, Misused, "fork_end")
	lugwright(t, "check", edited(t, "forgeworkshop.yaml", "collar_thickness: 10 mm", "collar_thickness: 0 mm")).want(t, Misused, "no load path")
}

// The workshop's fittings pass and pack, the arch at both ends of what the builder states; with plates of 6 mm it fails under the hammer's side load.
func TestForgeFittings(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	lugwright(t, "pack", jobs+"forgefittings.yaml", "-o", out).want(t, Done, "")
	for _, want := range []string{"saw-list.csv", "drawings/brackets/generator-tab-parts.svg", "scad/stay-end.scad"} {
		if files := filesUnder(t, out); !slices.Contains(files, want) {
			t.Errorf("no %s among %v", want, files)
		}
	}
	lugwright(t, "check", edited(t, "forgefittings.yaml", "plate_thickness: 16 mm", "plate_thickness: 6 mm")).want(t, Failed, "hammer-arch fails: ")
}

// The small plates pass; a pin that pushes its keeper five times as hard bends it.
func TestForgePlates(t *testing.T) {
	const plates = "../../testdata/jobs/forgeplates.yaml"
	lugwright(t, "check", plates).want(t, Done, "")
	src, err := os.ReadFile(plates)
	if err != nil {
		t.Fatal(err)
	}
	hard := filepath.Join(t.TempDir(), "hard.yaml")
	if err := os.WriteFile(hard, bytes.ReplaceAll(src, []byte("1700 N"), []byte("8500 N")), 0o644); err != nil {
		t.Fatal(err)
	}
	lugwright(t, "check", hard).want(t, Failed, "pin-keeper fails: bending")
}

// The tube passes; a thinner one, with the same ends, does not.
func TestCrossTube(t *testing.T) {
	const tube = "../../testdata/jobs/crosstube.yaml"
	lugwright(t, "check", tube).want(t, Done, "")
	src, err := os.ReadFile(tube)
	if err != nil {
		t.Fatal(err)
	}
	thin := filepath.Join(t.TempDir(), "thin.yaml")
	if err := os.WriteFile(thin, []byte(strings.NewReplacer("88.9", "60.3", "tube_wall: 8", "tube_wall: 4").Replace(string(src))), 0o644); err != nil {
		t.Fatal(err)
	}
	lugwright(t, "check", thin).want(t, Failed, "front-tube fails: ")
}

// The deck's feet pass; of half the thickness they fail.
func TestDeckFeet(t *testing.T) {
	const feet = "../../testdata/jobs/deckfeet.yaml"
	lugwright(t, "check", feet).want(t, Done, "")
	src, err := os.ReadFile(feet)
	if err != nil {
		t.Fatal(err)
	}
	thin := filepath.Join(t.TempDir(), "thin.yaml")
	if err := os.WriteFile(thin, []byte(strings.ReplaceAll(string(src), "angle_thickness: 12 mm", "angle_thickness: 6 mm")), 0o644); err != nil {
		t.Fatal(err)
	}
	lugwright(t, "check", thin).want(t, Failed, "foot-left fails: ")
}

// The locker's outrigger passes whatever holds its plates' ends; of half the thickness they fail under its fore-aft load.
func TestSideLocker(t *testing.T) {
	const locker = "../../testdata/jobs/sidelocker.yaml"
	lugwright(t, "check", locker).want(t, Done, "")
	src, err := os.ReadFile(locker)
	if err != nil {
		t.Fatal(err)
	}
	thin := filepath.Join(t.TempDir(), "thin.yaml")
	if err := os.WriteFile(thin, []byte(strings.Replace(string(src), "plate_thickness: 12 mm", "plate_thickness: 6 mm", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	lugwright(t, "check", thin).want(t, Failed, "outrigger-left fails: ")
}

// The body's plate passes between tubes that hold it half; farther down and between tubes that may hold it fixed its welds fail.
func TestBodyFront(t *testing.T) {
	const body = "../../testdata/jobs/bodyfront.yaml"
	lugwright(t, "check", body).want(t, Done, "")
	src, err := os.ReadFile(body)
	if err != nil {
		t.Fatal(err)
	}
	deep := filepath.Join(t.TempDir(), "deep.yaml")
	if err := os.WriteFile(deep, []byte(strings.NewReplacer("pin_below: 65", "pin_below: 250", "hold_high: 0.5", "hold_high: 1").Replace(string(src))), 0o644); err != nil {
		t.Fatal(err)
	}
	lugwright(t, "check", deep).want(t, Failed, "front-body fails: strength of the fillet weld")
}

// The first line of the demo jobs names a schema; it is there and it is today's.
func TestDemoSchemaIsCurrent(t *testing.T) {
	want := lugwright(t, "schema").want(t, Done, "").out
	if *update {
		if err := os.WriteFile(schema, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if got, err := os.ReadFile(schema); err != nil || string(got) != want {
		t.Errorf("%s is not what `lugwright schema` prints (%v); run with -update", schema, err)
	}
}

// The same job's ears without gussets fail in weak-axis bending, one line says so, and nothing to cut is written.
func TestByFeelFails(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	r := lugwright(t, "pack", byFeel, "-o", out).want(t, Failed, "weak-axis bending")
	if n := strings.Count(r.err, "\n"); n != 1 || !strings.Contains(r.err, "ear-") {
		t.Errorf("want one line about an ear, got %d:\n%s", n, r.err)
	}
	for _, f := range filesUnder(t, out) {
		if ext := filepath.Ext(f); ext == ".dxf" || ext == ".scad" || ext == ".svg" || ext == ".3mf" || ext == ".csv" {
			t.Errorf("%s was written although the job fails", f)
		}
	}
}

// The two jobs differ by the brackets alone: the same masses on the same mounts.
func TestByFeelIsTheSameVehicle(t *testing.T) {
	vehicle := func(file string) string {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		_, rest, _ := strings.Cut(string(src), "\nvehicle:\n")
		masses, after, _ := strings.Cut(rest, "\n  mounts:\n")
		mounts, _, _ := strings.Cut(after, "\n\n")
		return masses + mounts
	}
	if one := vehicle(demo); len(one) < 1000 || one != vehicle(byFeel) {
		t.Error("the demo jobs carry different vehicles")
	}
}

func filesUnder(t *testing.T, dir string) []string {
	t.Helper()
	var out []string
	err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			rel, _ := filepath.Rel(dir, p)
			out = append(out, filepath.ToSlash(rel))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}
