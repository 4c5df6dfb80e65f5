package strength

import (
	"context"
	"fmt"
	"testing"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/wire"
	"lugwright/strength/basis"
)

// A call whose time is over ends in the middle of an item, alone or in a batch, and the item is not told to be at fault.
func TestEndedWithinAnItem(t *testing.T) {
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: "clevis", Name: "x", Hand: part.LeftHand})
	if err != nil {
		t.Fatal(err)
	}
	setup := wire.Setup{}
	for i := range 4000 { // work for some seconds
		setup.Cases = append(setup.Cases, part.Case{Name: fmt.Sprint("c", i), Level: part.Service, Force: part.Vec{Y: float64(i), Z: -1000}})
	}
	s, asked := New(basis.All()), wire.EncodeSetup(&setup)
	for name, call := range map[string]func(context.Context) error{
		"alone": func(ctx context.Context) error {
			_, err := s.CheckBracket(ctx, &pb.CheckBracketRequest{Bracket: wire.EncodeBracket(b), Setup: asked})
			return err
		},
		"batch": func(ctx context.Context) error {
			_, err := s.CheckBrackets(ctx, &pb.CheckBracketsRequest{Setups: []*pb.CheckSetup{asked}, Items: []*pb.CheckItem{{Bracket: wire.EncodeBracket(b)}}})
			return err
		},
	} {
		ctx, cancel := context.WithTimeout(t.Context(), 50*time.Millisecond)
		if err := call(ctx); status.Code(err) != codes.DeadlineExceeded {
			t.Errorf("%s: %v", name, err)
		}
		cancel()
	}
}
