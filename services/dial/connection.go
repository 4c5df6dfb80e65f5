package dial

import (
	"cmp"
	"fmt"
	"net"
	"strings"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/backoff"
	"google.golang.org/grpc/keepalive"
	"google.golang.org/grpc/resolver"
	"google.golang.org/grpc/resolver/manual"

	"lugwright/services/server"
	"lugwright/services/transport"
)

// serviceConfig spreads calls over replicas and sends a call again when its replica is gone: every answer is a function of
// the request alone, so that is safe.
const serviceConfig = `{
	"loadBalancingConfig": [{"round_robin": {}}],
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

func options(more ...grpc.DialOption) []grpc.DialOption {
	return append([]grpc.DialOption{
		grpc.WithNoProxy(),
		grpc.WithDefaultServiceConfig(serviceConfig),
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
		// Must stay above the servers' least interval between pings.
		grpc.WithKeepaliveParams(keepalive.ClientParameters{Time: 30 * time.Second, Timeout: 10 * time.Second}),
	}, more...)
}

func dialRemote(addr string, security transport.Client) (*grpc.ClientConn, error) {
	secured, err := security.Options(addr)
	if err != nil {
		return nil, err
	}
	if strings.Contains(addr, "://") {
		return grpc.NewClient(addr, options(secured...)...)
	}
	replicas, err := endpoints(addr, security.ServerName)
	if err != nil {
		return nil, err
	}
	list := manual.NewBuilderWithScheme("replicas")
	list.InitialState(resolver.State{Endpoints: replicas})
	return grpc.NewClient("replicas:///lugwright", options(append(secured, grpc.WithResolvers(list))...)...)
}

// endpoints are the replicas. A certificate is held against the replica's own name where none is given for all.
func endpoints(addr, serverName string) ([]resolver.Endpoint, error) {
	var out []resolver.Endpoint
	for one := range strings.SplitSeq(addr, ",") {
		one = strings.TrimSpace(one)
		if host, port, err := net.SplitHostPort(one); err != nil || host == "" || port == "" {
			return nil, fmt.Errorf("address %q; write host:port such as 127.0.0.1:7401, several with commas between", one)
		}
		out = append(out, resolver.Endpoint{Addresses: []resolver.Address{{Addr: one, ServerName: cmp.Or(serverName, one)}}})
	}
	return out, nil
}
