package server

// Overload and misbehaving clients, each over a real connection, each beside what must come of it.

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/binary"
	"fmt"
	"io"
	"net"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"golang.org/x/net/http2"
	"golang.org/x/net/http2/hpack"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	_ "google.golang.org/grpc/encoding/gzip" // telemetry brings it into the servers
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/status"

	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	"lugwright/services/transport"
)

const buildMethod = "/" + name + "/BuildBracket"

// held answers BuildBracket when it is let go, GetServiceInfo at once, and ListKinds with a long answer.
type held struct {
	pb.UnimplementedGeometryServiceServer
	running atomic.Int64
	cut     atomic.Int64 // calls whose context ended
	release chan struct{}
}

func (h *held) Register(r grpc.ServiceRegistrar) string {
	pb.RegisterGeometryServiceServer(r, h)
	return name
}

func (h *held) BuildBracket(ctx context.Context, _ *pb.BuildBracketRequest) (*pb.BuildBracketResponse, error) {
	h.running.Add(1)
	defer h.running.Add(-1)
	select {
	case <-h.release:
		return &pb.BuildBracketResponse{}, nil
	case <-ctx.Done():
		h.cut.Add(1)
		return nil, status.FromContextError(ctx.Err()).Err()
	}
}

func (h *held) GetServiceInfo(context.Context, *pb.GetServiceInfoRequest) (*pb.GetServiceInfoResponse, error) {
	return &pb.GetServiceInfoResponse{}, nil
}

func (h *held) ListKinds(context.Context, *pb.ListKindsRequest) (*pb.ListKindsResponse, error) {
	return &pb.ListKindsResponse{Kinds: []*pb.Kind{{Sentence: strings.Repeat("x", 4<<20)}}}, nil
}

func limited(change func(*Limits)) Options {
	l := DefaultLimits()
	change(&l)
	return Options{Limits: l}
}

func build(ctx context.Context, conn grpc.ClientConnInterface) error {
	_, err := pb.NewGeometryServiceClient(conn).BuildBracket(ctx, &pb.BuildBracketRequest{})
	return err
}

// One call is worked on, two wait, the next is refused at once; who waits is served when there is room, or leaves when its time is up.
func TestBusy(t *testing.T) {
	h := &held{release: make(chan struct{})}
	r := startWith(t, limited(func(l *Limits) { l.Workers, l.Queue, l.CallTime = 1, 2, time.Hour }), h) // a tenth of an hour is time enough to wait
	var wait sync.WaitGroup
	for range 2 {
		wait.Go(func() {
			if err := build(t.Context(), r.conn); err != nil {
				t.Error(err)
			}
		})
	}
	if !eventually(func() bool { return h.running.Load() == 1 && r.workers.waiting() == 1 }) {
		t.Fatal("one is not worked on while one waits")
	}
	ctx, cancel := context.WithTimeout(t.Context(), 100*time.Millisecond)
	defer cancel()
	impatient := make(chan error, 1)
	go func() { impatient <- build(ctx, r.conn) }()
	if !eventually(func() bool { return r.workers.waiting() == 2 || ctx.Err() != nil }) {
		t.Fatal("the queue does not fill")
	}
	if ctx.Err() == nil {
		if err := build(t.Context(), r.conn); status.Code(err) != codes.Unavailable || !strings.Contains(err.Error(), "busy") {
			t.Errorf("the fourth: %v", err)
		}
	}
	if err := <-impatient; status.Code(err) != codes.DeadlineExceeded {
		t.Errorf("who waited for too long: %v", err)
	}
	if !eventually(func() bool { return r.workers.waiting() == 1 }) {
		t.Error("who left still has a place")
	}
	if a, err := healthpb.NewHealthClient(r.conn).Check(t.Context(), &healthpb.HealthCheckRequest{}); err != nil || a.Status != healthpb.HealthCheckResponse_SERVING {
		t.Errorf("health of a busy server: %v, %v", a, err)
	}
	close(h.release)
	wait.Wait()
}

// The first door counts calls of all connections.
func TestCrowded(t *testing.T) {
	h := &held{release: make(chan struct{})}
	r := startWith(t, limited(func(l *Limits) { l.Calls = 3 }), h)
	var wait sync.WaitGroup
	for range 3 {
		conn := connect(t, r.addr, transport.Client{})
		wait.Go(func() {
			if err := build(t.Context(), conn); err != nil {
				t.Error(err)
			}
		})
	}
	eventually(func() bool { return r.door.calls.Load() == 3 })
	if _, err := ask(t, r.conn); status.Code(err) != codes.Unavailable || !strings.Contains(err.Error(), "as many calls at once as it takes") {
		t.Errorf("the fourth: %v", err)
	}
	close(h.release)
	wait.Wait()
	if !eventually(func() bool { return r.door.calls.Load() == 0 }) {
		t.Errorf("%d calls are counted when none is there", r.door.calls.Load())
	}
	if _, err := ask(t, r.conn); err != nil {
		t.Errorf("afterwards: %v", err)
	}
}

func TestMemory(t *testing.T) {
	runtime.GC()
	r := startWith(t, Options{Memory: 4 << 10}, &held{})
	if _, err := ask(t, r.conn); status.Code(err) != codes.Unavailable || !strings.Contains(err.Error(), "memory") {
		t.Errorf("got %v", err)
	}
	if live := liveHeap(); live == 0 {
		t.Error("no live heap")
	}
}

// A connection beyond the number is closed at once; one that ends makes room.
func TestConnections(t *testing.T) {
	r := startWith(t, limited(func(l *Limits) { l.Connections = 2 }), &held{})
	first, second := connect(t, r.addr, transport.Client{}), connect(t, r.addr, transport.Client{})
	for _, c := range []*grpc.ClientConn{first, second} {
		if _, err := ask(t, c); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := ask(t, r.conn); status.Code(err) != codes.Unavailable {
		t.Errorf("the third: %v", err)
	}
	first.Close()
	if !eventually(func() bool { _, err := ask(t, r.conn); return err == nil }) {
		t.Error("the closed connection makes no room")
	}
}

// A call that has not ended by the longest time is cut, though its client would wait for ever.
func TestCallTime(t *testing.T) {
	h := &held{}
	r := startWith(t, limited(func(l *Limits) { l.CallTime = 200 * time.Millisecond }), h)
	if err := build(t.Context(), r.conn); status.Code(err) != codes.DeadlineExceeded || h.cut.Load() != 1 {
		t.Errorf("got %v, %d cut", err, h.cut.Load())
	}
}

// No call is answered before Ready, and health says so.
func TestStarting(t *testing.T) {
	r := startWith(t, Options{Starting: true}, &held{})
	health := healthpb.NewHealthClient(r.conn)
	for _, service := range []string{"", name} {
		if a, err := health.Check(t.Context(), &healthpb.HealthCheckRequest{Service: service}); err != nil || a.Status != healthpb.HealthCheckResponse_NOT_SERVING {
			t.Errorf("%q: %v, %v", service, a, err)
		}
	}
	if _, err := ask(t, r.conn); status.Code(err) != codes.Unavailable || !strings.Contains(err.Error(), "starting") {
		t.Errorf("got %v", err)
	}
	r.Ready()
	if _, err := ask(t, r.conn); err != nil {
		t.Errorf("when ready: %v", err)
	}
}

// rawClient is a client that speaks HTTP/2 by hand, and so may break every custom of it.
type rawClient struct {
	t *testing.T
	net.Conn
	*http2.Framer
	ended sync.Map // stream to how it ended: "REFUSED_STREAM", "grpc-status 4"
	count atomic.Int64
}

func dialWire(t *testing.T, addr string, settings ...http2.Setting) *rawClient {
	t.Helper()
	c, err := net.Dial("tcp", addr)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	w := &rawClient{t: t, Conn: c, Framer: http2.NewFramer(c, c)}
	w.Framer.ReadMetaHeaders = hpack.NewDecoder(4096, nil)
	if _, err := io.WriteString(c, http2.ClientPreface); err != nil {
		t.Fatal(err)
	}
	if err := w.WriteSettings(settings...); err != nil {
		t.Fatal(err)
	}
	return w
}

// listen notes how streams end, until the connection does.
func (w *rawClient) listen() (done chan struct{}) {
	done = make(chan struct{})
	go func() {
		defer close(done)
		for {
			f, err := w.ReadFrame()
			if err != nil {
				return
			}
			switch f := f.(type) {
			case *http2.RSTStreamFrame:
				w.end(f.StreamID, f.ErrCode.String())
			case *http2.MetaHeadersFrame:
				for _, h := range f.Fields {
					if h.Name == "grpc-status" {
						w.end(f.StreamID, "grpc-status "+h.Value)
					}
				}
			}
		}
	}()
	return done
}

func (w *rawClient) end(stream uint32, how string) {
	if _, twice := w.ended.LoadOrStore(stream, how); !twice {
		w.count.Add(1)
	}
}

// open begins a call, and says nothing of its message.
func (w *rawClient) open(stream uint32, method string, more ...hpack.HeaderField) {
	w.t.Helper()
	var b bytes.Buffer
	e := hpack.NewEncoder(&b)
	e.SetMaxDynamicTableSize(0)
	for _, h := range append([]hpack.HeaderField{
		{Name: ":method", Value: "POST"}, {Name: ":scheme", Value: "http"}, {Name: ":path", Value: method}, {Name: ":authority", Value: "x"},
		{Name: "content-type", Value: "application/grpc"}, {Name: "te", Value: "trailers"},
	}, more...) {
		if err := e.WriteField(h); err != nil {
			w.t.Fatal(err)
		}
	}
	if err := w.WriteHeaders(http2.HeadersFrameParam{StreamID: stream, BlockFragment: b.Bytes(), EndHeaders: true}); err != nil {
		w.t.Fatal(err)
	}
}

// prefix is what stands before a message of so many bytes.
func prefix(compressed byte, size uint32) []byte {
	return binary.BigEndian.AppendUint32([]byte{compressed}, size)
}

func (w *rawClient) endsWith(stream uint32, how string) {
	w.t.Helper()
	if !eventually(func() bool { _, ok := w.ended.Load(stream); return ok }) {
		w.t.Errorf("stream %d did not end", stream)
		return
	}
	if got, _ := w.ended.Load(stream); got != how {
		w.t.Errorf("stream %d ended with %v, want %s", stream, got, how)
	}
}

// A client that begins messages and sends no more of them loses its calls at their longest time, and others are served all the while.
func TestSlowWriter(t *testing.T) {
	r := startWith(t, limited(func(l *Limits) { l.CallTime = 300 * time.Millisecond }), &held{})
	w := dialWire(t, r.addr)
	w.listen()
	const calls = 40
	for i := range uint32(calls) {
		w.open(2*i+1, buildMethod)
		if err := w.WriteData(2*i+1, false, prefix(0, 1000)); err != nil {
			t.Fatal(err)
		}
	}
	eventually(func() bool { return r.door.calls.Load() == calls })
	if _, err := ask(t, r.conn); err != nil {
		t.Errorf("another client: %v", err)
	}
	for i := range uint32(calls) {
		w.endsWith(2*i+1, fmt.Sprint("grpc-status ", uint32(codes.DeadlineExceeded)))
	}
	if !eventually(func() bool { return r.door.calls.Load() == 0 }) {
		t.Errorf("%d calls are still counted", r.door.calls.Load())
	}
}

// A client that does not read its answers holds no worker, and what is kept for it goes when its connection does.
func TestSlowReader(t *testing.T) {
	r := startWith(t, limited(func(l *Limits) { l.Workers, l.Queue = 1, 32 }), &held{})
	w := dialWire(t, r.addr, http2.Setting{ID: http2.SettingInitialWindowSize, Val: 1})
	done := w.listen()
	for i := range uint32(8) {
		w.open(2*i+1, "/"+name+"/ListKinds")
		if err := w.WriteData(2*i+1, true, prefix(0, 0)); err != nil {
			t.Fatal(err)
		}
	}
	for range 20 {
		if _, err := ask(t, r.conn); err != nil {
			t.Fatalf("another client: %v", err)
		}
	}
	w.Close()
	<-done
	if !eventually(func() bool { return r.door.calls.Load() == 0 }) {
		t.Errorf("%d calls are still counted", r.door.calls.Load())
	}
}

// A connection that never greets, and one whose client is gone without a word, are closed by the server.
func TestHalfOpen(t *testing.T) {
	r := startWith(t, Options{greeting: 200 * time.Millisecond, ping: time.Second}, &held{})
	mute, err := net.Dial("tcp", r.addr)
	if err != nil {
		t.Fatal(err)
	}
	defer mute.Close()
	gone := dialWire(t, r.addr)
	eventually(func() bool { return len(r.places) == 2 })
	gone.open(1, buildMethod) // it reads nothing from here on, and answers no ping
	if !eventually(func() bool { return len(r.places) == 0 }) {
		t.Errorf("%d connections are still there", len(r.places))
	}
	if _, err := ask(t, r.conn); err != nil {
		t.Errorf("another client: %v", err)
	}
}

// A call that its client resets, or whose connection is reset, ends at the server.
func TestResetInTheMiddle(t *testing.T) {
	h := &held{}
	r := startWith(t, Options{}, h)
	w := dialWire(t, r.addr)
	w.listen()
	for _, stream := range []uint32{1, 3} {
		w.open(stream, buildMethod)
		if err := w.WriteData(stream, true, prefix(0, 0)); err != nil {
			t.Fatal(err)
		}
	}
	eventually(func() bool { return h.running.Load() == 2 })
	if err := w.WriteRSTStream(1, http2.ErrCodeCancel); err != nil {
		t.Fatal(err)
	}
	if !eventually(func() bool { return h.cut.Load() == 1 && h.running.Load() == 1 }) {
		t.Errorf("%d cut after the reset of a stream", h.cut.Load())
	}
	w.Conn.(*net.TCPConn).SetLinger(0) // so that Close resets
	w.Close()
	if !eventually(func() bool { return h.cut.Load() == 2 && h.running.Load() == 0 }) {
		t.Errorf("%d cut after the reset of the connection", h.cut.Load())
	}
	if _, err := ask(t, r.conn); err != nil {
		t.Errorf("another client: %v", err)
	}
}

// A message longer than the bound is refused, by its announced length and before it is read.
func TestGiantMessage(t *testing.T) {
	r := startWith(t, Options{}, &held{})
	giant := &pb.BuildBracketRequest{Order: &pb.BracketOrder{Name: strings.Repeat("x", MaxMessageBytes)}}
	if _, err := pb.NewGeometryServiceClient(r.conn).BuildBracket(t.Context(), giant); status.Code(err) != codes.ResourceExhausted {
		t.Errorf("got %v", err)
	}
	w := dialWire(t, r.addr)
	w.listen()
	before := allocated()
	for i := range uint32(30) {
		w.open(2*i+1, buildMethod)
		if err := w.WriteData(2*i+1, false, prefix(0, 1<<32-1)); err != nil {
			t.Fatal(err)
		}
		w.endsWith(2*i+1, fmt.Sprint("grpc-status ", uint32(codes.ResourceExhausted)))
	}
	if grown := allocated() - before; grown > 64<<20 {
		t.Errorf("%d MiB for messages that were only announced", grown>>20)
	}
}

func allocated() uint64 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.TotalAlloc
}

// A message that is small on the way and huge unpacked is refused at the bound; an unknown packing is
// refused outright.
func TestCompressedBomb(t *testing.T) {
	r := startWith(t, Options{}, &held{})
	var bomb bytes.Buffer
	z := gzip.NewWriter(&bomb)
	if _, err := z.Write(make([]byte, 3*MaxMessageBytes)); err != nil {
		t.Fatal(err)
	}
	z.Close()
	if bomb.Len() > 60_000 { // the window that a client has before the server reads
		t.Fatalf("a bomb of %d bytes", bomb.Len())
	}
	w := dialWire(t, r.addr)
	w.listen()
	for i, c := range []struct {
		packing string
		code    codes.Code
	}{{"gzip", codes.ResourceExhausted}, {"snail", codes.Unimplemented}} {
		stream := uint32(2*i + 1)
		before := allocated()
		w.open(stream, buildMethod, hpack.HeaderField{Name: "grpc-encoding", Value: c.packing})
		if err := w.WriteData(stream, false, prefix(1, uint32(bomb.Len()))); err != nil {
			t.Fatal(err)
		}
		for piece := range slices.Chunk(bomb.Bytes(), 16<<10) { // the longest that a frame may be
			if err := w.WriteData(stream, false, piece); err != nil {
				t.Fatal(err)
			}
		}
		w.endsWith(stream, fmt.Sprint("grpc-status ", uint32(c.code)))
		if grown := allocated() - before; grown > 3*MaxMessageBytes {
			t.Errorf("%s: %d MiB", c.packing, grown>>20)
		}
	}
	if _, err := ask(t, r.conn); err != nil {
		t.Errorf("another client: %v", err)
	}
}

// Of 10,000 streams on one connection so many live as are allowed, and the rest are refused; another client is served, and memory stays small.
func TestTenThousandStreams(t *testing.T) {
	h := &held{release: make(chan struct{})}
	r := startWith(t, Options{}, h)
	w := dialWire(t, r.addr)
	w.listen()
	const streams, live = 10_000, 64
	for i := range uint32(streams) {
		w.open(2*i+1, buildMethod)
	}
	if !eventually(func() bool { return w.count.Load() == streams-live }) {
		t.Errorf("%d of %d streams ended, want all but %d", w.count.Load(), streams, live)
	}
	w.ended.Range(func(stream, how any) bool {
		if how != "REFUSED_STREAM" {
			t.Errorf("stream %v ended with %v", stream, how)
			return false
		}
		return true
	})
	if n := r.door.calls.Load(); n != live {
		t.Errorf("%d calls are counted", n)
	}
	if _, err := ask(t, r.conn); err != nil {
		t.Errorf("another client: %v", err)
	}
	w.Close()
	if !eventually(func() bool { return r.door.calls.Load() == 0 }) {
		t.Errorf("%d calls are still counted", r.door.calls.Load())
	}
}

// 10,000 calls at once by an ordinary client wait in the client for their turn on the connection, and all are answered.
func TestTenThousandCalls(t *testing.T) {
	r := startWith(t, limited(func(l *Limits) { l.Queue = 64 }), &held{})
	var wait sync.WaitGroup
	var failed atomic.Int64
	for range 10_000 {
		wait.Go(func() {
			if _, err := pb.NewGeometryServiceClient(r.conn).GetServiceInfo(t.Context(), &pb.GetServiceInfoRequest{}); err != nil {
				failed.Add(1)
			}
		})
	}
	wait.Wait()
	if failed.Load() != 0 {
		t.Errorf("%d failed", failed.Load())
	}
}
