package command

// This file is the verb version.

import (
	"github.com/urfave/cli/v2"

	"lugwright/services/both"
)

// Version is the version of this build; it goes into every hash and on every paper.
var Version = both.Version()

func (s *session) versionVerb() *cli.Command {
	return &cli.Command{Name: "version", Usage: "print the version", Action: func(c *cli.Context) error {
		if err := arguments(c, 0, 0); err != nil {
			return err
		}
		if c.Bool("json") {
			return s.writeJSON(map[string]any{"format": format, "tool": "lugwright", "version": Version})
		}
		s.out.line("lugwright %s", Version)
		return nil
	}}
}
