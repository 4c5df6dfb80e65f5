package main

// The built program in a process of its own: stopped and killed under load, and called by a client of another make.

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/status"

	"lugwright/geometry"
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	"lugwright/services/dial"
	"lugwright/services/transport/transporttest"
)

// program is built once for all tests of a run.
var program = sync.OnceValues(func() (string, error) {
	path := filepath.Join(folder, "lugwrightd")
	if out, err := exec.Command("go", "build", "-o", path, ".").CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w\n%s", err, out)
	}
	return path, nil
})

var folder string // of the program

func TestMain(m *testing.M) {
	var err error
	if folder, err = os.MkdirTemp("", "lugwrightd"); err != nil {
		panic(err)
	}
	code := m.Run()
	os.RemoveAll(folder)
	os.Exit(code)
}

// process is a running server.
type process struct {
	*exec.Cmd
	addr string
	log  logged
}

// logged is what a process has logged so far.
type logged struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (l *logged) Write(b []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.Write(b)
}

func (l *logged) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.String()
}

func launch(t *testing.T, args ...string) *process {
	t.Helper()
	path, err := program()
	if err != nil {
		t.Fatal(err)
	}
	p := &process{Cmd: exec.Command(path, args...)}
	p.Stderr = &p.log
	out, err := p.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := p.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if p.ProcessState == nil {
			p.Process.Kill()
			p.Wait()
		}
	})
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		p.Wait()
		t.Fatalf("no address: %v\n%s", err, &p.log)
	}
	p.addr = strings.TrimSpace(line)
	return p
}

func (p *process) stop(t *testing.T, s os.Signal) {
	t.Helper()
	if err := p.Process.Signal(s); err != nil {
		t.Fatal(err)
	}
	if err := p.Wait(); err != nil && s != os.Kill {
		t.Errorf("ended with %v\n%s", err, &p.log)
	}
}

// logged are the lines of the log, each a JSON object.
func (p *process) logged(t *testing.T) []map[string]any {
	t.Helper()
	var out []map[string]any
	for line := range strings.Lines(p.log.String()) {
		var entry map[string]any
		if err := json.Unmarshal([]byte(line), &entry); err != nil {
			t.Errorf("%v in the line %s", err, line)
		}
		out = append(out, entry)
	}
	return out
}

func orders(n int) []geometry.Request {
	out := make([]geometry.Request, n)
	for i := range out {
		out[i] = geometry.Request{Kind: "clevis", Name: fmt.Sprintf("n%d", i), Hand: part.LeftHand}
	}
	return out
}

// Told to stop under load, the server finishes every call that it has taken: as many were answered as it says it has answered.
func TestStoppedUnderLoad(t *testing.T) {
	p := launch(t)
	conn, err := grpc.NewClient(p.addr, grpc.WithTransportCredentials(insecure.NewCredentials()), grpc.WithDisableRetry())
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	q := &pb.BuildBracketsRequest{}
	for i := range 64 {
		q.Orders = append(q.Orders, &pb.BracketOrder{Kind: "clevis", Name: fmt.Sprintf("n%d", i), Hand: 1})
	}
	var answered atomic.Int64
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for {
				a, err := pb.NewGeometryServiceClient(conn).BuildBrackets(context.Background(), q)
				if err != nil {
					if status.Code(err) != codes.Unavailable {
						t.Errorf("got %v", err)
					}
					return
				}
				if len(a.Results) != 64 {
					t.Errorf("%d results", len(a.Results))
				}
				answered.Add(1)
			}
		})
	}
	for answered.Load() < 8 {
		time.Sleep(time.Millisecond)
	}
	p.stop(t, syscall.SIGTERM)
	wait.Wait()
	done := 0
	var words []string
	for _, e := range p.logged(t) {
		words = append(words, fmt.Sprint(e["msg"]))
		if e["msg"] == "call" {
			if e["code"] != "OK" || e["request"] == "" || e["peer"] == "" {
				t.Errorf("%v", e)
			}
			done++
		}
	}
	if done != int(answered.Load()) {
		t.Errorf("%d calls answered, %d logged as such", answered.Load(), done)
	}
	if all := strings.Join(words, " "); !strings.HasPrefix(all, "configuration self-test passed self-test passed serving") || !strings.HasSuffix(all, "stopped") || !strings.Contains(all, "draining") {
		t.Errorf("log: %s", all)
	}
}

// A server that is killed in the middle of a sweep loses nothing: the client asks the other. Started again it serves again.
func TestKilledAndRestarted(t *testing.T) {
	one, two := launch(t), launch(t)
	c, err := dial.Remote(one.addr+","+two.addr, one.addr+","+two.addr, dial.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	if _, err := c.Kinds(t.Context()); err != nil {
		t.Fatal(err)
	}
	killed := make(chan struct{})
	go func() {
		defer close(killed)
		time.Sleep(100 * time.Millisecond)
		one.stop(t, os.Kill)
	}()
	q := orders(3000)
	built, err := c.Build(t.Context(), q)
	if err != nil {
		t.Fatal(err)
	}
	for i, b := range built {
		if b.Err != nil || b.Bracket.Name != q[i].Name {
			t.Fatalf("item %d: %v", i, b.Err)
		}
	}
	<-killed
	launch(t, "--listen", one.addr)
	two.stop(t, os.Kill)
	for began := time.Now(); ; {
		built, err := c.Build(t.Context(), q[:10])
		if err == nil && built[9].Bracket.Name == q[9].Name {
			return
		}
		if time.Since(began) > 30*time.Second {
			t.Fatalf("the server that was started again does not serve: %v", err)
		}
	}
}

// What it says when it cannot run, and how it ends then.
func TestRefusesToRun(t *testing.T) {
	path, err := program()
	if err != nil {
		t.Fatal(err)
	}
	a := transporttest.New(t, "authority")
	old := a.Issue(t, "old", time.Minute)
	for _, c := range []struct {
		args, env []string
		want      string
	}{
		{[]string{"--listen", "0.0.0.0:0"}, nil, "plaintext must not leave it"},
		{[]string{"--tls-cert", old.Cert, "--tls-key", old.Key}, nil, "expired on"},
		{[]string{"--tls-cert", old.Cert}, nil, "give both"},
		{[]string{"--client-ca", a.File}, nil, "needs TLS"},
		{[]string{"--token-file", a.File}, nil, "--token-file " + a.File + ": more than one word in it"},
		{[]string{"--workers", "0"}, nil, "a number from 1"},
		{[]string{"--call-time", "1ms"}, nil, "from 100ms"},
		{[]string{"--memory", "1"}, nil, "write MiB"},
		{[]string{"--pprof", "0.0.0.0:0"}, nil, "profiles stay on this machine"},
		{nil, []string{"LUGWRIGHT_WORKERS=many"}, `LUGWRIGHT_WORKERS: "many" is not taken; write a whole number`},
		{nil, []string{"LUGWRIGHT_LISTEN=0.0.0.0:0"}, "plaintext must not leave it"},
		{nil, []string{"OTEL_TRACES_EXPORTER=zipkin"}, "write otlp or none"},
	} {
		cmd := exec.Command(path, c.args...)
		cmd.Env = append(os.Environ(), c.env...)
		out, err := cmd.CombinedOutput()
		if cmd.ProcessState.ExitCode() != 2 || !strings.Contains(string(out), "lugwrightd: error: ") || !strings.Contains(string(out), c.want) {
			t.Errorf("%v %v: %v, %s", c.args, c.env, err, out)
		}
	}
}

// A client of another make learns the interface by reflection and calls both services.
func TestThirdParty(t *testing.T) {
	if os.Getenv("LUGWRIGHT_PEERS") != "require" {
		if _, err := exec.LookPath("buf"); err != nil {
			t.Skip("buf is built by .ci/run")
		}
	}
	p := launch(t)
	for method, c := range map[string]struct{ ask, want string }{
		"geometry.v1alpha1.GeometryService/GetServiceInfo": {`{}`, `"goVersion": "go1.`},
		"geometry.v1alpha1.GeometryService/BuildBracket":   {`{"order": {"kind": "clevis", "name": "rear", "hand": "HAND_LEFT"}}`, `"plates"`},
		"strength.v1alpha1.StrengthService/ListBases":      {`{"cardsOnly": true}`, `"AISC 360-22"`},
		// A bolt M20 8.8 in shear: 0.6 x 800 MPa x 245 mm2 / 1.25, EN 1993-1-8 table 3.4; the class is the third of its choices.
		"strength.v1alpha1.StrengthService/EvaluateLimit": {`{"basis": "EN 1993-1-8:2005", "limit": "bolt-shear", "givens": [
			{"symbol": "F_v_Ed", "values": [1000]}, {"symbol": "d", "values": [20]}, {"symbol": "A", "values": [245]}, {"symbol": "f_ub", "values": [800]}, {"symbol": "class", "values": [2]}]}`, `"capacity": 94080`},
	} {
		out, err := bufCurl(t, p.addr, "lugwright."+method, c.ask)
		if err != nil || !strings.Contains(out, c.want) {
			t.Errorf("%s: %v, %s", method, err, out)
		}
	}
}

func bufCurl(t *testing.T, addr, method, ask string) (string, error) {
	t.Helper()
	args := []string{"curl", "--protocol", "grpc", "--http2-prior-knowledge", "--data", ask, "http://" + addr + "/" + method}
	cmd := exec.Command("buf", args...)
	if os.Getenv("LUGWRIGHT_PEERS") == "require" {
		cmd = exec.Command("go", append([]string{"tool", "-modfile=tools/buf/go.mod", "buf"}, args...)...)
		cmd.Dir = "../../.."
	}
	out, err := cmd.CombinedOutput()
	return string(out), err
}
