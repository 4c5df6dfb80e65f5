package command

// This file is the verb view: a job's pages on this machine, made anew when the job changes.

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strconv"
	"sync"

	"github.com/urfave/cli/v2"

	"lugwright/client/draw"
	"lugwright/client/drawings"
	"lugwright/client/paper"
	"lugwright/client/paper/html"
	"lugwright/client/paper/pdf"
	"lugwright/client/papers"
	"lugwright/client/shopfile"
	"lugwright/client/view"
	"lugwright/services/dial"
)

func (s *session) viewVerb() *cli.Command {
	return &cli.Command{
		Name: "view", ArgsUsage: "JOB", Usage: "show a job's papers in the browser, anew at every save",
		Description: "Prints the address, and serves this machine alone, until interrupted. When the\n" +
			"job file or its shop file changes, the job is checked again and open pages\n" +
			"show it; an error stands on the page with its line, above the last result.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "listen", Value: "127.0.0.1:0", Usage: "port, or HOST:PORT of this machine", DefaultText: "a free port"},
		},
		Action: s.view,
	}
}

func (s *session) view(c *cli.Context) error {
	if err := arguments(c, 1, 1); err != nil {
		return err
	}
	path := c.Args().First()
	if _, err := readFile(path); err != nil {
		return &usageError{err.Error(), "`lugwright new DIR` writes a job to begin with"}
	}
	address := c.String("listen")
	if _, err := strconv.ParseUint(address, 10, 16); err == nil {
		address = "127.0.0.1:" + address
	}
	l, err := view.Listen(address)
	var refused *view.AddressError
	switch {
	case errors.As(err, &refused):
		return &usageError{"--listen " + err.Error(), "write a port such as 8080, or 127.0.0.1:8080; pages are for this machine alone"}
	case err != nil:
		return &usageError{"--listen " + address + ": " + err.Error(), "without --listen a free port is taken"}
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		defer l.Close()
		ctx, stop := context.WithCancel(ctx)
		defer stop()
		var lost error // what could not be told
		viewer := view.New(
			func(ctx context.Context) (*view.Site, []string, error) { return siteOf(ctx, client, path) },
			func(site *view.Site, err error) {
				if s.viewed(c, site, err) != nil {
					lost = s.out.err
					stop()
				}
			})
		if err := s.tellView(c, "http://"+l.Addr().String()+"/"); err != nil {
			return err
		}
		var watching sync.WaitGroup
		watching.Go(func() { viewer.Watch(ctx) })
		err := viewer.Serve(ctx, l)
		stop()
		watching.Wait()
		if lost != nil {
			return &outputError{lost}
		}
		return err
	})
}

func (s *session) tellView(c *cli.Context, address string) error {
	var err error
	if c.Bool("json") {
		err = s.writeJSON(map[string]any{"format": format, "address": address})
	} else {
		s.out.line("%s", address)
	}
	if err := firstError(err, s.flush()); err != nil {
		return &outputError{err}
	}
	return nil
}

// viewed tells each making in a line or few.
func (s *session) viewed(c *cli.Context, site *view.Site, err error) error {
	switch {
	case c.Bool("json"):
		said := map[string]any{"format": format}
		if err != nil {
			said["error"] = err.Error()
		} else {
			said["verdict"] = site.Lines[0].Words
		}
		if err := s.writeJSON(said); err != nil {
			return err
		}
	case err != nil:
		s.out.flow("error: ", err.Error())
	default:
		s.out.flow("", site.Lines[0].Words)
	}
	return s.flush()
}

// siteOf checks a job and gives its pages, and the files that they depend on.
func siteOf(ctx context.Context, client *dial.Client, path string) (*view.Site, []string, error) {
	files := []string{path}
	j, err := readJob(ctx, client, path)
	if j != nil && j.ShopName != "" {
		if _, shipped := shopfile.Shipped(j.ShopName); !shipped {
			shop := j.ShopName
			if !filepath.IsAbs(shop) {
				shop = filepath.Join(filepath.Dir(path), shop)
			}
			files = append(files, shop)
		}
	}
	if err != nil {
		return nil, files, err
	}
	in, err := papersInput(ctx, client, j, nil)
	if err != nil {
		return nil, files, err
	}
	made, err := makePapers(ctx, client, everyPaper, in)
	if err != nil {
		return nil, files, err
	}
	site := &view.Site{Title: in.Result.Job.Title}
	if err := verdictOf(in.Result); err != nil {
		site.Lines = append(site.Lines, view.Line{Words: "NOT PASSED: " + err.Error(), Strong: true})
	} else if len(in.Result.Brackets) == 0 {
		site.Lines = append(site.Lines, view.Line{Words: "the job has no brackets; its vehicle is reckoned"})
	} else {
		site.Lines = append(site.Lines, view.Line{Words: "every bracket passes; what was not checked is on the calc sheet", Strong: true})
	}
	for _, b := range in.Result.WorstFirst() {
		site.Lines = append(site.Lines, view.Line{Words: shout(b.Report.Verdict()) + ": " + b.Spec.Name + ", " + governed(b)})
	}
	for _, m := range made.missing {
		site.Lines = append(site.Lines, view.Line{Words: fmt.Sprintf("no %s: %s", m.Name, m.Why)})
	}
	n := len(made.list)
	if n == 0 {
		return site, files, nil
	}
	list := append([]*paper.Paper{made.list[n-1]}, made.list[:n-1]...) // the calc sheet first
	for _, p := range list {
		site.Pages = append(site.Pages, pagesOf(p, useOf(p))...)
	}
	for _, p := range drawingPapers(in, list[0]) {
		site.Pages = append(site.Pages, pagesOf(p, "parts, views, welds and loads, and each plate with its dimensions")...)
	}
	return site, files, nil
}

// pagesOf are a paper's page, and its PDF to print.
func pagesOf(p *paper.Paper, use string) []view.Page {
	return []view.Page{
		{Path: p.Name + ".html", Type: "text/html; charset=utf-8", Words: p.Title, Use: use, Print: p.Name + ".pdf", Write: func(w io.Writer) error { return html.Write(w, p) }},
		{Path: p.Name + ".pdf", Type: "application/pdf", Write: func(w io.Writer) error { return pdf.Write(w, p) }},
	}
}

// drawingPapers are a paper for each bracket, with its drawings and those of its plates; what stands on every page is another paper's.
func drawingPapers(in papers.Input, like *paper.Paper) []*paper.Paper {
	var out []*paper.Paper
	for i := range in.Result.Brackets {
		b := &in.Result.Brackets[i]
		o := drawings.Options{Units: in.Result.Job.Units}
		p := *like
		p.Name, p.Title, p.Blocks = "drawings-"+drawings.GroupID(b.Spec.Name), "Drawings of "+b.Spec.Name, nil
		add := func(d *draw.Drawing) { p.Blocks = append(p.Blocks, &paper.Figure{Drawing: d}) }
		for _, d := range in.Drawings.Of(b.Part, in.Result.Job.LoadCases(b.Spec)).All(o) {
			add(d)
		}
		made := b.Part.AsMade()
		var marks []string
		for k := range made.Plates {
			q := &made.Plates[k]
			if !slices.Contains(marks, q.Mark) {
				marks = append(marks, q.Mark)
				add(drawings.Plate(q, drawings.PlateOptions{Options: o, Hand: made.Hand}))
			}
		}
		out = append(out, &p)
	}
	return out
}
