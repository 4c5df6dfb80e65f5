package main

// Several replicas under one name, over TLS with certificates on both sides: they die and others join while a batch runs.

import (
	"bufio"
	"bytes"
	"fmt"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"google.golang.org/grpc/resolver/dns"

	"lugwright/client/command"
	"lugwright/internal/peer"
	"lugwright/services/dial/dialtest"
	"lugwright/services/transport/transporttest"
)

// gRPC looks a name up twice no sooner than after half a minute; here sooner, so that nobody waits for it.
func init() { dns.SetMinResolutionInterval(50 * time.Millisecond) }

const shared = "lugwright.test"

// A machine is one loopback address with both services in a process of their own.
type machine struct {
	addr string
	cmd  *exec.Cmd
	log  bytes.Buffer
}

// start serves on the port that all machines have.
func start(t *testing.T, addr, port string, a *transporttest.Authority) *machine {
	t.Helper()
	cert := a.Issue(t, shared, 24*time.Hour)
	m := &machine{addr: addr, cmd: exec.Command(programOf(t), "serve", "--listen", net.JoinHostPort(addr, port),
		"--tls-cert", cert.Cert, "--tls-key", cert.Key, "--client-ca", a.File)}
	m.cmd.Stderr = &m.log
	out, err := m.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := m.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(m.kill)
	if line, err := bufio.NewReader(out).ReadString('\n'); err != nil {
		t.Fatalf("%s: %q, %v", addr, line, err)
	}
	return m
}

// kill returns when the process is gone; its log is whole then.
func (m *machine) kill() {
	m.cmd.Process.Kill()
	m.cmd.Wait()
}

// answered is how many calls the machine answered.
func (m *machine) answered() int {
	return strings.Count(m.log.String(), `"code":"OK"`)
}

// freePort is a port that several loopback addresses have free.
func freePort(t *testing.T, hosts ...string) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	_, port, _ := net.SplitHostPort(l.Addr().String())
	for _, h := range hosts {
		other, err := net.Listen("tcp", net.JoinHostPort(h, port))
		if err != nil {
			peer.Unable(t, h+" as an address of this machine", err)
		}
		other.Close()
	}
	return port
}

func TestReplicasDieAndJoin(t *testing.T) {
	family := filepath.Join(t.TempDir(), "family.yaml")
	if err := os.WriteFile(family, []byte("family: laps\nbasis: AISC 360-22\nmethod: ASD\ncases: {A: {level: service, source: own}}\nkind: lap-plate\nhand: left\n"+
		"loads: [{case: A, force: {x: 60 kN, y: 0 N, z: 0 N}}]\nparameters: {faces: two}\n"+
		"grid:\n  lap_thickness: {from: 4 mm, to: 9.9 mm, step: 0.1 mm}\n  lap_width: {from: 60 mm, to: 89 mm, step: 1 mm}\n  weld: [3 mm, 4 mm]\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	const variants = 60 * 30 * 2
	hosts := []string{"127.0.7.1", "127.0.7.2", "127.0.7.3", "127.0.7.4"}
	port := freePort(t, hosts...)
	a := transporttest.New(t, "authority")
	me := a.Issue(t, "client", 24*time.Hour)
	names := dialtest.NewNames(t, shared+".")
	first, second := start(t, hosts[0], port, a), start(t, hosts[1], port, a)
	names.Set(first.addr, second.addr)

	dir := filepath.Join(t.TempDir(), "out")
	at := fmt.Sprintf("dns://%s/%s:%s", names.Addr, shared, port)
	var out, errs bytes.Buffer
	ended := make(chan int, 1)
	go func() {
		ended <- command.Main(t.Context(), []string{"lugwright", "batch", family, "-o", dir, "--geometry", at, "--strength", at,
			"--ca", a.File, "--cert", me.Cert, "--key", me.Key}, command.Streams{Out: &out, Err: &errs})
	}()
	reached := func(n int) {
		t.Helper()
		for begun := time.Now(); lines(dir) < n; time.Sleep(time.Millisecond) {
			if len(ended) > 0 || time.Since(begun) > 2*time.Minute {
				t.Fatalf("%d of %d lines\n%s%s", lines(dir), n, &out, &errs)
			}
		}
	}

	// One dies, and another takes its place under the name.
	reached(variants / 8)
	first.kill()
	third := start(t, hosts[2], port, a)
	names.Set(second.addr, third.addr)
	// The last that was there from the beginning dies: all goes to the one that joined.
	reached(variants / 4)
	second.kill()
	names.Set(third.addr)
	// The only one dies, and nobody is there until another joins.
	reached(variants / 2)
	names.Set()
	third.kill()
	fourth := start(t, hosts[3], port, a)
	names.Set(fourth.addr)

	code := <-ended
	status(t, out.String()+errs.String(), code, 1, fmt.Sprint(variants, " variants"))
	for i, m := range []*machine{first, second, third, fourth} {
		m.kill()
		if m.answered() == 0 {
			t.Errorf("machine %d answered no call", i+1)
		}
	}
	whole := filepath.Join(t.TempDir(), "whole")
	var alone bytes.Buffer // by the same program: its version is in the results
	if code := command.Main(t.Context(), []string{"lugwright", "batch", family, "-o", whole}, command.Streams{Out: &alone, Err: &alone}); code != 1 || lines(whole) != variants {
		t.Fatalf("alone: status %d, %d lines\n%s", code, lines(whole), &alone)
	}
	sameResults(t, dir, whole)
}
