package server

import (
	"cmp"
	"context"
	"errors"
	"log/slog"
	"net"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/health"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/keepalive"
	"google.golang.org/grpc/stats"

	"lugwright/services/transport"
)

// MaxMessageBytes bounds a message in either direction, on servers and clients.
const MaxMessageBytes = 16 << 20

const (
	maxHeaderBytes = 32 << 10 // of a call
	// A connection that has not greeted by then is closed.
	greeting = 10 * time.Second
	// Clients ping at most this often; their own interval must be longer.
	minPing = 10 * time.Second
	// A quiet connection is probed after this.
	pingAfter   = 2 * time.Minute
	pingTimeout = 20 * time.Second
	// A connection without calls is closed after this, and any is renewed after that: what a client holds without reading it ends then,
	// and a certificate that is no longer trusted.
	idleAfter  = 15 * time.Minute
	renewAfter = time.Hour
	// Watchers of health have this long to learn that the server stops.
	farewell = 500 * time.Millisecond
)

// Service is something that a server offers.
type Service interface {
	// Register adds the service to a server and gives its full name.
	Register(r grpc.ServiceRegistrar) (name string)
}

// Options change what is not the same for every server. The zero value serves, in plaintext.
type Options struct {
	Log          *slog.Logger                     // nil: slog's default
	Credentials  credentials.TransportCredentials // nil: plaintext
	Gate         *transport.Gate                  // nil: no token is asked for
	Limits       Limits
	Memory       int64 // bytes that the heap should keep within; 0: no bound
	NoReflection bool
	Telemetry    stats.Handler // nil: none
	Starting     bool          // not serving until Ready is called

	greeting, ping time.Duration // shorter, for tests; 0: the usual ones
}

// Server is a gRPC server with its health service.
type Server struct {
	grpc    *grpc.Server
	health  *health.Server
	names   []string // of its services; "" for the whole
	door    *door
	workers *workers
	drain   context.CancelFunc
	places  chan struct{} // of connections
}

// New builds a server that offers the services. It is healthy, as a whole and by service name, until it is stopped.
func New(o Options, services ...Service) *Server {
	if o.Limits == (Limits{}) {
		o.Limits = DefaultLimits()
	}
	o.Log = cmp.Or(o.Log, slog.Default())
	if o.Credentials == nil {
		o.Credentials = insecure.NewCredentials()
	}
	s := &Server{health: health.NewServer(), names: []string{""}, workers: newWorkers(o.Limits), places: make(chan struct{}, o.Limits.Connections)}
	s.door = &door{log: o.Log, gate: o.Gate, limits: o.Limits, fullFrom: uint64(o.Memory) / 4 * 3}
	s.door.drain, s.drain = context.WithCancel(context.Background())
	s.grpc = grpc.NewServer(s.settings(o)...)
	for _, service := range services {
		s.names = append(s.names, service.Register(s.grpc))
	}
	s.setStatus(healthpb.HealthCheckResponse_NOT_SERVING)
	s.door.closed.Store(true)
	if !o.Starting {
		s.Ready()
	}
	healthpb.RegisterHealthServer(s.grpc, s.health)
	if !o.NoReflection {
		registerReflection(s.grpc)
	}
	return s
}

func (s *Server) settings(o Options) []grpc.ServerOption {
	out := []grpc.ServerOption{
		grpc.Creds(o.Credentials),
		grpc.InTapHandle(s.door.enter),
		grpc.StatsHandler(unreadLog{o.Log}),
		grpc.ChainUnaryInterceptor(logCalls(o.Log), recovery(o.Log), stated(), s.workers.unary),
		grpc.ChainStreamInterceptor(logStreams(o.Log), streamRecovery(o.Log)),
		grpc.MaxRecvMsgSize(MaxMessageBytes),
		grpc.MaxSendMsgSize(MaxMessageBytes),
		grpc.MaxHeaderListSize(maxHeaderBytes),
		grpc.MaxConcurrentStreams(uint32(o.Limits.Streams)),
		grpc.ConnectionTimeout(cmp.Or(o.greeting, greeting)),
		grpc.KeepaliveParams(keepalive.ServerParameters{
			Time: cmp.Or(o.ping, pingAfter), Timeout: cmp.Or(o.ping, pingTimeout),
			MaxConnectionIdle: idleAfter, MaxConnectionAge: renewAfter, MaxConnectionAgeGrace: o.Limits.CallTime,
		}),
		grpc.KeepaliveEnforcementPolicy(keepalive.EnforcementPolicy{MinTime: minPing, PermitWithoutStream: true}),
	}
	if o.Telemetry != nil {
		out = append(out, grpc.StatsHandler(o.Telemetry))
	}
	return out
}

func (s *Server) setStatus(to healthpb.HealthCheckResponse_ServingStatus) {
	for _, name := range s.names {
		s.health.SetServingStatus(name, to)
	}
}

// Ready lets calls in, on a server that was starting.
func (s *Server) Ready() {
	s.door.closed.Store(false)
	s.setStatus(healthpb.HealthCheckResponse_SERVING)
}

// Serve answers calls until the server is stopped; an orderly stop gives nil.
func (s *Server) Serve(l net.Listener) error {
	err := s.grpc.Serve(&few{l, s.places})
	if errors.Is(err, grpc.ErrServerStopped) {
		return nil
	}
	return err
}

// Stop tells health watchers, lets running calls end, and cuts those that have not ended after the grace period.
func (s *Server) Stop(grace time.Duration) {
	s.health.Shutdown()
	bye := time.AfterFunc(min(farewell, grace/2), s.drain)
	defer bye.Stop()
	cut := time.AfterFunc(grace, s.grpc.Stop)
	defer cut.Stop()
	s.grpc.GracefulStop()
	s.drain()
}
