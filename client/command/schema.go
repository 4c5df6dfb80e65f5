package command

// This file is the verb schema: the JSON Schema of a job file or a family file, for editors.

import (
	"cmp"
	"context"
	"fmt"

	"github.com/urfave/cli/v2"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/part"
	"lugwright/services/dial"
)

var schemas = map[string]func(job.Known) []byte{"job": job.Schema, "family": job.FamilySchema}

func (s *session) schemaVerb() *cli.Command {
	return &cli.Command{
		Name: "schema", ArgsUsage: "[job|family]", Usage: "print the JSON Schema of jobs or families, for an editor",
		BashComplete: func(c *cli.Context) { fmt.Fprintln(c.App.Writer, "job\nfamily") },
		Action: func(c *cli.Context) error {
			if err := arguments(c, 0, 1); err != nil {
				return err
			}
			of := cmp.Or(c.Args().First(), "job")
			schema, ok := schemas[of]
			if !ok {
				return &part.FieldError{Field: "file", Found: fmt.Sprintf("%q", of), Accept: "one of job, family"}
			}
			return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
				known, err := run.Known(ctx, client)
				if err != nil {
					return err
				}
				_, err = s.out.Write(schema(known))
				return err
			})
		},
	}
}
