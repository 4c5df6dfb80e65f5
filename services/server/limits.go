package server

// What is asked of a server at once is bounded at two doors. At the first, when a call's headers arrive and nothing of its message is read: by token, number,
// memory and time. At the second, when the message is there (queue.go).

import (
	"context"
	"log/slog"
	"runtime"
	"runtime/metrics"
	"strings"
	"sync/atomic"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/grpc/tap"

	"lugwright/services/transport"
	"lugwright/services/wire"
)

// Limits bound what a server does at once. The zero value stands for DefaultLimits.
type Limits struct {
	Workers     int           // calls worked on
	Queue       int           // calls that wait for a worker
	Calls       int           // calls in all, those still arriving or being read by their client included
	Streams     int           // calls on one connection
	Connections int           // connections
	CallTime    time.Duration // of one call, from its first header on
}

// DefaultLimits suit this machine.
func DefaultLimits() Limits {
	workers := runtime.GOMAXPROCS(0)
	return Limits{Workers: workers, Queue: 32 * workers, Calls: 1024, Streams: 64, Connections: 1024, CallTime: 30 * time.Second}
}

// Refusals of a server that has enough to do. Clients of ours come again after a while, to another replica if there is one.
var (
	errStarting = status.Error(codes.Unavailable, "starting: its self-test is not over")
	errCrowded  = status.Error(codes.Unavailable, wire.Busy+"as many calls at once as it takes; try again later")
	errMemory   = status.Error(codes.Unavailable, wire.Busy+"its memory is nearly full; try again later")
	errBusy     = status.Error(codes.Unavailable, wire.Busy+"all workers and all places to wait are taken; try again later")
	errWaited   = status.Error(codes.Unavailable, wire.Busy+"no worker was free for it in time; try again later")
)

// door is the first of the two.
type door struct {
	log      *slog.Logger
	gate     *transport.Gate // nil: no token is asked for
	limits   Limits
	fullFrom uint64 // live heap, bytes, from which no call is taken; 0: no bound
	closed   atomic.Bool
	calls    atomic.Int64
	drain    context.Context // ends when open streams are to end
}

// enter is called with a call's headers, before its message is read, and one at a time on each connection: it never waits.
func (d *door) enter(ctx context.Context, info *tap.Info) (context.Context, error) {
	if strings.HasPrefix(info.FullMethodName, "/grpc.health.") {
		return d.endingWithDrain(ctx), nil // asked by those who decide whether this server gets calls; a watch lasts as long as its connection
	}
	if err := d.refusal(info); err != nil {
		logRefusal(ctx, d.log, info.FullMethodName, err)
		return ctx, err
	}
	d.calls.Add(1)
	context.AfterFunc(ctx, func() { d.calls.Add(-1) })
	if strings.HasPrefix(info.FullMethodName, "/grpc.reflection.") {
		ctx = d.endingWithDrain(ctx)
	}
	ctx, cancel := context.WithTimeout(ctx, d.limits.CallTime)
	context.AfterFunc(ctx, cancel)
	return ctx, nil
}

func (d *door) refusal(info *tap.Info) error {
	if d.gate != nil {
		if err := d.gate.Admit(info.Header); err != nil {
			return err
		}
	}
	switch {
	case d.closed.Load():
		return errStarting
	case d.calls.Load() >= int64(d.limits.Calls):
		return errCrowded
	case d.fullFrom > 0 && liveHeap() >= d.fullFrom:
		return errMemory
	}
	return nil
}

// endingWithDrain is a context that ends with its call or when streams are to end: an open stream would keep the server from stopping.
func (d *door) endingWithDrain(ctx context.Context) context.Context {
	ctx, cancel := context.WithCancel(ctx)
	release := context.AfterFunc(d.drain, cancel)
	context.AfterFunc(ctx, func() { release() })
	return ctx
}

// liveHeap is what the last collection found in use, in bytes.
func liveHeap() uint64 {
	sample := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	metrics.Read(sample)
	return sample[0].Value.Uint64()
}
