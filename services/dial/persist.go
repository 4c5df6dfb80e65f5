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
// for the client's patience. One that says it is busy has not failed at the items: they are asked for as they are, until it has been too busy for any of this client's
// for that long.
type persistent struct {
	*peer
	patience time.Duration
	ask      func(ctx context.Context, from, to int) error
	lost     func(i int, why error) // the item breaks the service
}

func (p *persistent) items(ctx context.Context, from, to int) error {
	var broken, late int
	served := p.served.Load()
	for begun := time.Now(); ; {
		err := p.ask(ctx, from, to)
		busy, moves := false, false // it is, but answers others of this client's messages
		switch failure(err) {
		case wire.Foreign:
			return err
		case wire.Crowded:
			busy = true
			if n := p.served.Load(); n != served {
				served, begun, moves = n, time.Now(), true
			}
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
		case !answers && !moves && time.Since(begun) > p.patience:
			return err
		}
		select {
		case <-ctx.Done():
		case <-time.After(pause):
		}
	}
}

// answers says whether some replica still answers at all.
func (p *persistent) answers(ctx context.Context) bool {
	if p.local {
		return true
	}
	limited, cancel := context.WithTimeout(ctx, min(p.timeout, 5*time.Second))
	defer cancel()
	_, err := p.info(limited)
	return err == nil
}

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
