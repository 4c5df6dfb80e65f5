package drawings

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/client/run/runtest"
)

// Nothing runs into the words of any drawing of the demo jobs, and the drawings say what the model has.
func TestDemoJobs(t *testing.T) {
	ctx := context.Background()
	c, known := runtest.Services(t)
	names, err := filepath.Glob("../../testdata/jobs/*.yaml")
	if err != nil || len(names) < 9 {
		t.Fatal(names, err)
	}
	brackets := 0
	for _, name := range names {
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		j, err := job.Read(name, src, known)
		if err != nil {
			t.Fatal(err)
		}
		if len(j.Brackets) == 0 {
			continue
		}
		r, err := run.Job(ctx, c, j, run.Options{})
		var refused job.Errors
		if errors.As(err, &refused) {
			t.Logf("%s: %v", name, err)
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		for i := range r.Brackets {
			b := &r.Brackets[i]
			brackets++
			o := Options{Units: j.Units}
			list := Of(b.Part, r.Job.LoadCases(b.Spec)).All(o)
			for _, p := range b.Part.AsMade().Plates {
				list = append(list, Plate(&p, PlateOptions{Options: o, Hand: b.Spec.Hand, Quantity: b.Spec.Quantity}))
				plateSays(t, &p, o)
			}
			viewsSay(t, b.Part, o)
			sound(t, filepath.Base(name)+" "+b.Spec.Name, list...)
		}
	}
	if brackets < 15 {
		t.Errorf("only %d brackets were drawn", brackets)
	}
}
