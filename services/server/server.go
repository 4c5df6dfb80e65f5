package server

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/health"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/keepalive"
)

// MaxMessageBytes bounds a message in either direction, on servers and clients.
const MaxMessageBytes = 16 << 20

const (
	maxStreams = 256 // calls at once on one connection
	// Clients ping at most this often; their own interval must be longer.
	minPing = 10 * time.Second
	// A quiet connection is probed after this.
	pingAfter   = 2 * time.Minute
	pingTimeout = 20 * time.Second
)

// Service is something that a server offers.
type Service interface {
	// Register adds the service to a server and gives its full name.
	Register(r grpc.ServiceRegistrar) (name string)
}

// Options change what is not the same for every server. The zero value serves.
type Options struct {
	Log          *slog.Logger // nil: slog's default
	NoReflection bool
}

// Server is a gRPC server with its health service.
type Server struct {
	grpc   *grpc.Server
	health *health.Server
}

// New builds a server that offers the services. It is healthy, as a whole and by service name, until it is stopped.
func New(o Options, services ...Service) *Server {
	if o.Log == nil {
		o.Log = slog.Default()
	}
	s := &Server{
		grpc: grpc.NewServer(
			grpc.ChainUnaryInterceptor(recovery(o.Log), stated()),
			grpc.MaxRecvMsgSize(MaxMessageBytes),
			grpc.MaxSendMsgSize(MaxMessageBytes),
			grpc.MaxConcurrentStreams(maxStreams),
			grpc.KeepaliveParams(keepalive.ServerParameters{Time: pingAfter, Timeout: pingTimeout}),
			grpc.KeepaliveEnforcementPolicy(keepalive.EnforcementPolicy{MinTime: minPing, PermitWithoutStream: true}),
		),
		health: health.NewServer(),
	}
	for _, service := range services {
		s.health.SetServingStatus(service.Register(s.grpc), healthpb.HealthCheckResponse_SERVING)
	}
	healthpb.RegisterHealthServer(s.grpc, s.health)
	if !o.NoReflection {
		registerReflection(s.grpc)
	}
	return s
}

// Serve answers calls until the server is stopped; an orderly stop gives nil.
func (s *Server) Serve(l net.Listener) error {
	err := s.grpc.Serve(l)
	if errors.Is(err, grpc.ErrServerStopped) {
		return nil
	}
	return err
}

// Stop tells health watchers, lets running calls end, and cuts those that have not ended after the grace period.
func (s *Server) Stop(grace time.Duration) {
	s.health.Shutdown()
	cut := time.AfterFunc(grace, s.grpc.Stop)
	defer cut.Stop()
	s.grpc.GracefulStop()
}

// ServeUntil serves until the context ends, then stops in an orderly way.
func (s *Server) ServeUntil(ctx context.Context, l net.Listener, grace time.Duration) error {
	stopped := make(chan struct{})
	release := context.AfterFunc(ctx, func() { s.Stop(grace); close(stopped) })
	err := s.Serve(l)
	if !release() {
		<-stopped
	}
	return err
}
