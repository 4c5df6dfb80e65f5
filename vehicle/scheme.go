package vehicle

import (
	"math"
	"slices"

	"lugwright/part"
	"lugwright/strength/statics"
)

// FreeMotion is a motion that no mount holds.
type FreeMotion struct {
	Words       string
	ShiftMM     part.Vec // of the mounts' middle, for a turn of TurnRad, or of 1 mm
	TurnRad     part.Vec
	IsTurn      bool // about an axis through Point; else it slides
	Point, Axis part.Vec
}

// Sharing is a direction that several mounts hold and any of them could hold alone, so that each takes from 0 to 100 % of it.
type Sharing struct {
	Direction string
	Mounts    []string
	Words     string
}

// Scheme is what a body's mounts hold, whatever the load.
type Scheme struct {
	Body string
	// Determinate: equilibrium alone fixes every reaction to any load, stated shares counted. Surplus is how many restraints there are beyond that.
	Determinate bool
	Surplus     int
	Free        []FreeMotion
	HeldTwice   []string
	Sharing     []Sharing
	// SlackTried: each way of slack of the Surplus that sharing leaves was tried. False with a surplus left: reactions may have open ends.
	SlackTried bool
	Choices    int  // solutions for each state and case, the one by stiffness counted
	OneAtATime bool // all choices together are too many: each is made with the others by stiffness
	Words      []string
}

const (
	maxChoices = 64
	stationMM  = 100 // mounts nearer than this along the vehicle stand at one station
	lineMM     = 100
	leastGrip  = 0.05 // of mounts that are counted on alone: about 150 mm of width on 3 m of length
)

// group is a sharing: its members' actors, each of which can act alone.
type group struct {
	dir    int
	actors []int
}

// model is a rig with all that does not depend on the load.
type model struct {
	*rig
	net     *statics.RigidBody // one hold for each actor
	sign    []float64          // of its reaction along the axis
	springs *spring
	rank    int
	grip    float64 // what is left must hold the body at least this firmly
	surplus int     // of the actors
	groups  []group
	couples []int     // actors that hold turning and are not needed
	slack   [][][]int // by family: sets of actors that may rest together while the others still hold the body
	tooMany bool      // there is a surplus beyond the groups that no list of slack covers
	choices []choice
}

// spring is the body on the springs of some actors.
type spring struct {
	body  *statics.RigidBody
	actor []int
	sign  []float64
}

// choice is one way of sharing: for each group the member that acts, then which slack; -1 is by stiffness.
type choice struct {
	pick []int
	on   *spring
}

func newModel(b *Body) (*model, error) {
	m := &model{rig: newRig(b)}
	var holds []statics.Hold
	for i := range m.actors {
		h, s := m.actors[i].net()
		holds, m.sign = append(holds, h), append(m.sign, s)
	}
	var err error
	if m.net, err = statics.NewRigidBody(holds, m.lengthMM); err != nil {
		return nil, err
	}
	m.rank = m.net.Rank()
	m.grip = min(leastGrip, m.net.Grip()/2)
	m.surplus = len(m.actors) - m.rank
	m.findCouples()
	m.findGroups()
	m.findSlack()
	if m.springs, err = m.without(nil); err != nil {
		return nil, err
	}
	return m, m.choose()
}

// without is the body on its springs with some actors resting.
func (m *model) without(idle []int) (*spring, error) {
	s := &spring{}
	var all []statics.Hold
	for i := range m.actors {
		if slices.Contains(idle, i) {
			continue
		}
		holds, signs := m.actors[i].springs()
		for k := range holds {
			all, s.actor, s.sign = append(all, holds[k]), append(s.actor, i), append(s.sign, signs[k])
		}
	}
	var err error
	s.body, err = statics.NewRigidBody(all, m.lengthMM)
	return s, err
}

// holds says whether the body is held as before, and firmly, when some actors rest.
func (m *model) holds(idle []int) bool {
	b := m.rest(idle)
	return b != nil && b.Rank() == m.rank && b.Grip() >= m.grip
}

func (m *model) rest(idle []int) *statics.RigidBody {
	var holds []statics.Hold
	for i := range m.actors {
		if !slices.Contains(idle, i) {
			h, _ := m.actors[i].net()
			holds = append(holds, h)
		}
	}
	b, err := statics.NewRigidBody(holds, m.lengthMM)
	if err != nil {
		return nil
	}
	return b
}

// findCouples gathers the couples that the forces can do without.
func (m *model) findCouples() {
	for i := range m.actors {
		if m.actors[i].couple() {
			if m.holds(append(slices.Clone(m.couples), i)) {
				m.couples = append(m.couples, i)
			}
		}
	}
}

// findGroups gathers what mounts share: the shares stated without fractions, then all that hold x, or those on one line of the frame where all would be
// too many, then those that hold y at one station.
func (m *model) findGroups() {
	taken := map[int]bool{}
	try := func(g group) bool {
		if len(g.actors) < 2 || !m.each(append(slices.Clone(m.groups), g)) {
			return false
		}
		m.groups = append(m.groups, g)
		return true
	}
	for _, s := range m.body.Shares {
		if len(s.Fractions) > 0 {
			continue
		}
		g := group{dir: slices.Index(directions[:], s.Direction)}
		for _, name := range s.Mounts {
			if a := m.actorOf(m.mount(name), g.dir); a >= 0 {
				g.actors, taken[a] = append(g.actors, a), true
			}
		}
		try(g)
	}
	if all := m.holding(0, taken); len(all) > 0 && !try(group{0, all}) {
		for _, g := range m.nearby(all, func(at part.Vec) float64 { return at.Y }, lineMM) {
			try(group{0, g})
		}
	}
	for _, g := range m.nearby(m.holding(1, taken), func(at part.Vec) float64 { return at.X }, stationMM) {
		try(group{1, g})
	}
}

// holding lists the actors of one mount each that act in a direction.
func (m *model) holding(dir int, taken map[int]bool) []int {
	var out []int
	for i, a := range m.actors {
		if len(a.pieces) == 1 && a.pieces[0].dir == dir && !taken[i] {
			out = append(out, i)
		}
	}
	return out
}

// nearby parts actors by where their mounts stand.
func (m *model) nearby(actors []int, by func(part.Vec) float64, within float64) [][]int {
	var out [][]int
	at := func(a int) float64 { return by(m.body.Mounts[m.actors[a].pieces[0].mount].At) }
next:
	for _, a := range actors {
		for k := range out {
			if math.Abs(at(out[k][0])-at(a)) <= within {
				out[k] = append(out[k], a)
				continue next
			}
		}
		out = append(out, []int{a})
	}
	return out
}

func (m *model) actorOf(mount, dir int) int {
	for i, a := range m.actors {
		if len(a.pieces) == 1 && a.pieces[0].mount == mount && a.pieces[0].dir == dir {
			return i
		}
	}
	return -1
}

// each says whether every choice of one member of each group still holds the body as all do; of many choices, those of one group at a time.
func (m *model) each(groups []group) bool {
	for _, pick := range picks(sizes(groups, nil)) {
		if !m.holds(append(m.resting(groups, pick), m.couples...)) {
			return false
		}
	}
	return true
}

func sizes(groups []group, slack [][][]int) []int {
	var out []int
	for _, g := range groups {
		out = append(out, len(g.actors))
	}
	for _, f := range slack {
		out = append(out, len(f))
	}
	return out
}

// axes are the sizes of all that is chosen: who of each group, which slack of each family.
func (m *model) axes() []int { return sizes(m.groups, m.slack) }

// picks lists all choices of one of each, or, where these are too many, one at a time with the others open (-1).
func picks(of []int) [][]int {
	n := 1
	for _, k := range of {
		if n *= k; n > maxChoices {
			break
		}
	}
	var out [][]int
	if n > maxChoices {
		for axis, k := range of {
			for i := range k {
				pick := make([]int, len(of))
				for a := range pick {
					pick[a] = -1
				}
				pick[axis] = i
				out = append(out, pick)
			}
		}
		return out
	}
	for i := range n {
		pick := make([]int, len(of))
		for a, k := range of {
			pick[a] = i % k
			i /= k
		}
		out = append(out, pick)
	}
	return out
}

// resting lists the members of groups that a choice leaves out.
func (m *model) resting(groups []group, pick []int) []int {
	var idle []int
	for g := range groups {
		for k, a := range groups[g].actors {
			if pick[g] >= 0 && k != pick[g] {
				idle = append(idle, a)
			}
		}
	}
	return idle
}

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

// choose makes the springs of every choice ready.
func (m *model) choose() error {
	if len(m.groups)+len(m.slack)+len(m.couples) == 0 {
		return nil
	}
	for _, pick := range picks(m.axes()) {
		idle := append(m.resting(m.groups, pick), m.couples...)
		for f := range m.slack {
			if k := pick[len(m.groups)+f]; k >= 0 {
				idle = append(idle, m.slack[f][k]...)
			}
		}
		s, err := m.without(idle)
		if err != nil {
			return err
		}
		m.choices = append(m.choices, choice{pick, s})
	}
	return nil
}

// scheme says it all in words.
func (m *model) scheme() Scheme {
	s := Scheme{Body: carrier(m.body.Name), Surplus: m.surplus, Determinate: m.surplus == 0 && m.rank == 6, SlackTried: !m.tooMany,
		Choices: len(m.choices) + 1, OneAtATime: product(m.axes()) > maxChoices}
	for _, f := range m.net.Free() {
		free := m.motion(f)
		s.Free = append(s.Free, free)
		s.Words = append(s.Words, "nothing holds the body against "+free.Words)
	}
	s.HeldTwice = m.heldTwice()
	s.Words = append(s.Words, s.HeldTwice...)
	for _, g := range m.groups {
		names := m.names(g.actors)
		s.Sharing = append(s.Sharing, Sharing{directions[g.dir], names, list(names) + " each take 0 to 100 % of the " + sideways[g.dir] + " load"})
		s.Words = append(s.Words, s.Sharing[len(s.Sharing)-1].Words)
	}
	switch {
	case s.Determinate:
		s.Words = append(s.Words, "statically determinate: equilibrium alone fixes the reactions")
	case m.tooMany:
		s.Words = append(s.Words, "statically indeterminate, with too many ways of slack to try: the reactions are those by stiffness, and equilibrium may set no bound to them")
	case m.surplus > 0:
		s.Words = append(s.Words, "statically indeterminate: the reactions are those by stiffness, between the extremes that equilibrium and the rules of sharing allow")
	}
	return s
}
