package wire

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"testing"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"lugwright/part"
	"lugwright/strength"
)

var twoFields = part.FieldErrors{
	{Field: "parameters.bore", Found: "3 mm; too small", Accept: "10 to 60 mm"},
	{Field: "hand", Found: `"up"`, Accept: "left or right"},
}

func TestFieldErrorsCrossTheWire(t *testing.T) {
	for _, c := range []struct {
		name string
		err  error
		want part.FieldErrors
		code codes.Code
	}{
		{"many", twoFields, twoFields, codes.InvalidArgument},
		{"one", twoFields[0], twoFields[:1], codes.InvalidArgument},
		{"wrapped", fmt.Errorf("kind clevis: %w", twoFields), twoFields, codes.InvalidArgument},
		{"given", &strength.GivenError{Given: strength.Given{Symbol: "F_u", Unit: "MPa", Words: "tensile", Min: 1, Max: 9}, Found: 0, Count: 1},
			part.FieldErrors{{Field: "givens.F_u", Found: "0 MPa", Accept: "1 to 9 MPa is accepted (tensile)"}}, codes.InvalidArgument},
		{"plain", errors.New("nothing holds"), nil, codes.FailedPrecondition},
	} {
		sent := ToStatus(c.err)
		if status.Code(sent) != c.code {
			t.Errorf("%s: code %s, want %s", c.name, status.Code(sent), c.code)
		}
		back := FromStatus(sent)
		if got := part.Fields(back); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: fields %v, want %v", c.name, got, c.want)
		}
		var given *strength.GivenError
		if !errors.As(c.err, &given) && back.Error() != c.err.Error() {
			t.Errorf("%s: words %q, want %q", c.name, back, c.err)
		}
		if inBand := DecodeProblem(EncodeProblem(c.err)); !reflect.DeepEqual(inBand, back) {
			t.Errorf("%s: in band %v, as status %v", c.name, inBand, back)
		}
	}
}

// A client of another make reads the standard details.
func TestStandardDetails(t *testing.T) {
	s, _ := status.FromError(ToStatus(twoFields))
	bad, ok := s.Details()[0].(*errdetails.BadRequest)
	if !ok || len(bad.FieldViolations) != 2 || bad.FieldViolations[0].Field != "parameters.bore" ||
		bad.FieldViolations[1].Description != `"up"; left or right` {
		t.Errorf("details %v", s.Details())
	}
	info, ok := s.Details()[1].(*errdetails.ErrorInfo)
	if !ok || info.Reason != "FIELDS_REFUSED" || info.Domain != "lugwright" {
		t.Errorf("info %v", info)
	}
	other, _ := status.New(codes.InvalidArgument, "no").WithDetails(bad)
	if got := part.Fields(FromStatus(other.Err())); len(got) != 2 || got[1].Accept != "left or right" {
		t.Errorf("from the standard detail alone: %v", got)
	}
}

func TestNoAnswer(t *testing.T) {
	dialing := `connection error: desc = "transport: Error while dialing: dial tcp 10.0.0.9:7401: connect: no route to host"`
	for _, c := range []struct {
		err  error
		want string
	}{
		{status.Error(codes.Unavailable, "dial tcp 127.0.0.1:1: connect: connection refused"), "connection refused, nothing listens there"},
		{status.Error(codes.Unavailable, dialing), "dial tcp 10.0.0.9:7401: connect: no route to host"},
		{status.Error(codes.DeadlineExceeded, "x"), "did not answer within the time allowed"},
		{ToStatus(context.DeadlineExceeded), "did not answer within the time allowed"},
		{status.Error(codes.Internal, "grpc: failed to unmarshal the received message: proto: bad"), "cannot be read, or cannot read what it is asked, it is another service or version: proto: bad"},
		{status.Error(codes.Unimplemented, "x"), "what listens there does not know this call, it is another service or version"},
	} {
		err := FromStatus(c.err)
		var gone *UnreachableError
		if !errors.Is(err, ErrUnreachable) || !errors.As(err, &gone) || gone.Why != c.want {
			t.Errorf("%v became %v, want %q", c.err, err, c.want)
		}
	}
	if err := FromStatus(ToStatus(context.Canceled)); err != context.Canceled {
		t.Errorf("cancelled became %v", err)
	}
	if ToStatus(nil) != nil || FromStatus(nil) != nil {
		t.Error("no error became one")
	}
}

func TestSameMajor(t *testing.T) {
	for version, want := range map[string]bool{APIVersion: true, "1.99": true, "2.0": false, "": false, "1": false, "10.0": false} {
		if SameMajor(version) != want {
			t.Errorf("%q: %v", version, !want)
		}
	}
}
