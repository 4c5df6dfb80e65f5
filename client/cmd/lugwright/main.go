// Command lugwright takes a job file to checked brackets and a cut pack. It only starts client/command.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"

	"lugwright/client/command"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(command.Main(ctx, os.Args, command.Streams{Out: os.Stdout, Err: os.Stderr, Colour: command.Terminal(os.Stdout)}))
}
