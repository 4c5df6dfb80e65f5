package server

import (
	"context"

	"google.golang.org/grpc"
	"google.golang.org/grpc/metadata"
	"google.golang.org/protobuf/proto"

	"lugwright/services/wire"
)

// stated puts the versions into the header of every answer: of several replicas each says its own. A newer client is told what is not understood.
func stated() grpc.UnaryServerInterceptor {
	versions := metadata.Pairs(wire.APIVersionKey, wire.APIVersion, wire.ToolVersionKey, wire.ToolVersion())
	return func(ctx context.Context, req any, _ *grpc.UnaryServerInfo, handle grpc.UnaryHandler) (any, error) {
		if err := grpc.SetHeader(ctx, versions); err != nil {
			return nil, err
		}
		if err := understood(ctx, req); err != nil {
			return nil, wire.ToStatus(err)
		}
		return handle(ctx, req)
	}
}

// understood looks for what is unknown here in messages of newer clients alone: others cannot send any.
func understood(ctx context.Context, req any) error {
	version := metadata.ValueFromIncomingContext(ctx, wire.APIVersionKey)
	m, ok := req.(proto.Message)
	if !ok || len(version) != 1 || !wire.Newer(version[0]) {
		return nil
	}
	return wire.Understood(m)
}
