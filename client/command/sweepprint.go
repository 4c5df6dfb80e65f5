package command

// This file prints a sweep: rows as they come, then what they say.

import (
	"context"
	"fmt"
	"math"
	"strings"

	"lugwright/client/sweep"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength"
	"lugwright/units"
)

// sweepPage prints a sweep.
type sweepPage struct {
	*printer
	scale
	r      *swept
	across across
	quiet  bool // only the result is wanted
	flush  func() error
	bar    *bar
	last   string // what the row above was governed by
}

// across is what a plot shows against utilisation.
type across struct {
	words, metric, inch string
	decimals            int
	of                  func(*sweep.Takes) float64 // in the module's units
}

var allAcross = map[string]across{
	"mass": {"mass", "kg", "lb", 2, func(t *sweep.Takes) float64 { return t.KG }},
	"cut":  {"cut length", "m", "in", 2, func(t *sweep.Takes) float64 { return t.CutMM }},
	"weld": {"weld metal", "cm3", "in3", 1, func(t *sweep.Takes) float64 { return t.WeldMM3 }},
}

func acrossOf(name string) (across, error) {
	a, ok := allAcross[name]
	if !ok {
		return a, &usageError{fmt.Sprintf("--against %q; one of mass, cut, weld", name), ""}
	}
	return a, nil
}

// number is a value in the job's unit.
func (a across) number(v float64, s scale) float64 {
	factor, _, err := units.Factor(s.name(a.metric, a.inch))
	if err != nil {
		return math.NaN()
	}
	return v / factor
}

func (a across) text(v float64, s scale) string {
	return units.FormatPlain(a.number(v, s), a.decimals)
}

// amount is a value with its unit.
func (a across) amount(v float64, s scale) string {
	return a.text(v, s) + " " + s.name(a.metric, a.inch)
}

func (p *sweepPage) say(line string) {
	if !p.quiet {
		p.line("%s", line)
	}
}

// tryAll tries every grid of the plan. What is done stays where an error ends it.
func (p *sweepPage) tryAll(ctx context.Context, client *dial.Client, bench *sweep.Bench, refine bool) error {
	p.head()
	for i := range p.r.plan.Grids {
		g := &p.r.plan.Grids[i]
		l := p.layoutOf(g)
		p.bracketHead(g, l)
		rows, err := bench.Run(ctx, g, func(r *sweep.Row) error {
			defer p.bar.add(1)
			if p.quiet {
				return nil
			}
			p.bar.clear()
			p.row(l, r)
			return p.flush()
		})
		one := sweep.Settle(g, rows)
		p.r.brackets = append(p.r.brackets, one)
		if err == nil && refine {
			one.Edges, err = bench.Refine(ctx, g, rows)
		}
		if err == nil {
			err = one.Report(ctx, client, bench)
		}
		if !p.quiet {
			p.bar.clear()
			p.bracketEnd(one)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (p *sweepPage) head() {
	if p.quiet {
		return
	}
	j := p.r.job
	title := j.Title
	if j.Revision != "" {
		title += ", revision " + j.Revision
	}
	p.wrapped("", 0, title)
	p.wrapped("", 0, j.Basis+", "+string(j.Method))
	p.wrapped("", 0, wanted(p.r.margin))
	p.wrapped("", 0, weighed)
	for _, s := range p.r.plan.Sources {
		p.wrapped("", 0, s)
	}
	p.line("job %s, lugwright %s", j.Hash(Version)[:16], Version)
}

// weighed says what a mass is of.
const weighed = "mass: plates as cut, sections, pins, weld metal and bolts; no rods"

// wanted says what passing means.
func wanted(margin float64) string {
	if margin == 1 {
		return "wanted: every utilisation at most 1, and rules about dimensions met"
	}
	return fmt.Sprintf("wanted margin %g: every utilisation at most 1/%g = %s, and rules about dimensions met", margin, margin, units.FormatPlain(1/margin, 3))
}

// layout is how one bracket's rows are laid out.
type layout struct {
	names []string // of the axes
	wide  []int
	short bool // the axes go by letters
}

// widest is how many columns the axes may take before they go by letters.
const widest = 24

func (p *sweepPage) layoutOf(g *sweep.Grid) *layout {
	c := &layout{}
	total := 0
	for i := range g.Axes {
		a := &g.Axes[i]
		w := 0
		for _, v := range a.Values {
			w = max(w, width(sweep.Say(v, p.system)))
		}
		c.names, c.wide = append(c.names, a.Param.Name), append(c.wide, w)
		total += max(w, width(a.Param.Name)) + 2
	}
	c.short = total > widest
	for i := range c.names {
		if c.short {
			c.names[i] = string(rune('a' + i))
		}
		c.wide[i] = max(c.wide[i], width(c.names[i]))
	}
	return c
}

func (p *sweepPage) bracketHead(g *sweep.Grid, c *layout) {
	if p.quiet {
		return
	}
	p.line("")
	p.wrapped("", 0, fmt.Sprintf("%s: %s, %s hand, %s", g.Spec.Name, g.Spec.Kind, g.Spec.Hand, counting(g.Count(), "variant", "variants")))
	for i := range g.Axes {
		if c.short {
			p.wrapped("  "+c.names[i], 5, g.Axes[i].Param.Name+": "+g.Axes[i].Param.Sentence)
		}
	}
	p.last = ""
	mass, cut, weld := allAcross["mass"], allAcross["cut"], allAcross["weld"]
	p.cells(c, c.names, [3]string{"mass " + mass.metricName(p.scale), "cut " + cut.metricName(p.scale), "weld " + weld.metricName(p.scale)}, "used", "", "governed by")
}

func (a across) metricName(s scale) string { return s.name(a.metric, a.inch) }

// cells writes one line of the table.
func (p *sweepPage) cells(c *layout, values []string, numbers [3]string, used, outcome, governs string) {
	var b strings.Builder
	for i, v := range values {
		b.WriteString(strings.Repeat(" ", c.wide[i]-width(v)) + v + "  ")
	}
	for i, w := range []int{7, 6, 8} {
		b.WriteString(strings.Repeat(" ", max(0, w-width(numbers[i]))) + numbers[i] + " ")
	}
	b.WriteString(strings.Repeat(" ", max(0, 5-width(used))) + used + "  " + pad(outcome, 8))
	p.flow(b.String(), governs)
}

// painted is an outcome as it is shown.
func (p *sweepPage) painted(o sweep.Outcome) string {
	switch o {
	case sweep.Passes:
		return p.paint(strength.Pass, "pass")
	case sweep.Fails:
		return p.paint(strength.Fail, "FAIL")
	case sweep.Outside:
		return p.paint(strength.Outside, "OUTSIDE")
	}
	return p.paint(strength.Outside, string(o))
}

// row prints a variant; what governs it is named where it is another than above.
func (p *sweepPage) row(c *layout, r *sweep.Row) {
	values := make([]string, len(r.Values))
	for i, v := range r.Values {
		values[i] = sweep.Say(v, p.system)
	}
	if r.Outcome == sweep.Refused {
		p.cells(c, values, [3]string{"-", "-", "-"}, "-", p.painted(r.Outcome), "")
		if why := p.words(r.Why()); why != p.last {
			p.wrapped("", 4, why)
			p.last = why
		}
		return
	}
	governs, used := "nothing is checked", "-"
	if r.Governs != nil {
		governs, used = r.Governs.Limit+", "+r.Governs.Place, utilisation(r)
	}
	shown := governs
	if governs == p.last {
		shown = `"`
	}
	p.last = governs
	t := &r.Takes
	p.cells(c, values, [3]string{allAcross["mass"].text(t.KG, p.scale), allAcross["cut"].text(t.CutMM, p.scale), allAcross["weld"].text(t.WeldMM3, p.scale)}, used, p.painted(r.Outcome), shown)
}

// utilisation is that of the check which governs; none where it compares nothing or has no capacity.
func utilisation(r *sweep.Row) string {
	u := r.Utilisation()
	if math.IsInf(u, 0) || math.IsNaN(u) || u == 0 {
		return "-"
	}
	return units.Utilisation(u)
}

// assigned names parameters with their values.
func assigned(values []part.Param, system units.System) string {
	texts := make([]string, len(values))
	for i, v := range values {
		texts[i] = v.Name + " " + sweep.Say(v, system)
	}
	return strings.Join(texts, ", ")
}

// fate says how a variant fares, and where.
func fate(r *sweep.Row, s scale) string {
	if r.Outcome == sweep.Refused {
		return "cannot be made: " + s.words(r.Why())
	}
	if r.Governs == nil {
		return "is not checked: no limit state speaks of it"
	}
	verb := map[sweep.Outcome]string{sweep.Passes: "passes", sweep.Short: "is short of the margin", sweep.Outside: "is outside the rule", sweep.Fails: "fails"}[r.Outcome]
	text := fmt.Sprintf("%s: %s, %s", verb, r.Governs.Limit, r.Governs.Place)
	switch u := r.Governs.Utilisation; {
	case math.IsInf(u, 0):
		text += ", no capacity"
	case u > 0:
		text += ", at " + units.Utilisation(u) + " of capacity"
	}
	if r.Governs.Case != "" {
		text += " (" + r.Governs.Case + ")"
	}
	return text
}

// takes says what a bracket takes to make.
func takes(t *sweep.Takes, s scale) string {
	return fmt.Sprintf("%s, cut %s, weld %s", allAcross["mass"].amount(t.KG, s), allAcross["cut"].amount(t.CutMM, s), allAcross["weld"].amount(t.WeldMM3, s))
}

// bracketEnd prints what the rows of a bracket say.
func (p *sweepPage) bracketEnd(b *sweep.Swept) {
	p.line("")
	if n := b.Grid.Count(); len(b.Rows) < n {
		p.wrapped("", 0, fmt.Sprintf("stopped after %d of %d variants; of these:", len(b.Rows), n))
	}
	switch nearest := sweep.Nearest(b.Rows); {
	case b.Lightest != nil:
		p.wrapped("", 0, fmt.Sprintf("the lightest that passes: %s: %s; %s", assigned(b.Lightest.Values, p.system), takes(&b.Lightest.Takes, p.scale), fate(b.Lightest, p.scale)))
		for _, s := range b.Steps {
			p.step(s)
		}
	case nearest != nil:
		p.wrapped("", 0, fmt.Sprintf("none passes; the nearest, %s, %s", assigned(nearest.Values, p.system), fate(nearest, p.scale)))
	}
	p.edges(b.Edges)
	for _, n := range b.NotChecked {
		p.wrapped("  not checked", 17, n.What+", "+n.Place+": "+n.Why)
	}
	for _, n := range b.Notes {
		p.wrapped("  note", 17, n)
	}
	if picture := p.picture(b); len(picture.Points) > 2 {
		p.line("")
		for _, line := range picture.Letters(columns, 16) {
			p.line("%s", line)
		}
		p.wrapped("", 7, sweep.Legend)
	}
}

func (p *sweepPage) step(s sweep.Step) {
	name := s.Axis.Param.Name
	if s.Row == nil {
		p.wrapped("  -", 4, name+": no smaller value was tried")
		return
	}
	for _, v := range s.Row.Values {
		if v.Name == name {
			p.wrapped("  -", 4, fmt.Sprintf("one step down, %s %s: %s", name, sweep.Say(v, p.system), fate(s.Row, p.scale)))
		}
	}
}

// edges says where passing begins and ends, and how sure that is.
func (p *sweepPage) edges(e *sweep.Edges) {
	if e == nil {
		return
	}
	name := e.Axis.Param.Name
	at := func(r *sweep.Row) string {
		for _, v := range r.Values {
			if v.Name == name {
				return sweep.Say(v, p.system)
			}
		}
		return ""
	}
	for _, x := range e.List {
		p.wrapped("  edge", 8, fmt.Sprintf("%s %s %s; %s %s", name, at(x.Below), fate(x.Below, p.scale), at(x.Above), fate(x.Above, p.scale)))
	}
	sure := fmt.Sprintf("%d values of %s were looked at", e.Tried, name)
	switch {
	case len(e.List) == 0:
		sure += ": passing nowhere begins or ends among them"
	case e.Finely:
		sure += ", every step in ten parts, since passing turns more than once: every edge among them is listed"
	default:
		sure += ": passing turns once among them"
	}
	p.wrapped("", 8, sure+"; between values that were looked at nothing is proved")
}

func (p *sweepPage) picture(b *sweep.Swept) *sweep.Plot {
	a := p.across
	return b.Picture(p.r.job, b.Grid.Spec.Name+": "+strings.Join(varied(b.Grid), ", "), a.words+", "+a.metricName(p.scale), p.r.margin,
		func(t *sweep.Takes) float64 { return a.number(a.of(t), p.scale) })
}

func varied(g *sweep.Grid) []string {
	out := make([]string, len(g.Axes))
	for i := range g.Axes {
		out[i] = g.Axes[i].Param.Name
	}
	return out
}

// end prints what the brackets say together.
func (p *sweepPage) end(common bool) {
	if common {
		p.together()
	}
	p.cautions(p.r.job.Vehicle != nil)
}

func (p *sweepPage) together() {
	p.chapter("Common thicknesses of plate, all brackets with their quantities")
	switch {
	case p.r.apart != nil:
		p.wrapped("", 2, p.r.apart.Error())
		return
	case len(p.r.common) == 0:
		p.wrapped("", 2, "none: a bracket has no variant that passes")
		return
	}
	own := p.r.common[len(p.r.common)-1]
	for _, c := range p.r.common {
		more := "every bracket at its own lightest"
		if c.KG > own.KG {
			more = allAcross["mass"].amount(c.KG-own.KG, p.scale) + " more than each at its own lightest"
		}
		p.wrapped("  -", 4, fmt.Sprintf("%s, %s: %s, %s", counting(len(c.Stock), "thickness", "thicknesses"), stockWords(c.Stock, p.system), allAcross["mass"].amount(c.KG, p.scale), more))
		for _, r := range c.Rows {
			p.wrapped("", 6, r.Bracket+": "+assigned(r.Values, p.system))
		}
	}
}

func stockWords(list []sweep.Stock, system units.System) string {
	texts := make([]string, len(list))
	for i, s := range list {
		texts[i] = sweep.Say(part.Param{Unit: string(geometry.MM), Number: s.ThicknessMM}, system) + " " + s.Material
	}
	return strings.Join(texts, ", ")
}
