package main

// Many clients at once against a server in another process: every answer is compared with what the libraries give.

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
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

// 500 clients, each with connections of its own, ask mixed questions for LUGWRIGHT_LOAD (a time, 3s when it is not set), and as many once more for as long.
// No answer is wrong; a call may be told that the server is busy, and nothing else. When they have gone, the second load has left no more behind than the first.
// The figures are printed.
func TestLoad(t *testing.T) {
	length := 3 * time.Second
	if text := os.Getenv("LUGWRIGHT_LOAD"); text != "" {
		var err error
		if length, err = time.ParseDuration(text); err != nil {
			t.Fatalf("LUGWRIGHT_LOAD: %v", err)
		}
	}
	p := launch(t, "--pprof", "127.0.0.1:0")
	all := questions(t)
	before := p.held(t)
	t.Logf("before: %s", before)
	needed := ask(t, p, all, length)
	first := p.emptied(t, before)
	t.Logf("after: %s", first)
	ask(t, p, all, length)
	second := p.emptied(t, before)
	t.Logf("after as much again: %s", second)
	p.stop(t, syscall.SIGTERM)
	// What a load needs once stays for the next: pools, tables that are made when first wanted. How much free memory Go gives back, and when, is its own affair,
	// so what is resident after the second load is held against what the first needed while it ran.
	for _, c := range []struct {
		what              string
		first, then, most int
	}{
		{"live heap, MB", first.heapMB, second.heapMB, 4},
		{"resident memory, MB", needed, second.residentMB, max(32, needed/4)},
		{"goroutines", first.goroutines, second.goroutines, 4},
		{"open files", first.files, second.files, 0},
	} {
		if c.then-c.first > c.most {
			t.Errorf("%s: %d with a load, %d after as much again, at most %d more", c.what, c.first, c.then, c.most)
		}
	}
	if second.goroutines-before.goroutines > 10 || second.files > before.files {
		t.Errorf("held before: %s; after: %s", before, second)
	}
}

// ask has the clients ask for some time, and prints how they fared. It returns the server's resident memory at the end of it, MB.
func ask(t *testing.T, p *process, all []question, length time.Duration) int {
	t.Helper()
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
	if len(took) == 0 {
		t.Fatal("nothing was answered")
	}
	slices.Sort(took)
	at := func(share float64) time.Duration {
		return took[int(share*float64(len(took)-1))].Round(100 * time.Microsecond)
	}
	resident := residentMB(t, p.Process.Pid)
	t.Logf("%d clients for %s: %d answers, none wrong; %d told busy; p50 %s, p99 %s; server %d MB at the end of it",
		clients, length, len(took), busy, at(0.5), at(0.99), resident)
	return resident
}

// held is what a server holds.
type held struct{ residentMB, heapMB, goroutines, files int }

func (h held) String() string {
	return fmt.Sprintf("%d MB resident, %d MB of live heap, %d goroutines, %d open files", h.residentMB, h.heapMB, h.goroutines, h.files)
}

// held asks a server that tells its profiles, after a collection.
func (p *process) held(t *testing.T) held {
	t.Helper()
	_, rest, _ := strings.Cut(p.log.String(), `"msg":"profiles","address":"`)
	profiles, _, ok := strings.Cut(rest, `"`)
	if !ok {
		t.Fatalf("no address of profiles in the log:\n%s", p.log.String())
	}
	number := func(page, before string) int {
		answer, err := http.Get(profiles + page)
		if err != nil {
			t.Fatal(err)
		}
		defer answer.Body.Close()
		text, err := io.ReadAll(answer.Body)
		if err != nil {
			t.Fatal(err)
		}
		_, rest, _ := strings.Cut(string(text), before)
		n := -1
		if fmt.Sscan(rest, &n); n < 0 {
			t.Fatalf("%s tells no %q", page, before)
		}
		return n
	}
	number("heap?gc=1&debug=1", "# HeapAlloc = ") // what is freed by one collection only, such as pools, goes with the next
	http.DefaultClient.CloseIdleConnections()
	h := held{
		heapMB:     number("heap?gc=1&debug=1", "# HeapAlloc = ") >> 20,
		goroutines: number("goroutine?debug=1", "goroutine profile: total "),
		residentMB: residentMB(t, p.Process.Pid),
	}
	if files, err := os.ReadDir(fmt.Sprintf("/proc/%d/fd", p.Process.Pid)); err == nil { // elsewhere nobody tells
		h.files = len(files)
	}
	return h
}

// emptied waits until the connections of clients that have gone are closed at the server too, and says what it holds then.
func (p *process) emptied(t *testing.T, before held) held {
	t.Helper()
	for range 100 {
		if h := p.held(t); h.files <= before.files {
			return h
		}
		time.Sleep(100 * time.Millisecond)
	}
	return p.held(t)
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
