package dial

import (
	"errors"
	"io"
	"log/slog"
	"strings"
	"testing"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	"lugwright/geometry/kinds"
	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	geometryservice "lugwright/services/geometry"
	"lugwright/services/server"
	"lugwright/services/wire"
)

// A service that says of itself that it does not serve, and one whose answer is no message, are named with their address and in words, and count as not reached.
func TestNoAnswerToUse(t *testing.T) {
	starting := server.New(server.Options{Log: slog.New(slog.NewTextHandler(io.Discard, nil)), Starting: true}, geometryservice.New(kinds.All()))
	garbler := grpc.NewServer(grpc.ForceServerCodec(plainBytes{}), grpc.UnknownServiceHandler(garble))
	for name, c := range map[string]struct{ addr, want string }{
		"starting": {serve(t, starting, func() { starting.Stop(0) }), "takes no calls now: it starts, or is about to stop"},
		"garbled":  {serve(t, garbler, garbler.Stop), "cannot be read, or cannot read what it is asked, it is another service or version: "},
	} {
		_, err := remote(t, c.addr, "", Options{Timeout: 10 * time.Second}).Kinds(t.Context())
		if !errors.Is(err, ErrUnreachable) || !strings.HasPrefix(err.Error(), "geometry service at "+c.addr+": "+c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// garble says who it is, and answers anything else with bytes that are no message.
func garble(_ any, s grpc.ServerStream) error {
	var q []byte
	if err := s.RecvMsg(&q); err != nil {
		return err
	}
	answer := []byte("\x0a\xff\xff\xff")
	switch method, _ := grpc.MethodFromServerStream(s); {
	case strings.HasPrefix(method, "/grpc.health."):
		return status.Error(codes.Unimplemented, "no health here")
	case strings.HasSuffix(method, "/GetServiceInfo"):
		answer, _ = proto.Marshal(&geometrypb.GetServiceInfoResponse{ApiVersion: wire.APIVersion})
	}
	if err := s.SetHeader(metadata.Pairs(wire.APIVersionKey, wire.APIVersion)); err != nil {
		return err
	}
	return s.SendMsg(&answer)
}

// plainBytes sends and takes messages as they are.
type plainBytes struct{}

func (plainBytes) Marshal(v any) ([]byte, error)   { return *v.(*[]byte), nil }
func (plainBytes) Unmarshal(b []byte, v any) error { *v.(*[]byte) = b; return nil }
func (plainBytes) Name() string                    { return "proto" }
