package dial

import (
	"sync"
	"time"

	"google.golang.org/grpc/resolver"
)

// renewAfter is how often a name is looked up again: as often as gRPC lets it be.
const renewAfter = 30 * time.Second

// renewing looks names up again and again. gRPC does so only when a connection is lost, and would not find a replica that joined while all others live.
type renewing struct {
	resolver.Builder
	every time.Duration
}

func (b renewing) Build(target resolver.Target, conn resolver.ClientConn, o resolver.BuildOptions) (resolver.Resolver, error) {
	inner, err := b.Builder.Build(target, conn, o)
	if err != nil {
		return nil, err
	}
	r := &renewed{Resolver: inner, ended: make(chan struct{})}
	r.running.Go(func() {
		t := time.NewTicker(b.every)
		defer t.Stop()
		for {
			select {
			case <-t.C:
				inner.ResolveNow(resolver.ResolveNowOptions{})
			case <-r.ended:
				return
			}
		}
	})
	return r, nil
}

type renewed struct {
	resolver.Resolver
	ended   chan struct{}
	running sync.WaitGroup
}

func (r *renewed) Close() {
	close(r.ended)
	r.running.Wait()
	r.Resolver.Close()
}
