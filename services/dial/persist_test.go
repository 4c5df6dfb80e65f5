package dial

import (
	"context"
	"testing"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"lugwright/services/wire"
)

var errBusyHere = &UnreachableError{Service: "geometry", Addr: "here", Why: wire.Busy + "all workers are taken", Failure: wire.Crowded}

// busyAt is a client's view of a service that says it is busy at the first so many attempts of a range.
func busyAt(t *testing.T, times int, patience time.Duration, meanwhile func(*peer)) *persistent {
	p := &persistent{peer: &peer{service: "geometry", local: true}, patience: patience}
	p.lost = func(i int, why error) { t.Errorf("item %d is named as the cause: %v", i, why) }
	p.ask = func(_ context.Context, from, to int) error {
		if from != 0 || to != 2 {
			t.Errorf("asked for %d to %d", from, to)
		}
		if times--; times >= 0 {
			meanwhile(p.peer)
			return errBusyHere
		}
		return nil
	}
	return p
}

// A busy service is asked again for the whole range, as often as it takes: no item is to blame.
func TestBusyIsNoFault(t *testing.T) {
	p := busyAt(t, mostLate+2, time.Hour, func(*peer) {})
	if err := p.items(t.Context(), 0, 2); err != nil {
		t.Error(err)
	}
}

// Patience ends where none of the client's messages is answered, and not before.
func TestTooBusy(t *testing.T) {
	if err := busyAt(t, 1000, time.Nanosecond, func(*peer) {}).items(t.Context(), 0, 2); err != errBusyHere {
		t.Errorf("got %v", err)
	}
	asked := 0
	err := busyAt(t, 1000, time.Nanosecond, func(p *peer) {
		if asked++; asked <= 3 {
			p.served.Add(1)
		}
	}).items(t.Context(), 0, 2)
	if err != errBusyHere || asked != 4 {
		t.Errorf("given up after %d: %v", asked, err)
	}
}

// A call is made again of a busy service, a few times more than it answers other calls of this client in the meantime.
func TestBusyCall(t *testing.T) {
	p := &peer{service: "geometry", addr: "here", local: true, known: true}
	asked := 0
	_, err := call(t.Context(), p, func(context.Context, int, ...grpc.CallOption) (int, error) {
		if asked++; asked <= 2 {
			p.served.Add(1)
		}
		return 0, status.Error(codes.Unavailable, wire.Busy+"no worker")
	}, 0)
	if failure(err) != wire.Crowded || asked != 1+mostBusy {
		t.Errorf("asked %d times: %v", asked, err)
	}
}

// What a server says in so many words is understood behind the layers that gRPC's retries put around it.
func TestBusyIsUnderstood(t *testing.T) {
	p := &peer{service: "geometry", addr: "here"}
	sent := status.Error(codes.Unavailable, "max retries exhausted: failed after 4 attempts: rpc error: code = Unavailable desc = busy: its memory is nearly full; try again later")
	err := p.explain(t.Context(), t.Context(), sent)
	if failure(err) != wire.Crowded || err.Error() != "geometry service at here: busy: its memory is nearly full; try again later" {
		t.Error(err)
	}
	if err := p.explain(t.Context(), t.Context(), status.Error(codes.Unavailable, "starting: its self-test is not over")); failure(err) != wire.Broken {
		t.Errorf("starting: %v", err)
	}
}
