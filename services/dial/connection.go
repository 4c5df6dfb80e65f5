package dial

import (
	"context"
	"fmt"
	"net"
	"strings"
	"sync/atomic"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/backoff"
	_ "google.golang.org/grpc/health" // the client's part of health checking
	"google.golang.org/grpc/keepalive"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/resolver"

	"lugwright/services/server"
	"lugwright/services/transport"
	"lugwright/services/wire"
)

// serviceConfig spreads calls over replicas and sends a call again when its replica is gone: every answer is a function of
// the request alone, so that is safe. A replica that says it is not serving, since it is about to stop, gets no more calls.
const serviceConfig = `{
	"loadBalancingConfig": [{"round_robin": {}}],
	"healthCheckConfig": {"serviceName": ""},
	"methodConfig": [{
		"name": [{}],
		"retryPolicy": {
			"maxAttempts": 4,
			"initialBackoff": "0.1s",
			"maxBackoff": "1s",
			"backoffMultiplier": 2,
			"retryableStatusCodes": ["UNAVAILABLE"]
		}
	}]
}`

// A replica that has said nothing for so long is asked whether it lives, and given up when it does not answer that. The first must stay above the servers'
// least interval between pings.
const (
	pingAfter   = 30 * time.Second
	pingTimeout = 10 * time.Second
)

func options(more ...grpc.DialOption) []grpc.DialOption {
	return append([]grpc.DialOption{
		grpc.WithNoProxy(),
		// What a name server says beside addresses must not change how calls are sent.
		grpc.WithDisableServiceConfig(),
		grpc.WithDefaultServiceConfig(serviceConfig),
		grpc.WithUnaryInterceptor(stated),
		grpc.WithDefaultCallOptions(
			grpc.MaxCallRecvMsgSize(server.MaxMessageBytes),
			grpc.MaxCallSendMsgSize(server.MaxMessageBytes),
			// Above the default of 256 KiB a request would silently not be sent again.
			grpc.MaxRetryRPCBufferSize(server.MaxMessageBytes),
		),
		grpc.WithConnectParams(grpc.ConnectParams{
			Backoff:           backoff.Config{BaseDelay: 50 * time.Millisecond, Multiplier: 1.6, Jitter: 0.2, MaxDelay: 2 * time.Second},
			MinConnectTimeout: 5 * time.Second,
		}),
		grpc.WithKeepaliveParams(keepalive.ClientParameters{Time: pingAfter, Timeout: pingTimeout}),
	}, more...)
}

// stated says in every call which version of the interface this client speaks: an older service refuses what it does not understand.
func stated(ctx context.Context, method string, q, answer any, conn *grpc.ClientConn, ask grpc.UnaryInvoker, o ...grpc.CallOption) error {
	return ask(metadata.AppendToOutgoingContext(ctx, wire.APIVersionKey, wire.APIVersion), method, q, answer, conn, o...)
}

// dialRemote reaches the replicas of a service, and counts those that it knows. A list of addresses is kept by the replicas that it gives; a gRPC target by gRPC alone.
func dialRemote(addr string, security transport.Client, count *atomic.Int32) (*grpc.ClientConn, *replicas, error) {
	secured, err := security.Options(addr)
	if err != nil {
		return nil, nil, err
	}
	if strings.Contains(addr, "://") {
		conn, err := grpc.NewClient(addr, options(append(secured, grpc.WithResolvers(renewing{resolver.Get("dns"), renewAfter, count}))...)...)
		return conn, nil, err
	}
	list, err := endpoints(addr)
	if err != nil {
		return nil, nil, err
	}
	count.Store(int32(len(list)))
	r := newReplicas(list, security.ServerName)
	conn, err := grpc.NewClient("replicas:///lugwright", options(append(secured, grpc.WithResolvers(r.resolver), grpc.WithContextDialer(r.dial))...)...)
	return conn, r, err
}

func endpoints(addr string) ([]string, error) {
	var out []string
	for one := range strings.SplitSeq(addr, ",") {
		one = strings.TrimSpace(one)
		if host, port, err := net.SplitHostPort(one); err != nil || host == "" || port == "" {
			return nil, fmt.Errorf("address %q; write host:port such as 127.0.0.1:7401, several with commas between", one)
		}
		out = append(out, one)
	}
	return out, nil
}
