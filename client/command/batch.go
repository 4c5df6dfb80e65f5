package command

// This file is the verb batch: a whole family of variants, worst first, with results that a cut-off run goes on with.

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"github.com/urfave/cli/v2"

	"lugwright/client/batch"
	"lugwright/client/family"
	"lugwright/client/job"
	"lugwright/client/paper/html"
	"lugwright/client/run"
	"lugwright/client/sheet"
	"lugwright/services/dial"
	"lugwright/strength"
)

func (s *session) batchVerb() *cli.Command {
	return &cli.Command{
		Name: "batch", ArgsUsage: "FAMILY -o DIR", Usage: "check every variant of a family, worst first",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "out", Aliases: []string{"o"}, Usage: "folder for the results of every variant; it must not exist or be empty"},
			&cli.BoolFlag{Name: "resume", Usage: "go on with the results in the folder where the run that wrote them was cut off"},
			&cli.StringFlag{Name: "common", Usage: "family file with what the rows of a CSV file have in common"},
			&cli.IntFlag{Name: "worst", Value: 10, Usage: "how many of the worst variants to list"},
			&cli.StringFlag{Name: "detail", Usage: "variants whose whole calc sheets are written too, by id: 3,17,20-22"},
			&cli.DurationFlag{Name: "patience", Value: dial.DefaultPatience, Usage: "how long to wait for a service that gives no answer; where it is given, at the start too"},
		},
		Action: s.batch,
	}
}

// mostDetails is the most calc sheets of one run.
const mostDetails = 200

func (s *session) batch(c *cli.Context) error {
	if err := arguments(c, 1, 1); err != nil {
		return err
	}
	dir := c.String("out")
	details, err := ids(c.String("detail"))
	switch {
	case err != nil:
		return err
	case dir == "" && (c.Bool("resume") || details != nil):
		return &usageError{"--resume and --detail need the folder of the results", "usage: lugwright batch FAMILY -o DIR"}
	case c.Int("worst") < 0 || c.Int("worst") > 1000:
		return &usageError{fmt.Sprintf("--worst %d is not taken; 0 to 1000 are", c.Int("worst")), ""}
	case c.Duration("patience") <= 0:
		return &usageError{fmt.Sprintf("--patience %s is not a time to wait", c.Duration("patience")), "write a time such as 30s or 5m"}
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		var f *family.Family
		if err := s.patiently(ctx, c, func() (err error) {
			f, err = openFamily(ctx, client, c.Args().First(), c.String("common"))
			return err
		}); err != nil {
			return err
		}
		defer f.Close()
		if n := len(details); n > 0 && details[n-1] > f.Count {
			return &usageError{fmt.Sprintf("--detail: there is no variant %d", details[n-1]), fmt.Sprintf("this family has 1 to %d", f.Count)}
		}
		sum, err := s.runFamily(ctx, c, client, f, dir)
		if err != nil {
			return err
		}
		sheets, err := writeDetails(ctx, client, f, dir, details)
		if err != nil {
			return err
		}
		if c.Bool("json") {
			err = s.writeJSON(docOfFamily(f, sum, dir, sheets))
		} else {
			s.out.family(f, sum, dir, sheets)
		}
		return firstError(err, familyVerdict(sum))
	})
}

// patiently asks services that do not answer yet again, where --patience is given: without it a wrong address is told at once.
func (s *session) patiently(ctx context.Context, c *cli.Context, ask func() error) error {
	var since time.Time // the first time that there was no answer
	for {
		err := ask()
		if !c.IsSet("patience") || !dial.MayReturn(err) || !since.IsZero() && time.Since(since) > c.Duration("patience") {
			return err
		}
		if since.IsZero() {
			since = time.Now()
			if !s.json {
				fmt.Fprintf(s.Err, "lugwright: %v; waiting for it, %s at most\n", err, c.Duration("patience"))
			}
		}
		select {
		case <-ctx.Done():
			return context.Cause(ctx)
		case <-time.After(200 * time.Millisecond):
		}
	}
}

// openFamily reads a family file and the rows that belong to it.
func openFamily(ctx context.Context, client *dial.Client, path, common string) (*family.Family, error) {
	rows, file := "", path
	if strings.EqualFold(filepath.Ext(path), ".csv") {
		if common == "" {
			return nil, &usageError{path + " has rows alone", "name the family file with what they have in common: --common FILE"}
		}
		rows, file = path, common
	} else if common != "" {
		return nil, &usageError{"--common goes with a CSV file of rows, and " + path + " is none", "its name ends in .csv"}
	}
	src, err := readFile(file)
	if err != nil {
		return nil, &usageError{err.Error(), "docs/family-file.md shows the form of a family"}
	}
	known, err := run.Known(ctx, client)
	if err != nil {
		return nil, err
	}
	f, err := job.ReadFamily(file, src, known, rows != "")
	if err != nil {
		return nil, err
	}
	if err := takeShop(f.Job); err != nil {
		return nil, err
	}
	if f.Rows != "" {
		if rows = f.Rows; !filepath.IsAbs(rows) {
			rows = filepath.Join(filepath.Dir(file), rows)
		}
	}
	out, err := family.Open(f, rows)
	var unread *os.PathError
	if errors.As(err, &unread) {
		return nil, &usageError{plainPathError(err).Error(), "a CSV file with a row for every variant"}
	}
	return out, err
}

// A stoppedError is a run that ended early, with what is done kept.
type stoppedError struct {
	err  error
	hint string
}

func (e *stoppedError) Error() string { return e.err.Error() }
func (e *stoppedError) Unwrap() error { return e.err }

// runFamily runs a family and keeps its results in the folder, if there is one.
func (s *session) runFamily(ctx context.Context, c *cli.Context, client *dial.Client, f *family.Family, dir string) (*batch.Summary, error) {
	in := batch.Input{Client: client, Family: f, Patience: c.Duration("patience")}
	bar := s.progress(f.Count, "variants")
	defer bar.end()
	if dir == "" {
		sum := batch.NewSummary(c.Int("worst"))
		in.Take = func(rows []batch.Row) error {
			for i := range rows {
				sum.Add(&rows[i])
			}
			bar.add(len(rows))
			return nil
		}
		return sum, batch.Run(ctx, in)
	}
	open := batch.Create
	if c.Bool("resume") {
		open = batch.Resume
	}
	results, err := open(dir, f, Version, c.Int("worst"))
	if err != nil {
		return nil, err
	}
	in.After = results.Done
	bar.begin(results.Done)
	in.Take = func(rows []batch.Row) error {
		err := results.Take(rows)
		bar.add(len(rows))
		return err
	}
	err = batch.Run(ctx, in)
	if err == nil {
		err = results.Finish()
	} else {
		err = firstError(results.Leave(err), err)
	}
	bar.end()
	if err == nil {
		return results.Summary, nil
	}
	return nil, &stoppedError{err, keptHint(results.Kept, f.Count, dir, err)}
}

// keptHint says what a run that ended early leaves, and how to go on.
func keptHint(kept, count int64, dir string, err error) string {
	hint, how := fmt.Sprintf("%d of %d variants are done and kept in %s; ", kept, count, dir), "goes on from there"
	if kept == 0 {
		hint, how = fmt.Sprintf("too few of %d variants were done to keep any in %s; ", count, dir), "begins again"
	}
	if changed := (*family.ChangedError)(nil); errors.As(err, &changed) {
		hint += "choose another folder for the file as it is now; with the file as it was "
	}
	return hint + "the same line with --resume " + how
}

// ids reads a list such as 3,17,20-22, in order and each once.
func ids(text string) ([]int64, error) {
	if text == "" {
		return nil, nil
	}
	refuse := func(part string) error {
		return &usageError{fmt.Sprintf("--detail: %q is not taken", part), fmt.Sprintf("ids from 1, with commas and dashes, at most %d of them: 3,17,20-22", mostDetails)}
	}
	seen := map[int64]bool{}
	for part := range strings.SplitSeq(text, ",") {
		from, to, isRange := strings.Cut(strings.TrimSpace(part), "-")
		a, err := strconv.ParseInt(strings.TrimSpace(from), 10, 64)
		b := a
		if isRange && err == nil {
			b, err = strconv.ParseInt(strings.TrimSpace(to), 10, 64)
		}
		if err != nil || a < 1 || b < a || b-a >= mostDetails {
			return nil, refuse(part)
		}
		for i := a; i <= b; i++ {
			seen[i] = true
		}
	}
	if len(seen) > mostDetails {
		return nil, refuse(text)
	}
	return sortedKeys(seen), nil
}

// writeDetails writes the calc sheets of some variants, and gives the names of the files. A variant that is refused has none: its row says why.
func writeDetails(ctx context.Context, client *dial.Client, f *family.Family, dir string, details []int64) ([]string, error) {
	if details == nil {
		return nil, nil
	}
	cards, err := client.Cards(ctx)
	if err != nil {
		return nil, err
	}
	var card strength.Card
	for _, c := range cards {
		if c.Name == f.Basis {
			card = c
		}
	}
	folder := filepath.Join(dir, "detail")
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return nil, &outputError{plainPathError(err)}
	}
	var out []string
	for _, id := range details {
		v, err := f.At(id)
		if err != nil {
			return nil, err
		}
		if v.Err != nil {
			continue
		}
		r, err := run.Job(ctx, client, f.Variant(id, v.Params), run.Options{Trace: true})
		if refused(err) {
			continue
		}
		if err != nil {
			return nil, err
		}
		var page bytes.Buffer
		if err := html.Write(&page, sheet.Paper(sheet.Input{Result: r, Card: card, Version: Version})); err != nil {
			return nil, err
		}
		path := filepath.Join(folder, fmt.Sprintf("%d.html", id))
		if err := os.WriteFile(path, page.Bytes(), 0o666); err != nil {
			os.Remove(path) //nolint:errcheck // the error at hand says more
			return nil, &outputError{plainPathError(err)}
		}
		out = append(out, path)
	}
	return out, nil
}

// refused says whether an error is about the variant and not about the run.
func refused(err error) bool {
	var fields job.Errors
	return errors.As(err, &fields)
}

// familyVerdict is the reason why a family does not pass, in one line.
func familyVerdict(sum *batch.Summary) error {
	if sum.Passes() {
		return nil
	}
	var parts []string
	for _, v := range []strength.Verdict{strength.Fail, strength.Outside, batch.Refused} {
		if n := sum.Verdicts[v]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, familyWords[v]))
		}
	}
	return &verdictError{fmt.Sprintf("of %s %s", counting(int(sum.Variants), "variant", "variants"), strings.Join(parts, ", "))}
}

var familyWords = map[strength.Verdict]string{strength.Pass: "pass", strength.Fail: "fail", strength.Outside: "outside the rule", batch.Refused: "refused"}
