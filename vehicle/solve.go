package vehicle

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"lugwright/part"
	"lugwright/strength/statics"
)

// Component is one component of a reaction on the body: by stiffness (or by equilibrium alone), and the least and most that it can be.
type Component struct {
	Direction         string // x, y, z, or rx, ry, rz for couples
	Value, Low, High  float64
	LowOpen, HighOpen bool    // equilibrium and the rules set no bound on that side; Low or High is then Value
	PlusMinus         float64 // what the masses' doubt adds to Value, the same supports acting
}

// Reaction is what a mount does to the body.
type Reaction struct {
	Mount         string
	Force, Moment part.Vec // by stiffness, N and N*mm, at the mount
	Components    []Component
	LiftedOff     bool // a support that only pushes up, and does not touch
	HoldsDown     bool // the body would lift here: the mount pulls it down
	MayHoldDown   bool // it does at one end of its range
}

// CaseResult is one state under one case.
type CaseResult struct {
	State, Case string
	BodyKG      float64
	CG          part.Vec // of the body, contents shifted
	Held        bool
	Unheld      string   // which motion the load drives, where it is not held
	Parts       []string // mounts that the body lifts off in that motion
	Reactions   []Reaction
	ResidualN   float64 // what is left of the load: rounding
	ResidualNMM float64
	Notes       []string
}

// Result is a body on its mounts through all states and cases.
type Result struct {
	Scheme    Scheme
	Cases     []CaseResult // states in order, cases in order within each
	Loads     []MountLoads
	Unchecked []string
}

// maxSolves bounds the work of one request.
const maxSolves = 50000

// Solve gives the reactions of a body's mounts and the loads on their brackets for all states and cases.
func Solve(v *Vehicle, b *Body, states []State, cases []Case) (Result, error) {
	return checkedSolve(context.Background(), v, b, states, cases, withLoads)
}

// React gives the reactions by stiffness alone, without their ranges, what the masses' doubt adds, and the loads on brackets: for many places of a
// mount, at far less work. It stops with the context.
func React(ctx context.Context, v *Vehicle, b *Body, states []State, cases []Case) (Result, error) {
	return checkedSolve(ctx, v, b, states, cases, byStiffness)
}

// depth is how much is found.
type depth int

const (
	byStiffness depth = iota
	withRanges        // and what the masses' doubt adds
	withLoads         // on brackets
)

func checkedSolve(ctx context.Context, v *Vehicle, b *Body, states []State, cases []Case, deep depth) (Result, error) {
	c := &checker{}
	c.vehicle(v)
	c.states(v, states)
	c.body("body", b)
	c.cases(cases)
	if err := c.Err(); err != nil {
		return Result{}, err
	}
	return solve(ctx, "body", v, b, states, cases, deep, nil)
}

// solve does so once all is checked.
func solve(ctx context.Context, path string, v *Vehicle, b *Body, states []State, cases []Case, deep depth, shared func(Shared)) (Result, error) {
	m, err := newModel(b)
	if err != nil {
		return Result{}, &part.FieldError{Field: path + ".mounts", Found: err.Error(), Accept: "mounts of a sensible size and place"}
	}
	if n := len(states) * len(cases) * (len(m.choices) + 1); n > maxSolves {
		return Result{}, &part.FieldError{Field: "states", Found: fmt.Sprintf("%d states, %d cases and %d ways of sharing", len(states), len(cases), len(m.choices)+1),
			Accept: fmt.Sprintf("at most %d in all: fewer states or cases, or shares stated", maxSolves)}
	}
	r := Result{Scheme: m.scheme(), Unchecked: unchecked(b)}
	var collect *collector
	if deep == withLoads {
		collect = newCollector(m)
	}
	share, err := newSharer(m, shared)
	if err != nil {
		return Result{}, &part.FieldError{Field: path + ".mounts", Found: err.Error(), Accept: "mounts of a sensible size and place"}
	}
	name, laden := carrier(b.Name), false
	for i := range states {
		if err := ctx.Err(); err != nil {
			return Result{}, err
		}
		riding := on(v.masses(&states[i]), name)
		laden = laden || len(riding) > 0
		for k := range cases {
			one := CaseResult{State: states[i].Name, Case: cases[k].ID, Held: true, Notes: []string{"nothing rides on it in this state"}}
			if len(riding) > 0 {
				if one, err = m.solveCase(&states[i], &cases[k], riding, deep, collect, share); err != nil {
					return Result{}, failed(path, &states[i], &cases[k], err)
				}
			}
			r.Cases = append(r.Cases, one)
		}
	}
	if !laden {
		return Result{}, &part.FieldError{Field: path + ".name", Found: fmt.Sprintf("nothing rides on %q in any state", name), Accept: "a body that carries an item or a tank"}
	}
	if collect != nil {
		r.Loads = collect.loads()
	}
	return r, nil
}

func unchecked(b *Body) []string {
	out := []string{
		"the frame and the body are taken as rigid: how the frame's twist and bending load the mounts",
		"friction, and the preload of springs and rubber",
		"shock: cases are static accelerations; their range of choice is the load set's",
		"where the masses lie: positions count as stated",
		"what the masses' doubt adds to the loads on brackets: loads take the masses as stated, each reaction gives its plus-minus beside",
	}
	for i := range b.Mounts {
		if m := &b.Mounts[i]; m.X.GapMM+m.Y.GapMM+m.Z.GapMM > 0 {
			return append(out, "the blow when a gap closes")
		}
	}
	return out
}

// failed turns an error of the statics into ours, for an indeterminacy that rounding swallows.
func failed(path string, s *State, c *Case, err error) error {
	return &part.FieldError{Field: path + ".mounts", Found: fmt.Sprintf("state %q, case %q: %v", s.Name, c.ID, err), Accept: "mounts, stiffnesses and gaps nearer to each other in size"}
}

// solveCase finds the reactions of one state and case, and hands the loads of every choice to the collector and the sharer, if there are such.
func (m *model) solveCase(s *State, c *Case, riding []mass, deep depth, collect *collector, share *sharer) (CaseResult, error) {
	out := CaseResult{State: s.Name, Case: c.ID, Held: true}
	load := statics.Wrench{}
	wrenches := make([]statics.Wrench, len(riding))
	for i, x := range riding {
		at := x.at
		if x.tank != nil {
			var note string
			if at, note = x.tank.contentsAt(s.level(x.tank.Name), c.AccelG); note != "" {
				out.Notes = append(out.Notes, note)
			}
		}
		out.BodyKG += x.kg
		out.CG = out.CG.AddScaled(x.kg, at)
		wrenches[i] = statics.Wrench{F: statics.Vec3(c.AccelG.Scale(x.kg * G)), At: statics.Vec3(at.Sub(m.origin))}.MovedTo(statics.Vec3{})
		load = load.Add(wrenches[i])
	}
	out.CG = out.CG.Scale(1 / out.BodyKG)
	got, err := m.springs.body.React(load)
	var un *statics.UnheldError
	if errors.As(err, &un) {
		out.Held = false
		out.Unheld, out.Parts = m.unheld(un, m.springs.actorsOf(un.Parts))
		if collect != nil {
			collect.missing(s, c, out.Unheld)
		}
		return out, nil
	}
	if err != nil {
		return out, err
	}
	out.ResidualN, out.ResidualNMM = got.Residual.F.Norm(), got.Residual.M.Norm()
	value := m.tidy(m.springs.sum(got.R, len(m.actors)), load)
	ranges := make([]statics.Extreme, len(m.actors))
	for i, x := range value {
		ranges[i] = statics.Extreme{Lo: x, Hi: x}
	}
	if deep == byStiffness {
		out.Reactions = m.reactions(value, ranges, make([]float64, len(value)), got, load.F.Norm())
		return out, nil
	}
	if m.surplus > 0 {
		var note string
		if ranges, note, err = m.ranges(load); err != nil {
			return out, err
		}
		if note != "" {
			out.Notes = append(out.Notes, note)
		}
		for i, x := range value {
			ranges[i].Lo, ranges[i].Hi = m.round(i, min(ranges[i].Lo, x), load), m.round(i, max(ranges[i].Hi, x), load)
		}
	}
	pm, known := m.doubt(got, riding, wrenches)
	if !known {
		out.Notes = append(out.Notes, "masses at the ends of their ranges would bring other supports to act: their plus-minus is not carried to these reactions")
	}
	out.Reactions = m.reactions(value, ranges, pm, got, load.F.Norm())
	if share != nil {
		if err := share.put(s, c, load); err != nil {
			return out, err
		}
	}
	if collect == nil {
		return out, nil
	}
	return out, collect.add(s, c, load, value)
}

// actorsOf maps springs to their actors.
func (s *spring) actorsOf(holds []int) []int {
	var out []int
	for _, h := range holds {
		out = append(out, s.actor[h])
	}
	return out
}

// sum gives each actor's reaction along the axis.
func (s *spring) sum(r []float64, actors int) []float64 {
	out := make([]float64, actors)
	for k, x := range r {
		out[s.actor[k]] += s.sign[k] * x
	}
	return out
}

// tidy takes rounding off reactions that are none.
func (m *model) tidy(value []float64, load statics.Wrench) []float64 {
	for i, x := range value {
		value[i] = m.round(i, x, load)
	}
	return value
}

func (m *model) round(i int, x float64, load statics.Wrench) float64 {
	speck := 1e-9 * load.F.Norm()
	if m.actors[i].couple() {
		speck *= m.lengthMM
	}
	if math.Abs(x) < speck {
		return 0
	}
	return x
}

// doubt is what the ranges of the masses do to each reaction, all against it.
func (m *model) doubt(got statics.Reactions, riding []mass, wrenches []statics.Wrench) ([]float64, bool) {
	out := make([]float64, len(m.actors))
	following := m.followingOf(got.Acting)
	for i, w := range wrenches {
		k := riding[i].pm / riding[i].kg
		if k == 0 {
			continue
		}
		w.F, w.M = w.F.Scale(k), w.M.Scale(k)
		more, err := following.Change(w)
		if err != nil {
			return make([]float64, len(m.actors)), false
		}
		for a, x := range m.springs.sum(more, len(m.actors)) {
			out[a] += math.Abs(x)
		}
	}
	return out, true
}

// followingOf keeps what it made ready: few sets of supports act in all states and cases.
func (m *model) followingOf(acting []bool) *statics.Following {
	key := fmt.Sprint(acting)
	if m.following[key] == nil {
		m.following[key] = m.springs.body.Following(acting)
	}
	return m.following[key]
}

// reactions deals the actors' reactions out to the mounts.
func (m *model) reactions(value []float64, ranges []statics.Extreme, pm []float64, got statics.Reactions, size float64) []Reaction {
	out := make([]Reaction, len(m.body.Mounts))
	for i := range out {
		out[i].Mount = m.body.Mounts[i].Name
	}
	speck := 1e-9 * size
	touching := make([]bool, len(m.actors))
	for k, a := range m.springs.actor {
		touching[a] = touching[a] || got.Acting[k]
	}
	for dir := range 6 {
		for i := range m.actors {
			for _, p := range m.actors[i].pieces {
				if p.dir != dir {
					continue
				}
				r := &out[p.mount]
				x := Component{Direction: directions[dir], Value: p.factor * value[i], Low: p.factor * ranges[i].Lo, High: p.factor * ranges[i].Hi,
					LowOpen: ranges[i].LoOpen, HighOpen: ranges[i].HiOpen, PlusMinus: p.factor * pm[i]}
				r.Components = append(r.Components, x)
				if dir < 3 {
					r.Force = r.Force.AddScaled(x.Value, axes[dir])
				} else {
					r.Moment = r.Moment.AddScaled(x.Value, axes[dir-3])
				}
				if dir == 2 {
					r.HoldsDown = x.Value < -speck
					r.MayHoldDown = x.Low < -speck || x.LowOpen
					r.LiftedOff = m.actors[i].way == PlusOnly && !touching[i]
				}
			}
		}
	}
	return out
}

// programs are the linear programmes whose extremes are a case's ranges: by the rules of sharing, without them, with the couples, and with slack.
type programs struct{ shared, alone, coupled, slack []*statics.Programme }

func (m *model) newPrograms() programs {
	idle := make([]statics.Way, len(m.actors))
	for _, a := range m.couples {
		idle[a] = statics.Idle
	}
	signs := m.signs(idle)
	return programs{m.net.Programmes(signs), m.net.Programmes([][]statics.Way{idle}), m.net.Programmes([][]statics.Way{nil}), m.net.Programmes(m.slacks(signs))}
}

// ranges are the extremes by equilibrium, one-way supports and the rules of sharing and slack.
func (m *model) ranges(load statics.Wrench) ([]statics.Extreme, string, error) {
	note := ""
	out, err := widest(load, m.programs.shared, nil)
	if err == nil && out == nil && len(m.groups) > 0 {
		note = "mounts that share must work against each other to balance this: 0 to 100 % does not bound them"
		out, err = widest(load, m.programs.alone, nil)
	}
	if err == nil && out == nil {
		note = "without the mounts' couples nothing balances this: they are counted in the ranges"
		out, err = widest(load, m.programs.coupled, nil)
	}
	if err == nil && out == nil {
		err = errors.New("the mounts hold this by their stiffness, but which reactions balance it is lost in rounding")
	}
	if err != nil {
		return nil, note, err
	}
	m.close(load, out)
	for i := range out {
		if m.sign[i] < 0 {
			out[i] = statics.Extreme{Lo: -out[i].Hi, Hi: -out[i].Lo, LoOpen: out[i].HiOpen, HiOpen: out[i].LoOpen}
		}
		if out[i].LoOpen { // the caller brings the stiffness solution in
			out[i].Lo = math.Inf(1)
		}
		if out[i].HiOpen {
			out[i].Hi = math.Inf(-1)
		}
	}
	return out, note, nil
}

// signs gives, for each combination of the groups' signs, the ways in which their members may act: none against another.
func (m *model) signs(idle []statics.Way) [][]statics.Way {
	out := [][]statics.Way{idle}
	for _, g := range m.groups[:min(len(m.groups), 6)] {
		var next [][]statics.Way
		for _, w := range out {
			for _, way := range []statics.Way{statics.PushOnly, statics.PullOnly} {
				ways := slices.Clone(w)
				for _, a := range g.actors {
					ways[a] = way
					if m.actors[a].way == MinusOnly { // its reaction counts the other way
						ways[a] = statics.PushOnly + statics.PullOnly - way
					}
				}
				next = append(next, ways)
			}
		}
		out = next
	}
	return out
}

// widest is the hull of the extremes over several programmes; nil when none balances the load.
func widest(load statics.Wrench, programs []*statics.Programme, wanted []bool) ([]statics.Extreme, error) {
	var out []statics.Extreme
	for _, p := range programs {
		e, err := p.Extremes(load, wanted)
		var un *statics.UnheldError
		if errors.As(err, &un) {
			continue
		}
		if err != nil {
			return nil, err
		}
		if out == nil {
			out = e
			continue
		}
		for i := range e {
			out[i] = hull(out[i], e[i])
		}
	}
	return out, nil
}

func hull(a, b statics.Extreme) statics.Extreme {
	return statics.Extreme{Lo: min(a.Lo, b.Lo), Hi: max(a.Hi, b.Hi), LoOpen: a.LoOpen || b.LoOpen, HiOpen: a.HiOpen || b.HiOpen}
}

// close finds ends for the open ones by slack.
func (m *model) close(load statics.Wrench, out []statics.Extreme) {
	open, some := make([]bool, len(out)), false
	for i, e := range out {
		open[i] = e.LoOpen || e.HiOpen
		some = some || open[i]
	}
	if !some {
		return
	}
	closed, err := widest(load, m.programs.slack, open)
	if err != nil || closed == nil {
		return
	}
	for i := range out {
		if open[i] {
			out[i] = closed[i]
		}
	}
}

// slacks gives the ways with each choice of slack from every family resting.
func (m *model) slacks(signs [][]statics.Way) [][]statics.Way {
	if len(m.slack) == 0 {
		return nil
	}
	rests := [][]int{nil}
	for _, family := range m.slack {
		var next [][]int
		for _, a := range rests {
			for _, b := range family {
				next = append(next, append(slices.Clone(a), b...))
			}
		}
		rests = next
	}
	var sets [][]statics.Way
	known := map[string]bool{}
	for _, resting := range rests {
		for _, w := range signs {
			w = slices.Clone(w)
			for _, a := range resting {
				w[a] = statics.Idle
			}
			if key := fmt.Sprint(w); !known[key] { // the signs of what rests do not matter
				known[key], sets = true, append(sets, w)
			}
		}
	}
	return sets
}
