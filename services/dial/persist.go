package dial

import (
	"context"
	"errors"
	"fmt"
	"time"

	"lugwright/services/wire"
)

// DefaultPatience is longer than it takes to find out that a replica hangs: pingAfter and pingTimeout.
const DefaultPatience = 60 * time.Second

// How often one item alone may end its call before it is named as the cause.
const (
	mostBroken = 3 // the connection breaks
	mostLate   = 6 // no answer in time: which may be a replica that hangs, and chance leads there again
	halved     = 2 // several items are asked again in halves after so many
)

// pause between two attempts.
const pause = 100 * time.Millisecond

// A range of items is asked for again, after a failure that another replica may not have, until the answer is there or the service has not answered anything
// for the client's patience, whichever item it was. One that says it is busy has not failed at the items: they are asked for as they are.
type persistent struct {
	*peer
	patience time.Duration
	ask      func(ctx context.Context, from, to int) error
	lost     func(i int, why error) // the item breaks the service
}

func (p *persistent) items(ctx context.Context, from, to int) error {
	var broken, late int
	for begun := time.Now(); ; {
		err := p.ask(ctx, from, to)
		busy := false
		switch failure(err) {
		case wire.Foreign:
			return err
		case wire.Crowded:
			busy = true
		case wire.Late:
			late++
		case wire.Broken:
			broken++
		}
		answers := !busy && p.answers(ctx)
		switch {
		case ctx.Err() != nil:
			return context.Cause(ctx)
		case answers && to-from > 1 && max(broken, late) >= halved:
			middle := (from + to) / 2
			if err := p.items(ctx, from, middle); err != nil {
				return err
			}
			return p.items(ctx, middle, to)
		case answers && to-from == 1 && (broken >= mostBroken || late >= mostLate):
			p.lost(from, fmt.Errorf("the %s service broke off at this variant %d times: %s", p.service, broken+late, why(err)))
			return nil
		case !answers && min(time.Since(begun), time.Since(time.Unix(0, p.heard.Load()))) > p.patience:
			return err
		}
		select {
		case <-ctx.Done():
		case <-time.After(pause):
		}
	}
}

// mostProbes bounds how many replicas are asked at once whether they answer.
const mostProbes = 16

// answers says whether some replica still answers at all. Calls go to the replicas in turn, so as many are made as there are replicas.
func (p *persistent) answers(ctx context.Context) bool {
	if p.local {
		return true
	}
	limited, cancel := context.WithTimeout(ctx, min(p.timeout, 5*time.Second))
	defer cancel()
	n := min(max(1, int(p.count.Load())), mostProbes)
	answered := make(chan bool, n)
	for range n {
		go func() {
			var from replica
			_, err := p.info(limited, from.learn(p.peer)...)
			if err == nil {
				p.answered(&from)
			}
			answered <- err == nil
		}()
	}
	for range n {
		if <-answered {
			return true
		}
	}
	return false
}

// MayReturn says whether asking a service again later may help.
func MayReturn(err error) bool { return failure(err) != wire.Foreign }

// failure says whether asking again may help; where nothing failed or the question was refused it does not.
func failure(err error) wire.Failure {
	var gone *UnreachableError
	var refused *wire.Refused
	switch {
	case errors.As(err, &gone):
		return gone.Failure
	case errors.As(err, &refused) && refused.Whole:
		return wire.Broken
	}
	return wire.Foreign
}

func why(err error) string {
	var gone *UnreachableError
	if errors.As(err, &gone) {
		return gone.Why
	}
	return err.Error()
}
