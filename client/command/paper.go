package command

// This file is the verb paper: one paper, or all, on the terminal or in files.

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
	"lugwright/client/papers"
	"lugwright/client/run"
	"lugwright/client/sweep"
	"lugwright/part"
	"lugwright/services/dial"
)

const everyPaper = "all"

func (s *session) paperVerb() *cli.Command {
	return &cli.Command{
		Name: "paper", ArgsUsage: "JOB [NAME]", Usage: "print a paper: calc sheet, weld map, torque card, buy list, ...",
		Description: "Without a name the papers are listed, with why a job has none of a kind;\n" +
			everyPaper + " prints every one. With -o it goes to a file by its ending, of all of them\n" +
			"one after the other, or to a folder, one file each in the form of --form.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "out", Aliases: []string{"o"}, Usage: "write to `FILE|DIR`: .pdf, .html, .txt, or a folder"},
			&cli.StringFlag{Name: "form", Value: "pdf", Usage: "of files in a folder: " + strings.Join(formNames(), ", ")},
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
	to, err := paperTargetOf(c.String("out"), c.String("form"), c.IsSet("form"), name)
	if err != nil {
		return err
	}
	before, err := earlierPack(c.String("since"))
	if err != nil {
		return err
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		j, err := readJob(ctx, client, c.Args().First())
		if err != nil {
			return err
		}
		in, err := papersInput(ctx, client, j, before)
		if err != nil {
			return err
		}
		made, err := makePapers(ctx, client, name, in)
		if err != nil {
			return err
		}
		if err := s.givePapers(c, name, in, made, to); err != nil {
			return err
		}
		return verdictOf(in.Result)
	})
}

// givePapers tells what was asked for, and writes it where a place for it is named.
func (s *session) givePapers(c *cli.Context, name string, in papers.Input, made papersMade, to *paperTarget) error {
	if to != nil {
		if len(made.list) == 0 {
			return &usageError{fmt.Sprintf("%s is not written, the job has no %s: %s", to.path, made.missing[0].Name, made.missing[0].Why), "`lugwright paper JOB` lists those that it has"}
		}
		wrote, err := to.write(made.list, in)
		if err != nil {
			return err
		}
		if c.Bool("json") {
			return s.writeJSON(docOfPapers(in.Result, made, wrote))
		}
		for _, file := range wrote {
			s.out.line("wrote %s", file)
		}
		s.missingPapers(made.missing)
		return nil
	}
	if c.Bool("json") {
		return s.writeJSON(docOfPapers(in.Result, made, nil))
	}
	if name == "" {
		s.listPapers(made)
		return nil
	}
	if err := writeTexts(s.out, made.list); err != nil {
		return err
	}
	s.missingPapers(made.missing)
	return nil
}

// knownPaper refuses a name that no paper has, before any work is done.
func knownPaper(name string) error {
	if _, ok := papers.Find(name); ok || name == "" || name == everyPaper || name == pack.CalcSheetName {
		return nil
	}
	known := []string{everyPaper, pack.CalcSheetName}
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

// papersInput builds and checks a job, and reckons its vehicle. A job of a vehicle alone has the papers of that.
func papersInput(ctx context.Context, client *dial.Client, j *job.Job, before *papers.Made) (papers.Input, error) {
	var err error
	in := papers.Input{Result: &run.Result{Job: j}, Version: Version, Before: before}
	if len(j.Brackets) > 0 || j.Vehicle == nil {
		if in.Result, err = run.Job(ctx, client, j, run.Options{Trace: true, Access: true}); err != nil {
			return in, err
		}
	}
	if in.Vehicle, err = vehicleOf(ctx, client, j); err != nil {
		return in, err
	}
	if in.Thickness, err = sweep.Thicknesses(ctx, client, in.Result.Job); err != nil {
		return in, err
	}
	in.Drawings = pack.DrawingsOf(in.Result)
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

// papersMade are the papers that were asked for, and those of them that the job has none of.
type papersMade struct {
	list    []*paper.Paper
	missing []papers.Missing
}

// makePapers makes one paper by its name, or all: the shop's in the order of use, and the calc sheet last.
func makePapers(ctx context.Context, client *dial.Client, name string, in papers.Input) (out papersMade, err error) {
	if k, ok := papers.Find(name); ok {
		p, why := k.Of(in)
		if p == nil {
			out.missing = []papers.Missing{{Name: k.Name, Title: k.Title, Why: why}}
		} else {
			out.list = []*paper.Paper{p}
		}
		return out, nil
	}
	if name != pack.CalcSheetName {
		out.list, out.missing = papers.All(in)
	}
	if len(in.Result.Brackets) == 0 {
		out.missing = append(out.missing, papers.Missing{Name: pack.CalcSheetName, Title: "Calc sheet", Why: "the job has no brackets"})
		return out, nil
	}
	p, err := pack.CalcSheet(ctx, pack.Input{Job: in.Result.Job, Result: in.Result, Client: client, Version: in.Version, Vehicle: in.Vehicle, Thickness: in.Thickness, Drawings: in.Drawings})
	if err != nil {
		return out, err
	}
	out.list = append(out.list, p)
	return out, nil
}

func (s *session) missingPapers(missing []papers.Missing) {
	for _, m := range missing {
		s.out.flow("", fmt.Sprintf("no %s: %s", m.Name, m.Why))
	}
}

func (s *session) listPapers(made papersMade) {
	var rows [][]string
	for _, p := range made.list {
		rows = append(rows, []string{p.Name, useOf(p)})
	}
	s.out.table(rows)
	s.missingPapers(made.missing)
}

func useOf(p *paper.Paper) string {
	if k, ok := papers.Find(p.Name); ok {
		return k.Use
	}
	return "every check, the deciding ones in full; what was not checked"
}

type papersDoc struct {
	Format  int          `json:"format"`
	Tool    string       `json:"tool"`
	Job     jobDoc       `json:"job"`
	Papers  []paperDoc   `json:"papers"`
	Missing []missingDoc `json:"missing"`
	Files   []string     `json:"files,omitempty"` // that were written
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

func docOfPapers(r *run.Result, made papersMade, files []string) papersDoc {
	d := papersDoc{Format: format, Tool: "lugwright " + Version, Job: docOfJob(r, Version), Papers: []paperDoc{}, Files: files}
	for _, p := range made.list {
		d.Papers = append(d.Papers, paperDoc{p.Name, p.Title, p.Warning, docsOf(p.Blocks, docOfBlock)})
	}
	d.Missing = docsOf(made.missing, func(m papers.Missing) missingDoc { return missingDoc{m.Name, m.Why} })
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
