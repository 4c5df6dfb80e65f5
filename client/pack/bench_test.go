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
	for folder, want := range map[string]int{"dxf/r2000": 60, "dxf/r12": 60, "svg": 60, "assembly": 15, "scad": 15, "3mf": 15} {
		if count[folder] != want {
			t.Errorf("%s: %d files, want %d", folder, count[folder], want)
		}
	}
}

// BenchmarkSixtyPlates writes the pack of 60 plates to disk, all its 230 files, and lets OpenSCAD export one of the plates, the ear, from the pack's own source in
// the same run: how many times longer the one plate takes there, than all files, and than the cut files of all plates, checked, in memory.
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
	pack := median(write)
	cuts := median(func() {
		a := &assembly{Input: in, forms: formsOf(&in.Job.Shop)}
		if err := cmp.Or(a.gather(context.Background()), a.addDXF(context.Background())); err != nil {
			b.Fatal(err)
		}
	})
	made, source := filepath.Join(root, "ear.stl"), filepath.Join(root, "0", "scad", "b0.scad")
	theirs := median(func() {
		out, err := exec.Command(openscad, "-o", made, "-D", `part="ear-1"`, source).CombinedOutput()
		if err != nil || strings.Contains(string(out), "WARNING") {
			b.Fatalf("%v\n%s", err, out)
		}
	})
	if info, err := os.Stat(made); err != nil || info.Size() == 0 {
		b.Fatal("OpenSCAD wrote nothing: ", err)
	}
	b.ReportMetric(theirs/pack, "openscad-one/pack-of-sixty")
	b.ReportMetric(theirs/cuts, "openscad-one/cut-files-of-sixty")
}

// median is the middle of five times in seconds.
func median(run func()) float64 {
	var seconds []float64
	for range 5 {
		began := time.Now()
		run()
		seconds = append(seconds, time.Since(began).Seconds())
	}
	slices.Sort(seconds)
	return seconds[2]
}
