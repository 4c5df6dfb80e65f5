package server

import (
	"context"
	"errors"
	"slices"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/wire"
)

// queue is a second door whose calls wait until they are told that it was too long.
type queue struct {
	*workers
	t       *testing.T
	tooLong chan time.Time

	mu    sync.Mutex
	order []int // items of the calls as they got their worker
	ends  chan error
}

func newQueue(t *testing.T, l Limits) *queue {
	q := &queue{workers: newWorkers(l), t: t, tooLong: make(chan time.Time), ends: make(chan error, 100)}
	q.workers.tooLong = func() (<-chan time.Time, func()) { return q.tooLong, func() {} }
	return q
}

// wait has a call wait for a worker, which it gives to the next at once.
func (q *queue) wait(ctx context.Context, items int) {
	q.t.Helper()
	before := q.waiting()
	go func() {
		err := q.enter(ctx, items)
		if err == nil {
			q.mu.Lock()
			q.order = append(q.order, items)
			q.mu.Unlock()
			q.leave()
		}
		q.ends <- err
	}()
	if !eventually(func() bool { return q.waiting() == before+1 }) {
		q.t.Fatal("it does not wait")
	}
}

// taken has a queue with one worker, who is taken.
func taken(t *testing.T, room int) *queue {
	q := newQueue(t, Limits{Workers: 1, Queue: room})
	if err := q.enter(t.Context(), 1); err != nil {
		t.Fatal(err)
	}
	return q
}

// A call for one thing goes before batches that came earlier; a batch has its turn after some of these.
func TestSinglesGoFirst(t *testing.T) {
	q := taken(t, 100)
	q.wait(t.Context(), 256)
	q.wait(t.Context(), 64)
	const singles = singlesInTurn + 2
	for range singles {
		q.wait(t.Context(), 1)
	}
	q.leave()
	for range singles + 2 {
		if err := <-q.ends; err != nil {
			t.Error(err)
		}
	}
	want := append(slices.Repeat([]int{1}, singlesInTurn), 256, 1, 1, 64)
	if !slices.Equal(q.order, want) {
		t.Errorf("worked on in the order %v, want %v", q.order, want)
	}
	if q.free != 1 || q.waiting() != 0 {
		t.Errorf("%d workers are free, %d calls wait", q.free, q.waiting())
	}
}

// Who has waited for too long is told that the server is busy, and one who finds no place to wait at once; who leaves takes no worker along.
func TestNobodyWaitsForLong(t *testing.T) {
	q := taken(t, 2)
	q.wait(t.Context(), 1)
	q.wait(t.Context(), 9)
	if err := q.enter(t.Context(), 1); err != errBusy {
		t.Errorf("without a place to wait: %v", err)
	}
	for range 2 {
		q.tooLong <- time.Time{}
		if err := <-q.ends; err != errWaited {
			t.Errorf("after too long: %v", err)
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	q.wait(ctx, 1)
	cancel()
	if err := <-q.ends; err == nil || errors.Is(err, errWaited) {
		t.Errorf("after its client left: %v", err)
	}
	if q.waiting() != 0 {
		t.Errorf("%d still wait", q.waiting())
	}
	q.leave()
	if err := q.enter(t.Context(), 1); err != nil {
		t.Errorf("when there is a worker: %v", err)
	}
}

// The bound is a share of the longest time of a call, which leaves time to ask another replica.
func TestWaitIsAShare(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		begun := time.Now()
		over, stop := newWorkers(Limits{CallTime: time.Minute}).tooLong()
		defer stop()
		<-over
		if waited := time.Since(begun); waited != 6*time.Second {
			t.Errorf("a call of a minute at most waits for %s, want a tenth of it", waited)
		}
	})
}

func TestItems(t *testing.T) {
	for want, q := range map[int]any{
		1: &geometrypb.BuildBracketRequest{},
		3: &geometrypb.BuildBracketsRequest{Orders: make([]*geometrypb.BracketOrder, 3)},
		2: &strengthpb.CheckBracketsRequest{Items: make([]*strengthpb.CheckItem, 2)},
	} {
		if got := wire.Items(q); got != want {
			t.Errorf("%T: %d items, want %d", q, got, want)
		}
	}
}
