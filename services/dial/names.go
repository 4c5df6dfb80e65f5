package dial

import (
	"sync"
	"sync/atomic"
	"time"

	"google.golang.org/grpc/resolver"
)

// renewAfter is how often a name is looked up again: as often as gRPC lets it be.
const renewAfter = 30 * time.Second

// renewing looks names up again and again. gRPC does so only when a connection is lost, and would not find a replica that joined while all others live.
type renewing struct {
	resolver.Builder
	every time.Duration
	count *atomic.Int32 // of the replicas that the name stands for
}

func (b renewing) Build(target resolver.Target, conn resolver.ClientConn, o resolver.BuildOptions) (resolver.Resolver, error) {
	inner, err := b.Builder.Build(target, counting{conn, b.count}, o)
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

// counting keeps how many replicas were found last.
type counting struct {
	resolver.ClientConn
	count *atomic.Int32
}

func (c counting) UpdateState(s resolver.State) error {
	c.count.Store(int32(max(len(s.Endpoints), len(s.Addresses))))
	return c.ClientConn.UpdateState(s)
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
