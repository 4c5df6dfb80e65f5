package geometry

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"lugwright/geometry"
	"lugwright/geometry/dxf"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/part/parttest"
	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
	"lugwright/services/wire"
)

// whole is the test bracket without what it leaves unfinished.
func whole() *part.Bracket {
	b := parttest.Bracket()
	b.Bolts, b.LoadPoints = nil, []part.LoadPoint{{ID: "pin"}}
	return b
}

// fakes are kinds: one that builds the test bracket, one whose bracket is unsound.
func fakes() *Service {
	size := []geometry.Param{{Name: "size", Unit: geometry.MM, Min: 1, Max: 9, Default: 5, Sentence: "a size"}}
	return New([]geometry.Kind{
		{Name: "sound", Params: size, Build: func(geometry.Values) (*part.Bracket, error) { return whole(), nil }},
		{Name: "unsound", Params: size, Build: func(geometry.Values) (*part.Bracket, error) {
			return &part.Bracket{Plates: []part.Plate{{ID: "p"}}}, nil
		}},
	})
}

func order(kind string, more ...*partpb.Parameter) *pb.BuildBracketRequest {
	return &pb.BuildBracketRequest{Order: &pb.BracketOrder{Kind: kind, Name: "b", Hand: partpb.Hand_HAND_LEFT, Parameters: more}}
}

func TestRefusedOrders(t *testing.T) {
	for _, c := range []struct {
		name  string
		q     *pb.BuildBracketRequest
		code  codes.Code
		field string
	}{
		{"nothing", &pb.BuildBracketRequest{}, codes.InvalidArgument, "order"},
		{"kind", order("sond"), codes.InvalidArgument, "kind"},
		{"range", order("sound", &partpb.Parameter{Name: "size", Number: 10}), codes.InvalidArgument, "parameters.size"},
		{"unit", order("sound", &partpb.Parameter{Name: "size", Number: 1, Unit: "rad"}), codes.InvalidArgument, "parameters.size"},
		{"name", order("sound", &partpb.Parameter{Name: "sizes"}), codes.InvalidArgument, "parameters.sizes"},
		{"hand", &pb.BuildBracketRequest{Order: &pb.BracketOrder{Kind: "sound", Name: "b"}}, codes.InvalidArgument, "hand"},
		// The kind's own fault: no field of the caller's is to blame.
		{"unsound", order("unsound"), codes.FailedPrecondition, ""},
	} {
		_, err := fakes().BuildBracket(t.Context(), c.q)
		s, _ := status.FromError(err)
		if s.Code() != c.code || len(s.Details()) == 0 {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if c.field == "" {
			continue
		}
		bad, ok := s.Details()[0].(*errdetails.BadRequest)
		if !ok || bad.FieldViolations[0].Field != c.field {
			t.Errorf("%s: details %v, want field %s", c.name, s.Details(), c.field)
		}
	}
	if _, err := fakes().BuildBracket(t.Context(), order("sound")); err != nil {
		t.Error(err)
	}
}

func TestBatchIsBounded(t *testing.T) {
	_, err := fakes().BuildBrackets(t.Context(), &pb.BuildBracketsRequest{Orders: make([]*pb.BracketOrder, wire.MaxBatch+1)})
	if status.Code(err) != codes.InvalidArgument {
		t.Errorf("got %v", err)
	}
}

// Two ears and a gusset on one sheet; what is wrong with an order is named.
func TestExportSheet(t *testing.T) {
	s := New(nil)
	ear := parttest.Ear()
	order := wire.Sheet{Name: "S1", Format: wire.DXFR12, Plates: []wire.Placed{{Plate: ear}, {Plate: ear, At: shape.Point{X: 200}}, {Plate: parttest.Gusset(), At: shape.Point{X: 400}}}}
	answer, err := s.ExportSheet(t.Context(), wire.EncodeSheet(order))
	if err != nil {
		t.Fatal(err)
	}
	if name := answer.GetFile().GetName(); name != "S1_units-mm.dxf" {
		t.Error(name)
	}
	if bad := dxf.Check(answer.GetFile().GetData(), dxf.Layers{}, 3); bad != nil {
		t.Error(bad)
	}
	for field, spoil := range map[string]func(*wire.Sheet){
		"name":                         func(s *wire.Sheet) { s.Name = "" },
		"plates":                       func(s *wire.Sheet) { s.Plates = nil },
		"format":                       func(s *wire.Sheet) { s.Format = wire.OpenSCAD },
		"plates[1].plate.thickness_mm": func(s *wire.Sheet) { s.Plates[1].Plate.ThicknessMM = -1 },
		"plates[0].turn_rad":           func(s *wire.Sheet) { s.Plates[0].TurnRad = math.NaN() },
		"style.cut_layer":              func(s *wire.Sheet) { s.Style.Cut = "cut lines" },
	} {
		bad := order
		bad.Plates = slices.Clone(order.Plates)
		spoil(&bad)
		_, err := s.ExportSheet(t.Context(), wire.EncodeSheet(bad))
		if got := violations(err); status.Code(err) != codes.InvalidArgument || len(got) != 1 || got[0] != field {
			t.Errorf("%s: %v: %v", field, err, got)
		}
	}
}

func violations(err error) []string {
	var out []string
	for _, d := range status.Convert(err).Details() {
		if bad, ok := d.(*errdetails.BadRequest); ok {
			for _, v := range bad.GetFieldViolations() {
				out = append(out, v.GetField())
			}
		}
	}
	return out
}

func TestFileNames(t *testing.T) {
	b := whole().AsMade() // two like ears, two like gussets, a backing plate
	ear := b.Plates[0]
	files, err := export(b, wire.DXFR2000, wire.CutStyle{})
	if err != nil {
		t.Fatal(err)
	}
	first := fmt.Sprintf("%s_%gmm_%s_x2_units-mm.dxf", ear.Mark, ear.ThicknessMM, ear.Material)
	if len(files) != 3 || files[0].Name != first {
		t.Errorf("%d files, first %s, want %s", len(files), files[0].Name, first)
	}
	inch, err := export(b, wire.DXFR12Inch, wire.CutStyle{})
	if err != nil || !strings.HasSuffix(inch[0].Name, "_units-inch.dxf") {
		t.Errorf("%v, %v", inch, err)
	}
	var direct bytes.Buffer
	if err := dxf.Write(&direct, &b.Plates[0], dxf.Options{Version: dxf.R12, Inch: true}); err != nil || !slices.Equal(direct.Bytes(), inch[0].Data) {
		t.Errorf("the file is not what the writer writes: %v", err)
	}
	for _, f := range wire.Formats() {
		if _, err := export(b, f, wire.CutStyle{}); err != nil {
			t.Errorf("%s: %v", f, err)
		}
	}
}

// Two pieces under one mark, or marks that one file system would take for one, would overwrite each other's cut files.
func TestMarksThatClash(t *testing.T) {
	for _, mark := range []string{"TB-L1", "tb-l1", "TB/L1"} {
		b := parttest.Bracket()
		b.Plates[2].Mark = mark
		_, err := export(b, wire.SVGPlate, wire.CutStyle{})
		if fields := part.Fields(err); len(fields) != 1 || fields[0].Field != "plates[2].mark" {
			t.Errorf("%s: %v", mark, err)
		}
	}
}
