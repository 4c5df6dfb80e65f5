// Command geometryd runs the geometry service alone. It prints the address it listens on, logs to standard error, and
// stops on SIGINT or SIGTERM.
package main

import (
	"context"
	"os"

	"lugwright/geometry/kinds"
	"lugwright/services/geometry"
	"lugwright/services/server"
	"lugwright/services/telemetry"
)

func main() {
	os.Exit(server.Daemon(context.Background(), "geometryd", os.Args[1:], os.Stdout, os.Stderr, telemetry.Start, geometry.New(kinds.All())))
}
