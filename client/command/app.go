package command

// This file holds the application: its verbs, its options and how a run ends.

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"regexp"
	"sync"

	"github.com/urfave/cli/v2"

	"lugwright/part"
	"lugwright/services/dial"
)

// Streams are where a run reads its options from and writes to.
type Streams struct {
	Out, Err io.Writer
	Colour   bool // Out is a terminal that shows colours
	Watched  bool // Err is a terminal, on which a long run may draw how far it is
}

// A session is one run of the program.
type session struct {
	Streams
	out    *printer
	buffer *bufio.Writer
	json   bool // errors too are told as JSON
}

// flush sends everything printed so far on its way.
func (s *session) flush() error {
	if s.out.err != nil { // the buffer keeps it, and would tell it again
		return s.out.err
	}
	return s.buffer.Flush()
}

// Main runs one command line, args[0] being the program's name, and gives the exit status.
func Main(ctx context.Context, args []string, to Streams) int {
	buffer := bufio.NewWriter(to.Out)
	s := &session{Streams: to, out: &printer{w: buffer, colour: to.Colour}, buffer: buffer}
	app := s.app()
	line, err := reorder(app, args)
	if err == nil {
		err = app.RunContext(ctx, line)
	}
	if written := s.flush(); written != nil && !errors.Is(err, context.Canceled) {
		err = &outputError{fmt.Errorf("the output could not be written: %w", written)}
	}
	if ctx.Err() != nil && err != nil && !errors.Is(err, context.Canceled) {
		err = context.Canceled // whatever broke, it broke because the user stopped it
	}
	return report(to.Err, err, s.json)
}

func (s *session) app() *cli.App {
	return &cli.App{
		Name:      "lugwright",
		Usage:     "brackets that hold a body on a frame, ready to cut",
		UsageText: "lugwright VERB [options] [arguments]\noptions may stand anywhere on the line",
		Description: "Exit status: 0 all pass; 1 a check fails or is outside the rule; 2 usage or\n" +
			"job error; 3 a service could not be reached; 4 output could not be written;\n" +
			"130 interrupted.",
		HideVersion:          true,
		EnableBashCompletion: true,
		// A comma belongs to the value: 'x 300 mm, y -20 mm', 'M12, M16'.
		DisableSliceFlagSeparator: true,
		Writer:                    s.out,
		ErrWriter:                 s.Err,
		ExitErrHandler:            func(*cli.Context, error) {},
		OnUsageError:              refuseUsage,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "geometry", Usage: "address of a geometry service", DefaultText: "in this process"},
			&cli.StringFlag{Name: "strength", Usage: "address of a strength service", DefaultText: "in this process"},
			&cli.StringFlag{Name: "ca", Usage: "file of authorities for services", DefaultText: "the system's"},
			&cli.StringFlag{Name: "cert", Usage: "file of the certificate shown to services"},
			&cli.StringFlag{Name: "key", Usage: "file of its key"},
			&cli.StringFlag{Name: "server-name", Usage: "name in the services' certificate", DefaultText: "the host"},
			&cli.StringFlag{Name: tokenFlag, Usage: "file with the token that services ask for"},
			&cli.DurationFlag{Name: "timeout", Usage: "how long a service may take to answer", Value: dial.DefaultTimeout},
			&cli.BoolFlag{Name: "json", Usage: "give the whole result as JSON"},
		},
		Before: func(c *cli.Context) error {
			s.json = c.Bool("json")
			return nil
		},
		Action:   s.noVerb,
		Commands: s.verbs(),
	}
}

func (s *session) verbs() []*cli.Command {
	all := []*cli.Command{
		s.newVerb(), s.loadsVerb(), s.checkVerb(), s.sweepVerb(), s.proposeVerb(), s.batchVerb(),
		s.packVerb(), s.paperVerb(), s.viewVerb(), s.kindsVerb(), s.shopsVerb(), s.limitsVerb(), s.materialsVerb(),
		s.evaluateVerb(), s.verifyVerb(), s.serveVerb(), s.schemaVerb(), s.completionVerb(), s.versionVerb(),
	}
	for _, c := range all {
		c.OnUsageError = refuseUsage
		c.HideHelpCommand = true
	}
	return all
}

// noVerb answers a line without a verb, or with one that is not known.
func (s *session) noVerb(c *cli.Context) error {
	name := c.Args().First()
	if name == "" {
		return cli.ShowAppHelp(c)
	}
	var known []string
	for _, v := range c.App.Commands {
		known = append(known, v.Name)
	}
	return &usageError{fmt.Sprintf("%q is not a verb%s", name, part.Nearest(name, known)), "`lugwright --help` lists the verbs"}
}

func refuseUsage(c *cli.Context, err error, _ bool) error {
	return &usageError{optionWords(err.Error()), "`" + c.Command.HelpName + " --help` lists the options"}
}

// The words of the flag package for a refused option.
var (
	unknownOption = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^flag provided but not defined: -+(.*)$`) })
	badOption     = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^invalid (?:boolean )?value "(.*)" for (?:flag )?-+([a-z-]+): .*$`)
	})
	lonelyOption = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^flag needs an argument: -+(.*)$`) })
)

// optionWords tells a refused option as it is typed, and what would be taken.
func optionWords(text string) string {
	dashed := func(name string) string {
		if len(name) == 1 {
			return "-" + name
		}
		return "--" + name
	}
	if m := unknownOption().FindStringSubmatch(text); m != nil {
		return dashed(m[1]) + " is not an option"
	}
	if m := lonelyOption().FindStringSubmatch(text); m != nil {
		return dashed(m[1]) + " needs a value behind it"
	}
	m := badOption().FindStringSubmatch(text)
	switch {
	case m == nil:
		return text
	case m[2] == "timeout":
		return fmt.Sprintf("--timeout: %q is no length of time; write a number and its unit, such as 5s or 2m", m[1])
	}
	return fmt.Sprintf("%s: %q is not taken", dashed(m[2]), m[1])
}

// arguments refuses a line with fewer or more arguments than the verb takes.
func arguments(c *cli.Context, least, most int) error {
	if n := c.NArg(); n >= least && n <= most {
		return nil
	}
	return &usageError{
		fmt.Sprintf("%s takes %s, not %d", c.Command.Name, counted(least, most), c.NArg()),
		"usage: " + c.Command.HelpName + " [options] " + c.Command.ArgsUsage,
	}
}

func counted(least, most int) string {
	switch {
	case most == 0:
		return "no arguments"
	case least != most:
		return fmt.Sprintf("%d to %d arguments", least, most)
	case most == 1:
		return "one argument"
	}
	return fmt.Sprintf("%d arguments", most)
}

// Terminal says whether a file is a terminal that can move its cursor.
func Terminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0 && os.Getenv("TERM") != "dumb"
}

// Coloured says whether colours may be written to a file: it is a terminal, and NO_COLOR (no-color.org) is not set.
func Coloured(f *os.File) bool { return Terminal(f) && os.Getenv("NO_COLOR") == "" }
