package command

// This file is the verb limits: design bases and their limit states, with clauses and givens.

import (
	"context"
	"fmt"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength"
)

func basisFlag() cli.Flag { return &cli.StringFlag{Name: "basis", Usage: "design basis, by name"} }

func (s *session) limitsVerb() *cli.Command {
	return &cli.Command{
		Name: "limits", ArgsUsage: "[LIMIT]", Usage: "list design bases and limit states, or one's givens",
		Flags: []cli.Flag{basisFlag()}, Action: s.limits,
	}
}

func (s *session) limits(c *cli.Context) error {
	if err := arguments(c, 0, 1); err != nil {
		return err
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		bases, err := client.Bases(ctx)
		if err != nil {
			return err
		}
		if name := c.String("basis"); name != "" {
			one, err := findBasis(bases, name)
			if err != nil {
				return err
			}
			bases = []dial.Basis{*one}
		}
		if id := c.Args().First(); id != "" {
			if bases, err = withLimit(bases, id); err != nil {
				return err
			}
		}
		switch {
		case c.Bool("json"):
			return s.writeJSON(map[string]any{"format": format, "bases": docsOf(bases, docOfBasis)})
		case c.NArg() == 1:
			s.out.givens(bases)
		default:
			s.out.limitList(bases)
		}
		return nil
	})
}

func findBasis(bases []dial.Basis, name string) (*dial.Basis, error) {
	names := make([]string, len(bases))
	for i := range bases {
		if bases[i].Name == name {
			return &bases[i], nil
		}
		names[i] = bases[i].Name
	}
	return nil, &part.FieldError{Field: "basis", Found: fmt.Sprintf("%q is not a basis", name), Accept: "one of " + strings.Join(names, ", ") + part.Nearest(name, names)}
}

// withLimit keeps of each basis the one limit state.
func withLimit(bases []dial.Basis, id string) ([]dial.Basis, error) {
	var out []dial.Basis
	var known []string
	for _, b := range bases {
		for _, l := range b.Limits {
			known = append(known, l.ID)
			if l.ID == id {
				out = append(out, dial.Basis{Card: b.Card, Limits: []strength.Info{l}})
			}
		}
	}
	if out == nil {
		return nil, &part.FieldError{Field: "limit", Found: fmt.Sprintf("%q is not a limit state", id), Accept: "see `lugwright limits`" + part.Nearest(id, known)}
	}
	return out, nil
}

func (p *printer) limitList(bases []dial.Basis) {
	for i, b := range bases {
		if i > 0 {
			p.line("")
		}
		p.basis(&b.Card)
		rows := make([][]string, len(b.Limits))
		for i, l := range b.Limits {
			rows[i] = []string{"  " + l.ID, l.Title + "; " + l.Clause.String()}
		}
		p.table(rows)
	}
	p.line("")
	p.line("`lugwright limits LIMIT` lists a limit state's givens; `evaluate` computes it.")
}

func (p *printer) basis(c *strength.Card) {
	methods := make([]string, len(c.Methods))
	for i, m := range c.Methods {
		methods[i] = fmt.Sprintf("%s (factor %g on service cases)", m, c.ServiceFactor[m])
	}
	p.wrapped("", 0, c.Name+": "+c.Document+", "+c.Edition)
	p.wrapped("", 2, strings.Join(methods, "; ")+"; "+c.FactorSource)
	if c.ReferenceOnly {
		p.wrapped("", 2, "for reference: evaluate and verify only, no bracket is checked on it")
	}
	for _, f := range c.Factors {
		p.wrapped("", 2, "factor "+f.Symbol+" = "+factorText(f))
	}
}

// factorText is a settable factor's value, range and sets.
func factorText(f strength.Factor) string {
	text := fmt.Sprintf("%s, %g to %g", strings.TrimSpace(fmt.Sprintf("%g %s", f.Default, f.Unit)), f.Min, f.Max)
	for _, s := range f.Sets {
		text += fmt.Sprintf("; %s %g", s.Name, s.Value)
	}
	return text + " (" + f.Words + ")"
}

func (p *printer) givens(bases []dial.Basis) {
	for i, b := range bases {
		if i > 0 {
			p.line("")
		}
		l := b.Limits[0]
		p.wrapped("", 0, fmt.Sprintf("%s: %s; %s, %s", l.ID, l.Title, b.Name, l.Clause.String()))
		p.line("compares %s with %s", l.Demand, l.Capacity)
		p.line("")
		rows := make([][]string, len(l.Givens))
		for i, g := range l.Givens {
			rows[i] = []string{"  " + g.Symbol, taken(g), words(g)}
		}
		p.table(rows)
	}
}

// taken is what a given takes.
func taken(g strength.Given) string {
	switch span := strings.TrimSpace(fmt.Sprintf("%g to %g %s", g.Min, g.Max, g.Unit)); {
	case g.Choices != nil:
		return "a choice"
	case g.List:
		return "list, " + span
	default:
		return span
	}
}

func words(g strength.Given) string {
	text := g.Words
	if g.Choices != nil {
		text += ": " + strings.Join(g.Choices, ", ")
	}
	switch i := int(g.Default); {
	case !g.Optional:
		return text
	case i >= 0 && i < len(g.Choices):
		return text + " (left out: " + g.Choices[i] + ")"
	}
	return text + " (left out: " + strings.TrimSpace(fmt.Sprintf("%g %s", g.Default, g.Unit)) + ")"
}

type basisDoc struct {
	Name         string      `json:"name"`
	Document     string      `json:"document"`
	Edition      string      `json:"edition"`
	Methods      []methodDoc `json:"methods"`
	FactorSource string      `json:"factor_source"`
	// ReferenceOnly: no bracket is checked on it.
	ReferenceOnly bool              `json:"reference_only"`
	Factors       []factorLimitsDoc `json:"factors"`
	Limits        []limitDoc        `json:"limits"`
}

// factorLimitsDoc is a settable factor.
type factorLimitsDoc struct {
	Symbol  string         `json:"symbol"`
	Unit    string         `json:"unit,omitempty"`
	Words   string         `json:"words"`
	Default float64        `json:"default"`
	Min     float64        `json:"min"`
	Max     float64        `json:"max"`
	Sets    []factorSetDoc `json:"sets"`
}

type factorSetDoc struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"`
}

func docOfFactor(f strength.Factor) factorLimitsDoc {
	return factorLimitsDoc{f.Symbol, f.Unit, f.Words, f.Default, f.Min, f.Max, docsOf(f.Sets, func(s strength.FactorSet) factorSetDoc { return factorSetDoc(s) })}
}

type methodDoc struct {
	Name          string  `json:"name"`
	ServiceFactor float64 `json:"service_factor"`
}

type limitDoc struct {
	ID       string     `json:"id"`
	Title    string     `json:"title"`
	Clause   string     `json:"clause"`
	Demand   string     `json:"demand"`
	Capacity string     `json:"capacity"`
	Unit     string     `json:"unit"`
	Givens   []givenDoc `json:"givens"`
}

type givenDoc struct {
	Symbol   string `json:"symbol"`
	Unit     string `json:"unit"`
	Words    string `json:"words"`
	Min      number `json:"min"`
	Max      number `json:"max"`
	Optional bool   `json:"optional"`
	// Default is the value when left out; Choices are the names of the values 0, 1, ...
	Default number   `json:"default"`
	List    bool     `json:"list"`
	Choices []string `json:"choices,omitempty"`
}

func docOfBasis(b dial.Basis) basisDoc {
	return basisDoc{
		b.Name, b.Document, b.Edition,
		docsOf(b.Methods, func(m strength.Method) methodDoc { return methodDoc{string(m), b.ServiceFactor[m]} }),
		b.FactorSource, b.ReferenceOnly, docsOf(b.Factors, docOfFactor), docsOf(b.Limits, docOfLimit),
	}
}

func docOfLimit(l strength.Info) limitDoc {
	return limitDoc{l.ID, l.Title, l.Clause.String(), l.Demand, l.Capacity, l.Unit, docsOf(l.Givens, func(g strength.Given) givenDoc {
		return givenDoc{g.Symbol, g.Unit, g.Words, number(g.Min), number(g.Max), g.Optional, number(g.Default), g.List, g.Choices}
	})}
}
