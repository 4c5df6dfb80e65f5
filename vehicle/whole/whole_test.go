package whole_test

// The field lab is our own, invented, solved outside of this program (vehicle/testdata/scenarios.json): a regression, not a published reference.

import (
	"context"
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/vehicle"
	"lugwright/vehicle/finding"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/whole"
	"lugwright/vehicle/whole/wholetest"
)

func reckon(t *testing.T, q *whole.Request) *whole.Answer {
	t.Helper()
	a, err := whole.Reckon(q)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.6g, want %g", what, got, want)
	}
}

func TestFieldLab(t *testing.T) {
	q := wholetest.FieldLab()
	a := reckon(t, q)
	full := a.Report.Weights[1]
	near(t, "front axle", full.Front.KG.Value, 2531, 0.5)
	near(t, "rear axle", full.Rear.KG.Value, 2919, 0.5)
	near(t, "moved: 95 kg 500 mm forward is 12.5 kg from rear to front", a.Moved.Weights[1].Front.KG.Value-full.Front.KG.Value, 12.5, 1e-9)
	if a.Moved.Bodies[0].Loads != nil || len(a.Moved.Bodies[0].Cases) != len(a.Report.Bodies[0].Cases) {
		t.Error("what if has reactions and no loads")
	}
	near(t, "as weighed", a.AsWeighed.Total.DifferenceKG, 20, 1e-9)

	// Rail bending per rail: 34 MPa at 1 g, 103 at 3 g; the body spread 37 and 112; with the single at x 1800 50 and 149, at x 2250 62 and 186.
	for _, c := range a.Frame.Cases {
		if c.State != "full" {
			continue
		}
		switch c.Case {
		case "A1":
			near(t, "rail at 1 g", c.Mean.Worst.StressMPa, 34, 0.5)
			near(t, "spread at 1 g", c.Spread.Worst.StressMPa, 37, 0.5)
			near(t, "cross tube of the single, 8.33 kN", c.Tubes[0].LeftN.Z, -8329.5/2, 0.5)
		case "A2":
			near(t, "rail at 3 g", c.Mean.Worst.StressMPa, 103, 0.5)
			near(t, "spread at 3 g", c.Spread.Worst.StressMPa, 112, 0.5)
		}
	}
	for i, want := range []float64{103, 149, 186} {
		r := a.Sweep[i]
		near(t, "swept rail", r.Governing[2].StressMPa, want, 0.5)
		near(t, "swept single at 3 g: 24990 x (3650 - 2801) / (3650 - x)", r.Mounts[0].DownN, 2400*9.80665*3*(3650-full.Bodies[0].Mass.XMM.Value)/(3650-r.XMM), 1)
	}
	if g := a.Frame.Governing; a.Sweep[0].Governing[2] != g[2] {
		t.Errorf("the sweep's first place is the vehicle's own: %+v, was %+v", a.Sweep[0].Governing[2], g[2])
	}
	for i, want := range []float64{539, 482, 464, 415} {
		near(t, "even share of a jack", a.Lift.Shares[i].EvenKG, want, 0.5)
		if plan := a.Lift.Shares[i].PlanKG; plan < 950 || plan > 1100 {
			t.Errorf("plan a jack for half the body or little more, not for %g kg", plan)
		}
	}
	gap := a.Clearance.Findings[0]
	near(t, "gap needed", gap.Need, 75, 0.5)
	if gap.Verdict != finding.Fail {
		t.Errorf("%+v", gap)
	}
	// Flange of the subframe 50 over 70 is 0.714.
	if len(a.Subframe) != 2 || a.Subframe[0].Verdict != finding.Pass || math.Abs(a.Subframe[0].Need-49) > 1e-9 {
		t.Errorf("%+v", a.Subframe)
	}
	// The tray weighs 16 + 25 kg dry, 300 more when full; two diagonal rods carry 341 x 3 g.
	tray := a.Trays[0]
	near(t, "tray dry", tray.States[0].KG, 41, 1e-9)
	near(t, "tray full", tray.States[1].KG, 341, 1e-9)
	near(t, "its centre: (16 x 1080 + 325 x 1250) / 341", tray.States[1].At.Z, (16*1080+325*1250)/341.0, 1e-9)
	for _, c := range tray.Cases {
		if c.Case == "A2" && c.State == "full" {
			near(t, "two diagonal rods", c.DiagonalN*2, 341*9.80665*3, 1e-6)
		}
	}
}

func TestStationsOfTheGoverningCasesAlone(t *testing.T) {
	q := wholetest.FieldLab()
	a := reckon(t, q)
	with := 0
	for _, c := range a.Frame.Cases {
		governs := slices.ContainsFunc(a.Frame.Governing, func(g frame.Governing) bool { return g.State == c.State && g.Case == c.Case })
		for _, d := range []*frame.Diagram{&c.Left, &c.Right, &c.Mean, c.Spread} {
			if d != nil && (len(d.Stations) > 0) != governs {
				t.Errorf("%s, %s: %d stations", c.Case, c.State, len(d.Stations))
			}
		}
		if governs {
			with++
		}
	}
	if len(a.Frame.Cases) != 24 || with+a.Frame.WithoutStations != 24 || with == 0 {
		t.Errorf("%d cases, %d with and %d without stations", len(a.Frame.Cases), with, a.Frame.WithoutStations)
	}
	q.AllStations = true
	more := reckon(t, q)
	if more.Frame.WithoutStations != 0 || len(more.Frame.Cases[3].Left.Stations) == 0 {
		t.Error("all stations were asked for")
	}
}

// Everything planted is in the warnings, worst first.
func TestWarnings(t *testing.T) {
	q := wholetest.FieldLab()
	q.Vehicle.Ratings = vehicle.Ratings{FrontKG: 2500, RearKG: 2950}
	q.Reading.FrontKG = 3000
	q.Frame.CrossMembers = []frame.CrossMember{{Name: "rear", XMM: 3500}}
	q.Frame.CabBackMM = nil
	a := reckon(t, q)
	last := 0
	for _, w := range a.Warnings {
		at := slices.Index(whole.Severities(), w.Severity)
		if at < last || w.Kind == "" || w.Words == "" {
			t.Errorf("out of order or empty: %+v", w)
		}
		last = at
	}
	for _, want := range []whole.Warning{
		{whole.Fails, "front axle over rating", "state full", "2531 kg is over its rating of 2500 kg, by 31 kg"},
		{whole.Mind, "rear axle may be over rating", "state full", "within its rating of 2950 kg"},
		{whole.Unknown, "no rating", "", "gross weight"},
		{whole.Fails, "as weighed", "state full", "front axle: 3000 kg"},
		{whole.Mind, "uplift", "mount left of body", "8.09 kN at worst (A6 right, full), in 5 of 24"},
		{whole.Fails, "gap", "rail under subframe", "needs 75 mm, had 70"},
		{whole.Unknown, "gap", "grease gun at the single", "needs 90 mm"},
		{whole.Fails, "lift", "jack front right", "950 kg: over its rating of 900 kg"},
		{whole.Fails, "drilling", "left rail, bracket clevis", "corner"},
		{whole.Fails, "washer", "spreader", "crush sleeve"},
		{whole.Mind, "over a spread body", "frame", "times as much"},
		{whole.Mind, "rod pushed", "tray clean water tray", "1.67 kN"},
	} {
		if !slices.ContainsFunc(a.Warnings, func(w whole.Warning) bool {
			return w.Severity == want.Severity && w.Kind == want.Kind && w.At == want.At && strings.Contains(w.Words, want.Words)
		}) {
			t.Errorf("no warning like %+v among %+v", want, a.Warnings)
		}
	}
	for _, w := range a.Warnings {
		if w.Kind == "twist" {
			t.Errorf("a cross member is near: %+v", w)
		}
	}
	if !slices.ContainsFunc(a.Unchecked, func(s string) bool { return strings.Contains(s, "behind the cab") }) {
		t.Errorf("%q", a.Unchecked)
	}
}

// Four alike posts that hold both ways, one more than statics needs: the first line tells the most that a mount's bracket is designed for, not what
// stiffness gives alone. By hand, posts a, b at x 0 and c, d at 1000, a and c left at y 500, b and d right; W at (500, 400). Left holds 0.9 W, either row
// half: b = t, a = 0.5 W - t, c = 0.4 W + t, d = 0.1 W - t. By stiffness t is W/20. With c slack (t = -0.4 W) a has 0.9 W and d 0.5 W, with a slack
// (t = 0.5 W) c has 0.9 W and b 0.5 W; rebound turns all of it up. Standing, b and d are pressed by stiffness and may be pulled by 0.4 W.
func TestUpliftIsToldAtItsMost(t *testing.T) {
	var mounts []vehicle.Mount
	for _, p := range []struct {
		name string
		x, y float64
	}{{"a", 0, 500}, {"b", 0, -500}, {"c", 1000, 500}, {"d", 1000, -500}} {
		mounts = append(mounts, vehicle.Rigid(p.name, part.Vec{X: p.x, Y: p.y}))
	}
	q := &whole.Request{
		Vehicle: &vehicle.Vehicle{WheelbaseMM: 3000, Cab: vehicle.ChassisCab{FrontKG: 1000, RearKG: 800}, Items: []vehicle.Item{{Name: "crane", MassKG: 400, At: part.Vec{X: 500, Y: 400}}}},
		Bodies:  []vehicle.Body{{Mounts: mounts}},
		States:  []vehicle.State{{Name: "ready"}},
		Cases:   []vehicle.Case{{ID: "still", AccelG: part.Vec{Z: -1}, Level: part.Service}, {ID: "rebound", AccelG: part.Vec{Z: 1}, Level: part.Service}},
	}
	a := reckon(t, q)
	const w = 400 * 9.80665
	for m, p := range whole.Pulls(&a.Report.Bodies[0], q.Cases) {
		stiff, most, may := 0.45*w, 0.9*w, 1
		if m%2 == 1 {
			stiff, most, may = 0.05*w, 0.5*w, 2
		}
		near(t, "by stiffness", p.StiffN, stiff, 0.1)
		near(t, "most", p.MostN, most, 0.1)
		if p.Times != 1 || p.MayTimes != may || p.MostCase != "rebound" || p.Case != "rebound" {
			t.Errorf("mount %d: %+v", m, p)
		}
	}
	if !slices.ContainsFunc(a.Warnings, func(x whole.Warning) bool {
		return x.Kind == "uplift" && x.At == "mount d of body" && strings.Contains(x.Words, "to 1.96 kN (rebound, ready)") && strings.Contains(x.Words, "0.20 kN by stiffness")
	}) {
		t.Errorf("%+v", a.Warnings)
	}
}

// A mount cannot sit on a tube that passes two diameters behind it.
func TestTubeAwayFromItsMount(t *testing.T) {
	q := wholetest.FieldLab()
	q.Frame.Tubes[0].XMM = 1250 + 2*88.9
	if _, err := whole.Reckon(q); err == nil || !strings.Contains(err.Error(), "stands[0].tube") {
		t.Errorf("%v", err)
	}
}

// A centre of gravity outside the mounts is a result, and so is a motion that nothing holds.
func TestOutsideTheMountsAndNotHeld(t *testing.T) {
	q := &whole.Request{
		Vehicle: &vehicle.Vehicle{WheelbaseMM: 3000, Cab: vehicle.ChassisCab{FrontKG: 1000, RearKG: 800}, Items: []vehicle.Item{{Name: "crane", MassKG: 500, At: part.Vec{X: 4000, Z: 1000}}}},
		Bodies:  []vehicle.Body{{Mounts: append([]vehicle.Mount{vehicle.SinglePivot("single", part.Vec{X: 1000})}, vehicle.ClevisPair("left", "right", part.Vec{X: 3000}, 400)...)}},
		States:  []vehicle.State{{Name: "ready"}},
		Cases:   []vehicle.Case{{ID: "still", AccelG: part.Vec{Z: -1}, Level: part.Service}, {ID: "brake", AccelG: part.Vec{X: -0.8, Z: -1}, Level: part.Service}},
		Frame:   wholetest.FieldLab().Frame,
	}
	has := func(a *whole.Answer, kind, words string) {
		t.Helper()
		if !slices.ContainsFunc(a.Warnings, func(w whole.Warning) bool {
			return w.Severity == whole.Fails && w.Kind == kind && strings.Contains(w.At+": "+w.Words, words)
		}) {
			t.Errorf("no %s with %q in %+v", kind, words, a.Warnings)
		}
	}
	a := reckon(t, q)
	has(a, "outside the mounts", "mount single of body: the body lifts off it under its own weight (still, ready)")
	if len(a.Frame.ByPlace) != 3 || len(a.Frame.Cases) != 2 {
		t.Errorf("%+v", a.Frame.ByPlace)
	}
	for i := range q.Bodies[0].Mounts {
		q.Bodies[0].Mounts[i].X = vehicle.Restraint{}
	}
	a = reckon(t, q)
	has(a, "not held", "body body")
	if !slices.Equal(a.Frame.NoForces, []string{"brake, ready"}) || len(a.Frame.Cases) != 1 {
		t.Errorf("%q, %d cases", a.Frame.NoForces, len(a.Frame.Cases))
	}
}

// Each part is asked on its own; the rest is listed as not checked.
func TestPartsAlone(t *testing.T) {
	full := wholetest.FieldLab()
	for name, q := range map[string]*whole.Request{
		"nothing":      {},
		"weights":      {Vehicle: full.Vehicle, States: full.States},
		"weights+lift": {Vehicle: full.Vehicle, States: full.States, Lift: full.Lift},
		"reactions":    {Vehicle: full.Vehicle, Bodies: full.Bodies, States: full.States, Cases: full.Cases},
		"sweep":        {Vehicle: full.Vehicle, Bodies: full.Bodies, States: full.States, Cases: full.Cases, Sweep: full.Sweep},
		"drilling":     {Drilling: &whole.Drilling{Rails: full.Drilling.Rails, Guides: []string{"a"}}},
		"subframe":     {Drilling: &whole.Drilling{SubframeFlangeMM: 50, RailFlangeMM: 70}},
		"twist":        {Twist: full.Twist, Points: full.Points},
		"tray":         {Cases: full.Cases, Trays: []whole.Tray{{Tray: full.Trays[0].Tray}}},
		"washers":      {Washers: full.Washers, PlasticTanks: full.PlasticTanks},
	} {
		a, err := whole.Reckon(q)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if len(a.Unchecked) < 2 {
			t.Errorf("%s: unchecked %q", name, a.Unchecked)
		}
		if name == "tray" && (len(a.Trays[0].Cases) != len(q.Cases) || a.Trays[0].Cases[0].State != "") {
			t.Errorf("%+v", a.Trays)
		}
	}
}

func TestRefused(t *testing.T) {
	for field, spoil := range map[string]func(q *whole.Request){
		"vehicle":                        func(q *whole.Request) { q.Vehicle = nil; q.Trays = nil },
		"vehicle.items[2].mass_kg":       func(q *whole.Request) { q.Vehicle.Items[2].MassKG = -1 },
		"vehicle.items[2].at_mm.y":       func(q *whole.Request) { q.Vehicle.Items[2].At.Y = math.NaN() },
		"vehicle.tanks[1].capacity_l":    func(q *whole.Request) { q.Vehicle.Tanks[1].CapacityL = 0 },
		"bodies":                         func(q *whole.Request) { q.Bodies, q.Stands, q.Sweep = nil, nil, nil },
		"bodies[0].mounts[1].x.way":      func(q *whole.Request) { q.Bodies[0].Mounts[1].X.Way = "up" },
		"bodies[0].shares[1].fractions":  func(q *whole.Request) { q.Bodies[0].Shares[1].Fractions = []float64{1, 1} },
		"states":                         func(q *whole.Request) { q.States, q.Reading = nil, nil },
		"states[1].fills[0].level":       func(q *whole.Request) { q.States[1].Fills[0].Level = 1.2 },
		"cases[3].accel_g.x":             func(q *whole.Request) { q.Cases[3].AccelG.X = math.Inf(1) },
		"moves[0].name":                  func(q *whole.Request) { q.Moves[0].Name = "generater" },
		"reading.state":                  func(q *whole.Request) { q.Reading.State = "fulll" },
		"reading.front_kg":               func(q *whole.Request) { q.Reading.FrontKG = -3 },
		"frame.rail.thickness_mm":        func(q *whole.Request) { q.Frame.Rail.ThicknessMM = 0 },
		"frame.axles":                    func(q *whole.Request) { q.Frame.Axles = nil },
		"frame.body.to_mm":               func(q *whole.Request) { q.Frame.BodyToMM = 0 },
		"stands[0].mount":                func(q *whole.Request) { q.Stands[0].Mount = "singel" },
		"stands[0].body":                 func(q *whole.Request) { q.Stands[0].Body = "boddy" },
		"stands[0].rail":                 func(q *whole.Request) { q.Stands[0].Rail = "middle"; q.Stands[0].Tube = "" },
		"stands[0].tube":                 func(q *whole.Request) { q.Stands[0].Tube = "tube" },
		"stands[1].mount":                func(q *whole.Request) { q.Stands = append(q.Stands, q.Stands[0]) },
		"stands[0]":                      func(q *whole.Request) { q.Frame, q.Drilling = nil, nil },
		"bodies[0].mounts[0].at_mm.y":    func(q *whole.Request) { q.Bodies[0].Mounts[0].At.Y = 500 },
		"sweep.mount":                    func(q *whole.Request) { q.Sweep.Mount = "lefft" },
		"sweep.x_mm":                     func(q *whole.Request) { q.Sweep.XMM = nil },
		"sweep.x_mm[1]":                  func(q *whole.Request) { q.Sweep.XMM[1] = math.NaN() },
		"drilling.rails[1].top_z_mm":     func(q *whole.Request) { q.Drilling.Rails[1].TopZMM = math.NaN() },
		"drilling.guides[0]":             func(q *whole.Request) { q.Drilling.Guides[0] = "z" },
		"drilling.guides":                func(q *whole.Request) { q.Drilling.Guides, q.Drilling.OwnGuides = nil, nil },
		"drilling.own_guides[0].edge_mm": func(q *whole.Request) { q.Drilling.OwnGuides[0].EdgeMM = -1 },
		"drilling.subframe_flange_mm":    func(q *whole.Request) { q.Drilling.SubframeFlangeMM = -1 },
		"drilling.rail_flange_mm":        func(q *whole.Request) { q.Drilling.RailFlangeMM = math.NaN() },
		"drilling.rails":                 func(q *whole.Request) { q.Drilling = &whole.Drilling{Guides: []string{"a"}} },
		"twist":                          func(q *whole.Request) { q.Twist = nil },
		"twist.angle_rad":                func(q *whole.Request) { q.Twist.AngleRad = 3 },
		"points[1].arm_mm":               func(q *whole.Request) { q.Points[1].ArmMM = 0 },
		"lift.body":                      func(q *whole.Request) { q.Lift.Body = "box" },
		"lift.jacks":                     func(q *whole.Request) { q.Lift.Jacks = q.Lift.Jacks[:2] },
		"trays[0].carries[0]":            func(q *whole.Request) { q.Trays[0].Carries[0] = "clean watter" },
		"trays[0].rods":                  func(q *whole.Request) { q.Trays[0].Rods = nil },
		"trays[0].mass_kg":               func(q *whole.Request) { q.Trays[0].MassKG, q.Trays[0].Carries = 0, nil },
		"trays[1].name":                  func(q *whole.Request) { q.Trays = append(q.Trays, q.Trays[0]) },
		"washers[0].rod_mm":              func(q *whole.Request) { q.Washers[0].RodMM = 0 },
		"plastic_tanks[0].height_mm":     func(q *whole.Request) { q.PlasticTanks[0].HeightMM = 0 },
	} {
		q := wholetest.FieldLab()
		spoil(q)
		_, err := whole.Reckon(q)
		if fields := part.Fields(err); len(fields) != 1 || fields[0].Field != field || fields[0].Accept == "" {
			t.Errorf("want %s refused alone, got %v", field, err)
		}
	}
}

// What is wrong in several parts is told at once.
func TestAllRefusalsTogether(t *testing.T) {
	q := wholetest.FieldLab()
	q.Vehicle.Items[0].MassKG = -1
	q.Frame.TopZMM = math.NaN()
	q.Points[0].Way = "round"
	q.Washers[0].RodMM = -1
	q.Lift.Jacks = nil
	_, err := whole.Reckon(q)
	var got []string
	for _, f := range part.Fields(err) {
		got = append(got, f.Field)
	}
	if want := []string{"vehicle.items[0].mass_kg", "frame.top_z_mm", "points[0].way", "washers[0].rod_mm"}; !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
}

func TestWorst(t *testing.T) {
	r := vehicle.Result{Cases: []vehicle.CaseResult{
		{State: "s", Case: "a", Reactions: []vehicle.Reaction{{Mount: "m", Force: part.Vec{X: 3, Y: -7, Z: 5}}}},
		{State: "s", Case: "gone"},
		{State: "s", Case: "b", Reactions: []vehicle.Reaction{{Mount: "m", Force: part.Vec{X: -4, Z: -2}}}},
	}}
	want := []whole.MountRange{{Mount: "m", DownN: 5, DownState: "s", DownCase: "a", UpN: 2, UpState: "s", UpCase: "b", SideN: 7, ForeAftN: 4}}
	if got := whole.Worst(&r); !reflect.DeepEqual(got, want) {
		t.Errorf("%+v", got)
	}
}

// No request makes it panic, and every refusal names a field. Each seed spoils one number or word of the field lab.
func FuzzReckon(f *testing.F) {
	for i := range uint16(40) {
		f.Add(i*37, float64(i)*1e3-2e4)
	}
	f.Add(uint16(5), math.NaN())
	f.Add(uint16(9), math.Inf(-1))
	f.Fuzz(func(t *testing.T, which uint16, x float64) {
		q := wholetest.FieldLab()
		q.States, q.Cases, q.Sweep.XMM = q.States[1:], q.Cases[:4], q.Sweep.XMM[:1]
		var numbers []reflect.Value
		gather(reflect.ValueOf(q), &numbers)
		numbers[int(which)%len(numbers)].SetFloat(x)
		a, err := whole.Reckon(q)
		if err != nil {
			if len(part.Fields(err)) == 0 {
				t.Fatalf("refused without a field: %v", err)
			}
			return
		}
		numbers = nil
		gather(reflect.ValueOf(a), &numbers)
		for _, n := range numbers {
			if math.IsNaN(n.Float()) || math.IsInf(n.Float(), 0) {
				t.Fatalf("number %d at %g makes an answer that is not finite", which, x)
			}
		}
	})
}

// gather lists every number in a value.
func gather(v reflect.Value, out *[]reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			gather(v.Elem(), out)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			gather(v.Field(i), out)
		}
	case reflect.Slice:
		for i := range v.Len() {
			gather(v.Index(i), out)
		}
	case reflect.Float64:
		*out = append(*out, v)
	}
}

// A request stops with its context, and says so rather than refuse a field.
func TestContext(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if a, err := whole.ReckonContext(ctx, wholetest.FieldLab()); a != nil || !errors.Is(err, context.Canceled) {
		t.Errorf("%v, %v", a, err)
	}
}

// Where the pair may share the side load in any way, each rail and each twist is as bad as in the worse of the two requests that state who takes all of it,
// and says who that is.
func TestFrameUnderEveryShare(t *testing.T) {
	with := func(shares ...vehicle.Share) *whole.Answer {
		q := wholetest.FieldLab()
		q.Bodies[0].Shares = append(q.Bodies[0].Shares[:1:1], shares...)
		q.Sweep, q.AllStations = nil, true
		return reckon(t, q)
	}
	both := []string{"left", "right"}
	open := with()
	stated := []*whole.Answer{with(vehicle.Share{Direction: "y", Mounts: both, Fractions: []float64{1, 0}}), with(vehicle.Share{Direction: "y", Mounts: both, Fractions: []float64{0, 1}})}
	named := 0
	for i := range open.Frame.Cases {
		c, a, b := &open.Frame.Cases[i], &stated[0].Frame.Cases[i], &stated[1].Frame.Cases[i]
		worst := func(of func(*frame.CaseResult) float64) float64 { return max(math.Abs(of(a)), math.Abs(of(b))) }
		for k, of := range []func(*frame.CaseResult) float64{
			func(r *frame.CaseResult) float64 { return r.Left.Worst.StressMPa },
			func(r *frame.CaseResult) float64 { return r.Right.Worst.StressMPa },
			func(r *frame.CaseResult) float64 { return r.Left.GreatestN },
			func(r *frame.CaseResult) float64 { return r.Twists[0].MomentNMM },
			func(r *frame.CaseResult) float64 { return r.Twists[1].MomentNMM },
		} {
			if got, want := math.Abs(of(c)), worst(of); math.Abs(got-want) > 1e-8*want {
				t.Errorf("%s, %s, %d: %g, the worse stated share has %g", c.State, c.Case, k, got, want)
			}
		}
		for k, tw := range c.Twists {
			if tw.Share == "" {
				continue
			}
			named++
			taker := 0
			if strings.HasSuffix(tw.Share, "right") {
				taker = 1
			}
			want := stated[taker].Frame.Cases[i].Twists[k].MomentNMM
			near(t, tw.Share, tw.MomentNMM, want, 1e-8*math.Abs(want))
		}
	}
	if named < 10 || slices.ContainsFunc(open.Frame.Unchecked, func(s string) bool { return strings.Contains(s, "shar") }) {
		t.Errorf("%d twists name who shares; %q", named, open.Frame.Unchecked)
	}
}
