package server

import (
	"context"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"

	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
)

// Each call is one line of the log, with its id, where it came from and of how many things it was, and without what was asked: also one whose message is too
// long to be read, or is none. Questions about health are none.
func TestEachCallIsOneLine(t *testing.T) {
	r := startWith(t, Options{}, &rogue{})
	client := pb.NewGeometryServiceClient(r.conn)
	orders := []*pb.BracketOrder{{Name: "confidential"}, {Name: "confidential"}, {Name: "bad"}}
	calls := []struct {
		method, line string
		code         codes.Code
		ask          func(context.Context) error
	}{
		{"BuildBrackets", `msg=call request=mine-0 method=\S+ code=OK ms=\S+ peer=127\.0\.0\.1:\d+ client="" items=3`, codes.OK,
			func(ctx context.Context) error {
				_, err := client.BuildBrackets(ctx, &pb.BuildBracketsRequest{Orders: orders})
				return err
			}},
		{"BuildBracket", `msg="call refused" request=mine-1 method=\S+ code=ResourceExhausted why=".*larger than max.*" peer=127\.0\.0\.1:\d+`, codes.ResourceExhausted,
			func(ctx context.Context) error {
				giant := &pb.BuildBracketRequest{Order: &pb.BracketOrder{Name: strings.Repeat("confidential", MaxMessageBytes/10)}}
				_, err := client.BuildBracket(ctx, giant)
				return err
			}},
		{"ExportBracket", `msg="call refused" request=mine-2 method=\S+ code=Internal why=".*" peer=127\.0\.0\.1:\d+`, codes.Internal,
			func(ctx context.Context) error {
				return r.conn.Invoke(ctx, "/"+name+"/ExportBracket", []byte("\xff confidential"), new([]byte), grpc.ForceCodec(bytesCodec{}))
			}},
	}
	for i, c := range calls {
		if err := c.ask(metadata.AppendToOutgoingContext(t.Context(), requestID, fmt.Sprint("mine-", i))); status.Code(err) != c.code {
			t.Errorf("%s: %v, want %s", c.method, err, c.code)
		}
	}
	if _, err := healthpb.NewHealthClient(r.conn).Check(t.Context(), &healthpb.HealthCheckRequest{}); err != nil {
		t.Error(err)
	}
	if !eventually(func() bool { return strings.Count(r.log.String(), "\n") >= len(calls) }) {
		t.Error("calls are not in the log")
	}
	log := r.log.String()
	for _, c := range calls {
		if n := strings.Count(log, "method=/"+name+"/"+c.method+" "); n != 1 || !regexp.MustCompile(c.line+"\n").MatchString(log) {
			t.Errorf("%s: %d lines, want one like %s", c.method, n, c.line)
		}
	}
	if strings.Contains(log, "confidential") || strings.Contains(log, "health") {
		t.Error("the log says what it should not")
	}
	if t.Failed() {
		t.Log(log)
	}
}

// bytesCodec sends bytes that are no message.
type bytesCodec struct{}

func (bytesCodec) Marshal(v any) ([]byte, error)   { return v.([]byte), nil }
func (bytesCodec) Unmarshal(b []byte, v any) error { *v.(*[]byte) = b; return nil }
func (bytesCodec) Name() string                    { return "proto" }
