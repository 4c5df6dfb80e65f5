package server

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"runtime/debug"
	"time"

	"google.golang.org/grpc/stats"

	"lugwright/services/transport"
)

// SelfTester is a service that can hold its own answers against known ones.
type SelfTester interface {
	SelfTest(context.Context) error
}

// Telemetry starts what measures calls, when the environment asks for it; it gives nil when not. stop sends what is left.
type Telemetry func(ctx context.Context, log *slog.Logger) (h stats.Handler, stop func(context.Context) error, err error)

// SettingError is a setting that no server can run with.
type SettingError struct{ Err error }

func (e *SettingError) Error() string { return e.Err.Error() }
func (e *SettingError) Unwrap() error { return e.Err }

// SelfTestError is a service that gave a wrong answer to a known question: it must not be asked others.
type SelfTestError struct{ Err error }

func (e *SelfTestError) Error() string {
	return "self-test failed, no call is answered: " + e.Err.Error()
}
func (e *SelfTestError) Unwrap() error { return e.Err }

// Run runs services as a program: it listens, tests them, calls started with its address, and serves until the context ends.
func (c *Config) Run(ctx context.Context, log *slog.Logger, measure Telemetry, started func(net.Addr) error, services ...Service) error {
	o, l, err := c.open(log)
	if err != nil {
		return &SettingError{err}
	}
	defer l.Close()
	log.Info("configuration", "flags", c, "environment", openTelemetry())
	if c.MemoryMiB > 0 {
		o.Memory = int64(c.MemoryMiB) << 20
		defer debug.SetMemoryLimit(debug.SetMemoryLimit(o.Memory))
	}
	if c.Pprof != "" {
		end, err := profiles(c.Pprof, log)
		if err != nil {
			return &SettingError{err}
		}
		defer end()
	}
	var stop func(context.Context) error
	if o.Telemetry, stop, err = telemetry(ctx, log, measure); err != nil {
		return &SettingError{err}
	}
	defer flush(ctx, log, stop)
	s := New(o, services...)
	if c.Health != "" {
		end, err := s.tellHealth(c.Health, log)
		if err != nil {
			return &SettingError{err}
		}
		defer end()
	}
	return c.serve(ctx, log, s, l, started, services)
}

// open takes what the settings name: certificates, token, address.
func (c *Config) open(log *slog.Logger) (Options, net.Listener, error) {
	o := Options{Log: log, Limits: c.Limits, NoReflection: c.NoReflection, Starting: true}
	err := c.check()
	listen := Listen
	if err == nil && c.secured() {
		listen = ListenAnywhere
		o.Credentials, err = transport.Server(c.Files, nil, log)
	}
	if err == nil && c.TokenFile != "" {
		o.Gate, err = transport.NewGate(c.TokenFile, log)
	}
	if err != nil {
		return o, nil, err
	}
	l, err := listen(c.Listen)
	return o, l, err
}

func telemetry(ctx context.Context, log *slog.Logger, measure Telemetry) (stats.Handler, func(context.Context) error, error) {
	if measure != nil {
		return measure(ctx, log)
	}
	if len(openTelemetry().Group()) > 0 {
		log.Warn("OTEL_ variables are set, but this program has no telemetry; lugwrightd, geometryd and strengthd have it")
	}
	return nil, nil, nil
}

// flush sends what telemetry has left; the run's own context is over by then.
func flush(ctx context.Context, log *slog.Logger, stop func(context.Context) error) {
	if stop == nil {
		return
	}
	ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), 5*time.Second)
	defer cancel()
	if err := stop(ctx); err != nil {
		log.Warn("telemetry not sent", "reason", err.Error())
	}
}

func (c *Config) serve(ctx context.Context, log *slog.Logger, s *Server, l net.Listener, started func(net.Addr) error, services []Service) error {
	served := make(chan error, 1)
	go func() { served <- s.Serve(l) }()
	err := selfTest(ctx, log, s.names[1:], services)
	if ctx.Err() != nil { // told to stop before it began
		s.Stop(0)
		return <-served
	}
	if err == nil {
		s.Ready()
		log.Info("serving", "address", l.Addr().String(), "tls", c.secured(), "token", c.TokenFile != "")
		err = started(l.Addr())
	}
	if err != nil {
		s.Stop(0)
		return errors.Join(err, <-served)
	}
	select {
	case err := <-served:
		return err
	case <-ctx.Done():
	}
	log.Info("draining", "grace", c.Grace.String())
	s.Stop(c.Grace)
	log.Info("stopped")
	return <-served
}

// selfTest has the services test themselves, which have these names.
func selfTest(ctx context.Context, log *slog.Logger, names []string, services []Service) error {
	for i, s := range services {
		tester, ok := s.(SelfTester)
		if !ok {
			continue
		}
		began := time.Now()
		err := tested(ctx, tester)
		if err != nil {
			log.Error("self-test failed", "service", names[i], "reason", err.Error())
			return &SelfTestError{err}
		}
		log.Info("self-test passed", "service", names[i], "ms", time.Since(began).Milliseconds())
	}
	return nil
}

func tested(ctx context.Context, s SelfTester) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("panic: %v\n%s", p, debug.Stack())
		}
	}()
	return s.SelfTest(ctx)
}
