// Package telemetry sends traces and metrics of a server's calls to an OpenTelemetry collector, as the standard OTEL_ environment variables
// say. It never looks into a message, and does nothing where none of them asks for it.
//
// It is linked into the servers alone: to link it costs a tenth of the shortest run of the command.
package telemetry

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"os"
	"strings"

	"go.opentelemetry.io/contrib/instrumentation/google.golang.org/grpc/otelgrpc"
	"go.opentelemetry.io/otel"
	"go.opentelemetry.io/otel/exporters/otlp/otlpmetric/otlpmetricgrpc"
	"go.opentelemetry.io/otel/exporters/otlp/otlptrace/otlptracegrpc"
	"go.opentelemetry.io/otel/propagation"
	"go.opentelemetry.io/otel/sdk/metric"
	"go.opentelemetry.io/otel/sdk/trace"
	"google.golang.org/grpc/stats"
)

// signal is one of the two things that are sent.
type signal string

const (
	traces  signal = "TRACES"
	metrics signal = "METRICS"
)

// Start measures calls if the environment asks for it, and sends what it measures. It gives nil where it does not ask. stop sends what is
// left and ends it.
func Start(ctx context.Context, log *slog.Logger) (h stats.Handler, stop func(context.Context) error, err error) {
	var options []otelgrpc.Option
	var stops []func(context.Context) error
	stop = func(ctx context.Context) error {
		var all error
		for _, s := range stops {
			all = errors.Join(all, s(ctx))
		}
		return all
	}
	for _, s := range []signal{traces, metrics} {
		on, err := s.wanted()
		if err != nil {
			return nil, nil, errors.Join(err, stop(ctx))
		}
		if !on {
			continue
		}
		option, end, err := s.start(ctx)
		if err != nil {
			return nil, nil, errors.Join(err, stop(ctx))
		}
		options, stops = append(options, option), append(stops, end)
		log.Info("telemetry", "signal", strings.ToLower(string(s)))
	}
	if len(stops) == 0 {
		return nil, nil, nil
	}
	// What goes wrong on the way to the collector is told in the server's own log.
	otel.SetErrorHandler(otel.ErrorHandlerFunc(func(err error) { log.Warn("telemetry", "reason", err.Error()) }))
	options = append(options,
		otelgrpc.WithPropagators(propagation.NewCompositeTextMapPropagator(propagation.TraceContext{}, propagation.Baggage{})),
		otelgrpc.WithFilter(func(i *stats.RPCTagInfo) bool { return !strings.HasPrefix(i.FullMethodName, "/grpc.health.") }),
	)
	return otelgrpc.NewServerHandler(options...), stop, nil
}

// wanted reads the variables of the OpenTelemetry specification, "OpenTelemetry Environment Variable Specification" and "OpenTelemetry Protocol Exporter". A
// signal is wanted where its exporter or an endpoint is named.
func (s signal) wanted() (bool, error) {
	if strings.EqualFold(os.Getenv("OTEL_SDK_DISABLED"), "true") {
		return false, nil
	}
	exporter := "OTEL_" + string(s) + "_EXPORTER"
	switch name := os.Getenv(exporter); name {
	case "none":
		return false, nil
	case "otlp":
	case "":
		if s.endpoint("ENDPOINT") == "" {
			return false, nil
		}
	default:
		return false, fmt.Errorf("%s=%s is not taken; write otlp or none", exporter, name)
	}
	if protocol := s.endpoint("PROTOCOL"); protocol != "" && protocol != "grpc" {
		return false, fmt.Errorf("OTEL_EXPORTER_OTLP_PROTOCOL: %s is not taken; write grpc", protocol)
	}
	return true, nil
}

// endpoint reads a variable of the exporter: the signal's own, or that of both.
func (s signal) endpoint(name string) string {
	if own := os.Getenv("OTEL_EXPORTER_OTLP_" + string(s) + "_" + name); own != "" {
		return own
	}
	return os.Getenv("OTEL_EXPORTER_OTLP_" + name)
}

func (s signal) start(ctx context.Context) (otelgrpc.Option, func(context.Context) error, error) {
	if s == traces {
		exporter, err := otlptracegrpc.New(ctx)
		if err != nil {
			return nil, nil, fmt.Errorf("telemetry: %w", err)
		}
		provider := trace.NewTracerProvider(trace.WithBatcher(exporter))
		return otelgrpc.WithTracerProvider(provider), provider.Shutdown, nil
	}
	exporter, err := otlpmetricgrpc.New(ctx)
	if err != nil {
		return nil, nil, fmt.Errorf("telemetry: %w", err)
	}
	provider := metric.NewMeterProvider(metric.WithReader(metric.NewPeriodicReader(exporter)))
	return otelgrpc.WithMeterProvider(provider), provider.Shutdown, nil
}
