package papers_test

import (
	"slices"
	"strings"
	"testing"

	"lugwright/client/caution"
	"lugwright/client/paper"
	"lugwright/client/papers"
)

// The standing cautions of each paper, by number: where a bench or a truck needs them.
var cautions = map[string][]int{
	"buy-list": {7}, "receiving-card": {7, 13, 14}, "hole-schedule": {2, 13, 14}, "fit-sequence": {8, 9, 12, 14}, "filler-notes": {7, 8, 9, 10}, "weld-map": {8, 9, 10, 14},
	"paint-map": {10}, "lift-plan": {1, 6, 11}, "torque-card": {5, 7, 12}, "twist-test": {1, 2, 11, 12}, "inspection-log": {1, 4, 5, 6, 12}, "bend-card": {13, 14}, "drill-template": {2, 13, 14}, "plots": {2, 4, 5, 6},
}

func TestCautions(t *testing.T) {
	for _, name := range []string{"fieldlab.yaml", "watertrays.yaml"} {
		made, _ := papers.All(demo(t, name))
		for _, p := range made {
			end := len(p.Blocks)
			if i := slices.IndexFunc(p.Blocks, func(b paper.Block) bool { _, turned := b.(*paper.NewPage); return turned }); i >= 0 {
				end = i // before the tiles of a template
			}
			last, ok := p.Blocks[end-1].(*paper.List)
			var want []string
			for _, c := range caution.Of(cautions[p.Name]...) {
				want = append(want, c.Text)
			}
			if !ok || !slices.Equal(last.Items, want) || want == nil {
				t.Errorf("%s of %s ends with %v", p.Name, name, last)
			}
		}
	}
}

// The demo's off-road loads are the builder's choice: where a use that comes of them stands, it says so.
func TestChosenFactorsAreMarked(t *testing.T) {
	in := demo(t, "fieldlab.yaml")
	marked := false
	for _, c := range in.Result.Job.Cases {
		marked = marked || strings.Contains(c.Source, "builder's choice")
	}
	if got := said(of(t, in, "inspection-log")); !marked || !strings.Contains(got, "* the load of the case is builder's choice") {
		t.Errorf("cases are the builder's choice: %t\n%s", marked, got)
	}
}
