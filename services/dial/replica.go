package dial

import (
	"cmp"
	"context"
	"errors"
	"net"
	"strings"
	"sync"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/metadata"
	grpcpeer "google.golang.org/grpc/peer"
	"google.golang.org/grpc/resolver"
	"google.golang.org/grpc/resolver/manual"

	"lugwright/services/wire"
)

// replica is what one call tells of the replica that answered it.
type replica struct {
	header metadata.MD
	at     grpcpeer.Peer
}

// learn asks gRPC for it; a service of this process has no replicas.
func (r *replica) learn(p *peer) []grpc.CallOption {
	if p.local {
		return nil
	}
	return []grpc.CallOption{grpc.Header(&r.header), grpc.Peer(&r.at)}
}

// fits refuses an answer from a replica of another version: the first question of a client went to only one of them.
func (r *replica) fits(p *peer) error {
	if p.local {
		return nil
	}
	api, tool := first(r.header, wire.APIVersionKey), first(r.header, wire.ToolVersionKey)
	if wire.SameMajor(api) {
		return nil
	}
	return p.otherVersion(api, tool)
}

func first(m metadata.MD, key string) string {
	if values := m.Get(key); len(values) > 0 {
		return values[0]
	}
	return "unknown"
}

// named puts the replica's own address into an error of a service that has several.
func (r *replica) named(p *peer, err error) error {
	var gone *UnreachableError
	if errors.As(err, &gone) && r.at.Addr != nil && strings.Contains(p.addr, ",") {
		gone.Addr = r.at.Addr.String() + " (one of " + p.addr + ")"
	}
	return err
}

// rest is how long a replica that did not answer in time gets no calls, where there are others. gRPC's round robin would go on sending it every second one until
// it is found to hang.
const rest = 30 * time.Second

// replicas is a list of addresses, without those that are at rest.
type replicas struct {
	resolver   *manual.Resolver
	serverName string // that a certificate is held against; empty: the replica's own

	mu      sync.Mutex
	all     []string
	resting map[string]*time.Timer
	heard   map[string]time.Time // when one answered last, by its address as listed
	named   map[string]string    // address as listed, by the one that a connection has
}

func newReplicas(all []string, serverName string) *replicas {
	r := &replicas{resolver: manual.NewBuilderWithScheme("replicas"), serverName: serverName, all: all, resting: map[string]*time.Timer{}, heard: map[string]time.Time{}, named: map[string]string{}}
	r.resolver.InitialState(r.state())
	return r
}

func (r *replicas) state() resolver.State {
	var s resolver.State
	for _, addr := range r.all {
		if r.resting[addr] == nil {
			s.Endpoints = append(s.Endpoints, resolver.Endpoint{Addresses: []resolver.Address{{Addr: addr, ServerName: cmp.Or(r.serverName, addr)}}})
		}
	}
	return s
}

func (r *replicas) dial(ctx context.Context, addr string) (net.Conn, error) {
	conn, err := new(net.Dialer).DialContext(ctx, "tcp", addr)
	if err == nil {
		r.mu.Lock()
		r.named[conn.RemoteAddr().String()] = addr
		r.mu.Unlock()
	}
	return conn, err
}

// answered notes that a replica did.
func (r *replicas) answered(at net.Addr) {
	if r == nil || at == nil {
		return
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if addr, ok := r.named[at.String()]; ok {
		r.heard[addr] = time.Now()
	}
}

// late lets a replica rest that has not answered a call which began then, where another one has answered since. Else the late one may be the only one that lives: what a
// frozen one kept comes to it all at once, and late. A service that gRPC looks up itself has no list.
func (r *replicas) late(at net.Addr, begun time.Time) {
	if r == nil || at == nil {
		return
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	addr, ok := r.named[at.String()]
	if !ok || r.resting[addr] != nil || !r.otherSince(addr, begun) {
		return
	}
	r.resting[addr] = time.AfterFunc(rest, func() {
		r.mu.Lock()
		defer r.mu.Unlock()
		if r.resting[addr] != nil {
			delete(r.resting, addr)
			r.resolver.UpdateState(r.state())
		}
	})
	r.resolver.UpdateState(r.state())
}

// otherSince says whether some other replica that gets calls has answered since then.
func (r *replicas) otherSince(addr string, begun time.Time) bool {
	for other, when := range r.heard {
		if other != addr && r.resting[other] == nil && when.After(begun) {
			return true
		}
	}
	return false
}

func (r *replicas) close() {
	if r == nil {
		return
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	for _, t := range r.resting {
		t.Stop()
	}
	clear(r.resting)
}
