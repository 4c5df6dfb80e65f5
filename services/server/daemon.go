package server

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"os/signal"
	"syscall"
)

// Daemon runs services as a program of their own: it reads flags and environment, prints its address on out once it serves, logs to
// errs, and serves until it is told to stop. It returns the exit status: 0, 1 when a service fails its self-test, 2 for a
// setting it cannot run with, 4 when it cannot serve. With the first argument "probe" it asks a running one instead.
func Daemon(ctx context.Context, name string, args []string, out, errs io.Writer, measure Telemetry, services ...Service) int {
	if len(args) > 0 && args[0] == probeVerb {
		return probe(ctx, name, args[1:], errs)
	}
	config := NewConfig(name)
	fail := func(status int, err error) int {
		fmt.Fprintf(errs, "%s: error: %v\n", name, err)
		return status
	}
	switch err := config.parse(args); {
	case err == flag.ErrHelp:
		fmt.Fprintf(errs, "%s [options]\n%s probe: asks the one that tells its health at --health whether it serves; exit status 0 when it does\n", name, name)
		config.Flags.SetOutput(errs)
		config.Flags.PrintDefaults()
		fmt.Fprintf(errs, "Each option also by environment: --tls-cert is %s. docs/services.md says more.\n", Variable("tls-cert"))
		return 0
	case err != nil:
		return fail(2, err)
	}
	if err := config.FromEnvironment(os.LookupEnv); err != nil {
		return fail(2, err)
	}
	ctx, stop := signal.NotifyContext(ctx, syscall.SIGINT, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second signal ends it at once
	err := config.Run(ctx, slog.New(slog.NewJSONHandler(errs, nil)), measure, func(at net.Addr) error {
		_, err := fmt.Fprintln(out, at)
		return err
	}, services...)
	var setting *SettingError
	var test *SelfTestError
	switch {
	case err == nil:
		return 0
	case errors.As(err, &setting):
		return fail(2, err)
	case errors.As(err, &test):
		return fail(1, err)
	}
	return fail(4, err)
}
