package command

// This file is the verb materials: grades, fillers and bolt sizes, each with the table it comes from.

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength/material"
	"lugwright/units"
)

func (s *session) materialsVerb() *cli.Command {
	return &cli.Command{
		Name: "materials", ArgsUsage: "[NAME]", Usage: "list materials and bolt sizes, or one of them",
		Flags:  []cli.Flag{&cli.BoolFlag{Name: "inch", Usage: "give values in inch units"}},
		Action: s.materials,
	}
}

func (s *session) materials(c *cli.Context) error {
	if err := arguments(c, 0, 1); err != nil {
		return err
	}
	return s.withServices(c, func(ctx context.Context, client *dial.Client) error {
		all, err := client.Materials(ctx)
		if err != nil {
			return err
		}
		if name := c.Args().First(); name != "" {
			if all, err = oneMaterial(all, name); err != nil {
				return err
			}
		}
		if c.Bool("json") {
			return s.writeJSON(docOfMaterials(all))
		}
		s.out.materials(all, system(c))
		return nil
	})
}

// oneMaterial keeps what has the name or alias.
func oneMaterial(all *dial.Materials, name string) (*dial.Materials, error) {
	var known []string
	is := func(n string, aliases []string) bool {
		known = append(append(known, n), aliases...)
		return n == name || slices.Contains(aliases, name)
	}
	out := &dial.Materials{
		Grades:     only(all.Grades, func(g *material.Grade) bool { return is(g.Name, g.Aliases) }),
		BoltGrades: only(all.BoltGrades, func(g *material.BoltGrade) bool { return is(g.Name, g.Aliases) }),
		Electrodes: only(all.Electrodes, func(e *material.Electrode) bool { return is(e.Name, e.Aliases) }),
		Bolts:      only(all.Bolts, func(b *material.Bolt) bool { return is(b.Name, nil) }),
	}
	if len(out.Grades)+len(out.BoltGrades)+len(out.Electrodes)+len(out.Bolts) == 0 {
		return nil, &part.FieldError{Field: "material", Found: fmt.Sprintf("%q is not a material", name), Accept: "see `lugwright materials`" + part.Nearest(name, known)}
	}
	return out, nil
}

func only[T any](list []T, keep func(*T) bool) []T {
	var out []T
	for i := range list {
		if keep(&list[i]) {
			out = append(out, list[i])
		}
	}
	return out
}

func (p *printer) materials(all *dial.Materials, system units.System) {
	p.section("plate, bar and section grades: yield / tensile strength by thickness", len(all.Grades))
	for _, g := range all.Grades {
		bands := make([]string, len(g.Bands))
		for i, b := range g.Bands {
			bands[i] = fmt.Sprintf("%s / %s to %s", stress(b.FyMPa, system), stress(b.FuMPa, system), length(b.ToMM, system))
		}
		source := g.Source
		if g.Welded != nil {
			bands = append(bands, fmt.Sprintf("beside a weld %s / %s", stress(g.Welded.FyMPa, system), stress(g.Welded.FuMPa, system)))
			source += "; beside a weld " + g.WeldedFrom
		}
		p.material(g.Name, strings.Join(bands, "; ")+"; "+g.Form, source, g.FromMemory, g.ListedIn)
	}
	p.section("bolt grades: proof / tensile strength by diameter", len(all.BoltGrades))
	for _, g := range all.BoltGrades {
		bands := make([]string, len(g.Bands))
		for i, b := range g.Bands {
			bands[i] = fmt.Sprintf("%s / %s to %s", stress(b.ProofMPa, system), stress(b.TensileMPa, system), length(b.ToMM, system))
		}
		p.material(g.Name, strings.Join(bands, "; "), g.Source, g.FromMemory, g.ListedIn)
	}
	p.section("weld fillers: tensile strength of the deposit", len(all.Electrodes))
	for _, e := range all.Electrodes {
		p.material(e.Name, stress(e.FexxMPa, system), e.Source, e.FromMemory, e.ListedIn)
	}
	p.section("bolt sizes: diameter, pitch, across flats, washer", len(all.Bolts))
	for _, b := range all.Bolts {
		p.wrapped("  "+b.Name, 20, strings.Join([]string{length(b.DiaMM, system), length(b.PitchMM, system), length(b.AcrossFlats, system), length(b.WasherOD, system)}, ", "))
	}
}

func (p *printer) section(title string, n int) {
	if n > 0 {
		p.line("%s", title)
	}
}

func (p *printer) material(name, values, source string, fromMemory bool, listed []string) {
	p.wrapped("  "+name, 20, values)
	if fromMemory {
		source += " (from memory)"
	}
	if len(listed) > 0 {
		source += "; listed in " + strings.Join(listed, ", ")
	}
	p.wrapped("", 20, source)
}

func stress(v float64, system units.System) string {
	if v == 0 {
		return "none"
	}
	return units.Format(v, units.Stress, system)
}

func length(v float64, system units.System) string { return units.Format(v, units.Length, system) }

// materialDoc is any of the four; strengths in MPa, lengths in mm.
type materialDoc struct {
	Name       string             `json:"name"`
	Aliases    []string           `json:"aliases,omitempty"`
	Form       string             `json:"form,omitempty"`
	Family     string             `json:"family,omitempty"`
	Source     string             `json:"source,omitempty"`
	FromMemory bool               `json:"from_memory,omitempty"`
	ListedIn   []string           `json:"listed_in,omitempty"`
	Bands      []bandDoc          `json:"bands,omitempty"`
	Welded     *bandDoc           `json:"welded,omitempty"` // strength beside a weld
	WeldedFrom string             `json:"welded_from,omitempty"`
	Values     map[string]float64 `json:"values,omitempty"`
}

type bandDoc struct {
	OverMM     number  `json:"over_mm"`
	ToMM       number  `json:"to_mm"` // null when there is no upper bound
	YieldMPa   float64 `json:"yield_mpa"`
	TensileMPa float64 `json:"tensile_mpa"`
	ProofMPa   float64 `json:"proof_mpa,omitempty"`
}

func docOfMaterials(all *dial.Materials) any {
	return map[string]any{
		"format": format,
		"grades": docsOf(all.Grades, func(g material.Grade) materialDoc {
			strengths := func(b material.Band) bandDoc {
				return bandDoc{number(b.OverMM), number(b.ToMM), b.FyMPa, b.FuMPa, 0}
			}
			m := materialDoc{
				Name: g.Name, Aliases: g.Aliases, Form: g.Form, Family: string(g.Family), Source: g.Source, FromMemory: g.FromMemory, ListedIn: g.ListedIn,
				Bands: docsOf(g.Bands, strengths), WeldedFrom: g.WeldedFrom,
				Values: map[string]float64{"e_mpa": g.EMPa, "density_kg_per_m3": g.Density},
			}
			if g.Welded != nil {
				welded := strengths(*g.Welded)
				m.Welded = &welded
			}
			return m
		}),
		"bolt_grades": docsOf(all.BoltGrades, func(g material.BoltGrade) materialDoc {
			return materialDoc{Name: g.Name, Aliases: g.Aliases, Source: g.Source, FromMemory: g.FromMemory, ListedIn: g.ListedIn,
				Bands: docsOf(g.Bands, func(b material.BoltBand) bandDoc {
					return bandDoc{number(b.OverMM), number(b.ToMM), b.YieldMPa, b.TensileMPa, b.ProofMPa}
				})}
		}),
		"electrodes": docsOf(all.Electrodes, func(e material.Electrode) materialDoc {
			return materialDoc{Name: e.Name, Aliases: e.Aliases, Source: e.Source, FromMemory: e.FromMemory, ListedIn: e.ListedIn,
				Values: map[string]float64{"yield_mpa": e.YieldMPa, "fexx_mpa": e.FexxMPa}}
		}),
		"bolt_sizes": docsOf(all.Bolts, func(b material.Bolt) materialDoc {
			return materialDoc{Name: b.Name, Values: map[string]float64{
				"diameter_mm": b.DiaMM, "pitch_mm": b.PitchMM, "across_flats_mm": b.AcrossFlats, "washer_outside_mm": b.WasherOD}}
		}),
	}
}
