package strength

import (
	"math"
	"testing"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	vehiclepb "lugwright/proto/gen/lugwright/vehicle/v1alpha1"
	"lugwright/services/wire"
	"lugwright/vehicle/whole/wholetest"
)

// What the door and what the library refuse are both INVALID_ARGUMENT, with the fields as any gRPC client finds them.
func TestVehicleRefused(t *testing.T) {
	for field, spoil := range map[string]func(q *vehiclepb.WholeRequest){
		"vehicle.cab.front_kg":          func(q *vehiclepb.WholeRequest) { q.Vehicle.Cab.FrontKg = math.NaN() },
		"vehicle.wheelbase_mm":          func(q *vehiclepb.WholeRequest) { q.Vehicle.WheelbaseMm = 3 },
		"bodies[0].mounts[0].y.gap_mm":  func(q *vehiclepb.WholeRequest) { q.Bodies[0].Mounts[0].Y.GapMm = -1 },
		"drilling.rails[0].new[1].x_mm": func(q *vehiclepb.WholeRequest) { q.Drilling.Rails[0].New[1].XMm = 1e7 },
		"twist.wheel_lift_mm":           func(q *vehiclepb.WholeRequest) { q.Twist.WheelLiftMm = 300 },
	} {
		q := wire.EncodeVehicleRequest(wholetest.FieldLab())
		spoil(q)
		_, err := fakes().ReckonVehicle(t.Context(), &pb.ReckonVehicleRequest{Request: q})
		s := status.Convert(err)
		var got []string
		for _, d := range s.Details() {
			if bad, ok := d.(*errdetails.BadRequest); ok {
				for _, v := range bad.FieldViolations {
					got = append(got, v.Field)
				}
			}
		}
		if s.Code() != codes.InvalidArgument || len(got) != 1 || got[0] != field {
			t.Errorf("want %s refused, got %s %q", field, s.Code(), got)
		}
	}
	if _, err := fakes().ReckonVehicle(t.Context(), &pb.ReckonVehicleRequest{}); status.Code(err) != codes.InvalidArgument {
		t.Errorf("no request: %v", err)
	}
}
