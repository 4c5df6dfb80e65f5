package command

// This file is the verb serve: both services in one process, on this machine.

import (
	"log/slog"
	"time"

	"github.com/urfave/cli/v2"

	"lugwright/services/both"
	"lugwright/services/server"
)

// grace is how long running calls may take to end when the server is told to stop.
const grace = 10 * time.Second

func (s *session) serveVerb() *cli.Command {
	return &cli.Command{
		Name: "serve", Usage: "run both services in one process, until interrupted",
		Flags:  []cli.Flag{&cli.StringFlag{Name: "listen", Value: "127.0.0.1:0", Usage: "loopback address; port 0: a free one"}},
		Action: s.serve,
	}
}

func (s *session) serve(c *cli.Context) error {
	if err := arguments(c, 0, 0); err != nil {
		return err
	}
	l, err := server.Listen(c.String("listen"))
	if err != nil {
		return &usageError{err.Error(), "leave --listen out for a free port"}
	}
	if c.Bool("json") {
		err = s.writeJSON(map[string]any{"format": format, "address": l.Addr().String()})
	} else {
		s.out.line("%s", l.Addr())
	}
	if err := firstError(err, s.flush()); err != nil {
		l.Close()
		return &outputError{err}
	}
	srv := server.New(server.Options{Log: slog.New(slog.NewJSONHandler(s.Err, nil))}, both.Services()...)
	return srv.ServeUntil(c.Context, l, grace)
}
