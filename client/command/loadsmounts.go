package command

// This file prints what mounts hold, the forces on them by state and case, and what each bracket is designed for.

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/run"
	"lugwright/vehicle"
)

func (l *loadsPage) mounts() {
	for i := range l.v.Answer.Report.Bodies {
		l.body(&l.v.Answer.Report.Bodies[i], &l.v.Request.Bodies[i])
	}
}

func (l *loadsPage) body(r *vehicle.Result, b *vehicle.Body) {
	title := "Mounts"
	if len(l.v.Answer.Report.Bodies) > 1 {
		title += " of " + r.Scheme.Body
	}
	l.chapter(title)
	for _, m := range b.Mounts {
		l.wrapped("  "+m.Name+"  ", 2+longest(b.Mounts)+3, l.at(m.At)+"; holds "+holds(&m))
	}
	for _, words := range scheme(&r.Scheme) {
		l.wrapped("  -", 4, words)
	}
	l.extremes(r)
	l.reactions(r)
}

func longest(mounts []vehicle.Mount) int {
	n := 0
	for _, m := range mounts {
		n = max(n, width(m.Name))
	}
	return n
}

// holds says in words what a mount holds.
func holds(m *vehicle.Mount) string {
	var out []string
	for _, d := range []struct {
		name, plus, minus string
		r                 vehicle.Restraint
	}{{"up and down", "up", "down", m.Z}, {"sideways", "to the left", "to the right", m.Y}, {"fore and aft", "rearward", "forward", m.X}} {
		switch d.r.Way {
		case vehicle.Both:
			out = append(out, d.name)
		case vehicle.PlusOnly:
			out = append(out, d.plus+" only")
		case vehicle.MinusOnly:
			out = append(out, d.minus+" only")
		}
	}
	for _, d := range []struct {
		name string
		t    vehicle.Turn
	}{{"rolling", m.RX}, {"pitching", m.RY}, {"yawing", m.RZ}} {
		if d.t.Held {
			out = append(out, d.name)
		}
	}
	if out == nil {
		return "nothing"
	}
	return strings.Join(out, ", ")
}

// scheme is what the mounts hold together, in words, the plain statement first.
func scheme(s *vehicle.Scheme) []string {
	var out []string
	if s.Determinate {
		out = append(out, "statically determinate: equilibrium alone fixes every force")
	}
	if len(s.Free) == 0 {
		out = append(out, "no motion is left free")
	}
	for _, w := range s.Words {
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// extremes: the most that each mount sees, worst first.
func (l *loadsPage) extremes(r *vehicle.Result) {
	rows := [][]string{{"mount, " + l.forceUnit(), "", "force", "case", "state"}}
	for i := range r.Loads {
		worst := l.mostOf(r, i)
		rows = append(rows, worst...)
	}
	if len(rows) == 1 {
		return
	}
	l.line("")
	l.line("  The most that each mount has to hold, over all states, cases and ways to share")
	l.textGrid(rows)
}

func (l *loadsPage) mostOf(r *vehicle.Result, mount int) [][]string {
	type most struct {
		way string
		n   float64
		of  *vehicle.Load
	}
	found := []most{{way: "down"}, {way: "UP"}, {way: "sideways"}, {way: "fore and aft"}}
	loads := r.Loads[mount].Loads
	for i := range loads {
		f := loads[i].Force
		for k, n := range []float64{-f.Z, f.Z, math.Abs(f.Y), math.Abs(f.X)} {
			if n > found[k].n+1e-6 {
				found[k].n, found[k].of = n, &loads[i]
			}
		}
	}
	var rows [][]string
	name := r.Loads[mount].Mount
	for _, m := range found {
		if m.of == nil {
			continue
		}
		state := m.of.State
		if m.of.Share != "" {
			state += ", " + m.of.Share
		}
		rows = append(rows, []string{name, m.way, l.force(m.n), m.of.Case, state})
		name = ""
	}
	return rows
}

// textGrid is a table whose third column alone is numbers, and whose last is wrapped.
func (l *loadsPage) textGrid(rows [][]string) {
	n := 0
	for _, row := range rows {
		n = max(n, width(row[2]))
	}
	out := make([][]string, len(rows))
	for i, row := range rows {
		out[i] = slices.Clone(row)
		out[i][2] = strings.Repeat(" ", n-width(row[2])) + row[2]
	}
	l.indented(out)
}

// column is one column of the table of forces: a mount's, or what several mounts take together.
type column struct {
	way    string // "down on", "side" or "fore-aft"
	head   string
	mounts []int
	dir    int // 0 x, 1 y, 2 z
}

// columnsOf are every mount's vertical force, then side and fore-aft force, together for those that share.
func columnsOf(r *vehicle.Result, b *vehicle.Body) []column {
	var out []column
	for i := range b.Mounts {
		if holdsWay(&b.Mounts[i], 2) {
			out = append(out, column{"down on", b.Mounts[i].Name, []int{i}, 2})
		}
	}
	for _, dir := range []int{1, 0} {
		name := []string{"fore-aft", "side"}[dir]
		done := map[int]bool{}
		for i := range b.Mounts {
			if done[i] || !holdsWay(&b.Mounts[i], dir) {
				continue
			}
			together := []int{i}
			for _, names := range sharers(r, b, []string{"x", "y"}[dir]) {
				if !slices.Contains(names, b.Mounts[i].Name) {
					continue
				}
				together = nil
				for k := range b.Mounts {
					if slices.Contains(names, b.Mounts[k].Name) {
						together = append(together, k)
						done[k] = true
					}
				}
			}
			out = append(out, column{name, common(b, together), together, dir})
		}
	}
	return out
}

// sharers are the mounts that share a direction, as they must or as is stated.
func sharers(r *vehicle.Result, b *vehicle.Body, direction string) [][]string {
	var out [][]string
	for _, s := range b.Shares {
		if s.Direction == direction {
			out = append(out, s.Mounts)
		}
	}
	for _, s := range r.Scheme.Sharing {
		if s.Direction == direction {
			out = append(out, s.Mounts)
		}
	}
	return out
}

func holdsWay(m *vehicle.Mount, dir int) bool {
	w := [3]vehicle.Restraint{m.X, m.Y, m.Z}[dir].Way
	return w != "" && w != vehicle.Free
}

// common is what the names of several mounts begin with.
func common(b *vehicle.Body, mounts []int) string {
	name := b.Mounts[mounts[0]].Name
	if len(mounts) == 1 {
		return name
	}
	for _, i := range mounts[1:] {
		for !strings.HasPrefix(b.Mounts[i].Name, name) {
			name = name[:len(name)-1]
		}
	}
	name = strings.TrimRight(name, "- ")
	switch {
	case name != "":
	case len(mounts) == 2:
		return b.Mounts[mounts[0]].Name + " + " + b.Mounts[mounts[1]].Name
	default:
		return "together"
	}
	return name
}

// reactions: a row for every case and state, unless these are too many.
func (l *loadsPage) reactions(r *vehicle.Result) {
	b := &l.v.Request.Bodies[slices.IndexFunc(l.v.Answer.Report.Bodies, func(o vehicle.Result) bool { return o.Scheme.Body == r.Scheme.Body })]
	if len(r.Cases) == 0 {
		return
	}
	l.line("")
	if len(r.Cases) > manyRows && !l.all {
		l.wrapped("", 2, fmt.Sprintf("%d states and cases; --all lists the forces of each", len(r.Cases)))
		return
	}
	l.wrapped("", 2, "Forces of the body on the mounts, "+l.forceUnit()+", state by state: down on each; -n UP pulls the mount up. Sideways R to the right, L to the left; "+
		"fore and aft F forward, R rearward, of all that share it. * has a range, by who shares or rests"+l.more()+".")
	cols := columnsOf(r, b)
	for _, state := range statesOf(r) {
		l.stateForces(r, state, cols)
	}
	l.wrapped("", 2, fmt.Sprintf("What is left of equilibrium is at most %.0e of the body's weight, and %.0e of it on an arm of 1 m: rounding.", worstResidual(r, false), worstResidual(r, true)))
}

func (l *loadsPage) more() string {
	if l.all {
		return ""
	}
	return "; --all gives it"
}

func statesOf(r *vehicle.Result) []string {
	var out []string
	for i := range r.Cases {
		if !slices.Contains(out, r.Cases[i].State) {
			out = append(out, r.Cases[i].State)
		}
	}
	return out
}

// worstResidual is what is left of equilibrium, over the body's weight, moments on an arm of 1 m.
func worstResidual(r *vehicle.Result, moment bool) float64 {
	worst := 0.0
	for i := range r.Cases {
		c := &r.Cases[i]
		n := c.ResidualN
		if moment {
			n = c.ResidualNMM / 1000
		}
		if c.BodyKG > 0 {
			worst = max(worst, math.Abs(n)/(c.BodyKG*vehicle.G))
		}
	}
	return worst
}

func (l *loadsPage) stateForces(r *vehicle.Result, state string, cols []column) {
	way, head := []string{""}, []string{state}
	for _, c := range cols {
		way, head = append(way, c.way), append(head, c.head)
	}
	rows, ranges := [][]string{way, head}, [][]string{way, head}
	var unheld []string
	for i := range r.Cases {
		c := &r.Cases[i]
		if c.State != state {
			continue
		}
		if !c.Held {
			unheld = append(unheld, c.Case+" IS NOT HELD: "+c.Unheld+parting(c))
			continue
		}
		row, spreads := []string{c.Case}, []string{c.Case}
		ranged := false
		for _, col := range cols {
			text, spread := l.cell(c, col)
			row, spreads = append(row, text), append(spreads, spread)
			ranged = ranged || spread != ""
		}
		rows = append(rows, row)
		if ranged {
			ranges = append(ranges, spreads)
		}
	}
	l.line("")
	l.grid(1, rows)
	for _, w := range unheld {
		l.wrapped("", 4, w)
	}
	if l.all && len(ranges) > 2 {
		l.line("")
		l.line("  * the least and the most that equilibrium and the rules of sharing allow, %s", state)
		l.grid(1, ranges)
	}
}

func parting(c *vehicle.CaseResult) string {
	if len(c.Parts) == 0 {
		return ""
	}
	return "; the body lifts off " + strings.Join(c.Parts, ", ")
}

// cell is a force of the body on the mounts of a column, and its range where it has one.
func (l *loadsPage) cell(c *vehicle.CaseResult, col column) (text, spread string) {
	var sum, low, high float64
	open := false
	for _, m := range col.mounts {
		x := &c.Reactions[m]
		sum += [3]float64{x.Force.X, x.Force.Y, x.Force.Z}[col.dir]
		for _, k := range x.Components {
			if k.Direction == []string{"x", "y", "z"}[col.dir] {
				low, high = low+k.Low, high+k.High
				open = open || k.LowOpen || k.HighOpen
			}
		}
	}
	text = l.directed(sum, col.dir)
	if len(col.mounts) == 1 && (open || l.force(low) != l.force(high)) { // of mounts that share, the sum is what counts
		text += "*"
		spread = l.directed(low, col.dir) + " to " + l.directed(high, col.dir)
		if open {
			spread = "no bound"
		}
	}
	return text, spread
}

// directed writes a reaction on the body as the body's force on the mount.
func (l *loadsPage) directed(reaction float64, dir int) string {
	if l.force(math.Abs(reaction)) == l.force(0) {
		return l.force(0)
	}
	switch {
	case dir == 2 && reaction < 0:
		return l.force(reaction) + " UP"
	case dir == 2:
		return l.force(reaction)
	case dir == 1 && reaction > 0: // the mount pushes the body left: the body pushes it right
		return l.force(reaction) + " R"
	case dir == 1:
		return l.force(-reaction) + " L"
	case reaction > 0:
		return l.force(reaction) + " F"
	}
	return l.force(-reaction) + " R"
}

// brackets: what each that is tied to a mount is designed for.
func (l *loadsPage) brackets() {
	j := l.v.Job
	if len(j.Brackets) == 0 {
		return
	}
	l.chapter("What the brackets are designed for, " + l.forceUnit())
	if l.v.Unheld != nil {
		for _, text := range strings.Split(l.v.Unheld.Error(), "\n") {
			l.wrapped("", 4, text)
		}
		return
	}
	rows := [][]string{{"bracket", "mount", "loads", "down", "UP", "left", "right", "forward", "rearward"}}
	for i := range j.Brackets {
		b := &j.Brackets[i]
		mount := b.Mount
		switch {
		case b.Tray != "":
			mount = "tray " + b.Tray
		case mount == "":
			mount = "none"
		}
		if b.BodySide {
			mount += ", body side"
		}
		row := []string{b.Name, mount, fmt.Sprint(len(b.Loads))}
		for _, e := range run.Extremes(b.Loads) {
			row = append(row, l.force(e.N))
		}
		rows = append(rows, row)
	}
	l.grid(2, rows)
	l.wrapped("", 2, "`lugwright check` holds each bracket against every one of its loads, at the level of its case and with the basis's load factor.")
}
