package papers_test

import (
	"testing"

	"lugwright/client/job"
	"lugwright/client/papers"
	"lugwright/client/run"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength"
	"lugwright/units"
)

// Every kind with its defaults, in either hand and system of units, has papers that are whole, though nothing of it was checked; each bolt has a length.
func TestEveryKind(t *testing.T) {
	c, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	kinds, err := c.Kinds(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	for _, hand := range []part.Hand{part.LeftHand, part.RightHand} {
		var order []geometry.Request
		for _, k := range kinds {
			order = append(order, geometry.Request{Kind: k.Name, Name: k.Name, Mark: k.Name, Hand: hand})
		}
		built, err := c.Build(t.Context(), order)
		if err != nil {
			t.Fatal(err)
		}
		for i := range built {
			if built[i].Err != nil {
				t.Fatal(built[i].Err)
			}
			for _, system := range []units.System{units.Metric, units.Inch} {
				j := &job.Job{Title: "every kind", Units: system, Brackets: []job.Bracket{{Name: kinds[i].Name, Kind: kinds[i].Name, Hand: hand, Quantity: 1}}}
				r := &run.Result{Job: j, Brackets: []run.Bracket{{Spec: &j.Brackets[0], Part: built[i].Bracket, Report: &strength.Report{}}}}
				made, _ := papers.All(papers.Input{Result: r, Version: "test"})
				for _, p := range made {
					plain(t, p)
				}
				for _, x := range papers.Shopping(r) {
					if (x.Item == "bolt" || x.Item == "screw" || x.Item == "retaining bolt") && x.Fit == nil {
						t.Errorf("%s: %s", kinds[i].Name, x.Notes)
					}
				}
			}
		}
	}
}
