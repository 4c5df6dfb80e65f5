package wire

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

// Domain and reasons of the ErrorInfo detail.
const (
	errorDomain         = "lugwright"
	reasonFieldsRefused = "FIELDS_REFUSED"
	reasonNotComputable = "NOT_COMPUTABLE"
)

// ErrUnreachable marks errors of calls that got no answer from their service; every *UnreachableError wraps it.
var ErrUnreachable = errors.New("service could not be reached")

// UnreachableError says that a service is down, too slow or of another version. FromStatus leaves Service and Addr empty.
type UnreachableError struct {
	Service string // "geometry" or "strength"
	Addr    string
	Why     string // "connection refused, nothing listens there"
	Failure Failure
}

// Failure tells whether asking again may help.
type Failure int

const (
	Broken  Failure = iota // the connection could not be made, or broke: another replica may answer
	Late                   // no answer in time: so it may
	Foreign                // what answers is another service or version, or lets this client in nowhere: asking again does not help
	Crowded                // it answers that it has enough to do: asking again later helps
)

// Busy is what the words of a service begin with that has enough to do.
const Busy = "busy: "

func (e *UnreachableError) Error() string {
	return fmt.Sprintf("%s service at %s: %s", e.Service, e.Addr, e.Why)
}

func (e *UnreachableError) Unwrap() error { return ErrUnreachable }

// ToStatus gives the status of a failed call. Field errors are INVALID_ARGUMENT with a BadRequest detail, other errors of the
// domain FAILED_PRECONDITION; both carry an ErrorInfo and, for lugwright's own clients, the Problem as it was, or as much of it as headers take.
func ToStatus(err error) error {
	if err == nil {
		return nil
	}
	switch {
	case errors.Is(err, context.Canceled):
		return status.Error(codes.Canceled, err.Error())
	case errors.Is(err, context.DeadlineExceeded):
		return status.Error(codes.DeadlineExceeded, err.Error())
	}
	if s, ok := status.FromError(err); ok {
		return s.Err()
	}
	problem := EncodeProblem(err)
	if len(problem.Fields) == 0 {
		return refusal(codes.FailedPrecondition, problem, reasonNotComputable).Err()
	}
	return refusal(codes.InvalidArgument, problem, reasonFieldsRefused).Err()
}

func badRequest(problem *pb.Problem) *errdetails.BadRequest {
	out := &errdetails.BadRequest{}
	for _, f := range problem.Fields {
		out.FieldViolations = append(out.FieldViolations, &errdetails.BadRequest_FieldViolation{
			Field: f.Field, Description: f.Found + "; " + f.Accept, Reason: reasonFieldsRefused,
		})
	}
	return out
}

// unreadable is what gRPC says, on either side, of bytes that are not the message that they should be.
const unreadable = "grpc: failed to unmarshal the received message: "

// FromStatus gives the error of a failed call back as the domain's: part.FieldErrors, *Refused, context.Canceled or
// *UnreachableError.
func FromStatus(err error) error {
	s, ok := status.FromError(err)
	if !ok || s.Code() == codes.OK {
		return err
	}
	switch s.Code() {
	case codes.Canceled:
		return context.Canceled
	case codes.DeadlineExceeded:
		return &UnreachableError{Why: "did not answer within the time allowed", Failure: Late}
	case codes.Unavailable:
		gone := &UnreachableError{Why: DialWords(s.Message())}
		if strings.Contains(s.Message(), Busy) {
			gone.Failure = Crowded
		}
		return gone
	case codes.Unauthenticated:
		return &UnreachableError{Why: "lets nobody in without the right token; --token-file names the file with it", Failure: Foreign}
	case codes.Internal:
		if _, why, ok := strings.Cut(s.Message(), unreadable); ok {
			return &UnreachableError{Why: "cannot be read, or cannot read what it is asked, it is another service or version: " + why, Failure: Foreign}
		}
	case codes.Unimplemented:
		return &UnreachableError{Why: "what listens there does not know this call, it is another service or version", Failure: Foreign}
	}
	for _, d := range s.Details() {
		if problem, ok := d.(*pb.Problem); ok {
			return DecodeProblem(problem)
		}
	}
	for _, d := range s.Details() {
		if bad, ok := d.(*errdetails.BadRequest); ok {
			return fromBadRequest(s, bad)
		}
	}
	whole := s.Code() == codes.Internal || s.Code() == codes.ResourceExhausted
	return &Refused{Message: fmt.Sprintf("%s (%s)", s.Message(), s.Code()), Whole: whole}
}

// fromBadRequest serves services that send the public detail only.
func fromBadRequest(s *status.Status, bad *errdetails.BadRequest) error {
	e := &Refused{Message: s.Message()}
	for _, v := range bad.FieldViolations {
		found, accept, _ := strings.Cut(v.Description, "; ")
		e.Fields = append(e.Fields, &part.FieldError{Field: v.Field, Found: found, Accept: accept})
	}
	return e
}

// DialWords takes the layers off a connection error: `connection error: desc = "transport: Error while dialing: dial tcp
// 127.0.0.1:1: connect: connection refused"` becomes "connection refused".
func DialWords(message string) string {
	if strings.Contains(message, "connection refused") {
		return "connection refused, nothing listens there"
	}
	if _, inner, ok := strings.Cut(message, "Error while dialing: "); ok {
		return strings.TrimRight(inner, `"`)
	}
	return message
}
