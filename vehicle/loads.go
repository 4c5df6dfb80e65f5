package vehicle

import (
	"errors"
	"math"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength/statics"
)

// Load is what one state and case do to the bracket at a mount: minus the mount's reaction, at the mount's position.
type Load struct {
	Name        string // case, state and share
	Case, State string
	Share       string // who takes what the mounts share; empty where that does not matter here
	Level       part.Level
	Source      string
	OnUltimate  float64 // the factor that the case's source asks for on tensile strength; 0: none
	Force       part.Vec
	Moment      part.Vec
	Uplift      bool     // the body pulls the bracket up
	Same        []string // names of loads that are equal
}

// MountLoads are all loads on one mount's bracket.
type MountLoads struct {
	Mount   string
	Loads   []Load
	Missing []string // states and cases that no reactions balance: there is no load to design for until the mounts hold them
}

// collector gathers the loads of every mount.
type collector struct {
	m     *model
	out   []MountLoads
	known []map[sameAs]int // by mount: where a load is
}

func newCollector(m *model) *collector {
	c := &collector{m: m}
	for i := range m.body.Mounts {
		c.out = append(c.out, MountLoads{Mount: m.body.Mounts[i].Name})
		c.known = append(c.known, map[sameAs]int{})
	}
	return c
}

func (c *collector) loads() []MountLoads { return c.out }

func (c *collector) missing(s *State, k *Case, why string) {
	for i := range c.out {
		c.out[i].Missing = append(c.out[i].Missing, k.ID+", "+s.Name+": "+why)
	}
}

// bracketLoad is force and moment on a bracket.
type bracketLoad struct{ force, moment part.Vec }

// onBrackets is minus the actors' reactions, by mount.
func (m *model) onBrackets(value []float64) []bracketLoad {
	out := make([]bracketLoad, len(m.body.Mounts))
	for i := range m.actors {
		for _, p := range m.actors[i].pieces {
			b, x := &out[p.mount], 0-p.factor*value[i]
			if p.dir < 3 {
				b.force = b.force.AddScaled(x, axes[p.dir])
			} else {
				b.moment = b.moment.AddScaled(x, axes[p.dir-3])
			}
		}
	}
	return out
}

// add takes the loads of one state and case: those of every choice, then those by stiffness.
func (c *collector) add(s *State, k *Case, load statics.Wrench, byStiffness []float64) error {
	m := c.m
	solved, err := m.solveChoices(m.choices, load)
	if err != nil {
		return err
	}
	stiff := m.onBrackets(byStiffness)
	size := load.F.Norm()
	for mount := range c.out {
		matters := matters(m.choices, m.axes(), solved, mount, size)
		for i, loads := range solved {
			if loads != nil {
				c.keep(mount, s, k, m.shareName(m.choices[i].pick, matters), loads[mount], size)
			}
		}
		share := ""
		if len(m.choices) > 0 {
			share = "shared by stiffness"
		}
		c.keep(mount, s, k, share, stiff[mount], size)
	}
	return nil
}

// solveChoices gives the loads on all brackets under each choice, nil where nothing balances the load that way.
func (m *model) solveChoices(choices []choice, load statics.Wrench) ([][]bracketLoad, error) {
	solved := make([][]bracketLoad, len(choices))
	for i := range choices {
		got, err := choices[i].on.body.React(load)
		var un *statics.UnheldError
		if errors.As(err, &un) {
			continue
		}
		if err != nil {
			return nil, err
		}
		solved[i] = m.onBrackets(m.tidy(choices[i].on.sum(got.R, len(m.actors)), load))
	}
	return solved, nil
}

// matters says which of a choice's picks change a mount's load.
func matters(choices []choice, of []int, solved [][]bracketLoad, mount int, size float64) []bool {
	if len(solved) == 0 {
		return nil
	}
	out := make([]bool, len(of))
	stride := 1
	for axis, n := range of {
		for i := range solved {
			if choices[i].pick[axis] < 0 || len(solved) != product(of) { // one at a time: all matter
				out[axis] = true
				continue
			}
			if first := i - choices[i].pick[axis]*stride; solved[i] != nil && solved[first] != nil {
				out[axis] = out[axis] || grains(solved[i][mount], 1e-6*size) != grains(solved[first][mount], 1e-6*size)
			} else {
				out[axis] = true
			}
		}
		stride *= n
	}
	return out
}

func product(of []int) int {
	n := 1
	for _, k := range of {
		if n *= k; n > maxChoices {
			break
		}
	}
	return n
}

// shareName says who takes what, as far as it matters.
func (m *model) shareName(pick []int, matters []bool) string {
	var out []string
	for axis, k := range pick {
		switch {
		case !matters[axis] || k < 0:
		case axis < len(m.groups):
			g := m.groups[axis]
			out = append(out, sideways[g.dir]+" all at "+m.names(g.actors[k : k+1])[0])
		default:
			var slack []string
			for _, a := range m.slack[axis-len(m.groups)][k] {
				slack = append(slack, m.what(a))
			}
			out = append(out, list(slack)+" slack")
		}
	}
	if len(m.couples) > 0 {
		out = append(out, "couples slack")
	}
	return strings.Join(out, ", ")
}

// grain is a load in whole units of its size, moments at 1 m: equal ones compare equal.
type grain [6]float64

func grains(b bracketLoad, unit float64) grain {
	r := func(x float64) float64 { return math.Round(x/unit) + 0 }
	return grain{r(b.force.X), r(b.force.Y), r(b.force.Z), r(b.moment.X / 1000), r(b.moment.Y / 1000), r(b.moment.Z / 1000)}
}

// sameAs is what makes two loads on a mount equal.
type sameAs struct {
	level      part.Level
	onUltimate float64
	load       grain
}

// keep adds a load, or its name to one that is equal at the same level, to 1 mN.
func (c *collector) keep(mount int, s *State, k *Case, share string, b bracketLoad, size float64) {
	l := Load{Name: k.ID + ", " + s.Name, Case: k.ID, State: s.Name, Share: share, Level: k.Level, Source: k.Source, OnUltimate: k.OnUltimate,
		Force: b.force, Moment: b.moment, Uplift: b.force.Z > 1e-6*size}
	if share != "" {
		l.Name += ", " + share
	}
	id := sameAs{l.Level, l.OnUltimate, grains(b, 1e-3)}
	if at, known := c.known[mount][id]; known {
		first := &c.out[mount].Loads[at]
		recent := first.Same[max(0, len(first.Same)-len(c.m.choices)-1):] // as many as one state and case can add
		if first.Name != l.Name && (first.Case != l.Case || first.State != l.State) && !slices.Contains(recent, l.Name) {
			first.Same = append(first.Same, l.Name)
		}
		return
	}
	c.known[mount][id] = len(c.out[mount].Loads)
	c.out[mount].Loads = append(c.out[mount].Loads, l)
}
