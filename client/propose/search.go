package propose

// This file searches the sizes of one form. Where all combinations are few enough they are all tried. Else the search goes from the present sizes: up, by the
// step that brings most for its mass, until everything passes, then down as long as something lighter passes, one size at a time and two against each other.
// What it ends at no single step makes lighter; that nothing lighter exists is then not proved.

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

type climber struct {
	ctx   context.Context
	b     *sweep.Bench
	spec  *job.Bracket
	words []part.Param
	axes  []sweep.Axis
	most  int
	rows  []sweep.Row
	known map[string]int // a state's place among rows
}

func (f *finder) search(ctx context.Context, spec *job.Bracket, form *Form, most int) error {
	c := &climber{ctx: ctx, b: f.b, spec: spec, words: form.Words, most: most, known: map[string]int{}}
	for i := range form.Sizes {
		c.axes = append(c.axes, form.Sizes[i].Axis)
	}
	var err error
	grid := sweep.Grid{Axes: c.axes}
	if n := grid.Count(); n <= most {
		err = c.all(n)
		form.Whole = err == nil
	} else {
		err = c.walk()
	}
	form.Rows = c.rows
	return err
}

// all tries every combination.
func (c *climber) all(n int) error {
	states := make([]state, n)
	for i := range states {
		s, rest := make(state, len(c.axes)), i
		for k := len(c.axes) - 1; k >= 0; k-- {
			size := len(c.axes[k].Values)
			s[k], rest = rest%size, rest/size
		}
		states[i] = s
	}
	return c.try(states)
}

// inMessage is how many variants are tried at once.
const inMessage = 256

// try tries the states that are not known yet, as many as are still allowed.
func (c *climber) try(states []state) error {
	var variants [][]part.Param
	for _, s := range states {
		key := fmt.Sprint(s)
		if _, known := c.known[key]; known {
			continue
		}
		if len(c.rows)+len(variants) >= c.most {
			break
		}
		c.known[key], variants = len(c.rows)+len(variants), append(variants, c.values(s))
	}
	for from := 0; from < len(variants); from += inMessage {
		to := min(from+inMessage, len(variants))
		rows, err := c.b.Try(c.ctx, c.spec, variants[from:to])
		if err != nil {
			return err
		}
		for i := range rows {
			rows[i].Index = len(c.rows)
			c.rows = append(c.rows, rows[i])
		}
	}
	return nil
}

func (c *climber) values(s state) []part.Param {
	out := slices.Clone(c.words)
	for k, i := range s {
		out = append(out, c.axes[k].Values[i])
	}
	return out
}

// of is a state's row, nil when it was not tried.
func (c *climber) of(s state) *sweep.Row {
	if i, ok := c.known[fmt.Sprint(s)]; ok && i < len(c.rows) {
		return &c.rows[i]
	}
	return nil
}

// full says whether no more may be tried.
func (c *climber) full() bool { return len(c.rows) >= c.most }

func (c *climber) walk() error {
	at := c.start()
	if err := c.try([]state{at}); err != nil {
		return err
	}
	at, err := c.up(at)
	if err != nil || c.of(at) == nil || c.of(at).Outcome != sweep.Passes {
		return err
	}
	return c.down(at)
}

// start is the present sizes; of what the shop does not have the next larger.
func (c *climber) start() state {
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

// one are all states that differ from one in a single size.
func (c *climber) one(s state) []state {
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
func (c *climber) two(s state, first, second int) []state {
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

// up goes on until everything passes, or no step brings it nearer.
func (c *climber) up(at state) (state, error) {
	for !c.full() && c.of(at).Outcome != sweep.Passes {
		next, err := c.nearer(at, c.one(at))
		if err == nil && next == nil {
			next, err = c.nearer(at, c.two(at, 1, 1))
		}
		if err == nil && next == nil {
			next, err = c.nearer(at, c.two(at, 1, -1))
		}
		if err != nil || next == nil {
			return at, err
		}
		at = next
	}
	return at, nil
}

// nearer is the state that brings most for the mass that it adds; one that passes comes before all others, the lightest first. Nil when none brings anything.
func (c *climber) nearer(at state, states []state) (state, error) {
	if err := c.try(states); err != nil {
		return nil, err
	}
	now := c.of(at)
	var best state
	var bestRow *sweep.Row
	for _, s := range states {
		r := c.of(s)
		if r == nil || !(r.Excess < now.Excess) {
			continue
		}
		if best == nil || better(now, r, bestRow) {
			best, bestRow = s, r
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

// down goes on as long as something lighter passes.
func (c *climber) down(at state) error {
	for !c.full() {
		next, err := c.lightest(at, c.one(at))
		if err == nil && next == nil {
			next, err = c.lightest(at, c.two(at, -1, 1))
		}
		if err == nil && next == nil {
			next, err = c.lightest(at, c.two(at, -1, -1))
		}
		if err != nil || next == nil {
			return err
		}
		at = next
	}
	return nil
}

// lightest is the lightest state that passes and is lighter than one, nil when there is none.
func (c *climber) lightest(at state, states []state) (state, error) {
	if err := c.try(states); err != nil {
		return nil, err
	}
	best, bestRow := state(nil), c.of(at)
	for _, s := range states {
		if r := c.of(s); r != nil && r.Outcome == sweep.Passes && lighter(r, bestRow) {
			best, bestRow = s, r
		}
	}
	return best, nil
}
