package vehicle

// The demo scenarios, our own (testdata/scenarios.json, invented, solved there by two independent programs): a regression, not a published reference.
// Their printed numbers assume that the pair shares fore and aft equally and that all its side load is at the left mount.

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"

	"lugwright/part"
)

type scenario struct {
	Units       string
	Wheelbase   float64
	Gross       float64 `json:"gross_rating"`
	FrontRating float64 `json:"front_axle_rating"`
	RearRating  float64 `json:"rear_axle_rating"`
	Cab         struct {
		Mass  float64
		Front float64 `json:"front_axle"`
		CGZ   float64 `json:"cg_z"`
	} `json:"chassis_cab"`
	RearTrack       float64 `json:"rear_track"`
	Items, Variable []struct {
		Name          string
		Mass, X, Y, Z float64
	}
	Mounts struct {
		Single struct{ X, Z float64 }
		Pair   struct{ X, Y, Z float64 }
	}
	Results map[string]struct {
		BodyMass  float64 `json:"body_mass"`
		CG        [3]float64
		Front     float64 `json:"front_axle"`
		Rear      float64 `json:"rear_axle"`
		CGZ       float64 `json:"vehicle_cg_z"`
		SSF       float64 `json:"static_stability_factor"`
		Reactions map[string]struct{ VF, VL, VR, TF, TP, XP float64 }
	}
	mm, kg, n float64 // of its units
}

func scenarios(t testing.TB) map[string]*scenario {
	t.Helper()
	src, err := os.ReadFile("testdata/scenarios.json")
	if err != nil {
		t.Fatal(err)
	}
	var all struct{ Scenarios map[string]*scenario }
	if err := json.Unmarshal(src, &all); err != nil {
		t.Fatal(err)
	}
	for _, s := range all.Scenarios {
		s.mm, s.kg, s.n = 1, 1, 1
		if s.Units == "in-lb" {
			s.mm, s.kg, s.n = 25.4, 0.45359237, 0.45359237*G
		}
	}
	return all.Scenarios
}

func (s *scenario) vehicle() *Vehicle {
	v := &Vehicle{
		WheelbaseMM: s.Wheelbase * s.mm, RearTrackMM: s.RearTrack * s.mm,
		Ratings: Ratings{s.Gross * s.kg, s.FrontRating * s.kg, s.RearRating * s.kg},
		Cab:     ChassisCab{FrontKG: s.Cab.Front * s.kg, RearKG: (s.Cab.Mass - s.Cab.Front) * s.kg, CGZMM: s.Cab.CGZ * s.mm},
	}
	add := func(name string, mass, x, y, z float64, optional bool) {
		v.Items = append(v.Items, Item{Name: name, MassKG: mass * s.kg, At: part.Vec{X: x, Y: y, Z: z}.Scale(s.mm), Optional: optional})
	}
	for _, m := range s.Items {
		add(m.Name, m.Mass, m.X, m.Y, m.Z, false)
	}
	for _, m := range s.Variable {
		add(m.Name, m.Mass, m.X, m.Y, m.Z, true)
	}
	return v
}

// body is the single and the pair, as in the job.
func (s *scenario) body() *Body {
	m := s.Mounts
	return &Body{Mounts: append([]Mount{SinglePivot("single", part.Vec{X: m.Single.X, Z: m.Single.Z}.Scale(s.mm))},
		ClevisPair("left", "right", part.Vec{X: m.Pair.X, Z: m.Pair.Z}.Scale(s.mm), m.Pair.Y*s.mm)...)}
}

// printed has the shares that the printed numbers assume.
func (s *scenario) printed() *Body {
	b := s.body()
	pair := []string{"left", "right"}
	b.Shares = []Share{{"x", pair, []float64{0.5, 0.5}}, {"y", pair, []float64{1, 0}}}
	return b
}

func offRoadCases(t testing.TB) []Case {
	t.Helper()
	set, err := ShippedSet(OffRoad)
	if err != nil {
		t.Fatal(err)
	}
	cases, err := Cases(set)
	if err != nil {
		t.Fatal(err)
	}
	return cases
}

// digits fails unless got prints as want does.
func digits(t *testing.T, what string, got, want, unit float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 0.5000001*unit) {
		t.Errorf("%s: got %.6g, printed %.6g", what, got, want)
	}
}

func TestScenarioWeights(t *testing.T) {
	for name, s := range scenarios(t) {
		v := s.vehicle()
		all, err := RollUp(v, []State{v.Empty(), v.Full()})
		if err != nil {
			t.Fatal(err)
		}
		for i, state := range []string{"empty", "full"} {
			w, want, at := all[i], s.Results[state], name+" "+state+" "
			body := w.Bodies[0].Mass
			digits(t, at+"body", body.KG.Value/s.kg, want.BodyMass, 1e-6)
			digits(t, at+"x", body.XMM.Value/s.mm, want.CG[0], 0.1)
			digits(t, at+"y", body.YMM.Value/s.mm, want.CG[1], 0.1)
			digits(t, at+"z", body.ZMM.Value/s.mm, want.CG[2], 0.1)
			digits(t, at+"front", w.Front.KG.Value/s.kg, want.Front, 0.1)
			digits(t, at+"rear", w.Rear.KG.Value/s.kg, want.Rear, 0.1)
			digits(t, at+"cg z", w.Vehicle.ZMM.Value/s.mm, want.CGZ, 0.1)
			digits(t, at+"stability", w.Stability.Factor.Value, want.SSF, 0.001)
		}
	}
}

func TestScenarioReactions(t *testing.T) {
	for name, s := range scenarios(t) {
		v := s.vehicle()
		r, err := Solve(v, s.printed(), []State{v.Empty(), v.Full()}, offRoadCases(t))
		if err != nil {
			t.Fatal(err)
		}
		if !r.Scheme.Determinate || len(r.Scheme.Free) > 0 {
			t.Errorf("%s: scheme %+v", name, r.Scheme)
		}
		seen := 0
		for _, c := range r.Cases {
			id, side, _ := strings.Cut(c.Case, " ")
			for printed, want := range s.Results[c.State].Reactions {
				if !strings.HasPrefix(printed, id+" ") || !strings.HasSuffix(printed, side) {
					continue
				}
				seen++
				f, l, r := c.Reactions[0].Force.Scale(1/s.n), c.Reactions[1].Force.Scale(1/s.n), c.Reactions[2].Force.Scale(1/s.n)
				at := name + " " + c.State + " " + c.Case + " "
				digits(t, at+"VF", f.Z, want.VF, 0.1)
				digits(t, at+"VL", l.Z, want.VL, 0.1)
				digits(t, at+"VR", r.Z, want.VR, 0.1)
				digits(t, at+"TF", f.Y, want.TF, 0.1)
				digits(t, at+"TP", l.Y, want.TP, 0.1)
				digits(t, at+"XP", l.X+r.X, want.XP, 0.1)
				if l.X != r.X || r.Y != 0 || f.X != 0 {
					t.Errorf("%s: shares %v %v %v", at, f, l, r)
				}
				if c.ResidualN > 1e-6 || c.ResidualNMM > 1e-3 {
					t.Errorf("%s: residual %g N, %g N mm", at, c.ResidualN, c.ResidualNMM)
				}
				if c.Reactions[2].HoldsDown != (want.VR < 0) {
					t.Errorf("%s: holds down %v", at, c.Reactions[2].HoldsDown)
				}
			}
		}
		if seen != 24 {
			t.Errorf("%s: %d of 24 printed cases found", name, seen)
		}
	}
}

// The hive carrier's front axle fails when full, and moving the tote 16 in rearward brings it to the limit.
func TestToteMovedRearward(t *testing.T) {
	s := scenarios(t)["S2"]
	v := s.vehicle()
	w, err := RollUp(v, []State{v.Full()})
	if err != nil || w[0].Front.Standing != Over || !strings.Contains(strings.Join(w[0].Notes, "\n"), "front axle: 2783 kg is over its rating of 2722 kg") {
		t.Fatalf("%v, %+v", err, w)
	}
	by := part.Vec{X: 16 * s.mm}
	moved, err := v.With(Move{"syrup tote, empty", by}, Move{"syrup 120 gal at 11 lb", by})
	if err != nil {
		t.Fatal(err)
	}
	w, err = RollUp(moved, []State{moved.Full()})
	if err != nil {
		t.Fatal(err)
	}
	digits(t, "front axle, lb", w[0].Front.KG.Value/s.kg, 5998.9, 0.1) // 6135.6 - 16/165 * 1410
	if v.Items[4].At != s.vehicle().Items[4].At {
		t.Error("the question moved the vehicle itself")
	}
}

// S4, tray A: 210 kg on four rods at 600 x 540: at 3 g an even share of 3 x 210 x 9.80665 / 4 = 1544.5 N; two diagonal rods carrying all, 3089.1 N.
func TestTrayOnFourRods(t *testing.T) {
	v := &Vehicle{WheelbaseMM: 3800, Cab: ChassisCab{FrontKG: 1500, RearKG: 900},
		Tanks: []Tank{{Name: "tank A", CapacityL: 180, Fluid: Fluid{"water", 1}, EmptyKG: 14, At: part.Vec{Z: 300}, RidesOn: "tray A"}},
		Items: []Item{{Name: "tray", MassKG: 16, At: part.Vec{Z: 100}, RidesOn: "tray A"}}}
	b := &Body{Name: "tray A"}
	for i, at := range [][2]float64{{-300, 270}, {-300, -270}, {300, 270}, {300, -270}} {
		b.Mounts = append(b.Mounts, Rigid([]string{"front left", "front right", "rear left", "rear right"}[i], part.Vec{X: at[0], Y: at[1]}))
	}
	down := Case{ID: "3 g", AccelG: part.Vec{Z: -3}, Level: part.Service}
	r, err := Solve(v, b, []State{v.Full()}, []Case{down})
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range r.Cases[0].Reactions {
		z := component(t, m, "z")
		digits(t, m.Mount, z.Value, 1544.5, 0.1)
		digits(t, m.Mount, z.High, 3089.1, 0.1)
		digits(t, m.Mount, z.Low, 0, 1)
	}
	most := 0.0
	for _, l := range r.Loads[0].Loads {
		most = max(most, -l.Force.Z)
	}
	digits(t, "worst diagonal among the design loads", most, 3089.1, 0.1)
}

func component(t *testing.T, r Reaction, direction string) Component {
	t.Helper()
	for _, c := range r.Components {
		if c.Direction == direction {
			return c
		}
	}
	t.Fatalf("%s has no %s", r.Mount, direction)
	return Component{}
}
