package command

// This file is the verb paper: one of the shop's papers, or all, on the terminal.

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/client/job"
	"lugwright/client/pack"
	"lugwright/client/paper"
	"lugwright/client/paper/text"
	"lugwright/client/papers"
	"lugwright/client/run"
	"lugwright/part"
	"lugwright/services/dial"
)

const everyPaper = "all"

func (s *session) paperVerb() *cli.Command {
	return &cli.Command{
		Name: "paper", ArgsUsage: "JOB [NAME]", Usage: "print a paper of the shop: weld map, torque card, buy list, ...",
		Description: "Without a name the papers are listed, with why a job has none of a kind;\n" +
			everyPaper + " prints every one.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "since", Usage: "folder of an earlier pack, for the revision sheet"},
		},
		Action: s.paper,
	}
}

func (s *session) paper(c *cli.Context) error {
	if err := arguments(c, 1, 2); err != nil {
		return err
	}
	name := c.Args().Get(1)
	if err := knownPaper(name); err != nil {
		return err
	}
	before, err := earlierPack(c.String("since"))
	if err != nil {
		return err
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		in, err := papersInput(ctx, client, c.Args().First(), before)
		if err != nil {
			return err
		}
		if err := s.printPapers(c, name, in); err != nil {
			return err
		}
		return verdictOf(in.Result)
	})
}

// knownPaper refuses a name that no paper has, before any work is done.
func knownPaper(name string) error {
	if _, ok := papers.Find(name); ok || name == "" || name == everyPaper {
		return nil
	}
	known := []string{everyPaper}
	for _, k := range papers.Kinds() {
		known = append(known, k.Name)
	}
	return &usageError{fmt.Sprintf("%q is not a paper%s", name, part.Nearest(name, known)), "one of: " + strings.Join(known, ", ")}
}

// earlierPack reads what an earlier pack cuts; nil when none is named.
func earlierPack(dir string) (*papers.Made, error) {
	if dir == "" {
		return nil, nil
	}
	made, err := papers.MadeOf(func(name string) ([]byte, error) {
		data, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(name)))
		return data, plainPathError(err)
	})
	if err != nil {
		return nil, &usageError{fmt.Sprintf("--since %s: %v", dir, err), "name the folder of a pack that `lugwright pack` wrote"}
	}
	return made, nil
}

// papersInput reads, builds and checks a job, and reckons its vehicle. A job of a vehicle alone has the papers of that.
func papersInput(ctx context.Context, client *dial.Client, path string, before *papers.Made) (papers.Input, error) {
	j, err := readJob(ctx, client, path)
	if err != nil {
		return papers.Input{}, err
	}
	in := papers.Input{Result: &run.Result{Job: j}, Version: Version, Before: before}
	if len(j.Brackets) > 0 || j.Vehicle == nil {
		if in.Result, err = run.Job(ctx, client, j, run.Options{Trace: true, Access: true}); err != nil {
			return in, err
		}
	}
	if in.Vehicle, err = vehicleOf(ctx, client, j); err != nil {
		return in, err
	}
	if !in.Result.Passes() {
		in.Warning = pack.NotPassedText
	}
	if before != nil && len(j.Brackets) > 0 {
		in.Now, err = pack.MadeOf(ctx, pack.Input{Job: in.Result.Job, Result: in.Result, Client: client, Version: Version})
	}
	return in, err
}

// vehicleOf is nil where the job has none.
func vehicleOf(ctx context.Context, client *dial.Client, j *job.Job) (*run.Vehicle, error) {
	if j.Vehicle == nil {
		return nil, nil
	}
	return run.OfVehicle(ctx, client, j, run.VehicleOptions{})
}

func (s *session) printPapers(c *cli.Context, name string, in papers.Input) error {
	var made []*paper.Paper
	var missing []papers.Missing
	if k, ok := papers.Find(name); ok {
		p, why := k.Of(in)
		if p == nil {
			missing = []papers.Missing{{Name: k.Name, Title: k.Title, Why: why}}
		} else {
			made = []*paper.Paper{p}
		}
	} else {
		made, missing = papers.All(in)
	}
	if c.Bool("json") {
		return s.writeJSON(docOfPapers(in.Result, made, missing))
	}
	if name == "" {
		s.listPapers(made, missing)
		return nil
	}
	for i, p := range made {
		if i > 0 {
			s.out.line("%s", strings.Repeat("=", columns))
			s.out.line("")
		}
		if err := text.Write(s.out, p); err != nil {
			return err
		}
	}
	for _, m := range missing {
		s.out.flow("", fmt.Sprintf("no %s: %s", m.Name, m.Why))
	}
	return nil
}

func (s *session) listPapers(made []*paper.Paper, missing []papers.Missing) {
	var rows [][]string
	for _, p := range made {
		k, _ := papers.Find(p.Name)
		rows = append(rows, []string{p.Name, k.Use})
	}
	s.out.table(rows)
	for _, m := range missing {
		s.out.flow("", fmt.Sprintf("no %s: %s", m.Name, m.Why))
	}
}

type papersDoc struct {
	Format  int          `json:"format"`
	Tool    string       `json:"tool"`
	Job     jobDoc       `json:"job"`
	Papers  []paperDoc   `json:"papers"`
	Missing []missingDoc `json:"missing"`
}

type paperDoc struct {
	Name    string     `json:"name"`
	Title   string     `json:"title"`
	Warning string     `json:"warning,omitempty"`
	Blocks  []blockDoc `json:"blocks"`
}

// blockDoc is a block with what it has: a heading or words text, a list items, a table heads and rows.
type blockDoc struct {
	Block   string     `json:"block"`
	Text    string     `json:"text,omitempty"`
	Items   []string   `json:"items,omitempty"`
	Caption string     `json:"caption,omitempty"`
	Heads   []string   `json:"heads,omitempty"`
	Rows    [][]string `json:"rows,omitempty"`
}

type missingDoc struct {
	Name string `json:"name"`
	Why  string `json:"why"`
}

func docOfPapers(r *run.Result, made []*paper.Paper, missing []papers.Missing) papersDoc {
	d := papersDoc{Format: format, Tool: "lugwright " + Version, Job: docOfJob(r, Version), Papers: []paperDoc{}}
	for _, p := range made {
		d.Papers = append(d.Papers, paperDoc{p.Name, p.Title, p.Warning, docsOf(p.Blocks, docOfBlock)})
	}
	d.Missing = docsOf(missing, func(m papers.Missing) missingDoc { return missingDoc{m.Name, m.Why} })
	return d
}

func docOfBlock(b paper.Block) blockDoc {
	switch b := b.(type) {
	case *paper.Heading:
		return blockDoc{Block: "heading", Text: b.Text}
	case *paper.Words:
		return blockDoc{Block: "words", Text: b.Text}
	case *paper.List:
		return blockDoc{Block: "list", Items: b.Items}
	case *paper.Table:
		d := blockDoc{Block: "table", Caption: b.Caption, Heads: docsOf(b.Heads, func(h paper.Head) string { return h.Text })}
		d.Rows = docsOf(b.Rows, func(r paper.Row) []string { return r.Cells })
		return d
	}
	return blockDoc{Block: "other"}
}
