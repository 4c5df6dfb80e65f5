package wire

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"google.golang.org/protobuf/proto"

	"lugwright/part"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
	pb "lugwright/proto/gen/lugwright/vehicle/v1alpha1"
	"lugwright/vehicle"
	"lugwright/vehicle/clearance"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/finding"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/hung"
	"lugwright/vehicle/whole"
	"lugwright/vehicle/whole/wholetest"
)

func init() {
	listWords(append(vehicle.Confidences(), "")...)
	listWords(append(vehicle.Ways(), "")...)
	listWords(vehicle.Within, vehicle.MayExceed, vehicle.Over, vehicle.NotRated)
	listWords(frame.LinerShapes()...)
	listWords(frame.Left, frame.Right, frame.Both)
	listWords(finding.AtLeast, finding.AtMost, "")
	listWords(finding.Pass, finding.Fail, finding.NotCovered)
	listWords(drill.Left, drill.Right)
	listWords(drill.Kinds()...)
	listWords(drill.Web, drill.TopFlange, drill.BottomFlange)
	listWords(clearance.Ways()...)
	listWords(hung.BothHeld, hung.OneHeld)
	listWords(whole.Severities()...)
}

func TestEveryVehicleEnumValueHasAWord(t *testing.T) {
	complete(t, confidences)
	complete(t, mountWays)
	complete(t, standings)
	complete(t, linerShapes)
	complete(t, frameRails)
	complete(t, findingSenses)
	complete(t, findingVerdicts)
	complete(t, railSides)
	complete(t, zoneKinds)
	complete(t, railFaces)
	complete(t, roomWays)
	complete(t, rodEnds)
	complete(t, severities)
}

func TestVehicleRoundTrip(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 5))
		q := random[whole.Request](r)
		gotQ, err := DecodeVehicleRequest(sent(t, EncodeVehicleRequest(q)))
		same(t, gotQ, q, err)

		a := random[whole.Answer](r)
		lines(a, func(l *vehicle.Line) { // a result's confidence is always one
			if l.Confidence == "" {
				l.Confidence = vehicle.Guess
			}
		})
		gotA, err := DecodeVehicleAnswer(sent(t, EncodeVehicleAnswer(a)))
		same(t, gotA, a, err)
	}
}

func lines(a *whole.Answer, do func(*vehicle.Line)) {
	reports := []*vehicle.Report{&a.Report}
	if a.Moved != nil {
		reports = append(reports, a.Moved)
	}
	for _, p := range reports {
		for i := range p.Weights {
			for k := range p.Weights[i].Lines {
				do(&p.Weights[i].Lines[k])
			}
		}
	}
}

// A real request and its answer come back exactly, nil and empty told apart, and so do those with nothing in them.
func TestRealVehicleRoundTrip(t *testing.T) {
	q := wholetest.FieldLab()
	gotQ, err := DecodeVehicleRequest(sent(t, EncodeVehicleRequest(q)))
	if err != nil || !reflect.DeepEqual(gotQ, q) {
		t.Errorf("the request came back different: %v", err)
	}
	a, err := whole.Reckon(q)
	if err != nil {
		t.Fatal(err)
	}
	gotA, err := DecodeVehicleAnswer(sent(t, EncodeVehicleAnswer(a)))
	if err != nil || !reflect.DeepEqual(gotA, a) {
		t.Errorf("the answer came back different: %v", err)
	}
	none, err := DecodeVehicleRequest(sent(t, EncodeVehicleRequest(&whole.Request{})))
	if err != nil || !reflect.DeepEqual(none, &whole.Request{}) {
		t.Errorf("%+v, %v", none, err)
	}
	nothing, err := DecodeVehicleAnswer(sent(t, EncodeVehicleAnswer(&whole.Answer{})))
	if err != nil || !reflect.DeepEqual(nothing, &whole.Answer{}) {
		t.Errorf("%+v, %v", nothing, err)
	}
}

// Names that come again and again are written once: a load is less than 100 bytes, a reaction less than 160.
func TestAnswersAreSmall(t *testing.T) {
	a, err := whole.Reckon(wholetest.FieldLab())
	if err != nil {
		t.Fatal(err)
	}
	m := EncodeVehicleAnswer(a)
	if slices.Contains(m.Texts, "") || len(m.Texts) != len(slices.Compact(slices.Sorted(slices.Values(m.Texts)))) {
		t.Error("an empty text, or one twice")
	}
	n := 0
	for _, l := range m.Bodies[0].Loads {
		n += len(l.Loads)
	}
	if size := proto.Size(&pb.BodyResult{Loads: m.Bodies[0].Loads}); size > 100*n {
		t.Errorf("%d bytes for %d loads", size, n)
	}
	if size := proto.Size(&pb.BodyResult{Cases: m.Bodies[0].Cases}); size > 3*160*len(m.Bodies[0].Cases) {
		t.Errorf("%d bytes for %d cases", size, len(m.Bodies[0].Cases))
	}
}

func TestVehicleRefused(t *testing.T) {
	for _, c := range []struct {
		name   string
		spoil  func(q *pb.WholeRequest)
		field  string
		accept string
	}{
		{"not a number", func(q *pb.WholeRequest) { q.Vehicle.Items[1].MassKg = math.NaN() }, "vehicle.items[1].mass_kg", "a finite number"},
		{"infinite", func(q *pb.WholeRequest) { q.Vehicle.Items[1].AtMm.X = math.Inf(1) }, "vehicle.items[1].at_mm.x", "a finite number"},
		{"no place", func(q *pb.WholeRequest) { q.Bodies[0].Mounts[1].AtMm = nil }, "bodies[0].mounts[1].at_mm", "a value"},
		{"unknown way", func(q *pb.WholeRequest) { q.Bodies[0].Mounts[1].X.Way = 77 }, "bodies[0].mounts[1].x.way", "one of free, both, plus, minus"},
		{"no level", func(q *pb.WholeRequest) { q.Cases[3].Level = partpb.LoadLevel_LOAD_LEVEL_UNSPECIFIED }, "cases[3].level", "one of service"},
		{"no fluid", func(q *pb.WholeRequest) { q.Vehicle.Tanks[0].Fluid = nil }, "vehicle.tanks[0].fluid", "a value"},
		{"missing item", func(q *pb.WholeRequest) { q.Vehicle.Items[2] = nil }, "vehicle.items[2]", "a value"},
		{"long name", func(q *pb.WholeRequest) { q.States[0].Name = strings.Repeat("x", 201) }, "states[0].name", "at most 200 bytes"},
		{"fraction", func(q *pb.WholeRequest) { q.Bodies[0].Shares[0].Fractions[1] = math.NaN() }, "bodies[0].shares[0].fractions[1]", "a finite number"},
		{"back of the cab", func(q *pb.WholeRequest) { q.Frame.CabBackMm = proto.Float64(math.NaN()) }, "frame.cab_back_mm", "a finite number"},
		{"no stretch", func(q *pb.WholeRequest) { q.Frame.Body = nil }, "frame.body", "a value"},
		{"place of the sweep", func(q *pb.WholeRequest) { q.Sweep.XMm[2] = math.Inf(-1) }, "sweep.x_mm[2]", "a finite number"},
		{"too many places", func(q *pb.WholeRequest) { q.Sweep.XMm = make([]float64, 1001) }, "sweep.x_mm", "at most 1000"},
		{"no side", func(q *pb.WholeRequest) { q.Drilling.Rails[1].Side = 0 }, "drilling.rails[1].side", "one of left, right"},
		{"new hole", func(q *pb.WholeRequest) { q.Drilling.Rails[1].New[0].DiaMm = math.NaN() }, "drilling.rails[1].new[0].dia_mm", "a finite number"},
		{"holes in line", func(q *pb.WholeRequest) { q.Drilling.OwnGuides[0].InLine = -1 }, "drilling.own_guides[0].in_line", "0 to 1000"},
		{"rod", func(q *pb.WholeRequest) { q.Trays[0].Rods[3].XMm = math.NaN() }, "trays[0].rods[3].x_mm", "a finite number"},
		{"too many states", func(q *pb.WholeRequest) { q.States = make([]*pb.State, 1001) }, "states", "at most 1000"},
	} {
		q := EncodeVehicleRequest(wholetest.FieldLab())
		c.spoil(q)
		_, err := DecodeVehicleRequest(q)
		fields := part.Fields(err)
		if len(fields) != 1 || fields[0].Field != c.field || !strings.HasPrefix(fields[0].Accept, c.accept) {
			t.Errorf("%s: refused as %v, want field %s, accepted %s...", c.name, err, c.field, c.accept)
		}
	}
	if _, err := DecodeVehicleRequest(nil); len(part.Fields(err)) != 1 {
		t.Errorf("no request: %v", err)
	}
	if _, err := DecodeVehicleAnswer(nil); len(part.Fields(err)) != 1 {
		t.Errorf("no answer: %v", err)
	}
}

// An answer with numbers of texts that are not there, or uneven columns, is not read.
func TestBrokenVehicleAnswer(t *testing.T) {
	a, err := whole.Reckon(wholetest.FieldLab())
	if err != nil {
		t.Fatal(err)
	}
	for field, spoil := range map[string]func(m *pb.WholeAnswer){
		"bodies[0].cases[1].state":          func(m *pb.WholeAnswer) { m.Bodies[0].Cases[1].State = int32(len(m.Texts)) + 1 },
		"bodies[0].loads[2].loads[0].share": func(m *pb.WholeAnswer) { m.Bodies[0].Loads[2].Loads[0].Share = -1 },
		"bodies[0].cases[0].reactions[0]":   func(m *pb.WholeAnswer) { m.Bodies[0].Cases[0].Reactions[0].Lows = nil },
		"frame.cases[0].left":               func(m *pb.WholeAnswer) { m.Frame.Cases[0].Left.SupportUpN = nil },
		"trays[0].cases[0]":                 func(m *pb.WholeAnswer) { m.Trays[0].Cases[0].PushN = nil },
	} {
		m := EncodeVehicleAnswer(a)
		spoil(m)
		_, err := DecodeVehicleAnswer(m)
		if fields := part.Fields(err); len(fields) != 1 || fields[0].Field != field {
			t.Errorf("refused as %v, want %s", err, field)
		}
	}
}

// FuzzDecodeVehicle: no bytes make decoding panic, what decodes encodes to what it came from, and what is refused has a field.
func FuzzDecodeVehicle(f *testing.F) {
	real, err := proto.Marshal(EncodeVehicleRequest(wholetest.FieldLab()))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(real)
	some, _ := proto.Marshal(EncodeVehicleRequest(random[whole.Request](rand.New(rand.NewPCG(1, 2)))))
	f.Add(some)
	f.Fuzz(func(t *testing.T, data []byte) {
		decoding(data, func(m *pb.WholeAnswer) { DecodeVehicleAnswer(m) })
		var m pb.WholeRequest
		if proto.Unmarshal(data, &m) != nil {
			return
		}
		q, err := DecodeVehicleRequest(&m)
		if err != nil {
			if len(part.Fields(err)) == 0 {
				t.Fatalf("refused without a field: %v", err)
			}
			return
		}
		again, err := DecodeVehicleRequest(EncodeVehicleRequest(q))
		same(t, again, q, err)
	})
}
