package both_test

import (
	"testing"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/status"

	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
)

// Clients of other makes take 8 KiB of headers, the default of gRPC's C and Java libraries: the longest refusals reach one that takes no more, with the paths of their fields.
func TestRefusalsFitHeaders(t *testing.T) {
	conn, err := grpc.NewClient(present(t), grpc.WithTransportCredentials(insecure.NewCredentials()), grpc.WithMaxHeaderListSize(8<<10))
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	build, check := geometrypb.NewGeometryServiceClient(conn), strengthpb.NewStrengthServiceClient(conn)
	refused := func(name string, least int, err error) {
		t.Helper()
		s := status.Convert(err)
		if s.Code() != codes.InvalidArgument || len(s.Details()) == 0 {
			t.Errorf("%s: %v", name, err)
			return
		}
		bad, _ := s.Details()[0].(*errdetails.BadRequest)
		if n := len(bad.GetFieldViolations()); n < least {
			t.Errorf("%s: %d fields are told, want %d", name, n, least)
		}
		for _, v := range bad.GetFieldViolations() {
			if v.Field == "" || v.Description == "" {
				t.Errorf("%s: %v", name, v)
			}
		}
	}
	kinds, err := build.ListKinds(t.Context(), &geometrypb.ListKindsRequest{})
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range kinds.Kinds {
		_, err := build.BuildBracket(t.Context(), &geometrypb.BuildBracketRequest{Order: allWrong(k)})
		refused("every parameter of "+k.Name, 5, err)
	}
	_, err = check.EvaluateLimit(t.Context(), &strengthpb.EvaluateLimitRequest{Limit: "nope"})
	refused("no such limit", 1, err)
	r, err := build.BuildBracket(t.Context(), &geometrypb.BuildBracketRequest{Order: &geometrypb.BracketOrder{Kind: "lug", Name: "x", Hand: 1}})
	if err != nil {
		t.Fatal(err)
	}
	plate := r.Bracket.Plates[0]
	for range 30 {
		plate.Holes = append(plate.Holes, plate.Holes[0])
	}
	_, err = build.ExportBracket(t.Context(), &geometrypb.ExportBracketRequest{Bracket: r.Bracket, Formats: []geometrypb.FileFormat{geometrypb.FileFormat_FILE_FORMAT_DXF_R2000}})
	refused("doubled holes", 5, err)
}

func allWrong(k *geometrypb.Kind) *geometrypb.BracketOrder {
	out := &geometrypb.BracketOrder{Kind: k.Name, Name: "x", Hand: 1}
	for _, p := range k.Parameters {
		given := &partpb.Parameter{Name: p.Name, Number: 1e6}
		if len(p.Choices) > 0 || p.DefaultText != "" {
			given.Number, given.Text = 0, "zzz"
		}
		out.Parameters = append(out.Parameters, given)
	}
	return out
}
