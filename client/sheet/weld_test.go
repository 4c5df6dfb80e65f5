package sheet

import (
	"testing"

	"lugwright/client/job"
	"lugwright/part"
	"lugwright/strength"
)

// Each kind of weld is listed by what it is made to.
func TestWeldSizes(t *testing.T) {
	run := func(length float64) []part.WeldSegment {
		return []part.WeldSegment{{B: part.Vec{X: length}}, {B: part.Vec{Y: length}}}
	}
	s := &sheet{job: &job.Job{}}
	for want, w := range map[string]part.WeldGroup{
		"leg 6 mm":                         {Kind: part.Fillet, LegMM: 6, Segments: run(50)},
		"throat 5 mm":                      {Kind: part.PJP, LegMM: 5, Segments: run(50)},
		"through 12 mm":                    {Kind: part.CJP, LegMM: 12, Segments: run(50)},
		"2 of 20 mm diameter, filled 8 mm": {Kind: part.Plug, LegMM: 8, WidthMM: 20, Segments: run(20)},
		"2 of 20 mm x 60 mm, filled 8 mm":  {Kind: part.Plug, LegMM: 8, WidthMM: 20, Segments: run(60)},
	} {
		if got := s.weldSize(&w); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Where no rule speaks of a weld or a metal there is no demand of 0 on a capacity of 0 to print.
func TestNothingToCompare(t *testing.T) {
	s := &sheet{job: &job.Job{}}
	k := strength.Check{Verdict: strength.Outside, Why: "no rule for this metal", DemandSymbol: "q", CapacitySymbol: "q_c", Unit: "N/mm"}
	if got := s.result(&k); got != "OUTSIDE THE RULE: no rule for this metal" {
		t.Error(got)
	}
}
