package sheet

// This file says what a bracket is: parts, parameters, loads and notes.

import (
	"cmp"
	"fmt"
	"slices"

	"lugwright/client/drawings"
	"lugwright/client/job"
	"lugwright/client/paper"
	"lugwright/client/run"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/units"
)

func (s *sheet) bracket(b *run.Bracket) {
	s.heading(2, "Bracket "+b.Spec.Name, "")
	s.facts([]paper.Fact{
		{Name: "Kind", Value: b.Spec.Kind + ", " + string(b.Spec.Hand) + " hand"},
		{Name: "Pieces to make", Value: fmt.Sprint(b.Spec.Quantity)},
		{Name: "Verdict", Value: bracketVerdict(b)},
	})
	if s.Drawing != nil {
		for _, f := range s.Drawing(b) {
			s.add(f)
		}
	}
	s.parts(b.Part)
	s.parameters(b.Part)
	s.loads(b)
	s.notes(b)
	s.checked(b)
}

// parameters stand three in a row, read down, since there are many and each is short.
func (s *sheet) parameters(b *part.Bracket) {
	const across = 3
	t := &paper.Table{Caption: "Parameters of " + b.Name, Heads: heads("parameter", "value", "parameter", "value", "parameter", "value")}
	down := (len(b.Params) + across - 1) / across
	for i := range down {
		row := make([]string, 2*across)
		for k := range across {
			if at := k*down + i; at < len(b.Params) {
				row[2*k], row[2*k+1] = b.Params[at].Name, s.parameter(b.Params[at])
			}
		}
		t.Rows = append(t.Rows, paper.Row{Cells: row})
	}
	s.add(t)
}

func (s *sheet) parameter(p part.Param) string {
	switch {
	case p.Text != "":
		return p.Text
	case p.Unit == string(geometry.MM):
		return s.length(p.Number)
	case p.Unit == string(geometry.Rad):
		return units.Format(p.Number, units.Angle, s.job.Units)
	}
	return figures(p.Number)
}

func (s *sheet) parts(b *part.Bracket) {
	s.heading(3, "Parts of "+b.Name, "")
	t := &paper.Table{Heads: heads("mark", "part", "what", "material")}
	row := func(mark, id, what, material string) {
		t.Rows = append(t.Rows, paper.Row{Cells: []string{mark, id, what, material}, Ref: drawings.GroupID(mark)})
	}
	weld := func(w *part.WeldGroup) {
		what := fmt.Sprintf("%s weld %s to %s, %s", w.Kind, w.Joins[0], w.Joins[1], s.weldSize(w))
		t.Rows = append(t.Rows, paper.Row{Cells: []string{weldName(b, w.ID), "", what, w.Electrode}, Ref: drawings.GroupID(w.ID)})
	}
	for _, p := range b.Plates {
		row(p.Mark, p.ID, p.Name+", "+s.length(p.ThicknessMM), p.Material)
	}
	for _, m := range b.Members {
		row(m.Mark, m.ID, fmt.Sprintf("%s, %s long", m.Profile.Kind, s.length(m.LengthMM)), m.Material)
	}
	for _, p := range b.Pins {
		row(cmp.Or(p.Mark, p.ID), p.ID, fmt.Sprintf("pin, %s diameter", s.length(p.DiaMM)), p.Material)
	}
	for _, g := range b.Bolts {
		row(g.ID, "", fmt.Sprintf("%d bolts %s, %s", len(g.Points), g.Size, threads(g.ThreadsIn)), g.Grade)
	}
	for _, r := range b.Rods {
		row(r.ID, "", fmt.Sprintf("%d rods %s, %s free", len(r.Points), r.Size, s.length(r.FreeMM)), r.Grade)
	}
	for i := range b.Welds {
		weld(&b.Welds[i])
	}
	for _, p := range b.Supports {
		row(p.ID, "", fmt.Sprintf("%s, %s", p.Kind, s.length(p.ThicknessMM)), p.Material)
	}
	s.add(t)
}

// weldSize is what a weld is made to.
func (s *sheet) weldSize(w *part.WeldGroup) string {
	switch w.Kind {
	case part.PJP:
		return "throat " + s.length(w.LegMM)
	case part.CJP:
		return "through " + s.length(w.LegMM)
	case part.Plug:
		length := w.Segments[0].B.Sub(w.Segments[0].A).Norm()
		if length > w.WidthMM+1e-6 {
			return fmt.Sprintf("%d of %s x %s, filled %s", len(w.Segments), s.length(w.WidthMM), s.length(length), s.length(w.LegMM))
		}
		return fmt.Sprintf("%d of %s diameter, filled %s", len(w.Segments), s.length(w.WidthMM), s.length(w.LegMM))
	}
	return "leg " + s.length(w.LegMM)
}

func threads(in bool) string {
	if in {
		return "threads in the shear plane"
	}
	return "threads out of the shear plane"
}

// loads has columns of moments only where there are any.
func (s *sheet) loads(b *run.Bracket) {
	s.heading(3, "Loads on "+b.Spec.Name, "")
	if len(b.Spec.Loads) == 0 {
		s.words("None is given.")
		return
	}
	s.words(s.source(b.Spec.Mount, b.Spec.Tray))
	t := &paper.Table{Heads: heads("case and state", "level", "#Fx", "#Fy", "#Fz"), Sortable: true}
	moments := slices.ContainsFunc(b.Spec.Loads, func(l job.Load) bool { return l.Moment != part.Vec{} })
	if moments {
		t.Heads = append(t.Heads, heads("#Mx", "#My", "#Mz")...)
	}
	for _, l := range b.Spec.Loads {
		row := []string{l.Name(), ""}
		if c := s.job.Case(l.Case); c != nil {
			row[1] = string(c.Level)
		}
		row = append(row, s.components(l.Force, units.Force)...)
		if moments {
			row = append(row, s.components(l.Moment, units.Moment)...)
		}
		t.Rows = append(t.Rows, paper.Row{Cells: row})
	}
	s.add(t)
	if !moments {
		s.words("No moments act at the load points.")
	}
}

// notes are the run's (materials, cases without a load) and the kind's to the maker.
func (s *sheet) notes(b *run.Bracket) {
	l := &paper.List{}
	add := func(before, text string) { l.Items = append(l.Items, units.Words(oneLine(before+text), s.job.Units)) }
	for _, n := range b.Notes {
		add("", n)
	}
	for _, f := range b.Access {
		add("no access: ", f.String())
	}
	for _, n := range b.Fits {
		add("fit: ", n)
	}
	for _, n := range b.Part.Notes {
		add("for the maker: ", n)
	}
	if l.Items != nil {
		s.heading(3, "Notes on "+b.Spec.Name, "")
		s.add(l)
	}
}
