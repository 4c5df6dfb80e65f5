package sheet

// This file says what a bracket is: parameters, parts, loads and notes.

import (
	"fmt"

	"lugwright/client/run"
	"lugwright/geometry"
	"lugwright/geometry/setout"
	"lugwright/part"
	"lugwright/units"
)

func (s *sheet) bracket(b *run.Bracket) {
	s.heading(2, "Bracket "+b.Spec.Name)
	s.item("Kind", string(b.Spec.Kind)+", "+string(b.Spec.Hand)+" hand")
	s.item("Pieces to make", fmt.Sprint(b.Spec.Quantity))
	s.item("Basis", fmt.Sprintf("%s, edition %s, %s, load factor on service cases %s", b.Report.Basis, b.Report.Edition, b.Report.Method, s.loadFactor()))
	s.item("Verdict", bracketVerdict(b))
	s.parameters(b.Part)
	s.parts(b.Part)
	s.placings(b.Part)
	s.loads(b)
	s.notes(b)
	s.overview(b)
	s.inFull(b)
}

func bracketVerdict(b *run.Bracket) string {
	if b.Report.Governing() == nil {
		return "NOT CHECKED"
	}
	return shout(b.Report.Verdict())
}

func (s *sheet) parameters(b *part.Bracket) {
	s.heading(3, "Parameters of "+b.Name)
	rows := [][]string{{"parameter", "value"}}
	for _, p := range b.Params {
		rows = append(rows, []string{p.Name, s.parameter(p)})
	}
	s.table(rows)
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
	s.heading(3, "Parts of "+b.Name)
	rows := [][]string{{"part", "mark", "what", "material"}}
	for _, p := range b.Plates {
		rows = append(rows, []string{p.ID, p.Mark, p.Name + ", " + s.length(p.ThicknessMM), p.Material})
	}
	for _, m := range b.Members {
		rows = append(rows, []string{m.ID, m.Mark, fmt.Sprintf("%s, %s long", m.Profile.Kind, s.length(m.LengthMM)), m.Material})
	}
	for _, p := range b.Pins {
		rows = append(rows, []string{p.ID, p.Mark, fmt.Sprintf("pin, %s diameter", s.length(p.DiaMM)), p.Material})
	}
	for _, g := range b.Bolts {
		rows = append(rows, []string{g.ID, "", fmt.Sprintf("%d bolts %s, %s", len(g.Points), g.Size, threads(g.ThreadsIn)), g.Grade})
	}
	for _, r := range b.Rods {
		rows = append(rows, []string{r.ID, "", fmt.Sprintf("%d rods %s, %s free", len(r.Points), r.Size, s.length(r.FreeMM)), r.Grade})
	}
	for _, w := range b.Welds {
		rows = append(rows, []string{w.ID, "", fmt.Sprintf("%s weld %s to %s, %s", w.Kind, w.Joins[0], w.Joins[1], s.weldSize(&w)), w.Electrode})
	}
	for _, t := range b.Supports {
		rows = append(rows, []string{t.ID, "", fmt.Sprintf("%s, %s", t.Kind, s.length(t.ThicknessMM)), t.Material})
	}
	s.table(rows)
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

// placings is for the welder: where each part stands on what it is welded to, in the order in which the parts go on.
func (s *sheet) placings(b *part.Bracket) {
	list := setout.Of(b.AsMade())
	if len(list) == 0 {
		return
	}
	s.heading(3, "Placing and welding of "+b.Name)
	s.line("A part is measured from two edges of what it stands on, as that part's cut file shows it, to the nearer side of its foot; the ends of a leg are seen on its outer")
	s.line("face with the heel down. All welds of one step are done before the parts of the next go on.")
	s.line("")
	rows := [][]string{{"step", "part", "on", "side", "place", "foot", "weld", "kind, size and length"}}
	for _, p := range list {
		place, foot := "", ""
		for k, edge := range p.From {
			if edge == "" {
				continue
			}
			if k > 0 {
				place, foot = place+"; ", foot+" x "
			}
			place += s.length(p.AtMM[k]) + " from its " + string(edge)
			foot += s.length(p.FootMM[k])
		}
		if p.TurnedRad > 0 {
			place += ", turned " + units.Format(p.TurnedRad, units.Angle, s.job.Units)
		}
		kind := fmt.Sprintf("%s, %s, %s, %s long in %d", p.Weld.Kind, s.weldSize(p.Weld), setout.Faces(p.Weld), s.length(p.LengthMM), len(p.Weld.Segments))
		rows = append(rows, []string{fmt.Sprint(p.Step), p.Part, p.On, string(p.Side), place, foot, p.Weld.ID, kind})
	}
	s.table(rows)
}

func threads(in bool) string {
	if in {
		return "threads in the shear plane"
	}
	return "threads out of the shear plane"
}

func (s *sheet) loads(b *run.Bracket) {
	s.heading(3, "Loads on "+b.Spec.Name)
	rows := [][]string{{"case", "level", "source", "Fx", "Fy", "Fz", "Mx", "My", "Mz"}}
	for _, l := range b.Spec.Loads {
		row := []string{l.Name(), "", ""}
		if c := s.job.Case(l.Case); c != nil {
			row[1], row[2] = string(c.Level), c.Source
		}
		row = append(row, s.components(l.Force, units.Force)...)
		rows = append(rows, append(row, s.components(l.Moment, units.Moment)...))
	}
	s.table(rows)
}

// notes are the run's (materials, cases without a load) and the kind's to the maker.
func (s *sheet) notes(b *run.Bracket) {
	if len(b.Notes)+len(b.Part.Notes)+len(b.Access)+len(b.Fits) == 0 {
		return
	}
	s.heading(3, "Notes on "+b.Spec.Name)
	for _, n := range b.Notes {
		s.line("- %s", prose(n))
	}
	for _, f := range b.Access {
		s.line("- no access: %s", prose(f.String()))
	}
	for _, n := range b.Fits {
		s.line("- fit: %s", prose(n))
	}
	for _, n := range b.Part.Notes {
		s.line("- for the maker: %s", prose(n))
	}
}

// overview lists every check in one table, as the report has them: worst first.
func (s *sheet) overview(b *run.Bracket) {
	s.heading(3, "Checks of "+b.Spec.Name+", worst first")
	rows := [][]string{{"used", "verdict", "check", "place", "demand", "capacity", "case"}}
	for i := range b.Report.Checks {
		k := &b.Report.Checks[i]
		if !k.Compares() {
			rows = append(rows, []string{"-", shout(k.Verdict), k.Title, k.Place, "", "", k.Case})
			continue
		}
		rows = append(rows, []string{used(k), shout(k.Verdict), k.Title, k.Place, s.show(k.Demand, k.Unit), s.show(k.Capacity, k.Unit), k.Case})
	}
	s.table(rows)
}
