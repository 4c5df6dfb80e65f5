package vehicle

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"lugwright/part"
)

// job is the main demo with a tank, shares and a second body, so that every field is in it.
func job(t testing.TB) *Job {
	s := scenarios(t)["S1"]
	v := s.vehicle()
	v.FrontTrackMM = 1700
	v.Cab.CGYMM = 5
	v.Tanks = []Tank{{Name: "water", CapacityL: 200, Fluid: Fluid{"water", 1}, EmptyKG: 20, At: part.Vec{X: 3000, Z: 1300}, Box: Box{1000, 500, 450}, Doubt: Doubt{Confidence: Data}}}
	v.Items[0].Doubt = Doubt{Confidence: Weighed, PlusMinusKG: 3}
	v.Items[1].Doubt = Doubt{PlusMinusPercent: 10}
	v.Items = append(v.Items, item("pump", 60, 2000, 500, 700), item("crew", 150, 300, 0, 1200))
	v.Items[len(v.Items)-2].RidesOn = "tray"
	v.Items[len(v.Items)-1].RidesOn = Chassis
	b := s.body()
	b.Mounts[0].Z.StiffnessNPerMM, b.Mounts[0].Z.MinusNPerMM, b.Mounts[0].Y.GapMM = 5000, 800, 1
	b.Mounts[1].RX = Turn{true, 1e9}
	b.Shares = []Share{{"y", []string{"left", "right"}, []float64{0.5, 0.5}}, {"x", []string{"left", "right"}, nil}}
	tray := Body{Name: "tray"}
	for i, at := range [][2]float64{{1800, 400}, {1800, 600}, {2200, 400}, {2200, 600}} {
		tray.Mounts = append(tray.Mounts, Rigid(fmt.Sprint("rod ", i+1), part.Vec{X: at[0], Y: at[1], Z: 900}))
	}
	half := State{Name: "half", Fills: []Fill{{"water", 0.5}}, Present: []string{"clean water 300 L"}}
	return &Job{Vehicle: *v, Bodies: []Body{*b, tray}, States: []State{v.Empty(), v.Full(), half}, Cases: offRoadCases(t)}
}

func TestAnalyse(t *testing.T) {
	j := job(t)
	r, err := Analyse(j)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Weights) != 3 || len(r.Bodies) != 2 || len(r.Bodies[0].Cases) != 3*len(j.Cases) || len(r.Bodies[1].Loads) != 4 {
		t.Fatalf("%d %d", len(r.Weights), len(r.Bodies))
	}
	w := r.Weights[0]
	if len(w.Bodies) != 2 || w.Bodies[0].Name != MainBody || w.Bodies[1].Name != "tray" || w.Bodies[1].Mass.KG.Value != 60 {
		t.Errorf("%+v", w.Bodies)
	}
	// The crew loads the axles and no mount.
	near(t, "gross", w.Gross.KG.Value, 3050+1900+20+60+150, 1e-9)
	near(t, "body", r.Bodies[0].Cases[0].BodyKG, 1900+20, 1e-9)
	// The same again, byte for byte: results encode, and nothing depends on the order of a map.
	first, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	again, _ := Analyse(j)
	if second, _ := json.Marshal(again); string(first) != string(second) {
		t.Error("two runs differ")
	}
}

// numbersOf visits every number in a job, with its path.
func numbersOf(v reflect.Value, path string, visit func(path string, f reflect.Value)) {
	switch v.Kind() {
	case reflect.Float64:
		visit(path, v)
	case reflect.Struct:
		for i := range v.NumField() {
			numbersOf(v.Field(i), path+"."+v.Type().Field(i).Name, visit)
		}
	case reflect.Slice:
		for i := range v.Len() {
			numbersOf(v.Index(i), fmt.Sprintf("%s[%d]", path, i), visit)
		}
	case reflect.Pointer:
		numbersOf(v.Elem(), path, visit)
	}
}

// Each number of a job in turn is what no number of a job may be: refused by field, never a panic, never a result that is not finite.
func TestEveryNumberIsChecked(t *testing.T) {
	j := job(t)
	j.States, j.Cases = j.States[1:2], j.Cases[3:5]
	n := 0
	numbersOf(reflect.ValueOf(j), "job", func(path string, f reflect.Value) {
		was := f.Float()
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300} {
			f.SetFloat(bad)
			_, err := Analyse(j)
			if fields := part.Fields(err); len(fields) == 0 || fields[0].Field == "" || fields[0].Accept == "" {
				t.Errorf("%s = %g: %v", path, bad, err)
			}
			n++
		}
		for _, odd := range []float64{0, -1, 1e-9, 1e5} {
			f.SetFloat(odd)
			r, err := Analyse(j)
			if err != nil {
				if len(part.Fields(err)) == 0 {
					t.Errorf("%s = %g: %v", path, odd, err)
				}
				continue
			}
			if _, err := json.Marshal(r); err != nil { // NaN and Inf do not encode
				t.Errorf("%s = %g: %v", path, odd, err)
			}
		}
		f.SetFloat(was)
	})
	t.Logf("%d", n)
}

func TestRefusedByField(t *testing.T) {
	for _, c := range []struct {
		field, found string
		spoil        func(j *Job)
	}{
		{"bodies", "0 bodies", func(j *Job) { j.Bodies = nil }},
		{"bodies[1].mounts", "0 mounts", func(j *Job) { j.Bodies[1].Mounts = nil }},
		{"bodies[1].mounts", "no mount holds anything", func(j *Job) { j.Bodies[1].Mounts = []Mount{{Name: "a"}} }},
		{"bodies[0].mounts[2].name", "used twice", func(j *Job) { j.Bodies[0].Mounts[2].Name = "left" }},
		{"bodies[0].mounts[1].x.way", "sideways", func(j *Job) { j.Bodies[0].Mounts[1].X.Way = "sideways" }},
		{"bodies[0].shares[0].mounts[1]", "no mount", func(j *Job) { j.Bodies[0].Shares[0].Mounts = []string{"left", "nowhere"} }},
		{"bodies[0].shares[1].mounts[0]", "does not hold x", func(j *Job) { j.Bodies[0].Shares[1].Mounts = []string{"single", "left"} }},
		{"bodies[0].shares[0].fractions", "a sum of 1.5", func(j *Job) { j.Bodies[0].Shares[0].Fractions = []float64{1, 0.5} }},
		{"bodies[0].shares[0].direction", "up", func(j *Job) { j.Bodies[0].Shares[0].Direction = "up" }},
		{"bodies[1].name", "used twice", func(j *Job) { j.Bodies[1].Name = MainBody }},
		{"bodies[1].name", "chassis", func(j *Job) { j.Bodies[1].Name = Chassis }},
		{"vehicle.items[3].rides_on", "no body", func(j *Job) { j.Vehicle.Items[3].RidesOn = "trailer" }},
		{"vehicle.items[2].mass_kg", "0", func(j *Job) { j.Vehicle.Items[2].MassKG = 0 }},
		{"vehicle.items[2].name", "1 to 100", func(j *Job) { j.Vehicle.Items[2].Name = "" }},
		{"vehicle.items[2].confidence", "maybe", func(j *Job) { j.Vehicle.Items[2].Doubt.Confidence = "maybe" }},
		{"vehicle.items[0].plus_minus_kg", "one of the two", func(j *Job) { j.Vehicle.Items[0].Doubt.PlusMinusPercent = 5 }},
		{"vehicle.tanks[0].capacity_l", "a box that holds", func(j *Job) { j.Vehicle.Tanks[0].CapacityL = 300 }},
		{"states[2].fills[0].level", "1.2 of the capacity", func(j *Job) { j.States[2].Fills[0].Level = 1.2 }},
		{"states[2].fills[0].tank", "no tank", func(j *Job) { j.States[2].Fills[0].Tank = "beer" }},
		{"states[2].fills[1].tank", "filled twice", func(j *Job) { j.States[2].Fills = append(j.States[2].Fills, Fill{"water", 1}) }},
		{"states[2].present[0]", "always on board", func(j *Job) { j.States[2].Present = []string{"subframe"} }},
		{"states[2].name", "used twice", func(j *Job) { j.States[2].Name = "full" }},
		{"states", "0 states", func(j *Job) { j.States = nil }},
		{"states", "ways of sharing", func(j *Job) {
			for len(j.States) < MaxStates {
				j.States = append(j.States, State{Name: fmt.Sprint(len(j.States))})
			}
			for len(j.Cases) < maxCases {
				c := j.Cases[0]
				c.ID = fmt.Sprint("case ", len(j.Cases))
				j.Cases = append(j.Cases, c)
			}
		}},
		{"cases", "0 cases", func(j *Job) { j.Cases = nil }},
		{"cases[1].level", "", func(j *Job) { j.Cases[1].Level = "" }},
		{"cases[1].accel_g", "0 in every direction", func(j *Job) { j.Cases[1].AccelG = part.Vec{} }},
		{"cases[1].id", "used twice", func(j *Job) { j.Cases[1].ID = "A1" }},
		{"bodies[1].name", "nothing rides on", func(j *Job) { j.Vehicle.Items[len(j.Vehicle.Items)-2].RidesOn = "" }},
	} {
		j := job(t)
		c.spoil(j)
		_, err := Analyse(j)
		fields := part.Fields(err)
		ok := false
		for _, f := range fields {
			ok = ok || f.Field == c.field && (strings.Contains(f.Found, c.found) || strings.Contains(f.Accept, c.found))
		}
		if !ok {
			t.Errorf("%s %q: got %v", c.field, c.found, err)
		}
	}
	if _, err := Cases(LoadSet{ID: "x", Lines: []LoadLine{service("a", "a", 0, 0, -1)}}); len(part.Fields(err)) != 1 || part.Fields(err)[0].Field != "load_sets[0].lines[0].source" {
		t.Errorf("a set without a source: %v", err)
	}
	v := job(t).Vehicle
	if _, err := v.With(Move{"nothing", part.Vec{}}); len(part.Fields(err)) != 1 || !strings.Contains(err.Error(), "moves[0].name") {
		t.Error(err)
	}
	if _, err := v.With(Move{"subframe", part.Vec{X: math.NaN()}}); len(part.Fields(err)) != 1 {
		t.Error(err)
	}
	if _, err := v.With(Move{"water", part.Vec{X: 300}}); err != nil {
		t.Error(err)
	}
}

// A body that carries nothing in one state has no reactions there, and says so.
func TestEmptyBody(t *testing.T) {
	j := job(t)
	j.Vehicle.Items[len(j.Vehicle.Items)-2].Optional = true
	j.States[1] = j.Vehicle.Full()
	r, err := Analyse(j)
	if err != nil {
		t.Fatal(err)
	}
	c := r.Bodies[1].Cases[0]
	if !c.Held || len(c.Reactions) > 0 || len(c.Notes) != 1 || !strings.Contains(c.Notes[0], "nothing rides") {
		t.Errorf("%+v", c)
	}
	if full := r.Bodies[1].Cases[len(j.Cases)]; len(full.Reactions) != 4 {
		t.Errorf("%+v", full)
	}
}

// What comes in is never changed.
func TestInputStays(t *testing.T) {
	j := job(t)
	before, _ := json.Marshal(j)
	if _, err := Analyse(j); err != nil {
		t.Fatal(err)
	}
	if after, _ := json.Marshal(j); string(before) != string(after) {
		t.Error("the job has changed")
	}
}

func FuzzAnalyse(f *testing.F) {
	j := job(f)
	j.Bodies, j.States, j.Cases = j.Bodies[1:], j.States[2:], j.Cases[3:5]
	j.Vehicle.Items = j.Vehicle.Items[8:]
	j.States[0].Present = nil
	for i := range j.Vehicle.Items {
		j.Vehicle.Items[i].RidesOn, j.Vehicle.Items[i].Optional = "tray", false
	}
	j.Vehicle.Tanks[0].RidesOn = "tray"
	if _, err := Analyse(j); err != nil {
		f.Fatal(err)
	}
	seed, err := json.Marshal(j)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(seed)
	f.Fuzz(func(t *testing.T, src []byte) {
		var j Job
		if json.Unmarshal(src, &j) != nil || len(j.States)*len(j.Cases) > 100 || len(j.Bodies) > 3 {
			return
		}
		r, err := Analyse(&j)
		if err != nil {
			if fields := part.Fields(err); len(fields) == 0 {
				t.Fatalf("no field in %v", errors.Unwrap(err))
			}
			return
		}
		if _, err := json.Marshal(r); err != nil {
			t.Fatal(err)
		}
	})
}
