package propose

// This file searches the sizes of one form. Where all combinations are few enough they are all built, and checked from the lightest on until the lightest and its
// runners-up are found. Else the search goes from the present sizes: up, by the step that brings most for its mass, until everything passes, then down as long as
// something lighter passes, one size at a time and two against each other. What it ends at no single step makes lighter; that nothing lighter exists is then not
// proved. Everything is looked at under the loads that decide, and nothing passes but under all.

import (
	"context"
	"fmt"
	"slices"

	"lugwright/client/job"
	"lugwright/client/sweep"
	"lugwright/part"
)

// state is one value of each axis, by its number.
type state []int

// entry is one combination, and what is known of it.
type entry struct {
	at   state
	row  sweep.Row
	seen int  // as often as the deciding loads had grown when it was looked at; 0: it was only built
	part bool // looked at under one of them, and failed
	sure bool // looked at under all loads, or refused
}

func (e *entry) passes() bool { return e.row.Outcome == sweep.Passes }

// may says whether an entry passes as far as it was looked at. That nothing was checked under some loads says nothing of the others.
func (e *entry) may() bool {
	return e.passes() || !e.sure && e.row.Outcome == sweep.Outside && e.row.Governs == nil
}

type search struct {
	ctx     context.Context
	b       *sweep.Bench
	spec    *job.Bracket
	form    *Form
	axes    []sweep.Axis
	most    int
	loads   deciding
	entries []*entry
	known   map[string]*entry
	told    func(built int)
}

func (f *finder) search(ctx context.Context, spec *job.Bracket, form *Form, most int) *search {
	c := &search{ctx: ctx, b: f.b, spec: spec, form: form, most: most, loads: deciding{all: spec, hits: map[string]int{}}, known: map[string]*entry{}, told: f.Told}
	for i := range form.Sizes {
		c.axes = append(c.axes, form.Sizes[i].Axis)
	}
	return c
}

// run searches. None that is as heavy as a given row is wanted.
func (c *search) run(heaviest *sweep.Row) error {
	grid := sweep.Grid{Axes: c.axes}
	n := grid.Count()
	c.form.Whole = n <= c.most
	if c.form.Whole {
		return c.all(n, heaviest)
	}
	return c.walk(heaviest)
}

// all tries every combination.
func (c *search) all(n int, heaviest *sweep.Row) error {
	states := make([]state, n)
	for i := range states {
		s, rest := make(state, len(c.axes)), i
		for k := len(c.axes) - 1; k >= 0; k-- {
			size := len(c.axes[k].Values)
			s[k], rest = rest%size, rest/size
		}
		states[i] = s
	}
	if _, err := c.weigh(states); err != nil {
		return err
	}
	return c.settleLightest(heaviest)
}

// Variants go in pieces: large where they are only built, small where the search may end with each.
const (
	builtAtOnce   = 256
	checkedAtOnce = 16
)

// weigh builds the states that are not known yet, as many as are still allowed, and gives the entries of all that are known then.
func (c *search) weigh(states []state) ([]*entry, error) {
	var variants [][]part.Param
	var fresh []state
	for _, s := range states {
		key := fmt.Sprint(s)
		if _, known := c.known[key]; !known && len(c.entries)+len(fresh) < c.most {
			c.known[key] = nil // on its way
			variants, fresh = append(variants, c.values(s)), append(fresh, s)
		}
	}
	for from := 0; from < len(variants); from += builtAtOnce {
		to := min(from+builtAtOnce, len(variants))
		rows, err := c.b.Weigh(c.ctx, c.spec, variants[from:to])
		if err != nil {
			return nil, err
		}
		for i := range rows {
			rows[i].Index = len(c.entries)
			e := &entry{at: fresh[from+i], row: rows[i], sure: rows[i].Outcome == sweep.Refused}
			c.entries, c.known[fmt.Sprint(e.at)] = append(c.entries, e), e
		}
		c.tell(len(rows))
	}
	var out []*entry
	for _, s := range states {
		if e := c.known[fmt.Sprint(s)]; e != nil {
			out = append(out, e)
		}
	}
	return out, nil
}

func (c *search) values(s state) []part.Param {
	out := slices.Clone(c.form.Words)
	for k, i := range s {
		out = append(out, c.axes[k].Values[i])
		if with := c.form.Sizes[k].With; with != nil && with[i].Name != "" {
			out = append(out, with[i])
		}
	}
	return out
}

// look checks entries under the loads that decide: those that may pass, and where their excess is asked for all that were looked at under fewer loads.
func (c *search) look(list []*entry, excess bool) error {
	for i := 0; i < len(list) && c.loads.grown == 0; i++ {
		if err := c.settle(list[i : i+1]); err != nil {
			return err
		}
	}
	var asked []*entry
	for _, e := range list {
		if !e.sure && (e.seen < c.loads.grown && (e.seen == 0 || e.may()) || excess && (e.seen < c.loads.grown || e.part)) {
			asked = append(asked, e)
		}
	}
	if one := c.loads.worst(); one != nil && !excess {
		if err := c.check(asked, one, false); err != nil {
			return err
		}
		for _, e := range asked {
			e.part = !e.may()
		}
		asked = slices.DeleteFunc(asked, func(e *entry) bool { return e.part })
	}
	return c.check(asked, c.loads.bracket(), c.loads.rest)
}

// settle checks entries under all loads. What then fails, and did not under fewer, adds its loads to them.
func (c *search) settle(list []*entry) error {
	list = slices.DeleteFunc(slices.Clone(list), func(e *entry) bool { return e.sure })
	if err := c.check(list, c.spec, true); err != nil {
		return err
	}
	c.form.Settled += len(list)
	for _, e := range list {
		switch {
		case c.loads.grown == 0:
			c.loads.begin(&e.row)
		case !e.passes():
			c.loads.grow(&e.row)
		}
	}
	return nil
}

func (c *search) check(list []*entry, spec *job.Bracket, sure bool) error {
	if len(list) == 0 {
		return nil
	}
	variants := make([][]part.Param, len(list))
	for i, e := range list {
		variants[i] = e.row.Values
	}
	rows, err := c.b.Try(c.ctx, spec, variants)
	if err != nil {
		return err
	}
	c.form.Checked += len(list)
	c.tell(len(list))
	for i, e := range list {
		rows[i].Index = e.row.Index
		e.row, e.seen, e.part, e.sure = rows[i], c.loads.grown, false, sure || rows[i].Outcome == sweep.Refused
		c.loads.note(&e.row)
	}
	return nil
}

// lightest checks some entries, lightest first, until so many are known that pass under all loads, no two of them alike, and none as heavy as a given row.
func (c *search) lightest(list []*entry, want int, alike func(*entry) string, heaviest *sweep.Row) error {
	list = slices.DeleteFunc(slices.Clone(list), func(e *entry) bool {
		return e.row.Outcome == sweep.Refused || heaviest != nil && !lighter(&e.row, heaviest)
	})
	slices.SortStableFunc(list, lighterFirst)
	have := map[string]bool{}
	key := func(e *entry) string {
		if alike == nil {
			return fmt.Sprint(e.at)
		}
		return alike(e)
	}
	for len(list) > 0 && len(have) < want {
		list = slices.DeleteFunc(list, func(e *entry) bool { return have[key(e)] })
		next := list[:min(checkedAtOnce, len(list))]
		if err := c.look(next, false); err != nil {
			return err
		}
		var may []*entry // the first of each kind that may pass
		asked := map[string]bool{}
		for _, e := range next {
			if k := key(e); len(may) < want-len(have) && e.may() && !asked[k] {
				may, asked[k] = append(may, e), true
			}
		}
		if err := c.settle(may); err != nil {
			return err
		}
		for len(next) > 0 && len(have) < want && (next[0].sure || !next[0].may()) {
			if next[0].passes() {
				have[key(next[0])] = true
			}
			next, list = next[1:], list[1:]
		}
	}
	return nil
}

// tell says that so many were built or checked.
func (c *search) tell(n int) {
	if c.told != nil {
		c.told(n)
	}
}

// settleLightest looks for the lightest of all that were built, and its runners-up.
func (c *search) settleLightest(heaviest *sweep.Row) error {
	return c.lightest(c.entries, shown, func(e *entry) string { return bought(c.form, &e.row) }, heaviest)
}

// settled are the entries that are known to pass under all loads, lightest first.
func (c *search) settled() []*entry {
	list := slices.DeleteFunc(slices.Clone(c.entries), func(e *entry) bool { return !e.sure || !e.passes() })
	slices.SortStableFunc(list, lighterFirst)
	return list
}

// nearest is the entry that comes nearest to passing under all loads; nil when none was checked under all.
func (c *search) nearest() (*entry, error) {
	var err error
	for range mostNearest {
		e := least(c.entries)
		if e == nil || e.sure {
			break
		}
		if err = c.settle([]*entry{e}); err != nil {
			break
		}
	}
	return least(slices.DeleteFunc(slices.Clone(c.entries), func(e *entry) bool { return !e.sure })), err
}

// mostNearest is how many are checked under all loads to find the nearest, which few loads may flatter.
const mostNearest = 50

// least is the first entry with the least excess.
func least(list []*entry) *entry {
	var best *entry
	for _, e := range list {
		if best == nil || e.row.Excess < best.row.Excess {
			best = e
		}
	}
	return best
}

// walk goes from the present sizes up and down again, as long as that leads to something lighter.
func (c *search) walk(heaviest *sweep.Row) error {
	list, err := c.weigh([]state{c.start()})
	if err != nil {
		return err
	}
	at, err := c.up(list[0])
	for err == nil && at.passes() {
		if at, err = c.down(at); err != nil {
			return err
		}
		if err = c.settleLightest(nil); err != nil {
			return err
		}
		first := c.settled()[0]
		if !lighter(&first.row, &at.row) {
			return nil
		}
		at = first
	}
	if err != nil {
		return err
	}
	return c.settleLightest(heaviest)
}

// start is the present sizes; of what the shop does not have the next larger.
func (c *search) start() state {
	s := make(state, len(c.axes))
	for k := range c.axes {
		a := &c.axes[k]
		now := sweep.Of(a.Param, sweep.Current(c.spec, &a.Param)).Values[0]
		s[k] = len(a.Values) - 1
		for i, v := range a.Values {
			if sweep.Of(a.Param, now, v).Values[0] == now { // v is no smaller
				s[k] = i
				break
			}
		}
	}
	return s
}

// full says whether no more may be built.
func (c *search) full() bool { return len(c.entries) >= c.most }

// one are all states that differ from one in a single size.
func (c *search) one(s state) []state {
	var out []state
	for k := range c.axes {
		for i := range c.axes[k].Values {
			if i != s[k] {
				out = append(out, with(s, k, i))
			}
		}
	}
	return out
}

func with(s state, k, i int) state {
	out := slices.Clone(s)
	out[k] = i
	return out
}

// two are the states with one size a step to one side and another a step to the other or the same side.
func (c *search) two(s state, first, second int) []state {
	var out []state
	for k := range c.axes {
		for l := range c.axes {
			i, j := s[k]+first, s[l]+second
			if k == l || first == second && l < k || i < 0 || j < 0 || i >= len(c.axes[k].Values) || j >= len(c.axes[l].Values) {
				continue
			}
			out = append(out, with(with(s, k, i), l, j))
		}
	}
	return out
}

// firstOf tries ways to a next entry, one after the other, until one gives one.
func firstOf(ways ...func() (*entry, error)) (*entry, error) {
	for _, way := range ways {
		if e, err := way(); err != nil || e != nil {
			return e, err
		}
	}
	return nil, nil
}

// up goes on until everything passes under all loads, or no step brings it nearer.
func (c *search) up(at *entry) (*entry, error) {
	for {
		if err := c.look([]*entry{at}, true); err != nil {
			return at, err
		}
		if at.may() {
			if err := c.settle([]*entry{at}); err != nil {
				return at, err
			}
		}
		if at.passes() || c.full() {
			return at, nil
		}
		next, err := firstOf(
			func() (*entry, error) { return c.nearer(at, c.one(at.at)) },
			func() (*entry, error) { return c.nearer(at, c.two(at.at, 1, 1)) },
			func() (*entry, error) { return c.nearer(at, c.two(at.at, 1, -1)) },
		)
		if err != nil || next == nil {
			return at, err
		}
		at = next
	}
}

// nearer is the entry that brings most for the mass that it adds; one that passes comes before all others, the lightest first. Nil when none brings anything.
func (c *search) nearer(now *entry, states []state) (*entry, error) {
	list, err := c.weigh(states)
	if err != nil {
		return nil, err
	}
	if err := c.look(list, true); err != nil {
		return nil, err
	}
	var best *entry
	for _, e := range list {
		if e.row.Excess < now.row.Excess && (best == nil || better(&now.row, &e.row, &best.row)) {
			best = e
		}
	}
	return best, nil
}

// better compares two rows that are nearer to passing than a third.
func better(now, a, b *sweep.Row) bool {
	if passes := a.Outcome == sweep.Passes; passes != (b.Outcome == sweep.Passes) {
		return passes
	} else if passes {
		return lighter(a, b)
	}
	if now.Outcome == sweep.Refused { // nothing is known of what it weighs
		return a.Excess < b.Excess
	}
	addedA, addedB := a.Takes.KG-now.Takes.KG, b.Takes.KG-now.Takes.KG
	gainA, gainB := now.Excess-a.Excess, now.Excess-b.Excess
	if addedA <= 0 || addedB <= 0 {
		if (addedA <= 0) != (addedB <= 0) {
			return addedA <= 0
		}
		return gainA > gainB
	}
	return gainA*addedB > gainB*addedA
}

func lighter(a, b *sweep.Row) bool { return a.Takes.Compare(&b.Takes) < 0 }

func lighterFirst(a, b *entry) int { return a.row.Takes.Compare(&b.row.Takes) }

// down goes on as long as something lighter passes.
func (c *search) down(at *entry) (*entry, error) {
	for !c.full() {
		next, err := firstOf(
			func() (*entry, error) { return c.below(at, c.one(at.at)) },
			func() (*entry, error) { return c.below(at, c.two(at.at, -1, 1)) },
			func() (*entry, error) { return c.below(at, c.two(at.at, -1, -1)) },
		)
		if err != nil || next == nil {
			return at, err
		}
		at = next
	}
	return at, nil
}

// below is the lightest entry that passes and is lighter than one, nil when there is none.
func (c *search) below(at *entry, states []state) (*entry, error) {
	list, err := c.weigh(states)
	if err != nil {
		return nil, err
	}
	if err := c.lightest(list, 1, nil, &at.row); err != nil {
		return nil, err
	}
	var best *entry
	for _, e := range list {
		if e.sure && e.passes() && lighter(&e.row, &at.row) && (best == nil || lighter(&e.row, &best.row)) {
			best = e
		}
	}
	return best, nil
}
