package server

// What a probe is told while a server that lets in only clients with certificates starts, serves, drains and is gone.

import (
	"bytes"
	"context"
	"net"
	"regexp"
	"strings"
	"testing"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"lugwright/services/transport"
	"lugwright/services/transport/transporttest"
)

// slow tests itself for as long as it is let, and holds a call.
type slow struct {
	*rogue
	tested chan struct{}
}

func (s *slow) SelfTest(context.Context) error { <-s.tested; return nil }

var toldAt = regexp.MustCompile(`"msg":"health","address":"([^"]+)"`)

func TestProbe(t *testing.T) {
	noLeaks(t)
	ours := transporttest.New(t, "ours")
	server, me := ours.Issue(t, "server", valid), ours.Issue(t, "me", valid)
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	out, ended, log := make(lines, 1), make(chan int, 1), &syncBuffer{}
	service := &slow{&rogue{entered: make(chan struct{})}, make(chan struct{})}
	go func() {
		ended <- Daemon(ctx, "geometryd", []string{"--listen", "127.0.0.1:0", "--health", "127.0.0.1:0", "--grace", "30s",
			"--tls-cert", server.Cert, "--tls-key", server.Key, "--client-ca", ours.File}, out, log, nil, service)
	}()
	if !eventually(func() bool { return toldAt.MatchString(log.String()) }) {
		t.Fatal(log.String())
	}
	addr := toldAt.FindStringSubmatch(log.String())[1]
	asked := func(want int, says string) {
		t.Helper()
		var errs bytes.Buffer
		got := Daemon(t.Context(), "geometryd", []string{"probe", "--health", addr}, &bytes.Buffer{}, &errs, nil)
		if got != want || !strings.Contains(errs.String(), says) {
			t.Errorf("exit status %d, want %d: %s", got, want, &errs)
		}
	}
	asked(1, "not serving")
	close(service.tested)
	at := <-out
	asked(0, "")

	// Nothing else is told there.
	plaintext := connect(t, addr, transport.Client{})
	if _, err := ask(t, plaintext); status.Code(err) != codes.Unimplemented {
		t.Errorf("a service is reached in plaintext: %v", err)
	}
	plaintext.Close()

	conn := connect(t, at, transport.Client{CA: ours.File, Cert: me.Cert, Key: me.Key})
	call, cancel := context.WithCancel(t.Context())
	held := make(chan error, 1)
	go func() { held <- build(call, conn) }()
	<-service.entered
	stop()
	if !eventually(func() bool { return strings.Contains(log.String(), "draining") }) {
		t.Fatal(log.String())
	}
	eventually(func() bool { return Probe(t.Context(), addr) != nil })
	asked(1, "not serving")
	cancel()
	<-held
	conn.Close()
	if code := <-ended; code != 0 {
		t.Errorf("exit status %d", code)
	}
	asked(3, "no answer from "+addr)
}

func TestProbeRefuses(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"probe"}, `--health "": a probe needs the loopback address`},
		{[]string{"probe", "--health", "10.1.2.3:7400"}, "loopback address"},
		{[]string{"probe", "x"}, `argument "x"`},
		{[]string{"probe", "--nope"}, "-nope"},
		{[]string{"--health", ":7400"}, "plaintext stays on this machine"},
		{[]string{"--health", "7400"}, "plaintext stays on this machine"},
	} {
		var errs bytes.Buffer
		if code := Daemon(t.Context(), "geometryd", c.args, &bytes.Buffer{}, &errs, nil); code != 2 || !strings.Contains(errs.String(), c.want) {
			t.Errorf("%v: exit status %d, %s", c.args, code, &errs)
		}
	}
}

// Whoever accepts and says nothing holds a probe no longer than its time.
func TestProbeOfASilentServer(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	ctx, cancel := context.WithTimeout(t.Context(), 200*time.Millisecond)
	defer cancel()
	if err := Probe(ctx, l.Addr().String()); err == nil || !strings.Contains(err.Error(), "no answer from ") {
		t.Error(err)
	}
}
