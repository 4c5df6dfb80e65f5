package run

import (
	"os"
	"strings"
	"testing"

	"lugwright/client/job"
	"lugwright/services/dial"
	"lugwright/vehicle/whole"
)

// fieldLab reckons the demo's vehicle, with some of its text replaced.
func fieldLab(t *testing.T, oldNew ...string) (*Vehicle, error) {
	t.Helper()
	src, err := os.ReadFile("../../testdata/jobs/fieldlab.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(oldNew); i += 2 {
		if !strings.Contains(string(src), oldNew[i]) {
			t.Fatalf("no %q", oldNew[i])
		}
	}
	c, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	known, err := Known(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	j, err := job.Read("lab.yaml", []byte(strings.NewReplacer(oldNew...).Replace(string(src))), known)
	if err != nil {
		t.Fatal(err)
	}
	return OfVehicle(t.Context(), c, j, VehicleOptions{})
}

func said(list []whole.Warning, words string) bool {
	for _, w := range list {
		if strings.Contains(w.At+": "+w.Words, words) {
			return true
		}
	}
	return false
}

// The holes of a bracket stand where its bolts are: the pin's place less the pin's height over the leg, and so on down the web.
func TestHolesOfBrackets(t *testing.T) {
	v, err := fieldLab(t)
	if err != nil {
		t.Fatal(err)
	}
	left := v.Request.Drilling.Rails[0]
	if len(v.Holes) != 2 || len(v.Open) != 0 || len(left.New) != 6 || len(left.Brackets) != 1 {
		t.Fatalf("holes %q, open %q, left rail %+v", v.Holes, v.Open, left)
	}
	// Six bolts about the pin's station, 100 mm apart in two rows; the upper row lies below the leg's face, which is 90 mm under the pin at 1010.
	sum := 0.0
	for _, h := range left.New {
		sum += h.XMM
		if h.Bracket != "pair-left" || h.BoltMM != 12 || h.ZMM >= 920 || h.ZMM <= 800 {
			t.Errorf("%+v", h)
		}
	}
	if mean := sum / 6; mean < 3650-1e-6 || mean > 3650+1e-6 {
		t.Errorf("the holes' middle is at %g, the pin at 3650", mean)
	}
	if j := v.Job; len(j.Brackets[0].Loads) == 0 || !j.Brackets[0].Loads[0].OfMount {
		t.Error("no loads of the mount")
	}
	if q := v.Job.Vehicle.Request.Drilling.Rails[0]; len(q.New) != 0 {
		t.Error("the job's own survey was changed")
	}
}

// What does not meet the rail is said, and what is not surveyed is left open.
func TestHolesThatDoNotFit(t *testing.T) {
	const right = `    right:
      from: 900 mm
      to: 4800 mm
      zones:
        rear cross member: {kind: cross member, from: 3600 mm, to: 3700 mm}
        fuel tank bracket: {kind: keep-out, from: 2000 mm, to: 2300 mm}
`
	v, err := fieldLab(t, right, "", "half_width: 468 mm, z: 1010 mm", "half_width: 490 mm, z: 1110 mm", "    mount: single\n", "    loads: [{case: own, force: {x: 0 N, y: 0 N, z: -1 kN}}]\n",
		"\nbrackets:", "\ncases: {own: {level: service, source: own}}\nbrackets:")
	if err != nil {
		t.Fatal(err)
	}
	if !said(v.Warnings, "bracket pair-left: it does not meet the web of the left rail: with its load point at the mount pair-left it stands 22 mm from the web's face") {
		t.Errorf("%+v", v.Warnings)
	}
	if !said(v.Warnings, "bracket pair-left: 3 of its 6 holes miss the left rail, which reaches from 760 to 960 mm") {
		t.Errorf("%+v", v.Warnings)
	}
	if open := strings.Join(v.Open, "\n"); !strings.Contains(open, "holes of pair-right in the frame: the right rail is not surveyed") {
		t.Errorf("open: %s", open)
	}
	if len(v.Fails()) == 0 || v.Warnings[0].Severity != whole.Fails {
		t.Errorf("%+v", v.Warnings)
	}
}

// A body that slides fails, and its brackets have no loads to be designed for.
func TestUnheld(t *testing.T) {
	v, err := fieldLab(t, "kind: clevis pair, x: 3650 mm", "kind: clevis pair, holds: {x: free}, x: 3650 mm")
	if err != nil {
		t.Fatal(err)
	}
	if v.Unheld == nil || !strings.Contains(v.Unheld.Error(), "brackets[pair-left].mount: no load for A4, empty: ") || len(v.Fails()) == 0 {
		t.Errorf("%v", v.Unheld)
	}
}

func TestExtremes(t *testing.T) {
	v, err := fieldLab(t)
	if err != nil {
		t.Fatal(err)
	}
	// Of the left mount: 3 g down empty, 1 g side full up, and 2 g of 2400 kg forward.
	e := Extremes(v.Job.Brackets[0].Loads)
	for i, want := range map[int]float64{0: 21474.6, 1: 8088, 4: 2 * 2400 * 9.80665} {
		if got := e[i].N; got < want-1 || got > want+1 {
			t.Errorf("%d: %g, want %g", i, got, want)
		}
	}
}

// A job that has its mounts' loads already is not given them once more.
func TestLoadsOnce(t *testing.T) {
	first, err := fieldLab(t)
	if err != nil {
		t.Fatal(err)
	}
	c, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	again, err := OfVehicle(t.Context(), c, first.Job, VehicleOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if len(first.Job.Cases) == 0 || len(again.Job.Cases) != len(first.Job.Cases) {
		t.Errorf("%d cases, then %d", len(first.Job.Cases), len(again.Job.Cases))
	}
	for i := range first.Job.Brackets {
		if a, b := len(first.Job.Brackets[i].Loads), len(again.Job.Brackets[i].Loads); a == 0 || a != b {
			t.Errorf("%s has %d loads, then %d", first.Job.Brackets[i].Name, a, b)
		}
	}
}
