package command

// This file is the verb verify: published worked examples, ours beside printed.

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/client/casefile"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength"
	"lugwright/strength/handbook"
	"lugwright/units"
)

func (s *session) verifyVerb() *cli.Command {
	return &cli.Command{
		Name: "verify", ArgsUsage: "FILE|DIR ...", Usage: "run published worked examples, ours beside printed",
		Description: "A case file holds a worked example as printed, with its source;\ndocs/case-files.md shows the form.\nlugwright verify testdata/handbook",
		Flags:       []cli.Flag{&cli.BoolFlag{Name: "brief", Usage: "print only what disagrees, and the count"}},
		Action:      s.verify,
	}
}

// A caseError is a fault of a case file.
type caseError struct{ err error }

func (e *caseError) Error() string { return e.err.Error() }

// caseFaults are those of several files.
type caseFaults []*caseError

func (e caseFaults) err() error {
	if len(e) == 0 {
		return nil
	}
	lines := make([]string, len(e))
	for i, f := range e {
		lines[i] = f.Error()
	}
	return &caseError{errors.New(strings.Join(lines, "\n"))}
}

// verified is one case file with its results.
type verified struct {
	file *casefile.File
	rows []handbook.Row
}

func (s *session) verify(c *cli.Context) error {
	if err := arguments(c, 1, 1000); err != nil {
		return err
	}
	files, err := caseFiles(c.Args().Slice())
	if err != nil {
		return err
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		results, faults, err := verifyAll(ctx, client, files)
		if err != nil {
			return err
		}
		if c.Bool("json") {
			err = s.writeJSON(docOfVerified(results))
		} else {
			s.out.verified(results, c.Bool("brief"))
		}
		return firstError(err, faults.err(), disagreement(results))
	})
}

// notExpressed begins the names of files that list, beside the case files, published cases that no limit state can take.
const notExpressed = "not-expressed"

// caseFiles lists the case files among paths: each file, and every .yaml file below each folder, in order.
func caseFiles(paths []string) ([]string, error) {
	var out []string
	for _, p := range paths {
		before := len(out)
		err := filepath.WalkDir(p, func(at string, d fs.DirEntry, err error) error {
			if err == nil && !d.IsDir() && (at == p || isCaseFile(d.Name())) {
				out = append(out, at)
			}
			return err
		})
		if err != nil {
			return nil, &usageError{fmt.Sprintf("%s: %v", p, errors.Unwrap(err)), "name case files, or folders that hold them"}
		}
		if len(out) == before {
			return nil, &usageError{p + " holds no case file", "case files end in .yaml"}
		}
	}
	return out, nil
}

func isCaseFile(name string) bool {
	return filepath.Ext(name) == ".yaml" && !strings.HasPrefix(name, notExpressed)
}

// verifyAll runs every file; those that cannot be run are in faults, so that one slip does not hide the others' results. The error means
// that no service answered.
func verifyAll(ctx context.Context, client *dial.Client, files []string) (out []verified, faults caseFaults, err error) {
	bases, err := client.Bases(ctx)
	if err != nil {
		return nil, nil, err
	}
	for _, name := range files {
		v, err := verifyOne(ctx, client, bases, name)
		var fault *caseError
		switch {
		case errors.As(err, &fault):
			faults = append(faults, fault)
		case err != nil:
			return nil, nil, err
		default:
			out = append(out, v)
		}
	}
	return out, faults, nil
}

func verifyOne(ctx context.Context, client *dial.Client, bases []dial.Basis, name string) (verified, error) {
	src, err := readFile(name)
	if err != nil {
		return verified{}, &caseError{err}
	}
	f, err := casefile.Read(name, src)
	if err != nil {
		return verified{}, &caseError{err}
	}
	b, err := findBasis(bases, f.Example.Basis)
	if err != nil {
		return verified{}, &caseError{f.Located(err)}
	}
	if err := f.Strangers(b.Limits); err != nil {
		return verified{}, &caseError{err}
	}
	rows, err := f.Example.Check(&serviceBench{ctx, client, b})
	if part.Fields(err) != nil {
		return verified{}, &caseError{f.Located(err)}
	}
	return verified{f, rows}, err
}

// serviceBench evaluates through the strength service, so that what is verified is what checks.
type serviceBench struct {
	ctx    context.Context
	client *dial.Client
	basis  *dial.Basis
}

func (w *serviceBench) Card() *strength.Card { return &w.basis.Card }

func (w *serviceBench) Limits() []strength.Info { return w.basis.Limits }

func (w *serviceBench) Evaluate(q handbook.Question) (handbook.Answer, error) {
	at := slices.IndexFunc(w.basis.Limits, func(l strength.Info) bool { return l.ID == q.Limit })
	r := dial.EvaluateRequest{Basis: w.basis.Name, Method: q.Method, Limit: q.Limit, FactorSet: q.FactorSet, Factors: q.Factors}
	for i, g := range w.basis.Limits[at].Givens {
		r.Givens = append(r.Givens, dial.GivenValue{Symbol: g.Symbol, Values: q.Values[i], Unit: g.Unit})
	}
	e, err := w.client.Evaluate(w.ctx, r)
	if err != nil {
		return handbook.Answer{}, err
	}
	return handbook.Answer{Demand: e.Demand, Capacity: e.Capacity, Utilisation: e.Utilisation, Verdict: e.Verdict, Lines: e.Lines}, nil
}

// disagreement is the first result that is not the printed one, in one line; nil when all agree.
func disagreement(results []verified) error {
	n, first := 0, ""
	for _, v := range results {
		for _, r := range v.rows {
			if r.Agrees() {
				continue
			}
			if n++; n == 1 {
				first = fmt.Sprintf("%s:%d: %s, %s: %s is %s, printed %s", v.file.Name, v.file.Place(r.Run).Line, r.Limit, r.Method, r.Symbol, oursText(r), r.Text)
			}
		}
	}
	switch n {
	case 0:
		return nil
	case 1:
		return &verdictError{first}
	}
	return &verdictError{fmt.Sprintf("%s; %d more results disagree", first, n-1)}
}

// oursText is our result, in the unit it was printed in where that can be told, with one figure more than printed or five.
func oursText(r handbook.Row) string {
	if r.OurText != "" {
		return r.OurText
	}
	number, unit, _ := strings.Cut(r.Text, " ")
	if v, err := strconv.ParseFloat(number, 64); err == nil && v != 0 && r.Print != 0 {
		return strings.TrimSpace(figures(v*r.Ours/r.Print) + " " + unit)
	}
	return strings.TrimSpace(figures(r.Ours) + " " + r.Unit)
}

func figures(v float64) string {
	if math.Abs(v) >= 1e4 && math.Abs(v) < 1e9 {
		return units.FormatPlain(v, 0)
	}
	return strconv.FormatFloat(v, 'g', 5, 64)
}

func (p *printer) verified(results []verified, brief bool) {
	for _, v := range results {
		if brief && !slices.ContainsFunc(v.rows, disagrees) {
			continue
		}
		p.caseFile(v, brief)
		p.line("")
	}
	p.wrapped("", 0, summed(results))
}

func disagrees(r handbook.Row) bool { return !r.Agrees() }

// caseFile prints one file's results, run by run.
func (p *printer) caseFile(v verified, brief bool) {
	e := &v.file.Example
	p.wrapped("", 0, v.file.Name)
	p.wrapped("", 2, e.Source+"; "+provenance(e)+"; "+e.Basis)
	if e.Note != "" {
		p.wrapped("", 2, "note: "+e.Note)
	}
	if e.Why != "" {
		p.wrapped("", 2, "tolerance "+e.Tolerance+": "+e.Why)
	}
	for i := range e.Runs {
		var rows [][]string
		var why []string
		for _, r := range v.rows {
			if r.Run != i || brief && r.Agrees() {
				continue
			}
			rows = append(rows, []string{"    " + mark(r), r.Symbol, "printed " + r.Text, "ours " + oursText(r), difference(r)})
			if r.Why != "" && r.Why != e.Why {
				why = append(why, r.Why)
			}
		}
		if rows == nil {
			continue
		}
		p.line("  %s, %s", e.Runs[i].Limit, e.Runs[i].Method)
		p.table(rows)
		for _, w := range slices.Compact(why) {
			p.wrapped("", 6, "widened: "+w)
		}
	}
}

func provenance(e *handbook.Example) string {
	switch e.Provenance {
	case handbook.FromMemory:
		return "FROM MEMORY, printed values not seen"
	case handbook.ByHand:
		return "CALCULATED BY HAND, not published"
	}
	return "printed values read"
}

func mark(r handbook.Row) string {
	if r.Agrees() {
		return "agrees"
	}
	return "DISAGREES"
}

// difference is ours against printed, and what is allowed; without a share where the printed value is nought.
func difference(r handbook.Row) string {
	switch {
	case r.OurText != "":
		return ""
	case r.Print == 0:
		return fmt.Sprintf("%+.2g of %.2g %s", r.Ours, r.Allow, r.Unit)
	}
	return fmt.Sprintf("%+.2f of %.2g %%", 100*r.Difference(), 100*r.Allow/math.Abs(r.Print))
}

// summed counts files and results in one line.
func summed(results []verified) string {
	rows, bad, memory, hand := 0, 0, 0, 0
	for _, v := range results {
		rows += len(v.rows)
		switch v.file.Example.Provenance {
		case handbook.FromMemory:
			memory += len(v.rows)
		case handbook.ByHand:
			hand += len(v.rows)
		}
		for _, r := range v.rows {
			if !r.Agrees() {
				bad++
			}
		}
	}
	text := fmt.Sprintf("%s, %s: %d agree, %d disagree", counting(len(results), "case file", "case files"), counting(rows, "result", "results"), rows-bad, bad)
	if memory > 0 {
		text += fmt.Sprintf("; %d are from memory", memory)
	}
	if hand > 0 {
		text += fmt.Sprintf("; %d were calculated by hand", hand)
	}
	return text
}

// verifiedDoc is the JSON form of verify.
type verifiedDoc struct {
	Format int            `json:"format"`
	Agree  int            `json:"agree"`
	Differ int            `json:"disagree"`
	Files  []verifiedFile `json:"files"`
}

type verifiedFile struct {
	File       string        `json:"file"`
	Source     string        `json:"source"`
	Provenance string        `json:"provenance"`
	Basis      string        `json:"basis"`
	Results    []verifiedRow `json:"results"`
}

type verifiedRow struct {
	Line    int             `json:"line"` // of the run, in the file
	Limit   string          `json:"limit"`
	Method  strength.Method `json:"method"`
	Symbol  string          `json:"symbol"`
	Printed string          `json:"printed"`
	Unit    string          `json:"unit"` // of the numbers
	Ours    any             `json:"ours"`
	Number  float64         `json:"printed_number"`
	Allowed float64         `json:"allowed"`
	Agrees  bool            `json:"agrees"`
	Why     string          `json:"why,omitempty"`
}

func docOfVerified(results []verified) verifiedDoc {
	d := verifiedDoc{Format: format, Files: make([]verifiedFile, len(results))}
	for i, v := range results {
		e := &v.file.Example
		d.Files[i] = verifiedFile{File: v.file.Name, Source: e.Source, Provenance: e.Provenance, Basis: e.Basis, Results: make([]verifiedRow, len(v.rows))}
		for k, r := range v.rows {
			row := verifiedRow{Line: v.file.Place(r.Run).Line, Limit: r.Limit, Method: r.Method, Symbol: r.Symbol, Printed: r.Text, Unit: r.Unit, Number: r.Print, Allowed: r.Allow, Agrees: r.Agrees(), Why: r.Why}
			if row.Ours = any(number(r.Ours)); r.OurText != "" {
				row.Ours = r.OurText
			}
			if row.Agrees {
				d.Agree++
			} else {
				d.Differ++
			}
			d.Files[i].Results[k] = row
		}
	}
	return d
}
