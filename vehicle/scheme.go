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

	following map[string]*statics.Following // by what acts
	programs  programs
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
	m := &model{rig: newRig(b), following: map[string]*statics.Following{}}
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
	if m.surplus > 0 {
		m.programs = m.newPrograms()
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

// choose makes the springs of every choice ready.
func (m *model) choose() (err error) {
	if len(m.groups)+len(m.slack)+len(m.couples) > 0 {
		m.choices, err = m.choicesOf(m.slack)
	}
	return err
}

// choicesOf are those of every group's member with those of the slack given.
func (m *model) choicesOf(slack [][][]int) ([]choice, error) {
	var out []choice
	for _, pick := range picks(sizes(m.groups, slack)) {
		idle := append(m.resting(m.groups, pick), m.couples...)
		for f := range slack {
			if k := pick[len(m.groups)+f]; k >= 0 {
				idle = append(idle, slack[f][k]...)
			}
		}
		s, err := m.without(idle)
		if err != nil {
			return nil, err
		}
		out = append(out, choice{pick, s})
	}
	return out, nil
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
