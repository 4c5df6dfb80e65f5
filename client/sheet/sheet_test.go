package sheet

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lugwright/client/job"
	"lugwright/client/paper"
	"lugwright/client/paper/papertest"
	"lugwright/client/run"
	"lugwright/part"
	"lugwright/part/parttest"
	"lugwright/strength"
	"lugwright/units"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// made is a sheet of made-up checks that reach every form of line, case and verdict. The pin's shear is the one sum that
// means something: 0.60 x 570 x pi/4 25^2 = 167,879 N by hand.
func made(system units.System) Input {
	j := &job.Job{
		Title: "A *job* | with `marks` <b>", Revision: "B", Units: system, Basis: "AISC 360-22", Method: strength.LRFD, LoadFactor: 1.5,
		Cases: []job.Case{
			{Name: "side right", Level: part.Service, Source: "builder's choice", Words: "1 g | 1 g down"},
			{Name: "lift", Level: part.Factored, Source: "rule 4"},
		},
		Brackets: []job.Bracket{{
			Name: "pair-left", Kind: "test bracket", Hand: part.LeftHand, Quantity: 1,
			Loads: []job.Load{
				{Case: "side right", State: "full", Force: part.Vec{Y: -15210, Z: -23290}},
				{Case: "lift", Force: part.Vec{Z: 5000}, Moment: part.Vec{X: 1e6}},
			},
		}, {Name: "bare", Kind: "test bracket", Hand: part.RightHand, Quantity: 3}},
	}
	b := parttest.Bracket()
	b.Name = "pair-left"
	b.Notes = []string{"ream after welding"}
	b.Welds = []part.WeldGroup{{ID: "w1", Joins: [2]string{"ear-1", "base.a"}, Kind: part.Fillet, LegMM: 6, Electrode: "E70"}}
	bare := parttest.Bracket()
	bare.Name = "bare"
	return Input{
		Version: "test",
		Card:    strength.Card{Name: "AISC 360-22", Document: "AISC 360", Edition: "2022", FactorSource: "a source"},
		Result: &run.Result{Job: j, Brackets: []run.Bracket{
			{Spec: &j.Brackets[0], Part: b, Report: reportOf(checks()), Notes: []string{"42CrMo4 is outside the listed materials of AISC 360-22"}},
			{Spec: &j.Brackets[1], Part: bare, Report: reportOf(nil)},
		}},
	}
}

func reportOf(checks []strength.Check) *strength.Report {
	return &strength.Report{
		Basis: "AISC 360-22", Edition: "2022", Method: strength.LRFD, LoadFactor: 1.5, Checks: checks,
		NotChecked: []strength.NotChecked{{What: "fatigue", Place: "pair-left", Why: "no load spectrum is given"}},
	}
}

// checks are worst first, as in a report.
func checks() []strength.Check {
	return []strength.Check{
		{
			Title: "weak-axis bending", Clause: "made up", Place: "ear-2, at the root", Thing: "ear-2", Case: "side right, full",
			Sharing: "ear-2 takes all", Demand: 1.0004, Capacity: 1, DemandSymbol: "U", CapacitySymbol: "1", Utilisation: 1.0004, Verdict: strength.Fail,
			Lines: []strength.Line{
				{Kind: strength.GivenLine, Symbol: "M", Unit: "N*mm", Value: 1234567.891, Words: "moment"},
				{Kind: strength.FormulaLine, Symbol: "U", Formula: "M/(1234000*N*mm)", Value: 1234567.891 / 1234000},
			},
		},
		{
			Title: "no rule", Clause: "made up", Place: "support", Thing: "nowhere", Case: "lift", Demand: 5, Capacity: 0, Unit: "N",
			DemandSymbol: "P", CapacitySymbol: "P_c", Utilisation: math.Inf(1), Verdict: strength.Outside, Why: "the wall is too thin",
		},
		{
			Title: "shear of the pin", Clause: "AISC 360-2022 J4.2", Place: "pin", Thing: "pin", At: part.Vec{Z: 90}, Case: "lift",
			Demand: 60000, Capacity: 125909.2, DemandSymbol: "V", CapacitySymbol: "V_c", Unit: "N", Utilisation: 60000 / 125909.2,
			Verdict: strength.Pass, Notes: []string{"a note"}, Lines: pinLines(),
		},
		{Title: "weld", Clause: "made up", Place: "weld w1", Thing: "w1", Case: "lift", Demand: 1, Capacity: 4, Unit: "N/mm", DemandSymbol: "q", CapacitySymbol: "q_c", Utilisation: 0.25, Verdict: strength.Pass},
		{Title: "angle leg", Clause: "made up", Place: "base.b", Thing: "base.b", Case: "lift", Demand: 1, Capacity: 5, Unit: "N*mm", DemandSymbol: "M", CapacitySymbol: "M_c", Utilisation: 0.2, Verdict: strength.Pass},
		{Title: "bolt in tension", Clause: "made up", Place: "base-bolts", Thing: "base-bolts", Verdict: strength.NotApplied, Why: "nothing pulls"},
	}
}

func pinLines() []strength.Line {
	area := math.Pi * 25 * 25 / 4
	return []strength.Line{
		{Kind: strength.GivenLine, Symbol: "V", Unit: "N", Value: 60000, Words: "shear force"},
		{Kind: strength.GivenLine, Symbol: "d", Unit: "mm", Value: 25, Words: "pin diameter"},
		{Kind: strength.GivenLine, Symbol: "g", Unit: "in", Value: 0.25, Words: "gap, in the source's own unit"},
		{Kind: strength.GivenLine, Symbol: "F_u", Unit: "MPa", Value: 570, Words: "tensile strength"},
		{Kind: strength.NeedLine, Formula: "g <= 1/2*in", Value: 1, Words: "a small gap"},
		{Kind: strength.NeedLine, Formula: "d >= 30*mm", Value: 0, Words: "a stout pin"},
		{Kind: strength.FormulaLine, Symbol: "A_pin", Formula: "pi*pow(d, 2)/4", Unit: "mm^2", Value: area},
		{Kind: strength.FormulaLine, Symbol: "V_n", Formula: "0.60*F_u*A_pin", Unit: "N", Value: 0.6 * 570 * area},
		{Kind: strength.FormulaLine, Symbol: "phi", Formula: "0.75", Value: 0.75},
		{Kind: strength.FormulaLine, Symbol: "V_c", Formula: "phi*V_n", Unit: "N", Value: 0.75 * 0.6 * 570 * area},
	}
}

// text is the sheet as plain text.
func text(in Input) string { return papertest.Text(Paper(in)) }

func TestGolden(t *testing.T) {
	for name, system := range map[string]units.System{"metric.txt": units.Metric, "inch.txt": units.Inch} {
		got := text(made(system))
		path := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if string(want) != got {
			t.Errorf("%s differs; -update rewrites it", name)
		}
		if got != text(made(system)) {
			t.Errorf("%s: two sheets of one job differ", name)
		}
	}
}

func TestSays(t *testing.T) {
	metric, inch := text(made(units.Metric)), text(made(units.Inch))
	for _, words := range []string{
		// By hand: pi/4 25^2 = 490.874 mm2; 0.60 x 570 x 490.874 = 167,879 N; 0.75 of it 125,909 N.
		"A_pin = π·d^2/4 = π·25^2/4 = 490.874 mm^2\n",
		"V_n = 0.60·F_u·A_pin = 0.60·570·490.874 = 167879 N\n",
		"phi = 0.75\n",
		"V_c = phi·V_n = 0.75·167879 = 125909 N\n",
		"need   g ≤ (1/2)·in (0.25 in ≤ (1/2)·in): met; a small gap\n",
		"need   d ≥ 30 mm (25 ≥ 30 mm): NOT MET; a stout pin\n",
		"given  V = 60000 N",
		"FAIL: U = 1 of 1, utilisation 1.01\n", // 1.0004 must not read as a pass
		"pass: V = 60 kN of V_c = 125.9 kN, utilisation 0.48\n",
		"OUTSIDE THE RULE: P = 5 N of P_c = 0 N, utilisation -; the wall is too thin\n",
		"Case: side right, full (service, source: builder's choice; load factor 1.5, builder's choice, set in the job)\n",
		"Case: lift (factored, source: rule 4)\n",
		"| bolt in tension | base-bolts | nothing pulls |",
		"Verdict: FAIL\n",
		"A *job* | with `marks` <b>, revision B",
		"NOT CHECKED",
		"lugwright test, " + made(units.Metric).Result.Job.Hash("test"),
		"1. Screening arithmetic, not an approval.",
		"| fatigue | pair-left; bare: pair-left | no load spectrum is given |",
		"[Does not apply]",
	} {
		if !strings.Contains(metric, words) {
			t.Errorf("metric sheet lacks %q", words)
		}
	}
	// 60 kN = 60000 / 4448.2216152605 kip = 13.489 kip; lines of a calculation stay in N.
	for _, words := range []string{"pass: V = 13.49 kip of V_c = 28.31 kip, utilisation 0.48\n", "V_c = phi·V_n = 0.75·167879 = 125909 N\n"} {
		if !strings.Contains(inch, words) {
			t.Errorf("inch sheet lacks %q", words)
		}
	}
}

// Written out are the worst check of each thing and of each limit state that does not pass; all others stand in the table.
func TestInFull(t *testing.T) {
	list := []*strength.Check{
		{Limit: "a", Place: "1", Verdict: strength.Fail}, {Limit: "a", Place: "2", Verdict: strength.Fail}, {Limit: "b", Verdict: strength.Outside},
		{Limit: "c", Verdict: strength.Pass}, {Limit: "d", Verdict: strength.NotApplied},
	}
	if got := inFull(list); len(got) != 2 || got[0] != list[0] || got[1] != list[2] {
		t.Errorf("%v", got)
	}
	if got := inFull(list[3:]); len(got) != 1 || got[0] != list[3] {
		t.Errorf("%v", got)
	}
	if got := inFull(list[4:]); got != nil {
		t.Errorf("what does not apply is written out: %v", got)
	}
}

// A check of welds acting together stands under the first of them and is found under the one at which it governs, which refers to it.
func TestActingTogether(t *testing.T) {
	in := made(units.Metric)
	b := &in.Result.Brackets[0]
	first := b.Part.Welds[0]
	second := first
	second.ID = "w2"
	b.Part.Welds = append(b.Part.Welds, second)
	b.Report.Checks = append(b.Report.Checks, strength.Check{
		Title: "weld throat", Place: "weld w1 and 1 more acting with it, at w2", Thing: "w1", Demand: 3, Capacity: 4, Unit: "N/mm", Utilisation: 0.75, Verdict: strength.Pass,
	})
	var own, other int
	for _, blk := range Paper(in).Blocks {
		tab, ok := blk.(*paper.Table)
		if !ok || tab.Heads[0].Text != "mark" || tab.Heads[1].Text != "check" {
			continue
		}
		for _, r := range tab.Rows {
			switch line := strings.Join(r.Cells, "|"); {
			case strings.HasPrefix(line, "W1 w1|weld throat|weld w1 and 1 more acting with it, at w2|"):
				own++
			case strings.HasPrefix(line, "W2 w2|weld throat|weld w1 and 1 more acting with it, at w2: see W1 w1|") && strings.HasSuffix(line, "|-|-|0.75|pass"):
				other++
			default:
				if strings.Contains(line, "acting") {
					t.Error(line)
				}
			}
		}
	}
	if own != 1 || other != 1 {
		t.Errorf("%d rows of its own, %d that refer to it", own, other)
	}
}

// The order of the drawing: pins, plates by mark, members, welds, bolts; what the drawing does not name comes last.
func TestOrderOfTheDrawing(t *testing.T) {
	in := made(units.Metric)
	var got []string
	n := 0
	for _, g := range grouped(in.Result.Brackets[0].Part, checks()) {
		got = append(got, g.title)
		n += len(g.checks)
	}
	want := "Pin pin; Plate TB-L1: ear (ear-2); Member TB-L5: angle (base); Weld W1 w1: ear-1 to base.a; Bolts base-bolts: M12; Other"
	if strings.Join(got, "; ") != want {
		t.Errorf("order %s\nneed  %s", strings.Join(got, "; "), want)
	}
	if n != len(checks()) {
		t.Errorf("%d of %d checks are printed", n, len(checks()))
	}
	marks := byMark([]string{"P-L10", "P-L2", "P-L1"}, func(s string) string { return s })
	if strings.Join(marks, " ") != "P-L1 P-L2 P-L10" {
		t.Errorf("marks in order: %v", marks)
	}
}

func TestWhole(t *testing.T) {
	in := made(units.Metric)
	in.Warning = "NOT PASSED: do not use"
	in.Drawing = func(*run.Bracket) []*paper.Figure { return []*paper.Figure{{Drawing: papertest.Drawing()}} }
	p := Paper(in)
	if err := papertest.Whole(p); err != nil {
		t.Error(err)
	}
	if p.Warning != in.Warning || p.Letter {
		t.Errorf("warning %q, letter %t", p.Warning, p.Letter)
	}
	figures := 0
	for _, b := range p.Blocks {
		if _, ok := b.(*paper.Figure); ok {
			figures++
		}
	}
	if figures != 2 {
		t.Errorf("%d drawings of 2 brackets", figures)
	}
}

func TestLoadFactorNamesItsSource(t *testing.T) {
	for _, c := range []struct {
		job, used float64
		source    string
		want      string
	}{
		{1.5, 1.5, "a source", "1.5, builder's choice, set in the job"},
		{0, 1.6, "a source", "1.6, a source"},
		{0, 1.6, "", "1.6, no source stated"},
		{0, 1, "a source", "1: the method takes service loads as they are"},
	} {
		in := made(units.Metric)
		in.Result.Job.LoadFactor, in.Card.FactorSource = c.job, c.source
		in.Result.Brackets[0].Report.LoadFactor = c.used
		s := &sheet{Input: in, job: in.Result.Job}
		if got := s.loadFactor(); got != c.want {
			t.Errorf("%q; need %q", got, c.want)
		}
	}
}

func TestFigures(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 1: "1", 0.75: "0.75", 490.8738521234: "490.874", 1234567.891: "1234568", -0.000123456789: "-0.000123457",
		199948.0: "199948", 1e-20: "0", math.Inf(1): "not finite", math.NaN(): "not finite",
	} {
		if got := figures(v); got != want {
			t.Errorf("figures(%g) = %q; need %q", v, got, want)
		}
	}
}

// Settable factors, the basis of the pin holes, lists and a solver's values are printed, each with where it comes from.
func TestFactorsAreNamed(t *testing.T) {
	in := made(units.Metric)
	r := in.Result.Brackets[0].Report
	r.PinJoint = "ASME BTH-1"
	r.Factors = []strength.FactorValue{{Symbol: "gamma_M0", Words: "yield", Value: 1.05}, {Symbol: "gamma_M2", Words: "rupture", Value: 1.3}}
	r.Checks[0].Lines = []strength.Line{
		{Kind: strength.GivenLine, Symbol: "x", Unit: "mm", Values: []float64{0, 76.2}, Words: "bolts"},
		{Kind: strength.FormulaLine, Symbol: "C", Value: 3.456, Words: "from the instantaneous centre"},
	}
	in.Result.Job.FactorSet, in.Result.Job.Factors = "Norway", map[string]float64{"gamma_M2": 1.3}
	page := text(in)
	for _, want := range []string{
		"Pin holes by: ASME BTH-1\n",
		"Factor gamma_M0: 1.05, yield; set Norway\n",
		"Factor gamma_M2: 1.3, rupture; builder's choice, set in the job\n",
		"given  x = 0, 76.2 mm  bolts\n",
		"       C = 3.456  (from the instantaneous centre)\n",
	} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in\n%s", want, page)
		}
	}
}
