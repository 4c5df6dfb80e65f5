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

func withLog(ctx context.Context, log *slog.Logger) context.Context {
	return context.WithValue(ctx, logKey{}, log)
}

func logOf(ctx context.Context) *slog.Logger {
	if log, ok := ctx.Value(logKey{}).(*slog.Logger); ok {
		return log
	}
	return slog.Default()
}

// recovery turns a panic into Internal and logs its stack, in the call's own log if it has one; the caller learns neither.
func recovery(log *slog.Logger) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, req any, info *grpc.UnaryServerInfo, handle grpc.UnaryHandler) (resp any, err error) {
		if ctx.Value(logKey{}) == nil {
			ctx = withLog(ctx, log)
		}
		defer func() {
			if p := recover(); p != nil {
				logPanic(ctx, p, info.FullMethod)
				err = errInternal
			}
		}()
		return handle(ctx, req)
	}
}

// streamRecovery does the same for streams.
func streamRecovery(log *slog.Logger) grpc.StreamServerInterceptor {
	return func(service any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handle grpc.StreamHandler) (err error) {
		defer func() {
			if p := recover(); p != nil {
				logPanic(withLog(stream.Context(), log), p, info.FullMethod)
				err = errInternal
			}
		}()
		return handle(service, stream)
	}
}

var errInternal = status.Error(codes.Internal, "fault inside the service; its log has the details")

func logPanic(ctx context.Context, p any, where string) {
	logOf(ctx).ErrorContext(ctx, "panic", "where", where, "panic", fmt.Sprint(p), "stack", string(debug.Stack()))
}
