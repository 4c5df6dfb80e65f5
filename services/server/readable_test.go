package server

import (
	"strings"
	"testing"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/mem"
	"google.golang.org/grpc/status"

	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
)

// rawBytes sends bytes as they are.
type rawBytes struct{}

func (rawBytes) Name() string { return "proto" }

func (rawBytes) Marshal(v any) (mem.BufferSlice, error) {
	return mem.BufferSlice{mem.SliceBuffer(*v.(*[]byte))}, nil
}

func (rawBytes) Unmarshal(data mem.BufferSlice, v any) error {
	*v.(*[]byte) = data.Materialize()
	return nil
}

// Bytes that are no message, and text that is not UTF-8, are the caller's fault.
func TestUnreadable(t *testing.T) {
	r := start(t, &rogue{})
	for name, data := range map[string]string{
		"no message": "\xff\xff\xff", "cut off": "\x0a\x05ab", "not UTF-8": "\x0a\x03\x0a\x01\xff",
	} {
		q, answer := []byte(data), []byte{}
		err := r.conn.Invoke(t.Context(), pb.GeometryService_BuildBracket_FullMethodName, &q, &answer, grpc.ForceCodecV2(rawBytes{}))
		if s := status.Convert(err); s.Code() != codes.InvalidArgument || !strings.HasPrefix(s.Message(), "no message of this call: ") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
