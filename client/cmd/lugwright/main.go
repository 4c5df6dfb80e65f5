// Command lugwright takes a job file to checked brackets and a cut pack. It only starts client/command.
package main

import (
	"context"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
	"syscall"

	"lugwright/client/command"
)

func main() {
	// One job is over before a second collection would pay; a server run by `serve` keeps more memory in hand for it.
	debug.SetGCPercent(200)
	runtime.MemProfileRate = 0 // nobody asks for the samples but `serve --pprof`, which turns them on again
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(command.Main(ctx, os.Args, command.Streams{
		Out: os.Stdout, Err: os.Stderr, Colour: command.Coloured(os.Stdout), Watched: command.Terminal(os.Stderr),
	}))
}
