package dial

import (
	"errors"
	"strings"

	"google.golang.org/grpc"
	"google.golang.org/grpc/metadata"
	grpcpeer "google.golang.org/grpc/peer"

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
