package server

import (
	"bytes"
	"context"
	"errors"
	"io"
	"log/slog"
	"net"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"go.uber.org/goleak"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	reflectionpb "google.golang.org/grpc/reflection/grpc_reflection_v1"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protodesc"
	"google.golang.org/protobuf/reflect/protoregistry"
	"google.golang.org/protobuf/types/descriptorpb"

	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	"lugwright/services/transport"
)

const name = "lugwright.geometry.v1alpha1.GeometryService"

// rogue panics, hangs, and handles a batch with a poisoned item.
type rogue struct {
	pb.UnimplementedGeometryServiceServer
	entered chan struct{}
}

func (s *rogue) Register(r grpc.ServiceRegistrar) string {
	pb.RegisterGeometryServiceServer(r, s)
	return name
}

func (s *rogue) ListKinds(context.Context, *pb.ListKindsRequest) (*pb.ListKindsResponse, error) {
	panic("secret")
}

func (s *rogue) BuildBracket(ctx context.Context, _ *pb.BuildBracketRequest) (*pb.BuildBracketResponse, error) {
	close(s.entered)
	<-ctx.Done()
	return nil, ctx.Err()
}

func (s *rogue) BuildBrackets(ctx context.Context, q *pb.BuildBracketsRequest) (*pb.BuildBracketsResponse, error) {
	results, err := Batch(ctx, q.Orders, func(_ context.Context, o *pb.BracketOrder) (*pb.BuildResult, error) {
		switch o.Name {
		case "poison":
			panic("secret")
		case "bad":
			return nil, errors.New("bad")
		}
		return &pb.BuildResult{}, nil
	}, func(err error) *pb.BuildResult { return nil })
	return &pb.BuildBracketsResponse{Results: results}, err
}

type running struct {
	*Server
	conn *grpc.ClientConn
	addr string
	log  *syncBuffer
	done chan error

	tlsLog *syncBuffer
}

// syncBuffer is a log that may be read while it is written.
type syncBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (s *syncBuffer) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.Write(p)
}

func (s *syncBuffer) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.String()
}

func start(t *testing.T, services ...Service) *running {
	t.Helper()
	return startWith(t, Options{}, services...)
}

// startWith serves on a loopback port until the test ends, and has a plaintext connection to it. Nothing may be left running then.
func startWith(t *testing.T, o Options, services ...Service) *running {
	t.Helper()
	noLeaks(t)
	l, err := Listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	r := &running{log: &syncBuffer{}, done: make(chan error, 1), addr: l.Addr().String()}
	o.Log = textLog(r.log)
	r.Server = New(o, services...)
	go func() { r.done <- r.Serve(l) }()
	r.conn = connect(t, r.addr, transport.Client{})
	t.Cleanup(func() {
		r.conn.Close()
		r.Stop(time.Second)
		if err := <-r.done; err != nil {
			t.Errorf("serving ended with %v", err)
		}
	})
	return r
}

// noLeaks fails a test that leaves something running. It is called first, so that what the test closes is closed by then.
func noLeaks(t *testing.T) {
	before := goleak.IgnoreCurrent()
	t.Cleanup(func() { goleak.VerifyNone(t, before) })
}

// connect is a connection secured as a client's options say.
func connect(t *testing.T, addr string, security transport.Client, more ...grpc.DialOption) *grpc.ClientConn {
	t.Helper()
	options, err := security.Options(addr)
	if err != nil {
		t.Fatal(err)
	}
	conn, err := grpc.NewClient("passthrough:///"+addr, append(options, more...)...)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { conn.Close() })
	return conn
}

func TestHealth(t *testing.T) {
	r := start(t, &rogue{})
	health := healthpb.NewHealthClient(r.conn)
	for _, service := range []string{"", name} {
		answer, err := health.Check(t.Context(), &healthpb.HealthCheckRequest{Service: service})
		if err != nil || answer.Status != healthpb.HealthCheckResponse_SERVING {
			t.Errorf("%q: %v, %v", service, answer, err)
		}
	}
	if _, err := health.Check(t.Context(), &healthpb.HealthCheckRequest{Service: "other"}); status.Code(err) != codes.NotFound {
		t.Errorf("an unknown service is %v", err)
	}
}

// Watchers learn that the server is going before it is gone.
func TestHealthTurnsBeforeTheStop(t *testing.T) {
	r := start(t, &rogue{})
	watch, err := healthpb.NewHealthClient(r.conn).Watch(t.Context(), &healthpb.HealthCheckRequest{Service: name})
	if err != nil {
		t.Fatal(err)
	}
	if first, err := watch.Recv(); err != nil || first.Status != healthpb.HealthCheckResponse_SERVING {
		t.Fatal(first, err)
	}
	go r.Stop(50 * time.Millisecond)
	if next, err := watch.Recv(); err != nil || next.Status != healthpb.HealthCheckResponse_NOT_SERVING {
		t.Errorf("got %v, %v", next, err)
	}
}

// The server lists its services under both names of reflection, and hands out every file, as protodesc writes it, of what they speak; a file that
// was sent comes along no more, and what is not known is refused while the stream goes on.
func TestReflection(t *testing.T) {
	r := start(t, &rogue{})
	for _, version := range []string{"v1", "v1alpha"} {
		stream, err := r.conn.NewStream(t.Context(), &grpc.StreamDesc{ServerStreams: true, ClientStreams: true}, "/grpc.reflection."+version+".ServerReflection/ServerReflectionInfo")
		if err != nil {
			t.Fatal(err)
		}
		ask := func(q *reflectionpb.ServerReflectionRequest) *reflectionpb.ServerReflectionResponse {
			t.Helper()
			var a reflectionpb.ServerReflectionResponse
			if err := errors.Join(stream.SendMsg(q), stream.RecvMsg(&a)); err != nil {
				t.Fatal(err)
			}
			return &a
		}
		var names []string
		for _, s := range ask(&reflectionpb.ServerReflectionRequest{MessageRequest: &reflectionpb.ServerReflectionRequest_ListServices{}}).GetListServicesResponse().GetService() {
			names = append(names, s.Name)
			if len(ofSymbol(ask, s.Name)) == 0 {
				t.Errorf("%s: no file of %s", version, s.Name)
			}
		}
		want := []string{"grpc.health.v1.Health", "grpc.reflection.v1.ServerReflection", "grpc.reflection.v1alpha.ServerReflection", name}
		if !slices.Equal(names, want) {
			t.Errorf("%s: services %v", version, names)
		}
		if got := ask(&reflectionpb.ServerReflectionRequest{MessageRequest: &reflectionpb.ServerReflectionRequest_FileContainingSymbol{FileContainingSymbol: "no.Such"}}); got.GetErrorResponse().GetErrorCode() != int32(codes.NotFound) {
			t.Errorf("%s: unknown symbol: %v", version, got)
		}
		if n := len(ofSymbol(ask, name)); n != 1 {
			t.Errorf("%s: %d files the second time", version, n)
		}
		if n := len(ask(&reflectionpb.ServerReflectionRequest{MessageRequest: &reflectionpb.ServerReflectionRequest_AllExtensionNumbersOfType{AllExtensionNumbersOfType: "lugwright.part.v1alpha1.Vec"}}).GetAllExtensionNumbersResponse().GetExtensionNumber()); n != 0 {
			t.Errorf("%s: %d extensions", version, n)
		}
		stream.CloseSend()
	}
}

// Each file of a service and of all that it imports is what protodesc writes.
func TestReflectedFiles(t *testing.T) {
	r := start(t, &rogue{})
	stream, err := reflectionpb.NewServerReflectionClient(r.conn).ServerReflectionInfo(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	ask := func(q *reflectionpb.ServerReflectionRequest) *reflectionpb.ServerReflectionResponse {
		stream.Send(q)
		a, err := stream.Recv()
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	files := ofSymbol(ask, name)
	if len(files) < 5 {
		t.Errorf("%d files", len(files))
	}
	for _, b := range files {
		var got descriptorpb.FileDescriptorProto
		if err := proto.Unmarshal(b, &got); err != nil {
			t.Fatal(err)
		}
		f, err := protoregistry.GlobalFiles.FindFileByPath(got.GetName())
		if err != nil {
			t.Fatal(err)
		}
		if !proto.Equal(&got, protodesc.ToFileDescriptorProto(f)) {
			t.Errorf("%s differs", got.GetName())
		}
		byName := ask(&reflectionpb.ServerReflectionRequest{MessageRequest: &reflectionpb.ServerReflectionRequest_FileByFilename{FileByFilename: got.GetName()}})
		if list := byName.GetFileDescriptorResponse().GetFileDescriptorProto(); len(list) != 1 || !bytes.Equal(list[0], b) {
			t.Errorf("%s by name: %d files", got.GetName(), len(list))
		}
	}
	stream.CloseSend()
}

func ofSymbol(ask func(*reflectionpb.ServerReflectionRequest) *reflectionpb.ServerReflectionResponse, symbol string) [][]byte {
	q := &reflectionpb.ServerReflectionRequest{MessageRequest: &reflectionpb.ServerReflectionRequest_FileContainingSymbol{FileContainingSymbol: symbol}}
	return ask(q).GetFileDescriptorResponse().GetFileDescriptorProto()
}

func TestPanicIsInternal(t *testing.T) {
	r := start(t, &rogue{})
	client := pb.NewGeometryServiceClient(r.conn)
	_, err := client.ListKinds(t.Context(), &pb.ListKindsRequest{})
	if status.Code(err) != codes.Internal || strings.Contains(err.Error(), "secret") {
		t.Errorf("got %v", err)
	}
	if log := r.log.String(); !strings.Contains(log, "secret") || !strings.Contains(log, "server_test.go") {
		t.Errorf("log %s", log)
	}
	orders := []*pb.BracketOrder{{Name: "a"}, {Name: "poison"}, {Name: "bad"}, {Name: "b"}}
	answer, err := client.BuildBrackets(t.Context(), &pb.BuildBracketsRequest{Orders: orders})
	if err != nil || len(answer.Results) != 4 {
		t.Errorf("the poisoned batch gave %v, %v", answer, err)
	}
	if !strings.Contains(r.log.String(), "item 1 of a batch") {
		t.Errorf("log %s", r.log.String())
	}
}

func TestBatchEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	done := 0
	_, err := Batch(ctx, make([]int, 9), func(context.Context, int) (int, error) {
		if done++; done == 3 {
			cancel()
		}
		return 0, nil
	}, func(error) int { return 0 })
	if err != context.Canceled || done != 3 {
		t.Errorf("%v after %d items", err, done)
	}
}

func TestStopCutsWhatHangs(t *testing.T) {
	s := &rogue{entered: make(chan struct{})}
	r := start(t, s)
	failed := make(chan error, 1)
	go func() {
		_, err := pb.NewGeometryServiceClient(r.conn).BuildBracket(t.Context(), &pb.BuildBracketRequest{})
		failed <- err
	}()
	<-s.entered
	began := time.Now()
	r.Stop(100 * time.Millisecond)
	if took := time.Since(began); took < 90*time.Millisecond {
		t.Errorf("stopped after %s", took)
	}
	if err := <-failed; err == nil {
		t.Error("the hanging call was answered")
	}
}

func TestListen(t *testing.T) {
	for addr, want := range map[string]string{
		"0.0.0.0:0":    "not on this machine alone",
		":7401":        "not on this machine alone",
		"10.1.2.3:1":   "not on this machine alone",
		"example:1":    "not on this machine alone",
		"127.0.0.1":    "write host:port",
		"127.0.0.1:-1": "listen address",
	} {
		if _, err := Listen(addr); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", addr, err, want)
		}
	}
	for _, addr := range []string{"127.0.0.1:0", "localhost:0"} {
		l, err := Listen(addr)
		if err != nil {
			t.Errorf("%s: %v", addr, err)
			continue
		}
		l.Close()
	}
}

type lines chan string

func (l lines) Write(p []byte) (int, error) { l <- strings.TrimSpace(string(p)); return len(p), nil }

func TestDaemon(t *testing.T) {
	noLeaks(t)
	ctx, stop := context.WithCancel(t.Context())
	out, ended := make(lines, 1), make(chan int, 1)
	go func() {
		ended <- Daemon(ctx, "geometryd", []string{"--listen", "127.0.0.1:0"}, out, &bytes.Buffer{}, nil, &rogue{})
	}()
	conn, err := net.Dial("tcp", <-out)
	if err != nil {
		t.Fatal(err)
	}
	conn.Close()
	stop()
	if code := <-ended; code != 0 {
		t.Errorf("exit status %d", code)
	}
	for _, c := range []struct {
		args []string
		code int
		want string
	}{
		{[]string{"--listen", "0.0.0.0:0"}, 2, "plaintext"},
		{[]string{"--nope"}, 2, "-nope"},
		{[]string{"x"}, 2, `argument "x"`},
		{[]string{"-h"}, 0, "-listen"},
	} {
		var errs bytes.Buffer
		if code := Daemon(t.Context(), "geometryd", c.args, &bytes.Buffer{}, &errs, nil); code != c.code || !strings.Contains(errs.String(), c.want) {
			t.Errorf("%v: exit status %d, %s", c.args, code, &errs)
		}
	}
}

func textLog(w io.Writer) *slog.Logger { return slog.New(slog.NewTextHandler(w, nil)) }
