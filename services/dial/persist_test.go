package dial

import (
	"context"
	"errors"
	"net"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
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

// Patience begins with the last answer to any of the client's messages.
func TestTooBusy(t *testing.T) {
	for answers, asks := range map[int]int{0: 3, 3: 6} {
		synctest.Test(t, func(t *testing.T) {
			asked := 0
			err := busyAt(t, 1000, time.Minute, func(p *peer) {
				time.Sleep(20 * time.Second)
				if asked++; asked <= answers {
					p.heard.Store(time.Now().UnixNano())
				}
			}).items(t.Context(), 0, 2)
			if err != errBusyHere || asked != asks {
				t.Errorf("%d answers: given up after %d, want %d: %v", answers, asked, asks, err)
			}
		})
	}
}

// A call is made again of a busy service, a few times more than it answers other calls of this client in the meantime.
func TestBusyCall(t *testing.T) {
	p := &peer{service: "geometry", addr: "here", local: true, known: true}
	asked := 0
	_, err := call(t.Context(), p, func(context.Context, int, ...grpc.CallOption) (int, error) {
		if asked++; asked <= 2 {
			p.heard.Add(1)
		}
		return 0, status.Error(codes.Unavailable, wire.Busy+"no worker")
	}, 0)
	if failure(err) != wire.Crowded || asked != 1+mostBusy {
		t.Errorf("asked %d times: %v", asked, err)
	}
}

// The question for the service's version, which a client's first call begins with, is asked again of a busy service as the call itself is.
func TestBusyAtTheFirstCall(t *testing.T) {
	for _, c := range []struct {
		busy, asks, calls int
		fails             bool
	}{{mostBusy - 1, mostBusy, 1, false}, {1000, mostBusy, 0, true}} {
		synctest.Test(t, func(t *testing.T) {
			asks, calls := 0, 0
			p := &peer{service: "geometry", addr: "here", local: true, timeout: time.Minute}
			p.info = func(context.Context, ...grpc.CallOption) (versioned, error) {
				if asks++; asks <= c.busy {
					return nil, status.Error(codes.Unavailable, wire.Busy+"no worker")
				}
				return &geometrypb.GetServiceInfoResponse{ApiVersion: wire.APIVersion}, nil
			}
			got, err := call(t.Context(), p, func(context.Context, int, ...grpc.CallOption) (int, error) {
				calls++
				return 7, nil
			}, 0)
			if asks != c.asks || calls != c.calls || (failure(err) == wire.Crowded) != c.fails || (err == nil) == c.fails || (got == 7) == c.fails {
				t.Errorf("busy %d times: asked %d times for the version, called %d times: %d, %v", c.busy, asks, calls, got, err)
			}
		})
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

// Asking again helps where a replica may come, come back or make room, and not where a client is refused for what it has or what answers is something else.
func TestMayReturn(t *testing.T) {
	const handshake = `connection error: desc = "transport: authentication handshake failed: `
	p := &peer{service: "geometry", addr: "here"}
	for _, c := range []struct {
		code codes.Code
		why  string
		may  bool
	}{
		{codes.Unavailable, `connection error: desc = "transport: Error while dialing: dial tcp 127.0.0.1:1: connect: connection refused"`, true},
		{codes.Unavailable, "error reading from server: EOF", true},
		{codes.Unavailable, handshake + `EOF"`, true},
		{codes.Unavailable, handshake + `read tcp 127.0.0.1:2->127.0.0.1:1: read: connection reset by peer"`, true},
		{codes.Unavailable, "error reading from server: write tcp 127.0.0.1:2->127.0.0.1:1: write: broken pipe", true},
		{codes.Unavailable, `connection error: desc = "error reading server preface: EOF"`, true},
		{codes.Unavailable, unhealthy, true},
		{codes.Unavailable, "starting: its self-test is not over", true},
		{codes.Unavailable, wire.Busy + "no worker", true},
		{codes.DeadlineExceeded, "x", true},
		{codes.Unauthenticated, "the token is missing or not the right one", false},
		{codes.Unimplemented, "x", false},
		{codes.InvalidArgument, "x", false},
		{codes.Unavailable, handshake + `tls: first record does not look like a TLS handshake"`, false},
		{codes.Unavailable, handshake + `tls: failed to verify certificate: x509: certificate signed by unknown authority"`, false},
		{codes.Unavailable, handshake + `tls: failed to verify certificate: x509: certificate is valid for localhost, not elsewhere"`, false},
		{codes.Unavailable, handshake + `tls: failed to verify certificate: x509: certificate has expired or is not yet valid: "`, false},
		{codes.Unavailable, handshake + `tls: failed to verify certificate: x509: certificate is not valid for any names, but wanted to match elsewhere"`, false},
		{codes.Unavailable, "error reading from server: remote error: tls: certificate required", false},
		{codes.Unavailable, "error reading from server: remote error: tls: bad certificate", false},
	} {
		if err := p.explain(t.Context(), t.Context(), status.Error(c.code, c.why)); MayReturn(err) != c.may {
			t.Errorf("%v: asking again may help: %v", err, !c.may)
		}
	}
}

// A late replica rests only where another one has answered meanwhile: else it may be the only one that lives.
func TestWhoRests(t *testing.T) {
	r := newReplicas([]string{"a:1", "b:1"}, "")
	a, b := &net.TCPAddr{IP: net.IPv4(10, 0, 0, 1), Port: 1}, &net.TCPAddr{IP: net.IPv4(10, 0, 0, 2), Port: 1}
	r.named = map[string]string{a.String(): "a:1", b.String(): "b:1"}
	defer r.close()
	rests := func(want string) {
		t.Helper()
		got := ""
		for addr := range r.resting {
			got += addr
		}
		if got != want || len(r.state().Endpoints) != 2-len(r.resting) {
			t.Errorf("%q rests, want %q; %v", got, want, r.state())
		}
	}
	r.answered(b)
	begun := time.Now()
	r.late(a, begun) // b has answered before the call, and not since
	rests("")
	r.answered(a)
	r.late(b, begun)
	rests("b:1")
	r.answered(b) // what was on its way
	r.late(a, begun)
	rests("b:1")
}

// The client's patience begins with the last answer of any replica, and every replica is asked whether it answers.
func TestPatienceBeginsWithTheLastAnswer(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var probes atomic.Int32
		p := &peer{service: "strength", addr: "a:1,b:1", timeout: time.Minute, count: new(atomic.Int32)}
		p.count.Store(2)
		p.info = func(context.Context, ...grpc.CallOption) (versioned, error) {
			probes.Add(1)
			return nil, errors.New("frozen")
		}
		asked := 0
		begun := time.Now()
		m := persistent{peer: p, patience: time.Minute, ask: func(context.Context, int, int) error {
			asked++
			time.Sleep(50 * time.Second)
			if asked <= 3 {
				p.heard.Store(time.Now().UnixNano()) // another message had its answer
			}
			return p.failed(wire.Late, "did not answer within 1m0s")
		}}
		if err := m.items(t.Context(), 0, 64); failure(err) != wire.Late {
			t.Errorf("got %v", err)
		}
		if took := time.Since(begun); asked != 5 || took < 250*time.Second || took > 251*time.Second {
			t.Errorf("%d times asked, and given up after %s: three answers, the last after 150 s, then a minute", asked, took)
		}
		if n := probes.Load(); n != 10 {
			t.Errorf("%d probes of two replicas after five failures", n)
		}
		p.info = func(context.Context, ...grpc.CallOption) (versioned, error) {
			if probes.Add(1)%2 == 0 {
				return nil, nil
			}
			time.Sleep(time.Second)
			return nil, errors.New("frozen")
		}
		if !m.answers(t.Context()) {
			t.Error("one of two replicas answers, and that was not found out")
		}
		synctest.Wait()
		time.Sleep(2 * time.Second)
	})
}
