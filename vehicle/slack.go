package vehicle

import (
	"slices"

	"lugwright/strength/statics"
)

// findSlack lists the sets that may rest once one member of each group is left: as many as are too many, so that what acts is determinate. What holds
// z, by which the body cannot heave, pitch or roll, is one family and what holds x and y another, so that nobody counts on fore-aft mounts a little
// above each other to hold the body against pitching. A group rests as a whole. Sets whose remainder is nearly in line are passed over.
func (m *model) findSlack() {
	idle := append(m.resting(m.groups, make([]int, len(m.groups))), m.couples...)
	var families [2][]int
	for i, a := range m.actors {
		if slices.Contains(idle, i) || a.couple() {
			continue
		}
		f := 1
		if a.pieces[0].dir == 2 {
			f = 0
		}
		families[f] = append(families[f], i)
	}
	left := len(m.actors) - len(idle) - m.rank
	for f, family := range families {
		k := m.spare(family, f == 0)
		if k == 0 {
			continue
		}
		left -= k
		sets := m.slackOf(family, k, idle)
		if sets == nil {
			m.tooMany = true
			continue
		}
		m.slack = append(m.slack, sets)
	}
	m.tooMany = m.tooMany || left > 0
}

// spare is how many of a family are too many for its own three motions.
func (m *model) spare(family []int, vertical bool) int {
	var holds []statics.Hold
	for _, i := range family {
		h, _ := m.actors[i].net()
		if vertical {
			h.Force.X, h.Force.Y, h.Moment.Z = 0, 0, 0
		} else {
			h.Force.Z, h.Moment.X, h.Moment.Y = 0, 0, 0
		}
		holds = append(holds, h)
	}
	b, err := statics.NewRigidBody(holds, m.lengthMM)
	if err != nil {
		return 0
	}
	return len(family) - b.Rank()
}

// slackOf lists the sets of k of a family that may rest besides those that do; nil when they are too many, or none.
func (m *model) slackOf(family []int, k int, idle []int) [][]int {
	var out [][]int
	if binomial(len(family), k) > 2000 {
		return nil
	}
	for _, set := range subsets(len(family), k) {
		var resting, all []int
		for _, i := range set {
			resting = append(resting, m.unit(family[i])...)
		}
		all = append(append(all, idle...), resting...)
		slices.Sort(all)
		if m.holds(slices.Compact(all)) {
			out = append(out, resting)
		}
	}
	if len(out) > maxChoices {
		return nil
	}
	return out
}

func (m *model) unit(actor int) []int {
	for _, g := range m.groups {
		if slices.Contains(g.actors, actor) {
			return g.actors
		}
	}
	return []int{actor}
}

func binomial(n, k int) int {
	k = min(k, n-k)
	out := 1
	for i := range k {
		if out = out * (n - i) / (i + 1); out > 1e6 {
			break
		}
	}
	return out
}

func subsets(n, k int) [][]int {
	if k == 0 {
		return [][]int{nil}
	}
	var out [][]int
	for last := k - 1; last < n; last++ {
		for _, s := range subsets(last, k-1) {
			out = append(out, append(slices.Clone(s), last))
		}
	}
	return out
}
