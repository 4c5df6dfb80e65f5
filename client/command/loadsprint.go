package command

// This file prints a vehicle's loads: what to look at first, the weights, and what was not covered.

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/caution"
	"lugwright/client/run"
	"lugwright/strength"
	"lugwright/vehicle"
	"lugwright/vehicle/whole"
)

// manyRows is after how many rows of states a table is cut short without --all.
const manyRows = 40

// loadsPage is one answer on its way to paper.
type loadsPage struct {
	*printer
	scale
	v   *run.Vehicle
	all bool
}

func (p *printer) vehicle(v *run.Vehicle, all bool) {
	l := &loadsPage{p, scale{v.Job.Units}, v, all}
	l.title()
	l.lookFirst()
	l.weights()
	l.asWeighed()
	l.whatIf()
	l.mounts()
	l.brackets()
	l.frame()
	l.sweep()
	l.clearance()
	l.drilling()
	l.lift()
	l.trays()
	l.open()
	l.cases()
	l.chapter("Cautions")
	for _, c := range caution.Vehicle() {
		l.wrapped("  -", 4, c.Text)
	}
}

func (l *loadsPage) title() {
	j := l.v.Job
	title := j.Title
	if j.Revision != "" {
		title += ", revision " + j.Revision
	}
	l.wrapped("", 0, title)
	l.line("job %s, lugwright %s", j.Hash(Version)[:16], Version)
	l.wrapped("", 0, "x rearward from the front axle, y left of the centreline, z up from the ground")
}

// severity is how a warning begins.
func (l *loadsPage) severity(s whole.Severity) string {
	switch s {
	case whole.Fails:
		return l.paint(strength.Fail, "FAILS")
	case whole.Mind:
		return "mind"
	}
	return "unknown"
}

func (l *loadsPage) lookFirst() {
	l.chapter("Look at this first")
	list := l.first()
	if len(list) == 0 {
		l.line("  nothing fails, and nothing stands out")
	}
	for _, w := range list {
		l.wrapped("  "+l.severity(w.Severity), 11, place(l.v, w)+w.Words)
	}
}

// use is how near a state comes to a rating: the largest part of any.
func use(w *vehicle.Weights) float64 {
	most := 0.0
	for _, r := range []vehicle.Rated{w.Gross, w.Front, w.Rear} {
		if r.RatingKG > 0 {
			most = max(most, r.KG.Value/r.RatingKG)
		}
	}
	return most
}

func heaviestFirst(list []vehicle.Weights) []vehicle.Weights {
	out := slices.Clone(list)
	slices.SortStableFunc(out, func(a, b vehicle.Weights) int {
		return cmp.Or(-cmp.Compare(use(&a), use(&b)), -cmp.Compare(a.Vehicle.KG.Value, b.Vehicle.KG.Value))
	})
	return out
}

func (l *loadsPage) weights() {
	all := heaviestFirst(l.v.Answer.Report.Weights)
	if len(all) == 0 {
		return
	}
	l.chapter("Weights, " + l.massUnit() + ", the state nearest to a rating first")
	shown, rest := l.cut(all)
	l.axles(shown)
	if rest > 0 {
		l.line("  and %s, lighter on every rating; --all lists them", counting(rest, "more state", "more states"))
	}
	l.line("")
	l.centres(shown)
	l.doubts(all)
}

// cut leaves the first few states.
func (l *loadsPage) cut(all []vehicle.Weights) (shown []vehicle.Weights, rest int) {
	const few = 8
	if l.all || len(all) <= few {
		return all, 0
	}
	return all[:few], len(all) - few
}

func (l *loadsPage) axles(list []vehicle.Weights) {
	rows := [][]string{{"state", "front axle", "rated", "rear axle", "rated", "gross", "rated", ""}}
	for i := range list {
		w := &list[i]
		rows = append(rows, []string{
			w.State, l.mass(w.Front.KG.Value), l.rating(w.Front), l.mass(w.Rear.KG.Value), l.rating(w.Rear), l.mass(w.Gross.KG.Value), l.rating(w.Gross), standing(w),
		})
		rows = append(rows, []string{"  give or take", l.plusMinus(w.Front.KG), "", l.plusMinus(w.Rear.KG), "", l.plusMinus(w.Gross.KG), "", ""})
	}
	l.grid(1, rows)
}

func (l *loadsPage) rating(r vehicle.Rated) string {
	if r.RatingKG == 0 {
		return "none"
	}
	return l.mass(r.RatingKG)
}

// standing names what is over, or may be.
func standing(w *vehicle.Weights) string {
	worst := ""
	for _, r := range []vehicle.Rated{w.Front, w.Rear, w.Gross} {
		switch {
		case r.Standing == vehicle.Over:
			return "OVER"
		case r.Standing == vehicle.MayExceed:
			worst = "may be over"
		}
	}
	return worst
}

// plusMinus is the greater side of a range.
func (l *loadsPage) plusMinus(r vehicle.Range) string {
	return l.mass(max(r.High-r.Value, r.Value-r.Low))
}

// centres: what each body weighs and where, and the vehicle's side bias and stability.
func (l *loadsPage) centres(list []vehicle.Weights) {
	rows := [][]string{{"state", "", "mass", "CG x", "CG y", "CG z", "left %", "stability", "tips at"}}
	for i := range list {
		w := &list[i]
		state := w.State
		for _, b := range w.Bodies {
			m := &b.Mass
			rows = append(rows, []string{state, b.Name, l.mass(m.KG.Value), l.length(m.XMM.Value), l.offset(m.YMM.Value), l.length(m.ZMM.Value), "", "", ""})
			state = ""
		}
		m := &w.Vehicle
		left, factor, tips := "-", "-", "-"
		height := "-"
		if s := &w.Stability; s.Known {
			left, factor = fmt.Sprintf("%.1f", s.LeftPercent.Value), fmt.Sprintf("%.2f", s.Factor.Value)
			tips = l.degrees(s.TipAngleRad.Value) + " deg " + s.TipsFirstTo
			height = l.length(m.ZMM.Value)
		}
		rows = append(rows, []string{state, "vehicle", l.mass(m.KG.Value), l.length(m.XMM.Value), l.offset(m.YMM.Value), height, left, factor, tips})
	}
	l.grid(2, rows)
	l.wrapped("", 2, "left %: of the weight, on the left wheels. Stability is (half the narrower track - |CG y|) / CG z: the side acceleration in g that lifts a wheel of a rigid vehicle; on springs and tyres it is less")
}

// doubts says how sure the weights are, and which masses are guesses.
func (l *loadsPage) doubts(all []vehicle.Weights) {
	var guesses []string
	for _, w := range all {
		for _, line := range w.Lines {
			name := strings.TrimSuffix(strings.TrimSuffix(line.Name, ", empty"), ", contents")
			if line.Confidence == vehicle.Guess && !slices.Contains(guesses, name) {
				guesses = append(guesses, name)
			}
		}
	}
	l.wrapped("", 2, "give or take: every mass off to the same side at once, by what is stated of it, or 1 % weighed, 5 % data, 20 % guess (common practice, no source)")
	if guesses != nil {
		l.wrapped("", 2, "guesses: "+strings.Join(guesses, ", "))
	}
}

func (l *loadsPage) asWeighed() {
	a := l.v.Answer.AsWeighed
	if a == nil {
		return
	}
	l.chapter("As weighed, state " + a.State + ", " + l.massUnit())
	rows := [][]string{{"", "scale", "rolled up", "difference", ""}}
	for _, c := range []struct {
		name string
		vehicle.Compared
	}{{"front axle", a.Front}, {"rear axle", a.Rear}, {"whole vehicle", a.Total}} {
		verdict := "within the masses' give or take"
		if !c.Within {
			verdict = "OUTSIDE it: a mass is missing, wrong or elsewhere"
		}
		difference := l.mass(c.DifferenceKG)
		if c.DifferenceKG > 0 {
			difference = "+" + difference
		}
		rows = append(rows, []string{c.name, l.mass(c.ReadKG), l.mass(c.RolledUpKG.Value), difference, verdict})
	}
	l.grid(1, rows)
	if a.RidingKnown {
		l.wrapped("", 2, fmt.Sprintf("the readings leave %s %s at x %s %s for all that rides on the chassis-cab; rolled up it is %s at x %s",
			l.mass(a.RidingKG), l.massUnit(), l.length(a.RidingXMM), l.lengthUnit(), l.mass(a.RolledUpRiding.KG.Value), l.length(a.RolledUpRiding.XMM.Value)))
	}
}

func (l *loadsPage) whatIf() {
	a := l.v.Answer
	if a.Moved == nil {
		return
	}
	var moves []string
	for _, m := range l.v.Request.Moves {
		moves = append(moves, m.Name+" "+l.shift(m))
	}
	l.chapter("What if " + strings.Join(moves, ", and "))
	rows := [][]string{{"state, " + l.massUnit(), "front axle", "now", "rear axle", "now", "stability", "now", ""}}
	for i := range a.Moved.Weights {
		w, was := &a.Moved.Weights[i], &a.Report.Weights[i]
		rows = append(rows, []string{
			w.State, l.mass(w.Front.KG.Value), l.mass(was.Front.KG.Value), l.mass(w.Rear.KG.Value), l.mass(was.Rear.KG.Value),
			stability(w), stability(was), standing(w),
		})
	}
	l.grid(1, rows)
	if len(a.Moved.Bodies) > 0 {
		rows = [][]string{{"mount, " + l.forceUnit() + " at most", "down", "now", "pulled up", "now"}}
		for i := range a.Moved.Bodies {
			now := whole.Worst(&a.Report.Bodies[i])
			for k, m := range whole.Worst(&a.Moved.Bodies[i]) {
				rows = append(rows, []string{m.Mount, l.force(m.DownN), l.force(now[k].DownN), l.force(m.UpN), l.force(now[k].UpN)})
			}
		}
		l.line("")
		l.grid(1, rows)
		l.byStiffness(a.Moved.Bodies)
	}
}

// byStiffness says which of several answers a table of forces gives, where a mount's load depends on who shares or rests.
func (l *loadsPage) byStiffness(bodies []vehicle.Result) {
	for i := range bodies {
		if !bodies[i].Scheme.Determinate {
			l.wrapped("", 2, "Forces on mounts are those by stiffness; a mount may have more, by who shares or rests.")
			return
		}
	}
}

func stability(w *vehicle.Weights) string {
	if !w.Stability.Known {
		return "-"
	}
	return fmt.Sprintf("%.2f", w.Stability.Factor.Value)
}

// shift is a move in words.
func (l *loadsPage) shift(m vehicle.Move) string {
	var out []string
	for _, a := range []struct {
		mm          float64
		plus, minus string
	}{{m.By.X, "rearward", "forward"}, {m.By.Y, "to the left", "to the right"}, {m.By.Z, "up", "down"}} {
		if a.mm == 0 {
			continue
		}
		way := a.plus
		if a.mm < 0 {
			way = a.minus
		}
		out = append(out, l.length(math.Abs(a.mm))+" "+l.lengthUnit()+" "+way)
	}
	if out == nil {
		return "stays"
	}
	return "moves " + strings.Join(out, ", ")
}

func (l *loadsPage) open() {
	l.chapter("Not covered")
	for _, s := range append(slices.Clone(l.v.Open), l.v.Answer.Unchecked...) {
		l.wrapped("  -", 4, l.words(s))
	}
}

// cases names the cases with what they are, level and source, so that a builder's choice never passes for a standard.
func (l *loadsPage) cases() {
	q := l.v.Request
	if len(q.Cases) == 0 {
		return
	}
	l.chapter("Load cases: the apparent acceleration in g, gravity included")
	rows := [][]string{{"case", "x", "y", "z", "level", "words and source"}}
	for _, c := range q.Cases {
		g := func(x float64) string { return fmt.Sprintf("%g", x) }
		source := c.Source
		if c.OnUltimate > 0 {
			source += fmt.Sprintf("; it asks for a factor of %g on tensile strength, which is not in the loads", c.OnUltimate)
		}
		rows = append(rows, []string{c.ID, g(c.AccelG.X), g(c.AccelG.Y), g(c.AccelG.Z), string(c.Level), c.Name + "; " + source})
	}
	l.indented(rows)
}
