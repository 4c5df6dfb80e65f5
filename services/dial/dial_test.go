package dial

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"math"
	"net"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/geometry/shop"
	"lugwright/part"
	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	geometryservice "lugwright/services/geometry"
	"lugwright/services/server"
	strengthservice "lugwright/services/strength"
	"lugwright/services/wire"
	"lugwright/strength"
	"lugwright/strength/basis"
)

// listen serves services on a loopback port until the test ends.
func listen(t testing.TB, services ...server.Service) (addr string, s *server.Server) {
	t.Helper()
	s = server.New(server.Options{Log: slog.New(slog.NewTextHandler(io.Discard, nil))}, services...)
	return serve(t, s, func() { s.Stop(time.Second) }), s
}

// serve serves on a loopback port until the test ends.
func serve(t testing.TB, s interface{ Serve(net.Listener) error }, stop func()) (addr string) {
	t.Helper()
	l, err := server.Listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	done := make(chan error, 1)
	go func() { done <- s.Serve(l) }()
	t.Cleanup(func() {
		stop()
		if err := <-done; err != nil {
			t.Error(err)
		}
	})
	return l.Addr().String()
}

func remote(t testing.TB, geometryAddr, strengthAddr string, o Options) *Client {
	t.Helper()
	c, err := Remote(geometryAddr, strengthAddr, o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	return c
}

func inProcess(t testing.TB) *Client {
	t.Helper()
	return remote(t, "", "", Options{})
}

func order(kind, name string) geometry.Request {
	return geometry.Request{Kind: kind, Name: name, Hand: part.LeftHand}
}

// everyKind builds each kind at its defaults.
func everyKind() []geometry.Request {
	var out []geometry.Request
	for _, k := range kinds.All() {
		out = append(out, order(k.Name, "b-"+k.Name))
	}
	return out
}

func down(n float64) []part.Case {
	return []part.Case{{Name: "down", Level: part.Service, Source: "stated by the builder", Force: part.Vec{Z: -n}}}
}

// fit is a load that the bracket has a path for: straight down at each load point.
func fit(b *part.Bracket, n float64) []part.Case {
	out := down(n)
	if len(b.LoadPoints) > 1 {
		out[0].LoadPoint = b.LoadPoints[0].ID
	}
	return out
}

func bytesOf(t *testing.T, m proto.Message, err error) []byte {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	data, err := proto.MarshalOptions{Deterministic: true}.Marshal(m)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// The same questions to services in this process and to services behind TCP get the same bytes.
func TestInProcessAndRemoteAgree(t *testing.T) {
	geometryAddr, _ := listen(t, geometryservice.New(kinds.All()))
	strengthAddr, _ := listen(t, strengthservice.New(basis.All()))
	near, far := inProcess(t), remote(t, geometryAddr, strengthAddr, Options{})
	ctx := t.Context()
	agree := func(what string, ask func(c *Client) (proto.Message, error)) {
		t.Helper()
		a, err := ask(near)
		one := bytesOf(t, a, err)
		b, err := ask(far)
		if other := bytesOf(t, b, err); !slices.Equal(one, other) {
			t.Errorf("%s: %d bytes in process, %d remote, not the same", what, len(one), len(other))
		}
	}
	agree("kinds", func(c *Client) (proto.Message, error) { return c.build.ListKinds(ctx, &geometrypb.ListKindsRequest{}) })
	agree("bases", func(c *Client) (proto.Message, error) { return c.check.ListBases(ctx, &strengthpb.ListBasesRequest{}) })
	agree("materials", func(c *Client) (proto.Message, error) {
		return c.check.ListMaterials(ctx, &strengthpb.ListMaterialsRequest{})
	})
	for _, q := range everyKind() {
		var bracket *geometrypb.BuildBracketResponse
		agree("build "+q.Kind, func(c *Client) (proto.Message, error) {
			var err error
			bracket, err = c.build.BuildBracket(ctx, &geometrypb.BuildBracketRequest{Order: wire.EncodeOrder(q)})
			return bracket, err
		})
		b, err := wire.DecodeBracket(bracket.GetBracket())
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range wire.Formats() {
			agree(fmt.Sprint("export ", f, " of ", q.Kind), func(c *Client) (proto.Message, error) {
				return c.build.ExportBracket(ctx, &geometrypb.ExportBracketRequest{Bracket: bracket.GetBracket(), Formats: wire.EncodeFormats([]wire.Format{f})})
			})
		}
		for form := range strengthpb.AnswerForm_name {
			check := checkMessage([]CheckRequest{{Bracket: b, Cases: fit(b, 5000), Options: strength.Options{Trace: true}}})
			check.Form = strengthpb.AnswerForm(form)
			agree(fmt.Sprint("check ", q.Kind, check.Form), func(c *Client) (proto.Message, error) { return c.check.CheckBrackets(ctx, check) })
		}
	}
}

// A client gets what the libraries give.
func TestSameAsTheLibraries(t *testing.T) {
	c, ctx := inProcess(t), t.Context()
	list, err := c.Kinds(ctx)
	if err != nil || len(list) != len(kinds.All()) {
		t.Fatalf("%d kinds, %v", len(list), err)
	}
	for i, k := range kinds.All() {
		if list[i].Name != k.Name || list[i].Sentence != k.Sentence || !reflect.DeepEqual(list[i].Params, k.Params) {
			t.Errorf("kind %s came back different", k.Name)
		}
	}
	built, err := c.Build(ctx, everyKind())
	if err != nil {
		t.Fatal(err)
	}
	for i, q := range everyKind() {
		want, err := geometry.Build(kinds.All(), q)
		if err != nil || built[i].Err != nil {
			t.Fatal(err, built[i].Err)
		}
		if proto.Equal(wire.EncodeBracket(built[i].Bracket), wire.EncodeBracket(want)) == false {
			t.Errorf("%s came back different", q.Kind)
		}
		checked, err := c.Check(ctx, []CheckRequest{{Bracket: built[i].Bracket, Cases: fit(want, 5000)}})
		if err != nil {
			t.Fatal(err)
		}
		report, err := strength.Run(basis.All()[0], want, fit(want, 5000), strength.Options{})
		if fmt.Sprint(err) != fmt.Sprint(checked[0].Err) {
			t.Fatalf("%s: %v, the library says %v", q.Kind, checked[0].Err, err)
		}
		if err != nil {
			continue
		}
		if !proto.Equal(wire.EncodeReport(checked[0].Report), wire.EncodeReport(report)) {
			t.Errorf("%s: the report came back different", q.Kind)
		}
		brief, err := c.Brief(ctx, []CheckRequest{{Bracket: built[i].Bracket, Cases: fit(want, 5000)}})
		if err != nil || brief[0].Brief.Verdict != report.Verdict() || len(brief[0].Brief.Rows) != len(report.Checks) {
			t.Errorf("%s: brief %v, %v", q.Kind, brief[0], err)
		}
	}
}

func TestManyKeepTheirOrder(t *testing.T) {
	c, ctx := inProcess(t), t.Context()
	q := make([]geometry.Request, 200)
	for i := range q {
		q[i] = order(kinds.All()[0].Name, fmt.Sprintf("n%d", i))
	}
	q[70].Hand = "up"
	q[150].Params = []part.Param{{Name: "no_such", Number: 1}}
	q[151].Params = []part.Param{{Name: "pin_diameter", Number: math.NaN()}}
	built, err := c.Build(ctx, q)
	if err != nil {
		t.Fatal(err)
	}
	for i, b := range built {
		switch i {
		case 70, 150, 151:
			want := map[int]string{70: "hand", 150: "parameters.no_such", 151: "parameters.pin_diameter"}[i]
			if fields := part.Fields(b.Err); len(fields) != 1 || fields[0].Field != want {
				t.Errorf("item %d: %v, want field %s", i, b.Err, want)
			}
		default:
			if b.Err != nil || b.Bracket.Name != q[i].Name {
				t.Fatalf("item %d: %v, %v", i, b.Bracket, b.Err)
			}
		}
	}
}

func TestCheckRefusesItemsNotBatches(t *testing.T) {
	c, ctx := inProcess(t), t.Context()
	built, err := c.Build(ctx, everyKind()[:1])
	if err != nil || built[0].Err != nil {
		t.Fatal(err, built)
	}
	good := CheckRequest{Bracket: built[0].Bracket, Cases: fit(built[0].Bracket, 100)}
	spoil := func(do func(q *CheckRequest)) CheckRequest {
		q := good
		do(&q)
		return q
	}
	q := []CheckRequest{
		good,
		spoil(func(q *CheckRequest) { q.Bracket = nil }),
		spoil(func(q *CheckRequest) { q.Basis = "no such" }),
		spoil(func(q *CheckRequest) { q.Cases = nil }),
		spoil(func(q *CheckRequest) { q.Cases = down(math.Inf(1)) }),
		spoil(func(q *CheckRequest) { q.Options.LoadFactor = -3 }),
		good,
	}
	checked, err := c.Check(ctx, q)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"", "bracket", "basis", "cases", "cases[0].force_n.z", "load_factor", ""} {
		fields := part.Fields(checked[i].Err)
		if want == "" {
			if checked[i].Err != nil {
				t.Errorf("item %d: %v", i, checked[i].Err)
			}
		} else if len(fields) != 1 || fields[0].Field != want {
			t.Errorf("item %d: %v, want field %s", i, checked[i].Err, want)
		}
	}
}

func TestExport(t *testing.T) {
	c, ctx := inProcess(t), t.Context()
	built, err := c.Build(ctx, everyKind())
	if err != nil {
		t.Fatal(err)
	}
	for i, b := range built {
		if b.Err != nil {
			t.Fatal(i, b.Err)
		}
		all, err := c.Export(ctx, b.Bracket, wire.Formats(), CutStyle{})
		if err != nil {
			t.Fatal(b.Bracket.Kind, err)
		}
		for k, f := range wire.Formats() {
			if len(all[k]) == 0 && len(b.Bracket.Plates) > 0 {
				t.Errorf("%s as %s: no files", b.Bracket.Kind, f)
			}
			one, err := c.Export(ctx, b.Bracket, []Format{f}, CutStyle{})
			if err != nil || !reflect.DeepEqual(one, all[k:k+1]) {
				t.Errorf("%s as %s: alone it is another, %v", b.Bracket.Kind, f, err)
			}
			for _, file := range all[k] {
				if len(file.Data) == 0 || strings.ContainsAny(file.Name, `/\ `) {
					t.Errorf("file %q of %d bytes", file.Name, len(file.Data))
				}
			}
		}
	}
	for field, formats := range map[string][]Format{"formats[1]": {OpenSCAD, "pdf"}, "formats": nil} {
		if _, err := c.Export(ctx, built[0].Bracket, formats, CutStyle{}); len(part.Fields(err)) != 1 || part.Fields(err)[0].Field != field {
			t.Errorf("formats %q: %v", formats, err)
		}
	}
}

func TestEvaluate(t *testing.T) {
	c, ctx := inProcess(t), t.Context()
	bases, err := c.Bases(ctx)
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range bases {
		for _, l := range b.Limits {
			q := EvaluateRequest{Basis: b.Name, Limit: l.ID}
			for _, g := range l.Givens {
				q.Givens = append(q.Givens, GivenValue{Symbol: g.Symbol, Values: []float64{g.Min}, Unit: g.Unit})
			}
			e, err := c.Evaluate(ctx, q)
			if err != nil || e.Verdict == "" || e.Limit.ID != l.ID {
				t.Errorf("%s %s: %v, %v", b.Name, l.ID, e, err)
			}
			q.Givens[0].Values = []float64{-math.MaxFloat64}
			if _, err := c.Evaluate(ctx, q); len(part.Fields(err)) != 1 || part.Fields(err)[0].Field != "givens."+l.Givens[0].Symbol {
				t.Errorf("%s %s out of range: %v", b.Name, l.ID, err)
			}
		}
	}
	_, err = c.Evaluate(ctx, EvaluateRequest{Basis: bases[0].Name, Limit: "x"})
	if fields := part.Fields(err); len(fields) != 1 || fields[0].Field != "limit" {
		t.Errorf("unknown limit: %v", err)
	}
	if m, err := c.Materials(ctx); err != nil || len(m.Grades) == 0 || len(m.Bolts) == 0 {
		t.Errorf("materials: %v", err)
	}
}

// stub answers GetServiceInfo and ListKinds as it is told.
type stub struct {
	geometrypb.UnimplementedGeometryServiceServer
	version string
	slow    time.Duration
}

func (s *stub) Register(r grpc.ServiceRegistrar) string {
	geometrypb.RegisterGeometryServiceServer(r, s)
	return "stub"
}

func (s *stub) GetServiceInfo(context.Context, *geometrypb.GetServiceInfoRequest) (*geometrypb.GetServiceInfoResponse, error) {
	return &geometrypb.GetServiceInfoResponse{ApiVersion: s.version, ToolVersion: "v9"}, nil
}

func (s *stub) ListKinds(ctx context.Context, _ *geometrypb.ListKindsRequest) (*geometrypb.ListKindsResponse, error) {
	select {
	case <-time.After(s.slow):
	case <-ctx.Done():
		return nil, status.FromContextError(ctx.Err()).Err()
	}
	return &geometrypb.ListKindsResponse{Kinds: []*geometrypb.Kind{{Parameters: []*geometrypb.ParameterDeclaration{{}}}}}, nil
}

func TestNoAnswer(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	nobody := l.Addr().String()
	silent, err := net.Listen("tcp", "127.0.0.1:0") // accepts and says nothing
	if err != nil {
		t.Fatal(err)
	}
	defer silent.Close()
	strengthAddr, _ := listen(t, strengthservice.New(basis.All()))
	newer, _ := listen(t, &stub{version: "2.0"})
	slow, _ := listen(t, &stub{version: wire.APIVersion, slow: time.Minute})
	garbled, _ := listen(t, &stub{version: wire.APIVersion})
	l.Close() // after the others have their ports
	for _, c := range []struct {
		name, addr, want string
	}{
		{"down", nobody, "connection refused, nothing listens there"},
		{"silent", silent.Addr().String(), "did not answer within 300ms"},
		{"slow", slow, "did not answer within 300ms"},
		{"newer", newer, `speaks interface version "2.0" (tool v9), this client speaks 1.0 (tool `},
		{"another service", strengthAddr, "does not know this call"},
		{"garbled", garbled, "gave an answer that cannot be read: kinds[0].parameters[0].unit: not set"},
	} {
		timeout := 300 * time.Millisecond
		if c.name == "down" {
			timeout = 10 * time.Second
		}
		client := remote(t, c.addr, "", Options{Timeout: timeout})
		_, err := client.Kinds(t.Context())
		var gone *UnreachableError
		if !errors.As(err, &gone) || !errors.Is(err, ErrUnreachable) || gone.Service != "geometry" || gone.Addr != c.addr || !strings.Contains(gone.Why, c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		if _, err := client.Bases(t.Context()); err != nil {
			t.Errorf("%s: the other service: %v", c.name, err)
		}
	}
}

func TestCancelled(t *testing.T) {
	slow, _ := listen(t, &stub{version: wire.APIVersion, slow: time.Minute})
	c := remote(t, slow, "", Options{})
	ctx, cancel := context.WithCancel(t.Context())
	time.AfterFunc(50*time.Millisecond, cancel)
	if _, err := c.Kinds(ctx); err != context.Canceled {
		t.Errorf("got %v", err)
	}
	if _, err := c.Build(ctx, make([]geometry.Request, 500)); err != context.Canceled {
		t.Errorf("got %v", err)
	}
	ctx, cancel = context.WithTimeout(t.Context(), 50*time.Millisecond)
	defer cancel()
	if _, err := c.Kinds(ctx); err == nil || !strings.HasSuffix(err.Error(), "did not answer within the time allowed") {
		t.Errorf("got %v", err)
	}
}

// Every replica has eight messages on their way, up to a bound that keeps the client's memory, and in this process every core one.
func TestInFlight(t *testing.T) {
	for _, c := range []struct {
		geometry, strength string
		want               int
	}{
		{"", "", runtime.GOMAXPROCS(0)},
		{"127.0.0.1:1", "127.0.0.1:1", 8},
		{"127.0.0.1:1", "127.0.0.1:1,127.0.0.1:2,127.0.0.1:3", 24},
		{"127.0.0.1:1,127.0.0.1:2", "", 16},
		{"", strings.TrimSuffix(strings.Repeat("127.0.0.1:1,", 100), ","), 128},
	} {
		client, err := Remote(c.geometry, c.strength, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if n := client.InFlight(); n != c.want {
			t.Errorf("%q, %q: %d, want %d", c.geometry, c.strength, n, c.want)
		}
		client.Close()
	}
}

func TestBadAddress(t *testing.T) {
	for _, addr := range []string{"localhost", ":7401", "a:1,b", "127.0.0.1:"} {
		if _, err := Remote("", addr, Options{}); err == nil || !strings.Contains(err.Error(), "write host:port") {
			t.Errorf("%q: %v", addr, err)
		}
	}
}

// A replica that dies in the middle loses nothing: its calls go to the other.
func TestReplicaDies(t *testing.T) {
	one, dying := listen(t, geometryservice.New(kinds.All()))
	two, _ := listen(t, geometryservice.New(kinds.All()))
	c := remote(t, one+", "+two, "", Options{})
	q := make([]geometry.Request, 2000)
	for i := range q {
		q[i] = order(kinds.All()[0].Name, fmt.Sprintf("n%d", i))
	}
	go func() {
		time.Sleep(30 * time.Millisecond)
		dying.Stop(0)
	}()
	built, err := c.Build(t.Context(), q)
	if err != nil {
		t.Fatal(err)
	}
	for i, b := range built {
		if b.Err != nil || b.Bracket.Name != q[i].Name {
			t.Fatalf("item %d: %v", i, b.Err)
		}
	}
}

func TestCloseLeavesNothingRunning(t *testing.T) {
	before := runtime.NumGoroutine()
	c, err := InProcess()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := c.Kinds(t.Context()); err != nil {
		t.Fatal(err)
	}
	if _, err := c.Bases(t.Context()); err != nil {
		t.Fatal(err)
	}
	if err := c.Close(); err != nil {
		t.Fatal(err)
	}
	for range 100 {
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	t.Errorf("%d goroutines before, %d after", before, runtime.NumGoroutine())
}

func TestSetupsAreSentOnce(t *testing.T) {
	a, b := CheckRequest{Cases: down(1)}, CheckRequest{Cases: down(2)}
	q := checkMessage([]CheckRequest{a, a, b, {Cases: down(1)}})
	if len(q.Setups) != 2 || q.Items[1].Setup != 0 || q.Items[2].Setup != 1 || q.Items[3].Setup != 0 {
		t.Errorf("%d setups for %v", len(q.Setups), q.Items)
	}
}

// BenchmarkPair builds and checks one clevis 64 times: by the libraries in as many goroutines as cores, and through both
// services in this process. The ratio is what the services add.
func BenchmarkPair(b *testing.B) {
	const n = 64
	list, bases := kinds.All(), basis.All()
	q := make([]geometry.Request, n)
	for i := range q {
		q[i] = order("clevis", "pair")
	}
	direct := func() {
		done := make(chan error, 2)
		for half := range 2 {
			go func() {
				for _, q := range q[half*n/2 : (half+1)*n/2] {
					bracket, err := geometry.Build(list, q)
					if err == nil {
						_, err = strength.Run(bases[0], bracket, fit(bracket, 5000), strength.Options{})
					}
					if err != nil {
						done <- err
						return
					}
				}
				done <- nil
			}()
		}
		for range 2 {
			if err := <-done; err != nil {
				b.Fatal(err)
			}
		}
	}
	c := inProcess(b)
	services := func() {
		built, err := c.Build(b.Context(), q)
		if err != nil {
			b.Fatal(err)
		}
		checks := make([]CheckRequest, n)
		for i := range built {
			checks[i] = CheckRequest{Bracket: built[i].Bracket, Cases: fit(built[i].Bracket, 5000)}
		}
		if _, err := c.Brief(b.Context(), checks); err != nil {
			b.Fatal(err)
		}
	}
	services()
	var inLibrary, inServices time.Duration
	for b.Loop() {
		began := time.Now()
		direct()
		between := time.Now()
		services()
		inLibrary += between.Sub(began)
		inServices += time.Since(between)
	}
	b.ReportMetric(float64(inLibrary.Microseconds())/float64(b.N*n), "direct-µs/pair")
	b.ReportMetric(float64(inServices.Microseconds())/float64(b.N*n), "services-µs/pair")
	b.ReportMetric(float64(inServices)/float64(inLibrary), "ratio")
}

// What is not gRPC is named as such, whatever it greets with; the greetings are those of HTTP/1.1 and of SSH (RFC 9112, RFC 4253).
func TestNotAService(t *testing.T) {
	for name, greeting := range map[string]string{
		"http": "HTTP/1.1 400 Bad Request\r\nContent-Length: 0\r\n\r\n", "ssh": "SSH-2.0-x\r\n", "silent": "",
	} {
		l, err := net.Listen("tcp", "127.0.0.1:0")
		if err != nil {
			t.Fatal(err)
		}
		defer l.Close()
		go func() {
			for {
				c, err := l.Accept()
				if err != nil {
					return
				}
				io.WriteString(c, greeting)
				c.(*net.TCPConn).CloseWrite() // and read on: a reset could come before the greeting
				io.Copy(io.Discard, c)
				c.Close()
			}
		}()
		_, err = remote(t, l.Addr().String(), "", Options{Timeout: 3 * time.Second}).Kinds(t.Context())
		want := "geometry service at " + l.Addr().String() + ": what listens there is not a lugwright service, or one that speaks TLS: --ca names the file of its authority"
		if !errors.Is(err, ErrUnreachable) || err.Error() != want {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestWhyIsPlain(t *testing.T) {
	for from, want := range map[string]string{
		`connection error: desc = "transport: authentication handshake failed: tls: failed to verify certificate: x509: cannot validate certificate for 127.0.0.1 because it doesn't contain any IP SANs"`: "its certificate is not taken: cannot validate certificate for 127.0.0.1 because it doesn't contain any IP SANs",
		"max retries exhausted: failed after 4 attempts: rpc error: code = Unavailable desc = no route to host":                                                                                            "no route to host",
		"connection refused, nothing listens there": "connection refused, nothing listens there",
		`connection error: desc = "error reading server preface: read tcp 127.0.0.1:2->127.0.0.1:1: use of closed network connection"`: "what listens there takes connections and says nothing: it hangs, or is not a lugwright service, or one that speaks TLS: --ca names the file of its authority",
		`rpc error: malformed header: "x"`:                                                  "what listens there is not a lugwright service, or one that speaks TLS: --ca names the file of its authority",
		"error reading from server: write tcp 127.0.0.1:2->127.0.0.1:1: write: broken pipe": "it ended the connection: it stopped, or lets in only clients with a certificate that it trusts (--cert and --key); its log says why",
	} {
		if got, _ := plain(from); got != want {
			t.Errorf("%q: %q", from, got)
		}
	}
}

func TestNoAnswerInProcess(t *testing.T) {
	_, err := remote(t, "", "", Options{Timeout: 1}).Kinds(t.Context())
	if !errors.Is(err, ErrUnreachable) || err.Error() != "the geometry service in this process did not answer within 1ns" {
		t.Error(err)
	}
}

// All four ways to have a service here or elsewhere give the same answers about variants: brackets that pass as they are, as messages, and as bytes.
func TestVariantsHereAndElsewhere(t *testing.T) {
	geometryAddr, _ := listen(t, geometryservice.New(kinds.All()))
	strengthAddr, _ := listen(t, strengthservice.New(basis.All()))
	var requests []geometry.Request
	for i := range 9 {
		q := order("lap-plate", "v")
		q.Params = []part.Param{{Name: "lap_thickness", Unit: "mm", Number: float64(2 + i)}}
		requests = append(requests, q)
	}
	cases := down(0)
	cases[0].Force = part.Vec{X: 5e4}
	var want []Variant
	for _, at := range [][2]string{{"", ""}, {geometryAddr, ""}, {"", strengthAddr}, {geometryAddr, strengthAddr}} {
		cutter := shop.Plain()
		got, err := remote(t, at[0], at[1], Options{}).Variants(&cutter, CheckRequest{Cases: cases}, 0).Some(t.Context(), requests)
		if err != nil {
			t.Fatal(err)
		}
		if want == nil {
			want = got
		}
		for i := range got {
			if fmt.Sprint(got[i]) != fmt.Sprint(want[i]) {
				t.Errorf("%q, variant %d:\n%v\nwant\n%v", at, i, got[i], want[i])
			}
		}
	}
	if want[0].Err == nil || want[8].Err != nil || want[8].Summary.Limit == "" || len(want[8].Volumes) == 0 {
		t.Errorf("%v\n%v", want[0], want[8])
	}
}

// fragile is a geometry service whose process dies at one variant: every connection breaks.
type fragile struct {
	*geometryservice.Service
	breaks func()
	times  atomic.Int32
}

func (f *fragile) Register(r grpc.ServiceRegistrar) string {
	geometrypb.RegisterGeometryServiceServer(r, f)
	return "fragile"
}

func (f *fragile) BuildBrackets(ctx context.Context, q *geometrypb.BuildBracketsRequest) (*geometrypb.BuildBracketsResponse, error) {
	for _, o := range q.GetOrders() {
		if o.GetName() == "poison" {
			f.times.Add(1)
			f.breaks()
		}
	}
	return f.Service.BuildBrackets(ctx, q)
}

// breakable is a listener whose connections can be broken all at once.
type breakable struct {
	net.Listener
	mu   sync.Mutex
	open []net.Conn
}

func (b *breakable) Accept() (net.Conn, error) {
	c, err := b.Listener.Accept()
	b.mu.Lock()
	b.open = append(b.open, c)
	b.mu.Unlock()
	return c, err
}

func (b *breakable) breakAll() {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, c := range b.open {
		if c != nil {
			c.Close()
		}
	}
	b.open = nil
}

// The one variant that breaks the service is named, and all others of its message are answered.
func TestPoison(t *testing.T) {
	l, err := server.Listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	b := &breakable{Listener: l}
	f := &fragile{Service: geometryservice.New(kinds.All()), breaks: b.breakAll}
	s := server.New(server.Options{Log: slog.New(slog.NewTextHandler(io.Discard, nil))}, f)
	go s.Serve(b)
	t.Cleanup(func() { s.Stop(0) })
	requests := make([]geometry.Request, 8)
	for i := range requests {
		requests[i] = order("lap-plate", "v")
	}
	requests[5].Name = "poison"
	cases := down(0)
	cases[0].Force = part.Vec{X: 5e4}
	cutter := shop.Plain()
	got, err := remote(t, l.Addr().String(), "", Options{}).Variants(&cutter, CheckRequest{Cases: cases}, 0).Some(t.Context(), requests)
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range got {
		switch {
		case i == 5 && (v.Err == nil || !strings.Contains(v.Err.Error(), "the geometry service broke off at this variant 3 times")):
			t.Errorf("poison: %v", v.Err)
		case i != 5 && v.Err != nil:
			t.Errorf("variant %d: %v", i, v.Err)
		}
	}
}

// A message that is too long for the service goes in halves.
func TestTooLong(t *testing.T) {
	geometryAddr, _ := listen(t, geometryservice.New(kinds.All()))
	requests := make([]geometry.Request, wire.MaxBatch)
	for i := range requests {
		requests[i] = order("lap-plate", "v")
		for k := range 150 {
			requests[i].Params = append(requests[i].Params, part.Param{Name: fmt.Sprint("no", k), Text: strings.Repeat("x", 500)})
		}
	}
	cutter := shop.Plain()
	got, err := remote(t, geometryAddr, "", Options{}).Variants(&cutter, CheckRequest{Cases: down(1)}, 0).Some(t.Context(), requests)
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range got {
		if len(part.Fields(v.Err)) == 0 {
			t.Fatalf("variant %d: %v", i, v.Err)
		}
	}
}
