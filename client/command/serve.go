package command

// This file is the verb serve: both services in one process.

import (
	"errors"
	stdflag "flag"
	"fmt"
	"log/slog"
	"net"
	"os"

	"github.com/urfave/cli/v2"

	"lugwright/services/both"
	"lugwright/services/server"
)

const serveHelp = `Prints its address once it serves, logs JSON lines to standard error, and
stops on SIGINT or SIGTERM when the calls that run have ended.

On a loopback address (127.0.0.1 and its kin, ::1, localhost) it speaks
plaintext. On any other it wants --tls-cert and --tls-key, and speaks TLS
1.3 only. With --client-ca it lets in only clients with a certificate of
these authorities. With --token-file each call must bring the token in that
file; clients take the same option. Changed files are taken at the next
connection or call, without a restart.

Each option also by environment: --tls-cert is LUGWRIGHT_TLS_CERT.

   lugwright serve --listen 127.0.0.1:7401
   lugwright serve --listen :7401 --tls-cert server.pem \
     --tls-key server.key --client-ca clients.pem
   lugwright check job.yaml --geometry shop:7401 --strength shop:7401 \
     --ca authority.pem --cert me.pem --key me.key`

func (s *session) serveVerb() *cli.Command {
	return &cli.Command{
		Name: "serve", Usage: "run both services in one process, until interrupted",
		Description: serveHelp,
		Flags:       serveFlags(),
		Action:      s.serve,
	}
}

// tokenFlag is an option of the whole program: clients bring the token, and serve asks for it.
const tokenFlag = "token-file"

// serveFlags are the server's settings as options of this program.
func serveFlags() []cli.Flag {
	var out []cli.Flag
	server.NewConfig("").Flags.VisitAll(func(f *stdflag.Flag) {
		if f.Name == tokenFlag {
			return
		}
		_, usage := stdflag.UnquoteUsage(f)
		if value, ok := f.Value.(interface{ IsBoolFlag() bool }); ok && value.IsBoolFlag() {
			out = append(out, &cli.BoolFlag{Name: f.Name, Usage: usage})
			return
		}
		out = append(out, &cli.StringFlag{Name: f.Name, Usage: usage, DefaultText: f.DefValue})
	})
	return out
}

func (s *session) serve(c *cli.Context) error {
	if err := arguments(c, 0, 0); err != nil {
		return err
	}
	config, err := serveConfig(c)
	if err != nil {
		return err
	}
	err = config.Run(c.Context, slog.New(slog.NewJSONHandler(s.Err, nil)), nil, func(at net.Addr) error { return s.tellAddress(c, at) }, both.Services()...)
	var setting *server.SettingError
	var test *server.SelfTestError
	switch {
	case errors.As(err, &setting):
		return &usageError{err.Error(), "`lugwright serve --help` says what is taken; without --listen it takes a free port"}
	case errors.As(err, &test):
		return &verdictError{err.Error()}
	}
	return err
}

// serveConfig takes the options that were given, and the environment where none was.
func serveConfig(c *cli.Context) (*server.Config, error) {
	for _, name := range []string{"geometry", "strength", "ca", "cert", "key", "server-name"} {
		if c.IsSet(name) {
			return nil, &usageError{fmt.Sprintf("--%s is for a client; serve does not take it", name), "`lugwright serve --help` lists its options"}
		}
	}
	config := server.NewConfig("serve")
	var refused error
	config.Flags.VisitAll(func(f *stdflag.Flag) {
		if c.IsSet(f.Name) && refused == nil {
			refused = config.Set(f.Name, fmt.Sprint(c.Value(f.Name)))
		}
	})
	if refused == nil {
		refused = config.FromEnvironment(os.LookupEnv)
	}
	if refused != nil {
		return nil, &usageError{refused.Error(), ""}
	}
	return config, nil
}

func (s *session) tellAddress(c *cli.Context, at net.Addr) error {
	var err error
	if c.Bool("json") {
		err = s.writeJSON(map[string]any{"format": format, "address": at.String()})
	} else {
		s.out.line("%s", at)
	}
	if err := firstError(err, s.flush()); err != nil {
		return &outputError{err}
	}
	return nil
}
