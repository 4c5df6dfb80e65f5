package server

import (
	"context"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"os/signal"
	"syscall"
	"time"
)

const grace = 10 * time.Second

// Daemon runs services as a program of their own: it reads flags, prints its address on out once it listens, logs to errs,
// and serves until it is told to stop. It returns the exit status: 0, 2 for a usage error or an address it cannot listen
// on, 4 when it cannot serve.
func Daemon(ctx context.Context, name string, args []string, out, errs io.Writer, services ...Service) int {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(errs)
	listen := flags.String("listen", "127.0.0.1:0", "loopback `address` to listen on; port 0 takes a free one")
	noReflection := flags.Bool("no-reflection", false, "do not answer questions about the interface")
	if err := flags.Parse(args); err != nil {
		if err == flag.ErrHelp {
			return 0
		}
		return 2
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(errs, "%s: error: argument %q is not understood; flags only\n", name, flags.Arg(0))
		return 2
	}
	ctx, stop := signal.NotifyContext(ctx, syscall.SIGINT, syscall.SIGTERM)
	defer stop()
	l, err := Listen(*listen)
	if err != nil {
		fmt.Fprintf(errs, "%s: error: %v\n", name, err)
		return 2
	}
	fmt.Fprintln(out, l.Addr())
	s := New(Options{Log: slog.New(slog.NewJSONHandler(errs, nil)), NoReflection: *noReflection}, services...)
	if err := s.ServeUntil(ctx, l, grace); err != nil {
		fmt.Fprintf(errs, "%s: error: %v\n", name, err)
		return 4
	}
	return 0
}
