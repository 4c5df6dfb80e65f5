package command

// This file prints what came of a family, and holds its document.

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"path/filepath"
	"slices"
	"strings"

	"lugwright/client/batch"
	"lugwright/client/family"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

func sortedKeys[K cmp.Ordered, V any](m map[K]V) []K { return slices.Sorted(maps.Keys(m)) }

// family prints the summary, worst first.
func (p *printer) family(f *family.Family, sum *batch.Summary, dir string, sheets []string) {
	p.wrapped("", 0, f.Title)
	p.wrapped("", 0, fmt.Sprintf("%s of kind %s by %s, %s", counting(int(sum.Variants), "variant", "variants"), f.Kind.Name, f.Basis, f.Method))
	p.line("family %s, lugwright %s", f.Hash(Version)[:16], Version)
	p.line("")
	for _, v := range []strength.Verdict{strength.Fail, strength.Outside, batch.Refused, strength.Pass} {
		if n := sum.Verdicts[v]; n > 0 {
			p.line("%10d  %s", n, p.paint(v, shout(v)))
		}
	}
	if worst := sum.Worst(); len(worst) > 0 {
		p.line("")
		p.line("   variant   used  worst first")
		for i := range worst {
			p.variant(f, &worst[i])
		}
	}
	for _, r := range sum.Refused() {
		p.line("")
		p.flow(fmt.Sprintf("%10d  %s  ", r.ID, p.paint(batch.Refused, "REFUSED")), r.Reason)
	}
	p.governing(sum)
	if l := sum.Lightest; l != nil {
		p.line("")
		p.flow(fmt.Sprintf("%10d  ", l.ID), fmt.Sprintf("the lightest that passes, %s, used to %s: %s", units.Format(l.MassKG, units.Mass, f.Units), units.Utilisation(l.Utilisation), own(f, l)))
	}
	p.line("")
	if dir != "" {
		p.wrapped("", 0, fmt.Sprintf("every variant is in %s, and in %s for programs", filepath.Join(dir, batch.TableFile), filepath.Join(dir, batch.LinesFile)))
	} else {
		p.wrapped("", 0, "-o DIR keeps the results of every variant")
	}
	for _, s := range sheets {
		p.line("wrote %s", s)
	}
	p.cautions(false) // a family states its loads
}

func (p *printer) variant(f *family.Family, r *batch.Row) {
	used := units.Utilisation(r.Utilisation)
	if math.IsInf(r.Utilisation, 0) {
		used = "-"
	}
	words := "nothing is checked"
	if r.Limit != "" {
		words = r.Limit + ", " + r.Place
		if r.Case != "" {
			words += " (" + r.Case + ")"
		}
	}
	p.flow(fmt.Sprintf("%10d %6s  %s  ", r.ID, used, p.paint(r.Verdict, shortVerdict(r.Verdict))), words)
	p.wrapped("", 19, own(f, r))
}

// own writes the parameters in which a variant differs from others.
func own(f *family.Family, r *batch.Row) string {
	var parts []string
	for i, given := range r.Own {
		if given.Name != "" {
			parts = append(parts, given.Name+" "+written(&f.Names[i], &given, f.Units))
		}
	}
	return strings.Join(parts, ", ")
}

func written(p *geometry.Param, given *part.Param, system units.System) string {
	switch p.Unit {
	case geometry.MM:
		return units.Format(given.Number, units.Length, system)
	case geometry.Rad:
		return units.Format(given.Number, units.Angle, system)
	case geometry.Ratio, geometry.Count:
		return units.Format(given.Number, units.Ratio, system)
	}
	return given.Text
}

// governing lists limit states by how often they govern.
func (p *printer) governing(sum *batch.Summary) {
	if len(sum.Governing) == 0 {
		return
	}
	p.line("")
	p.line("   governs  not met  limit state")
	for _, id := range byCount(sum) {
		g := sum.Governing[id]
		p.line("%10d %8d  %s", g.Variants, g.NotMet, id)
	}
}

func byCount(sum *batch.Summary) []string {
	return slices.SortedFunc(maps.Keys(sum.Governing), func(a, b string) int {
		return cmp.Or(-cmp.Compare(sum.Governing[a].Variants, sum.Governing[b].Variants), cmp.Compare(a, b))
	})
}

type familyDoc struct {
	Format    int                   `json:"format"`
	Tool      string                `json:"tool"`
	Family    string                `json:"family"`
	Kind      string                `json:"kind"`
	Hash      string                `json:"hash"`
	Basis     string                `json:"basis"`
	Method    string                `json:"method"`
	Variants  int64                 `json:"variants"`
	Passes    bool                  `json:"passes"`
	Verdicts  map[string]int64      `json:"verdicts"`
	Governing map[string]governsDoc `json:"governing"` // by limit state
	Worst     []familyRowDoc        `json:"worst"`     // worst first
	Refused   []familyRowDoc        `json:"refused"`   // the first few
	Lightest  *familyRowDoc         `json:"lightest"`  // that passes; null when none does
	Folder    string                `json:"folder,omitempty"`
	Details   []string              `json:"details,omitempty"`
}

type governsDoc struct {
	Variants int64 `json:"variants"`
	NotMet   int64 `json:"not_met"`
}

type familyRowDoc struct {
	ID          int64          `json:"id"`
	Parameters  []parameterDoc `json:"parameters"` // in which variants differ, as far as the row gives them
	Verdict     string         `json:"verdict"`
	Limit       string         `json:"limit,omitempty"`
	Place       string         `json:"place,omitempty"`
	Case        string         `json:"case,omitempty"`
	Utilisation number         `json:"utilisation"` // null when there is no capacity or no check
	MassKG      number         `json:"mass_kg"`
	Reason      string         `json:"reason,omitempty"`
}

func docOfFamily(f *family.Family, sum *batch.Summary, dir string, sheets []string) familyDoc {
	d := familyDoc{
		Format: format, Tool: "lugwright " + Version, Family: f.Title, Kind: f.Kind.Name, Hash: f.Hash(Version), Basis: f.Basis, Method: string(f.Method),
		Variants: sum.Variants, Passes: sum.Passes(), Verdicts: map[string]int64{}, Governing: map[string]governsDoc{},
		Worst: docsOf(sum.Worst(), familyRowDocOf), Refused: docsOf(sum.Refused(), familyRowDocOf), Folder: dir, Details: sheets,
	}
	for v, n := range sum.Verdicts {
		d.Verdicts[string(v)] = n
	}
	for id, g := range sum.Governing {
		d.Governing[id] = governsDoc{g.Variants, g.NotMet}
	}
	if sum.Lightest != nil {
		one := familyRowDocOf(*sum.Lightest)
		d.Lightest = &one
	}
	return d
}

func familyRowDocOf(r batch.Row) familyRowDoc {
	used := number(r.Utilisation)
	if r.Reason != "" {
		used = number(math.NaN())
	}
	given := slices.DeleteFunc(slices.Clone(r.Own), func(v part.Param) bool { return v.Name == "" })
	return familyRowDoc{r.ID, docsOf(given, docOfParameter), string(r.Verdict), r.Limit, r.Place, r.Case, used, number(r.MassKG), r.Reason}
}
