package strength

// A bracket made ready: things and materials resolved, branches and corners laid out. What depends on the bracket alone
// is worked out here once; carry.go and the features do the rest for each case.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength/material"
	"lugwright/strength/statics"
)

type model struct {
	*meter
	b         *part.Bracket
	listing   string // the basis's name in material lists
	things    []thing
	branches  []branch
	ways      map[string]*through
	paths     [][]int // by load point * components: indices into branches; nil when there is no path
	corners   []corner
	pins      []pin
	cuts      []cut
	loadSets  []loaded
	stretches []*acting
	bridging  []bool // by composite: see bridges
	rootSets  []rootSet
	run       func(legMM, lengthMM float64) float64 // the basis's rule for short weld runs, nil for ours
	bare      []string                              // welds with no run that counts, where nothing beside them carries their load
	sections  bool                                  // the basis has rules for them
	flowSets  []flowSet
	footed    map[string]bool // webs whose own foot is welded
	groups    []boltGroup
	walls     []wall
	slender   map[int]string // sweeps through members whose section no rule speaks of, and why
	rods      []rodSet
	seats     []seat
	clasps    []clasp
	trays     []tray
	spreads   []spread
	notes     []string
	uncovered []NotChecked
	bad       part.FieldErrors
	room      *room
}

// thing is a plate, a face of a bent plate, an angle's leg or a boss with its strength.
type thing struct {
	work    *meter
	plate   *part.Plate
	of      string        // the angle or bent plate that it is a part of, else empty
	outline shape.Outline // finished
	fy, fu  float64
	// parentFy, parentFu are those clear of any weld: other than fy and fu for welded aluminium.
	parentFy, parentFu float64
	e                  float64
}

// branch is one leg of a path with what it carries of the component, of size one, at each corner.
type branch struct {
	*part.Branch
	component part.Component
	carries   []carried // by corner
}

// carried is a force and a moment at the place where a branch's force enters.
type carried struct{ f, m part.Vec }

// corner is one choice of extremes for all shares.
type corner struct {
	value []float64 // by share: Lo or Hi, the sign of the pin's travel, or the state of a beam's ends
	words string
}

const maxCorners = 64

func compile(b *part.Bracket, basis *Basis, memory *room, work *meter) (*model, error) {
	m := &model{meter: work, b: laid(b), room: memory, listing: basis.Card.Listing, run: basis.Rules.WeldRun, sections: len(basis.Rules.Cut) > 0}
	for _, step := range [...]struct {
		on string
		do func()
	}{
		{"plates", m.resolveThings}, {"shares", m.layCorners}, {"pins", m.compilePins}, {"paths", m.layBranches}, {"bracket", m.layClasps},
		{"sweeps", m.compileCuts}, {"welds", m.compileWelds}, {"bolts", m.compileBolts}, {"rods", m.compileRods}, {"contacts", m.compileContacts},
		{"bracket", m.compileTrays}, {"plates", m.compileSpreads},
	} {
		m.on = step.on
		step.do()
	}
	if len(m.bad) > 0 {
		return nil, m.bad
	}
	return m, nil
}

func (m *model) refuse(field string, err error, accept string) {
	m.bad = append(m.bad, &part.FieldError{Field: field, Found: err.Error(), Accept: accept})
}

func (m *model) note(format string, args ...any) {
	m.spend(1 + len(m.notes))
	if s := fmt.Sprintf(format, args...); !slices.Contains(m.notes, s) {
		m.notes = append(m.notes, s)
	}
}

func (m *model) skip(what, place, why string) {
	m.spend(1 + len(m.uncovered))
	if n := (NotChecked{what, place, why}); !slices.Contains(m.uncovered, n) {
		m.uncovered = append(m.uncovered, n)
	}
}

func (m *model) resolveThings() {
	for i := range m.b.Plates {
		p := &m.b.Plates[i]
		field := fmt.Sprintf("plates[%d].material", i)
		whole := ""
		if len(p.Bends) > 0 {
			whole = p.ID
		}
		m.addThing(p, whole, p.ThicknessMM, field)
		// The flat pattern serves the base; what is turned up lies elsewhere.
		for _, face := range p.Folded()[1:] {
			m.addThing(&face, whole, p.ThicknessMM, field)
		}
	}
	for i := range m.b.Members {
		mem := &m.b.Members[i]
		field := fmt.Sprintf("members[%d].material", i)
		if mem.Profile.Kind == part.Angle {
			a, b := mem.Legs()
			m.addThing(&a, mem.ID, a.ThicknessMM, field)
			m.addThing(&b, mem.ID, b.ThicknessMM, field)
			continue
		}
		if m.isBoss(mem) {
			ring := mem.Ring()
			m.addThing(&ring, "", mem.Profile.AMM, field) // turned from bar
			continue
		}
		if !slices.ContainsFunc(m.b.Sweeps, func(s part.Sweep) bool { return slices.Contains(s.Things, mem.ID) }) {
			m.skip("strength of the "+string(mem.Profile.Kind), mem.ID, "the bracket's model cuts no section through it")
		}
	}
}

// isBoss says whether a member is a ring round a pin that is welded to what it stands on.
func (m *model) isBoss(mem *part.Member) bool {
	return slices.ContainsFunc(m.b.Pins, func(p part.Pin) bool { return mem.OnPin(&p) }) &&
		slices.ContainsFunc(m.b.Welds, func(w part.WeldGroup) bool { return w.Joins[0] == mem.ID })
}

// addThing takes a plate, or a part of something bent or angled, with the strength that its grade has at a thickness.
func (m *model) addThing(p *part.Plate, of string, tMM float64, field string) {
	g, fy, fu := m.grade(p.Material, tMM, field)
	t := thing{work: m.meter, plate: p, of: of, outline: p.Shape(false), fy: fy, fu: fu}
	if g != nil {
		t.e = g.EMPa
	}
	m.soften(&t, g, field)
	m.things = append(m.things, t)
}

// grade looks a material up and notes when the basis does not list it.
func (m *model) grade(name string, tMM float64, field string) (*material.Grade, float64, float64) {
	g, err := material.LookupGrade(name)
	if err != nil {
		m.refuse(field, err, "a grade from the list of materials")
		return nil, 0, 0
	}
	fy, fu, err := g.Strength(tMM)
	if err != nil {
		m.refuse(field, err, "a thickness that the grade's table reaches")
		return nil, 0, 0
	}
	m.remark(g)
	return g, fy, fu
}

// remark notes a grade that the basis does not list, and one whose strengths are from memory.
func (m *model) remark(g *material.Grade) {
	if !m.listed(g.ListedIn) {
		m.note("%s: outside the listed materials of %s", g.Name, m.listing)
	}
	if g.FromMemory {
		m.note("%s: strengths from memory, to be confirmed", g.Name)
	}
}

// listed says whether one of a standard's material lists has a grade.
func (m *model) listed(lists []string) bool {
	return slices.ContainsFunc(lists, func(l string) bool { return strings.HasPrefix(l, m.listing) })
}

func (m *model) thing(id string) *thing {
	m.spend(len(m.things))
	for i := range m.things {
		if m.things[i].plate.ID == id {
			return &m.things[i]
		}
	}
	return nil
}

// layCorners makes every combination of the shares' extremes.
func (m *model) layCorners() {
	m.corners = []corner{{}}
	for _, s := range m.b.Shares {
		values := m.extremes(s)
		var next []corner
		for _, c := range m.corners {
			for _, v := range values {
				m.spend(1 + len(c.value))
				n := corner{value: append(slices.Clone(c.value), v), words: c.words}
				if len(values) > 1 {
					n.words = joinWords(c.words, m.shareWords(s, v))
				}
				next = append(next, n)
			}
		}
		m.corners = next
		if len(next) > maxCorners {
			m.refuse("shares", fmt.Errorf("%d combinations of extremes", len(next)), fmt.Sprintf("at most %d", maxCorners))
			m.corners = next[:1]
			return
		}
	}
}

func (m *model) extremes(s part.Share) []float64 {
	switch s.Rule {
	case part.Between:
		if s.Lo == s.Hi {
			return []float64{s.Lo}
		}
		return []float64{s.Lo, s.Hi}
	case part.ByPinSpan:
		if p := m.b.Pin(s.Pin); p != nil && p.TravelMM > 0 {
			return []float64{-1, 1}
		}
	case part.ByBeamSpan:
		states := make([]float64, beamStates)
		for i := range states {
			states[i] = float64(i)
		}
		return states
	}
	return []float64{0}
}

func (m *model) shareWords(s part.Share, v float64) string {
	switch s.Rule {
	case part.ByBeamSpan:
		return m.beamWords(&s, int(v))
	case part.ByPinSpan:
		pin := m.b.Pin(s.Pin)
		seat := pin.Seats[0]
		if v > 0 {
			seat = pin.Seats[len(pin.Seats)-1]
		}
		return "lug over against " + seat.Thing
	}
	return fmt.Sprintf("%s %.0f %%", s.ID, 100*v)
}

func joinWords(a, b string) string {
	if a == "" {
		return b
	}
	return a + ", " + b
}

// layBranches works out what each branch carries at each corner, and which path serves which component.
func (m *model) layBranches() {
	n := len(part.Components())
	m.paths = make([][]int, n*len(m.b.LoadPoints))
	for i := range m.b.Paths {
		p := &m.b.Paths[i]
		at := slices.IndexFunc(m.b.LoadPoints, func(l part.LoadPoint) bool { return l.ID == p.LoadPoint })
		if at < 0 {
			at = 0 // an empty name means the only load point
		}
		slot := at*n + int(p.Component)
		for k := range p.Branches {
			br := branch{Branch: &p.Branches[k], component: p.Component, carries: make([]carried, len(m.corners))}
			for c := range m.corners {
				br.carries[c] = m.carried(&br, c)
			}
			m.paths[slot] = append(m.paths[slot], len(m.branches))
			m.branches = append(m.branches, br)
		}
	}
}

func (m *model) carried(br *branch, c int) carried {
	m.spend(10 + (1+len(br.Then))*(1+len(m.b.Shares)))
	f, mo := br.component.Unit()
	if i := m.share(br.Share); i >= 0 && m.b.Shares[i].Rule == part.ByBeamSpan {
		b := m.beam(&m.b.Shares[i])
		return b.take(br.Leg, f, mo, br.At, int(m.corners[c].value[i]))
	}
	s := m.fraction(br.Branch, c)
	return carried{f.Add(br.Thrust).Scale(s), mo.Add(br.Couple).Scale(s)}
}

func (m *model) share(id string) int {
	return slices.IndexFunc(m.b.Shares, func(s part.Share) bool { return s.ID == id })
}

func (m *model) fraction(br *part.Branch, c int) float64 {
	all := 1.0
	for _, f := range br.Forks() {
		all *= m.legFraction(f, c)
	}
	return all
}

// legFraction is what one leg of a share takes at a corner.
func (m *model) legFraction(f part.Fork, c int) float64 {
	i := m.share(f.Share)
	s, v := m.b.Shares[i], m.corners[c].value[i]
	switch s.Rule {
	case part.Between:
		half := s.Legs / 2
		if f.Leg >= half {
			v = 1 - v
		}
		return v / float64(half)
	case part.ByPinSpan:
		p := m.pin(s.Pin)
		if p == nil || f.Leg >= len(p.reaction(v)) {
			return 0
		}
		return p.reaction(v)[f.Leg]
	}
	return 1 / float64(s.Legs)
}

func vec3(v part.Vec) statics.Vec3 { return statics.Vec3{X: v.X, Y: v.Y, Z: v.Z} }
func vec(v statics.Vec3) part.Vec  { return part.Vec{X: v.X, Y: v.Y, Z: v.Z} }
