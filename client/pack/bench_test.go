package pack

// How long a pack takes beside what an outside program needs for one of its plates.

import (
	"cmp"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"time"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/internal/peer"
	"lugwright/part"
	"lugwright/strength"
)

// sixty is a job of 15 brackets with four plates each, all 60 different pieces: no two have one thickness and one mark.
func sixty(t testing.TB) Input {
	in := tiny(t, strength.Pass)
	first := in.Result.Brackets[0]
	in.Job.Brackets, in.Result.Brackets = make([]job.Bracket, 15), make([]run.Bracket, 15)
	for i := range 15 {
		b, spec := *first.Part, *first.Spec
		b.Name = fmt.Sprintf("b%d", i)
		spec.Name, spec.Quantity = b.Name, 1
		b.Plates = slices.Clone(b.Plates)
		b.Plates = slices.Delete(slices.Delete(b.Plates, 3, 4), 1, 2) // one ear, one gusset
		b.Pins, b.Members = nil, nil
		b.Bolts = slices.Clone(b.Bolts)
		b.Bolts[0].Plies = [2]part.Ply{{Thing: "washer", ThicknessMM: 6 + float64(i)/10, Material: "S235"}, {Thing: "backing", ThicknessMM: 10 + float64(i)/10, Material: "S355"}}
		for k := range b.Plates {
			b.Plates[k].ThicknessMM += float64(i) / 10
			b.Plates[k].Mark = fmt.Sprintf("B%d-L%d", i, k+1)
		}
		in.Job.Brackets[i] = spec
		in.Result.Brackets[i] = run.Bracket{Spec: &in.Job.Brackets[i], Part: &b, Report: first.Report}
	}
	return in
}

func TestSixty(t *testing.T) {
	files := packed(t, sixty(t))
	count := map[string]int{}
	for name := range files {
		count[filepath.Dir(name)]++
	}
	for folder, want := range map[string]int{"dxf/r2000": 60, "dxf/r12": 60, "drawings/plates": 60, "svg": 60, "scad": 15, "3mf": 15} {
		if count[folder] != want {
			t.Errorf("%s: %d files, want %d", folder, count[folder], want)
		}
	}
}

// BenchmarkSixtyPlates writes the pack of 60 plates to disk, all its files, and lets OpenSCAD export one of the plates, the ear, in the same run: its solid as
// STL from the pack's own source, and its flat shape as SVG from the pack's own cut file. How many times longer the one plate takes there than all files take, and
// than the pack without its drawings and papers (cut files, plates at full size, solids, lists, manifest), and its solid than the cut files of all plates, made and
// checked in memory. All are timed in turns, so that other work on the machine meets them alike.
func BenchmarkSixtyPlates(b *testing.B) {
	openscad := peer.NeedCommand(b, "openscad")
	defer debug.SetGCPercent(debug.SetGCPercent(GCPercent)) // as the command has it
	in := sixty(b)
	root := b.TempDir()
	n := 0
	write := func() {
		if err := Write(context.Background(), filepath.Join(root, fmt.Sprint(n)), in); err != nil {
			b.Fatal(err)
		}
		n++
	}
	for b.Loop() {
		write()
	}
	shop := func() {
		a := begun(in)
		to, err := claim(filepath.Join(root, fmt.Sprint(n)))
		if err := cmp.Or(err, a.shopFiles(context.Background()), a.makeFiles()); err != nil {
			b.Fatal(err)
		}
		a.addManifest()
		if err := to.release(context.Background(), a.files, writeFile); err != nil {
			b.Fatal(err)
		}
		n++
	}
	cuts := func() {
		a := begun(in)
		if err := cmp.Or(a.gather(context.Background()), a.export(context.Background(), a.cutFormats()), a.addDXF(context.Background())); err != nil {
			b.Fatal(err)
		}
	}
	theirs := func(made string, args ...string) func() {
		made = filepath.Join(root, made)
		return func() {
			out, err := exec.Command(openscad, append(args, "-o", made)...).CombinedOutput()
			if err != nil || strings.Contains(string(out), "WARNING") {
				b.Fatalf("%v\n%s", err, out)
			}
			if info, err := os.Stat(made); err != nil || info.Size() == 0 {
				b.Fatal("OpenSCAD wrote nothing: ", err)
			}
		}
	}
	solid := theirs("ear.stl", "-D", `part="ear-1"`, filepath.Join(root, "0", "scad", "b0.scad"))
	flat := theirs("ear.svg", "-D", fmt.Sprintf("import(%q);", filepath.Join(root, "0", "dxf", "r12", "B0-L1_12mm_S355_x1_units-mm.dxf")), os.DevNull)
	m := medians(write, shop, cuts, solid, flat)
	b.ReportMetric(m[3]/m[0], "openscad-solid/pack-of-sixty")
	b.ReportMetric(m[4]/m[0], "openscad-flat/pack-of-sixty")
	b.ReportMetric(m[3]/m[1], "openscad-solid/shop-files-of-sixty")
	b.ReportMetric(m[4]/m[1], "openscad-flat/shop-files-of-sixty")
	b.ReportMetric(m[3]/m[2], "openscad-solid/cut-files-of-sixty")
}

// medians are the middle of nine times of each in seconds, taken in turns.
func medians(runs ...func()) []float64 {
	const n = 9
	out := make([]float64, len(runs))
	seconds := make([][]float64, len(runs))
	for range n {
		for i, run := range runs {
			began := time.Now()
			run()
			seconds[i] = append(seconds[i], time.Since(began).Seconds())
		}
	}
	for i, s := range seconds {
		slices.Sort(s)
		out[i] = s[n/2]
	}
	return out
}
