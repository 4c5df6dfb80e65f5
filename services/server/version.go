package server

import (
	"context"

	"google.golang.org/grpc"
	"google.golang.org/grpc/metadata"

	"lugwright/services/wire"
)

// stated puts the versions into the header of every answer: of several replicas each says its own.
func stated() grpc.UnaryServerInterceptor {
	versions := metadata.Pairs(wire.APIVersionKey, wire.APIVersion, wire.ToolVersionKey, wire.ToolVersion())
	return func(ctx context.Context, req any, _ *grpc.UnaryServerInfo, handle grpc.UnaryHandler) (any, error) {
		if err := grpc.SetHeader(ctx, versions); err != nil {
			return nil, err
		}
		return handle(ctx, req)
	}
}
