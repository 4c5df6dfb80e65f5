package server

// The second door: as many calls are worked on as there are workers, a few wait, and the rest are told at once to come again. Nobody waits for long: who cannot
// be served soon is told so while there is time to ask another replica. A call for one thing goes before batches, which take up to some hundred times as long.

import (
	"context"
	"slices"
	"strings"
	"sync"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/status"

	"lugwright/services/wire"
)

// waitShare is the part of a call's longest time that it may wait for a worker.
const waitShare = 10

// singlesInTurn is how many calls for one thing may go before a batch that waits.
const singlesInTurn = 16

// workers is the second door.
type workers struct {
	room    int
	tooLong func() (over <-chan time.Time, stop func()) // begins when a call begins to wait

	mu             sync.Mutex
	free           int
	singles, batch []*waiter // in the order they came
	inTurn         int       // singles that went before the first of batch
}

// waiter is a call that waits for a worker; turn is closed when it has one.
type waiter struct{ turn chan struct{} }

func newWorkers(l Limits) *workers {
	return &workers{free: l.Workers, room: l.Queue, tooLong: func() (<-chan time.Time, func()) {
		t := time.NewTimer(l.CallTime / waitShare)
		return t.C, func() { t.Stop() }
	}}
}

// unary works on a call when there is a worker for it. Health is answered at once.
func (w *workers) unary(ctx context.Context, q any, info *grpc.UnaryServerInfo, handle grpc.UnaryHandler) (any, error) {
	if strings.HasPrefix(info.FullMethod, "/grpc.health.") {
		return handle(ctx, q)
	}
	if err := w.enter(ctx, wire.Items(q)); err != nil {
		return nil, err
	}
	defer w.leave()
	return handle(ctx, q)
}

// enter takes a worker for a call of so many items, and waits for it if it must.
func (w *workers) enter(ctx context.Context, items int) error {
	w.mu.Lock()
	switch {
	case w.free > 0:
		w.free--
		w.mu.Unlock()
		return nil
	case len(w.singles)+len(w.batch) >= w.room:
		w.mu.Unlock()
		return errBusy
	}
	line, me := w.line(items), &waiter{make(chan struct{})}
	*line = append(*line, me)
	w.mu.Unlock()
	over, stop := w.tooLong()
	defer stop()
	var err error
	select {
	case <-me.turn:
		return nil
	case <-over:
		err = errWaited
	case <-ctx.Done():
		err = status.FromContextError(ctx.Err()).Err()
	}
	w.mu.Lock()
	i := slices.Index(*line, me)
	if i >= 0 {
		*line = slices.Delete(*line, i, i+1)
	}
	w.mu.Unlock()
	switch {
	case i >= 0:
		return err
	case ctx.Err() == nil: // its turn came in the meantime
		return nil
	}
	w.leave()
	return err
}

func (w *workers) line(items int) *[]*waiter {
	if items > 1 {
		return &w.batch
	}
	return &w.singles
}

// leave gives a worker to the next that waits.
func (w *workers) leave() {
	w.mu.Lock()
	defer w.mu.Unlock()
	line := &w.singles
	switch {
	case len(w.singles)+len(w.batch) == 0:
		w.free++
		return
	case len(w.batch) == 0:
	case len(w.singles) == 0 || w.inTurn >= singlesInTurn:
		line, w.inTurn = &w.batch, 0
	default:
		w.inTurn++
	}
	close((*line)[0].turn)
	*line = slices.Delete(*line, 0, 1)
}

// waiting is how many calls wait.
func (w *workers) waiting() int {
	w.mu.Lock()
	defer w.mu.Unlock()
	return len(w.singles) + len(w.batch)
}
