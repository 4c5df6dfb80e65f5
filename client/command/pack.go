package command

// This file is the verb pack: everything the shop and the inspector need, in one new folder.

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/client/pack"
	"lugwright/client/run"
	"lugwright/client/sweep"
	"lugwright/services/dial"
)

func (s *session) packVerb() *cli.Command {
	return &cli.Command{
		Name: "pack", ArgsUsage: "JOB -o DIR", Usage: "check a job and write its cut files, lists and papers",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "out", Aliases: []string{"o"}, Usage: "folder to write; it must not exist or be empty"},
			&cli.StringFlag{Name: "since", Usage: "folder of an earlier pack, for the revision sheet"},
			&cli.BoolFlag{Name: "despite-failure", Usage: "pack a job that fails too, marked"},
		},
		Action: s.pack,
	}
}

func (s *session) pack(c *cli.Context) error {
	if err := arguments(c, 1, 1); err != nil {
		return err
	}
	dir := c.String("out")
	if dir == "" {
		return &usageError{"pack needs a folder to write to", "usage: lugwright pack JOB -o DIR"}
	}
	if err := empty(dir); err != nil {
		return err
	}
	before, err := earlierPack(c.String("since"))
	if err != nil {
		return err
	}
	// A short run that holds little: less tidying of memory saves a fifth of its time.
	defer debug.SetGCPercent(debug.SetGCPercent(pack.GCPercent))
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		r, err := runJob(ctx, client, c.Args().First(), run.Options{Trace: true, Access: true})
		if err != nil {
			return err
		}
		vehicle, err := vehicleOf(ctx, client, r.Job)
		if err != nil {
			return err
		}
		thickness, err := sweep.Thicknesses(ctx, client, r.Job)
		if err != nil {
			return err
		}
		var said []string
		in := pack.Input{Job: r.Job, Result: r, Client: client, Version: Version, Vehicle: vehicle, Thickness: thickness, Before: before, Force: c.Bool("despite-failure"), Say: func(line string) { said = append(said, line) }}
		if err := pack.Write(ctx, dir, in); err != nil {
			return err
		}
		return firstError(s.packed(c, dir, r, said), verdictOf(r))
	})
}

// empty refuses a folder that holds something already, before any work is done: nothing is ever overwritten.
func empty(dir string) error {
	if entries, err := os.ReadDir(dir); err == nil && len(entries) > 0 {
		return &pack.NotEmptyError{Dir: dir}
	}
	return nil
}

// packed says what was written, and what the pack had to say.
func (s *session) packed(c *cli.Context, dir string, r *run.Result, said []string) error {
	files, err := listed(dir)
	if err != nil {
		return &outputError{err}
	}
	if c.Bool("json") {
		return s.writeJSON(packDoc{docOfResult(r, Version), dir, files, said})
	}
	for _, b := range r.WorstFirst() {
		s.out.flow(s.out.verdict(b.Report.Verdict())+"  ", b.Spec.Name+": "+governed(b))
		if n := len(b.Report.NotChecked); n > 0 {
			s.out.flow("      ", counting(n, "thing", "things")+" of "+b.Spec.Name+" not checked: the calc sheet lists each with the reason, under Not checked")
		}
		if n := len(b.Access); n > 0 {
			s.out.flow("      ", fmt.Sprintf("tools cannot reach %d places of %s: %s names them, as check --access does; what a torch cannot reach is not welded", n, b.Spec.Name, readmeOf(files)))
		}
	}
	for _, line := range said {
		s.out.flow("      ", line)
	}
	s.out.line("wrote %s:", dir)
	for _, f := range files {
		s.out.line("  %s", f)
	}
	if !r.Passes() && !c.Bool("despite-failure") {
		s.out.line("no cut file is written while a check fails")
	}
	s.out.cautions(r.Job.Vehicle != nil)
	return nil
}

// readmeOf is the name that README.txt has among a pack's files.
func readmeOf(files []string) string {
	return files[slices.IndexFunc(files, func(f string) bool { return strings.HasSuffix(f, "README.txt") })]
}

type packDoc struct {
	resultDoc
	Folder string   `json:"folder"`
	Files  []string `json:"files"`
	Said   []string `json:"remarks,omitempty"`
}

// listed gives the files of a folder, in the order of their names.
func listed(dir string) ([]string, error) {
	var out []string
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, err := filepath.Rel(dir, path)
		out = append(out, filepath.ToSlash(name))
		return err
	})
	return out, err
}
