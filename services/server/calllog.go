package server

import (
	"context"
	"crypto/rand"
	"log/slog"
	"strings"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/peer"
	"google.golang.org/grpc/stats"
	"google.golang.org/grpc/status"

	"lugwright/services/wire"
)

// requestID is the header that names a call, in requests and answers.
const requestID = "x-request-id"

const longestID = 64

// logCalls logs one line for each call: who, what, of how many, how it ended, how long it took. Never what was asked or answered.
func logCalls(log *slog.Logger) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, q any, info *grpc.UnaryServerInfo, handle grpc.UnaryHandler) (any, error) {
		if strings.HasPrefix(info.FullMethod, "/grpc.health.") {
			return handle(ctx, q)
		}
		id := idOf(ctx)
		_ = grpc.SetHeader(ctx, metadata.Pairs(requestID, id)) // fails only when the call is over
		log := log.With("request", id)
		began := time.Now()
		answer, err := handle(withLog(ctx, log), q)
		read(ctx)
		logCall(ctx, log, info.FullMethod, err, time.Since(began), slog.Int("items", wire.Items(q)))
		return answer, err
	}
}

// logStreams does the same for streams, which are questions about the interface and watches of health.
func logStreams(log *slog.Logger) grpc.StreamServerInterceptor {
	return func(service any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handle grpc.StreamHandler) error {
		log := log.With("request", idOf(stream.Context()))
		began := time.Now()
		err := handle(service, stream)
		read(stream.Context())
		logCall(stream.Context(), log, info.FullMethod, err, time.Since(began))
		return err
	}
}

func logCall(ctx context.Context, log *slog.Logger, method string, err error, took time.Duration, more ...slog.Attr) {
	code := status.Code(err)
	level := slog.LevelInfo
	switch code {
	case codes.Internal, codes.Unknown, codes.DataLoss:
		level = slog.LevelError
	case codes.Unavailable, codes.ResourceExhausted, codes.DeadlineExceeded:
		level = slog.LevelWarn
	}
	log.LogAttrs(ctx, level, "call", append([]slog.Attr{slog.String("method", method), slog.String("code", code.String()),
		slog.Float64("ms", float64(took.Microseconds())/1000), slog.String("peer", peerOf(ctx)), slog.String("client", clientOf(ctx))}, more...)...)
}

// unreadLog logs the calls that end before the interceptors hear of them, since their message is too long, no message, or does not come.
type unreadLog struct{ log *slog.Logger }

type unreadKey struct{}

// unread is a call that no interceptor has logged.
type unread struct {
	method string
	read   bool
}

func read(ctx context.Context) {
	if u, ok := ctx.Value(unreadKey{}).(*unread); ok {
		u.read = true
	}
}

func (unreadLog) TagRPC(ctx context.Context, i *stats.RPCTagInfo) context.Context {
	return context.WithValue(ctx, unreadKey{}, &unread{method: i.FullMethodName})
}

func (l unreadLog) HandleRPC(ctx context.Context, s stats.RPCStats) {
	end, ok := s.(*stats.End)
	if !ok || end.Error == nil {
		return
	}
	if u, ok := ctx.Value(unreadKey{}).(*unread); ok && !u.read && !strings.HasPrefix(u.method, "/grpc.health.") {
		logRefusal(ctx, l.log.With("request", idOf(ctx)), u.method, end.Error)
	}
}

func (unreadLog) TagConn(ctx context.Context, _ *stats.ConnTagInfo) context.Context { return ctx }

func (unreadLog) HandleConn(context.Context, stats.ConnStats) {}

// logRefusal logs a call that was turned away before it was read.
func logRefusal(ctx context.Context, log *slog.Logger, method string, err error) {
	log.LogAttrs(ctx, slog.LevelWarn, "call refused", slog.String("method", method), slog.String("code", status.Code(err).String()),
		slog.String("why", status.Convert(err).Message()), slog.String("peer", peerOf(ctx)))
}

// idOf takes the client's id of a call, if it is short and printable, or makes one.
func idOf(ctx context.Context) string {
	outside := func(r rune) bool { return r <= ' ' || r > '~' }
	if ids := metadata.ValueFromIncomingContext(ctx, requestID); len(ids) == 1 && ids[0] != "" && len(ids[0]) <= longestID && !strings.ContainsFunc(ids[0], outside) {
		return ids[0]
	}
	return rand.Text()
}

func peerOf(ctx context.Context) string {
	if p, ok := peer.FromContext(ctx); ok {
		return p.Addr.String()
	}
	return ""
}

// clientOf is the subject of the client's certificate, if it has shown one.
func clientOf(ctx context.Context) string {
	p, _ := peer.FromContext(ctx)
	if p == nil {
		return ""
	}
	if info, ok := p.AuthInfo.(credentials.TLSInfo); ok && len(info.State.PeerCertificates) > 0 {
		return info.State.PeerCertificates[0].Subject.String()
	}
	return ""
}
