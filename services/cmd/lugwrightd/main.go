// Command lugwrightd runs both services, as `lugwright serve` does, with telemetry. It prints the address it listens on, logs to standard
// error, and stops on SIGINT or SIGTERM.
package main

import (
	"context"
	"os"

	"lugwright/services/both"
	"lugwright/services/server"
	"lugwright/services/telemetry"
)

func main() {
	os.Exit(server.Daemon(context.Background(), "lugwrightd", os.Args[1:], os.Stdout, os.Stderr, telemetry.Start, both.Services()...))
}
