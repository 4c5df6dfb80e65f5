package command

// This file is the verb sweep: a bracket with other parameters, which of them hold, and which is the lightest.

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/client/draw/svg"
	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/client/sweep"
	"lugwright/services/dial"
)

func (s *session) sweepVerb() *cli.Command {
	return &cli.Command{
		Name: "sweep", ArgsUsage: "JOB [BRACKET...]", Usage: "vary parameters of brackets; the lightest that holds",
		Description: "--vary takes a list, a range or the rack, and may be given again:\n" +
			"  --vary 'ear_thickness=6 mm..16 mm step 2 mm' --vary 'bolt_size=M12, M16'\n" +
			"  --vary 'pair-left.ear_width=4 in to 5 in by 1/4 in' --vary gussets=all\n" +
			"  --vary ear_thickness=rack   the thicknesses of `sheets` and `rack` in the job\n" +
			"Several are tried in every combination, at most " + strconv.Itoa(sweep.Most) + " variants.",
		Flags: []cli.Flag{
			&cli.StringSliceFlag{Name: "vary", Usage: "a parameter and its values; may be given again"},
			marginFlag(),
			&cli.BoolFlag{Name: "common", Usage: "hold the brackets to common thicknesses of plate"},
			&cli.BoolFlag{Name: "refine", Usage: "find where passing begins along one range"},
			&cli.StringFlag{Name: "against", Value: "mass", Usage: "what the plot shows: mass, cut or weld"},
			&cli.StringFlag{Name: "plot", Usage: "write the plot to this file, as SVG"},
			&cli.StringFlag{Name: "out", Aliases: []string{"o"}, Usage: "write every variant to this file, as CSV"},
		},
		Action: s.sweep,
	}
}

func marginFlag() cli.Flag {
	return &cli.StringFlag{Name: "margin", Value: "1", Usage: "wanted margin: no utilisation above 1/margin"}
}

// A swept is everything that one sweep has to tell.
type swept struct {
	job      *job.Job
	plan     *sweep.Plan
	margin   float64
	brackets []*sweep.Swept
	common   []sweep.Common
	apart    error // why there are no common thicknesses
	whole    bool  // every variant was tried
}

func (s *session) sweep(c *cli.Context) error {
	if err := arguments(c, 1, 100); err != nil {
		return err
	}
	margin, err := marginOf(c.String("margin"))
	if err != nil {
		return err
	}
	across, err := acrossOf(c.String("against"))
	if err != nil {
		return err
	}
	if out := c.String("out"); out != "" && filepath.Clean(out) == filepath.Clean(c.String("plot")) {
		return &usageError{"--out and --plot name one file, " + out, "two names: the table of variants and the plot"}
	}
	for _, file := range []string{c.String("plot"), c.String("out")} {
		if err := absent(file); err != nil {
			return err
		}
	}
	if len(c.StringSlice("vary")) == 0 {
		return &usageError{"sweep needs something to vary", "such as --vary 'ear_thickness=6 mm..16 mm step 2 mm'"}
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		j, err := readJob(ctx, client, c.Args().First())
		if err != nil {
			return err
		}
		bench, err := benchOf(ctx, client, j, margin)
		if err != nil {
			return err
		}
		kinds, err := client.Kinds(ctx)
		if err != nil {
			return err
		}
		plan, err := sweep.NewPlan(ctx, client, bench.Job, kinds, c.Args().Tail(), c.StringSlice("vary"))
		if err != nil {
			return err
		}
		if c.Bool("refine") {
			for i := range plan.Grids {
				if _, err := sweep.Refined(&plan.Grids[i]); err != nil {
					return &usageError{"--refine: " + err.Error(), ""}
				}
			}
		}
		r := &swept{job: bench.Job, plan: plan, margin: margin}
		variants := 0
		for i := range plan.Grids {
			variants += plan.Grids[i].Count()
		}
		bar := s.progress(int64(variants), "variants")
		defer bar.end()
		page := &sweepPage{printer: s.out, scale: scale{bench.Job.Units}, r: r, across: across, quiet: c.Bool("json"), flush: s.flush, bar: bar}
		err = page.tryAll(ctx, client, bench, c.Bool("refine"))
		bar.end()
		var fields job.Errors
		if errors.As(err, &fields) {
			return err
		}
		if err == nil && c.Bool("common") {
			r.common, r.apart = sweep.Together(r.candidates())
		}
		r.whole = err == nil
		if told := s.sweptOut(c, page); told != nil && !errors.Is(err, context.Canceled) {
			return told
		}
		return firstError(err, r.verdict())
	})
}

// sweptOut tells what came of a sweep, whole or not.
func (s *session) sweptOut(c *cli.Context, page *sweepPage) error {
	if c.Bool("json") {
		if err := s.writeJSON(docOfSweep(page.r, Version)); err != nil {
			return err
		}
	} else {
		page.end(c.Bool("common"))
	}
	if file := c.String("out"); file != "" {
		if err := writeFile(file, csvOfSweep(page.r)); err != nil {
			return err
		}
		page.say("wrote " + file)
	}
	return page.plots(c.String("plot"))
}

// benchOf finds the loads of a job and takes what trying variants of its brackets needs.
func benchOf(ctx context.Context, client *dial.Client, j *job.Job, margin float64) (*sweep.Bench, error) {
	if len(j.Brackets) == 0 {
		return nil, j.AtRoot("brackets", "missing", "brackets to vary; `lugwright propose JOB --mount NAME --kind KIND` gives one to begin with")
	}
	j, _, err := run.Loaded(ctx, client, j)
	if err != nil {
		return nil, err
	}
	densities, err := run.ReadDensities(ctx, client)
	if err != nil {
		return nil, err
	}
	return &sweep.Bench{Client: client, Job: j, Densities: densities, Margin: margin}, nil
}

// marginOf reads the wanted margin.
func marginOf(text string) (float64, error) {
	m, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil || !(m >= 1 && m <= 10) {
		return 0, &usageError{fmt.Sprintf("--margin %q is no margin", text), "write a number from 1 to 10: with 1.1 no utilisation is above 1/1.1"}
	}
	return m, nil
}

// absent refuses a file that is there already, since nothing is ever overwritten, and one that cannot be written, before any work is done.
func absent(file string) error {
	if file == "" {
		return nil
	}
	if _, err := os.Lstat(file); err == nil {
		return &outputError{fmt.Errorf("%s is there already; nothing is overwritten: choose another name, or remove it", file)}
	}
	f, err := os.OpenFile(file, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err == nil {
		err = errors.Join(f.Close(), os.Remove(file))
	}
	if err != nil {
		return &outputError{fmt.Errorf("%w; a file in a folder that is there and can be written to", plainPathError(err))}
	}
	return nil
}

// writeFile writes a whole file that was not there.
func writeFile(file string, data []byte) error {
	f, err := os.OpenFile(file, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return &outputError{plainPathError(err)}
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Close()); err != nil {
		os.Remove(file) //nolint:errcheck // the error at hand says more
		return &outputError{plainPathError(err)}
	}
	return nil
}

func (r *swept) candidates() []sweep.Candidate {
	out := make([]sweep.Candidate, len(r.brackets))
	for i, b := range r.brackets {
		out[i] = sweep.Candidate{Rows: b.Rows, Quantity: b.Grid.Spec.Quantity}
	}
	return out
}

// verdict is why a sweep has found nothing: a bracket of which no variant passes.
func (r *swept) verdict() error {
	for _, b := range r.brackets {
		if b.Lightest != nil {
			continue
		}
		text := fmt.Sprintf("no variant of %s passes", b.Grid.Spec.Name)
		if r.margin > 1 {
			text += fmt.Sprintf(" by a margin of %g", r.margin)
		}
		if n := sweep.Nearest(b.Rows); n != nil {
			text += ": the nearest, " + assigned(n.Values, r.job.Units) + ", " + fate(n, scale{r.job.Units})
		}
		return &verdictError{text}
	}
	return nil
}

// plots writes the plot of one bracket; of several, one file each with the bracket's name before the ending.
func (p *sweepPage) plots(file string) error {
	if file == "" {
		return nil
	}
	for _, b := range p.r.brackets {
		name := file
		if len(p.r.brackets) > 1 {
			stem, ending, _ := strings.Cut(file, ".svg")
			name = stem + "-" + b.Grid.Spec.Name + ".svg" + ending
		}
		var out bytes.Buffer
		if err := svg.Write(&out, p.picture(b).Chart().Drawing()); err != nil {
			return err
		}
		if err := writeFile(name, out.Bytes()); err != nil {
			return err
		}
		p.say("wrote " + name)
	}
	return nil
}
