package command

// This file is the verb evaluate: one limit state by hand, with its formulas and numbers.

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength"
	"lugwright/strength/handbook"
	"lugwright/units"
)

func (s *session) evaluateVerb() *cli.Command {
	return &cli.Command{
		Name: "evaluate", ArgsUsage: "LIMIT SYMBOL=VALUE ...", Usage: "evaluate one limit state from numbers",
		Description: "lugwright evaluate pin-shear --basis \"AISC 360-22\" V_r=12kN d=25mm \\\n    F_y=400MPa F_u=570MPa\n`lugwright limits LIMIT` lists the givens of a limit state. A list is\nwritten with commas: x=\"0 in, 3 in\"; a choice by its name: hole=oversize.",
		Flags: []cli.Flag{
			basisFlag(),
			&cli.StringFlag{Name: "method", Usage: "method of the basis; without, its first"},
			&cli.StringFlag{Name: "factor-set", Usage: "named values of settable factors"},
			&cli.StringSliceFlag{Name: "factor", Usage: "set a factor: SYMBOL=VALUE"},
			&cli.BoolFlag{Name: "inch", Usage: "results in inch units"},
		},
		Action: s.evaluate,
	}
}

func (s *session) evaluate(c *cli.Context) error {
	if err := arguments(c, 1, 60); err != nil {
		return err
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		q, err := evaluateRequest(ctx, client, c)
		if err != nil {
			return err
		}
		e, err := client.Evaluate(ctx, *q)
		if err != nil {
			return onTheLine(err)
		}
		if c.Bool("json") {
			err = s.writeJSON(docOfEvaluation(q, e))
		} else {
			s.out.evaluation(q, e, system(c))
		}
		return firstError(err, verdictOfEvaluation(e))
	})
}

func evaluateRequest(ctx context.Context, client *dial.Client, c *cli.Context) (*dial.EvaluateRequest, error) {
	bases, err := client.Bases(ctx)
	if err != nil {
		return nil, err
	}
	id := c.Args().First()
	if name := c.String("basis"); name != "" {
		b, err := findBasis(bases, name)
		if err != nil {
			return nil, err
		}
		bases = []dial.Basis{*b}
	}
	with, err := withLimit(bases, id)
	if err != nil {
		return nil, err
	}
	if with = forChecks(with); len(with) > 1 {
		return nil, &usageError{fmt.Sprintf("%d bases have the limit state %s: %s", len(with), id, strings.Join(basisNames(with), "; ")), "choose one with --basis"}
	}
	q := &dial.EvaluateRequest{Basis: with[0].Name, Limit: id, FactorSet: c.String("factor-set")}
	if q.Method, err = method(&with[0], c.String("method")); err != nil {
		return nil, err
	}
	if q.Factors, err = readFactors(&with[0].Card, c.StringSlice("factor")); err != nil {
		return nil, err
	}
	q.Givens, err = readGivens(&with[0].Limits[0], c.Args().Tail())
	return q, err
}

// forChecks leaves the bases for reference out where another will do.
func forChecks(bases []dial.Basis) []dial.Basis {
	out := slices.DeleteFunc(slices.Clone(bases), func(b dial.Basis) bool { return b.ReferenceOnly })
	if len(out) == 0 {
		return bases
	}
	return out
}

func basisNames(bases []dial.Basis) []string {
	out := make([]string, len(bases))
	for i := range bases {
		out[i] = bases[i].Name
	}
	return out
}

func method(b *dial.Basis, name string) (strength.Method, error) {
	if name == "" {
		return b.Methods[0], nil
	}
	if m := strength.Method(name); slices.Contains(b.Methods, m) {
		return m, nil
	}
	return "", &part.FieldError{Field: "method", Found: fmt.Sprintf("%q", name), Accept: fmt.Sprintf("one of %s for %s", strings.Join(methodNames(b.Methods), ", "), b.Name)}
}

func methodNames(methods []strength.Method) []string {
	out := make([]string, len(methods))
	for i, m := range methods {
		out[i] = string(m)
	}
	return out
}

// onTheLine names givens as the line does: the service's "givens.d" is d.
func onTheLine(err error) error {
	fields := part.Fields(err)
	if fields == nil {
		return err
	}
	out := make(part.FieldErrors, len(fields))
	for i, f := range fields {
		out[i] = &part.FieldError{Field: strings.TrimPrefix(f.Field, "givens."), Found: f.Found, Accept: f.Accept}
	}
	return out
}

// readGivens reads every SYMBOL=VALUE, and tells everything that is wrong at once.
func readGivens(l *strength.Info, args []string) ([]dial.GivenValue, error) {
	var out []dial.GivenValue
	var bad part.FieldErrors
	for _, arg := range args {
		symbol, text, ok := strings.Cut(arg, "=")
		i := slices.IndexFunc(l.Givens, func(g strength.Given) bool { return g.Symbol == symbol })
		switch {
		case !ok:
			bad = append(bad, &part.FieldError{Field: arg, Found: "no value", Accept: "write SYMBOL=VALUE, such as t=12mm"})
		case i < 0:
			known := givenSymbols(l)
			bad = append(bad, &part.FieldError{Field: symbol, Found: "limit state " + l.ID + " has no such given", Accept: "one of " + strings.Join(known, ", ") + part.Nearest(symbol, known)})
		default:
			v, err := readGiven(&l.Givens[i], text)
			if err != nil {
				bad = append(bad, err)
			}
			out = append(out, v)
		}
	}
	if bad != nil {
		return nil, bad
	}
	return out, nil
}

func givenSymbols(l *strength.Info) []string {
	out := make([]string, len(l.Givens))
	for i, g := range l.Givens {
		out[i] = g.Symbol
	}
	return out
}

// readGiven turns a value in any unit of its kind into the given's own unit: several with commas between for a list, a name for a
// choice.
func readGiven(g *strength.Given, text string) (dial.GivenValue, *part.FieldError) {
	v, err := handbook.Numbers(*g, handbook.Values{text})
	if fields := part.Fields(err); fields != nil {
		fields[0].Field = g.Symbol
		return dial.GivenValue{}, fields[0]
	}
	return dial.GivenValue{Symbol: g.Symbol, Values: v, Unit: g.Unit}, nil
}

// readFactors reads every --factor SYMBOL=VALUE.
func readFactors(card *strength.Card, args []string) (map[string]float64, error) {
	out := map[string]float64{}
	var bad part.FieldErrors
	for _, arg := range args {
		symbol, text, ok := strings.Cut(arg, "=")
		if !ok {
			bad = append(bad, &part.FieldError{Field: "factors." + arg, Found: "no value", Accept: "write SYMBOL=VALUE, such as gamma_M2=1.25"})
			continue
		}
		v, err := handbook.Factor(card, symbol, text)
		if err != nil {
			bad = append(bad, &part.FieldError{Field: "factors." + symbol, Found: fmt.Sprintf("%q", text), Accept: err.Error()})
		}
		out[symbol] = v
	}
	if bad != nil {
		return nil, bad
	}
	return out, nil
}

func (p *printer) evaluation(q *dial.EvaluateRequest, e dial.Evaluation, system units.System) {
	p.wrapped("", 0, e.Limit.Title+": "+e.Limit.Clause.String())
	p.line("%s, %s", q.Basis, q.Method)
	p.line("")
	p.calculation(e.Lines, 2, system)
	p.line("")
	if e.Verdict == strength.NotApplied {
		p.wrapped("", 0, "does not apply: "+e.Why)
		return
	}
	l := &e.Limit
	p.flow(p.verdict(e.Verdict)+"  ", compared(l.Demand, e.Demand, l.Capacity, e.Capacity, l.Unit, system)+": "+units.Utilisation(e.Utilisation)+" of capacity")
}

func verdictOfEvaluation(e dial.Evaluation) error {
	switch e.Verdict {
	case strength.Fail:
		return &verdictError{fmt.Sprintf("%s fails: at %s of capacity", lowerFirst(e.Limit.Title), units.Utilisation(e.Utilisation))}
	case strength.Outside:
		return &verdictError{lowerFirst(e.Limit.Title) + " is outside the rule: " + e.Why}
	}
	return nil
}

type evaluationDoc struct {
	Format      int       `json:"format"`
	Basis       string    `json:"basis"`
	Method      string    `json:"method"`
	Limit       string    `json:"limit"`
	Title       string    `json:"title"`
	Clause      string    `json:"clause"`
	Verdict     string    `json:"verdict"`
	Why         string    `json:"why,omitempty"`
	Demand      number    `json:"demand"`
	Capacity    number    `json:"capacity"`
	Unit        string    `json:"unit"`
	Utilisation number    `json:"utilisation"`
	Lines       []lineDoc `json:"lines"`
}

func docOfEvaluation(q *dial.EvaluateRequest, e dial.Evaluation) evaluationDoc {
	return evaluationDoc{
		format, q.Basis, string(q.Method), e.Limit.ID, e.Limit.Title, e.Limit.Clause.String(), string(e.Verdict), e.Why,
		number(e.Demand), number(e.Capacity), e.Limit.Unit, number(e.Utilisation), docsOf(e.Lines, docOfLine),
	}
}
