package server

// The server tells clients its interface (gRPC server reflection, v1 and v1alpha, whose messages are the same on the wire). grpc's own
// server of it has the descriptors of descriptors read whenever a program that links it starts: a tenth of the shortest run of ours.

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"maps"
	"slices"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	reflectionpb "google.golang.org/grpc/reflection/grpc_reflection_v1"
	_ "google.golang.org/grpc/reflection/grpc_reflection_v1alpha" // its file is asked for by name
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"
)

// reflector answers questions about the services of a server.
type reflector struct {
	reflectionpb.UnimplementedServerReflectionServer
	server *grpc.Server
}

func registerReflection(s *grpc.Server) {
	v1 := reflectionpb.ServerReflection_ServiceDesc
	alpha := v1
	alpha.ServiceName, alpha.Metadata = "grpc.reflection.v1alpha.ServerReflection", "grpc/reflection/v1alpha/reflection.proto"
	s.RegisterService(&v1, &reflector{server: s})
	s.RegisterService(&alpha, &reflector{server: s})
}

// ServerReflectionInfo answers one question after the other; a file that was sent goes along with others no more.
func (r *reflector) ServerReflectionInfo(stream reflectionpb.ServerReflection_ServerReflectionInfoServer) error {
	sent := map[string]bool{}
	for {
		q, err := stream.Recv()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
		a := &reflectionpb.ServerReflectionResponse{ValidHost: q.Host, OriginalRequest: q}
		if err := r.answer(q, a, sent); status.Code(err) == codes.InvalidArgument {
			return err
		} else if err != nil {
			a.MessageResponse = &reflectionpb.ServerReflectionResponse_ErrorResponse{
				ErrorResponse: &reflectionpb.ErrorResponse{ErrorCode: int32(codes.NotFound), ErrorMessage: err.Error()},
			}
		}
		if err := stream.Send(a); err != nil {
			return err
		}
	}
}

func (r *reflector) answer(q *reflectionpb.ServerReflectionRequest, a *reflectionpb.ServerReflectionResponse, sent map[string]bool) error {
	var file protoreflect.FileDescriptor
	switch q := q.MessageRequest.(type) {
	case *reflectionpb.ServerReflectionRequest_ListServices:
		list := &reflectionpb.ListServiceResponse{}
		for _, name := range slices.Sorted(maps.Keys(r.server.GetServiceInfo())) {
			list.Service = append(list.Service, &reflectionpb.ServiceResponse{Name: name})
		}
		a.MessageResponse = &reflectionpb.ServerReflectionResponse_ListServicesResponse{ListServicesResponse: list}
		return nil
	case *reflectionpb.ServerReflectionRequest_AllExtensionNumbersOfType:
		return extensions(q.AllExtensionNumbersOfType, a)
	case *reflectionpb.ServerReflectionRequest_FileByFilename:
		var err error
		if file, err = protoregistry.GlobalFiles.FindFileByPath(q.FileByFilename); err != nil {
			return err
		}
	case *reflectionpb.ServerReflectionRequest_FileContainingSymbol:
		d, err := protoregistry.GlobalFiles.FindDescriptorByName(protoreflect.FullName(q.FileContainingSymbol))
		if err != nil {
			return err
		}
		file = d.ParentFile()
	case *reflectionpb.ServerReflectionRequest_FileContainingExtension:
		of := q.FileContainingExtension
		x, err := protoregistry.GlobalTypes.FindExtensionByNumber(protoreflect.FullName(of.GetContainingType()), protoreflect.FieldNumber(of.GetExtensionNumber()))
		if err != nil {
			return err
		}
		file = x.TypeDescriptor().ParentFile()
	default:
		return status.Errorf(codes.InvalidArgument, "invalid MessageRequest: %v", q)
	}
	files, err := withImports(file, sent)
	a.MessageResponse = &reflectionpb.ServerReflectionResponse_FileDescriptorResponse{
		FileDescriptorResponse: &reflectionpb.FileDescriptorResponse{FileDescriptorProto: files},
	}
	return err
}

func extensions(of string, a *reflectionpb.ServerReflectionResponse) error {
	if _, err := protoregistry.GlobalFiles.FindDescriptorByName(protoreflect.FullName(of)); err != nil {
		return err
	}
	list := &reflectionpb.ExtensionNumberResponse{BaseTypeName: of}
	protoregistry.GlobalTypes.RangeExtensionsByMessage(protoreflect.FullName(of), func(x protoreflect.ExtensionType) bool {
		list.ExtensionNumber = append(list.ExtensionNumber, int32(x.TypeDescriptor().Number()))
		return true
	})
	slices.Sort(list.ExtensionNumber)
	a.MessageResponse = &reflectionpb.ServerReflectionResponse_AllExtensionNumbersResponse{AllExtensionNumbersResponse: list}
	return nil
}

// withImports gives a file's descriptor as its bytes, and those of all files that it imports and that were not sent before.
func withImports(file protoreflect.FileDescriptor, sent map[string]bool) ([][]byte, error) {
	var out [][]byte
	queue := []protoreflect.FileDescriptor{file}
	for n := 0; n < len(queue); n++ {
		f := queue[n]
		if n > 0 && sent[f.Path()] {
			continue
		}
		sent[f.Path()] = true
		b, err := raw(f)
		if err != nil {
			return nil, err
		}
		out = append(out, b)
		for i := range f.Imports().Len() {
			queue = append(queue, f.Imports().Get(i))
		}
	}
	return out, nil
}

// raw is a file's descriptor as its bytes, which every message of generated code gives, packed.
func raw(f protoreflect.FileDescriptor) ([]byte, error) {
	if f.Messages().Len() == 0 {
		return nil, fmt.Errorf("%s has no message", f.Path())
	}
	t, err := protoregistry.GlobalTypes.FindMessageByName(f.Messages().Get(0).FullName())
	if err != nil {
		return nil, err
	}
	m, ok := t.Zero().Interface().(interface{ Descriptor() ([]byte, []int) })
	if !ok {
		return nil, fmt.Errorf("%s keeps no descriptor", f.Path())
	}
	packed, _ := m.Descriptor()
	unpacked, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, err
	}
	return io.ReadAll(unpacked)
}
