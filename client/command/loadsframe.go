package command

// This file prints the frame: bending of the rails, twist, tubes, and a mount moved along it.

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/vehicle/frame"
)

func (l *loadsPage) frame() {
	f := l.v.Answer.Frame
	if f == nil {
		return
	}
	l.chapter("Frame: bending of the rails, " + l.stressUnit())
	s := &f.Rail
	l.wrapped("", 2, fmt.Sprintf("rail: S %s, I %s, shear centre %s %s outside the web's middle", show(s.SMM3, "mm3", l.system), show(s.IMM4, "mm4", l.system), l.length(math.Abs(s.ShearCentreMM)), l.lengthUnit()))
	for _, st := range f.Lined {
		l.wrapped("", 2, fmt.Sprintf("with %s, x %s to %s: S %s", strings.Join(st.Liners, ", "), l.length(st.FromMM), l.length(st.ToMM), show(st.Section.SMM3, "mm3", l.system)))
	}
	l.bendingRows()
	for _, text := range f.ByPlace {
		l.wrapped("", 2, l.words(text))
	}
	for _, text := range f.NoForces {
		l.wrapped("", 2, "left out, since the body is not held: "+text)
	}
	l.diagram()
	l.twists()
	l.tubes()
}

// bendingRows: each case in its worst state, worst first.
func (l *loadsPage) bendingRows() {
	f := l.v.Answer.Frame
	var list []*frame.CaseResult
	for i := range f.Cases {
		c := &f.Cases[i]
		at := slices.IndexFunc(list, func(o *frame.CaseResult) bool { return o.Case == c.Case })
		switch {
		case at < 0 || l.all:
			list = append(list, c)
		case worstStress(c) > worstStress(list[at]):
			list[at] = c
		}
	}
	slices.SortStableFunc(list, func(a, b *frame.CaseResult) int { return -cmp.Compare(worstStress(a), worstStress(b)) })
	rows := [][]string{{"case, state", "left", "right", "mean", "at x", "spread body", "of yield", "shear"}}
	for _, c := range list {
		spread, yield := "-", "-"
		if c.Spread != nil {
			spread = l.stress(math.Abs(c.Spread.Worst.StressMPa))
		}
		if y := max(c.Left.OfYield, c.Right.OfYield); y > 0 {
			yield = fmt.Sprintf("%.2f", y)
		}
		peak := c.Left.Worst
		if math.Abs(c.Right.Worst.StressMPa) > math.Abs(peak.StressMPa) {
			peak = c.Right.Worst
		}
		rows = append(rows, []string{
			c.Case + ", " + c.State, l.stress(math.Abs(c.Left.Worst.StressMPa)), l.stress(math.Abs(c.Right.Worst.StressMPa)), l.stress(math.Abs(c.Mean.Worst.StressMPa)),
			l.length(peak.XMM), spread, yield, l.force(max(c.Left.GreatestN, c.Right.GreatestN)),
		})
	}
	l.grid(1, rows)
	l.wrapped("", 2, "mean: both rails alike, with half of everything each. Spread body: the same load, with the same centre, over the body's stretch. Each case in its worst state; where mounts may share, each rail under the way that is worst for it; shear in "+l.forceUnit()+". "+
		"Service level has no load factor inside.")
}

func worstStress(c *frame.CaseResult) float64 {
	return max(math.Abs(c.Left.Worst.StressMPa), math.Abs(c.Right.Worst.StressMPa))
}

// diagram draws the governing rail's stress along the vehicle as bars, beside the spread body's.
func (l *loadsPage) diagram() {
	f := l.v.Answer.Frame
	i := slices.IndexFunc(f.Governing, func(g frame.Governing) bool { return g.Rail == "mean" })
	if i < 0 {
		return
	}
	g := f.Governing[i]
	at := slices.IndexFunc(f.Cases, func(c frame.CaseResult) bool { return c.State == g.State && c.Case == g.Case })
	if at < 0 || len(f.Cases[at].Mean.Stations) == 0 {
		return
	}
	c := &f.Cases[at]
	l.line("")
	l.wrapped("", 2, fmt.Sprintf("Along the mean rail, %s (%s; x in %s; + pulls the lower flange)", shared(c.Case+", "+c.State, c.Mean.Share), l.stressUnit(), l.lengthUnit()))
	const bar = 40
	most := math.Abs(c.Mean.Worst.StressMPa)
	if c.Spread != nil {
		most = max(most, math.Abs(c.Spread.Worst.StressMPa))
	}
	for _, x := range alongRail(&c.Mean, 16) {
		stress := stressAt(c.Mean.Stations, x)
		n := int(math.Round(math.Abs(stress) / most * bar))
		text := strings.Repeat("#", n)
		if c.Spread != nil {
			if m := int(math.Round(math.Abs(stressAt(c.Spread.Stations, x)) / most * bar)); m >= n {
				text += strings.Repeat(" ", m-n) + "|"
			} else {
				text = text[:m] + "|" + text[m+1:]
			}
		}
		l.line("  %8s %6s  %s", l.length(x), l.stress(stress), text)
	}
	if c.Spread != nil {
		l.line("  | is the spread body")
	}
}

// alongRail are about n places along a rail, even but for the worst one.
func alongRail(d *frame.Diagram, n int) []float64 {
	first, last := d.Stations[0].XMM, d.Stations[len(d.Stations)-1].XMM
	out := []float64{d.Worst.XMM}
	for k := range n + 1 {
		if x := first + (last-first)*float64(k)/float64(n); math.Abs(x-d.Worst.XMM) > (last-first)/float64(2*n) {
			out = append(out, x)
		}
	}
	slices.Sort(out)
	return out
}

// stressAt is the stress between stations.
func stressAt(all []frame.Station, x float64) float64 {
	for i := 1; i < len(all); i++ {
		a, b := all[i-1], all[i]
		if x >= a.XMM && x <= b.XMM {
			if b.XMM == a.XMM {
				return b.StressMPa
			}
			return a.StressMPa + (b.StressMPa-a.StressMPa)*(x-a.XMM)/(b.XMM-a.XMM)
		}
	}
	return 0
}

// twists: each mount beside a rail at its worst.
func (l *loadsPage) twists() {
	worst := map[string]*frame.Twist{}
	where := map[string]string{}
	var order []string
	for i := range l.v.Answer.Frame.Cases {
		c := &l.v.Answer.Frame.Cases[i]
		for k := range c.Twists {
			t := &c.Twists[k]
			if worst[t.Mount] == nil {
				order = append(order, t.Mount)
			}
			if worst[t.Mount] == nil || math.Abs(t.MomentNMM) > math.Abs(worst[t.Mount].MomentNMM) {
				worst[t.Mount], where[t.Mount] = t, shared(c.Case+", "+c.State, t.Share)
			}
		}
	}
	if len(order) == 0 {
		return
	}
	l.line("")
	l.line("  Twist of the rails by mounts beside their shear centre")
	for _, mount := range order {
		t := worst[mount]
		l.wrapped("  -", 4, fmt.Sprintf("%s twists the %s rail by %s (%s), %s %s outside its shear centre and %s above its middle. %s", mount, t.Rail, show(math.Abs(t.MomentNMM), "N mm", l.system), where[mount],
			l.length(t.SideMM), l.lengthUnit(), l.length(t.HeightMM), upperFirst(l.words(t.Words))))
	}
}

// shared names a case with the way of sharing that it is under.
func shared(where, share string) string {
	if share == "" {
		return where
	}
	return where + ", " + share
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// tubes: each cross tube at its worst.
func (l *loadsPage) tubes() {
	worst := map[string]*frame.TubeBending{}
	where := map[string]string{}
	var order []string
	for i := range l.v.Answer.Frame.Cases {
		c := &l.v.Answer.Frame.Cases[i]
		for k := range c.Tubes {
			t := &c.Tubes[k]
			if worst[t.Tube] == nil {
				order = append(order, t.Tube)
			}
			if worst[t.Tube] == nil || t.StressMPa > worst[t.Tube].StressMPa {
				worst[t.Tube], where[t.Tube] = t, shared(c.Case+", "+c.State, t.Share)
			}
		}
	}
	if len(order) == 0 {
		return
	}
	l.line("")
	l.line("  Cross tubes, ends free to turn")
	for _, name := range order {
		t := worst[name]
		l.wrapped("  -", 4, fmt.Sprintf("%s under %s: %s %s over a span of %s %s (%s); with its ends held %s there; %s along it, which collars or welds must hold", name, t.Mount,
			l.stress(t.StressMPa), l.stressUnit(), l.length(t.SpanMM), l.lengthUnit(), where[name], show(t.HeldEndNMM, "N mm", l.system), show(math.Abs(t.AlongN), "N", l.system)))
	}
}

func (l *loadsPage) sweep() {
	a := l.v.Answer
	if a.Sweep == nil {
		return
	}
	l.chapter(fmt.Sprintf("Mount %s moved along the vehicle, the most over all states and cases", l.v.Request.Sweep.Mount))
	if a.Frame != nil {
		l.sweptRails()
		l.line("")
	}
	way, head := []string{"at most, " + l.forceUnit()}, []string{"x, " + l.lengthUnit()}
	for _, m := range a.Sweep[0].Mounts {
		way, head = append(way, "down on", "pulls up"), append(head, m.Mount, m.Mount)
	}
	rows := [][]string{way, head}
	for _, r := range a.Sweep {
		row := []string{l.length(r.XMM)}
		for _, m := range r.Mounts {
			row = append(row, l.force(m.DownN), l.force(m.UpN))
		}
		rows = append(rows, row)
	}
	l.grid(1, rows)
	l.byStiffness(a.Report.Bodies)
	for _, r := range a.Sweep {
		for _, u := range r.Unheld {
			l.wrapped("", 2, "at x "+l.length(r.XMM)+" not held: "+u)
		}
		for _, w := range r.Warnings {
			l.wrapped("", 2, "at x "+l.length(r.XMM)+": "+l.words(w.Words))
		}
	}
}

// sweptRails: the worst stress of the rails with the mount in each place.
func (l *loadsPage) sweptRails() {
	rows := [][]string{{"rails, " + l.stressUnit(), "", "", "", "spread", ""}, {"x, " + l.lengthUnit(), "left", "right", "mean", "body", "mean by"}}
	for _, r := range l.v.Answer.Sweep {
		row := []string{l.length(r.XMM)}
		of := map[string]string{}
		where := "-"
		for _, g := range r.Governing {
			of[g.Rail] = l.stress(math.Abs(g.StressMPa))
			if g.Rail == "mean" {
				where = g.Case + ", " + g.State
			}
		}
		for _, rail := range []string{"left", "right", "mean", "spread"} {
			row = append(row, cmp.Or(of[rail], "-"))
		}
		rows = append(rows, append(row, where))
	}
	l.grid(1, rows)
}
