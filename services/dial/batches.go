package dial

import (
	"context"
	"fmt"
	"sync"
)

const (
	perMessage       = 64 // items of a message, at most
	perTracedMessage = 8  // traced reports are long
	perReplica       = 8  // messages on their way at once, for every replica of a service
	mostInFlight     = 128
)

// inFlight is how many messages of this service are on their way at once: enough for all replicas that are known now.
func (p *peer) inFlight() int { return min(perReplica*max(1, int(p.count.Load())), mostInFlight) }

// batches calls do for consecutive ranges of n items, so many at once, none longer than most. The first error ends
// the others and is returned.
func batches(ctx context.Context, n, most, atOnce int, do func(ctx context.Context, from, to int) error) error {
	// A service handles one message on one core: few items go in more messages than they need to.
	size := max(1, min(most, (n+atOnce-1)/atOnce))
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	var all sync.WaitGroup
	slots := make(chan struct{}, atOnce)
	for from := 0; from < n; from += size {
		select {
		case slots <- struct{}{}:
		case <-ctx.Done():
		}
		if ctx.Err() != nil {
			break
		}
		all.Go(func() {
			defer func() { <-slots }()
			if err := do(ctx, from, min(from+size, n)); err != nil {
				cancel(err)
			}
		})
	}
	all.Wait()
	return context.Cause(ctx)
}

// sameCount refuses an answer that has not one result for each item.
func sameCount(got, want int) error {
	if got != want {
		return fmt.Errorf("%d results for %d items", got, want)
	}
	return nil
}
