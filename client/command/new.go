package command

// This file is the verb new: a commented starter job that runs, and the schema for an editor.

import (
	"context"
	_ "embed"
	"errors"
	"os"
	"path/filepath"

	"github.com/urfave/cli/v2"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/services/dial"
)

//go:embed starter.yaml
var starter []byte

func (s *session) newVerb() *cli.Command {
	return &cli.Command{
		Name: "new", ArgsUsage: "DIR", Usage: "write a commented starter job that runs",
		Action: s.newJob,
	}
}

func (s *session) newJob(c *cli.Context) error {
	if err := arguments(c, 1, 1); err != nil {
		return err
	}
	dir := c.Args().First()
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		known, err := run.Known(ctx, client)
		if err != nil {
			return err
		}
		if err := writeNew(dir, map[string][]byte{"job.yaml": starter, "lugwright.schema.json": job.Schema(known)}); err != nil {
			return err
		}
		path := filepath.Join(dir, "job.yaml")
		if c.Bool("json") {
			return s.writeJSON(map[string]any{"format": format, "job": path, "schema": filepath.Join(dir, "lugwright.schema.json")})
		}
		s.out.line("wrote %s, and lugwright.schema.json beside it, by which an editor completes the job", path)
		s.out.line("check it with: lugwright check %s", path)
		return nil
	})
}

// writeNew fills a folder that must not exist or be empty. On failure it takes back what it wrote.
func writeNew(dir string, files map[string][]byte) (err error) {
	if err := empty(dir); err != nil {
		return err
	}
	_, missing := os.Stat(dir)
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return &outputError{plainPathError(err)}
	}
	var written []string
	defer func() {
		if err == nil {
			return
		}
		for _, path := range written {
			os.Remove(path)
		}
		if errors.Is(missing, os.ErrNotExist) {
			os.Remove(dir)
		}
	}()
	for name, data := range files {
		path := filepath.Join(dir, name)
		written = append(written, path)
		if err := os.WriteFile(path, data, 0o666); err != nil {
			return &outputError{plainPathError(err)}
		}
	}
	return nil
}
