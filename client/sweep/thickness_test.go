package sweep

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// The plates of the rack and the present one are tried in order; steel is as heavy as it is thick, so that mass rises by the same for each mm; only what passes may be the
// lightest. A job that names no plates has no plot.
func TestThicknesses(t *testing.T) {
	src, err := os.ReadFile("../../testdata/jobs/crosstube.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d := deskOf(t, string(src))
	g, err := Thicknesses(t.Context(), d.client, d.Job)
	if err != nil || g == nil || len(g.Charts) != 1 {
		t.Fatalf("%v %v", g, err)
	}
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(strings.Fields(s)[0], 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	var plates []string
	lightest := 0
	first := g.Table.Rows[0].Cells
	for i, r := range g.Table.Rows {
		plates = append(plates, r.Cells[2])
		if i > 0 {
			perMM := (number(r.Cells[3]) - number(first[3])) / (number(r.Cells[2]) - number(first[2]))
			second := g.Table.Rows[1].Cells
			if want := (number(second[3]) - number(first[3])) / (number(second[2]) - number(first[2])); math.Abs(perMM-want) > 0.006 {
				t.Errorf("%v: %.4f kg a mm, want %.4f", r.Cells, perMM, want)
			}
		}
		if passes := number(r.Cells[4]) <= 1; passes != strings.HasPrefix(r.Cells[5], "pass") {
			t.Errorf("%v", r.Cells)
		}
		if strings.HasSuffix(r.Cells[5], "the lightest") {
			lightest++
		}
	}
	if strings.Join(plates, ", ") != "8 mm, 10 mm, 12 mm, 15 mm, 20 mm, 25 mm" || lightest != 1 {
		t.Errorf("%v, %d lightest", plates, lightest)
	}
	now := 0
	for _, u := range g.Charts[0].Uprights {
		if strings.Contains(u.Words, "as it is") {
			now++
		}
	}
	if len(g.Charts[0].Uprights) != 6 || now != 1 {
		t.Errorf("%+v", g.Charts[0].Uprights)
	}
	d.Job.Rack = nil
	if g, err := Thicknesses(t.Context(), d.client, d.Job); g != nil || err != nil {
		t.Errorf("%v %v", g, err)
	}
}
