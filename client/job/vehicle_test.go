package job

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/strength"
	"lugwright/vehicle"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/whole"
)

func readVehicle(t *testing.T) *Job {
	t.Helper()
	j, err := Read("vehicle.yaml", read(t, "testdata/good/vehicle.yaml"), known)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// Every field of the section arrives where the request has it, and the request is one that the service answers.
func TestVehicle(t *testing.T) {
	j := readVehicle(t)
	q := &j.Vehicle.Request
	v := q.Vehicle
	if v.WheelbaseMM != 3800 || v.FrontTrackMM != 1700 || v.Ratings.GrossKG != 7500 || v.Cab.CGYMM != 5 || v.Cab.Doubt != (vehicle.Doubt{Confidence: vehicle.Weighed, PlusMinusKG: 20}) {
		t.Errorf("vehicle: %+v", v)
	}
	if m := v.Items[1]; m.Name != "crew" || !m.Optional || m.At != (part.Vec{X: 2600, Y: -100, Z: 1600}) || v.Items[2].RidesOn != vehicle.Chassis {
		t.Errorf("masses: %+v", v.Items)
	}
	// 8.34 lb/US gal is 0.99935 kg/L (231 in3, 0.45359237 kg).
	if w := v.Tanks[0]; w.CapacityL != 300 || math.Abs(w.Fluid.DensityKGPerL-0.99935) > 1e-5 || w.Box.WidthMM != 600 {
		t.Errorf("tank: %+v", w)
	}
	if s := q.States[1]; s.Name != "half" || s.Fills[0] != (vehicle.Fill{Tank: "water", Level: 0.5}) || s.Present[0] != "crew" {
		t.Errorf("states: %+v", q.States)
	}
	last := q.Cases[len(q.Cases)-1]
	if last.ID != "W2" || last.Level != part.Factored || last.Source != "own rule" || last.OnUltimate != 2 {
		t.Errorf("last case: %+v", last)
	}
	if right := q.Cases[len(q.Cases)-2]; right.ID != "W1 right" || right.AccelG.Y != -0.3 || right.Level != part.Service {
		t.Errorf("the other side of W1: %+v", right)
	}
	b := q.Bodies[0]
	if names := strings.Join(j.Vehicle.MountNames(), ", "); names != "single, pair-left, pair-right, strap" || b.Mounts[0].Y.GapMM != 1 || b.Mounts[1].X.StiffnessNPerMM != 5000 {
		t.Errorf("mounts %s: %+v", names, b.Mounts)
	}
	if s := b.Mounts[3]; s.Z != (vehicle.Restraint{Way: vehicle.MinusOnly, StiffnessNPerMM: 1000}) || !s.RZ.Held || s.X.Way != "" {
		t.Errorf("strap: %+v", s)
	}
	if b.Shares[0].Fractions[1] != 0.6 || b.Shares[1].Fractions != nil {
		t.Errorf("shares: %+v", b.Shares)
	}
	if len(q.Stands) != 2 || q.Stands[0] != (whole.Stand{Body: vehicle.MainBody, Mount: "single", Rail: frame.Both, Tube: "front tube"}) || q.Stands[1].Rail != frame.Left {
		t.Errorf("stands: %+v", q.Stands)
	}
	f := q.Frame
	if f.YieldMPa != 355 || *f.CabBackMM != 700 || f.Axles[1].HangersMM[1] != 4500 || f.Liners[0].Shape != frame.LinerChannel || f.Tubes[0].YMM != 419 || f.Own[0].CGMM != 1500 {
		t.Errorf("frame: %+v", f)
	}
	left, right := q.Drilling.Rails[0], q.Drilling.Rails[1]
	if left.Holes[0].ZMM != 900 || left.Zones[1].BottomMM != 780 || left.Zones[1].TopMM != 810 || left.Zones[0].TopMM != 0 || left.New[0].ZMM != 860 || left.New[0].BoltMM != 8 {
		t.Errorf("left rail: %+v", left)
	}
	if right.Side != drill.Right || right.New[0].Face != drill.BottomFlange || q.Drilling.SubframeFlangeMM != 60 {
		t.Errorf("right rail: %+v", right)
	}
	if q.Twist.TrackMM != 1650 || *q.Points[0].HadMM != 80 || q.Points[1].HadMM != nil || q.Lift.Jacks[1].RatedKG != 0 || *q.Trays[0].StopZMM != 900 || q.Trays[0].Carries[0] != "water" {
		t.Errorf("checks: %+v %+v %+v %+v", q.Twist, q.Points, q.Lift, q.Trays)
	}
	if q.Moves[0].By != (part.Vec{X: 300, Z: -20}) || q.Reading.State != "half" || q.PlasticTanks[0].UnsupportedMM2 != 3e5 {
		t.Errorf("moves %+v, reading %+v", q.Moves, q.Reading)
	}
	if _, err := whole.Reckon(q); err != nil {
		t.Errorf("refused: %v", j.LocateVehicle(err))
	}
}

// Kinds of mounts give their mounts under names of the entry.
func TestKindsOfMounts(t *testing.T) {
	src := "job: x\nvehicle:\n  wheelbase: 4 m\n  chassis_cab: {front: 1 t, rear: 1 t}\n  mounts:\n" +
		"    d: {kind: four-point diamond, x: 2 m, half_width: 400 mm, z: 1 m, front: {x: 1 m, z: 1 m}, rear: {x: 3 m, z: 1 m}}\n" +
		"    r: {kind: spring-loaded long rail, stations: [1 m, 2 m], half_width: 400 mm, z: 1 m, spring: 200 N/mm, body: tray}\n" +
		"    b: {kind: rigid, x: 1 m, z: 1 m, holds: {x: free}}\n"
	j, err := Read("x.yaml", []byte(src), known)
	if err != nil {
		t.Fatal(err)
	}
	if names := strings.Join(j.Vehicle.MountNames(), ", "); names != "d-front, d-rear, d-left, d-right, r-1-left, r-1-right, r-2-left, r-2-right, b" {
		t.Error(names)
	}
	if m, body := j.Vehicle.Mount("r-1-right"); body != 1 || m.At != (part.Vec{X: 1000, Y: -400, Z: 1000}) || m.Z.MinusNPerMM != 200 || m.X.Way == vehicle.Both || j.Vehicle.BodyOf("r-1-right") != "tray" {
		t.Errorf("%+v", m)
	}
	if m, _ := j.Vehicle.Mount("b"); m.X.Way != vehicle.Free || m.Y.Way != vehicle.Both {
		t.Errorf("%+v", m)
	}
	if q := j.Vehicle.Request; len(q.States) != 1 || q.States[0].Name != "empty" || len(q.Cases) == 0 || q.Cases[0].Set != vehicle.OffRoad {
		t.Errorf("states %+v, cases %+v", q.States, q.Cases)
	}
}

// Loads of a mount come before the bracket's own, with their sources, on the body's side turned round; the hash stays that of the file.
func TestWithLoads(t *testing.T) {
	j := readVehicle(t)
	load := func(name string, same ...string) vehicle.Load {
		c, state, _ := strings.Cut(name, ", ")
		state, share, _ := strings.Cut(state, ", ")
		return vehicle.Load{Name: name, Case: c, State: state, Share: share, Force: part.Vec{X: 1, Z: -2}, Same: same}
	}
	a := &whole.Answer{Report: vehicle.Report{Bodies: []vehicle.Result{{Loads: []vehicle.MountLoads{
		{Mount: "pair-left", Loads: []vehicle.Load{load("A1, empty"), load("A4, half, side all at pair-left", "A2, empty")}},
		{Mount: "pair-right", Loads: []vehicle.Load{load("A1, empty")}},
	}}}}}
	with, err := j.WithLoads(a)
	if err != nil {
		t.Fatal(err)
	}
	if with.Hash("1") != j.Hash("1") || len(j.Brackets[0].Loads) != 1 {
		t.Error("the job of the file was changed")
	}
	b := &with.Brackets[0]
	cases := with.LoadCases(b)
	if len(cases) != 3 || cases[1].Name != "A4, half, side all at pair-left" || cases[1].LoadPoint != "pin" || !strings.HasPrefix(cases[1].Source, "builder's choice") || cases[2].Name != "tow" {
		t.Errorf("%+v", cases)
	}
	if c := b.Spectrum[0]; c.From != "A1, empty" || c.To != "A4, half, side all at pair-left" || j.Brackets[0].Spectrum[0].To != "A2, empty" {
		t.Errorf("spectrum %+v", c)
	}
	if f := with.Brackets[1].Loads[0].Force; f != (part.Vec{X: -1, Z: 2}) {
		t.Errorf("body side: %+v", f)
	}
	if missing := with.NotLoaded(b); len(missing) == 0 || missing[0] != "A2" || missing[len(missing)-1] == "tow" {
		t.Errorf("not loaded: %q", missing)
	}
	spoilt := with.Locate(b, part.FieldErrors{{Field: "cases[0].force", Found: "no", Accept: "yes"}, {Field: "cases[1].force", Found: "no", Accept: "yes"}, {Field: "cases[2].force", Found: "no", Accept: "yes"}})
	if got := spoilt.Error(); !strings.Contains(got, "brackets[left].mount: no, and 1 more of its loads; yes") || !strings.Contains(got, "brackets[left].loads[0].force: no; yes") {
		t.Errorf("%s", got)
	}

	a.Report.Bodies[0].Loads[1].Missing = []string{"A1, empty: nothing holds it", "A2, empty: nothing holds it"}
	if _, err := j.WithLoads(a); err == nil || !strings.Contains(err.Error(), "brackets[body-lug].mount: no load for A1, empty: nothing holds it, and 1 more") {
		t.Errorf("%v", err)
	}
}

// A mount may bring as many loads as a check takes, and one more is refused by the mount's place.
func TestOverloaded(t *testing.T) {
	j := readVehicle(t)
	b := &j.Brackets[slices.IndexFunc(j.Brackets, func(b Bracket) bool { return b.Mount != "" })]
	b.Loads = make([]Load, strength.MaxCases)
	if err := j.Overloaded(); err != nil {
		t.Error(err)
	}
	b.Loads = append(b.Loads, Load{})
	if err := j.Overloaded(); err == nil || !strings.Contains(err.Error(), "brackets["+b.Name+"].mount: 5001 loads for the mount") {
		t.Error(err)
	}
}

// Refusals of the service find their way back.
func TestLocateVehicle(t *testing.T) {
	j := readVehicle(t)
	for field, want := range map[string]string{
		"vehicle.items[1].mass_kg":         "vehicle.masses.crew.mass",
		"vehicle.items[0].at_mm.z":         "vehicle.masses.box.z",
		"vehicle.tanks[0].capacity_l":      "vehicle.tanks.water.capacity",
		"vehicle.cab.cg_z_mm":              "vehicle.chassis_cab.height",
		"vehicle.ratings.gross_kg":         "vehicle.ratings.gross",
		"states[1].fills[0].level":         "vehicle.states.half",
		"bodies[0].mounts[2].at_mm.x":      "vehicle.mounts.pair.x",
		"bodies[0].shares[0].fractions":    "vehicle.shares[0].parts",
		"stands[0].tube":                   "vehicle.mounts.single.tube",
		"frame.rail.depth_mm":              "vehicle.frame.rail.depth",
		"frame.axles[1].hangers_mm":        "vehicle.frame.rear_hangers.ahead",
		"frame.liners[0].thickness_mm":     "vehicle.frame.liners.behind the cab.thickness",
		"frame.own[0].cg_mm":               "vehicle.frame.own_mass.chassis.centre",
		"drilling.rails[0].new[0].dia_mm":  "vehicle.new_holes.clip.diameter",
		"drilling.rails[0].holes[0].z_mm":  "vehicle.survey.left.holes.h1.below_top",
		"twist.wheel_lift_mm":              "vehicle.twist.wheel_lift",
		"points[1].extra_mm":               "vehicle.clearances.pin.extra",
		"lift.jacks[0].rated_kg":           "vehicle.lift.jacks.a.rated",
		"trays[0].rods[2].x_mm":            "vehicle.trays.under.rods.rr.x",
		"washers[0].side_mm":               "vehicle.washers.w.side",
		"plastic_tanks[0].unsupported_mm2": "vehicle.poly_tanks.water.unsupported",
		"moves[0].by_mm.x":                 "vehicle.what_if.water.x",
		"reading.front_kg":                 "vehicle.as_weighed.front",
		"sweep.x_mm":                       "vehicle",
	} {
		err := j.LocateVehicle(part.FieldErrors{{Field: field, Found: "found", Accept: "accept"}})
		bad, ok := err.(Errors)
		if !ok || bad[0].Field != want || bad[0].At.Line == 0 {
			t.Errorf("%s: %v, want %s", field, err, want)
		}
	}
}

// A number that the service refuses has the unit of its field, and no noise of conversion.
func TestRefusedNumbersHaveUnits(t *testing.T) {
	for _, c := range []struct{ field, text, want string }{
		{"frame.liners[0].depth_mm", "241.29999999999998", "241.3 mm"},
		{"frame.liners[0].to_mm", "more than from_mm, which is 5969", "more than from, which is 5969 mm"},
		{"drilling.rails[0].new[0].z_mm", "634.9999999999999 to 863.5999999999999", "635 mm to 863.6 mm"},
		{"frame.axles[1].hangers_mm", "5156.2 and 3810", "5156.2 mm and 3810 mm"},
		{"vehicle.items[0].plus_minus_kg", "0 to 210", "0 kg to 210 kg"},
		{"bodies[0].mounts[0].x.stiffness_n_per_mm", "0.01", "0.01"},
		{"frame.rail.depth_mm", "at x 90 mm, 3 entries", "at x 90 mm, 3 entries"},
	} {
		if got := withUnit(c.text, c.field); got != c.want {
			t.Errorf("%s: %q, want %q", c.field, got, c.want)
		}
	}
}
