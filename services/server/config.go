package server

import (
	"flag"
	"fmt"
	"io"
	"log/slog"
	"os"
	"strings"
	"time"

	"lugwright/services/transport"
)

// Config is how a server runs as a program. Each setting is a flag, and an environment variable where the flag is not given.
type Config struct {
	Flags *flag.FlagSet // bound to the fields below

	Listen       string
	Files        transport.ServerFiles
	TokenFile    string
	NoReflection bool
	Health       string
	Pprof        string

	Limits    Limits
	MemoryMiB int
	Grace     time.Duration
}

// NewConfig is the configuration of a program, as it is when nothing is set.
func NewConfig(program string) *Config {
	c := &Config{Flags: flag.NewFlagSet(program, flag.ContinueOnError), Limits: DefaultLimits()}
	f := c.Flags
	f.StringVar(&c.Listen, "listen", "127.0.0.1:0", "`address`; port 0: a free one")
	f.StringVar(&c.Files.Cert, "tls-cert", "", "`file` of the certificate chain; turns TLS on")
	f.StringVar(&c.Files.Key, "tls-key", "", "`file` of its key")
	f.StringVar(&c.Files.ClientCA, "client-ca", "", "`file` of authorities; only their clients are let in")
	f.StringVar(&c.TokenFile, "token-file", "", "`file` with the token that each call must bring")
	f.BoolVar(&c.NoReflection, "no-reflection", false, "tell nobody the interface")
	f.IntVar(&c.Limits.Workers, "workers", c.Limits.Workers, "`calls` worked on at once")
	f.IntVar(&c.Limits.Queue, "queue", c.Limits.Queue, "`calls` that may wait for a worker")
	f.IntVar(&c.Limits.Calls, "calls", c.Limits.Calls, "`calls` at once, still arriving or not")
	f.IntVar(&c.Limits.Streams, "streams", c.Limits.Streams, "`calls` at once on one connection")
	f.IntVar(&c.Limits.Connections, "connections", c.Limits.Connections, "`connections` at once")
	f.DurationVar(&c.Limits.CallTime, "call-time", c.Limits.CallTime, "longest `time` of one call")
	f.IntVar(&c.MemoryMiB, "memory", 1024, "`MiB` to keep within; 0: no bound")
	f.DurationVar(&c.Grace, "grace", 10*time.Second, "`time` that running calls have to end in")
	f.StringVar(&c.Health, "health", "", "loopback `address` for health alone, in plaintext")
	f.StringVar(&c.Pprof, "pprof", "", "loopback `address` for Go's profiles")
	return c
}

// parse reads flags, and leaves what is wrong with them to its caller to say, once and last.
func (c *Config) parse(args []string) error {
	c.Flags.SetOutput(io.Discard)
	c.Flags.Usage = func() {}
	switch err := c.Flags.Parse(args); {
	case err == flag.ErrHelp:
		return err
	case err != nil:
		return fmt.Errorf("%w; --help lists the options", err)
	case c.Flags.NArg() > 0:
		return fmt.Errorf("argument %q is not understood; flags only", c.Flags.Arg(0))
	}
	return nil
}

// Variable is the environment variable of a flag: "tls-cert" is LUGWRIGHT_TLS_CERT.
func Variable(flag string) string {
	return "LUGWRIGHT_" + strings.ToUpper(strings.ReplaceAll(flag, "-", "_"))
}

// FromEnvironment sets what no flag has set; lookup is os.LookupEnv. An empty variable counts as none.
func (c *Config) FromEnvironment(lookup func(string) (string, bool)) error {
	given := map[string]bool{}
	c.Flags.Visit(func(f *flag.Flag) { given[f.Name] = true })
	var refused error
	c.Flags.VisitAll(func(f *flag.Flag) {
		value, ok := lookup(Variable(f.Name))
		if !ok || value == "" || given[f.Name] || refused != nil {
			return
		}
		if err := c.Flags.Set(f.Name, value); err != nil {
			refused = fmt.Errorf("%s: %q is not taken; %s", Variable(f.Name), value, acceptedAs(f))
		}
	})
	return refused
}

// Set sets one flag from its text.
func (c *Config) Set(name, value string) error {
	if err := c.Flags.Set(name, value); err != nil {
		return fmt.Errorf("--%s: %q is not taken; %s", name, value, acceptedAs(c.Flags.Lookup(name)))
	}
	return nil
}

func acceptedAs(f *flag.Flag) string {
	switch f.Value.(flag.Getter).Get().(type) {
	case int:
		return "write a whole number such as " + f.DefValue
	case time.Duration:
		return "write a time such as " + f.DefValue
	case bool:
		return "write true or false"
	}
	return "write text"
}

// check refuses settings that no server can run with.
func (c *Config) check() error {
	for _, n := range []struct {
		flag        string
		value       int
		least, most int
	}{
		{"workers", c.Limits.Workers, 1, 1024},
		{"queue", c.Limits.Queue, 0, 100_000},
		{"calls", c.Limits.Calls, 1, 1_000_000},
		{"streams", c.Limits.Streams, 1, 1_000_000},
		{"connections", c.Limits.Connections, 1, 1_000_000},
	} {
		if n.value < n.least || n.value > n.most {
			return fmt.Errorf("--%s %d is not taken; write a number from %d to %d", n.flag, n.value, n.least, n.most)
		}
	}
	if c.Limits.CallTime < 100*time.Millisecond || c.Limits.CallTime > time.Hour {
		return fmt.Errorf("--call-time %s is not taken; write a time from 100ms to 1h", c.Limits.CallTime)
	}
	if c.Grace < 0 || c.Grace > time.Hour {
		return fmt.Errorf("--grace %s is not taken; write a time from 0s to 1h", c.Grace)
	}
	if c.MemoryMiB != 0 && (c.MemoryMiB < 64 || c.MemoryMiB > 1<<20) {
		return fmt.Errorf("--memory %d is not taken; write MiB, from 64 to %d, or 0 for no bound", c.MemoryMiB, 1<<20)
	}
	if (c.Files.Cert == "") != (c.Files.Key == "") {
		return fmt.Errorf("--tls-cert and --tls-key belong together; give both")
	}
	if c.Files.ClientCA != "" && c.Files.Cert == "" {
		return fmt.Errorf("--client-ca asks clients for certificates, which needs TLS; give --tls-cert and --tls-key too")
	}
	if c.Health != "" && !transport.LoopbackAddress(c.Health) {
		return fmt.Errorf("--health %s is not taken; plaintext stays on this machine, write an address such as 127.0.0.1:7400", c.Health)
	}
	if c.Pprof != "" && !transport.LoopbackAddress(c.Pprof) {
		return fmt.Errorf("--pprof %s is not taken; profiles stay on this machine, write an address such as 127.0.0.1:0", c.Pprof)
	}
	return nil
}

// secured says whether the server speaks TLS.
func (c *Config) secured() bool { return c.Files.Cert != "" }

// LogValue lists all settings. None is a secret: tokens and keys are named by their files.
func (c *Config) LogValue() slog.Value {
	var all []slog.Attr
	c.Flags.VisitAll(func(f *flag.Flag) { all = append(all, slog.String(f.Name, f.Value.String())) })
	return slog.GroupValue(all...)
}

// withoutUser hides what stands before the last @ of an address, whether it can be read as one or not.
func withoutUser(address string) string {
	scheme, rest, ok := strings.Cut(address, "://")
	if scheme += "://"; !ok {
		scheme, rest = "", address
	}
	if at := strings.LastIndex(rest, "@"); at >= 0 {
		rest = "hidden" + rest[at:]
	}
	return scheme + rest
}

// openTelemetry lists the variables of OpenTelemetry that are set. Those that hold headers may hold secrets, and are hidden; so is what an address says before its @.
func openTelemetry() slog.Value {
	var all []slog.Attr
	for _, pair := range os.Environ() {
		name, value, _ := strings.Cut(pair, "=")
		if !strings.HasPrefix(name, "OTEL_") || value == "" {
			continue
		}
		if strings.HasSuffix(name, "_HEADERS") {
			value = "(hidden)"
		}
		all = append(all, slog.String(name, withoutUser(value)))
	}
	return slog.GroupValue(all...)
}
