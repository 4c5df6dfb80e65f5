package dial

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"sync/atomic"
	"time"

	"google.golang.org/grpc"

	"lugwright/geometry/kinds"
	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/geometry"
	"lugwright/services/server"
	"lugwright/services/strength"
	"lugwright/services/transport"
	"lugwright/services/wire"
	"lugwright/strength/basis"
)

// UnreachableError says that a service is down, too slow or of another version, in words for a person.
type UnreachableError = wire.UnreachableError

// ErrUnreachable is wrapped by every *UnreachableError.
var ErrUnreachable = wire.ErrUnreachable

// DefaultTimeout bounds one call (one message of a batch) where Options say nothing else.
const DefaultTimeout = 60 * time.Second

// Options change how remote services are reached. The zero value serves.
type Options struct {
	Timeout  time.Duration // of one call; 0 takes DefaultTimeout
	Security Security
}

// Security says how connections to services elsewhere are secured.
type Security = transport.Client

// Client reaches both services. It may be used from several goroutines.
type Client struct {
	geometry *peer
	strength *peer
	build    geometrypb.GeometryServiceClient
	check    strengthpb.StrengthServiceClient
	conns    []*grpc.ClientConn // to services elsewhere
	lists    []*replicas        // theirs
}

// InProcess offers both services in this process, without a network.
func InProcess() (*Client, error) { return Remote("", "", Options{}) }

// Remote reaches services at their addresses: "host:port", several with commas between for replicas, or a gRPC target such
// as "dns:///name:port". Where an address is empty that service runs in this process. Nothing is connected before the first
// call.
func Remote(geometryAddr, strengthAddr string, o Options) (*Client, error) {
	return connect(
		place{"geometry", geometryAddr, func() server.Service { return geometry.New(kinds.All()) }},
		place{"strength", strengthAddr, func() server.Service { return strength.New(basis.All()) }},
		o,
	)
}

// place is where a service is, or how to make one where it has no address.
type place struct {
	name, addr string
	make       func() server.Service
}

func connect(geometryAt, strengthAt place, o Options) (*Client, error) {
	c := &Client{}
	timeout := cmp.Or(o.Timeout, DefaultTimeout)
	var geometryCount, strengthCount atomic.Int32
	geometryConn, geometryReplicas, err := c.open(geometryAt, o.Security, &geometryCount)
	if err != nil {
		return nil, err
	}
	strengthConn, strengthReplicas, err := c.open(strengthAt, o.Security, &strengthCount)
	if err != nil {
		return nil, errors.Join(err, c.Close())
	}
	c.build = geometrypb.NewGeometryServiceClient(geometryConn)
	c.check = strengthpb.NewStrengthServiceClient(strengthConn)
	c.geometry = newPeer(geometryAt, timeout, geometryConn, func(ctx context.Context, o ...grpc.CallOption) (versioned, error) {
		return c.build.GetServiceInfo(ctx, &geometrypb.GetServiceInfoRequest{}, o...)
	})
	c.strength = newPeer(strengthAt, timeout, strengthConn, func(ctx context.Context, o ...grpc.CallOption) (versioned, error) {
		return c.check.GetServiceInfo(ctx, &strengthpb.GetServiceInfoRequest{}, o...)
	})
	c.geometry.replicas, c.strength.replicas = geometryReplicas, strengthReplicas
	c.geometry.count, c.strength.count = &geometryCount, &strengthCount
	return c, nil
}

// open connects to a service; one without an address is called in this process.
func (c *Client) open(at place, security Security, count *atomic.Int32) (grpc.ClientConnInterface, *replicas, error) {
	if at.addr == "" {
		return server.NewLocal(server.Options{}, at.make()), nil, nil
	}
	conn, list, err := dialRemote(at.addr, security, count)
	if err != nil {
		return nil, nil, fmt.Errorf("%s service: %w", at.name, err)
	}
	c.conns, c.lists = append(c.conns, conn), append(c.lists, list)
	return conn, list, nil
}

// Close ends the connections.
func (c *Client) Close() error {
	var err error
	for _, list := range c.lists {
		list.close()
	}
	for _, conn := range c.conns {
		err = errors.Join(err, conn.Close())
	}
	return err
}
