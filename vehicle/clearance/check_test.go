package clearance

import (
	"math"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/vehicle/finding"
)

func had(x float64) *float64 { return &x }

const deg = math.Pi / 180

// The field lab: 10 degrees at the rail's outer face, 425 from the middle, needs 75 mm and has 70; a box 1400 above the pivot moves 243 mm. At 400 mm
// it would be 71 mm.
func TestFieldLab(t *testing.T) {
	r, err := Check(Twist{AngleRad: 10 * deg, TrackMM: 1650}, []Point{
		{Name: "rail under subframe", Way: UpDown, ArmMM: 425, HadMM: had(70)},
		{Name: "box to cab", Way: Sideways, ArmMM: 1400, HadMM: had(300)},
		{Name: "at 400", Way: UpDown, ArmMM: -400},
		{Name: "pin of the single", Way: Free, ExtraMM: 160, HadMM: had(120)},
		{Name: "grease gun", Way: Free, ExtraMM: 90},
		{Name: "tyre to tray", Way: UpDown, ArmMM: 825, ExtraMM: 120, HadMM: had(270)},
	})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct {
		need float64
		v    finding.Verdict
	}{{75, finding.Fail}, {243, finding.Pass}, {71, finding.NotCovered}, {160, finding.Fail}, {90, finding.NotCovered}, {145 + 120, finding.Pass}} {
		if f := r.Findings[i]; math.Abs(f.Need-want.need) > 0.5 || f.Verdict != want.v || f.Unit != "mm" {
			t.Errorf("%s: %+v, want %g and %s", f.At, f, want.need, want.v)
		}
	}
	// 1650 tan 10 = 291 mm, less than the published tests.
	if words := strings.Join(r.Allowance.Words, " "); !strings.Contains(words, "291 mm") || !strings.Contains(words, "300 mm") {
		t.Errorf("%q", words)
	}
}

// 300 mm at one wheel over 1.65 m is 10.3 degrees an axle.
func TestWheelLift(t *testing.T) {
	one, err := Twist{WheelLiftMM: 300, TrackMM: 1650}.Allowance()
	if err != nil || math.Abs(one.AngleRad/deg-10.3) > 0.05 {
		t.Errorf("%+v, %v", one, err)
	}
	two, err := Twist{WheelLiftMM: 300, TrackMM: 1650, BothAxles: true}.Allowance()
	if err != nil || math.Abs(two.AngleRad-2*one.AngleRad) > 1e-12 {
		t.Errorf("%+v, %v", two, err)
	}
}

// A point of the frame that turns rigidly by the angle moves no further up than the gap asked for, nor sideways.
func TestNeedCoversARigidTurn(t *testing.T) {
	for a := 0.01; a < MaxTwistRad; a += 0.01 {
		up, side := Point{Way: UpDown, ArmMM: 425}, Point{Way: Sideways, ArmMM: 1400}
		if up.NeedMM(a) < 425*math.Sin(a) || side.NeedMM(a) < 1400*math.Sin(a)-1e-9 {
			t.Fatalf("at %g", a)
		}
	}
}

func TestRefused(t *testing.T) {
	good := Twist{AngleRad: 0.1}
	nan, inf := math.NaN(), math.Inf(1)
	for field, in := range map[string]struct {
		t Twist
		p Point
	}{
		"twist.angle_rad":     {Twist{AngleRad: 2}, Point{Name: "a", Way: Free, ExtraMM: 1}},
		"twist.track_mm":      {Twist{}, Point{Name: "a", Way: Free, ExtraMM: 1}},
		"twist.wheel_lift_mm": {Twist{WheelLiftMM: inf, TrackMM: 1600}, Point{Name: "a", Way: Free, ExtraMM: 1}},
		"points[0].name":      {good, Point{Way: Free, ExtraMM: 1}},
		"points[0].way":       {good, Point{Name: "a", Way: "round"}},
		"points[0].arm_mm":    {good, Point{Name: "a", Way: UpDown, ArmMM: nan}},
		"points[0].extra_mm":  {good, Point{Name: "a", Way: Free, ExtraMM: -1}},
		"points[0].had_mm":    {good, Point{Name: "a", Way: Free, ExtraMM: 1, HadMM: &nan}},
	} {
		_, err := Check(in.t, []Point{in.p})
		found := false
		for _, f := range part.Fields(err) {
			found = found || f.Field == field
		}
		if !found {
			t.Errorf("want %s refused, got %v", field, err)
		}
	}
	if _, err := Check(Twist{AngleRad: math.NaN()}, nil); err == nil {
		t.Error("an angle that is no number was taken")
	}
	if _, err := Check(Twist{AngleRad: 0.1, WheelLiftMM: 300, TrackMM: 1650}, nil); len(part.Fields(err)) != 1 {
		t.Errorf("%v", err)
	}
}
