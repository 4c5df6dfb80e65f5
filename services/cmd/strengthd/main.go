// Command strengthd runs the strength service alone. It prints the address it listens on, logs to standard error, and
// stops on SIGINT or SIGTERM.
package main

import (
	"context"
	"os"

	"lugwright/services/server"
	"lugwright/services/strength"
	"lugwright/services/telemetry"
	"lugwright/strength/basis"
)

func main() {
	os.Exit(server.Daemon(context.Background(), "strengthd", os.Args[1:], os.Stdout, os.Stderr, telemetry.Start, strength.New(basis.All())))
}
