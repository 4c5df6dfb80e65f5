package run

import (
	"context"
	"errors"
	"strings"
	"testing"

	"lugwright/client/job"
	"lugwright/services/dial"
	"lugwright/strength"
)

const head = `job: x
basis: AISC 360-22
method: ASD
cases:
  A1: {level: service, source: own}
  A2: {level: service, source: own}
brackets:
`

func bracket(name, parameters, force string) string {
	return "  - {name: " + name + ", kind: clevis, hand: left, parameters: {" + parameters + "}, loads: [{case: A1, force: {x: 0 N, y: " + force + ", z: -1 kN}}]}\n"
}

func runJob(t *testing.T, src string) (*Result, error) {
	t.Helper()
	c, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	known, err := Known(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	j, err := job.Read("x.yaml", []byte(src), known)
	if err != nil {
		t.Fatal(err)
	}
	return Job(t.Context(), c, j, Options{})
}

func TestJob(t *testing.T) {
	r, err := runJob(t, head+bracket("good", "", "-1 kN")+bracket("bare", "gussets: none", "-15.21 kN"))
	if err != nil {
		t.Fatal(err)
	}
	if r.Passes() || r.Verdict() != strength.Fail {
		t.Errorf("passes %v, verdict %s", r.Passes(), r.Verdict())
	}
	worst := r.WorstFirst()
	if worst[0].Spec.Name != "bare" || worst[1].Spec.Name != "good" || r.Brackets[0].Spec.Name != "good" {
		t.Errorf("order: %s, %s", worst[0].Spec.Name, worst[1].Spec.Name)
	}
	if worst[0].Utilisation() <= 1 || worst[1].Utilisation() > 1 {
		t.Errorf("utilisations %g and %g", worst[0].Utilisation(), worst[1].Utilisation())
	}
	if notes := strings.Join(worst[1].Notes, "\n"); !strings.Contains(notes, "no load is given for the case A2") {
		t.Errorf("notes: %s", notes)
	}
}

// Refusals of all brackets come together, each with its place.
func TestRefusals(t *testing.T) {
	_, err := runJob(t, head+bracket("a", "pin_diameter: 110 mm", "0 N")+bracket("b", "", "0 N")+bracket("c", "pin_diameter: 111 mm", "0 N"))
	var fields job.Errors
	if !errors.As(err, &fields) {
		t.Fatalf("%T %v", err, err)
	}
	text := err.Error()
	if !strings.Contains(text, "x.yaml:8:") || !strings.Contains(text, "x.yaml:10:") || strings.Contains(text, "x.yaml:9:") {
		t.Errorf("%s", text)
	}
}

// Loads that no path carries are refused together, forces and moments apart, and the refusal says what is carried: a rod only pulls the washer down, a flange
// bears on a stiffener up or down, and a clevis's pin turns freely in its holes.
func TestNotCarried(t *testing.T) {
	load := func(name, kind, force, moment string) string {
		return "  - {name: " + name + ", kind: " + kind + ", hand: left, loads: [{case: A1, force: {" + force + "}}, {case: A2, force: {x: 0 N, y: 0 N, z: -1 kN}, moment: {" + moment + "}}]}\n"
	}
	_, err := runJob(t, head+load("w", "spreader-washer", "x: 0 N, y: 1 kN, z: 1 kN", "x: 0 Nm, y: 0 Nm, z: 0 Nm")+
		load("s", "stiffener", "x: 0 N, y: -1 kN, z: -1 kN", "x: 0 Nm, y: 0 Nm, z: 0 Nm")+
		load("c", "clevis", "x: 0 N, y: 0 N, z: -1 kN", "x: -1 Nm, y: 0 Nm, z: 0 Nm"))
	var fields job.Errors
	if !errors.As(err, &fields) {
		t.Fatalf("%T %v", err, err)
	}
	text := err.Error()
	for _, want := range []string{
		`brackets[w].loads[0].force: no load path for Fy+, Fz+ of case "A1"; this bracket carries Fz-`,
		`brackets[s].loads[0].force: no load path for Fy- of case "A1"; this bracket carries Fz+, Fz-`,
		`brackets[c].loads[1].moment: the joint lets Mx- of case "A2" go; this bracket carries Fx+, Fx-, Fy+, Fy-, Fz+, Fz-`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("want %s in\n%s", want, text)
		}
	}
	if len(fields) != 3 {
		t.Errorf("%d refusals:\n%s", len(fields), text)
	}
}

// A basis for pin holes is no basis for brackets: it is refused once, with the field where it belongs.
func TestPinHolesAlone(t *testing.T) {
	lifting := strings.Replace(strings.Replace(head, "AISC 360-22", "ASME BTH-1", 1), "ASD", "allowable", 1)
	foot := "  - {name: f, kind: foot, hand: left, loads: [{case: A1, force: {x: 0 N, y: 0 N, z: -1 kN}}]}\n"
	for _, brackets := range []string{bracket("a", "", "0 N") + bracket("b", "", "0 N"), foot} {
		_, err := runJob(t, lifting+brackets)
		if err == nil || err.Error() != "x.yaml:2:8: basis: ASME BTH-1 judges pin holes alone, and no section, weld or bolt; a basis for whole brackets, and pin_joint: ASME BTH-1 for their pin holes" {
			t.Errorf("%v", err)
		}
	}
	r, err := runJob(t, strings.Replace(head, "ASD\n", "ASD\npin_joint: ASME BTH-1\n", 1)+bracket("a", "", "0 N"))
	if err != nil || !r.Passes() {
		t.Errorf("%v", err)
	}
}

func TestVerdicts(t *testing.T) {
	of := func(verdicts ...strength.Verdict) *Result {
		r := &Result{}
		for _, v := range verdicts {
			report := &strength.Report{}
			if v != "" {
				report.Checks = []strength.Check{{Verdict: v, Utilisation: 0.5}}
			}
			r.Brackets = append(r.Brackets, Bracket{Report: report})
		}
		return r
	}
	for _, c := range []struct {
		r       *Result
		verdict strength.Verdict
		passes  bool
	}{
		{of(strength.Pass, strength.Pass), strength.Pass, true},
		{of(strength.Pass, strength.Outside), strength.Outside, false},
		{of(strength.Outside, strength.Fail, strength.Pass), strength.Fail, false},
		{of(strength.Pass, ""), strength.Outside, false}, // silence is no pass
		{of(strength.NotApplied), strength.Outside, false},
	} {
		if c.r.Verdict() != c.verdict || c.r.Passes() != c.passes {
			t.Errorf("%+v: %s, %v", c.r.Brackets, c.r.Verdict(), c.r.Passes())
		}
	}
}

func TestCancelled(t *testing.T) {
	c, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := Known(ctx, c); !errors.Is(err, context.Canceled) {
		t.Errorf("%v", err)
	}
}
