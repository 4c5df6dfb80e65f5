package command

// This file is the verb check: every bracket against every case, worst first.

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/urfave/cli/v2"

	"lugwright/client/caution"
	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/services/dial"
	"lugwright/strength"
	"lugwright/units"
)

func (s *session) checkVerb() *cli.Command {
	return &cli.Command{
		Name: "check", ArgsUsage: "JOB", Usage: "check every bracket of a job, worst first",
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "all", Usage: "list every check, not the worst alone"},
			&cli.BoolFlag{Name: "detail", Usage: "list every check with its calculation"},
			&cli.BoolFlag{Name: "access", Usage: "name what tools cannot reach"},
		},
		Action: s.check,
	}
}

func (s *session) check(c *cli.Context) error {
	if err := arguments(c, 1, 1); err != nil {
		return err
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		r, err := runJob(ctx, client, c.Args().First(), run.Options{Trace: c.Bool("json") || c.Bool("detail"), Access: c.Bool("json") || c.Bool("access")})
		if err != nil {
			return err
		}
		if c.Bool("json") {
			err = s.writeJSON(docOfResult(r, Version))
		} else {
			s.out.result(r, resultOptions{all: c.Bool("all"), detail: c.Bool("detail"), access: c.Bool("access")})
		}
		return firstError(err, verdictOf(r))
	})
}

// runJob reads, builds and checks a job.
func runJob(ctx context.Context, client *dial.Client, path string, o run.Options) (*run.Result, error) {
	j, err := readJob(ctx, client, path)
	if err != nil {
		return nil, err
	}
	return run.Job(ctx, client, j, o)
}

func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// verdictOf is the reason why a job does not pass, in one line about its worst bracket; nil when it passes.
func verdictOf(r *run.Result) error {
	if r.Passes() {
		return nil
	}
	worst := r.WorstFirst()[0]
	return &verdictError{reason(worst)}
}

func reason(b *run.Bracket) string {
	k := b.Report.Governing()
	if k == nil {
		return b.Spec.Name + " is not checked: no limit state speaks of it"
	}
	where := lowerFirst(k.Title) + ", " + k.Place
	if k.Verdict == strength.Outside {
		return fmt.Sprintf("%s is outside the rule: %s: %s", b.Spec.Name, where, k.Why)
	}
	return fmt.Sprintf("%s fails: %s, at %s%s", b.Spec.Name, where, used(k), alongside(b.Report, k))
}

// alongside names the next limit state that the same thing fails, for the governing one is often an interaction whose largest
// part says more.
func alongside(r *strength.Report, governing *strength.Check) string {
	for i := range r.Checks {
		k := &r.Checks[i]
		if k.Thing == governing.Thing && k.Limit != governing.Limit && k.Verdict == strength.Fail {
			return fmt.Sprintf("; %s alone at %s", lowerFirst(k.Title), units.Utilisation(k.Utilisation))
		}
	}
	return ""
}

// governed names the governing limit state.
func governed(b *run.Bracket) string {
	k := b.Report.Governing()
	if k == nil {
		return "nothing is checked"
	}
	return fmt.Sprintf("governed by %s, %s, at %s", lowerFirst(k.Title), k.Place, used(k))
}

// used says how much of the capacity is used, and in which case.
func used(k *strength.Check) string {
	text := units.Utilisation(k.Utilisation) + " of capacity"
	if math.IsInf(k.Utilisation, 0) {
		text = "no capacity"
	}
	if k.Case != "" {
		text += " (" + k.Case + ")"
	}
	return text
}

// lowerFirst makes a title fit inside a sentence, unless it begins with an abbreviation.
func lowerFirst(title string) string {
	first, n := utf8.DecodeRuneInString(title)
	second, _ := utf8.DecodeRuneInString(title[n:])
	if unicode.IsUpper(second) {
		return title
	}
	return string(unicode.ToLower(first)) + title[n:]
}

type resultOptions struct{ all, detail, access bool }

// shown is after how many limit states of a bracket passing ones are no longer listed without --all.
const shown = 6

func (p *printer) result(r *run.Result, o resultOptions) {
	p.head(r)
	for _, b := range r.WorstFirst() {
		p.line("")
		p.bracket(b, r.Job.Units, o)
	}
	p.line("")
	if !o.access {
		p.wrapped("", 0, "Whether torch, socket and pin have room was not looked at: --access does.")
	}
	p.caseList(r.Job)
	if r.Job.Vehicle != nil {
		p.wrapped("", 0, "Weights, frame, holes and room under twist are not judged here: `lugwright loads` does.")
	}
	p.cautions(r.Job.Vehicle != nil)
}

func (p *printer) head(r *run.Result) {
	title := r.Job.Title
	if r.Job.Revision != "" {
		title += ", revision " + r.Job.Revision
	}
	p.wrapped("", 0, title)
	basis := r.Job.Basis + ", " + string(r.Job.Method)
	if len(r.Brackets) > 0 {
		basis += fmt.Sprintf(", load factor on service cases %g", r.Brackets[0].Report.LoadFactor)
	}
	p.wrapped("", 0, basis)
	if len(r.Brackets) > 0 {
		p.factors(r.Brackets[0].Report, r.Job)
	}
	p.line("job %s, lugwright %s", r.Job.Hash(Version)[:16], Version)
}

// factors names the settable factors as used, and the basis of pin holes where it is another.
func (p *printer) factors(r *strength.Report, j *job.Job) {
	if r.PinJoint != "" {
		p.wrapped("", 0, "pin holes by "+r.PinJoint)
	}
	if len(r.Factors) == 0 {
		return
	}
	texts := make([]string, len(r.Factors))
	for i, f := range r.Factors {
		texts[i] = f.Symbol + " = " + show(f.Value, f.Unit, j.Units)
	}
	line := "factors " + strings.Join(texts, ", ")
	if j.FactorSet != "" {
		line += " (set " + j.FactorSet + ")"
	}
	p.wrapped("", 0, line)
}

func (p *printer) bracket(b *run.Bracket, system units.System, o resultOptions) {
	p.line("%s  %s: %s, %s hand, %s", p.verdict(b.Report.Verdict()), b.Spec.Name, b.Spec.Kind, b.Spec.Hand, counting(b.Spec.Quantity, "piece", "pieces"))
	p.wrapped("", 0, governed(b))
	p.line("  used  verdict  check")
	p.checks(b.Report.Checks, system, o)
	for _, n := range b.Report.NotChecked {
		p.wrapped("  not checked", 17, n.What+", "+n.Place+": "+n.Why)
	}
	for _, f := range b.Access {
		p.wrapped("  no access", 17, units.Words(f.String(), system))
	}
	for _, n := range b.Fits {
		p.wrapped("  fit", 17, units.Words(n, system))
	}
	for _, n := range b.Notes {
		p.wrapped("  note", 17, units.Words(n, system))
	}
}

// checks lists checks, each limit state once where it is worst (once for each thing where it is not met), and of those that pass only
// the first few.
func (p *printer) checks(all []strength.Check, system units.System, o resultOptions) {
	if o.all || o.detail {
		p.everyCheck(all, system, o)
		return
	}
	worst := worstPlaces(all)
	for i, w := range worst {
		if i >= shown && w.Verdict == strength.Pass {
			p.line("        %s", remainder(worst[i:]))
			return
		}
		p.check(w.Check, system)
		if w.more > 0 {
			p.line("%s%s", margin(17), counting(w.more, "more place", "more places"))
		}
	}
}

func (p *printer) everyCheck(all []strength.Check, system units.System, o resultOptions) {
	for i := range all {
		k := &all[i]
		if k.Verdict == strength.NotApplied && !o.detail {
			continue
		}
		p.check(k, system)
		if o.detail {
			p.calculation(k.Lines, 17, system)
		}
	}
}

// worstPlace is a limit state at its worst place, and how many more places have the same verdict.
type worstPlace struct {
	*strength.Check
	more int
}

func worstPlaces(all []strength.Check) []*worstPlace {
	var out []*worstPlace
	for i := range all {
		k := &all[i]
		at := slices.IndexFunc(out, func(w *worstPlace) bool {
			return w.Limit == k.Limit && (w.Thing == k.Thing || k.Verdict == strength.Pass)
		})
		switch {
		case k.Verdict == strength.NotApplied:
		case at < 0:
			out = append(out, &worstPlace{Check: k})
		case out[at].Verdict == k.Verdict:
			out[at].more++
		}
	}
	return out
}

// remainder sums up passing limit states that are not listed. A rule about dimensions has no case: that it is just met says nothing
// about load.
func remainder(rest []*worstPlace) string {
	most := 0.0
	for _, w := range rest {
		if w.Case != "" {
			most = max(most, w.Utilisation)
		}
	}
	return fmt.Sprintf("and %s, used to %s at most; --all lists them", counting(len(rest), "more limit state", "more limit states"), units.Utilisation(most))
}

func counting(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func (p *printer) check(k *strength.Check, system units.System) {
	ratio, mark := units.Utilisation(k.Utilisation), shortVerdict(k.Verdict)
	if !k.Compares() {
		ratio = "-"
	}
	head := fmt.Sprintf("%6s  %s%s", ratio, p.paint(k.Verdict, mark), pad("", 9-width(mark)))
	p.flow(head, k.Title+", "+k.Place)
	p.wrapped("", 17, detail(k, system))
	p.wrapped("", 17, k.Clause)
	for _, n := range k.Notes {
		p.wrapped("", 17, n)
	}
}

func shortVerdict(v strength.Verdict) string {
	switch v {
	case strength.Outside:
		return "OUTSIDE"
	case strength.NotApplied:
		return "n/a"
	}
	return shout(v)
}

// detail says demand, capacity, case and how the load divides, or why there is none of it.
func detail(k *strength.Check, system units.System) string {
	if k.Verdict == strength.NotApplied {
		return "does not apply: " + k.Why
	}
	var parts []string
	if k.Compares() {
		parts = []string{compared(k.DemandSymbol, k.Demand, k.CapacitySymbol, k.Capacity, k.Unit, system)}
	}
	if k.Case != "" {
		parts = append(parts, k.Case)
	}
	if k.Sharing != "" {
		parts = append(parts, k.Sharing)
	}
	if k.Why != "" {
		parts = append(parts, "outside the rule: "+k.Why)
	}
	return strings.Join(parts, "; ")
}

// caseList names the cases with level and source, so that a builder's choice never passes for a standard.
func (p *printer) caseList(j *job.Job) {
	rows := [][]string{{"load case", "level", "source"}}
	for _, c := range j.Cases {
		rows = append(rows, []string{c.Name, string(c.Level), c.Source})
	}
	p.table(rows)
}

func (p *printer) cautions(ofVehicle bool) {
	p.line("")
	p.line("Cautions")
	for _, c := range caution.Checked(ofVehicle) {
		p.wrapped("  -", 4, c.Text)
	}
}
