package command

// This file is the verb schema: the JSON Schema of a job file, for editors.

import (
	"context"

	"github.com/urfave/cli/v2"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/services/dial"
)

func (s *session) schemaVerb() *cli.Command {
	return &cli.Command{Name: "schema", Usage: "print the JSON Schema of a job file, for an editor", Action: func(c *cli.Context) error {
		if err := arguments(c, 0, 0); err != nil {
			return err
		}
		return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
			known, err := run.Known(ctx, client)
			if err != nil {
				return err
			}
			_, err = s.out.Write(job.Schema(known))
			return err
		})
	}}
}
