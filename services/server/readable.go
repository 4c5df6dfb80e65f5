package server

import (
	"context"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

// readable registers services whose callers are told that bytes which are no message are their fault: gRPC itself calls it a fault of the server.
type readable struct{ grpc.ServiceRegistrar }

func (r readable) RegisterService(d *grpc.ServiceDesc, service any) {
	own := *d
	own.Methods = make([]grpc.MethodDesc, len(d.Methods))
	for i, m := range d.Methods {
		handle := m.Handler
		m.Handler = func(service any, ctx context.Context, read func(any) error, i grpc.UnaryServerInterceptor) (any, error) {
			return handle(service, ctx, func(q any) error { return unreadable(read(q)) }, i)
		}
		own.Methods[i] = m
	}
	r.ServiceRegistrar.RegisterService(&own, service)
}

func unreadable(err error) error {
	if status.Code(err) == codes.Internal {
		return status.Error(codes.InvalidArgument, "no message of this call: "+status.Convert(err).Message())
	}
	return err
}
