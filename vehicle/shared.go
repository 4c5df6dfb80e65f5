package vehicle

// What the mounts of a body take together when one of those that share takes all: for what they stand on.

import (
	"lugwright/part"
	"lugwright/strength/statics"
)

// Shared are the forces on a body's brackets together, in one state and case under one choice of who takes what is shared: the mounts in order. What bears
// more than equilibrium needs beside the sharing acts by stiffness.
type Shared struct {
	State, Case string
	Share       string // who takes what, as far as it changes any force
	Forces      []part.Vec
}

// sharer hands on what the mounts take together.
type sharer struct {
	m       *model
	choices []choice
	to      func(Shared)
}

// newSharer is nil where nothing is shared, or nobody asks.
func newSharer(m *model, to func(Shared)) (*sharer, error) {
	if to == nil || len(m.groups) == 0 {
		return nil, nil
	}
	choices, err := m.choicesOf(nil)
	return &sharer{m, choices, to}, err
}

// put does so for one state and case.
func (h *sharer) put(s *State, k *Case, load statics.Wrench) error {
	solved, err := h.m.solveChoices(h.choices, load)
	if err != nil {
		return err
	}
	of := sizes(h.m.groups, nil)
	some := make([]bool, len(of)) // what changes the load of any mount
	for mount := range h.m.body.Mounts {
		for axis, here := range matters(h.choices, of, solved, mount, load.F.Norm()) {
			some[axis] = some[axis] || here
		}
	}
	known := map[string]bool{}
	for i, loads := range solved {
		share := h.m.shareName(h.choices[i].pick, some)
		if loads == nil || known[share] {
			continue
		}
		known[share] = true
		if share == "" {
			share = "however they share"
		}
		one := Shared{State: s.Name, Case: k.ID, Share: share}
		for _, l := range loads {
			one.Forces = append(one.Forces, l.force)
		}
		h.to(one)
	}
	return nil
}
