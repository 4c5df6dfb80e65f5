package main

// These tests run the built program and kill, freeze and starve what it runs with.

import (
	"bufio"
	"fmt"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/metadata"
	grpcstatus "google.golang.org/grpc/status"

	"lugwright/internal/peer"
)

// built is the program, built once.
var built = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "lugwright")
	if err != nil {
		return "", err
	}
	program := filepath.Join(dir, "lugwright")
	out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("%v\n%s", err, out)
	}
	return program, nil
})

func TestMain(m *testing.M) {
	status := m.Run()
	if program, err := built(); err == nil {
		os.RemoveAll(filepath.Dir(program))
	}
	os.Exit(status)
}

func programOf(t *testing.T) string {
	t.Helper()
	program, err := built()
	if err != nil {
		t.Fatal(err)
	}
	return program
}

// serve starts both services in a process of their own and gives its address.
func serve(t *testing.T) (string, *os.Process) {
	t.Helper()
	return started(t, exec.Command(programOf(t), "serve"))
}

// started starts a service and gives the address that it prints.
func started(t *testing.T, cmd *exec.Cmd) (string, *os.Process) {
	t.Helper()
	out, err := cmd.StdoutPipe()
	if err == nil {
		err = cmd.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimSpace(line), cmd.Process
}

// faultFamily is 760 laps, one row of which cannot be read.
func faultFamily(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	common := "family: laps\nbasis: AISC 360-22\nmethod: ASD\ncases: {A: {level: service, source: own}}\nkind: lap-plate\nhand: left\n" +
		"loads: [{case: A, force: {x: 60 kN, y: 0 N, z: 0 N}}]\nparameters: {faces: two}\nrows: rows.csv\n"
	var rows strings.Builder
	rows.WriteString("lap_thickness [mm],lap_width [mm],weld [mm]\n")
	for i := range 760 {
		if i == 700 {
			rows.WriteString("8,eighty,5\n")
			continue
		}
		fmt.Fprintf(&rows, "%.1f,%d,%d\n", 4+float64(i%60)/10, 60+i/60, 3+i%4)
	}
	for name, text := range map[string]string{"family.yaml": common, "rows.csv": rows.String()} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return filepath.Join(dir, "family.yaml")
}

// attempt is one run of batch, which is hurt once it has written so many lines.
func attempt(t *testing.T, family, dir string, after int, hurt func(client *os.Process), args ...string) (string, int) {
	t.Helper()
	cmd := exec.Command(programOf(t), append([]string{"batch", family, "-o", dir}, args...)...)
	var out strings.Builder
	cmd.Stdout, cmd.Stderr = &out, &out
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	begun := time.Now()
	for hurt != nil {
		if lines(dir) >= after {
			hurt(cmd.Process)
			break
		}
		select {
		case err := <-ended:
			t.Fatalf("ended before it was hurt: %v\n%s", err, out.String())
		case <-time.After(time.Millisecond):
		}
		if time.Since(begun) > time.Minute {
			t.Fatalf("no %d lines after a minute\n%s", after, out.String())
		}
	}
	select {
	case <-ended:
	case <-time.After(2 * time.Minute):
		cmd.Process.Kill()
		t.Fatalf("does not end\n%s", out.String())
	}
	return out.String(), cmd.ProcessState.ExitCode()
}

func lines(dir string) int {
	src, _ := os.ReadFile(filepath.Join(dir, "results.jsonl"))
	return strings.Count(string(src), "\n")
}

// sameResults holds every file of a folder against one of a run that nothing happened to.
func sameResults(t *testing.T, dir, whole string) {
	t.Helper()
	for _, name := range []string{"family.json", "results.jsonl", "results.csv"} {
		got, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		want, err := os.ReadFile(filepath.Join(whole, name))
		if err != nil {
			t.Fatal(err)
		}
		if string(got) != string(want) {
			t.Errorf("%s: %d bytes, not those of an uninterrupted run, %d bytes", name, len(got), len(want))
		}
	}
}

func status(t *testing.T, out string, got, want int, words ...string) {
	t.Helper()
	if got != want {
		t.Errorf("status %d, want %d:\n%s", got, want, out)
	}
	for _, w := range words {
		if !strings.Contains(out, w) {
			t.Errorf("no %q in:\n%s", w, out)
		}
	}
}

func TestFaults(t *testing.T) {
	family := faultFamily(t)
	whole := filepath.Join(t.TempDir(), "whole")
	out, code := attempt(t, family, whole, 0, nil)
	status(t, out, code, 1, "1 refused", `rows.csv:702:3: lap_width: eighty`)
	if lines(whole) != 760 {
		t.Fatalf("%d lines", lines(whole))
	}
	folder := func(t *testing.T) string { return filepath.Join(t.TempDir(), "out") }
	pair := func(t *testing.T) (string, *os.Process, string, *os.Process) {
		a, first := serve(t)
		b, second := serve(t)
		return a, first, b, second
	}

	t.Run("a geometry replica is killed", func(t *testing.T) {
		a, dies, b, _ := pair(t)
		dir := folder(t)
		out, code := attempt(t, family, dir, 128, func(*os.Process) { dies.Kill() }, "--geometry", a+","+b, "--strength", b)
		status(t, out, code, 1)
		sameResults(t, dir, whole)
	})
	t.Run("a strength replica is killed", func(t *testing.T) {
		a, dies, b, _ := pair(t)
		dir := folder(t)
		out, code := attempt(t, family, dir, 128, func(*os.Process) { dies.Kill() }, "--geometry", b, "--strength", a+","+b)
		status(t, out, code, 1)
		sameResults(t, dir, whole)
	})
	t.Run("a replica hangs", func(t *testing.T) {
		a, hangs, b, _ := pair(t)
		dir := folder(t)
		out, code := attempt(t, family, dir, 128, func(*os.Process) { hangs.Signal(syscall.SIGSTOP) }, "--geometry", b, "--strength", a+","+b, "--timeout", "1s")
		status(t, out, code, 1)
		sameResults(t, dir, whole)
	})
	t.Run("every replica is killed, and another takes its place", func(t *testing.T) {
		a, dies, b, _ := pair(t)
		dir := folder(t)
		out, code := attempt(t, family, dir, 128, func(*os.Process) { dies.Kill() }, "--geometry", b, "--strength", a, "--patience", "500ms")
		status(t, out, code, 3, "strength service at "+a, "variants are done and kept in "+dir+"; the same line with --resume")
		kept := lines(dir)
		out, code = attempt(t, family, dir, 0, nil, "--geometry", b, "--strength", b, "--resume")
		status(t, out, code, 1)
		if kept < 128 {
			t.Errorf("%d lines were kept", kept)
		}
		sameResults(t, dir, whole)
	})
	t.Run("the client is killed", func(t *testing.T) {
		dir := folder(t)
		for _, after := range []int{64, 320, 600} {
			args := []string{"--resume"}
			out, code := attempt(t, family, dir, after, func(client *os.Process) { client.Kill() }, args...)
			status(t, out, code, -1)
		}
		out, code := attempt(t, family, dir, 0, nil)
		status(t, out, code, 4, "holds results already", "--resume goes on with them")
		out, code = attempt(t, family, dir, 0, nil, "--resume")
		status(t, out, code, 1, "1 refused")
		sameResults(t, dir, whole)
	})
	t.Run("the client is interrupted", func(t *testing.T) {
		dir := folder(t)
		out, code := attempt(t, family, dir, 128, func(client *os.Process) { client.Signal(syscall.SIGINT) })
		status(t, out, code, 130, "interrupted", "of 760 variants are done and kept in "+dir)
		out, code = attempt(t, family, dir, 0, nil, "--resume")
		status(t, out, code, 1)
		sameResults(t, dir, whole)
	})
	t.Run("the disk is full", func(t *testing.T) { diskFull(t, family, whole) })
	t.Run("a replica is of another version", func(t *testing.T) {
		a, _ := serve(t)
		for _, version := range []string{"2.0", ""} {
			other := otherVersion(t, version)
			dir := folder(t)
			out, code := attempt(t, family, dir, 0, nil, "--geometry", a, "--strength", a+","+other)
			status(t, out, code, 3, "strength service at "+other+" (one of ", "speaks interface version", "this client speaks 1.0", "run both from one release")
			if _, err := os.Stat(filepath.Join(dir, "results.jsonl")); err != nil {
				continue // it was met before the first variant
			}
			out, code = attempt(t, family, dir, 0, nil, "--geometry", a, "--strength", a, "--resume")
			status(t, out, code, 1)
			sameResults(t, dir, whole)
		}
	})
	t.Run("a result is cut short", func(t *testing.T) {
		dir := folder(t)
		if err := os.CopyFS(dir, os.DirFS(whole)); err != nil {
			t.Fatal(err)
		}
		if err := os.Truncate(filepath.Join(dir, "results.jsonl"), 150_001); err != nil {
			t.Fatal(err)
		}
		out, code := attempt(t, family, dir, 0, nil, "--resume")
		status(t, out, code, 1)
		sameResults(t, dir, whole)
	})
}

// diskFull writes to a file system that is too small, then goes on where there is room.
func diskFull(t *testing.T, family, whole string) {
	small := t.TempDir()
	if err := syscall.Mount("tmpfs", small, "tmpfs", 0, "size=192k"); err != nil {
		peer.Unable(t, "a small file system", err)
	}
	defer syscall.Unmount(small, 0)
	dir := filepath.Join(small, "out")
	out, code := attempt(t, family, dir, 0, nil)
	status(t, out, code, 4, "no space left on device", "variants are done and kept in "+dir)
	out, code = attempt(t, family, dir, 0, nil, "--resume")
	status(t, out, code, 4, "no space left on device")
	kept := lines(dir)
	if kept < 64 {
		t.Errorf("%d lines were kept", kept)
	}
	roomy := filepath.Join(t.TempDir(), "out")
	if err := os.CopyFS(roomy, os.DirFS(dir)); err != nil {
		t.Fatal(err)
	}
	out, code = attempt(t, family, roomy, 0, nil, "--resume")
	status(t, out, code, 1)
	sameResults(t, roomy, whole)
}

// otherVersion answers any call with an empty message and another version in its header.
func otherVersion(t *testing.T, version string) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	s := grpc.NewServer(grpc.UnknownServiceHandler(func(_ any, stream grpc.ServerStream) error {
		if method, _ := grpc.MethodFromServerStream(stream); strings.HasPrefix(method, "/grpc.") {
			return grpcstatus.Error(codes.Unimplemented, "no health service")
		}
		if version != "" {
			stream.SetHeader(metadata.Pairs("lugwright-api-version", version, "lugwright-tool-version", "v9"))
		}
		return stream.SendMsg(&struct{}{})
	}), grpc.ForceServerCodec(nothing{}))
	go s.Serve(l)
	t.Cleanup(s.Stop)
	return l.Addr().String()
}

// nothing writes and reads empty messages.
type nothing struct{}

func (nothing) Marshal(any) ([]byte, error) { return nil, nil }
func (nothing) Unmarshal([]byte, any) error { return nil }
func (nothing) Name() string                { return "proto" }
