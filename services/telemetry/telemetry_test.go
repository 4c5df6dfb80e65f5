package telemetry

import (
	"bytes"
	"context"
	"log/slog"
	"net"
	"slices"
	"strings"
	"sync"
	"testing"

	metricpb "go.opentelemetry.io/proto/otlp/collector/metrics/v1"
	tracepb "go.opentelemetry.io/proto/otlp/collector/trace/v1"
	"go.uber.org/goleak"
	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials/insecure"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/metadata"
	"google.golang.org/protobuf/proto"

	"lugwright/geometry/kinds"
	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	"lugwright/services/geometry"
	"lugwright/services/server"
)

// collector keeps what is sent to it.
type collector struct {
	tracepb.UnimplementedTraceServiceServer
	mu     sync.Mutex
	traces []*tracepb.ExportTraceServiceRequest
	meters meters
}

type meters struct {
	metricpb.UnimplementedMetricsServiceServer
	mu  sync.Mutex
	got []*metricpb.ExportMetricsServiceRequest
}

func (c *collector) Export(_ context.Context, q *tracepb.ExportTraceServiceRequest) (*tracepb.ExportTraceServiceResponse, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.traces = append(c.traces, q)
	return &tracepb.ExportTraceServiceResponse{}, nil
}

func (m *meters) Export(_ context.Context, q *metricpb.ExportMetricsServiceRequest) (*metricpb.ExportMetricsServiceResponse, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.got = append(m.got, q)
	return &metricpb.ExportMetricsServiceResponse{}, nil
}

func listen(t *testing.T) net.Listener {
	t.Helper()
	l, err := server.Listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func collect(t *testing.T) (*collector, string) {
	t.Helper()
	c, l, s := &collector{}, listen(t), grpc.NewServer()
	tracepb.RegisterTraceServiceServer(s, c)
	metricpb.RegisterMetricsServiceServer(s, &c.meters)
	go s.Serve(l)
	t.Cleanup(s.Stop)
	return c, l.Addr().String()
}

// A call becomes a span under the caller's trace and a duration in the metrics; health is left out, and no word of a message is sent.
func TestCallsAreSent(t *testing.T) {
	before := goleak.IgnoreCurrent()
	t.Cleanup(func() { goleak.VerifyNone(t, before) })
	c, addr := collect(t)
	t.Setenv("OTEL_EXPORTER_OTLP_ENDPOINT", "http://"+addr)
	t.Setenv("OTEL_SERVICE_NAME", "shop-one")
	var log bytes.Buffer
	h, stop, err := Start(t.Context(), slog.New(slog.NewTextHandler(&log, nil)))
	if err != nil || h == nil {
		t.Fatal(h, err)
	}
	l := listen(t)
	s := server.New(server.Options{Telemetry: h, Log: slog.New(slog.DiscardHandler)}, geometry.New(kinds.All()))
	done := make(chan error, 1)
	go func() { done <- s.Serve(l) }()
	conn, err := grpc.NewClient(l.Addr().String(), grpc.WithTransportCredentials(insecure.NewCredentials()))
	if err != nil {
		t.Fatal(err)
	}
	ctx := metadata.AppendToOutgoingContext(t.Context(), "traceparent", "00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01")
	if _, err := pb.NewGeometryServiceClient(conn).BuildBracket(ctx, &pb.BuildBracketRequest{Order: &pb.BracketOrder{Kind: "secretkind"}}); err == nil {
		t.Error("an unknown kind is built")
	}
	if _, err := healthpb.NewHealthClient(conn).Check(ctx, &healthpb.HealthCheckRequest{}); err != nil {
		t.Error(err)
	}
	conn.Close()
	s.Stop(0)
	if err := <-done; err != nil {
		t.Error(err)
	}
	if err := stop(t.Context()); err != nil {
		t.Error(err)
	}
	sent := ""
	for _, q := range c.traces {
		sent += q.String()
	}
	for _, want := range []string{"lugwright.geometry.v1alpha1.GeometryService/BuildBracket", "shop-one", "INVALID_ARGUMENT"} {
		if !strings.Contains(sent, want) {
			t.Errorf("no %q in the spans: %s", want, sent)
		}
	}
	if trace := c.traces[0].ResourceSpans[0].ScopeSpans[0].Spans[0].TraceId; !bytes.Equal(trace, []byte("\x0a\xf7\x65\x19\x16\xcd\x43\xdd\x84\x48\xeb\x21\x1c\x80\x31\x9c")) {
		t.Errorf("trace %x", trace)
	}
	var names []string
	for _, q := range c.meters.got {
		for _, m := range q.ResourceMetrics[0].ScopeMetrics[0].Metrics {
			names = append(names, m.Name)
		}
		b, _ := proto.Marshal(q)
		sent += string(b)
	}
	if !slices.ContainsFunc(names, func(n string) bool { return strings.HasPrefix(n, "rpc.server") }) {
		t.Errorf("metrics %v", names)
	}
	if strings.Contains(sent, "secretkind") || strings.Contains(sent, "grpc.health") {
		t.Errorf("more is sent than the call: %s", sent)
	}
}

func TestOffUnlessAskedFor(t *testing.T) {
	for name, env := range map[string]map[string]string{
		"nothing set": {}, "disabled": {"OTEL_SDK_DISABLED": "true", "OTEL_EXPORTER_OTLP_ENDPOINT": "http://127.0.0.1:1"},
		"none":        {"OTEL_TRACES_EXPORTER": "none", "OTEL_METRICS_EXPORTER": "none", "OTEL_EXPORTER_OTLP_ENDPOINT": "http://127.0.0.1:1"},
		"only a name": {"OTEL_SERVICE_NAME": "x"},
	} {
		t.Run(name, func(t *testing.T) {
			for k, v := range env {
				t.Setenv(k, v)
			}
			if h, stop, err := Start(t.Context(), slog.Default()); h != nil || stop != nil || err != nil {
				t.Errorf("%v, %v", h, err)
			}
		})
	}
}

func TestRefused(t *testing.T) {
	for name, want := range map[string]string{"OTEL_TRACES_EXPORTER=zipkin": "write otlp or none", "OTEL_EXPORTER_OTLP_PROTOCOL=http/json": "write grpc"} {
		t.Run(want, func(t *testing.T) {
			t.Setenv("OTEL_EXPORTER_OTLP_ENDPOINT", "http://127.0.0.1:1")
			key, value, _ := strings.Cut(name, "=")
			t.Setenv(key, value)
			if _, _, err := Start(t.Context(), slog.Default()); err == nil || !strings.Contains(err.Error(), want) {
				t.Errorf("%s: %v", name, err)
			}
		})
	}
}
