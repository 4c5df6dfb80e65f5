package strength

import (
	"context"
	"fmt"

	"google.golang.org/protobuf/proto"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/server"
	"lugwright/services/wire"
	"lugwright/vehicle/whole"
)

// ReckonVehicle reckons a whole vehicle, until the call ends.
func (s *Service) ReckonVehicle(ctx context.Context, q *pb.ReckonVehicleRequest) (*pb.ReckonVehicleResponse, error) {
	answer, err := reckon(ctx, q)
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	return answer, nil
}

func reckon(ctx context.Context, m *pb.ReckonVehicleRequest) (*pb.ReckonVehicleResponse, error) {
	q, err := wire.DecodeVehicleRequest(m.GetRequest())
	if err != nil {
		return nil, err
	}
	a, err := whole.ReckonContext(ctx, q)
	if err != nil {
		return nil, err
	}
	out := &pb.ReckonVehicleResponse{Answer: wire.EncodeVehicleAnswer(a)}
	if size := proto.Size(out); size > server.MaxMessageBytes {
		return nil, tooLarge(q, out, size)
	}
	return out, nil
}

// tooLarge is the same refusal in process, where no message has a bound, as over a connection. It names what makes most of the answer.
func tooLarge(q *whole.Request, out *pb.ReckonVehicleResponse, size int) error {
	const mb = 1 << 20
	e := &part.FieldError{
		Field:  "states",
		Found:  fmt.Sprintf("%d states and %d cases make an answer of %d MB", len(q.States), len(q.Cases), (size+mb-1)/mb),
		Accept: fmt.Sprintf("an answer of at most %d MB: fewer states or cases, or bodies with fewer ways to share", server.MaxMessageBytes/mb),
	}
	switch {
	case 2*proto.Size(out.Answer.Drilling) > size:
		e.Field = "drilling.rails"
		e.Found = fmt.Sprintf("their holes under all guides make an answer of %d MB", (size+mb-1)/mb)
		e.Accept = fmt.Sprintf("an answer of at most %d MB: fewer holes or guides", server.MaxMessageBytes/mb)
	case q.AllStations:
		e.Accept += ", or all_stations off"
	}
	return e
}
