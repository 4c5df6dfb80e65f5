package dial

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"google.golang.org/protobuf/proto"

	"lugwright/geometry/kinds"
	"lugwright/part"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	geometryservice "lugwright/services/geometry"
	strengthservice "lugwright/services/strength"
	"lugwright/services/wire"
	"lugwright/strength/basis"
	"lugwright/vehicle"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/whole"
	"lugwright/vehicle/whole/wholetest"
)

// nearAndFar are a client whose services are in this process and one whose are behind TCP.
func nearAndFar(t *testing.T) map[string]*Client {
	geometryAddr, _ := listen(t, geometryservice.New(kinds.All()))
	strengthAddr, _ := listen(t, strengthservice.New(basis.All()))
	return map[string]*Client{"in process": inProcess(t), "remote": remote(t, geometryAddr, strengthAddr, Options{})}
}

func TestVehicleNearAndFar(t *testing.T) {
	q := wholetest.FieldLab()
	want, err := whole.Reckon(q)
	if err != nil {
		t.Fatal(err)
	}
	var bytes [][]byte
	for where, c := range nearAndFar(t) {
		got, err := c.Vehicle(t.Context(), q)
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: the answer is not the library's: %v", where, err)
		}
		r, err := c.check.ReckonVehicle(t.Context(), &strengthpb.ReckonVehicleRequest{Request: wire.EncodeVehicleRequest(q)})
		bytes = append(bytes, bytesOf(t, r, err))
	}
	if !slices.Equal(bytes[0], bytes[1]) {
		t.Errorf("%d and %d bytes, not the same", len(bytes[0]), len(bytes[1]))
	}
	if !reflect.DeepEqual(q, wholetest.FieldLab()) {
		t.Error("asking changed the request")
	}
}

// Fields refused by the library and by the door have the same paths, near and far, and so has an answer that no message holds.
func TestVehicleRefusedNearAndFar(t *testing.T) {
	for field, spoil := range map[string]func(q *whole.Request){
		"vehicle.items[3].at_mm.z": func(q *whole.Request) { q.Vehicle.Items[3].At.Z = math.NaN() },
		"vehicle.items[3].mass_kg": func(q *whole.Request) { q.Vehicle.Items[3].MassKG = 0 },
		"bodies[0].mounts[2].name": func(q *whole.Request) { q.Bodies[0].Mounts[2].Name = "" },
		"frame.top_z_mm":           func(q *whole.Request) { q.Frame.TopZMM = 1e9 },
		"trays[0].carries[0]":      func(q *whole.Request) { q.Trays[0].Carries[0] = "nobody" },
		"drilling.rails":           manyHoles,
	} {
		for where, c := range nearAndFar(t) {
			q := wholetest.FieldLab()
			spoil(q)
			_, err := c.Vehicle(t.Context(), q)
			if fields := part.Fields(err); len(fields) == 0 || fields[0].Field != field {
				t.Errorf("%s: want %s refused, got %v", where, field, err)
			}
		}
	}
}

// manyHoles is a survey whose answer no message holds.
func manyHoles(q *whole.Request) {
	for i := range 9 {
		g := drill.Guides()[0]
		g.ID, g.Source = fmt.Sprint("own ", i), strings.Repeat("long words ", 150)
		q.Drilling.OwnGuides = append(q.Drilling.OwnGuides, g)
	}
	for i := range q.Drilling.Rails {
		for k := range 80 {
			q.Drilling.Rails[i].New = append(q.Drilling.Rails[i].New, drill.NewHole{Name: fmt.Sprint("n", k), Face: drill.Web, XMM: 1000 + 40*float64(k), ZMM: 860, DiaMM: 11})
		}
	}
}

// The field lab to the digits printed beside its definition (invented, solved by two other programs), through both doors.
func TestFieldLabThroughTheWire(t *testing.T) {
	src, err := os.ReadFile("../../vehicle/testdata/scenarios.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Scenarios map[string]struct {
			Results map[string]struct {
				CG        [3]float64
				Front     float64 `json:"front_axle"`
				Rear      float64 `json:"rear_axle"`
				CGZ       float64 `json:"vehicle_cg_z"`
				SSF       float64 `json:"static_stability_factor"`
				Reactions map[string]struct{ VF, VL, VR, TF, TP, XP float64 }
			}
		}
	}
	if err := json.Unmarshal(src, &file); err != nil {
		t.Fatal(err)
	}
	results := file.Scenarios["S1"].Results
	near := func(what string, got, want, unit float64) {
		t.Helper()
		if !(math.Abs(got-want) <= 0.5000001*unit) {
			t.Errorf("%s: got %.6g, printed %.6g", what, got, want)
		}
	}
	for where, c := range nearAndFar(t) {
		a, err := c.Vehicle(t.Context(), wholetest.FieldLab())
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range a.Report.Weights {
			want := results[w.State]
			cg := w.Bodies[0].Mass.CG()
			for i, got := range []float64{cg.X, cg.Y, cg.Z} {
				near(where+" centre", got, want.CG[i], 0.1)
			}
			near(where+" front", w.Front.KG.Value, want.Front, 0.1)
			near(where+" rear", w.Rear.KG.Value, want.Rear, 0.1)
			near(where+" height", w.Vehicle.ZMM.Value, want.CGZ, 0.1)
			near(where+" stability", w.Stability.Factor.Value, want.SSF, 0.001)
		}
		seen := 0
		for _, r := range a.Report.Bodies[0].Cases {
			id, side, _ := strings.Cut(r.Case, " ")
			for printed, want := range results[r.State].Reactions {
				if strings.HasPrefix(printed, id+" ") && strings.HasSuffix(printed, side) {
					seen++
					compare(t, r.Reactions, want, func(what string, got, want float64) { near(where+" "+r.State+" "+r.Case+" "+what, got, want, 0.1) })
				}
			}
		}
		if seen != 24 {
			t.Errorf("%s: %d of 24 printed cases found", where, seen)
		}
	}
}

func compare(t *testing.T, r []vehicle.Reaction, want struct{ VF, VL, VR, TF, TP, XP float64 }, near func(what string, got, want float64)) {
	t.Helper()
	single, left, right := r[0].Force, r[1].Force, r[2].Force
	near("single up", single.Z, want.VF)
	near("left up", left.Z, want.VL)
	near("right up", right.Z, want.VR)
	near("single aside", single.Y, want.TF)
	near("pair aside", left.Y+right.Y, want.TP)
	near("fore and aft", left.X+right.X, want.XP)
}

// The largest usual question, every mix of six tanks in the off-road set, stays well under what a message may be.
func TestManyStatesFitAMessage(t *testing.T) {
	q := wholetest.FieldLab()
	q.Bodies[0].Shares, q.Sweep = nil, nil
	for len(q.Vehicle.Tanks) < 6 {
		tank := q.Vehicle.Tanks[0]
		tank.Name = strings.Repeat("t", len(q.Vehicle.Tanks))
		q.Vehicle.Tanks = append(q.Vehicle.Tanks, tank)
	}
	var err error
	if q.States, err = q.Vehicle.Combinations(); err != nil || len(q.States) != 64 {
		t.Fatal(err)
	}
	a, err := inProcess(t).Vehicle(t.Context(), q)
	if err != nil {
		t.Fatal(err)
	}
	size := proto.Size(wire.EncodeVehicleAnswer(a))
	if n := len(q.States) * len(q.Cases); size > 3<<20 || a.Frame.WithoutStations < n-4 {
		t.Errorf("%d states and cases make %d bytes, %d without stations", n, size, a.Frame.WithoutStations)
	}
}
