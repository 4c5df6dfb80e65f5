package command

// This file is the verb kinds: bracket kinds with parameters, units, ranges and defaults.

import (
	"context"
	"fmt"
	"math"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/geometry"
	"lugwright/services/dial"
	"lugwright/units"
)

func (s *session) kindsVerb() *cli.Command {
	return &cli.Command{
		Name: "kinds", ArgsUsage: "[KIND]", Usage: "list the bracket kinds, or one kind's parameters",
		Flags:  []cli.Flag{&cli.BoolFlag{Name: "inch", Usage: "give lengths in inches"}},
		Action: s.kinds,
	}
}

func (s *session) kinds(c *cli.Context) error {
	if err := arguments(c, 0, 1); err != nil {
		return err
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		kinds, err := client.Kinds(ctx)
		if err != nil {
			return err
		}
		if name := c.Args().First(); name != "" {
			one, err := geometry.Find(kinds, name)
			if err != nil {
				return err
			}
			kinds = []geometry.Kind{*one}
		}
		switch {
		case c.Bool("json"):
			return s.writeJSON(docOfKinds(kinds))
		case c.NArg() == 1:
			s.out.kind(&kinds[0], system(c))
		default:
			s.out.kindList(kinds)
		}
		return nil
	})
}

func system(c *cli.Context) units.System {
	if c.Bool("inch") {
		return units.Inch
	}
	return units.Metric
}

func (p *printer) kindList(kinds []geometry.Kind) {
	rows := make([][]string, len(kinds))
	for i, k := range kinds {
		rows[i] = []string{k.Name, k.Sentence}
	}
	p.table(rows)
	p.line("")
	p.line("`lugwright kinds KIND` lists a kind's parameters.")
}

func (p *printer) kind(k *geometry.Kind, system units.System) {
	p.wrapped("", 0, k.Name+": "+k.Sentence)
	p.line("")
	for _, d := range k.Params {
		p.wrapped(d.Name, 24, fmt.Sprintf("%s; default %s", accepted(d, system), standard(d, system)))
		p.wrapped("", 24, d.Sentence)
	}
}

// accepted says what a parameter takes.
func accepted(d geometry.Param, system units.System) string {
	switch d.Unit {
	case geometry.Word:
		if len(d.Choices) > 0 {
			return strings.Join(d.Choices, ", ")
		}
		return "a word"
	case geometry.Size:
		return "a thread size such as M12 or 1/2-13"
	}
	return plain(d.Min, d.Unit, system) + " to " + plain(d.Max, d.Unit, system)
}

func standard(d geometry.Param, system units.System) string {
	if d.Unit == geometry.Word || d.Unit == geometry.Size {
		return d.Text
	}
	return plain(d.Default, d.Unit, system)
}

func plain(v float64, unit geometry.Unit, system units.System) string {
	switch unit {
	case geometry.MM:
		return units.Format(v, units.Length, system)
	case geometry.Ratio:
		return units.Format(v, units.Ratio, system)
	case geometry.Rad:
		return units.Format(v, units.Angle, system)
	}
	return units.Format(math.Trunc(v), units.Count, system)
}

type kindDoc struct {
	Name       string     `json:"name"`
	Sentence   string     `json:"sentence"`
	Parameters []paramDoc `json:"parameters"`
}

// paramDoc gives numbers in the parameter's unit: mm, rad or a count.
type paramDoc struct {
	Name        string   `json:"name"`
	Unit        string   `json:"unit"`
	Min         float64  `json:"min"`
	Max         float64  `json:"max"`
	Default     float64  `json:"default_number"`
	DefaultText string   `json:"default_text,omitempty"`
	Choices     []string `json:"choices,omitempty"`
	Sentence    string   `json:"sentence"`
}

func docOfKinds(kinds []geometry.Kind) any {
	return map[string]any{"format": format, "kinds": docsOf(kinds, func(k geometry.Kind) kindDoc {
		return kindDoc{k.Name, k.Sentence, docsOf(k.Params, func(d geometry.Param) paramDoc {
			return paramDoc{d.Name, string(d.Unit), d.Min, d.Max, d.Default, d.Text, d.Choices, d.Sentence}
		})}
	})}
}
