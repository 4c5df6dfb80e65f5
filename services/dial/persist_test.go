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

	"lugwright/services/wire"
)

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
