package server

// Whoever decides that a server gets calls, or starts it again when it hangs, asks its health. Where the server lets in only clients with certificates he
// cannot: an orchestrator's own gRPC probe speaks plaintext, and an image with nothing but the program in it has nothing else to ask with. So health alone is
// also told in plaintext on a loopback address, which nobody outside the container reaches, and the program itself is what asks there. It tells what the server
// says on its other address, its state while it starts and drains too.

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/credentials/insecure"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/status"

	"lugwright/services/transport"
	"lugwright/services/wire"
)

// probeTime is how long a probe waits for its answer.
const probeTime = 3 * time.Second

// tellHealth answers questions about health, and no others, until end is called.
func (s *Server) tellHealth(addr string, log *slog.Logger) (end func(), err error) {
	l, err := Listen(addr)
	if err != nil {
		return nil, fmt.Errorf("address for health: %w", err)
	}
	g := grpc.NewServer(grpc.ConnectionTimeout(greeting), grpc.MaxRecvMsgSize(maxHeaderBytes), grpc.MaxHeaderListSize(maxHeaderBytes), grpc.MaxConcurrentStreams(16))
	healthpb.RegisterHealthServer(g, s.health)
	done := make(chan struct{})
	go func() { defer close(done); _ = g.Serve(&few{l, make(chan struct{}, 16)}) }() // ends with Stop, and has nothing else to say
	log.Info("health", "address", l.Addr().String())
	return func() { g.Stop(); <-done }, nil
}

// errNotServing is a server that answers, and says that it takes no calls.
var errNotServing = errors.New("not serving: it starts, or is about to stop")

// Probe asks the server that tells its health at an address of this machine whether it takes calls.
func Probe(ctx context.Context, addr string) error {
	conn, err := grpc.NewClient("passthrough:///"+addr, grpc.WithNoProxy(), grpc.WithTransportCredentials(insecure.NewCredentials()))
	if err != nil {
		return err
	}
	defer conn.Close()
	ctx, cancel := context.WithTimeout(ctx, probeTime)
	defer cancel()
	answer, err := healthpb.NewHealthClient(conn).Check(ctx, &healthpb.HealthCheckRequest{})
	switch {
	case status.Code(err) == codes.DeadlineExceeded:
		return fmt.Errorf("no answer from %s within %s", addr, probeTime)
	case err != nil:
		return fmt.Errorf("no answer from %s: %s", addr, wire.DialWords(status.Convert(err).Message()))
	case answer.GetStatus() != healthpb.HealthCheckResponse_SERVING:
		return errNotServing
	}
	return nil
}

// probeVerb is a daemon's first argument where it is to ask a running one and not to be one.
const probeVerb = "probe"

// probe gives the exit status: 0 when the server takes calls, 1 when it says that it does not, 2 for a setting, 3 without an answer.
func probe(ctx context.Context, name string, args []string, errs io.Writer) int {
	config := NewConfig(name)
	err := config.parse(args)
	if err == nil {
		err = config.FromEnvironment(os.LookupEnv)
	}
	if err == nil && (config.Health == "" || !transport.LoopbackAddress(config.Health)) {
		err = fmt.Errorf("--health %q: a probe needs the loopback address where the server tells its health, or %s", config.Health, Variable("health"))
	}
	code := 2
	if err == nil {
		code, err = 3, Probe(ctx, config.Health)
	}
	if err == nil {
		return 0
	}
	if errors.Is(err, errNotServing) {
		code = 1
	}
	fmt.Fprintf(errs, "%s: error: %v\n", name, err)
	return code
}
