package command

// This file prints what is proposed, as comments above an item of a job, and as JSON.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/client/caution"
	"lugwright/client/job"
	"lugwright/client/propose"
	"lugwright/client/sweep"
	"lugwright/geometry"
	"lugwright/strength"
)

type proposePage struct {
	*printer
	scale
	p *proposed
}

func (p *proposePage) print() {
	p.before = "# "
	j, a := p.p.job, p.p.answer
	p.wrapped("", 0, fmt.Sprintf("%s: %s, %s hand, %s, %s", p.p.spec.Name, p.p.spec.Kind, p.p.spec.Hand, j.Basis, j.Method))
	p.wrapped("", 0, wanted(p.p.margin))
	p.wrapped("", 0, weighed)
	p.wrapped("", 0, p.how())
	p.sizes()
	for i := range a.Best {
		p.line("")
		p.proposal(i)
	}
	if n := a.Nearest; n != nil {
		p.line("")
		far := "nothing passes"
		if p.p.stopped {
			far = "nothing was found yet that passes"
		}
		p.wrapped("", 0, far+"; the nearest "+fate(n.Row, p.scale))
		p.wrapped("", 2, assigned(n.Row.Values, p.system))
		if ends := n.AtTheEnd(); len(ends) > 0 {
			p.wrapped("", 2, "the largest there is to choose from: "+strings.Join(ends, ", "))
		}
		p.wrapped("", 2, "what is no size, such as a grade, a height or what takes a couple, is as it was: --vary sets it")
	}
	if full := p.p.full; full != nil {
		p.line("")
		for _, n := range full.Report.NotChecked {
			p.wrapped("not checked", 14, n.What+", "+n.Place+": "+n.Why)
		}
		for _, n := range full.Notes {
			p.wrapped("note", 14, n)
		}
		p.wrapped("", 0, "Whether torch, socket and pin have room was not looked at: `lugwright check JOB --access` does. Edit from here.")
	}
	p.cautions(j.Vehicle != nil)
	p.before = ""
	if len(a.Best) > 0 {
		spec := sweep.With(p.p.spec, propose.Changed(a.Best[p.p.pick].Row, p.p.spec, p.p.kind))
		p.Write([]byte(propose.YAML(&spec, p.p.kind, p.system))) //nolint:errcheck // the printer keeps its error
	}
}

// how says how sure it is that nothing is lighter, and what was checked.
func (p *proposePage) how() string {
	a := p.p.answer
	text := counting(a.Tried, "variant", "variants")
	if !a.Whole && a.Tried >= p.p.most {
		text += ", as many as --most allows"
	}
	switch {
	case p.p.stopped:
		text += ", then stopped"
	case a.Whole:
		text += ": every combination of the sizes below; the first is the lightest of them all"
	default:
		text += ", from the present sizes by steps of one size or two: of more combinations than can be tried a lighter one is not ruled out"
	}
	few := 0
	for _, f := range a.Forms {
		few = max(few, len(f.Deciding))
	}
	loads := len(p.p.loaded.Loads)
	if few == 0 || few == loads {
		return text
	}
	return text + fmt.Sprintf(". What fails was found under %d of %d loads; what is proposed holds under all of them", few, loads)
}

// sizes says what was chosen from, each list of values once.
func (p *proposePage) sizes() {
	type line struct{ names, values string }
	var all []line
	for _, f := range p.p.answer.Forms {
		for _, s := range f.Sizes {
			texts := make([]string, len(s.Axis.Values))
			for i, v := range s.Axis.Values {
				texts[i] = sweep.Say(v, p.system)
			}
			values := strings.Join(texts, ", ")
			if s.Source != "" {
				values += " (" + s.Source + ")"
			}
			i := slices.IndexFunc(all, func(l line) bool { return l.values == values })
			switch name := s.Axis.Param.Name; {
			case i < 0:
				all = append(all, line{name, values})
			case !slices.Contains(strings.Split(all[i].names, ", "), name):
				all[i].names += ", " + name
			}
		}
	}
	for _, l := range all {
		p.wrapped("", 2, l.names+": "+l.values)
	}
}

// proposal prints one of the proposals, with what of it is another than in the job, and than in the first.
func (p *proposePage) proposal(i int) {
	b := &p.p.answer.Best[i]
	first := []string{"lightest", "runner-up", "second runner-up"}[i]
	p.wrapped("", 0, fmt.Sprintf("%d %s: %s, %s: %s", i+1, first, takes(&b.Row.Takes, p.scale), counting(len(b.Row.Takes.Stock), "thickness", "thicknesses"), stockWords(b.Row.Takes.Stock, p.system)))
	p.wrapped("", 2, fate(b.Row, p.scale))
	if n := p.p.answer.Unchecked(b); n > 0 {
		p.wrapped("", 2, fmt.Sprintf("%s more not checked than of the present sizes", counting(n, "thing is", "things are")))
	}
	than, from := "now", p.p.spec
	if i > 0 {
		than, from = "the lightest", &p.p.answer.Best[0].Spec
	}
	p.wrapped("", 2, "other than "+than+": "+p.changes(b.Row, from))
}

// changes names the values that differ, with what they were.
func (p *proposePage) changes(r *sweep.Row, from *job.Bracket) string {
	var out []string
	for _, v := range propose.Changed(r, from, p.p.kind) {
		i := slices.IndexFunc(p.p.kind.Params, func(d geometry.Param) bool { return d.Name == v.Name })
		out = append(out, fmt.Sprintf("%s %s (%s)", v.Name, sweep.Say(v, p.system), sweep.Say(sweep.Current(from, &p.p.kind.Params[i]), p.system)))
	}
	if out == nil {
		return "nothing"
	}
	return strings.Join(out, ", ")
}

type proposedDoc struct {
	Format     int             `json:"format"`
	Tool       string          `json:"tool"`
	Job        triedJobDoc     `json:"job"`
	Bracket    string          `json:"bracket"`
	Kind       string          `json:"kind"`
	Margin     float64         `json:"margin"`
	Tried      int             `json:"tried"`
	Whole      bool            `json:"every_combination"`
	Stopped    bool            `json:"stopped"`
	Sizes      []formDoc       `json:"chosen_from"`
	Proposals  []proposalDoc   `json:"proposals"` // lightest first
	Nearest    *rowDoc         `json:"nearest,omitempty"`
	NotChecked []notCheckedDoc `json:"not_checked"` // of the picked proposal
	Notes      []string        `json:"notes"`
	Cautions   []string        `json:"cautions"`
}

type formDoc struct {
	Words []parameterDoc `json:"words"` // that add or drop plates
	Sizes []sizeDoc      `json:"sizes"`
	Tried int            `json:"tried"`
	Whole bool           `json:"every_combination"`
	// Checked is how many checks were made, Settled how many of them under all loads; the others were made under those that decide.
	Checked  int      `json:"checks"`
	Settled  int      `json:"checks_under_all_loads"`
	Deciding []string `json:"loads_that_decide"`
}

type sizeDoc struct {
	axisDoc
	Role   string `json:"role"`
	Source string `json:"from"`
}

type proposalDoc struct {
	rowDoc
	Unchecked int    `json:"more_not_checked"` // than of the present sizes
	YAML      string `json:"yaml"`
}

func docOfProposed(p *proposed, version string) proposedDoc {
	a := p.answer
	d := proposedDoc{
		Format: format, Tool: "lugwright " + version, Job: docOfTriedJob(p.job, version), Bracket: p.spec.Name, Kind: p.spec.Kind, Margin: p.margin,
		Tried: a.Tried, Whole: a.Whole, Stopped: p.stopped, Proposals: []proposalDoc{}, NotChecked: []notCheckedDoc{}, Notes: []string{}, Cautions: []string{},
		Sizes: docsOf(a.Forms, func(f *propose.Form) formDoc {
			return formDoc{docsOf(f.Words, docOfParameter), docsOf(f.Sizes, func(s propose.Size) sizeDoc {
				return sizeDoc{axisDoc{s.Axis.Param.Name, docsOf(s.Axis.Values, docOfParameter)}, string(s.Role), s.Source}
			}), f.Tried, f.Whole, f.Checked, f.Settled, append([]string{}, f.Deciding...)}
		}),
	}
	for _, b := range a.Best {
		spec := sweep.With(p.spec, propose.Changed(b.Row, p.spec, p.kind))
		d.Proposals = append(d.Proposals, proposalDoc{docOfRow(*b.Row), a.Unchecked(&b), propose.YAML(&spec, p.kind, p.job.Units)})
	}
	if a.Nearest != nil {
		row := docOfRow(*a.Nearest.Row)
		d.Nearest = &row
	}
	if p.full != nil {
		d.NotChecked = docsOf(p.full.Report.NotChecked, func(n strength.NotChecked) notCheckedDoc { return notCheckedDoc{n.What, n.Place, n.Why} })
		d.Notes = append(d.Notes, p.full.Notes...)
	}
	for _, c := range caution.Checked(p.job.Vehicle != nil) {
		d.Cautions = append(d.Cautions, c.Text)
	}
	return d
}
