package server

import (
	"context"
	"fmt"
	"log/slog"
	"runtime/debug"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

type logKey struct{}

// recovery turns a panic into Internal and logs its stack; the caller learns neither.
func recovery(log *slog.Logger) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, req any, info *grpc.UnaryServerInfo, handle grpc.UnaryHandler) (resp any, err error) {
		defer func() {
			if p := recover(); p != nil {
				logPanic(ctx, log, p, info.FullMethod)
				err = errInternal
			}
		}()
		return handle(context.WithValue(ctx, logKey{}, log), req)
	}
}

var errInternal = status.Error(codes.Internal, "fault inside the service; its log has the details")

func logPanic(ctx context.Context, log *slog.Logger, p any, where string) {
	log.ErrorContext(ctx, "panic", "where", where, "panic", fmt.Sprint(p), "stack", string(debug.Stack()))
}

func logOf(ctx context.Context) *slog.Logger {
	if log, ok := ctx.Value(logKey{}).(*slog.Logger); ok {
		return log
	}
	return slog.Default()
}
