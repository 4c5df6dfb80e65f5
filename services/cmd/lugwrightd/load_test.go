package main

// Many clients at once against a server in another process: every answer is compared with what the libraries give.

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"google.golang.org/protobuf/proto"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/services/wire"
	"lugwright/strength"
	"lugwright/strength/basis"
	"lugwright/vehicle/whole"
	"lugwright/vehicle/whole/wholetest"
)

const clients = 500

// question asks one thing and says whether the answer is wrong; a call that got no answer is err.
type question struct {
	name string
	ask  func(context.Context, *dial.Client) (wrong string, err error)
}

func questions(t *testing.T) []question {
	t.Helper()
	var out []question
	bases, every := basis.All(), kinds.All()
	for _, k := range every {
		q := geometry.Request{Kind: k.Name, Name: "load", Hand: part.LeftHand}
		b, err := geometry.Build(every, q)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, question{"build " + k.Name, func(ctx context.Context, c *dial.Client) (string, error) {
			got, err := c.Build(ctx, []geometry.Request{q, q})
			if err != nil {
				return "", err
			}
			return differs(got[1].Err == nil && proto.Equal(wire.EncodeBracket(got[1].Bracket), wire.EncodeBracket(b))), nil
		}})
		cases := []part.Case{{Name: "down", Level: part.Service, Source: "load test", Force: part.Vec{Z: -3000}}}
		if len(b.LoadPoints) > 1 {
			cases[0].LoadPoint = b.LoadPoints[0].ID
		}
		report, err := strength.Run(bases[0], b, cases, strength.Options{})
		if err != nil {
			continue // no path for this load
		}
		out = append(out, question{"check " + k.Name, func(ctx context.Context, c *dial.Client) (string, error) {
			got, err := c.Check(ctx, []dial.CheckRequest{{Bracket: b, Cases: cases}})
			if err != nil {
				return "", err
			}
			return differs(got[0].Err == nil && proto.Equal(wire.EncodeReport(got[0].Report), wire.EncodeReport(report))), nil
		}})
	}
	want, err := whole.Reckon(wholetest.FieldLab())
	if err != nil {
		t.Fatal(err)
	}
	wantBytes := proto.MarshalOptions{Deterministic: true}
	vehicle, err := wantBytes.Marshal(wire.EncodeVehicleAnswer(want))
	if err != nil {
		t.Fatal(err)
	}
	return append(out,
		question{"vehicle", func(ctx context.Context, c *dial.Client) (string, error) {
			a, err := c.Vehicle(ctx, wholetest.FieldLab())
			if err != nil {
				return "", err
			}
			got, err := wantBytes.Marshal(wire.EncodeVehicleAnswer(a))
			return differs(err == nil && slices.Equal(got, vehicle)), nil
		}},
		question{"kinds", func(ctx context.Context, c *dial.Client) (string, error) {
			got, err := c.Kinds(ctx)
			if err != nil {
				return "", err
			}
			return differs(slices.EqualFunc(got, every, func(a, b geometry.Kind) bool { return a.Name == b.Name && reflect.DeepEqual(a.Params, b.Params) })), nil
		}},
		question{"refused kind", func(ctx context.Context, c *dial.Client) (string, error) {
			got, err := c.Build(ctx, []geometry.Request{{Kind: "no such", Name: "x", Hand: part.LeftHand}})
			if err != nil {
				return "", err
			}
			return differs(len(part.Fields(got[0].Err)) == 1), nil
		}},
	)
}

func differs(same bool) string {
	if same {
		return ""
	}
	return "another answer than the library's"
}

// 500 clients, each with connections of its own, ask mixed questions for LUGWRIGHT_LOAD (a time, 3s when it is not set). No answer is
// wrong; a call may be told that the server is busy, and nothing else. The figures are printed.
func TestLoad(t *testing.T) {
	length := 3 * time.Second
	if text := os.Getenv("LUGWRIGHT_LOAD"); text != "" {
		var err error
		if length, err = time.ParseDuration(text); err != nil {
			t.Fatalf("LUGWRIGHT_LOAD: %v", err)
		}
	}
	p := launch(t)
	all := questions(t)
	before := residentMB(t, p.Process.Pid)
	ctx, cancel := context.WithCancel(t.Context())
	timer := time.AfterFunc(length, cancel)
	defer timer.Stop()
	var mu sync.Mutex
	var took []time.Duration
	busy := 0
	var wait sync.WaitGroup
	for n := range clients {
		wait.Go(func() {
			c, err := dial.Remote(p.addr, p.addr, dial.Options{})
			if err != nil {
				t.Error(err)
				return
			}
			defer c.Close()
			choose := rand.New(rand.NewPCG(uint64(n), 1))
			for ctx.Err() == nil {
				q := all[choose.IntN(len(all))]
				began := time.Now()
				wrong, err := q.ask(t.Context(), c) // not ctx: what has begun is finished
				mu.Lock()
				switch {
				case wrong != "":
					t.Errorf("%s: %s", q.name, wrong)
				case err == nil:
					took = append(took, time.Since(began))
				case errors.Is(err, dial.ErrUnreachable) && strings.Contains(err.Error(), "busy"):
					busy++
				default:
					t.Errorf("%s: %v", q.name, err)
				}
				mu.Unlock()
			}
		})
	}
	wait.Wait()
	under := residentMB(t, p.Process.Pid)
	p.stop(t, syscall.SIGTERM)
	if len(took) == 0 {
		t.Fatal("nothing was answered")
	}
	slices.Sort(took)
	at := func(share float64) time.Duration {
		return took[int(share*float64(len(took)-1))].Round(100 * time.Microsecond)
	}
	t.Logf("%d clients for %s: %d answers, none wrong; %d told busy; p50 %s, p99 %s; server %d MB before, %d MB after",
		clients, length, len(took), busy, at(0.5), at(0.99), before, under)
}

// residentMB is the memory of a process, 0 where the system does not tell.
func residentMB(t *testing.T, pid int) int {
	t.Helper()
	b, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0
	}
	_, rest, _ := strings.Cut(string(b), "VmRSS:")
	var kb int
	fmt.Sscan(rest, &kb)
	return kb / 1024
}
